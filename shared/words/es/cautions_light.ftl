look-above =
    Antes de cortar un agujero, mire qué hay encima del techo: cables, costillas, bolsas de aire y la chapa exterior, y
    haga primero un taladro pequeño.
overhead = Al cortar sobre la cabeza el polvo cae en ojos y pulmones: use gafas cerradas y mascarilla contra el polvo.
warm-lamps =
    Una lámpara empotrada necesita aire por detrás: no le arrime espuma ni lana, salvo que el fabricante permita el
    contacto con el aislante.
fused-circuit =
    Proteja el circuito de las lámparas con un fusible en su origen, según la hoja de circuito; las lámparas a tensión
    de red son trabajo de un electricista autorizado.
direct-light =
    El mapa es luz directa de haces ideales, una estimación: los acabados, la suciedad y el envejecimiento de las
    lámparas la cambian.

source-overhead = gafas cerradas y mascarilla donde le cae el polvo encima
source-warm-lamps = lámparas empotradas separadas del aislante
source-direct-light = las estimaciones ceden ante la fotometría del fabricante
