fuse-place =
    Ponga el fusible en el positivo, junto a su fuente: como máximo 178 mm (7 in) de cable antes de él, 1,02 m (40 in)
    si ese cable va en funda o en un recinto cerrado. Un cortocircuito antes del fusible puede incendiar la carrocería.
fuse-rating =
    El fusible protege el cable: no instale nunca uno de más corriente que la admisible del cable más fino que tiene
    detrás, ni uno mayor porque se funda.
interrupt-rating =
    En la batería, el fusible debe poder cortar la corriente de cortocircuito de la batería, miles de amperios con
    litio: busque su poder de corte (AIC).
blade-fuses =
    Los fusibles de cuchilla tienen un poder de corte de 1000 A como máximo: van detrás de un fusible de batería, no en
    su lugar.
battery-negative =
    Desconecte el negativo de la batería antes de trabajar, y mantenga herramientas de metal, anillos y relojes lejos de
    sus bornes.
stranded-copper =
    Solo cobre multifilar: el cable rígido se rompe con la vibración y las conexiones de aluminio se aflojan.
protection =
    Un pasacables o una funda donde el cable atraviesa chapa, una sujeción cada 450 mm (18 in), ningún canto vivo, nada
    caliente, y después ningún tornillo que lo atraviese.
chassis-return =
    Lleve el negativo con su propio cable; el retorno por el chasis, solo donde el fabricante del vehículo lo permita.
bonding =
    Una el negativo de la batería al chasis con 8 AWG (10 mm2) o más grueso, y no menor que el conductor sin unir. Así lo
    dice el NEC para remolques vivienda; para furgonetas y caravanas consulte ANSI/RVIA LV o EN 1648-2 (de memoria), para
    barcos ISO 13297, que ha sustituido a ISO 10133 (de memoria).
line-voltage =
    Mantenga este cableado separado de la red y de la toma exterior, y deje esas instalaciones a un electricista
    autorizado. La norma local y las instrucciones de los fabricantes están por encima de estas cifras.

splices-in-reach = Todo empalme queda accesible: ninguno detrás de tablas que no se puedan desmontar.
tug-and-measure =
    Tire de cada unión para probarla, y compruebe la polaridad con un medidor antes de conectar una carga: los colores
    cambian de un fabricante a otro.
