//! How long a screw must be to hold a stack to steel, and the next length on the shelf.

use uom::si::f64::Length;
use uom::si::length::{inch, millimeter};

use super::drill_point::DrillPoint;
use super::screw::{Screw, Thread};
use crate::coating::range::{OutOfRange, within};
use crate::formula::formula;
use crate::source::Source;
use crate::words::fastening as words;
use crate::words::range as names;

/// At least three full threads must stand out behind the steel.
pub static THREE_THREADS: Source = Source::transcribed(
    "ICC-ES ESR-3870; AISI S240 (from memory)",
    "screws into steel: at least three exposed threads",
);

/// How many full threads stand out behind the steel. Source: [`THREE_THREADS`].
pub const THREADS_BEHIND: f64 = 3.0;

/// Lengths of screws in common stock, in inches.
pub static STANDARD_LENGTHS_IN: [f64; 14] =
    [0.5, 0.625, 0.75, 0.875, 1.0, 1.25, 1.5, 1.625, 1.75, 2.0, 2.25, 2.5, 3.0, 3.5];

/// Where [`STANDARD_LENGTHS_IN`] comes from.
pub static STANDARD_LENGTHS: Source = Source::practice_of(words::SOURCE_STOCK);

formula! {
    /// The least length of a screw, head to tip.
    Need: "L = g + t + h + p", &THREE_THREADS;
    |of| of.grip + of.steel + of.threads + of.point => Length as small;
    /// What is drawn to the steel: the stack, head to steel.
    "g" as small: grip: Length,
    /// All the steel that is drilled and threaded.
    "t" as small: steel: Length,
    /// Three threads behind the steel.
    "h" as small: threads: Length,
    /// The drill point, which has no full thread and comes on top; zero for a screw in a drilled hole.
    "p" as small: point: Length,
}

/// The least length of a screw: stack + steel + three threads, and the drill point where there is
/// one. Source: [`THREE_THREADS`].
///
/// A countersunk head counts into the length, a raised one does not: `stack` is measured from
/// where the head bears on it or, countersunk, is flush with it.
///
/// # Errors
/// Each layer from 0 to 300 mm, steel from 0 to 12.7 mm (the most that a screw drills).
pub fn least_length(
    stack: &[Length],
    steel: Length,
    screw: &Screw,
    point: Option<DrillPoint>,
) -> Result<Need, OutOfRange> {
    let mut grip = Length::new::<millimeter>(0.0);
    for layer in stack {
        within(names::THICKNESS, layer.get::<millimeter>(), 0.0, 300.0, "mm")?;
        grip += *layer;
    }
    within(names::STEEL, steel.get::<millimeter>(), 0.0, 12.7, "mm")?;
    let threads = THREADS_BEHIND * screw.pitch(Thread::Tapping);
    let point =
        point.and_then(|point| point.length(screw.gauge)).unwrap_or(Length::new::<millimeter>(0.0));
    Ok(Need { grip, steel, threads, point })
}

/// The shortest of the lengths offered that is long enough; none where all are too short.
/// A length that is short by 0.01 mm still is long enough: 7/8 in and 22.2 mm are one screw.
pub fn next_length(least: Length, offered: &[Length]) -> Option<Length> {
    let least = least.get::<millimeter>() - 0.01;
    offered
        .iter()
        .copied()
        .filter(|length| length.get::<millimeter>() >= least && length.value.is_finite())
        .min_by(|a, b| a.value.total_cmp(&b.value))
}

/// [`STANDARD_LENGTHS_IN`] as lengths.
pub fn standard_lengths() -> impl Iterator<Item = Length> {
    STANDARD_LENGTHS_IN.iter().map(|length| Length::new::<inch>(*length))
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::super::screw::{SCREWS, by_gauge};
    use super::*;
    use crate::formula::Formula as _;

    fn inches(value: f64) -> Length {
        Length::new::<inch>(value)
    }

    /// #8-18 (SAE J78): a 3/4 in strip on 0.0598 in steel, and three threads of 1/18 in.
    #[test]
    fn strip_on_sheet_steel() {
        let screw = by_gauge(8).unwrap();
        let need = least_length(&[inches(0.75)], inches(0.0598), screw, None).unwrap();
        assert!((need.value().get::<inch>() - (0.75 + 0.0598 + 3.0 / 18.0)).abs() < 1e-9);
        let offered: Vec<_> = standard_lengths().collect();
        assert!((next_length(need.value(), &offered).unwrap().get::<inch>() - 1.0).abs() < 1e-9);
        let with_point =
            least_length(&[inches(0.75)], inches(0.0598), screw, Some(DrillPoint::Two)).unwrap();
        assert!(with_point.value() > need.value());
        assert!(
            (next_length(with_point.value(), &offered).unwrap().get::<inch>() - 1.25).abs() < 1e-9
        );
    }

    #[test]
    fn the_next_length_is_the_shortest_that_reaches() {
        let offered = [2.0, 1.0, 1.5].map(inches);
        assert_eq!(next_length(inches(1.2), &offered), Some(inches(1.5)));
        assert_eq!(next_length(inches(1.5), &offered), Some(inches(1.5)));
        assert_eq!(next_length(inches(2.1), &offered), None);
        assert_eq!(next_length(inches(2.1), &[]), None);
    }

    proptest! {
        #[test]
        fn any_input_gives_a_finite_length_or_a_fault(
            a in any::<f64>(),
            b in any::<f64>(),
            c in 0.0..12.0,
        ) {
            for screw in &SCREWS {
                for steel in [b, c] {
                    let stack = [Length::new::<millimeter>(a), Length::new::<millimeter>(c)];
                    let need = least_length(&stack, Length::new::<millimeter>(steel), screw, Some(DrillPoint::Three));
                    prop_assert!(need.is_err() || need.is_ok_and(|need| need.value().value.is_finite() && need.value().value > 0.0));
                }
            }
            let _ = next_length(Length::new::<millimeter>(a), &[Length::new::<millimeter>(b)]);
        }
    }
}
