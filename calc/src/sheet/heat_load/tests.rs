//! Definitions by arithmetic, and U values from other sheets, through the whole sheet.

use crate::testing::{faulty_fields, measured, number, solved, solved_in};
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
        &solved_in(
            measured(),
            "insulation",
            serde_json::from_str(crate::sheet::insulation::SHEET.example).unwrap(),
        ),
        "u_w_m2k",
    );
    let parts = json!([{ "area": "2 m2", "sheet": "insulation" }]);
    let result = solved_in(measured(), "heat_load", body(parts, "0 m3/h", "20 C", "10 C"));
    close(number(&result, "heat_w"), u * 20.0, 1e-9);
    let parts = json!([{ "area": "2 m2", "sheet": "water" }, { "area": "2 m2", "sheet": "none" },
        { "area": "1 m2" }, { "area": "1 m2", "u": "1 W/m2/K", "sheet": "insulation" }]);
    let result = solved_in(measured(), "heat_load", body(parts, "0", "20 C", "10 C"));
    assert_eq!(
        faulty_fields(&result),
        ["parts.0.sheet", "parts.1.sheet", "parts.2.u", "parts.3.sheet", "fresh_air"]
    );
}

// Plain arithmetic on a body of 5.48 x 2.06 x 1.98 m with a hatch of 0.6 x 0.5 m and windows of 1.6 and 2.6 m².
#[test]
fn surfaces_come_from_the_body() {
    let example: Json = serde_json::from_str(crate::sheet::heat_load::SHEET.example).unwrap();
    let result = solved_in(measured(), "heat_load", example.clone());
    let report = result.as_ref().unwrap();
    let label = |at: usize| match report.outcome.get(&format!("parts.{at}.label")) {
        Some(crate::outcome::Value::Text(label)) => label.clone(),
        other => panic!("{other:?}"),
    };
    for (at, name, area) in [
        (0, "floor", 11.2888),
        (1, "roof", 10.9888),
        (2, "walls", 25.6584),
        (3, "roof openings", 0.3),
        (4, "windshield", 1.6),
    ] {
        assert_eq!(label(at), name);
        close(number(&result, &format!("parts.{at}.area_m2")), area, 1e-9);
    }
    close(number(&result, "parts.3.heat_w"), 0.3 * 6.0 * 23.0, 1e-9);
    let u = number(&solved_in(measured(), "insulation", insulation()), "u_w_m2k");
    close(number(&result, "parts.0.heat_w"), 11.2888 * u * 23.0, 1e-9);
    assert_eq!(report.from_body.len(), 3);
    // All that is lost, less the gains, is what is supplied.
    let parts: f64 = (0..6).map(|at| number(&result, &format!("parts.{at}.heat_w"))).sum();
    close(number(&result, "heat_w"), parts + number(&result, "fresh_air_w") - 150.0, 1e-9);

    // Typed measures win; parts that are typed come on top.
    let mut own = example;
    own["surfaces"]["height"] = json!("2 m");
    own["parts"] = json!([{ "label": "step", "area": "1 m2", "u": "2 W/m2/K" }]);
    let own = solved_in(measured(), "heat_load", own);
    close(number(&own, "parts.2.area_m2"), 2.0 * 7.54 * 2.0 - 4.2, 1e-9);
    close(number(&own, "parts.6.heat_w"), 46.0, 1e-9);
}

fn insulation() -> Json {
    serde_json::from_str(crate::sheet::insulation::SHEET.example).unwrap()
}

// Area times solar heat gain coefficient times radiation: 1.6 · 0.15 · 600 + 2.6 · 0.85 · 0.5 · 600 = 807 W.
#[test]
fn the_sun_through_the_windows_counts_at_noon_alone() {
    let mut inputs: Json = serde_json::from_str(crate::sheet::heat_load::SHEET.example).unwrap();
    let lit = solved_in(measured(), "heat_load", inputs.clone());
    close(number(&lit, "sun_w"), 807.0, 1e-9);
    inputs["sun_w_m2"] = json!(0);
    let dark = solved_in(measured(), "heat_load", inputs);
    close(number(&dark, "noon_w") - number(&lit, "noon_w"), 807.0, 1e-9);
    assert_eq!(number(&dark, "heat_w"), number(&lit, "heat_w"));
    close(number(&lit, "cooler_w"), -number(&lit, "noon_w") / 2.8, 1e-9);
}

#[test]
fn a_heater_runs_its_share_and_is_told_when_it_is_too_small() {
    let mut inputs = body(json!([{ "area": "40 m2", "u": "1 W/m2/K" }]), "0 m3/h", "20 C", "-5 C");
    inputs["heater"] = json!({ "output": "2 kW", "draw": "30 W" });
    let enough = solved("heat_load", inputs.clone());
    close(number(&enough, "heater_duty_percent"), 50.0, 1e-9);
    close(number(&enough, "heater_draw_w"), 30.0, 1e-9);
    inputs["heater"]["output"] = json!("900 W");
    let little = solved("heat_load", inputs);
    close(number(&little, "heater_duty_percent"), 100.0, 1e-9);
    assert!(little.unwrap().remarks[0].text.contains("cannot hold"));
}

#[test]
fn without_parts_the_body_must_be_measured_and_a_sheet_chosen() {
    let inputs = json!({ "fresh_air": "0 m3/h", "inside_temperature": "20 C", "outside_temperature": "0 C" });
    assert_eq!(
        faulty_fields(&solved("heat_load", inputs.clone())),
        ["surfaces.walls", "surfaces.length", "surfaces.width", "surfaces.height"]
    );
    let mut glass = inputs;
    glass["surfaces"] = json!({ "walls": "insulation" });
    glass["windows"] = json!([{ "area": "30 m2", "u": "5 W/m2/K" }]);
    assert_eq!(faulty_fields(&solved_in(measured(), "heat_load", glass)), ["windows.0.area"]);
}
