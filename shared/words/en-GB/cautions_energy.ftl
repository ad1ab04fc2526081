# What batteries, chargers and shore power can do to someone: where the British trade has terms of its own.

fuse-at-source =
    Fuse every unearthed conductor at its source: within 7 in (175 mm) of the battery, or 40 in (1 m) where the conductor is
    in a sheath or enclosure. A cable fed from both ends, by a charger or an alternator, has a fuse at both. (A rule for
    boats, followed here.)
shore-power =
    Shore power and mains wiring are the work of a licensed or qualified electrician, with a residual-current device of 30 mA.
inverter-bond =
    An inverter's output has exactly one bond between neutral and earth: at the inverter while it supplies, and none besides
    the grid's own on shore power. With none, no residual-current device trips; with two, it trips for no fault. The
    manufacturer says how; it is the electrician's work.
protective-conductor =
    If the earth conductor of the shore cable is broken, the whole body can become live unnoticed: have cable and bonding
    tested.
