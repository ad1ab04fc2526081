//! What can be wrong with a flange or its readings, in words.

use std::fmt;

use uom::si::f64::Length;
use uom::si::length::millimeter;

use crate::coating::range::OutOfRange;

/// What is wrong with a flange or its readings.
#[derive(Clone, Debug, PartialEq)]
pub enum Fault {
    /// There are not four corners.
    CornerCount {
        /// How many there are.
        count: usize,
    },
    /// A corner has no reading.
    NoReading {
        /// The corner, counted from 0.
        corner: usize,
    },
    /// The ceiling is farther from the roof frame than the flange is high.
    TallerFlangeNeeded {
        /// The corner, counted from 0.
        corner: usize,
        /// By how much the flange is short.
        short_by: Length,
    },
    /// The two readings of a corner disagree by more than 1/16 in.
    ReadingsDisagree {
        /// The corner, counted from 0.
        corner: usize,
        /// The standoff that was read.
        standoff: Length,
        /// The standoff that the depth makes: height - depth.
        from_depth: Length,
    },
    /// The rim meets the ceiling all round: nothing must be cut.
    NothingToCut,
    /// The flange would be left too low to be held; the body is out of level, or the ceiling
    /// deep, by more than it can follow.
    TooLittleLeft {
        /// The corner, counted from 0.
        corner: usize,
        /// What would be left.
        keep: Length,
        /// What must be left.
        least: Length,
    },
    /// A value is outside its range.
    Range {
        /// The corner, counted from 0; none for what belongs to the whole flange.
        corner: Option<usize>,
        /// What is outside.
        range: OutOfRange,
    },
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let mm = |length: &Length| (length.get::<millimeter>() * 10.0).round() / 10.0;
        match self {
            Self::CornerCount { count } => {
                write!(f, "{count} corners are given; give all four, in order round the opening")
            }
            Self::NoReading { corner } => write!(
                f,
                "corner {} has no reading; give the standoff (rim to ceiling) or the depth \
                 (roof frame to ceiling)",
                corner + 1
            ),
            Self::TallerFlangeNeeded { corner, short_by } => write!(
                f,
                "at corner {} the flange is {} mm too low to reach from the ceiling to the roof \
                 frame; check the reading, or get a taller flange",
                corner + 1,
                mm(short_by)
            ),
            Self::ReadingsDisagree { corner, standoff, from_depth } => write!(
                f,
                "at corner {} the standoff reads {} mm, height less depth makes {} mm; they must \
                 agree within 1.6 mm (1/16 in): measure both again",
                corner + 1,
                mm(standoff),
                mm(from_depth)
            ),
            Self::NothingToCut => f.write_str(
                "the rim meets the ceiling at all four corners, so nothing must be cut; \
                 if it does not meet it, measure again",
            ),
            Self::TooLittleLeft { corner, keep, least } => write!(
                f,
                "at corner {} only {} mm of the flange would be left, {} mm are needed; \
                 it cannot follow so shallow or so uneven a ceiling",
                corner + 1,
                mm(keep),
                if mm(least) > 0.0 { mm(least) } else { 1.0 }
            ),
            Self::Range { corner: Some(corner), range } => {
                write!(f, "corner {}: {range}", corner + 1)
            }
            Self::Range { corner: None, range } => range.fmt(f),
        }
    }
}
