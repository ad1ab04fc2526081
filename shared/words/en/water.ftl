title = Fresh water
purpose = See how many days the tank lasts, and what it adds to the axles.

people = People aboard
use = Use per person per day
    .help = Drinking, cooking, dishes and washing up; a shower adds 5 gal (20 l).
tank = Fresh water tank
    .help = On the tank's label, or inside length x width x height.
empty-share-percent = Unusable share
    .help = What stays below the pickup tube; more where the rig parks off level.
grey-tank = Waste tank
    .help = For what drains from the sink and the shower.
pump-flow = Pump flow
    .help = On the pump's label.
pump-current = Pump current
    .help = On the pump's label; the energy sheet takes the pump's power and run time from here.
voltage = Nominal battery voltage
    .help = 12 V for lead-acid, 12.8 V for lithium iron phosphate.
drain-length = Drain length
    .help = Along the pipe from the sink's outlet to the waste tank.

lasts = The tank lasts
full-days =
    { $days ->
        [0] less than one day
        [one] one full day
       *[other] { $days } full days
    }
weight = A full tank's water weighs
grey-weight = a full waste tank's { $mass }
inlet = Waste tank inlet below the trap outlet
    .note = at least, from the outlet of the trap, with no dip after it

short = The tank does not last a day: get a larger one, or use less.
to-axles = The axle loads sheet takes this { $mass } from here, at the tank's place; the empty tank comes on top.
all-drawn = No unusable share is taken off: enter one, 5 % is typical.
grey-small =
    The waste tank is full after { $days }, before the fresh water is used up: it would have to hold { $needed }.
grey-enough =
    The waste tank holds all that a full tank brings. Fill up again before you dump it, and both together
    weigh { $mass }.
grey-none = All of it ends up as waste water: a waste tank of { $needed } holds what a full tank brings.
pump-runs = The pump runs { $minutes } a day ({ $hours }): enter its current, and the energy sheet takes both from here.
pump-runs-at = The pump runs { $minutes } a day ({ $hours }) at { $power }: the energy sheet takes both from here.

by-people = With more or fewer aboard
    .people = People
    .day = Use per day
    .lasts = The tank lasts

drawing = Level in the tank, day by day
    .words = A tank of { $tank }; { $usable } of it lasts { $days }.
unusable = { $volume } unusable
after-day = after day { $day }
full = full
waste-tank = waste tank, { $volume }

step-day = Use per day
step-days = Days
step-mass = Mass of the water
step-grey = Waste tank full after
step-pump = Pump run time per day
step-drain = Fall of the drain

source-days = usable water over what everyone uses in a day
source-use = 1.3 to 2.6 gal (5 to 10 l) a person a day, showers not counted
