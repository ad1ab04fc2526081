//! What can hurt someone, or ruin the job, when a roof-opening trim is cut.

use crate::source::Source;
use crate::words::Phrase;

/// One caution and where it comes from.
pub type Caution = (Phrase, Source);

/// Which side of the line is thrown away.
pub static WHICH_SIDE_STAYS: Caution = (
    Phrase::Written(
        "The flange and what hangs on it stay; the strip along the roof-side edge comes off. Hatch \
     the strip before you cut, and check both numbers at every corner: the cut-off height \
     from the roof-side edge, the kept height from the flange.",
    ),
    Source::common_practice("hatch the waste side before cutting"),
);

/// What cannot be put back.
pub static CUT_LESS_FIRST: Caution = (
    Phrase::Written(
        "A trim cut too short is lost. Cut on the waste side of the line, try it, and take off \
     the rest; when in doubt cut less.",
    ),
    Source::common_practice("cut on the waste side"),
);

/// The blade.
pub static SAW_BLADE: Caution = (
    Phrase::Written(
        "Thin plastic wants a fine blade (18 teeth an inch or finer) at low speed, so that it \
     does not melt or chip; clamp it to a board along the line, with tape over it. Thin \
     metal: snips or a fine metal blade, then deburr; the edge is sharp, wear gloves when \
     handling it.",
    ),
    Source::common_practice("fine teeth for thin stock"),
);

/// The eyes.
pub static EYE_PROTECTION: Caution = (
    Phrase::Written(
        "Eye protection, all the more overhead: chips fall into the face. Cut the trim on a \
     bench, not in the opening.",
    ),
    Source::from_memory("29 CFR 1926.102", "eye and face protection"),
);

/// What lies behind the lining.
pub static WHAT_LIES_BEHIND: Caution = (
    Phrase::Written(
        "Before a saw or screw goes into the lining round the opening, look behind it: wires, the \
     vent's own leads, roof bows. Switch off and disconnect the battery. Roof bows carry \
     load: none is cut without a replacement that the body's maker allows.",
    ),
    Source::common_practice("load-carrying bows are not cut without a replacement"),
);

/// For the whole job.
pub static FOR_TRIM: [Caution; 5] =
    [WHICH_SIDE_STAYS, CUT_LESS_FIRST, SAW_BLADE, EYE_PROTECTION, WHAT_LIES_BEHIND];
