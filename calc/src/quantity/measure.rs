//! A measure as it was typed, with its exact value.

use super::dimension::{NUMBER, TEMPERATURE};
use super::expression::{Reader, Scale};
use super::normal::normalise;
use super::problem::{Problem, ReadError};
use super::unit::{Dimension, Unit};

/// The longest text that is read as a measure, in characters.
pub const MAX_TYPED: usize = 200;
/// Room for the unit that [`Measure::stored`] adds.
const MAX_STORED: usize = MAX_TYPED + 40;
/// The largest value, in SI units, that is read.
const LARGEST: f64 = 1e12;

/// What was typed, its exact value, and what it measures.
#[derive(Clone, Debug)]
pub struct Measure {
    typed: String,
    si: f64,
    dimension: &'static Dimension,
    added: Option<Added>,
}

/// The unit that a bare number took, and whether it needs parentheses first.
#[derive(Clone, Copy, Debug)]
struct Added {
    unit: &'static Unit,
    parentheses: bool,
}

impl Measure {
    /// Reads a measure of `dimension`; `bare` is the unit that a bare number takes.
    ///
    /// With `bare` (a field that shows its unit) `90 1/2` is read in that unit. Without (a file) a
    /// number needs its unit. In a sum, bare numbers take the one unit that is written
    /// (`90 1/2 - 3/4 in`), as long as it is not another than the field's.
    ///
    /// # Errors
    ///
    /// Text that is no measure, of another dimension, ambiguous, longer than [`MAX_TYPED`], or
    /// beyond ±10¹² SI units; a temperature below absolute zero.
    pub fn read(
        typed: &str,
        dimension: &'static Dimension,
        bare: Option<&'static Unit>,
    ) -> Result<Self, ReadError> {
        read(typed, dimension, bare).map_err(|problem| ReadError { problem, asked: dimension })
    }

    /// Reads a measure of the first of these dimensions that it fits, such as a battery's capacity
    /// in ampere hours or watt hours. A bare number takes `bare`, a unit of the first dimension.
    ///
    /// # Errors
    ///
    /// As [`Measure::read`], told for the first dimension.
    pub fn read_any(
        typed: &str,
        first: &'static Dimension,
        others: &[&'static Dimension],
        bare: Option<&'static Unit>,
    ) -> Result<Self, ReadError> {
        match Self::read(typed, first, bare) {
            Err(ReadError { problem: Problem::OtherDimension(found), asked }) => {
                match others.iter().find(|other| other.is(found)) {
                    Some(other) => Self::read(typed, other, None),
                    None => Err(ReadError { problem: Problem::OtherDimension(found), asked }),
                }
            }
            other => other,
        }
    }

    /// The text as it was typed.
    pub fn typed(&self) -> &str {
        &self.typed
    }

    /// The value in the SI unit of the dimension (kelvin for temperatures).
    pub fn si(&self) -> f64 {
        self.si
    }

    /// What it measures.
    pub fn dimension(&self) -> &'static Dimension {
        self.dimension
    }

    /// The text for the file: as typed, with the unit added that a bare number took. Reading it
    /// again, without a unit for bare numbers, gives the same value.
    pub fn stored(&self) -> String {
        let typed = self.typed.trim();
        match self.added {
            None => typed.to_owned(),
            Some(Added { unit, parentheses: false }) => format!("{typed} {}", unit.symbol()),
            Some(Added { unit, parentheses: true }) => format!("({typed}) {}", unit.symbol()),
        }
    }
}

/// Reads a plain number: a count, a factor or a percentage. `12 %` is 12; sums, fractions and the
/// decimal comma are read as in measures.
///
/// # Errors
///
/// As [`Measure::read`]; a number with a unit is of another dimension.
pub fn read_number(typed: &str) -> Result<f64, ReadError> {
    Measure::read(typed, &NUMBER, NUMBER.units.first()).map(|measure| measure.si)
}

fn read(
    typed: &str,
    dimension: &'static Dimension,
    bare: Option<&'static Unit>,
) -> Result<Measure, Problem> {
    let most = if bare.is_some() { MAX_TYPED } else { MAX_STORED };
    if typed.chars().count() > most {
        return Err(Problem::TooLong);
    }
    let text = normalise(typed)?;
    let text = text.trim();
    if text.is_empty() {
        return Err(Problem::Empty);
    }
    let mut reader = Reader::new(dimension);
    let value = reader.whole(text)?;
    if dimension.is(&TEMPERATURE) && reader.operators {
        return Err(Problem::TemperatureArithmetic);
    }
    if reader.unit_assumed {
        let other = match (reader.stated, bare) {
            (Some(stated), Some(bare)) => !stated.is(bare),
            _ => false,
        };
        if reader.several || other {
            return Err(Problem::UnitMissing);
        }
    }
    let mut added = None;
    let si = match value.scale {
        Scale::Si => value.number,
        Scale::Of(unit) => unit.to_si(value.number),
        Scale::Plain => {
            let unit = bare.ok_or(Problem::NoUnit)?;
            added = Some(Added { unit, parentheses: reader.operators });
            unit.to_si(value.number)
        }
    };
    if !si.is_finite() || si.abs() > LARGEST {
        return Err(Problem::OutOfRange);
    }
    if dimension.is(&TEMPERATURE) && si < 0.0 {
        return Err(Problem::BelowAbsoluteZero);
    }
    // Minus nothing is nothing.
    let si = if si == 0.0 { 0.0 } else { si };
    Ok(Measure { typed: typed.to_owned(), si, dimension, added })
}
