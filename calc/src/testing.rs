//! What property tests draw from.

use proptest::prelude::*;

/// Any number at all, with those that a person types drawn more often than the rest: sizes, shares, zeros, and what is
/// no number.
pub fn any_number() -> impl Strategy<Value = f64> {
    prop_oneof![
        4 => 0.0..1.0_f64,
        6 => 0.0..1000.0_f64,
        2 => -100.0..100.0_f64,
        2 => prop::num::f64::ANY,
        1 => prop::sample::select(vec![
            0.0, -0.0, 1.0, 100.0, f64::NAN, f64::INFINITY, f64::NEG_INFINITY, f64::MAX, f64::MIN_POSITIVE,
        ]),
    ]
}

/// A sheet worked out from its inputs alone, through the project as it would be from a file; the other sheets of the
/// project are the examples of all, under their kinds.
pub fn solved(kind: &str, inputs: serde_json::Value) -> crate::project::SheetResult {
    solved_in(serde_json::Value::Null, kind, inputs)
}

/// As `solved`, in a measured body.
pub fn solved_in(
    body: serde_json::Value,
    kind: &str,
    inputs: serde_json::Value,
) -> crate::project::SheetResult {
    let mut sheets: Vec<serde_json::Value> = crate::sheet::SHEETS
        .iter()
        .map(|sheet| {
            let inputs: serde_json::Value = serde_json::from_str(sheet.example).unwrap();
            serde_json::json!({ "id": sheet.kind, "kind": sheet.kind, "inputs": inputs })
        })
        .collect();
    sheets.push(serde_json::json!({ "id": "this", "kind": kind, "inputs": inputs }));
    let file =
        serde_json::json!({ "battenbook": 1, "units": "metric", "body": body, "sheets": sheets });
    let project = crate::project::Project::from_text(&file.to_string()).unwrap();
    crate::evaluate(&project).sheet("this").unwrap().clone()
}

/// A measured body for the sheets that take from it.
pub fn measured() -> serde_json::Value {
    serde_json::json!({ "length": "5480 mm", "width": "2060 mm", "height": "1980 mm", "rib_width": "38 mm",
        "ribs": { "even": { "count": 13, "first": "210 mm", "spacing": "420 mm" } },
        "openings": [{ "name": "hatch", "x": "2200 mm", "y": "780 mm", "length": "600 mm", "width": "500 mm" }] })
}

/// The number at a path of a sheet's outcome.
pub fn number(result: &crate::project::SheetResult, path: &str) -> f64 {
    let report = result.as_ref().unwrap_or_else(|faults| panic!("{faults:#?}"));
    report.outcome.number(path).unwrap_or_else(|| panic!("no {path}: {:?}", report.outcome))
}

/// The fields that a sheet's faults name.
pub fn faulty_fields(result: &crate::project::SheetResult) -> Vec<String> {
    result.as_ref().unwrap_err().iter().map(|fault| fault.field.clone()).collect()
}
