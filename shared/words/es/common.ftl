list-middle = { $before }, { $rest }
list-end = { $before } y { $last }

as-transcribed = según transcripción
from-memory = de memoria
common-practice = práctica común, sin fuente

trade-floor = Piso
trade-walls = Techo y paredes
trade-wiring = Electricidad

board = tabla

over = { $amount } de más
under = { $amount } de menos
