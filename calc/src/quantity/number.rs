//! Plain numbers as people write them: decimals, fractions, whole numbers with a fraction.

use winnow::Parser;
use winnow::error::EmptyError;
use winnow::token::{one_of, take_while};

use super::decimal::from_digits;
use super::problem::Problem;

/// A number read at the start of a text.
#[derive(Clone, Copy)]
pub(super) struct Number {
    pub value: f64,
    /// It was written with a fraction, so that a division right behind it is doubtful.
    pub fraction: bool,
}

/// The number that `text` starts with, or `None` where no number starts.
///
/// `90 1/2` and `90-1/2` (no spaces, fraction below one) are one number; `90 - 1/2` is left to be
/// subtracted.
pub(super) fn number(text: &mut &str) -> Result<Option<Number>, Problem> {
    let run = while_any(text, |c| c.is_ascii_digit() || c == '.' || c == ',');
    if run.is_empty() {
        return Ok(None);
    }
    let value = decimal(run)?;
    if !is_digits(run) {
        return Ok(Some(Number { value, fraction: false }));
    }
    if let Some(divisor) = divisor(text)? {
        return Ok(Some(Number { value: value / divisor, fraction: true }));
    }
    let rest = proper_fraction(text)?;
    Ok(Some(Number { value: value + rest.unwrap_or(0.0), fraction: rest.is_some() }))
}

/// Skips spaces.
pub(super) fn spaces(text: &mut &str) -> usize {
    while_any(text, |c| c == ' ').len()
}

/// Takes one character that is among these.
pub(super) fn one(text: &mut &str, these: &'static [char]) -> Option<char> {
    one_of::<_, _, EmptyError>(these).parse_next(text).ok()
}

fn while_any<'a>(text: &mut &'a str, belongs: fn(char) -> bool) -> &'a str {
    take_while::<_, _, EmptyError>(0.., belongs).parse_next(text).unwrap_or_default()
}

fn is_digits(run: &str) -> bool {
    !run.is_empty() && run.bytes().all(|byte| byte.is_ascii_digit())
}

/// `/ 8` behind a whole number.
fn divisor(text: &mut &str) -> Result<Option<f64>, Problem> {
    let mut ahead = *text;
    spaces(&mut ahead);
    if one(&mut ahead, &['/']).is_none() {
        return Ok(None);
    }
    spaces(&mut ahead);
    let run = while_any(&mut ahead, |c| c.is_ascii_digit() || c == '.' || c == ',');
    if !is_digits(run) {
        return Ok(None);
    }
    let divisor = decimal(run)?;
    if divisor == 0.0 {
        return Err(Problem::DivisionByZero);
    }
    *text = ahead;
    Ok(Some(divisor))
}

/// ` 1/2` or `-1/2` behind a whole number.
fn proper_fraction(text: &mut &str) -> Result<Option<f64>, Problem> {
    let mut ahead = *text;
    let before = spaces(&mut ahead);
    let hyphen = one(&mut ahead, &['-']).is_some();
    let after = if hyphen { spaces(&mut ahead) } else { 0 };
    if before == 0 && !hyphen || hyphen && before > 0 && after > 0 {
        return Ok(None);
    }
    let run = while_any(&mut ahead, |c| c.is_ascii_digit() || c == '.' || c == ',');
    if !is_digits(run) {
        return Ok(None);
    }
    let numerator = decimal(run)?;
    let Some(divisor) = divisor(&mut ahead)? else { return Ok(None) };
    let fraction = numerator / divisor;
    if !hyphen && fraction >= 1.0 {
        return Err(Problem::ImproperFraction);
    }
    if hyphen {
        if fraction >= 1.0 {
            return Ok(None);
        }
        let mut behind = ahead;
        spaces(&mut behind);
        if before + after > 0 || behind.starts_with(['*', '/']) {
            return Err(Problem::Hyphen);
        }
    }
    *text = ahead;
    Ok(Some(fraction))
}

/// A run of digits, points and commas.
///
/// One comma is a decimal comma, save where it could part thousands (`2,300`): that is refused.
/// Points and commas that can only part thousands (`1,234,567`, `1,234.5`, `1.234,5`) are read so.
fn decimal(run: &str) -> Result<f64, Problem> {
    let commas = run.matches(',').count();
    let points = run.matches('.').count();
    let plain = match (commas, points) {
        (0, 0 | 1) => Some(run.to_owned()),
        (1, 0) => {
            let (whole, part) = run.split_once(',').unwrap_or((run, ""));
            if part.len() == 3 && (1..=3).contains(&whole.len()) && !whole.starts_with('0') {
                return Err(Problem::Comma(run.to_owned()));
            }
            (!part.is_empty()).then(|| format!("{whole}.{part}"))
        }
        (_, 0) => ungrouped(run, ','),
        (0, _) => ungrouped(run, '.'),
        (_, 1) => split_decimal(run, ',', '.'),
        (1, _) => split_decimal(run, '.', ','),
        _ => None,
    };
    plain.and_then(|plain| from_digits(&plain)).ok_or_else(|| Problem::NotANumber(run.to_owned()))
}

fn split_decimal(run: &str, group: char, point: char) -> Option<String> {
    match run.split_once(point) {
        Some((whole, part)) if !part.contains(group) => {
            Some(format!("{}.{part}", ungrouped(whole, group)?))
        }
        // `1.234,5`: one of each, the comma behind the point.
        _ if run.matches(group).count() == 1 => {
            let (whole, part) = run.split_once(group)?;
            Some(format!("{}.{part}", ungrouped(whole, point)?))
        }
        _ => None,
    }
}

/// The digits without the marks between groups of three.
fn ungrouped(run: &str, mark: char) -> Option<String> {
    let mut groups = run.split(mark);
    let first = groups.next()?;
    if !(1..=3).contains(&first.len()) || !is_digits(first) {
        return None;
    }
    let mut digits = first.to_owned();
    for group in groups {
        if group.len() != 3 || !is_digits(group) {
            return None;
        }
        digits.push_str(group);
    }
    Some(digits)
}
