//! Two-part mixing: how much of each part, marks on one cup, pot life, and batches that can be poured in time.

use uom::si::f64::{Mass, MassDensity, ThermodynamicTemperature, Time, Volume, VolumeRate};
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::{hour, minute};
use uom::si::volume::liter;
use uom::si::volume_rate::liter_per_minute;

use super::range::{OutOfRange, ceiling, within};
use crate::source::Source;

/// Shares of a mix by volume or by mass; the volumes of the parts are taken to add up.
pub static SHARES: Source = Source::identity(
    "part = whole x share; mass ratio = volume ratio x density of a / density of b",
);

/// Reaction pace doubles for each 10 C warmer. Makers' texts give 1.5 to 2.5 times.
pub static POT_LIFE: Source = Source::common_practice(
    "pot life halves for each 10 C (18 F) warmer, doubles for each 10 C colder",
);

/// A batch must be poured within its pot life, and the batches of a pass are equal.
pub static BATCHES: Source =
    Source::identity("largest batch = the lesser of batch limit and pour rate x pot life");

/// The most batches that a plan is made for.
pub const MOST_BATCHES: u32 = 10_000;

/// What a mixing ratio counts in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum By {
    /// Parts by volume: measured in a cup.
    Volume,
    /// Parts by mass: measured on a scale.
    Mass,
}

/// A mixing ratio a : b.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mix {
    /// What the two numbers count in.
    pub by: By,
    /// Parts of a, such as the resin.
    pub a: f64,
    /// Parts of b, such as the hardener.
    pub b: f64,
    /// Density of a; needed for a ratio by mass.
    pub density_a: Option<MassDensity>,
    /// Density of b; needed for a ratio by mass.
    pub density_b: Option<MassDensity>,
}

/// How much of each part makes a volume.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Parts {
    /// Volume of a.
    pub a: Volume,
    /// Volume of b.
    pub b: Volume,
    /// Mass of a, where its density is known.
    pub a_mass: Option<Mass>,
    /// Mass of b, where its density is known.
    pub b_mass: Option<Mass>,
}

/// Where to stop when both parts go into one cup, a first.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CupMarks {
    /// Pour a up to here, and b from here ...
    pub first: Volume,
    /// ... up to here.
    pub second: Volume,
    /// What a scale that was set to zero with the empty cup shows after a, where densities are known.
    pub first_mass: Option<Mass>,
    /// What it shows after b.
    pub second_mass: Option<Mass>,
}

/// Equal batches, pass by pass.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Batches {
    /// How many passes the work is split into.
    pub passes: u32,
    /// How many batches each pass takes.
    pub per_pass: u32,
    /// All batches together.
    pub count: u32,
    /// What one batch holds.
    pub each: Volume,
    /// The most that one may hold; none where nothing limits it.
    pub largest: Option<Volume>,
}

/// Why a mix cannot be worked out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Fault {
    /// A ratio by mass without the density of a part.
    NoDensity {
        /// Whether it is part a's that is missing; else b's.
        of_a: bool,
    },
    /// So small batches that there would be more than [`MOST_BATCHES`].
    TooManyBatches {
        /// The most that one batch may hold, in litres.
        largest_l: f64,
        /// What all of them must hold, in litres.
        total_l: f64,
    },
    /// A value is outside its range.
    Range(OutOfRange),
}

/// How much of each part makes `whole`. Source: [`SHARES`].
///
/// # Errors
/// Whole from 0 to 1e6 l, parts from 0.001 to 100 000, densities from 100 to 10 000 kg/m³; both densities for a ratio by mass.
pub fn parts(mix: &Mix, whole: Volume) -> Result<Parts, Fault> {
    within("volume to mix", whole.get::<liter>(), 0.0, 1e6, "l")?;
    let share_a = volume_share_of_a(mix)?;
    let (a, b) = (whole * share_a, whole * (1.0 - share_a));
    let mass =
        |volume: Volume, density: Option<MassDensity>| density.map(|density| volume * density);
    Ok(Parts { a, b, a_mass: mass(a, mix.density_a), b_mass: mass(b, mix.density_b) })
}

/// The share of part a in the whole, by volume: from 0 to 1. Source: [`SHARES`].
///
/// # Errors
/// As [`parts`].
pub fn volume_share_of_a(mix: &Mix) -> Result<f64, Fault> {
    let a = within("parts of a", mix.a, 0.001, 1e5, "")?;
    let b = within("parts of b", mix.b, 0.001, 1e5, "")?;
    let density = |what, density: Option<MassDensity>| {
        let known = density.map(|density| density.get::<kilogram_per_cubic_meter>());
        known.map(|known| within(what, known, 100.0, 10_000.0, "kg/m3")).transpose()
    };
    let density_a = density("density of a", mix.density_a)?;
    let density_b = density("density of b", mix.density_b)?;
    match mix.by {
        By::Volume => Ok(a / (a + b)),
        By::Mass => {
            let a = a / density_a.ok_or(Fault::NoDensity { of_a: true })?;
            let b = b / density_b.ok_or(Fault::NoDensity { of_a: false })?;
            Ok(a / (a + b))
        }
    }
}

/// The marks for pouring both parts into one cup. Source: [`SHARES`].
pub fn cup_marks(parts: &Parts) -> CupMarks {
    CupMarks {
        first: parts.a,
        second: parts.a + parts.b,
        first_mass: parts.a_mass,
        second_mass: parts.a_mass.zip(parts.b_mass).map(|(a, b)| a + b),
    }
}

/// How much longer than on the label everything takes at another temperature: 2^((label - working) / 10 C). Source: [`POT_LIFE`].
///
/// # Errors
/// Both temperatures from -20 to 60 C.
pub fn pace(
    label_at: ThermodynamicTemperature,
    working: ThermodynamicTemperature,
) -> Result<f64, OutOfRange> {
    let label_at = label_at.get::<degree_celsius>();
    let label_at = within("temperature on the label", label_at, -20.0, 60.0, "C")?;
    let working = within("working temperature", working.get::<degree_celsius>(), -20.0, 60.0, "C")?;
    Ok(libm::exp2((label_at - working) / 10.0))
}

/// The pot life at the working temperature, from the label's. Source: [`POT_LIFE`].
///
/// # Errors
/// Label's pot life from 0.1 min to 30 days; temperatures as [`pace`].
pub fn pot_life(
    label: Time,
    label_at: ThermodynamicTemperature,
    working: ThermodynamicTemperature,
) -> Result<Time, OutOfRange> {
    within("pot life", label.get::<minute>(), 0.1, 43_200.0, "min")?;
    Ok(label * pace(label_at, working)?)
}

/// The most that a batch may hold: its limit, and what is poured within its pot life. Source: [`BATCHES`].
///
/// # Errors
/// Limit from 0.001 to 1e6 l, pour rate from 1e-4 to 1e4 l/min, pot life above 0 and up to 10 000 h.
pub fn largest_batch(
    limit: Option<Volume>,
    pour: Option<(VolumeRate, Time)>,
) -> Result<Option<Volume>, OutOfRange> {
    if let Some(limit) = limit {
        within("batch limit", limit.get::<liter>(), 0.001, 1e6, "l")?;
    }
    let poured = match pour {
        Some((rate, life)) => {
            within("pour rate", rate.get::<liter_per_minute>(), 1e-4, 1e4, "l/min")?;
            within("pot life", life.get::<hour>(), 1e-5, 1e4, "h")?;
            Some(rate * life)
        }
        None => None,
    };
    Ok(match (limit, poured) {
        (Some(limit), Some(poured)) => Some(limit.min(poured)),
        (limit, poured) => limit.or(poured),
    })
}

/// Splits a volume evenly into passes, and each pass into the fewest equal batches that hold no more than `largest`. Source: [`BATCHES`].
///
/// # Errors
/// Volume from 0 to 1e6 l, passes from 1 to 50; no more than [`MOST_BATCHES`] batches.
pub fn batches(total: Volume, passes: u32, largest: Option<Volume>) -> Result<Batches, Fault> {
    let total_l = within("volume to mix", total.get::<liter>(), 0.0, 1e6, "l")?;
    let passes_f = within("number of passes", f64::from(passes), 1.0, 50.0, "")?;
    let per_pass = match largest {
        _ if total_l == 0.0 => 0.0,
        None => 1.0,
        Some(largest) => {
            let largest_l = within("largest batch", largest.get::<liter>(), 1e-9, 1e9, "l")?;
            let per_pass = ceiling(total_l / passes_f / largest_l).max(1.0);
            if per_pass * passes_f > f64::from(MOST_BATCHES) {
                return Err(Fault::TooManyBatches { largest_l, total_l });
            }
            per_pass
        }
    };
    let count = per_pass * passes_f;
    let each = if count > 0.0 { total / count } else { Volume::new::<liter>(0.0) };
    Ok(Batches { passes, per_pass: per_pass as u32, count: count as u32, each, largest })
}

impl From<OutOfRange> for Fault {
    fn from(range: OutOfRange) -> Self {
        Self::Range(range)
    }
}

impl std::fmt::Display for Fault {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::NoDensity { of_a } => {
                let part = if *of_a { "a" } else { "b" };
                write!(
                    f,
                    "a ratio by mass needs the density of part {part} (its data sheet gives it, such as 1.15 kg/l); \
                     or give the ratio by volume"
                )
            }
            Self::TooManyBatches { largest_l, total_l } => write!(
                f,
                "{total_l:.1} l in batches of at most {largest_l:.4} l are more than {MOST_BATCHES}; \
                 raise the batch limit or the pour rate"
            ),
            Self::Range(range) => range.fmt(f),
        }
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;
    use uom::si::mass::kilogram;
    use uom::si::volume::milliliter;

    use super::*;

    fn by_volume(a: f64, b: f64) -> Mix {
        Mix { by: By::Volume, a, b, density_a: None, density_b: None }
    }

    fn density(value: f64) -> Option<MassDensity> {
        Some(MassDensity::new::<kilogram_per_cubic_meter>(value))
    }

    fn celsius(value: f64) -> ThermodynamicTemperature {
        ThermodynamicTemperature::new::<degree_celsius>(value)
    }

    fn liters(value: f64) -> Volume {
        Volume::new::<liter>(value)
    }

    /// A maker's 5:1 system: 34.5 ml are 28.75 + 5.75 ml; one cup is marked there.
    #[test]
    fn five_to_one() {
        let parts = parts(&by_volume(5.0, 1.0), Volume::new::<milliliter>(34.5)).unwrap();
        assert!((parts.a.get::<milliliter>() - 28.75).abs() < 1e-9);
        assert!((parts.b.get::<milliliter>() - 5.75).abs() < 1e-9);
        let marks = cup_marks(&parts);
        assert!((marks.second.get::<milliliter>() - 34.5).abs() < 1e-9);
        assert_eq!(marks.second_mass, None);
    }

    /// Makers' published pairs of ratios: 2:1 by volume is 100:47 by mass where b has 0.940 of the density of a; 3:1 is
    /// 3.5:1 at 0.857.
    #[test]
    fn published_volume_and_mass_ratios_agree() {
        for (volume_a, volume_b, mass_a, mass_b, relative) in
            [(2.0, 1.0, 100.0, 47.0, 0.940), (3.0, 1.0, 3.5, 1.0, 3.0 / 3.5)]
        {
            let density_b = density(1100.0 * relative);
            let by_volume =
                Mix { density_a: density(1100.0), density_b, ..by_volume(volume_a, volume_b) };
            let by_mass = Mix { by: By::Mass, a: mass_a, b: mass_b, ..by_volume };
            let (one, other) =
                (parts(&by_volume, liters(1.0)).unwrap(), parts(&by_mass, liters(1.0)).unwrap());
            assert!((one.a.get::<liter>() - other.a.get::<liter>()).abs() < 1e-6);
            let ratio = one.a_mass.unwrap() / one.b_mass.unwrap();
            assert!((ratio.value - mass_a / mass_b).abs() < 1e-6);
        }
    }

    #[test]
    fn by_mass_needs_densities() {
        let mix = Mix { by: By::Mass, density_a: density(1100.0), ..by_volume(2.0, 1.0) };
        assert_eq!(parts(&mix, liters(1.0)), Err(Fault::NoDensity { of_a: false }));
        assert!(Fault::NoDensity { of_a: false }.to_string().contains("part b"));
    }

    /// The rule worked for 20 min at 25 C, as makers' tables round it: 40 at 15, 28.3 at 20, 14.1 at 30, 10 at 35 C.
    #[test]
    fn pot_life_by_temperature() {
        for (t, minutes) in [(15.0, 40.0), (20.0, 28.3), (25.0, 20.0), (30.0, 14.1), (35.0, 10.0)] {
            let life = pot_life(Time::new::<minute>(20.0), celsius(25.0), celsius(t)).unwrap();
            assert!((life.get::<minute>() - minutes).abs() < 0.06, "{t} C: {life:?}");
        }
    }

    #[test]
    fn batches_fit_the_lesser_limit() {
        let life = Time::new::<minute>(20.0);
        let pour = (VolumeRate::new::<liter_per_minute>(0.02), life);
        let largest = largest_batch(Some(liters(0.5)), Some(pour)).unwrap().unwrap();
        assert!((largest.get::<liter>() - 0.4).abs() < 1e-9);
        let got = batches(liters(2.0), 2, Some(largest)).unwrap();
        assert_eq!((got.per_pass, got.count), (3, 6));
        assert!((got.each.get::<liter>() - 1.0 / 3.0).abs() < 1e-9);
        // Exactly full batches are not split once more for the last bit of a float.
        assert_eq!(batches(liters(0.1 + 0.2), 1, Some(liters(0.1))).unwrap().count, 3);
        assert_eq!(batches(liters(2.0), 3, None).unwrap().count, 3);
        assert_eq!(batches(liters(0.0), 3, None).unwrap().count, 0);
        assert!(matches!(
            batches(liters(1e6), 1, Some(liters(0.001))),
            Err(Fault::TooManyBatches { .. })
        ));
    }

    proptest! {
        #[test]
        fn parts_add_up_and_masses_keep_the_ratio(
            a in 0.1..100.0, b in 0.1..100.0, da in 500.0..3000.0, db in 500.0..3000.0, whole in 0.0..1000.0, mass in any::<bool>(),
        ) {
            let by = if mass { By::Mass } else { By::Volume };
            let mix = Mix { by, a, b, density_a: density(da), density_b: density(db) };
            let got = parts(&mix, liters(whole)).unwrap();
            prop_assert!(((got.a + got.b).get::<liter>() - whole).abs() <= 1e-12 * whole);
            let masses = (got.a_mass.unwrap().get::<kilogram>(), got.b_mass.unwrap().get::<kilogram>());
            let (left, right) = match by {
                By::Mass => (masses.0 * b, masses.1 * a),
                By::Volume => (got.a.get::<liter>() * b, got.b.get::<liter>() * a),
            };
            prop_assert!((left - right).abs() <= 1e-9 * left.abs().max(1e-12));
        }

        #[test]
        fn batches_hold_everything_and_none_too_much(total in 0.0..500.0, passes in 1_u32..9, largest in 0.05..60.0) {
            let got = batches(liters(total), passes, Some(liters(largest))).unwrap();
            let each = got.each.get::<liter>();
            prop_assert!(each <= largest * (1.0 + 2e-9));
            prop_assert!((each * f64::from(got.count) - total).abs() <= 1e-9 * total);
            prop_assert_eq!(got.per_pass * passes, got.count);
            // One batch fewer in a pass would be too large.
            if got.per_pass > 1 {
                prop_assert!(total / f64::from(passes) / f64::from(got.per_pass - 1) > largest);
            }
        }

        #[test]
        fn any_input_gives_a_finite_answer_or_a_fault(a in any::<f64>(), b in any::<f64>(), c in any::<f64>(), d in 0.01..100.0, n in any::<u32>()) {
            let mix = Mix { by: By::Mass, a: d, b: d, density_a: density(a), density_b: density(b) };
            for mix in [mix, by_volume(a, b), by_volume(a, d)] {
                if let Ok(got) = parts(&mix, liters(c)) {
                    prop_assert!((got.a + got.b).value.is_finite());
                }
            }
            for life in [pot_life(Time::new::<minute>(a), celsius(b), celsius(c)), pot_life(Time::new::<minute>(d), celsius(d), celsius(c))] {
                prop_assert!(life.is_err() || life.is_ok_and(|t| t.value.is_finite() && t.value > 0.0));
            }
            let pour = (VolumeRate::new::<liter_per_minute>(b), Time::new::<minute>(c));
            let _ = largest_batch(Some(liters(a)), Some(pour));
            for largest in [a, d] {
                if let Ok(got) = batches(liters(c), n % 60, Some(liters(largest))) {
                    prop_assert!(got.each.value.is_finite());
                }
            }
        }
    }
}
