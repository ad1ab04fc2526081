//! What can hurt someone or start a fire in low-voltage wiring.

use crate::electrical::sources;
use crate::report::Caution;
use crate::words::{Phrase, cautions_wiring as words};

/// For every low-voltage run and circuit, the gravest first.
pub static WIRING: [Caution; 10] = [
    Caution { text: Phrase::Id(words::FUSE_PLACE), source: &sources::CFR_FUSE_PLACE },
    Caution { text: Phrase::Id(words::FUSE_RATING), source: &sources::FUSE_PROTECTS_CONDUCTOR },
    Caution { text: Phrase::Id(words::INTERRUPT_RATING), source: &sources::ABYC_INTERRUPTING },
    Caution { text: Phrase::Id(words::BLADE_FUSES), source: &sources::ISO_8820_3_BREAKING },
    Caution { text: Phrase::Id(words::BATTERY_NEGATIVE), source: &sources::ISO_10133_BATTERY },
    Caution { text: Phrase::Id(words::STRANDED_COPPER), source: &sources::CFR_STRANDED_COPPER },
    Caution { text: Phrase::Id(words::PROTECTION), source: &sources::ISO_10133_PROTECTION },
    Caution { text: Phrase::Id(words::CHASSIS_RETURN), source: &sources::NEC_CHASSIS_RETURN },
    Caution { text: Phrase::Id(words::BONDING), source: &sources::NEC_BONDING },
    Caution { text: Phrase::Id(words::LINE_VOLTAGE), source: &sources::IEC_CARAVANS },
];

/// Where wires are joined.
pub static SPLICES: [Caution; 2] = [
    Caution { text: Phrase::Id(words::SPLICES_IN_REACH), source: &sources::SPLICES_IN_REACH },
    Caution { text: Phrase::Id(words::TUG_AND_MEASURE), source: &sources::TUG_AND_MEASURE },
];
