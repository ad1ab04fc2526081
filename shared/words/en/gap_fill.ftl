# Filling gaps and holes: how much two-part filler, in which batches, and what to buy.

title = Gap and hole filling
purpose = How much two-part filler to mix, batch by batch within its pot life, and what to buy.

## What is asked.
product = What it is
    .help = Its name on the buy list, for example clear epoxy.
gaps = Gaps and joints
    .row = gap
holes = Holes
    .row = hole
label = Name
    .help = For example: floor joints.
hole-label = Name
    .help = For example: old screw holes.
count = How many
length = Length
width = Width
    .help = Average of a few spots; a drill bit that just fits makes a good gauge.
depth = Depth
    .help = As deep as it gets filled: to the backing, or to a cord laid in.
open-below = Open below
    .help =
        Filler runs through onto exhaust, wires and skin: what is open below gets closed first, with tape or a plug. Say no
        only where you have seen that it is closed.
diameter = Diameter
    .help = Across the hole, at the surface.
shape = Shape
shape-plain = plain
shape-countersunk = countersunk cone
shape-plugged = with a plug
bottom = Diameter at the cone's bottom
    .help = Of a countersunk hole: across its lower end; 0 where it comes to a point.
plug-diameter = Plug diameter
    .help = Of a hole with a plug: only what the plug leaves open is filled.
plug-length = Plug length
passes = Passes
    .help = The work is split evenly; each pass is poured once the one below has set.
shrink-percent = Shrinkage
    .help = By volume, from the data sheet: solvent-free epoxy 2 to 5 %, water-based filler far more.
loss-percent = Waste allowance
    .help = What stays in cups and on sticks, or runs away below. Left out it is 10 %; enter 0 for none.
mix = Mixing ratio
by = Measured by
measured-volume = volume
measured-mass = weight
a = Parts of A
    .help = Part A is usually the resin. On the label: the mixing ratio A : B.
b = Parts of B
    .help = Part B is usually the hardener.
density-a = Density of A
    .help = On the data sheet. A ratio by weight needs both densities.
density-b = Density of B
pot-life = Pot life on the label
    .help = With the temperature it is given for, mostly 25 °C (77 °F).
time = Pot life
at = At
temperature = Temperature now
    .help = Of the bottles and the room, whichever is warmer.
pour-rate = Pour rate
    .help =
        Time one cup: what it held, over the minutes from mixing to the last drop. Leave it out until you have timed one.
batch-limit = Largest batch
    .help =
        What the label lets you mix at once. Left out, no cup holds more than 100 g: a larger mass heats itself up.
cup-diameter = Cup diameter
    .help =
        Inside, of a cup with straight walls: gives the marks as heights above its bottom. Leave it out for a cup with a
        scale.
containers = Containers on the shelf
    .help = With a price for each, the cheapest that are enough are chosen; without, those that leave the least over.
    .row = container
part = Holds
holds-a = part A
holds-b = part B
holds-kit = kit of both
size = Size
    .help = Of a kit: both parts together.
price = Price
wood = Boards beside the gaps
    .help = To tell how far the gaps open and close: rigid filler does not follow.
species = Wood
board-width = Width of a board
cut = Growth rings
rings-flat = flat: arches on the end
rings-quarter = upright: lines on the end
driest-percent = Moisture at its driest
    .help = In a body parked in the sun or heated.
wettest-percent = Moisture at its wettest
    .help = In a damp winter.

## What is wrong with what was entered.
nothing-given = add at least one gap or one hole to fill
plug-missing = enter the size of the plug, or choose a plain hole
plug-too-wide = the plug must not be wider than its hole
plug-too-long = the plug must not be longer than its hole is deep
wettest-below-driest = it must not be below the moisture at its driest
nothing-to-fill = there is nothing to fill; the sizes must leave room beside the plugs

## What things are called.
gap-number = gap { $number }
hole-number = hole { $number }
part-a = part A
part-b = part B
kit = kit
by-volume = A { $a } + B { $b }
by-weight = A { $a } + B { $b } by weight
clauses = { $first }; { $next }

## Answers.
mix-in-all = Mix in all
batches =
    { $count ->
        [one] Batch
       *[other] Batches
    }
    .of-passes =
        { $passes ->
            [one] { $passes } pass, { $each } in it
           *[other] { $passes } passes, { $each } in each
        }
cups = Cups, one after the other
    .of-batches =
        { $batches ->
            [one] { $batches } batch of { $cups } cups
           *[other] { $batches } batches of { $cups } cups each
        }
    .limit = no label limit is entered, so no cup holds more than { $most }
workable = each stays workable for about { $time }
    .unknown = mind the pot life on the label
buy = Buy
    .part = { $count } × { $part } { $size }
    .cost = { $cost } in all
    .left-over = left over: A { $a }, B { $b }

## What there is to say about them.
cups-of-most =
    No largest batch is entered, so each batch is mixed in { $cups } cups of { $most } at most, one poured out before the
    next is mixed. Pot lives on labels are mostly measured on about 100 g in a cup; more heats up and sets sooner. If the
    label says how much may be mixed at once, enter it.
large-cups =
    A cup holds more than { $most }, which the largest batch allows: pour it out wide and shallow as soon as it is mixed.
    Left in the cup, 100 g can reach 400 °F (204 °C).
usual-loss =
    No waste allowance is entered, so { $loss } is used for what stays in cups and on sticks. Enter 0 for none.
no-shrinkage =
    No shrinkage is entered, so none is used, which fits little but solvent-free epoxy. Filler with water or solvent
    shrinks far more; its data sheet says how much.
moving =
    Rigid filler in joints that move: boards of { $wood }, { $width } wide, swing by { $swing } between { $driest } and
    { $wettest } moisture, and the narrowest gap is { $gap } wide. Epoxy does not follow: it cracks, or pushes the boards
    up. Fill such joints with something that stretches, or leave them open.
    .roughly =
        Rigid filler in joints that move: boards of { $wood }, { $width } wide, swing by roughly { $swing } between
        { $driest } and { $wettest } moisture, and the narrowest gap is { $gap } wide. Epoxy does not follow: it cracks, or
        pushes the boards up. Fill such joints with something that stretches, or leave them open.
time-a-cup =
    Time how fast you pour one cup and enter it: batches are then kept to what gets used within the pot life. Until then
    nothing shows that a batch is used up in time.
no-pot-life = The pour rate says nothing without the pot life on the label: enter both.
pot-life-now =
    At { $temperature } a batch stays workable for about { $now }, not { $label }. That is a rule of thumb: try a small
    batch first.
weigh = Weigh both parts. By volume the same mix is 100 : { $b }; never use one for the other.
each-pass = Mix each pass only when the one below has set as far as the label says.
add-containers = Add the bottles and kits on the shelf, with their prices, to see which to buy.
not-priced =
    Not every container has a price, so these leave the least over; with all prices the cheapest are chosen.
not-proved = There are too many ways to try them all: another choice might be slightly better.

## Tables.
cup-by-volume = Both parts into one cup: part A first, then part B on top
    .first = pour A
    .first-level = level then
    .second = then pour B
    .second-level = level then
cup-by-weight = Both parts into one cup on the scale, zeroed with the empty cup
    .first = weigh in A
    .first-level = scale then
    .second = then weigh in B
    .second-level = scale then
share-batch = one batch
share-cup = one cup
share-half = half of it
share-quarter = a quarter
filled = What gets filled, before shrinkage and waste
    .count = how many
    .each = each
    .all = all
    .together = together
pot-lives = Pot life by temperature, a rule of thumb
    .at = at
    .workable = workable for about

## The cup and the sections.
drawing-cup = One cup of a batch
    .batch = One batch in a straight-walled cup
    .words = { $first }, { $second }.
pour-first = pour { $amount } A; level { $level }
pour-second = then { $amount } B; level { $level }
weigh-first = weigh { $amount } A; scale { $level }
weigh-second = then { $amount } B; scale { $level }
drawing-sections = Sections across gaps and holes, filled
    .continued = Sections across gaps and holes, filled, continued
    .words = { $sections }.
section = { $name }: { $size }
section-gap = { $width } wide, { $depth } deep
section-hole = Ø { $diameter }, { $depth } deep
section-cone = Ø { $top } to { $bottom }
    .deep = { $depth } deep
section-plug = plug Ø { $diameter }
size-lines = { $first }, { $second }

## Marks on the cup.
cup-strip = cup { $across } across
    .note = from its bottom
mark-first = pour { $amount } part A
mark-second = then { $amount } part B
mark-level = level { $level }

## What to buy.
item = { $product }, { $part }
filler = filler
plug = wood plug
    .size = Ø { $diameter } × { $length }
tape-below = tape to close gaps from below
tape-masking = masking tape
cup-item = mixing cup, unwaxed paper or plastic
stick-item = mixing stick

## The order of work.
order = Order of work
order-dry = Check the wood with the moisture meter
    .note = Filler does not stick to wet wood; dry and clean it first.
order-below = Close from below with tape or plugs
    .note = Filler runs through onto exhaust, wires and skin.
order-mask = Mask the edges
    .note = Whatever runs over has to be sanded off again.
order-wet = Wet it out with plain mix, then fill
    .note = Thickened filler alone does not soak in; thicken it for gaps that it would run out of.
order-sets = Let it set as far as the label says
    .note = Before the next pass, and before it is sanded.
order-blush = Wash it off with water and let it dry
    .note = Amine blush clogs the abrasive and keeps the finish from sticking; solvent does not take it off.
order-sand = Sand it flush, with dust extraction
    .note = Only when it has cured through: half-cured dust sensitizes.

## How it is worked out.
step-fill = To fill
    .formula = gap: n · l · w · d; hole: n · π/4 · Ø² · d; cone: n · π/12 · d · (Ø² + Ø·ø + ø²)
    .rows = { $count } rows
step-parts = Both parts
    .result = A { $a }, B { $b }
step-pot-life = Pot life now
step-batches = Batches
    .formula = one for each pass: V / passes
    .each = { $volume } each
step-largest = Largest batch
    .formula = the lesser of the limit and pour rate · pot life
step-per-pass = Batches of a pass
    .result = { $count }, { $volume } each
step-cups = Cups of a batch
step-swing = Swing of a joint
step-containers = Containers that leave the least over
    .priced = Cheapest containers
    .formula = held of A ≥ A, held of B ≥ B
    .left-over = { $volume } left over

## Mixing at the bench.
bench-cup = cup { $cup } of { $cups }
bench-pass = pass { $pass } of { $passes }
bench-first = part A first
bench-second = part B, up to
bench-on-top = { $second } of part B on top of part A
