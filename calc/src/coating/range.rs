//! What a wet trade's formula is worked for, and the fault of a value outside of it.

use std::fmt;

/// A value outside the range that a formula is worked for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OutOfRange {
    /// What the value is, as the trade says it: `wet film`.
    pub what: &'static str,
    /// The value, in `unit`.
    pub value: f64,
    /// The least that is accepted, in `unit`.
    pub least: f64,
    /// The most that is accepted, in `unit`.
    pub most: f64,
    /// The unit of the three numbers; empty for a plain number.
    pub unit: &'static str,
}

/// Passes a value on that is a number within `least..=most`.
///
/// # Errors
/// `OutOfRange` where it is not; NaN and infinities never pass.
pub fn within(
    what: &'static str,
    value: f64,
    least: f64,
    most: f64,
    unit: &'static str,
) -> Result<f64, OutOfRange> {
    if value >= least && value <= most {
        Ok(value)
    } else {
        Err(OutOfRange { what, value, least, most, unit })
    }
}

/// Rounds up to a whole number, but forgives the 1e-9 that sums of decimals are off by.
pub fn ceiling(value: f64) -> f64 {
    (value - 1e-9 * value.abs().max(1.0)).ceil().max(0.0)
}

impl fmt::Display for OutOfRange {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self { what, value, least, most, unit } = self;
        let space = if unit.is_empty() { "" } else { " " };
        if !value.is_finite() {
            write!(f, "the {what} is no number; ")?;
        } else if value.abs() >= 1e9 {
            write!(f, "the {what} is {value:e}{space}{unit}; ")?;
        } else {
            write!(f, "the {what} is {}{space}{unit}; ", (value * 1e6).round() / 1e6)?;
        }
        write!(f, "it must be from {least} to {most}{space}{unit}")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn says_what_is_wrong_and_what_is_right() {
        let fault = within("loss", 120.0, 0.0, 95.0, "%").unwrap_err();
        assert_eq!(fault.to_string(), "the loss is 120 %; it must be from 0 to 95 %");
        assert!(
            within("loss", f64::NAN, 0.0, 95.0, "%").unwrap_err().to_string().contains("no number")
        );
        assert!(within("loss", f64::INFINITY, 0.0, 95.0, "%").is_err());
    }

    #[test]
    fn ceilings_forgive_the_last_bits() {
        assert_eq!(ceiling(96.000_000_000_1 / 8.0), 12.0);
        assert_eq!(ceiling(12.001), 13.0);
        assert_eq!(ceiling(0.0), 0.0);
        assert_eq!(ceiling(0.1 + 0.2 - 0.3), 0.0);
    }
}
