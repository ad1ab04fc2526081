title = Acabado
purpose = Cuánto acabado o pintura lleva una superficie, qué comprar y si se puede aplicar ahora.

product = Qué es
    .help =
        Su nombre en la lista de compras, por ejemplo acabado de piso; ahí se suman las latas del mismo nombre y tamaño.
areas = Áreas
    .help = Divida la superficie en rectángulos.
    .row = área
label = Nombre
    .help = Por ejemplo: piso.
board-label = Nombre
    .help = Por ejemplo: umbral.
length = Largo
    .help = No hace falta para las tablas de una hoja.
width = Ancho
    .help = Con la lengüeta. De las tablas de una hoja, si se omite: el ancho con que quedan puestas.
count = Cuántas
faces = Caras con acabado
    .help = 2 para una puerta o un panel que lo lleva en las dos.
subtract = Sin acabado: se resta
    .help = Lo que está encima o recortado: pasos de rueda, una trampilla.
boards = Tablas acabadas antes de montar
    .help = Tablas con acabado en caras, cantos y puntas; se suman a las áreas.
    .row = tabla
sheet = Tablas de
    .help = Una hoja de tablas: las piezas que corta, con su largo y su ancho. Ponga el espesor.
thickness = Espesor
edges = Cantos largos con acabado
ends = Puntas con acabado
coats = Manos
    .help = Las que pida la etiqueta.
finish-type = Acabado
    .help = Un acabado penetrante entra en la madera y no deja película; lo que queda encima se limpia.
finish-film = de película: barniz, pintura, acabado de piso
finish-penetrating = penetrante: aceite, tinte
how-thick = Qué tan gruesa
spread-rate = Rendimiento
    .help = En la etiqueta: rendimiento de una mano.
film = Espesor de película
dry = Película seca de una mano
    .help = En la ficha técnica: espesor de película seca (EPS, DFT).
solids-percent = Sólidos en volumen
    .help = En la ficha técnica; en volumen, no en peso.
thinner-percent = Diluyente agregado
    .help = Respecto a lo que se diluye: 10 % son 100 ml por litro.
solids-known = Sólidos en volumen, con un rendimiento
    .help = Solo para saber la película seca que deja ese rendimiento.
wipe-after = Limpiar el sobrante después de
    .help = En la etiqueta de un acabado penetrante.
surface-factor = Factor de superficie
    .help = 1 si es lisa; madera gastada o de poro abierto 1,1 a 1,2, chapa acanalada según se mida.
loss-percent = Desperdicio
    .help =
        Lo que se queda en charola, rodillo y lata: brocha y rodillo 10 a 15 %, pistola 30 % o más. Si se omite es 10 %;
        ponga 0 si no hay.
containers = Envases en la tienda
    .help = Con el precio de cada uno se eligen los más baratos que alcancen; sin él, los que dejen menos sobrante.
    .row = envase
size = Tamaño
price = Precio
density = Densidad
    .help = En la ficha técnica; para el peso en la lista de compras.
layers = Otras capas en la misma superficie
    .help = Tinte, imprimación, sellador, pintura: cada una con su etiqueta.
    .row = capa
layer-product = Qué es
    .help = Por ejemplo: imprimación.
place = Se aplica
place-under = antes de las manos de arriba
place-over = después de ellas
supplies = Rodillos, brochas, lijas
    .row = material
supply = Qué es
    .help = Por ejemplo: lija 120, funda de rodillo.
each = Uno alcanza para
    .help =
        Cuánta superficie aguanta un rodillo, una almohadilla o una lija. Ninguna tabla lo da: pruebe uno hasta que
        resbale o se tape.
times-over = Pasadas por la superficie
    .help = Lijar entre tres manos son dos pasadas.
price-of-one = Precio de uno
air = Aire y superficie
    .help = Medidos adentro, donde y cuando vaya a aplicar.
temperature = Temperatura del aire
humidity-percent = Humedad relativa
surface-temperature = Temperatura de la superficie
    .help = Ponga el termómetro en la tabla o en el metal, en el punto más frío.
moisture-percent = Humedad de la madera
    .help = Con higrómetro, el más húmedo de varios puntos.

nothing-given = agregue al menos un área
nothing-left = se resta tanto como hay y no queda nada que cubrir; revise qué áreas se restan
of-boards-sheet = las tablas de la hoja tienen su propio largo; déjelo vacío
give-or-choose = póngalo aquí, o elija una hoja de tablas
leaves-no-film = un acabado penetrante no deja película; ponga su rendimiento y deje esto vacío
film-stays = una película no se limpia; elija un acabado penetrante o deje esto vacío
film-has-solids = la película ya tiene sus sólidos; deje esto vacío

area-number = área { $number }
board-number = tabla { $number }
several = { $name } × { $count }
both-faces = { $name }, las dos caras
coating = acabado
thinner-for = diluyente para { $product }
coats-of =
    { $coats ->
        [one] { $coats } mano
       *[other] { $coats } manos
    }
of-product = { $product }: { $said }
step-of = { $step }, { $product }

buy = Compre
    .of = Compre, { $product }
    .cost = { $cost } en total; { $left }
    .left = sobran { $volume }
needed = Hace falta
    .of = Hace falta, { $product }
    .thinned = Hace falta, sin diluir
    .thinned-of = Hace falta, { $product }, sin diluir
    .film =
        { $coats ->
            [one] { $coats } mano en { $area }, { $film } húmeda
           *[other] { $coats } manos en { $area }, { $film } húmedas cada una
        }
    .no-film =
        { $coats ->
            [one] { $coats } mano en { $area }, se limpia, sin película
           *[other] { $coats } manos en { $area }, se limpian, sin película
        }
coat-now = ¿Aplicar ahora?
    .yes = Sí, según etiqueta, punto de rocío y la noche indicada
    .not-tonight = No: esta noche no lo deja
    .then = después, { $why }
    .wait = No: espere
    .unknown = No se sabe: solo se revisó el punto de rocío
    .enter = { $dew }; ponga { $missing }
above-dew = la superficie está { $by } sobre el punto de rocío
below-dew = la superficie está { $by } bajo el punto de rocío

not-yet = No aplique todavía: { $why }. Caliente la carrocería o espere otro día.
not-tonight = No aplique antes de esta noche: { $why }. Caliente la carrocería o espere otro día.
may-go-on =
    Aire, superficie y la noche indicada están dentro de los límites de la etiqueta. Mida otra vez antes de cada mano.
not-shown = No se sabe si se puede aplicar: ponga { $missing }.
frost = Se forma escarcha de { $temperature } para abajo: antes llega la temperatura mínima de la etiqueta.
usual-loss =
    No hay desperdicio, así que se toma { $loss }, lo usual con brocha y rodillo. Ponga 0 si no hay.
wipe-unknown = No se dice cuándo limpiarlo: siga la etiqueta y aplique solo lo que alcance a limpiar a tiempo.
mix-thinner =
    Mezcle { $paint } de la lata con { $thinner } de diluyente: { $all } para aplicar. Los envases cubren lo que sale de la
    lata.
add-containers = Agregue los envases de la tienda, con sus precios, para ver cuáles comprar.
not-priced =
    No todos los envases tienen precio, así que estos dejan el menor sobrante; con todos los precios se eligen los más
    baratos.
scant = Solo sobran { $volume }: con un poco más de desperdicio que el indicado no alcanza.
not-proved = Hay demasiadas combinaciones para probarlas todas: otra podría ser un poco mejor.

table = Capas, en el orden en que se aplican
    .product = Producto
    .coats = Manos
    .wet = Película húmeda
    .needed = Hace falta
    .buy = Compre
    .cost = Costo
    .no-film = ninguna
    .together = en total

drawing = Áreas a escala; las rayadas no llevan acabado
    .words =
        { $coated ->
            [one] { $coated } rectángulo con acabado y { $off } restados, a escala; { $area } en total.
           *[other] { $coated } rectángulos con acabado y { $off } restados, a escala; { $area } en total.
        }

order = Orden de trabajo
order-dry = Mida la madera con el higrómetro
    .note = Contra el límite de la etiqueta, también cerca de las puertas.
order-patch = Pruebe todas las capas en una muestra
    .note = En la misma madera, lijada igual: color, secado y si una acepta a la otra.
order-dust = Aspire y luego limpie el polvo
    .note = Antes de la primera mano y otra vez antes de cada una de las demás.
order-on =
    { $coats ->
        [one] { $product }: { $coats } mano
       *[other] { $product }: { $coats } manos
    }
    .wiped = No aplique de una vez más de lo que alcance a limpiar a tiempo.
    .between = Entre manos: espere, lije y quite el polvo como diga la etiqueta.
order-wipe = { $product }: limpie el sobrante
    .note = Cada parte { $time } después de aplicarla, con trapos limpios, hasta que salgan secos.
    .unknown = Después de los minutos que diga la etiqueta; si se queda, no deja de estar pegajoso.
order-rags = Extienda los trapos al aire libre, uno por uno
    .note = Los trapos con aceite o tinte se encienden solos si se amontonan.

source-areas = área de rectángulos
step-boards = Tablas
    .formula = B = Σ n · (caras · l · w + cantos · l · t + puntas · w · t)
    .numbers =
        { $count ->
            [one] { $count } tabla
           *[other] { $count } tablas
        }
step-area = Área por cubrir
    .formula = A = Σ n · caras · l · w
    .with-boards = A = Σ n · caras · l · w + B
    .areas =
        { $count ->
            [one] { $count } área
           *[other] { $count } áreas
        }
step-wet = Película húmeda de una mano
step-dry = Película seca de una mano
step-spread = Rendimiento, como se aplica
step-on = Sobre la superficie, todas las manos
step-into = Dentro de la madera, todas las manos
step-needed = Hace falta, como se aplica
step-can = De la lata
step-containers = Envases que dejan el menor sobrante
    .priced = Los envases más baratos
    .formula = Σ n · tamaño ≥ P
    .left-over = sobran { $volume }
step-supply = { $supply }
    .formula = n = ⌈A · pasadas / uno⌉
step-dew = Punto de rocío (T en °C)
    .night = Punto de rocío, en la noche (T en °C)
step-margin = Superficie sobre el punto de rocío
    .night = Superficie sobre el punto de rocío, en la noche
step-may = ¿Se puede aplicar?, { $product }
    .formula = mínima ≤ aire, superficie ≤ máxima; HR ≤ límite, HR < 85 %; m ≥ 3 °C; ahora y en la noche
    .numbers = { $least } a { $most }, { $humidity }
    .yes = sí
    .no = no
    .unknown = no se sabe
