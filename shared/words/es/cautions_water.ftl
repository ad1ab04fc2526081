tank-down =
    Sujete el tanque con cintas por todos los lados, abajo y entre los ejes, a la carrocería y no al revestimiento: su
    agua pesa como una persona y empuja hacia adelante al frenar, y con mucha más fuerza en un choque. Use cintas y
    anclajes como indique el fabricante del tanque o del vehículo.
    .source = tanques sujetos por todos los lados
trap =
    Ponga un sifón o una válvula sin agua justo debajo del fregadero; desde ahí el desagüe baja todo el camino, sin
    otro bajón. Sin eso los gases del tanque de aguas grises suben al habitáculo.
vent =
    Ventile los dos tanques al aire libre, el de aguas grises por encima de su entrada: un tanque que no respira se
    hincha, se hunde o sopla por el sifón. Ponga un filtro antes de la bomba.
    .source = tanques ventilados al aire libre, un filtro antes de la bomba
pump-fuse =
    Ponga a la bomba su propio fusible, del valor que indica su fabricante, y un interruptor: una bomba que trabaja en
    seco o se traba se quema.
    .source = una bomba con su propio fusible, del valor que indica su fabricante
potable =
    Use tanque, manguera y conexiones aptos para agua potable, y desinféctelos como indiquen sus fabricantes antes de
    la primera carga y después de un tiempo sin uso.
frost = Vacíe el tanque, la bomba, el sifón y los tubos antes de que hiele.
    .source = el agua se expande al helarse y revienta lo que la contiene
