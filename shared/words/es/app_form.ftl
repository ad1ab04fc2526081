# Lo que dice el formulario de cualquier página alrededor de sus campos.

## Filas y listas.
row-title = { $row } { $number }
copy-row = Copiar: { $row }
remove = Quitar
remove-item = quitar { $item } { $number }
add-first = Agregar: { $row }
add-another = Agregar otro: { $row }

## Teclas para una medida que el teclado del teléfono no tiene.
length-keys = teclas para medidas
key-feet = pies
key-inches = pulgadas
key-fraction = raya de fracción
key-space = espacio
key-plus = más
key-minus = menos
key-times = por
key-back = borrar
key-keyboard = el teclado del teléfono
key-next = Siguiente

## Lo que puede ir en un campo.
for-example = p. ej. { $value }
from-the-table = { $ask }, de la tabla
choose-from = Elegir: { $noun }…
uses = Usa { $part }: { $value }
use = Usar { $part }: { $value }
uses-ribs =
    { $count ->
        [one] Usa la única costilla de la caja
       *[other] Usa las { $count } costillas de la caja
    }
left-blank = En blanco: { $value }
usual = usual: { $value }
optional = opcional

## Dos maneras de llenar una hoja.
ways = Cómo llenarla
way-form = Formulario
way-tree = Árbol
