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
    let filler = json!({ "loss_percent": 0, "gaps": [{ "length": "1 m", "width": "10 mm", "depth": "30 mm" }],
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

/// Walked on is what the words say: when the coat bears it, not when the last task is done; and not shown
/// where the last coat names no such time.
#[test]
fn ready_to_walk_on_is_when_the_coat_bears_it() {
    let mut steps = three_coats();
    let dry = json!({ "label": "hang the door", "work": "2 h", "dry": true });
    steps.as_array_mut().unwrap().push(dry);
    let mut inputs = plan(steps);
    inputs["steps"][3]["starts"] = json!("day 4 9:00");
    let got = outcome("schedule", &inputs);
    close(&got["walk_on_min"], 42.0 * 60.0, 1e-9);
    close(&got["ready_min"], (3.0 * 24.0 + 11.0) * 60.0, 1e-9);
    let shown = report("schedule", &inputs, "metric").unwrap().answers.remove(0);
    assert_eq!([shown.label.as_str(), shown.text.as_str()], ["Ready to walk on", "tomorrow 18:00"]);
    inputs["steps"][2]["traffic"] = json!(null);
    inputs["steps"][0]["traffic"] = json!("12 h");
    assert!(outcome("schedule", &inputs).get("walk_on_min").is_none());
    let shown = report("schedule", &inputs, "metric").unwrap().answers.remove(0);
    assert!(shown.label == "Last step done" && shown.note.contains("not shown"));
}

/// Closing below takes its time before the first pass, washing after the last one has cured.
#[test]
fn steps_round_a_filling_by_hand() {
    let mut filler = filler();
    filler["times"]["prepare"] = json!("45 min");
    filler["times"]["wash"] = json!("1 h");
    let schedule = json!({ "start": "8:00", "steps": [{ "passes": "f" }, { "label": "sand", "work": "1 h", "dry": true }] });
    let got = beside(&filler, &stain_and_finish(), &schedule).unwrap();
    let named = |name: &str, hour: f64| (name.to_owned(), hour);
    assert_eq!(
        starts(&got),
        [
            named("close from below, mask", 8.0),
            named("epoxy 1 of 2", 8.75),
            named("epoxy 2 of 2", 12.25),
            named("wash off the filler, let it dry", 20.75),
            named("sand", 21.75),
        ]
    );
}

/// What stands round a filling and a stain is on the list by the clock.
#[test]
fn the_clock_tells_what_is_done_besides() {
    let mut finish = stain_and_finish();
    finish["layers"][1]["finish_type"] = json!("penetrating");
    finish["layers"][1]["wipe_after"] = json!("15 min");
    let schedule = json!({ "start": "8:00", "steps": [{ "passes": "f" }, { "coats": "c" }] });
    let file = json!({ "battenbook": 1, "units": "metric", "sheets": [
        { "id": "s", "kind": "schedule", "inputs": schedule },
        { "id": "f", "kind": "gap_fill", "inputs": filler() },
        { "id": "c", "kind": "coating", "inputs": finish } ] });
    let evaluation = calc::evaluate(&Project::from_text(&file.to_string()).unwrap());
    let report = evaluation.sheet("s").unwrap().as_ref().unwrap();
    let rows: Vec<String> = report.tables[0].rows.iter().map(|row| row.cells.join(" ")).collect();
    let at = |part: &str| {
        rows.iter()
            .position(|row| row.contains(part))
            .unwrap_or_else(|| panic!("{part}: {rows:#?}"))
    };
    assert!(at("close gaps and holes from below") < at("epoxy 1 of 2: start"));
    assert!(at("wash the filler with water") < at("stain: start"));
    assert!(rows[at("wipe it off from now on")].starts_with("20:15 stain"));
    assert!(rows[at("wipe it off from now on")].contains("the last by 20:55"));
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

/// A schedule beside a filler's sheet "f" and a coating sheet "c".
fn beside(filler: &Json, coating: &Json, schedule: &Json) -> Result<Json, Vec<String>> {
    let file = json!({ "battenbook": 1, "units": "metric", "sheets": [
        { "id": "s", "kind": "schedule", "inputs": schedule },
        { "id": "f", "kind": "gap_fill", "inputs": filler },
        { "id": "c", "kind": "coating", "inputs": coating } ] });
    let evaluation = calc::evaluate(&Project::from_text(&file.to_string()).unwrap());
    match evaluation.sheet("s").unwrap().as_ref() {
        Ok(report) => Ok(Json::from(&report.outcome)),
        Err(faults) => Err(faults.iter().map(|fault| fault.field.clone()).collect()),
    }
}

/// 300 ml in two passes of 150 ml, poured at 5 ml/min.
fn filler() -> Json {
    json!({ "product": "epoxy", "loss_percent": 0, "gaps": [{ "length": "1 m", "width": "10 mm", "depth": "30 mm" }], "passes": 2,
        "mix": { "a": 2, "b": 1 }, "batch_limit": "50 ml", "pour_rate": "5 ml/min",
        "pot_life": { "time": "30 min", "at": "25 C" },
        "times": { "recoat_least": "3 h", "recoat_most": "12 h", "cure": "8 h" } })
}

fn stain_and_finish() -> Json {
    json!({ "product": "finish", "areas": [{ "length": "1 m", "width": "1 m" }], "coats": 2, "spread_rate": "10 m2/l",
        "times": { "work": "60 min", "recoat_least": "2 h", "recoat_most": "24 h", "sand": "30 min", "traffic": "24 h" },
        "layers": [
            { "product": "wax", "place": "over", "coats": 1, "spread_rate": "40 m2/l", "times": { "work": "20 min" } },
            { "product": "stain", "coats": 1, "spread_rate": "15 m2/l", "times": { "work": "40 min", "cure": "4 h" } } ] })
}

fn starts(got: &Json) -> Vec<(String, f64)> {
    let steps = got["steps"].as_array().unwrap().iter();
    steps
        .map(|s| (s["label"].as_str().unwrap().to_owned(), s["start_min"].as_f64().unwrap() / 60.0))
        .collect()
}

/// Worked by hand: passes of 150 / 5 = 30 min with three batches each, the waits from the labels, and
/// the stain before the finish, the wax after it.
#[test]
fn passes_and_coats_of_other_sheets_in_order() {
    let schedule = json!({ "start": "8:00", "steps": [{ "passes": "f" }, { "coats": "c" }] });
    let got = beside(&filler(), &stain_and_finish(), &schedule).unwrap();
    let named = |name: &str, hour: f64| (name.to_owned(), hour);
    assert_eq!(
        starts(&got),
        [
            named("epoxy 1 of 2", 8.0),
            named("epoxy 2 of 2", 11.5),
            named("stain", 20.0),
            named("finish 1 of 2", 24.0 + 40.0 / 60.0),
            named("sand", 27.0 + 40.0 / 60.0),
            named("finish 2 of 2", 28.0 + 10.0 / 60.0),
            named("sand", 31.0 + 10.0 / 60.0),
            named("wax", 31.0 + 40.0 / 60.0),
        ]
    );
    assert_eq!(got["steps"][0]["batches"], 3);
    close(&got["steps"][1]["latest_min"], 20.0 * 60.0, 1e-9);
    // 20 min of the second pass are over when its last batch is mixed; at the latest 20:00 + 20 min.
    close(&got["steps"][1]["last_mix_min"], 11.5 * 60.0 + 20.0, 1e-9);
    close(&got["steps"][1]["mix_by_min"], 20.0 * 60.0 + 20.0, 1e-9);
    // Sanded, the finish has no window; the wax is the last of its sheet and says nothing of traffic.
    assert!(got["steps"][5].get("latest_min").is_none());
    assert_eq!(got["steps"][7].get("traffic_from_min"), None);
    assert_eq!(got["steps"][2]["in_the_night"], false);
    assert_eq!(got["steps"][3]["in_the_night"], true);
}

/// What the row says comes before what the sheet says; a floor that is walked on next must bear that.
#[test]
fn a_row_can_say_otherwise_and_dry_work_waits_for_traffic() {
    let schedule = json!({ "start": "8:00", "hours": { "from": "8:00", "to": "20:00" }, "steps": [
        { "label": "fill", "passes": "f", "work": "1 h", "batches": 2, "recoat_least": "1 h", "cure": "2 h" },
        { "label": "plane", "work": "1 h", "dry": true },
        { "coats": "c", "work": "1 h", "traffic": "10 h" },
        { "label": "carry in", "work": "1 h", "dry": true } ] });
    let mut finish = stain_and_finish();
    finish["layers"] = json!([]);
    let got = beside(&filler(), &finish, &schedule).unwrap();
    let hours: Vec<f64> = starts(&got).into_iter().map(|(_, hour)| hour).collect();
    // Two passes at 8 and 10, planing at 13, coats at 14 and (sanded at 17) 17:30; 10 h on it is 4:30.
    assert_eq!(hours, [8.0, 10.0, 13.0, 14.0, 17.0, 17.5, 32.0]);
    assert_eq!(got["steps"][0]["batches"], 2);
    close(&got["steps"][6]["earliest_min"], 28.5 * 60.0, 1e-9);
}

/// A two-part finish is mixed in the fewest batches that stay workable: 60 min of work at 25 min, and
/// ten degrees warmer at half of that.
#[test]
fn a_two_part_finish_in_batches() {
    let mut finish = stain_and_finish();
    finish["layers"] = json!([]);
    finish["times"]["workable"] = json!("25 min");
    let mut schedule = json!({ "start": "8:00", "steps": [{ "coats": "c" }] });
    assert_eq!(beside(&filler(), &finish, &schedule).unwrap()["steps"][0]["batches"], 3);
    schedule["air"] =
        json!({ "temperature": "35 C", "humidity_percent": 40, "surface_temperature": "35 C" });
    let warm = beside(&filler(), &finish, &schedule).unwrap();
    assert_eq!(warm["steps"][0]["batches"], 5);
    close(&warm["steps"][0]["workable_min"], 12.5, 1e-9);
    assert_eq!(warm["breaches"], json!([]));
}

/// Each label has its own temperature: at 15 °C what is given for 25 takes twice as long, what is given
/// for 15 as long as it says.
#[test]
fn labels_for_different_temperatures() {
    let mut finish = stain_and_finish();
    finish["layers"] = json!([]);
    finish["times"] = json!({ "work": "1 h", "recoat_least": "2 h", "at": "15 C" });
    let air =
        json!({ "temperature": "15 C", "humidity_percent": 40, "surface_temperature": "15 C" });
    let schedule =
        json!({ "start": "8:00", "air": air, "steps": [{ "passes": "f" }, { "coats": "c" }] });
    let got = beside(&filler(), &finish, &schedule).unwrap();
    let hours: Vec<f64> = starts(&got).into_iter().map(|(_, hour)| hour).collect();
    assert_eq!(hours, [8.0, 14.5, 31.0, 34.0]);
}

/// Morning 10 °C and evening 20 °C, 12 h apart: 15 °C at noon and by straight line back at night.
#[test]
fn readings_over_the_day() {
    let reading = |at: &str, t: f64, surface: f64| {
        json!({ "at": at, "temperature": format!("{t} C"),
        "humidity_percent": 71, "surface_temperature": format!("{surface} C") })
    };
    let mut inputs = plan(json!([
        { "label": "noon", "work": "30 min", "starts": "12:00" },
        { "label": "evening", "work": "2 h", "starts": "16:00", "recoat_least": "1 h" },
        { "label": "sand", "work": "1 h", "dry": true } ]));
    inputs["readings"] = json!([reading("18:00", 20.0, 15.0), reading("6:00", 10.0, 15.0)]);
    let got = outcome("schedule", &inputs);
    close(&got["steps"][0]["temperature_c"], 15.0, 1e-9);
    close(&got["steps"][0]["pace"], 2.0, 1e-9);
    // Dry by noon, but in the evening the surface is at dew: the night counts.
    assert_eq!(got["steps"][0]["may_coat"], false);
    // 20 °C and 71 % at its end: dew point 14.6 °C by the Magnus form of WMO-No. 8.
    close(&got["steps"][1]["dew_point_c"], 14.6, 0.05);
    assert_eq!(got["steps"][1]["may_coat"], false);
    // After 18:00 it cools: 2^(-0.5 - t / 12 h), integrated by hand, comes to the label's hour after
    // t = 12 h / ln 2 · -ln(1 - ln 2 / 12 · 2^0.5) = 88.5 min.
    close(&got["steps"][2]["earliest_min"], 18.0 * 60.0 + 89.0, 1e-9);
    assert!(got["steps"][2].get("dew_margin_c").is_none());

    inputs["air"] =
        json!({ "temperature": "15 C", "humidity_percent": 40, "surface_temperature": "15 C" });
    assert_eq!(faulty("schedule", &inputs), ["readings"]);
    inputs["air"] = json!(null);
    inputs["readings"][1]["at"] = json!("6 pm");
    assert_eq!(faulty("schedule", &inputs), ["readings.1.at"]);
}

#[test]
fn rows_of_other_sheets_have_faults_that_name_their_fields() {
    let mut silent = stain_and_finish();
    silent["times"] = json!(null);
    let steps = |steps: Json| json!({ "start": "8:00", "steps": steps });
    let fields = |schedule: Json| beside(&filler(), &silent, &schedule).unwrap_err();
    assert_eq!(fields(steps(json!([{ "coats": "c" }]))), ["steps.0.work"]);
    assert_eq!(fields(steps(json!([{ "passes": "f" }, { "coats": "f" }]))), ["steps.1.coats"]);
    assert_eq!(
        fields(steps(json!([{ "passes": "f", "coats": "c", "work": "1 h" }]))),
        ["steps.0.coats"]
    );
    assert_eq!(fields(steps(json!([{ "passes": "f", "dry": true }]))), ["steps.0.dry"]);
    // The second pass is too long for a day: the row is named, not the pass.
    let mut long = steps(json!([{ "passes": "f" }, { "coats": "c", "work": "9 h" }]));
    long["hours"] = json!({ "from": "8:00", "to": "16:00" });
    assert_eq!(fields(long), ["steps.1.work"]);
}

#[test]
fn days_are_drawn_one_by_one_and_the_clock_is_followed() {
    let report = report("schedule", &plan(three_coats()), "metric").unwrap();
    let titles: Vec<&str> = report.drawings.iter().map(|drawing| drawing.title.as_str()).collect();
    assert_eq!(titles.len(), 2);
    assert!(titles[0].starts_with("Today.") && titles[1] == "Tomorrow");
    let rows: Vec<String> = report.tables[0].rows.iter().map(|row| row.cells.join(" ")).collect();
    assert_eq!(
        rows,
        [
            "9:00 first: start",
            "10:00 first: done; the next not before 13:00",
            "13:00 second: start (at the latest tomorrow 9:00)",
            "14:00 second: done; the next not before 17:00",
            "17:00 last: start",
            "18:00 last: done",
            "tomorrow 18:00 last: walk on it",
        ]
    );
}
