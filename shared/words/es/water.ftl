title = Agua limpia
purpose = Ver cuántos días dura el tanque y cuánto carga en los ejes.

people = Personas a bordo
use = Consumo por persona y día
    .help = Beber, cocinar, lavar platos y manos; una ducha son 20 l (5 gal) más.
tank = Tanque de agua limpia
    .help = En la etiqueta del tanque, o largo x ancho x alto por dentro.
empty-share-percent = Parte no aprovechable
    .help = Lo que queda por debajo de la toma; más si el vehículo se estaciona inclinado.
grey-tank = Tanque de aguas grises
    .help = Para lo que sale del fregadero y de la ducha.
pump-flow = Caudal de la bomba
    .help = En la etiqueta de la bomba.
pump-current = Corriente de la bomba
    .help = En la etiqueta de la bomba; la hoja de energía toma de aquí la potencia y el tiempo de marcha.
voltage = Voltaje nominal de la batería
    .help = 12 V si es de plomo-ácido, 12,8 V si es de litio hierro fosfato.
drain-length = Largo del desagüe
    .help = A lo largo del tubo, desde la salida del fregadero hasta el tanque de aguas grises.

lasts = El tanque dura
full-days =
    { $days ->
        [0] menos de un día
        [one] un día completo
       *[other] { $days } días completos
    }
weight = El agua de un tanque lleno pesa
grey-weight = la de un tanque de aguas grises lleno, { $mass }
inlet = Entrada del tanque de aguas grises por debajo de la salida del sifón
    .note = como mínimo, desde la salida del sifón y sin ningún bajón después

short = El tanque no dura ni un día: ponga uno más grande o gaste menos.
to-axles = La hoja de carga por eje toma de aquí estos { $mass }, donde va el tanque; el tanque vacío se suma aparte.
all-drawn = No se descuenta ninguna parte no aprovechable: anote una, lo habitual es 5 %.
grey-small =
    El tanque de aguas grises se llena a los { $days }, antes de que se acabe el agua limpia: tendría que
    ser de { $needed }.
grey-enough =
    En el tanque de aguas grises cabe todo lo que trae un tanque lleno. Si vuelve a cargar agua antes de vaciarlo,
    los dos juntos pesan { $mass }.
grey-none = Toda acaba como agua gris: en un tanque de { $needed } cabe lo que trae un tanque lleno.
pump-runs = La bomba trabaja { $minutes } al día ({ $hours }): anote su corriente y la hoja de energía toma ambos de aquí.
pump-runs-at = La bomba trabaja { $minutes } al día ({ $hours }) a { $power }: la hoja de energía toma ambos de aquí.

by-people = Con más o menos personas a bordo
    .people = Personas
    .day = Consumo por día
    .lasts = El tanque dura

drawing = Nivel del tanque, día por día
    .words = Un tanque de { $tank }; { $usable } de él duran { $days }.
unusable = { $volume } no aprovechables
after-day = tras el día { $day }
full = lleno
waste-tank = tanque de aguas grises, { $volume }

step-day = Consumo por día
step-days = Días
step-mass = Masa del agua
step-grey = El tanque de aguas grises se llena en
step-pump = Marcha de la bomba por día
step-drain = Caída del desagüe

source-days = agua aprovechable entre lo que todos gastan en un día
source-use = de 5 a 10 l (1,3 a 2,6 gal) por persona y día, sin contar duchas
