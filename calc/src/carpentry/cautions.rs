//! What can hurt someone, or ruin the job, when boards and strips are cut and put up.

use crate::source::Source;
use crate::words::{Phrase, cautions_carpentry as words};

/// One caution and where it comes from.
pub type Caution = (Phrase, Source);

/// What lies behind the lining.
pub static LOOK_BEHIND: Caution =
    (Phrase::Id(words::LOOK_BEHIND), Source::from_memory_of(words::SOURCE_LOOK_BEHIND));

/// Dust and eyes.
pub static DUST: Caution = (Phrase::Id(words::DUST), Source::practice_of(words::SOURCE_DUST));

/// Saws.
pub static SAW: Caution = (Phrase::Id(words::SAW), Source::practice_of(words::SOURCE_SAW));

/// Cut to what is there.
pub static MEASURE_AGAIN: Caution =
    (Phrase::Id(words::MEASURE_AGAIN), Source::practice_of(words::SOURCE_MEASURE_AGAIN));

/// A lining over a bed or a seat.
pub static OVERHEAD: Caution =
    (Phrase::Id(words::OVERHEAD), Source::practice_of(words::SOURCE_OVERHEAD));

/// Holes in steel rust.
pub static DRILLED_STEEL: Caution =
    (Phrase::Id(words::DRILLED_STEEL), Source::practice_of(words::SOURCE_DRILLED_STEEL));
