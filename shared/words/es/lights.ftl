title = Luces de techo
purpose = Repartir las lámparas en el techo lejos de costillas y aberturas, y ver cuánta luz dan sobre la mesa o el piso.

lamps = Lámparas
rows = Filas a lo largo del vehículo
columns = Lámparas por fila
    .help = Con filas: cuántas a lo largo del vehículo.
places = Puntos a mano
    .row = lámpara
x = Desde la pared delantera
    .help = De la pared delantera al centro de la lámpara.
y = Desde la pared izquierda
    .help = De la pared izquierda al centro de la lámpara, mirando hacia delante.
area = Techo
    .help = Su esquina delantera izquierda es la de la carrocería.
length = Largo del techo
width = Ancho del techo
lamp = La lámpara
hole = Agujero
    .help = Corte según la ficha técnica: el diámetro de la corona.
rim = Aro
    .help = Diámetro exterior del aro que se ve.
depth = Profundidad
    .help = De la cara inferior del aro al fondo de la lámpara, con muelles y conector.
lumens = Luz de cada una
    .help = En el envase, en lúmenes.
beam-angle = Ángulo del haz
    .help = En el envase, de borde a borde del haz.
watts = Potencia de cada una
    .help = En el envase.
mass = Peso de cada una
    .help = Para el peso en la lista de compra: en el envase, o en una báscula de cocina.
clearance = Separación desde el aro
    .help = Del aro a cualquier costilla, abertura con su marco, pared u otra lámpara.
board = Centradas en las tablas de
    .help = Una hoja de tablas de este techo: cada lámpara queda centrada en una tabla.
plane-height = Altura de la superficie iluminada
    .help = Del piso a la mesa o la encimera; 0 para el piso.
lamp-height = Altura de las lámparas
    .help = Del piso al techo.
space-above = Espacio sobre la cara del techo
    .help = De la cara visible del techo a lo que haya encima: tabla y hueco.
feed = Por dónde sube el cable
    .help = Para los largos de cable; la esquina delantera izquierda si se deja en blanco.
feed-x-help = De la pared delantera al punto por donde sube el cable.
feed-y-help = De la pared izquierda al punto por donde sube el cable, mirando hacia delante.
rise = Subida
    .help = Del fusible al techo; se cuenta una vez por fila.
model = Haz
beam-model-half-power = se apaga hacia el borde, donde queda la mitad
beam-model-cone = parejo dentro del ángulo

columns-too = indique también las lámparas por fila, por ejemplo 6
rim-covers = el aro debe tapar el agujero: no puede ser más chico
body-wrong =
    { $part ->
        [ribs] las lámparas no deben caer sobre las costillas, y las de la carrocería tienen un error: corríjalo en la página de la carrocería
        [rib_width] las lámparas no deben caer sobre las costillas, y su ancho tiene un error: corríjalo en la página de la carrocería
       *[openings] las lámparas no deben caer sobre las aberturas, y una de la carrocería tiene un error: corríjalo en la página de la carrocería
    }
no-boards = las tablas de esa hoja no llenan este techo; elija la hoja de este techo
wrong-ceiling = los lados del techo deben medir de 100 mm (4 in) a 50 m (164 ft)
wrong-count = debe haber al menos 1 lámpara y como mucho { $most }
wrong-rim = el diámetro del aro debe ser de 5 mm (0,2 in) a 1 m (39 in)
wrong-clearance = la separación debe ser de 0 a 1 m (39 in)
wrong-rib = costilla { $number }: su centro debe quedar a menos de 100 m (328 ft), y su ancho entre 0 y 1 m (39 in)
wrong-opening = abertura { $number }: su esquina debe quedar a menos de 100 m (328 ft), y sus lados entre 0 y 50 m (164 ft)
wrong-board = tabla { $number }: su eje debe quedar a menos de 100 m (328 ft)
wrong-place = lámpara { $number }: debe quedar en el techo
wrong-lumens = la luz debe ser de 1 a 1 000 000 lm
wrong-beam = el ángulo del haz debe ser de 5° a 180°; a partir de 180° use el haz parejo
wrong-cone = el ángulo del haz debe ser de 5° a 360°
wrong-height = la superficie iluminada debe quedar entre 50 mm (2 in) y 20 m (65 ft) por debajo de las lámparas
wrong-area = los lados de la superficie deben medir de 100 mm (4 in) a 50 m (164 ft)
wrong-cell = las celdas deben medir al menos 10 mm (0,4 in), y ser 40 000 como mucho
wrong-illuminance = la iluminancia debe ser de 1 a 100 000 lx
wrong-factor = los factores de utilización y de mantenimiento deben ser mayores que 0 y como mucho 1

count = Lámparas
    .note =
        { $moved ->
            [0] { $watts }; ninguna movida
            [one] { $watts }; { $moved } movida
           *[other] { $watts }; { $moved } movidas
        }
mean = Luz media sobre la superficie
    .note = de { $lowest } a { $highest }
holes = Agujeros
    .note = bajo un aro de { $rim }, { $depth } de profundidad

no-clear-spot =
    Lámpara { $lamp }: no hay un punto libre en este techo; use una lámpara de aro más chico, o menos separación.
too-many =
    { $most ->
        [one]
            Las lámparas { $one } y { $other } quedan demasiado cerca: con esta separación no cabe más de { $most } de
            estas lámparas en este techo.
       *[other]
            Las lámparas { $one } y { $other } quedan demasiado cerca: con esta separación no caben más de { $most } de
            estas lámparas en este techo.
    }
too-close =
    Las lámparas { $one } y { $other } quedan demasiado cerca: no se encontró un reparto que deje libres a todas. Mueva
    una a mano, o use menos.
too-deep =
    La lámpara tiene { $depth } de profundidad y sobre la cara del techo solo hay { $space }: no cabe.
not-mirrored =
    { $count ->
        [one]
            Izquierda y derecha no son simétricas en la lámpara { $lamps }: no se encontró un punto libre a ambos lados.
       *[other]
            Izquierda y derecha no son simétricas en las lámparas { $lamps }: no se encontraron puntos libres a ambos
            lados.
    }
no-rise =
    El cable que sube del fusible al techo no está contado: anótelo donde se pide por dónde sube el cable.
no-rib-width =
    El ancho de las costillas no está medido: solo se dejan libres sus ejes, y una lámpara aún puede caer sobre
    una costilla. Mídalo en la página de la carrocería.
no-obstacles =
    En la página de la carrocería no hay costillas ni aberturas: las lámparas solo se separan de las paredes y entre sí.
not-a-point =
    La superficie iluminada está a menos de cinco veces el tamaño de la lámpara: justo debajo, la luz es más suave que
    en el mapa.
direct-only = Solo luz directa; un techo y unas paredes claras suman a ella.

spots = Dónde van las lámparas
    .lamp = Lámpara
    .moved = Movida
    .clear = Libre
    .yes = sí
    .no = no
tasks = Luz recomendada, y dónde se alcanza
    .task = Tarea
    .light = Luz
    .reached = Se alcanza
    .source = Fuente
reached-everywhere = en todas partes
reached-on-average = en promedio
reached-under-lamps = bajo las lámparas
reached-nowhere = no
wires = Cable a cada lámpara, solo ida
    .to = A
    .from = De
    .length = Largo
    .feed = por donde sube

task-office = oficina: escribir, teclear, leer
task-commercial-kitchen = cocina profesional
task-counter = encimera, fogones, fregadero
task-long-reading = lectura prolongada
task-bathroom = baño
task-short-reading = lectura ocasional
task-kitchenette = cocineta o aseo en el trabajo
task-kitchen = cocina, luz general
task-hallway = pasillo en el trabajo
task-living = estar, comedor, dormitorio, baño: luz general
task-dining = mesa de comer

lamp-name = lámpara { $number }
not-clear = no está libre
ceiling = techo
line = línea a { $y } de la pared izquierda
item = lámpara de techo
    .spec = { $lumens }, { $angle }, { $watts }, agujero de { $hole }
offer = Hacer un circuito con estas lámparas
plan = Lámparas desde arriba, el frente a la izquierda
    .words =
        { $lamps ->
            [one] { $lamps } lámpara
           *[other] { $lamps } lámparas
        } en un techo de { $length } por { $width } con { $ribs ->
            [one] { $ribs } costilla
           *[other] { $ribs } costillas
        } y { $openings ->
            [one] { $openings } abertura
           *[other] { $openings } aberturas
        }.
map = Luz a { $height } sobre el piso, cada paso { $step }
    .words = Un mapa de la luz bajo las lámparas, de { $lowest } a { $highest } en cinco pasos de { $step }.
template = Agujero de una lámpara
    .words =
        Ponga el cruce de los ejes sobre la cruz de lápiz de una lámpara, uno de ellos a lo largo de la tabla. Corte el
        círculo interior, de { $hole }; el exterior, de { $rim }, es el aro: dentro de él no debe haber nada.
    .hole = agujero { $hole }
    .rim = aro { $rim }

step-along = De lámpara a lámpara a lo largo, la mitad hasta las paredes
step-across = De fila a fila, la mitad hasta las paredes
step-peak = Intensidad hacia abajo
step-cone = Intensidad dentro del haz
step-below = Justo debajo de una lámpara
step-mean = Media sobre la superficie
    .numbers =
        { $lamps ->
            [one] { $lamps } lámpara
           *[other] { $lamps } lámparas
        }, { $cells ->
            [one] { $cells } celda
           *[other] { $cells } celdas
        }

source-even-rows = lámparas a un paso entre sí y a medio paso de las paredes
source-cells =
    dos lámparas no pueden compartir una celda cuya diagonal es menor que su distancia mínima: no más lámparas que celdas
source-point = fuente puntual: E = I cos θ / d², la definición de iluminancia
source-cosine = literatura de óptica LED, I = I₀ cosᵐ θ, m = −ln 2 / ln cos(medio ángulo del haz)
source-cone = ángulo sólido de un cono, 2π (1 − cos(medio ángulo del haz))
source-en-12464 = EN 12464-1, tabla de iluminancia mantenida
source-ies = IES Lighting Handbook, una edición anterior, tabla 10-7, p. 10-34
source-ufc = US DoD UFC 3-530-01 (2006), iluminancia recomendada
