list-middle = { $before }, { $rest }
list-end = { $before } y { $last }

as-transcribed = según transcripción
from-memory = de memoria
common-practice = práctica común, sin fuente

trade-floor = Piso
trade-walls = Techo y paredes
trade-living = Vivir dentro

board = tabla

over = { $amount } de más
under = { $amount } de menos

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
