//! What holds for every sheet, looping over the one list: no sheet needs to be named here.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, missing_docs)]

use std::collections::BTreeSet;

use calc::ask::{Ask, Kind, Need};
use calc::project::{BODY_ASKS, Project, SheetResult};
use calc::quantity::{Measure, UnitSystem, read_number};
use calc::sheet::{SHEETS, Sheet};
use calc::words::Words;
use proptest::prelude::*;
use serde_json::{Value as Json, json};

/// The demo project's body, so that what a sheet takes from the body is there.
fn body() -> Json {
    json!({ "length": "5480 mm", "width": "2060 mm", "height": "1980 mm", "rib_width": "38 mm",
        "ribs": { "even": { "count": 13, "first": "210 mm", "spacing": "420 mm" } },
        "openings": [{ "name": "hatch", "x": "2200 mm", "y": "780 mm", "length": "600 mm", "width": "500 mm" }] })
}

/// A project whose last sheet is the one asked for; before it stand the examples of the sheets that it takes from, under their
/// kinds as ids.
fn project(kind: &str, inputs: &Json, units: &str) -> Project {
    let mut sheets: Vec<Json> = SHEETS
        .iter()
        .filter(|sheet| sources_of(kind).contains(sheet.kind))
        .map(|sheet| json!({ "id": sheet.kind, "kind": sheet.kind, "title": sheet.title.to_string(), "inputs": example(sheet) }))
        .collect();
    sheets.push(json!({ "id": "the sheet", "kind": kind, "title": "", "inputs": inputs }));
    let file =
        json!({ "battenbook": 1, "id": "p", "units": units, "body": body(), "sheets": sheets });
    Project::from_text(&file.to_string()).unwrap()
}

/// The kinds that a kind of sheet takes from, and those that these take from.
fn sources_of(kind: &str) -> BTreeSet<&'static str> {
    let mut found = BTreeSet::new();
    let mut next = vec![kind.to_owned()];
    while let Some(kind) = next.pop() {
        let asks = calc::sheet::find(&kind).map_or(Vec::new(), |sheet| all_asks(sheet.asks));
        for ask in asks {
            let Kind::SheetOf(others) = ask.kind else { continue };
            let new = others.split(' ').filter(|other| found.insert(*other));
            next.extend(new.map(str::to_owned));
        }
    }
    found
}

fn example(sheet: &Sheet) -> Json {
    serde_json::from_str(sheet.example)
        .unwrap_or_else(|error| panic!("{}: the example is no JSON: {error}", sheet.kind))
}

fn result(kind: &str, inputs: &Json, units: &str) -> SheetResult {
    calc::evaluate(&project(kind, inputs, units)).sheet("the sheet").unwrap().clone()
}

/// All asks of a sheet, those inside groups and rows included.
fn all_asks(asks: &[&'static Ask]) -> Vec<&'static Ask> {
    asks.iter()
        .flat_map(|ask| {
            let below = match ask.kind {
                Kind::Group(asks) | Kind::Rows { asks, .. } | Kind::Either(asks) => all_asks(asks),
                Kind::List { of, .. } => all_asks(&[of]),
                _ => Vec::new(),
            };
            std::iter::once(*ask).chain(below)
        })
        .collect()
}

#[test]
fn kinds_are_named_once_and_trades_stand_together() {
    let kinds: BTreeSet<&str> = SHEETS.iter().map(|sheet| sheet.kind).collect();
    assert_eq!(kinds.len(), SHEETS.len());
    let trades: BTreeSet<&str> =
        SHEETS.iter().map(|sheet| sheet.trade.say(Words::ENGLISH)).collect();
    let breaks = SHEETS
        .windows(2)
        .filter(|pair| pair[0].trade.say(Words::ENGLISH) != pair[1].trade.say(Words::ENGLISH))
        .count();
    assert_eq!(breaks + 1, trades.len());
}

#[test]
fn every_example_gives_answers_drawing_working_and_cautions() {
    for sheet in SHEETS {
        for units in ["imperial", "metric"] {
            let kind = sheet.kind;
            let report = result(kind, &example(sheet), units)
                .unwrap_or_else(|faults| panic!("{kind} ({units}): {faults:#?}"));
            assert!((1..=3).contains(&report.answers.len()), "{kind}: one to three answers");
            assert!(!report.working.is_empty(), "{kind}: no working");
            assert!(!report.cautions.is_empty(), "{kind}: no cautions");
            assert!(!report.drawings.is_empty(), "{kind}: no drawing");
            for drawing in &report.drawings {
                let (low, high) = drawing.bounds().unwrap_or_else(|| panic!("{kind}: drawing"));
                assert!(high.x > low.x && high.y > low.y, "{kind}: a drawing without extent");
                assert!(!drawing.words.is_empty() && !drawing.title.is_empty(), "{kind}");
            }
            for step in &report.working {
                assert!(!step.formula.is_empty() && !step.result.is_empty(), "{kind}: {step:?}");
            }
            for answer in &report.answers {
                assert!(!answer.text.contains("NaN") && !answer.text.contains("inf"), "{kind}");
            }
        }
    }
}

#[test]
fn outcomes_do_not_hang_on_the_unit_system() {
    for sheet in SHEETS {
        let outcome = |units| result(sheet.kind, &example(sheet), units).unwrap().outcome;
        assert_eq!(outcome("imperial"), outcome("metric"), "{}", sheet.kind);
    }
}

#[test]
fn usual_values_and_defaults_can_be_read_and_lie_in_range() {
    let body = ("the body", BODY_ASKS);
    let sheets = SHEETS.iter().map(|sheet| (sheet.kind, sheet.asks));
    for (name, asks) in sheets.chain([body]) {
        for ask in all_asks(asks) {
            let mut texts: Vec<&str> = ask.usual.to_vec();
            if let Need::Default(text) = ask.need {
                texts.push(text);
            }
            for text in texts.into_iter().filter(|text| !text.is_empty()) {
                let (value, (low, high)) = match ask.kind {
                    Kind::Measure { dimension, range, .. } => (
                        Measure::read(text, dimension, None)
                            .map(|m| m.si())
                            .map_err(|e| e.to_string()),
                        range,
                    ),
                    Kind::Number { range, .. } => {
                        (read_number(text).map_err(|e| e.to_string()), range)
                    }
                    Kind::Count { range: (low, high) } => (
                        read_number(text).map_err(|e| e.to_string()),
                        (f64::from(low), f64::from(high)),
                    ),
                    _ => continue,
                };
                let value = value.unwrap_or_else(|e| panic!("{name} {}: {text}: {e}", ask.key));
                assert!(low <= value && value <= high, "{name} {}: {text}", ask.key);
            }
            for system in [UnitSystem::Imperial, UnitSystem::Metric] {
                if matches!(ask.kind, Kind::Measure { .. }) {
                    assert!(ask.unit_in(system).is_some(), "{name} {}: unknown unit", ask.key);
                }
            }
            assert!(!ask.label.say(Words::ENGLISH).is_empty(), "{name} {}: no label", ask.key);
        }
    }
}

#[test]
fn nothing_typed_gives_faults_that_name_their_fields() {
    for sheet in SHEETS {
        if let Err(faults) = result(sheet.kind, &json!({}), "metric") {
            assert!(!faults.is_empty(), "{}: refused without a word", sheet.kind);
            for fault in &faults {
                assert!(!fault.field.is_empty() && !fault.message.is_empty(), "{}", sheet.kind);
            }
        }
    }
}

#[test]
fn every_required_input_is_missed_when_it_is_taken_out() {
    for sheet in SHEETS {
        for ask in sheet.asks {
            let fixed = !matches!(ask.kind, Kind::Either(_) | Kind::Group(_));
            if ask.need != Need::Required || !fixed {
                continue;
            }
            let mut inputs = example(sheet);
            inputs.as_object_mut().unwrap().remove(ask.key);
            let faults = result(sheet.kind, &inputs, "metric")
                .expect_err(&format!("{}: {} is not needed", sheet.kind, ask.key));
            assert!(
                faults.iter().any(|fault| fault.field.starts_with(ask.key)),
                "{}: {} is missing, and the faults name {faults:?}",
                sheet.kind,
                ask.key
            );
        }
    }
}

/// Texts and values that people, editors and mischief put into a file.
fn nasty() -> impl Strategy<Value = Json> {
    prop_oneof![
        Just(Json::Null),
        Just(json!("")),
        Just(json!("abc")),
        Just(json!("0 mm")),
        Just(json!("0")),
        Just(json!("-5 in")),
        Just(json!("1e300 m")),
        Just(json!("1/0 in")),
        Just(json!("1e-300 mm")),
        Just(json!("30 m")),
        Just(json!("29.999 m")),
        Just(json!("0.001 mm")),
        Just(json!("100 %")),
        Just(json!(0)),
        Just(json!(-1)),
        Just(json!(1e308)),
        Just(json!(99.999)),
        Just(json!(3)),
        Just(json!(true)),
        Just(json!([])),
        Just(json!({})),
        Just(json!([1, "2 m", null])),
        "[ -~µ½′″]{0,24}".prop_map(Json::from),
        (-1e6..1e6f64).prop_map(Json::from),
        (0.0..1e4f64, prop_oneof!["mm", "in", "ft", "m", "V", "A", "W", "kg", "C", "l"])
            .prop_map(|(number, unit)| json!(format!("{number} {unit}"))),
    ]
}

/// The paths of all nodes below a node.
fn paths(node: &Json, here: &str, into: &mut Vec<String>) {
    let children: Vec<(String, &Json)> = match node {
        Json::Array(items) => {
            items.iter().enumerate().map(|(index, item)| (index.to_string(), item)).collect()
        }
        Json::Object(fields) => fields.iter().map(|(key, item)| (key.clone(), item)).collect(),
        _ => Vec::new(),
    };
    for (key, child) in children {
        let path = format!("{here}/{key}");
        into.push(path.clone());
        paths(child, &path, into);
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    /// Whatever stands in one to three places of a sheet's inputs: no panic, no number that is
    /// not finite, and a refusal is never without words.
    #[test]
    fn nasty_inputs_are_refused_or_give_finite_numbers(
        sheet in 0..SHEETS.len(),
        changes in prop::collection::vec((any::<prop::sample::Index>(), nasty()), 1..4),
    ) {
        let sheet = SHEETS[sheet];
        let mut inputs = example(sheet);
        for (place, value) in changes {
            let mut all = Vec::new();
            paths(&inputs, "", &mut all);
            if !all.is_empty() {
                *inputs.pointer_mut(place.get::<String>(&all)).unwrap() = value;
            }
        }
        match result(sheet.kind, &inputs, "imperial") {
            Ok(report) => {
                prop_assert_eq!(report.outcome.not_finite(), None);
                for drawing in &report.drawings {
                    prop_assert!(drawing.shapes.is_empty() || drawing.bounds().is_some());
                }
                for line in &report.buy {
                    prop_assert!(line.quantity.is_finite() && line.cost.is_none_or(f64::is_finite));
                }
            }
            Err(faults) => {
                prop_assert!(!faults.is_empty());
                prop_assert!(faults.iter().all(|fault| !fault.message.is_empty()));
            }
        }
    }
}
