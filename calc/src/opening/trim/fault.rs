//! What can be wrong with a trim or its readings, in words.

use std::fmt;

use uom::si::f64::Length;
use uom::si::length::millimeter;

use super::READINGS_AGREE_MM;
use crate::coating::range::OutOfRange;

/// What is wrong with a trim or its readings.
#[derive(Clone, Debug, PartialEq)]
pub enum Fault {
    /// There is no corner.
    NoCorners,
    /// A corner has no reading.
    NoReading {
        /// The corner, counted from 0.
        corner: usize,
    },
    /// The ceiling is farther from the roof frame than the trim is high.
    TallerFlangeNeeded {
        /// The corner, counted from 0.
        corner: usize,
        /// By how much the trim is short.
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
    /// The flange meets the ceiling all round: nothing must be cut.
    NothingToCut,
    /// The trim would be left too low to be held; the body is out of level, or the ceiling
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
        /// The corner, counted from 0; none for what belongs to the whole trim.
        corner: Option<usize>,
        /// What is outside.
        range: OutOfRange,
    },
}

impl Fault {
    /// The fault in words, with corners and lengths written as the reader knows them.
    pub fn told(
        &self,
        corner: impl Fn(usize) -> String,
        length: impl Fn(Length) -> String,
    ) -> String {
        match *self {
            Self::NoCorners => {
                "no corner is given; give all of them, in order round the opening".to_owned()
            }
            Self::NoReading { corner: at } => format!(
                "{} has no reading; give the standoff (flange to ceiling) or the depth (roof frame to \
                 ceiling)",
                corner(at)
            ),
            Self::TallerFlangeNeeded { corner: at, short_by } => format!(
                "at {} the trim is {} too low to reach from the ceiling to the roof frame; check \
                 the reading, or get a taller trim",
                corner(at),
                length(short_by)
            ),
            Self::ReadingsDisagree { corner: at, standoff, from_depth } => format!(
                "at {} the standoff reads {}, height less depth makes {}; they must agree within \
                 {}: measure both again",
                corner(at),
                length(standoff),
                length(from_depth),
                length(Length::new::<millimeter>(READINGS_AGREE_MM))
            ),
            Self::NothingToCut => {
                "the flange meets the ceiling at every corner, so nothing must be \
                                   cut; if it does not meet it, measure again"
                    .to_owned()
            }
            Self::TooLittleLeft { corner: at, keep, least } => {
                let needed = if least.value > 0.0 { length(least) } else { "some".to_owned() };
                format!(
                    "at {} only {} of the trim would be left, {needed} must be; it cannot \
                     follow so shallow or so uneven a ceiling",
                    corner(at),
                    length(keep)
                )
            }
            Self::Range { corner: Some(at), range } => format!("{}: {range}", corner(at)),
            Self::Range { corner: None, range } => range.to_string(),
        }
    }
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let tenths = |length: Length| (length.get::<millimeter>() * 10.0).round() / 10.0;
        f.write_str(&self.told(
            |corner| format!("corner {}", corner + 1),
            |length| format!("{} mm", tenths(length)),
        ))
    }
}
