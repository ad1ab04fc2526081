# Coats on a surface: how much finish or paint, what to buy, and whether to coat now.

title = Coating
purpose = How much finish or paint a surface takes, what to buy, and whether to coat now.

## What is asked.
product = What it is
    .help =
        Its name on the buy list, for example floor finish; cans with the same name and size are added up there.
areas = Areas
    .help = Split the surface into rectangles.
    .row = area
label = Name
    .help = For example: floor.
board-label = Name
    .help = For example: threshold.
length = Length
    .help = Not needed for boards of a sheet.
width = Width
    .help = With the tongue. Boards of a sheet, if left out: as wide as they are laid.
count = How many
faces = Faces coated
    .help = 2 for a door or a panel that is coated on both.
subtract = Not coated: take it off
    .help = For what stands on the surface or is cut out of it: wheel boxes, a hatch.
boards = Boards finished before fitting
    .help = Boards that are coated on both faces, edges and ends; added to the areas.
    .row = board
sheet = Boards of
    .help = A boards sheet: the pieces it cuts, with their lengths and widths. Enter their thickness.
thickness = Thickness
edges = Long edges coated
ends = Ends coated
coats = Coats
    .help = As many as the label asks for.
finish-type = Finish
    .help = A penetrating finish goes into the wood and leaves no film; what stays on top is wiped off.
finish-film = a film: varnish, paint, floor finish
finish-penetrating = penetrating: oil, stain
how-thick = How thick
spread-rate = Coverage
    .help = On the label: coverage or spread rate, for one coat.
film = Film thickness
dry = Dry film of one coat
    .help = On the data sheet: dry film thickness, DFT.
solids-percent = Solids by volume
    .help = On the data sheet; by volume, not by weight.
thinner-percent = Thinner added
    .help = As a share of what is thinned: 10 % is 100 ml in a liter.
solids-known = Solids by volume, with a coverage
    .help = Only to tell the dry film that this coverage leaves.
wipe-after = Wipe off after
    .help = On the label of a penetrating finish.
surface-factor = Surface factor
    .help = 1 for smooth; worn or open-grained wood 1.1 to 1.2, ribbed metal as measured.
loss-percent = Waste allowance
    .help =
        What stays in tray, roller and can: brush and roller 10 to 15 %, spray 30 % and more. Left out it is 10 %; enter 0
        for none.
containers = Containers on the shelf
    .help = With a price for each, the cheapest that are enough are chosen; without, those that leave the least over.
    .row = container
size = Size
price = Price
density = Density
    .help = On the data sheet; for the weight on the buy list.
layers = Other layers on the same surface
    .help = Stain, primer, sealer, paint: each with its own label.
    .row = layer
layer-product = What it is
    .help = For example: primer.
place = Goes on
place-under = before the coats above
place-over = after them
supplies = Rollers, brushes, abrasive sheets
    .row = supply
supply = What it is
    .help = For example: abrasive sheet 120, roller sleeve.
each = One does
    .help =
        How much surface one roller, pad or sheet lasts for. No table has it: try one on a patch until it slips or clogs.
times-over = Times over the surface
    .help = Sanding between three coats is twice over.
price-of-one = Price of one
air = Air and surface
    .help = Measured inside, where and when you will coat.
temperature = Air temperature
humidity-percent = Relative humidity
surface-temperature = Surface temperature
    .help = Lay the thermometer on the board or the metal, at its coldest spot.
moisture-percent = Moisture of the wood
    .help = By moisture meter, the wettest of several spots.

## What is wrong with what was entered.
nothing-given = add at least one area
nothing-left =
    as much is taken off as there is, so nothing is left to coat; check which areas are marked as taken off
of-boards-sheet = the boards of the sheet have their own lengths; leave this empty
give-or-choose = enter it here, or choose a boards sheet
leaves-no-film = a penetrating finish leaves no film; enter its coverage and leave this empty
film-stays = a film is not wiped off; choose a penetrating finish, or leave this empty
film-has-solids = the film has its solids already; leave this empty

## What things are called.
area-number = area { $number }
board-number = board { $number }
several = { $name } × { $count }
both-faces = { $name }, both faces
coating = coating
thinner-for = thinner for { $product }
coats-of =
    { $coats ->
        [one] { $coats } coat
       *[other] { $coats } coats
    }
of-product = { $product }: { $said }
step-of = { $step }, { $product }

## Answers.
buy = Buy
    .of = Buy, { $product }
    .cost = { $cost } in all; { $left }
    .left = { $volume } left over
needed = Needed
    .of = Needed, { $product }
    .thinned = Needed, before thinning
    .thinned-of = Needed, { $product }, before thinning
    .film =
        { $coats ->
            [one] { $coats } coat on { $area }, { $film } wet
           *[other] { $coats } coats on { $area }, { $film } wet each
        }
    .no-film =
        { $coats ->
            [one] { $coats } coat on { $area }, wiped off, no film
           *[other] { $coats } coats on { $area }, wiped off, no film
        }
coat-now = Coat now?
    .yes = Yes, by label, dew point and the night entered
    .not-tonight = No: not before this night
    .then = then { $why }
    .wait = No: wait
    .unknown = Not shown: only the dew point was checked
    .enter = { $dew }; enter { $missing }
above-dew = the surface is { $by } above the dew point
below-dew = the surface is { $by } below the dew point

## What there is to say about them.
not-yet = Do not coat yet: { $why }. Warm the body, or wait for another day.
not-tonight = Do not coat before this night: { $why }. Warm the body, or wait for another day.
may-go-on =
    Air, surface and the night entered are within the label's limits. Measure again before each coat.
not-shown = Whether it may go on is not shown: enter { $missing }.
frost = Frost forms from { $temperature } down: the label's lowest temperature comes first.
usual-loss =
    No waste allowance is entered, so { $loss } is used, as usual with brush and roller. Enter 0 for none.
wipe-unknown = When to wipe it off is not entered: go by the label, and put on only what you can wipe in time.
mix-thinner =
    Mix { $paint } from the can with { $thinner } of thinner: { $all } as applied. The containers cover what comes from the
    can.
add-containers = Add the containers on the shelf, with their prices, to see which to buy.
not-priced =
    Not every container has a price, so these leave the least over; with all prices the cheapest are chosen.
scant = Only { $volume } is left over: with a little more waste than entered it will not do.
not-proved = There are too many ways to try them all: another choice might be slightly better.

## The table of layers.
table = Layers, in the order they go on
    .product = Product
    .coats = Coats
    .wet = Wet film
    .needed = Needed
    .buy = Buy
    .cost = Cost
    .no-film = none
    .together = together

## The areas.
drawing = Areas to scale; hatched areas are not coated
    .words =
        { $coated ->
            [one] { $coated } coated rectangle and { $off } taken off, to scale; { $area } in all.
           *[other] { $coated } coated rectangles and { $off } taken off, to scale; { $area } in all.
        }

## The order of work.
order = Order of work
order-dry = Check the wood with the moisture meter
    .note = Against the label's limit, near the doors too.
order-patch = Try every layer on a test patch
    .note = On the same wood, sanded the same: color, drying, and whether one takes the other.
order-dust = Vacuum, then wipe the dust off
    .note = Before the first coat, and again before each of the others.
order-on =
    { $coats ->
        [one] { $product }: { $coats } coat
       *[other] { $product }: { $coats } coats
    }
    .wiped = Put on no more at once than you can wipe off in time.
    .between = Between coats: wait, abrade and take the dust off as the label says.
order-wipe = { $product }: wipe it off
    .note = Each part { $time } after it went on, with clean rags, until they come away dry.
    .unknown = After as many minutes as the label says; left on, it stays sticky.
order-rags = Spread the rags flat outdoors, one by one
    .note = Rags with oil or stain ignite by themselves in a heap.

## How it is worked out.
source-areas = area of rectangles
step-boards = Boards
    .formula = B = Σ n · (faces · l · w + edges · l · t + ends · w · t)
    .numbers =
        { $count ->
            [one] { $count } board
           *[other] { $count } boards
        }
step-area = Area to coat
    .formula = A = Σ n · faces · l · w
    .with-boards = A = Σ n · faces · l · w + B
    .areas =
        { $count ->
            [one] { $count } area
           *[other] { $count } areas
        }
step-wet = Wet film of one coat
step-dry = Dry film of one coat
step-spread = Coverage, as applied
step-on = On the surface, all coats
step-into = Into the wood, all coats
step-needed = Needed, as applied
step-can = From the can
step-containers = Containers that leave the least over
    .priced = Cheapest containers
    .formula = Σ n · size ≥ P
    .left-over = { $volume } left over
step-supply = { $supply }
    .formula = n = ⌈A · times / each⌉
step-dew = Dew point (T in °C)
    .night = Dew point, in the night (T in °C)
step-margin = Surface above the dew point
    .night = Surface above the dew point, in the night
step-may = May it go on, { $product }
    .formula = lowest ≤ air, surface ≤ highest; RH ≤ limit, RH < 85 %; m ≥ 3 °C; now and in the night
    .numbers = { $least } to { $most }, { $humidity }
    .yes = yes
    .no = no
    .unknown = not shown
