//! Every released version of the project file has a kept sample that still loads and still says the same.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, missing_docs)]

use calc::project::{Project, VERSION};
use serde_json::Value as Json;

/// The kept samples, by version: never edited once released.
const SAMPLES: &[&str] = &[include_str!("project_versions/v1.json")];

#[test]
fn there_is_a_sample_of_every_version() {
    assert_eq!(SAMPLES.len() as u64, VERSION);
    for (index, sample) in SAMPLES.iter().enumerate() {
        let document: Json = serde_json::from_str(sample).unwrap();
        assert_eq!(document["battenbook"], index as u64 + 1);
    }
}

#[test]
fn every_sample_loads_and_is_worked_out() {
    for sample in SAMPLES {
        let project = Project::from_text(sample).unwrap();
        let evaluation = calc::evaluate(&project);
        assert!(evaluation.body.faults.is_empty(), "{:#?}", evaluation.body.faults);
        assert!(evaluation.sheets.len() >= 4);
        for (id, result) in &evaluation.sheets {
            assert!(result.is_ok(), "{id}: {result:#?}");
        }
    }
}

#[test]
fn loading_and_saving_loses_nothing() {
    for sample in SAMPLES {
        let saved = Project::from_text(sample).unwrap().to_text();
        let mut before: Json = serde_json::from_str(sample).unwrap();
        let after: Json = serde_json::from_str(&saved).unwrap();
        before["battenbook"] = VERSION.into();
        assert_eq!(before, after);
        assert_eq!(Project::from_text(&saved).unwrap().to_text(), saved);
    }
}
