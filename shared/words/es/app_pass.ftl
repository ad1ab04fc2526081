share = Compartir
share-system = Compartir…
share-help =
    Se comparte el proyecto entero: la carrocería, todas las hojas, las listas. Va directo de este dispositivo al otro; ningún servidor lo guarda. La otra persona recibe una copia, y no se sobrescribe nada suyo.
as-file = Como archivo
packing = Empaquetando…
cannot-pack = Este navegador no puede empaquetar un proyecto en un enlace o código. Guárdelo en un archivo y envíelo.
as-link = Como enlace
link-too-large = Este proyecto es demasiado grande para un enlace. Envíe el archivo.
characters = { $count } caracteres.
characters-many =
    { $count } caracteres. Algunas aplicaciones cortan enlaces tan largos; un archivo o los códigos siempre funcionan.
link-help =
    El proyecto va dentro del enlace mismo, después del signo #. Esa parte queda entre ustedes dos; ningún servidor la ve.
link = Enlace
copied = Copiado.
cannot-copy = Este navegador no deja que la página copie. Toque el enlace de arriba y copie lo seleccionado.
copy-link = Copiar enlace
as-codes = Como códigos QR
codes-too-large = Este proyecto es demasiado grande para códigos. Envíe el archivo o el enlace.
code = Código
code-of = Código { $number } de { $count }
code-help = Apunte la cámara del otro teléfono al código y abra el enlace que muestra.
codes-help =
    Apunte la cámara del otro teléfono a cada código y abra el enlace que muestra. El orden no importa, y leer uno dos veces no hace daño; el proyecto se abre cuando están todos.
code-before = ‹ Código anterior
code-next = Código siguiente ›
code-auto = Mostrar todos seguidos

keep-this = ¿Conservar «{ $name }»?
nameless = Proyecto sin nombre
code-keep = Código { $number } de { $count }: ¿conservarlo?
code-here = El código { $number } de { $count } está aquí
known = Usted ya tiene este proyecto
cannot-take = Este enlace no se puede leer
codes-forgotten = Códigos desechados
reading = Leyendo…
first-part-help =
    Es parte de un proyecto que viene en varios códigos. Este dispositivo puede guardarlos hasta que estén todos; después se le pregunta por el proyecto mismo. Todavía no se conserva nada.
keep-codes = Guardar los códigos hasta que estén todos
keep-not = No conservarlo
known-help = No hay diferencias, así que no se agregó nada.
scan-all = Escanee todos los códigos para agregar el proyecto.
offered =
    { $sheets ->
        [one] Le llegó por enlace o código: { $sheets } hoja, { $size }.
       *[other] Le llegó por enlace o código: { $sheets } hojas, { $size }.
    }
offered-room = Usaría { $would } del espacio que el navegador da a esta página; ahora se usa { $used }.
less-than-one = menos del 1 %
percent = { $percent } %
no-room = Es más de lo que queda. Libere espacio primero, o guárdelo en un archivo.
offered-beside =
    Usted ya tiene una versión de este proyecto. Queda como está: este se pone a su lado, y puede ver las diferencias.
nothing-kept = Todavía no se conserva nada.
keep = Conservarlo
still-to-come = Faltan: { $numbers }.
scan-rest =
    Escanéelos con la cámara y abra cada enlace, en cualquier orden. Este dispositivo guarda los que llegaron hasta que estén todos.
other-set = También espera otra serie: están { $here } de sus { $count } códigos. Queda aparte de esta.
forget-codes = Desechar los códigos en espera

nothing-to-compare = Nada que comparar
nothing-to-compare-help = No hay otra versión de este proyecto en este dispositivo.
received-name = Recibido: { $name }
received-help =
    Usted ya tiene una versión de este proyecto, «{ $name }». No ha cambiado; el que recibió es una copia a su lado.
which-stays = Cuál conservar
keep-mine = Conservar el mío
    .note = el recibido va a la papelera
take-theirs = Conservar el recibido
    .note = el mío queda como versión a la que se puede volver
keep-both = Conservar los dos
    .note = como dos proyectos
differs-received = Diferencias: el suyo → el recibido
yours = el suyo
received = el recibido
then = antes
now = ahora
received-kept = Recibido y guardado en este dispositivo.
received-copy = Recibido: una copia junto a su propia versión de este proyecto.
no-difference = No hay diferencia en datos ni en resultados.
only-in = solo en { $name }
and-more = y { $count } más
side = { $name }:
before-theirs = Antes de poner el recibido en su lugar

version-deleted = Versión borrada.
undo-delete = Deshacer
version-kept = Guardado como «{ $name }».
versions-help =
    Una versión es el proyecto como está en un momento: antes de ir a la tienda, antes de poner el techo. Puede compararla con el proyecto actual cuando quiera, y volver a ella.
version-name = Nombre de esta versión
version-example = antes de la tienda
keep-version = Guardar como versión
no-version = No hay tal versión
before-going-back = Antes de volver a { $name }
go-back = Volver a esta versión
go-back-help = El proyecto actual se guarda antes como versión, y deshacer (↶) lo trae de vuelta.
differs-then = Diferencias: antes → ahora
none-kept = Todavía no hay versiones guardadas.
version-damaged = No se puede leer; su texto se conserva.
version-newer = La guardó una versión más nueva de Battenbook. Recargue para tenerla.
delete-version = Borrar { $name }
delete = Borrar
versions-size = { $size } en total.
