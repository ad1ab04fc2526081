//! What batteries, panels and shore power can do to someone.

use crate::source::Source;
use crate::words::{Phrase, cautions_solar as words};

/// A caution and where it comes from.
pub type Caution = (Phrase, Source);

/// A fuse at the source.
pub const FUSE_AT_SOURCE: Caution = (
    Phrase::Written(
        "Fuse every ungrounded conductor at its source: within 7 in (175 mm) of the battery, or 40 in (1 m) where the \
     conductor is in a sheath or enclosure. A cable that is fed from both ends, by a charger or an alternator, has a \
     fuse at both. (A rule for boats, followed here.)",
    ),
    Source::transcribed("33 CFR 183.455; ABYC E-11", "11.10"),
);

/// The fuse protects the cable.
pub const FUSE_PROTECTS_CABLE: Caution =
    (Phrase::Id(words::FUSE_PROTECTS_CABLE), Source::transcribed("NEC (NFPA 70)", "240.4"));

/// A battery fuse must break a short circuit.
pub const INTERRUPTING_RATING: Caution = (
    Phrase::Written(
        "A battery's fuse must be able to break its short-circuit current; ordinary blade fuses break 1000 A only.",
    ),
    Source::transcribed("ABYC E-11 (boats); ISO 8820-3 (vehicles)", "interrupting capacity"),
);

/// Shore power is for the licensed.
pub const SHORE_POWER: Caution = (
    Phrase::Written(
        "Shore power and mains are the work of a licensed or qualified electrician, with a residual-current device of \
     30 mA or a ground-fault circuit interrupter.",
    ),
    Source::transcribed("IEC 60364-7-708 and -721; NEC 551.40", "additional protection"),
);

/// One bond between neutral and ground.
pub const INVERTER_BOND: Caution = (
    Phrase::Written(
        "An inverter's output has exactly one bond between neutral and ground, at the inverter while it feeds, and none \
     beside the grid's own on shore power: without it no residual-current device trips, with two it trips for no \
     fault. Its maker says how; it is the electrician's work.",
    ),
    Source::from_memory(
        "NEC (NFPA 70)",
        "250.30 and 551.54: bonding of a separately derived source",
    ),
);

/// Lithium on an alternator.
pub const ALTERNATOR: Caution = (
    Phrase::Written(
        "Lithium is never charged straight from an alternator: it draws all that the alternator can give until that burns \
     out. A DC-DC charger between them limits the current.",
    ),
    Source::from_memory("battery makers' installation instructions", "charging from an alternator"),
);

/// A broken protective conductor makes the body live.
pub const PROTECTIVE_CONDUCTOR: Caution = (
    Phrase::Written(
        "Where the shore lead's protective conductor is broken, the whole body can become live unnoticed: have lead and \
     bonding tested.",
    ),
    Source::transcribed("BS 7671", "guidance on caravans"),
);

/// Lead-acid gases.
pub const LEAD_ACID: Caution = (
    Phrase::Written(
        "Lead-acid: secured, in a box that is vapour-tight towards the living space, vented to the outside by openings of \
     at least 1100 mm² (1.7 in²) at top and bottom.",
    ),
    Source::transcribed("NEC (NFPA 70)", "552.10(D) (park trailers)"),
);

/// Lithium needs its management.
pub const LITHIUM: Caution = (
    Phrase::Written(
        "Lithium: certified cells with a management system that warns before it disconnects, installed as the maker says.",
    ),
    Source::transcribed("ABYC E-13 (boats)", "summary"),
);

/// No charging of frozen lithium cells.
pub const LITHIUM_FROST: Caution = (
    Phrase::Written(
        "Do not charge lithium iron phosphate cells below 0 °C unless they are rated for it.",
    ),
    Source::from_memory(
        "makers' data sheets of lithium iron phosphate cells",
        "charging temperature",
    ),
);

/// A battery moves and sparks.
pub const BATTERY_RESTRAINT: Caution = (
    Phrase::Written(
        "Hold a battery so that it moves no more than 10 mm under twice its weight in a boat; in a vehicle a crash pulls \
     many times harder: bolt it to the body as its maker or the vehicle's says. Cover its terminals: a tool across \
     them welds itself fast.",
    ),
    Source::transcribed(
        "ISO 10133 (boats; since replaced by ISO 13297, from memory)",
        "5.2 and 5.4",
    ),
);

/// Chassis return.
pub const CHASSIS_RETURN: Caution = (
    Phrase::Written(
        "Use the chassis as a return only where the vehicle's maker allows it, and bond the battery to it with at least \
     8 AWG, and no smaller than the battery's unbonded lead. (A rule for park trailers; for vans the maker and the \
     local rules for motor homes, such as EN 1648-2 or ANSI/RVIA LV, say more.)",
    ),
    Source::from_memory("NEC (NFPA 70)", "552.10(B)(1) exception and (C)(4)"),
);

/// Panels in the cold.
pub const COLD_STRING: Caution =
    (Phrase::Id(words::COLD_STRING), Source::transcribed("NEC (NFPA 70)", "690.7"));

/// Battery first, panels last.
pub const CONTROLLER_ORDER: Caution = (
    Phrase::Id(words::CONTROLLER_ORDER),
    Source::from_memory("makers' instructions for charge controllers", "order of connection"),
);

/// Single weeks are no monthly mean.
pub const MONTHLY_MEANS: Caution =
    (Phrase::Id(words::MONTHLY_MEANS), Source::practice_of(words::SOURCE_MEANS));

/// Estimates, not a certification.
pub const ESTIMATE: Caution =
    (Phrase::Id(words::ESTIMATE), Source::practice_of(words::SOURCE_ESTIMATE));

/// What to show beside a battery.
pub static BATTERY: [Caution; 13] = [
    FUSE_AT_SOURCE,
    FUSE_PROTECTS_CABLE,
    INTERRUPTING_RATING,
    BATTERY_RESTRAINT,
    LEAD_ACID,
    LITHIUM,
    LITHIUM_FROST,
    ALTERNATOR,
    CHASSIS_RETURN,
    INVERTER_BOND,
    SHORE_POWER,
    PROTECTIVE_CONDUCTOR,
    ESTIMATE,
];

/// What to show beside panels.
pub static PANELS: [Caution; 5] =
    [COLD_STRING, CONTROLLER_ORDER, FUSE_PROTECTS_CABLE, MONTHLY_MEANS, ESTIMATE];
