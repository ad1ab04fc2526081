//! Places and light through the whole sheet, against figures worked outside this program.

use crate::project::SheetResult;
use crate::testing::{faulty_fields, number, solved, solved_in};
use serde_json::{Value as Json, json};

fn lamp(lumens: f64, angle: f64) -> Json {
    json!({ "hole": "58 mm", "rim": "70 mm", "depth": "24 mm", "lumens": lumens, "beam_angle": format!("{angle} deg"), "watts": 3 })
}

/// One lamp over a small plane.
fn one_lamp(lumens: f64, angle: f64, height: &str, model: &str) -> SheetResult {
    solved(
        "lights",
        json!({ "places": [{ "x": "0.5 m", "y": "0.6 m" }], "area": { "length": "1.15 m", "width": "1.15 m" },
            "lamp": lamp(lumens, angle), "clearance": "0 mm", "plane_height": "0 m", "lamp_height": height, "model": model }),
    )
}

fn close(found: f64, wanted: f64, share: f64) {
    assert!((found / wanted - 1.0).abs() < share, "{found} is not {wanted}");
}

// Point method, plain arithmetic outside this program: 200 lm of 120° at 1.2 m give 44.2097 lx right below, of 60° at
// 0.9 m 228.666 lx, and as an even cone of 60° 293.3207 lx.
#[test]
fn light_right_below_one_lamp() {
    for (angle, height, model, wanted) in [
        (120.0, "1.2 m", "half_power", 44.2097),
        (60.0, "0.9 m", "half_power", 228.666),
        (60.0, "0.9 m", "cone", 293.3207),
    ] {
        let found = one_lamp(200.0, angle, height, model);
        close(number(&found, "lux.highest"), wanted, 1e-5);
    }
}

#[test]
fn the_map_has_a_legend_with_its_figures() {
    use crate::drawing::{Fill, Shape};
    let report = one_lamp(200.0, 120.0, "1.2 m", "half_power").unwrap();
    let map = &report.drawings[1].shapes;
    // Each step once below the map, from dark to bright; the map itself has the brightest right below the lamp.
    let steps: Vec<u8> = map
        .iter()
        .filter_map(|shape| match shape {
            Shape::Area { points, fill: Fill::Light(step), .. } if points[0].y > 1.15 => {
                Some(*step)
            }
            _ => None,
        })
        .collect();
    assert_eq!(steps, [0, 1, 2, 3, 4]);
    let below_lamp = map.iter().find_map(|shape| match shape {
        Shape::Area { points, fill: Fill::Light(step), .. }
            if points[0].x <= 0.5
                && points[2].x > 0.5
                && points[0].y <= 0.6
                && points[2].y > 0.6 =>
        {
            Some(*step)
        }
        _ => None,
    });
    assert_eq!(below_lamp, Some(4));
    // 44.2 lx right below it, in five steps.
    let figures: Vec<&str> = map
        .iter()
        .filter_map(|shape| match shape {
            Shape::Text { text, .. } => Some(text.as_str()),
            _ => None,
        })
        .collect();
    assert_eq!(figures, ["0 lx", "9 lx", "18 lx", "27 lx", "35 lx", "44 lx"]);
}

#[test]
fn light_adds_up_and_totals_count_the_lamps() {
    let place = json!({ "x": "1 m", "y": "1 m" });
    let inputs = |places: Json| {
        json!({ "places": places, "area": { "length": "2 m", "width": "2 m" }, "lamp": lamp(300.0, 90.0),
            "clearance": "0 mm", "plane_height": "0.8 m", "lamp_height": "2 m" })
    };
    let one = solved("lights", inputs(json!([place])));
    let two = solved("lights", inputs(json!([place, place])));
    close(number(&two, "lux.mean"), 2.0 * number(&one, "lux.mean"), 0.02);
    assert_eq!(number(&two, "lumens_total"), 600.0);
    assert_eq!(number(&two, "watts_total"), 6.0);
    // Two lamps in one spot cannot be: one steps aside by the rim.
    let moved = number(&two, "lamps.0.moved_mm") + number(&two, "lamps.1.moved_mm");
    assert!((moved - 70.0).abs() < 1e-6, "{moved}");
    assert_eq!(two.unwrap().outcome.get("lamps.1.clear"), Some(&true.into()));
}

fn body() -> Json {
    json!({ "length": "4000 mm", "width": "2000 mm", "height": "1980 mm", "rib_width": "40 mm",
        "ribs": { "measured": ["480 mm", "1500 mm", "2500 mm", "3700 mm"] },
        "openings": [{ "name": "hatch", "x": "2300 mm", "y": "100 mm", "length": "500 mm", "width": "500 mm" }] })
}

// Even rows: half a pitch from the walls. The rib at 480 mm is 40 mm wide, the rim 70 mm and the clearance 25 mm: the
// lamp wanted at 500 mm goes to 480 + 20 + 35 + 25 = 560 mm.
#[test]
fn lamps_move_to_the_nearest_clear_spot_and_mirror_each_other() {
    let result = solved_in(
        body(),
        "lights",
        json!({ "rows": 2, "columns": 4, "lamp": lamp(220.0, 110.0), "clearance": "25 mm", "plane_height": "750 mm" }),
    );
    let at = |path: &str| (number(&result, path) * 1e6).round() / 1e6;
    assert_eq!(
        (at("lamps.0.x_mm"), at("lamps.0.y_mm"), at("lamps.0.moved_mm")),
        (560.0, 500.0, 60.0)
    );
    assert_eq!((at("lamps.4.x_mm"), at("lamps.4.y_mm")), (560.0, 1500.0));
    // The lamp wanted at 1500, on a rib, steps aside by 80 mm.
    assert_eq!(at("lamps.1.moved_mm"), 80.0);
    // The lamp wanted at 2500, 500 meets a rib and the hatch; its image on the right moves with it.
    assert_eq!(at("lamps.2.x_mm"), at("lamps.6.x_mm"));
    assert_eq!(at("lamps.2.y_mm") + at("lamps.6.y_mm"), 2000.0);
    assert_eq!(at("lamps.3.moved_mm"), 0.0);
    let report = result.unwrap();
    for lamp in 0..8 {
        assert_eq!(report.outcome.get(&format!("lamps.{lamp}.clear")), Some(&true.into()));
    }
    let taken: Vec<&str> = report.from_body.iter().map(|taken| taken.field.as_str()).collect();
    assert_eq!(taken, ["area.length", "area.width", "lamp_height"]);
}

// A lamp at 1000 mm would sit on a rib that is not read because another one lies behind the rear wall.
#[test]
fn ribs_with_a_fault_are_not_taken_for_none() {
    let inputs = json!({ "rows": 1, "columns": 2, "lamp": lamp(220.0, 110.0), "clearance": "25 mm", "plane_height": "750 mm" });
    for (part, wrong) in [
        ("ribs", json!({ "measured": ["1000 mm", "4200 mm"] })),
        (
            "openings",
            json!([{ "x": "3900 mm", "y": "100 mm", "length": "500 mm", "width": "500 mm" }]),
        ),
        ("rib_width", json!("wide")),
    ] {
        let mut body = body();
        body[part] = wrong;
        assert_eq!(faulty_fields(&solved_in(body, "lights", inputs.clone())), ["rows"], "{part}");
    }
}

#[test]
fn a_lamp_deeper_than_the_space_above_is_told() {
    let report = solved_in(
        body(),
        "lights",
        json!({ "rows": 1, "columns": 1, "lamp": lamp(220.0, 110.0), "clearance": "25 mm", "plane_height": "750 mm",
            "space_above": "20 mm" }),
    )
    .unwrap();
    assert!(report.remarks[0].text.contains("does not fit"), "{:?}", report.remarks);
}

#[test]
fn faults_name_their_fields() {
    let faults = |change: &dyn Fn(&mut Json)| {
        let mut inputs = json!({ "rows": 2, "columns": 3, "area": { "length": "4 m", "width": "2 m" },
            "lamp": lamp(220.0, 110.0), "clearance": "25 mm", "plane_height": "750 mm", "lamp_height": "1.9 m" });
        change(&mut inputs);
        faulty_fields(&solved("lights", inputs))
    };
    assert_eq!(faults(&|i| i["columns"] = Json::Null), ["columns"]);
    assert_eq!(faults(&|i| i["rows"] = Json::Null), ["rows"]);
    assert_eq!(faults(&|i| i["places"] = json!([{ "x": "1 m", "y": "1 m" }])), ["places"]);
    assert_eq!(faults(&|i| i["area"] = Json::Null), ["area.length", "area.width"]);
    assert_eq!(faults(&|i| i["lamp"]["rim"] = json!("50 mm")), ["lamp.rim"]);
    assert_eq!(faults(&|i| i["lamp"]["beam_angle"] = json!("200 deg")), ["lamp.beam_angle"]);
    assert_eq!(faults(&|i| i["plane_height"] = json!("1.88 m")), ["plane_height"]);
    assert_eq!(faults(&|i| i["board"] = json!("water")), ["board"]);
    let too_many = |i: &mut Json| {
        i["rows"] = json!(50);
        i["columns"] = json!(100);
    };
    assert_eq!(faults(&too_many), ["rows"]);
    let off = |i: &mut Json| {
        i["rows"] = Json::Null;
        i["places"] = json!([{ "x": "4.1 m", "y": "1 m" }]);
    };
    assert_eq!(faults(&off), ["places.0.x"]);
}
