# Why a text cannot be read as a measure or a number.

## What is wrong, and a right example.
refused = { $problem }, e.g. { $example }

empty = nothing is entered here; { $asked } is needed
too-long = this is longer than { $most } characters; write { $asked } more briefly
unseen-character = there is an invisible character in this; type it again by hand
no-meaning = "{ $typed }" means nothing in { $asked }; leave it out
unknown-unit = "{ $typed }" is not a unit for { $asked }; use { $units }
unknown-times = "{ $typed }" is not a unit for { $asked }; to multiply write *, as a unit use { $units }
unit-case = this could be { $one } or { $other }; use capital and small letters as shown
percentage = that is a percentage; { $asked } is needed
mass-for-volume = that is a mass; a volume is needed, fl oz if you mean fluid ounces
other-dimension = that is { $found }; { $asked } is needed
no-unit = the unit is missing; put one after the number: { $units }
unit-missing = some numbers have a unit and some have none; give each number its unit
two-units = one number has two units; keep one
not-a-number = "{ $typed }" is not a number; use digits with one decimal point
comma = "{ $typed }" could be { $thousands } or { $decimal }; write the one you mean
hyphen =
    this hyphen could join or subtract; write 90 1/2 or 7 ft 6 in to join, and 90 - (1/2) or 7 ft - 6 in, with a
    space on both sides, to subtract
two-numbers = there are two numbers side by side; put a +, - or * between them, or close the gap
two-numbers-length =
    there are two numbers side by side; write 5 ft 4 1/2 in for feet and inches, put a +, - or * between them, or
    close the gap
two-fractions = there are two fractions in a row; put a + or a * between them, or parentheses around one
improper-fraction = the fraction after a whole number must be less than one; write the whole number and the rest
side-by-side =
    measures side by side must go from whole larger units to smaller ones; otherwise put a + between them
division-by-zero = this divides by zero; divide by another number
measure-times-measure = a measure times a measure is not { $asked }; multiply by a plain number
division-by-measure = this divides by a measure; divide by a plain number
temperature-arithmetic = temperatures cannot be added or multiplied; write one temperature
below-absolute-zero = that is colder than absolute zero (-273.15 C, -459.67 F); write a temperature above it
nesting = there are too many parentheses inside each other; use fewer
parenthesis = a parenthesis has no partner; close it or leave it out
unfinished = a number is missing; write it or leave out the rest
number-expected = a number is missing at "{ $typed }"; write it there
unexpected = "{ $typed }" does not belong here; leave it out
out-of-range = that is too large; write { $asked } that makes sense

## What can be measured, each with its article and a right example.
length = a length
    .example = 90 1/2 in
area = an area
    .example = 120 ft2
volume = a volume
    .example = 1.5 gal
mass = a mass
    .example = 85 lb
time = a time
    .example = 25 min
temperature = a temperature
    .example = 25 C or 77 F
voltage = a voltage
    .example = 12.8 V
current = a current
    .example = 4.5 A
resistance = a resistance
    .example = 48 ohm
power = a power
    .example = 60 W
energy = an energy
    .example = 1280 Wh
charge = a charge
    .example = 100 Ah
spread-rate = a spread rate
    .example = 400 ft2/gal
density = a density
    .example = 1.1 kg/l
mass-per-area = a mass per area
    .example = 6.5 kg/m2
mass-per-length = a mass per length
    .example = 0.9 kg/m
conductivity = a conductivity
    .example = 0.034 W/m/K
u-value = a U-value
    .example = 0.9 W/m2/K
thermal-resistance = a thermal resistance
    .example = 0.13 m2K/W
flow = a flow
    .example = 15 m3/h
resistance-per-length = a resistance per length
    .example = 0.0135 ohm/m
luminous-flux = a luminous flux
    .example = 240 lm
illuminance = an illuminance
    .example = 150 lx
angle = an angle
    .example = 43 deg
force = a force
    .example = 120 lbf
pressure = a pressure
    .example = 1013 hPa
speed = a speed
    .example = 60 mph
plain-number = a plain number
    .example = 12
