//! The ranges that the electrical formulas accept, and the one error for what lies outside.

use std::fmt;

use crate::words::{Id, Msg, electrical as words};

/// A range of one quantity: what it is called, its least and greatest value, its unit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Range {
    /// The quantity in plain words: `the source voltage`.
    pub what: Id,
    /// Least value that is accepted.
    pub least: f64,
    /// Greatest value that is accepted.
    pub most: f64,
    /// Unit symbol; empty for a plain number.
    pub unit: &'static str,
}

/// A value outside the range that a formula holds for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OutOfRange {
    /// The value as it came.
    pub value: f64,
    /// The range it should lie in.
    pub range: Range,
}

/// Voltage of the source.
pub const SOURCE_VOLTAGE_V: Range = Range::new(words::RANGE_SOURCE_VOLTAGE, 0.1, 1000.0, "V");
/// Current of one load.
pub const LOAD_CURRENT_A: Range = Range::new(words::RANGE_LOAD_CURRENT, 0.0, 10_000.0, "A");
/// Power of one load.
pub const LOAD_POWER_W: Range = Range::new(words::RANGE_LOAD_POWER, 0.0, 1_000_000.0, "W");
/// Resistance of one load.
pub const LOAD_RESISTANCE_OHM: Range = Range::new(words::RANGE_LOAD_RESISTANCE, 1e-3, 1e9, "ohm");
/// Resistance of a run, both conductors, or of the source.
pub const RUN_RESISTANCE_OHM: Range = Range::new(words::RANGE_RUN_RESISTANCE, 0.0, 1e6, "ohm");
/// One-way length of a run.
pub const RUN_LENGTH_M: Range = Range::new(words::RANGE_RUN_LENGTH, 0.0, 10_000.0, "m");
/// Resistance of one conductor by its length.
pub const CONDUCTOR_OHM_PER_M: Range = Range::new(words::RANGE_CONDUCTOR, 1e-7, 100.0, "ohm/m");
/// Drop limit as a share of the source voltage.
pub const DROP_LIMIT_PERCENT: Range = Range::new(words::RANGE_DROP_LIMIT, 0.01, 99.0, "%");
/// Temperature of a conductor; copper's linear law holds about here.
pub const CONDUCTOR_TEMPERATURE_C: Range = Range::new(words::RANGE_TEMPERATURE, -50.0, 200.0, "C");

impl Range {
    /// A range from `least` to `most`, both included.
    pub const fn new(what: Id, least: f64, most: f64, unit: &'static str) -> Self {
        Self { what, least, most, unit }
    }

    /// The value itself when it lies in the range.
    ///
    /// # Errors
    /// [`OutOfRange`] for a value outside, NaN and the infinities among them.
    pub fn check(self, value: f64) -> Result<f64, OutOfRange> {
        if (self.least..=self.most).contains(&value) {
            Ok(value)
        } else {
            Err(OutOfRange { value, range: self })
        }
    }
}

impl From<OutOfRange> for Msg {
    fn from(OutOfRange { value, range }: OutOfRange) -> Self {
        let Range { what, least, most, unit } = range;
        let with_unit = |number: String| if unit.is_empty() { number } else { number + " " + unit };
        let (least, most) = (with_unit(least.to_string()), with_unit(most.to_string()));
        let value = match value {
            v if !v.is_finite() => return words::NotANumber { what, least, most }.into(),
            v if v != 0.0 && !(1e-6..1e9).contains(&v.abs()) => format!("{v:e}"),
            v => v.to_string(),
        };
        words::OutOfRange { what, least, most, value: with_unit(value) }.into()
    }
}

/// In English, for tests.
impl fmt::Display for OutOfRange {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        Msg::from(*self).fmt(f)
    }
}

impl std::error::Error for OutOfRange {}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_ends_are_in_and_what_is_not_a_number_is_out() {
        assert_eq!(SOURCE_VOLTAGE_V.check(1000.0), Ok(1000.0));
        for bad in [0.0, 1000.1, -12.0, f64::NAN, f64::INFINITY] {
            assert!(SOURCE_VOLTAGE_V.check(bad).is_err(), "{bad}");
        }
        assert_eq!(
            SOURCE_VOLTAGE_V.check(0.0).unwrap_err().to_string(),
            "the source voltage must be between 0.1 V and 1000 V, not 0 V"
        );
        let shown = |v| SOURCE_VOLTAGE_V.check(v).unwrap_err().to_string();
        assert!(shown(1e300).contains("1e300 V"));
        assert!(shown(f64::NAN).starts_with("the source voltage is not a number: it must"));
    }
}
