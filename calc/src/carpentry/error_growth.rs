//! How the error of a single reading grows when marks are chained or templates copied.

use crate::quantity::Length;
use crate::source::Source;

/// Chained dimensions add their tolerances; dimensions from one datum do not.
pub static TOLERANCE_BUILDUP: Source = Source::transcribed(
    "ASME Y14.5-2018",
    "chain and baseline dimensioning; independent errors add as the root of the sum of squares",
);

/// How far off a mark can be after a number of steps, each with the same error.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ErrorGrowth {
    /// Steps taken, one from each mark (or copy) to the next.
    pub steps: usize,
    /// Set from one datum: the error of one reading. [length]
    pub datum: Length,
    /// Chained, all errors the same way: n · t. [length]
    pub chain_worst: Length,
    /// Chained, errors independent of each other: √n · t. [length]
    pub chain_rss: Length,
}

/// The error after `steps` steps of ±`error` each.
///
/// Source: [`TOLERANCE_BUILDUP`].
pub fn error_growth(error: Length, steps: usize) -> ErrorGrowth {
    let n = steps as f64;
    ErrorGrowth { steps, datum: error, chain_worst: error * n, chain_rss: error * n.sqrt() }
}

#[cfg(test)]
mod tests {
    use super::*;
    use uom::si::length::millimeter;

    /// A published tolerance stack of ten steps of ±0.1 mm: ±1.0 mm worst, ±0.316 mm RSS.
    #[test]
    fn ten_steps_of_a_tenth() {
        let growth = error_growth(Length::new::<millimeter>(0.1), 10);
        assert!((growth.chain_worst.get::<millimeter>() - 1.0).abs() < 1e-12);
        assert!((growth.chain_rss.get::<millimeter>() - 0.316).abs() < 5e-4);
        assert!((growth.datum.get::<millimeter>() - 0.1).abs() < 1e-12);
    }
}
