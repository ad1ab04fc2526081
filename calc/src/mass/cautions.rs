//! What overloading does, and whose figures come first.

use crate::source::Source;
use crate::words::{Phrase, cautions_mass as words};

/// A caution and where it comes from.
pub type Caution = (Phrase, Source);

/// The total can be right and an axle wrong.
pub const WEIGH_EACH_AXLE: Caution =
    (Phrase::Id(words::WEIGH_EACH_AXLE), Source::practice_of(words::WEIGH_EACH_AXLE_SOURCE));

/// What the ratings are.
pub const RATINGS: Caution =
    (Phrase::Id(words::RATINGS), Source::transcribed("49 CFR 571.3", "definitions"));

/// Water is heavy.
pub const WATER: Caution = (Phrase::Id(words::WATER), Source::practice_of(words::WATER_SOURCE));

/// On the road.
pub const ON_THE_ROAD: Caution =
    (Phrase::Id(words::ON_THE_ROAD), Source::practice_of(words::ON_THE_ROAD_SOURCE));

/// What to show beside axle loads.
pub static AXLES: [Caution; 4] = [WEIGH_EACH_AXLE, RATINGS, ON_THE_ROAD, WATER];
