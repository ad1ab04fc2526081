# What batteries, chargers and shore power can do to someone.

fuse-at-source =
    Fuse every ungrounded conductor at its source: within 7 in (175 mm) of the battery, or 40 in (1 m) where the conductor is
    in a sheath or enclosure. A cable fed from both ends, by a charger or an alternator, has a fuse at both. (A rule for
    boats, followed here.)
fuse-protects-cable =
    A fuse protects the cable: its rating is no higher than the cable's ampacity, bundling and heat counted in. (Stricter
    than the rule for boats below 50 V, 33 CFR 183.455(c), which allows half as much again.)
interrupting-rating =
    A battery's fuse must have an interrupt rating above the battery's short-circuit current; ordinary blade fuses interrupt
    1000 A only.
shore-power =
    Shore power and AC wiring are the work of a licensed or qualified electrician, with a ground-fault circuit interrupter or a
    residual-current device of 30 mA.
inverter-bond =
    An inverter's output has exactly one bond between neutral and ground: at the inverter while it supplies, and none besides
    the grid's own on shore power. With none, no ground-fault or residual-current device trips; with two, it trips for no
    fault. The manufacturer says how; it is the electrician's work.
alternator =
    Lithium is never charged straight from an alternator: it draws all the alternator can give until that burns out. A DC-DC
    charger between them limits the current.
protective-conductor =
    If the shore cord's grounding conductor is broken, the whole body can become live unnoticed: have cord and bonding tested.
lead-acid =
    Lead-acid: secured, in a box that is vapor-tight toward the living space, vented to the outside through openings of at
    least 1.7 in² (1100 mm²) at top and bottom.
lithium =
    Lithium: certified cells with a battery management system that warns before it disconnects, installed as the manufacturer
    says.
lithium-frost =
    Do not charge lithium iron phosphate cells below 0 °C (32 °F) unless they are rated for it.
battery-restraint =
    Hold a battery so that it moves no more than 10 mm (3/8 in) under twice its weight in a boat; in a vehicle a crash pulls
    many times harder: bolt it to the body as its manufacturer or the vehicle's says. Cover its terminals: a tool across them
    welds itself fast.
chassis-return =
    Use the chassis as a return only where the vehicle's manufacturer allows it, and bond the battery to it with at least
    8 AWG, and no smaller than the battery's unbonded lead. (A rule for park trailers; for vans the manufacturer and the local
    rules for motor homes, such as EN 1648-2 or ANSI/RVIA LV, say more.)
estimate = These are estimates and certify nothing; local code and the manufacturers' instructions come first.
source-estimate = estimates defer to local code and manufacturers
