nothing-asked = Aquí aparece lo que piden las hojas.
all-bought = Todo está comprado.
left-to-buy = Faltan { $left } de { $of } por comprar
no-prices = todavía sin precios
cost-and-unpriced = { $cost } + { $count } sin precio
by-trade = Por oficio
left-first = Primero lo que falta
own-trade = Suyo
total = Total { $cost }
total-unpriced = Total { $cost }, y { $count } sin precio
total-bought = { $total }; { $cost } ya comprado
more-needed = Faltan { $count } más
more-needed-packs =
    { $packs ->
        [one] Faltan { $count } más, { $packs } paquete
       *[other] Faltan { $count } más, { $packs } paquetes
    }
in-store = En la tienda
in-store-of = : { $name }
packs-of =
    { $count ->
        [one] { $count } paquete de { $size }: { $name }
       *[other] { $count } paquetes de { $size }: { $name }
    }
needed = se necesitan { $count }
left-over = sobran { $count }
on-hand = ya hay { $count } más

not-listed = Ya no está en la lista
not-listed-help = Ninguna hoja lo necesita ahora.
needed-by = Lo necesita
own-lines = Sus propias líneas: { $count }
out-of-stock = ¿Agotado? { $sheet }

weight = Peso
list-weight = Toda la lista
without-mass = { $count } de { $of } líneas no tienen peso
list-center = Su centro, detrás de la pared delantera
without-place =
    { $count ->
        [one] { $count } línea sin lugar no se cuenta aquí
       *[other] { $count } líneas sin lugar no se cuentan aquí
    }
add-axles = Agregar la hoja de cargas por eje
payload-left = Carga útil que queda
front-axle = Eje delantero
rear-axle = Eje trasero
whole-rig = Todo el vehículo
counted = La lista está incluida.
not-counted = Sin la lista.
axles-faulty = Hay que corregir esa hoja antes de que diga lo que queda.
count-weight = Contar allí el peso de la lista

nothing-to-cut = Ninguna hoja tiene nada que cortar todavía.
pieces-cut = { $done } de { $pieces } piezas cortadas
bar-cut =
    { $count ->
        [one] { $stock } cortada en { $count } pieza
       *[other] { $stock } cortada en { $count } piezas
    }
bar-left = Sobrante: { $length }
bar-of = { $number } de { $count }
cut-before = Cortado antes de que cambiara el plan
cut-before-help = Estas ya están cortadas pero ya no están en el plan. Úselas o quítelas.
remove = Quitar

at-store = En la tienda
at-store-help = Toque lo que no tienen. Nada cambia hasta que usted lo use.
use-this = Usar esto
keep-both = Conservar los dos
drop = Descartar

## Una fila de la lista de compras y lo que se abre debajo.
by-aisle = Por pasillo
each = { $price } cada uno
got = Tengo { $of }
got-help = Cuántos consiguió, en piezas o en la unidad de la lista.
price-is = Precio de uno
row-of = Más sobre { $name }
not-here = ¿No hay? ¿O se vende en paquetes?
group-left = faltan { $left } de { $of }
group-done = todo comprado
your-lines =
    { $count ->
        [0] Agregar una línea propia
        [one] Su línea propia
       *[other] Sus { $count } líneas propias
    }
what-it-weighs = Cuánto pesa la lista
