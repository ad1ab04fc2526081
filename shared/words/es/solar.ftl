title = Paneles solares
purpose = Ver qué traen los paneles cada mes, si cubre el consumo del día, y su tensión con frío.

latitude = Latitud
    .help = De donde estaciona; al sur del ecuador, con signo menos.
tilt = Inclinación de los paneles
    .help = Desde la horizontal: 0 es plano sobre el techo.
azimuth = Girados respecto del ecuador
    .help = 0 mira al ecuador, 90 al este o al oeste; un panel plano no tiene orientación.
clearness = Claridad, una o doce
    .each = Claridad
    .help =
        Parte de la luz del sol que llega en un mes, de enero en adelante: de 0,3 en inviernos nublados a 0,7 en
        desiertos; una sola cifra vale para todos los meses.
panels = Paneles
count = Número de paneles
watts = Potencia nominal de cada uno
    .help = En la etiqueta de atrás.
voc = Tensión en circuito abierto de cada uno
    .help = Voc en la etiqueta.
voc-per-c-percent = Cambio de esa tensión, % por °C
    .help = En la ficha técnica, con signo menos; sin él se usa la tabla de la norma eléctrica.
isc = Corriente de cortocircuito de cada uno
    .help = Isc en la etiqueta; para el cable y el fusible de una serie.
vmp = Tensión de máxima potencia de cada uno
    .help = Vmp en la etiqueta; dice si los paneles calientes aún cargan.
max-series-fuse = Fusible máximo de la serie
    .help = En la etiqueta; ningún fusible de una serie puede ser mayor.
in-series = Paneles en serie
    .help = Unidos de más a menos en una misma serie.
mass = Peso de cada uno
    .help = Para el peso en la lista de compras: el de la ficha técnica, sin soportes.
loss-percent = Pérdidas
    .help = Suciedad, calor, cables y controlador juntos: 14 % según la lista usual, más si van planos sobre un techo caliente.
need-in-a-day = Consumo de un día
need = Consumo de un día
    .help = Lo que gasta un día.
sheet = De la hoja de energía
    .help = Toma de allí el consumo de un día y lo sigue.
coldest = Mañana más fría
    .help = La temperatura más baja que los paneles verán con luz.
controller-voltage = Tensión máxima del controlador
    .help = Lo más que admiten sus bornes de panel, en su etiqueta.
controller-amps = Corriente de carga del controlador
    .help = Lo más que da a la batería, en su etiqueta.
controller-input-amps = Corriente de panel que admite
    .help = La mayor corriente de cortocircuito en sus bornes de panel, en su ficha técnica.
battery-voltage = Tensión nominal de la batería
    .help = En blanco, se toma de la hoja de energía cuando el consumo viene de una.
hot-cells = Paneles en su momento más caliente
    .help = Planos sobre un techo a pleno sol, unos 70 °C (158 °F), regla práctica.

roof = Paneles en el techo
    .help = Repartidos alrededor de las aberturas del techo de la página de la carrocería.
panel-length = Panel, lado largo
    .help = Borde exterior del marco, con lo que sobresalga.
panel-width = Panel, lado corto
    .help = Borde exterior del marco.
length = Largo del techo
    .help = La parte plana; el largo interior de la carrocería es algo menor.
width = Ancho del techo
    .help = La parte plana, entre las curvas de ambos lados.
edge = Libre hasta los bordes del techo
    .help = El viento se mete bajo un panel que llega al borde.
clearance = Libre hasta las aberturas
    .help = Para que las escotillas abran y se puedan volver a sellar.
gap = De panel a panel
    .help = Sitio para las grapas y para que los paneles se dilaten con el calor.
walkway = Ancho del pasillo
    .help = Se deja libre de delante a atrás, para llegar a las escotillas y limpiar paneles.
walkway-side = El pasillo va
side-best = por donde cueste menos
side-left = por el borde izquierdo
side-middle = por el centro
side-right = por el borde derecho

clearness-count = dé una cifra para todos los meses, o doce; hay { $count }
too-many-in-series =
    { $count ->
        [one] solo hay un panel; no puede haber más en serie
       *[other] hay { $count } paneles; no puede haber más en serie
    }
latitude-range = la latitud debe estar entre -90 y 90 grados, el sur en negativo
clearness-range =
    mes { $month }: la claridad debe estar entre 0,05 y 0,85; lo usual va de 0,3 en inviernos nublados a 0,7 en desiertos
ground-range = la reflectancia del suelo debe estar entre 0 y 1; el suelo desnudo tiene 0,2, la nieve 0,7
tilt-range = la inclinación debe estar entre 0 (plano) y 90 grados (vertical)
azimuth-range = el acimut debe estar entre -180 y 180 grados; 0 mira al ecuador
power-range = la potencia nominal de los paneles debe estar entre 0 y 1 000 000 W
loss-range = las pérdidas deben estar entre 0 y menos de 100 por ciento
open-circuit-range = la tensión en circuito abierto debe estar entre 0,1 y 1000 V
coefficient-range =
    el coeficiente debe estar entre -2 y 0 por ciento por C; la tensión baja cuando el panel se calienta, así que es
    negativo
coldest-range = la temperatura más fría debe estar entre -60 y 60 C
below-table =
    la tabla NEC 690.7(A) acaba en -40 C: dé en su lugar el coeficiente del fabricante para la tensión en circuito abierto
series-range = los paneles en serie deben ser de 1 a 100
controller-range = la tensión máxima del controlador debe estar entre 1 y 2000 V
roof-range = el techo debe tener de 0,1 a 30 m de largo y de 0,1 a 10 m de ancho
panel-range = un panel debe tener de 0,1 a 5 m de largo y de ancho
clear-range = lo libre hasta bordes y aberturas debe estar entre 0 y 2 m, y la separación entre 0 y 1 m
walkway-range = el pasillo debe ser más estrecho que el techo

darkest = En el mes más oscuro, { $month }
    .need = hacen falta { $energy } al día
a-day = { $energy } al día
over-year = En todo el año
    .from = con { $power }
cold-string = Serie en la mañana más fría
    .limit = el controlador admite { $limit }

none-in-series =
    Con frío, un solo panel ya pasa del límite del controlador o de 50 V: use otro controlador u otros paneles.
too-long = Con frío esta serie pasa del límite del controlador y lo destruye: como mucho { $most } en serie.
within-limit =
    La serie queda con frío por debajo del límite del controlador; también lo harían hasta { $most } en serie, por debajo
    de 50 V.
covered = En un día medio los paneles cubren el consumo todos los meses.
short-more =
    Falta en { $months }: en { $month } faltan { $lacks } al día. Hacen falta paneles de { $power } en total, o { $lacks }
    al día conduciendo o de la toma exterior.
short-dark =
    Falta en { $months }: en { $month } faltan { $lacks } al día. Hacen falta { $lacks } al día conduciendo o de la toma
    exterior.
roof-short =
    { $proved ->
        [yes]
            En el techo caben { $fits } de los { $count } paneles (de ningún modo caben más): menos o más pequeños, menos
            espacio libre, o sin pasillo.
       *[no]
            En el techo caben { $fits } de los { $count } paneles (en la superficie libre cabrían { $bound } si se pudiera
            usar toda): menos o más pequeños, menos espacio libre, o sin pasillo.
    }
roof-takes =
    { $proved ->
        [yes] En el techo caben { $fits } de estos paneles; de ningún modo caben más.
       *[no] En el techo caben { $fits } de estos paneles; en la superficie libre cabrían { $bound } si se pudiera usar toda.
    }
both-rules =
    Un panel: { $maker } según el fabricante, { $table } según la tabla de la norma eléctrica; lo del fabricante va primero.
by-table =
    La tensión a { $temperature } sale de la tabla de la norma eléctrica para silicio cristalino; la cifra del fabricante
    va primero.
uneven = { $count } paneles no hacen series completas de { $series }.
outside-fit = La claridad de { $months } queda fuera del 0,3 a 0,8 para el que se ajustó el método.

input-over =
    A pleno sol las series pueden traer { $array }, y los bornes de panel del controlador admiten { $limit }: menos series
    en paralelo, u otro controlador.
input-unknown =
    No se muestra si el controlador admite la corriente de los paneles. Dé Isc y la corriente de panel que admite.
output-over =
    Los paneles pueden traer { $output } a la batería, y el controlador da { $limit }: uno MPPT se limita a eso, uno PWM se
    sobrecarga. Use uno mayor, o menos paneles.
output-unknown =
    No se muestra si la corriente de carga del controlador basta. Dela junto con la tensión de la batería.
hot-low =
    Calientes, los paneles dan { $hot }, y un controlador MPPT necesita 5 V más que la batería, { $needed } al final de la
    carga: puede no arrancar, o no llenar la batería en verano. Más en serie donde la serie fría quede por debajo de 50 V, o
    paneles de más tensión; un PWM no lo necesita.
hot-unknown = No se muestra si los paneles calientes aún cargan. Dé Vmp y la tensión de la batería.
cold-unknown =
    No se muestra si la serie fría queda por debajo del límite del controlador. Dé Voc, la mañana más fría y la tensión
    máxima del controlador.
fifty-volts =
    Con frío una serie está a { $volts }: desde 50 V puede matar, y rigen otras normas. Menos en serie, o deje el cableado a
    un electricista autorizado.
string-wire = Cable de cada serie: para { $current } o más.
string-fuse =
    { $strings } series en paralelo: un fusible fotovoltaico (gPV) de { $rating } en cada una, fusible y portafusible para
    { $volts } CC o más.
fuse-not-shown = { $strings } series en paralelo necesitan un fusible cada una. No se muestra: { $why }.
why-cold = dé la tensión en circuito abierto y la mañana más fría, por la tensión que debe cortar
why-licensed = desde 50 V lo elige un electricista autorizado
why-panels = dé la corriente de cortocircuito y el fusible máximo de los paneles
why-rating =
    sería de { $least } o más, y el panel admite { $most }: no se fabrica un fusible así; menos series, o cada una con su
    controlador

buy-panel = panel solar
buy-fuse = fusible de serie con portafusible
    .spec = { $rating } gPV, { $volts } CC o más

mean-days = Un día medio de cada mes
    .month = Mes
    .clearness = Claridad
    .level = En horizontal
    .panels = En los paneles
    .yield = Producción de un día
    .over = Por encima del consumo
bars = Producción de un día medio, mes a mes
    .words = Doce barras, de { $least } en { $darkest } a { $most } en { $brightest }.
    .words-need =
        Doce barras, de { $least } en { $darkest } a { $most } en { $brightest }, y una línea en el consumo de { $need }.
    .need = trazos: consumo, { $need }
closes = Qué cubre lo que falta
    .month = Mes
    .lacks = Falta al día
    .panels = Paneles en total
    .tilted = o inclinados
    .only = o gaste solo
    .bridges = La batería llena aguanta
    .charge = o cargue, cada día
    .charger = o { $charger }, cada día
too-dark = demasiado oscuro
panels-needed = { $panels }
    .over = { $panels }; en el techo caben { $fits }
tilted =
    { $enough ->
        [yes] { $tilt }: { $energy }, basta
       *[no] { $tilt }: { $energy }, no basta
    }
days = { $days } días

step-outside = { $month }: fuera de la atmósfera
step-level = { $month }: en horizontal
step-diffuse = { $month }: parte que llega de todo el cielo
step-panels = { $month }: en los paneles, girados { $azimuth }; R_b es lo que reciben de la luz directa
step-yield = { $month }: producción de un día
step-cold-panel = Panel en la mañana más fría
step-cold-string = Serie en la mañana más fría
step-wire = El cable de una serie aguanta al menos
step-roof = Paneles que caben en el techo; como mucho, superficie libre A_0 entre la del panel A_1
    .numbers = { $length } x { $width } cada uno, separados { $gap }, a { $edge } de los bordes
    .result = { $fits } de { $bound } como mucho

roof-drawing = Paneles en el techo, desde arriba
    .openings = Paneles en el techo, desde arriba; { $openings }
    .opening = { $letter } { $name }
    .words =
        El techo, { $length } x { $width }, el frente a la izquierda: { $used } de { $count } paneles colocados, sitio para
        { $more } más.

source-layout =
    filas de paneles iguales entre cortes en las aberturas, las mejores por programación dinámica; no más que la superficie
    libre entre la de un panel
source-clear = paneles a 50 mm de bordes y aberturas, separados 20 mm
