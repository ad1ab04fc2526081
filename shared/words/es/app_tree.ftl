# El árbol de un circuito: empalmes desde la fuente hacia abajo.

title = El árbol
help = Toque una línea para abrirla. Cada línea es un empalme o una salida, con el tramo que la alimenta.
load = Carga
remove-load = Quitar esta carga
refused = ese nombre está vacío o ya se usa; escriba otro
splice-name = Nombre de este empalme
row-name = Nombre de esta fila
fed-from = Alimentado desde
add-run = Agregar un tramo desde aquí
add-load = Agregar una carga aquí
add-lamps = Agregar una fila de luces desde aquí
copy-branch = Copiar esta rama
remove-branch =
    { $count ->
        [one] Quitar junto con lo que cuelga de aquí
       *[other] Quitar junto con los { $count } que cuelgan de aquí
    }
no-name = sin nombre
not-fed = sin alimentación desde la fuente
needs-attention = requiere atención
from-node = desde { $node }

## Lo que se agrega se llama así hasta que recibe nombre.
new-splice = empalme 1
new-load = carga 1
new-lights = luces
