# The stock that pieces are cut from: asked alike by every sheet that cuts.

material = What it is cut from
    .help = Its name on the buy list; lengths of the same name are added up there.
stock = Stock lengths
    .help = With a price for each, the cheapest are bought; without, the least length.
    .row = stock length
length = Length
    .help = As it is sold; measure one: metric lengths run short of the feet they stand for.
price = Price of one
on-hand = On hand
    .help = Used first, at no cost. With no price here but prices on the others, no more are bought.
available = Most that can be bought
    .help = How many the store has; 0 leaves this length out. Empty: as many as it takes.
kerf = Kerf
    .help = Width of the saw cut: saw into a scrap and measure the slot.
end-trim = End trim
    .help = Cut off each stock length in all, both ends together, before cutting: splits, paint, snipe.
density = Wood, or its density
    .help = For the weight on the buy list: a wood from the list, or a density.

## Why there is no plan.
no-stock = there is no stock to cut from; enter at least one length that is on hand or for sale
too-many-pieces = { $pieces } pieces are too many for one plan; split them into plans of { $most } or fewer
too-much-stock = { $lengths } stock lengths are too many for one plan; enter { $most } or fewer
piece-length = { $length } is not a length to cut; enter one up to { $most }
stock-length = { $length } is not a stock length; enter one above zero, up to { $most }
price-out-of-range = { $price } is not a price; enter one from 0 to 1,000,000
price-missing = this length has no price though others do; price it too, or leave every price out
kerf-out-of-range = { $kerf } is not the width of a saw cut; enter one from 0 to { $most }
end-trim-out-of-range = { $trim } is not an end trim; enter what is cut off each length in all, 0 or more
piece-too-long =
    a piece of { $length } is longer than the stock gives ({ $longest }); add a longer stock length, or splice the
    piece from two
not-enough-stock =
    the pieces take { $needed } in all and cannot be cut from the { $stock } on hand and for sale; allow more lengths
no-plan-found = no plan was found within the stock available; allow one or two more lengths

source-kerf = sum of pieces + (n - 1) kerfs <= stock length - end trim
source-mass = mass = density x section x length

density-unknown = enter a density, such as { $example }, or a wood: { $names }
density-range = a density is from { $least } to { $most }; pine is about { $pine }
