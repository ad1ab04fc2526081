# What stands in the way of mixing, buying and planning.

no-density =
    a ratio by mass needs the density of part { $part }, such as { $like } (it is on the data sheet); or give the ratio
    by volume
too-many-batches =
    { $total } in batches of { $largest } at most would be more than { $most } batches; raise the largest batch or the
    pour rate
no-container-of = no container holds part { $part }; add a bottle of { $part }, or a kit
no-container = no container size is given; add at least one

no-steps = there is nothing to plan; add at least one pass or coat
longer-than-day = step { $step } takes { $work }, and the working day has only { $day }; split the step, or work longer hours
too-far = step { $step } would start more than { $days } days from now; check the waits and the working hours
of-step = step { $step }: { $problem }

## What is wrong with a plan at one step.
too-early = starts { $minutes } too early; wait that long
too-late =
    starts { $minutes } after the recoat window has closed; start sooner, or abrade first as the label says
batch-too-slow = a batch takes { $takes } and stays workable for { $workable }; mix smaller batches
outside-hours = falls outside the working hours; start at another time

## Where formulas and rules come from.
source-volumes = box, cylinder and cone frustum
source-shrinkage = needed = net / (1 − shrinkage) / (1 − waste)
source-shares = part = whole · share; ratio by weight = ratio by volume · density of A / density of B
source-pot-life = pot life halves for each 10 °C (18 °F) warmer, doubles for each 10 °C colder
source-batches = largest batch = the lesser of the batch limit and pour rate · pot life
source-kits = least cost over every number of kits, with the cheapest bottles beside them
source-containers = covering knapsack by branch and bound, bounded by the best price by volume
source-spread-rate = volume = area · wet film; 1 US gal = 231 in³ (NIST HB 44, appendix C)
source-solids = dry film = wet film · solids by volume / (1 + thinner)
source-loss = needed = net / (1 − waste)
source-usual-loss = 10 % stays in tray, roller, cup and can where no waste allowance is entered
source-bead = volume = cross section · length
source-board = surface of a box
source-label-limits = the label's lowest and highest temperature hold for air and surface, its humidity limit for the air, from the first stroke until the coat is dry
source-window = recoat time counts from the end of the coat before, for the part that waits longest
source-between = in a straight line from one reading to the next, and the same every day

## What forbids a coat.
bar-dew-point = the surface is less than { $margin } above the dew point
bar-humid = the air is at { $humidity } humidity or more
bar-label-humidity = the air is more humid than the label's { $humidity }
bar-cold = it is colder than the label's lowest, { $temperature }
bar-warm = it is warmer than the label's highest, { $temperature }
bar-wet-wood = the wood is wetter than the label's { $moisture }

## What is not known of it.
missing-least = the label's lowest temperature
missing-most = the label's highest temperature
missing-humidity = the label's humidity limit
missing-night = the coming night
missing-moisture = the wood's moisture
missing-air = air and surface over the day
