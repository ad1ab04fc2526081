title = Batería y consumo del día
purpose = Sumar el consumo de un día, dimensionar la batería para los días sin carga y ver cuánto dura una batería.

nominal-voltage = Tensión nominal de la batería
    .help =
        En la batería: 12 V en plomo-ácido, 12,8 V en litio ferrofosfato, que en reposo da unos 13,3 V. Hasta una batería de
        48 V.
days = Días sin carga
    .help = Cuánto tiempo está donde nada carga.
usable-percent = Parte utilizable de la batería
    .help = El plomo-ácido dura usando el 50 %, el litio ferrofosfato el 80 %; la cifra del fabricante va primero.
efficiency-percent = Parte que llega a los consumos
    .help = Los cables y convertidores se quedan el resto. Lo del inversor se cuenta aparte: no lo reste aquí.

loads = Consumos del día
    .row = consumo
label = Qué es
draw = Potencia o corriente
power = Potencia
    .help = En su etiqueta, mientras funciona.
current = Corriente
    .help = En su etiqueta, a la tensión de la batería.
load-sheet = De su hoja
    .help =
        Todos los consumos de un circuito, el de un tramo, las lámparas, el enfriador, o la bomba de agua con sus horas.
load-heater = Calefactor de una hoja
    .help = Lo que consume el propio calefactor, y qué parte de la noche más fría funciona.
hours = Horas al día
    .help = Encendido, en un día como los que planea.
duty-percent = Ciclo de trabajo
    .help = Parte de ese tiempo que funciona: una nevera de un tercio a la mitad, una lámpara todo.
mains = Va con el inversor
    .help = Corriente alterna de 120 o 230 V del inversor de abajo, que saca de la batería más de lo que gasta el aparato.
start = Potencia de arranque
    .help = Compresores, bombas y motores toman por un momento de tres a seis veces su potencia.

inverter = Inversor
    .help = Para lo que va con corriente alterna.
inverter-efficiency = Rendimiento del inversor
    .help = En su ficha técnica; menor con cargas pequeñas.
standby = Consumo en vacío
    .help = Potencia en reposo o sin carga, en su ficha técnica.
hours-on = Horas encendido
    .help = Al día; menos si lo apaga entre usos.
lowest-voltage = Tensión más baja de la batería
    .help =
        Donde se desconecta el inversor o la batería: allí la corriente es máxima. En blanco: 10,5 V por cada 12 V.
rating = Potencia continua del inversor
    .help = Del que tiene pensado, en W (no VA).
surge = Potencia pico del inversor
    .help = Potencia pico o de arranque, durante un segundo o más.
maker-fuse = Fusible que pide el fabricante
    .help = El de CC en su entrada, en sus instrucciones: van antes que todo lo calculado aquí.

battery = La batería que tiene pensada
capacity = Capacidad
    .help = En la batería, en Ah o Wh; de varias, todas juntas.
chemistry = Tipo de batería
    .help = El plomo-ácido tarda más en su último quinto y guarda menos de lo cargado.
chemistry-auto = sin indicar: plomo-ácido si tiene exponente de Peukert
chemistry-lithium = litio ferrofosfato
chemistry-lead-acid = plomo-ácido
hours-rating = Horas de la capacidad nominal
    .help = Tras la capacidad de una batería de plomo-ácido: C20 son 20 horas.
peukert = Exponente de Peukert
    .help = Solo plomo-ácido: de 1,1 a 1,3, de la ficha del fabricante. En blanco para litio.
charge-limit = Corriente máxima de carga
    .help = En la batería o en su ficha técnica.
charging-voltage = Tensión máxima de carga
    .help =
        En su ficha técnica: fusibles y portafusibles deben ser para esa tensión. En blanco: 3,65 V por celda de litio,
        2,67 V por celda de plomo-ácido, que es la de igualación.
price = Precio
mass = Peso
    .help = Para el peso en la lista de compras; en la batería o en su ficha técnica.

cable = Cable de la batería y su fusible
    .help = Para todo lo encendido a la vez con el inversor a su potencia nominal, y para el cargador más fuerte.
cable-length = De la batería a la caja de fusibles, una vía
    .help = Por el recorrido del cable; la vuelta se suma aquí.
conductor = Cable
    .help = auto toma el menor calibre AWG que sirve, auto mm2 la menor sección métrica.
short-circuit = Corriente de cortocircuito de la batería
    .help = En su ficha técnica; de baterías en paralelo, la suma. En blanco se suponen 20 kA.

charging = Qué la carga
    .row = cargador
charged-by = Carga con
charge-power = Potencia en la batería
    .help = La corriente de carga de su etiqueta por la tensión de la batería.
charge-current = Corriente de carga
    .help = En la etiqueta del cargador de toma exterior, o del cargador CC-CC entre alternador y batería.
panels = Paneles de una hoja
    .help = Toma de allí lo que traen cada mes.
charge-hours = Horas al día
    .help = Conduciendo o enchufado; en blanco para paneles.
kind = Tipo de cargador
    .help = Qué limita la corriente: el litio nunca se carga directamente de un alternador.
kind-auto = sin indicar
kind-shore = cargador de toma exterior
kind-dc-dc = alternador con cargador CC-CC
kind-alternator = directo del alternador, con un relé
kind-controller = controlador solar
way = Del cargador a la batería, una vía
    .help = Para su cable y el fusible de cada punta; en blanco para paneles.

beyond-48 =
    desde 50 V valen otras normas, salvo para una batería de 48 V de hasta 51,2 V: déjelo a un electricista autorizado
peukert-lithium = la ley de Peukert es para plomo-ácido: deje el exponente en blanco para litio, o elija plomo-ácido
charging-below = una batería se carga por encima de su tensión nominal: dé esa o más, como 14,6 V para litio de 12,8 V
charging-beyond =
    por encima de la tensión de carga de una batería de 48 V valen otras normas: dé 58,4 V o menos, o déjelo a un electricista
    autorizado
capacity-range = la batería debe tener de 1 a 1 000 000 Wh; { $capacity } a { $volts } son { $energy }
straight-lithium =
    el litio nunca se carga directamente de un alternador, que se sobrecarga: ponga un cargador CC-CC entre ambos y elíjalo aquí
no-pump = esa hoja no da ninguna bomba: ponga allí su caudal y su corriente
no-cooler = esa hoja no dimensiona ningún enfriador: ponga allí el mediodía y el coeficiente de rendimiento
no-heater = esa hoja no tiene calefactor: póngalo allí
lowest-above = la tensión más baja debe quedar por debajo de la nominal, { $volts }
load-power-range = consumo { $load }: la potencia debe estar entre 0 y 100 000 W
load-time-range = consumo { $load }: el tiempo debe estar entre 0 y 24 horas al día
load-duty-range = consumo { $load }: el ciclo de trabajo debe estar entre 0 y 100 por ciento
voltage-range = la tensión nominal debe estar entre 1 y 1000 V; lo usual es 12, 24 y 48 V
days-range = los días sin carga deben ser de 0,01 a 365
usable-range = la parte utilizable debe estar entre 1 y 100 por ciento; lo usual es 50 en plomo-ácido, 80 en litio
efficiency-range = el rendimiento debe estar entre 1 y 100 por ciento
energy-range = la energía de la batería debe ser mayor que 0 y no pasar de 1 000 000 Wh
loss-range = pérdida { $loss }: debe estar entre 0 y menos de 100 por ciento
sun-range = las horas de sol pleno deben ser más de 0 y no pasar de 24 al día
inverter-load-range = consumo { $load }: la potencia y el arranque deben estar entre 0 y 100 000 W
inverter-efficiency-range = el rendimiento del inversor debe estar entre 50 y 100 por ciento; lo usual es de 85 a 94
standby-range = el consumo en vacío debe estar entre 0 y 1000 W
time-on-range = las horas encendido del inversor deben ser de 0 a 24 al día
lowest-range = la tensión más baja debe estar entre 1 y 1000 V
rated-capacity-range = la capacidad debe estar entre 0,1 y 100 000 Ah
rated-time-range = las horas de la capacidad nominal deben ser de 1 a 200; lo usual son 20
exponent-range = el exponente de Peukert debe estar entre 1 y 2; el plomo-ácido tiene de 1,1 a 1,3
discharge-range = la corriente debe estar entre 0,001 y 100 000 A
missing-range = la energía que falta debe estar entre 0 y 1 000 000 Wh
charge-power-range = la potencia de carga debe estar entre 0,1 y 100 000 W
charge-limit-range = la potencia máxima de carga de la batería debe estar entre 0,1 y 100 000 W
charge-efficiency-range = el rendimiento de carga debe estar entre 1 y 100 por ciento

why-no-class =
    ningún fusible usual tiene un poder de corte de { $current } a { $volts }: ponga un fusible a cada batería, como diga su
    fabricante
why-drop =
    hasta { $size } pierde { $drop } en este tramo: acórtelo, o tienda dos cables en paralelo según los dimensione un
    electricista autorizado
why-no-size = no hay ninguna sección que elegir
why-too-large =
    sería de { $least } o más, y { $wire } no admite más de { $most }: use un cable más grueso o cárguelo menos
why-mains = algunos consumos son de corriente alterna y el cable lleva lo que toma el inversor: rellene el inversor

load-number = consumo { $number }
own-use = consumo propio del inversor
charger-number = cargador { $number }

used = Gastado en un día
    .note = { $charge } a { $volts }
needed = Batería para { $days }
    .note = { $energy } a { $volts }, como mínimo
lasts = Su batería dura
    .note = con el consumo medio del día y sin carga

too-small =
    Su batería no dura { $days }: tiene { $has } de los { $needed } que hacen falta. Gaste menos, cargue antes o ponga una mayor.
carries = Su batería aguanta { $days }.
below-rating =
    El consumo medio queda por debajo de la corriente nominal de la batería: se cuenta su capacidad nominal, no lo de más que
    promete la ley de Peukert.
enter-exponent = Una batería de plomo-ácido da menos con corriente alta: ponga su exponente de Peukert.
needs-inverter = Algunos consumos son de corriente alterna: rellene el inversor, que también toma su parte.
all-on = Todo encendido a la vez toma { $power }, o { $current } a { $volts }.
    .no-cable =
        Todo encendido a la vez toma { $power }, o { $current } a { $volts }. No se muestra el cable de la batería ni su
        fusible: rellene el cable para dimensionarlos.
ordinary-day =
    { $enough ->
        [yes] En un día corriente toda la carga deja { $brought } en la batería, y el día saca { $drawn }.
       *[no] En un día corriente toda la carga deja { $brought } en la batería, y el día saca { $drawn }: se va vaciando.
    }
darkest-day =
    { $enough ->
        [yes] En un día medio de { $month } toda la carga deja { $brought } en la batería, y el día saca { $drawn }.
       *[no]
            En un día medio de { $month } toda la carga deja { $brought } en la batería, y el día saca { $drawn }: se va
            vaciando.
    }

inverter-small =
    El inversor da { $rating }, y sus consumos toman { $needed } juntos: ponga uno mayor o no los encienda todos a la vez.
inverter-start = El arranque más duro toma { $needed }, y el inversor da { $peak } por un momento.
inverter-asked =
    { $size ->
        [none]
            Inversor: { $continuous } continuos y { $surge } de pico. A { $volts } toma { $current } de la batería, { $start }
            en un arranque.
       *[other]
            Inversor: { $continuous } continuos y { $surge } de pico; { $size } es un tamaño usual. A { $volts } toma
            { $current } de la batería, { $start } en un arranque.
    }
sized-for-rating = El cable de la batería es para el inversor a su potencia nominal, no solo para sus consumos.
sized-for-usual =
    El cable de la batería es para un inversor usual con estos consumos: ponga la potencia del suyo para dimensionarlo con ella.
inverter-fuse-unknown =
    No se muestra el fusible del propio inversor. Ponga el que pide su fabricante: sus instrucciones van antes que el fusible
    de batería de aquí.
inverter-fuse = A la entrada del inversor, según su fabricante: { $fuse }; su cable, no más delgado que el de la batería.
inverter-fuse-none =
    No se muestra un fusible de { $current } a la entrada del inversor: ninguna clase con poder de corte para el cortocircuito
    de esta batería se fabrica de ese valor, o el cable de la batería no lleva ninguno. Pregunte al fabricante del inversor.

battery-cable = Cable de la batería
charger-cable = Cable de { $charger }
cable-drop = { $cable }: pierde { $drop }, y se admite { $limit }: uno más grueso o un tramo más corto.
cable-no-fuse = { $cable }: no se muestra el fusible: { $why }.
cable-not-shown = { $cable } y su fusible: no se muestran: { $why }.
cable-fuse =
    { $cable }: { $wire }, { $fuse }, fusible y portafusible para { $volts } CC o más, poder de corte { $breaks }: busque
    ambos en el fusible. La corriente de cortocircuito de la batería es { $short }.
    .assumed =
        { $cable }: { $wire }, { $fuse }, fusible y portafusible para { $volts } CC o más, poder de corte { $breaks }: busque
        ambos en el fusible. No se dio la corriente de cortocircuito de la batería: se suponen { $short }.
charger-cables-open =
    No se muestran los cables de { $chargers } ni los fusibles que cada uno necesita en ambas puntas, pues batería y cargador
    pueden alimentarlo: ponga el tramo del cargador a la batería.

limit-unknown = No se muestra si la batería admite lo que la carga: ponga su corriente máxima de carga.
charger-strong = { $charger } carga con { $current }, y la batería admite { $limit }: ajústelo más bajo o use uno menor.
chargers-strong =
    Todos los cargadores a la vez traen { $current }, y la batería admite { $limit }: nunca todos a la vez, o ajústelos más bajo.
straight-unknown =
    { $charger }: directo del alternador solo se carga una batería de plomo-ácido. Elija el tipo de batería o ponga un cargador
    CC-CC entre ambos.
straight =
    { $charger }: nada limita los { $current }: una batería vacía toma todo lo que da el alternador. Cable y ambos fusibles para
    la corriente máxima del alternador, o un cargador CC-CC entre ambos.
dc-dc-input =
    { $charger }: del lado del alternador el cargador CC-CC toma más de lo que da, { $current } o más: dimensione ese cable y sus
    dos fusibles por la ficha del fabricante.
kind-unknown = No se muestra si { $charger } limita su corriente: ponga qué tipo de cargador es.

goes-to = En qué se va la energía del día
    .load = Consumo
    .day = Al día
    .share = Parte
cable-table = Cable de la batería
chargers-table = Cables de los cargadores, con fusible en ambas puntas
    .charger = Cargador
    .cable = Cable
    .way = Una vía
    .current = Corriente
    .drop = Caída
    .fuse = Fusible
not-shown = no se muestra
full-table = De la carga más baja a llena, como mínimo
    .by = Carga con
    .power = Potencia
    .time = Tiempo hasta llena
    .kept = Guardado al día
left-table = { $charger }: lo que deja un día medio tras su consumo
    .month = Mes
    .bring = Traen los paneles
    .left = Sobra
    .full = De la carga más baja a llena
never = nunca

drawing = Consumo del día y batería
    .words = Barras para cada consumo del día, { $energy } en total, y para la batería.
    .one-day = un día · { $energy }
    .needed = batería necesaria · { $energy }
    .yours = su batería · { $energy }
    .load = { $load } · { $energy }
    .in-a-row = el día, consumo a consumo

step-day = Día
    .numbers = todos los consumos
step-charge = Día como carga eléctrica
step-battery = Batería
step-battery-charge = Batería como carga eléctrica
step-average = Corriente media
step-lasts = Dura
step-lasts-lead = Dura, plomo-ácido
step-start = Inversor: arranque más duro
step-dc = Inversor: de la batería
step-dc-start = Inversor: en un arranque
step-current = Cable de la batería: corriente
    .numbers = { $power } desde { $volts }, { $resistance } ida y vuelta
    .charger = más de lo que toman todos los consumos
step-drop = Cable de la batería: caída
step-fuse-least = El fusible es al menos de
step-fuse = Menor { $class } que se fabrica
    .numbers = valores de un { $class }
step-breaks = Poder de corte del { $class }
    .numbers = corriente de cortocircuito { $current }
step-assumed = sin dar: supuesta
step-full = Hasta llena: { $charger }

class-blade = fusible de cuchilla
class-strip = fusible de lámina atornillado
class-t = fusible clase T
fuse = { $class } de { $rating }

buy-battery = batería
    .spec = { $capacity }, { $volts }
buy-fuse = { $class } con portafusible
    .spec = { $rating }, { $volts } CC o más, poder de corte { $breaks } o más

source-ohm = la potencia es tensión por corriente
source-dc = lo que entra en un inversor es lo que sale entre su rendimiento
source-starts = todo encendido y el arranque más duro a la vez dimensionan un inversor
source-cut-off = los inversores de 12 V se desconectan a unos 10,5 V, los de 24 y 48 V en proporción
source-ratings = tamaños en que se venden los inversores
source-exponents =
    exponentes de Peukert: plomo-ácido de 1,1 a 1,3, AGM de 1,05 a 1,15, gel de 1,1 a 1,25, abierto de 1,2 a 1,6
source-full = energía que falta entre potencia de carga por rendimiento de carga
source-taper =
    el plomo-ácido toma toda la corriente hasta el 80 %, luego cada vez menos, hasta un cincuentavo de su capacidad por hora
source-kept = de una carga queda el 85 % en una batería de plomo-ácido, el 95 % en litio
