list-middle = { $before }, { $rest }
list-end = { $before } y { $last }

as-transcribed = según transcripción
from-memory = de memoria
common-practice = práctica común, sin fuente

trade-floor = Piso
trade-walls = Techo y paredes
trade-living = La vida a bordo
trade-living = Vivir dentro
trade-wiring = Electricidad

board = tabla

over = { $amount } de más
under = { $amount } de menos

days =
    { $days ->
        [one] { $days } día
       *[other] { $days } días
    }

not-given = esa hoja no da lo que se toma de ella; elija otra
month-january = enero
month-february = febrero
month-march = marzo
month-april = abril
month-may = mayo
month-june = junio
month-july = julio
month-august = agosto
month-september = septiembre
month-october = octubre
month-november = noviembre
month-december = diciembre
