//! Whether screws hold a load: how much of what they may carry it uses.

use uom::si::f64::{Force, Ratio};
use uom::si::force::newton;
use uom::si::ratio::ratio;

use crate::coating::range::{OutOfRange, ceiling, within};
use crate::formula::{Formula as _, formula};
use crate::source::Source;
use crate::words::fastening as words;
use crate::words::range as names;

/// The load is taken to spread evenly over the screws.
pub static EVEN_SHARE: Source = Source::practice_of(words::SOURCE_EVEN_SHARE);

formula! {
    /// How much of what the screws may carry a load uses.
    ShareUsed: "F / (n · P)", &EVEN_SHARE;
    |of| of.load.get::<newton>() / (f64::from(of.screws) * of.each.get::<newton>()) => f64 as share;
    /// The load.
    "F" as force: load: Force,
    /// How many screws.
    "n" as count: screws: u32,
    /// What each may carry.
    "P" as force: each: Force,
}

/// The share of what the screws may carry that a load uses: up to 1 they hold it. Source:
/// [`EVEN_SHARE`].
///
/// # Errors
/// Load from 0 to 1e7 N, from 1 to 100 000 screws, each from 0.1 to 1e6 N.
pub fn used(load: Force, screws: u32, each: Force) -> Result<Ratio, OutOfRange> {
    within(names::LOAD, load.get::<newton>(), 0.0, 1e7, "N")?;
    within(names::NUMBER_OF_SCREWS, f64::from(screws), 1.0, 1e5, "")?;
    each_n(each)?;
    Ok(Ratio::new::<ratio>(ShareUsed { load, screws, each }.value()))
}

/// The least number of screws that hold a load. Source: [`EVEN_SHARE`].
///
/// # Errors
/// Load from 0 to 1e7 N, each screw from 0.1 to 1e6 N.
pub fn least_screws(load: Force, each: Force) -> Result<u32, OutOfRange> {
    let load = within(names::LOAD, load.get::<newton>(), 0.0, 1e7, "N")?;
    Ok(ceiling(load / each_n(each)?) as u32)
}

fn each_n(each: Force) -> Result<f64, OutOfRange> {
    within(names::LOAD_THAT_ONE_SCREW_MAY_CARRY, each.get::<newton>(), 0.1, 1e6, "N")
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;
    use uom::si::f64::{Length, Mass, Pressure};
    use uom::si::length::inch;
    use uom::si::mass::kilogram;
    use uom::si::pressure::megapascal;

    use super::*;
    use crate::fastening::acceleration::{EN_12195, forces};
    use crate::fastening::screw::by_gauge;
    use crate::fastening::sheet_steel::{allowable, gauge_thickness};

    /// By AISI S100: 0.85 x 0.0478 in x 0.164 in x 45 ksi / 3 = 99.96 lb (445 N) for a #8 in 18
    /// gauge. Sixty kilograms of ceiling at 2 g down are 1177 N.
    #[test]
    fn a_ceiling_on_eighteen_gauge_bows() {
        let screw = by_gauge(8).unwrap();
        let steel = gauge_thickness(18).unwrap();
        let strength = Pressure::new::<megapascal>(310.264);
        let one = allowable(steel, screw.diameter(), Length::new::<inch>(0.272), strength).unwrap();
        assert!((one.pull_out.get::<newton>() - 445.0).abs() < 1.5, "{:?}", one.pull_out);
        let load = forces(Mass::new::<kilogram>(60.0), &EN_12195).unwrap().downward;
        assert_eq!(least_screws(load, one.pull_out), Ok(3));
        let share = used(load, 60, one.pull_out).unwrap().get::<ratio>();
        assert!((share - 1176.8 / (60.0 * 445.0)).abs() < 1e-3, "{share}");
    }

    proptest! {
        #[test]
        fn the_least_number_is_enough(load in 0.0..1e6, each in 20.0..1e4) {
            let (load, each) = (Force::new::<newton>(load), Force::new::<newton>(each));
            let least = least_screws(load, each).unwrap().max(1);
            prop_assert!(used(load, least, each).unwrap().get::<ratio>() <= 1.0 + 1e-8);
            // One fewer would be overloaded.
            if least > 1 {
                prop_assert!(used(load, least - 1, each).unwrap().get::<ratio>() > 1.0);
            }
        }

        #[test]
        fn no_number_breaks_it(a in any::<f64>(), b in any::<f64>(), n in any::<u32>()) {
            let got = used(Force::new::<newton>(a), n, Force::new::<newton>(b));
            prop_assert!(got.is_err() || got.is_ok_and(|share| share.value.is_finite()));
            let _ = least_screws(Force::new::<newton>(a), Force::new::<newton>(b));
        }
    }
}
