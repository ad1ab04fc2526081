times-filler = Tiempos de la etiqueta
    .help = Solo para un calendario que tome sus capas de esta hoja.
times-coat = Tiempos de la etiqueta
    .help = Solo para un calendario que tome sus manos de esta hoja.
work = Tiempo para una
    .help = Una capa o una mano, de principio a fin.
workable = Tiempo de uso de una tanda
    .help = En la etiqueta de un producto de dos componentes.
recoat-least = Otra mano después de
    .help = De la etiqueta: la espera más corta antes de la siguiente.
recoat-most = Otra mano antes de
    .help = De la etiqueta: la espera más larga antes de la siguiente; después, lije primero.
cure = Espera después de la última
    .help = Antes de lijarla o de aplicar otro producto. Si se omite: la misma que entre manos, o hasta poder pisarla.
traffic = Espera antes de pisar
sand = Lijar entre manos lleva
    .help = Si se lija entre manos; entonces no hay espera máxima.
prepare = Tapar por debajo y enmascarar lleva
    .help = Antes de la primera capa: cinta o tapones por debajo, bordes enmascarados, la madera medida con el higrómetro.
wash = Lavar y dejar secar lleva
    .help = Con la última capa curada: el rubor de amina se quita con agua, antes de lijar.
at = A
    .help = La temperatura para la que la etiqueta da estos tiempos.

limits = Límites de la etiqueta
    .help = En la etiqueta o en la ficha técnica. Sin ellos nadie puede decir que se puede aplicar.
temperature-least = Temperatura mínima
    .help = Del aire y de la superficie.
temperature-most = Temperatura máxima
humidity-most-percent = Humedad máxima
    .help = Humedad relativa del aire.
moisture-most-percent = Madera más húmeda
    .help = Con higrómetro. Muchas etiquetas la dan; algunas, no.
most-below-least = no debe ser menor que la temperatura mínima

night = La noche que viene, antes del amanecer
    .help =
        Adentro, en lo más frío: lo que leyó anoche, o según el pronóstico y su calefactor. Una carrocería de acero está
        más fría antes del amanecer.
temperature = Temperatura del aire
humidity-percent = Humedad relativa
surface-temperature = Temperatura de la superficie
    .help = Del acero sin calefactor: tan fría como el aire de afuera, más fría con cielo despejado.
