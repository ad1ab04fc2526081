title = Ceiling lights
purpose = Lay out lamps in the ceiling clear of ribs and openings, and see how much light they put on a table or the floor.

lamps = Lamps
rows = Rows along the body
columns = Lamps in each row
    .help = With rows: how many along the body.
places = Places by hand
    .row = lamp
x = From the front wall
    .help = Front wall to the lamp's center.
y = From the left wall
    .help = Left wall to the lamp's center, facing forward.
area = Ceiling
    .help = Its front left corner is the body's.
length = Length of the ceiling
width = Width of the ceiling
lamp = The lamp
hole = Hole
    .help = Cutout on the spec sheet: the hole saw's diameter.
rim = Rim
    .help = Outside diameter of the rim that shows.
depth = Depth
    .help = From the underside of the rim to the back of the lamp, springs and connector included.
lumens = Light output of each
    .help = On the package, in lumens.
beam-angle = Beam angle
    .help = On the package, from edge to edge of the beam.
watts = Power of each
    .help = On the package.
mass = Weight of each
    .help = For the weight on the buy list: on the package, or on a kitchen scale.
clearance = Clearance from the rim
    .help = From the rim to any { -rib }, opening with its trim, wall or other lamp.
board = Centered on the boards of
    .help = A boards sheet for this ceiling: every lamp is centered on a board.
plane-height = Height of the lit surface
    .help = Floor to tabletop or countertop; 0 for the floor.
lamp-height = Height of the lamps
    .help = Floor to ceiling.
space-above = Space above the ceiling's face
    .help = From the ceiling's visible face to whatever is above it: board and gap.
feed = Where the wire comes up
    .help = For the lengths of wire; the front left corner if left blank.
feed-x-help = Front wall to where the wire comes up.
feed-y-help = Left wall to where the wire comes up, facing forward.
rise = Up and over
    .help = From the fuse up to the ceiling; counted once for each row.
model = Beam
beam-model-half-power = fading, half as bright at the edge
beam-model-cone = even within the angle

## What is wrong with an input.
columns-too = give the lamps in each row too, for example 6
rim-covers = the rim must cover the hole: it cannot be smaller
body-wrong =
    { $part ->
        [ribs] the lamps must stay clear of the { -rib }s, and the body's { -rib }s have a fault: fix it on the body page
        [rib_width] the lamps must stay clear of the { -rib }s, and their width has a fault: fix it on the body page
       *[openings] the lamps must stay clear of the openings, and one of the body's has a fault: fix it on the body page
    }
no-boards = the boards of that sheet do not fill this ceiling; choose the sheet for this ceiling
wrong-ceiling = the ceiling's sides must be from 4 in (100 mm) to 164 ft (50 m)
wrong-count = there must be at least 1 lamp and at most { $most }
wrong-rim = the rim's diameter must be from 0.2 in (5 mm) to 39 in (1 m)
wrong-clearance = the clearance must be from 0 to 39 in (1 m)
wrong-rib = { -rib } { $number }: its center must be within 328 ft (100 m), and its width from 0 to 39 in (1 m)
wrong-opening = opening { $number }: its corner must be within 328 ft (100 m), and its sides from 0 to 164 ft (50 m)
wrong-board = board { $number }: its center line must be within 328 ft (100 m)
wrong-place = lamp { $number }: it must be on the ceiling
wrong-lumens = the light output must be from 1 to 1,000,000 lm
wrong-beam = the beam angle must be from 5° to 180°; above 180° use the even beam
wrong-cone = the beam angle must be from 5° to 360°
wrong-height = the lit surface must be at least 2 in (50 mm) and at most 65 ft (20 m) below the lamps
wrong-area = the area's sides must be from 4 in (100 mm) to 164 ft (50 m)
wrong-cell = the cells must be at least 0.4 in (10 mm), and no more than 40,000 of them
wrong-illuminance = the illuminance must be from 1 to 100,000 lx
wrong-factor = utilization and maintenance factors must be above 0 and at most 1

## Answers.
count = Lamps
    .note =
        { $moved ->
            [0] { $watts }; none moved
           *[other] { $watts }; { $moved } moved
        }
mean = Average light on the surface
    .note = from { $lowest } to { $highest }
holes = Holes
    .note = under a { $rim } rim, { $depth } deep

## Remarks.
no-clear-spot =
    Lamp { $lamp }: there is no clear spot on this ceiling; use a lamp with a smaller rim, or less clearance.
too-many =
    { $most ->
        [one]
            Lamps { $one } and { $other } are too close: no more than { $most } of these lamps fits on this ceiling with
            this clearance.
       *[other]
            Lamps { $one } and { $other } are too close: no more than { $most } of these lamps fit on this ceiling with
            this clearance.
    }
too-close =
    Lamps { $one } and { $other } are too close: no layout was found that keeps them all clear. Move one by hand, or
    use fewer.
too-deep =
    The lamp is { $depth } deep and there is only { $space } above the ceiling's face: it does not fit.
not-mirrored =
    { $count ->
        [one]
            Left and right do not mirror each other at lamp { $lamps }: no spot was found for it that is clear on both
            sides.
       *[other]
            Left and right do not mirror each other at lamps { $lamps }: no spots were found for them that are clear on
            both sides.
    }
no-rise =
    The wire up from the fuse to the ceiling is not counted: enter it under where the wire comes up.
no-rib-width =
    The { -rib }s' width is not measured: only their center lines are kept clear, and a lamp may still land on
    a { -rib }. Measure it on the body page.
no-obstacles =
    There are no { -rib }s or openings on the body page: the lamps are kept clear of walls and each other only.
not-a-point =
    The lit surface is closer than five times the lamp's size: right below a lamp the light is softer than the map
    shows.
direct-only = Direct light only; a light-colored ceiling and walls add to it.

## Tables.
spots = Where the lamps go
    .lamp = Lamp
    .moved = Moved
    .clear = Clear
    .yes = yes
    .no = no
tasks = Recommended light, and where it is reached
    .task = Task
    .light = Light
    .reached = Reached
    .source = Source
reached-everywhere = everywhere
reached-on-average = on average
reached-under-lamps = under the lamps
reached-nowhere = no
wires = Wire to each lamp, one way
    .to = To
    .from = From
    .length = Length
    .feed = where it comes up

## What is done there.
task-office = office work: writing, typing, reading
task-commercial-kitchen = commercial kitchen
task-counter = kitchen counter, range, sink
task-long-reading = reading for long
task-bathroom = bathroom
task-short-reading = casual reading
task-kitchenette = kitchenette or restroom at work
task-kitchen = kitchen, general light
task-hallway = hallway at work
task-living = living, dining, sleeping, bath: general light
task-dining = dining table

## What is marked, bought and drawn.
lamp-name = lamp { $number }
not-clear = not clear
ceiling = ceiling
line = line { $y } from the left wall
item = ceiling lamp
    .spec = { $lumens }, { $angle }, { $watts }, { $hole } hole
offer = Make a circuit of these lamps
plan = Lamps from above, the front to the left
    .words =
        { $lamps ->
            [one] { $lamps } lamp
           *[other] { $lamps } lamps
        } in a ceiling { $length } by { $width } with { $ribs ->
            [one] { $ribs } { -rib }
           *[other] { $ribs } { -rib }s
        } and { $openings ->
            [one] { $openings } opening
           *[other] { $openings } openings
        }.
map = Light at { $height } above the floor, each step { $step }
    .words = A map of the light below the lamps, from { $lowest } to { $highest } in five steps of { $step }.
template = Hole of a lamp
    .words =
        Lay the crossing center lines on a lamp's pencil cross, one of them along the board. Cut the inner circle,
        { $hole } across; the outer one, { $rim }, is the rim: nothing may be inside it.
    .hole = hole { $hole }
    .rim = rim { $rim }

## Working.
step-along = Lamp to lamp along the body, half of it to the walls
step-across = Row to row, half of it to the walls
step-peak = Intensity straight down
step-cone = Intensity within the beam
step-below = Directly below one lamp
step-mean = Average over the surface
    .numbers =
        { $lamps ->
            [one] { $lamps } lamp
           *[other] { $lamps } lamps
        }, { $cells ->
            [one] { $cells } cell
           *[other] { $cells } cells
        }

## Sources.
source-even-rows = lamps one pitch apart and half a pitch from the walls
source-cells =
    two lamps cannot share a cell whose diagonal is shorter than their least distance: no more lamps than cells
source-point = point source: E = I cos θ / d², the definition of illuminance
source-cosine = LED optics literature, I = I₀ cosᵐ θ, m = −ln 2 / ln cos(half the beam angle)
source-cone = solid angle of a cone, 2π (1 − cos(half the beam angle))
source-en-12464 = EN 12464-1, table of maintained illuminance
source-ies = IES Lighting Handbook, an older edition, table 10-7, p. 10-34
source-ufc = US DoD UFC 3-530-01 (2006), recommended illuminance
