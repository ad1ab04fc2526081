title = Aislamiento
purpose = Ver cuánto calor deja pasar una pared, un techo o un piso, cuánto se enfría el forro y dónde se moja.

layers = Capas, de dentro afuera
    .help = Empiece por el forro que se toca y termine en la chapa.
    .row = capa
name = Material
    .help = Elija de la lista para rellenar lo que se sabe de él, o escriba otro; la etiqueta va primero.
material = material
thickness = Espesor
    .help = Ya colocado: la espuma comprimida cuenta con su espesor comprimido.
conductivity = Conductividad
    .help = En la etiqueta o la ficha técnica, como λ o k.
vapour-factor = Factor de resistencia al vapor
    .help =
        μ en la ficha técnica: 1 el aire en reposo, 1 000 000 el metal y el vidrio. Los planos de condensación lo
        necesitan de todas las capas. De un intervalo, la cifra baja es la prudente en el lado caliente; la alta, por
        fuera del plano que se moja.
surface-in = Resistencia de la capa de aire interior
    .help = 0,13 m2K/W en pared, 0,10 en techo y 0,17 en piso, en invierno.
surface-out = Resistencia de la capa de aire exterior
    .help = 0,04 m2K/W con el vehículo parado; en marcha o con temporal es menor.

bridge = Listones o costillas que cruzan una capa
    .help = La madera por su parte de la superficie; la costilla de acero por sus anchos y su separación.
bridge-layer = Capa que cruzan
    .help = Contada desde 1 por dentro.
share = Madera: parte de la superficie
    .help = Ancho del listón entre la separación entre ejes; déjelo en blanco si son costillas de metal.
metal-width = Costilla de acero: parte más ancha
    .help = A lo ancho del ala donde apoya el forro.
web = Costilla de acero: espesor del alma
    .help = El metal que va de la chapa al ala; en un perfil omega, la suma de los dos lados.
spacing = Costilla de acero: separación entre ejes
    .help = Del eje de una costilla al eje de la siguiente.
bridge-conductivity = Conductividad del listón o la costilla
    .help = Conífera 0,13 W/m/K, acero 50, acero inoxidable 17, aluminio 160.

inside = Aire interior
outside = Aire exterior
    .help = La noche más fría que vaya a pasar dentro.
temperature = Temperatura
    .help = Del aire.
humidity-percent = Humedad relativa
    .help = En un higrómetro; dentro, por la mañana antes de ventilar.

layer = capa { $number }
share-or-rib = dé la parte de la superficie si es madera, o los anchos y la separación si es una costilla de acero, no ambas cosas
share-missing =
    dé la parte de la superficie que ocupa la madera, por ejemplo 12 %; si es una costilla de acero, su ancho, su alma y
    su separación
rib-incomplete = una costilla de acero necesita su ancho, su alma y su separación

no-layers = hace falta al menos una capa
thickness-range = capa { $layer }: el espesor debe estar entre 0,01 mm y 5 m
conductivity-range = capa { $layer }: la conductividad debe estar entre 0,001 y 1000 W/m/K
film-range = la resistencia de una capa de aire debe estar entre 0 y 1 m2K/W; lo usual es 0,13 y 0,04
no-such-layer =
    { $layers ->
        [one] no hay capa { $layer }: solo hay una
       *[other] no hay capa { $layer }: las capas van de 1 a { $layers }
    }
share-range = la parte de la superficie debe ser mayor que 0 y menor que 100 por ciento
metal-bridge =
    un puente de { $conductivity } es metal, que la ISO 6946 deja fuera. Anótelo como costilla de acero: borre la parte
    de la superficie y dé su ancho, su alma y su separación
limits-apart =
    el límite superior es { $ratio } veces el inferior; la ISO 6946 vale hasta { $most }: encargue un cálculo en dos
    dimensiones
rib-widths =
    el alma debe ser de al menos 0,1 mm, el metal no más estrecho que el alma, y la separación mayor que el metal y
    como mucho 5 m
rib-conductivity = la conductividad del metal debe estar entre 1 y 1000 W/m/K; la del acero es de unos 50
zones-overlap =
    cada costilla toma calor de { $zone }, más que la separación de { $spacing }: el método de zonas necesita costillas
    más separadas
air-temperature = la temperatura del aire debe estar entre -60 y 80 C
air-humidity = la humedad relativa debe estar entre 0 y 100 por ciento; el punto de rocío pide al menos 1 por ciento
air-inside = dentro: { $what }
air-outside = fuera: { $what }
vapour-range =
    capa { $layer }: el factor de vapor debe estar entre 0,01 y 10 000 000; el aire en reposo tiene 1, el metal 1 000 000

u = Calor que deja pasar (U)
u-plain = R { $r }
u-crossed =
    { $by ->
        [ribs] R { $r }; sin costillas U { $u }
       *[battens] R { $r }; sin listones U { $u }
    }
lining = Forro, cara interior
lining-over =
    { $by ->
        [ribs] sobre las costillas unos { $temperature }
       *[battens] sobre los listones unos { $temperature }
    }
gathering = Agua que se acumula dentro
    .none = ninguna por difusión
    .note = solo por difusión; el aire que se cuela trae mucha más
rate = { $grams } g/m² al día

wet-everywhere =
    El forro está más frío que el punto de rocío, { $dew }: se moja por todas partes. Hace falta más aislamiento o más
    aire fresco.
wet-over =
    { $by ->
        [ribs]
            Sobre las costillas el forro está más frío que el punto de rocío, { $dew }: ahí se moja. Aísle por encima de
            las costillas o traiga más aire fresco.
       *[battens]
            Sobre los listones el forro está más frío que el punto de rocío, { $dew }: ahí se moja. Aísle por encima de
            los listones o traiga más aire fresco.
    }
mold =
    El forro queda por encima del punto de rocío, { $dew }, pero en lo más frío el aire está al { $humidity } de humedad:
    desde { $limit } puede crecer moho. Hace falta más aislamiento o más aire fresco.
dry =
    El forro queda por encima del punto de rocío, { $dew }, y en lo más frío por debajo del { $limit } desde el que puede
    crecer moho.
dew-point = El punto de rocío del aire interior está en { $dew }.
wet-behind =
    { $frost ->
        [yes]
            Se acumula escarcha detrás de { $layer } a { $temperature }: { $grams } g/m² al día por difusión. Una barrera
            de vapor en el forro la reduce.
       *[no]
            Se acumula agua detrás de { $layer } a { $temperature }: { $grams } g/m² al día por difusión. Una barrera de
            vapor en el forro la reduce.
    }
wet-within =
    { $frost ->
        [yes] Se acumula escarcha dentro de { $layer }, hasta { $temperature }: { $grams } g/m² al día por difusión.
       *[no] Se acumula agua dentro de { $layer }, hasta { $temperature }: { $grams } g/m² al día por difusión.
    }
no-water =
    No se acumula agua por difusión. Eso no da la pared por buena: el aire que se cuela detrás del forro trae mucha más.
outside-dew = Se forma rocío por fuera de la chapa; ahí no hace daño.
factors-missing = Para los planos de condensación, dé también el factor de vapor de { $layers }.
air-missing = Dé el aire interior y el exterior para ver temperaturas y dónde se moja.
humidity-limit =
    Con estas temperaturas mantenga la humedad interior por debajo del { $humidity }: más arriba, el aire en lo más frío
    del forro pasa del { $limit } y puede crecer moho (ISO 13788). La humedad no se elige: dos personas dormidas sueltan
    unos 100 g de agua por hora, y el aire fresco tiene que llevársela.
rib-temperature =
    La temperatura sobre una costilla es una estimación: supone que el calor pasa recto por una franja tan ancha como el
    metal. Lo que más ayuda es una tira de espuma sobre las costillas, bajo el forro.
rib-estimate =
    El valor U con costillas es una estimación. Frente a un modelo en dos dimensiones de 18 costillas en T (ala de 20 a
    80 mm, alma de 1 a 3 mm, aislamiento de 20 a 80 mm, forro de 3 a 20 mm) quedó entre 1,5 % por debajo y 5,5 % por
    encima; los perfiles omega y otros tamaños no se comprobaron y pueden desviarse más. Remaches, largueros, esquinas,
    marcos de puerta y pasos de rueda no se cuentan: por ahí se va más calor.
left-out =
    Los planos de condensación dejan fuera, ante todo, el aire que se cuela detrás del forro; también la lluvia con
    viento, el sol, lo que absorben los materiales y los días que se apartan de la media.

usual = Cifras usuales; la etiqueta va primero
    .material = Material
    .conductivity = Conductividad
    .factor = Factor de vapor
    .conductivity-source = Fuente de la conductividad
    .factor-source = Fuente del factor de vapor
range = { $low } a { $high }
through = A través de las capas
    .battens = A través de las capas, entre los listones
    .ribs = A través de las capas, entre las costillas
    .face = Cara
    .temperature = Temperatura
    .vapor = Vapor
    .saturated = Saturado a
face-lining = cara interior del forro
face-behind = detrás de { $layer }

section = Sección con temperaturas
    .words =
        { $planes ->
            [0] { $layers } capas, { $thickness } de espesor, el forro a la izquierda.
            [1] { $layers } capas, { $thickness } de espesor, el forro a la izquierda; se acumula agua en un sitio.
           *[other] { $layers } capas, { $thickness } de espesor, el forro a la izquierda; se acumula agua en { $planes } sitios.
        }
    .inside = dentro
    .outside = fuera
    .wood = madera, { $share } de la superficie
    .dew = punto de rocío { $temperature }
    .water = agua, { $temperature }
pitch = De costilla a costilla
    .words =
        Una costilla y el campo a su lado, el forro abajo. U { $zone } por la zona de la costilla, { $field } entre
        costillas, { $all } en total.
    .width = { $width }: U { $u }
    .field = U { $u }
pressures = Sección con presiones de vapor
    .words =
        { $planes ->
            [0] La presión de vapor, línea continua, bajo la saturación, línea de trazos; no se tocan.
            [1] La presión de vapor, línea continua, bajo la saturación, línea de trazos; se tocan en un sitio.
           *[other] La presión de vapor, línea continua, bajo la saturación, línea de trazos; se tocan en { $planes } sitios.
        }
    .saturated = saturado { $pressure }
    .vapor = vapor { $pressure }

step-all = Todas las capas y las dos capas de aire
step-upper = Límite superior: el calor sigue su camino, por la madera o a su lado
step-lower = Límite inferior: cada capa se iguala a lo ancho
step-mean = Resistencia
step-zone = Zona de la que una costilla toma calor; d es el recubrimiento, al menos { $least }
step-zone-r = Por esa zona: el ala y luego el alma, cada una junto al relleno
step-ribbed = Valor U con costillas
step-u = Valor U
step-dew = Punto de rocío del aire interior
step-lining = Forro, cara interior
    .battens = Forro entre listones
    .ribs = Forro entre costillas
step-over-rib = Forro sobre una costilla
step-water = Agua detrás de { $layer }; b es lo que cae la presión de vapor por metro de aire en reposo

material-xps = poliestireno extruido (XPS)
material-eps = poliestireno expandido (EPS)
material-polyiso = panel de poliisocianurato
material-polyurethane = espuma rígida de poliuretano
material-spray-foam = espuma proyectada de celda cerrada
material-mineral-wool = lana mineral
material-elastomeric = espuma elastomérica
material-cork = panel de corcho
material-softwood = madera de conífera
material-hardwood = madera de frondosa
material-softwood-plywood = contrachapado de conífera
material-birch-plywood = contrachapado de abedul
material-gypsum = placa de yeso
material-linoleum = linóleo
material-carpet = moqueta
material-fiberglass = poliéster con fibra de vidrio
material-glass = vidrio de ventana
material-acrylic = plancha acrílica
material-steel = acero
material-stainless = acero inoxidable
material-aluminum = aluminio
material-copper = cobre

source-factor = fRsi = (Tsi − Te) / (Ti − Te) = 1 − U Rsi donde el calor pasa recto
source-strip = una franja tan ancha como el metal, con el calor pasando recto
