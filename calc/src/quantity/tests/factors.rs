//! Factors of the units against NIST SP 811, appendix B.8, and against exact definitions.

use crate::quantity::*;
use crate::words::Words;

fn factor(dimension: &'static Dimension, symbol: &str) -> f64 {
    dimension.unit(symbol).unwrap().factor
}

/// SP 811 prints seven digits.
#[test]
fn nist_sp_811_appendix_b8() {
    for (dimension, symbol, printed) in [
        (&LENGTH, "in", 2.54e-2),
        (&LENGTH, "ft", 3.048e-1),
        (&LENGTH, "mil", 2.54e-5),
        (&VOLUME, "gal", 3.785_412e-3),
        (&VOLUME, "fl oz", 2.957_353e-5),
        (&VOLUME, "pt", 4.731_765e-4),
        (&MASS, "lb", 4.535_924e-1),
        (&MASS, "oz", 2.834_952e-2),
        (&MASS_DENSITY, "g/cm3", 1e3),
        (&MASS_PER_AREA, "oz/ft2", 3.051_517e-1),
        (&MASS_PER_AREA, "oz/yd2", 3.390_575e-2),
        (&FORCE, "lbf", 4.448_222),
        (&POWER, "Btu/h", 2.930_711e-1),
        (&U_VALUE, "Btu/(h ft2 F)", 5.678_263),
        (&THERMAL_RESISTANCE, "h ft2 F/Btu", 1.761_102e-1),
        (&CONDUCTIVITY, "Btu in/(h ft2 F)", 1.442_279e-1),
        (&FLOW, "gal/min", 6.309_020e-5),
        (&ILLUMINANCE, "fc", 1.076_391e1),
        (&SPEED, "ft/s", 3.048e-1),
    ] {
        let ours = factor(dimension, symbol);
        let off = (ours / printed - 1.0).abs();
        assert!(off < 2e-7, "{symbol}: {ours} against {printed}");
    }
}

/// 16 CFR 500.19 (in, ft, mil, in², ft²), NIST Handbook 44 appendix C (1 gal = 231 in³), and the
/// definitions of the pound, of standard gravity and of the International Table Btu.
#[test]
fn exact_definitions() {
    assert_eq!(factor(&LENGTH, "in"), 25.4 / 1e3);
    assert_eq!(factor(&LENGTH, "ft"), 304.8 / 1e3);
    assert_eq!(factor(&AREA, "in2"), 645.16 / 1e6);
    assert_eq!(factor(&AREA, "ft2"), 0.092_903_04);
    assert_eq!(factor(&MASS, "lb"), 0.453_592_37);
    let near = |a: f64, b: f64| (a / b - 1.0).abs() < 1e-15;
    let in3 = factor(&VOLUME, "in3");
    assert!(near(in3, 0.0254 * 0.0254 * 0.0254));
    assert!(near(factor(&VOLUME, "gal"), 231.0 * in3));
    assert!(near(factor(&VOLUME, "qt"), 231.0 / 4.0 * in3));
    assert!(near(factor(&VOLUME, "pt"), 231.0 / 8.0 * in3));
    assert!(near(factor(&VOLUME, "cup"), 231.0 / 16.0 * in3));
    assert!(near(factor(&VOLUME, "fl oz"), 231.0 / 128.0 * in3));
    assert!(near(factor(&VOLUME, "ft3"), 1728.0 * in3));
    assert!(near(factor(&MASS, "oz") * 16.0, factor(&MASS, "lb")));
    assert!(near(factor(&FORCE, "lbf"), 0.453_592_37 * 9.806_65));
    // The International Table Btu: 1 Btu/lb = 2.326 kJ/kg.
    assert!(near(factor(&ENERGY, "Btu"), 2_326.0 * 0.453_592_37));
    assert!(near(factor(&AREA, "yd2"), 9.0 * factor(&AREA, "ft2")));
    assert!(near(factor(&LENGTH, "mi"), 5280.0 * factor(&LENGTH, "ft")));
    assert!(near(factor(&SPEED, "mph") * 3600.0, factor(&LENGTH, "mi")));
}

/// `uom` keeps its own table of factors.
#[test]
fn agrees_with_the_unit_library() {
    use uom::si::{area, energy, f64 as q, length, mass, mass_density, power, volume, volume_rate};
    let near = |a: f64, b: f64| assert!((a / b - 1.0).abs() < 1e-6, "{a} {b}");
    near(factor(&LENGTH, "yd"), q::Length::new::<length::yard>(1.0).value);
    near(factor(&LENGTH, "mil"), q::Length::new::<length::mil>(1.0).value);
    near(factor(&AREA, "ft2"), q::Area::new::<area::square_foot>(1.0).value);
    near(factor(&VOLUME, "gal"), q::Volume::new::<volume::gallon>(1.0).value);
    near(factor(&VOLUME, "qt"), q::Volume::new::<volume::quart_liquid>(1.0).value);
    near(factor(&VOLUME, "fl oz"), q::Volume::new::<volume::fluid_ounce>(1.0).value);
    near(factor(&MASS, "oz"), q::Mass::new::<mass::ounce>(1.0).value);
    near(factor(&ENERGY, "Btu"), q::Energy::new::<energy::btu_it>(1.0).value);
    near(factor(&ENERGY, "Wh"), q::Energy::new::<energy::watt_hour>(1.0).value);
    near(factor(&POWER, "kW"), q::Power::new::<power::kilowatt>(1.0).value);
    near(
        factor(&MASS_DENSITY, "lb/ft3"),
        q::MassDensity::new::<mass_density::pound_per_cubic_foot>(1.0).value,
    );
    near(factor(&FLOW, "cfm"), q::VolumeRate::new::<volume_rate::cubic_foot_per_minute>(1.0).value);
}

#[test]
fn each_symbol_is_read_as_its_unit() {
    for dimension in DIMENSIONS {
        // The example of temperatures names two.
        let example = Words::ENGLISH.plain(dimension.example);
        let reads = Measure::read(example, dimension, NUMBER.units.first()).is_ok();
        assert!(dimension.is(&TEMPERATURE) || reads, "{example}");
        for unit in dimension.units {
            for symbol in unit.symbols {
                let typed = format!("300 {symbol}");
                let read = Measure::read(&typed, dimension, None);
                let read = read.unwrap_or_else(|error| panic!("{typed}: {error}"));
                assert_eq!(read.si(), unit.to_si(300.0), "{typed}");
            }
        }
    }
}
