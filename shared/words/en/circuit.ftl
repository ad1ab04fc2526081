title = Circuit
purpose = Wire lights, fans and outlets as a tree: wire sizes, voltage drop, splices, fuses.

## Runs.
runs = Runs
    .help = Each stretch of wire from one splice to the next, starting at the source.
    .row = run
id = Name of the run
    .help = Write it on both ends of the wire.
from = From
    .help = The splice nearer the battery; the one at the fuse is called source.
to = To
    .help = The splice or outlet this run feeds; each is fed by one run only.
length = Length, one way
    .help = Along the route of the wire, up and over; the way back is added here.
route = Length from where it lies
    .help = Instead of the length: along the body, across it, and up and over. A length that is entered comes first.
route-from = It begins
route-to = It ends
x = From the front wall
y = From the left wall
rise = Up and over
    .help = All that goes up, down and around things.
conductor = Wire
    .help =
        Printed on the jacket: 16 AWG, 1.5 mm2; or ohm/m of one conductor. auto takes the least copper that is enough.
fuse-block = Ends at a fuse block
    .help = Each run that leaves it then has a fuse of its own, which protects its own wire alone.
device-rating = Rating of the dimmer or switch in this run
    .help = Printed on the dimmer or switch, at DC; leave blank where there is none.
device-watts = Or in watts
    .help = Printed on the dimmer or switch, at the voltage of this circuit; both are checked.
protects-itself = Dimmer or switch protects itself
    .help =
        Its maker says it has a fuse of its own or limits its current: then the fuse before it may be larger than its
        rating.

## Loads.
loads = Loads
    .help = Lamps, fans, pumps, outlets: whatever draws current and is not in a row below.
    .row = load
at = At
    .help = The end of the run it hangs on.
label = Name
model = How it draws
model-power = constant power (W): LED lamps with a driver, chargers, electronics
model-current = constant current (A): LED strips, measured loads
model-resistance = resistance (ohm): heaters, filament lamps
value = How much
    .help = One of them, from its label: in W, A or ohm, as it draws.
count = How many
    .help = Alike, at the same place.
positive-lead = Positive lead
    .help = Its color as found on the device, with its stripe: black/white. Check with a meter.
negative-lead = Negative lead
    .help = Its color as found on the device.

## Rows of lights.
rows = Rows of lights
    .help = Like lights in a row, each fed from the one before: their runs and splices are made here.
    .row = row
row-label = Name of the row
    .help = Its splices are called left 1, left 2 and so on, its runs run left 1 and so on.
row-count = How many
    .help = All alike, one after another.
first = Wire to the first
    .help = From where the row is fed, up and over, one way.
spacing = Spacing
    .help = From each to the next, along the wire.
row-conductor = Wire
    .help = For all runs of the row.

slack = Slack at each end
    .help = Added to each piece of wire at both ends, for stripping and for a second try.
conductor-choices = Sizes for auto to choose from
    .help =
        What you have or can buy. Left blank: all AWG sizes from 16 to 4/0, from 18 inside a jacket.
    .each = Size
positive-wire = Positive wire of the runs
    .help = The color of the wire you bought.
negative-wire = Negative wire of the runs
    .help = Yellow is harder to mistake for a line-voltage black (ABYC E-11).

## What a row makes. The names themselves are the same in every language, as they stand in the file.
run-called = run { $name }
run-of-row = run { $node }
light-of-row = light { $node }
several = { $count } × { $label }

## What is wrong with the inputs.
too-many-runs = with the rows there are { $count } runs; a circuit takes at most { $most }
no-loads = add at least one load or a row of lights
length-or-route = enter the length, or where the run begins and ends
both-leads = enter the colors of both leads, or of neither
choices-named = the sizes to choose from are named already; write auto here
mixed-series = auto AWG and auto mm2 do not mix in one circuit; use one of them, or name the sizes to choose from
load-on-block = “{ $node }” is a fuse block: give the load a run of its own from there, which has a fuse
at-low = at { $volts }: { $problem }

## What is not safe.
overheats =
    { $conductor } overheats: as laid it may carry { $ampacity }, and it has to carry { $current }; use a thicker one, or auto
run-overheats = { $run }: { $problem }
    .short = { $run } overheats
current-at = { $current } at { $volts }
too-thin =
    no fuse fits: { $problem }. The weakest is { $run }; end the run before it at a fuse block, and it gets a fuse of its
    own
    .short = { $run } is too thin for the fuse before it
no-fuse = no fuse fits: { $problem }
device-small =
    the dimmer or switch in { $run } is rated { $rated }, and it has to carry { $current }: use a larger one, or split the
    run
    .short = the dimmer or switch in { $run } is too small
device-fuse =
    the dimmer or switch in { $run } is rated { $rated }, and the smallest fuse for its current is { $fuse }: use a larger
    one, or one that protects itself, and say so here
    .none =
        the dimmer or switch in { $run } is rated { $rated }, and no fuse is made for its current: split the run

## Answers.
answer-lowest = Lowest voltage at a load
    .text = { $volts } ({ $percent })
    .note = at { $node }; { $limit } is allowed
answer-fuse = Fuse at the source
    .main = Main fuse at the source
    .with-wire = Fuse and wire
    .hidden = not shown: { $why }
draws = { $current } with all loads on
    .branches = { $current } with all loads on; branch fuses: { $branches }
branch = { $run } { $rating }
answer-wire = Wire
    .least = the least copper that is enough
    .found = the least copper that was found
    .given = as entered

## Remarks.
not-shown = Not shown: { $problem }.
lost =
    Too much is lost on the way to { $loads }: { $percent } at worst, and { $limit } is allowed. { $instead }
instead = { $size } in every run would do; set runs to auto to find the least copper.
    .none = No size is enough: shorten the runs or split the circuit.
more-names = { $more } more
good = Every load is within { $limit }, and each run takes the fuse before it.
in-line =
    The dimmer or switch in { $run } gets a fuse of its own, { $rating } in line where the run leaves { $node }: the fuse
    before that is larger than its rating.
must-protect =
    { $count ->
        [one] The dimmer or switch in { $runs } must protect itself: the fuse before it protects the wire, not the device.
       *[other] The dimmers or switches in { $runs } must protect themselves: the fuses before them protect the wire, not the device.
    }
switch-negative =
    Many dimmers switch the negative: the negatives behind one go back to it alone, never to the bus, the chassis or the
    negative of another run.
far-fuses =
    With a source at each end, either one can burn the wire: { $runs } gets a fuse of one rating at both ends. Never put a
    lithium battery straight on an alternator: a DC-DC charger goes between them.
polarity = Polarity of { $loads }: { $clash }.
clash-joined =
    its colors mean the opposite of those of { $other } at the same splice: join + to +, whatever the color
stopped = The search for the least copper was cut short.
    .bound = The search for the least copper was cut short; no mix saves more than { $saves }.
one-spool = One spool instead: { $size } in all of these runs works too, with { $more } more copper.
headroom = With this wire, all runs could be { $percent } longer before any load falls below the limit.
heat = { $loss } is lost as heat in the wire, of { $all } from the source.

## Tables.
table-loads = Voltage at each load, everything on
    .load = Load
    .at = At
    .voltage = Voltage
    .drop = Drop
    .draws = Draws
table-runs = Runs: what to cut, slack at both ends counted
    .run = Run
    .length = One way
    .wire = Wire
    .cut = Cut
    .current = Current
    .carries = May carry
    .name = { $run }: { $from } to { $to }
    .routed = { $length }, from where it lies
    .pieces = { $length } + and −
table-wire = Wire, and the sleeve for { $count } conductors of one size
    .wire = Wire
    .all = In all, + and −
    .spools = Spools of each color
    .bundle = Bundle about
    .sleeve = Sleeve inside
    .spool = { $count } of { $length }
table-mix = One spool or a mix, for the runs that are auto
    .sizes = Sizes
    .copper = Copper
    .drop = Largest drop
    .fuse = Fuse
    .mix = best mix
    .single = one size
table-fuses = Fuses: each protects the runs behind it
    .fuse = Fuse
    .rating = Rating
    .least = Carries at least
    .protects = Protects
    .main = main, at the source
    .in-block = { $run }, in the fuse block
    .in-line = { $run }, in line, where it begins
table-devices = Dimmers and switches
    .run = In run
    .rated = Rated
    .carries = Carries
    .fuse = Fuse before it
    .safe = Safe because
    .own = it protects itself
    .by-fuse = the fuse is no larger
table-polarity = Polarity: lead of the load to wire of the run
    .load = Load
    .positive = + positive
    .negative = − negative
    .joined = { $lead } to { $wire }
    .beware = ! not by color
table-what-if = What if, with this wire and everything on
    .lowest = Lowest voltage
    .drop = Drop
    .source = Source gives
    .planned = as planned
    .low = battery low, { $volts }
    .tenth = source 10 % lower
    .longer = every run 25 % longer
    .longest = longest run ({ $run }) 50 % longer
    .both = { $low }, and every run 25 % longer
    .unsteady = no steady voltage

## Lines to tick off.
checks-cut = Wire to cut, run by run
    .line = { $run }: { $length } of { $wire }, one { $positive } (+) and one { $negative } (−)
    .note = { $from } to { $to }, slack at both ends counted
    .bench = cut { $wire }, one { $positive } (+) and one { $negative } (−)
checks-splice = Splice by splice, once for + and once for −
    .line = { $node }: { $ways } ways, twice: { $joined }
    .studs = ring lugs on a stud or bus bar for each
    .connectors = connectors for each: { $connectors }
joins-from = from { $node } ({ $run })
joins-on = on to { $node } ({ $run })
connector = { $count } of { $ways } ways
    .linked = { $connectors }, linked
lead-colors = { $load }: + { $positive } to { $positive-wire }, − { $negative } to { $negative-wire }

## Cut list and buy list.
cut-stock = wire { $wire }, one positive and one negative
buy-block-fuse = fuse for the fuse block
buy-block = fuse block with negative bus
    .spec = { $ways } circuits or more, { $rating } or more, { $volts } DC or more
buy-device = dimmer or switch
    .spec = { $rated } DC
    .spec-own = { $rated } DC, protects itself
buy-splice = splice connector
    .spec = { $ways } ways, takes { $size }
    .spec-plain = { $ways } ways
buy-bus = bus bar or stud
    .spec = { $ways } places, { $stud } stud
buy-lead-lug-spec = for a load’s lead, { $stud } stud

## Drawing.
drawing = Circuit
    .part = Circuit, part { $part } of { $parts }
    .words = A tree of runs: { $nodes }.
    .source = the source at { $volts }
    .source-with = the source at { $volts }, with { $loads }
    .node = { $node } fed from { $from } at { $volts }
    .node-with = { $node } fed from { $from } at { $volts }, with { $loads }
    .fused = { $node } fed from { $from } through a fuse of { $rating } at { $volts }
    .fused-with = { $node } fed from { $from } through a fuse of { $rating } at { $volts }, with { $loads }
    .legend = solid +, dashed −, dots: splices
    .ways = { $ways } ways
    .block = fuse block
    .fuse = fuse { $rating }
    .main-fuse = fuse { $rating } in +
    .from = from { $node }

## Working.
step-all = Every load draws at its own voltage
    .formula = I = P / V, I, or V / R
    .numbers = { $loads } on { $runs }, solved together
    .loads =
        { $count ->
            [one] { $count } load
           *[other] { $count } loads
        }
    .runs =
        { $count ->
            [one] { $count } run
           *[other] { $count } runs
        }
    .result = { $current } from the source
step-run = Drop of { $run }, { $from } to { $to }
step-lowest = Voltage at { $node }, the lowest of all loads
step-share = Its share of the source voltage
step-check = Check: power in is power out
step-low = Source current with the battery at its lowest
step-of-run = { $run }: { $step }
