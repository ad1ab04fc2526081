//! The voltage drop sheet against published and computed values, from typed text to outcome.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, missing_docs)]

use calc::fault::Fault;
use calc::outcome::Value;
use calc::project::Project;
use calc::report::{Report, Weight};
use serde_json::{Value as Json, json};

fn try_sheet(inputs: &Json, units: &str) -> Result<Report, Vec<Fault>> {
    let file = json!({ "battenbook": 1, "id": "p", "units": units,
        "sheets": [{ "id": "s", "kind": "voltage_drop", "title": "", "inputs": inputs }] });
    let project = Project::from_text(&file.to_string()).unwrap();
    calc::evaluate(&project).sheet("s").unwrap().clone()
}

fn sheet(inputs: &Json) -> Report {
    try_sheet(inputs, "metric").unwrap_or_else(|faults| panic!("{inputs}: {faults:#?}"))
}

fn faults(inputs: &Json) -> Vec<Fault> {
    try_sheet(inputs, "metric").expect_err("faults")
}

fn text<'a>(report: &'a Report, path: &str) -> &'a str {
    match report.outcome.get(path) {
        Some(Value::Text(text)) => text,
        other => panic!("{path}: {other:?}"),
    }
}

fn flag(report: &Report, path: &str) -> bool {
    match report.outcome.get(path) {
        Some(Value::Flag(flag)) => *flag,
        other => panic!("{path}: {other:?}"),
    }
}

fn number(report: &Report, path: &str) -> f64 {
    report.outcome.number(path).unwrap_or_else(|| panic!("{path}"))
}

fn inputs(source: &str, load: (&str, &str), length: &str, conductor: &str, limit: f64) -> Json {
    json!({ "source_voltage": source, load.0: load.1, "length": length,
        "conductor": conductor, "drop_limit_percent": limit, "insulation": "105 C" })
}

fn with(mut inputs: Json, key: &str, value: Json) -> Json {
    inputs[key] = value;
    inputs
}

/// IEC 60228 class 5 at 20 C, by Ohm's law.
#[test]
fn iec_60228_constant_currents() {
    for (current, length, conductor, source, drop_v, percent) in [
        ("5 A", "4 m", "2.5 mm2", "12 V", 0.31920, 2.6600),
        ("8 A", "6 m", "4 mm2", "12.8 V", 0.47520, 3.7125),
        ("20 A", "3 m", "10 mm2", "12 V", 0.22920, 1.9100),
        ("100 A", "1.5 m", "50 mm2", "12.8 V", 0.11580, 0.9047),
    ] {
        let inputs = inputs(source, ("current", current), length, conductor, 3.0);
        let report = sheet(&with(inputs, "conductor_temperature", json!("20 C")));
        assert_eq!(text(&report, "conductor"), conductor);
        assert!((number(&report, "drop_v") - drop_v).abs() < 1e-9, "{conductor}");
        assert!((number(&report, "drop_percent") - percent).abs() < 5e-5, "{conductor}");
        assert_eq!(flag(&report, "within_limit"), percent <= 3.0);
    }
}

/// Constant power behind a resistance, closed form. Where the wire may not carry it, the voltages
/// stand, and wire and fuse are not shown.
#[test]
fn closed_form_constant_powers() {
    for (source, ohm, power, load_v) in [
        ("12.8 V", 0.06384, "60 W", 12.493406272),
        ("12 V", 0.05, "100 W", 11.567764363),
        ("12 V", 0.1, "250 W", 9.316624790),
        ("12 V", 0.3, "114 W", 7.341640786),
        ("12 V", 0.3, "120 W", 6.0),
        ("13.2 V", 0.02, "1200 W", 11.022668877),
        ("24 V", 0.25, "400 W", 18.633249581),
        ("48 V", 0.1, "1000 W", 45.817424229),
    ] {
        let conductor = format!("{} ohm/m", ohm / 20.0);
        let report = sheet(&inputs(source, ("power", power), "10 m", &conductor, 3.0));
        assert!((number(&report, "resistance_ohm") - ohm).abs() < 1e-12);
        assert!((number(&report, "load_voltage_v") - load_v).abs() < 1e-6, "{source} {power}");
        let energy = number(&report, "loss_w") + number(&report, "current_a") * load_v;
        let given =
            number(&report, "current_a") * source.trim_end_matches(" V").parse::<f64>().unwrap();
        assert!((energy - given).abs() < 1e-5 * given);
        let carries = number(&report, "highest_current_a") <= number(&report, "ampacity_a");
        assert!(
            carries || (report.buy.is_empty() && report.drawings.is_empty()),
            "{source} {power}"
        );
    }
}

/// A published worked example (NASA GUNNS, electrical aspect, course section 2.2.1) of 120 V: not
/// for this sheet. A 48 V battery is, up to its charging voltage.
#[test]
fn from_50_v_on_is_refused_save_a_48_v_battery() {
    let found = faults(&inputs("120 V", ("power", "5 W"), "10 m", "10 ohm/m", 3.0));
    assert!(found.iter().any(|fault| fault.field == "source_voltage"), "{found:?}");
    let run = inputs("51.2 V", ("power", "100 W"), "2 m", "auto", 3.0);
    let report = sheet(&run);
    assert_eq!(number(&report, "fuse_volts_least"), 125.0, "58.4 V while charging");
    assert!(report.buy[1].spec.contains("125 V DC"), "{}", report.buy[1].spec);
    let field =
        |value: &str| faults(&with(run.clone(), "charging_voltage", json!(value)))[0].field.clone();
    assert_eq!(field("59 V"), "charging_voltage");
    assert_eq!(field("50 V"), "charging_voltage", "below the source voltage");
    let third = sheet(&inputs("38.4 V", ("power", "100 W"), "2 m", "auto", 3.0));
    assert_eq!(number(&third, "fuse_volts_least"), 58.0, "43.8 V while charging");
    let low = with(
        inputs("12.8 V", ("power", "36 W"), "18 ft", "auto", 3.0),
        "low_voltage",
        json!("13 V"),
    );
    assert_eq!(faults(&low)[0].field, "low_voltage");
}

/// The same table beyond the nose: no steady voltage, and the fault says so at the conductor.
#[test]
fn beyond_the_nose_is_a_fault() {
    let found = faults(&inputs("12 V", ("power", "120.0001 W"), "10 m", "0.015 ohm/m", 3.0));
    assert_eq!(found.len(), 1);
    assert_eq!(found[0].field, "conductor");
    assert!(found[0].message.contains("120.0 W at the very most"), "{found:?}");
    assert!(found[0].message.contains("would do"), "{found:?}");
}

/// Published worked example of an ABYC E-11 table: a 10 A pump, 11 ft + 10 ft of wire, 12 V: 16 AWG
/// at 10 %. At 3 % the printed table says 10 AWG, since it rounds 21 ft up to its 25 ft row; the
/// formula (6271 circular mils) asks for 12 AWG (6530), and so does this sheet. At 10 % its drop is
/// fine with 16 AWG too; the pump's fuse of 15 A asks for 14 AWG (NEC 240.4(D)).
#[test]
fn abyc_e11_ten_ampere_pump() {
    let run = inputs("12 V", ("current", "10 A"), "10.5 ft", "16 AWG", 10.0);
    assert!(flag(&sheet(&run), "within_limit"));
    assert!(sheet(&run).outcome.number("fuse_a").is_none());
    for (limit, least) in [(10.0, "14 AWG"), (3.0, "12 AWG")] {
        let report = sheet(&inputs("12 V", ("current", "10 A"), "10.5 ft", "auto", limit));
        assert_eq!(text(&report, "conductor"), least);
        assert!(flag(&report, "within_limit"));
        assert_eq!(number(&report, "fuse_a"), 15.0);
    }
    let report = sheet(&inputs("12 V", ("current", "10 A"), "12.5 ft", "auto", 3.0));
    assert_eq!(text(&report, "conductor"), "10 AWG", "the 25 ft row of the table");
}

/// NEC chapter 9 table 8 and its note 2, 33 CFR 183.425 table 5, NEC 210.20(A): the fan's feed.
#[test]
fn fan_feed_of_the_demo() {
    let report = sheet(&inputs("12.8 V", ("power", "36 W"), "18 ft", "auto", 3.0));
    assert_eq!(text(&report, "conductor"), "14 AWG");
    let ohm = 2.0 * 18.0 * 3.14e-3 * (1.0 - 0.00323 * 45.0);
    assert!((number(&report, "resistance_ohm") - ohm).abs() < 1e-12);
    let load_v = (12.8 + f64::sqrt(12.8 * 12.8 - 4.0 * ohm * 36.0)) / 2.0;
    assert!((number(&report, "load_voltage_v") - load_v).abs() < 1e-9);
    assert_eq!(number(&report, "ampacity_a"), 35.0);
    assert_eq!(number(&report, "fuse_a"), 4.0);
    // At the longest run the drop is the limit.
    let longest = format!("{} m", number(&report, "longest_run_m"));
    let there = sheet(&inputs("12.8 V", ("power", "36 W"), &longest, "14 AWG", 3.0));
    assert!((number(&there, "drop_percent") - 3.0).abs() < 1e-6);
    assert!(flag(&there, "within_limit"));
    assert_eq!(text(&report, "least_mm2"), "2.5 mm2");
    let metric = sheet(&inputs("12.8 V", ("power", "36 W"), "18 ft", "auto mm2", 3.0));
    assert_eq!(text(&metric, "conductor"), "2.5 mm2");
}

/// ABYC E-11 bundling (three conductors 0.70), and the ambient factor of 105 C insulation at 50 C.
#[test]
fn bundled_and_warm() {
    let run = inputs("12 V", ("current", "20 A"), "1 m", "14 AWG", 10.0);
    let report = sheet(&with(run.clone(), "bundled", json!(3)));
    assert!((number(&report, "ampacity_a") - 24.5).abs() < 1e-9);
    // 1.25 x 20 A asks for a 25 A fuse; 14 AWG stands 15 A, 12 AWG 20 A, 10 AWG 30 A.
    assert!(report.outcome.number("fuse_a").is_none() && report.buy.is_empty());
    assert_eq!(report.remarks[0].weight, Weight::Warning);
    assert!(report.remarks[0].text.contains("10 AWG would do"), "{}", report.remarks[0].text);
    // 8 AWG of three together carries 56 A: 1.25 x 48 A asks for 60 A, 48 A for 50 A.
    let thick =
        with(inputs("12 V", ("current", "48 A"), "1 m", "8 AWG", 10.0), "bundled", json!(3));
    assert!(sheet(&thick).outcome.number("fuse_a").is_none());
    assert_eq!(number(&sheet(&with(thick, "continuous", json!(false))), "fuse_a"), 50.0);
    let warm = sheet(&with(run.clone(), "air_temperature", json!("50 C")));
    assert!((number(&warm, "ampacity_a") - 35.0 * 0.8563).abs() < 0.01);
    // Copper left to itself is as warm as the air.
    let ohm = 2.0 * 3.14e-3 / 0.3048 * (1.0 - 0.00323 * 25.0);
    assert!((number(&warm, "resistance_ohm") - ohm).abs() < 1e-12);
    let cool = with(
        with(run.clone(), "air_temperature", json!("50 C")),
        "conductor_temperature",
        json!("40 C"),
    );
    assert_eq!(faults(&cool)[0].field, "conductor_temperature");
    let melting = with(with(run, "air_temperature", json!("60 C")), "insulation", json!("60 C"));
    assert_eq!(faults(&melting)[0].field, "air_temperature");
}

/// Every size of both series stands among the choices, in order, whatever was chosen; those
/// without a steady voltage are not within the limit and have no drop.
#[test]
fn choices_hold_every_size() {
    let report = sheet(&inputs("12 V", ("power", "300 W"), "10 m", "auto", 3.0));
    let choices = report.outcome.list("choices");
    assert_eq!(choices.len(), 15 + 14);
    let mut chosen = None;
    for choice in choices {
        let Some(Value::Text(name)) = choice.get("conductor") else { panic!() };
        let within = choice.get("within_limit") == Some(&Value::Flag(true));
        match choice.number("drop_percent") {
            Some(drop) => assert_eq!(within, drop <= 3.0),
            None => assert!(!within),
        }
        let alone = try_sheet(&inputs("12 V", ("power", "300 W"), "10 m", name, 3.0), "imperial");
        let enough = choice.get("enough") == Some(&Value::Flag(true));
        assert!(alone.is_ok() || !enough, "{name}");
        if let Ok(alone) = alone {
            assert_eq!(alone.outcome.number("drop_percent"), choice.number("drop_percent"));
        }
        if enough && name.ends_with("AWG") && chosen.is_none() {
            chosen = Some(name.clone());
        }
    }
    assert!(choices.iter().any(|choice| choice.number("drop_percent").is_none()));
    assert_eq!(chosen.as_deref(), Some(text(&report, "conductor")));
}

#[test]
fn a_given_conductor_that_is_too_thin_gets_its_answer_and_a_warning() {
    let report = sheet(&inputs("12.8 V", ("power", "36 W"), "18 ft", "18 AWG", 3.0));
    assert!(!flag(&report, "within_limit"));
    assert_eq!(report.remarks[0].weight, Weight::Warning);
    assert!(report.remarks[0].text.contains("14 AWG is enough"), "{}", report.remarks[0].text);
    // One metric size is held against the others.
    let found = faults(&inputs("12.8 V", ("current", "60 A"), "1 m", "4 mm2", 5.0));
    assert!(found[0].message.contains("mm2 would do"), "{found:?}");
    // 0.005 ohm/m lies between 12 and 10 AWG: it is held against the thinner.
    let given = sheet(&inputs("12.8 V", ("power", "36 W"), "18 ft", "0.005 ohm/m", 3.0));
    assert_eq!((number(&given, "ampacity_a"), number(&given, "fuse_a")), (45.0, 4.0));
    assert!(given.remarks.iter().any(|remark| remark.text.contains("what 12 AWG does")));
}

#[test]
fn no_fuse_for_what_no_table_rates() {
    for conductor in ["0.5 mm2", "0.03 ohm/m"] {
        let found = faults(&inputs("12.8 V", ("power", "3 W"), "1 m", conductor, 3.0));
        assert_eq!(found[0].field, "conductor");
        assert!(found[0].message.contains("enter "), "{found:?}");
    }
    let found = faults(&with(
        inputs("12.8 V", ("power", "3 W"), "1 m", "0.75 mm2", 3.0),
        "insulation",
        json!("60 C"),
    ));
    assert!(found[0].message.contains("higher rating"), "{found:?}");
}

/// 33 CFR 183.425 table 5, 60 C: what is not entered is not trusted.
#[test]
fn unmarked_wire_is_trusted_with_60_c() {
    let mut run = inputs("12.8 V", ("power", "36 W"), "18 ft", "8 AWG", 3.0);
    let marked = sheet(&run);
    run.as_object_mut().unwrap().remove("insulation");
    let unmarked = sheet(&run);
    assert_eq!((number(&unmarked, "insulation_c"), number(&unmarked, "ampacity_a")), (60.0, 55.0));
    assert_eq!((number(&marked, "insulation_c"), number(&marked, "ampacity_a")), (105.0, 80.0));
    assert!(unmarked.buy[0].spec.contains("rated 60 °C"), "{}", unmarked.buy[0].spec);
    assert_ne!(unmarked.buy[0].spec, marked.buy[0].spec, "they must not merge");
}

/// 240 W: 20 A at 12 V, 25 A and more at 9.6 V.
#[test]
fn the_lowest_voltage_counts() {
    let run = inputs("12 V", ("power", "240 W"), "0.5 m", "10 AWG", 3.0);
    assert_eq!(number(&sheet(&run), "fuse_a"), 30.0, "1.25 x 20.1 A");
    let low = with(run.clone(), "low_voltage", json!("9.6 V"));
    assert!(number(&sheet(&low), "highest_current_a") > 25.0);
    assert!(sheet(&low).outcome.number("fuse_a").is_none(), "1.25 x 25 A is beyond 30 A");
    let auto = sheet(&with(low, "conductor", json!("auto")));
    assert_eq!((text(&auto, "conductor"), number(&auto, "fuse_a")), ("8 AWG", 35.0));
    // 60 C: 10 AWG carries 40 A; 420 W are 35 A at 12 V, 44 A at 9.6 V.
    let over = with(with(run, "power", json!("420 W")), "insulation", json!("60 C"));
    assert!(sheet(&over).outcome.number("fuse_a").is_none());
    let found = faults(&with(over, "low_voltage", json!("9.6 V")));
    assert!(
        found[0].message.contains("at 9.6 V") && found[0].message.contains("overheats"),
        "{found:?}"
    );
}

#[test]
fn thin_wire_only_in_a_jacket_and_a_fuse_at_every_source() {
    let run = inputs("12.8 V", ("power", "3 W"), "1 m", "auto", 3.0);
    assert_eq!(text(&sheet(&run), "conductor"), "16 AWG");
    assert_eq!(text(&sheet(&with(run.clone(), "in_jacket", json!(true))), "conductor"), "18 AWG");
    let given = sheet(&with(run.clone(), "conductor", json!("18 AWG")));
    assert!(given.buy[0].spec.contains("in a jacket"), "{}", given.buy[0].spec);
    let buried = with(
        inputs("12.8 V", ("power", "3 W"), "1 m", "14 AWG", 3.0),
        "in_insulation",
        json!(true),
    );
    assert_eq!(number(&sheet(&buried), "ampacity_a"), 17.5);
    let both = sheet(&with(run, "far_source", json!(true)));
    assert_eq!(both.buy[1].quantity, 2.0);
    assert_eq!(both.answers[2].label, "Fuse at each end");
}

#[test]
fn faults_name_their_field() {
    let good = inputs("12.8 V", ("power", "36 W"), "18 ft", "auto", 3.0);
    let fault = |key: &str, value: Json| {
        let found = faults(&with(good.clone(), key, value));
        assert_eq!(found.len(), 1, "{found:?}");
        (found[0].field.clone(), found[0].message.clone())
    };
    assert_eq!(fault("current", json!("3 A")).0, "current");
    assert_eq!(fault("conductor", json!("15 AWG")).0, "conductor");
    let (field, message) = fault("conductor", json!("16"));
    assert!(field == "conductor" && message.contains("16 AWG or 16 mm2"), "{message}");
    assert_eq!(fault("source_voltage", json!("12.8 A")).0, "source_voltage");
    assert_eq!(fault("bundled", json!(0)).0, "bundled");
    assert_eq!(fault("drop_limit_percent", json!(0)).0, "drop_limit_percent");
    // Nothing does for a kilometre: the fault says how far the thickest would go.
    let (field, message) = fault("length", json!("1000 m"));
    assert!(field == "conductor" && message.contains("4/0 AWG loses"), "{message}");
    assert!(message.contains("it would do for"), "{message}");
    let mut neither = good;
    neither.as_object_mut().unwrap().remove("power");
    assert_eq!(faults(&neither)[0].field, "power");
}

#[test]
fn wire_and_fuse_to_buy() {
    let run = inputs("12.8 V", ("power", "36 W"), "18 ft", "auto", 3.0);
    let report = try_sheet(&run, "imperial").unwrap();
    let line = |i: usize| (report.buy[i].item.as_str(), report.buy[i].quantity, report.buy[i].unit);
    assert_eq!(line(0), ("wire", 36.0, "ft"), "no foot more for rounding");
    assert_eq!(line(1), ("fuse with holder", 1.0, "each"));
    assert!(report.buy[0].spec.starts_with("14 AWG stranded copper"));
    let report = sheet(&run);
    assert_eq!((report.buy[0].quantity, report.buy[0].unit), (11.0, "m"));
}
