//! What overloading does, and whose figures come first.

use crate::source::Source;

/// A caution and where it comes from.
pub type Caution = (&'static str, Source);

/// The total can be right and an axle wrong.
pub const WEIGH_EACH_AXLE: Caution = (
    "A vehicle below its gross limit can still overload one axle: weigh each axle with everything and everyone aboard.",
    Source::transcribed("truck makers' body builder manuals", "appendix B, weight distribution"),
);

/// What the ratings are.
pub const RATINGS: Caution = (
    "The limits are those on the vehicle's plate: gross vehicle weight for the whole, gross axle weight for one axle, \
     measured where its tires meet the ground.",
    Source::transcribed("49 CFR 571.3", "definitions"),
);

/// Water is heavy.
pub const WATER: Caution = (
    "Count the fresh tank full or the waste tank full, not both: the water moves from one to the other.",
    Source::transcribed("NHTSA interpretation letters", "aiam1610, load of recreational vehicles"),
);

/// What to show beside axle loads.
pub static AXLES: [Caution; 3] = [WEIGH_EACH_AXLE, RATINGS, WATER];
