//! Why a text could not be read as a measure, in words that end with a right example.

use std::fmt;

use super::dimension::{LENGTH, MASS, NUMBER, VOLUME};
use super::measure::MAX_TYPED;
use super::unit::{Dimension, Unit};
use crate::words::{Arg, Msg, any_of, reading as words};

/// A text that could not be read: what is wrong with it, and what was asked.
#[derive(Clone, Debug)]
pub struct ReadError {
    /// What is wrong.
    pub problem: Problem,
    /// What was asked.
    pub asked: &'static Dimension,
}

/// What is wrong with a text.
#[derive(Clone, Debug)]
pub enum Problem {
    /// Nothing was typed.
    Empty,
    /// More characters than a measure can need.
    TooLong,
    /// A character that no keyboard shows.
    ControlCharacter,
    /// A character that no measure has.
    Character(char),
    /// Letters that are no unit.
    UnknownUnit(String),
    /// A unit that only upper and lower case could tell from another one.
    UnitCase(&'static Unit, &'static Unit),
    /// A unit of another dimension.
    OtherDimension(&'static Dimension),
    /// A number without a unit where no field says which.
    NoUnit,
    /// Numbers without a unit among others with one that is not theirs.
    UnitMissing,
    /// Two units for the same number.
    TwoUnits,
    /// Digits and points that are no number.
    NotANumber(String),
    /// A comma that may part thousands or decimals.
    Comma(String),
    /// A hyphen that may join or subtract.
    Hyphen,
    /// Two numbers with nothing between them.
    TwoNumbers,
    /// A fraction of a fraction, or two fractions in a row.
    TwoFractions,
    /// A whole number with a fraction of one or more.
    ImproperFraction,
    /// Measures side by side that do not go from larger to smaller units.
    SideBySide,
    /// Division by nothing.
    DivisionByZero,
    /// A measure multiplied by a measure.
    MeasureTimesMeasure,
    /// Division by a measure.
    DivisionByMeasure,
    /// A sum or product with a temperature.
    TemperatureArithmetic,
    /// Colder than anything can be.
    BelowAbsoluteZero,
    /// Parentheses within parentheses beyond reason.
    Nesting,
    /// A parenthesis without its other half.
    Parenthesis,
    /// The text stops where a number should follow.
    Unfinished,
    /// Something that is no number where one should stand.
    NumberExpected(String),
    /// Something that should not be there.
    Unexpected(String),
    /// Larger than anything that fits in a rig.
    OutOfRange,
}

impl ReadError {
    /// What is said of it: what is wrong, and a right example.
    pub fn message(&self) -> Msg {
        words::Refused { problem: self.what(), example: self.asked.example }.into()
    }

    fn what(&self) -> Msg {
        let asked = self.asked.name;
        match &self.problem {
            Problem::Empty => words::Empty { asked }.into(),
            Problem::TooLong => words::TooLong { most: MAX_TYPED, asked }.into(),
            Problem::ControlCharacter => words::UNSEEN_CHARACTER.into(),
            Problem::Character(c) => words::NoMeaning { typed: c.to_string(), asked }.into(),
            Problem::UnknownUnit(typed) => {
                let (typed, units) = (typed.as_str(), self.units());
                match is_times(typed) {
                    true => words::UnknownTimes { typed, asked, units }.into(),
                    false => words::UnknownUnit { typed, asked, units }.into(),
                }
            }
            Problem::UnitCase(one, other) => {
                words::UnitCase { one: one.symbol(), other: other.symbol() }.into()
            }
            Problem::OtherDimension(found) if found.is(&NUMBER) => {
                words::Percentage { asked }.into()
            }
            Problem::OtherDimension(found) if found.is(&MASS) && self.asked.is(&VOLUME) => {
                words::MASS_FOR_VOLUME.into()
            }
            Problem::OtherDimension(found) => {
                words::OtherDimension { found: found.name, asked }.into()
            }
            Problem::NoUnit => words::NoUnit { units: self.units() }.into(),
            Problem::UnitMissing => words::UNIT_MISSING.into(),
            Problem::TwoUnits => words::TWO_UNITS.into(),
            Problem::NotANumber(typed) => words::NotANumber { typed: typed.as_str() }.into(),
            Problem::Comma(typed) => {
                let decimal = typed.replace(',', ".");
                let decimal = decimal.trim_end_matches('0').trim_end_matches('.');
                let (typed, thousands) = (typed.as_str(), typed.replace(',', ""));
                words::Comma { typed, thousands, decimal }.into()
            }
            Problem::Hyphen => words::HYPHEN.into(),
            Problem::TwoNumbers if self.asked.is(&LENGTH) => words::TWO_NUMBERS_LENGTH.into(),
            Problem::TwoNumbers => words::TWO_NUMBERS.into(),
            Problem::TwoFractions => words::TWO_FRACTIONS.into(),
            Problem::ImproperFraction => words::IMPROPER_FRACTION.into(),
            Problem::SideBySide => words::SIDE_BY_SIDE.into(),
            Problem::DivisionByZero => words::DIVISION_BY_ZERO.into(),
            Problem::MeasureTimesMeasure => words::MeasureTimesMeasure { asked }.into(),
            Problem::DivisionByMeasure => words::DIVISION_BY_MEASURE.into(),
            Problem::TemperatureArithmetic => words::TEMPERATURE_ARITHMETIC.into(),
            Problem::BelowAbsoluteZero => words::BELOW_ABSOLUTE_ZERO.into(),
            Problem::Nesting => words::NESTING.into(),
            Problem::Parenthesis => words::PARENTHESIS.into(),
            Problem::Unfinished => words::UNFINISHED.into(),
            Problem::NumberExpected(typed) => {
                words::NumberExpected { typed: typed.as_str() }.into()
            }
            Problem::Unexpected(typed) => words::Unexpected { typed: typed.as_str() }.into(),
            Problem::OutOfRange => words::OutOfRange { asked }.into(),
        }
    }

    /// The units to choose from.
    fn units(&self) -> Arg {
        any_of(self.asked.units.iter().map(Unit::symbol))
    }
}

/// In English: for tests and scripts.
impl fmt::Display for ReadError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.message().english())
    }
}

impl std::error::Error for ReadError {}

/// An x that stands for times: `x`, `x4`.
fn is_times(typed: &str) -> bool {
    typed
        .strip_prefix(['x', 'X'])
        .is_some_and(|rest| rest.bytes().all(|byte| byte.is_ascii_digit()))
}
