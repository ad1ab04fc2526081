size = #{ $gauge } x { $length }

source-longest = el más largo = capas + acero + fondo libre detrás de la última; un tornillo más largo toca lo que haya ahí
source-shortest = si no se sabe qué hay detrás, el tornillo más corto de venta corriente que sujete, y ninguno más largo
source-thread = un tornillo de forro sujeta con 1/2 in de rosca en el listón, o más
source-stock = largos de tornillo que suelen tener las tiendas
source-road = 2 g hacia abajo: su propio peso y otro tanto por el camino
source-even-share = la carga se reparte por igual entre tornillos iguales; cuente solo los que con seguridad trabajan
