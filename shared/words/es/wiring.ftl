source-voltage = Tensión de la fuente
    .help =
        Medida en la batería o en la caja de fusibles con las cargas encendidas. El litio ferrofosfato da unos 13,3 V en
        reposo (su cátodo a 3,45 V por celda tras 24 h, J. Jpn. Soc. Powder Powder Metallurgy 57, 725; el grafito resta
        0,1 V, de memoria) y cerca de 12,8 V con carga; una batería de plomo a media carga, 12,2 V.
low-voltage = Tensión mínima de la batería
    .help =
        A la que se desconecta la batería: una carga de potencia constante consume ahí la mayor corriente, y para ella
        se eligen cable y fusible.
charging-voltage = Tensión de carga máxima
    .help =
        La que está ajustada en el cargador o el alternador; fusible y portafusible deben ser para ella. En blanco: 14,6
        V por cada 12,8 V de litio ferrofosfato (3,65 V por celda), 14,8 V por cada 12 V de plomo.
drop-limit-percent = Caída de tensión permitida
    .help =
        3 % para bombas, ventiladores, electrónica y alimentación de un tablero; hasta 10 % para luces de cabina (ABYC
        E-11).
conductor-temperature = Temperatura del cobre
    .help =
        El cobre caliente tiene más resistencia. 30 °C (86 °F) con cargas ligeras, 50 °C (122 °F) en un techo caliente.
air-temperature = Aire alrededor del cable
    .help =
        Lo más caliente que llega a estar por donde pasa el cable; por encima de 30 °C (86 °F) la corriente admisible es
        menor.
insulation = Temperatura nominal del aislamiento
    .help =
        Impresa en la cubierta: 105 °C en el cable náutico. Si no hay nada impreso deje 60 °C, la columna más baja de 33
        CFR 183.425 tabla 5: un cable de automóvil o de altavoz sin marcar no admite más. El cable se compra por este
        valor.
in-jacket = Dentro de la cubierta de una manguera
    .help =
        Varios conductores en una misma cubierta: entonces se permiten 18 AWG o 0,75 mm2; los cables sueltos empiezan en
        16 AWG o 1 mm2.
in-insulation = Dentro de aislante térmico
    .help =
        En 0,5 m (20 in) o más: la corriente admisible es la mitad (BS 7671 523.9). El PVC en contacto con espuma de
        poliestireno se vuelve quebradizo: póngale funda.
far-source = También hay una fuente en el otro extremo
    .help =
        Un alternador, un cargador DC-DC o de toma exterior, paneles solares: entonces el cable lleva un fusible en cada
        extremo.
continuous = Encendida tres horas o más
    .help = Entonces el fusible es de al menos el 125 % de la corriente.
bundled = Conductores agrupados
    .help =
        Todos los que llevan corriente en un mismo mazo o funda: cada tramo cuenta como dos. A partir de tres, la
        corriente admisible de cada uno es menor.

not-low-voltage =
    a partir de 50 V esto ya no es baja tensión de seguridad: puede matar y rigen otras normas; déjelo a un electricista
    autorizado. Una batería de 48 V se indica por su tensión nominal, hasta { $most }
charged-too-high =
    a partir de 50 V esto ya no es baja tensión de seguridad: puede matar y rigen otras normas; déjelo a un electricista
    autorizado. Estas reglas llegan hasta una batería de 48 V cargada a { $most }
low-above-source = la tensión mínima de la batería no puede ser mayor que la de la fuente
charging-below-source =
    la tensión de carga no puede ser menor que la de la fuente: indique al menos la tensión de la fuente
air-too-hot =
    con el aire tan caliente como la temperatura nominal del aislamiento ({ $rating }) no queda corriente admisible: debe
    estar más frío, o el aislamiento ser de mayor temperatura
copper-too-cool = el cobre nunca está más frío que el aire a su alrededor: indique al menos la temperatura del aire

rating-c60 = 60 °C
rating-c75 = 75 °C
rating-c80 = 80 °C
rating-c90 = 90 °C
rating-c105 = 105 °C
rating-c125 = 125 °C
rating-c200 = 200 °C

or-auto = { $problem }; o escriba auto para el menor calibre que alcanza

wire = { $size }, aislamiento { $rating }
    .jacket = { $size }, aislamiento { $rating }, en manguera
buy-wire = cable
    .spec = { $size } de cobre trenzado, aislamiento de { $rating } o más, mitad positivo, mitad negativo
    .spec-jacket =
        { $size } de cobre trenzado, aislamiento de { $rating } o más, varios conductores en manguera, mitad positivo,
        mitad negativo
    .spec-plain = { $size }, aislamiento de { $rating } o más, mitad positivo, mitad negativo
    .spec-plain-jacket =
        { $size }, aislamiento de { $rating } o más, varios conductores en manguera, mitad positivo, mitad negativo
buy-fuse = fusible con portafusible
    .spec = { $rating }, para { $volts } CC o más
buy-lug = terminal de ojal
    .spec = { $size }, espárrago { $stud }

fuse-volts =
    Fusible y portafusible: para { $rated } CC o más ({ $source }). Al cargar soportan hasta { $highest }, igual que todas
    las cargas ({ $who }): una lámpara o un aparato cuya etiqueta no llegue a tanto necesita un regulador.
too-thin =
    { $wire } es demasiado fino para ir suelto: figura como manguera de varios conductores, y no sirve otra cosa. En
    embarcaciones los cables sueltos empiezan en 16 AWG ({ $awg }) o 1 mm2 ({ $metric }); en remolques de parque, en
    18 AWG ({ $trailers }). auto sigue la norma más estricta.
small-wire =
    { $wire } no admite aquí un fusible mayor de { $limit }, lo más estricto de: { $most } en vehículos ({ $source }),
    { $other } para conductores finos ({ $who }) y su corriente admisible según va tendido; en embarcaciones se llega a
    { $boats } ({ $boat-rule }).
stands-in =
    Ninguna tabla trae { $wire }: se toma la corriente admisible de { $listed } AWG, el calibre de la tabla más próximo
    con al menos la misma resistencia a 20 °C.
carries =
    La corriente admisible vale para aislamiento de { $rating }, { $bundle }, con el aire a { $air }. { $look }
bundle-two = con no más de dos conductores juntos
bundle-more = con { $count } conductores juntos
look-jacket = Mire la cubierta: debe decir { $rating } o más.
look-unmarked =
    Un cable sin nada impreso admite 60 °C y no más; si la cubierta dice 105 °C, indíquelo: ese cable admite más
    corriente.
far-fuses =
    Con una fuente en cada extremo, cualquiera de las dos puede quemar el cable: un fusible en ambos extremos, cada uno al
    alcance de su fuente. Nunca conecte una batería de litio directamente a un alternador: entre ambos va un cargador
    CC-CC.
constant-power =
    Una carga de potencia constante consume más con la batería baja: indique la tensión mínima de la batería, y cable y
    fusible se eligen para ella.

step-table = { $conductor } a { $temperature }
    .numbers = { $conductor }, trenzado
step-warmed = A { $temperature }
step-given = Resistencia de un conductor
    .formula = r como se indicó
step-carries = { $conductor } admite
    .as = { $conductor } admite, como { $listed } AWG
    .numbers = aislamiento { $rating }, aire { $air }
step-bundled = Con { $count } conductores juntos
step-warm-air = Con el aire caliente
step-buried = En aislante térmico
step-small = Mayor fusible para cable fino
    .formula = If ≤ I(calibre)
step-fuse-least = El fusible soporta al menos
step-rating = Siguiente calibre normalizado
    .formula = If ≤ calibre ≤ Iz
