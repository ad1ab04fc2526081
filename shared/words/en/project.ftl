# The project as a whole: its file, its lists, and what is compared.

## Why a file cannot be opened.
too-large = the file has { $bytes } bytes; a project file has at most { $most }
not-json = the file is not JSON (reading stopped in line { $line }); a project file begins with { $start }
no-version = the file has no format version; a project file begins with { $start }
too-new =
    the file was written by a newer version (format { $found }; this one reads formats up to { $known }); update, and
    open it again
too-many-sheets = the project has { $count } sheets, and a project holds at most { $most }; split it into several

## What is asked of a line on the buy list.
pack = One pack holds
    .help = A box of 100, a roll of 100 ft, a pack of 4. Whole packs are bought.
price = Price
    .help = Of one pack; where there are no packs, of one.
line-mass = Mass
    .help = Of one pack; where there are no packs, of one. It is on the label, or use a kitchen scale.
place = Its middle, from the front wall
    .help = Where it will be along the body, for the axles.
item = What
spec = Which
quantity = How many
unit = Counted in
unit-each = pieces
unit-ft = ft
unit-m = m
unit-qt = qt
unit-l = l
own-price = Price of one
own-mass = Mass of one
    .help = For the weight; leave it blank for what does not stay aboard.
own = Lines of your own
    .row = line
pack-whole = a pack holds a whole number of pieces, such as 100
pack-range = a pack holds more than nothing and at most a million, for example 100

## Marks on several boards.
alike = { $count } alike

## What is cut for several sheets.
sold-out = These sheets together need more than is on hand and for sale: allow more lengths.
no-less = Planned together these sheets would need no less: each keeps its own plan.
too-much-together = Too much for one plan: each sheet keeps its own.
cut-once =
    Stock on hand is cut only once: a sheet before this one uses some of it, so this one is planned with the rest.
cut-already = Stock on hand is already cut for sheets before this one: { $more } more are on the buy list.
together-counted = { $count } sheets in one plan: stock on hand is counted once, not for each sheet. Buy { $bought }.
together-saved = { $count } sheets in one plan: { $cost } instead of { $apart }, { $saved } saved. Buy { $bought }.
together-less = { $count } sheets in one plan: no cheaper, but { $less } less is left over.

## The plan of the body.
plan = Plan of the body
plan-words =
    A body { $length } long and { $width } wide with { $ribs ->
        [one] { $ribs } rib
       *[other] { $ribs } ribs
    } and { $openings ->
        [one] { $openings } roof opening
       *[other] { $openings } roof openings
    }.
plan-stations =
    A body { $length } long and { $width } wide with { $ribs ->
        [one] { $ribs } rib
       *[other] { $ribs } ribs
    } and { $openings ->
        [one] { $openings } roof opening
       *[other] { $openings } roof openings
    }; the width, here the narrowest, was measured at { $stations } stations.
plan-asks = Plan of the body, to scale. Tap a figure, a { -rib } or an opening to change it.
plan-early = Plan of the body, not to scale yet. Tap a ? and type what the tape says.
plan-front = ← Front
plan-rib = Rib { $number }
plan-station = Width at { $place }
plan-opening = Roof opening
plan-opening-blank = opening?
entered = { $what }: { $value }
to-enter = { $what }, to enter

## Two projects compared.
name = Name
results-in = Results in
inches = inches
millimeters = millimeters
nearest = Marks to the nearest
buy-lines = Lines on the buy list
buy-total = Buy list, total
the-project = The project
the-body = The body
to-mend = Still to fill in or correct
yes = yes
no = no

## What if the store lacks something.
side-by-side = Side by side
    .now = As it stands
    .then = What if
to-pay = To pay
without-price = { $sum } + { $count } without a price
left-over = Left over
ways = Ways of cutting
best = Best there is
proved = proved
within = within { $percent }

## Where it is found in a store.
aisle-lumber = Lumber and boards
aisle-fasteners = Fasteners
aisle-electrical = Electrical
aisle-paint = Paint and glue
aisle-plumbing = Plumbing
aisle-other = Other
