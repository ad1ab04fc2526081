label-first =
    La etiqueta y la ficha de seguridad del fabricante van antes que todo lo de aquí: cantidades, tiempos, protección,
    desecho.
    .source = el fabricante sabe lo que hay en la lata
epoxy =
    La resina epóxica, el endurecedor y el diluyente irritan y sensibilizan: cada contacto hace la alergia más probable y
    peor. Use guantes de nitrilo (el látex los deja pasar), cámbielos seguido, que no toque la piel, y lávese con jabón,
    nunca con solvente.
isocyanates =
    El adhesivo y la espuma de poliuretano y los acabados de dos componentes llevan isocianatos, una causa principal de
    asma laboral; basta el contacto con la piel para sensibilizar. Use guantes, trabaje con aire fresco y nunca los
    pulverice en una carrocería cerrada sin aire suministrado. Quien ya esté sensibilizado no debe acercarse.
ventilation =
    La carrocería es un cuarto pequeño y cerrado: abra puertas, ventanas y aberturas del techo por dos lados y mantenga el
    aire en movimiento hasta que se vaya el olor. El vapor de solvente se acumula y ha matado a instaladores de pisos:
    nada de llamas, calefactores, pilotos, cigarros ni interruptores que echen chispa.
foam-reentry =
    Mantenga la carrocería con espuma recién rociada ventilada y vacía el tiempo que diga el fabricante: el estudio
    publicado renovó el aire 10 veces por hora durante 3 h antes de bajar a 1.
respirator =
    Guantes, lentes y piel cubierta para mezclar, aplicar y lijar. Vapor de resina o de solvente: respirador con cartuchos
    para vapor orgánico. Polvo de madera o de resina curada: N95 o mejor. Los filtros de polvo no detienen vapor, y los
    cartuchos solos no detienen polvo: contra los dos, use los dos. Ninguna mascarilla hace seguro un cuarto cerrado.
respirator-en = Con marcas europeas: cartuchos tipo A contra vapor orgánico, filtros P3 o mascarilla FFP3 contra polvo.
batch-heat =
    El epóxico mezclado se calienta solo en el vaso: 100 g pueden llegar a 204 °C (400 °F), y más cantidad, a más. Funde
    el vaso, quema la piel y enciende lo que esté cerca; los humos son tóxicos y una mascarilla de cartuchos puede no
    detenerlos. Mezcle poco y viértalo enseguida, extendido y de poco espesor. Saque el vaso que se caliente y vigílelo
    hasta que esté frío.
mixing-cups =
    Mezcle en vasos limpios de plástico, metal o papel sin cera, nunca de vidrio ni de espuma. Respete la proporción: más
    endurecedor no cura más rápido, deja la resina blanda. Las partes por volumen no son partes por peso.
no-sawdust =
    Nunca recoja endurecedor derramado con aserrín ni lo tire a un bote con aserrín o trapos: se calientan y pueden
    encenderse. Use arena o arcilla.
rags =
    Los trapos, las almohadillas y el polvo de lijado con aceite secante, tinte o barniz se calientan y pueden encenderse
    solos en unas horas. Nunca los deje amontonados: cuélguelos o extiéndalos al aire libre, uno por uno, lejos del
    vehículo; ya secos, en un bote metálico cerrado y lleno de agua con detergente.
sanding-dust =
    El polvo de madera irrita los ojos y la piel, causa asma y puede causar cáncer de nariz (el de roble y el de haya lo
    causan). El límite de NIOSH es 1 mg/m³ en la jornada, y por encima solo confía en el aire suministrado: que el polvo
    no llegue al aire. Aspírelo en la herramienta, abra la carrocería, aspire en vez de barrer; la mascarilla es lo último,
    no lo primero.
half-cured = Deje curar la masilla y el acabado antes de lijar: el polvo de resina a medio curar sensibiliza.
lead-paint =
    La pintura de una carrocería vieja o de sus herrajes puede llevar plomo (en casas: antes de 1978; en un vehículo solo
    lo dice una prueba). Haga la prueba antes de lijar. Si lo lleva: nada de lijar en seco, esmerilar ni soplete; trabaje
    en húmedo, con aspiradora HEPA, sin niños ni embarazadas cerca, y lávese antes de comer.
dew =
    Una mano sobre una superficie a menos de 3 °C (5 °F) por encima del punto de rocío se vela, se ampolla o se desprende.
    Mida el metal o la tabla, no el aire, y piense en la noche: una carrocería de acero está más fría antes del amanecer.
wood-moisture =
    El acabado y la masilla no se adhieren a la madera húmeda: mídala con un higrómetro, en medio de las tablas y cerca de
    las puertas, y compare con el límite de la etiqueta.
    .source = higrómetro de madera antes de cada acabado
rigid-filler =
    El epóxico curado no estira: en juntas entre tablas que se hinchan y encogen se agrieta o levanta las tablas. La
    masilla rígida es para agujeros, grietas dentro de una tabla y juntas que no se mueven.
    .source = nada de masilla rígida en juntas que se mueven
