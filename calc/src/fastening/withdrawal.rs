//! What a screw holds when it is pulled straight out of side grain.

use uom::si::f64::{Force, Length};
use uom::si::force::newton;
use uom::si::length::millimeter;

use crate::coating::range::{OutOfRange, within};
use crate::source::Source;
use crate::words::range as names;

/// Design withdrawal of wood screws: 2850 G² D pounds for each inch of thread in the wood.
pub static DESIGN: Source = Source::transcribed(
    "NDS for Wood Construction; Brockenbrough, eq. 6.37",
    "W = 2850 G2 D lb per inch of thread, side grain",
);

/// Ultimate withdrawal: 15 700 G² D L pounds.
pub static ULTIMATE: Source = Source::from_memory(
    "USDA Wood Handbook FPL-GTR-190, chapter 8",
    "F = 108.25 G2 D L newtons, in mm",
);

/// Specific gravities that design tables use.
pub static SPECIFIC_GRAVITIES: Source = Source::transcribed(
    "NDS for Wood Construction, as handbooks print it",
    "table 6.2: specific gravity",
);

/// Species and their specific gravity. Source: [`SPECIFIC_GRAVITIES`].
pub static SPECIES: [(&str, f64); 4] =
    [("Douglas fir", 0.51), ("southern pine", 0.59), ("spruce", 0.41), ("redwood", 0.42)];

/// What a screw may be loaded with, straight out of side grain. Source: [`DESIGN`]. End grain
/// holds nothing that may be counted on.
///
/// # Errors
/// Specific gravity from 0.2 to 1.2, outside diameter from 2 to 8 mm, thread in the wood from 0
/// to 300 mm.
pub fn design(
    specific_gravity: f64,
    diameter: Length,
    thread: Length,
) -> Result<Force, OutOfRange> {
    // 2850 lb/in² in newtons per mm².
    withdrawal(2850.0 * LB_IN2_N_MM2, specific_gravity, diameter, thread)
}

/// What pulls a screw out, on average. Source: [`ULTIMATE`].
///
/// # Errors
/// As [`design`].
pub fn ultimate(
    specific_gravity: f64,
    diameter: Length,
    thread: Length,
) -> Result<Force, OutOfRange> {
    withdrawal(108.25, specific_gravity, diameter, thread)
}

/// 1 lbf/in² in N/mm²: exact, from 1 lbf = 4.4482216152605 N and 1 in = 25.4 mm.
const LB_IN2_N_MM2: f64 = 4.448_221_615_260_5 / (25.4 * 25.4);

fn withdrawal(
    factor: f64,
    specific_gravity: f64,
    diameter: Length,
    thread: Length,
) -> Result<Force, OutOfRange> {
    let gravity = within(names::SPECIFIC_GRAVITY, specific_gravity, 0.2, 1.2, "")?;
    let diameter = within(names::SCREW_DIAMETER, diameter.get::<millimeter>(), 2.0, 8.0, "mm")?;
    let thread = within(names::THREAD_IN_THE_WOOD, thread.get::<millimeter>(), 0.0, 300.0, "mm")?;
    Ok(Force::new::<newton>(factor * gravity * gravity * diameter * thread))
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;
    use uom::si::length::inch;

    use super::super::screw::by_gauge;
    use super::*;

    fn pounds_per_inch(gravity: f64, gauge: u8) -> f64 {
        let screw = by_gauge(gauge).unwrap();
        let force = design(gravity, screw.diameter(), Length::new::<inch>(1.0)).unwrap();
        force.get::<newton>() / 4.448_221_615_260_5
    }

    /// A handbook's worked example on the NDS formula: G 0.45, #10: 109 lb per inch.
    #[test]
    fn published_example() {
        let got = pounds_per_inch(0.45, 10);
        assert!((got - 109.0).abs() < 1.0, "{got}");
    }

    /// The formula worked for two densities and five gauges.
    #[test]
    fn by_density_and_gauge() {
        for (gravity, row) in
            [(0.35, [48.2, 57.3, 66.3, 75.4, 84.5]), (0.50, [98.3, 116.9, 135.4, 153.9, 172.4])]
        {
            for (gauge, expected) in [6, 8, 10, 12, 14].into_iter().zip(row) {
                let got = pounds_per_inch(gravity, gauge);
                assert!((got - expected).abs() < 0.06, "G {gravity} #{gauge}: {got}");
            }
        }
    }

    /// The design value of the NDS stands well below the handbook's ultimate: 15 700 / 2850 = 5.5.
    #[test]
    fn ultimate_over_design() {
        let (d, thread) = (Length::new::<millimeter>(4.166), Length::new::<millimeter>(25.4));
        let ratio = ultimate(0.42, d, thread).unwrap() / design(0.42, d, thread).unwrap();
        assert!((ratio.value - 15_700.0 / 2850.0).abs() < 0.001, "{ratio:?}");
    }

    proptest! {
        #[test]
        fn any_input_gives_a_finite_load_or_a_fault(
            a in any::<f64>(),
            b in any::<f64>(),
            c in any::<f64>(),
            d in 0.2..1.2,
        ) {
            let mm = Length::new::<millimeter>;
            for (gravity, diameter, thread) in [(a, b, c), (d, 4.0, a), (d, a, 20.0), (a, 4.0, 20.0)] {
                let got = ultimate(gravity, mm(diameter), mm(thread));
                prop_assert!(got.is_err() || got.is_ok_and(|force| force.value.is_finite() && force.value >= 0.0));
            }
        }
    }
}
