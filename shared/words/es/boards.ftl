title = Tablas
purpose = Tablas, tablones o machihembrado sobre costillas: cortes al hilo, juntas, marcas y recortes de cada tabla.

run = Tramo, a lo largo de las tablas
    .help = De la pared delantera a la trasera.
field = Campo, a lo ancho de las tablas
    .help = De la pared izquierda a la derecha, adelante. Si se omite: el ancho de la carrocería, adelante y atrás según sus puntos de medida.
field-rear = Campo atrás
    .help = Lo mismo en la pared trasera, si la carrocería no es paralela.
coverage = Ancho que cubre una hilada
    .help = Encaje dos tablas y mida de canto visto a canto visto.
full-width = Ancho total
    .help = Con lengüeta o solape.
joint-gap = Separación entre tablas
    .help = Lo que se deja entre las caras de dos tablas para que puedan hincharse: el grueso del separador. Si se omite: ninguna, tablas apretadas.
thickness = Grueso
    .help = Para el largo de los tornillos y el peso en la lista de compras.
start = Primera hilada
start-balanced = Primera y última hilada de igual ancho
start-full = Primera hilada entera
least-rip = Ancho mínimo de hilada
    .help = Ninguna hilada se corta más angosta. Si se omite: media hilada, si se puede.
end-gap = Holgura en cada extremo del tramo
    .help = Entre las puntas de las tablas y la pared, adelante y atrás. Si se omite: 3 mm.
side-gap = Holgura en cada lado
    .help = Entre las tablas de los lados y la pared, a izquierda y derecha; ahí empieza la primera hilada, a la izquierda. Si se omite: 6 mm.
supports = Ejes de los apoyos
    .help = Desde la pared delantera, con la cinta enganchada una sola vez; las costillas, o lo que esté fijado a ellas.
    .each = Apoyo
support-width = Ancho de un apoyo
    .help = Donde puede entrar un tornillo: la cara del listón, o la de la costilla.
edge-distance = Mínimo de la punta a un tornillo
    .help = De la punta de la tabla al tornillo más cercano: en una junta, en una pared, en el corte de un hueco. En una junta, como máximo medio apoyo. Si se omite: un cuarto del apoyo.
joint-stagger = Desfase mínimo de las juntas
    .help = Entre juntas de hiladas vecinas. Si se omite: 6 in, si las costillas lo permiten.
least-piece = Pieza más corta
    .help = Ninguna tabla junto a una junta o un hueco es más corta; la que corta un hueco se apoya siempre en dos apoyos.
joint-price = Valor de una junta menos
    .help = Una junta da trabajo y se ve: solo se hace una más si ahorra más que esto. En la moneda de los precios; sin precios, en mm de material.
shown-ribs = Costillas con tornillos a la vista
    .help = Contadas desde adelante; en las demás, los tornillos se hunden y se tapan con masilla.
    .each = Número de costilla
opening-clearance = Holgura alrededor de los huecos
    .help = Lo que se corta más allá del borde del hueco, por los cuatro lados. Si se omite: 3 mm.
flange = Pestaña del embellecedor
    .help = Cuánto sobresale el embellecedor del borde del hueco: debe tapar el corte.
screw = Tornillo para las tablas
    .help = Su nombre en la lista de compras, con el largo al final.
screw-length = Largo del tornillo
    .help = De la cabeza a la punta. Si se omite: el largo con el que termina su nombre.
strip-thickness = Grueso del listón
    .help = Donde agarran los tornillos de las tablas: listón o montante.
behind = Fondo libre detrás del listón
    .help = Una cinta o aire entre el listón y el acero. Si se omite: ninguno, el listón se apoya en la costilla.
screws-across = Tornillos a lo ancho de la tabla
    .help = En cada apoyo.
screws-across-one = Uno, en el centro
screws-across-two = Dos, uno al lado del otro
fill-diameter = Agujero sobre un tornillo hundido
    .help = El diámetro del agujero que se tapa: el de la cabeza del tornillo.
fill-depth = Cuánto se hunden los tornillos
    .help = De la cara de la tabla a la cabeza.
species = Madera
    .help = Para saber cuánto se hinchan y se encogen las tablas.
laid-percent = Humedad al colocarlas
    .help = Con un higrómetro, en medio de una tabla.
driest-percent = Humedad en lo más seco
    .help = Hasta dónde se seca la madera: 6 % en un cuarto con calefacción, 3 a 4 % en una carrocería cerrada al sol.
wettest-percent = Humedad en lo más húmedo
    .help = Lo que toma la madera en temporada húmeda: 12 % bajo techo, 14 % o más en un vehículo húmedo.
cull-percent = Tablas de repuesto
    .help = Tablas que se descartan por rajas, nudos o una lengüeta rota, como parte de las compradas: 10 % en pino. Si se omite: 10 %. No entran en el plan de corte.

field-by-stations = { $front } adelante, { $rear } atrás, según los puntos de medida

opening = hueco { $number }

support-order =
    este apoyo no queda detrás del anterior; anote los ejes en orden, todos medidos desde la pared delantera
no-such-rib = no hay costilla { $rib }; la última es la { $last }
full-width-too-small = el ancho total debe ser al menos lo que cubre una hilada; revise ambos

no-run = las holguras de los dos extremos no dejan tramo; anote menos
no-field = las holguras de los dos lados no dejan campo; anote menos
support-width-missing = aquí se empalman tablas: anote el ancho de los apoyos, la cara donde puede entrar un tornillo
no-courses = con este ancho cubierto no cabe ninguna hilada en el campo, o caben demasiadas; revise ambos
rip-too-narrow =
    una hilada quedaría de { $rip }, menos que el ancho mínimo de { $least }; anote un mínimo menor
    .full =
        una hilada quedaría de { $rip }, menos que el ancho mínimo de { $least }; reparta las dos orillas por igual o
        anote un mínimo menor
edge-off-support =
    en una junta, los tornillos a { $edge } de la punta de la tabla no dan en el apoyo; lo máximo que da en él es
    { $most }: use apoyos más anchos o anote menos
unreachable = tablas de { $longest } como máximo no llegan de costilla a costilla en el tramo; agregue un largo mayor
no-stagger =
    en estas costillas no hay juntas a { $stagger } unas de otras en hiladas vecinas; anote un desfase menor o agregue un
    largo mayor
short-piece =
    toda junta en estas costillas dejaría una pieza de menos de { $least }; use otros largos de venta
joints-number = estas medidas no dan juntas; revise el tramo, los apoyos y los largos de venta

between = en la hilada { $course }, la tabla entre { $from } y { $to } ({ $length })
    .walls = en la hilada { $course }, una tabla de { $length }
end-front = la pared delantera
end-rear = la pared trasera
end-joint = una junta
end-opening = «{ $opening }»
loose =
    { $held ->
        [one] { $board } quedaría suelta, con un solo apoyo: anote todos los ejes a los que se puede atornillar
       *[other] { $board } quedaría suelta, sin ningún apoyo: anote todos los ejes a los que se puede atornillar
    }
    .beside-opening =
        { $held ->
            [one] { $board } quedaría suelta, con un solo apoyo: ponga un taco de apoyo debajo y anote su eje aquí entre las costillas, o mueva el hueco
           *[other] { $board } quedaría suelta, sin ningún apoyo: ponga un taco de apoyo debajo y anote su eje aquí entre las costillas, o mueva el hueco
        }
    .short =
        { $board } es más corta que la pieza más corta permitida, { $least }; mueva el hueco o anote una menor
    .joint =
        { $board } tiene una junta donde un recorte no deja lugar para sus tornillos; con un largo mayor quizá no haga
        falta junta ahí

in-stock = ; use { $length }
screw-too-short =
    { $length } deja menos de { $thread } de rosca en el listón; hacen falta al menos { $least }{ $in-stock }
screw-too-long =
    hundido { $sunk }, un tornillo de { $length } entra { $reach }; tabla, listón y lo libre detrás suman { $room }: toca
    el acero y se traba o se rompe. El largo máximo seguro es { $longest }{ $in-stock }
screw-no-room =
    ningún tornillo agarra en un listón tan delgado sin tocar el acero que hay detrás: debería medir al menos { $least } y
    como máximo { $longest }; use un listón más grueso o hunda menos los tornillos

course-count =
    { $courses ->
        [one] { $courses } hilada
       *[other] { $courses } hiladas
    }
piece-count =
    { $pieces ->
        [one] { $pieces } pieza
       *[other] { $pieces } piezas
    }
hole-count =
    { $holes ->
        [one] { $holes } agujero
       *[other] { $holes } agujeros
    }
joint-count =
    { $joints ->
        [0] ninguna junta
        [one] { $joints } junta
       *[other] { $joints } juntas
    }

rip-both = Cortar al hilo la primera y la última hilada a
rip-last = Cortar al hilo la última hilada a
    .first-full = { $courses }, la primera entera
rip-tapered = Cortar al hilo la última hilada
    .range = { $front } a { $rear }
    .first = de adelante hacia atrás; la primera hilada a { $first }; { $courses }
    .full = de adelante hacia atrás; la primera hilada entera; { $courses }
rip-only = Cortar al hilo la única hilada a
    .tapered = Cortar al hilo la única hilada
    .front-rear = de adelante hacia atrás
cut-first = Cortar la tabla { $letter } a
    .courses = { $courses }, ninguna cortada al hilo
rounded = { $over }; { $note }
bought-for = por { $cost }
holes = Agujeros
    .finish = { $shown } a la vista, { $filled } tapados con { $filler } de masilla en total

openings-unknown = Un hueco de la carrocería tiene un error, así que ninguna tabla se recorta para él: corríjalo en la página de la carrocería.
joint-in-opening =
    Una junta cae donde un hueco recorta sus tablas: con estos largos ningún otro apoyo da juntas. Un largo mayor quizá.
on-nailers =
    { $count ->
        [one] Entre la pared y su junta, la tabla { $boards } se sujeta en un apoyo y en un listón de orilla junto a la pared: fije primero los listones de orilla. Su madera está en la lista de compras; los trazados se comparan sin ella.
       *[other] Entre la pared y sus juntas, las tablas { $boards } se sujetan en un apoyo y en un listón de orilla junto a la pared: fije primero los listones de orilla. Su madera está en la lista de compras; los trazados se comparan sin ella.
    }
not-held =
    { $count ->
        [one] La tabla { $boards } no lleva tornillo en un apoyo a menos de { $edge } de un corte o una punta, ni donde junto a un recorte quedan menos de { $strip }. La sujetan sus otros apoyos.
       *[other] Las tablas { $boards } no llevan tornillo en un apoyo a menos de { $edge } de un corte o una punta, ni donde junto a un recorte quedan menos de { $strip }. Las sujetan sus otros apoyos.
    }
slivers =
    { $count ->
        [one] Junto al recorte de la tabla { $boards } quedan menos de { $strip } del ancho. Una tira así se raja con un tornillo: corra las hiladas (inicio, holgura lateral), o refuércela por detrás y encólela.
       *[other] Junto a los recortes de las tablas { $boards } quedan menos de { $strip } del ancho. Una tira así se raja con un tornillo: corra las hiladas (inicio, holgura lateral), o refuércela por detrás y encólela.
    }
narrow-rip = La última hilada queda de { $rip }, menos de media hilada.
    .full = La última hilada queda de { $rip }, menos de media hilada: con la primera y la última iguales, las orillas son más anchas.
joints-staggered =
    { $joints ->
        [one] La única junta cae sobre un apoyo.
       *[other] Las { $joints } juntas caen sobre apoyos, a { $stagger } o más de hilada a hilada.
    }
joints-in-line =
    { $joints ->
        [one] La única junta cae sobre un apoyo.
       *[other] Las { $joints } juntas caen sobre apoyos; no se pidió desfase.
    }
joints-not-staggered =
    Las juntas caen sobre apoyos, pero estos apoyos y largos no permiten desfasarlas de hilada a hilada: un largo mayor sí.
taper-lost =
    El campo se angosta más de lo que la última hilada puede absorber: en algún punto quedaría más angosta que el mínimo, o
    más ancha que una tabla. Reparta la diferencia entre las hiladas, o cambie el inicio.
rip-at = { $rip } a { $place }
taper-kept =
    La última hilada sigue la pared derecha: { $places } de la pared delantera. Marque estos anchos en sus tablas, únalos
    con una línea recta y corte por ella.
    .bends =
        La última hilada sigue la pared derecha: { $places } de la pared delantera. Marque estos anchos en sus tablas,
        únalos uno a uno con líneas rectas y corte por ellas.
first-course =
    Coloque la primera hilada con un cordel tenso. Atrás puede quedar desde { $nearer } más cerca de la pared izquierda
    hasta { $farther } más lejos que adelante sin que se note en la última hilada.
    .farther =
        Coloque la primera hilada con un cordel tenso. Atrás debe quedar de { $least } a { $most } más lejos de la pared
        izquierda que adelante, o la última hilada delata la diferencia.
    .closer =
        Coloque la primera hilada con un cordel tenso. Atrás debe quedar de { $least } a { $most } más cerca de la pared
        izquierda que adelante, o la última hilada delata la diferencia.
    .too-narrow =
        El campo se angosta tanto que la última hilada quedaría demasiado angosta en un extremo: reparta la diferencia entre
        las hiladas, o cambie el inicio.
facing =
    Los cantos izquierdo y derecho son los que se ven mirando hacia atrás. Los dibujos miran desde arriba: en un techo, la
    cara que se ve desde abajo queda del otro lado.
flange-covers = La pestaña del embellecedor tapa el corte de los huecos, y { $over } más.
flange-short =
    La pestaña del embellecedor llega a { $flange } del borde del hueco, el corte a { $cut }: el corte queda a la vista. Use
    menos holgura.
lap = Los anchos se miden en la cara vista: sume la lengüeta o el solape ({ $lap }) donde se quede.
swell-fits =
    De { $laid } a { $wettest } de humedad, una tabla de { $wood } de corte tangencial se ensancha { $growth }; la junta
    deja { $gap }.
swell-buckles =
    De { $laid } a { $wettest } de humedad, una tabla de { $wood } de corte tangencial se ensancha { $growth }, pero la
    junta deja { $gap }. Atornilladas por la cara, las tablas no pueden correrse hacia las holguras de los lados: se
    pandean. Anote una separación de { $least } o más, o colóquelas más húmedas.
    .tight =
        De { $laid } a { $wettest } de humedad, una tabla de { $wood } de corte tangencial se ensancha { $growth }, pero las
        tablas van apretadas. Atornilladas por la cara, no pueden correrse hacia las holguras de los lados: se pandean.
        Anote una separación de { $least } o más, o colóquelas más húmedas.
rough = { $length } (fuera de 6 a 14 %, cifra aproximada)
gapes =
    Al secarse a { $driest }, cada junta se abre a { $open }, más que la lengüeta o el solape de { $lap }: quedará abierta.
    Coloque las tablas más secas.
opens =
    Al secarse a { $driest }, como en una carrocería cerrada al sol, cada junta se abre { $shrinkage }, hasta { $open }: dé
    el acabado a lengüetas y cantos antes de colocar las tablas, para que no se vea madera cruda.
acclimate =
    Deje las tablas apiladas con separadores dentro de la carrocería unos días antes de cortarlas y colocarlas, y mida una
    en el centro con un higrómetro.
screw-unknown =
    Nada muestra que el largo del tornillo sea correcto: anote el grueso de las tablas y del listón que hay detrás.
    Demasiado largo, toca el acero y se rompe; demasiado corto, no agarra.
screw-range =
    Un tornillo para estas tablas mide de { $least } a { $longest }: agarra en el listón y no llega al acero.
    .unnamed =
        Un tornillo para estas tablas mide de { $least } a { $longest }: agarra en el listón y no llega al acero. Póngale un
        nombre con su largo para la lista de compras.
left-out = Omitido, así que se usa el valor habitual: { $values }.
    .end-gap = holgura en cada extremo { $length }
    .side-gap = holgura en cada lado { $length }
    .opening-clearance = holgura alrededor de los huecos { $length }
    .least-piece = pieza más corta { $length }
    .joint-gap = tablas sin separación
    .cull = tablas de repuesto { $percent }
spares =
    { $count ->
        [one] Además del plan de corte, la lista de compras lleva una tabla de repuesto de { $length }.
       *[other] Además del plan de corte, la lista de compras lleva { $count } tablas de repuesto de { $length }.
    }

counted = , contando cada junta a { $price }
layout-proved-cost = Demostrado: ningún trazado que cumpla estas reglas cuesta menos{ $counted }.
layout-proved-stock = Demostrado: ningún trazado que cumpla estas reglas gasta menos material{ $counted }.
layout-best =
    El mejor trazado encontrado suma { $total }{ $counted }; ninguno que cumpla estas reglas puede sumar menos de
    { $bound }. Puede haber uno mejor entre ambos.
fewer-joints =
    Con { $fewer } el material suma { $more } más que con { $joints }. Para eso, anote { $worth } como valor de una junta
    menos.
more-joints =
    Con { $more } el material sumaría { $saved } menos, { $each } por cada junta más: hágalo si para usted una junta menos
    vale menos que eso.
layouts = Lo que ahorran las juntas
    .joints = Juntas
    .stock = Material
    .stock-length = Largo de material
    .saves = Ahorra
    .least = Mínimo para tantas
    .proved = demostrado
    .bound = no menos de { $bound }

table = Tablas, y dónde va cada una: hilada.pieza, desde la pared izquierda y desde adelante
    .board = Tabla
    .count = Cuántas
    .length = Largo
    .width = Ancho
    .places = Lugares
    .cut-out = Recortes
full = entera
end-widths = { $left } en la punta izquierda, { $right } en la derecha
notch-of = { $opening }: { $notch }
notch-through = a todo lo ancho
notch-inside =
    { $edge ->
        [left] dentro de la tabla, de { $from } a { $to } desde el canto izquierdo
       *[right] dentro de la tabla, de { $from } a { $to } desde el canto derecho
    }
notch-edge =
    { $edge ->
        [left] { $depth } de fondo desde el canto izquierdo
       *[right] { $depth } de fondo desde el canto derecho
    }

board-of = tabla { $letter }
ripped-to = cortada al hilo a { $width }
rib-mark = costilla { $number }
nailer-mark = listón de orilla
shown = a la vista
filled = tapado
joint = junta
two-screws = 2 tornillos, a { $edge } de cada canto
    .off-right = 2 tornillos, a { $low } y { $high } del canto derecho
beside-cut-out = a { $at } del canto derecho, junto al recorte
cut-out-from = recorte para { $opening }, desde
cut-out-to = recorte para { $opening }, hasta
rip-bends = el corte al hilo quiebra
    .width = aquí { $width } de ancho

nailers = Listones de orilla, con la cara a ras de los apoyos
    .at = En
    .away = De la pared al eje
    .from = Desde la pared izquierda
    .to = Hasta
    .length = Largo
nailer-wall =
    { $wall ->
        [front] pared delantera
       *[rear] pared trasera
    }
before = Antes de colocar las tablas
fix-nailer =
    { $wall ->
        [front] Fije un listón de orilla a lo largo de la pared delantera
       *[rear] Fije un listón de orilla a lo largo de la pared trasera
    }
    .place =
        { $section }; eje a { $away } de la pared, de { $from } a { $to } de la pared izquierda; cara a ras de los apoyos.
nailer-section = { $thickness } x { $width }, { $length } de largo
    .unknown = tan grueso como los apoyos, { $width } de ancho, { $length } de largo

spare-item = { $material }, repuesto
nailer-item = listón de orilla
screw-item = tornillo
    .nailers = para los listones de orilla, tan largo como permita aquello en que se fijan
    .stock = para las tablas, { $length }
    .unknown = para las tablas, sin largo: anote el grueso de la tabla y del listón
filler-item = masilla para madera
    .spec = para tornillos hundidos

plan = Plano de las tablas
    .words =
        { $courses } en un tramo de { $run }, en { $pieces }, con { $holes }; visto desde arriba, el frente a la izquierda,
        la pared izquierda abajo.
board-words =
    Una tabla de { $length }; marcas: { $marks }, recortes: { $notches }; su canto izquierdo es el de arriba.
nailer-at = orilla · { $at }
joint-template = Tornillos en una junta
    .words =
        Ponga la línea vertical llena sobre la junta, en el eje del apoyo; los tornillos van a { $edge } de cada punta.
    .text = junta sobre el apoyo
cut-out-template = Recorte para { $opening } en la tabla { $letter }
    .words =
        Visto desde arriba, con el canto izquierdo arriba: póngalo en el revés de una tabla de techo o en la cara de una
        tabla de piso, con sus bordes largos sobre los de la tabla; el recorte empieza a { $from } de la punta izquierda.

step-field = Campo a cubrir
step-left = Sobrante después de las hiladas enteras
    .gaps = Sobrante después de las hiladas enteras, cada una con su separación j
step-rip = Ancho al hilo
step-least-rip = Ancho mínimo
    .formula = ancho ≥ mínimo
    .kept = se cumple
step-run = Tramo a cubrir
step-joints = Juntas
    .formula = junta = eje del apoyo
    .numbers = { $pieces } en { $courses }
step-stagger = Desfase
    .formula = juntas de hiladas vecinas ≥ desfase
    .numbers =
        { $layouts ->
            [one] { $layouts } trazado de hilada
           *[other] { $layouts } trazados de hilada distintos
        }
step-joint-mark = Marca en una junta
    .result = sobre el apoyo
step-mark = Tabla { $letter }, costilla { $rib }
step-first-course = Primera hilada atrás
    .formula = w − s a mín(w + s, w + e − m)
    .result = { $low } a { $high }
step-taper = Diferencia por hilada, si se reparte entre todas
step-last-rear = Última hilada en la pared trasera
step-filler = Masilla para los agujeros tapados
step-least = Tornillo más corto
step-longest = Tornillo más largo
step-swells = Hinchazón de una tabla
step-shrinks = Contracción de una tabla
