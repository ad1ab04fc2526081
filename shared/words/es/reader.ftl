missing = falta un dato: { $what }
missing-like = falta un dato: { $what } (por ejemplo, { $usual })
missing-of-body = falta un dato: { $what }; escríbalo aquí o mida { $part } en la página de la carrocería
name-missing = falta el nombre ({ $what })
one-of-several = falta un dato: { $names }
not-both = escriba solo uno de los dos: { $first } o { $second }

list-wanted = aquí va una lista con al menos un elemento ({ $noun })
too-few =
    { $least ->
        [1] agregue al menos un elemento ({ $noun })
       *[other] hacen falta al menos { $least } ({ $noun }); por ahora: { $count }
    }
too-many = aquí hay { $count }; una hoja admite { $most } como máximo

out-of-range = { $what }: debe estar entre { $least } y { $most }, no { $given }
not-whole = { $what }: debe ser un número entero
no-unit = { $number } no lleva unidad; escríbalo como texto, por ejemplo { $like }
number-wanted = aquí va un número o un texto, por ejemplo { $like }
no-number-wanted = aquí no hace falta ningún número
choose-one = elija una opción: { $names }
yes-or-no = escriba { $yes } o { $no }
text-wanted = aquí va un texto

inputs-not-named = los datos no son un conjunto de valores con nombre, como { $like }
values-not-named = aquí van valores con nombre, como { $like }

ribs-of-body =
    { $count ->
        [one] { $count } costilla de la carrocería
       *[other] { $count } costillas de la carrocería
    }
no-such-sheet = en este proyecto no hay ninguna hoja «{ $id }»
other-kind = «{ $id }» es otro tipo de hoja; elija una de este tipo: { $kinds }
sheet-at-fault = en «{ $id }» hay datos erróneos o faltan datos; corríjalos primero
same-id = dos hojas tienen el identificador «{ $id }»; dé a cada una el suyo
kind-not-text = el tipo de la hoja no está escrito como texto
unknown-kind = no hay ningún tipo de hoja llamado «{ $kind }»; existen { $kinds }
beyond-measure = con estos datos sale un valor sin sentido de tan grande ({ $name }); revise las unidades

or-end = { $before } o { $last }
