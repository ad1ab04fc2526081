# Setting out: marks, strips, slats.

## Why marks cannot be set out.
marks-out-of-order = it is { $length } from the first mark to the last; the last mark must be past the first
no-spacing = the largest spacing is { $spacing }; enter one above zero
too-many-marks = { $marks } marks cannot be set out; enter from 2 to { $most }
slats-too-wide = the slats are { $slats } wide in all, but there is only { $length }; use fewer or narrower ones

source-spacing = spacing = (last - first) / (marks - 1)
source-strip = strip = span - 2 x clearance at an end
source-framed = a roof bow that is cut for an opening gets headers to the bows on both sides, and its strip ends there
source-margin = a bar that leaves less than 1/4 in has no room for a split end, a board that is short, or a cut made twice

## Boards: courses, joints, marks.
source-balanced = balanced start: r / 2 at both ends, or (r + coverage) / 2 with one full course less
source-least-rip = no rip narrower than half a course
source-shown-taper = a last course that tapers by 1/8 in over its run does not look tapered
source-on-supports = Canadian Wood Council, plank decking: every end joint of thin boards on a support; joints of neighboring courses staggered
source-strip-stagger = National Wood Flooring Association, guideline as of 2008: end joints in neighboring rows at least 6 in apart for strips under 3 in, 8 to 10 in for planks
source-least-piece = no piece beside a joint shorter than 12 in
source-together = Geoffrion, Lagrangean Relaxation for Integer Programming, Mathematical Programming Study 2, 1974: at any prices for the lengths of piece, no plan costs less than the cheapest layouts at these prices, as long as no cut is worth more than its stock length
source-marks = mark = support - left end; at a joint both boards end on the support's center line, their marks in from it by the edge distance
source-ends = a mark stands in from every end by the edge distance, as long as that is still on the support's face; otherwise that support does not hold the board
source-two-supports = a board is screwed to two supports or more
source-usual-edge = no screw nearer to a board's end than 3/8 in
source-half-bearing = at a joint each board bears on half the support, its mark in the middle of that half
source-least-strip = a strip of less than 1 in beside a cut-out splits at a screw
source-nailer = where a board reaches from a wall to a joint on the next support, a nailer along the wall holds its other end: a strip as wide as a support, its face in their plane
source-across = two screws stand a quarter of the width in from either edge; one, in the middle, where that is less than 5/8 in
source-cull = one pine board in ten is culled for splits, knots, twist or a broken tongue
source-clear = what is left between two walls = wall to wall - a gap at each
source-from-datum = ASME Y14.5-2018, Dimensioning and Tolerancing, location by basic dimensions from datums
source-change = USDA Forest Products Laboratory, Wood Handbook FPL-GTR-190 (2010), equation 13-2 and table 13-5
source-coefficient = USDA Forest Products Laboratory, Wood Handbook FPL-GTR-190 (2010), table 4-3, carried to table 13-5's form
source-coefficient-recalled = USDA Forest Products Laboratory, Wood Handbook FPL-GTR-190 (2010), table 4-3
source-wide-change = USDA Forest Products Laboratory, Wood Handbook FPL-GTR-190 (2010), equation 13-3

## Woods that boards are made of.
wood-unknown = this wood is not in the table; choose one of: { $names }
wood-alder-red = red alder
wood-beech = beech
wood-cherry = cherry
wood-douglas-fir-coast = coast Douglas-fir
wood-fir-balsam = balsam fir
wood-fir-grand = grand fir
wood-fir-white = white fir
wood-maple-sugar = sugar maple
wood-oak-red = red oak
wood-pine-eastern-white = eastern white pine
wood-pine-loblolly = loblolly pine
wood-pine-lodgepole = lodgepole pine
wood-pine-longleaf = longleaf pine
wood-pine-ponderosa = ponderosa pine
wood-redcedar-western = western redcedar
wood-spruce-engelmann = Engelmann spruce
wood-spruce-sitka = Sitka spruce
wood-walnut-black = black walnut
