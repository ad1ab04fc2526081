//! The boards sheet: the geometry of every piece, tested on the outcome alone.

use proptest::prelude::*;
use serde_json::{Value as Json, json};

use super::{check_cut_plan, close, faulty, list, number, outcome, report, with};

/// A made-up rig; all in mm.
#[derive(Clone, Debug)]
struct Rig {
    run: f64,
    field: f64,
    ribs: Vec<f64>,
    rib_width: f64,
    /// x, y, length, width.
    openings: Vec<[f64; 4]>,
    coverage: f64,
    end_gap: f64,
    side_gap: f64,
    clearance: f64,
    full: bool,
    least_rip: Option<f64>,
    stagger: Option<f64>,
    edge: Option<f64>,
    stock: Vec<f64>,
    kerf: f64,
    shown: Vec<usize>,
}

fn mm(value: f64) -> String {
    format!("{value} mm")
}

impl Rig {
    fn body(&self) -> Json {
        let openings: Vec<Json> = self
            .openings
            .iter()
            .enumerate()
            .map(|(index, [x, y, length, width])| {
                json!({ "name": format!("opening {index}"), "x": mm(*x), "y": mm(*y), "length": mm(*length), "width": mm(*width) })
            })
            .collect();
        let ribs: Vec<String> = self.ribs.iter().copied().map(mm).collect();
        json!({ "length": mm(self.run), "width": mm(self.field), "rib_width": mm(self.rib_width),
            "ribs": { "measured": ribs }, "openings": openings })
    }

    fn inputs(&self) -> Json {
        let stock: Vec<Json> = self
            .stock
            .iter()
            .map(|length| json!({ "length": mm(*length), "price": (length / 10.0).round() / 100.0 * 4.0 }))
            .collect();
        json!({ "coverage": mm(self.coverage), "stock": stock, "kerf": mm(self.kerf), "end_gap": mm(self.end_gap),
            "side_gap": mm(self.side_gap), "start": if self.full { "full" } else { "balanced" },
            "least_rip": self.least_rip.map(mm), "joint_stagger": self.stagger.map(mm),
            "edge_distance": self.edge.map(mm), "shown_ribs": self.shown,
            "opening_clearance": mm(self.clearance) })
    }
}

fn rig() -> impl Strategy<Value = Rig> {
    let ribs = prop::collection::vec(180.0..620.0_f64, 1..14);
    let opening = [0.0..1.0_f64, 0.0..1.0, 0.02..0.5, 0.02..0.6];
    let sizes = (5.0..320.0_f64, 20.0..70.0_f64, 40.0..300.0_f64, 0.3..2.6_f64);
    let gaps = (0.0..8.0_f64, 0.0..12.0_f64, 0.0..15.0_f64, 0.0..4.0_f64);
    let choices = (
        any::<bool>(),
        prop::option::of(0.0..80.0_f64),
        prop::option::of(0.0..450.0_f64),
        prop::option::of(0.0..24.0_f64),
    );
    let stock = prop::collection::vec(1500.0..5000.0_f64, 1..4);
    (ribs, prop::collection::vec(opening, 0..3), sizes, gaps, choices, stock).prop_map(
        |(spacings, openings, (first, rib_width, coverage, field), gaps, choices, stock)| {
            let tenth = |value: f64| (value * 10.0).round() / 10.0;
            let mut at = tenth(first);
            let mut ribs = vec![at];
            for spacing in spacings {
                at = tenth(at + spacing);
                ribs.push(at);
            }
            let run = tenth(at + first);
            let field = tenth(field * 1000.0);
            let openings = openings
                .into_iter()
                .map(|[x, y, length, width]| {
                    let (x, y) = (tenth(x * run * 0.95), tenth(y * field * 0.95));
                    [x, y, tenth(length * (run - x)).max(1.0), tenth(width * (field - y)).max(1.0)]
                })
                .collect();
            Rig {
                run,
                field,
                shown: (1..=ribs.len()).step_by(3).collect(),
                ribs,
                rib_width: tenth(rib_width),
                openings,
                coverage: tenth(coverage),
                end_gap: tenth(gaps.0),
                side_gap: tenth(gaps.1),
                clearance: tenth(gaps.2),
                kerf: tenth(gaps.3),
                full: choices.0,
                least_rip: choices.1.map(tenth),
                stagger: choices.2.map(tenth),
                edge: choices.3.map(tenth),
                stock: stock.into_iter().map(tenth).collect(),
            }
        },
    )
}

const CLOSE: f64 = 1e-2;

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() < CLOSE
}

/// All that must be true of a layout, whatever chose it.
fn check(rig: &Rig, got: &Json) {
    let courses = number(&got["courses"]) as usize;
    let field = rig.field - 2.0 * rig.side_gap;
    let (first, last) = (number(&got["first_rip_mm"]), number(&got["last_rip_mm"]));
    // Coverage adds up, and the rips are what the start asks for.
    let covered = match courses {
        1 => first,
        _ => first + last + (courses - 2) as f64 * rig.coverage,
    };
    assert!(near(covered, field), "{covered} of {field}");
    assert!(first <= rig.coverage + CLOSE && last <= rig.coverage + CLOSE);
    if rig.full && courses > 1 {
        assert!(near(first, rig.coverage));
    } else {
        assert!(near(first, last));
    }
    let ripped = !near(first, rig.coverage) || !near(last, rig.coverage);
    if let (true, Some(least)) = (ripped, rig.least_rip) {
        assert!(first.min(last) >= least - CLOSE);
    }
    let width = |course: usize| match course {
        1 => first,
        _ if course == courses => last,
        _ => rig.coverage,
    };
    let half = rig.rib_width / 2.0;
    let edge = rig.edge.unwrap_or(rig.rib_width / 4.0);
    let (mut holes, mut filled, mut lengths) = (0, 0, Vec::new());
    let mut joints: Vec<Vec<f64>> = Vec::new();
    let mut low = rig.side_gap;
    for course in 1..=courses {
        let high = low + width(course);
        let pieces: Vec<&Json> = list(&got["pieces"])
            .iter()
            .filter(|piece| number(&piece["course"]) as usize == course)
            .collect();
        let mut at = rig.end_gap;
        let mut own = Vec::new();
        for (index, piece) in pieces.iter().enumerate() {
            let (from, to) = (number(&piece["from_mm"]), number(&piece["to_mm"]));
            let length = number(&piece["length_mm"]);
            assert_eq!(number(&piece["piece"]) as usize, index + 1);
            assert!(near(from, at) && near(to - from, length) && length > 0.0);
            assert!(length <= rig.stock.iter().copied().fold(0.0, f64::max) + CLOSE);
            lengths.push(length);
            assert!(pieces.len() == 1 || length >= 2.0 * edge - CLOSE, "no room for both marks");
            at = to;
            if index > 0 {
                assert!(rig.ribs.iter().any(|rib| near(*rib, from)), "joint off the support");
                own.push(from);
            }
            let notches = check_notches(rig, piece, (from, to), (low, high));
            let gone = |x: f64| notches.iter().any(|(a, b)| x > a - CLOSE && x < b + CLOSE);
            let mut marks = list(&piece["marks"]).iter();
            for (rib, &centre) in rig.ribs.iter().enumerate() {
                let joint = (index > 0 && near(centre, from))
                    || (index + 1 < pieces.len() && near(centre, to));
                let place = if joint && near(centre, from) {
                    edge
                } else if joint {
                    length - edge
                } else {
                    centre - from
                };
                let under = centre > from - CLOSE && centre < to + CLOSE;
                if !under || gone(place) {
                    continue;
                }
                let mark = marks.next().expect("a support without a mark");
                assert_eq!(number(&mark["rib"]) as usize, rib + 1);
                let offset = number(&mark["offset_mm"]);
                assert!(near(offset, place) && offset > -CLOSE && offset < length + CLOSE);
                assert!((from + offset - centre).abs() <= half + CLOSE, "off the support");
                let shown = rig.shown.contains(&(rib + 1));
                assert_eq!(mark["finish"], if shown { "shown" } else { "filled" });
                holes += 1;
                filled += usize::from(!shown);
            }
            assert!(marks.next().is_none(), "a mark without a support");
        }
        assert!(near(at, rig.run - rig.end_gap), "the course ends at {at}");
        joints.push(own);
        low = high;
    }
    assert_eq!(number(&got["holes"]) as usize, holes);
    assert_eq!(number(&got["filled_holes"]) as usize, filled);
    if let Some(stagger) = rig.stagger {
        for pair in joints.windows(2) {
            for a in &pair[0] {
                assert!(pair[1].iter().all(|b| (a - b).abs() >= stagger - CLOSE), "stagger");
            }
        }
    }
    calc::sorting::sort_by(&mut lengths, f64::total_cmp);
    let cut = check_cut_plan(&got["cut_plan"], rig.kerf, 0.0);
    assert_eq!(cut.len(), lengths.len());
    assert!(cut.iter().zip(&lengths).all(|(a, b)| near(*a, *b)));
}

/// Every opening that crosses the piece, and no other, is cut out; gives what is cut through.
fn check_notches(
    rig: &Rig,
    piece: &Json,
    (from, to): (f64, f64),
    (low, high): (f64, f64),
) -> Vec<(f64, f64)> {
    let notches = list(&piece["notches"]);
    let mut through = Vec::new();
    let mut expected = 0;
    for (index, [x, y, length, width]) in rig.openings.iter().enumerate() {
        let (a, b) = ((x - rig.clearance).max(from), (x + length + rig.clearance).min(to));
        let (c, d) = ((y - rig.clearance).max(low), (y + width + rig.clearance).min(high));
        // A sliver is beneath what a saw can cut, and rounding decides on it.
        if b - a < CLOSE || d - c < CLOSE {
            expected += usize::from(
                notches.iter().any(|notch| notch["opening"] == json!(format!("opening {index}"))),
            );
            continue;
        }
        expected += 1;
        let notch = notches
            .iter()
            .find(|notch| notch["opening"] == json!(format!("opening {index}")))
            .expect("an opening that is not cut out");
        assert!(
            near(number(&notch["from_mm"]), a - from) && near(number(&notch["to_mm"]), b - from)
        );
        let depth = number(&notch["depth_mm"]);
        match notch["edge"].as_str().unwrap() {
            "through" => {
                assert!(near(c, low) && near(d, high) && near(depth, high - low));
                through.push((a - from, b - from));
            }
            "left" => assert!(near(depth, high - c)),
            "right" => assert!(near(depth, d - low)),
            other => panic!("edge {other}"),
        }
        let inside = c > low + CLOSE && d < high - CLOSE;
        assert_eq!(number(&notch["inset_mm"]) > 0.0, inside);
    }
    assert_eq!(notches.len(), expected);
    through
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 60, failure_persistence: None, ..ProptestConfig::default() })]

    /// Any body gives boards that keep all rules, or a fault that names what stands in the way.
    #[test]
    fn any_body_gives_sound_boards_or_a_fault(rig in rig()) {
        match report("boards", &rig.body(), &rig.inputs()) {
            Ok(report) => check(&rig, &Json::from(&report.outcome)),
            Err(faults) => {
                for fault in faults {
                    let known = ["stock", "joint_stagger", "edge_distance", "least_rip", "coverage"];
                    prop_assert!(known.contains(&fault.field.as_str()), "{fault:?}");
                    match fault.field.as_str() {
                        "joint_stagger" => prop_assert!(rig.stagger.is_some()),
                        "edge_distance" => prop_assert!(rig.edge.is_some_and(|edge| edge > rig.rib_width / 2.0)),
                        "least_rip" => prop_assert!(rig.least_rip.is_some()),
                        _ => {}
                    }
                }
            }
        }
    }
}

/// The demo's body, even.
fn body() -> Json {
    json!({ "length": "5480 mm", "width": "2060 mm", "rib_width": "38 mm",
        "ribs": { "even": { "count": 13, "first": "210 mm", "spacing": "420 mm" } } })
}

fn ceiling() -> Json {
    json!({ "coverage": "130 mm", "stock": [{ "length": "3 m" }, { "length": "3.6 m" }], "kerf": "3 mm",
        "start": "balanced", "joint_stagger": "400 mm", "edge_distance": "10 mm" })
}

/// Balanced ends: (r + b) / 2, worked by hand for four fields.
#[test]
fn balanced_ends_of_four_fields() {
    for (field, coverage, count, rip) in [
        ("90 in", "6.875 in", 14, 3.75 * 25.4),
        ("84.5 in", "5.125 in", 17, 3.8125 * 25.4),
        ("2300 mm", "135 mm", 18, 70.0),
        ("72 in", "7.25 in", 10, 7.0 * 25.4),
    ] {
        let got = outcome(
            "boards",
            &body(),
            &with(ceiling(), json!({ "field": field, "coverage": coverage })),
        );
        assert_eq!(got["courses"], count);
        close(&got["first_rip_mm"], rip, 1e-6);
        close(&got["last_rip_mm"], rip, 1e-6);
    }
    let even = outcome(
        "boards",
        &body(),
        &with(ceiling(), json!({ "field": "2300 mm", "coverage": "115 mm" })),
    );
    assert_eq!(even["courses"], 20);
    close(&even["first_rip_mm"], 115.0, 1e-9);
}

/// A least rip that half of what is left over keeps makes two narrow ends.
#[test]
fn half_of_what_is_left_over_where_it_is_wide_enough() {
    let inputs =
        with(ceiling(), json!({ "field": "2300 mm", "coverage": "150 mm", "least_rip": "20 mm" }));
    let got = outcome("boards", &body(), &inputs);
    assert_eq!(got["courses"], 17);
    close(&got["first_rip_mm"], 25.0, 1e-9);
}

/// Without a least rip a full start rips the last course to what is left over, with a warning and no fault.
#[test]
fn a_full_start_takes_what_is_left_over() {
    let inputs =
        with(ceiling(), json!({ "field": "2300 mm", "coverage": "135 mm", "start": "full" }));
    let got = outcome("boards", &body(), &inputs);
    close(&got["first_rip_mm"], 135.0, 1e-9);
    close(&got["last_rip_mm"], 5.0, 1e-6);
    let narrow = with(inputs, json!({ "least_rip": "40 mm" }));
    assert_eq!(faulty("boards", &body(), &narrow), ["least_rip"]);
}

/// Moving a rib moves every mark, joint and length that hangs on it.
#[test]
fn a_moved_rib_moves_what_hangs_on_it() {
    let mut ribs: Vec<f64> = (0..13).map(|rib| 210.0 + 420.0 * f64::from(rib)).collect();
    let at = |ribs: &[f64]| {
        let ribs: Vec<String> = ribs.iter().copied().map(mm).collect();
        let body = with(body(), json!({ "ribs": { "measured": ribs } }));
        outcome("boards", &body, &with(ceiling(), json!({ "run": "3 m" })))
    };
    let before = at(&ribs);
    ribs[3] += 7.0;
    let after = at(&ribs);
    for (a, b) in list(&before["pieces"]).iter().zip(list(&after["pieces"])) {
        for (x, y) in list(&a["marks"]).iter().zip(list(&b["marks"])) {
            let moved = if x["rib"] == 4 { 7.0 } else { 0.0 };
            close(&y["offset_mm"], number(&x["offset_mm"]) + moved, 1e-9);
        }
    }
}

/// Worked by hand: a hatch from x 2200 to 2800 and y 780 to 1280, courses of 130 from y = 40 after a rip of 40:
/// course 7 covers 690 to 820, its left (higher) edge is cut 43 deep with 3 of clearance.
#[test]
fn a_hatch_notches_both_sides_and_cuts_through_between() {
    let opening = json!([{ "name": "hatch", "x": "2200 mm", "y": "780 mm", "length": "600 mm", "width": "500 mm" }]);
    let body = with(body(), json!({ "openings": opening, "width": "1900 mm" }));
    let inputs = with(
        ceiling(),
        json!({ "opening_clearance": "3 mm", "least_rip": "40 mm", "stock": [{ "length": "6 m" }] }),
    );
    let got = outcome("boards", &body, &inputs);
    close(&got["first_rip_mm"], 40.0, 1e-9);
    let cuts: Vec<(usize, &str, f64)> = list(&got["pieces"])
        .iter()
        .flat_map(|piece| {
            list(&piece["notches"]).iter().map(move |notch| {
                close(&notch["from_mm"], 2197.0, 1e-9);
                close(&notch["to_mm"], 2803.0, 1e-9);
                (
                    number(&piece["course"]) as usize,
                    notch["edge"].as_str().unwrap(),
                    number(&notch["depth_mm"]),
                )
            })
        })
        .collect();
    let expected = [
        (7, "left", 43.0),
        (8, "through", 130.0),
        (9, "through", 130.0),
        (10, "through", 130.0),
        (11, "right", 73.0),
    ];
    assert_eq!(cuts.len(), expected.len());
    for (cut, wanted) in cuts.iter().zip(expected) {
        assert!(
            cut.0 == wanted.0 && cut.1 == wanted.1 && near(cut.2, wanted.2),
            "{cut:?}, not {wanted:?}"
        );
    }
    // Rib 6 at 2310 and rib 7 at 2730 lie inside the hatch: no mark on them where it cuts through.
    let ribs = |course: usize| -> Vec<usize> {
        let mut pieces = list(&got["pieces"]).iter();
        let piece = pieces.find(|piece| number(&piece["course"]) as usize == course).unwrap();
        list(&piece["marks"]).iter().map(|mark| number(&mark["rib"]) as usize).collect()
    };
    assert_eq!(ribs(8), [1, 2, 3, 4, 5, 8, 9, 10, 11, 12, 13]);
    assert_eq!(ribs(7), (1..=13).collect::<Vec<_>>());
}

#[test]
fn faults_name_what_stands_in_the_way() {
    let bad = |changes: Json| faulty("boards", &body(), &with(ceiling(), changes));
    assert_eq!(bad(json!({ "edge_distance": "20 mm" })), ["edge_distance"]);
    assert_eq!(bad(json!({ "joint_stagger": "4 m" })), ["joint_stagger"]);
    assert_eq!(bad(json!({ "stock": [{ "length": "400 mm" }] })), ["stock"]);
    assert_eq!(bad(json!({ "stock": [{ "length": "3 m", "available": 2 }] })), ["stock"]);
    assert_eq!(bad(json!({ "shown_ribs": [1, 14] })), ["shown_ribs.1"]);
    assert_eq!(bad(json!({ "full_width": "120 mm" })), ["full_width"]);
    assert_eq!(bad(json!({ "end_gap": "800 mm", "run": "1500 mm" })), ["end_gap"]);
    assert_eq!(bad(json!({ "start": "middle" })), ["start"]);
    assert_eq!(bad(json!({ "start": null })), ["start"]);
    assert_eq!(bad(json!({ "supports": ["400 mm", "300 mm"] })), ["supports.1"]);
    let bare = json!({ "length": "5480 mm", "width": "2060 mm" });
    assert_eq!(faulty("boards", &bare, &ceiling()), ["supports"]);
    // Boards without a joint need no width of the supports, boards with one do.
    let ribs = json!({ "length": "5480 mm", "width": "2060 mm", "ribs": { "measured": ["400 mm", "2900 mm"] } });
    assert_eq!(faulty("boards", &ribs, &ceiling()), ["support_width"]);
    let long =
        with(ceiling(), json!({ "stock": [{ "length": "6 m" }], "edge_distance": "300 mm" }));
    let got = outcome("boards", &ribs, &long);
    assert_eq!(list(&got["pieces"]).len(), number(&got["courses"]) as usize);
}

/// The widths a board and an opening meet at: an opening inside a wide board is a cut-out off the nearer edge.
#[test]
fn a_cut_out_inside_a_panel() {
    let opening = json!([{ "name": "lamp", "x": "1000 mm", "y": "200 mm", "length": "100 mm", "width": "80 mm" }]);
    let body = with(body(), json!({ "openings": opening, "width": "1200 mm" }));
    let got =
        outcome("boards", &body, &with(ceiling(), json!({ "coverage": "600 mm", "run": "2 m" })));
    let notch = &list(&got["pieces"])[0]["notches"][0];
    assert_eq!(notch["edge"], "right");
    close(&notch["depth_mm"], 280.0, 1e-9);
    close(&notch["inset_mm"], 200.0, 1e-9);
}
