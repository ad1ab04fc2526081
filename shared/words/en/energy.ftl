title = Battery and a day's use
purpose = Add up a day's loads, size the battery for the days without charging, and see how long a battery lasts.

nominal-voltage = Battery's nominal voltage
    .help =
        On the battery: 12 V for lead-acid, 12.8 V for lithium iron phosphate, which rests near 13.3 V. Up to a 48 V battery.
days = Days without charging
    .help = How long you stand where nothing charges.
usable-percent = Usable share of the battery
    .help = Lead-acid lasts at 50 %, lithium iron phosphate at 80 %; the manufacturer's figure comes first.
efficiency-percent = Share that reaches the loads
    .help = Cables and converters take the rest. The inverter's own losses are counted separately: leave them out here.

loads = Loads in a day
    .row = load
label = What it is
draw = Power or current
power = Power
    .help = On its label, while it runs.
current = Current
    .help = On its label, at the battery's voltage.
load-sheet = From its sheet
    .help =
        All loads of a circuit, the load of a run, the lamps, the cooler, or the water pump with its hours.
load-heater = Heater from a sheet
    .help = What the heater itself draws, and its duty cycle on the coldest night.
hours = Hours a day
    .help = Switched on, on the kind of day you plan for.
duty-percent = Duty cycle
    .help = Share of that time it runs: a fridge a third to a half, a lamp all of it.
mains = Runs on the inverter
    .help = 120 or 230 V AC from the inverter below, which takes more out of the battery than the load uses.
start = Starting power
    .help = Compressors, pumps and motors take three to six times their power for a moment.

inverter = Inverter
    .help = For what runs on AC.
inverter-efficiency = Inverter's efficiency
    .help = In its data sheet; less at small loads.
standby = No-load draw
    .help = Idle or no-load power, in its data sheet.
hours-on = Hours switched on
    .help = In a day; fewer if you switch it off between uses.
lowest-voltage = Battery's lowest voltage
    .help =
        The cut-off of inverter or battery: the current is highest there. If left blank: 10.5 V for each 12 V.
rating = Inverter's continuous rating
    .help = Of the one you have in mind, in W (not VA).
surge = Inverter's surge rating
    .help = Peak or surge power, for a second or more.
maker-fuse = Fuse the manufacturer calls for
    .help = DC fuse at its input, in its instructions: they come before anything worked out here.

battery = The battery you have in mind
capacity = Capacity
    .help = On the battery, in Ah or Wh; of several, all together.
chemistry = Kind of battery
    .help = Lead-acid takes longer over its last fifth, and keeps less of a charge.
chemistry-auto = not given: lead-acid if it has a Peukert exponent
chemistry-lithium = lithium iron phosphate
chemistry-lead-acid = lead-acid
hours-rating = Hours of the rating
    .help = After the capacity of a lead-acid battery: C20 is 20 hours.
peukert = Peukert exponent
    .help = Lead-acid only: 1.1 to 1.3, from the manufacturer's data sheet. Leave blank for lithium.
charge-limit = Maximum charging current
    .help = On the battery or in its data sheet.
charging-voltage = Highest charging voltage
    .help =
        In its data sheet: fuses and holders must be rated for it. If left blank: 3.65 V for each lithium cell, 2.67 V for
        each lead-acid one, which is equalizing.
price = Price
mass = Weight
    .help = For the weight on the buy list; on the battery, or in its data sheet.

cable = Battery cable and fuse
    .help = For everything on at once with the inverter at its rating, and for the strongest charger.
cable-length = Battery to fuse block, one way
    .help = Along the route of the cable; the return is added here.
conductor = Cable
    .help = auto takes the smallest AWG size that works, auto mm2 the smallest metric one.
short-circuit = Battery's short-circuit current
    .help = In its data sheet; the sum of batteries in parallel. If left blank, 20 kA is assumed.

charging = What charges it
    .row = charger
charged-by = Charges with
charge-power = Power at the battery
    .help = Charging current on its label times the battery's voltage.
charge-current = Charging current
    .help = On the label of the shore charger, or of the DC-DC charger between alternator and battery.
panels = Panels from a sheet
    .help = Takes the yield of each month from there.
charge-hours = Hours a day
    .help = Driving, or plugged in; leave blank for panels.
kind = Kind of charger
    .help = What limits the current: lithium is never charged straight from an alternator.
kind-auto = not given
kind-shore = shore charger
kind-dc-dc = DC-DC charger on the alternator
kind-alternator = straight from the alternator, through a relay
kind-controller = solar controller
way = Charger to battery, one way
    .help = For its cable and the fuse at each end; leave blank for panels.

## What is wrong with the inputs.
beyond-48 =
    from 50 V up other rules apply, except for a 48 V battery of up to 51.2 V: leave it to a licensed electrician
peukert-lithium = Peukert's law is for lead-acid: leave the exponent blank for lithium, or choose lead-acid
charging-below = a battery charges above its nominal voltage: give that much or more, such as 14.6 V for 12.8 V lithium
charging-beyond =
    above a 48 V battery's charging voltage other rules apply: give 58.4 V or less, or leave it to a licensed electrician
capacity-range = the battery must hold from 1 to 1 000 000 Wh; { $capacity } at { $volts } is { $energy }
straight-lithium =
    lithium is never charged straight from an alternator: it overloads it; put a DC-DC charger between them and choose that
    here
no-pump = this sheet gives no pump: enter its flow and its current there
no-cooler = this sheet sizes no cooler: enter its noon and its coefficient of performance there
no-heater = this sheet names no heater: enter the heater there
lowest-above = the lowest voltage must be below the nominal { $volts }
load-power-range = load { $load }: the power must be from 0 to 100 000 W
load-time-range = load { $load }: the time must be from 0 to 24 hours a day
load-duty-range = load { $load }: the duty cycle must be from 0 to 100 percent
voltage-range = the nominal voltage must be from 1 to 1000 V; 12, 24 and 48 V are usual
days-range = the days without charging must be from 0.01 to 365
usable-range = the usable share must be from 1 to 100 percent; 50 is usual for lead-acid, 80 for lithium
efficiency-range = the efficiency must be from 1 to 100 percent
energy-range = the battery's energy must be above 0 and at most 1 000 000 Wh
loss-range = loss { $loss }: a loss must be from 0 to below 100 percent
sun-range = the hours of full sun must be above 0 and at most 24 a day
inverter-load-range = load { $load }: running and starting power must be from 0 to 100 000 W
inverter-efficiency-range = the inverter's efficiency must be from 50 to 100 percent; 85 to 94 is usual
standby-range = the no-load draw must be from 0 to 1000 W
time-on-range = the inverter's hours switched on must be from 0 to 24 a day
lowest-range = the lowest voltage must be from 1 to 1000 V
rated-capacity-range = the capacity must be from 0.1 to 100 000 Ah
rated-time-range = the hours of the rating must be from 1 to 200; 20 is usual
exponent-range = the Peukert exponent must be from 1 to 2; lead-acid has 1.1 to 1.3
discharge-range = the current must be from 0.001 to 100 000 A
missing-range = the energy to charge must be from 0 to 1 000 000 Wh
charge-power-range = the charging power must be from 0.1 to 100 000 W
charge-limit-range = the battery's maximum charging power must be from 0.1 to 100 000 W
charge-efficiency-range = the charging efficiency must be from 1 to 100 percent

## Why no cable or fuse is shown.
why-no-class =
    no usual fuse has an interrupt rating of { $current } at { $volts }: fuse each battery by itself, as its manufacturer says
why-drop =
    even { $size } drops { $drop } on this run: shorten it, or run two cables in parallel as a licensed or qualified
    electrician sizes them
why-no-size = there is no size to choose from
why-too-large =
    it would be { $least } or more, and { $wire } allows no more than { $most }: use a thicker cable, or put less on it
why-mains = some loads run on AC, so the cable carries the inverter's draw: fill in the inverter

## Names of what has none.
load-number = load { $number }
own-use = inverter's own use
charger-number = charger { $number }

## Answers.
used = Used in a day
    .note = { $charge } at { $volts }
needed = Battery for { $days }
    .note = { $energy } at { $volts }, at least
lasts = Your battery lasts
    .note = at the day's average load, with nothing charging

## Remarks: the day and the battery.
too-small =
    Your battery does not last { $days }: it holds { $has } of the { $needed } needed. Use less, charge sooner, or get a larger
    one.
carries = Your battery carries { $days }.
below-rating =
    The average load is below the battery's rated current: its rated capacity is counted, not the extra that Peukert's law
    promises.
enter-exponent = A lead-acid battery gives less at a high current: enter its Peukert exponent.
needs-inverter = Some loads run on AC: fill in the inverter, which takes its share too.
all-on = All loads at once draw { $power } or { $current } at { $volts }.
    .no-cable =
        All loads at once draw { $power } or { $current } at { $volts }. Not shown: the battery cable and its fuse; fill in the
        cable to size them.
ordinary-day =
    { $enough ->
        [yes]
            On an ordinary day all charging together leaves { $brought } in the battery, and the day takes { $drawn } out of
            it.
       *[no]
            On an ordinary day all charging together leaves { $brought } in the battery, and the day takes { $drawn } out of
            it: it runs down.
    }
darkest-day =
    { $enough ->
        [yes]
            On a mean day of { $month } all charging together leaves { $brought } in the battery, and the day takes { $drawn }
            out of it.
       *[no]
            On a mean day of { $month } all charging together leaves { $brought } in the battery, and the day takes { $drawn }
            out of it: it runs down.
    }

## Remarks: the inverter.
inverter-small =
    The inverter gives { $rating }, and its loads take { $needed } together: get a larger one, or don't run them all at once.
inverter-start = The hardest start takes { $needed }, and the inverter gives { $peak } for a moment.
inverter-asked =
    { $size ->
        [none]
            Inverter: { $continuous } continuous and { $surge } surge. At { $volts } it draws { $current } from the battery,
            { $start } in a start.
       *[other]
            Inverter: { $continuous } continuous and { $surge } surge; { $size } is a usual size. At { $volts } it draws
            { $current } from the battery, { $start } in a start.
    }
sized-for-rating = The battery cable is sized for the inverter at its rating, not for its loads alone.
sized-for-usual =
    The battery cable is sized for a usual inverter for these loads: enter the rating of yours to size it for that.
inverter-fuse-unknown =
    Not shown: the inverter's own fuse. Enter the one its manufacturer calls for: the manufacturer's instructions come before
    the battery fuse here.
inverter-fuse = At the inverter's input, by its manufacturer: { $fuse }; its cable no thinner than the battery cable.
inverter-fuse-none =
    Not shown: a fuse of { $current } at the inverter's input: no class with an interrupt rating for this battery's short
    circuit is made in it, or the battery cable has none. Ask the inverter's manufacturer which fuse to use.

## Remarks: cables.
battery-cable = Battery cable
charger-cable = Cable of { $charger }
cable-drop = { $cable }: drops { $drop }, and the limit is { $limit }: use a thicker one, or a shorter run.
cable-no-fuse = { $cable }: fuse not shown: { $why }.
cable-not-shown = { $cable } and its fuse: not shown: { $why }.
cable-fuse =
    { $cable }: { $wire }, { $fuse }, fuse and holder rated for { $volts } DC or more, interrupt rating { $breaks }: look
    for both on the fuse. The battery's short-circuit current is { $short }.
    .assumed =
        { $cable }: { $wire }, { $fuse }, fuse and holder rated for { $volts } DC or more, interrupt rating { $breaks }: look
        for both on the fuse. The battery's short-circuit current is not given: { $short } is assumed.
charger-cables-open =
    Not shown: the cables of { $chargers } and the fuses each needs at both ends, since battery and charger can both feed it:
    enter the run from charger to battery.

## Remarks: chargers.
limit-unknown =
    Not shown: whether the battery is rated for what charges it: enter its maximum charging current.
charger-strong =
    { $charger } charges with { $current }, and the battery is rated for { $limit }: set it lower, or use a smaller one.
chargers-strong =
    All chargers at once bring { $current }, and the battery is rated for { $limit }: never run all of them at once, or set
    them lower.
straight-unknown =
    { $charger }: only a lead-acid battery is charged straight from the alternator. Choose the kind of battery, or put a DC-DC
    charger between them.
straight =
    { $charger }: nothing limits the { $current }: an empty battery draws all the alternator gives. Size cable and both fuses
    for the alternator's full current, or put a DC-DC charger between them.
dc-dc-input =
    { $charger }: on the alternator side the DC-DC charger draws more than it gives, { $current } or more: size that cable and
    its two fuses by the manufacturer's data sheet.
kind-unknown = Not shown: whether { $charger } limits its current: enter what kind of charger it is.

## Tables.
goes-to = Where the day's energy goes
    .load = Load
    .day = In a day
    .share = Share
cable-table = Battery cable
chargers-table = Charger cables, fused at both ends
    .charger = Charger
    .cable = Cable
    .way = One way
    .current = Current
    .drop = Drop
    .fuse = Fuse
not-shown = not shown
full-table = From the lowest charge to full, at least
    .by = Charged by
    .power = Power
    .time = Time to full
    .kept = Kept in a day
left-table = { $charger }: what a mean day leaves after its use
    .month = Month
    .bring = Panels bring
    .left = Left over
    .full = Lowest charge to full
never = never

## The drawing.
drawing = A day's use and the battery
    .words = Bars for each load of the day, { $energy } in all, and for the battery.
    .one-day = one day · { $energy }
    .needed = battery needed · { $energy }
    .yours = your battery · { $energy }
    .load = { $load } · { $energy }
    .in-a-row = the day, load by load

## Working.
step-day = Day
    .numbers = all loads
step-charge = Day as charge
step-battery = Battery
step-battery-charge = Battery as charge
step-average = Average current
step-lasts = Lasts
step-lasts-lead = Lasts, lead-acid
step-start = Inverter: hardest start
step-dc = Inverter: from the battery
step-dc-start = Inverter: in a start
step-current = Battery cable: current
    .numbers = { $power } from { $volts }, { $resistance } both ways
    .charger = more than all loads draw
step-drop = Battery cable: drop
step-fuse-least = The fuse carries at least
step-fuse = Smallest { $class } made
    .numbers = ratings of a { $class }
step-breaks = Interrupt rating of the { $class }
    .numbers = short-circuit current { $current }
step-assumed = not given: assumed
step-full = To full: { $charger }

## Fuses and wire.
class-blade = blade fuse
class-strip = bolt-down strip fuse
class-t = class T fuse
fuse = { $rating } { $class }

## Buy list.
buy-battery = battery
    .spec = { $capacity }, { $volts }
buy-fuse = { $class } with holder
    .spec = { $rating }, { $volts } DC or more, interrupt rating { $breaks } or more

## Sources.
source-ohm = power is voltage times current
source-dc = what goes into an inverter is what comes out over its efficiency
source-starts = all loads on and the hardest start at once size an inverter
source-cut-off = inverters for 12 V switch off at about 10.5 V, for 24 and 48 V in step
source-ratings = sizes that inverters are sold in
source-exponents =
    Peukert exponents: lead-acid 1.1 to 1.3, AGM 1.05 to 1.15, gel 1.1 to 1.25, flooded 1.2 to 1.6
source-full = energy to charge over charging power times charging efficiency
source-taper =
    lead-acid takes full current to 80 %, then less and less, down to a fiftieth of its capacity an hour
source-kept = of a charge 85 % stays in a lead-acid battery, 95 % in lithium
