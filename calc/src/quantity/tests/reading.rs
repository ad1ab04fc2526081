//! Spellings that are read, each with its value.

use crate::quantity::*;

/// Texts and their value in `unit`, read without a unit for bare numbers.
fn stated(dimension: &'static Dimension, unit: &str, table: &[(&str, f64)]) {
    let unit = dimension.unit(unit).unwrap();
    for (typed, number) in table {
        match Measure::read(typed, dimension, None) {
            Ok(measure) => assert_eq!(measure.si(), unit.to_si(*number), "{typed}"),
            Err(error) => panic!("{typed}: {error}"),
        }
    }
}

/// Texts and their value, bare numbers being inches.
fn inches(table: &[(&str, f64)]) {
    for (typed, number) in table {
        match Measure::read(typed, &LENGTH, LENGTH.unit("in")) {
            Ok(measure) => assert_eq!(measure.si(), number * 0.0254, "{typed}"),
            Err(error) => panic!("{typed}: {error}"),
        }
    }
}

#[test]
fn inches_with_fractions() {
    inches(&[
        ("90 1/2", 90.5),
        ("90-1/2\"", 90.5),
        ("90-1/2", 90.5),
        ("90 1/2\"", 90.5),
        ("90 1/2 in", 90.5),
        ("90 1/2in", 90.5),
        ("90.5 in", 90.5),
        ("90.5in.", 90.5),
        ("90 1/2 inches", 90.5),
        ("  90  1 / 2  ", 90.5),
        ("5/8", 0.625),
        ("5/8\"", 0.625),
        ("½", 0.5),
        ("90½", 90.5),
        ("90 ½", 90.5),
        ("90-½", 90.5),
        ("-½", -0.5),
        ("90 1⁄2", 90.5),
        ("90 ⅝ in", 90.625),
        ("3 ⅜″", 3.375),
        ("3 3/8”", 3.375),
        ("3 3/8''", 3.375),
        (".5", 0.5),
        ("5.", 5.0),
        ("0", 0.0),
        ("-0", 0.0),
        ("+4", 4.0),
        ("−4 1/2", -4.5),
        ("3\u{a0}3/4", 3.75),
        ("3\u{2009}3/4 in", 3.75),
        ("7/4", 1.75),
        ("8 IN", 8.0),
        ("8 Inch", 8.0),
    ]);
}

#[test]
fn feet_and_inches() {
    let table = [
        ("7' 6 1/2\"", 90.5),
        ("7'6-1/2\"", 90.5),
        ("7'-6 1/2\"", 90.5),
        ("7'-6-1/2\"", 90.5),
        ("7'6\"", 90.0),
        ("7' 6", 90.0),
        ("7'6", 90.0),
        ("7' 6½", 90.5),
        ("7ft 6.5in", 90.5),
        ("7ft6.5in", 90.5),
        ("7 ft 6 1/2 in", 90.5),
        ("7 ft. 6 in.", 90.0),
        ("7 feet 6 inches", 90.0),
        ("7 FT 6 IN", 90.0),
        ("7 ft 6", 90.0),
        ("7 ft-6 in", 90.0),
        ("7′ 6 1⁄2″", 90.5),
        ("7’ 6 1/2”", 90.5),
        ("7' 6''", 90.0),
        ("7' 14\"", 98.0),
        ("7' 1/2\"", 84.5),
        ("0'-11 15/16\"", 11.9375),
        ("7.5 ft", 90.0),
        ("7 1/2'", 90.0),
        ("-7' 6\"", -90.0),
        ("2 yd 1 ft 3 in", 87.0),
    ];
    inches(&table);
    stated(&LENGTH, "in", &table);
    // Differences that a hyphen with spaces on both sides makes.
    inches(&[("7' - 6\"", 78.0), ("90 - 1/2", 89.5)]);
    stated(&LENGTH, "ft", &[("7 ft-2 ft", 5.0), ("10'-1'", 9.0)]);
}

#[test]
fn metric_lengths() {
    stated(
        &LENGTH,
        "mm",
        &[
            ("2300 mm", 2300.0),
            ("2300MM", 2300.0),
            ("230 cm", 2300.0),
            ("2.3 m", 2300.0),
            ("2,3 m", 2300.0),
            ("2,30 m", 2300.0),
            ("0,750 m", 750.0),
            ("2.300 m", 2300.0),
            ("1,234.5 mm", 1234.5),
            ("1.234,5 mm", 1234.5),
            ("1,234,567 mm", 1_234_567.0),
            ("1.234.567 mm", 1_234_567.0),
            ("12,5 mm", 12.5),
            ("80 µm", 0.08),
            ("80 μm", 0.08),
            ("80 um", 0.08),
            ("80 micron", 0.08),
            ("2 m 30 cm", 2300.0),
        ],
    );
    let bare = Measure::read("2300", &LENGTH, LENGTH.unit("mm")).unwrap();
    assert_eq!(bare.si(), 2.3);
    assert_eq!(bare.typed(), "2300");
    assert_eq!(bare.length().value, 2.3);
}

#[test]
fn sums_and_products() {
    inches(&[
        ("90 1/2 - 2*3/4", 89.0),
        ("90 1/2 - 2 × 3/4", 89.0),
        ("90 1/2 − 2·3/4", 89.0),
        ("90 1/2 - 2*3/4\"", 89.0),
        ("(90 1/2 - 2*3/4) in", 89.0),
        ("90 1/2 - 3/4 in", 89.75),
        ("90 1/2 in - 3/4", 89.75),
        ("7' 6 1/2\" - 3/4", 89.75),
        ("7' 6 1/2\" - 2*3/4\"", 89.0),
        ("3 * 4 ft + 2 in", 146.0),
        ("2 in + 4 ft * 3", 146.0),
        ("(2 + 4) * 3", 18.0),
        ("2 + 4 * 3", 14.0),
        ("8 ft / 3", 32.0),
        ("8 ft ÷ 3", 32.0),
        ("8 / 3 * 3", 8.0),
        ("(90 1/2) / 4", 22.625),
    ]);
    let mixed = Measure::read("2.3 m - 1/2 in", &LENGTH, None).unwrap();
    assert_eq!(mixed.si(), 2.3 - 0.5 * 0.0254);
    let metric = Measure::read("2 m + 30 cm", &LENGTH, None).unwrap();
    assert_eq!(metric.si(), 2.3);
    let deep = format!("{}1 in{}", "(".repeat(16), ")".repeat(16));
    assert_eq!(Measure::read(&deep, &LENGTH, None).unwrap().si(), 0.0254);
}

#[test]
fn other_dimensions() {
    stated(
        &AREA,
        "ft2",
        &[("12 ft2", 12.0), ("12 ft²", 12.0), ("12 ft^2", 12.0), ("12 sq ft", 12.0)],
    );
    stated(&AREA, "mm2", &[("1.5 mm2", 1.5), ("1.5 mm²", 1.5), ("1,5mm^2", 1.5)]);
    stated(&VOLUME, "gal", &[("1.5 gal", 1.5), ("1 1/2 gallons", 1.5), ("1 gal 2 qt", 1.5)]);
    stated(&VOLUME, "fl oz", &[("10.1 fl oz", 10.1), ("10.1floz", 10.1), ("10.1 fl. oz.", 10.1)]);
    stated(
        &VOLUME,
        "ml",
        &[("300 ml", 300.0), ("300 mL", 300.0), ("300 cm³", 300.0), ("300 cc", 300.0)],
    );
    stated(&MASS, "oz", &[("1 lb 8 oz", 24.0), ("24 oz", 24.0)]);
    stated(&TIME, "min", &[("1 h 30 min", 90.0), ("1.5 hours", 90.0), ("90 min", 90.0)]);
    stated(
        &VOLTAGE,
        "V",
        &[("12.8 V", 12.8), ("12.8V", 12.8), ("12,8 v", 12.8), ("12.8 VDC", 12.8)],
    );
    stated(&VOLTAGE, "mV", &[("50 mV", 50.0), ("50 mv", 50.0)]);
    stated(&CURRENT, "A", &[("4.5 A", 4.5), ("4.5 amps", 4.5)]);
    stated(
        &RESISTANCE,
        "ohm",
        &[("48 ohm", 48.0), ("48 Ω", 48.0), ("48Ω", 48.0), ("48 Ohms", 48.0)],
    );
    stated(&POWER, "W", &[("60 W", 60.0), ("60 w", 60.0)]);
    stated(&POWER, "mW", &[("60 mW", 60.0)]);
    stated(&POWER, "MW", &[("60 MW", 60.0)]);
    stated(&CHARGE, "Ah", &[("100 Ah", 100.0), ("100 AH", 100.0), ("100 A·h", 100.0)]);
    stated(
        &SPREAD_RATE,
        "ft2/gal",
        &[
            ("400 ft2/gal", 400.0),
            ("400 ft²/gal", 400.0),
            ("400 sq ft/gal", 400.0),
            ("400 sq. ft./gal", 400.0),
            ("400 ft2 per gal", 400.0),
            ("400 ft2 / gallon", 400.0),
        ],
    );
    stated(&SPREAD_RATE, "m2/l", &[("10 m2/l", 10.0), ("10 m²/L", 10.0)]);
    stated(
        &CONDUCTIVITY,
        "W/m/K",
        &[
            ("0.034 W/m/K", 0.034),
            ("0.034 W/(m K)", 0.034),
            ("0.034 W/(m·K)", 0.034),
            ("0.034 W/mK", 0.034),
            ("0,034 w/mk", 0.034),
        ],
    );
    stated(&CONDUCTIVITY, "mW/m/K", &[("34 mW/mK", 34.0)]);
    stated(&CONDUCTIVITY, "Btu in/(h ft2 F)", &[("0.24 Btu·in/(h·ft²·°F)", 0.24)]);
    stated(&U_VALUE, "W/m2/K", &[("0.9 W/m2/K", 0.9), ("0.9 W/m²K", 0.9), ("0.9 W/(m²·K)", 0.9)]);
    stated(
        &THERMAL_RESISTANCE,
        "m2K/W",
        &[("0.13 m2K/W", 0.13), ("0.13 m² K/W", 0.13), ("0.13 m²·K/W", 0.13)],
    );
    stated(&FLOW, "m3/h", &[("15 m3/h", 15.0), ("15 m³/h", 15.0)]);
    stated(&FLOW, "cfm", &[("50 cfm", 50.0), ("50 ft3/min", 50.0)]);
    stated(&RESISTANCE_PER_LENGTH, "ohm/m", &[("0.0135 ohm/m", 0.0135), ("0.0135 Ω/m", 0.0135)]);
    stated(
        &RESISTANCE_PER_LENGTH,
        "ohm/kft",
        &[("4.99 ohm/kft", 4.99), ("4.99 ohm/1000 ft", 4.99)],
    );
    stated(&ANGLE, "deg", &[("43 deg", 43.0), ("43°", 43.0), ("-43 deg", -43.0)]);
    stated(&MASS_DENSITY, "kg/l", &[("1.1 kg/l", 1.1), ("1.1 g/ml", 1.1), ("1.1 g/cm³", 1.1)]);
}

#[test]
fn temperatures() {
    for (typed, kelvin) in [
        ("25 C", 298.15),
        ("25 °C", 298.15),
        ("25 deg C", 298.15),
        ("25 degC", 298.15),
        ("77 F", 298.15),
        ("77 °F", 298.15),
        ("-10 C", 263.15),
        ("−40 C", 233.15),
        ("-40 F", 233.15),
        ("298 K", 298.0),
        ("25 1/2 C", 298.65),
    ] {
        let read = Measure::read(typed, &TEMPERATURE, None).unwrap().si();
        assert!((read - kelvin).abs() < 1e-12 * kelvin, "{typed}: {read}");
    }
    let bare = Measure::read("25", &TEMPERATURE, TEMPERATURE.unit("C")).unwrap();
    assert_eq!(bare.stored(), "25 C");
}

#[test]
fn plain_numbers() {
    for (typed, number) in [
        ("12", 12.0),
        ("12 %", 12.0),
        ("12%", 12.0),
        ("1 1/2", 1.5),
        ("1,5", 1.5),
        ("2*3", 6.0),
        ("-0.29", -0.29),
        ("1/3", 1.0 / 3.0),
        ("(1 + 2) * 4", 12.0),
        ("12 percent", 12.0),
    ] {
        assert_eq!(read_number(typed).unwrap(), number, "{typed}");
    }
}

#[test]
fn a_battery_is_read_in_ampere_hours_or_watt_hours() {
    let capacity = |typed| Measure::read_any(typed, &CHARGE, &[&ENERGY], CHARGE.unit("Ah"));
    assert_eq!(capacity("100").unwrap().charge().value, 360_000.0);
    assert_eq!(capacity("1280 Wh").unwrap().energy().value, 1280.0 * 3600.0);
    assert_eq!(
        capacity("5 kg").unwrap_err().to_string(),
        "that is a mass; a charge is needed, e.g. 100 Ah"
    );
}

#[test]
fn stored_text_names_the_unit() {
    for (typed, stored) in [
        ("90 1/2", "90 1/2 in"),
        (" 90 1/2 ", "90 1/2 in"),
        ("90 1/2 - 2*3/4", "(90 1/2 - 2*3/4) in"),
        ("-½", "-½ in"),
        ("90 1/2 - 3/4 in", "90 1/2 - 3/4 in"),
        ("7' 6", "7' 6"),
        ("2,3 m", "2,3 m"),
        ("(3)", "(3) in"),
    ] {
        let read = Measure::read(typed, &LENGTH, LENGTH.unit("in")).unwrap();
        assert_eq!(read.stored(), stored);
        assert_eq!(Measure::read(stored, &LENGTH, None).unwrap().si(), read.si());
    }
}
