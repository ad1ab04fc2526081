no-density =
    una proporción por peso necesita la densidad de la parte { $part }, como { $like } (está en la ficha técnica); o
    ponga la proporción por volumen
too-many-batches =
    { $total } en tandas de { $largest } como máximo serían más de { $most } tandas; suba la tanda máxima o el ritmo de
    vertido
no-container-of = ningún envase lleva la parte { $part }; agregue una botella de { $part } o un juego
no-container = no hay ningún tamaño de envase; agregue al menos uno

no-steps = no hay nada que planear; agregue al menos una capa o una mano
longer-than-day = el paso { $step } lleva { $work } y la jornada solo tiene { $day }; divida el paso o alargue la jornada
too-far = el paso { $step } empezaría dentro de más de { $days } días; revise las esperas y la jornada
of-step = paso { $step }: { $problem }

too-early = empieza { $minutes } antes de tiempo; espere eso
too-late =
    empieza { $minutes } después de cerrarse el plazo para otra mano; empiece antes, o lije primero como diga la etiqueta
batch-too-slow = una tanda lleva { $takes } y se puede usar { $workable }; mezcle tandas más chicas
outside-hours = cae fuera de la jornada; empiece a otra hora

## De dónde vienen las fórmulas y las reglas.
source-volumes = caja, cilindro y cono truncado
source-shrinkage = necesario = neto / (1 − contracción) / (1 − desperdicio)
source-shares = parte = total · proporción; proporción en peso = proporción en volumen · densidad de A / densidad de B
source-pot-life = el tiempo de uso se reduce a la mitad por cada 10 °C (18 °F) más y se duplica por cada 10 °C menos
source-batches = tanda más grande = lo menor entre el límite de la tanda y ritmo de vertido · tiempo de uso
source-kits = costo mínimo entre todas las cantidades de juegos, con las botellas más baratas al lado
source-containers = problema de la mochila de cobertura por ramificación y poda, acotado por el mejor precio por volumen
source-spread-rate = volumen = área · película húmeda; 1 galón de EE. UU. = 231 in³ (NIST HB 44, apéndice C)
source-solids = película seca = película húmeda · sólidos en volumen / (1 + diluyente)
source-loss = necesario = neto / (1 − desperdicio)
source-usual-loss = 10 % se queda en charola, rodillo, vaso y lata donde no se indica desperdicio
source-bead = volumen = sección · largo
source-board = superficie de una caja
source-label-limits = las temperaturas mínima y máxima de la etiqueta valen para el aire y la superficie, y su límite de humedad para el aire, desde la primera pasada hasta que la mano esté seca
source-window = el plazo para otra mano cuenta desde el fin de la anterior, para la parte que más espera
source-between = en línea recta de una lectura a la siguiente, e igual todos los días

bar-dew-point = la superficie está menos de { $margin } sobre el punto de rocío
bar-humid = el aire está a { $humidity } de humedad o más
bar-label-humidity = el aire está más húmedo que el { $humidity } de la etiqueta
bar-cold = hace más frío que la mínima de la etiqueta, { $temperature }
bar-warm = hace más calor que la máxima de la etiqueta, { $temperature }
bar-wet-wood = la madera está más húmeda que el { $moisture } de la etiqueta

missing-least = la temperatura mínima de la etiqueta
missing-most = la temperatura máxima de la etiqueta
missing-humidity = el límite de humedad de la etiqueta
missing-night = la noche que viene
missing-moisture = la humedad de la madera
missing-air = aire y superficie durante el día
