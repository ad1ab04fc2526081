title = Circuito
purpose = Luces, ventiladores y tomas cableados como un árbol: calibres, caída de tensión, empalmes, fusibles.

runs = Tramos
    .help = Cada trecho de cable de un empalme al siguiente, empezando en la fuente.
    .row = tramo
id = Nombre del tramo
    .help = Escríbalo en las dos puntas del cable.
from = Desde
    .help = El empalme más cercano a la batería; el del fusible se llama source.
to = Hasta
    .help = El empalme o la toma que alimenta este tramo; a cada uno lo alimenta un solo tramo.
length = Longitud, de ida
    .help = Por donde irá el cable, subidas y rodeos incluidos; la vuelta se suma aquí.
route = Longitud según por dónde va
    .help =
        En lugar de la longitud: a lo largo de la carrocería, a lo ancho, y lo que sube y rodea. Si se indica una longitud,
        vale esa.
route-from = Empieza
route-to = Termina
x = Desde la pared delantera
y = Desde la pared izquierda
rise = Subidas y rodeos
    .help = Todo lo que sube, baja y rodea cosas.
conductor = Cable
    .help =
        Impreso en la cubierta: 16 AWG, 1,5 mm2; o los ohm/m de un conductor. auto toma el menor cobre que alcanza.
fuse-block = Termina en una caja de fusibles
    .help = Cada tramo que sale de ella tiene entonces su propio fusible, que protege solo su cable.
device-rating = Corriente nominal del atenuador o interruptor de este tramo
    .help = Impreso en el atenuador o interruptor, en CC; deje vacío si no hay ninguno.
device-watts = O en vatios
    .help = Impreso en el atenuador o interruptor, a la tensión de este circuito; se comprueban los dos.
protects-itself = El atenuador o interruptor se protege solo
    .help =
        Su fabricante dice que tiene fusible propio o limita su corriente: entonces el fusible anterior puede ser mayor que
        su corriente nominal.

loads = Cargas
    .help = Lámparas, ventiladores, bombas, tomas: todo lo que consume y no está en una fila de abajo.
    .row = carga
at = En
    .help = El final del tramo del que cuelga.
label = Nombre
model = Cómo consume
model-power = potencia constante (W): lámparas LED con controlador, cargadores, electrónica
model-current = corriente constante (A): tiras LED, cargas medidas
model-resistance = resistencia (ohm): calefactores, lámparas de filamento
value = Cuánto
    .help = Uno de ellos, de su etiqueta: en W, A u ohm, según consume.
count = Cuántas
    .help = Iguales, en el mismo lugar.
positive-lead = Cable positivo
    .help = Su color tal como viene en el aparato, con su franja: negro/blanco. Compruébelo con un multímetro.
negative-lead = Cable negativo
    .help = Su color tal como viene en el aparato.

rows = Filas de luces
    .help = Luces iguales en fila, cada una alimentada desde la anterior: sus tramos y empalmes se hacen aquí.
    .row = fila
row-label = Nombre de la fila
    .help = Sus empalmes se llaman left 1, left 2 y así; sus tramos, tramo left 1 y así.
row-count = Cuántas
    .help = Todas iguales, una tras otra.
first = Cable hasta la primera
    .help = Desde donde se alimenta la fila, subidas y rodeos incluidos, de ida.
spacing = Separación
    .help = De cada una a la siguiente, a lo largo del cable.
row-conductor = Cable
    .help = Para todos los tramos de la fila.

slack = Sobrante en cada punta
    .help = Se suma a cada pedazo de cable en las dos puntas, para pelar y para un segundo intento.
conductor-choices = Calibres entre los que elige auto
    .help =
        Lo que tiene o puede comprar. Si se deja vacío: todos los calibres AWG de 16 a 4/0, desde 18 dentro de una manguera.
    .each = Calibre
positive-wire = Cable positivo de los tramos
    .help = El color del cable que compró.
negative-wire = Cable negativo de los tramos
    .help = El amarillo es más difícil de confundir con el negro de la red (ABYC E-11).

run-called = el tramo { $name }
run-of-row = tramo { $node }
light-of-row = luz { $node }
several = { $count } × { $label }

too-many-runs = con las filas hay { $count } tramos; un circuito lleva como mucho { $most }
no-loads = agregue al menos una carga o una fila de luces
length-or-route = indique la longitud, o dónde empieza y termina el tramo
both-leads = indique los colores de los dos cables, o de ninguno
choices-named = los calibres para elegir ya están indicados; escriba auto aquí
mixed-series =
    auto AWG y auto mm2 no se mezclan en un circuito; use uno de los dos, o indique los calibres para elegir
load-on-block =
    «{ $node }» es una caja de fusibles: dé a la carga un tramo propio desde ahí, que tiene fusible
at-low = a { $volts }: { $problem }

overheats =
    { $conductor } se calienta demasiado: tal como va tendido admite { $ampacity }, y tiene que llevar { $current }; use uno
    más grueso, o auto
run-overheats = { $run }: { $problem }
    .short = { $run } se calienta demasiado
current-at = { $current } a { $volts }
too-thin =
    ningún fusible sirve: { $problem }. El más débil es { $run }; termine el tramo anterior en una caja de fusibles, y
    tendrá su propio fusible
    .short = { $run } es demasiado fino para el fusible anterior
no-fuse = ningún fusible sirve: { $problem }
device-small =
    el atenuador o interruptor ({ $run }) es para { $rated }, y tiene que llevar { $current }: ponga uno mayor o divida el
    tramo
    .short = el atenuador o interruptor es demasiado pequeño ({ $run })
device-fuse =
    el atenuador o interruptor ({ $run }) es para { $rated }, y el menor fusible para su corriente es de { $fuse }: ponga
    uno mayor, o uno que se proteja solo, e indíquelo aquí
    .none =
        el atenuador o interruptor ({ $run }) es para { $rated }, y no se fabrica un fusible para su corriente: divida el
        tramo

answer-lowest = Tensión más baja en una carga
    .text = { $volts } ({ $percent })
    .note = en { $node }; se permite { $limit }
answer-fuse = Fusible en la fuente
    .main = Fusible principal en la fuente
    .with-wire = Fusible y cable
    .hidden = no se muestran: { $why }
draws = { $current } con todo encendido
    .branches = { $current } con todo encendido; fusibles de ramales: { $branches }
branch = { $run } { $rating }
answer-wire = Cable
    .least = el menor cobre que alcanza
    .found = el menor cobre que se encontró
    .given = como se indicó

not-shown = No se muestra: { $problem }.
lost =
    Se pierde demasiado hasta { $loads }: { $percent } en el peor caso, y se permite { $limit }. { $instead }
instead = { $size } en todos los tramos serviría; ponga los tramos en auto para hallar el menor cobre.
    .none = Ningún calibre alcanza: acorte los tramos o divida el circuito.
more-names = { $more } más
good = Todas las cargas están dentro del límite de { $limit }, y cada tramo admite el fusible anterior.
in-line =
    El atenuador o interruptor ({ $run }) lleva su propio fusible, de { $rating }, en línea donde el tramo sale de
    { $node }: el fusible anterior es mayor que su corriente nominal.
must-protect =
    { $count ->
        [one] El atenuador o interruptor ({ $runs }) debe protegerse solo: el fusible anterior protege el cable, no el aparato.
       *[other] Los atenuadores o interruptores ({ $runs }) deben protegerse solos: los fusibles anteriores protegen el cable, no el aparato.
    }
switch-negative =
    Muchos atenuadores cortan el negativo: los negativos detrás de uno vuelven solo a él, nunca a la barra, al chasis ni al
    negativo de otro tramo.
far-fuses =
    Con una fuente en cada extremo, cualquiera de las dos puede quemar el cable: { $runs } lleva un fusible del mismo
    calibre en ambos extremos. Nunca conecte una batería de litio directamente a un alternador: entre ambos va un cargador
    CC-CC.
polarity = Polaridad de { $loads }: { $clash }.
clash-joined =
    sus colores significan lo contrario que los de { $other } en el mismo empalme: una + con +, sea cual sea el color
stopped = La búsqueda del menor cobre se detuvo antes de terminar.
    .bound = La búsqueda del menor cobre se detuvo antes de terminar; ninguna combinación ahorra más de { $saves }.
one-spool = Un solo rollo: { $size } en todos estos tramos también sirve, con { $more } más de cobre.
headroom =
    Con este cable, todos los tramos a la vez pueden ser { $percent } más largos antes de que una carga baje del límite.
heat = En el cable se pierden { $loss } en calor, de { $all } que da la fuente.

table-loads = Tensión en cada carga, todas encendidas
    .load = Carga
    .at = En
    .voltage = Tensión
    .drop = Caída
    .draws = Consume
table-runs = Tramos: qué cortar, con el sobrante en las dos puntas
    .run = Tramo
    .length = De ida
    .wire = Cable
    .cut = Corte
    .current = Corriente
    .carries = Admite
    .name = { $run }: { $from } a { $to }
    .routed = { $length }, según por dónde va
    .pieces = { $length } + y −
table-wire = Cable, y la funda para { $count } conductores de un calibre
    .wire = Cable
    .all = En total, + y −
    .spools = Rollos de cada color
    .bundle = Mazo de unos
    .sleeve = Funda por dentro
    .spool = { $count } de { $length }
table-mix = Un solo rollo o una combinación, para los tramos en auto
    .sizes = Calibres
    .copper = Cobre
    .drop = Mayor caída
    .fuse = Fusible
    .mix = mejor combinación
    .single = un calibre
table-fuses = Fusibles: cada uno protege los tramos que le siguen
    .fuse = Fusible
    .rating = Calibre
    .least = Soporta al menos
    .protects = Protege
    .main = principal, en la fuente
    .in-block = { $run }, en la caja de fusibles
    .in-line = { $run }, en línea, donde empieza
table-devices = Atenuadores e interruptores
    .run = En el tramo
    .rated = Es para
    .carries = Lleva
    .fuse = Fusible anterior
    .safe = Seguro porque
    .own = se protege solo
    .by-fuse = el fusible no es mayor
table-polarity = Polaridad: cable de la carga con cable del tramo
    .load = Carga
    .positive = + positivo
    .negative = − negativo
    .joined = { $lead } con { $wire }
    .beware = ! no por el color
table-what-if = Y si, con este cable y todo encendido
    .lowest = Tensión más baja
    .drop = Caída
    .source = La fuente da
    .planned = como está previsto
    .low = batería baja, { $volts }
    .tenth = fuente un 10 % más baja
    .longer = cada tramo un 25 % más largo
    .longest = el tramo más largo ({ $run }) un 50 % más largo
    .both = { $low }, y cada tramo un 25 % más largo
    .unsteady = sin tensión estable

checks-cut = Cable para cortar, tramo a tramo
    .line = { $run }: { $length } de { $wire }, uno { $positive } (+) y uno { $negative } (−)
    .note = { $from } a { $to }, con el sobrante en las dos puntas
    .bench = cortar { $wire }, uno { $positive } (+) y uno { $negative } (−)
checks-splice = Empalme por empalme, una vez para + y otra para −
    .line = { $node }: { $ways } vías, dos veces: { $joined }
    .studs = terminales de ojal en un espárrago o barra para cada uno
    .connectors = conectores para cada uno: { $connectors }
joins-from = desde { $node } ({ $run })
joins-on = sigue a { $node } ({ $run })
connector = { $count } de { $ways } vías
    .linked = { $connectors }, enlazados
lead-colors = { $load }: + { $positive } con { $positive-wire }, − { $negative } con { $negative-wire }

cut-stock = cable { $wire }, uno positivo y uno negativo
buy-block-fuse = fusible para la caja de fusibles
buy-block = caja de fusibles con barra negativa
    .spec = { $ways } circuitos o más, { $rating } o más, { $volts } CC o más
buy-device = atenuador o interruptor
    .spec = { $rated } CC
    .spec-own = { $rated } CC, se protege solo
buy-splice = conector de empalme
    .spec = { $ways } vías, admite { $size }
    .spec-plain = { $ways } vías
buy-bus = barra colectora o espárrago
    .spec = { $ways } lugares, espárrago { $stud }
buy-lead-lug-spec = para el cable de una carga, espárrago { $stud }

drawing = Circuito
    .part = Circuito, parte { $part } de { $parts }
    .words = Un árbol de tramos: { $nodes }.
    .source = la fuente a { $volts }
    .source-with = la fuente a { $volts }, con { $loads }
    .node = { $node } alimentado desde { $from } a { $volts }
    .node-with = { $node } alimentado desde { $from } a { $volts }, con { $loads }
    .fused = { $node } alimentado desde { $from } por un fusible de { $rating } a { $volts }
    .fused-with = { $node } alimentado desde { $from } por un fusible de { $rating } a { $volts }, con { $loads }
    .legend = continua +, a trazos −, puntos: empalmes
    .ways = { $ways } vías
    .block = caja de fusibles
    .fuse = fusible { $rating }
    .main-fuse = fusible { $rating } en +
    .from = desde { $node }

step-all = Cada carga consume a su propia tensión
    .formula = I = P / V, I, o V / R
    .numbers = { $loads } en { $runs }, todo resuelto a la vez
    .loads =
        { $count ->
            [one] { $count } carga
           *[other] { $count } cargas
        }
    .runs =
        { $count ->
            [one] { $count } tramo
           *[other] { $count } tramos
        }
    .result = { $current } de la fuente
step-run = Caída de { $run }, { $from } a { $to }
step-lowest = Tensión en { $node }, la más baja de todas las cargas
step-share = Su parte de la tensión de la fuente
step-check = Comprobación: la potencia que entra es la que sale
step-low = Corriente de la fuente con la batería al mínimo
step-of-run = { $run }: { $step }
