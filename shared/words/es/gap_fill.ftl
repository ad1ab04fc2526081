title = Relleno de juntas y agujeros
purpose = Cuánta masilla de dos componentes mezclar, tanda por tanda dentro de su tiempo de uso, y qué comprar.

product = Qué es
    .help = Su nombre en la lista de compras, por ejemplo epóxico transparente.
gaps = Juntas y rendijas
    .row = junta
holes = Agujeros
    .row = agujero
label = Nombre
    .help = Por ejemplo: juntas del piso.
hole-label = Nombre
    .help = Por ejemplo: agujeros de tornillos viejos.
count = Cuántos
length = Largo
width = Ancho
    .help = Promedio de varios puntos; una broca que apenas entre sirve de calibre.
depth = Profundidad
    .help = Hasta donde se rellena: hasta el respaldo o hasta un cordón metido en la junta.
open-below = Abierto por debajo
    .help =
        La masilla escurre sobre el escape, los cables y la chapa: lo que está abierto por debajo se tapa antes, con cinta o
        con un tapón. Diga que no solo donde haya visto que está cerrado.
diameter = Diámetro
    .help = De lado a lado del agujero, en la superficie.
shape = Forma
shape-plain = recto
shape-countersunk = cono avellanado
shape-plugged = con tapón
bottom = Diámetro en el fondo del cono
    .help = De un agujero avellanado: en su extremo inferior; 0 si termina en punta.
plug-diameter = Diámetro del tapón
    .help = De un agujero con tapón: solo se rellena lo que el tapón deja libre.
plug-length = Largo del tapón
passes = Capas
    .help = El trabajo se reparte por igual; cada capa se vierte cuando la de abajo ya fraguó.
shrink-percent = Contracción
    .help = En volumen, de la ficha técnica: epóxico sin solvente 2 a 5 %, masilla al agua mucho más.
loss-percent = Desperdicio
    .help = Lo que se queda en vasos y palitos o se escurre por debajo. Si se omite es 10 %; ponga 0 si no hay.
mix = Proporción de mezcla
by = Medido por
measured-volume = volumen
measured-mass = peso
a = Partes de A
    .help = La parte A suele ser la resina. En la etiqueta: la proporción de mezcla A : B.
b = Partes de B
    .help = La parte B suele ser el endurecedor.
density-a = Densidad de A
    .help = En la ficha técnica. Una proporción por peso necesita las dos densidades.
density-b = Densidad de B
pot-life = Tiempo de uso de la etiqueta
    .help = Con la temperatura para la que se da, casi siempre 25 °C (77 °F).
time = Tiempo de uso
at = A
temperature = Temperatura ahora
    .help = De las botellas y del cuarto, la más alta de las dos.
pour-rate = Ritmo de vertido
    .help =
        Mida el tiempo de un vaso: lo que llevaba, entre los minutos desde la mezcla hasta la última gota. Omítalo hasta
        haberlo medido.
batch-limit = Tanda máxima
    .help =
        Lo que la etiqueta deja mezclar de una vez. Si se omite, ningún vaso lleva más de 100 g: una masa mayor se calienta
        sola.
cup-diameter = Diámetro del vaso
    .help =
        Por dentro, de un vaso de paredes rectas: da las marcas como alturas desde el fondo. Omítalo si el vaso tiene
        escala.
containers = Envases en la tienda
    .help = Con el precio de cada uno se eligen los más baratos que alcancen; sin él, los que dejen menos sobrante.
    .row = envase
part = Contiene
holds-a = parte A
holds-b = parte B
holds-kit = juego de las dos
size = Tamaño
    .help = De un juego: las dos partes juntas.
price = Precio
wood = Tablas junto a las juntas
    .help = Para saber cuánto se abren y cierran las juntas: la masilla rígida no las sigue.
species = Madera
board-width = Ancho de una tabla
cut = Anillos de crecimiento
rings-flat = tumbados: arcos en la punta
rings-quarter = de pie: líneas en la punta
driest-percent = Humedad en lo más seco
    .help = En una carrocería al sol o con calefacción.
wettest-percent = Humedad en lo más húmedo
    .help = En un invierno húmedo.

nothing-given = agregue al menos una junta o un agujero
plug-missing = ponga el tamaño del tapón, o elija un agujero recto
plug-too-wide = el tapón no debe ser más ancho que su agujero
plug-too-long = el tapón no debe ser más largo que la profundidad de su agujero
wettest-below-driest = no debe ser menor que la humedad en lo más seco
nothing-to-fill = no hay nada que rellenar; las medidas deben dejar espacio junto a los tapones

gap-number = junta { $number }
hole-number = agujero { $number }
part-a = parte A
part-b = parte B
kit = juego
by-volume = A { $a } + B { $b }
by-weight = A { $a } + B { $b } en peso
clauses = { $first }; { $next }

mix-in-all = Mezcla en total
batches =
    { $count ->
        [one] Tanda
       *[other] Tandas
    }
    .of-passes =
        { $passes ->
            [one] { $passes } capa, { $each } en ella
           *[other] { $passes } capas, { $each } en cada una
        }
cups = Vasos, uno tras otro
    .of-batches =
        { $batches ->
            [one] { $batches } tanda de { $cups } vasos
           *[other] { $batches } tandas de { $cups } vasos cada una
        }
    .limit = no hay límite de la etiqueta, así que ningún vaso lleva más de { $most }
workable = cada una se puede usar unos { $time }
    .unknown = respete el tiempo de uso de la etiqueta
buy = Compre
    .part = { $count } × { $part } { $size }
    .cost = { $cost } en total
    .left-over = sobra: A { $a }, B { $b }

cups-of-most =
    No hay tanda máxima, así que cada tanda se mezcla en { $cups } vasos de { $most } como máximo, y cada uno se vierte
    antes de mezclar el siguiente. El tiempo de uso de las etiquetas casi siempre se mide con unos 100 g en un vaso; más
    cantidad se calienta y fragua antes. Si la etiqueta dice cuánto se puede mezclar de una vez, póngalo.
large-cups =
    Un vaso lleva más de { $most }, lo que la tanda máxima permite: viértalo extendido y de poco espesor en cuanto esté
    mezclado. En el vaso, 100 g pueden llegar a 204 °C (400 °F).
usual-loss =
    No hay desperdicio, así que se toma { $loss } por lo que se queda en vasos y palitos. Ponga 0 si no hay.
no-shrinkage =
    No hay contracción, así que no se toma ninguna, y eso vale para poco más que epóxico sin solvente. La masilla con agua
    o solvente se contrae mucho más; su ficha técnica dice cuánto.
moving =
    Masilla rígida en juntas que se mueven: las tablas de { $wood }, de { $width } de ancho, se mueven { $swing } entre
    { $driest } y { $wettest } de humedad, y la junta más angosta tiene { $gap }. El epóxico no las sigue: se agrieta o
    levanta las tablas. Rellene esas juntas con algo que estire, o déjelas abiertas.
    .roughly =
        Masilla rígida en juntas que se mueven: las tablas de { $wood }, de { $width } de ancho, se mueven más o menos
        { $swing } entre { $driest } y { $wettest } de humedad, y la junta más angosta tiene { $gap }. El epóxico no las
        sigue: se agrieta o levanta las tablas. Rellene esas juntas con algo que estire, o déjelas abiertas.
time-a-cup =
    Mida cuánto tarda en verter un vaso y póngalo: así las tandas se limitan a lo que se usa a tiempo. Mientras tanto nada
    muestra que una tanda se acabe a tiempo.
no-pot-life = El ritmo de vertido no dice nada sin el tiempo de uso de la etiqueta: ponga los dos.
pot-life-now =
    A { $temperature } una tanda se puede usar unos { $now }, no { $label }. Es una regla práctica: pruebe antes con una
    tanda chica.
weigh = Pese las dos partes. En volumen la misma mezcla es 100 : { $b }; nunca use una por la otra.
each-pass = Mezcle cada capa solo cuando la de abajo haya fraguado lo que diga la etiqueta.
add-containers = Agregue las botellas y los juegos de la tienda, con sus precios, para ver cuáles comprar.
not-priced =
    No todos los envases tienen precio, así que estos dejan el menor sobrante; con todos los precios se eligen los más
    baratos.
not-proved = Hay demasiadas combinaciones para probarlas todas: otra podría ser un poco mejor.

cup-by-volume = Las dos partes en un vaso: primero la A, encima la B
    .first = vierta A
    .first-level = nivel
    .second = luego vierta B
    .second-level = nivel
cup-by-weight = Las dos partes en un vaso sobre la báscula, en cero con el vaso vacío
    .first = pese A
    .first-level = báscula
    .second = luego pese B
    .second-level = báscula
share-batch = una tanda
share-cup = un vaso
share-half = la mitad
share-quarter = la cuarta parte
filled = Lo que se rellena, antes de contracción y desperdicio
    .count = cuántos
    .each = cada uno
    .all = todos
    .together = en total
pot-lives = Tiempo de uso según la temperatura, regla práctica
    .at = a
    .workable = se puede usar unos

drawing-cup = Un vaso de una tanda
    .batch = Una tanda en un vaso de paredes rectas
    .words = { $first }, { $second }.
pour-first = vierta { $amount } A; nivel { $level }
pour-second = luego { $amount } B; nivel { $level }
weigh-first = pese { $amount } A; báscula { $level }
weigh-second = luego { $amount } B; báscula { $level }
drawing-sections = Cortes de juntas y agujeros, rellenos
    .continued = Cortes de juntas y agujeros, rellenos, continuación
    .words = { $sections }.
section = { $name }: { $size }
section-gap = ancho { $width }, hondo { $depth }
section-hole = Ø { $diameter }, hondo { $depth }
section-cone = Ø { $top } a { $bottom }
    .deep = hondo { $depth }
section-plug = tapón Ø { $diameter }
size-lines = { $first }, { $second }

cup-strip = vaso de { $across }
    .note = desde el fondo
mark-first = vierta { $amount } de la parte A
mark-second = luego { $amount } de la parte B
mark-level = nivel { $level }

item = { $product }, { $part }
filler = masilla
plug = tapón de madera
    .size = Ø { $diameter } × { $length }
tape-below = cinta para tapar juntas por debajo
tape-masking = cinta de enmascarar
cup-item = vaso para mezclar, de papel sin cera o de plástico
stick-item = palito para mezclar

order = Orden de trabajo
order-dry = Mida la madera con el higrómetro
    .note = La masilla no se adhiere a madera húmeda; séquela y límpiela antes.
order-below = Tape por debajo con cinta o tapones
    .note = La masilla escurre sobre el escape, los cables y la chapa.
order-mask = Enmascare los bordes
    .note = Todo lo que se desborde habrá que lijarlo.
order-wet = Impregne con la mezcla sola, luego rellene
    .note = La masilla espesada no penetra sola; espésela para las juntas de las que se escurriría.
order-sets = Déjela fraguar lo que diga la etiqueta
    .note = Antes de la siguiente capa y antes de lijar.
order-blush = Lávela con agua y déjela secar
    .note = El rubor de amina tapa la lija y el acabado no se adhiere; el solvente no lo quita.
order-sand = Líjela al ras, con aspiración
    .note = Solo cuando esté curada del todo: el polvo a medio curar sensibiliza.

step-fill = Por rellenar
    .formula = junta: n · l · w · d; agujero: n · π/4 · Ø² · d; cono: n · π/12 · d · (Ø² + Ø·ø + ø²)
    .rows = { $count } filas
step-parts = Las dos partes
    .result = A { $a }, B { $b }
step-pot-life = Tiempo de uso ahora
step-batches = Tandas
    .formula = una por capa: V / capas
    .each = { $volume } cada una
step-largest = Tanda más grande
    .formula = lo menor entre el límite y ritmo de vertido · tiempo de uso
step-per-pass = Tandas de una capa
    .result = { $count }, { $volume } cada una
step-cups = Vasos de una tanda
step-swing = Movimiento de una junta
step-containers = Envases que dejan el menor sobrante
    .priced = Los envases más baratos
    .formula = contenido de A ≥ A, contenido de B ≥ B
    .left-over = sobran { $volume }

## La mezcla en el banco.
bench-cup = vaso { $cup } de { $cups }
bench-pass = capa { $pass } de { $passes }
bench-first = primero la parte A
bench-second = parte B, hasta
bench-on-top = { $second } de la parte B sobre la parte A
