title = Solar panels
purpose = See what panels bring in each month, whether it covers a day's use, and their voltage in the cold.

latitude = Latitude
    .help = Of where you park; south of the equator with a minus.
tilt = Tilt of the panels
    .help = From level: 0 is flat on the roof.
azimuth = Turned away from the equator
    .help = 0 faces the equator, 90 east or west; a flat panel has no direction.
clearness = Clearness, one or twelve
    .each = Clearness
    .help =
        Share of the sun's light that gets through in a month, January first: from 0.3 in cloudy winters to 0.7 in
        deserts; one figure stands for all months.
panels = Panels
count = Number of panels
watts = Rated power of each
    .help = On the label on its back.
voc = Open-circuit voltage of each
    .help = Voc on the label.
voc-per-c-percent = Change of that voltage, % per °C
    .help = In the data sheet, with a minus; without it the electrical code's table is used.
isc = Short-circuit current of each
    .help = Isc on the label; for the wire and the fuse of a string.
vmp = Voltage at maximum power of each
    .help = Vmp on the label; tells whether hot panels still charge.
max-series-fuse = Maximum series fuse
    .help = On the label; no string fuse may be larger.
in-series = Panels in series
    .help = Wired plus to minus in one string.
mass = Weight of each
    .help = For the weight on the buy list: from the data sheet, without brackets.
loss-percent = Losses
    .help = Dirt, heat, cables and controller together: 14 % by the usual list, more flat on a hot roof.
need-in-a-day = Needed in a day
need = Needed in a day
    .help = What a day uses.
sheet = From the energy sheet
    .help = Takes a day's use from there and follows it.
coldest = Coldest morning
    .help = The lowest temperature the panels will see in daylight.
controller-voltage = Controller's maximum voltage
    .help = The most its panel terminals take, on its label.
controller-amps = Controller's charging current
    .help = The most it gives the battery, on its label.
controller-input-amps = Most panel current it takes
    .help = The highest short-circuit current at its panel terminals, in its data sheet.
battery-voltage = Battery's nominal voltage
    .help = If left blank, it comes from the energy sheet, when the need comes from one.
hot-cells = Panels at their hottest
    .help = Flat on a roof in full sun about 70 °C (158 °F), a rule of thumb.

roof = Panels on the roof
    .help = Laid out around the roof openings on the body page.
panel-length = Panel, long side
    .help = Outside edge of the frame, with anything that sticks out.
panel-width = Panel, short side
    .help = Outside edge of the frame.
length = Roof length
    .help = The flat part; the body's inside length is a little less.
width = Roof width
    .help = The flat part, between the curves on both sides.
edge = Clear of the roof's edges
    .help = Wind gets under a panel that reaches the edge.
clearance = Clear of openings
    .help = So hatches open and flanges can be resealed.
gap = From panel to panel
    .help = Room for clamps, and for the panels to grow in the heat.
walkway = Walkway width
    .help = Kept clear front to rear, to reach hatches and clean panels.
walkway-side = Walkway runs
side-best = where it costs least
side-left = along the left edge
side-middle = down the middle
side-right = along the right edge

## What is wrong with the inputs.
clearness-count = give one figure for all months, or twelve; there are { $count }
too-many-in-series =
    { $count ->
        [one] there is only one panel; no more can be in series
       *[other] there are { $count } panels; no more than that can be in series
    }
latitude-range = the latitude must be from -90 to 90 degrees, south negative
clearness-range =
    month { $month }: the clearness must be from 0.05 to 0.85; 0.3 in cloudy winters to 0.7 in deserts is usual
ground-range = the ground's reflectance must be from 0 to 1; bare ground has 0.2, snow 0.7
tilt-range = the tilt must be from 0 (flat) to 90 degrees (upright)
azimuth-range = the azimuth must be from -180 to 180 degrees; 0 faces the equator
power-range = the panels' rated power must be from 0 to 1 000 000 W
loss-range = the losses must be from 0 to below 100 percent
open-circuit-range = the open-circuit voltage must be from 0.1 to 1000 V
coefficient-range =
    the coefficient must be from -2 to 0 percent per C; the voltage falls as the panel warms, so it is negative
coldest-range = the coldest temperature must be from -60 to 60 C
below-table =
    NEC table 690.7(A) ends at -40 C: give the manufacturer's coefficient of the open-circuit voltage instead
series-range = the panels in series must be from 1 to 100
controller-range = the controller's maximum voltage must be from 1 to 2000 V
roof-range = the roof must be from 0.1 to 30 m long and from 0.1 to 10 m wide
panel-range = a panel must be from 0.1 to 5 m long and wide
clear-range = edge and opening clearance must be from 0 to 2 m, the gap from 0 to 1 m
walkway-range = the walkway must be narrower than the roof

## Answers.
darkest = In the darkest month, { $month }
    .need = { $energy } a day needed
a-day = { $energy } a day
over-year = Over the year
    .from = from { $power }
cold-string = String on the coldest morning
    .limit = the controller takes { $limit }

## Remarks.
none-in-series =
    Even one panel exceeds the controller's limit, or 50 V, in the cold: use another controller, or other panels.
too-long = In the cold this string exceeds the controller's limit and destroys it: at most { $most } in series.
within-limit =
    The string stays below the controller's limit in the cold; up to { $most } in series would, below 50 V.
covered = On a mean day the panels cover the need in every month.
short-more =
    Too little in { $months }: in { $month } it lacks { $lacks } a day. It takes panels of { $power } in all, or
    { $lacks } a day from driving or shore power.
short-dark =
    Too little in { $months }: in { $month } it lacks { $lacks } a day. It takes { $lacks } a day from driving or shore
    power.
roof-short =
    { $proved ->
        [yes]
            The roof takes { $fits } of the { $count } panels (no layout takes more): go to fewer or smaller ones, less
            clearance, or no walkway.
       *[no]
            The roof takes { $fits } of the { $count } panels (the free area would take { $bound } if it could all be
            used): go to fewer or smaller ones, less clearance, or no walkway.
    }
roof-takes =
    { $proved ->
        [yes] The roof takes { $fits } of these panels; no layout takes more.
       *[no] The roof takes { $fits } of these panels; the free area would take { $bound } if it could all be used.
    }
both-rules =
    One panel: { $maker } by the manufacturer's figure, { $table } by the electrical code's table; the manufacturer's
    comes first.
by-table =
    The voltage at { $temperature } is by the electrical code's table for crystalline silicon; the manufacturer's own
    figure comes first.
uneven = { $count } panels do not make full strings of { $series }.
outside-fit = The clearness of { $months } is outside the 0.3 to 0.8 that the method was fitted to.

input-over =
    In bright sun the strings can bring { $array }, and the controller's panel terminals take { $limit }: fewer strings in
    parallel, or another controller.
input-unknown =
    Not shown: whether the controller takes the panels' current. Enter Isc and the most panel current it takes.
output-over =
    The panels can bring { $output } at the battery, and the controller gives { $limit }: an MPPT controller throttles to
    that, a PWM one is overloaded. Use a larger one, or fewer panels.
output-unknown =
    Not shown: whether the controller's charging current is enough. Enter it and the battery's voltage.
hot-low =
    Hot panels bring { $hot }, and an MPPT controller needs 5 V above the battery, { $needed } at the end of a charge: it
    may not start, or not fill the battery in summer. More in series where the cold string stays below 50 V, or panels of
    a higher voltage; a PWM controller does without.
hot-unknown = Not shown: whether hot panels still charge. Enter Vmp and the battery's voltage.
cold-unknown =
    Not shown: whether the cold string stays below the controller's limit. Enter Voc, the coldest morning and the
    controller's maximum voltage.
fifty-volts =
    In the cold a string is at { $volts }: from 50 V on it can kill, and other rules apply. Fewer in series, or leave the
    wiring to a licensed electrician.
string-wire = Wire of each string: rated for { $current } or more.
string-fuse =
    { $strings } strings in parallel: one { $rating } PV fuse (gPV) in each, fuse and holder rated for { $volts } DC or more.
fuse-not-shown = { $strings } strings in parallel need a fuse each. Not shown: { $why }.
why-cold = enter the open-circuit voltage and the coldest morning, for the voltage it must break
why-licensed = from 50 V on it is for a licensed electrician to choose
why-panels = enter the panels' short-circuit current and maximum series fuse
why-rating =
    it would be { $least } or more, and the panel allows { $most }: no such fuse is made; fewer strings, or each on its own
    controller

## Buy list.
buy-panel = solar panel
buy-fuse = string fuse with holder
    .spec = { $rating } gPV, { $volts } DC or more

## The months.
mean-days = A mean day of each month
    .month = Month
    .clearness = Clearness
    .level = On the level
    .panels = On the panels
    .yield = Yield of a day
    .over = Over the need
bars = Yield of a mean day, month by month
    .words = Twelve bars, from { $least } in { $darkest } to { $most } in { $brightest }.
    .words-need =
        Twelve bars, from { $least } in { $darkest } to { $most } in { $brightest }, and a line at the need of { $need }.
    .need = dashes: needed, { $need }
closes = What closes the gap
    .month = Month
    .lacks = Short a day
    .panels = Panels in all
    .tilted = or tilted
    .only = or use only
    .bridges = Full battery covers
    .charge = or charge, each day
    .charger = or { $charger }, each day
too-dark = too dark
panels-needed = { $panels }
    .over = { $panels }; the roof takes { $fits }
tilted =
    { $enough ->
        [yes] { $tilt }: { $energy }, enough
       *[no] { $tilt }: { $energy }, not enough
    }
days = { $days } days

## Working.
step-outside = { $month }: outside the atmosphere
step-level = { $month }: on the level
step-diffuse = { $month }: share from the whole sky
step-panels = { $month }: on the panels, turned { $azimuth }; R_b is what they get of the direct light
step-yield = { $month }: yield of a day
step-cold-panel = Panel on the coldest morning
step-cold-string = String on the coldest morning
step-wire = The wire of a string carries at least
step-roof = Panels that fit on the roof; at most free area A_0 over panel area A_1
    .numbers = { $length } x { $width } each, { $gap } apart, { $edge } clear of edges
    .result = { $fits } of at most { $bound }

## The roof.
roof-drawing = Panels on the roof, from above
    .openings = Panels on the roof, from above; { $openings }
    .opening = { $letter } { $name }
    .words =
        The roof, { $length } x { $width }, its front on the left: { $used } of { $count } panels laid out, room for { $more }
        more.

## Sources.
source-layout =
    rows of equal panels between cuts at the openings, the best by dynamic programming; no more than free area over panel
    area
source-clear = panels 50 mm clear of edges and openings, 20 mm apart
