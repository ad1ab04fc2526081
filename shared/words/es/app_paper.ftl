# Papel: el cuaderno y las plantillas a tamaño real.

## El cuaderno.
booklet = Cuaderno
date = Fecha en la portada, como usted la escribe (opcional)
paper = Papel
print = Imprimir
estimates = Estimaciones a partir de medidas. Primero van el reglamento local, las instrucciones del fabricante y los oficios con licencia.
contents = Contenido
take-care = Cuidado
care-numbers = Cuidado: números { $numbers } al final.
not-worked-out = aún sin calcular
given = Medido y elegido
of-the-body = { $value } (de la caja)
to-buy = Para comprar
side-view = El vehículo desde su lado izquierdo, con el frente a la izquierda
    .words = La caja desde su lado izquierdo: largo, altura, costillas y aberturas del techo.
same-table = { $title }: como en la sección { $section }.
sources = Fuentes

## La hoja para la cartera.
today = Hoy
today-sheet = La hoja de hoy, para la cartera
today-help = Lo que aún no está marcado como hecho, en una página que se dobla al tamaño de la cartera. Imprímala de nuevo según avance el trabajo.
print-today = Imprimir la hoja de hoy
left-today =
    Faltan: { $marks ->
        [one] 1 trazo
       *[other] { $marks } trazos
    }, { $pieces ->
        [one] 1 corte
       *[other] { $pieces } cortes
    }, { $checks ->
        [one] 1 empalme o revisión
       *[other] { $checks } empalmes y revisiones
    }.
piece-from = { $piece }, de { $stock }
marks-next = Trazos que siguen
cuts-next = Cortes que siguen
checks-left = Empalmes y revisiones pendientes
left-to-buy = Falta comprar
figures = La cifra de cada hoja
nothing-left = No falta nada.
and-more = y { $count } más
fold = Doble por las líneas punteadas, con lo impreso por fuera: por la mitad de arriba abajo, otra vez, y luego de izquierda a derecha.

## Plantillas.
templates = Plantillas a tamaño real
no-templates = Esta hoja aún no tiene plantillas: llene primero lo que falta.
how-to-print = Imprima al 100 % (“tamaño real”, no “ajustar a la página”), mida el cuadrado y luego corte.
square = cuadrado de control de 100 mm y 4 in
square-each-way = 100 mm por lado
square-measure = Mida antes de cortar:
square-is = el cuadrado mide 100 mm,
square-lines = las rayas de al lado, 4 in.
square-if-not = Si no, imprima otra vez al 100 %.
too-large = Demasiado grande para papel: trácelo en la pieza con una cinta.
piece = Pieza { $number } de { $count }. Ponga cruz sobre cruz: { $joints }.
joint-left = { $piece } a su izquierda
joint-right = { $piece } a su derecha
joint-above = { $piece } arriba
joint-below = { $piece } abajo
