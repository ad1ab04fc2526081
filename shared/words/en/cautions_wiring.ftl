# What can hurt someone or start a fire in low-voltage wiring.

fuse-place =
    Put the fuse in the positive at its source: at most 7 in (178 mm) of wire ahead of it, 40 in (1.02 m) where that
    wire is sheathed or enclosed. A short ahead of the fuse can set the body on fire.
fuse-rating =
    The fuse protects the wire: never install one rated above the ampacity of the thinnest wire behind it, and never a
    larger one because it blows.
interrupt-rating =
    At the battery the fuse must be able to interrupt the battery's short-circuit current, thousands of amps with
    lithium: look for its interrupt rating (AIC).
blade-fuses =
    Blade fuses have an interrupt rating of 1000 A at most: use them behind a battery fuse, not instead of it.
battery-negative =
    Disconnect the battery's negative before you work, and keep metal tools, rings and watches away from its terminals.
stranded-copper = Stranded copper only: solid wire breaks from vibration, and aluminum connections work loose.
protection =
    A grommet or sleeve wherever wire goes through sheet metal, a support every 18 in (450 mm), no sharp edge, nothing
    hot, no screw through it later.
chassis-return =
    Run the negative as a wire of its own; return through the chassis only where the vehicle's maker allows it.
bonding =
    Bond the battery's negative to the chassis with 8 AWG (10 mm2) or thicker, and no smaller than the unbonded lead.
    That is the NEC for park trailers; for vans and RVs look up ANSI/RVIA LV or EN 1648-2 (from memory), for boats
    ISO 13297, which has replaced ISO 10133 (from memory).
line-voltage =
    Keep this wiring apart from line voltage and shore power, and leave those to a licensed electrician. Local code and
    the makers' instructions come before these figures.

splices-in-reach = Every splice stays within reach: none behind boards that do not come off again.
tug-and-measure =
    Tug every joint, and check the polarity with a meter before a load is connected: colors differ from maker to maker.
