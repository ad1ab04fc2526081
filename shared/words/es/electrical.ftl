range-source-voltage = la tensión de la fuente
range-load-current = la corriente de la carga
range-load-power = la potencia de la carga
range-load-resistance = la resistencia de la carga
range-run-resistance = la resistencia del tramo
range-run-length = la longitud del tramo
range-conductor = la resistencia del conductor
range-drop-limit = la caída de tensión permitida
range-temperature = la temperatura del conductor
range-slack = el sobrante de cable
out-of-range = { $what } debe estar entre { $least } y { $most }, y no ser { $value }
not-a-number = { $what } no es un número: debe estar entre { $least } y { $most }

no-conductor = no se indica ningún conductor; { $like }
not-a-conductor = «{ $typed }» no es un conductor; { $like }
conductor-like =
    escriba una sección como 16 AWG, 1/0 AWG o 1,5 mm2, o la resistencia de un conductor como 0,0135 ohm/m
unit-missing = «{ $typed }» no tiene unidad; escriba { $typed } AWG o { $typed } mm2, como va impreso en la cubierta
unknown-awg = «{ $typed }» no es un calibre de NEC capítulo 9 tabla 8, de 18 a 4/0 AWG; los más próximos: { $near }
unknown-metric = «{ $typed }» no es una sección de IEC 60228, de 0,5 a 95 mm2; las más próximas: { $near }
resistance-wrong = { $range }; 16 AWG tiene unos 0,016 ohm/m, 1,5 mm2 0,0133 ohm/m

unrated =
    ninguna tabla da una corriente admisible para { $conductor }, y no figura ninguna sección más fina; { $instead }
unrated-three-quarters =
    con aislamiento de { $rating } °C use 1 mm2 o más grueso, o indique la temperatura mayor impresa en la cubierta
unrated-resistance =
    indique la sección impresa en la cubierta, 18 AWG o 1 mm2 y más gruesas (18 AWG: 0,0215 ohm/m a 20 °C)
unrated-size = indique 18 AWG, 1 mm2 o más grueso

collapse =
    no hay tensión estable: { $source } V a través de { $resistance } ohm de cable entregan como mucho { $most } W, y la
    carga necesita { $power } W; acorte el tramo, o use un cable más grueso o una tensión mayor
overdrawn =
    { $current } A gastarían en el cable toda la tensión de la fuente; por él no pasan más de { $most } A; acorte el
    tramo o use un cable más grueso
no-choices = no hay ninguna sección de conductor para elegir: indique una
drop-too-great =
    ningún calibre alcanza: incluso { $conductor } { $falls }, y se permite { $limit }; acorte el tramo o use una tensión
    mayor
    .until =
        ningún calibre alcanza: incluso { $conductor } { $falls }, y se permite { $limit }; serviría para { $length } de
        ida, o use una tensión mayor
falls-by = pierde { $drop }
falls-away = no tiene tensión estable
ampacity-too-small =
    la carga consume { $current } A, e incluso { $conductor } no admite más de { $ampacity } A ni ningún fusible que
    soporte la carga; divida el circuito o agrupe menos conductores
ampacity-unknown =
    la carga consume { $current } A, e incluso { $conductor } no tiene corriente admisible en las tablas; divida el
    circuito o agrupe menos conductores

fuse-beyond-ratings =
    la carga necesita un fusible de { $needed } A, y el mayor calibre normalizado es de { $greatest } A; divida el
    circuito
fuse-too-large-by-rule =
    la carga necesita un fusible de { $needed } A, el siguiente calibre es de { $rating } A, y { $conductor } detrás de él
    admite fusibles de hasta { $limit } A ({ $rule }); { $instead }
fuse-too-large =
    la carga necesita un fusible de { $needed } A, el siguiente calibre es de { $rating } A, y { $conductor } detrás de él
    no admite más de { $limit } A; { $instead }
size-would-do = serviría { $size }, o divida el circuito
no-size-would-do = ninguna sección de la lista serviría: divida el circuito

no-runs = no hay ningún tramo; agregue uno desde «{ $source }»
no-source = ningún tramo empieza en la fuente; llame «{ $source }» al nodo del fusible y empiece ahí el primer tramo
name-missing = un tramo necesita un nombre, el nodo del que sale y el nodo que alimenta
same-name = el tramo { $number } también se llama «{ $name }»; dé a cada tramo su propio nombre
to-itself = este tramo va de «{ $node }» a sí mismo; indique el nodo de la otra punta
into-source = este tramo vuelve a la fuente; «desde» es la punta más cercana a la fuente
two-feeds =
    «{ $node }» ya se alimenta por el tramo { $number }; un nodo tiene una sola alimentación («desde» es la punta más
    cercana a la fuente)
unfed = nada alimenta «{ $node }»; agregue un tramo que llegue a él desde el lado de la fuente
ring =
    estos tramos forman un anillo al que la fuente no llega ({ $nodes }); alimente uno de estos nodos desde la fuente
no-such-node = ningún tramo llega a «{ $node }»; los nodos son { $nodes }

network-mismatch = los tramos y las cargas no corresponden al árbol; revise a qué está conectado cada uno
network-collapse =
    no hay tensión estable: se desploma en «{ $node }». Los cables pueden llevar como mucho el { $bearable } % de estas
    cargas; use cable más grueso, tramos más cortos, menos cargas o una tensión mayor

open-no-choices =
    no hay ningún calibre para elegir; indique calibres desde 16 AWG o 1 mm2, o que el cable va dentro de una manguera,
    para 18 AWG o 0,75 mm2
nothing-open = todos los tramos tienen su calibre; ponga uno en auto
open-drop =
    ningún calibre alcanza: incluso con { $conductor } en todos los tramos abiertos «{ $node }» pierde { $lost }, y se
    permite { $limit }; acorte los tramos, divida el circuito o use una tensión mayor
open-collapse =
    incluso con { $conductor } en todos los tramos abiertos no hay tensión estable; acorte los tramos, divida el circuito
    o use una tensión mayor
open-low-collapse =
    a { $low } ni siquiera { $conductor } en todos los tramos abiertos da una tensión estable; acorte los tramos, divida
    el circuito o use una tensión mayor
open-ampacity =
    las cargas piden un fusible de { $needed }, y ni siquiera { $conductor } admite uno mayor de { $limit }; divida el
    circuito, aliméntelo por una caja de fusibles o agrupe menos conductores
given-up =
    no se encontró ninguna combinación de estos calibres en el tiempo permitido; indique el calibre de algunos tramos

hue-black = negro
hue-white = blanco
hue-red = rojo
hue-yellow = amarillo
hue-green = verde
hue-blue = azul
hue-brown = marrón
hue-gray = gris
hue-orange = naranja
hue-violet = violeta
hue-pink = rosa
hue-tan = canela
striped = { $ground }/{ $stripe }
not-a-color =
    «{ $typed }» no es el color de un cable; escriba { $plain }, o { $striped } si lleva franja; los colores son
    { $colors }
clash-opposite =
    { $color } es positivo en el aparato y negativo en el tramo: no una { $color } con { $color }; una positivo con
    positivo y etiquete los dos
    .negative =
        { $color } es negativo en el aparato y positivo en el tramo: no una { $color } con { $color }; una positivo con
        positivo y etiquete los dos
clash-stripe =
    { $device } es positivo en el aparato y { $run } es negativo en el tramo: solo la franja los distingue; etiquete los
    dos
    .negative =
        { $device } es negativo en el aparato y { $run } es positivo en el tramo: solo la franja los distingue; etiquete
        los dos
clash-alike =
    los dos cables del aparato son de color { $color }: busque el positivo por su marca, en la hoja del fabricante o con
    un multímetro, y etiquételo

source-class-5 = IEC 60228, clase 5, cobre desnudo, 20 °C
source-given = resistencia por longitud como se indicó, sin corrección por temperatura
source-stranded = un conductor trenzado es 1,14 veces más ancho que uno sólido de su sección, como en NEC capítulo 9 tabla 8
source-ohm = ley de Ohm, contando los dos conductores del tramo
source-least-boats = 33 CFR 183.425, (d), (e), embarcaciones
source-least-metric = ISO 10133, embarcaciones menores: 1 mm2 suelto, 0,75 mm2 en manguera
source-metric-by-awg = 33 CFR 183.425, tabla 5, el calibre AWG inmediato inferior por sección de cobre (conservador)
source-ohm-by-awg = 33 CFR 183.425, tabla 5, el calibre AWG con al menos la misma resistencia a 20 °C, NEC capítulo 9 tabla 8 (conservador)
source-trailer-fuse = NEC (NFPA 70), tabla 552.10(E)(1), remolques de parque: 6, 8, 15, 20, 30 A
source-small-wire = NEC (NFPA 70), 240.4(D): 15, 20, 30 A para 14, 12, 10 AWG; 7 y 10 A para 18 y 16 AWG de memoria
source-boat-fuse = 33 CFR 183.455, (c), embarcaciones: hasta el 150 % de la tabla 5 por debajo de 50 V
source-buried = BS 7671, 523.9: 0,5 con 0,5 m o más en aislante térmico
source-charging = tensión de carga como se indicó
source-fuse-32 = ISO 8820-3, ISO 8820-5, fusibles de cuchilla hasta 100 A y de lámina hasta 500 A, 32 V
source-fuse-58 = ISO 8820-3, fusibles de cuchilla hasta 100 A, 58 V
source-fuse-125 = UL 248-15, clase T, hasta 1200 A, 125 V CC
source-three-quarters = ISO 10133, embarcaciones menores, tabla A.1, 0,75 mm2
source-bundling = ABYC E-11, factores de agrupamiento, aislamiento de 105 °C
source-power = V = (Vs + √(Vs² − 4 · R · P)) / 2, la raíz mayor de V · (Vs − V) = R · P
source-ways = los conectores de empalme se venden de 2, 3 y 5 vías
source-connector-sizes = los conectores de empalme admiten cable hasta unos 10 AWG o 6 mm2
source-studs = terminales hasta 6 AWG o 16 mm2 en espárragos M6 o de 1/4 in, los más gruesos en M8 o 5/16 in
source-packing = tabla de empaquetamientos de círculos en un círculo, de 1 a 20 círculos iguales
source-bundle = un mazo de cables mide 1,2 · √(Σ d²) de diámetro
source-in-reach = NEC (NFPA 70), 300.15, 314.29 (conexiones accesibles)
source-tug = un empalme que aguanta un tirón, polaridad con el multímetro
source-square = cable a lo largo y a lo ancho de la carrocería, |dx| + |dy|, y una vez lo que sube y rodea
source-lithium-cell =
    hojas de datos de celdas de litio ferrofosfato, 3,2 V nominales, 3,65 V al final de la carga
source-lithium-rested =
    hojas de datos de celdas de litio ferrofosfato, en reposo entre 30 y 90 % de carga de 3,29 a 3,34 V, así que cuatro
    celdas marcan unos 13,3 V
source-lead-cell =
    instrucciones de carga de baterías de plomo-ácido, hasta 2,67 V por celda al ecualizar una abierta: 16 V para seis
source-table-8 = NEC (NFPA 70), capítulo 9, tabla 8
source-table-8-note = NEC (NFPA 70), capítulo 9, tabla 8, nota 2
source-coefficient = IEC 60287-1-1, tabla 1, cobre
source-copper = IEC 60028, 8,89 g/cm³ a 20 °C
source-wall = UL 1426, grosor del aislamiento
source-table-5 = 33 CFR 183.425, tabla 5
source-blade = ISO 8820-3, calibres del tipo C
source-blade-one = ISO 8820-3, calibres del tipo C, 1 A
source-continuous = NEC (NFPA 70), artículo 100
source-colors = ABYC E-11, tabla XIV
source-branch-colors = ABYC E-11, tabla XV
source-interrupt = ABYC E-11, capacidad de interrupción
source-breaking = ISO 8820-3, alcance, poder de corte 1000 A
source-chassis = NEC (NFPA 70), 552.10(B)(1) excepción, remolques de parque
source-bonding = NEC (NFPA 70), 552.10(C)(4), remolques de parque
source-protection = ISO 10133, 7.3 a 7.5
source-below-50 = 33 CFR 183.455, (c), menos de 50 V
