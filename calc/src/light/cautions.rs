//! What cutting lamps into a ceiling can do to someone.

use crate::source::Source;
use crate::words::Phrase;

/// A caution and where it comes from.
pub type Caution = (Phrase, Source);

/// What is above the board.
pub const LOOK_ABOVE: Caution = (
    Phrase::Written(
        "Before you cut a hole look above the board for wires, ribs, airbags and the roof's skin, and drill a small hole \
     first.",
    ),
    Source::from_memory("Vehicle body builders' guides", "drilling"),
);

/// Dust and splinters overhead.
pub const OVERHEAD: Caution = (
    Phrase::Written(
        "Cutting overhead brings dust into eyes and lungs: wear goggles and a dust mask.",
    ),
    Source::common_practice("goggles and a dust mask where dust falls on you"),
);

/// Lamps get warm.
pub const WARM_LAMPS: Caution = (
    Phrase::Written(
        "A recessed lamp needs air behind it: keep foam and wool off it unless its maker allows them.",
    ),
    Source::common_practice("recessed lamps kept clear of insulation"),
);

/// Fuse and gauge.
pub const FUSED_CIRCUIT: Caution = (
    Phrase::Written(
        "Fuse the lamps' circuit at its source, by the circuit sheet; mains lamps are the work of a licensed or qualified \
     electrician.",
    ),
    Source::transcribed("33 CFR 183.455; NEC 551.40", ""),
);

/// Light is an estimate.
pub const DIRECT_LIGHT: Caution = (
    Phrase::Written(
        "The map is direct light from even beams, an estimate: linings, dirt and age of the lamps change it.",
    ),
    Source::common_practice("estimates defer to the maker's photometry"),
);

/// What to show beside lamps.
pub static LIGHTS: [Caution; 5] = [LOOK_ABOVE, OVERHEAD, WARM_LAMPS, FUSED_CIRCUIT, DIRECT_LIGHT];
