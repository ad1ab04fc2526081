//! What can hurt someone or start a fire in low-voltage wiring.

use super::sources;
use crate::report::Caution;
use crate::words::Phrase;

/// For every low-voltage run and circuit, the gravest first.
pub static WIRING: [Caution; 10] = [
    Caution {
        text: Phrase::Written(
            "Put the fuse in the positive at its source: at most 7 in (178 mm) of wire before \
               it, 40 in (1.02 m) where that wire is sheathed or enclosed. What lies before the \
               fuse can set the body on fire.",
        ),
        source: &sources::CFR_FUSE_PLACE,
    },
    Caution {
        text: Phrase::Written(
            "The fuse protects the wire: never fit one rated above what the thinnest wire \
               behind it may carry, and never a larger one because it blows.",
        ),
        source: &sources::FUSE_PROTECTS_CONDUCTOR,
    },
    Caution {
        text: Phrase::Written(
            "At the battery the fuse must be able to break the battery's short-circuit current, \
               thousands of amperes with lithium: look for its interrupting rating (AIC).",
        ),
        source: &sources::ABYC_INTERRUPTING,
    },
    Caution {
        text: Phrase::Written(
            "Blade fuses break no more than 1000 A: behind a battery fuse, not instead of it.",
        ),
        source: &sources::ISO_8820_3_BREAKING,
    },
    Caution {
        text: Phrase::Written(
            "Take the battery's negative off before you work, and keep metal tools, rings and \
               watches away from its terminals.",
        ),
        source: &sources::ISO_10133_BATTERY,
    },
    Caution {
        text: Phrase::Written(
            "Stranded copper only: solid wire breaks from shaking, aluminium loosens.",
        ),
        source: &sources::CFR_STRANDED_COPPER,
    },
    Caution {
        text: Phrase::Written(
            "A grommet or sleeve wherever wire crosses sheet metal, a support every 18 in \
               (450 mm), no sharp edge, nothing hot, no screw through it later.",
        ),
        source: &sources::ISO_10133_PROTECTION,
    },
    Caution {
        text: Phrase::Written(
            "Run the negative as a wire of its own; return through the chassis only where the \
               vehicle's maker allows it.",
        ),
        source: &sources::NEC_CHASSIS_RETURN,
    },
    Caution {
        text: Phrase::Written(
            "Bond the battery's negative to the chassis with 8 AWG (10 mm2) at least, and no smaller \
               than the unbonded lead. So says the NEC of park trailers; for vans and caravans look \
               up ANSI/RVIA LV or EN 1648-2 (from memory), for boats ISO 13297, which has replaced \
               ISO 10133 (from memory).",
        ),
        source: &sources::NEC_BONDING,
    },
    Caution {
        text: Phrase::Written(
            "Keep this wiring apart from mains and shore power, and leave those to a licensed \
               electrician. Local code and the makers' instructions come before these figures.",
        ),
        source: &sources::IEC_CARAVANS,
    },
];

/// Where wires are joined.
pub static SPLICES: [Caution; 2] = [
    Caution {
        text: Phrase::Written(
            "Every splice stays within reach: none behind boards that do not come off again.",
        ),
        source: &sources::SPLICES_IN_REACH,
    },
    Caution {
        text: Phrase::Written(
            "Tug every joint, and check the polarity with a meter before a load is connected: \
               colours differ from maker to maker.",
        ),
        source: &sources::TUG_AND_MEASURE,
    },
];
