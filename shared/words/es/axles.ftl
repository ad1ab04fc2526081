title = Carga por eje
purpose = Ver cuánto carga cada eje con todo y todos a bordo, y cuánto margen queda.

wheelbase = Distancia entre ejes
    .help = Del centro de la rueda delantera al centro de la trasera, a lo largo del suelo.
front = Eje delantero
rear = Eje trasero
limit = Límite del eje
    .help = En la placa del marco de la puerta: peso máximo por eje (GAWR).
weighed = Pesado
    .help = Este eje solo en la báscula, antes de subir lo que se anota abajo.
gross-limit = Límite del vehículo entero
    .help = En la placa del marco de la puerta: peso bruto máximo del vehículo (GVWR).
items = Cosas a bordo
    .row = cosa
    .help = Todo lo que no iba a bordo en la báscula: equipamiento, agua, personas, carga.
label = Qué es
mass-or-sheet = Peso
mass = Peso
    .help = Con signo menos si es algo que quita.
sheet = Agua de una hoja de agua limpia
    .help = Toma de ahí el peso del agua de un tanque lleno y lo va siguiendo.
from-front-axle = Detrás del eje delantero
    .help = Por el piso, del centro de la rueda delantera al medio de la cosa; con signo menos si va delante.
project = Contar el peso de la lista de compras de este proyecto
    .help = Sigue a la lista. No anote arriba lo que ya está en ella: tablas, lámparas, batería, paneles.
front-wall-from-front-axle = Pared delantera de la carrocería, detrás del eje delantero
    .help = Por el piso, del centro de la rueda delantera a la pared desde la que se mide la carrocería; con signo menos si va delante.

thing-number = cosa { $number }
buy-list = la lista de compras
buy-list-no-place = la lista de compras, sin sitio anotado

no-front-wall = anote dónde está la pared delantera de la carrocería, para que el peso de la lista de compras tenga su sitio
no-place =
    hay renglones de la lista de compras sin sitio a lo largo de la carrocería: mida el largo de la carrocería, y
    cuentan en su medio, o anote el sitio de cada uno en la lista de compras

bad-wheelbase = la distancia entre ejes debe ser de 0,5 a 20 m
bad-limit = el límite de un eje debe ser de 1 a 50 000 kg; está en la placa del vehículo
bad-weighed = el peso de un eje debe ser de 0 a 50 000 kg
bad-gross-limit = el límite del vehículo entero debe ser de 1 a 100 000 kg; está en la placa del vehículo
bad-mass = renglón { $number }: el peso debe ser de -20 000 a 20 000 kg
bad-place = renglón { $number }: debe ir entre 10 m delante del eje delantero y 30 m detrás
bad-braking = la desaceleración debe ser de 0 a 2 g, y la altura del centro de masa de 0 a 5 m
bad-tilt = la inclinación debe ser de 1 a 45 grados

on-front = Sobre el eje delantero
on-rear = Sobre el eje trasero
in-all = Todo junto
left-below = quedan { $left } hasta el límite de { $limit }
over-limit = { $over } por encima del límite de { $limit }

front-over = El eje delantero pasa de su límite en { $over }: lleve carga hacia atrás o deje algo.
rear-over = El eje trasero pasa de su límite en { $over }: lleve carga por delante del eje trasero o deje algo.
gross-over = El vehículo entero pasa de su límite en { $over }: deje algo.
front-near = Al eje delantero le queda menos de { $share } de su límite: péselo antes de agregar nada.
rear-near = Al eje trasero le queda menos de { $share } de su límite: péselo antes de agregar nada.
gross-near = Al vehículo entero le queda menos de { $share } de su límite: péselo antes de agregar nada.
none-weighed =
    No se pesó ningún eje: estas cargas son solo las cosas de abajo, sin el vehículo. Pese los dos ejes y anótelos.
front-not-weighed = No se pesó el eje delantero: en su carga y en el total falta la del propio vehículo. Péselo también.
rear-not-weighed = No se pesó el eje trasero: en su carga y en el total falta la del propio vehículo. Péselo también.
lifts = Un eje cargaría menos que nada y se levantaría: revise pesos y sitios.
read-the-plate = El límite del vehículo entero es mayor que los de los dos ejes juntos: lea otra vez la placa.
all-kept = Según estas cifras se respetan los tres límites: para estar seguro, pese el vehículo cargado para el viaje.
without-mass =
    { $count ->
        [one] Un renglón de la lista de compras no tiene peso y no se cuenta: anótelo ahí.
       *[other] { $count } renglones de la lista de compras no tienen peso y no se cuentan: anótelos ahí.
    }
without-place =
    { $count ->
        [one] Un renglón de la lista de compras no tiene sitio y se cuenta en el medio de la carrocería.
       *[other] { $count } renglones de la lista de compras no tienen sitio y se cuentan en el medio de la carrocería.
    }
centre = El centro de masa común de las cosas a bordo está { $place } detrás del eje delantero.

shares = Lo que cada cosa carga en los ejes
    .thing = Cosa
    .mass = Peso
    .place = Detrás del eje delantero
    .front = Delante
    .rear = Detrás

drawing = Vista lateral con las cargas
    .words =
        El vehículo visto por su lado izquierdo, con el frente a la izquierda: { $front } sobre el eje delantero,
        { $rear } sobre el trasero, a { $wheelbase } uno del otro.

step-thing = { $thing }: sobre el eje trasero
step-rear = Eje trasero
step-front = Eje delantero
step-front-left = Queda en el eje delantero
step-rear-left = Queda en el eje trasero
step-gross-left = Queda en el vehículo entero

source-moments = momentos respecto al eje delantero: lo que está quieto está en equilibrio
source-braking = momentos respecto a una rueda: m a h / distancia entre ejes
source-near = dejar libre la última veinteava parte del límite de un eje
source-centre = centro de masa = suma de masa x sitio / suma de masas
