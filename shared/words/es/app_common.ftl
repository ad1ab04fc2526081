skip = Ir al contenido
undo = Deshacer
redo = Rehacer
all-projects = Todos los proyectos
buy-list = Lista de compras
mark-list = Lista de trazos
cut-list = Lista de cortes
the-body = La carrocería
versions = Versiones
projects = Proyectos
received = Recibido
opening = Abriendo
titled = { $page } · Battenbook

menu = Menú
project-name = Nombre del proyecto
results-in = Resultados en
inches = pulgadas
millimeters = milímetros
nearest = Marcar con precisión de
print-page = Imprimir esta página
save-to-file = Guardar en un archivo
light = Apariencia
light-auto = Como el dispositivo
light-day = Día: lápiz sobre papel
light-night = Noche: tiza sobre pizarra

language = Idioma
language-missing = No se pudo cargar { $language }. Revise la señal e intente otra vez.
language-stay = Seguir en { $language }
offer-en = Battenbook is also available in English.
    .take = Use English
offer-gb = Battenbook is also available in British English.
    .take = Use English (UK)
offer-es = Battenbook también está en español.
    .take = Usar español

cannot-open = No se puede abrir este proyecto
missing-here =
    No hay tal proyecto en este dispositivo. Quizá se borró, o la dirección es de otro dispositivo.
saved-by-newer =
    Este proyecto lo guardó una versión más nueva de Battenbook. Se conserva tal cual; recargue para tener la versión nueva, o guárdelo en un archivo.
unreadable = Este proyecto no se puede leer: { $error }. Su texto se conserva tal cual.
save-its-text = Guardar su texto en un archivo
restored =
    La última copia guardada de este proyecto estaba dañada o falta; esta es la anterior.
restored-damaged =
    La última copia guardada de este proyecto estaba dañada o falta; esta es la anterior. El texto dañado se conserva; puede descargarlo en la página de inicio.

working-out = Calculando «{ $name }»…
working-out-help = Es un proyecto grande. Detenerlo no cambia nada.
done = hecho
done-percent = { $percent } % hecho
stop = Detener y volver a todos los proyectos

part-coming = Las páginas de un proyecto vienen en camino a este dispositivo.
part-missing = Las páginas de un proyecto no llegaron: no hay señal o el servidor no responde. No se pierde nada.

ok = Aceptar
try-again = Intentar otra vez
empty-trash = Vaciar la papelera
open-it = Abrirlo
unnamed = Sin nombre

no-second-copy =
    Este navegador no guarda un respaldo de lo que usted escribe. Si se cierra de golpe o se agota la batería, puede perder el último minuto.
brought-back = El navegador se cerró antes de guardar todo. Recuperado como se escribió por última vez: { $names }.
quoted = «{ $name }»
only-in-tab = «{ $name }» solo está en esta pestaña. { $error }
keeps-nothing =
    Este navegador no guarda nada de esta página (modo privado, o almacenamiento desactivado). Guarde su proyecto en un archivo antes de cerrarla.
second-store =
    Este navegador bloquea su almacenamiento habitual; lo que usted escribe va al de respaldo. Guarde su proyecto en un archivo antes de cerrarla.
second-store-one-window =
    Este navegador bloquea su almacenamiento habitual; lo que usted escribe va al de respaldo. Use una sola ventana y guarde su proyecto en un archivo antes de cerrarla.
apart =
    Otra ventana cambió el mismo campo al mismo tiempo ({ $field }). Se conservan los dos: esta ventana sigue en una copia, «{ $name }», junto al otro.
short-of-room = Queda poco espacio en este dispositivo.
see-largest = Ver qué ocupa más
take-theirs = Usar la versión de la otra ventana
keep-both = Conservar las dos: guardar esta como copia
may-be-cleared =
    Este navegador no ha prometido conservar sus proyectos si al dispositivo le falta espacio. Guarde todo en un archivo de vez en cuando.
ask-again = Preguntar otra vez al navegador
