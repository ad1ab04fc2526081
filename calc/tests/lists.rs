//! The project's lists: lines are known by what they are, whatever they are called and however they are written; what is on hand is
//! used once.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, missing_docs)]

use std::collections::{BTreeMap, BTreeSet};

use calc::project::{Evaluation, Project};
use calc::quantity::{Rounding, UnitSystem};
use proptest::prelude::*;
use serde_json::{Value as Json, json};

const DEMO: &str = include_str!("../../shared/demo.json");

/// The ids of everything on the lists.
fn ids(all: &Evaluation) -> BTreeSet<String> {
    let mut ids = BTreeSet::new();
    for line in &all.buy_list {
        ids.insert(format!("buy {}", line.id));
    }
    for bar in all.cut_list.iter().flat_map(|group| &group.bars) {
        ids.insert(format!("cut {} x{}", bar.key(), bar.count));
    }
    for (sheet, result) in &all.sheets {
        let Ok(report) = result.as_ref() else { continue };
        for strip in &report.marks {
            for mark in &strip.marks {
                let mm = calc::quantity::plain(mark.at.value * 1e3, 1);
                ids.insert(format!("mark {sheet} {} {} {mm} x{}", strip.id, mark.id, strip.alike));
            }
        }
        for line in report.checks.iter().flat_map(|list| &list.lines) {
            ids.insert(format!("check {sheet} {}", line.key));
        }
        ids.extend(report.tasks.iter().map(|task| format!("task {sheet} {}", task.key)));
    }
    ids
}

/// What is bought, costs and weighs, by id: in SI.
fn figures(all: &Evaluation) -> BTreeMap<String, [f64; 4]> {
    let figures = all.buy_list.iter().map(|line| {
        let needed = calc::lists::in_si(line.line.needed, line.line.unit);
        let mass = line.line.mass.map_or(-1.0, |mass| mass.value);
        (line.id.clone(), [needed, line.line.cost.unwrap_or(-1.0), mass, line.line.on_hand])
    });
    figures.collect()
}

fn assert_same(a: &Evaluation, b: &Evaluation, what: &str) {
    let (x, y) = (ids(a), ids(b));
    assert_eq!(x, y, "{what}: {:#?}", x.symmetric_difference(&y).collect::<Vec<_>>());
    let (x, y) = (figures(a), figures(b));
    for (id, x) in &x {
        for (x, y) in x.iter().zip(y[id]) {
            assert!((x - y).abs() <= 1e-6 * x.abs().max(1.0), "{what}: {id}: {x} {y}");
        }
    }
    let mass = |all: &Evaluation| all.shopping().weight.balance.mass.value;
    assert!((mass(a) - mass(b)).abs() < 1e-6, "{what}");
}

/// The demo with a price, a mass and a place typed for each of its lines.
fn shopped() -> Project {
    let mut project = Project::from_text(DEMO).unwrap();
    let all = calc::evaluate(&project);
    let mut lines = serde_json::Map::new();
    for (at, line) in all.buy_list.iter().enumerate() {
        let mut said = json!({ "price": 1.5 + at as f64, "mass": "0.3 kg", "place": "2 m" });
        if at % 2 == 0 {
            said["pack"] = json!(if line.line.unit == "each" { "4" } else { "25" });
        }
        lines.insert(line.id.clone(), said);
    }
    let own = json!([{ "item": "edge trim", "unit": "ft", "quantity": 12.5, "price": 2 }]);
    project.set_extra("shopping", json!({ "lines": lines, "own": own }));
    Project::from_text(&project.to_text()).unwrap()
}

#[test]
fn units_and_rounding_change_no_id_price_weight_or_axle_load() {
    for project in [Project::from_text(DEMO).unwrap(), shopped()] {
        let all = calc::evaluate(&project);
        assert!(ids(&all).len() > 100);
        for rounding in Rounding::ALL {
            let mut other = project.clone();
            other.set_system(rounding.system());
            other.set_rounding(rounding);
            let again = calc::evaluate(&other);
            assert_same(&all, &again, rounding.name());
            for (id, result) in &all.sheets {
                let outcome = |all: &Evaluation| {
                    all.sheet(id).unwrap().as_ref().ok().map(|report| report.outcome.clone())
                };
                if result.is_ok() && project.sheet(id).unwrap().kind() == Some("axles") {
                    for name in ["front_kg", "rear_kg", "gross_kg"] {
                        let kg = |all: &Evaluation| outcome(all).unwrap().number(name).unwrap();
                        assert!((kg(&all) - kg(&again)).abs() < 1e-6, "{}", rounding.name());
                    }
                }
            }
        }
    }
}

/// Gives everything that has a name of no meaning another one. Supplies are known by their name alone.
fn rename(node: &mut Json, count: &mut usize) {
    match node {
        Json::Array(items) => items.iter_mut().for_each(|item| rename(item, count)),
        Json::Object(fields) => {
            for (key, value) in fields.iter_mut().filter(|(key, _)| *key != "supplies") {
                match value {
                    Json::String(text) if ["label", "name", "title"].contains(&key.as_str()) => {
                        *count += 1;
                        *text = format!("other {count}");
                    }
                    _ => rename(value, count),
                }
            }
        }
        _ => {}
    }
}

#[test]
fn renaming_loses_nothing() {
    let project = shopped();
    let mut document: Json = serde_json::from_str(&project.to_text()).unwrap();
    let mut count = 0;
    rename(&mut document["sheets"], &mut count);
    rename(&mut document["body"], &mut count);
    assert!(count > 20);
    document["name"] = json!("another name");
    let renamed = Project::from_text(&document.to_string()).unwrap();
    assert_same(&calc::evaluate(&project), &calc::evaluate(&renamed), "renamed");
}

#[test]
fn editing_one_sheet_changes_no_line_of_the_others() {
    let project = shopped();
    let all = calc::evaluate(&project);
    for sheet in project.sheets().map(|sheet| sheet.id()) {
        let mut other = project.clone();
        other.remove_sheet(&sheet);
        let again = calc::evaluate(&other);
        let left = ids(&again);
        for line in &all.buy_list {
            // What other sheets buy of it, they buy still.
            let others = line.from.iter().any(|share| share.sheet != sheet && share.quantity > 0.0);
            let solved = line.sheets().all(|id| again.sheet(id).is_none_or(Result::is_ok));
            if others && solved && !line.sheets().any(|id| id == sheet) {
                assert!(left.contains(&format!("buy {}", line.id)), "without {sheet}: {}", line.id);
            }
        }
    }
}

fn stock() -> impl Strategy<Value = Json> {
    let length = prop::sample::select(vec!["8 ft", "10 ft", "12 ft"]);
    let price = prop::option::weighted(0.7, 4.0..12.0f64);
    (length, price, 0..6u32).prop_map(|(length, price, here)| match price {
        Some(price) => json!({ "length": length, "price": price, "on_hand": here }),
        None => json!({ "length": length, "on_hand": here }),
    })
}

fn sheet() -> impl Strategy<Value = Json> {
    let pieces = prop::collection::vec((300.0..2300.0f64, 1..6u32), 1..4);
    let kerf = prop::sample::select(vec!["0 mm", "3 mm", "1/8 in"]);
    let stock = prop::collection::vec(stock(), 1..4);
    let section = prop::sample::select(vec![None, Some("38 mm"), Some("89 mm")]);
    (pieces, kerf, stock, section).prop_map(|(pieces, kerf, mut stock, width)| {
        stock.dedup_by(|a, b| a["length"] == b["length"]);
        let pieces: Vec<Json> = pieces
            .iter()
            .map(|(mm, count)| json!({ "length": format!("{mm:.1} mm"), "count": count }))
            .collect();
        let mut inputs = json!({ "material": "pine", "pieces": pieces, "kerf": kerf, "stock": stock,
            "density": "white pine" });
        if let Some(width) = width {
            inputs["section"] = json!({ "thickness": "19 mm", "width": width });
        }
        inputs
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    /// Whatever the sheets' saws, stock and prices: every piece is cut, every bar that is cut was bought or is here, no bar that is
    /// here is cut twice, and all of them weigh.
    #[test]
    fn what_is_on_hand_is_used_once(sheets in prop::collection::vec(sheet(), 1..5)) {
        let rows: Vec<Json> = sheets
            .iter()
            .enumerate()
            .map(|(at, inputs)| json!({ "id": format!("s{at}"), "kind": "cut_plan", "inputs": inputs }))
            .collect();
        let file = json!({ "battenbook": 2, "id": "p", "units": "metric", "sheets": rows });
        let all = calc::evaluate(&Project::from_text(&file.to_string()).unwrap());
        let solved: Vec<&Json> =
            sheets.iter().enumerate().filter(|(at, _)| all.sheets[*at].1.is_ok()).map(|(_, s)| s).collect();
        // By length: what is cut, bought, and taken from what is here.
        let mut cut: BTreeMap<i64, f64> = BTreeMap::new();
        let mut pieces = 0;
        for bar in all.cut_list.iter().flat_map(|group| &group.bars) {
            let mm = (bar.length.unwrap().value * 1e3).round() as i64;
            *cut.entry(mm).or_default() += bar.count as f64;
            pieces += bar.count * bar.pieces.len();
        }
        let wanted: u64 = solved.iter().flat_map(|s| s["pieces"].as_array().unwrap()).map(|p| p["count"].as_u64().unwrap()).sum();
        prop_assert_eq!(pieces as u64, wanted);
        let (mut got, mut here): (BTreeMap<i64, f64>, BTreeMap<i64, f64>) = Default::default();
        for line in &all.buy_list {
            let mm: f64 = line.id.rsplit('/').next().unwrap().strip_suffix("mm").unwrap().parse().unwrap();
            let mm = mm.round() as i64;
            *got.entry(mm).or_default() += line.line.quantity + line.line.on_hand;
            *here.entry(mm).or_default() += line.line.on_hand;
            prop_assert!((line.line.needed - line.line.quantity - line.line.on_hand).abs() < 1e-9);
            if line.id.matches('/').count() == 3 {
                let kg = line.line.mass.unwrap().value;
                prop_assert!(kg > 0.0);
            }
        }
        prop_assert_eq!(&got, &cut);
        for (mm, used) in here {
            // Sheets of other sections have piles of their own.
            let sections = ["38 mm", "89 mm"];
            let most = |section: Option<&str>| {
                solved
                    .iter()
                    .filter(|s| s["section"]["width"].as_str().is_none() || section.is_none() || s["section"]["width"].as_str() == section)
                    .map(|s| {
                        let rows = s["stock"].as_array().unwrap().iter();
                        let alike = rows.filter(|row| length_mm(row) == mm);
                        alike.map(|row| row["on_hand"].as_u64().unwrap()).sum::<u64>()
                    })
                    .max()
                    .unwrap_or(0)
            };
            let both: u64 = sections.iter().map(|section| most(Some(section))).sum();
            let several = solved.iter().any(|s| s["section"].is_object());
            let pile = if several { both } else { most(None) };
            prop_assert!(used <= pile as f64 + 1e-9, "{} of {} mm used, {} here", used, mm, pile);
        }
    }
}

fn length_mm(row: &Json) -> i64 {
    let feet: f64 = row["length"].as_str().unwrap().strip_suffix(" ft").unwrap().parse().unwrap();
    (feet * 304.8).round() as i64
}

/// Two sheets with other saws count the same two lengths: the first cuts both, the second buys, and all of it weighs.
#[test]
fn what_is_here_is_cut_once_whatever_the_saws() {
    let plan = |kerf: &str, stock: Json| {
        json!({ "material": "1x4 pine", "pieces": [{ "label": "rail", "length": "5 ft", "count": 2 }],
            "stock": [stock], "kerf": kerf, "density": "white pine",
            "section": { "thickness": "3/4 in", "width": "3 1/2 in" } })
    };
    let here = json!({ "length": "8 ft", "on_hand": 2 });
    for other in [json!({ "length": "8 ft", "price": 5, "on_hand": 2 }), here.clone()] {
        let file = json!({ "battenbook": 2, "id": "p", "units": "imperial", "sheets": [
            { "id": "s1", "kind": "cut_plan", "inputs": plan("0 in", here.clone()) },
            { "id": "s2", "kind": "cut_plan", "inputs": plan("1/8 in", other) } ] });
        let all = calc::evaluate(&Project::from_text(&file.to_string()).unwrap());
        let line = &all.buy_list[0];
        assert_eq!(all.buy_list.len(), 1);
        assert_eq!((line.line.quantity, line.line.on_hand, line.line.needed), (2.0, 2.0, 4.0));
        let kg = line.line.mass.unwrap().value;
        assert!((all.shopping().weight.balance.mass.value - kg).abs() < 1e-9);
        // 4 x 8 ft of 3/4 x 3 1/2 in: 16.5 l, at some 0.4 kg/l.
        assert!((5.5..8.0).contains(&kg), "{kg}");
        assert!(all.cut_list.iter().any(|group| !group.remarks.is_empty()));
    }
}

/// A sheet that does not say its section buys the same line whether or not it is planned with the one that says it.
#[test]
fn another_saw_on_another_sheet_changes_no_line_of_this_one() {
    let ids = |kerf: &str| {
        let plan = |kerf: &str, section: Json| {
            json!({ "material": "1x4 pine", "kerf": kerf, "section": section,
                "pieces": [{ "label": "rail", "length": "5 ft", "count": 2 }],
                "stock": [{ "length": "8 ft", "price": 5 }] })
        };
        let section = json!({ "thickness": "3/4 in", "width": "3 1/2 in" });
        let file = json!({ "battenbook": 2, "id": "p", "units": "imperial", "sheets": [
            { "id": "s1", "kind": "cut_plan", "inputs": plan("0 in", Json::Null) },
            { "id": "s2", "kind": "cut_plan", "inputs": plan(kerf, section) } ] });
        let all = calc::evaluate(&Project::from_text(&file.to_string()).unwrap());
        all.buy_list.iter().map(|line| (line.id.clone(), line.line.quantity)).collect::<Vec<_>>()
    };
    assert_eq!(ids("0 in"), [("stock/1x4-pine/19.1x88.9mm/2438.4mm".to_owned(), 4.0)]);
    assert_eq!(ids("1/8 in"), ids("0 in"));
}

/// Own lines that were added to a sheet's line are lines of their own once they are called otherwise.
#[test]
fn an_own_line_that_is_called_otherwise_is_another_thing() {
    let mut project = shopped();
    let id = "screw/8/31.8mm";
    let row = json!({ "item": "screw", "quantity": 20, "adds_to": id });
    project.set_extra("shopping", json!({ "own": [row] }));
    let count = |project: &Project| {
        let all = calc::evaluate(project);
        all.buy_list.iter().find(|line| line.id == id).unwrap().line.quantity
    };
    let before = count(&project);
    let place = calc::project::Place::Shopping;
    project.set_typed(&place, "own.0.item", &calc::ask::Kind::Words, "masking tape");
    assert_eq!(count(&project), before - 20.0);
}

#[test]
fn the_system_of_a_project_is_kept() {
    let mut project = shopped();
    project.set_system(UnitSystem::Metric);
    assert_eq!(project.system(), UnitSystem::Metric);
}

/// The ids of all that is ticked of one sheet, with what stands behind them: piece or strip with its length, check with its text.
fn known(project: &Project, sheet: &str) -> BTreeMap<String, String> {
    let all = calc::evaluate(project);
    let mut known = BTreeMap::new();
    for piece in all.cut_list.iter().flat_map(|group| &group.bars).flat_map(|bar| &bar.pieces) {
        if piece.sheet == sheet {
            known.insert(format!("piece {}", piece.id), piece.label.clone());
        }
    }
    let report = all.sheet(sheet).unwrap().as_ref().unwrap();
    for strip in &report.marks {
        for mark in &strip.marks {
            known.insert(
                format!("mark {} {}", strip.id, mark.id),
                format!("{} {}", strip.label, mark.label),
            );
        }
    }
    for line in report.checks.iter().flat_map(|list| &list.lines) {
        known.insert(format!("check {}", line.key), line.text.clone());
    }
    for task in &report.tasks {
        known.insert(format!("task {}", task.key), format!("{} {}", task.piece, task.text));
    }
    known
}

/// Taking a row out, whichever, and putting another in makes no id of one thing another's; the rest keep theirs. Pieces, corners,
/// loads, rows of lights and runs.
#[test]
fn rows_that_come_and_go_move_no_id() {
    let demo = Project::from_text(DEMO).unwrap();
    let mut moved = 0;
    for (sheet, list) in [
        ("cut_plan", "pieces"),
        ("s2", "corners"),
        ("circuit", "rows"),
        ("circuit", "runs"),
        ("circuit", "loads"),
    ] {
        let place = calc::project::Place::Sheet(sheet.to_owned());
        let before = known(&demo, sheet);
        for row in 0..demo.row_count(&place, list) {
            let mut project = demo.clone();
            let taken = project.node(&place, &format!("{list}.{row}")).cloned().unwrap();
            project.remove_row(&place, list, row);
            // Its copy is another row, though it looks the same.
            for back in [false, true] {
                if back {
                    let mut copy = taken.clone();
                    let name = if list == "runs" { "id" } else { "label" };
                    copy[name] = json!("copy of it");
                    project.add_row(&place, list, copy);
                }
                let all = calc::evaluate(&project);
                if !all.sheet(sheet).unwrap().is_ok() {
                    continue;
                }
                for (id, what) in known(&project, sheet) {
                    let was = before.get(&id);
                    assert!(
                        was.is_none_or(|was| *was == what),
                        "{sheet} {list} without {row}: {id} was {was:?} and is {what}"
                    );
                    moved += usize::from(was.is_some());
                }
            }
        }
    }
    assert!(moved > 60, "{moved}");
}

/// The key of a row and nothing else tells what it is: rows in another order, without the first, under other names.
#[test]
fn rows_with_keys_may_stand_in_any_order() {
    let mut document: Json = serde_json::from_str(DEMO).unwrap();
    let sheets = document["sheets"].as_array_mut().unwrap();
    let pieces =
        sheets.iter_mut().find(|sheet| sheet["id"] == "cut_plan").unwrap()["inputs"]["pieces"]
            .as_array_mut()
            .unwrap();
    for (at, row) in pieces.iter_mut().enumerate() {
        row["key"] = json!(format!("k{at}"));
    }
    let read = |document: &Json| Project::from_text(&document.to_string()).unwrap();
    let before = known(&read(&document), "cut_plan");
    for sheet in document["sheets"].as_array_mut().unwrap() {
        if sheet["id"] == "cut_plan" {
            let rows = sheet["inputs"]["pieces"].as_array_mut().unwrap();
            rows.reverse();
            rows.pop();
        }
    }
    let after = known(&read(&document), "cut_plan");
    assert_eq!(after.len(), before.len() - 1);
    assert!(after.iter().all(|(id, what)| before[id] == *what));
}
