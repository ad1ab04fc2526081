material = De qué se corta
    .help = Su nombre en la lista de compras; los largos del mismo nombre se suman ahí.
stock = Largos de venta
    .help = Si cada uno tiene precio, se compran los más baratos; si no, el menor largo.
    .row = largo de venta
length = Largo
    .help = Tal como se vende; mida uno: los largos métricos quedan cortos frente a los pies que representan.
price = Precio de uno
on-hand = Ya disponibles
    .help = Se usan primero, sin costo. Sin precio aquí pero con precios en los demás, no se compran más.
available = Máximo que se puede comprar
    .help = Cuántos tiene la tienda; 0 deja fuera este largo. Vacío: los que hagan falta.
kerf = Ancho de corte
    .help = Lo que se come la sierra: corte en un retazo y mida la ranura.
end-trim = Despunte
    .help = Lo que se quita en total a cada largo, ambas puntas juntas, antes de cortar: rajas, pintura, marcas de cepillo.
density = Madera, o su densidad
    .help = Para el peso en la lista de compras: una madera de la lista o una densidad.

no-stock = no hay material del que cortar; anote al menos un largo que ya tenga o que esté a la venta
too-many-pieces = { $pieces } piezas son demasiadas para un plan; repártalas en planes de { $most } o menos
too-much-stock = { $lengths } largos de venta son demasiados para un plan; anote { $most } o menos
piece-length = { $length } no es un largo que se pueda cortar; anote uno de hasta { $most }
stock-length = { $length } no es un largo de venta; anote uno mayor que cero, de hasta { $most }
price-out-of-range = { $price } no es un precio; anote uno de 0 a 1 000 000
price-missing = este largo no tiene precio y otros sí; póngale precio, o quite todos los precios
kerf-out-of-range = { $kerf } no es el ancho de un corte de sierra; anote uno de 0 a { $most }
end-trim-out-of-range = { $trim } no es un despunte; anote lo que se quita en total a cada largo, 0 o más
piece-too-long =
    una pieza de { $length } es más larga que lo que da el material ({ $longest }); agregue un largo mayor o empalme
    la pieza de dos
not-enough-stock =
    las piezas suman { $needed } y no salen de los { $stock } disponibles y a la venta; permita más largos
no-plan-found = no se halló ningún plan con el material disponible; permita uno o dos largos más

source-kerf = suma de piezas + (n - 1) cortes <= largo de venta - despunte
source-mass = masa = densidad x sección x largo

density-unknown = anote una densidad, como { $example }, o una madera: { $names }
density-range = una densidad va de { $least } a { $most }; el pino tiene unos { $pine }
