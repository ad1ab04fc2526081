title = Listones
purpose = Listones sobre las costillas, uno a lo largo de cada una: largo, trazado de tornillos, tornillos, adhesivo y cómo cortarlos.

length = Largo a cubrir
    .help = De pared a pared a lo largo de la costilla, sin descontar holguras. Si se omite: el ancho de la carrocería, en cada costilla si se midió en varios puntos.
end-clearance = Holgura en cada punta
    .help = El espacio entre cada punta del listón y la pared o un hueco: un listón tan largo como el claro no entra. Si se omite: 3 mm.
strips = Cantidad de listones
    .help = Uno por cada costilla.
section = Sección de un listón
thickness = Grueso
    .help = De la costilla al forro.
width = Ancho
    .help = La cara a la que se atornilla el forro.
fastened = Tornillos
screws-per-strip = Tornillos por listón
screw-spacing-limit = Separación máxima entre tornillos
    .help = El listón lleva los menos tornillos que la respetan.
end-distance = Primer tornillo desde la punta
    .help = De cada punta del listón al tornillo más cercano. Demasiado cerca, el tornillo lo raja.
adhesive = Adhesivo
bead = Diámetro del cordón
    .help = Lo que mide el corte de la boquilla.
beads = Cordones en cada listón
cartridge = Contenido del cartucho
    .help = En su etiqueta.
price = Precio de uno
loss-percent = Desperdicio
    .help = Lo que queda en la boquilla y el cartucho, o se sale por los lados. Si se omite: 10 %.

screw = Tornillo
stack = Capas bajo la cabeza
    .help = Todo lo que hay de la cabeza del tornillo al acero, incluido el listón.
    .row = capa
name = Capa
steel = Acero
    .help = Todo el acero que atraviesa el tornillo: su calibre, o medido en el borde de un agujero.
behind = Fondo libre detrás del acero
    .help = De la cara de atrás del acero a la chapa, un cable o un tubo, lo que esté primero. Si se omite: el fondo de la carrocería detrás de la cara de una costilla, menos el acero.
lengths = Largos de tornillo disponibles
    .each = Largo del tornillo
gauge = Número del tornillo
gauge-six = #6 (3,5 mm)
gauge-eight = #8 (4,2 mm)
gauge-ten = #10 (4,8 mm)
gauge-twelve = #12 (5,5 mm)
gauge-fourteen = #14 (6,3 mm)
self-drilling = Autoperforante
    .help = Su punta de broca no tiene rosca y se suma al largo necesario.
hangs = Peso que cuelga de los listones
    .help = Listones, tablas, lámparas y todo lo que se vaya a fijar en ellos.

widths-at-ribs = { $least } a { $most }, el ancho en cada costilla

opening = hueco

strip-too-short =
    en la costilla { $rib }, { $opening } deja { $length } para un listón, muy corto para un tornillo en cada punta;
    enmarque ahí el hueco y anote usted el largo y la cantidad de listones, o mueva el hueco
no-strip-left = la holgura en ambas puntas no deja listón; anote menos
ends-meet = los primeros tornillos de ambas puntas se encontrarían; anote menos de la mitad del listón, { $half }
too-much-adhesive = es más adhesivo del que la hoja puede calcular; revise el cordón y la cantidad de listones

gauge-unknown =
    no se conoce el grueso de "{ $typed }"; anote un calibre par de 10 a 26, o el grueso medido, como 1,5 mm
steel-out-of-range = el acero debe tener algún grueso, hasta 1/2 in (12,7 mm)
no-drill-point =
    ninguna punta de broca de un tornillo #{ $gauge } atraviesa { $steel }; perfore un agujero guía o use un tornillo
    más grueso
stack-out-of-range = estas capas son demasiado gruesas para un tornillo; revise su grueso
in-stock = ; de venta corriente serviría { $length }
too-short = todos estos son demasiado cortos; hacen falta al menos { $least }{ $in-stock }
too-long =
    { $shortest } tocaría lo que hay detrás del acero: el largo máximo seguro es { $longest }, el mínimo que sujeta
    { $least }{ $in-stock }
too-long-unknown =
    { $shortest } es más de lo necesario ({ $least }) y nada dice qué hay detrás del acero: anote el fondo libre ahí, o
    un largo menor{ $in-stock }
no-room =
    no cabe ningún tornillo: tres hilos de rosca detrás del acero piden al menos { $least } en total, y hay lugar para
    { $longest } como máximo; use remaches ciegos o tuercas remachables, o sujete el listón de otra manera
overloaded =
    { $screws ->
        [one] en el camino { $screws } tornillo no aguanta el doble de este peso; hacen falta al menos { $enough }: use una separación menor o tornillos más gruesos
       *[other] en el camino { $screws } tornillos no aguantan el doble de este peso; hacen falta al menos { $enough }: use una separación menor o tornillos más gruesos
    }

strip = listón
strip-of = listón { $letter }
ribs =
    { $count ->
        [one] costilla { $ribs }
       *[other] costillas { $ribs }
    }

cut =
    { $strips ->
        [one] Cortar { $strips } listón a
       *[other] Cortar { $strips } listones a
    }
    .note = cada uno según el ancho en su costilla: vea la tabla
range = { $least } a { $most }
screws = Tornillos por listón
    .apart = { $screws } en total, cada { $spacing }
    .at-most-apart = { $screws } en total, cada { $spacing } como máximo
screw-range = de { $least } a { $longest } de largo
    .unknown = al menos { $least } de largo; el máximo no se muestra: anote qué hay detrás del acero
    .point = punta de broca { $point }, para hasta { $most } de acero; { $range }

table = Listones y las costillas a las que van
    .strip = Listón
    .goes-on = Va en
    .length = Largo
    .screws = Tornillos
    .apart = Separación

holds =
    Con el doble de su peso, el techo usa { $share } de lo que aguantan los { $screws } tornillos en acero dulce
    ({ $each } cada uno).
hangs-missing = Anote el peso que cuelga de los listones y se compara con la resistencia al arranque de los tornillos.
no-such-layer =
    Ninguna capa bajo la cabeza del tornillo es tan gruesa como el listón ({ $thickness }): en la lista debe estar todo,
    de la cabeza al acero.
with-point =
    Este largo es para un agujero guía perforado. Un tornillo autoperforante (la punta { $point } atraviesa este acero)
    debe medir al menos { $least }.
no-point = Ninguna punta de broca de un tornillo #{ $gauge } atraviesa { $steel }: perfore un agujero guía.
behind-unknown =
    Nada dice qué hay detrás del acero, y este tornillo sobresale { $reach } por detrás. Sondee por un agujero y anote
    aquí el fondo libre, o el fondo de la carrocería detrás de la cara de una costilla.
holes = Perfore { $hole } a través del listón, para que el tornillo lo apriete. { $steel-hole }
    .point = Una punta de broca abre su propio agujero en el acero.
    .tapping = En el acero, un tornillo autorroscante pide un agujero de { $hole }, salvo que su caja diga otro: manda la caja.
    .unknown = Para acero de este grueso no se muestra el agujero: use el que indica la caja del tornillo.
left-out = Omitido, así que se usa el valor habitual: { $values }.
    .clearance = holgura en cada punta { $length }
    .loss = desperdicio de adhesivo { $percent }
no-clearance = Sin holgura en las puntas, un listón tan largo como el claro no entra: córtelo más corto, o en dos.
along-ribs =
    Un listón va sobre cada costilla, a lo largo, atornillado a ella en todo su largo; las tablas del forro cruzan los
    listones. Para listones que crucen las costillas, atornillados en los cruces, anote usted el largo y la cantidad.
interrupted =
    { $count ->
        [one] La costilla { $ribs } queda interrumpida ({ $openings }): su listón termina ahí. Una cercha de techo cortada necesita un marco: cabezales hasta las cerchas vecinas, antes de poner ningún listón.
       *[other] Las costillas { $ribs } quedan interrumpidas ({ $openings }): sus listones terminan ahí. Una cercha de techo cortada necesita un marco: cabezales hasta las cerchas vecinas, antes de poner ningún listón.
    }
near-end = Tan cerca de la punta, un tornillo raja el listón: aléjelo, o perfore un agujero de paso.

screw-item = tornillo
self-drilling-item = tornillo autoperforante
adhesive-item = cartucho de adhesivo
screw-mark = tornillo { $number }

drawing = Listón con sus marcas de tornillos
    .longest = El listón más largo ({ $ribs }) con sus marcas de tornillos
    .words = Un listón de { $length } con { $screws } marcas de tornillos, la primera a { $end } de la punta.

step-strip = Listón
    .of = Listón { $letter }, { $ribs }
step-spacing = Separación de los tornillos
step-screws = Tornillos
step-least = Tornillo más corto
step-longest = Tornillo más largo
step-hole = Agujero a través del listón
    .formula = broca de paso según el número
step-steel-hole = Agujero en el acero para tornillo autorroscante
    .formula = según número y grueso
step-point = Punta de broca
    .formula = todo el acero ≤ lo que perfora la punta
    .result = punta { $point }
step-pull-out = Arranque de un tornillo
step-load = Carga en el camino
step-share = Parte usada
step-adhesive = Adhesivo
    .result =
        { $cartridges ->
            [one] { $volume }: { $cartridges } cartucho
           *[other] { $volume }: { $cartridges } cartuchos
        }
