//! The furring sheet.

use serde_json::{Value as Json, json};

use super::{check_cut_plan, close, faulty, list, number, outcome, with};

fn body() -> Json {
    json!({ "length": "5480 mm", "width": "2060 mm", "rib_width": "38 mm",
        "ribs": { "measured": ["210 mm", "628 mm", "1050 mm", "1466 mm"] } })
}

fn strips() -> Json {
    json!({ "section": { "thickness": "3/4 in", "width": "1 1/2 in" }, "screws_per_strip": 4, "end_distance": "1 in",
        "stock": [{ "length": "8 ft", "price": 4 }], "kerf": "1/8 in" })
}

#[test]
fn length_and_number_follow_the_body() {
    let got = outcome("furring", &body(), &with(strips(), json!({ "end_clearance": "3 mm" })));
    close(&got["strip_length_mm"], 2054.0, 1e-9);
    assert_eq!(got["strips"], 4);
    assert_eq!(got["screws"], 16);
    let cut = check_cut_plan(&got["cut_plan"], 3.175, 0.0);
    assert_eq!(cut, [2054.0; 4]);
    let own = outcome("furring", &body(), &with(strips(), json!({ "length": "1 m", "strips": 7 })));
    close(&own["strip_length_mm"], 1000.0, 1e-9);
    assert_eq!((&own["strips"], &own["screws"]), (&json!(7), &json!(28)));
}

/// Identity: s = L / (n - 1) for n marks, both ends included; 95 in in 4 marks: 31.6667 in.
#[test]
fn marks_are_equally_spaced_from_both_ends() {
    let got = outcome(
        "furring",
        &body(),
        &with(strips(), json!({ "length": "97 in" , "stock": [{ "length": "10 ft" }] })),
    );
    let marks: Vec<f64> = list(&got["screw_marks_mm"]).iter().map(number).collect();
    for (mark, inches) in marks.iter().zip([1.0, 32.6667, 64.3333, 96.0]) {
        assert!((mark / 25.4 - inches).abs() < 1e-4);
    }
}

/// Identity: k = ceil(L / s), marks k + 1; 95.5 in at 16 in at most: 7 marks 15.91667 in apart.
#[test]
fn a_largest_spacing_takes_the_fewest_screws() {
    let limit = json!({ "length": "97.5 in", "screws_per_strip": null, "screw_spacing_limit": "16 in", "stock": [{ "length": "10 ft" }] });
    let got = outcome("furring", &body(), &with(strips(), limit));
    let marks: Vec<f64> = list(&got["screw_marks_mm"]).iter().map(number).collect();
    assert_eq!(marks.len(), 7);
    assert!(((marks[1] - marks[0]) / 25.4 - 15.916_67).abs() < 1e-4);
}

/// SAE J78: #8 has 18 threads an inch; Manufacturers' Standard Gauge: 16 ga is 0.0598 in. Stack, steel, three threads.
#[test]
fn the_screw_reaches_three_threads_through_the_steel() {
    let screw = json!({ "stack": [{ "name": "strip", "thickness": "3/4 in" }], "steel": "16 ga",
        "lengths": ["3/4 in", "1 1/4 in", "1 in"] });
    let got = &outcome("furring", &body(), &with(strips(), json!({ "screw": screw })))["screw"];
    close(&got["least_length_mm"], 25.4 * (0.75 + 0.0598 + 3.0 / 18.0), 2e-3);
    close(&got["length_mm"], 25.4, 1e-9);
    close(&got["drill_through_mm"], 25.4 * 0.0598, 2e-3);
    assert_eq!(got["drill_point"], 2);
    let mut drilling = screw.clone();
    drilling["self_drilling"] = json!(true);
    let got = &outcome("furring", &body(), &with(strips(), json!({ "screw": drilling })))["screw"];
    close(&got["length_mm"], 31.75, 1e-9);
    let mut measured = screw.clone();
    measured["steel"] = json!("1.5 mm");
    let got = &outcome("furring", &body(), &with(strips(), json!({ "screw": measured })))["screw"];
    close(&got["drill_through_mm"], 1.5, 1e-9);
    for (key, value, field) in [
        ("lengths", json!(["1/2 in"]), "screw.lengths"),
        ("steel", json!("15 ga"), "screw.steel"),
        ("steel", json!("thick"), "screw.steel"),
        ("stack", json!([]), "screw.stack"),
    ] {
        let mut wrong = screw.clone();
        wrong[key] = value;
        assert_eq!(faulty("furring", &body(), &with(strips(), json!({ "screw": wrong }))), [field]);
    }
}

/// Worked from 1 US fl oz = 1.8046875 in³: a 1/4 in round bead from 10 fl oz is 30.6 ft long.
#[test]
fn a_bead_empties_cartridges() {
    let glue = json!({ "bead": "1/4 in", "cartridge": "10 fl oz", "price": 6 });
    let inputs = with(strips(), json!({ "length": "5.1 ft", "strips": 6, "adhesive": glue }));
    let got = &outcome("furring", &body(), &inputs)["adhesive"];
    close(&got["bead_m"], 30.6 * 0.3048, 1e-9);
    close(&got["volume_l"], 0.2957, 5e-4);
    assert_eq!(got["cartridges"], 1);
    let glue = json!({ "bead": "1/4 in", "beads": 2, "cartridge": "10 fl oz", "loss_percent": 10 });
    let got = &outcome("furring", &body(), &with(inputs, json!({ "adhesive": glue })))["adhesive"];
    close(&got["volume_l"], 2.0 * 0.2957 / 0.9, 1e-3);
    assert_eq!(got["cartridges"], 3);
}

#[test]
fn faults_name_what_does_not_go_together() {
    let bad = |changes: Json| faulty("furring", &body(), &with(strips(), changes));
    assert_eq!(bad(json!({ "end_distance": "1100 mm" })), ["end_distance"]);
    assert_eq!(bad(json!({ "length": "1 m", "end_clearance": "500 mm" })), ["end_clearance"]);
    assert_eq!(bad(json!({ "stock": [{ "length": "6 ft" }] })), ["stock"]);
    assert_eq!(bad(json!({ "screw_spacing_limit": "12 in" })), ["screw_spacing_limit"]);
    assert_eq!(bad(json!({ "screws_per_strip": null })), ["screws_per_strip"]);
    assert_eq!(faulty("furring", &json!({}), &strips()), ["length", "strips"]);
}
