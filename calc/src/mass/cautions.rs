//! What overloading does, and whose figures come first.

use crate::source::Source;
use crate::words::Phrase;

/// A caution and where it comes from.
pub type Caution = (Phrase, Source);

/// The total can be right and an axle wrong.
pub const WEIGH_EACH_AXLE: Caution = (
    Phrase::Written(
        "These are sums, not a weighing. Before you drive off weigh each axle, and where you can each wheel, with \
     everything and everyone aboard, fuel and water full: a vehicle below its gross limit can still overload one \
     axle, one side or one tire.",
    ),
    Source::common_practice("each axle weighed as it is driven"),
);

/// What the ratings are.
pub const RATINGS: Caution = (
    Phrase::Written(
        "The limits are those on the vehicle's plate: gross vehicle weight for the whole, gross axle weight for one axle, \
     measured where its tires meet the ground. Tires and rims have limits of their own, at the pressure on the plate.",
    ),
    Source::transcribed("49 CFR 571.3", "definitions"),
);

/// Water is heavy.
pub const WATER: Caution = (
    Phrase::Written(
        "Water moves from the fresh tank to the waste tank: count whichever loads an axle more. Where you fill up before \
     you empty the waste tank, count both full.",
    ),
    Source::common_practice("both tanks counted as they are driven"),
);

/// On the road.
pub const ON_THE_ROAD: Caution = (
    Phrase::Written(
        "Nothing heavy loose or behind the rear axle on the road: load there lifts the front axle, and steering and \
     braking go with it. Bolt or strap everything for a hard stop. An overloaded vehicle is not driven.",
    ),
    Source::common_practice("load held, low and between the axles"),
);

/// What to show beside axle loads.
pub static AXLES: [Caution; 4] = [WEIGH_EACH_AXLE, RATINGS, ON_THE_ROAD, WATER];
