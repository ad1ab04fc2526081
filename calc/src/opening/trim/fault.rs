//! What can be wrong with a trim or its readings, and how it is said.

use std::fmt;

use uom::si::f64::Length;
use uom::si::length::millimeter;

use super::READINGS_AGREE_MM;
use crate::coating::range::OutOfRange;
use crate::quantity::{Style, UnitSystem};
use crate::words::{Arg, Msg, trim as words};

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
    /// The fault as a message; `corner` gives the name of a corner.
    pub fn said(&self, corner: impl Fn(usize) -> Arg) -> Msg {
        match *self {
            Self::NoCorners => words::NO_CORNERS.into(),
            Self::NoReading { corner: at } => words::NoReading { corner: corner(at) }.into(),
            Self::TallerFlangeNeeded { corner: at, short_by } => {
                words::TooShort { corner: corner(at), by: Arg::short(short_by) }.into()
            }
            Self::ReadingsDisagree { corner: at, standoff, from_depth } => words::Disagree {
                corner: corner(at),
                standoff: Arg::short(standoff),
                from_depth: Arg::short(from_depth),
                within: Arg::short(Length::new::<millimeter>(READINGS_AGREE_MM)),
            }
            .into(),
            Self::NothingToCut => words::NOTHING_TO_CUT.into(),
            Self::TooLittleLeft { corner: at, keep, least } if least.value > 0.0 => {
                let (keep, least) = (Arg::short(keep), Arg::short(least));
                words::TooLittleLeft { corner: corner(at), keep, least }.into()
            }
            Self::TooLittleLeft { corner: at, .. } => {
                words::NothingLeft { corner: corner(at) }.into()
            }
            // All of a trim's measures are checked in millimeters.
            Self::Range { range, .. } => {
                let [value, least, most] = [range.value, range.least, range.most]
                    .map(|mm| Arg::short(Length::new::<millimeter>(mm)));
                words::OutOfRange { value, least, most }.into()
            }
        }
    }
}

/// In English and millimeters, with corners by their numbers: for tests and scripts.
impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let named = |corner| words::Corner { number: corner + 1 };
        let said = self.said(|corner| Msg::from(named(corner)).into());
        f.write_str(&Style::new(UnitSystem::Metric).say(said))
    }
}
