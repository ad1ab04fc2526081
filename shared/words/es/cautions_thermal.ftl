air-leakage =
    Los planos de condensación solo cuentan la difusión del vapor. El aire que se cuela detrás del forro lleva mucha más
    agua: haga el forro estanco hacia el interior, ventile, y no tome "sin plano de condensación" por seguro. Las
    costillas y el metal desnudo se mojan primero.
burning-fuel =
    Todo lo que quema combustible necesita ventilación fija al aire libre. No duerma nunca con un calefactor sin salida
    de humos encendido, ni caliente nunca con la cocina.
alarms =
    Instale un detector de humo (UL 217), uno de monóxido de carbono homologado para vehículos de recreo (UL 2034) y,
    donde haya propano a bordo, uno de propano cerca del piso (UL 1484).
way-out = Tenga un extintor junto a la puerta y una segunda salida que se abra desde dentro sin herramienta.
flammability =
    Los materiales interiores a menos de 13 mm del aire de la cabina no deben arder a más de 102 mm por minuto.
exposed-foam =
    Cubra la espuma: desnuda arde rápido y con humo venenoso. En una vivienda debe separarla del interior una barrera
    térmica de 15 minutos, como una placa de yeso de 1/2 in; la norma no obliga a un vehículo, pero el fuego es el mismo.
estimate =
    Son estimaciones y no certifican nada. La norma local y las instrucciones de los fabricantes van primero.

source-estimate = las estimaciones ceden ante la norma local y los fabricantes
