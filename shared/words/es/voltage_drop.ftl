title = Caída de tensión
purpose = Calibre del cable y fusible para un tramo hasta una carga.

draws = La carga consume
power = Potencia de la carga
    .help = En su etiqueta. Se toma constante: la carga pide más corriente cuando baja la tensión.
current = Corriente de la carga
    .help = En su etiqueta, o medida. Se toma igual a cualquier tensión.
length = Longitud del tramo, de ida
    .help =
        Por donde irá el cable, subidas y rodeos incluidos, con un palmo de sobra en cada punta; la vuelta se suma aquí.
conductor = Cable
    .help =
        Impreso en la cubierta: 16 AWG, 1,5 mm2; o los ohm/m de un conductor. auto toma el menor calibre AWG que alcanza,
        auto mm2 la menor sección métrica.

no-steady = { $conductor }: { $problem }
    .would-do = { $conductor } no puede alimentar esta carga: { $problem }; serviría { $size }
overheats =
    { $conductor } se calienta demasiado: tal como va tendido admite { $ampacity }, y la carga consume { $current };
    divida la carga
    .would-do =
        { $conductor } se calienta demasiado: tal como va tendido admite { $ampacity }, y la carga consume { $current };
        serviría { $size }
draws-at = { $current } a { $volts }
no-fuse = ningún fusible sirve: { $problem }

answer-wire = Cable
    .least = el menor calibre que alcanza
    .least-awg = el menor calibre que alcanza; en AWG { $other }
    .least-metric = el menor calibre que alcanza; en métrico { $other }
    .given = como se indicó
answer-drop = Caída de tensión
    .text = { $volts } ({ $percent })
    .arrives = { $volts } en la carga
answer-fuse = Fusible en la fuente
    .each-end = Fusible en cada extremo
    .hidden = no se muestra: { $conductor } es demasiado fino
load-draws = la carga consume { $current }
    .up-to = la carga consume hasta { $current }
    .takes = { $draws }; este cable admite fusibles de hasta { $most }

lost = Se pierde { $percent }, y se permite { $limit }. { $instead }
instead = Alcanza con { $size }.
    .shorter = { $conductor } serviría para { $length }.
    .both = Alcanza con { $size }. { $conductor } serviría para { $length }.
    .none = Acorte el tramo o use una tensión mayor.
not-shown = No se muestra: { $problem }.
good =
    { $conductor } mantiene la caída dentro del límite de { $limit } en tramos de hasta { $length }, y su fusible lo protege.
    .any = { $conductor } mantiene la caída dentro del límite de { $limit } con cualquier longitud, y su fusible lo protege.
motors =
    Motores, compresores e inversores consumen al arrancar varias veces su corriente de marcha: si el fabricante indica un
    fusible, ponga ese, siempre que el cable lo admita.
heat = Cable para comprar: { $length } de positivo y lo mismo de negativo. En él se pierden { $loss } en calor.

table-awg = Calibres AWG lado a lado
table-metric = Secciones métricas lado a lado
head-wire = Cable
head-drop = Caída
head-longest = Tramo más largo
head-carries = Admite
head-enough = Alcanza
enough = sí
    .drop = no: caída
    .current = no: corriente
    .both = no: caída, corriente
    .unknown = no: corriente desconocida
    .unsteady = no: sin tensión estable

drawing = Tensión a lo largo del tramo
    .words =
        Dos conductores de { $conductor }, de { $length }, desde la fuente ({ $fuse } en el positivo) hasta la carga. La
        tensión baja en línea recta de { $source } a { $load }; el límite de { $limit } es { $least }.
    .fuse = fusible { $rating }
    .source = fuente
    .load = carga
    .at-source = { $volts } en la fuente
    .limit = límite { $limit }: { $least }

step-both = Los dos conductores
step-load = Tensión en la carga
step-current = Corriente
step-drop = Caída de tensión
step-share = Parte de la tensión de la fuente
step-loss = Se pierde en calor
step-low = Corriente con la batería al mínimo
step-most = Resistencia máxima en el límite
step-longest = Tramo más largo, de ida
