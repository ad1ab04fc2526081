# La página de una hoja y el formulario de cualquier página.

## El formulario.
needed = falta
also-told = También dado ({ $count })
usual-values = Valores usuales ({ $count })
more-inputs = Más ({ $count })
rows = { $count } × { $row }
values-given =
    { $count ->
        [one] un valor
       *[other] { $count } valores
    }
body-ribs =
    { $count ->
        [one] la única costilla de la caja
       *[other] las { $count } costillas de la caja
    }
yes = sí
no = no
not-given = sin dato

## En qué se apoya la respuesta.
still-needed = Falta para responder
measurements = Medidas
answers = Respuestas
more-warnings =
    { $count ->
        [one] Un aviso más
       *[other] { $count } avisos más
    }
notes =
    { $count ->
        [one] Una nota
       *[other] { $count } notas
    }
more-drawings =
    { $count ->
        [one] Un dibujo más
       *[other] { $count } dibujos más
    }
drawings-whole = Dibujos a todo el ancho ({ $count })
marks-of =
    { $count ->
        [one] Los trazos
       *[other] Trazos de { $count } piezas
    }
to-buy = Para comprar ({ $count })
all-tables = Tablas ({ $count })
to-cut = Para cortar ({ $count })
to-do = { $title }: { $done } de { $count } hechos
what-if = ¿Y si la tienda no lo tiene?
take-care = Cuidado ({ $count })
working = Cómo se calcula
sources = Fuentes
rename = Cambiar el nombre de esta hoja

## Los cuatro lugares del trabajo.
places = Lugares
place-rig = Vehículo
place-sheets = Hojas
place-marking = Trazar
place-buying = Comprar

## En el banco: un trazo a la vez.
at-the-bench = Al banco, pieza por pieza
bench-of = { $sheet }, { $length } de largo
bench-hooked = cinta enganchada en la punta izquierda
bench-mark = trazo { $mark } de { $of }
bench-copy = trazo { $mark } de { $of }, pieza { $copy } de { $alike } iguales
bench-step = paso { $step } de { $of }
bench-left =
    { $count ->
        [one] queda una pieza
       *[other] quedan { $count } piezas
    }
bench-done = ya hecho
bench-marked = Trazado, siguiente
bench-task-done = Hecho, siguiente
bench-over = Todo hecho ✓
bench-back = trazo anterior
bench-piece-back = pieza anterior
bench-piece-on = pieza siguiente
bench-undo = deshacer
bench-aloud = Leer las medidas en voz alta
bench-leave = Dejar el banco
no-marks = Todavía no hay trazos
all-marked = Todo trazado ✓

## La página del proyecto.
other-sheets = Otras hojas
inputs-missing =
    { $count ->
        [one] falta un dato
       *[other] faltan { $count } datos
    }
add-sheet = Agregar una hoja
pass-it-on = Pasarlo a otro
booklet = Cuaderno para imprimir
needs-attention = requiere atención
not-measured = aún sin medir
ribs =
    { $count ->
        [one] una costilla
       *[other] { $count } costillas
    }
size-and-ribs = { $size }, { $ribs }

## Lo que dice la página de una hoja cuando aún no hay respuesta, o no hay hoja.
no-such-sheet = No existe esa hoja
no-such-sheet-help = Se quitó, o la dirección está mal.
other-version = Una hoja hecha con otra versión
other-version-help = Esta versión no conoce esta clase de hoja. Se guarda tal como está, con el proyecto.
inputs-to-fill =
    { $count ->
        [one] falta un dato
       *[other] faltan { $count } datos
    }
empty = Todavía no hay nada escrito.
see-example = Verla con el ejemplo
fill-example = Llenar con el ejemplo (deshacer devuelve lo suyo)
remove-sheet = Quitar esta hoja (deshacer la devuelve)
templates = Plantillas a tamaño real para imprimir
plan = Plano
results = Resultados
body-help = Mídala una vez. x va de la pared delantera a la trasera, y de la pared izquierda a la derecha, mirando hacia adelante.

## Trazos y cortes como se leen.
marks-on = Trazos: { $piece }
tape-hooked = Todo desde la punta izquierda de { $length }, cinta enganchada una vez.
long = { $length } de largo.
long-hooked = { $length } de largo. Todo desde su punta izquierda, cinta enganchada una vez.
exact-spot = punto exacto { $left-over }
before-start = { $length } antes del inicio
no-mark-lists = Ninguna hoja tiene trazos todavía.
left-over = Sobra: { $length }
here-already = { $item }: { $count } ya disponibles, nada que comprar
buy-line = { $quantity } × { $item }
buy-amount = { $quantity } { $unit } de { $item }
not-to-scale = Sin escala a lo ancho: dibujado más ancho.
scrolls = { $title }, se desliza hacia los lados

## Una hoja hecha a partir de otra que cambió.
has-changed =
    { $count ->
        [one] { $sheet } cambió: un valor de aquí está atrasado.
       *[other] { $sheet } cambió: { $count } valores de aquí están atrasados.
    }
catch-up = Tomar los valores nuevos

## Trazar, una pieza tras otra.
board-done = { $board } lista
board-of-done = { $board } { $copy } de { $alike } lista
next-mark = Sigue: { $board }, { $mark }
next-board = Sigue: { $board }
is-done = ¿lista?
mark-at = trazo en { $mark }
go-to = Ir a { $sheet }
full = Este proyecto ya tiene todas las hojas que caben. Quite algunas o empiece otro proyecto.
mark-count =
    { $count ->
        [one] un trazo
       *[other] { $count } trazos
    }
