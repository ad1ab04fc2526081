//! What cutting lamps into a ceiling can do to someone.

use crate::source::Source;
use crate::words::{Phrase, cautions_light as words};

/// A caution and where it comes from.
pub type Caution = (Phrase, Source);

/// What is above the board.
pub const LOOK_ABOVE: Caution = (
    Phrase::Id(words::LOOK_ABOVE),
    Source::from_memory("Vehicle body builders' guides", "drilling"),
);

/// Dust and splinters overhead.
pub const OVERHEAD: Caution =
    (Phrase::Id(words::OVERHEAD), Source::practice_of(words::SOURCE_OVERHEAD));

/// Lamps get warm.
pub const WARM_LAMPS: Caution =
    (Phrase::Id(words::WARM_LAMPS), Source::practice_of(words::SOURCE_WARM_LAMPS));

/// Fuse and gauge.
pub const FUSED_CIRCUIT: Caution =
    (Phrase::Id(words::FUSED_CIRCUIT), Source::transcribed("33 CFR 183.455; NEC 551.40", ""));

/// Light is an estimate.
pub const DIRECT_LIGHT: Caution =
    (Phrase::Id(words::DIRECT_LIGHT), Source::practice_of(words::SOURCE_DIRECT_LIGHT));

/// What to show beside lamps.
pub static LIGHTS: [Caution; 5] = [LOOK_ABOVE, OVERHEAD, WARM_LAMPS, FUSED_CIRCUIT, DIRECT_LIGHT];
