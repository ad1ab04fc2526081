//! Marks, sizes and numbers as they are written.

use crate::quantity::*;
use uom::si::area::square_meter;
use uom::si::length::{inch, meter, micrometer, millimeter};
use uom::si::mass::kilogram;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::volume::liter;

const INCHES: Style = Style::rounded(Rounding::Sixteenth);
const METRIC: Style = Style::rounded(Rounding::Millimetre);

fn mm(value: f64) -> Length {
    Length::new::<millimeter>(value)
}

fn inches(value: f64) -> Length {
    Length::new::<inch>(value)
}

/// Worked by hand from 25.4 mm to the inch: nearest 1/16 in and the error of the rounding.
#[test]
fn nearest_sixteenths() {
    for (exact_mm, feet, text, error_mm) in [
        (1000.0, "3 ft 3 3/8 in", "39 3/8 in", 0.125),
        (2400.0, "7 ft 10 1/2 in", "94 1/2 in", 0.30),
        (3000.0, "9 ft 10 1/8 in", "118 1/8 in", 0.375),
        (3600.0, "11 ft 9 3/4 in", "141 3/4 in", 0.45),
        (4800.0, "15 ft 9 in", "189 in", 0.60),
        (1830.0, "6 ft 1/16 in", "72 1/16 in", 0.3875),
        (303.9, "11 15/16 in", "11 15/16 in", -0.6875),
        (304.8, "12 in", "12 in", 0.0),
        (1308.1, "4 ft 3 1/2 in", "51 1/2 in", 0.0),
        (2133.6, "7 ft", "84 in", 0.0),
        (4845.05, "15 ft 10 3/4 in", "190 3/4 in", 0.0),
        (2438.4, "8 ft", "96 in", 0.0),
    ] {
        let marked = INCHES.mark(mm(exact_mm));
        assert_eq!(marked.text, text);
        assert_eq!(INCHES.length(mm(exact_mm)), feet);
        let error = -marked.left_over.get::<millimeter>();
        assert!((error - error_mm).abs() < 1e-9, "{exact_mm}: {error}");
    }
}

#[test]
fn marks() {
    let eighth = Style { rounding: Rounding::Eighth, ..INCHES };
    let fine = Style { rounding: Rounding::ThirtySecond, ..INCHES };
    let half = Style { rounding: Rounding::HalfMillimetre, ..METRIC };
    for (style, length, text, left_over) in [
        (INCHES, inches(90.5), "90 1/2 in", ""),
        (INCHES, inches(90.0 + 33.0 / 64.0), "90 1/2 in", "1/64 in over"),
        (INCHES, inches(90.0 + 31.0 / 64.0), "90 1/2 in", "1/64 in under"),
        (INCHES, inches(90.0 + 1.0 / 32.0), "90 1/16 in", "1/32 in under"),
        (INCHES, inches(0.97), "1 in", "1/32 in under"),
        (INCHES, inches(11.98), "12 in", "1/64 in under"),
        (INCHES, inches(-4.5), "-4 1/2 in", ""),
        (INCHES, inches(0.01), "0 in", "1/64 in over"),
        (INCHES, inches(-0.01), "0 in", "1/64 in under"),
        (eighth, inches(90.4), "90 3/8 in", "1/32 in over"),
        (fine, inches(90.4), "90 13/32 in", "1/128 in under"),
        (METRIC, inches(90.5), "2299 mm", "0.3 mm under"),
        (METRIC, mm(2300.0), "2300 mm", ""),
        (METRIC, mm(2300.5), "2301 mm", "0.5 mm under"),
        (METRIC, mm(-0.2), "0 mm", "0.2 mm under"),
        (half, mm(2300.7), "2300.5 mm", "0.2 mm over"),
        (half, inches(90.5), "2298.5 mm", "0.2 mm over"),
        // Lines of the other system fall back to the usual ones.
        (Style { rounding: Rounding::Eighth, ..METRIC }, mm(12.4), "12 mm", "0.4 mm over"),
    ] {
        let marked = style.mark(length);
        assert_eq!((marked.text.as_str(), style.left_over(&marked).as_str()), (text, left_over));
    }
}

#[test]
fn choices_have_names() {
    for rounding in Rounding::ALL {
        assert_eq!(Rounding::from_name(rounding.name()), Some(rounding));
        let step = Measure::read(rounding.name(), &LENGTH, None).unwrap().si();
        assert!((rounding.step().value / step - 1.0).abs() < 1e-15);
    }
    assert_eq!(UnitSystem::from_name("imperial"), Some(UnitSystem::Imperial));
    assert_eq!(UnitSystem::from_name("metric"), Some(UnitSystem::Metric));
    assert_eq!(UnitSystem::from_name("both"), None);
}

#[test]
fn sizes() {
    for (imperial, metric, length) in [
        ("23 3/8 in", "594 mm", inches(23.375)),
        ("2 ft", "610 mm", inches(24.0)),
        ("2 ft", "609 mm", inches(23.99)),
        ("7 ft 6 1/2 in", "2299 mm", inches(90.5)),
        ("-7 ft 6 1/2 in", "-2299 mm", inches(-90.5)),
        ("32 ft 9 11/16 in", "10 m", Length::new::<meter>(10.0)),
        ("40 ft 6 1/4 in", "12.35 m", Length::new::<meter>(12.35)),
    ] {
        assert_eq!(INCHES.length(length), imperial);
        assert_eq!(METRIC.length(length), metric);
    }
    for (imperial, metric, length) in [
        ("32 ft 6 in", "9.9 m", inches(390.2)),
        ("32 ft", "9.8 m", inches(384.0)),
        ("7 in", "0.2 m", inches(7.0)),
        ("0 ft", "0 m", inches(0.0)),
    ] {
        assert_eq!(INCHES.run(length), imperial);
        assert_eq!(METRIC.run(length), metric);
    }
    assert_eq!(INCHES.small(mm(1.143)), "0.045 in");
    assert_eq!(METRIC.small(mm(1.143)), "1.14 mm");
    assert_eq!(INCHES.film(Length::new::<micrometer>(101.8)), "4.01 mil");
    assert_eq!(METRIC.film(Length::new::<micrometer>(101.8)), "102 µm");
}

#[test]
fn other_quantities() {
    let litres = |value| Volume::new::<liter>(value);
    for (imperial, metric, volume) in [
        ("1.1 gal", "4 l", litres(4.0)),
        ("2.1 qt", "2 l", litres(2.0)),
        ("10.1 fl oz", "299 ml", litres(0.2987)),
        ("0 fl oz", "0 ml", litres(0.0)),
        ("1 gal", "3.8 l", litres(3.785_411_784)),
        ("1.1 qt", "1 l", litres(0.9999)),
    ] {
        assert_eq!(INCHES.volume(volume), imperial);
        assert_eq!(METRIC.volume(volume), metric);
    }
    assert_eq!(INCHES.volume_both(litres(4.0)), "1.1 gal (4 l)");
    assert_eq!(INCHES.exact().volume_both(litres(4.0)), "1.06 gal (4 l)");
    let area = Area::new::<square_meter>(11.289);
    assert_eq!((INCHES.area(area), METRIC.area(area)), ("121.5 ft²".into(), "11.29 m²".into()));
    let mass = Mass::new::<kilogram>(38.7);
    assert_eq!((INCHES.mass(mass), METRIC.mass(mass)), ("85 lb".into(), "39 kg".into()));
    assert_eq!(INCHES.exact().mass(mass), "85.3 lb");
    limits_are_never_made_more();
    let light = Mass::new::<kilogram>(0.185);
    assert_eq!((INCHES.mass(light), METRIC.mass(light)), ("6.5 oz".into(), "185 g".into()));
    let warm = ThermodynamicTemperature::new::<degree_celsius>(25.0);
    assert_eq!(
        (INCHES.temperature(warm), METRIC.temperature(warm)),
        ("77 °F".into(), "25 °C".into())
    );
    assert_eq!(INCHES.temperature_difference(3.0), "5.4 °F");
    let rate = SPREAD_RATE.unit("ft2/gal").unwrap().to_si(400.0);
    assert_eq!(INCHES.spread_rate(rate), "400 ft²/gal");
    assert_eq!(METRIC.spread_rate(rate), "9.82 m²/l");
}

/// What may not be exceeded is rounded down, what is too much up; and where whole pounds would hide on which side of
/// its limit a load lies, they get their tenths.
fn limits_are_never_made_more() {
    let kg = Mass::new::<kilogram>;
    assert_eq!(INCHES.mass_at_most(kg(2270.0)), "5004 lb");
    assert_eq!(INCHES.mass_at_least(kg(100.0)), "221 lb");
    assert_eq!(METRIC.mass_at_most(kg(499.96)), "499 kg");
    for (load, limit, is_exact) in [
        (2000.0, 2270.0, false),
        (2270.4, 2270.0, true),
        (2270.6, 2270.0, false),
        (2269.9, 2270.0, false),
        (2269.8, 2269.9, true),
    ] {
        assert_eq!(METRIC.of_load(kg(load), kg(limit)).exact, is_exact, "{load} of {limit}");
    }
    let typed = |celsius, round: fn(f64, usize) -> f64| {
        let typed = ThermodynamicTemperature::new::<degree_celsius>(celsius);
        [INCHES, METRIC].map(|style| style.typed_temperature(typed, round))
    };
    assert_eq!(typed(13.0, up), ["56 °F", "13 °C"]);
    assert_eq!(typed(13.0, down), ["55 °F", "13 °C"]);
    assert_eq!(typed(17.5, nearest), ["63.5 °F", "17.5 °C"]);
    let at = ThermodynamicTemperature::new::<degree_celsius>;
    assert_eq!(METRIC.of_dew(at(10.1), at(9.8)).temperature(at(9.8)), "9.8 °C");
    assert_eq!(METRIC.of_dew(at(10.1), at(8.8)).temperature(at(8.8)), "9 °C");
}

#[test]
fn numbers() {
    for (value, digits, text) in [
        (1.0, 2, "1"),
        (1.50, 2, "1.5"),
        (-0.001, 2, "0"),
        (1234.5, 1, "1234.5"),
        (0.125, 12, "0.125"),
        (1200.0, 0, "1200"),
        (f64::NAN, 1, "?"),
    ] {
        assert_eq!(plain(value, digits), text);
    }
    for (value, digits, text) in [
        (1.2345, 3, "1.23"),
        (9.996, 3, "10"),
        (99.96, 3, "100"),
        (0.012_345, 3, "0.0123"),
        (0.099_96, 3, "0.1"),
        (12345.0, 3, "12345"),
        (1.0, 3, "1"),
        (0.0, 3, "0"),
        (-2.5, 1, "-2"),
    ] {
        assert_eq!(significant(value, digits), text, "{value}");
    }
    assert_eq!(amount(12.34, 1, "V"), "12.3 V");
    assert_eq!(percent(2.5), "2.5 %");
}
