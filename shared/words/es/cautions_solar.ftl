cold-string =
    Los paneles dan su mayor tensión en una mañana fría: debe quedar por debajo del límite del controlador, o este se
    destruye.
controller-order =
    Conecte primero la batería al controlador y los paneles al final, y desconecte primero los paneles: sin batería, un
    controlador puede sacar toda su tensión. Con luz los paneles tienen tensión: cúbralos mientras trabaja.
monthly-means =
    Son medias mensuales de un modelo para paneles al descubierto: hay semanas que traen mucho menos, y la sombra también.

source-means = las medias mensuales esconden semanas oscuras

fuse-protects-cable =
    El fusible protege el cable: no pasa de la corriente que el cable admite, contando mazos y calor. (Más estricto que la
    norma para embarcaciones por debajo de 50 V, 33 CFR 183.455(c), que permite la mitad más.)
estimate = Son estimaciones y no certifican nada; la norma local y las instrucciones de los fabricantes van primero.
source-estimate = las estimaciones ceden ante la norma local y los fabricantes
