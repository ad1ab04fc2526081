//! Checks of one run to one load.

use super::super::ampacity::BOAT_CABLE;
use super::*;
use proptest::prelude::*;

fn run(source_v: f64, load: Load, length_m: f64, temperature_c: f64) -> Run {
    Run {
        source_v,
        low_v: None,
        load,
        length_m,
        temperature_c,
        drop_limit_percent: 3.0,
        continuous: true,
        conditions: BOAT_CABLE,
    }
}

fn conductor(text: &str) -> Conductor {
    text.parse().expect(text)
}

/// IEC 60228 class 5 at 20 C, by Ohm's law.
#[test]
fn constant_current_drops() {
    for (amperes, length_m, size, source_v, drop_v, percent) in [
        (5.0, 4.0, "2.5 mm2", 12.0, 0.31920, 2.6600),
        (8.0, 6.0, "4 mm2", 12.8, 0.47520, 3.7125),
        (20.0, 3.0, "10 mm2", 12.0, 0.22920, 1.9100),
        (100.0, 1.5, "50 mm2", 12.8, 0.11580, 0.9047),
    ] {
        let wired =
            run(source_v, Load::Current(amperes), length_m, 20.0).wired(conductor(size)).unwrap();
        assert!((wired.drop_v - drop_v).abs() < 1e-9, "{size}: {}", wired.drop_v);
        assert!((wired.drop_percent - percent).abs() < 5e-5);
        assert_eq!(wired.within_limit, percent <= 3.0);
        assert!((wired.loss_w - amperes * drop_v).abs() < 1e-9);
        assert!((wired.load_v + wired.drop_v - source_v).abs() < 1e-12);
    }
}

/// Closed form; the last row's data are a published worked example (NASA GUNNS, electrical
/// aspect, course section 2.2.1: 120 V, 200 ohm, 5 W).
#[test]
fn constant_power_behind_a_resistance() {
    for (source_v, ohm, watts, load_v) in [
        (12.8, 0.06384, 60.0, 12.493406272),
        (12.0, 0.05, 100.0, 11.567764363),
        (12.0, 0.1, 250.0, 9.316624790),
        (12.0, 0.3, 114.0, 7.341640786),
        (12.0, 0.3, 120.0, 6.0),
        (13.2, 0.02, 1200.0, 11.022668877),
        (24.0, 0.25, 400.0, 18.633249581),
        (48.0, 0.1, 1000.0, 45.817424229),
        (120.0, 200.0, 5.0, 110.990195136),
    ] {
        let point = operating_point(source_v, Load::Power(watts), ohm).unwrap();
        assert!((point.load_v - load_v).abs() < 1e-9, "{source_v} V, {watts} W: {point:?}");
        assert!((point.load_v * point.current_a - watts).abs() < 1e-9 * watts);
    }
}

#[test]
fn power_beyond_the_limit_has_no_steady_voltage() {
    let error = operating_point(12.0, Load::Power(120.0001), 0.3).unwrap_err();
    let DropError::Collapse { most_w, .. } = error else { panic!("{error}") };
    assert!((most_w - 120.0).abs() < 1e-9);
    assert!(error.to_string().contains("120.0 W at the very most"), "{error}");
    let error = operating_point(12.0, Load::Current(50.0), 0.3).unwrap_err();
    assert_eq!(error, DropError::Overdrawn { current_a: 50.0, most_a: 40.0 });
}

/// ABYC E-11 11.14.2.6: CM = 10.75 I L / E, L in feet out and back. Its constant is copper at
/// 29.3 C, so solid copper of that area at that temperature must lose exactly E here too.
#[test]
fn abyc_circular_mils_lose_what_they_were_sized_for() {
    const FOOT: f64 = 0.3048;
    for (amperes, feet, volts, percent, printed_cm) in [
        (10.0, 21.0, 12.0, 10.0, 1881.25),
        (10.0, 21.0, 12.0, 3.0, 6270.83),
        (5.0, 30.0, 12.0, 3.0, 4479.17),
        (20.0, 40.0, 12.0, 3.0, 23888.9),
        (50.0, 10.0, 12.0, 10.0, 4479.17),
        (30.0, 25.0, 24.0, 3.0, 11197.9),
        (100.0, 8.0, 12.0, 3.0, 23888.9),
    ] {
        let wire = Conductor::per_length(10.75 / printed_cm / FOOT).unwrap();
        let mut run = run(volts, Load::Current(amperes), feet / 2.0 * FOOT, 20.0);
        run.drop_limit_percent = percent;
        let wired = run.wired(wire).unwrap();
        assert!((wired.drop_percent - percent).abs() < 1e-5 * percent, "{wired:?}");
        assert!((wired.longest_run_m.unwrap() / run.length_m - 1.0).abs() < 1e-5);
    }
}

/// The published worked example of ABYC's tables: a 10 A pump, 11 ft out and 10 ft back, 12 V. At
/// 10 % the answer is 16 AWG. At 3 % the table, whose next row is 25 ft, says 10 AWG; the 21 ft
/// themselves need 6271 circular mils, which 12 AWG has (6530).
#[test]
fn abyc_worked_example_of_a_pump() {
    const FOOT: f64 = 0.3048;
    let least = |feet: f64, limit: f64| {
        let mut run = run(12.0, Load::Current(10.0), feet / 2.0 * FOOT, 25.0);
        run.drop_limit_percent = limit;
        // Size by drop alone, with the formula's own constant.
        Conductor::awg().find(|c| {
            let area_cm = c.area_mm2().unwrap() / super::super::conductor::MM2_PER_CIRCULAR_MIL;
            let wire = Conductor::per_length(10.75 / area_cm / FOOT).unwrap();
            run.wired(wire).unwrap().within_limit
        })
    };
    assert_eq!(least(21.0, 10.0), Some(conductor("16 AWG")));
    assert_eq!(least(21.0, 3.0), Some(conductor("12 AWG")));
    assert_eq!(least(25.0, 3.0), Some(conductor("10 AWG")));
    // With the NEC's stranded resistances at 25 C the same sizes come out.
    let mut pump = run(12.0, Load::Current(10.0), 10.5 * FOOT, 25.0);
    assert_eq!(pump.least(Conductor::awg()).unwrap().conductor, conductor("12 AWG"));
    pump.length_m = 12.5 * FOOT;
    assert_eq!(pump.least(Conductor::awg()).unwrap().conductor, conductor("10 AWG"));
    pump.length_m = 10.5 * FOOT;
    pump.drop_limit_percent = 10.0;
    let thin = pump.wired(conductor("16 AWG")).unwrap();
    assert!(thin.within_limit && !pump.wired(conductor("18 AWG")).unwrap().within_limit);
    // Its fuse of 15 A asks for one size more: NEC 240.4(D).
    assert!(thin.fuse.is_err());
    assert_eq!(pump.least(Conductor::awg()).unwrap().conductor, conductor("14 AWG"));
}

#[test]
fn the_longest_run_loses_just_what_is_allowed() {
    for load in [Load::Power(60.0), Load::Current(5.0), Load::Resistance(2.4)] {
        for limit in [3.0, 10.0, 40.0] {
            let mut run = run(12.8, load, 1.0, 30.0);
            run.drop_limit_percent = limit;
            let wire = conductor("2.5 mm2");
            run.length_m = run.wired(wire).unwrap().longest_run_m.unwrap();
            let wired = run.wired(wire).unwrap();
            assert!((wired.drop_percent - limit).abs() < 1e-6, "{load:?}, {limit}");
            assert!(wired.within_limit);
        }
    }
    // A limit beyond one half is never reached by a constant power: the run ends at collapse.
    let mut run = run(12.8, Load::Power(60.0), 1.0, 30.0);
    run.drop_limit_percent = 80.0;
    run.length_m = run.wired(conductor("2.5 mm2")).unwrap().longest_run_m.unwrap();
    assert!(run.wired(conductor("2.5 mm2")).is_ok());
    run.length_m *= 1.000001;
    assert!(run.wired(conductor("2.5 mm2")).is_err());
}

#[test]
fn least_conductor_by_drop_by_ampacity_and_none() {
    // 40 A over 0.2 m: hardly any drop, but a 50 A fuse: 10 AWG carries 60 A and yet stands no fuse
    // above 30 A.
    let short = run(12.0, Load::Current(40.0), 0.2, 30.0);
    assert_eq!(short.least(Conductor::awg()).unwrap().conductor, conductor("8 AWG"));
    let far = run(12.0, Load::Current(40.0), 500.0, 30.0);
    let error = far.least(Conductor::awg()).unwrap_err();
    assert!(matches!(error, NoConductor::DropTooGreat { .. }), "{error}");
    let great = run(12.0, Load::Current(440.0), 0.1, 30.0);
    let error = great.least(Conductor::awg()).unwrap_err();
    assert!(matches!(error, NoConductor::AmpacityTooSmall { .. }), "{error}");
    assert_eq!(far.least([]), Err(NoConductor::NoChoices));
    assert_eq!(short.choices(Conductor::awg()).len(), 15);
}

/// By hand: 120 W at 12 V is 10 A, at 8 V 15 A, hence a fuse of 20 A and not of 15 A.
#[test]
fn a_constant_power_is_wired_for_the_lowest_voltage() {
    let mut power = run(12.0, Load::Power(120.0), 0.0, 30.0);
    let size = |run: &Run| run.least(Conductor::awg()).unwrap();
    assert_eq!(size(&power).fuse.unwrap().rating_a, 15.0);
    power.low_v = Some(8.0);
    let low = size(&power);
    assert_eq!((low.current_a, low.highest_a), (10.0, 15.0));
    assert_eq!((low.conductor, low.fuse.unwrap().rating_a), (conductor("12 AWG"), 20.0));
    // A heater draws most at the source voltage.
    let heater = Run { load: Load::Resistance(1.2), ..power };
    assert_eq!(size(&heater).highest_a, 10.0);
    power.low_v = Some(0.2);
    power.length_m = 5.0;
    assert!(power.wired(conductor("12 AWG")).is_err(), "no steady voltage at the lowest");
}

#[test]
fn thin_wire_is_never_chosen_on_its_own() {
    let mut lamp = run(12.0, Load::Power(1.0), 0.5, 30.0);
    assert_eq!(lamp.least(Conductor::awg()).unwrap().conductor, conductor("16 AWG"));
    assert_eq!(lamp.least(Conductor::metric()).unwrap().conductor, conductor("1 mm2"));
    lamp.conditions.in_jacket = true;
    assert_eq!(lamp.least(Conductor::awg()).unwrap().conductor, conductor("18 AWG"));
    assert_eq!(lamp.least(Conductor::metric()).unwrap().conductor, conductor("0.75 mm2"));
}

fn any_load() -> impl Strategy<Value = Load> {
    (any::<f64>(), 0..3).prop_map(|(value, kind)| match kind {
        0 => Load::Power(value),
        1 => Load::Current(value),
        _ => Load::Resistance(value),
    })
}

proptest! {
    #[test]
    fn longer_loses_more(length_m in 0.1..20.0f64, more in 0.01..5.0f64, watts in 1.0..100.0f64) {
        let wire = conductor("10 AWG");
        for load in [Load::Power(watts), Load::Current(watts / 12.0), Load::Resistance(144.0 / watts)] {
            let near = run(12.0, load, length_m, 30.0).wired(wire);
            let far = run(12.0, load, length_m + more, 30.0).wired(wire);
            if let Ok(far) = far {
                prop_assert!(far.drop_v > near.unwrap().drop_v);
            }
        }
    }

    #[test]
    fn any_numbers_are_answered_or_refused(
        source_v in any::<f64>(), load in any_load(), length_m in any::<f64>(),
        temperature_c in any::<f64>(), limit in any::<f64>(),
    ) {
        let mut run = run(source_v, load, length_m, temperature_c);
        run.drop_limit_percent = limit;
        for wire in [conductor("16 AWG"), conductor("1e-7 ohm/m")] {
            if let Ok(w) = run.wired(wire) {
                let numbers = [w.resistance_ohm, w.current_a, w.load_v, w.drop_v, w.drop_percent,
                    w.loss_w, w.longest_run_m.unwrap_or(0.0)];
                prop_assert!(numbers.iter().all(|n| n.is_finite()), "{:?}", w);
            }
        }
    }

    /// As above with quantities in range, so that most are answered.
    #[test]
    fn numbers_in_range_are_finite(
        source_v in 0.1..1000.0f64, length_m in 0.0..10_000.0f64, watts in 0.0..1e6f64,
    ) {
        for load in [Load::Power(watts), Load::Current(watts / 100.0), Load::Resistance(watts + 1e-3)] {
            match run(source_v, load, length_m, 20.0).wired(conductor("18 AWG")) {
                Ok(w) => prop_assert!(w.load_v > 0.0 && w.loss_w.is_finite()),
                Err(error) => prop_assert!(!error.to_string().contains("NaN")),
            }
        }
    }
}
