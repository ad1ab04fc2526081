//! A day by arithmetic and Peukert's law, through the whole sheet.

use crate::testing::{faulty_fields, number, solved};
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

#[test]
fn a_cooler_comes_from_its_sheet() {
    let example = serde_json::from_str(crate::sheet::heat_load::SHEET.example).unwrap();
    let watts = number(&solved("heat_load", example), "cooler_w");
    let mut inputs = day();
    inputs["loads"] = json!([{ "label": "cooler", "sheet": "heat_load", "hours": 3 }]);
    assert!((number(&solved("energy", inputs), "wh_day") - watts * 3.0).abs() < 1e-9);
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
