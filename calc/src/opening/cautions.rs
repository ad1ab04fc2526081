//! What can hurt someone, or ruin the job, when a roof-opening trim is cut.

use crate::source::Source;
use crate::words::{Phrase, cautions_opening as words};

/// One caution and where it comes from.
pub type Caution = (Phrase, Source);

/// Which side of the line is thrown away.
pub static WHICH_SIDE_STAYS: Caution = (
    Phrase::Id(words::WHICH_SIDE_STAYS),
    Source::common_practice("hatch the waste side before cutting"),
);

/// What cannot be put back.
pub static CUT_LESS_FIRST: Caution =
    (Phrase::Id(words::CUT_LESS_FIRST), Source::common_practice("cut on the waste side"));

/// The blade.
pub static SAW_BLADE: Caution =
    (Phrase::Id(words::SAW_BLADE), Source::common_practice("fine teeth for thin stock"));

/// The eyes.
pub static EYE_PROTECTION: Caution = (
    Phrase::Id(words::EYE_PROTECTION),
    Source::from_memory("29 CFR 1926.102", "eye and face protection"),
);

/// What lies behind the lining.
pub static WHAT_LIES_BEHIND: Caution = (
    Phrase::Id(words::WHAT_LIES_BEHIND),
    Source::common_practice("load-carrying bows are not cut without a replacement"),
);

/// For the whole job.
pub static FOR_TRIM: [Caution; 5] =
    [WHICH_SIDE_STAYS, CUT_LESS_FIRST, SAW_BLADE, EYE_PROTECTION, WHAT_LIES_BEHIND];
