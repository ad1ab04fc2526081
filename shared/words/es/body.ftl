part-length = el largo de la carrocería
part-width = el ancho de la carrocería
part-height = la altura de la carrocería
part-rib-width = el ancho de cara de las costillas
part-ribs = las costillas de la carrocería
part-rib-spacing = la separación media de las costillas

length = Largo interior
    .help = De la pared delantera a la trasera, a la altura a la que va a trabajar.
width = Ancho interior
    .help = De la pared izquierda a la derecha, mirando hacia delante.
height = Altura interior
    .help = Del piso al techo, donde va a estar de pie.
rib-width = Ancho de cara de la costilla
    .help = A lo ancho de la cara de una costilla: la parte en la que puede dar un tornillo.
wall-depth = Fondo detrás de la cara de la costilla
    .help =
        De la cara en la que entran los tornillos hacia fuera, hasta la chapa, un cable o un tubo, lo que venga primero
        donde va a atornillar: ningún tornillo debe llegar ahí.
ribs = Costillas (arcos del techo)
rib-kinds = Posiciones de las costillas
even = A distancias iguales
even-count = Número de costillas
even-first = Eje de la primera costilla
    .help = De la pared delantera al eje de la primera costilla.
even-spacing = Separación entre ejes
    .help = De eje a eje.
measured = Medidas una por una
    .each = Costilla
    .help = Enganche la cinta una sola vez en la pared delantera y lea desde ahí cada eje.
openings = Aberturas del techo
    .row = abertura
opening-name = Nombre
opening-x = Desde la pared delantera
    .help = De la pared delantera al borde más cercano de la abertura.
opening-y = Desde la pared izquierda
    .help = De la pared izquierda al borde más cercano de la abertura.
opening-length = Largo de la abertura
    .help = A lo largo de la carrocería.
opening-width = Ancho de la abertura
    .help = A lo ancho de la carrocería.
widths = Anchos en varios puntos
    .row = punto
    .help =
        Donde cambia el ancho: delante, detrás y donde empiece a estrecharse. Entre punto y punto las paredes se toman
        como rectas.
station-x = Desde la pared delantera
    .help = Cinta enganchada en la pared delantera; 0 es la propia pared.
station-width = Ancho en ese punto
    .help = De la pared izquierda a la derecha, con la cinta a escuadra con la izquierda.
diagonals = Diagonales
    .help = Dos diagonales muestran cuánto está descuadrada la carrocería.
first-diagonal = Delante izquierda a detrás derecha
    .help = De esquina a esquina, las dos diagonales a la misma altura: en el piso o bajo el techo.
second-diagonal = Delante derecha a detrás izquierda
across-length = Largo de ese rectángulo
    .help = Solo si las esquinas no son las de la carrocería. Si se deja en blanco: el largo interior.
across-width = Ancho de ese rectángulo
    .help = Si se deja en blanco: el ancho interior, la media de delante y detrás.

narrowest = { $width }, el menor de { $count } puntos

rib-out-of-order =
    esta costilla no queda más allá de la anterior; mida todos los ejes desde la pared delantera y anótelos en orden
rib-outside = la última costilla quedaría a { $rib }, más allá de la pared trasera, que está a { $length }
opening-too-long = la abertura pasaría de la pared trasera; revise su posición y su largo
opening-too-wide = la abertura pasaría de la pared derecha; revise su posición y su ancho
station-outside = este punto quedaría más allá de la pared trasera; mídalo desde la pared delantera
station-twice = aquí ya hay un punto; dé a cada uno su lugar
no-figure =
    ninguna carrocería de { $length } por { $width } tiene estas dos diagonales; en un rectángulo las dos miden
    { $diagonal }: mida otra vez

out-of-square = Descuadre
square = a escuadra
square-note = las dos diagonales coinciden hasta donde se ve con una cinta
leans =
    { $side ->
        [right] la parte trasera está corrida a la derecha, en { $length }: { $angle }°
       *[left] la parte trasera está corrida a la izquierda, en { $length }: { $angle }°
    }
true-diagonal = Diagonal de un rectángulo exacto
measured-diagonals = medidas { $first } y { $second }, con { $apart } de diferencia
slip =
    { $which ->
        [long] Las diagonales son { $by } demasiado largas para este largo y ancho: una de las cuatro medidas está mal. Mídalas todas otra vez.
       *[short] Las diagonales son { $by } demasiado cortas para este largo y ancho: una de las cuatro medidas está mal. Mídalas todas otra vez.
    }
not-seen = A lo ancho la carrocería se desvía { $off }: nadie lo va a notar.
seen =
    A lo ancho la carrocería se desvía { $off }: lo que va de lado a lado se traza a escuadra desde la pared izquierda,
    y las tablas que llegan a la pared delantera o trasera se cortan con su sesgo.
equal-sides = Dos diagonales iguales demuestran un rectángulo solo si los lados opuestos también son iguales.
diagonals-early = Anote el largo y el ancho para ver qué dicen las diagonales.
widths-found = Ancho
widths-range = { $low } a { $high }
widths-apart = { $apart } entre el menor y el mayor
widths-used =
    Los listones y las tablas toman el ancho de su propio lugar, en línea recta entre puntos. Una hoja que necesita un
    solo ancho toma el menor, { $narrowest }, que cabe en todas partes; el ancho único de arriba no se usa.

step-between = Ancho entre dos puntos
step-between-numbers = a la mitad, a { $middle }: { $front } + ({ $next } − { $front }) / 2
step-both = Las dos diagonales frente a ella
step-both-result = { $misfit } (error a partir de { $slip })
step-shift = Corrimiento de un lado respecto al otro
step-rear = Corrimiento de la parte trasera, a la derecha
step-angle = Ángulo

source-drift = descuadre = corrimiento · largo / ancho = (d₁² − d₂²) / (4 · ancho)
source-shear = corrimiento = (d₁² − d₂²) / (4 · largo)
source-both = ley del paralelogramo: (d₁² + d₂²) / 2 = largo² + ancho²
source-slip = una cinta sobre una diagonal se lee con un margen del 0,2 %
source-between =
    paredes rectas entre dos puntos: w = w₁ + (w₂ − w₁) · (x − x₁) / (x₂ − x₁); antes del primero y después del último,
    como en ellos
