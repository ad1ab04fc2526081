# Passes and coats in order: when each may start, when to mix the last batch, when to walk on it.

title = Filling and coating schedule
purpose = When each pass and coat may start, when to mix the last batch, when to walk on it.

## What is asked.
start = First start
    .help = When the first step starts, on the first day.
hours = Working hours
    .help = Nothing is started or left unfinished outside of them; leave them out to work around the clock.
from = From
to = To
label-temperature = Labels give their times for
    .help = On the labels, mostly 20 to 25 °C (68 to 77 °F).
air = Air and surface, all day
    .help = Expected while you work; a step with its own weather can have its own.
temperature = Air temperature
humidity-percent = Relative humidity
surface-temperature = Surface temperature
    .help = At the coldest spot.
readings = Air and surface over the day
    .help =
        Instead of one reading for all day: morning, noon, evening, with a straight line between them, every day the same.
        That line misses how cold it gets before dawn: enter the night below.
    .row = reading
at = At
steps = Passes and coats
    .help =
        In the order they are done; sanding is a step too. What a sheet says of its passes and coats need not be said again
        here.
    .row = step
label = Step
    .help = For example: first coat. Left out, it goes by its product or its number.
passes = All passes of
    .help = A gap-filling sheet: batches and times from there.
coats = All coats of
    .help = A coating sheet: layers and times from there.
dry = Dry work: sanding, cleaning
    .help = Temperature and dew point do not matter for it.
filler = Batches and pot life of
    .help = This step is one pass of that sheet.
batches = Batches
starts = Starts at
    .help = Where it did start or must start: 14:00, tomorrow 8:00, day 3 9:30. Otherwise it is worked out.
own-air = Its own air and surface

## What is wrong with what was entered.
one-or-several = enter one reading for all day or several, not both
ends-too-soon = the working day must end after it starts, and before midnight
same-time = there is a reading at this time already; give each its own
dry-passes = passes and coats are not dry work; give the sanding a row of its own
one-sheet = a row takes from one sheet; give the other a row of its own
work-missing = enter how long it takes, for example 60 min
work-unsaid = that sheet does not say how long one takes; enter it here or there
minutes-digits = the minutes need two digits; write a time of day such as 8:30 or 2:15 pm
no-time = this is not a time of day; write one such as 8:30 or 2:15 pm
half-day = with am or pm the hours go from 1 to 12; write a time of day such as 8:30 or 2:15 pm
after-midnight = a day ends at 24:00; write a time of day such as 8:30 or 2:15 pm
day-and-time = name the day and the time, such as day 3 8:30
days-range = days are counted from 1, the first day, to 60

## Times.
am = { $time } am
pm = { $time } pm
tomorrow-at = tomorrow { $time }
day-at = day { $day }, { $time }
today = Today
tomorrow = Tomorrow
day = Day { $day }

## What steps are called.
unnamed = step { $number }
of-product = { $label }: { $product }
numbered = { $step } { $number } of { $count }
close = close from below, mask
sand = sand
wash = wash off the filler, let it dry

## Answers.
ready = Ready to walk on
    .note = the last step is done { $time }
done = Last step done
    .note = when it can be walked on is not shown: enter the wait for what goes on last
mix-last = Mix the last batch at
    .note = of { $step }, if it starts as planned
    .note-by = of { $step }, if it starts as planned; { $time } at the latest
works = Does the plan work?
    .problems =
        { $count ->
            [one] No: { $count } problem
           *[other] No: { $count } problems
        }
    .yes = Yes, by times, labels and the air entered
    .times-alone = By its times; for the air it is not shown
    .enter = { $step }: enter { $missing }

## What there is to say about them.
problem = { $step }: { $problem }.
in-the-night =
    { $step }: falls in the night, { $from } to { $to }. Enter working hours, and it moves to the morning.
barred-now = { $step }: while it goes on, { $why }. Keep the body warm and aired, or put it off.
barred-later = { $step }: until it is dry or in the night, { $why }. Keep the body warm and aired, or put it off.
why-above = { $why } (at worst, { $time }: surface { $by } above the dew point)
why-below = { $why } (at worst, { $time }: surface { $by } below the dew point)
not-shown = { $step }: whether it may go on is not shown: enter { $missing }.
put-off =
    { $step }: put off from { $from } to { $to }; sooner, it or a later step would fall outside of the working hours or its
    window.
rule-of-thumb =
    Colder than the labels' temperature, waits are taken longer; warmer, batches and windows are taken shorter, and the
    shortest waits stay as on the label. That is a rule of thumb: touch and sand a small spot before you go on.
all-well = Every step falls within its window.

## By the clock.
clock = By the clock
    .when = When
    .what = What to do
before-wash = before { $step }, and in good time: wash the filler with water and a pad, let it dry
before-filler =
    before { $step }: check with the moisture meter that the wood is dry; close gaps and holes from below with tape or
    plugs; mask the edges; wet out with plain mix, then thicken
before-first-coat = before { $step }: check the wood with the moisture meter; try a test patch; take the dust off
before-coat = before { $step }: take the dust off
wipe-from =
    { $step }: wipe it off from now on, each part { $after } after it went on, the last by { $last }; spread the rags flat
    outdoors, one by one
wipe-by-label =
    { $step }: wipe each part off after as many minutes as the label says; spread the rags flat outdoors, one by one
begin = { $step }: start
    .by = { $step }: start (at the latest { $latest })
    .mix = { $step }: start, { $mix }
    .mix-by = { $step }: start, { $mix } (at the latest { $latest })
mix = { $step }: { $mix }
mix-only = mix the only batch
mix-batch = mix batch { $number } of { $count }
mix-last-batch = mix the last batch, { $number } of { $count }
finished = { $step }: done
    .wait = { $step }: done; the next not before { $time }
walk-on = { $step }: walk on it

## Tables.
windows = Windows of each step
    .step = Step
    .from = May start from
    .until = At the latest
    .work = Work
    .batch = A batch lasts
    .mix = Last mix
    .mix-by = Mix it by
    .walk = Walk on from
    .broken = { $step } (see above)
airs = Air, and how far the surface is above the dew point at least
    .step = Step
    .start = Start
    .air = Air
    .humidity = Humidity
    .surface = Surface
    .work = At work
    .drying = Drying

## The days.
drawing = { $day }. Solid: work. Hatched: dries. Dashed: when it may be done. Stroke: last mix
    .continued = { $day }, continued
    .words = { $steps }.
    .next = { $first }; { $next }
bar = { $hours } { $step }
    .walk = { $time } walk on: { $step }

## How it is worked out.
step-start = { $step }: start
    .formula = as entered
step-wait = { $step }: the wait is over at
    .formula = end of the step before + shortest wait · mean of max(pace, 1)
step-window = { $step }: the window closes at
    .formula =
        start of the step before + longest wait · mean of min(pace, 1) − work that takes longer
step-air = { $step }: air when it starts
    .result = { $temperature }, { $humidity }, surface { $surface }
step-pace = { $step }: pace, which multiplies the labels' times
    .formula = 2^((T label − T) / 10 °C)
step-dew = { $step }: dew point, { $time } (T in °C)
step-margin = { $step }: surface above the dew point
