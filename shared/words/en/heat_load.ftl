title = Heater and cooler
purpose = See how much heat it takes to keep the body warm on the coldest night, and cool at the hottest noon.

surfaces = The body's surfaces
    .help = Floor, roof and walls as measured on the body page. Leave blank if you add all parts yourself.
walls = Insulation of the walls
    .help = The insulation sheet of all four walls; the windows below are taken off.
roof = Insulation of the roof
    .help = Left blank: built like the walls.
floor = Insulation of the floor
    .help = Left blank: built like the walls.
length = Length inside
    .help = Front wall to rear wall.
width = Width inside
    .help = Left wall to right wall.
height = Height inside
    .help = Floor to ceiling.
openings-u = U value of roof openings
    .help = The body's hatches and vents: a single sheet of plastic about 6 W/m2/K, a double dome 3.
windows = Windows
    .row = window
    .help = Taken off the walls of the body; the sun through them counts at noon.
window-label = Window
area = Area
    .help = Length times height or width, inside.
window-u = U value
    .help = Single glass about 5.6 W/m2/K, double acrylic 3, with a thick cover 2.
sun-percent = Share of the sun let in
    .help = SHGC (g value) of the glass: clear 85, tinted 60, behind a bright cover outside 15.
lit-percent = Share of it in the sun
    .help = At the hottest noon; windows on the shaded side count for nothing.
parts = Parts you add
    .row = part
    .help = Added to the body's surfaces where those are given; otherwise everything that heat goes through.
label = Part of the body
u-or-sheet = U value
u = U value
    .help = From an insulation sheet or a data sheet; single glass about 5.6 W/m2/K, bare steel 5.9.
sheet = Insulation sheet
    .help = Takes the U value from there and follows it.
fresh-air = Fresh air
    .help = 9 cfm (15 m3/h) for each sleeper; more while you cook.
inside-temperature = Temperature inside
    .help = As warm as you want it on that night.
outside-temperature = Temperature outside
    .help = The coldest night you will stay in it.
gains = Heat given off inside
    .help = A sleeper gives off about 70 W, a fridge what it draws; the sun through windows is added below.
heater = The heater you have in mind
output = Rated heat output
    .help = On its label; 1 kW is 3412 Btu/h.
draw = Electricity it draws
    .help = Fan and pump of a fuel heater on high; an electric heater draws all its heat.
noon = The hottest noon
    .help = Fill in to size a cooler too.
sun-w-m2 = Sun on the glass at noon
    .help = 600 on glass that faces the summer sun; a roof window sees up to 950.
performance = Cooler's coefficient of performance
    .help = Cooling power over power drawn, from its data sheet; an EER divided by 3.412.

window-number = window { $number }
part-number = part { $number }
the-floor = floor
the-roof = roof
the-walls = walls
the-openings = roof openings
air = fresh air
given-off = given off inside
to-supply = to be supplied

windows-too-large = the windows are larger than all four walls ({ $around }): check their areas
bad-area = surface { $number }: the area must be from 0 to 10 000 m2
bad-u = surface { $number }: the U value must be from 0 to 20 W/m2/K; bare steel has 5.9
bad-fresh-air = the fresh air must be from 0 to 10 000 m3/h
bad-inside = the inside temperature must be from -60 to 80 C
bad-outside = the outside temperature must be from -60 to 80 C
bad-gains = the heat given off inside, with the sun through the windows, must be from 0 to 100 000 W

heating = Heating needed
cooling = Cooling needed
heating-noon = Heating needed at noon
cooling-noon = Cooling needed at noon
cooler-draws = The cooler draws
    .note = while it runs

no-fresh-air = No fresh air is counted: everyone who sleeps inside needs it. Count about 9 cfm (15 m³/h) each.
most = Most is lost here: { $part }, { $heat }, { $share } of all.
heater-small =
    The heater puts out { $output } at most and cannot hold { $heat }: get a larger one, more insulation, or less
    glass.
heater-runs =
    On the coldest night the heater runs { $share } of the time and draws { $draw } while it runs: the energy sheet takes
    both from here.
denser =
    Fresh air counts as 1.2 kg/m³, as it leaves a warm room. If its flow is measured in the cold outside, the air is
    { $share } denser and takes that much more heat.
heat-up =
    This keeps a warm body warm. To heat up a cold one in reasonable time, take a heater about half again as large.
noon-left-out =
    The { $heat } at noon leaves out the sun on roof and walls and the drying of the air. Add the sun to the heat given
    off inside, and take a cooler with room to spare.
noon-sun =
    Sun on the roof at noon, as a rule of thumb: 150 W for a white roof to 450 W for a dark one, for 10 m² (108 ft²) with
    some insulation. What a cooler spends on drying the air comes on top.
noon-nobody = At noon nothing is counted for people and devices inside: a person gives off about 70 W.
to-energy = The energy sheet takes the cooler's { $power } from here; its hours are entered there.

balance = Heat out (negative: in)
    .part = Part
    .area = Area
    .night = Night
    .noon = Noon

night-picture = Coldest night: { $inside } inside, { $outside } outside
noon-picture = Hottest noon: { $inside } inside, { $outside } outside
only-picture = Heat balance: { $inside } inside, { $outside } outside
picture-words = Bars for the heat that leaves through each part, { $heat } to be supplied.
to-heat = to be heated
to-cool = to be cooled

other-unit = in the other unit
sun-through = At noon, sun through: { $window }
at-night = { $step }
at-noon = At noon: { $step }

source-transmission = Q = sum(U A) (Ti - Te), the definition of U
source-air =
    0.335 Wh/(m3 K) from air of 1.2 kg/m3, which it weighs at about 20 °C at sea level, and 1005 J/(kg K)
source-solar = the solar heat gain coefficient is heat let in over radiation on the glass
source-performance = power drawn is heat moved over the coefficient of performance
source-air-each = 9 cfm (15 m³/h) of fresh air for each sleeper
source-heat-up = half as much again to heat up a cold body
source-sun = 600 W/m² on upright glass in the summer sun
source-glass = U 5.6 W/m²K for single glass, 6 for a single plastic hatch
