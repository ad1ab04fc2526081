title = Calendario de relleno y acabado
purpose = Cuándo puede empezar cada capa y cada mano, cuándo mezclar la última tanda y cuándo pisar.

start = Primer inicio
    .help = Cuándo empieza el primer paso, el primer día.
hours = Jornada
    .help = Nada se empieza ni se deja a medias fuera de ella; omítala para trabajar día y noche.
from = De
to = A
label-temperature = Las etiquetas dan sus tiempos para
    .help = En las etiquetas, casi siempre 20 a 25 °C (68 a 77 °F).
air = Aire y superficie, todo el día
    .help = Lo que se espera al trabajar; un paso con otro clima puede tener el suyo.
temperature = Temperatura del aire
humidity-percent = Humedad relativa
surface-temperature = Temperatura de la superficie
    .help = En el punto más frío.
readings = Aire y superficie durante el día
    .help =
        En vez de una sola lectura: mañana, mediodía, tarde, en línea recta entre ellas e igual todos los días. Esa línea no
        ve el frío de antes del amanecer: ponga abajo la noche.
    .row = lectura
at = A las
steps = Capas y manos
    .help =
        En el orden en que se hacen; lijar también es un paso. Lo que una hoja dice de sus capas y manos no hace falta
        repetirlo.
    .row = paso
label = Paso
    .help = Por ejemplo: primera mano. Si se omite, lleva el nombre del producto o su número.
passes = Todas las capas de
    .help = Una hoja de relleno: de ahí salen tandas y tiempos.
coats = Todas las manos de
    .help = Una hoja de acabado: de ahí salen capas y tiempos.
dry = Trabajo en seco: lijar, limpiar
    .help = No le importan la temperatura ni el punto de rocío.
filler = Tandas y tiempo de uso de
    .help = Este paso es una capa de esa hoja.
batches = Tandas
starts = Empieza
    .help = Cuando empezó o cuando tiene que empezar: 14:00, mañana 8:00, día 3 9:30. Si no, se calcula.
own-air = Su propio aire y superficie

one-or-several = ponga una lectura para todo el día o varias, no las dos cosas
ends-too-soon = la jornada debe terminar después de empezar y antes de la medianoche
same-time = ya hay una lectura a esa hora; dé a cada una la suya
dry-passes = las capas y las manos no son trabajo en seco; dé al lijado su propia fila
one-sheet = una fila toma de una sola hoja; dé a la otra su propia fila
work-missing = ponga cuánto lleva, por ejemplo 60 min
work-unsaid = esa hoja no dice cuánto lleva una; póngalo aquí o allá
minutes-digits = los minutos llevan dos cifras; escriba una hora como 8:30 o 2:15 pm
no-time = esto no es una hora; escriba una como 8:30 o 2:15 pm
half-day = con am o pm las horas van de 1 a 12; escriba una hora como 8:30 o 2:15 pm
after-midnight = el día termina a las 24:00; escriba una hora como 8:30 o 2:15 pm
day-and-time = ponga el día y la hora, como día 3 8:30
days-range = los días se cuentan desde 1, el primero, hasta 60

am = { $time } am
pm = { $time } pm
tomorrow-at = mañana { $time }
day-at = día { $day }, { $time }
today = Hoy
tomorrow = Mañana
day = Día { $day }

unnamed = paso { $number }
of-product = { $label }: { $product }
numbered = { $step } { $number } de { $count }
close = tapar por debajo, enmascarar
sand = lijar
wash = lavar la masilla, dejar secar

ready = Listo para pisar
    .note = el último paso termina { $time }
done = Último paso terminado
    .note = no se sabe cuándo se puede pisar: ponga la espera de lo último que se aplica
mix-last = Mezcle la última tanda
    .note = de { $step }, si empieza como está planeado
    .note-by = de { $step }, si empieza como está planeado; a más tardar { $time }
works = ¿Funciona el plan?
    .problems =
        { $count ->
            [one] No: { $count } problema
           *[other] No: { $count } problemas
        }
    .yes = Sí, según los tiempos, las etiquetas y el aire indicados
    .times-alone = Por sus tiempos; por el aire no se sabe
    .enter = { $step }: ponga { $missing }

problem = { $step }: { $problem }.
in-the-night =
    { $step }: cae en la noche, de { $from } a { $to }. Ponga una jornada y pasa a la mañana.
barred-now = { $step }: mientras se aplica, { $why }. Mantenga la carrocería caliente y ventilada, o aplácelo.
barred-later =
    { $step }: hasta que seque o en la noche, { $why }. Mantenga la carrocería caliente y ventilada, o aplácelo.
why-above = { $why } (en lo peor, { $time }: superficie { $by } sobre el punto de rocío)
why-below = { $why } (en lo peor, { $time }: superficie { $by } bajo el punto de rocío)
not-shown = { $step }: no se sabe si se puede aplicar: ponga { $missing }.
put-off =
    { $step }: se pasa de { $from } a { $to }; antes, este paso o uno posterior caería fuera de la jornada o de su plazo.
rule-of-thumb =
    Con más frío que el de las etiquetas, las esperas se alargan; con más calor, las tandas y los plazos se acortan y las
    esperas más cortas quedan como en la etiqueta. Es una regla práctica: toque y lije un punto chico antes de seguir.
all-well = Todos los pasos caen dentro de su plazo.

clock = Por el reloj
    .when = Cuándo
    .what = Qué hacer
before-wash = antes de { $step }, y con tiempo: lave la masilla con agua y una fibra, déjela secar
before-filler =
    antes de { $step }: revise con el higrómetro que la madera esté seca; tape juntas y agujeros por debajo con cinta o
    tapones; enmascare los bordes; impregne con la mezcla sola, luego espese
before-first-coat = antes de { $step }: mida la madera con el higrómetro; pruebe en una muestra; quite el polvo
before-coat = antes de { $step }: quite el polvo
wipe-from =
    { $step }: limpie el sobrante desde ahora, cada parte { $after } después de aplicarla, la última para { $last };
    extienda los trapos al aire libre, uno por uno
wipe-by-label =
    { $step }: limpie cada parte después de los minutos que diga la etiqueta; extienda los trapos al aire libre, uno por
    uno
begin = { $step }: empiece
    .by = { $step }: empiece (a más tardar { $latest })
    .mix = { $step }: empiece, { $mix }
    .mix-by = { $step }: empiece, { $mix } (a más tardar { $latest })
mix = { $step }: { $mix }
mix-only = mezcle la única tanda
mix-batch = mezcle la tanda { $number } de { $count }
mix-last-batch = mezcle la última tanda, { $number } de { $count }
finished = { $step }: terminado
    .wait = { $step }: terminado; lo siguiente, no antes de { $time }
walk-on = { $step }: ya se puede pisar

windows = Plazos de cada paso
    .step = Paso
    .from = Puede empezar desde
    .until = A más tardar
    .work = Trabajo
    .batch = Una tanda dura
    .mix = Última mezcla
    .mix-by = Mézclela antes de
    .walk = Pisar desde
    .broken = { $step } (vea arriba)
airs = Aire, y cuánto está la superficie sobre el punto de rocío como mínimo
    .step = Paso
    .start = Inicio
    .air = Aire
    .humidity = Humedad
    .surface = Superficie
    .work = Al trabajar
    .drying = Al secar

drawing = { $day }. Lleno: trabajo. Rayado: seca. Punteado: cuándo se puede hacer. Raya: última mezcla
    .continued = { $day }, continuación
    .words = { $steps }.
    .next = { $first }; { $next }
bar = { $hours } { $step }
    .walk = { $time } pisar: { $step }

step-start = { $step }: inicio
    .formula = como se indicó
step-wait = { $step }: la espera termina
    .formula = fin del paso anterior + espera más corta · media de max(ritmo, 1)
step-window = { $step }: el plazo se cierra
    .formula =
        inicio del paso anterior + espera más larga · media de min(ritmo, 1) − trabajo que lleva más
step-air = { $step }: aire al empezar
    .result = { $temperature }, { $humidity }, superficie { $surface }
step-pace = { $step }: ritmo por el que se multiplican los tiempos de las etiquetas
    .formula = 2^((T etiqueta − T) / 10 °C)
step-dew = { $step }: punto de rocío, { $time } (T en °C)
step-margin = { $step }: superficie sobre el punto de rocío
