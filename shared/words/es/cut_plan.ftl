title = Plan de corte
purpose = Qué comprar para una lista de piezas y cómo cortarlo al menor costo.

pieces = Piezas
    .help = Todas las que se cortan de la misma sección.
    .row = pieza
label = Nombre
length = Largo
    .help = Terminado, tal como va colocada.
count = Cuántas
section = Sección
    .help = Las hojas que cortan el mismo material en la misma sección se planifican juntas en la lista de corte.
thickness = Grueso
width = Ancho

piece = pieza { $number }

buy = Comprar
    .nothing = nada
    .here = más { $lengths } que ya tiene
cost = Costo
    .proved = ningún plan cuesta menos
    .bound = ninguno puede costar menos de { $bound }
left-over = Sobrante
    .share = { $percent } del material

proved-cost = Demostrado: ningún plan cuesta menos.
proved-stock = Demostrado: ningún plan gasta menos material.
best-found =
    El mejor plan hallado gasta { $found }; ninguno puede gastar menos de { $bound }. Puede haber uno mejor entre ambos.
no-margin =
    { $bars ->
        [one]
            Sin margen en { $bars } barra: queda menos de { $margin } aparte de piezas y cortes. Mídala antes de cortar;
            una punta rajada o un largo escaso obliga a usar otra.
       *[other]
            Sin margen en { $bars } barras: queda menos de { $margin } aparte de piezas y cortes. Mídalas antes de
            cortar; una punta rajada o un largo escaso obliga a usar otra.
    }

stores = Si la tienda tiene
    .lengths = Largos
    .buy = Comprar
    .cost = Costo
    .stock = Material
    .left-over = Sobrante
    .all = todos
    .only = solo { $length }
    .not-enough = no alcanza

drawing = Patrones de corte
    .words =
        { $patterns ->
            [one] { $lengths } para cortar en { $patterns } patrón, dibujado como una barra con sus piezas y lo que sobra.
           *[other] { $lengths } para cortar en { $patterns } patrones, cada uno dibujado como una barra con sus piezas y lo que sobra.
        }
    .none = Nada que cortar.

step-pieces = Todas las piezas
step-pattern = Patrón de corte { $number }
    .result = { $used } de { $room }
step-cost = Costo
step-left-over = Sobrante
    .formula = Σ L − Σ l − cortes
    .numbers = { $stock } − { $pieces } − cortes
step-bound = Cota
    .formula = menor Σ n · p sobre todos los patrones, enteros y en parte
    .numbers =
        { $patterns ->
            [one] { $patterns } patrón usado
           *[other] { $patterns } patrones usados
        }

source-cost = costo = suma de largos comprados x precio
source-waste = sobrante = material - piezas - cortes entre piezas y antes de un retazo
