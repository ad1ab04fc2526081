//! Mixes, pot lives and batches, published and worked by hand, and what holds for all of them.

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

fn pot_life(
    label: Time,
    label_at: ThermodynamicTemperature,
    working: ThermodynamicTemperature,
) -> Result<Time, OutOfRange> {
    Ok(PotLife::new(label, label_at, working)?.value())
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

/// Makers' published pairs of ratios: 2:1 by volume is 100:47 by mass where b has 0.940 of the
/// density of a; 3:1 is 3.5:1 at 0.857.
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
    assert!(Msg::from(Fault::NoDensity { of_a: false }).to_string().contains("part B"));
}

/// The rule worked for 20 min at 25 C, as makers' tables round it: 40 at 15, 28.3 at 20, 14.1 at
/// 30, 10 at 35 C.
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
        a in 0.1..100.0,
        b in 0.1..100.0,
        da in 500.0..3000.0,
        db in 500.0..3000.0,
        whole in 0.0..1000.0,
        mass in any::<bool>(),
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
    fn batches_hold_everything_and_none_too_much(
        total in 0.0..500.0,
        passes in 1_u32..9,
        largest in 0.05..60.0,
    ) {
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
    fn any_input_gives_a_finite_answer_or_a_fault(
        a in any::<f64>(),
        b in any::<f64>(),
        c in any::<f64>(),
        d in 0.01..100.0,
        n in any::<u32>(),
    ) {
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

/// A cylinder by hand: 100 mm across holds 7.854 ml a millimetre, half a litre 63.66 mm.
#[test]
fn heights_in_a_straight_cup() {
    let across = uom::si::f64::Length::new::<millimeter>(100.0);
    let height = height_in_cup(Volume::new::<liter>(0.5), across).unwrap();
    assert!((height.get::<millimeter>() - 63.662).abs() < 1e-3);
    assert!(height_in_cup(Volume::new::<liter>(f64::NAN), across).is_err());
}
