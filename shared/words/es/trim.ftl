title = Embellecedor de claraboya
purpose = Cortar un embellecedor para que su pestaña asiente contra el techo en todo el contorno.

height = Altura del cuello, sin cortar
    .help = De la cara de la pestaña que va contra el techo al borde que va contra el bastidor.
corners = Esquinas
    .help = Las cuatro, en orden alrededor del hueco, cada una con una separación, una profundidad o ambas.
    .row = esquina
name = Esquina
standoff = Separación
    .help = Empuje hacia arriba el embellecedor sin cortar hasta que asiente en el bastidor; mida de la pestaña al techo.
depth = Profundidad
    .help = Del bastidor hasta la cara del techo terminado. Si da ambas, una comprueba la otra.
clearance = Holgura en el bastidor
    .help = Cuánto queda el borde cortado separado del bastidor, para que la pestaña llegue con seguridad al techo. Si se omite: 1/16 in.
least-grip = Altura mínima que debe quedar
    .help = Lo que el embellecedor necesita para sujetarse: sus tornillos, grapas o el collar de la claraboya. Si se omite: 1/2 in.
sides = Lados del embellecedor
length = De la primera esquina a la segunda
    .help = A lo largo del cuello; el lado opuesto mide lo mismo.
width = De la segunda esquina a la tercera
    .help = A lo largo del cuello.
lining = Techo bajo la pestaña
    .help = Grueso de tabla y listón donde van los tornillos del embellecedor: un tornillo que no pase de ahí no llega a la chapa ni a los cables.

corner = esquina { $number }

no-corners = aún no hay esquinas; anótelas todas, en orden alrededor del hueco
no-reading = { $corner } no tiene lectura; anote la separación (de la pestaña al techo) o la profundidad (del bastidor al techo)
too-short =
    en { $corner } al embellecedor le faltan { $by } para llegar del techo al bastidor; revise la lectura o consiga uno
    más alto
disagree =
    en { $corner } la separación leída es { $standoff }, pero la altura menos la profundidad da { $from-depth }; deben
    coincidir con una diferencia de hasta { $within }: vuelva a medir ambas
nothing-to-cut = la pestaña toca el techo en todas las esquinas, así que no hay nada que cortar; si no lo toca, vuelva a medir
too-little-left =
    en { $corner } solo quedarían { $keep } del embellecedor y hacen falta { $least }; el techo es demasiado delgado o
    demasiado desigual para este embellecedor
nothing-left = en { $corner } no quedaría nada del embellecedor; el techo es demasiado delgado o demasiado desigual para él
out-of-range = aquí hay { $value }; debe estar entre { $least } y { $most }

cut-off = Cortar, desde el borde del lado del bastidor
keep = Dejar, desde la pestaña
    .note = { $corners }; con lo cortado, cada una suma { $height }
uneven = Desnivel
    .note = de la esquina que más pierde a la que menos

twisted =
    El techo y el bastidor están alabeados entre sí: una pestaña plana queda separada { $by } en dos esquinas, más de
    lo que sus tornillos pueden acercar. Vuelva a medir; si se confirma, calce el techo ahí o selle la rendija.
rocks = Una pestaña plana cojea { $by } en dos esquinas; sus tornillos pueden acercarla.
mark-both =
    En cada esquina marque lo que se corta desde el borde del lado del bastidor y lo que queda desde la cara de la
    pestaña: donde ambas marcas coinciden, están bien. Únalas con una línea recta en cada lado.
not-the-traced-line =
    No corte por una línea trazada a ras del techo. Con el embellecedor empujado hacia arriba, lo que asoma bajo el
    techo es lo que debe quitarse, pero se quita del borde del lado del bastidor: la pestaña se queda.
readings-differ =
    En { $corner } las dos lecturas difieren en { $by }: es suficiente; se corta según la separación.
crowned =
    Bajo una cubierta abombada el techo puede quedar más bajo o más alto entre las esquinas: lea la separación también
    a mitad de cada lado y, donde sea otra, corte ese lado en curva por tres marcas.
screws =
    Los tornillos del embellecedor pueden entrar { $most } en el techo, tabla y listón: ninguno más largo que eso más
    el grueso de la pestaña.
screws-unknown =
    No se indica el tornillo más largo: anote el grueso de tabla y listón donde van los tornillos.
seal =
    Alrededor del hueco van { $run } de sellador en un cordón de { $bead }: está en la lista de compras. Selle contra
    el bastidor como indique el fabricante de la claraboya; el embellecedor por sí solo no detiene el agua.
left-out = Se omitió, así que se toma el valor usual: { $values }.
    .clearance = holgura en el bastidor { $length }
    .least-grip = altura mínima que debe quedar { $length }
four-corners =
    Con las cuatro esquinas, en orden alrededor del hueco, se dibujan los cuatro lados desplegados y se ve si la
    pestaña puede asentar plana.
equal-sides = Los lados se dibujan de igual largo; anote sus medidas para verlos a escala.

table = Esquina por esquina: cortar desde el borde del lado del bastidor, dejar desde la pestaña
    .corner = Esquina
    .standoff = Separación
    .depth = Profundidad
    .cut-off = Cortar
    .keep = Dejar
left-over = { $mark } ({ $over })

from-edge = desde el borde del lado del bastidor
cut = corte
    .note = { $keep } desde la pestaña

sealant = cartucho de sellador

template = Línea de corte alrededor del embellecedor
    .words =
        Envuélvala en la cara del cuello, interior o exterior, en la que las esquinas van de izquierda a derecha en este
        orden con el borde del lado del bastidor arriba; su borde superior a lo largo de ese borde y cada vertical en su
        esquina. Compruebe que sus extremos coinciden antes de cortar por los trazos.
gauges = Plantillas de las esquinas
    .words =
        Presente cada una en su esquina, con su borde superior a lo largo del borde del lado del bastidor, marque el
        nivel de los trazos y una las marcas con una línea recta.
template-corner = { $corner }: cortar { $cut }

unrolled = El embellecedor desplegado: borde del lado del bastidor arriba, pestaña abajo
    .to-scale =
        Cuatro lados a escala, por { $corners } y de vuelta a la primera; la tira por encima de la línea de corte se quita.
    .equal =
        Cuatro lados dibujados de igual largo, por { $corners } y de vuelta a la primera; la tira por encima de la línea
        de corte se quita.
heights = La altura del embellecedor en cada esquina: borde del lado del bastidor arriba, pestaña abajo
    .words = Una tira por esquina; lo que queda por encima de la línea de corte se quita.
    .off = cortar { $cut }
    .keep = dejar { $keep }
section = Sección en { $corner }: sin cortar y empujado hacia arriba, y luego cortado
    .words =
        A la izquierda el embellecedor sin cortar asienta en el bastidor y su pestaña queda separada del techo; a la
        derecha se ha cortado la tira del borde del lado del bastidor y la pestaña toca el techo.
    .frame = bastidor
    .ceiling = techo
    .cut-off = cortar { $cut }
    .standoff = separación { $standoff }
    .keep = dejar { $keep }

step-cut-off = Cortar, { $corner }
step-keep = Dejar, { $corner }
step-rocks = Una pestaña plana queda separada en dos esquinas

source-geometry = altura = profundidad + separación; queda = profundidad - holgura; corte = separación + holgura
source-twist = alabeo = primera + tercera - segunda - cuarta esquina; 0 si las superficies son planas
source-rim-follows = los tornillos pueden acercar una pestaña delgada 1/8 in, no más
