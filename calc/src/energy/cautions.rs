//! What batteries, panels and shore power can do to someone.

use crate::source::Source;
use crate::words::{Phrase, cautions_energy as words, cautions_solar};

/// A caution and where it comes from.
pub type Caution = (Phrase, Source);

/// A fuse at the source.
pub const FUSE_AT_SOURCE: Caution =
    (Phrase::Id(words::FUSE_AT_SOURCE), Source::transcribed("33 CFR 183.455; ABYC E-11", "11.10"));

/// The fuse protects the cable.
pub const FUSE_PROTECTS_CABLE: Caution =
    (Phrase::Id(words::FUSE_PROTECTS_CABLE), Source::transcribed("NEC (NFPA 70)", "240.4"));

/// A battery fuse must break a short circuit.
pub const INTERRUPTING_RATING: Caution = (
    Phrase::Id(words::INTERRUPTING_RATING),
    Source::transcribed("ABYC E-11 (boats); ISO 8820-3 (vehicles)", "interrupting capacity"),
);

/// Shore power is for the licensed.
pub const SHORE_POWER: Caution = (
    Phrase::Id(words::SHORE_POWER),
    Source::transcribed("IEC 60364-7-708 and -721; NEC 551.40", "additional protection"),
);

/// One bond between neutral and ground.
pub const INVERTER_BOND: Caution = (
    Phrase::Id(words::INVERTER_BOND),
    Source::from_memory(
        "NEC (NFPA 70)",
        "250.30 and 551.54: bonding of a separately derived source",
    ),
);

/// Lithium on an alternator.
pub const ALTERNATOR: Caution = (
    Phrase::Id(words::ALTERNATOR),
    Source::from_memory("battery makers' installation instructions", "charging from an alternator"),
);

/// A broken protective conductor makes the body live.
pub const PROTECTIVE_CONDUCTOR: Caution = (
    Phrase::Id(words::PROTECTIVE_CONDUCTOR),
    Source::transcribed("BS 7671", "guidance on caravans"),
);

/// Lead-acid gases.
pub const LEAD_ACID: Caution = (
    Phrase::Id(words::LEAD_ACID),
    Source::transcribed("NEC (NFPA 70)", "552.10(D) (park trailers)"),
);

/// Lithium needs its management.
pub const LITHIUM: Caution =
    (Phrase::Id(words::LITHIUM), Source::transcribed("ABYC E-13 (boats)", "summary"));

/// No charging of frozen lithium cells.
pub const LITHIUM_FROST: Caution = (
    Phrase::Id(words::LITHIUM_FROST),
    Source::from_memory(
        "makers' data sheets of lithium iron phosphate cells",
        "charging temperature",
    ),
);

/// A battery moves and sparks.
pub const BATTERY_RESTRAINT: Caution = (
    Phrase::Id(words::BATTERY_RESTRAINT),
    Source::transcribed(
        "ISO 10133 (boats; since replaced by ISO 13297, from memory)",
        "5.2 and 5.4",
    ),
);

/// Chassis return.
pub const CHASSIS_RETURN: Caution = (
    Phrase::Id(words::CHASSIS_RETURN),
    Source::from_memory("NEC (NFPA 70)", "552.10(B)(1) exception and (C)(4)"),
);

/// Panels in the cold.
pub const COLD_STRING: Caution =
    (Phrase::Id(cautions_solar::COLD_STRING), Source::transcribed("NEC (NFPA 70)", "690.7"));

/// Battery first, panels last.
pub const CONTROLLER_ORDER: Caution = (
    Phrase::Id(cautions_solar::CONTROLLER_ORDER),
    Source::from_memory("makers' instructions for charge controllers", "order of connection"),
);

/// Single weeks are no monthly mean.
pub const MONTHLY_MEANS: Caution =
    (Phrase::Id(cautions_solar::MONTHLY_MEANS), Source::practice_of(cautions_solar::SOURCE_MEANS));

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
