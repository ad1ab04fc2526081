//! What can hurt someone, or ruin the job, when boards and strips are cut and put up.

use crate::source::Source;

/// One caution and where it comes from.
pub type Caution = (&'static str, Source);

/// What lies behind the lining.
pub static LOOK_BEHIND: Caution = (
    "Before you screw, look behind the wall and above the ceiling for wires, fuel and brake \
     lines and airbags; keep screws too short to reach them and the outer skin.",
    Source::from_memory("Vehicle body builders' guides", "drilling"),
);

/// Dust and eyes.
pub static DUST: Caution = (
    "Drill and cut outdoors or with extraction, and wear a dust mask and eye protection; under \
     a ceiling everything falls into your face.",
    Source::common_practice(
        "extraction, dust mask and eye protection; wood dust has an exposure limit in the NIOSH Pocket Guide",
    ),
);

/// Saws.
pub static SAW: Caution = (
    "Support both sides of every cut so that it cannot close on the blade, keep your hands off \
     the line, and let the saw stop before you move the offcut.",
    Source::common_practice("support the work on both sides of the cut"),
);

/// Cut to what is there.
pub static MEASURE_AGAIN: Caution = (
    "Cut and fit one piece of each kind before you cut the rest: a body is rarely straight.",
    Source::common_practice("try one before cutting all"),
);

/// A lining over a bed or a seat.
pub static OVERHEAD: Caution = (
    "What hangs overhead must stay up in a crash and on rough roads: screw into steel or solid \
     framing, count only screws that surely bear, and never on adhesive alone.",
    Source::common_practice("overhead parts are held by screws, not by glue"),
);

/// Holes in steel rust.
pub static DRILLED_STEEL: Caution = (
    "Drilled steel rusts: brush away every chip, and prime and paint the edges of the holes.",
    Source::common_practice("bare edges of holes in steel are primed and painted"),
);
