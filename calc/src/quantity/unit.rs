//! Units and the dimensions they measure: how a spelling in the text is recognised.

use crate::words::Id;

/// One unit of a [`Dimension`]: how it is spelled and what it is worth.
#[derive(Debug)]
pub struct Unit {
    /// Spellings that are read; the first is the one written to people.
    ///
    /// A space stands for any number of spaces or a multiplication dot, `/` also for "per"; `²`,
    /// `^2` and `2` are alike, as are `µ` and `u`, `°` and `deg`, `Ω` and `ohm`.
    pub symbols: &'static [&'static str],
    /// Value of one unit in the SI unit of the dimension.
    pub factor: f64,
    /// Added to the number before it is multiplied; zero except for temperatures.
    pub offset: f64,
    /// Upper and lower case tell this unit from another (`mW` and `MW`).
    pub exact_case: bool,
}

impl Unit {
    /// A unit worth `factor` of the SI unit.
    pub const fn new(symbols: &'static [&'static str], factor: f64) -> Self {
        Self { symbols, factor, offset: 0.0, exact_case: false }
    }

    /// The same unit with its zero elsewhere: SI value = (number + offset) × factor.
    pub const fn with_offset(self, offset: f64) -> Self {
        Self { offset, ..self }
    }

    /// The same unit, read only in the case that its spellings have.
    pub const fn exact(self) -> Self {
        Self { exact_case: true, ..self }
    }

    /// The spelling written to people.
    pub fn symbol(&self) -> &'static str {
        self.symbols.first().copied().unwrap_or_default()
    }

    /// The SI value of `number` of this unit, rounded once.
    pub fn to_si(&self, number: f64) -> f64 {
        let number = if self.offset == 0.0 { number } else { number + self.offset };
        match self.whole_divisor() {
            Some(divisor) => number / divisor,
            None => number * self.factor,
        }
    }

    /// How many of this unit the SI value is.
    pub fn from_si(&self, si: f64) -> f64 {
        let number = match self.whole_divisor() {
            Some(divisor) => si * divisor,
            None => si / self.factor,
        };
        number - self.offset
    }

    /// Whether both are the same unit.
    pub fn is(&self, other: &Unit) -> bool {
        self.symbol() == other.symbol() && self.factor == other.factor
    }

    /// How many `smaller` make one of this unit, where that is a whole number above one.
    pub(super) fn whole_ratio(&self, smaller: &Unit) -> Option<f64> {
        let ratio = self.factor / smaller.factor;
        let whole = ratio.round();
        ((ratio - whole).abs() < 1e-9 * ratio && whole > 1.0).then_some(whole)
    }

    /// One unit is 1/n of the SI unit: dividing by n is exact where multiplying by 0.001 is not.
    fn whole_divisor(&self) -> Option<f64> {
        let inverse = 1.0 / self.factor;
        let whole = inverse.round();
        ((inverse - whole).abs() <= 1e-15 * whole && whole > 1.0).then_some(whole)
    }
}

/// A kind of quantity with the units that it is read in.
#[derive(Debug)]
pub struct Dimension {
    /// What it is called, with its article: `a length`.
    pub name: Id,
    /// The units, the most usual first.
    pub units: &'static [Unit],
    /// A right example, as every refusal shows it.
    pub example: Id,
}

impl Dimension {
    /// The unit with exactly this spelling.
    pub fn unit(&'static self, symbol: &str) -> Option<&'static Unit> {
        self.units.iter().find(|unit| unit.symbols.contains(&symbol))
    }

    /// Whether both are the same dimension.
    pub fn is(&self, other: &Dimension) -> bool {
        self.name == other.name
    }
}

/// A spelling found at the start of a text.
#[derive(Clone, Copy)]
pub(super) struct Found {
    pub unit: &'static Unit,
    pub dimension: &'static Dimension,
    /// Bytes of text that the spelling takes up.
    pub length: usize,
    exact: bool,
    /// Another unit of the dimension differs from this one in case alone.
    pub rival: Option<&'static Unit>,
}

/// The longest spelling that `text` starts with; among equals the asked dimension comes first.
pub(super) fn find(
    text: &str,
    asked: &'static Dimension,
    others: &[&'static Dimension],
) -> Option<Found> {
    let mut best = longest_of(text, asked, None);
    if best.is_some_and(|found| ends_for_good(text, found.length)) {
        return best;
    }
    for &dimension in others {
        best = longest_of(text, dimension, best);
    }
    best
}

fn longest_of(text: &str, dimension: &'static Dimension, so_far: Option<Found>) -> Option<Found> {
    let mut best = so_far;
    for unit in dimension.units {
        for symbol in unit.symbols {
            let Some((length, exact)) = match_symbol(text, symbol) else { continue };
            if unit.exact_case && !exact {
                continue;
            }
            let found = Found { unit, dimension, length, exact, rival: None };
            best = Some(best.map_or(found, |old| better(old, found)));
        }
    }
    best
}

fn better(old: Found, new: Found) -> Found {
    if new.length != old.length {
        return if new.length > old.length { new } else { old };
    }
    if !new.dimension.is(old.dimension) {
        return old;
    }
    match (old.exact, new.exact) {
        (false, true) => new,
        (false, false) if !old.unit.is(new.unit) => Found { rival: Some(new.unit), ..old },
        _ => old,
    }
}

/// Length of `symbol` at the start of the normalised `text`, and whether the case agrees.
fn match_symbol(text: &str, symbol: &str) -> Option<(usize, bool)> {
    let text = text.as_bytes();
    let mut at = 0;
    let mut exact = true;
    for &wanted in symbol.as_bytes() {
        match wanted {
            b' ' => {
                at = skip(text, at, b" *");
                continue;
            }
            b'/' => {
                at = skip(text, at, b" ");
                at += if text.get(at) == Some(&b'/') {
                    1
                } else if text.get(at..at + 3).is_some_and(|t| t.eq_ignore_ascii_case(b"per")) {
                    3
                } else {
                    return None;
                };
                at = skip(text, at, b" ");
                continue;
            }
            b'0'..=b'9' if at > 0 && text.get(at) == Some(&b'^') => at += 1,
            // The degree sign within W/(m·°C) and the like.
            b'C' | b'F' if at > 0 && text.get(at..at + 3) == Some(b"deg") => {
                at = skip(text, at + 3, b" ");
            }
            _ => {}
        }
        let found = *text.get(at)?;
        if !found.eq_ignore_ascii_case(&wanted) {
            return None;
        }
        exact &= found == wanted;
        at += 1;
    }
    ends_here(text, at).then_some((at, exact))
}

fn skip(text: &[u8], mut at: usize, these: &[u8]) -> usize {
    while text.get(at).is_some_and(|byte| these.contains(byte)) {
        at += 1;
    }
    at
}

/// No letter, power or further divisor goes on with the unit. Digits may follow: `7ft6in`.
fn ends_here(text: &[u8], at: usize) -> bool {
    let last_is_letter = at > 0 && text.get(at - 1).is_some_and(u8::is_ascii_alphanumeric);
    let goes_on = text.get(at).is_some_and(|b| b.is_ascii_alphabetic() || *b == b'^');
    if last_is_letter && goes_on {
        return false;
    }
    let slash = skip(text, skip(text, at, b"23"), b" ");
    if text.get(slash) != Some(&b'/') {
        return true;
    }
    let divisor = skip(text, slash + 1, b" ");
    !text.get(divisor).is_some_and(u8::is_ascii_alphabetic)
}

/// No unit of any dimension could be longer: spares the search through all of them.
fn ends_for_good(text: &str, at: usize) -> bool {
    let rest = text.get(at..).unwrap_or_default();
    let next = rest.trim_start();
    let joint = rest.len() == next.len() && next.starts_with(|c: char| c.is_ascii_digit());
    !joint && !next.starts_with(|c: char| c.is_ascii_alphabetic() || "^*/".contains(c))
}
