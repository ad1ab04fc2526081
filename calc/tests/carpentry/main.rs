//! The carpentry sheets from typed inputs to outcome: the geometry of every board, strips, cut plans.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, missing_docs)]

use calc::fault::Fault;
use calc::project::Project;
use calc::report::Report;
use serde_json::{Value as Json, json};

mod boards;
mod ceilings;
mod cut_list;
mod cut_plan;
mod furring;

/// The report of one sheet in a body, or its faults.
fn report(kind: &str, body: &Json, inputs: &Json) -> Result<Report, Vec<Fault>> {
    let sheet = json!({ "id": "s", "kind": kind, "inputs": inputs });
    let file =
        json!({ "battenbook": 1, "id": "p", "units": "metric", "body": body, "sheets": [sheet] });
    let evaluation = calc::evaluate(&Project::from_text(&file.to_string()).unwrap());
    evaluation.sheet("s").unwrap().as_ref().map(|report| (*report).clone()).map_err(Clone::clone)
}

/// The outcome of one sheet.
#[track_caller]
fn outcome(kind: &str, body: &Json, inputs: &Json) -> Json {
    Json::from(&report(kind, body, inputs).unwrap().outcome)
}

/// The fields that are found fault with.
#[track_caller]
fn faulty(kind: &str, body: &Json, inputs: &Json) -> Vec<String> {
    let faults = report(kind, body, inputs).unwrap_err();
    faults.into_iter().map(|fault| fault.field).collect()
}

/// `inputs` with some of its fields changed.
fn with(mut inputs: Json, changes: Json) -> Json {
    for (key, value) in changes.as_object().unwrap() {
        inputs[key] = value.clone();
    }
    inputs
}

fn number(value: &Json) -> f64 {
    value.as_f64().unwrap_or_else(|| panic!("no number: {value}"))
}

fn list(value: &Json) -> &[Json] {
    value.as_array().unwrap_or_else(|| panic!("no list: {value}"))
}

#[track_caller]
fn close(got: &Json, expected: f64, within: f64) {
    let got = number(got);
    assert!((got - expected).abs() <= within, "{got}, not {expected}");
}

/// What any cut plan must keep: pieces fit with their kerfs, waste adds up, cost is that of the stock, and no
/// plan is cheaper than its bound. Gives the lengths cut, shortest first.
#[track_caller]
fn check_cut_plan(plan: &Json, kerf: f64, end_trim: f64) -> Vec<f64> {
    let mut cut = Vec::new();
    let mut waste = 0.0;
    let mut used: Vec<(f64, f64)> = Vec::new();
    for pattern in list(&plan["patterns"]) {
        let (stock, count) = (number(&pattern["stock_mm"]), number(&pattern["count"]));
        let lengths: Vec<f64> =
            list(&pattern["pieces"]).iter().map(|piece| number(&piece["length_mm"])).collect();
        assert!(count >= 1.0 && !lengths.is_empty());
        let between = (lengths.len() - 1) as f64 * kerf;
        let rest = stock - end_trim - lengths.iter().sum::<f64>() - between;
        assert!(rest >= -1e-5 * stock, "{rest} too long for {stock}");
        let expected = end_trim + (rest - kerf).max(0.0);
        assert!((number(&pattern["waste_mm"]) - expected).abs() < 2e-2);
        waste += number(&pattern["waste_mm"]) * count;
        used.push((stock, count));
        for _ in 0..count as usize {
            cut.extend(&lengths);
        }
    }
    assert!((number(&plan["waste_mm"]) - waste).abs() < 1e-6 * waste.max(1.0));
    let priced = list(&plan["stock"]).iter().any(|stock| !stock["price"].is_null());
    let mut cost = 0.0;
    for stock in list(&plan["stock"]) {
        let (length, count) = (number(&stock["length_mm"]), number(&stock["count"]));
        cost += match (priced, stock["on_hand"] == true) {
            (true, _) => number(&stock["price"]) * count,
            (false, true) => 0.0,
            (false, false) => length * count,
        };
        used.push((length, -count));
    }
    for (length, _) in &used {
        let left: f64 = used.iter().filter(|(other, _)| other == length).map(|(_, n)| n).sum();
        assert_eq!(left, 0.0, "stock of {length} is listed otherwise than it is cut");
    }
    assert!((number(&plan["cost"]) - cost).abs() < 1e-6 * cost.max(1.0));
    assert!(number(&plan["bound"]) <= cost + 1e-6);
    if plan["proved"] == true {
        assert!((number(&plan["bound"]) - cost).abs() < 1e-6 * cost.max(1.0));
    }
    calc::sorting::sort_by(&mut cut, f64::total_cmp);
    cut
}
