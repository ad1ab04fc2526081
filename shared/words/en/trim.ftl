title = Roof-opening trim
purpose = Cut a trim so its flange sits against the ceiling all the way around.

height = Neck height, uncut
    .help = From the face of the flange that goes against the ceiling to the edge that goes against the roof frame.
corners = Corners
    .help = All four, in order around the opening, each with a standoff, a depth, or both.
    .row = corner
name = Corner
standoff = Standoff
    .help = Push the uncut trim up until it sits on the roof frame; measure from flange to ceiling.
depth = Depth
    .help = From the roof frame down to the face of the finished ceiling. With both, one checks the other.
clearance = Clearance at the roof frame
    .help = How far the cut edge stays off the roof frame, so the flange is sure to reach the ceiling. Left out: 1/16 in.
least-grip = Least height to keep
    .help = What the trim needs to be held by: its screws, clips or the vent's collar. Left out: 1/2 in.
sides = Sides of the trim
length = From the first corner to the second
    .help = Along the trim's neck; the opposite side is the same length.
width = From the second corner to the third
    .help = Along the trim's neck.
lining = Ceiling under the flange
    .help = Thickness of board and strip where the trim screws go: a screw no longer than that reaches no steel and no wire.

## What a corner without a name is called.
corner = corner { $number }

## What is wrong with the readings.
no-corners = no corners yet; enter all of them, in order around the opening
no-reading = { $corner } has no reading; enter the standoff (flange to ceiling) or the depth (roof frame to ceiling)
too-short =
    at { $corner } the trim is { $by } too short to reach from the ceiling to the roof frame; check the reading, or
    get a taller trim
disagree =
    at { $corner } the standoff reads { $standoff }, but height less depth gives { $from-depth }; they must agree
    within { $within }: measure both again
nothing-to-cut = the flange meets the ceiling at every corner, so there is nothing to cut; if it does not, measure again
too-little-left =
    at { $corner } only { $keep } of the trim would be left and it needs { $least }; the ceiling is too shallow or too
    uneven for this trim
nothing-left = at { $corner } nothing of the trim would be left; the ceiling is too shallow or too uneven for this trim
out-of-range = this is { $value }; it must be from { $least } to { $most }

cut-off = Cut off, from the roof-side edge
keep = Keep, from the flange
    .note = { $corners }; with the cut-off each adds up to { $height }
uneven = Out of level
    .note = from the corner that loses the most to the one that loses the least

twisted =
    Ceiling and roof frame are twisted to each other: a flat flange stands off { $by } at two corners, more than its
    screws can draw in. Measure again; if it stays, shim the ceiling there or seal the gap.
rocks = A flat flange rocks { $by } on two corners; its screws can draw that in.
mark-both =
    Mark the cut-off from the roof-side edge and the kept height from the face of the flange at every corner: where
    both marks meet, they are right. Join them with a straight line on each side.
not-the-traced-line =
    Do not cut along a line traced at the ceiling. With the trim pushed up, what shows below the ceiling is how much
    must come off, but it comes off the roof-side edge: the flange stays.
readings-differ =
    At { $corner } the two readings differ by { $by }: close enough; the standoff is what you cut to.
crowned =
    Under a crowned roof the ceiling may sit lower or higher between the corners: read the standoff halfway along each
    side too, and where it differs, cut that side to a curve through three marks.
screws =
    Trim screws may go { $most } into the ceiling, board and strip: no screw longer than that plus the thickness of
    the flange.
screws-unknown =
    The longest trim screw is not shown: enter the thickness of board and strip where the screws go.
seal =
    Around the opening goes { $run } of sealant in a { $bead } bead: it is on the buy list. Seal to the roof frame the
    way the vent's maker says; the trim itself keeps no water out.
left-out = Left out, so the usual value is used: { $values }.
    .clearance = clearance at the roof frame { $length }
    .least-grip = least height to keep { $length }
four-corners =
    With all four corners, in order around the opening, the four sides are drawn unrolled, and you see whether the
    flange can lie flat.
equal-sides = The sides are drawn equally long; enter their lengths to have them to scale.

table = Corner by corner: cut off from the roof-side edge, keep from the flange
    .corner = Corner
    .standoff = Standoff
    .depth = Depth
    .cut-off = Cut off
    .keep = Keep
left-over = { $mark } ({ $over })

from-edge = from the roof-side edge
cut = cut
    .note = { $keep } from the flange

sealant = sealant cartridge

template = Cut line around the trim
    .words =
        Wrap it around the face of the neck, inside or outside, on which the corners run from left to right in this
        order with the roof-side edge up; its upper edge along that edge, each upright on its corner. Check that its
        ends meet before you cut along the dashes.
gauges = Gauges for the corners
    .words =
        Hold each at its corner, its upper edge along the roof-side edge, mark the level of the dashes, and join the
        marks with a straight line.
template-corner = { $corner }: cut off { $cut }

unrolled = The trim unrolled: roof-side edge above, flange below
    .to-scale =
        Four sides to scale, around { $corners } and back to the first; the strip above the cut line comes off.
    .equal =
        Four sides drawn equally long, around { $corners } and back to the first; the strip above the cut line comes
        off.
heights = The trim's height at each corner: roof-side edge above, flange below
    .words = One strip for each corner; what lies above the cut line comes off.
    .off = off { $cut }
    .keep = keep { $keep }
section = Section at { $corner }: uncut and pushed up, then cut
    .words =
        On the left the uncut trim sits on the roof frame and its flange stands off the ceiling; on the right the
        strip along the roof-side edge is cut off and the flange meets the ceiling.
    .frame = roof frame
    .ceiling = ceiling
    .cut-off = cut off { $cut }
    .standoff = standoff { $standoff }
    .keep = keep { $keep }

step-cut-off = Cut off, { $corner }
step-keep = Keep, { $corner }
step-rocks = A flat flange stands off at two corners by

source-geometry = height = depth + standoff; keep = depth - clearance; cut = standoff + clearance
source-twist = twist = first + third - second - fourth corner; 0 for flat surfaces
source-rim-follows = screws can draw a thin flange 1/8 in, no more
