//! What holds for any text at all: tests and benches run it on made-up text.

use super::dimension::{DIMENSIONS, LENGTH};
use super::mark::{Rounding, UnitSystem};
use super::measure::{Measure, read_number};
use super::problem::ReadError;
use super::style::Style;
use super::unit::{Dimension, Unit};
use crate::words::Words;

/// Pieces to make text of that comes close to measures, for fuzzing.
#[rustfmt::skip]
pub const PIECES: &[&str] = &[
    "0", "1", "2", "3", "7", "12", "90", "2300", "1/2", "3/4", "5/8", "½", "⅜", ".", ",", "0.5", "+",
    "-", "−", "*", "×", "·", "/", "⁄", "÷", "(", ")", " ", " ", " ", "\u{a0}", "'", "\"", "′", "″",
    "’", "”", "in", "ft", "mm", "m", "cm", "um", "µm", "mil", "yd", "feet", "inches", "kg", "lb", "oz",
    "fl oz", "gal", "qt", "l", "ml", "ft2", "m²", "ft2/gal", "V", "mV", "mW", "MW", "A", "Ah", "Wh",
    "ohm", "Ω", "/m", "W/m/K", "m2K/W", "Btu", "C", "°C", "F", "K", "%", "^", "^2", "³", "deg", "h",
    "min", "s", "e", "x", "per", "\u{7}", "é", "漢", "99999999999999999999",
];

/// Reads `text` in every way there is. `Err` tells what went wrong that must not: a value that is not
/// finite or too large, stored text that reads otherwise, a refusal without an example, a mark
/// that is off by more than half a line.
///
/// # Errors
///
/// What did not hold, for people who look for the fault.
pub fn check_any_text(text: &str) -> Result<(), String> {
    for &dimension in DIMENSIONS {
        check(text, dimension, None)?;
        for unit in dimension.units.iter().take(3) {
            check(text, dimension, Some(unit))?;
        }
    }
    check_number(text)
}

/// Reads `text` as a length and as a plain number only: the quick form of [`check_any_text`].
///
/// # Errors
///
/// As [`check_any_text`].
pub fn check_length_text(text: &str) -> Result<(), String> {
    check(text, &LENGTH, None)?;
    for unit in LENGTH.units.iter().take(3) {
        check(text, &LENGTH, Some(unit))?;
    }
    check_number(text)
}

fn check_number(text: &str) -> Result<(), String> {
    match read_number(text) {
        Ok(number) if !number.is_finite() => Err(format!("{text:?} reads as {number}")),
        Ok(_) => Ok(()),
        Err(error) => check_refusal(text, &error),
    }
}

fn check(
    text: &str,
    dimension: &'static Dimension,
    bare: Option<&'static Unit>,
) -> Result<(), String> {
    let measure = match Measure::read(text, dimension, bare) {
        Ok(measure) => measure,
        Err(error) => return check_refusal(text, &error),
    };
    let si = measure.si();
    if !si.is_finite() || si.abs() > 1e12 {
        return Err(format!("{text:?} reads as {si}"));
    }
    match Measure::read(&measure.stored(), dimension, None) {
        Ok(again) if again.si() == si && again.stored() == measure.stored() => {}
        Ok(again) => return Err(format!("{text:?} is {si}, stored it is {}", again.si())),
        Err(error) => return Err(format!("{text:?} is stored as what does not read: {error}")),
    }
    if dimension.is(&LENGTH) { check_mark(&measure) } else { Ok(()) }
}

fn check_refusal(text: &str, error: &ReadError) -> Result<(), String> {
    let message = error.to_string();
    if message.ends_with(Words::ENGLISH.plain(error.asked.example)) && message.len() < 600 {
        return Ok(());
    }
    Err(format!("{text:?} is refused without an example: {message}"))
}

fn check_mark(measure: &Measure) -> Result<(), String> {
    let length = measure.length();
    for system in [UnitSystem::Imperial, UnitSystem::Metric] {
        for rounding in Rounding::ALL {
            let style = Style { system, ..Style::rounded(rounding) };
            let marked = style.mark(length);
            let step = style.lines().step().value;
            // Beyond a thousand kilometres the digits themselves are coarser than a line.
            let slack = 1e-6 * step + 1e-15 * length.value.abs();
            if marked.left_over.value.abs() > step / 2.0 + slack {
                return Err(format!("{:?} is marked {marked:?}", measure.typed()));
            }
        }
    }
    Ok(())
}
