marks-out-of-order = hay { $length } de la primera marca a la última; la última debe quedar más allá de la primera
no-spacing = la separación máxima es { $spacing }; anote una mayor que cero
too-many-marks = no se pueden trazar { $marks } marcas; anote de 2 a { $most }
slats-too-wide = las tablillas suman { $slats } de ancho, pero solo hay { $length }; use menos o más angostas

source-spacing = separación = (última - primera) / (marcas - 1)
source-strip = listón = claro - 2 x holgura en cada punta
source-framed = una cercha de techo que se corta para un hueco lleva cabezales hasta las cerchas vecinas, y su listón termina ahí
source-margin = a una barra que deja menos de 1/4 in no le queda margen para una punta rajada, una tabla corta o un corte repetido

source-balanced = inicio repartido: r / 2 en ambas orillas, o (r + ancho cubierto) / 2 con una hilada entera menos
source-least-rip = ninguna hilada se corta a menos de la mitad
source-shown-taper = una última hilada que se angosta 1/8 in en su tramo no se nota
source-on-supports = Canadian Wood Council, entablados: toda junta de punta de tablas delgadas sobre un apoyo; juntas de hiladas vecinas desfasadas
source-strip-stagger = National Wood Flooring Association, guía de 2008: juntas de punta de hileras vecinas a 6 in o más en duelas de menos de 3 in, a 8 a 10 in en tablones
source-least-piece = ninguna pieza junto a una junta de menos de 12 in
source-together = Geoffrion, Lagrangean Relaxation for Integer Programming, Mathematical Programming Study 2, 1974: a cualquier precio de los largos de pieza, ningún plan cuesta menos que los trazados más baratos a esos precios, mientras ningún corte valga más que su largo de venta
source-marks = marca = apoyo - punta izquierda; en una junta las dos tablas terminan en el eje del apoyo, con sus marcas a la distancia de la punta
source-ends = una marca se aparta de cada punta la distancia mínima, mientras siga en la cara del apoyo; si no, ese apoyo no sujeta la tabla
source-two-supports = una tabla se atornilla a dos apoyos o más
source-usual-edge = ningún tornillo a menos de 3/8 in de la punta de una tabla
source-half-bearing = en una junta cada tabla descansa en medio apoyo, con su marca en el centro de esa mitad
source-least-strip = una tira de menos de 1 in junto a un recorte se raja con un tornillo
source-nailer = donde una tabla va de una pared a una junta en el apoyo siguiente, un listón de orilla junto a la pared sujeta su otra punta: un listón tan ancho como un apoyo, con la cara a ras de ellos
source-across = dos tornillos van a un cuarto del ancho de cada canto; uno, en el centro, donde eso es menos de 5/8 in
source-cull = una tabla de pino de cada diez se descarta por rajas, nudos, torcedura o lengüeta rota
source-clear = lo que queda entre dos paredes = de pared a pared - una holgura en cada una
source-from-datum = ASME Y14.5-2018, Dimensioning and Tolerancing, ubicación por cotas básicas desde una referencia
source-change = USDA Forest Products Laboratory, Wood Handbook FPL-GTR-190 (2010), ecuación 13-2 y tabla 13-5
source-coefficient = USDA Forest Products Laboratory, Wood Handbook FPL-GTR-190 (2010), tabla 4-3, llevada a la forma de la tabla 13-5
source-coefficient-recalled = USDA Forest Products Laboratory, Wood Handbook FPL-GTR-190 (2010), tabla 4-3
source-wide-change = USDA Forest Products Laboratory, Wood Handbook FPL-GTR-190 (2010), ecuación 13-3

wood-unknown = esta madera no está en la tabla; elija una de estas: { $names }
wood-alder-red = aliso rojo
wood-beech = haya
wood-cherry = cerezo
wood-douglas-fir-coast = abeto Douglas de la costa
wood-fir-balsam = abeto balsámico
wood-fir-grand = abeto grande
wood-fir-white = abeto blanco
wood-maple-sugar = arce azucarero
wood-oak-red = roble rojo
wood-pine-eastern-white = pino blanco del este
wood-pine-loblolly = pino taeda
wood-pine-lodgepole = pino contorta
wood-pine-longleaf = pino de hoja larga
wood-pine-ponderosa = pino ponderosa
wood-redcedar-western = cedro rojo del oeste
wood-spruce-engelmann = pícea de Engelmann
wood-spruce-sitka = pícea de Sitka
wood-walnut-black = nogal negro
