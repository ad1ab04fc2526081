//! Days, mass, pump and drain by arithmetic, through the whole sheet.

use crate::testing::{faulty_fields, number, solved};
use serde_json::json;

// Plain arithmetic: 70 l less 5 percent, two people of 6 l; water of 998 kg/m³ at 20 °C.
#[test]
fn two_people_on_seventy_litres() {
    let result = solved(
        "water",
        json!({ "people": 2, "use": "6 l", "tank": "70 l", "empty_share_percent": 5,
            "pump_flow": "8 l/min", "drain_length": "6 ft" }),
    );
    assert!((number(&result, "days") - 66.5 / 12.0).abs() < 1e-9);
    assert!((number(&result, "mass_kg") - 69.86).abs() < 1e-9);
    assert!((number(&result, "pump_min_day") - 1.5).abs() < 1e-9);
    assert!((number(&result, "drain_fall_mm") - 38.1).abs() < 1e-9);
}

#[test]
fn without_the_options_the_whole_tank_is_used() {
    let result = solved("water", json!({ "people": 4, "use": "1 gal", "tank": "20 gal" }));
    assert!((number(&result, "days") - 5.0).abs() < 1e-9);
    assert_eq!(result.unwrap().outcome.number("pump_min_day"), None);
}

#[test]
fn faults_name_their_fields() {
    let result = solved(
        "water",
        json!({ "people": 0, "use": "6 kg", "tank": "0 l", "empty_share_percent": 100 }),
    );
    assert_eq!(faulty_fields(&result), ["people", "use", "tank", "empty_share_percent"]);
}

// Plain arithmetic: 60 l and 12 l a day; 4.7 A of 12.8 V for a minute and a half.
#[test]
fn a_waste_tank_and_a_pump() {
    let mut inputs = json!({ "people": 2, "use": "6 l", "tank": "70 l", "grey_tank": "60 l",
        "pump_flow": "8 l/min", "pump_current": "4.7 A" });
    let result = solved("water", inputs.clone());
    assert!((number(&result, "grey_days") - 5.0).abs() < 1e-9);
    assert!((number(&result, "grey_mass_kg") - 60.0 * 0.998).abs() < 1e-9);
    assert!((number(&result, "pump_w") - 60.16).abs() < 1e-9);
    assert!((number(&result, "pump_wh_day") - 60.16 * 1.5 / 60.0).abs() < 1e-9);
    let report = result.unwrap();
    assert!(report.remarks[0].text.contains("before the fresh water"), "{:?}", report.remarks);
    inputs["grey_tank"] = json!("90 l");
    assert!(!solved("water", inputs).unwrap().remarks[0].text.contains("before the fresh"));
}
