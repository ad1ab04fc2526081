//! What a wet trade's formula is worked for, and the fault of a value outside of it.

use std::fmt;

use crate::quantity::plain;
use crate::words::{Id, Msg, range as words};

/// A value outside the range that a formula is worked for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OutOfRange {
    /// What the value is: `the wet film`.
    pub what: Id,
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
    what: Id,
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

impl From<OutOfRange> for Msg {
    fn from(OutOfRange { what, value, least, most, unit }: OutOfRange) -> Self {
        let unit = in_print(unit);
        let with_unit = |number: String| match unit {
            "" => number,
            unit => number + " " + unit,
        };
        let (least, most) = (least.to_string(), with_unit(most.to_string()));
        if !value.is_finite() {
            return words::NotANumber { what, least, most }.into();
        }
        let value = match value.abs() >= 1e9 {
            true => format!("{value:e}"),
            false => plain(value, 6),
        };
        words::OutOfRange { what, value: with_unit(value), least, most }.into()
    }
}

/// The unit as it is printed, where that is not how it is typed.
fn in_print(unit: &str) -> &str {
    match unit {
        "m2" => "m²",
        "mm2" => "mm²",
        "m2/l" => "m²/l",
        "kg/m3" => "kg/m³",
        "um" => "µm",
        "C" => "°C",
        typed => typed,
    }
}

/// In English, for tests and scripts.
impl fmt::Display for OutOfRange {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        Msg::from(*self).fmt(f)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn says_what_is_wrong_and_what_is_right() {
        let fault = within(words::LOSS, 120.0, 0.0, 95.0, "%").unwrap_err();
        assert_eq!(fault.to_string(), "the waste allowance is 120 %; it must be from 0 to 95 %");
        assert!(
            within(words::LOSS, f64::NAN, 0.0, 95.0, "%")
                .unwrap_err()
                .to_string()
                .contains("not a number")
        );
        assert!(within(words::LOSS, f64::INFINITY, 0.0, 95.0, "%").is_err());
    }

    #[test]
    fn ceilings_forgive_the_last_bits() {
        assert_eq!(ceiling(96.000_000_000_1 / 8.0), 12.0);
        assert_eq!(ceiling(12.001), 13.0);
        assert_eq!(ceiling(0.0), 0.0);
        assert_eq!(ceiling(0.1 + 0.2 - 0.3), 0.0);
    }
}
