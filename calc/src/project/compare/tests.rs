//! Differences in words, and that nothing which differs is passed over.

use super::*;
use crate::project::Place;
use crate::quantity::UnitSystem;
use proptest::prelude::*;
use serde_json::json;

const DEMO: &str = include_str!("../../../../shared/demo.json");

fn demo() -> Project {
    Project::from_text(DEMO).unwrap()
}

/// The parts that differ after a change to the demo.
fn changed(change: impl FnOnce(&mut Project)) -> Vec<Part> {
    let (before, mut after) = (demo(), demo());
    change(&mut after);
    compare(&before, &after)
}

fn line(label: &str, first: &str, other: &str) -> Line {
    Line { label: label.into(), first: first.into(), other: other.into() }
}

fn sheet<'p>(parts: &'p [Part], id: &str) -> &'p Part {
    parts.iter().find(|part| part.place == PartPlace::Sheet(id.into())).unwrap()
}

#[test]
fn a_project_does_not_differ_from_itself() {
    assert_eq!(compare(&demo(), &demo()), []);
    // Under another id it is still the same.
    assert_eq!(changed(|project| project.set_id("other")), []);
}

#[test]
fn an_input_that_changed_is_named_with_both_values_and_the_answers_that_follow() {
    let parts = changed(|project| project.set(&Place::Sheet("s1".into()), "coats", json!(7)));
    let floor = sheet(&parts, "s1");
    assert_eq!(floor.title, "Maple floor finish");
    assert_eq!(floor.found, Found::InBoth);
    let coats = demo().typed(&Place::Sheet("s1".into()), "coats");
    assert_eq!(floor.inputs, [line("Coats", &coats, "7")]);

    let mut after = demo();
    after.set(&Place::Sheet("s1".into()), "coats", json!(7));
    let texts = |project: &Project| -> Vec<(String, String)> {
        let all = evaluate(project);
        let report = all.sheet("s1").unwrap().as_ref().unwrap();
        report.answers.iter().map(|one| (one.label.clone(), one.text.clone())).collect()
    };
    let wanted: Vec<Line> = texts(&demo())
        .into_iter()
        .zip(texts(&after))
        .filter(|(one, two)| one.1 != two.1)
        .map(|(one, two)| Line { label: one.0, first: one.1, other: two.1 })
        .collect();
    assert!(!wanted.is_empty());
    for one in &wanted {
        assert!(floor.answers.contains(one), "{one:?} in {:#?}", floor.answers);
    }
}

#[test]
fn a_measure_of_the_body_shows_in_the_body_and_in_every_sheet_that_takes_it() {
    let parts = changed(|project| project.set(&Place::Body, "length", json!("5000 mm")));
    assert_eq!(parts[0].place, PartPlace::Project, "the buy list changes: {parts:#?}");
    let body = &parts[1];
    assert_eq!((&body.place, body.title.as_str()), (&PartPlace::Body, "The body"));
    assert_eq!(body.inputs[0].label, "Length inside");
    assert_eq!(body.inputs[0].other, "5000 mm");
    let boards = sheet(&parts, "boards");
    assert!(boards.inputs.is_empty() && !boards.answers.is_empty());
}

#[test]
fn a_row_put_in_is_that_row_alone() {
    let mut first = Project::new("a", "A", UnitSystem::Metric);
    let row =
        |label: &str, length: &str| json!({ "label": label, "length": length, "width": "1 m" });
    let id = first.add_sheet(
        "coating",
        "",
        json!({ "areas": [row("aisle", "2 m"), row("cab", "1 m")] }),
    );
    let mut other = first.clone();
    let areas = json!([row("aisle", "2 m"), row("step", "300 mm"), row("cab", "1 m")]);
    other.set(&Place::Sheet(id.clone()), "areas", areas);
    let parts = compare(&first, &other);
    assert_eq!(sheet(&parts, &id).inputs, [line("Area 2", "", "step, 300 mm, 1 m")]);
    let back = compare(&other, &first);
    assert_eq!(sheet(&back, &id).inputs, [line("Area 2", "step, 300 mm, 1 m", "")]);
    other.set(&Place::Sheet(id.clone()), "areas", json!([row("aisle", "2 m"), row("cab", "9 m")]));
    let parts = compare(&first, &other);
    assert_eq!(sheet(&parts, &id).inputs, [line("Area 2: Length", "1 m", "9 m")]);
}

#[test]
fn sheets_that_only_one_has_are_told_apart_from_those_of_another_kind_under_the_same_id() {
    let mut first = Project::new("a", "A", UnitSystem::Metric);
    let mut other = first.clone();
    first.add_sheet("water", "Tank", json!({ "people": 2, "use": "6 l", "tank": "60 l" }));
    other.add_sheet("trim", "", json!({}));
    let parts = compare(&first, &other);
    let found: Vec<_> = parts.iter().map(|part| (part.found, part.title.as_str())).collect();
    assert_eq!(found, [(Found::InFirst, "Tank"), (Found::InOther, "Roof-opening trim")]);
    assert!(parts[0].answers.iter().all(|line| !line.first.is_empty() && line.other.is_empty()));
    assert_eq!(parts[1].answers[0].label, "Still to fill in or correct");
}

#[test]
fn choices_and_sheets_are_named_as_on_the_page() {
    let parts =
        changed(|project| project.set(&Place::Sheet("boards".into()), "start", json!("full")));
    let boards = sheet(&parts, "boards");
    assert!(boards.inputs.iter().any(|line| line.other != "full"), "{:#?}", boards.inputs);
}

#[test]
fn answers_are_compared_in_the_same_units() {
    let parts = changed(|project| project.set_system(UnitSystem::Metric));
    assert_eq!(parts.len(), 1, "{parts:#?}");
    assert_eq!(parts[0].inputs, [line("Results in", "inches", "millimeters")]);
}

#[test]
fn what_this_version_does_not_know_is_compared_all_the_same() {
    let parts = changed(|project| {
        project.set_extra("ticked", json!({ "buy": { "screws": 2 } }));
        project.set(&Place::Sheet("s1".into()), "hue_of_finish", json!("amber"));
    });
    let all: Vec<&Line> = parts.iter().flat_map(|part| &part.inputs).collect();
    assert_eq!(all, [&line("Ticked: buy: screws", "", "2"), &line("Hue of finish", "", "amber"),]);
}

/// The demo with the sheets that are worked out quickly.
fn quick() -> Node {
    let mut document: Node = serde_json::from_str(DEMO).unwrap();
    let sheets = document["sheets"].as_array_mut().unwrap();
    sheets.retain(|sheet| {
        ["coating", "trim", "stud_marks", "axles"].contains(&sheet["kind"].as_str().unwrap())
    });
    assert!(sheets.len() >= 3);
    document
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    /// Whatever stands anywhere in a file: no panic, nothing in the way of comparing it with itself,
    /// and a change of an input of the file is found, from both sides alike.
    #[test]
    fn any_change_is_found_from_both_sides(at in 0_usize..100_000, with in 0_usize..6) {
        let nasty = [json!(null), json!("x\u{0}é"), json!([1, {"a": []}]), json!({"b": [null]}), json!(-1e300), json!(true)];
        let mut document = quick();
        let before = Project::from_text(&document.to_string()).unwrap();
        let mut places = Vec::new();
        pointers(&document, String::new(), &mut places);
        let pointer = &places[at % places.len()];
        let there = document.pointer_mut(pointer).unwrap();
        let same = *there == nasty[with];
        *there = nasty[with].clone();
        let other = Project::from_text(&document.to_string());
        if let Ok(other) = other {
            let here = compare(&before, &other);
            let back = compare(&other, &before);
            prop_assert_eq!(compare(&other, &other), []);
            prop_assert_eq!(here.len(), back.len());
            let told = pointer != "/id" && pointer != "/battenbook";
            prop_assert!(same || !told || !here.is_empty(), "{} = {}", pointer, nasty[with]);
        }
    }
}

fn pointers(node: &Node, here: String, into: &mut Vec<String>) {
    if !here.is_empty() {
        into.push(here.clone());
    }
    match node {
        Node::Array(items) => {
            for (index, item) in items.iter().enumerate() {
                pointers(item, format!("{here}/{index}"), into);
            }
        }
        Node::Object(fields) => {
            for (key, value) in fields {
                let key = key.replace('~', "~0").replace('/', "~1");
                pointers(value, format!("{here}/{key}"), into);
            }
        }
        _ => {}
    }
}

#[test]
fn a_row_that_is_taken_out_is_that_row_alone() {
    let mut first = Project::new("p", "", crate::quantity::UnitSystem::Metric);
    let pieces = ["rail", "slat", "post"].map(|label| json!({ "label": label, "length": "1 m" }));
    let id = first.add_sheet("cut_plan", "", json!({ "pieces": pieces }));
    let mut other = first.clone();
    other.remove_row(&crate::project::Place::Sheet(id), "pieces", 0);
    let parts = compare(&first, &other);
    let inputs: Vec<&Line> = parts.iter().flat_map(|part| &part.inputs).collect();
    assert_eq!(inputs.len(), 1, "{inputs:?}");
    assert!(inputs[0].first.contains("rail"), "{inputs:?}");
}
