//! The wet trades' and the opening's sheets from typed inputs to outcome, against published values.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, missing_docs)]

use calc::fault::Fault;
use calc::project::Project;
use calc::report::Report;
use serde_json::{Value as Json, json};

mod coating;
mod gap_fill;
mod never;
mod schedule;
mod trim;

/// The report of one sheet, or its faults.
fn report(kind: &str, inputs: &Json, units: &str) -> Result<Report, Vec<Fault>> {
    let sheet = json!({ "id": "s", "kind": kind, "inputs": inputs });
    let file = json!({ "battenbook": 1, "id": "p", "units": units, "sheets": [sheet] });
    let evaluation = calc::evaluate(&Project::from_text(&file.to_string()).unwrap());
    evaluation.sheet("s").unwrap().as_ref().map(|report| (*report).clone()).map_err(Clone::clone)
}

/// The outcome of one sheet.
#[track_caller]
fn outcome(kind: &str, inputs: &Json) -> Json {
    Json::from(&report(kind, inputs, "metric").unwrap().outcome)
}

/// The fields that are found fault with.
#[track_caller]
fn faulty(kind: &str, inputs: &Json) -> Vec<String> {
    let faults = report(kind, inputs, "metric").unwrap_err();
    faults.into_iter().map(|fault| fault.field).collect()
}

#[track_caller]
fn close(got: &Json, expected: f64, within: f64) {
    let got = got.as_f64().unwrap_or_else(|| panic!("no number: {got}"));
    assert!((got - expected).abs() <= within, "{got}, not {expected}");
}
