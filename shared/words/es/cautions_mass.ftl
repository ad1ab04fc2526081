weigh-each-axle =
    Esto son sumas, no un pesaje. Antes de salir pese cada eje, y si puede cada rueda, con todo y todos a bordo y con
    combustible y agua llenos: un vehículo por debajo de su límite total puede llevar sobrecargado un eje, un lado o
    un neumático.
    .source = cada eje pesado tal como circula
ratings =
    Los límites son los de la placa del vehículo: peso bruto máximo del vehículo entero y peso máximo por eje, medido
    donde sus neumáticos tocan el suelo. Los neumáticos y las ruedas tienen sus propios límites, a la presión de la
    placa.
water =
    El agua pasa del tanque de agua limpia al de aguas grises: cuente lo que más cargue un eje. Si carga agua antes de
    vaciar el de aguas grises, cuente los dos llenos.
    .source = los dos tanques contados tal como circulan
on-the-road =
    No lleve nada pesado suelto ni detrás del eje trasero: esa carga levanta el eje delantero, y con él se pierden la
    dirección y los frenos. Atornille o amarre todo para un frenazo. No conduzca un vehículo sobrecargado.
    .source = la carga sujeta, abajo y entre los ejes
