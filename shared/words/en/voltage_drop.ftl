title = Voltage drop
purpose = Size the wire and the fuse for one run to one load.

draws = The load draws
power = Power of the load
    .help = On its label. Taken as constant: the load draws more current as the voltage falls.
current = Current of the load
    .help = On its label, or measured. Taken as the same at any voltage.
length = Length of the run, one way
    .help =
        Along the route of the wire, up and over, with a hand's width to spare at both ends; the way back is added here.
conductor = Wire
    .help =
        Printed on the jacket: 16 AWG, 1.5 mm2; or ohm/m of one conductor. auto takes the smallest AWG size that is enough,
        auto mm2 the smallest metric one.

## What is wrong with the wire.
no-steady = { $conductor }: { $problem }
    .would-do = { $conductor } cannot feed this load: { $problem }; { $size } would do
overheats =
    { $conductor } overheats: as laid it may carry { $ampacity }, and the load draws { $current }; split the load
    .would-do =
        { $conductor } overheats: as laid it may carry { $ampacity }, and the load draws { $current }; { $size } would do
draws-at = { $current } at { $volts }
no-fuse = no fuse fits: { $problem }

answer-wire = Wire
    .least = the smallest size that is enough
    .least-awg = the smallest size that is enough; in AWG { $other }
    .least-metric = the smallest size that is enough; in metric { $other }
    .given = as entered
answer-drop = Voltage drop
    .text = { $volts } ({ $percent })
    .arrives = { $volts } at the load
answer-fuse = Fuse at the source
    .each-end = Fuse at each end
    .hidden = not shown: { $conductor } is too thin
load-draws = the load draws { $current }
    .up-to = the load draws up to { $current }
    .takes = { $draws }; this wire takes fuses up to { $most }

lost = { $percent } is lost, and { $limit } is allowed. { $instead }
instead = { $size } is enough.
    .shorter = { $conductor } would do for { $length }.
    .both = { $size } is enough. { $conductor } would do for { $length }.
    .none = Shorten the run, or use a higher voltage.
not-shown = Not shown: { $problem }.
good = { $conductor } keeps the drop within { $limit } for runs up to { $length }, and its fuse protects it.
    .any = { $conductor } keeps the drop within { $limit } at any length, and its fuse protects it.
motors =
    Motors, compressors and inverters draw several times their running current as they start: where the maker names a
    fuse, use that one, as long as the wire takes it.
heat = Wire to buy: { $length } positive and as much negative. { $loss } is lost in it as heat.

table-awg = AWG sizes side by side
table-metric = Metric sizes side by side
head-wire = Wire
head-drop = Drop
head-longest = Longest run
head-carries = May carry
head-enough = Enough
enough = yes
    .drop = no: drop
    .current = no: current
    .both = no: drop, current
    .unknown = no: current unknown
    .unsteady = no: no steady voltage

drawing = Voltage along the run
    .words =
        Two conductors of { $conductor }, { $length } long, from the source ({ $fuse } in the positive) to the load. The
        voltage falls in a straight line from { $source } to { $load }; the limit of { $limit } is { $least }.
    .fuse = fuse { $rating }
    .source = source
    .load = load
    .at-source = { $volts } at the source
    .limit = limit { $limit }: { $least }

step-both = Both conductors
step-load = Voltage at the load
step-current = Current
step-drop = Voltage drop
step-share = Share of the source voltage
step-loss = Lost as heat
step-low = Current with the battery at its lowest
step-most = Most resistance at the limit
step-longest = Longest run, one way
