//! Lamps of a lights sheet sit in the middle of the boards of a boards sheet, side gaps and all.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, missing_docs)]

use calc::outcome::Value;
use calc::project::Project;
use serde_json::json;

#[test]
fn lamps_sit_in_the_middle_of_boards() {
    let file = json!({ "battenbook": 1, "units": "metric",
        "body": { "length": "4 m", "width": "2 m", "height": "1.9 m", "rib_width": "38 mm",
            "ribs": { "even": { "count": 9, "first": "200 mm", "spacing": "450 mm" } } },
        "sheets": [
            { "id": "ceiling", "kind": "boards", "inputs": { "coverage": "130 mm", "kerf": "3 mm",
                "start": "full", "side_gap": "10 mm", "end_gap": "5 mm",
                "stock": [{ "length": "4.2 m", "price": 20 }] } },
            { "id": "lamps", "kind": "lights", "inputs": { "rows": 2, "columns": 3, "clearance": "10 mm",
                "plane_height": "800 mm", "board": "ceiling",
                "lamp": { "hole": "58 mm", "rim": "70 mm", "depth": "30 mm", "lumens": 220,
                    "beam_angle": "110 deg", "watts": 3 } } }
        ] });
    let evaluation = calc::evaluate(&Project::from_text(&file.to_string()).unwrap());
    let outcome = |id: &str| evaluation.sheet(id).unwrap().as_ref().unwrap().outcome.clone();
    let numbers = |values: &[Value]| -> Vec<f64> {
        values.iter().map(|v| if let Value::Number(n) = v { *n } else { panic!("{v:?}") }).collect()
    };
    let edges = numbers(outcome("ceiling").list("course_edges_mm"));
    assert_eq!(edges[0], 10.0);
    let centres: Vec<f64> = edges.windows(2).map(|pair| f64::midpoint(pair[0], pair[1])).collect();
    let lamps = outcome("lamps");
    assert_eq!(lamps.list("lamps").len(), 6);
    for lamp in lamps.list("lamps") {
        let y = lamp.number("y_mm").unwrap();
        assert!(centres.iter().any(|centre| (centre - y).abs() < 1e-6), "{y} {centres:?}");
    }
}
