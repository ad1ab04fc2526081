//! What batteries, panels and shore power can do to someone.

use crate::source::Source;

/// A caution and where it comes from.
pub type Caution = (&'static str, Source);

/// A fuse at the source.
pub const FUSE_AT_SOURCE: Caution = (
    "Fuse every ungrounded conductor at its source: within 7 in (175 mm) of the battery, or 40 in (1 m) where the \
     conductor is in a sheath or enclosure.",
    Source::transcribed("33 CFR 183.455; ABYC E-11", "11.10"),
);

/// The fuse protects the cable.
pub const FUSE_PROTECTS_CABLE: Caution = (
    "A fuse protects the cable: its rating lies no higher than the cable carries, bundling and heat counted in.",
    Source::transcribed("33 CFR 183.455(c); NEC 240.4", ""),
);

/// A battery fuse must break a short circuit.
pub const INTERRUPTING_RATING: Caution = (
    "A battery's fuse must be able to break its short-circuit current; ordinary blade fuses break 1000 A only.",
    Source::transcribed("ABYC E-11; ISO 8820-3", "interrupting capacity"),
);

/// Shore power is for the licensed.
pub const SHORE_POWER: Caution = (
    "Shore power and mains are the work of a licensed or qualified electrician, with a residual-current device of \
     30 mA or a ground-fault circuit interrupter.",
    Source::transcribed("IEC 60364-7-708 and -721; NEC 551.40", "additional protection"),
);

/// A broken protective conductor makes the body live.
pub const PROTECTIVE_CONDUCTOR: Caution = (
    "Where the shore lead's protective conductor is broken, the whole body can become live unnoticed: have lead and \
     bonding tested.",
    Source::transcribed("BS 7671", "guidance on caravans"),
);

/// Lead-acid gases.
pub const LEAD_ACID: Caution = (
    "Lead-acid: secured, in a box that is vapour-tight towards the living space, vented to the outside by openings of \
     at least 1100 mm² (1.7 in²) at top and bottom.",
    Source::transcribed("NEC (NFPA 70)", "552.10(D)"),
);

/// Lithium needs its management.
pub const LITHIUM: Caution = (
    "Lithium: certified cells with a management system that warns before it disconnects, installed as the maker says.",
    Source::transcribed("ABYC E-13", "summary"),
);

/// No charging of frozen lithium cells.
pub const LITHIUM_FROST: Caution = (
    "Do not charge lithium iron phosphate cells below 0 °C unless they are rated for it.",
    Source::transcribed("cell makers' instructions", "charging temperature"),
);

/// A battery moves and sparks.
pub const BATTERY_RESTRAINT: Caution = (
    "Hold a battery so that it moves no more than 10 mm under twice its weight, and cover its terminals: a tool \
     across them welds itself fast.",
    Source::transcribed("ISO 10133", "5.2 and 5.4"),
);

/// Chassis return.
pub const CHASSIS_RETURN: Caution = (
    "Use the chassis as a return only where the vehicle's maker allows it, and bond the battery to it with at least \
     8 AWG.",
    Source::transcribed("NEC (NFPA 70)", "552.10(B)(1) exception and (C)(4)"),
);

/// Panels in the cold.
pub const COLD_STRING: Caution = (
    "Panels give their highest voltage on a cold morning: it must stay below the controller's limit, or the controller \
     is destroyed.",
    Source::transcribed("NEC (NFPA 70)", "690.7"),
);

/// Single weeks are no monthly mean.
pub const MONTHLY_MEANS: Caution = (
    "These are monthly means of a model for panels in the open: single weeks bring much less, and so does any shade.",
    Source::common_practice("monthly means hide dark weeks"),
);

/// Estimates, not a certification.
pub const ESTIMATE: Caution = (
    "These are estimates and certify nothing; local rules and the makers' instructions come first.",
    Source::common_practice("estimates defer to local rules and makers"),
);

/// What to show beside a battery.
pub static BATTERY: [Caution; 11] = [
    FUSE_AT_SOURCE,
    FUSE_PROTECTS_CABLE,
    INTERRUPTING_RATING,
    BATTERY_RESTRAINT,
    LEAD_ACID,
    LITHIUM,
    LITHIUM_FROST,
    CHASSIS_RETURN,
    SHORE_POWER,
    PROTECTIVE_CONDUCTOR,
    ESTIMATE,
];

/// What to show beside panels.
pub static PANELS: [Caution; 4] = [COLD_STRING, FUSE_PROTECTS_CABLE, MONTHLY_MEANS, ESTIMATE];
