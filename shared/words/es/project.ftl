too-large = el archivo tiene { $bytes } bytes; un archivo de proyecto tiene { $most } como máximo
not-json = el archivo no es JSON (la lectura se detuvo en la línea { $line }); un archivo de proyecto empieza con { $start }
no-version = el archivo no tiene versión de formato; un archivo de proyecto empieza con { $start }
too-new =
    el archivo se guardó con una versión más nueva (formato { $found }; esta lee formatos hasta el { $known });
    actualice y ábralo otra vez
too-many-sheets = el proyecto tiene { $count } hojas y un proyecto admite { $most } como máximo; divídalo en varios

pack = Un paquete trae
    .help = Una caja de 100, un rollo de 100 ft, un paquete de 4. Se compran paquetes enteros.
price = Precio
    .help = De un paquete; si no hay paquetes, de una unidad.
line-mass = Masa
    .help = De un paquete; si no hay paquetes, de una unidad. Está en la etiqueta; si no, use una balanza de cocina.
place = Su centro, desde la pared delantera
    .help = Dónde irá a lo largo de la carrocería, para los ejes.
item = Qué
spec = Cuál
quantity = Cuántos
unit = Se cuenta en
unit-each = piezas
unit-ft = ft
unit-m = m
unit-qt = qt
unit-l = l
own-price = Precio de una unidad
own-mass = Masa de una unidad
    .help = Para el peso; déjelo en blanco si no se queda a bordo.
own = Líneas propias
    .row = línea
pack-whole = un paquete trae un número entero de piezas, por ejemplo 100
pack-range = un paquete trae más de cero y un millón como máximo, por ejemplo 100

alike = { $count } iguales

sold-out = Estas hojas juntas necesitan más de lo que hay a mano y a la venta: permita más largos.
no-less = Planeadas juntas, estas hojas no necesitarían menos: cada una conserva su plan.
too-much-together = Demasiado para un solo plan: cada hoja conserva el suyo.
cut-once =
    Lo que hay a mano se corta una sola vez: una hoja anterior usa una parte, así que esta se planea con el resto.
cut-already = Lo que hay a mano ya se corta para hojas anteriores: en la lista de compras hay { $more } más.
together-counted =
    { $count } hojas en un solo plan: lo que hay a mano se cuenta una vez, no para cada hoja. Compre { $bought }.
together-saved = { $count } hojas en un solo plan: { $cost } en vez de { $apart }, ahorra { $saved }. Compre { $bought }.
together-less = { $count } hojas en un solo plan: no sale más barato, pero sobran { $less } menos.

plan = Plano de la carrocería
plan-words =
    Una carrocería de { $length } de largo y { $width } de ancho con { $ribs ->
        [one] { $ribs } costilla
       *[other] { $ribs } costillas
    } y { $openings ->
        [one] { $openings } abertura en el techo
       *[other] { $openings } aberturas en el techo
    }.
plan-stations =
    Una carrocería de { $length } de largo y { $width } de ancho con { $ribs ->
        [one] { $ribs } costilla
       *[other] { $ribs } costillas
    } y { $openings ->
        [one] { $openings } abertura en el techo
       *[other] { $openings } aberturas en el techo
    }; el ancho, aquí el menor, se midió en { $stations } puntos.
plan-asks = Plano de la carrocería, a escala. Toque una cifra, una costilla o una abertura para cambiarla.
plan-early = Plano de la carrocería, todavía no a escala. Toque un ? y anote lo que diga la cinta.
plan-front = ← Frente
plan-rib = Costilla { $number }
plan-station = Ancho a { $place }
plan-opening = Abertura en el techo
plan-opening-blank = ¿abertura?
entered = { $what }: { $value }
to-enter = { $what }, por anotar

name = Nombre
results-in = Resultados en
inches = pulgadas
millimeters = milímetros
nearest = Marcas redondeadas a
buy-lines = Líneas de la lista de compras
buy-total = Lista de compras, total
the-project = El proyecto
the-body = La carrocería
to-mend = Falta completar o corregir
yes = sí
no = no

side-by-side = Lado a lado
    .now = Como está
    .then = Si falta
to-pay = A pagar
without-price = { $sum } + { $count } sin precio
left-over = Sobra
ways = Formas de cortar
best = Lo mejor posible
proved = demostrado
within = a menos de { $percent }

## Dónde se encuentra en la tienda.
aisle-lumber = Madera y tablas
aisle-fasteners = Tornillería
aisle-electrical = Electricidad
aisle-paint = Pintura y adhesivos
aisle-plumbing = Plomería
aisle-other = Otros
