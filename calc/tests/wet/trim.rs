//! The trim sheet. No published worked example is known; the checks are geometry worked by hand.

use serde_json::{Value as Json, json};

use super::{close, faulty, outcome, report};

fn flange(corners: Json) -> Json {
    json!({ "height": "60 mm", "corners": corners, "clearance": "0 mm", "least_grip": "0 mm" })
}

#[test]
fn by_hand_from_standoff_depth_and_both() {
    let mut inputs = flange(json!([
        { "name": "front left", "standoff": "15 mm", "depth": "45 mm" },
        { "name": "front right", "standoff": "17 mm" },
        { "name": "rear right", "depth": "40 mm" },
        { "name": "rear left", "standoff": "18 mm", "depth": "41 mm" },
    ]));
    let got = outcome("trim", &inputs);
    for (at, (cut, keep)) in
        [(15.0, 45.0), (17.0, 43.0), (20.0, 40.0), (18.0, 42.0)].into_iter().enumerate()
    {
        close(&got["corners"][at]["cut_mm"], cut, 1e-9);
        close(&got["corners"][at]["keep_mm"], keep, 1e-9);
    }
    assert_eq!(got["corners"][2]["name"], "rear right");
    close(&got["uneven_mm"], 5.0, 1e-9);
    close(&got["twist_mm"], 0.0, 1e-9);
    inputs["clearance"] = json!("1.5 mm");
    let got = outcome("trim", &inputs);
    close(&got["corners"][0]["cut_mm"], 16.5, 1e-9);
    close(&got["corners"][2]["keep_mm"], 38.5, 1e-9);
}

#[test]
fn inches_and_fractions() {
    let got = outcome(
        "trim",
        &json!({ "height": "2 3/8 in", "clearance": "1/16 in",
            "corners": [{ "standoff": "5/8 in", "depth": "1 3/4 in" }, { "standoff": "11/16 in" },
                { "standoff": "13/16 in" }, { "standoff": "3/4 in" }] }),
    );
    close(&got["corners"][0]["cut_mm"], 25.4 * 11.0 / 16.0, 1e-9);
    close(&got["corners"][0]["keep_mm"], 25.4 * (1.0 + 11.0 / 16.0), 1e-9);
    close(&got["uneven_mm"], 25.4 * 3.0 / 16.0, 1e-9);
    assert_eq!(got["corners"][1]["name"], "corner 2");
}

/// What is shown adds up: 60.4 mm is shown as 60 and a cut of 15.6 as 16, so 44 stay, not the 45 of 44.8. Left out,
/// clearance and least height take their usual values and say so.
#[test]
fn cut_and_keep_add_up_as_shown() {
    let inputs = json!({ "height": "60.4 mm", "clearance": "0 mm", "corners": [{ "name": "a", "standoff": "15.6 mm" }] });
    let found = report("trim", &inputs, "metric").unwrap();
    assert_eq!(
        (found.answers[0].text.as_str(), found.answers[1].text.as_str()),
        ("16 mm", "44 mm")
    );
    let usual = json!({ "height": "60 mm", "corners": [{ "standoff": "15 mm" }] });
    let found = report("trim", &usual, "imperial").unwrap();
    close(&Json::from(&found.outcome)["corners"][0]["cut_mm"], 15.0 + 25.4 / 16.0, 1e-9);
    assert!(found.remarks.iter().any(|remark| {
        remark.text.contains("clearance at the roof frame 1/16 in and least height to keep 1/2 in")
    }));
    let low = json!({ "height": "60 mm", "corners": [{ "standoff": "50 mm" }] });
    assert_eq!(faulty("trim", &low), ["corners.0.standoff"]);
}

/// Readings exactly 1/16 in apart agree, whatever floats make of it.
#[test]
fn a_sixteenth_apart_still_agrees() {
    let corner = |depth: &str| flange(json!([{ "standoff": "15 mm", "depth": depth }]));
    assert!(report("trim", &corner("45 mm + 1/16 in"), "metric").is_ok());
    assert!(report("trim", &corner("45 mm - 1/16 in"), "metric").is_ok());
    assert_eq!(faulty("trim", &corner("46.6 mm")), ["corners.0"]);
    assert_eq!(faulty("trim", &corner("43.4 mm")), ["corners.0"]);
}

#[test]
fn faults_name_their_fields() {
    let good = json!({ "standoff": "15 mm" });
    let corners = |bad: Json| flange(json!([good, bad, good, good]));
    assert_eq!(faulty("trim", &corners(json!({ "depth": "61 mm" }))), ["corners.1.depth"]);
    assert_eq!(faulty("trim", &corners(json!({ "standoff": "-2 mm" }))), ["corners.1.standoff"]);
    assert_eq!(faulty("trim", &corners(json!({ "standoff": "61 mm" }))), ["corners.1.standoff"]);
    assert_eq!(faulty("trim", &corners(json!({ "name": "x" }))), ["corners.1.standoff"]);
    let flush = json!([{ "standoff": "0 mm" }, { "depth": "60 mm" }]);
    assert_eq!(faulty("trim", &flange(flush)), ["corners"]);
    assert_eq!(faulty("trim", &flange(json!([]))), ["corners"]);
    assert_eq!(faulty("trim", &json!({ "corners": [good] })), ["height"]);
    let mut grip = flange(json!([good, good, { "standoff": "40 mm" }, good]));
    grip["least_grip"] = json!("25 mm");
    assert_eq!(faulty("trim", &grip), ["corners.2.standoff"]);
    grip["least_grip"] = json!("70 mm");
    assert_eq!(faulty("trim", &grip), ["least_grip"]);
}

#[test]
fn faults_speak_the_units_that_were_chosen() {
    let inputs = flange(json!([{ "name": "front left", "depth": "63 mm" }]));
    let fault = report("trim", &inputs, "imperial").unwrap_err().remove(0);
    assert!(fault.message.contains("front left") && fault.message.contains("1/8 in"), "{fault:?}");
}

#[test]
fn a_twisted_ceiling_is_told() {
    let corners = [10, 10, 10, 20].map(|mm| json!({ "standoff": format!("{mm} mm") }));
    let inputs = flange(json!(corners));
    assert_eq!(outcome("trim", &inputs)["rim_follows"], false);
    let report = report("trim", &inputs, "metric").unwrap();
    assert!(report.remarks[0].text.contains("5 mm"), "{:?}", report.remarks);
}

/// With other than four corners the sides are not drawn, but the heights are.
#[test]
fn any_number_of_corners() {
    for count in [1, 2, 3, 5] {
        let inputs = flange(json!(vec![json!({ "standoff": "15 mm" }); count]));
        let report = report("trim", &inputs, "metric").unwrap();
        assert_eq!(report.outcome.list("corners").len(), count);
        assert!(report.outcome.get("twist_mm").is_none());
        assert!(report.drawings[0].bounds().is_some());
    }
}
