# Words of all sheets.

## Terms: one word per idea, in every message.
-stud = stud
-rib = rib

## How a list is joined: "1, 2 and 3".
list-middle = { $before }, { $rest }
list-end = { $before } and { $last }

## How well a source stands behind what cites it.
as-transcribed = as transcribed
from-memory = from memory
common-practice = common practice, no source

## The parts of a fit-out.
trade-floor = Floor
trade-walls = Ceiling and walls
trade-living = Living in it
trade-wiring = Wiring

## What is marked.
board = board

## What rounding a mark left over.
over = { $amount } over
under = { $amount } under

## Spans of time.
days =
    { $days ->
        [one] { $days } day
       *[other] { $days } days
    }

## What is taken from another sheet.
not-given = this sheet does not give what is taken from it; choose another
## Months.
month-january = January
month-february = February
month-march = March
month-april = April
month-may = May
month-june = June
month-july = July
month-august = August
month-september = September
month-october = October
month-november = November
month-december = December
