# What the wiring sheets share.

## Inputs.
source-voltage = Source voltage
    .help =
        Measured at the battery or fuse block with the loads on. Lithium iron phosphate reads about 13.3 V at rest (its
        cathode at 3.45 V a cell after 24 h, J. Jpn. Soc. Powder Powder Metallurgy 57, 725; graphite takes 0.1 V off,
        from memory) and closer to 12.8 V under load; a lead-acid battery at half charge reads 12.2 V.
low-voltage = Lowest battery voltage
    .help =
        Where the battery is cut off: a constant-power load draws the most there, and wire and fuse are sized for it.
charging-voltage = Highest charging voltage
    .help =
        Set on the charger or the alternator; fuse and holder must be rated for it. If left blank: 14.6 V for each 12.8
        V of lithium iron phosphate (3.65 V a cell), 14.8 V for each 12 V of lead-acid.
drop-limit-percent = Allowed voltage drop
    .help = 3 % for pumps, blowers, electronics and feeds to a panel; up to 10 % for cabin lights (ABYC E-11).
conductor-temperature = Temperature of the copper
    .help = Warm copper has more resistance. 30 °C (86 °F) for light loads, 50 °C (122 °F) in a hot roof.
air-temperature = Air around the wire
    .help = The hottest it gets where the wire runs; above 30 °C (86 °F) the ampacity is lower.
insulation = Insulation rating
    .help =
        Printed on the jacket: 105 °C on boat cable. If nothing is printed leave 60 °C, the lowest column of 33 CFR
        183.425 table 5: unmarked automotive or speaker wire cannot be trusted with more. Wire is bought by this rating.
in-jacket = Inside the jacket of a cable
    .help = Several conductors in one jacket: then 18 AWG or 0.75 mm2 is allowed; single wires start at 16 AWG or 1 mm2.
in-insulation = In thermal insulation
    .help =
        20 in (0.5 m) or more of it: the ampacity is halved (BS 7671 523.9). PVC in contact with polystyrene foam goes
        brittle: sleeve it.
far-source = A source at the far end too
    .help = An alternator, a DC-DC or shore charger, solar: then the wire gets a fuse at both ends.
continuous = On for three hours or more
    .help = Then the fuse is rated for at least 125 % of the current.
bundled = Conductors bundled together
    .help =
        All current-carrying conductors in one loom or sleeve: each run counts as two. From three on, the ampacity of
        each is lower.

## What is wrong with an input.
not-low-voltage =
    at 50 V and above this is no longer low voltage: it can kill, and other rules apply; leave it to a licensed
    electrician. Enter a 48 V battery by its nominal voltage, up to { $most }
charged-too-high =
    at 50 V and above this is no longer low voltage: it can kill, and other rules apply; leave it to a licensed
    electrician. These rules go up to a 48 V battery charged to { $most }
low-above-source = the lowest battery voltage cannot be above the source voltage
charging-below-source = the charging voltage cannot be below the source voltage: enter at least the source voltage
air-too-hot =
    air as hot as the insulation's rating ({ $rating }) leaves no ampacity at all: it must be cooler, or the wire's
    insulation rated higher
copper-too-cool = the copper is never cooler than the air around it: enter at least the air's temperature

## Ratings of insulation.
rating-c60 = 60 °C
rating-c75 = 75 °C
rating-c80 = 80 °C
rating-c90 = 90 °C
rating-c105 = 105 °C
rating-c125 = 125 °C
rating-c200 = 200 °C

## A conductor that was typed.
or-auto = { $problem }; or write auto for the smallest size that is enough

## Wire, fuses and lugs, as they are bought.
wire = { $size }, insulation { $rating }
    .jacket = { $size }, insulation { $rating }, in a jacket
buy-wire = wire
    .spec = { $size } stranded copper, insulation rated { $rating } or more, half positive, half negative
    .spec-jacket =
        { $size } stranded copper, insulation rated { $rating } or more, several conductors in a jacket, half positive,
        half negative
    .spec-plain = { $size }, insulation rated { $rating } or more, half positive, half negative
    .spec-plain-jacket =
        { $size }, insulation rated { $rating } or more, several conductors in a jacket, half positive, half negative
buy-fuse = fuse with holder
    .spec = { $rating }, { $volts } DC or more
buy-lug = ring lug
    .spec = { $size }, { $stud } stud

## What is said of every run and circuit.
fuse-volts =
    Fuse and holder: rated for { $rated } DC or more ({ $source }). While charging, they and every load see up to
    { $highest } ({ $who }): a lamp or device whose label does not go that high needs a regulator.
too-thin =
    { $wire } is too thin to run on its own: it is listed as a cable with several conductors in a jacket, and nothing
    else will do. On boats single wires start at 16 AWG ({ $awg }) or 1 mm2 ({ $metric }); on park trailers at 18 AWG
    ({ $trailers }). auto goes by the stricter rule.
small-wire =
    { $wire } takes no fuse above { $limit } here, the strictest of: { $most } in vehicles ({ $source }), { $other } for
    small conductors ({ $who }), and what it may carry as laid; boats may go to { $boats } ({ $boat-rule }).
stands-in =
    No table lists { $wire }: it is taken to carry what { $listed } AWG does, the nearest listed size with at least as
    much resistance at 20 °C.
carries = What the wire may carry holds for insulation rated { $rating }, { $bundle }, in { $air } air. { $look }
bundle-two = with no more than two conductors together
bundle-more = with { $count } conductors together
look-jacket = Look at the jacket: it must say { $rating } or more.
look-unmarked =
    Wire with nothing printed on it can be trusted with 60 °C; if the jacket says 105 °C, enter that: such wire may carry
    more.
far-fuses =
    With a source at each end, either one can burn the wire: a fuse at both ends, each within reach of its own source.
    Never put a lithium battery straight on an alternator: a DC-DC charger goes between them.
constant-power =
    A constant-power load draws more from a low battery: enter the lowest battery voltage, and wire and fuse are sized
    for it.

## Working.
step-table = { $conductor } at { $temperature }
    .numbers = { $conductor }, stranded
step-warmed = At { $temperature }
step-given = Resistance of one conductor
    .formula = r as entered
step-carries = { $conductor } may carry
    .as = { $conductor } may carry, as { $listed } AWG
    .numbers = insulation { $rating }, air { $air }
step-bundled = With { $count } conductors together
step-warm-air = In warm air
step-buried = In thermal insulation
step-small = Largest fuse on small wire
    .formula = If ≤ I(size)
step-fuse-least = The fuse carries at least
step-rating = Next standard rating
    .formula = If ≤ rating ≤ Iz
