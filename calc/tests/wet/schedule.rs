//! The schedule sheet. Labels' windows are worked by hand; no published plan is known.

use calc::project::Project;
use serde_json::{Value as Json, json};

use super::{close, faulty, outcome, report};

fn plan(steps: Json) -> Json {
    json!({ "start": "9:00", "hours": { "from": "8:00", "to": "20:00" }, "steps": steps })
}

fn three_coats() -> Json {
    json!([
        { "label": "first", "work": "1 h", "recoat_least": "3 h", "recoat_most": "24 h" },
        { "label": "second", "work": "60 min", "recoat_least": "3 h" },
        { "label": "last", "work": "60 min", "traffic": "1 d" } ])
}

#[test]
fn three_coats_by_hand() {
    let got = outcome("schedule", &plan(three_coats()));
    for (at, hour) in [9.0, 13.0, 17.0].into_iter().enumerate() {
        close(&got["steps"][at]["start_min"], hour * 60.0, 1e-9);
    }
    close(&got["steps"][1]["latest_min"], 33.0 * 60.0, 1e-9);
    close(&got["ready_min"], 42.0 * 60.0, 1e-9);
    assert_eq!(got["breaches"], json!([]));
    let report = report("schedule", &plan(three_coats()), "imperial").unwrap();
    assert_eq!(report.answers[0].text, "tomorrow 6:00 pm");
}

/// Ten degrees colder all waits double by the rule of thumb, and windows stay as they are; ten
/// warmer least waits stay.
#[test]
fn cold_lengthens_waits_and_warmth_does_not_shorten_them() {
    let at = |t: f64| {
        let mut inputs = plan(three_coats());
        inputs["air"] = json!({ "temperature": format!("{t} C"), "humidity_percent": 40,
            "surface_temperature": format!("{t} C") });
        outcome("schedule", &inputs)
    };
    let cold = at(15.0);
    close(&cold["steps"][1]["earliest_min"], 16.0 * 60.0, 1e-9);
    close(&cold["steps"][1]["latest_min"], 33.0 * 60.0, 1e-9);
    let warm = at(35.0);
    close(&warm["steps"][1]["earliest_min"], 13.0 * 60.0, 1e-9);
    close(&warm["steps"][1]["latest_min"], 21.0 * 60.0, 1e-9);
}

#[test]
fn a_missed_window_is_told() {
    let mut inputs = plan(three_coats());
    inputs["steps"][0]["starts"] = json!("9:00");
    inputs["steps"][1]["starts"] = json!("day 3 9:00");
    let got = outcome("schedule", &inputs);
    assert_eq!(got["breaches"][0]["step"], 2);
    assert_eq!(got["breaches"][0]["kind"], "too_late");
    close(&got["breaches"][0]["by_min"], 24.0 * 60.0, 1e-9);
    let report = report("schedule", &inputs, "metric").unwrap();
    assert!(report.remarks[0].text.starts_with("second: starts 1440 min after"));
}

/// Three batches of 30 min each are mixed at 9:00, 9:30 and 10:00, and 20 min of pot life are too few.
#[test]
fn last_batch_and_batches_that_take_too_long() {
    let inputs = plan(json!([{ "work": "90 min", "batches": 3, "workable": "20 min" }]));
    let got = outcome("schedule", &inputs);
    close(&got["steps"][0]["last_mix_min"], 600.0, 1e-9);
    assert_eq!(got["breaches"][0]["kind"], "batch_too_slow");
    close(&got["breaches"][0]["by_min"], 10.0, 1e-9);
}

/// Batches and pot life come from the filler's sheet: 20 min at 25 °C are 40 at 15.
#[test]
fn a_pass_takes_its_batches_from_the_filler() {
    let filler = json!({ "gaps": [{ "length": "1 m", "width": "10 mm", "depth": "30 mm" }],
        "mix": { "a": 2, "b": 1 }, "batch_limit": "100 ml", "pot_life": { "time": "20 min", "at": "25 C" } });
    let steps = json!([{ "work": "60 min", "filler": "f" }]);
    let mut inputs = plan(steps);
    inputs["label_temperature"] = json!("20 C");
    inputs["air"] =
        json!({ "temperature": "15 C", "humidity_percent": 40, "surface_temperature": "15 C" });
    let file = json!({ "battenbook": 1, "units": "metric", "sheets": [
        { "id": "s", "kind": "schedule", "inputs": inputs }, { "id": "f", "kind": "gap_fill", "inputs": filler }] });
    let evaluation = calc::evaluate(&Project::from_text(&file.to_string()).unwrap());
    let report = evaluation.sheet("s").unwrap().as_ref().unwrap();
    let got = Json::from(&report.outcome);
    // Three batches of 20 min each, workable for 40.
    close(&got["steps"][0]["last_mix_min"], 580.0, 1e-9);
    assert_eq!(got["breaches"], json!([]));
}

#[test]
fn dew_on_the_surface_is_told_by_step() {
    let mut inputs = plan(three_coats());
    inputs["steps"][2]["air"] =
        json!({ "temperature": "16 C", "humidity_percent": 71, "surface_temperature": "13 C" });
    let got = outcome("schedule", &inputs);
    assert_eq!(got["steps"][2]["may_coat"], false);
    assert!(got["steps"][0].get("may_coat").is_none());
}

#[test]
fn faults_name_their_fields() {
    let mut inputs = plan(json!([{ "work": "13 h" }]));
    assert_eq!(faulty("schedule", &inputs), ["steps.0.work"]);
    inputs["hours"] = json!({ "from": "18:00", "to": "8:00" });
    assert_eq!(faulty("schedule", &inputs), ["hours.to"]);
    assert_eq!(faulty("schedule", &plan(json!([]))), ["steps"]);
    assert_eq!(faulty("schedule", &plan(json!([{ "label": "x" }]))), ["steps.0.work"]);
    assert_eq!(
        faulty(
            "schedule",
            &plan(json!([{ "work": "1 h", "starts": "soon", "filler": "nowhere" }]))
        ),
        ["steps.0.filler", "steps.0.starts"]
    );
    let mut inputs = plan(three_coats());
    inputs["start"] = json!("morning");
    assert_eq!(faulty("schedule", &inputs), ["start"]);
    let many = vec![json!({ "work": "1 h" }); 61];
    assert_eq!(faulty("schedule", &plan(json!(many))), ["steps"]);
}
