//! Every released version of the project file has a kept sample that still loads and still says the same.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, missing_docs)]

use calc::project::{Evaluation, Place, Project, VERSION};
use calc::quantity::UnitSystem;
use serde_json::Value as Json;

/// The kept samples, by version: never edited once released.
const SAMPLES: &[&str] =
    &[include_str!("project_versions/v1.json"), include_str!("project_versions/v2.json")];

/// Version 1 with everything ticked, priced, weighed and placed, and with own lines: under words in feet, and in metres.
const KEPT_IN_V1: &[&str] = &[
    include_str!("project_versions/v1-imperial.json"),
    include_str!("project_versions/v1-metric.json"),
];

#[test]
fn there_is_a_sample_of_every_version() {
    assert_eq!(SAMPLES.len() as u64, VERSION);
    for (index, sample) in SAMPLES.iter().enumerate() {
        let document: Json = serde_json::from_str(sample).unwrap();
        assert_eq!(document["battenbook"], index as u64 + 1);
    }
}

#[test]
fn every_sample_loads_and_is_worked_out() {
    for sample in SAMPLES {
        let project = Project::from_text(sample).unwrap();
        let evaluation = calc::evaluate(&project);
        assert!(evaluation.body.faults.is_empty(), "{:#?}", evaluation.body.faults);
        assert!(evaluation.sheets.len() >= 4);
        for (id, result) in &evaluation.sheets {
            assert!(result.is_ok(), "{id}: {result:#?}");
        }
    }
}

#[test]
fn loading_and_saving_loses_nothing() {
    for sample in SAMPLES {
        let saved = Project::from_text(sample).unwrap().to_text();
        let mut before: Json = serde_json::from_str(sample).unwrap();
        let after: Json = serde_json::from_str(&saved).unwrap();
        before["battenbook"] = VERSION.into();
        assert_eq!(before, after);
        assert_eq!(Project::from_text(&saved).unwrap().to_text(), saved);
    }
}

fn fields<'a>(document: &'a Json, path: &str) -> Vec<(&'a String, &'a Json)> {
    document.pointer(path).and_then(Json::as_object).into_iter().flatten().collect()
}

/// Everything that can be ticked, as the lists have it now: by list, the ids.
fn ids(all: &Evaluation) -> Vec<(String, Vec<String>)> {
    let mut ids: Vec<(String, Vec<String>)> = Vec::new();
    let mut put = |list: String, id: String| match ids.iter_mut().find(|(known, _)| *known == list)
    {
        Some((_, known)) => known.push(id),
        None => ids.push((list, vec![id])),
    };
    for line in &all.buy_list {
        put("buy".into(), line.id.clone());
    }
    let mut bars: Vec<String> = Vec::new();
    for bar in all.cut_list.iter().flat_map(|group| &group.bars) {
        for _ in 0..bar.count {
            bars.push(bar.key());
            let copy = bars.iter().filter(|known| **known == bar.key()).count();
            put("cuts".into(), format!("{}|{copy}", bar.key()));
        }
    }
    for (sheet, result) in &all.sheets {
        let Ok(report) = result.as_ref() else { continue };
        for strip in &report.marks {
            put("boards".into(), format!("{sheet}|{}", strip.id));
            for mark in &strip.marks {
                let mm = calc::quantity::plain(mark.at.value * 1e3, 1);
                put("marks".into(), format!("{sheet}|{}|{}|{mm}", strip.id, mark.id));
            }
        }
        for line in report.checks.iter().flat_map(|list| &list.lines) {
            put(format!("sheet {sheet}"), line.key.clone());
        }
    }
    ids
}

/// Whether it hangs on today's rules for wire what a version 1 file buys and cuts.
fn today(name: &str) -> bool {
    ["wire ", "wire|", "fuse ", "class ", "splice ", "cut "].iter().any(|of| name.starts_with(of))
        && !name.starts_with("cut r")
}

/// Whether it is one of the boards: what an opening cuts through is two pieces today, and those beside it are laid anew.
fn board(name: &str) -> bool {
    name.starts_with("boards|") || name.starts_with("1x6 ")
}

#[test]
fn all_that_version_1_kept_under_words_is_found_under_ids() {
    for sample in KEPT_IN_V1 {
        let before: Json = serde_json::from_str(sample).unwrap();
        let project = Project::from_text(sample).unwrap();
        let after: Json = serde_json::from_str(&project.to_text()).unwrap();
        let all = calc::evaluate(&project);
        assert_eq!(all.shopping().faults, []);
        assert!(all.shopping().line_faults.is_empty(), "{:#?}", all.shopping().line_faults);
        let lines = fields(&after, "/shopping/lines");
        // Each line had another price.
        for (name, said) in fields(&before, "/shopping/lines") {
            let same =
                |now: &Json| ["price", "mass", "place"].iter().all(|key| now[key] == said[key]);
            if name.starts_with("no longer") {
                assert_eq!(&after["version_1"]["lines"][name], said);
                continue;
            }
            // A wire, a fuse or a connector may be another one by today's rules: what was typed is kept, if not for that.
            if today(name) && after["version_1"]["lines"][name] == *said {
                continue;
            }
            let found = lines.iter().find(|(_, now)| same(now));
            let (id, now) = found.unwrap_or_else(|| panic!("{name} is lost"));
            let line = all.buy_list.iter().find(|line| line.id == **id);
            assert!(line.unwrap_or_else(|| panic!("{name} is {id}")).line.cost.is_some());
            if ["|ft", "|m"].iter().any(|unit| name.ends_with(unit)) {
                let pack = now["pack"].as_str().unwrap();
                assert!(pack.ends_with(" ft") || pack.ends_with(" m"), "{name}: {pack}");
            }
        }
        let known = ids(&all);
        for (list, ticks) in fields(&before, "/ticked") {
            let count = |ticks: &Json| ticks.as_object().map_or(0, serde_json::Map::len);
            let left = fields(&after, &format!("/version_1/ticked/{list}"));
            let lost = left.len();
            for (name, _) in &left {
                assert!(
                    name.starts_with("no longer") || today(name) || board(name),
                    "{name} is lost"
                );
            }
            // Most boards are laid as they were: a sheet that is begun keeps the fewest joints.
            let boards = left.iter().filter(|(name, _)| board(name)).count();
            assert!(boards <= count(ticks) / 2, "{list}: {boards} of {}", count(ticks));
            assert_eq!(
                count(&after["ticked"][list]),
                count(ticks) - lost,
                "{list}: {:#}",
                after["version_1"]
            );
            let (_, known) = known.iter().find(|(of, _)| of == list).unwrap();
            for (id, _) in fields(&after, &format!("/ticked/{list}")) {
                assert!(known.contains(id), "{list}: {id}");
            }
        }
        // Ticks hold: what was bought is what is asked for.
        for line in &all.buy_list {
            if let Some(had) = after["ticked"]["buy"][&line.id].as_f64() {
                let asked = calc::lists::in_si(line.asked(), line.line.unit);
                let own = line.from.iter().filter(|share| share.sheet.is_empty());
                let own: f64 = own.map(|share| share.quantity).sum();
                assert!(had >= asked - own - 1e-6, "{}: {had} of {asked}", line.id);
            }
        }
        // The own screws are still added to those of the sheet.
        let screws = all.buy_list.iter().find(|line| line.id == "screw/8/31.8mm").unwrap();
        assert_eq!(screws.from.len(), 2);
        // And all of it once more.
        assert_eq!(Project::from_text(&project.to_text()).unwrap(), project);
    }
}

#[test]
fn what_was_not_found_is_kept_and_found_when_its_line_turns_up() {
    let mut project = Project::from_text(KEPT_IN_V1[0]).unwrap();
    let row = serde_json::json!({ "item": "No longer", "spec": "asked  for", "quantity": 1 });
    project.add_row(&Place::Shopping, "own", row);
    let project = Project::from_text(&project.to_text()).unwrap();
    assert_eq!(
        project.extra("version_1").and_then(|kept| kept["lines"].get("no longer|asked for|each")),
        None
    );
    let all = calc::evaluate(&project);
    let line = all.buy_list.iter().find(|line| line.line.item == "No longer").unwrap();
    assert_eq!((line.id.as_str(), line.line.cost), ("own/o5", Some(7.0)));
    assert_eq!(project.extra("ticked").unwrap()["buy"][&line.id], 4.0);
}

#[test]
fn nothing_in_a_version_1_file_breaks_the_step() {
    for rest in [
        r#""ticked": 5, "shopping": []"#,
        r#""ticked": {"buy": 3, "cuts": {"a": {}}}, "shopping": {"lines": [], "own": 5}"#,
        r#""ticked": {"buy": {"x": "y"}}, "shopping": {"lines": {"a": 3}, "own": [5, {"id": 7}]}"#,
        r#""version_1": 7"#,
    ] {
        let text = format!("{{\"battenbook\": 1, \"id\": \"p\", {rest}}}");
        let project = Project::from_text(&text).unwrap();
        calc::evaluate(&project);
        assert_eq!(Project::from_text(&project.to_text()).unwrap(), project, "{rest}");
    }
}

/// Prices, packs, masses and places hold in the other units: what all of it costs and weighs is the same.
#[test]
fn what_was_typed_holds_in_the_other_units() {
    for sample in KEPT_IN_V1 {
        let project = Project::from_text(sample).unwrap();
        let mut other = project.clone();
        other.set_system(match project.system() {
            UnitSystem::Imperial => UnitSystem::Metric,
            UnitSystem::Metric => UnitSystem::Imperial,
        });
        let (a, b) = (calc::evaluate(&project), calc::evaluate(&other));
        assert_eq!(ids(&a), ids(&b));
        for (a, b) in a.buy_list.iter().zip(&b.buy_list) {
            let close = |a: Option<f64>, b: Option<f64>| match (a, b) {
                (Some(a), Some(b)) => (a - b).abs() <= 1e-9 * a.abs().max(1.0),
                (a, b) => a == b,
            };
            assert!(close(a.line.cost, b.line.cost), "{}: {a:#?} {b:#?}", a.id);
            let kg = |line: &calc::lists::BuyLine| line.mass.map(|mass| mass.value);
            assert!(close(kg(&a.line), kg(&b.line)), "{}", a.id);
        }
        let centre = |all: &Evaluation| all.shopping().weight.balance.centre().unwrap().value;
        assert!((centre(&a) - centre(&b)).abs() < 1e-9);
    }
}
