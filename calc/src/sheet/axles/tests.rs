//! A truck maker's examples, and what comes from other sheets, through the whole sheet.

use crate::testing::{faulty_fields, number, solved};
use serde_json::json;

const POUND: f64 = 0.453_592_37;

fn one_load(mass: &str, place: &str, wheelbase: &str) -> crate::project::SheetResult {
    solved(
        "axles",
        json!({ "wheelbase": wheelbase, "front": { "limit": "14000 lb" },
            "rear": { "limit": "30000 lb" }, "gross_limit": "44000 lb",
            "items": [{ "label": "load", "mass": mass, "from_front_axle": place }] }),
    )
}

// A truck maker's body builder manual, appendix B, as transcribed: mass lb, place in, wheelbase in, rear, front.
// The manual's own 38.86 for the first front load is a slip: 100 - 62.15 leaves 37.85. The last row is arithmetic.
#[test]
fn body_builder_manual_examples() {
    for (mass, place, wheelbase, rear, front, within) in [
        (100.0, 133.0, 214.0, 62.15, 37.85, 0.01),
        (14_500.0, 156.0, 214.0, 10_570.0, 3929.9, 0.2),
        (6000.0, 190.0, 220.0, 5181.8, 818.2, 0.05),
        (400.0, 250.0, 214.0, 467.3, -67.3, 0.05),
    ] {
        let result =
            one_load(&format!("{mass} lb"), &format!("{place} in"), &format!("{wheelbase} in"));
        let pounds = |path| number(&result, path) / POUND;
        assert!((pounds("rear_kg") - rear).abs() < within, "{mass}: {}", pounds("rear_kg"));
        assert!((pounds("front_kg") - front).abs() < within, "{mass}: {}", pounds("front_kg"));
        assert!((pounds("gross_kg") - mass).abs() < 1e-9);
    }
}

#[test]
fn what_was_weighed_is_the_base_and_an_overload_is_told() {
    let result = solved(
        "axles",
        json!({ "wheelbase": "3 m", "front": { "limit": "1500 kg", "weighed": "1000 kg" },
            "rear": { "limit": "1500 kg", "weighed": "1100 kg" }, "gross_limit": "2700 kg",
            "items": [{ "mass": "600 kg", "from_front_axle": "2.5 m" }] }),
    );
    assert!((number(&result, "front_kg") - 1100.0).abs() < 1e-9);
    assert!((number(&result, "rear_left_kg") + 100.0).abs() < 1e-9);
    assert!((number(&result, "gross_left_kg")).abs() < 1e-9);
    let report = result.unwrap();
    assert_eq!(report.outcome.get("within_limits"), Some(&false.into()));
    assert!(report.remarks[0].text.contains("rear axle is 100 kg over"), "{:?}", report.remarks);
}

// 70 l of water at 998 kg/m³ are 69.86 kg.
#[test]
fn water_comes_from_its_sheet() {
    let result = solved(
        "axles",
        json!({ "wheelbase": "4 m", "front": { "limit": "2 t" }, "rear": { "limit": "3 t" }, "gross_limit": "5 t",
            "items": [{ "sheet": "water", "from_front_axle": "1 m" }] }),
    );
    assert!((number(&result, "rear_kg") - 69.86 / 4.0).abs() < 1e-9);
}

// By moments: 120 kg with their middle 1.5 m behind a front wall 0.5 m behind the axle are at 2 of 4 m: half on each axle.
// 40 kg more have no place and count at the middle of a 6 m body, 3.5 m behind the axle.
#[test]
fn the_weight_of_the_buy_list_is_counted_where_it_is() {
    let project = |extra: serde_json::Value, body: serde_json::Value| {
        let file = json!({ "battenbook": 1, "units": "metric", "body": body,
            "shopping": { "own": [
                { "item": "galley", "mass": "60 kg", "quantity": 2, "place": "1500 mm" },
                { "item": "rack", "mass": "40 kg" }, { "item": "tape" } ] },
            "sheets": [{ "id": "a", "kind": "axles", "inputs": { "wheelbase": "4 m",
                "front": { "limit": "2 t", "weighed": "1 t" }, "rear": { "limit": "2 t", "weighed": "1 t" },
                "gross_limit": "4 t", "items": [{ "mass": "0 kg", "from_front_axle": "0 m" }],
                "project": true, "front_wall_from_front_axle": extra } }] });
        let project = crate::project::Project::from_text(&file.to_string()).unwrap();
        crate::evaluate(&project).sheet("a").unwrap().clone()
    };
    let result = project(json!("500 mm"), json!({ "length": "6 m" }));
    assert!((number(&result, "front_kg") - (1000.0 + 60.0 + 40.0 * 0.5 / 4.0)).abs() < 1e-9);
    assert!((number(&result, "rear_kg") - (1000.0 + 60.0 + 40.0 * 3.5 / 4.0)).abs() < 1e-9);
    assert!((number(&result, "project_kg") - 160.0).abs() < 1e-9);
    let texts: Vec<String> = result.unwrap().remarks.into_iter().map(|one| one.text).collect();
    assert!(
        texts.iter().any(|text| text.contains("has no weight, so the loads are short of it")),
        "{texts:?}"
    );
    assert_eq!(
        faulty_fields(&project(json!(""), json!({ "length": "6 m" }))),
        ["front_wall_from_front_axle"]
    );
    assert_eq!(faulty_fields(&project(json!("1 m"), json!({}))), ["project"]);
}

#[test]
fn faults_name_their_fields() {
    let result = solved(
        "axles",
        json!({ "wheelbase": "3960", "front": { "weighed": "1 t" }, "rear": { "limit": "4 t" },
            "gross_limit": "6 t", "items": [] }),
    );
    assert_eq!(faulty_fields(&result), ["wheelbase", "front.limit", "items"]);
    let items = solved(
        "axles",
        json!({ "wheelbase": "4 m", "front": { "limit": "2 t" }, "rear": { "limit": "3 t" }, "gross_limit": "5 t",
            "items": [{ "from_front_axle": "1 m" }, { "mass": "90", "from_front_axle": "1 m" },
                { "sheet": "solar" }] }),
    );
    assert_eq!(
        faulty_fields(&items),
        ["items.0.mass", "items.1.mass", "items.2.sheet", "items.2.from_front_axle"]
    );
}
