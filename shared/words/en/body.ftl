# The measured body: what is asked of it, what is wrong with it, what the measures say.

## Its parts inside a sentence: "measure the body's width on the body page".
part-length = the body's length
part-width = the body's width
part-height = the body's height
part-rib-width = the body's rib face width
part-ribs = the body's { -rib }s
part-rib-spacing = the body's mean { -rib } spacing

## What is asked.
length = Length inside
    .help = Front wall to rear wall, at the height you will work at.
width = Width inside
    .help = Left wall to right wall, facing forward.
height = Height inside
    .help = Floor to ceiling, where you will stand.
rib-width = Rib face width
    .help = Across the face of a { -rib }: the part a screw can hit.
wall-depth = Depth behind a rib's face
    .help =
        From the face that screws go into, out to the skin, a wire or a pipe, whichever comes first where you will
        screw: no screw may reach it.
ribs = Ribs (roof bows)
rib-kinds = Rib positions
even = Evenly spaced
even-count = Number of { -rib }s
even-first = Center of the first { -rib }
    .help = Front wall to the center line of the first { -rib }.
even-spacing = Spacing, on center
    .help = Center line to center line.
measured = Measured one by one
    .each = Rib
    .help = Hook the tape once on the front wall and read every center line from there.
openings = Roof openings
    .row = opening
opening-name = Name
opening-x = From the front wall
    .help = Front wall to the near edge of the opening.
opening-y = From the left wall
    .help = Left wall to the near edge of the opening.
opening-length = Length of the opening
    .help = Along the body.
opening-width = Width of the opening
    .help = Across the body.
widths = Widths at stations
    .row = station
    .help =
        Where the width changes: at the front, at the rear, wherever it starts to taper. Between stations the walls
        are taken as straight.
station-x = From the front wall
    .help = Tape hooked on the front wall; 0 is the front wall itself.
station-width = Width there
    .help = Left wall to right wall, tape square to the left wall.
diagonals = Diagonals
    .help = Two diagonals show how far the body is out of square.
first-diagonal = Front left to rear right
    .help = Corner to corner, both diagonals at one height: on the floor or under the ceiling.
second-diagonal = Front right to rear left
across-length = Length of that rectangle
    .help = Only if the corners are not those of the body. If left out: the length inside.
across-width = Width of that rectangle
    .help = If left out: the width inside, the mean of front and rear.

## What is taken of it.
narrowest = { $width }, the narrowest of { $count } stations

## What is wrong with it.
rib-out-of-order =
    this { -rib } is not past the one before it; measure every center line from the front wall and enter them in order
rib-outside = the last { -rib } would be at { $rib }, past the rear wall at { $length }
opening-too-long = the opening would reach past the rear wall; check its place and its length
opening-too-wide = the opening would reach past the right wall; check its place and its width
station-outside = this station would be past the rear wall; measure it from the front wall
station-twice = there is already a station here; give each its own place
no-figure =
    no body { $length } by { $width } has these two diagonals; a true rectangle has { $diagonal } both ways: measure
    again

## What the measures say.
out-of-square = Out of square
square = square
square-note = both diagonals agree as far as a tape shows
leans =
    { $side ->
        [right] the rear is to the right of square, over { $length }: { $angle }°
       *[left] the rear is to the left of square, over { $length }: { $angle }°
    }
true-diagonal = Diagonal of a true rectangle
measured-diagonals = measured { $first } and { $second }, { $apart } apart
slip =
    { $which ->
        [long] The diagonals are { $by } too long for this length and width: one of the four measurements is a slip. Measure all of them again.
       *[short] The diagonals are { $by } too short for this length and width: one of the four measurements is a slip. Measure all of them again.
    }
not-seen = Across its width the body is { $off } off: nobody will see it.
seen =
    Across its width the body is { $off } off: lay out what runs across square from the left wall, and cut boards that
    meet the front or rear wall to its slant.
equal-sides = Equal diagonals prove a rectangle only if opposite sides are equal too.
diagonals-early = Enter length and width to see what the diagonals say.
widths-found = Width
widths-range = { $low } to { $high }
widths-apart = { $apart } between narrowest and widest
widths-used =
    Strips and boards take the width at their own place, straight between stations. A sheet that needs one width takes
    the narrowest, { $narrowest }, which fits everywhere; the single width above is not used.

## How it is worked out.
step-between = Width between two stations
step-between-numbers = halfway, at { $middle }: { $front } + ({ $next } − { $front }) / 2
step-both = Both diagonals against it
step-both-result = { $misfit } (a slip beyond { $slip })
step-shift = Shift of one side along the other
step-rear = Shift of the rear, to the right
step-angle = Angle

source-drift = drift = shear · length / width = (d₁² − d₂²) / (4 · width)
source-shear = shear = (d₁² − d₂²) / (4 · length)
source-both = parallelogram law: (d₁² + d₂²) / 2 = length² + width²
source-slip = a tape over a diagonal reads to within 0.2 %
source-between =
    straight walls between two stations: w = w1 + (w2 - w1) x (x - x1) / (x2 - x1); before the first and behind the last
    as there
