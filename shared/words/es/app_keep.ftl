missing = No hay tal proyecto en este dispositivo. Si lo guardó en otra parte, abra el archivo.
damaged = Este proyecto no se puede leer: { $error }. Se conserva tal cual; descárguelo antes de borrarlo.
newer =
    Este proyecto lo guardó una versión más nueva de Battenbook (formato { $format }). Se conserva tal cual. Recargue para tener la versión nueva, o descargue el proyecto.

not-saved-full =
    Sin guardar: el espacio que el navegador da a esta página está lleno. La última versión guardada se conserva. Guarde este proyecto en un archivo ahora; luego vacíe la papelera o borre versiones y proyectos que ya no necesite.
not-saved-blocked =
    Sin guardar: este navegador se niega a guardar datos de esta página. Guarde el proyecto en un archivo; luego permita los datos de este sitio o salga de la navegación privada.
not-saved-lost =
    Sin guardar: el navegador no conservó lo escrito. La última versión guardada se conserva. Guarde este proyecto en un archivo y recargue.
not-saved-moved =
    Sin guardar: este proyecto se cambió en otra ventana. Guarde este como copia para conservar los dos, o abra la otra versión.
not-saved-deleted =
    Sin guardar: este proyecto se borró en otra ventana. Restáurelo de la papelera, o guarde este como copia.
not-saved-newer =
    Sin guardar: una versión más nueva de Battenbook guardó este proyecto (formato { $format }). Recargue para tener la versión nueva; para conservar lo que ve aquí, guárdelo antes en un archivo.
not-saved-large =
    Sin guardar: el proyecto tiene { $bytes } bytes; el límite es { $most }. Guárdelo en un archivo y divídalo en dos proyectos.
no-room-version =
    No hay espacio para otra versión. El proyecto mismo se conserva. Borre versiones viejas, o vacíe la papelera en la página de inicio.

not-imported = No se importó nada: { $why }
file-large =
    el archivo tiene { $bytes } bytes; el límite es { $most }. Un archivo de proyecto es mucho más pequeño; ¿es el correcto?
file-unreadable = el navegador no pudo leer el archivo. Elíjalo otra vez.
file-refused = { $why }.
file-newer =
    el archivo lo escribió una versión más nueva de Battenbook. Recargue para tener esa versión y ábralo otra vez.
file-many = el archivo tiene { $count } proyectos; el límite es { $most }. Ábralos desde varios archivos.

link-refused = No se agregó nada: { $why }
link-long = el enlace lleva más de lo que puede tener un proyecto. Pida el proyecto como archivo.
link-damaged = el enlace llegó cortado o cambiado. Pídalo otra vez, o pida el proyecto como archivo.
link-apart = los códigos no son del mismo proyecto. Se desecharon; escanéelos todos otra vez.
link-cannot = este navegador no puede desempaquetar enlaces. Actualícelo, o pida el proyecto como archivo.
code-no-room = No hay espacio en este dispositivo para guardar el código hasta que lleguen los demás.
