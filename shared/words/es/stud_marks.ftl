title = Marcas de montantes
purpose = Marcar una tabla para que cada tornillo dé en un montante o una costilla.

board = Largo de la tabla
    .help = De punta a punta, tal como va colocada.
first-stud = Primer montante sobre la tabla
    .help = Presente la tabla en su sitio, trace en ella el centro del primer montante y mida desde la punta izquierda.
place = Montantes
studs = Posiciones de los montantes
    .each = Montante
    .help = Enganche la cinta una sola vez en la misma pared y lea cada eje.
spacings = Separaciones entre montantes
    .each = Separación
    .help = Entre ejes, de cada montante al siguiente.
edge-distance = Distancia mínima a la punta
    .help = Más cerca de la punta, el tornillo raja la tabla.
reading-error = Error de una lectura
    .help = Cuánto puede fallar una lectura o una marca: la mitad de la menor división de la que se fía.

out-of-order = este montante no queda más allá del anterior; anote las posiciones en orden, todas medidas desde el mismo extremo
off-the-board = el montante trazado debe quedar sobre la tabla: mídalo desde la punta izquierda

marks = Marcas en la tabla
first-mark = Primer trazo, montante { $stud }
last-mark = Última marca, montante { $stud }
stud = montante { $stud }
too-close-mark = demasiado cerca de la punta
too-close =
    El montante { $stud } queda a menos de { $edge } de la punta de la tabla: corra la tabla o fíjela ahí
    de otra manera.
beyond =
    { $count ->
        [one] Más allá de esta tabla: montante { $studs }.
       *[other] Más allá de esta tabla: montantes { $studs }.
    }
one-datum =
    Enganche la cinta una sola vez en la punta izquierda y trace desde ahí todas las marcas: cada una queda
    dentro de { $each }. Midiendo de marca en marca, la última puede fallar en { $worst } (lo más probable, { $likely }).

copies = Tablas marcadas con una plantilla, y cada una con la anterior
    .board = Tabla
    .master = Con la plantilla
    .worst = Con la anterior: lo peor
    .likely = lo más probable

drawing = La tabla con sus marcas
    .words =
        { $marks ->
            [one] Una tabla de { $length } con { $marks } marca.
           *[other] Una tabla de { $length } con { $marks } marcas.
        }

step-stud = Montante { $stud }
step-worst = De marca en marca, lo peor
step-likely = De marca en marca, lo más probable

source-offset = Distancias desde un solo origen
source-chain = n pasos de ±t en cadena: n t en el peor caso, √n t si son independientes (raíz de la suma de cuadrados)
