title = Calefactor y enfriador
purpose = Ver cuánto calor hace falta para mantener tibia la carrocería en la noche más fría, y fresca al mediodía más caluroso.

surfaces = Las superficies de la carrocería
    .help = Piso, techo y paredes como se midieron en la página de la carrocería. Déjelo en blanco si usted agrega todas las partes.
walls = Aislamiento de las paredes
    .help = La hoja de aislamiento de las cuatro paredes; se descuentan las ventanas de abajo.
roof = Aislamiento del techo
    .help = En blanco: hecho como las paredes.
floor = Aislamiento del piso
    .help = En blanco: hecho como las paredes.
length = Largo interior
    .help = De la pared delantera a la trasera.
width = Ancho interior
    .help = De la pared izquierda a la derecha.
height = Alto interior
    .help = Del piso al techo.
openings-u = Valor U de las aberturas del techo
    .help = Las escotillas y respiraderos de la carrocería: una sola lámina de plástico unos 6 W/m2/K, un domo doble 3.
windows = Ventanas
    .row = ventana
    .help = Se descuentan de las paredes de la carrocería; el sol que entra por ellas cuenta al mediodía.
window-label = Ventana
area = Área
    .help = Largo por alto o ancho, por dentro.
window-u = Valor U
    .help = Vidrio simple unos 5,6 W/m2/K, acrílico doble 3, con una cubierta gruesa 2.
sun-percent = Parte del sol que deja pasar
    .help = SHGC (valor g) del vidrio: claro 85, tintado 60, detrás de una cubierta clara por fuera 15.
lit-percent = Parte que está al sol
    .help = Al mediodía más caluroso; las ventanas del lado de la sombra no cuentan.
parts = Partes que usted agrega
    .row = parte
    .help = Se suman a las superficies de la carrocería si estas se dan; si no, todo lo que atraviesa el calor.
label = Parte de la carrocería
u-or-sheet = Valor U
u = Valor U
    .help = De una hoja de aislamiento o de una ficha técnica; vidrio simple unos 5,6 W/m2/K, acero desnudo 5,9.
sheet = Hoja de aislamiento
    .help = Toma de ahí el valor U y lo va siguiendo.
fresh-air = Aire fresco
    .help = 15 m3/h (9 cfm) por cada persona que duerme; más mientras cocina.
inside-temperature = Temperatura interior
    .help = La que quiere tener esa noche.
outside-temperature = Temperatura exterior
    .help = La noche más fría que va a pasar dentro.
gains = Calor que se genera dentro
    .help = Una persona dormida da unos 70 W, una nevera lo que consume; el sol por las ventanas se suma abajo.
heater = El calefactor que tiene en mente
output = Potencia calorífica nominal
    .help = En su etiqueta; 1 kW son 3412 Btu/h.
draw = Electricidad que consume
    .help = Ventilador y bomba de un calefactor de combustible al máximo; uno eléctrico consume todo su calor.
noon = El mediodía más caluroso
    .help = Rellénelo para calcular también un enfriador.
sun-w-m2 = Sol sobre el vidrio al mediodía
    .help = 600 en un vidrio de cara al sol de verano; una ventana de techo recibe hasta 950.
performance = Coeficiente de rendimiento del enfriador
    .help = Potencia de frío entre potencia consumida, de su ficha técnica; un EER dividido entre 3,412.

window-number = ventana { $number }
part-number = parte { $number }
the-floor = piso
the-roof = techo
the-walls = paredes
the-openings = aberturas del techo
air = aire fresco
given-off = generado dentro
to-supply = por aportar

windows-too-large = las ventanas son más grandes que las cuatro paredes ({ $around }): revise sus áreas
bad-area = superficie { $number }: el área debe ser de 0 a 10 000 m2
bad-u = superficie { $number }: el valor U debe ser de 0 a 20 W/m2/K; el acero desnudo tiene 5,9
bad-fresh-air = el aire fresco debe ser de 0 a 10 000 m3/h
bad-inside = la temperatura interior debe ser de -60 a 80 C
bad-outside = la temperatura exterior debe ser de -60 a 80 C
bad-gains = el calor que se genera dentro, con el sol por las ventanas, debe ser de 0 a 100 000 W

heating = Calefacción necesaria
cooling = Enfriamiento necesario
heating-noon = Calefacción necesaria al mediodía
cooling-noon = Enfriamiento necesario al mediodía
cooler-draws = El enfriador consume
    .note = mientras trabaja

no-fresh-air = No se cuenta aire fresco: todos los que duermen dentro lo necesitan. Cuente unos 15 m³/h (9 cfm) por persona.
most = Donde más se pierde: { $part }, { $heat }, { $share } de todo.
heater-small =
    El calefactor da { $output } como máximo y no alcanza para { $heat }: uno más grande, más aislamiento o menos
    vidrio.
heater-runs =
    En la noche más fría el calefactor trabaja { $share } del tiempo y mientras tanto consume { $draw }: la hoja de
    energía toma ambos de aquí.
denser =
    El aire fresco cuenta como 1,2 kg/m³, tal como sale de un cuarto tibio. Si su caudal se mide en el frío de afuera,
    el aire es { $share } más denso y necesita otro tanto más de calor.
heat-up =
    Esto mantiene tibia una carrocería tibia. Para calentar una fría en un tiempo razonable, elija un calefactor la
    mitad más grande.
noon-left-out =
    Los { $heat } al mediodía no incluyen el sol sobre techo y paredes ni el secado del aire. Sume el sol al calor que
    se genera dentro, y elija un enfriador con margen.
noon-sun =
    Sol sobre el techo al mediodía, como regla práctica: de 150 W para un techo blanco a 450 W para uno oscuro, por 10 m²
    (108 ft²) con algo de aislamiento. Lo que un enfriador gasta en secar el aire se suma.
noon-nobody = Al mediodía no se cuenta nada por personas y aparatos dentro: una persona da unos 70 W.
to-energy = La hoja de energía toma de aquí los { $power } del enfriador; sus horas se anotan allá.

balance = Calor que sale (negativo: que entra)
    .part = Parte
    .area = Área
    .night = Noche
    .noon = Mediodía

night-picture = Noche más fría: { $inside } dentro, { $outside } fuera
noon-picture = Mediodía más caluroso: { $inside } dentro, { $outside } fuera
only-picture = Balance de calor: { $inside } dentro, { $outside } fuera
picture-words = Barras del calor que sale por cada parte, { $heat } por aportar.
to-heat = por calentar
to-cool = por enfriar

other-unit = en la otra unidad
sun-through = Al mediodía, sol por: { $window }
at-night = { $step }
at-noon = Al mediodía: { $step }

source-transmission = Q = suma(U A) (Ti - Te), la definición de U
source-air =
    0,335 Wh/(m3 K) por aire de 1,2 kg/m3, lo que pesa a unos 20 °C al nivel del mar, y 1005 J/(kg K)
source-solar = el coeficiente de ganancia solar es el calor que entra sobre la radiación en el vidrio
source-performance = la potencia consumida es el calor movido entre el coeficiente de rendimiento
source-air-each = 15 m³/h (9 cfm) de aire fresco por cada persona que duerme
source-heat-up = la mitad más para calentar una carrocería fría
source-sun = 600 W/m² sobre vidrio vertical al sol de verano
source-glass = U 5,6 W/m²K para vidrio simple, 6 para una escotilla de plástico simple
