//! Formulas that carry their trace: what is shown of one is made from the very values that its result comes from.

use crate::quantity::Style;
use crate::report::Step;
use crate::source::Source;
use crate::words::{Arg, Msg};

/// A formula with its values in it.
pub trait Formula {
    /// What it gives.
    type Value;

    /// In symbols, as it is shown: `e = n · t`.
    const SYMBOLS: &'static str;

    /// Where it comes from.
    fn source(&self) -> &'static Source;

    /// Works it out.
    fn value(&self) -> Self::Value;

    /// What each symbol stands for, as it is shown: those of the right side, and last the result.
    fn shown(&self) -> (Vec<(&'static str, Arg)>, Arg);
}

/// Declares a formula: its symbols, its source, what it gives and how that is written; then for each of its values the
/// symbol and how it is written. The ways to write are functions of [`Arg`].
macro_rules! formula {
    (
        $(#[$doc:meta])*
        $name:ident: $symbols:literal, $source:expr;
        |$this:ident| $work:expr => $of:ty as $show:ident;
        $($(#[$field_doc:meta])* $symbol:literal as $arg:ident: $field:ident: $field_of:ty,)+
    ) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq)]
        pub struct $name {
            $($(#[$field_doc])* pub $field: $field_of,)+
        }

        impl $crate::formula::Formula for $name {
            type Value = $of;
            const SYMBOLS: &'static str = $symbols;

            fn source(&self) -> &'static $crate::source::Source {
                $source
            }

            fn value(&self) -> $of {
                let $this = self;
                $work
            }

            fn shown(&self) -> (Vec<(&'static str, $crate::words::Arg)>, $crate::words::Arg) {
                use $crate::words::Arg;
                let result = $crate::formula::Formula::value(self);
                (vec![$(($symbol, Arg::$arg(self.$field))),+], Arg::$show(result))
            }
        }

        impl $crate::outcome::Item for $name {
            const UNIT: &'static str = <$of as $crate::outcome::Item>::UNIT;

            fn value(&self) -> Option<$crate::outcome::Value> {
                $crate::outcome::Item::value(&$crate::formula::Formula::value(self))
            }
        }
    };
}
pub(crate) use formula;

/// A formula as a step of the working: in symbols, with its numbers, and its result.
pub fn step(name: impl Into<Msg>, of: &impl Formula, style: Style) -> Step {
    step_of(&name.into(), symbols_of(of), of.shown(), of.source(), style)
}

fn symbols_of<F: Formula>(_: &F) -> &'static str {
    F::SYMBOLS
}

fn step_of(
    name: &Msg,
    symbols: &'static str,
    (filled, result): (Vec<(&'static str, Arg)>, Arg),
    source: &'static Source,
    style: Style,
) -> Step {
    let written: Vec<(&str, String)> =
        filled.into_iter().map(|(symbol, arg)| (symbol, style.write(&arg))).collect();
    let right = symbols.split_once("= ").map_or(symbols, |(_, right)| right);
    Step::new(
        style.say(name.clone()),
        style.figure(symbols.to_owned()),
        style.figure(put_in(right, &written)),
        style.write(&result),
        source,
    )
}

/// Puts numbers in the places of symbols; where one symbol begins with another, the longer one is meant.
fn put_in(right: &str, written: &[(&str, String)]) -> String {
    let mut numbers = String::new();
    let mut rest = right;
    while let Some(next) = rest.chars().next() {
        let fits = written.iter().filter(|(symbol, _)| rest.starts_with(symbol));
        match fits.max_by_key(|(symbol, _)| symbol.len()) {
            Some((symbol, number)) => {
                rest = &rest[symbol.len()..];
                // Number and unit are squared together.
                if rest.starts_with('²') && number.contains(' ') {
                    numbers.push('(');
                    numbers.push_str(number);
                    numbers.push(')');
                } else {
                    numbers.push_str(number);
                }
            }
            None => {
                numbers.push(next);
                rest = &rest[next.len_utf8()..];
            }
        }
    }
    numbers
}

#[cfg(test)]
mod tests {
    use super::put_in;

    #[test]
    fn numbers_take_the_places_of_symbols() {
        let written = [("o₁", "5".to_owned()), ("p", "32".to_owned()), ("p₁", "16".to_owned())];
        assert_eq!(put_in("o₁ + (p − p₁)", &written), "5 + (32 − 16)");
        assert_eq!(
            put_in("√n · t", &[("n", "6".to_owned()), ("t", "1 mm".to_owned())]),
            "√6 · 1 mm"
        );
        assert_eq!(
            put_in("V² / R", &[("V", "12 V".into()), ("R", "2 ohm".into())]),
            "(12 V)² / 2 ohm"
        );
    }
}
