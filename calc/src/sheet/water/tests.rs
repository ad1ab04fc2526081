//! Days, mass, pump and drain by arithmetic, through the whole sheet.

use crate::testing::{faulty_fields, number, solved};
use serde_json::json;

// Plain arithmetic: 70 l less 5 percent, two people of 6 l; water of 998 kg/m³ at 20 °C (handbook tables).
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
