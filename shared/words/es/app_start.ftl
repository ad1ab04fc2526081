purpose = Qué marcar, cortar, mezclar, cablear y comprar, calculado con lo que usted midió en el vehículo.
search = Buscar proyectos
files = Archivos
open-file = Abrir un archivo de proyecto
stays-here = Todo queda en este dispositivo. Una vez cargado, funciona sin señal.
estimates =
    Los resultados son estimaciones hechas con sus medidas. Mandan las normas locales, las instrucciones del fabricante y los oficios con licencia.
begin = Para empezar
new-imperial = Proyecto nuevo en pulgadas
new-metric = Proyecto nuevo en milímetros
demo-imperial = Abrir la demostración en pulgadas
demo-metric = Abrir la demostración en milímetros
save-all = Guardar todo en un archivo
none-yet = Todavía no hay proyectos en este dispositivo. La demostración lo muestra todo con un toque.
none-found = Ningún proyecto tiene eso en el nombre.

state-unsaved = sin guardar; solo en esta pestaña
state-damaged-save = también se conserva una copia dañada
state-received = recibido; el suyo también se conserva
state-damaged = no se puede leer; su texto se conserva
state-newer = guardado por una versión más nueva
very-large = muy grande; divídalo en dos proyectos

more-for = Más de { $name }
name = Nombre
rename = Cambiar nombre
see-differences = Ver las diferencias
copy = Copiar
share = Compartir
save-damaged = Guardar el texto dañado en un archivo
discard-damaged = Desechar el texto dañado
save-before = Guardar el texto de antes de la última actualización
delete = Borrar
trash = Papelera
restore = Restaurar
forget = Borrar para siempre

my-rig = Mi camper
new-name = Nombre de su vehículo
why-copy = copia
why-window = otra ventana
why-received = recibido
named-for = { $name } ({ $why })
file-before = { $name } antes
file-damaged = { $name } dañado

left-out = Quedaron fuera porque no se pueden leer: { $names }. Guarde cada uno en su propio archivo.
older-used =
    La última copia guardada de estos estaba dañada o falta; el archivo lleva la anterior: { $names }.
older-used-one =
    La última copia guardada de este proyecto estaba dañada o falta; se usó la anterior.
deleted = «{ $name }» está en la papelera. Puede restaurarlo abajo.
opened = Se abrió «{ $name }».
opened-beside = Se abrió «{ $name }» como copia junto al suyo.
refused = Número { $number }: { $reason }.

room =
    Queda poco espacio: se usa el { $percent } % de lo que el navegador da a esta página. Guarde lo importante en un archivo; luego borre versiones viejas y vacíe la papelera.
largest = Los más grandes: { $names }.
named-size = «{ $name }» { $size }
size = { $size } KB

try = Pruébelo: un minuto, tres pasos
try-board = La demostración se abre en una tabla de techo, marcada para las costillas de un autobús viejo.
try-change = Cambie una medida.
try-watch = Vea cómo la siguen las marcas.
try-imperial = Probar en pulgadas
try-metric = Probar en milímetros
try-not = Ya sé cómo funciona; no mostrar otra vez
first-steps = Primeros pasos
name-look = Mirar
name-change = Cambiar
name-own = El suyo
step-look = Una tabla del techo de un autobús viejo. La marca { $what } está a { $mark }.
step-type = Escriba { $number } en «Primer montante sobre la tabla». Mire la marca { $what } a { $mark }.
step-moved = La marca { $what } pasó de { $was } a { $now }. Eso es todo: medir, escribir, marcar.
show-me = Mostrar
change-it = Cambiar una medida
begin-own = Empezar su propio vehículo
end-steps = Cerrar los primeros pasos

## Un archivo que se abre, proyecto por proyecto.
reading = Leyendo el archivo…
opening = Abriendo el proyecto { $done } de { $count }…
done = hecho
stop = Parar
stopped = Parado. Se abrieron y se guardan { $kept } de { $count } proyectos.
stopped-at-once = Parado. No se abrió nada.
