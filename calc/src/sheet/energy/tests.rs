//! A day by arithmetic and Peukert's law, through the whole sheet.

use crate::testing::{faulty_fields, measured, number, solved, solved_in};
use serde_json::{Value as Json, json};

fn day() -> Json {
    json!({ "nominal_voltage": "12.8 V", "days": 2, "usable_percent": 80, "efficiency_percent": 95,
        "loads": [
            { "label": "fridge", "power": "45 W", "hours": 24, "duty_percent": 40 },
            { "label": "lights", "power": "20 W", "hours": 4 },
            { "label": "fan", "power": "15 W", "hours": 8 },
            { "label": "computer", "power": "60 W", "hours": 2 },
            { "label": "pump", "power": "60 W", "hours": "0.25 h" } ] })
}

fn with(mut inputs: Json, key: &str, value: Json) -> Json {
    inputs[key] = value;
    inputs
}

// Arithmetic of the method in outline (IEEE 1013, 1562), worked outside this program.
#[test]
fn a_day_of_five_loads_and_its_battery() {
    let result = solved("energy", day());
    assert!((number(&result, "wh_day") - 767.0).abs() < 1e-9);
    assert!((number(&result, "ah_day") - 59.921_875).abs() < 1e-9);
    assert!((number(&result, "needed_wh") - 2018.421).abs() < 1e-3);
    assert!((number(&result, "needed_ah") - 157.689).abs() < 1e-3);
    assert_eq!(result.unwrap().outcome.number("runtime_h"), None);
}

// 1280 Wh used to 80 percent carry 767 Wh a day for 32.0417 h where nothing is lost on the way.
#[test]
fn runtime_in_watt_hours_and_ampere_hours() {
    let inputs = with(day(), "efficiency_percent", json!(100));
    for capacity in ["1280 Wh", "100 Ah", "1.28 kWh"] {
        let result =
            solved("energy", with(inputs.clone(), "battery", json!({ "capacity": capacity })));
        assert!((number(&result, "runtime_h") - 32.0417).abs() < 1e-3, "{capacity}");
    }
}

#[test]
fn the_needed_battery_lasts_the_days() {
    let needed = number(&solved("energy", day()), "needed_wh");
    let battery = json!({ "capacity": format!("{needed} Wh") });
    let result = solved("energy", with(day(), "battery", battery));
    assert!((number(&result, "runtime_h") - 48.0).abs() < 1e-6);
}

// Peukert's law by arithmetic: 100 Ah at 20 h, exponent 1.2; 5 A for 20 h (the trap), 10 A for 8.7055 h.
#[test]
fn lead_acid_by_peukert() {
    for (current, hours) in [("5 A", 20.0), ("10 A", 8.7055), ("20 A", 3.7893)] {
        let result = solved(
            "energy",
            json!({ "nominal_voltage": "12 V", "days": 1, "usable_percent": 100,
                "efficiency_percent": 100,
                "loads": [{ "current": current, "hours": 24 }],
                "battery": { "capacity": "100 Ah", "hours_rating": 20, "peukert": 1.2 } }),
        );
        assert!((number(&result, "runtime_h") - hours).abs() < 1e-3, "{current}");
    }
    let little = solved(
        "energy",
        json!({ "nominal_voltage": "12 V", "days": 1, "usable_percent": 50,
            "efficiency_percent": 100, "loads": [{ "current": "1 A", "hours": 24 }],
            "battery": { "capacity": "100 Ah", "peukert": 1.2 } }),
    );
    assert!((number(&little, "runtime_h") - 50.0).abs() < 1e-9);
}

// 200 Ah of 12.8 V used to 80 percent are 2048 Wh; 85 percent of 500 W, and of the battery's 25.6 A, go in.
#[test]
fn hours_to_full_by_charger_and_battery_limit() {
    for (limit, watts) in [("100 A", 500.0), ("25.6 A", 25.6 * 12.8)] {
        let mut inputs =
            with(day(), "battery", json!({ "capacity": "200 Ah", "charge_limit": limit }));
        inputs["charging"] = json!([{ "label": "shore", "power": "500 W" }]);
        let found = number(&solved("energy", inputs), "charging.0.full_h");
        assert!((found - 2048.0 / (watts * 0.85)).abs() < 1e-9, "{limit}: {found}");
    }
}

fn example(kind: &str) -> Json {
    serde_json::from_str(crate::sheet::find(kind).unwrap().example).unwrap()
}

fn from_sheets(loads: Json) -> crate::project::SheetResult {
    let mut inputs = day();
    inputs["loads"] = loads;
    solved_in(measured(), "energy", inputs)
}

#[test]
fn loads_come_from_their_sheets() {
    let other = |kind: &str, name: &str| number(&solved_in(measured(), kind, example(kind)), name);
    let wh = |load: Json| number(&from_sheets(json!([load])), "wh_day");
    for (kind, watts) in [
        ("heat_load", other("heat_load", "cooler_w")),
        ("circuit", other("circuit", "load_power_w")),
        ("lights", other("lights", "watts_total")),
        ("voltage_drop", 36.0),
    ] {
        let found = wh(json!({ "sheet": kind, "hours": 3 }));
        assert!((found - watts * 3.0).abs() < 1e-6, "{kind}: {found}");
    }
    // The pump brings its hours along; what is typed wins.
    let pump = other("water", "pump_w");
    assert!((pump - 4.7 * 12.8).abs() < 1e-9);
    let run = other("water", "pump_min_day") / 60.0;
    assert!((wh(json!({ "sheet": "water" })) - pump * run).abs() < 1e-9);
    assert!((wh(json!({ "sheet": "water", "hours": 1 })) - pump).abs() < 1e-9);
    // The heater runs its share of the hours.
    let share = other("heat_load", "heater_duty_percent") / 100.0;
    let heater = wh(json!({ "heater": "heat_load", "hours": 10 }));
    assert!((heater - 30.0 * 10.0 * share).abs() < 1e-9, "{heater}");
    let wrong = from_sheets(json!([{ "sheet": "insulation", "hours": 1 }, { "sheet": "circuit" }]));
    assert_eq!(faulty_fields(&wrong), ["loads.0.sheet", "loads.1.hours"]);
}

// Plain arithmetic: 180 W for an hour at 90 % lose 20 Wh, 8 W of standby over two hours 16 Wh; 180 W / (0.9 · 10.5 V) =
// 19.05 A, 400 W as it starts 42.33 A.
#[test]
fn an_inverter_takes_its_share_and_draws_most_at_low_battery() {
    let mut inputs = day();
    inputs["loads"] = json!([{ "power": "180 W", "hours": 1, "mains": true, "start": "400 W" },
        { "power": "20 W", "hours": 5 }]);
    let without = solved("energy", inputs.clone());
    assert!(
        without.as_ref().unwrap().remarks.iter().any(|r| r.text.contains("fill in the inverter"))
    );
    assert!((number(&without, "wh_day") - 280.0).abs() < 1e-9);
    inputs["inverter"] = json!({ "standby": "8 W", "hours_on": 2, "rating": "150 W" });
    let with = solved("energy", inputs.clone());
    assert!((number(&with, "wh_day") - 316.0).abs() < 1e-9);
    assert!((number(&with, "inverter.current_a") - 19.0476).abs() < 1e-4);
    assert!((number(&with, "inverter.surge_current_a") - 42.3280).abs() < 1e-4);
    assert_eq!(number(&with, "inverter.rating_w"), 300.0);
    let warnings = with.unwrap().remarks;
    assert!(
        warnings[0].text.contains("150 W") && warnings[1].text.contains("400 W"),
        "{warnings:?}"
    );
    inputs["inverter"]["lowest_voltage"] = json!("13 V");
    assert_eq!(faulty_fields(&solved("energy", inputs)), ["inverter.lowest_voltage"]);
}

// The battery's run is the voltage drop sheet's: all that is on with the inverter at its rating, 500 W / 0.9 instead
// of the 180 W / 0.9 that its loads take, at the lowest voltage.
#[test]
fn the_battery_cable_is_the_voltage_drop_sheets() {
    let energy = solved_in(measured(), "energy", example("energy"));
    let watts = number(&energy, "all_on_w") + (500.0 - 180.0) / 0.9;
    let outcome = &energy.as_ref().unwrap().outcome;
    let Some(crate::outcome::Value::Text(conductor)) = outcome.get("cable.conductor") else {
        panic!("no cable")
    };
    let run = solved(
        "voltage_drop",
        json!({ "source_voltage": "10.5 V", "power": format!("{watts} W"), "length": "4 ft",
            "conductor": conductor, "drop_limit_percent": 2 }),
    );
    for name in ["current_a", "drop_percent"] {
        let cable = number(&energy, &format!("cable.{name}"));
        assert!((cable - number(&run, name)).abs() < 1e-6, "{name}: {cable}");
    }
    assert_eq!(outcome.get("cable.fuse_class"), Some(&"class T fuse".into()));
    assert_eq!(number(&energy, "cable.fuse_volts_least"), 14.6);
    // 1.25 times the current, in a rating that is made, no higher than the cable carries.
    let fuse = number(&energy, "cable.fuse_a");
    assert!(fuse >= 1.25 * number(&energy, "cable.current_a"));
    assert!(fuse <= number(&energy, "cable.ampacity_a"));
}

fn battery_cable(nominal: &str, more: &[(&str, Json)]) -> crate::project::SheetResult {
    let mut inputs = json!({ "nominal_voltage": nominal, "days": 1, "usable_percent": 80, "efficiency_percent": 95,
        "loads": [{ "power": "240 W", "hours": 2 }],
        "battery": { "capacity": "100 Ah", "chemistry": "lithium", "charge_limit": "50 A" },
        "cable": { "length": "1 m", "drop_limit_percent": 3 } });
    for (path, value) in more {
        match path.split_once('.') {
            Some((group, key)) => inputs[group][key] = value.clone(),
            None => inputs[*path] = value.clone(),
        }
    }
    solved("energy", inputs)
}

fn texts_of(result: &crate::project::SheetResult) -> String {
    result.as_ref().unwrap().remarks.iter().map(|r| format!("{}\n", r.text)).collect()
}

// 3.65 V a cell: 43.8 V for twelve, 58.4 V for sixteen; a blade or strip fuse for 32 V stands neither.
#[test]
fn fuses_stand_the_charging_voltage() {
    for (nominal, charging) in [("38.4 V", 43.8), ("51.2 V", 58.4), ("12.8 V", 14.6)] {
        let found = battery_cable(nominal, &[("cable.short_circuit", json!("900 A"))]);
        assert!((number(&found, "cable.fuse_volts_least") - charging).abs() < 1e-9, "{nominal}");
        assert!(number(&found, "cable.fuse_class_volts") >= charging, "{nominal}");
        let list = format!("{:?}", found.unwrap().buy);
        assert_eq!(list.contains("32 V DC"), nominal == "12.8 V", "{list}");
    }
    assert_eq!(faulty_fields(&battery_cable("60 V", &[])), ["nominal_voltage"]);
    let typed = battery_cable("12.8 V", &[("battery.charging_voltage", json!("14.2 V"))]);
    assert!((number(&typed, "cable.fuse_volts_least") - 14.2).abs() < 1e-9);
    let low = battery_cable("12.8 V", &[("battery.charging_voltage", json!("12 V"))]);
    assert_eq!(faulty_fields(&low), ["battery.charging_voltage"]);
}

#[test]
fn what_cannot_be_fused_is_neither_shown_nor_bought() {
    for more in [
        ("cable.conductor", json!("18 AWG")),
        ("cable.short_circuit", json!("30000 A")),
        ("loads", json!([{ "power": "240 W", "hours": 2, "mains": true }])),
    ] {
        let found = battery_cable("12.8 V", std::slice::from_ref(&more));
        assert!(texts_of(&found).contains("not shown"), "{more:?}");
        let report = found.unwrap();
        assert!(report.outcome.get("cable.fuse_a").is_none(), "{more:?}");
        assert!(report.buy.iter().all(|line| line.item == "battery"), "{:?}", report.buy);
    }
}

// 1000 W / (0.9 · 10.5 V) = 105.8 A by the rating, where the loads behind it draw 21 A.
#[test]
fn the_cable_is_sized_for_the_inverters_rating() {
    let loads = json!([{ "power": "200 W", "hours": 1, "mains": true }]);
    let found = battery_cable(
        "12.8 V",
        &[("loads", loads), ("inverter", json!({ "rating": "1000 W", "maker_fuse": "150 A" }))],
    );
    assert!(number(&found, "cable.current_a") > 105.8);
    // Its maker's 150 A come first: the cable carries them, and a fuse of exactly that stands in front of it.
    assert!(number(&found, "cable.fuse_a") >= 150.0 && number(&found, "cable.ampacity_a") >= 150.0);
    assert!(texts_of(&found).contains("At the inverter's input, by its manufacturer: 150 A"));
}

#[test]
fn chargers_are_held_against_the_battery() {
    let charged = |charging: Json| battery_cable("12.8 V", &[("charging", charging)]);
    let strong = charged(json!([{ "label": "shore", "current": "60 A", "kind": "shore" }]));
    assert!(
        texts_of(&strong).contains("shore charges with 60 A, and the battery is rated for 50 A")
    );
    let both = charged(
        json!([{ "current": "30 A", "kind": "shore" }, { "current": "30 A", "kind": "dc_dc" }]),
    );
    assert!(texts_of(&both).contains("All chargers at once bring 60 A"));
    assert!(texts_of(&both).contains("fuses each needs at both ends"));
    let straight = charged(json!([{ "current": "30 A", "kind": "alternator" }]));
    assert_eq!(faulty_fields(&straight), ["charging.0.kind"]);
    let fused = charged(json!([{ "current": "30 A", "kind": "dc_dc", "length": "3 m" }])).unwrap();
    let ends: f64 = fused.buy.iter().filter(|l| l.item.contains("fuse")).map(|l| l.quantity).sum();
    assert_eq!(ends, 3.0, "{:?}", fused.buy);
    let open = battery_cable(
        "12.8 V",
        &[("battery.charge_limit", Json::Null), ("charging", json!([{ "current": "30 A" }]))],
    );
    assert!(texts_of(&open).contains("enter its maximum charging current"));
    assert!(texts_of(&open).contains("enter what kind of charger it is"));
}

mod any_battery {
    use super::*;
    use crate::electrical::ampacity::{Conditions, Insulation, Rated};
    use crate::electrical::conductor::Conductor;
    use crate::outcome::{Record, Value};
    use proptest::prelude::*;

    fn checked(cable: &Record, charging_v: f64) -> Result<(), TestCaseError> {
        let Some(fuse) = cable.number("fuse_a") else { return Ok(()) };
        let Some(Value::Text(conductor)) = cable.get("conductor") else { panic!("no conductor") };
        let rating = cable.number("insulation_c").unwrap();
        let insulation = Insulation::ALL.into_iter().find(|i| i.rating_c() == rating).unwrap();
        let conditions = Conditions { insulation, ..Conditions::default() };
        let conductor: Conductor = conductor.parse().unwrap();
        let carries = Rated::new(conductor, &conditions).map_or(0.0, |rated| rated.fuse_limit_a());
        prop_assert!(fuse <= carries * (1.0 + 1e-9), "{fuse} A on {conductor} for {carries} A");
        prop_assert!(fuse >= 1.25 * cable.number("current_a").unwrap() - 1e-6);
        prop_assert!(cable.number("fuse_volts_least").unwrap() >= charging_v - 1e-9);
        prop_assert!(cable.number("fuse_class_volts").unwrap() >= charging_v - 1e-9);
        Ok(())
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(80))]

        #[test]
        fn no_fuse_above_its_cable_nor_below_the_charging_voltage(
            nominal in prop::sample::select(vec![12.0, 12.8, 24.0, 25.6, 36.0, 38.4, 48.0, 51.2]),
            chemistry in prop::sample::select(vec!["auto", "lithium", "lead_acid"]),
            conductor in prop::sample::select(vec![
                "auto", "auto mm2", "18 AWG", "10 AWG", "2 AWG", "4/0 AWG", "0.5 mm2", "0.75 mm2", "10 mm2", "70 mm2",
                "0.0135 ohm/m", "0.0005 ohm/m",
            ]),
            insulation in prop::option::of(prop::sample::select(vec!["60 C", "75 C", "90 C", "105 C"])),
            load in 1.0..3000.0_f64, mains in any::<bool>(), rating in prop::option::of(100.0..5000.0_f64),
            maker in prop::option::of(prop::sample::select(vec![40.0, 70.0, 90.0, 150.0, 175.0, 400.0])),
            charger in 1.0..200.0_f64, way in prop::option::of(0.2..10.0_f64), length in 0.2..8.0_f64,
            short in prop::option::of(100.0..30_000.0_f64),
        ) {
            let mut inputs = json!({ "nominal_voltage": format!("{nominal} V"), "days": 1, "usable_percent": 80,
                "efficiency_percent": 95, "loads": [{ "power": format!("{load} W"), "hours": 2, "mains": mains }],
                "battery": { "capacity": "200 Ah", "chemistry": chemistry },
                "cable": { "length": format!("{length} m"), "conductor": conductor, "drop_limit_percent": 5 },
                "charging": [{ "current": format!("{charger} A"), "kind": "shore" }] });
            if let Some(insulation) = insulation { inputs["cable"]["insulation"] = json!(insulation); }
            if let Some(short) = short { inputs["cable"]["short_circuit"] = json!(format!("{short} A")); }
            if let Some(way) = way { inputs["charging"][0]["length"] = json!(format!("{way} m")); }
            if mains {
                inputs["inverter"] = json!({});
                if let Some(rating) = rating { inputs["inverter"]["rating"] = json!(format!("{rating} W")); }
                if let Some(maker) = maker { inputs["inverter"]["maker_fuse"] = json!(format!("{maker} A")); }
            }
            let report = solved("energy", inputs).unwrap();
            // Sixteen lithium cells are charged to 58.4 V, twelve to 43.8, four to 14.6.
            let blocks = (nominal / 12.4_f64).round();
            let charging_v = if chemistry == "lead_acid" { 1.2 * nominal } else { 14.6 * blocks };
            prop_assert!(report.outcome.number("charging_v").unwrap() >= charging_v - 1e-9);
            if let Some(Value::Record(cable)) = report.outcome.get("cable") {
                checked(cable, charging_v)?;
            }
            for charger in report.outcome.list("charging") {
                if let Some(Value::Record(cable)) = charger.get("cable") {
                    checked(cable, charging_v)?;
                }
            }
            let shown = report.outcome.get("cable.fuse_a").is_some();
            let bought = report.buy.iter().any(|line| line.item == "wire");
            prop_assert!(shown || !bought || way.is_some());
        }
    }
}

// Half of 1200 Wh at 120 W kept (12 V, 10 A · 85 %): the time is worked out beside the formula in its own test.
#[test]
fn lead_acid_tapers_and_lithium_keeps_more() {
    let full = |chemistry: &str| {
        let mut inputs = with(day(), "usable_percent", json!(50));
        inputs["battery"] = json!({ "capacity": "100 Ah", "chemistry": chemistry });
        inputs["charging"] = json!([{ "current": "20 A", "hours": 2 }]);
        solved("energy", inputs)
    };
    let (lithium, lead) = (full("lithium"), full("lead_acid"));
    assert!((number(&lithium, "charging.0.full_h") - 640.0 / (256.0 * 0.95)).abs() < 1e-9);
    assert!((number(&lithium, "charging.0.kept_wh_day") - 2.0 * 256.0 * 0.95).abs() < 1e-9);
    let kept = 256.0 * 0.85;
    let last = 256.0 / (kept - 25.6) * libm::log(kept / 25.6);
    assert!((number(&lead, "charging.0.full_h") - (384.0 / kept + last)).abs() < 1e-9);
    let mut wrong = day();
    wrong["battery"] = json!({ "capacity": "100 Ah", "chemistry": "lithium", "peukert": 1.2 });
    assert_eq!(faulty_fields(&solved("energy", wrong)), ["battery.peukert"]);
}

/// Panels charge the battery of the sheet that they take the need from: both are worked out, whichever stands first.
#[test]
fn panels_and_battery_take_from_each_other() {
    let sheet = |kind: &str| json!({ "id": kind, "kind": kind, "inputs": example(kind) });
    let mut seen = Vec::new();
    for order in [["energy", "solar"], ["solar", "energy"]] {
        let mut sheets = vec![sheet("circuit")];
        sheets.extend(order.map(sheet));
        let file =
            json!({ "battenbook": 1, "units": "metric", "body": measured(), "sheets": sheets });
        let project = crate::project::Project::from_text(&file.to_string()).unwrap();
        let all = crate::evaluate(&project);
        let (energy, solar) = (all.sheet("energy").unwrap(), all.sheet("solar").unwrap());
        assert_eq!(number(solar, "need_wh_day"), number(energy, "wh_day"));
        for month in [0, 6, 11] {
            assert_eq!(
                number(energy, &format!("charging.2.months.{month}.wh_day")),
                number(solar, &format!("months.{month}.wh_day"))
            );
        }
        seen.push((energy.clone(), solar.clone()));
    }
    assert!(seen[0] == seen[1]);
}

#[test]
fn faults_name_their_fields() {
    let result = solved(
        "energy",
        json!({ "nominal_voltage": 12.8, "days": 0, "usable_percent": 0, "efficiency_percent": 101,
            "loads": [{ "power": "5 W", "current": "1 A", "hours": 25 }, { "hours": 1 }],
            "battery": { "capacity": "100 V" } }),
    );
    assert_eq!(
        faulty_fields(&result),
        [
            "nominal_voltage",
            "loads.0.current",
            "loads.0.hours",
            "loads.1.power",
            "days",
            "usable_percent",
            "efficiency_percent",
            "battery.capacity"
        ]
    );
}
