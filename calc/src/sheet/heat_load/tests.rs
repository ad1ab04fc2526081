//! Definitions by arithmetic, and U values from other sheets, through the whole sheet.

use crate::testing::{faulty_fields, number, solved};
use serde_json::{Value as Json, json};

fn body(parts: Json, fresh_air: &str, inside: &str, outside: &str) -> Json {
    json!({ "parts": parts, "fresh_air": fresh_air, "inside_temperature": inside, "outside_temperature": outside })
}

fn close(found: f64, wanted: f64, within: f64) {
    assert!((found - wanted).abs() < within, "{found} is not {wanted}");
}

// Plain arithmetic of the definitions: 20 m² of 0.7 at 25 K are 350 W or 1194.25 Btu/h; 15 m³/h at 25 K are
// 125.625 W; 7.5 m² of 1.2 at 20 K are 180 W or 614.185 Btu/h.
#[test]
fn transmission_and_fresh_air() {
    let wall = json!([{ "label": "wall", "area": "20 m2", "u": "0.7 W/m2/K" }]);
    let still = solved("heat_load", body(wall.clone(), "0 m3/h", "20 C", "-5 C"));
    close(number(&still, "heat_w"), 350.0, 1e-9);
    close(number(&still, "heat_btu_h"), 1194.25, 1e-3);
    let aired = solved("heat_load", body(wall, "15 m3/h", "20 C", "-5 C"));
    close(number(&aired, "heat_w"), 475.625, 1e-9);
    close(number(&aired, "fresh_air_w"), 125.625, 1e-9);
    close(number(&aired, "parts.0.heat_w"), 350.0, 1e-9);
    let floor = json!([{ "area": "7.5 m2", "u": "1.2 W/m2/K" }]);
    let floor = solved("heat_load", body(floor, "0 m3/h", "20 C", "0 C"));
    close(number(&floor, "heat_btu_h"), 614.185, 1e-3);
}

#[test]
fn cooling_is_negative_and_gains_add_to_it() {
    let mut inputs = body(json!([{ "area": "10 m2", "u": "1 W/m2/K" }]), "0 m3/h", "25 C", "35 C");
    inputs["gains"] = json!("300 W");
    inputs["noon"] =
        json!({ "inside_temperature": "26 C", "outside_temperature": "36 C", "gains": "900 W" });
    inputs["performance"] = json!(2.5);
    let result = solved("heat_load", inputs);
    close(number(&result, "heat_w"), -400.0, 1e-9);
    close(number(&result, "noon_w"), -1000.0, 1e-9);
    close(number(&result, "cooler_w"), 400.0, 1e-9);
}

#[test]
fn a_part_takes_its_u_value_from_an_insulation_sheet() {
    let u = number(
        &solved(
            "insulation",
            serde_json::from_str(crate::sheet::insulation::SHEET.example).unwrap(),
        ),
        "u_w_m2k",
    );
    let parts = json!([{ "area": "2 m2", "sheet": "insulation" }]);
    let result = solved("heat_load", body(parts, "0 m3/h", "20 C", "10 C"));
    close(number(&result, "heat_w"), u * 20.0, 1e-9);
    let parts = json!([{ "area": "2 m2", "sheet": "water" }, { "area": "2 m2", "sheet": "none" },
        { "area": "1 m2" }, { "area": "1 m2", "u": "1 W/m2/K", "sheet": "insulation" }]);
    let result = solved("heat_load", body(parts, "0", "20 C", "10 C"));
    assert_eq!(
        faulty_fields(&result),
        ["parts.0.sheet", "parts.1.sheet", "parts.2.u", "parts.3.sheet", "fresh_air"]
    );
}
