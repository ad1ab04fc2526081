//! Why a text could not be read as a measure, in words that end with a right example.

use std::fmt;

use super::dimension::{LENGTH, MASS, NUMBER, VOLUME};
use super::measure::MAX_TYPED;
use super::unit::{Dimension, Unit};

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

impl fmt::Display for ReadError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let asked = self.asked;
        match &self.problem {
            Problem::Empty => write!(f, "nothing is written here; {} is asked", asked.with_article()),
            Problem::TooLong => write!(
                f,
                "this is longer than {MAX_TYPED} characters; write {} in short",
                asked.with_article()
            ),
            Problem::ControlCharacter => f.write_str(
                "there is a character in this that cannot be seen; type it again by hand",
            ),
            Problem::Character(c) => {
                write!(f, "\"{c}\" has no meaning in {}; leave it out", asked.with_article())
            }
            Problem::UnknownUnit(typed) => {
                write!(f, "\"{typed}\" is no unit of {}; ", asked.with_article())?;
                if is_times(typed) {
                    f.write_str("for times write *, for a unit ")?;
                } else {
                    f.write_str("use ")?;
                }
                list_units(f, asked)
            }
            Problem::UnitCase(one, other) => write!(
                f,
                "this may be {} or {}; write it with capital and small letters",
                one.symbol(),
                other.symbol()
            ),
            Problem::OtherDimension(found) if found.is(&NUMBER) => {
                write!(f, "that is a percentage; {} is asked", asked.with_article())
            }
            Problem::OtherDimension(found) if found.is(&MASS) && asked.is(&VOLUME) => {
                f.write_str("that is a mass; a volume is asked, fl oz where fluid ounces are meant")
            }
            Problem::OtherDimension(found) => {
                write!(f, "that is {}; {} is asked", found.with_article(), asked.with_article())
            }
            Problem::NoUnit => {
                f.write_str("the unit is missing; put one behind the number: ")?;
                list_units(f, asked)
            }
            Problem::UnitMissing => f.write_str(
                "some numbers have a unit and some have none; give each number its unit",
            ),
            Problem::TwoUnits => f.write_str("one number has two units; leave one"),
            Problem::NotANumber(typed) => write!(
                f,
                "\"{typed}\" is no number; use digits with one decimal point"
            ),
            Problem::Comma(typed) => write!(
                f,
                "\"{typed}\" may be {} or {}; write the one that is meant",
                typed.replace(',', ""),
                typed.replace(',', ".").trim_end_matches('0').trim_end_matches('.')
            ),
            Problem::Hyphen => f.write_str(
                "this hyphen may join or subtract; write 90 1/2 or 7 ft 6 in to join, and \
                 90 - (1/2) or 7 ft - 6 in, with a space on both sides, to subtract",
            ),
            Problem::TwoNumbers if asked.is(&LENGTH) => f.write_str(
                "two numbers stand side by side; write 5 ft 4 1/2 in for feet and inches, put a +, \
                 - or * between, or leave the space out",
            ),
            Problem::TwoNumbers => f.write_str(
                "two numbers stand side by side; put a +, - or * between, or leave the space out",
            ),
            Problem::TwoFractions => f.write_str(
                "two fractions follow each other; put a + or a * between, or parentheses around one",
            ),
            Problem::ImproperFraction => f.write_str(
                "the fraction behind a whole number must be less than one; write the whole number \
                 and the rest",
            ),
            Problem::SideBySide => f.write_str(
                "measures side by side must go from whole larger units to smaller ones; put a + \
                 between otherwise",
            ),
            Problem::DivisionByZero => {
                f.write_str("this divides by zero; divide by another number")
            }
            Problem::MeasureTimesMeasure => write!(
                f,
                "a measure times a measure is not {}; multiply by a plain number",
                asked.with_article()
            ),
            Problem::DivisionByMeasure => {
                f.write_str("this divides by a measure; divide by a plain number")
            }
            Problem::TemperatureArithmetic => {
                f.write_str("temperatures cannot be added or multiplied; write one temperature")
            }
            Problem::BelowAbsoluteZero => f.write_str(
                "that is colder than absolute zero (-273.15 C, -459.67 F); write a temperature \
                 above it",
            ),
            Problem::Nesting => {
                f.write_str("there are too many parentheses within each other; use fewer")
            }
            Problem::Parenthesis => {
                f.write_str("a parenthesis has no other half; close it or leave it out")
            }
            Problem::Unfinished => f.write_str("a number is missing; write it or leave out the rest"),
            Problem::NumberExpected(typed) => {
                write!(f, "a number is missing at \"{typed}\"; write it there")
            }
            Problem::Unexpected(typed) => {
                write!(f, "\"{typed}\" does not belong here; leave it out")
            }
            Problem::OutOfRange => {
                write!(f, "that is too large; write {} that can be", asked.with_article())
            }
        }?;
        write!(f, ", e.g. {}", asked.example)
    }
}

impl std::error::Error for ReadError {}

/// An x that stands for times: `x`, `x4`.
fn is_times(typed: &str) -> bool {
    typed
        .strip_prefix(['x', 'X'])
        .is_some_and(|rest| rest.bytes().all(|byte| byte.is_ascii_digit()))
}

fn list_units(f: &mut fmt::Formatter<'_>, dimension: &Dimension) -> fmt::Result {
    let last = dimension.units.len().saturating_sub(1);
    for (index, unit) in dimension.units.iter().enumerate() {
        let between = match index {
            0 => "",
            _ if index == last => " or ",
            _ => ", ",
        };
        write!(f, "{between}{}", unit.symbol())?;
    }
    Ok(())
}
