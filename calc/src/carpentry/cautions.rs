//! What can hurt someone, or ruin the job, when boards and strips are cut and put up.

use crate::source::Source;
use crate::words::{Phrase, cautions_carpentry as words};

/// One caution and where it comes from.
pub type Caution = (Phrase, Source);

/// What lies behind the lining.
pub static LOOK_BEHIND: Caution = (
    Phrase::Id(words::LOOK_BEHIND),
    Source::from_memory("Vehicle body builders' guides", "drilling"),
);

/// Dust and eyes.
pub static DUST: Caution = (
    Phrase::Id(words::DUST),
    Source::common_practice(
        "extraction, dust mask and eye protection; wood dust has an exposure limit in the NIOSH Pocket Guide",
    ),
);

/// Saws.
pub static SAW: Caution =
    (Phrase::Id(words::SAW), Source::common_practice("support the work on both sides of the cut"));

/// Cut to what is there.
pub static MEASURE_AGAIN: Caution =
    (Phrase::Id(words::MEASURE_AGAIN), Source::common_practice("try one before cutting all"));

/// A lining over a bed or a seat.
pub static OVERHEAD: Caution = (
    Phrase::Id(words::OVERHEAD),
    Source::common_practice("overhead parts are held by screws, not by glue"),
);

/// Holes in steel rust.
pub static DRILLED_STEEL: Caution = (
    Phrase::Id(words::DRILLED_STEEL),
    Source::common_practice("bare edges of holes in steel are primed and painted"),
);
