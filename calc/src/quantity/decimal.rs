//! Numbers as text, and text as numbers: decimals and significant digits.

use serde_json::Value as Json;

use crate::text::text;

/// The number with up to `digits` (0 to 12) after the point; trailing zeros cut, never `-0`, no
/// marks between thousands. A value that is not finite gives `?`.
pub fn plain(value: f64, digits: usize) -> String {
    if !value.is_finite() {
        return "?".to_owned();
    }
    let mut text = fixed(value, digits.min(12));
    if text.contains('.') {
        let cut = text.trim_end_matches('0').trim_end_matches('.').len();
        text.truncate(cut);
    }
    if text == "-0" { "0".to_owned() } else { text }
}

/// The number with `digits` (1 to 12) significant digits, trailing zeros after the point cut; whole
/// digits are never rounded away (`12345` to three digits stays `12345`).
pub fn significant(value: f64, digits: usize) -> String {
    let digits = digits.clamp(1, 12);
    if value == 0.0 || !value.is_finite() {
        return plain(value, 0);
    }
    let whole = libm::floor(libm::log10(value.abs())) as i64 + 1;
    let mut after = (digits as i64 - whole).clamp(0, 12) as usize;
    // 9.996 to three digits rounds to 10.0, which has a whole digit more.
    let text = fixed(value.abs(), after);
    if after > 0 && text.find('.').is_some_and(|point| point as i64 > whole.max(1)) {
        after -= 1;
    }
    plain(value, after)
}

/// A part of the last digit that sums of decimals are off by.
const SLACK: f64 = 1e-6;

/// Rounded up to so many digits after the point.
pub fn up(value: f64, digits: usize) -> f64 {
    let lines = libm::pow(10.0, digits as f64);
    (value * lines - SLACK).ceil() / lines
}

/// Rounded down to so many digits after the point.
pub fn down(value: f64, digits: usize) -> f64 {
    -up(-value, digits)
}

/// Rounded to the nearest with so many digits after the point.
pub fn nearest(value: f64, digits: usize) -> f64 {
    let lines = libm::pow(10.0, digits as f64);
    (value * lines).round() / lines
}

/// A finite number with so many digits (0 to 12) after the point, as `{:.*}` writes it, in a few whole-number steps: what the sheets
/// write is far from the sizes that need more.
fn fixed(value: f64, digits: usize) -> String {
    const LONGEST: usize = 40;
    let bits = value.to_bits();
    // The number is `whole / 2^shift`.
    let whole = u128::from(bits & ((1 << 52) - 1) | 1 << 52);
    let shift = 1075 - (bits >> 52 & 0x7ff) as u32 as i32;
    let scaled = whole * 10u128.pow(digits as u32);
    let rounded = match shift {
        // Half to even.
        1..=127 => {
            (scaled >> shift)
                + u128::from(
                    scaled << (128 - shift) > 1 << 127
                        || scaled << (128 - shift) == 1 << 127 && scaled >> shift & 1 == 1,
                )
        }
        128.. => 0,
        _ => u128::MAX,
    };
    let Ok(mut rest) = u64::try_from(rounded) else { return format!("{value:.digits$}") };
    let mut text = [b'0'; LONGEST];
    let mut at = LONGEST;
    let mut put = |byte: u8| {
        at -= 1;
        text[at] = byte;
    };
    let mut written = 0;
    while rest > 0 || written <= digits {
        if written == digits && digits > 0 {
            put(b'.');
        }
        put(b'0' + (rest % 10) as u8);
        rest /= 10;
        written += 1;
    }
    if value.is_sign_negative() {
        put(b'-');
    }
    String::from_utf8_lossy(&text[at..]).into_owned()
}

/// Three significant digits or so, with a unit behind: `amount(12.34, 1, "V")` is `12.3 V`.
pub fn amount(value: f64, digits: usize, unit: &str) -> String {
    let mut text = plain(value, digits);
    text.push(' ');
    text.push_str(unit);
    text
}

/// A figure beside its limit: with so many digits after the point, or with as many more as it takes to show whether
/// it is above the limit.
pub fn beside(value: f64, limit: f64, digits: usize, unit: &str) -> String {
    // Forgives the last bits of sums, as the verdicts do.
    let over = |value: f64| value > limit * (1.0 + 1e-9);
    let shown = (digits..6).find(|digits| over(nearest(value, *digits)) == over(value));
    amount(value, shown.unwrap_or(6), unit)
}

/// `45 min`, `3 h`, `1 h 30 min`.
pub fn span(minutes: f64) -> String {
    let whole = minutes.round().max(0.0);
    let hours = (whole / 60.0).floor();
    let rest = whole - hours * 60.0;
    match (hours == 0.0, rest == 0.0) {
        (true, _) => text!("{} min", &rest),
        (false, true) => text!("{} h", &hours),
        (false, false) => text!("{} h {} min", &hours, &rest),
    }
}

/// Minutes that may not be exceeded, as they are kept by a clock: whole, from an hour up to 5, never rounded up.
pub fn minutes_down(minutes: f64) -> f64 {
    let lines = if minutes < 60.0 { 1.0 } else { 5.0 };
    down(minutes / lines, 0) * lines
}

/// Minutes that must at least go by, likewise; never rounded down.
pub fn minutes_up(minutes: f64) -> f64 {
    let lines = if minutes < 60.0 { 1.0 } else { 5.0 };
    up(minutes / lines, 0) * lines
}

/// A percentage with up to one digit after the point: `2.5 %`.
pub fn percent(value: f64) -> String {
    amount(value, 1, "%")
}

/// A price: `61.50`, in whatever currency the prices were typed in.
pub fn money(value: f64) -> String {
    if value.is_finite() { fixed(value, 2) } else { "?".to_owned() }
}

/// The number written in digits with at most one decimal point, and perhaps a power of ten behind an
/// `e`; none where the text is anything else or the number is not finite.
///
/// It is read as JSON, which project files need anyhow: the standard library's reading of numbers
/// would bring 16 KB of tables and code of its own.
pub fn from_digits(text: &str) -> Option<f64> {
    let (digits, power) = match text.find(['e', 'E']) {
        Some(at) => text.split_at(at),
        None => (text, ""),
    };
    let (whole, part) = digits.split_once('.').unwrap_or((digits, ""));
    let is_digits = |text: &str| text.bytes().all(|byte| byte.is_ascii_digit());
    if digits.len() < 1 + usize::from(digits.contains('.')) || !is_digits(whole) || !is_digits(part)
    {
        return None;
    }
    // JSON wants a digit on both sides of the point, and no zeros in front.
    let whole = whole.trim_start_matches('0');
    let mut json = String::new();
    if whole.is_empty() {
        json.push('0');
    }
    for piece in [whole, ".", part, "0", power] {
        json.push_str(piece);
    }
    serde_json::from_str::<Json>(&json).ok()?.as_f64().filter(|number| number.is_finite())
}

#[cfg(test)]
mod tests {
    use super::{beside, fixed, from_digits, minutes_down, minutes_up, span};
    use proptest::prelude::*;

    fn is_read_as_by_the_standard_library(text: &str) {
        let expected = text.parse::<f64>().ok().filter(|number| number.is_finite());
        assert_eq!(from_digits(text).map(f64::to_bits), expected.map(f64::to_bits), "{text}");
    }

    #[test]
    fn digits_are_read_as_by_the_standard_library() {
        for text in [
            "",
            ".",
            "0",
            "000",
            "007.50",
            ".5",
            "5.",
            "1.2.3",
            "12a",
            "e5",
            ".e5",
            "1e",
            "1e5",
            "1.5E-3",
            "1e+2",
            "1e400",
            "1e-400",
            "0e999999999999",
            "9007199254740993",
            "123456789012345678901234567890",
            "0.1e1.5",
            "٣",
        ] {
            is_read_as_by_the_standard_library(text);
        }
        for text in ["-1", "+1", "inf", "nan", " 1"] {
            assert_eq!(from_digits(text), None, "{text}");
        }
    }

    #[test]
    fn spans() {
        assert_eq!([span(45.0), span(180.0), span(90.2)], ["45 min", "3 h", "1 h 30 min"]);
        assert_eq!([40.7, 63.0, 25.0, 125.0].map(minutes_down), [40.0, 60.0, 25.0, 125.0]);
        assert_eq!([40.7, 63.0, 25.0, 125.0].map(minutes_up), [41.0, 65.0, 25.0, 125.0]);
    }

    #[test]
    fn a_figure_beside_its_limit_never_gainsays_the_verdict() {
        assert_eq!(beside(2.844, 3.0, 2, "%"), "2.84 %");
        assert_eq!(beside(3.004, 3.0, 2, "%"), "3.004 %");
        assert_eq!(beside(2.996, 3.0, 2, "%"), "3 %");
        assert_eq!(beside(2.8746, 2.875, 2, "%"), "2.87 %");
        assert_eq!(beside(80.3, 80.0, 0, "%"), "80.3 %");
    }

    proptest! {
        #[test]
        fn numbers_are_written_as_by_the_standard_library(
            value in prop_oneof![
                any::<f64>().prop_filter("finite", |value| value.is_finite()),
                -1e7..1e7_f64,
                -2.0..2.0_f64,
                // Ties.
                (-4_000_000..4_000_000_i64).prop_map(|eighths| eighths as f64 / 64.0),
            ],
            digits in 0..=12_usize,
        ) {
            prop_assert_eq!(fixed(value, digits), format!("{value:.digits$}"));
        }

        #[test]
        fn any_digits_are_read_as_by_the_standard_library(
            text in "[0-9]{0,25}[.]?[0-9]{0,25}(e-?[0-9]{1,3})?",
        ) {
            is_read_as_by_the_standard_library(&text);
        }
    }
}
