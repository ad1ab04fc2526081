//! What a tape, a label or a meter says: text and quantities.
//!
//! Text goes in through [`Measure::read`] and [`read_number`] (generous: trade spellings, fractions,
//! sums; what is ambiguous is refused with the reason and a right example). Quantities come out
//! through [`Style`], which knows the unit system and how finely the tape can be read. Between the
//! two everything is SI: `uom` types, or plain `f64` in the SI unit of the dimension.

mod aloud;
mod convert;
mod decimal;
pub mod dimension;
pub mod electric;
mod expression;
mod mark;
mod measure;
mod needed;
mod normal;
mod number;
mod problem;
pub mod soundness;
mod style;
mod unit;

#[cfg(test)]
mod tests;

pub use convert::*;
pub use decimal::{
    amount, beside, down, from_digits, minutes_down, minutes_up, money, nearest, percent, plain,
    significant, span, up,
};
pub use dimension::*;
pub use mark::{Marked, Rounding, UnitSystem};
pub use measure::{MAX_TYPED, Measure, read_number};
pub use needed::Pour;
pub use problem::{Problem, ReadError};
pub use style::Style;
pub use unit::{Dimension, Unit};
