# The buy list, its weight, the cut list, and what the store is out of.

## Left to buy.
nothing-asked = What the sheets need shows up here.
all-bought = Everything is bought.
left-to-buy = { $left } of { $of } left to buy
no-prices = no prices yet
cost-and-unpriced = { $cost } + { $count } without a price
by-trade = By trade
left-first = Left to buy first
own-trade = Your own
total = Total { $cost }
total-unpriced = Total { $cost }, and { $count } without a price
total-bought = { $total }; { $cost } of it already bought
more-needed = { $count } more needed
more-needed-packs =
    { $packs ->
        [one] { $count } more needed, { $packs } pack
       *[other] { $count } more needed, { $packs } packs
    }
in-store = In the store
in-store-of = : { $name }
packs-of =
    { $count ->
        [one] { $count } pack of { $size }: { $name }
       *[other] { $count } packs of { $size }: { $name }
    }
needed = { $count } needed
left-over = { $count } left over
on-hand = { $count } more on hand

## The page of a line.
not-listed = Not on the list any more
not-listed-help = No sheet needs it now.
needed-by = Needed by
own-lines = Your own lines: { $count }
out-of-stock = Out of stock? { $sheet }

## Weight.
weight = Weight
list-weight = Whole list
without-mass = { $count } of { $of } lines have no weight
list-center = Its center, behind the front wall
without-place =
    { $count ->
        [one] { $count } line with no location is not counted here
       *[other] { $count } lines with no location are not counted here
    }
add-axles = Add the axle loads sheet
payload-left = Payload left
front-axle = Front axle
rear-axle = Rear axle
whole-rig = Whole rig
counted = The list is counted in.
not-counted = Without the list.
axles-faulty = That sheet needs attention before it can show what is left.
count-weight = Count the list's weight there

## The cut list.
nothing-to-cut = No sheet has anything to cut yet.
pieces-cut = { $done } of { $pieces } pieces cut
bar-cut =
    { $count ->
        [one] { $stock } cut into { $count } piece
       *[other] { $stock } cut into { $count } pieces
    }
bar-left = Left over: { $length }
bar-of = { $number } of { $count }
cut-before = Cut before the plan changed
cut-before-help = These are already cut but no longer in the plan. Use them up or remove them.
remove = Remove

## What the store is out of.
at-store = At the store
at-store-help = Tap what they're out of. Nothing changes until you use it.
use-this = Use this
keep-both = Keep both
drop = Discard

## A row of the buy list, and what opens under it.
by-aisle = By aisle
each = { $price } each
got = Got { $of }
got-help = How many you got, in pieces or in the unit of the list.
price-is = Price of one
row-of = More about { $name }
not-here = Not here? Or sold in packs?
group-left = { $left } of { $of } left
group-done = all bought
your-lines =
    { $count ->
        [0] Add a line of your own
        [one] Your own line
       *[other] Your own { $count } lines
    }
what-it-weighs = What the list weighs
