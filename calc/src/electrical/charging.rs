//! The highest voltage that can stand on a fuse and its holder, and the ratings they are made with.

use super::sources;
use crate::energy::battery_voltage::{self, Chemistry};
use crate::source::Source;

/// Highest nominal voltage that the direct-current sheets take: sixteen cells of lithium iron
/// phosphate. From 50 V on other rules hold, save for a 48 V battery's own charging.
pub const GREATEST_NOMINAL_V: f64 = 51.2;
/// Highest charging voltage that they take as typed: the same sixteen cells. Twenty-four of lead go
/// higher while they are equalised, which the fuse stands where nothing is typed; nobody wires for that
/// by these sheets.
///
/// # Source
/// [`battery_voltage::LITHIUM_CELL`].
pub const GREATEST_CHARGING_V: f64 = 58.4;

/// The highest voltage of a source and who says so.
///
/// What was entered for charging counts; else the source's own, or the highest that a battery of its
/// voltage is charged to ([`battery_voltage::highest_v`]), whichever is more.
pub fn highest_v(source_v: f64, charging_v: Option<f64>) -> (f64, &'static Source) {
    if let Some(charging_v) = charging_v {
        return (charging_v.max(source_v), &sources::CHARGING_AS_GIVEN);
    }
    let (charged_v, source) = battery_voltage::highest_v(source_v, Chemistry::Unknown);
    (charged_v.max(source_v), source)
}

/// Voltage ratings of fuses and holders, and the greatest current of each.
static RATINGS_V: [(f64, f64, &Source); 3] = [
    (32.0, 500.0, &sources::FUSE_32_V),
    (58.0, 100.0, &sources::ISO_8820_3_VOLTAGE),
    (125.0, 1200.0, &sources::CLASS_T_VOLTAGE),
];

/// The least voltage that a fuse of `rating_a` and its holder are rated for, at least `highest_v`; the
/// greatest there is where none is enough.
///
/// # Source
/// [`sources::FUSE_32_V`], [`sources::ISO_8820_3_VOLTAGE`], [`sources::CLASS_T_VOLTAGE`].
pub fn fuse_voltage(highest_v: f64, rating_a: f64) -> (f64, &'static Source) {
    let fits = |(volts, most_a, _): &&(f64, f64, &Source)| {
        highest_v <= volts * (1.0 + 1e-9) && rating_a <= *most_a
    };
    let last = &RATINGS_V[RATINGS_V.len() - 1];
    let (volts, _, source) = RATINGS_V.iter().find(fits).unwrap_or(last);
    (volts.max(highest_v.min(1000.0)), source)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// Four cells of lithium iron phosphate at 3.65 V, and eight, twelve and sixteen; six of lead and more, equalised.
    #[test]
    fn charged_to_more_than_the_nominal_voltage() {
        for (source_v, charged_v, rated_v) in [
            (12.8, 14.6, 32.0),
            (12.2, 16.0, 32.0),
            (24.0, 32.0, 32.0),
            (25.6, 29.2, 32.0),
            (38.4, 43.8, 58.0),
            (36.0, 48.0, 58.0),
            (51.2, 58.4, 125.0),
            (48.0, 64.0, 125.0),
        ] {
            let (highest, _) = highest_v(source_v, None);
            assert!((highest - charged_v).abs() < 1e-9, "{source_v}: {highest}");
            assert_eq!(fuse_voltage(highest, 40.0).0, rated_v);
        }
        assert_eq!(highest_v(12.8, Some(14.4)).0, 14.4);
        assert_eq!(fuse_voltage(43.8, 150.0).0, 125.0, "58 V blades end at 100 A");
    }

    proptest! {
        #[test]
        fn never_rated_below_what_stands_on_it(
            source_v in 0.1..51.2f64, extra in prop::option::of(0.0..7.0f64), rating_a in 1.0..1000.0f64,
        ) {
            let (highest, _) = highest_v(source_v, extra.map(|extra| source_v + extra));
            prop_assert!(highest >= source_v);
            prop_assert!(fuse_voltage(highest, rating_a).0 >= highest);
        }
    }
}
