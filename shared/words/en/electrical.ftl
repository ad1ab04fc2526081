# What is wrong with a wire, a run or a fuse.

## Quantities and their ranges.
range-source-voltage = the source voltage
range-load-current = the load current
range-load-power = the load power
range-load-resistance = the load resistance
range-run-resistance = the resistance of the run
range-run-length = the length of the run
range-conductor = the resistance of the conductor
range-drop-limit = the allowed voltage drop
range-temperature = the conductor temperature
range-slack = the slack
out-of-range = { $what } must be between { $least } and { $most }, not { $value }
not-a-number = { $what } is not a number: it must be between { $least } and { $most }

## A conductor that was typed.
no-conductor = no conductor is named; { $like }
not-a-conductor = “{ $typed }” is not a conductor; { $like }
conductor-like =
    write a size as 16 AWG, 1/0 AWG or 1.5 mm2, or the resistance of one conductor as 0.0135 ohm/m
unit-missing = “{ $typed }” has no unit; write { $typed } AWG or { $typed } mm2, as printed on the jacket
unknown-awg = “{ $typed }” is not a size in NEC chapter 9 table 8, 18 to 4/0 AWG; nearest: { $near }
unknown-metric = “{ $typed }” is not a size in IEC 60228, 0.5 to 95 mm2; nearest: { $near }
resistance-wrong = { $range }; 16 AWG has about 0.016 ohm/m, 1.5 mm2 0.0133 ohm/m

## A conductor without an ampacity.
unrated = no table gives an ampacity for { $conductor }, and no thinner size is listed; { $instead }
unrated-three-quarters =
    with insulation rated { $rating } °C use 1 mm2 or thicker, or enter the higher rating printed on the jacket
unrated-resistance =
    enter the size printed on the jacket, 18 AWG or 1 mm2 and thicker (18 AWG: 0.0215 ohm/m at 20 °C)
unrated-size = enter 18 AWG, 1 mm2 or thicker

## A run that cannot work.
collapse =
    no steady voltage: { $source } V through { $resistance } ohm of wire delivers { $most } W at the very most, and the
    load needs { $power } W; shorten the run, or use thicker wire or a higher voltage
overdrawn =
    { $current } A would use up the whole source voltage in the wire, which passes no more than { $most } A; shorten the
    run or use thicker wire
no-choices = there is no conductor size to choose from: enter one
drop-too-great =
    no size is enough: even { $conductor } { $falls }, and { $limit } is allowed; shorten the run, or use a higher voltage
    .until =
        no size is enough: even { $conductor } { $falls }, and { $limit } is allowed; it would do for { $length } one way,
        or use a higher voltage
falls-by = loses { $drop }
falls-away = has no steady voltage
ampacity-too-small =
    the load draws { $current } A, and even { $conductor } may carry no more than { $ampacity } A and is rated for no
    fuse that carries the load; split the circuit or bundle fewer conductors together
ampacity-unknown =
    the load draws { $current } A, and even { $conductor } has no ampacity in the tables; split the circuit or bundle
    fewer conductors together

## A fuse that does not fit.
fuse-beyond-ratings =
    the load needs a fuse of { $needed } A, and the largest standard rating is { $greatest } A; split the circuit
fuse-too-large-by-rule =
    the load needs a fuse of { $needed } A, the next rating is { $rating } A, and { $conductor } behind it is rated for
    fuses up to { $limit } A ({ $rule }); { $instead }
fuse-too-large =
    the load needs a fuse of { $needed } A, the next rating is { $rating } A, and { $conductor } behind it may carry no
    more than { $limit } A; { $instead }
size-would-do = { $size } would do, or split the circuit
no-size-would-do = no listed size would do: split the circuit

## The runs of a circuit.
no-runs = there is no run; add one from “{ $source }”
no-source = no run starts at the source; call the node at the fuse “{ $source }” and start the first run there
name-missing = a run needs a name, the node it starts from and the node it feeds
same-name = run { $number } is called “{ $name }” too; give each run its own name
to-itself = this run goes from “{ $node }” to itself; name the node at its other end
into-source = this run goes back into the source; “from” is the end nearer the source
two-feeds = “{ $node }” is already fed by run { $number }; a node has one feed (“from” is the end nearer the source)
unfed = nothing feeds “{ $node }”; add a run to it from the source side
ring = these runs form a ring the source does not reach ({ $nodes }); feed one of these nodes from the source instead
no-such-node = no run reaches “{ $node }”; the nodes are { $nodes }

## A circuit that cannot work.
network-mismatch = runs and loads do not match the tree; check what each run and load is connected to
network-collapse =
    there is no steady voltage: it collapses at “{ $node }”. The wires can carry { $bearable } % of these loads at the
    very most; use thicker wire, shorter runs, fewer loads or a higher voltage

## Runs left open that no size will do for.
open-no-choices =
    there is no size to choose from; name sizes from 16 AWG or 1 mm2 up, or say that the wire runs inside a jacket, for
    18 AWG or 0.75 mm2
nothing-open = every run has its size; set one to auto
open-drop =
    no size is enough: even with { $conductor } in all open runs “{ $node }” loses { $lost }, and { $limit } is allowed;
    shorten the runs, split the circuit or use a higher voltage
open-collapse =
    even with { $conductor } in all open runs there is no steady voltage; shorten the runs, split the circuit or use a
    higher voltage
open-low-collapse =
    at { $low } even { $conductor } in all open runs gives no steady voltage; shorten the runs, split the circuit or use
    a higher voltage
open-ampacity =
    the loads need a fuse of { $needed }, and even { $conductor } takes none above { $limit }; split the circuit, feed it
    through a fuse block, or bundle fewer conductors together
given-up = no mix of these sizes was found in the time allowed; name a size for some of the runs

## Colors of leads and wires. What stands here must be read by Colour::from_str too.
hue-black = black
hue-white = white
hue-red = red
hue-yellow = yellow
hue-green = green
hue-blue = blue
hue-brown = brown
hue-gray = gray
hue-orange = orange
hue-violet = violet
hue-pink = pink
hue-tan = tan
striped = { $ground }/{ $stripe }
not-a-color = “{ $typed }” is not the color of a lead; write { $plain }, or { $striped } for a stripe; the colors are { $colors }
clash-opposite =
    { $color } is positive on the device and negative on the run: do not join { $color } to { $color }; join positive to
    positive and label both
    .negative =
        { $color } is negative on the device and positive on the run: do not join { $color } to { $color }; join positive
        to positive and label both
clash-stripe =
    { $device } is positive on the device and { $run } is negative on the run: only the stripe tells them apart; label
    both
    .negative =
        { $device } is negative on the device and { $run } is positive on the run: only the stripe tells them apart; label
        both
clash-alike =
    both leads of the device are { $color }: find the positive one by its mark, the maker's sheet or a meter, and label it

## Sources.
source-class-5 = IEC 60228, class 5, plain copper, 20 °C
source-given = resistance per length as entered, no temperature correction
source-stranded = stranded wire is 1.14 times as wide as solid wire of its area, as in NEC chapter 9 table 8
source-ohm = Ohm's law, both conductors of the run counted
source-least-boats = 33 CFR 183.425, (d), (e), boats
source-least-metric = ISO 10133, small craft: 1 mm2 single, 0.75 mm2 in a sheath
source-metric-by-awg = 33 CFR 183.425, table 5, the AWG size next below by copper area (conservative)
source-ohm-by-awg = 33 CFR 183.425, table 5, the AWG size that resists at least as much at 20 °C, NEC chapter 9 table 8 (conservative)
source-trailer-fuse = NEC (NFPA 70), table 552.10(E)(1), park trailers: 6, 8, 15, 20, 30 A
source-small-wire = NEC (NFPA 70), 240.4(D): 15, 20, 30 A for 14, 12, 10 AWG; 7 and 10 A for 18 and 16 AWG from memory
source-boat-fuse = 33 CFR 183.455, (c), boats: up to 150 % of table 5 below 50 V
source-buried = BS 7671, 523.9: 0.5 for 0.5 m or more in thermal insulation
source-charging = charging voltage as entered
source-fuse-32 = ISO 8820-3, ISO 8820-5, blade fuses up to 100 A and strip fuses up to 500 A, 32 V
source-fuse-58 = ISO 8820-3, blade fuses up to 100 A, 58 V
source-fuse-125 = UL 248-15, class T, up to 1200 A, 125 V DC
source-three-quarters = ISO 10133, small craft, table A.1, 0.75 mm2
source-bundling = ABYC E-11, bundling factors, insulation for 105 °C
source-power = V = (Vs + √(Vs² − 4 · R · P)) / 2, the upper root of V · (Vs − V) = R · P
source-ways = splice connectors are sold with 2, 3 and 5 ways
source-connector-sizes = splice connectors take wire up to about 10 AWG or 6 mm2
source-studs = lugs up to 6 AWG or 16 mm2 on M6 or 1/4 in studs, thicker ones on M8 or 5/16 in
source-packing = table of circle packings in a circle, 1 to 20 equal circles
source-bundle = a bundle of wires is 1.2 · √(Σ d²) across
source-in-reach = NEC (NFPA 70), 300.15, 314.29 (accessible connections)
source-tug = a joint that holds a tug, polarity by meter
source-square = wire along the body and across it, |dx| + |dy|, and the way up and over once
source-lithium-cell =
    data sheets of lithium iron phosphate cells, 3.2 V nominal, 3.65 V at the end of a charge
source-lithium-rested =
    data sheets of lithium iron phosphate cells, rested between 30 and 90 % full 3.29 to 3.34 V, so four cells read about
    13.3 V
source-lead-cell =
    charging instructions for lead-acid batteries, up to 2.67 V a cell equalizing a flooded one: 16 V for six
source-table-8 = NEC (NFPA 70), chapter 9, table 8
source-table-8-note = NEC (NFPA 70), chapter 9, table 8, note 2
source-coefficient = IEC 60287-1-1, table 1, copper
source-copper = IEC 60028, 8.89 g/cm³ at 20 °C
source-wall = UL 1426, insulation thickness
source-table-5 = 33 CFR 183.425, table 5
source-blade = ISO 8820-3, type C ratings
source-blade-one = ISO 8820-3, type C ratings, 1 A
source-continuous = NEC (NFPA 70), article 100
source-colors = ABYC E-11, table XIV
source-branch-colors = ABYC E-11, table XV
source-interrupt = ABYC E-11, ampere interrupting capacity
source-breaking = ISO 8820-3, scope, breaking capacity 1000 A
source-chassis = NEC (NFPA 70), 552.10(B)(1) exception, park trailers
source-bonding = NEC (NFPA 70), 552.10(C)(4), park trailers
source-protection = ISO 10133, 7.3 to 7.5
source-below-50 = 33 CFR 183.455, (c), less than 50 V
