title = Boards
purpose = Boards, planks or paneling over ribs: rips, joints, marks and notches of every board.

run = Run, along the boards
    .help = Front wall to rear wall.
field = Field, across the boards
    .help = Left wall to right wall, at the front. Left out: the body's width, front and rear by its stations.
field-rear = Field at the rear
    .help = The same at the rear wall, if the body is not parallel.
coverage = Width one course covers
    .help = Join two boards and measure from face edge to face edge.
full-width = Width over all
    .help = With tongue or lap.
joint-gap = Gap between boards
    .help = Left between the faces of two boards so they can swell: as thick as your spacer. Left out: none, boards pushed tight.
thickness = Thickness
    .help = For the length of the screws, and the weight on the buy list.
start = First course
start-balanced = First and last course equally wide
start-full = First course full
least-rip = Least rip
    .help = No course is ripped narrower. Left out: half a course, if that works out.
end-gap = Gap at each end of the run
    .help = Between the boards' ends and the wall, front and rear. Left out: 3 mm.
side-gap = Gap at each side
    .help = Between the outer boards and the wall, left and right; the first course starts there, on the left. Left out: 6 mm.
supports = Center lines of the supports
    .help = From the front wall, tape hooked once; the ribs, or what is fastened to them.
    .each = Support
support-width = Width of a support
    .help = What a screw can hit: the face of the furring strip, or of the rib.
edge-distance = Least from an end to a screw
    .help = From a board's end to the nearest screw: at a joint, at a wall, at the cut for an opening. At a joint at most half the support. Left out: a quarter of the support.
joint-stagger = Least stagger of joints
    .help = Between joints of neighboring courses. Left out: 6 in, if the ribs allow it.
least-piece = Shortest piece
    .help = No board beside a joint or an opening is shorter; one that an opening cuts off sits on two supports in any case.
joint-price = Worth of one joint less
    .help = A joint is work, and it shows: one more is made only if it saves more than this. In the currency of the prices; without prices, in mm of stock.
shown-ribs = Ribs whose screws show
    .help = Counted from the front; screws on all other ribs are sunk and filled.
    .each = Rib number
opening-clearance = Clearance around openings
    .help = Cut away beyond the opening's edge, on all four sides. Left out: 3 mm.
flange = Trim flange around openings
    .help = How far the trim reaches beyond the opening's edge: it has to cover the cut.
screw = Screw for the boards
    .help = Its name on the buy list, with its length at the end.
screw-length = Screw length
    .help = Head to tip. Left out: the length at the end of the screw's name.
strip-thickness = Thickness of the strip
    .help = What the boards' screws hold in: furring strip, batten, stud.
behind = Free depth behind the strip
    .help = A tape or air between strip and steel. Left out: none, the strip lies on the rib.
screws-across = Screws across a board
    .help = On every support.
screws-across-one = One, in the middle
screws-across-two = Two, side by side
fill-diameter = Hole above a sunk screw
    .help = Across the hole that is filled: the screw's head.
fill-depth = How deep screws are sunk
    .help = From the board's face to the head.
species = Wood
    .help = For how much the boards swell and shrink.
laid-percent = Moisture when laid
    .help = By a moisture meter, in the middle of a board.
driest-percent = Moisture at its driest
    .help = What the wood dries to: 6 % in a heated room, 3 to 4 % in a closed body parked in the sun.
wettest-percent = Moisture at its wettest
    .help = What the wood takes up in a damp season: 12 % indoors, 14 % or more in a damp vehicle.
cull-percent = Spare boards
    .help = Boards culled for splits, knots or a broken tongue, as a share of those bought: 10 % for pine. Left out: 10 %. They are not in the cut plan.

## What is taken from the body.
field-by-stations = { $front } at the front, { $rear } at the rear, by stations

## An opening of the body that nobody named.
opening = opening { $number }

## What is wrong with what was typed.
support-order =
    this support is not behind the one before it; enter the center lines in order, all measured from the front wall
no-such-rib = there is no rib { $rib }; the last one is { $last }
full-width-too-small = the width over all must be at least what a course covers; check both

## Why boards cannot be laid out.
no-run = the gaps at both ends leave no run; enter less
no-field = the gaps at both sides leave no field; enter less
support-width-missing = boards are joined here: enter the width of the supports, the face a screw can hit
no-courses = at this coverage the field takes no courses at all, or too many; check both
rip-too-narrow =
    a course would be ripped to { $rip }, less than the least rip of { $least }; enter a smaller least rip
    .full =
        a course would be ripped to { $rip }, less than the least rip of { $least }; use a balanced start, or enter a
        smaller least rip
edge-off-support =
    at a joint, screws { $edge } from the board's end miss the support; { $most } is the most that hits it: use wider
    supports, or enter less
unreachable = boards of { $longest } at most do not reach from rib to rib over the run; add longer stock
no-stagger =
    on these ribs no joints are { $stagger } apart in neighboring courses; enter a smaller stagger, or add longer stock
short-piece =
    every joint on these ribs would leave a piece shorter than { $least }; use other stock lengths
joints-number = these lengths give no joints; check the run, the supports and the stock

## A board that would hang loose: where it is, and why.
between = in course { $course } the board between { $from } and { $to } ({ $length })
    .walls = in course { $course } a board of { $length }
end-front = the front wall
end-rear = the rear wall
end-joint = a joint
end-opening = the { $opening }
loose =
    { $held ->
        [one] { $board } would hang loose, held by one support: enter every center line it can be screwed to
       *[other] { $board } would hang loose, held by no support: enter every center line it can be screwed to
    }
    .beside-opening =
        { $held ->
            [one] { $board } would hang loose, held by one support: put blocking under it and enter the blocking's center line here among the ribs, or move the opening
           *[other] { $board } would hang loose, held by no support: put blocking under it and enter the blocking's center line here among the ribs, or move the opening
        }
    .short =
        { $board } is shorter than the shortest piece allowed, { $least }; move the opening, or enter a shorter one
    .joint =
        { $board } has a joint where a cut-out leaves no room for its screws; with longer stock there may be no joint
        there

## What is wrong with the screw.
in-stock = ; use { $length }
screw-too-short =
    { $length } leaves less than { $thread } of thread in the strip; at least { $least } is needed{ $in-stock }
screw-too-long =
    sunk { $sunk }, a screw of { $length } goes { $reach } deep; board, strip and what is free behind them are { $room }:
    it hits the steel, and stalls or snaps. The longest safe length is { $longest }{ $in-stock }
screw-no-room =
    no screw holds in a strip this thin without hitting the steel behind it: it would have to be at least { $least } and
    at most { $longest } long; use a thicker strip, or sink the screws less

## Counts.
course-count =
    { $courses ->
        [one] { $courses } course
       *[other] { $courses } courses
    }
piece-count =
    { $pieces ->
        [one] { $pieces } piece
       *[other] { $pieces } pieces
    }
hole-count =
    { $holes ->
        [one] { $holes } hole
       *[other] { $holes } holes
    }
joint-count =
    { $joints ->
        [0] no joint
        [one] { $joints } joint
       *[other] { $joints } joints
    }

## The answers.
rip-both = Rip the first and last course to
rip-last = Rip the last course to
    .first-full = { $courses }, the first one full
rip-tapered = Rip the last course
    .range = { $front } to { $rear }
    .first = front to rear; the first course to { $first }; { $courses }
    .full = front to rear; the first course full; { $courses }
rip-only = Rip the one course to
    .tapered = Rip the one course
    .front-rear = front to rear
cut-first = Cut board { $letter } to
    .courses = { $courses }, none ripped
rounded = { $over }; { $note }
bought-for = for { $cost }
holes = Holes
    .finish = { $shown } shown, { $filled } filled with { $filler } of filler in all

## What is said about them.
openings-unknown = An opening of the body has a fault, so no board is notched for it: fix it on the body page.
joint-in-opening =
    A joint lies where an opening cuts into its boards: with this stock no other supports give joints. Longer stock may.
on-nailers =
    { $count ->
        [one] Between the wall and its joint, board { $boards } is held by one support and by a nailer at the wall: fasten the nailers first. Their wood is on the buy list; the layouts are compared without it.
       *[other] Between the wall and their joints, boards { $boards } are held by one support and by a nailer at the wall: fasten the nailers first. Their wood is on the buy list; the layouts are compared without it.
    }
not-held =
    { $count ->
        [one] Board { $boards } gets no screw on a support less than { $edge } from a cut or an end, or where less than { $strip } is left beside a cut-out. Its other supports hold it.
       *[other] Boards { $boards } get no screw on a support less than { $edge } from a cut or an end, or where less than { $strip } is left beside a cut-out. Their other supports hold them.
    }
slivers =
    { $count ->
        [one] Beside the cut-out in board { $boards } less than { $strip } of the width is left. Such a strip splits at a screw: shift the courses (start, side gap), or back it and glue it.
       *[other] Beside the cut-outs in boards { $boards } less than { $strip } of the width is left. Such a strip splits at a screw: shift the courses (start, side gap), or back it and glue it.
    }
narrow-rip = The last course is ripped to { $rip }, less than half a course.
    .full = The last course is ripped to { $rip }, less than half a course: a balanced start gives wider ends.
joints-staggered =
    { $joints ->
        [one] The one joint lies on a support.
       *[other] The { $joints } joints lie on supports, at least { $stagger } apart from course to course.
    }
joints-in-line =
    { $joints ->
        [one] The one joint lies on a support.
       *[other] The { $joints } joints lie on supports; no stagger was asked for.
    }
joints-not-staggered =
    Joints lie on supports, but these supports and lengths allow no stagger from course to course: longer stock would.
taper-lost =
    The field tapers more than the last course can take up: somewhere it would be narrower than the least rip, or wider
    than a board. Spread the taper over the courses, or change the start.
rip-at = { $rip } at { $place }
taper-kept =
    The last course follows the right wall: { $places } from the front wall. Mark these widths on its boards, connect
    them with a straight line, and saw along it.
    .bends =
        The last course follows the right wall: { $places } from the front wall. Mark these widths on its boards,
        connect each to the next with a straight line, and saw along it.
first-course =
    Lay the first course to a stretched line. At the rear it may run from { $nearer } closer to the left wall to
    { $farther } farther from it than at the front before the last course shows it.
    .farther =
        Lay the first course to a stretched line. At the rear it has to run { $least } to { $most } farther from the left
        wall than at the front, or the last course shows the taper.
    .closer =
        Lay the first course to a stretched line. At the rear it has to run { $least } to { $most } closer to the left
        wall than at the front, or the last course shows the taper.
    .too-narrow =
        The field tapers so much that the last course would be ripped too narrow at one end: spread the taper over the
        courses, or change the start.
facing =
    Left and right edges are as you stand facing the rear. The drawings look down from above: on a ceiling, the face
    you see from below is turned away.
flange-covers = The trim flange covers the cut around the openings, and { $over } beyond it.
flange-short =
    The trim flange reaches { $flange } beyond the opening, the cut { $cut }: the cut stays in sight. Use less clearance.
lap = Rips are measured on the face that shows: add the tongue or lap ({ $lap }) where it stays on.
swell-fits =
    From { $laid } to { $wettest } moisture, a flat-sawn board of { $wood } grows { $growth } wider; the joint leaves
    { $gap }.
swell-buckles =
    From { $laid } to { $wettest } moisture, a flat-sawn board of { $wood } grows { $growth } wider, but the joint leaves
    { $gap }. Screwed through the face, boards cannot push out into the side gaps: they buckle. Enter a joint gap of
    { $least } or more, or lay them damper.
    .tight =
        From { $laid } to { $wettest } moisture, a flat-sawn board of { $wood } grows { $growth } wider, but the boards are
        pushed tight. Screwed through the face, they cannot push out into the side gaps: they buckle. Enter a joint gap of
        { $least } or more, or lay them damper.
rough = { $length } (a rough figure outside 6 to 14 %)
gapes =
    Dried to { $driest }, each joint opens to { $open }, more than the tongue or lap of { $lap }: it will gape. Lay the
    boards drier.
opens =
    Dried to { $driest }, as in a closed body parked in the sun, each joint opens by { $shrinkage }, to { $open }: finish
    tongues and edges before the boards go up, so no raw wood shows.
acclimate =
    Let the boards lie stickered in the body for a few days before you cut and lay them, and check one in the middle with
    a moisture meter.
screw-unknown =
    Nothing shows that the screw's length is right: enter the thickness of the boards and of the strip behind them. Too
    long, it hits the steel and snaps; too short, it does not hold.
screw-range =
    A screw for these boards is { $least } to { $longest } long: it holds in the strip and stops short of the steel.
    .unnamed =
        A screw for these boards is { $least } to { $longest } long: it holds in the strip and stops short of the steel.
        Give it a name with its length for the buy list.
left-out = Left out, so the usual value is used: { $values }.
    .end-gap = gap at each end { $length }
    .side-gap = gap at each side { $length }
    .opening-clearance = clearance around openings { $length }
    .least-piece = shortest piece { $length }
    .joint-gap = no gap between boards
    .cull = spare boards { $percent }
spares =
    { $count ->
        [one] On top of the cut plan, the buy list has one spare board of { $length }.
       *[other] On top of the cut plan, the buy list has { $count } spare boards of { $length }.
    }

## What joints save.
counted = , each joint counted at { $price }
layout-proved-cost = Proved: no layout that keeps these rules costs less{ $counted }.
layout-proved-stock = Proved: no layout that keeps these rules takes less stock{ $counted }.
layout-best =
    The best layout found comes to { $total }{ $counted }; none that keeps these rules can come to less than { $bound }.
    There may be a better one in between.
fewer-joints =
    With { $fewer } the stock comes to { $more } more than with { $joints }. For that, enter { $worth } as the worth of
    one joint less.
more-joints =
    With { $more } the stock would come to { $saved } less, { $each } for each added joint: do it if one joint less is
    worth less than that to you.
layouts = What joints save
    .joints = Joints
    .stock = Stock
    .stock-length = Stock length
    .saves = Saves
    .least = Least for so many
    .proved = proved
    .bound = not less than { $bound }

## The boards and where they go.
table = Boards, and where each goes: course.piece, from the left wall and the front
    .board = Board
    .count = How many
    .length = Length
    .width = Width
    .places = Places
    .cut-out = Cut out
full = full
end-widths = { $left } at the left end, { $right } at the right
notch-of = { $opening }: { $notch }
notch-through = through the whole width
notch-inside =
    { $edge ->
        [left] inside the board, from { $from } to { $to } off the left edge
       *[right] inside the board, from { $from } to { $to } off the right edge
    }
notch-edge =
    { $edge ->
        [left] { $depth } deep from the left edge
       *[right] { $depth } deep from the right edge
    }

## Marks.
board-of = board { $letter }
ripped-to = ripped to { $width }
rib-mark = rib { $number }
nailer-mark = nailer
shown = shown
filled = filled
joint = joint
two-screws = 2 screws, { $edge } from either edge
    .off-right = 2 screws, { $low } and { $high } from the right edge
beside-cut-out = { $at } from the right edge, beside the cut-out
cut-out-from = cut out for { $opening }, from
cut-out-to = cut out for { $opening }, to
rip-bends = rip bends
    .width = { $width } wide here

## Nailers.
nailers = Nailers, faces in the plane of the supports
    .at = At
    .away = Wall to center line
    .from = From left wall
    .to = To
    .length = Length
nailer-wall =
    { $wall ->
        [front] front wall
       *[rear] rear wall
    }
before = Before the boards go up
fix-nailer =
    { $wall ->
        [front] Fasten a nailer along the front wall
       *[rear] Fasten a nailer along the rear wall
    }
    .place =
        { $section }; center line { $away } from the wall, { $from } to { $to } from the left wall; face in the plane of
        the supports.
nailer-section = { $thickness } x { $width }, { $length } long
    .unknown = as thick as the supports, { $width } wide, { $length } long

## The buy list.
spare-item = { $material }, spare
nailer-item = nailer
screw-item = screw
    .nailers = for the nailers, as long as what they are fastened to allows
    .stock = for the boards, { $length }
    .unknown = for the boards, length not shown: enter thickness of board and strip
filler-item = wood filler
    .spec = for sunk screws

## Drawings.
plan = Plan of the boards
    .words =
        { $courses } over a run of { $run }, in { $pieces }, with { $holes }; seen from above, front to the left, left
        wall at the bottom.
board-words =
    A board { $length } long; marks: { $marks }, cut-outs: { $notches }; its left edge is the upper one.
nailer-at = nailer · { $at }
joint-template = Screws at a joint
    .words =
        Lay the solid upright line on the joint, over the center line of the support; the screws are { $edge } from
        either end.
    .text = joint on the support
cut-out-template = Cut-out for { $opening } in board { $letter }
    .words =
        Seen from above, left edge up: lay it on the back of a ceiling board or the face of a floor board, its long edges
        on the board's; the cut-out starts { $from } from the board's left end.

## Steps.
step-field = Field to cover
step-left = Left over beyond full courses
    .gaps = Left over beyond full courses, each with its gap j
step-rip = Rip
step-least-rip = Least rip
    .formula = rip ≥ least
    .kept = kept
step-run = Run to cover
step-joints = Joints
    .formula = joint = support's center line
    .numbers = { $pieces } in { $courses }
step-stagger = Stagger
    .formula = joints of neighboring courses ≥ stagger
    .numbers =
        { $layouts ->
            [one] { $layouts } layout of a course
           *[other] { $layouts } different layouts of a course
        }
step-joint-mark = Mark at a joint
    .result = on the support
step-mark = Board { $letter }, rib { $rib }
step-first-course = First course at the rear
    .formula = w − s to min(w + s, w + e − m)
    .result = { $low } to { $high }
step-taper = Taper of each course, if all share it
step-last-rear = Last course at the rear wall
step-filler = Filler for the filled holes
step-least = Shortest screw
step-longest = Longest screw
step-swells = Swelling of one board
step-shrinks = Shrinkage of one board
