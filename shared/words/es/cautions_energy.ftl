fuse-at-source =
    Ponga un fusible a cada conductor no puesto a tierra en su origen: a no más de 175 mm (7 in) de la batería, o de 1 m
    (40 in) si el conductor va en una vaina o envolvente. Un cable alimentado por ambas puntas, por un cargador o un
    alternador, lleva fusible en las dos. (Norma para embarcaciones, seguida aquí.)
fuse-protects-cable =
    El fusible protege el cable: no pasa de la corriente que el cable admite, contando mazos y calor. (Más estricto que la
    norma para embarcaciones por debajo de 50 V, 33 CFR 183.455(c), que permite la mitad más.)
interrupting-rating =
    El poder de corte del fusible de una batería debe superar la corriente de cortocircuito de esta; los fusibles de cuchilla
    corrientes solo cortan 1000 A.
shore-power =
    La toma exterior y la instalación de corriente alterna son trabajo de un electricista autorizado, con un interruptor
    diferencial de 30 mA o un interruptor de falla a tierra.
inverter-bond =
    La salida de un inversor tiene exactamente una unión entre neutro y tierra: en el inversor mientras alimenta, y ninguna
    aparte de la de la red con la toma exterior. Sin ella no salta ningún diferencial; con dos, salta sin que haya falla. El
    fabricante dice cómo; es trabajo del electricista.
alternator =
    El litio nunca se carga directamente de un alternador: toma todo lo que este puede dar hasta quemarlo. Un cargador CC-CC
    entre ambos limita la corriente.
protective-conductor =
    Si el conductor de protección del cable de la toma exterior está roto, toda la carrocería puede quedar con tensión sin
    que se note: haga comprobar el cable y la conexión equipotencial.
lead-acid =
    Plomo-ácido: sujeta, en una caja estanca a los vapores hacia la vivienda y ventilada al exterior por aberturas de al menos
    1100 mm² (1,7 in²) arriba y abajo.
lithium =
    Litio: celdas certificadas con un sistema de gestión (BMS) que avisa antes de desconectar, instaladas como dice el
    fabricante.
lithium-frost =
    No cargue celdas de litio ferrofosfato por debajo de 0 °C (32 °F) si no están previstas para ello.
battery-restraint =
    Sujete la batería de modo que no se mueva más de 10 mm (3/8 in) con el doble de su peso en una embarcación; en un vehículo
    un choque tira muchas veces más fuerte: atorníllela a la carrocería como diga su fabricante o el del vehículo. Cubra sus
    bornes: una herramienta entre ellos se queda soldada.
chassis-return =
    Use el chasis como retorno solo donde el fabricante del vehículo lo permita, y una a él la batería con 8 AWG como mínimo,
    y no menor que el cable no unido de la batería. (Norma para remolques residenciales; para furgonetas dicen más el
    fabricante y las normas locales de autocaravanas, como EN 1648-2 o ANSI/RVIA LV.)
estimate = Son estimaciones y no certifican nada; la norma local y las instrucciones de los fabricantes van primero.
source-estimate = las estimaciones ceden ante la norma local y los fabricantes
