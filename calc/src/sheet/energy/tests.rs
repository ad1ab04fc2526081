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

// The battery's run is the voltage drop sheet's: all that is on at the lowest voltage.
#[test]
fn the_battery_cable_is_the_voltage_drop_sheets() {
    let energy = solved_in(measured(), "energy", example("energy"));
    let watts = number(&energy, "all_on_w");
    let run = solved(
        "voltage_drop",
        json!({ "source_voltage": "10.5 V", "power": format!("{watts} W"), "length": "4 ft",
            "conductor": "auto", "drop_limit_percent": 2 }),
    );
    for name in ["current_a", "drop_percent", "fuse_a", "ampacity_a"] {
        let cable = number(&energy, &format!("cable.{name}"));
        assert!((cable - number(&run, name)).abs() < 1e-6, "{name}: {cable}");
    }
    let outcome = &energy.as_ref().unwrap().outcome;
    assert_eq!(outcome.get("cable.conductor"), run.unwrap().outcome.get("conductor"));
    assert_eq!(outcome.get("cable.fuse_class"), Some(&"class T fuse".into()));
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
