title = Furring strips
purpose = Strips on the ribs, one along each: length, screw layout, screws, adhesive, and how to cut them.

length = Length to span
    .help = Wall to wall along the rib, before any clearance. Left out: the body's width, at each rib if widths were measured at stations.
end-clearance = Clearance at each end
    .help = The gap between each end of the strip and the wall or an opening: a strip as long as the span does not go in. Left out: 3 mm.
strips = Number of strips
    .help = One for each rib.
section = Section of a strip
thickness = Thickness
    .help = From the rib to the lining.
width = Width
    .help = The face the lining is screwed to.
fastened = Screws
screws-per-strip = Screws per strip
screw-spacing-limit = Largest screw spacing
    .help = The strip gets the fewest screws that stay within it.
end-distance = First screw from the end
    .help = From each end of the strip to the nearest screw. Too close, and the screw splits it.
adhesive = Adhesive
bead = Bead diameter
    .help = As wide as the nozzle is cut.
beads = Beads on each strip
cartridge = Cartridge size
    .help = On its label.
price = Price of one
loss-percent = Waste allowance
    .help = What stays in the nozzle and cartridge, or squeezes out. Left out: 10 %.

screw = Screw
stack = Layers under the head
    .help = Everything from the screw's head to the steel, including the strip.
    .row = layer
name = Layer
steel = Steel
    .help = All the steel the screw goes through: its gauge, or measured at the edge of a hole.
behind = Free depth behind the steel
    .help = From the far side of the steel to the skin, a wire or a pipe, whichever comes first. Left out: the body's depth behind a rib's face, less the steel.
lengths = Screw lengths available
    .each = Screw length
gauge = Screw gauge
gauge-six = #6 (3.5 mm)
gauge-eight = #8 (4.2 mm)
gauge-ten = #10 (4.8 mm)
gauge-twelve = #12 (5.5 mm)
gauge-fourteen = #14 (6.3 mm)
self-drilling = Self-drilling
    .help = Its drill point has no thread and adds to the length needed.
hangs = Weight that hangs on the strips
    .help = Strips, boards, lamps, and whatever will be fixed to them.

## What is taken from the body.
widths-at-ribs = { $least } to { $most }, the width at each rib

## An opening of the body that nobody named.
opening = opening

## What is wrong with the strips.
strip-too-short =
    at rib { $rib } the { $opening } leaves { $length } for a strip, too short for a screw at each end; frame the
    opening there and enter length and number of strips yourself, or move the opening
no-strip-left = the clearance at both ends leaves no strip; enter less
ends-meet = the first screws from both ends would meet; enter less than half the strip, { $half }
too-much-adhesive = this is more adhesive than the sheet can work out; check the bead and the number of strips

## What is wrong with the screw.
gauge-unknown =
    no thickness is known for "{ $typed }"; enter an even gauge from 10 to 26, or the measured thickness, such as
    1.5 mm
steel-out-of-range = the steel must be thicker than nothing, up to 1/2 in (12.7 mm)
no-drill-point = no drill point of a #{ $gauge } screw gets through { $steel }; drill a pilot hole, or use a heavier screw
stack-out-of-range = these layers are too thick for a screw; check their thickness
in-stock = ; { $length } in common stock would work
too-short = all of these are too short; at least { $least } is needed{ $in-stock }
too-long =
    { $shortest } would hit what is behind the steel: the longest safe length is { $longest }, the shortest that holds
    { $least }{ $in-stock }
too-long-unknown =
    { $shortest } is longer than needed ({ $least }), and nothing tells what is behind the steel: enter the free depth
    there, or a shorter length{ $in-stock }
no-room =
    no screw fits: three threads past the steel take at least { $least } in all, and there is room for { $longest } at
    most; use blind rivets or rivet nuts, or fasten the strip another way
overloaded =
    { $screws ->
        [one] on the road { $screws } screw is not rated for twice this weight; at least { $enough } are needed: use a smaller spacing, or heavier screws
       *[other] on the road { $screws } screws are not rated for twice this weight; at least { $enough } are needed: use a smaller spacing, or heavier screws
    }

## Strips that are cut alike, and where they go.
strip = strip
strip-of = strip { $letter }
ribs =
    { $count ->
        [one] rib { $ribs }
       *[other] ribs { $ribs }
    }

cut =
    { $strips ->
        [one] Cut { $strips } strip to
       *[other] Cut { $strips } strips to
    }
    .note = each to the width at its own rib: see the table
range = { $least } to { $most }
screws = Screws per strip
    .apart = { $screws } in all, { $spacing } apart
    .at-most-apart = { $screws } in all, at most { $spacing } apart
screw-range = { $least } to { $longest } long
    .unknown = at least { $least } long; longest not shown: enter what is behind the steel
    .point = drill point { $point }, for up to { $most } of steel; { $range }

table = Strips, and the ribs they go on
    .strip = Strip
    .goes-on = Goes on
    .length = Length
    .screws = Screws
    .apart = Apart

holds =
    At twice its weight the ceiling uses { $share } of what all { $screws } screws are rated for in mild steel
    ({ $each } each).
hangs-missing = Enter the weight that hangs on the strips, and it is checked against the pull-out of the screws.
no-such-layer =
    No layer under the screw's head is as thick as the strip ({ $thickness }): the list must have everything from head
    to steel.
with-point =
    This length is for a drilled pilot hole. A self-drilling screw (point { $point } gets through this steel) must be at
    least { $least } long.
no-point = No drill point of a #{ $gauge } screw gets through { $steel }: drill a pilot hole.
behind-unknown =
    Nothing tells what is behind the steel, and this screw reaches { $reach } past it. Probe a hole, then enter the free
    depth here, or the body's depth behind a rib's face.
holes = Drill { $hole } through the strip, so the screw draws it tight. { $steel-hole }
    .point = A drill point makes its own hole in the steel.
    .tapping = In the steel a tapping screw takes a hole of { $hole }, unless its box says otherwise: the box comes first.
    .unknown = For steel this thick no hole is shown: use the one on the screw's box.
left-out = Left out, so the usual value is used: { $values }.
    .clearance = clearance at each end { $length }
    .loss = waste allowance for adhesive { $percent }
no-clearance = Without clearance at its ends, a strip as long as the span does not go in: cut it short, or in two.
along-ribs =
    One strip lies on each rib, along it, screwed to it all the way; the boards of the lining cross the strips. For
    battens across the ribs, screwed where they cross, enter length and number yourself.
interrupted =
    { $count ->
        [one] Rib { $ribs } is interrupted by the { $openings }: its strip ends there. A roof bow that is cut needs a frame: headers to the bows on both sides, before any strip goes up.
       *[other] Ribs { $ribs } are interrupted by the { $openings }: their strips end there. A roof bow that is cut needs a frame: headers to the bows on both sides, before any strip goes up.
    }
near-end = This close to its end a screw splits the strip: move it in, or drill a clearance hole.

screw-item = screw
self-drilling-item = self-drilling screw
adhesive-item = adhesive cartridge
screw-mark = screw { $number }

drawing = Strip with its screw marks
    .longest = Longest strip ({ $ribs }) with its screw marks
    .words = A strip { $length } long with { $screws } screw marks, the first { $end } from its end.

step-strip = Strip
    .of = Strip { $letter }, { $ribs }
step-spacing = Screw spacing
step-screws = Screws
step-least = Shortest screw
step-longest = Longest screw
step-hole = Hole through the strip
    .formula = clearance drill for the gauge
step-steel-hole = Hole in the steel for a tapping screw
    .formula = by gauge and thickness
step-point = Drill point
    .formula = all the steel ≤ what the point drills
    .result = point { $point }
step-pull-out = Pull-out of one screw
step-load = Load on the road
step-share = Share used
step-adhesive = Adhesive
    .result =
        { $cartridges ->
            [one] { $volume }: { $cartridges } cartridge
           *[other] { $volume }: { $cartridges } cartridges
        }
