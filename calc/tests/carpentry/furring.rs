//! The furring sheet.

use serde_json::{Value as Json, json};

use super::{check_cut_plan, close, faulty, list, number, outcome, report, with};

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

/// Three stations, worked by hand: at 210 mm 2060 - 20 x 210/2000 = 2057.9, at 628 mm 2053.72, at 1050 mm 2049.5, at 1466 mm
/// 2045.34 wide; 3 mm free at both ends.
#[test]
fn strips_follow_the_width_at_their_ribs() {
    let stations = json!([{ "x": "0 mm", "width": "2060 mm" }, { "x": "2000 mm", "width": "2040 mm" },
        { "x": "5480 mm", "width": "2052 mm" }]);
    let uneven = with(body(), json!({ "widths": stations }));
    let inputs = with(
        strips(),
        json!({ "end_clearance": "3 mm", "screws_per_strip": null,
        "screw_spacing_limit": "667 mm", "adhesive": { "bead": "1/4 in", "cartridge": "10 fl oz" } }),
    );
    let got = outcome("furring", &uneven, &inputs);
    let lengths = [2051.9, 2047.72, 2043.5, 2039.34];
    for (found, wanted) in list(&got["strip_lengths_mm"]).iter().zip(lengths) {
        close(found, wanted, 1e-6);
    }
    close(&got["strip_length_mm"], 2051.9, 1e-6);
    assert_eq!(got["strips"], 4);
    // Each kind goes to its own rib, and its marks are set out on its own length: three spaces of 667 mm reach over 2001 mm,
    // which all but the longest strip keep to.
    let kinds = list(&got["strip_kinds"]);
    assert_eq!(kinds.len(), 4);
    let mut screws = 0;
    for (kind, (rib, length)) in kinds.iter().zip((1..).zip(lengths)) {
        assert_eq!(kind["ribs"], json!([rib]));
        let marks: Vec<f64> = list(&kind["screw_marks_mm"]).iter().map(number).collect();
        assert_eq!(marks.len(), if length - 50.8 > 2001.0 { 5 } else { 4 });
        assert!((marks[0] - 25.4).abs() < 1e-9);
        assert!((marks[marks.len() - 1] - (length - 25.4)).abs() < 1e-6);
        screws += marks.len();
    }
    assert_eq!(number(&got["screws"]) as usize, screws);
    assert_eq!(got["screw_marks_mm"], kinds[0]["screw_marks_mm"]);
    let cut = check_cut_plan(&got["cut_plan"], 3.175, 0.0);
    assert!(cut.iter().rev().zip(lengths).all(|(a, b)| (a - b).abs() < 1e-4) && cut.len() == 4);
    close(&got["adhesive"]["bead_m"], lengths.iter().sum::<f64>() / 1e3, 1e-9);
}

/// What was typed comes before the stations; a number of strips that is not that of the ribs takes the narrowest width.
#[test]
fn typed_lengths_and_numbers_come_before_the_stations() {
    let stations = json!([{ "x": "0 mm", "width": "2060 mm" }, { "x": "5 m", "width": "2040 mm" }]);
    let uneven = with(body(), json!({ "widths": stations }));
    let own = outcome("furring", &uneven, &with(strips(), json!({ "length": "1 m" })));
    assert_eq!(list(&own["strip_kinds"]).len(), 1);
    close(&own["strip_length_mm"], 1000.0, 1e-9);
    let more = outcome("furring", &uneven, &with(strips(), json!({ "strips": 6 })));
    close(&more["strip_length_mm"], 2040.0, 1e-9);
    assert_eq!(list(&more["strip_lengths_mm"]).len(), 6);
}

/// A project without ribs, or without any body: the typed length and number serve; without them the faults name them.
#[test]
fn strips_without_a_body() {
    let typed = with(strips(), json!({ "length": "1800 mm", "strips": 5 }));
    let got = outcome("furring", &json!({}), &typed);
    assert_eq!((&got["strips"], list(&got["strip_lengths_mm"]).len()), (&json!(5), 5));
    let bare = json!({ "width": "2060 mm" });
    let faults = report("furring", &bare, &strips()).unwrap_err();
    assert_eq!(faults[0].field, "strips");
    assert!(faults[0].message.contains("number of strips"), "{}", faults[0].message);
}

/// SAE J78 by hand: point 2 of a #8 drills up to 0.090 in, which a self-drilling screw's answer names.
#[test]
fn a_self_drilling_screw_names_its_point() {
    let screw = json!({ "stack": [{ "name": "strip", "thickness": "3/4 in" }], "steel": "16 ga",
        "lengths": ["1 1/4 in"], "self_drilling": true });
    let found = report("furring", &body(), &with(strips(), json!({ "screw": screw }))).unwrap();
    assert!(found.answers[2].note.starts_with("drill point 2"), "{}", found.answers[2].note);
    assert!(
        found.working.iter().any(|step| step.name == "Drill point" && step.result == "point 2")
    );
}
