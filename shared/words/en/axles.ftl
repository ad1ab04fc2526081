title = Axle loads
purpose = See what each axle carries with everything and everyone aboard, and what is left.

wheelbase = Wheelbase
    .help = Center of the front wheel to center of the rear wheel, along the ground.
front = Front axle
rear = Rear axle
limit = Axle limit
    .help = On the plate in the door opening: gross axle weight rating (GAWR).
weighed = Weighed
    .help = This axle alone on the scale, before the things below go aboard.
gross-limit = Limit of the whole vehicle
    .help = On the plate in the door opening: gross vehicle weight rating (GVWR).
items = Things aboard
    .row = thing
    .help = Everything that was not aboard on the scale: fit-out, water, people, cargo.
label = What it is
mass-or-sheet = Weight
mass = Weight
    .help = Negative for what you remove.
sheet = Water of a fresh water sheet
    .help = Takes the weight of a full tank's water from there and follows it.
from-front-axle = Behind the front axle
    .help = Along the floor from the front wheel's center to the middle of the thing; negative if ahead of it.
project = Count the weight of this project's buy list
    .help = It follows the list. Leave out above what is on the list: boards, lamps, battery, panels.
front-wall-from-front-axle = The body's front wall, behind the front axle
    .help = Along the floor from the front wheel's center to the wall the body is measured from; negative if ahead of it.

thing-number = thing { $number }
buy-list = the buy list
buy-list-no-place = the buy list, no place given

no-front-wall = enter where the body's front wall is, so that the buy list's weight has a place
no-place =
    lines of the buy list have no place along the body: measure the body's length, and they count at its middle,
    or give each its place on the buy list

bad-wheelbase = the wheelbase must be from 0.5 to 20 m
bad-limit = an axle's limit must be from 1 to 50 000 kg; it is on the vehicle's plate
bad-weighed = an axle's weight must be from 0 to 50 000 kg
bad-gross-limit = the limit of the whole vehicle must be from 1 to 100 000 kg; it is on the vehicle's plate
bad-mass = item { $number }: the weight must be from -20 000 to 20 000 kg
bad-place = item { $number }: its place must be from 10 m ahead of the front axle to 30 m behind it
bad-braking = the deceleration must be from 0 to 2 g, and the height of the center of mass from 0 to 5 m
bad-tilt = the tilt must be from 1 to 45 degrees

on-front = On the front axle
on-rear = On the rear axle
in-all = Everything together
left-below = { $left } left below the limit of { $limit }
over-limit = { $over } over the limit of { $limit }

front-over = The front axle is { $over } over its limit: move load to the rear, or leave some behind.
rear-over = The rear axle is { $over } over its limit: move load forward of the rear axle, or leave some behind.
gross-over = The whole vehicle is { $over } over its limit: leave some behind.
front-near = The front axle is within { $share } of its limit: weigh it before you add anything.
rear-near = The rear axle is within { $share } of its limit: weigh it before you add anything.
gross-near = The whole vehicle is within { $share } of its limit: weigh it before you add anything.
none-weighed =
    Neither axle was weighed: these loads are the things below alone, without the vehicle. Weigh both axles and
    enter them.
front-not-weighed = The front axle was not weighed: its load and the total leave out the vehicle's own. Weigh it too.
rear-not-weighed = The rear axle was not weighed: its load and the total leave out the vehicle's own. Weigh it too.
lifts = An axle would carry less than nothing and lift: check weights and places.
read-the-plate = The gross rating exceeds the sum of the axle ratings: read the plate again.
all-kept = By these figures all three limits are kept: weigh the vehicle loaded for the road to be sure.
without-mass =
    { $count ->
        [one] One line of the buy list has no weight, so the loads are short of it: enter its weight there.
       *[other] { $count } lines of the buy list have no weight, so the loads are short of them: enter their weights there.
    }
without-place =
    { $count ->
        [one] One line of the buy list has no place and counts at the middle of the body.
       *[other] { $count } lines of the buy list have no place and count at the middle of the body.
    }
centre = The things aboard have their common center of mass { $place } behind the front axle.

shares = What each thing puts on the axles
    .thing = Thing
    .mass = Weight
    .place = Behind the front axle
    .front = On the front
    .rear = On the rear

drawing = Side view with the loads
    .words =
        The vehicle from its left side, front to the left: { $front } on the front axle, { $rear } on the rear,
        { $wheelbase } apart.

step-thing = { $thing }: on the rear axle
step-rear = Rear axle
step-front = Front axle
step-front-left = Left on the front axle
step-rear-left = Left on the rear axle
step-gross-left = Left on the whole vehicle

source-moments = moments about the front axle: what stands still is in balance
source-braking = moments about a wheel: m a h / wheelbase
source-near = keep the last twentieth of an axle's limit free
source-centre = center of mass = sum of mass x place / sum of mass
