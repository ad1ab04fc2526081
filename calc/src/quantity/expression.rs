//! Sums, products and parentheses of measures, and measures side by side (`7 ft 6 1/2 in`).
//!
//! ```text
//! sum      = [sign] product { ("+" | "-") product }
//! product  = atom { ("*" | "/") atom }
//! atom     = "(" sum ")" [unit] | number [unit { joint number [unit] }]
//! joint    = spaces | "-" (between feet and inches, no space on either side)
//! ```

use super::dimension::DIMENSIONS;
use super::number::{Number, number, one, spaces};
use super::problem::Problem;
use super::unit::{self, Dimension, Unit};

const DEEPEST: usize = 16;

/// The value of an expression, in the unit that it was written in.
#[derive(Clone, Copy)]
pub(super) struct Value {
    pub number: f64,
    pub scale: Scale,
    /// A bare fraction: a division right behind it is doubtful.
    fraction: bool,
}

/// What the number of a [`Value`] counts.
#[derive(Clone, Copy)]
pub(super) enum Scale {
    /// Nothing yet: no unit was written.
    Plain,
    /// This unit.
    Of(&'static Unit),
    /// SI units, once units that do not go into each other were added.
    Si,
}

/// What was met on the way through an expression.
pub(super) struct Reader {
    pub asked: &'static Dimension,
    /// The unit that was written, where any was.
    pub stated: Option<&'static Unit>,
    /// Units that differ were written.
    pub several: bool,
    /// A number without a unit was added to one with a unit.
    pub unit_assumed: bool,
    /// There is more than one number.
    pub operators: bool,
}

impl Reader {
    pub(super) fn new(asked: &'static Dimension) -> Self {
        Self { asked, stated: None, several: false, unit_assumed: false, operators: false }
    }

    /// Reads the whole of a normalised text.
    pub(super) fn whole(&mut self, text: &str) -> Result<Value, Problem> {
        let mut rest = text;
        let value = self.sum(&mut rest, 0)?;
        spaces(&mut rest);
        match rest.chars().next() {
            None => Ok(value),
            Some(c) if c.is_ascii_digit() => Err(self.two_numbers(text, rest)),
            Some('(') => Err(Problem::TwoNumbers),
            Some(')') => Err(Problem::Parenthesis),
            Some(_) if self.unit_at(rest).is_some() => Err(Problem::TwoUnits),
            Some(_) => Err(Problem::Unexpected(excerpt(rest))),
        }
    }

    fn sum(&mut self, text: &mut &str, depth: usize) -> Result<Value, Problem> {
        spaces(text);
        let sign = one(text, &['+', '-']);
        let mut total = self.product(text, depth)?;
        if sign == Some('-') {
            total.number = -total.number;
        }
        loop {
            spaces(text);
            let Some(operator) = one(text, &['+', '-']) else { return Ok(total) };
            self.operators = true;
            let mut term = self.product(text, depth)?;
            if operator == '-' {
                term.number = -term.number;
            }
            total = self.add(total, term);
        }
    }

    fn product(&mut self, text: &mut &str, depth: usize) -> Result<Value, Problem> {
        let mut product = self.atom(text, depth)?;
        loop {
            spaces(text);
            let Some(operator) = one(text, &['*', '/']) else { return Ok(product) };
            self.operators = true;
            let factor = self.atom(text, depth)?;
            product = match operator {
                '*' => times(product, factor)?,
                _ => over(product, factor)?,
            };
        }
    }

    fn atom(&mut self, text: &mut &str, depth: usize) -> Result<Value, Problem> {
        spaces(text);
        if one(text, &['(']).is_some() {
            return self.parenthesis(text, depth + 1);
        }
        let Some(read) = number(text)? else {
            spaces(text);
            return Err(match text.chars().next() {
                None => Problem::Unfinished,
                Some(')') => Problem::Unfinished,
                Some(_) => Problem::NumberExpected(excerpt(text)),
            });
        };
        match self.unit(text)? {
            Some(unit) => self.joined(text, read, unit),
            None => Ok(Value { number: read.value, scale: Scale::Plain, fraction: read.fraction }),
        }
    }

    fn parenthesis(&mut self, text: &mut &str, depth: usize) -> Result<Value, Problem> {
        if depth > DEEPEST {
            return Err(Problem::Nesting);
        }
        let mut value = self.sum(text, depth)?;
        spaces(text);
        if one(text, &[')']).is_none() {
            return Err(match text.chars().next() {
                None => Problem::Parenthesis,
                Some(c) if c.is_ascii_digit() || c == '(' => Problem::TwoNumbers,
                Some(_) if self.unit_at(text).is_some() => Problem::TwoUnits,
                Some(_) => Problem::Unexpected(excerpt(text)),
            });
        }
        value.fraction = false;
        if let Some(unit) = self.unit(text)? {
            let Scale::Plain = value.scale else { return Err(Problem::TwoUnits) };
            value.scale = Scale::Of(self.state(unit));
        }
        Ok(value)
    }

    /// Goes on from `7 ft` with the smaller units behind it: `7 ft 6 in`, `7'-6 1/2"`, `1 lb 4 oz`.
    fn joined(
        &mut self,
        text: &mut &str,
        first: Number,
        mut unit: &'static Unit,
    ) -> Result<Value, Problem> {
        let mut total = first.value;
        let mut last = first.value;
        loop {
            let mut ahead = *text;
            let before = spaces(&mut ahead);
            let inch = self.inch_below(unit);
            let hyphen = inch.is_some() && one(&mut ahead, &['-']).is_some();
            let after = if hyphen { spaces(&mut ahead) } else { 0 };
            if hyphen && before > 0 && after > 0 {
                break;
            }
            if !ahead.trim_start_matches(['.', ',']).starts_with(|c: char| c.is_ascii_digit()) {
                break;
            }
            let Some(next) = number(&mut ahead)? else { break };
            let smaller = match (self.unit(&mut ahead)?, inch) {
                (Some(smaller), _) => smaller,
                (None, Some(inch)) => {
                    let mut behind = ahead;
                    spaces(&mut behind);
                    if behind.starts_with(['*', '/']) {
                        break;
                    }
                    inch
                }
                (None, None) => return Err(Problem::TwoNumbers),
            };
            if hyphen {
                if !inch.is_some_and(|inch| inch.is(smaller)) {
                    break;
                }
                if before + after > 0 || next.value >= 12.0 {
                    return Err(Problem::Hyphen);
                }
            }
            let ratio = unit.whole_ratio(smaller).ok_or(Problem::SideBySide)?;
            if last.fract() != 0.0 || smaller.offset != 0.0 {
                return Err(Problem::SideBySide);
            }
            total = total * ratio + next.value;
            last = next.value;
            unit = smaller;
            *text = ahead;
        }
        Ok(Value { number: total, scale: Scale::Of(self.state(unit)), fraction: false })
    }

    /// The inch, where `unit` is the foot: a bare number behind feet means inches.
    fn inch_below(&self, unit: &Unit) -> Option<&'static Unit> {
        (unit.symbol() == "ft").then(|| self.asked.unit("in")).flatten()
    }

    /// Remembers a unit that a value was written in.
    fn state(&mut self, unit: &'static Unit) -> &'static Unit {
        match self.stated {
            Some(stated) if !stated.is(unit) => self.several = true,
            _ => self.stated = Some(unit),
        }
        unit
    }

    /// Takes the unit that the text goes on with; letters that are no unit are refused.
    fn unit(&mut self, text: &mut &str) -> Result<Option<&'static Unit>, Problem> {
        let mut ahead = *text;
        spaces(&mut ahead);
        let Some(found) = self.unit_at(ahead) else {
            return match ahead.chars().next() {
                Some(c) if c.is_ascii_alphabetic() || "\"'%^".contains(c) => {
                    Err(Problem::UnknownUnit(excerpt(ahead)))
                }
                _ => Ok(None),
            };
        };
        if !found.dimension.is(self.asked) {
            return Err(Problem::OtherDimension(found.dimension));
        }
        if let Some(rival) = found.rival {
            return Err(Problem::UnitCase(found.unit, rival));
        }
        *text = ahead.get(found.length..).unwrap_or_default();
        Ok(Some(found.unit))
    }

    fn unit_at(&self, text: &str) -> Option<unit::Found> {
        unit::find(text, self.asked, DIMENSIONS)
    }

    /// Two numbers side by side, or two fractions.
    fn two_numbers(&self, text: &str, rest: &str) -> Problem {
        let before = text.get(..text.len() - rest.len()).unwrap_or_default();
        let mut next = rest;
        match number(&mut next) {
            Ok(Some(next)) if next.fraction && ends_with_fraction(before) => Problem::TwoFractions,
            _ => Problem::TwoNumbers,
        }
    }

    fn add(&mut self, a: Value, b: Value) -> Value {
        let (number, scale) = match (a.scale, b.scale) {
            (Scale::Plain, Scale::Plain) => (a.number + b.number, Scale::Plain),
            (Scale::Plain, scale) | (scale, Scale::Plain) => {
                self.unit_assumed = true;
                (a.number + b.number, scale)
            }
            (Scale::Of(one), Scale::Of(other)) if one.is(other) => {
                (a.number + b.number, Scale::Of(one))
            }
            (Scale::Of(one), Scale::Of(other)) => {
                if let Some(ratio) = one.whole_ratio(other) {
                    (a.number * ratio + b.number, Scale::Of(other))
                } else if let Some(ratio) = other.whole_ratio(one) {
                    (a.number + b.number * ratio, Scale::Of(one))
                } else {
                    (one.to_si(a.number) + other.to_si(b.number), Scale::Si)
                }
            }
            (Scale::Si, Scale::Of(unit)) => (a.number + unit.to_si(b.number), Scale::Si),
            (Scale::Of(unit), Scale::Si) => (unit.to_si(a.number) + b.number, Scale::Si),
            (Scale::Si, Scale::Si) => (a.number + b.number, Scale::Si),
        };
        Value { number, scale, fraction: false }
    }
}

fn times(a: Value, b: Value) -> Result<Value, Problem> {
    let scale = match (a.scale, b.scale) {
        (Scale::Plain, scale) | (scale, Scale::Plain) => scale,
        _ => return Err(Problem::MeasureTimesMeasure),
    };
    Ok(Value { number: a.number * b.number, scale, fraction: a.fraction || b.fraction })
}

fn over(a: Value, b: Value) -> Result<Value, Problem> {
    let Scale::Plain = b.scale else { return Err(Problem::DivisionByMeasure) };
    if b.number == 0.0 {
        return Err(Problem::DivisionByZero);
    }
    if a.fraction || b.fraction {
        return Err(Problem::TwoFractions);
    }
    Ok(Value { number: a.number / b.number, scale: a.scale, fraction: true })
}

fn ends_with_fraction(text: &str) -> bool {
    let digits = text.trim_end().trim_end_matches(|c: char| c.is_ascii_digit());
    digits.trim_end().ends_with('/')
}

/// The word that a refusal quotes.
fn excerpt(text: &str) -> String {
    let word = text.split([' ', '(', ')', '+', '*']).next().unwrap_or_default();
    let word = if word.is_empty() { text } else { word };
    word.chars().take(20).collect()
}
