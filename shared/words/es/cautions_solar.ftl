cold-string =
    Los paneles dan su mayor tensión en una mañana fría: debe quedar por debajo del límite del controlador, o este se
    destruye.
controller-order =
    Conecte primero la batería al controlador y los paneles al final, y desconecte primero los paneles: sin batería, un
    controlador puede sacar toda su tensión. Con luz los paneles tienen tensión: cúbralos mientras trabaja.
monthly-means =
    Son medias mensuales de un modelo para paneles al descubierto: hay semanas que traen mucho menos, y la sombra también.

source-means = las medias mensuales esconden semanas oscuras
