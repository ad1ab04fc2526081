//! Published methods worked outside this program, through the whole sheet.

use crate::testing::{faulty_fields, measured, number, solved, solved_in};
use serde_json::{Value as Json, json};

fn layer(name: &str, mm: f64, conductivity: f64, vapour_factor: f64) -> Json {
    json!({ "name": name, "thickness": format!("{mm} mm"),
        "conductivity": format!("{conductivity} W/m/K"), "vapour_factor": vapour_factor })
}

fn ply() -> Json {
    layer("ply", 6.0, 0.13, 200.0)
}

fn foam() -> Json {
    layer("XPS", 40.0, 0.034, 150.0)
}

fn steel() -> Json {
    layer("steel", 1.0, 50.0, 1e6)
}

fn air(celsius: f64, percent: f64) -> Json {
    json!({ "temperature": format!("{celsius} C"), "humidity_percent": percent })
}

fn close(found: f64, wanted: f64, within: f64) {
    assert!((found - wanted).abs() < within, "{found} is not {wanted}");
}

// ISO 6946, combined method, worked in plain arithmetic: layers and bridge, then R', R'', R, U.
#[test]
fn iso_6946_timber_bridges() {
    let wall = json!({
        "layers": [layer("plasterboard", 12.5, 0.25, 10.0), layer("wool", 140.0, 0.038, 1.0),
            layer("sheathing", 9.0, 0.13, 50.0), layer("air gap", 9.0, 0.1, 1.0), layer("brick", 102.0, 0.77, 10.0)],
        "bridge": { "layer": 2, "share_percent": 15, "conductivity": "0.13 W/m/K" } });
    let van_wall = json!({ "layers": [ply(), foam(), steel()],
        "bridge": { "layer": 2, "share_percent": 12, "conductivity": "0.13 W/m/K" } });
    let floor = json!({
        "layers": [layer("ply", 12.0, 0.13, 200.0), layer("XPS", 25.0, 0.034, 150.0), steel()],
        "surface_in": "0.17 m2K/W",
        "bridge": { "layer": 2, "share_percent": "8 %", "conductivity": "0.13 W/m/K" } });
    let roof = json!({ "layers": [ply(), layer("PUR", 30.0, 0.026, 60.0), steel()],
        "surface_in": "0.10 m2K/W", "surface_out": "0.04 m2K/W" });
    for (inputs, upper, lower, total, u) in [
        (wall, 3.367_006, 3.214_401, 3.290_703, 0.303_886),
        (van_wall, 1.161_497, 1.094_908, 1.128_203, 0.886_365),
        (floor, 0.953_854, 0.902_136, 0.927_995, 1.077_592),
        (roof, 1.340_020, 1.340_020, 1.340_020, 0.746_258),
    ] {
        let result = solved("insulation", inputs);
        close(number(&result, "r_upper_m2k_w"), upper, 1e-6);
        close(number(&result, "r_lower_m2k_w"), lower, 1e-6);
        close(number(&result, "r_m2k_w"), total, 1e-6);
        close(number(&result, "u_w_m2k"), u, 1e-6);
    }
}

// ISO 6946, scope: metal that bridges the insulation is outside the method.
#[test]
fn the_timber_method_refuses_metal_and_says_what_to_use() {
    for percent in [2.0, 0.5] {
        let result = solved(
            "insulation",
            json!({ "layers": [ply(), foam(), steel()],
                "bridge": { "layer": 2, "share_percent": percent, "conductivity": "50 W/m/K" } }),
        );
        assert_eq!(faulty_fields(&result), ["bridge.conductivity"]);
        let message = &result.unwrap_err()[0].message;
        assert!(message.contains("steel rib") && message.contains("web and spacing"), "{message}");
    }
}

// Zone method (ASHRAE), arithmetic; against a two-dimensional finite-volume model (U 0.9955, factor over the rib 0.464,
// in the field 0.907) it reads 1.7 % high.
#[test]
fn zone_method_beside_a_two_dimensional_model() {
    let result = solved(
        "insulation",
        json!({ "layers": [ply(), foam(), steel()],
            "bridge": { "layer": 2, "metal_width": "30 mm", "web": "1 mm", "spacing": "600 mm", "conductivity": "50 W/m/K" },
            "inside": air(20.0, 50.0), "outside": air(0.0, 85.0) }),
    );
    close(number(&result, "field_u_w_m2k"), 0.718_058, 1e-6);
    close(number(&result, "zone_width_mm"), 56.0, 1e-9);
    close(number(&result, "u_w_m2k"), 0.9955, 0.9955 * 0.02);
    close(number(&result, "inner_surface_c"), 18.1, 0.05);
    close(number(&result, "bridge_surface_c"), 9.3, 1.2);
    assert_eq!(result.unwrap().outcome.number("r_upper_m2k_w"), None);
}

// ISO 13788 with the lower convex hull, worked outside this program: layers, airs, then plane, °C, g/m² a day.
#[test]
fn iso_13788_dew_planes() {
    let wool = || layer("wool", 40.0, 0.035, 1.0);
    let wet = (air(20.0, 60.0), air(0.0, 85.0));
    let hull = json!([
        layer("gypsum", 12.5, 0.25, 10.0),
        layer("wool", 100.0, 0.04, 1.0),
        layer("ply", 12.0, 0.13, 70.0),
        layer("EPS", 20.0, 0.04, 60.0),
        layer("render", 5.0, 0.8, 25.0)
    ]);
    for (layers, inside, outside, after, celsius, grams) in [
        (json!([ply(), wool(), steel()]), wet.0.clone(), wet.1.clone(), 2.0, Some(0.5889), 10.6587),
        (json!([ply(), foam(), steel()]), wet.0.clone(), wet.1.clone(), 2.0, Some(0.5747), 1.8356),
        (
            json!([ply(), wool(), layer("ply", 6.0, 0.13, 70.0)]),
            air(20.0, 50.0),
            wet.1,
            2.0,
            Some(1.2262),
            0.8863,
        ),
        (hull, wet.0, air(-10.0, 80.0), 2.0, None, 73.0119),
        (
            json!([ply(), wool(), steel()]),
            air(18.0, 70.0),
            air(-10.0, 80.0),
            2.0,
            Some(-9.1755),
            16.2333,
        ),
    ] {
        let result =
            solved("insulation", json!({ "layers": layers, "inside": inside, "outside": outside }));
        assert_eq!(result.as_ref().unwrap().outcome.list("planes").len(), 1);
        assert_eq!(number(&result, "planes.0.after_layer"), after);
        if let Some(celsius) = celsius {
            close(number(&result, "planes.0.temperature_c"), celsius, 1e-3);
        }
        close(number(&result, "planes.0.condenses_g_m2_day"), grams, 1e-3);
    }
}

// Dew point of 20 °C and 50 % by the ISO 13788 inverse, 9.269 °C; lining at 1 - U Rsi of the way.
#[test]
fn one_side_gives_the_dew_point_and_both_the_lining() {
    let mut inputs = json!({ "layers": [ply(), foam(), steel()], "inside": air(20.0, 50.0) });
    let one = solved("insulation", inputs.clone());
    close(number(&one, "dew_point_c"), 9.269, 1e-3);
    assert_eq!(one.unwrap().outcome.number("inner_surface_c"), None);
    inputs["outside"] = json!({ "temperature": "32 F", "humidity_percent": 85 });
    inputs["layers"][1].as_object_mut().unwrap().remove("vapour_factor");
    let both = solved("insulation", inputs);
    close(number(&both, "inner_surface_c"), 20.0 * (1.0 - 0.718_058 * 0.13), 1e-4);
    let report = both.unwrap();
    assert!(report.outcome.get("planes").is_none());
    assert!(report.remarks.iter().any(|remark| remark.text.contains("vapor factor of XPS")));
}

#[test]
fn faults_name_their_fields() {
    let with = |bridge: Json| {
        faulty_fields(&solved(
            "insulation",
            json!({ "layers": [ply(), foam(), steel()], "bridge": bridge }),
        ))
    };
    let steel = |layer: u32, width: &str, spacing: &str| json!({ "layer": layer, "metal_width": width, "web": "1 mm", "spacing": spacing, "conductivity": "50 W/m/K" });
    assert_eq!(with(steel(4, "30 mm", "600 mm")), ["bridge.layer"]);
    assert_eq!(with(steel(2, "30 mm", "50 mm")), ["bridge.spacing"]);
    assert_eq!(with(steel(2, "0.5 mm", "50 mm")), ["bridge.metal_width"]);
    assert_eq!(with(json!({ "layer": 2, "conductivity": "0.13 W/m/K" })), ["bridge.share_percent"]);
    assert_eq!(
        with(json!({ "layer": 2, "web": "1 mm", "conductivity": "50 W/m/K" })),
        ["bridge.metal_width", "bridge.spacing"]
    );
    assert_eq!(
        with(json!({ "layer": 2, "share_percent": 5, "web": "1 mm", "conductivity": "50 W/m/K" })),
        ["bridge.share_percent"]
    );
    assert_eq!(
        with(json!({ "layer": 2, "share_percent": 5, "conductivity": "9.9 W/m/K" })),
        ["bridge"]
    );
    let layers = solved(
        "insulation",
        json!({ "layers": [{ "thickness": "0 mm", "conductivity": "0.1 W" }], "inside": { "temperature": "18 C" } }),
    );
    assert_eq!(
        faulty_fields(&layers),
        ["layers.0.thickness", "layers.0.conductivity", "inside.humidity_percent"]
    );
}

#[test]
fn ribs_come_from_the_body() {
    let with = |bridge: Json| {
        solved_in(
            measured(),
            "insulation",
            json!({ "layers": [ply(), foam(), steel()], "bridge": bridge }),
        )
    };
    let taken = with(json!({ "layer": 2, "web": "1 mm", "conductivity": "50 W/m/K" }));
    let typed = with(json!({ "layer": 2, "web": "1 mm", "conductivity": "50 W/m/K",
        "metal_width": "38 mm", "spacing": "420 mm" }));
    assert!((number(&taken, "u_w_m2k") - number(&typed, "u_w_m2k")).abs() < 1e-12);
    assert_eq!(taken.as_ref().unwrap().from_body.len(), 2);
    let report = taken.unwrap();
    assert_eq!(report.drawings[1].title, "From rib to rib");
    assert!(
        report
            .remarks
            .iter()
            .any(|remark| remark.text.contains("are left out: more heat goes there"))
    );
}

/// What the table fills in can be read, says what the table says, and gives a U value in both unit systems.
#[test]
fn every_material_fills_a_layer() {
    use crate::quantity::UnitSystem::{Imperial, Metric};
    use crate::thermal::materials::MATERIALS;
    use crate::words::Words;
    let picks = super::TypedLayer::NAME.picks.unwrap();
    assert_eq!((picks.names)(Words::ENGLISH).len(), MATERIALS.len());
    for (index, material) in MATERIALS.iter().enumerate() {
        for system in [Imperial, Metric] {
            let mut row = json!({ "thickness": "40 mm" });
            for (key, text) in (picks.fills)(index, system, Words::ENGLISH) {
                row[key] = json!(text);
            }
            let result = solved("insulation", json!({ "layers": [row] }));
            let wanted = 0.17 + 0.04 / material.conductivity_w_mk.high;
            close(number(&result, "r_m2k_w"), wanted, wanted * 1e-3);
        }
    }
}
