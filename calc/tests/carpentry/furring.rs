//! The furring sheet.

use proptest::prelude::*;
use serde_json::{Value as Json, json};

use super::{check_cut_plan, close, faulty, list, number, outcome, report, with};

fn body() -> Json {
    json!({ "length": "5480 mm", "width": "2060 mm", "rib_width": "38 mm",
        "ribs": { "measured": ["210 mm", "628 mm", "1050 mm", "1466 mm"] } })
}

fn strips() -> Json {
    json!({ "section": { "thickness": "3/4 in", "width": "1 1/2 in" }, "screws_per_strip": 4, "end_distance": "1 in",
        "stock": [{ "length": "8 ft", "price": 4 }], "kerf": "1/8 in", "end_clearance": "0 mm" })
}

/// Zero is what was entered, never what was forgotten.
#[test]
fn what_is_left_out_takes_the_usual_value_and_says_so() {
    let mut inputs = strips();
    inputs["end_clearance"] = Json::Null;
    inputs["adhesive"] = json!({ "bead": "1/4 in", "cartridge": "10 fl oz" });
    let found = report("furring", &body(), &inputs).unwrap();
    assert!(found.remarks.iter().any(|remark| remark.text.contains("clearance at each end 3 mm")
        && remark.text.contains("waste allowance for adhesive 10 %")));
    close(&Json::from(&found.outcome)["strip_length_mm"], 2054.0, 1e-9);
    let typed = report("furring", &body(), &strips()).unwrap();
    assert!(!typed.remarks.iter().any(|remark| remark.text.contains("usual")));
    assert!(typed.remarks.iter().any(|remark| remark.text.contains("does not go in")));
}

/// Worked by hand: a hatch from 1000 to 1300 and 700 to 1300 mm takes the middle of the strip at 1050 mm, whose face reaches from
/// 1031 to 1069: 700 mm stay on the left and 760 on the right, less 3 mm at every end. The one at 628 mm is whole.
#[test]
fn a_strip_ends_at_an_opening() {
    let opening = json!([{ "name": "hatch", "x": "1000 mm", "y": "700 mm", "length": "300 mm", "width": "600 mm" }]);
    let cut = with(body(), json!({ "openings": opening }));
    let inputs = with(
        strips(),
        json!({ "end_clearance": "3 mm", "screws_per_strip": null, "screw_spacing_limit": "300 mm" }),
    );
    let found = report("furring", &cut, &inputs).unwrap();
    let got = Json::from(&found.outcome);
    let lengths: Vec<f64> = list(&got["strip_lengths_mm"]).iter().map(number).collect();
    assert_eq!(
        lengths.iter().map(|length| length.round()).collect::<Vec<_>>(),
        [2054.0, 2054.0, 694.0, 754.0, 2054.0]
    );
    assert!(found.remarks.iter().any(|remark| {
        remark.text.contains("Rib 3 is interrupted by the hatch: its strip ends there")
    }));
    assert_eq!(check_cut_plan(&got["cut_plan"], 3.175, 0.0).len(), 5);
    let wide = json!([{ "name": "hatch", "x": "1000 mm", "y": "40 mm", "length": "300 mm", "width": "600 mm" }]);
    assert_eq!(faulty("furring", &with(body(), json!({ "openings": wide })), &inputs), ["strips"]);
}

/// Worked by hand: 3/4 in and 16 ga take at least 0.976 in. With 6 mm free behind the steel 26.57 mm is the longest: 1 in will do,
/// 1 1/4 in would reach what lies there, and so would 3 in; 4 mm is no room for three threads of a #8 (4.23 mm).
#[test]
fn no_screw_goes_farther_than_there_is_room() {
    let screw = |behind: Json, lengths: Json| json!({ "screw": { "stack": [{ "name": "strip", "thickness": "3/4 in" }], "steel": "16 ga", "behind": behind, "lengths": lengths } });
    let of = |behind: &str, lengths: Json| {
        report("furring", &body(), &with(strips(), screw(json!(behind), lengths)))
    };
    let got = Json::from(&of("6 mm", json!(["3 in", "1 in"])).unwrap().outcome);
    close(&got["screw"]["length_mm"], 25.4, 1e-9);
    close(&got["screw"]["longest_mm"], 19.05 + 0.0598 * 25.4 + 6.0, 2e-3);
    let fault = &of("6 mm", json!(["3 in", "1 1/4 in"])).unwrap_err()[0];
    assert_eq!(fault.field, "screw.lengths");
    assert!(fault.message.contains("the longest safe length is 26 mm"), "{}", fault.message);
    assert_eq!(of("4 mm", json!(["1 in"])).unwrap_err()[0].field, "screw.behind");
    // Where nothing says what lies behind, the shortest that holds and no longer one.
    let unknown =
        |lengths: Json| report("furring", &body(), &with(strips(), screw(Json::Null, lengths)));
    let found = unknown(json!(["1 in", "3 in"])).unwrap();
    assert!(found.answers[2].note.contains("longest not shown"), "{}", found.answers[2].note);
    assert!(Json::from(&found.outcome)["screw"]["longest_mm"].is_null());
    assert_eq!(unknown(json!(["3 in"])).unwrap_err()[0].field, "screw.lengths");
    // The body's depth behind a rib's face, less the steel.
    let deep = with(body(), json!({ "wall_depth": "10 mm" }));
    let inputs = with(strips(), screw(Json::Null, json!(["1 in", "3 in"])));
    close(&outcome("furring", &deep, &inputs)["screw"]["longest_mm"], 29.05, 1e-6);
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
    let glue = json!({ "bead": "1/4 in", "cartridge": "10 fl oz", "price": 6, "loss_percent": 0 });
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

proptest! {
    #![proptest_config(ProptestConfig { cases: 200, failure_persistence: None, ..ProptestConfig::default() })]

    /// Whatever is stacked, and whatever lies behind: the screw that is named holds by three threads and stays within stack, steel and
    /// free depth; with no free depth known it is no longer than the next length in common stock.
    #[test]
    fn no_screw_is_longer_than_the_stack_and_what_is_free(
        layers in prop::collection::vec(0.5..40.0_f64, 1..4),
        steel in 0.4..4.0_f64,
        behind in prop::option::of(0.0..60.0_f64),
        lengths in prop::collection::vec(6.0..120.0_f64, 1..6),
        gauge in prop::sample::select(vec!["6", "8", "10", "12", "14"]),
        drilling in any::<bool>(),
    ) {
        let mm = |value: f64| format!("{value} mm");
        let stack: Vec<Json> = layers.iter().map(|one| json!({ "name": "layer", "thickness": mm(*one) })).collect();
        let screw = json!({ "stack": stack, "steel": mm(steel), "behind": behind.map(mm), "gauge": gauge,
            "lengths": lengths.iter().copied().map(mm).collect::<Vec<_>>(), "self_drilling": drilling });
        match report("furring", &body(), &with(strips(), json!({ "screw": screw }))) {
            Ok(found) => {
                let got = Json::from(&found.outcome);
                let (least, length) = (number(&got["screw"]["least_length_mm"]), number(&got["screw"]["length_mm"]));
                let through = layers.iter().sum::<f64>() + steel;
                prop_assert!(length >= least - 0.02 && least > through);
                match behind {
                    Some(behind) => {
                        prop_assert!(length <= through + behind + 1e-4);
                        close(&got["screw"]["longest_mm"], through + behind, 1e-6);
                    }
                    None => prop_assert!(length <= least + 25.4 && got["screw"]["longest_mm"].is_null()),
                }
            }
            Err(faults) => for fault in faults {
                let known = ["screw.lengths", "screw.behind", "screw.steel"];
                prop_assert!(known.contains(&fault.field.as_str()), "{fault:?}");
            },
        }
    }

    /// In any body with any openings: strips, openings and clearances fill the width of every rib, and no screw is nearer to an end than
    /// asked.
    #[test]
    fn strips_and_openings_fill_the_width(
        openings in prop::collection::vec((0.0..0.9_f64, 0.0..0.9_f64, 0.05..0.9_f64, 0.05..0.9_f64), 0..3),
        end in 5.0..60.0_f64,
        clearance in 0.0..10.0_f64,
    ) {
        let (long, wide) = (1700.0, 2060.0);
        let cuts: Vec<[f64; 4]> = openings
            .iter()
            .map(|(x, y, length, width)| [x * long, y * wide, length * (1.0 - x) * long, width * (1.0 - y) * wide].map(f64::round))
            .filter(|cut| cut[2] >= 1.0 && cut[3] >= 1.0)
            .collect();
        let of: Vec<Json> = cuts
            .iter()
            .map(|[x, y, length, width]| json!({ "name": "o", "x": format!("{x} mm"), "y": format!("{y} mm"), "length": format!("{length} mm"), "width": format!("{width} mm") }))
            .collect();
        let inputs = json!({ "end_clearance": format!("{clearance} mm"), "end_distance": format!("{end} mm"),
            "screws_per_strip": null, "screw_spacing_limit": "300 mm" });
        match report("furring", &with(body(), json!({ "openings": of })), &with(strips(), inputs)) {
            Ok(found) => {
                let got = Json::from(&found.outcome);
                let mut expected: f64 = 0.0;
                for rib in [210.0, 628.0, 1050.0, 1466.0] {
                    // A face of 1 1/2 in, swept by tenths of a millimetre.
                    let crossed: Vec<&[f64; 4]> = cuts.iter().filter(|[x, _, length, _]| x + length > rib - 19.05 + 1.0 && *x < rib + 19.05 - 1.0).collect();
                    let free = (0..wide as usize).filter(|y| {
                        let y = *y as f64 + 0.5;
                        !crossed.iter().any(|[_, low, _, width]| y > *low && y < low + width)
                    });
                    expected += free.count() as f64;
                }
                let lengths: Vec<f64> = list(&got["strip_lengths_mm"]).iter().map(number).collect();
                let with_gaps = lengths.iter().sum::<f64>() + 2.0 * clearance * lengths.len() as f64;
                prop_assert!((with_gaps - expected).abs() < 1.0, "{with_gaps}, not {expected}");
                for kind in list(&got["strip_kinds"]) {
                    let length = number(&kind["length_mm"]);
                    for mark in list(&kind["screw_marks_mm"]).iter().map(number) {
                        prop_assert!(mark >= end - 1e-6 && mark <= length - end + 1e-6);
                    }
                }
            }
            Err(faults) => for fault in faults {
                prop_assert!(["strips", "end_clearance", "end_distance", "stock"].contains(&fault.field.as_str()), "{fault:?}");
            },
        }
    }
}
