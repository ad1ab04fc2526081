//! No text of any drawing lies on another, on a line, or beyond the edge: over all drawings of the demo, of the examples and of made-up
//! projects, in every language and both unit systems, at the widths of phones.

use std::collections::BTreeSet;
use std::path::PathBuf;

use calc::drawing::{Drawing, Fit};
use calc::project::{Evaluation, Project};
use calc::quantity::UnitSystem;
use calc::words::Words;
use serde_json::Value as Json;
use words::{Catalogue, FIRST, languages};

use super::layout::Layout;
use super::lettering::{Lettering, Px};
use super::{svg, width_in_sight};

const DEMO: &str = include_str!("../../../../shared/demo.json");

/// Widths of pages, and what a page keeps for itself at its sides. [px]
const PAGES: [f64; 3] = [320.0, 390.0, 844.0];
const EDGES: f64 = 32.0;
/// The heights that the first drawing of a page is kept to. [px]
const IN_SIGHT: [f64; 2] = [220.0, 255.0];
/// Letters leave this much of their box free. [px]
const AIR: f64 = 1.0;

/// Every language, and the made-up one whose words are longer.
fn all_words() -> Vec<Words> {
    let folder = PathBuf::from(concat!(env!("CARGO_MANIFEST_DIR"), "/../shared/words"));
    let english = Catalogue::read(FIRST, &folder.join(FIRST)).unwrap();
    let mut all = vec![Words::ENGLISH];
    for (tag, folder) in languages(&folder).unwrap().iter().filter(|(tag, _)| tag != FIRST) {
        let language = english.read_beside(tag, folder).unwrap();
        all.push(Words::load(english.table(&language)).unwrap());
    }
    all.push(Words::load(english.table(&english.made_up())).unwrap());
    all
}

/// What a project draws in these words: the name of each, whether it stands first on its page, and the drawing.
fn drawings(
    project: &mut Project,
    words: Words,
    system: UnitSystem,
) -> Vec<(String, bool, Drawing)> {
    project.set_system(system);
    project.set_words(words);
    crate::words::speak(words);
    let all: Evaluation = calc::evaluate(project);
    let plan = calc::project::plan(&all.body, project.style());
    let mut found: Vec<_> = plan.into_iter().map(|plan| ("body".to_owned(), false, plan)).collect();
    for (id, sheet) in &all.sheets {
        let Ok(report) = sheet.as_ref() else { continue };
        for (index, drawing) in report.drawings.iter().chain(&report.templates).enumerate() {
            found.push((format!("{id} {index}"), index == 0, drawing.clone()));
        }
    }
    found
}

/// The lines of a picture, each with its class.
fn lines(picture: &str) -> Vec<(&str, Px, Px)> {
    let mut lines = Vec::new();
    for path in picture.split("<path class=\"").skip(1) {
        let (class, rest) = path.split_once('"').unwrap();
        // Cells of a map are its ground, hatchings are a filling, and what is only filled has no line.
        let is_ground = class.contains("fill-light") || class.starts_with("ground");
        if is_ground || class.starts_with("hatch") || class.starts_with("fill") || class.is_empty()
        {
            continue;
        }
        let data = rest.split(" d=\"").nth(1).unwrap().split('"').next().unwrap();
        let numbers: Vec<f64> =
            data.split(['M', 'L', 'Z', ' ']).filter_map(|one| one.parse().ok()).collect();
        let mut points: Vec<Px> = numbers.chunks_exact(2).map(|at| (at[0], at[1])).collect();
        if data.ends_with('Z') {
            points.push(points[0]);
        }
        lines.extend(points.windows(2).map(|ends| (class, ends[0], ends[1])));
    }
    lines
}

/// What is wrong with a drawing on a page of this width.
fn problems(drawing: &Drawing, width: f64) -> Vec<String> {
    let width = width.min(super::GREATEST_WIDTH);
    let Some(layout) = Layout::new(drawing, width) else { return Vec::new() };
    let mut found = Vec::new();
    if drawing.fit == Fit::Whole && layout.width > width + 0.5 {
        found.push(format!("{:.0} px wide, so that its letters are made smaller", layout.width));
    }
    let texts = layout.texts();
    let inner: Vec<Lettering> = texts.iter().map(|text| text.wider((-AIR, -AIR))).collect();
    for (index, text) in texts.iter().enumerate() {
        let (x, y) = (text.reach((1.0, 0.0)), text.reach((0.0, 1.0)));
        let (right, down) = text.middle;
        if right - x < 0.0 || right + x > layout.width || down - y < 0.0 || down + y > layout.height
        {
            found.push(format!("beyond the edge: {text:?}"));
        }
        if let Some(other) = texts[index + 1..].iter().find(|other| text.meets(other)) {
            found.push(format!("text on text: {text:?} {other:?}"));
        }
    }
    for (class, a, b) in lines(&svg(drawing, width, 1)) {
        if let Some(text) = inner.iter().find(|text| text.covers(a, b).is_some()) {
            found.push(format!("text on a line: {class} {a:?} {b:?} {text:?}"));
        }
    }
    found
}

/// Looks at all drawings of a project; gives what is wrong, and how many were looked at.
fn look(
    name: &str,
    project: &mut Project,
    words: Words,
    system: UnitSystem,
) -> (BTreeSet<String>, usize) {
    let (mut found, mut count) = (BTreeSet::new(), 0);
    for (drawn, is_first, drawing) in drawings(project, words, system) {
        let mut see = |drawing: &Drawing, width: f64| {
            count += 1;
            for problem in problems(drawing, width) {
                let tag = words.tag();
                found.insert(format!("{name} {drawn} {tag} {system:?} {width:.0}: {problem}"));
            }
        };
        for page in PAGES.map(|page| page - EDGES) {
            see(&drawing, page);
            for most in IN_SIGHT.into_iter().filter(|_| is_first) {
                see(&drawing, width_in_sight(&drawing, page, most).0);
            }
        }
        if drawing.fit == Fit::Strip {
            see(&Drawing { fit: Fit::Whole, ..drawing }, super::PRINTED_WIDTH);
        }
    }
    (found, count)
}

fn assert_none(found: &BTreeSet<String>) {
    let some: Vec<&String> = found.iter().take(20).collect();
    assert!(found.is_empty(), "{} texts cannot be read: {some:#?}", found.len());
}

#[test]
fn no_text_lies_on_another_or_on_a_line() {
    let (mut found, mut count) = (BTreeSet::new(), 0);
    for words in all_words() {
        for system in [UnitSystem::Imperial, UnitSystem::Metric] {
            for (name, project) in [
                ("demo", Project::from_text(DEMO)),
                ("examples", Ok(super::kept::project("metric"))),
            ] {
                let (wrong, looked) = look(name, &mut project.unwrap(), words, system);
                found.extend(wrong);
                count += looked;
            }
        }
    }
    assert!(count > 3000, "{count}");
    assert_none(&found);
}

/// The next of a row of numbers that looks random and is the same every time: Numerical Recipes, third edition, 7.1.2 (xorshift).
fn next(state: &mut u64) -> u64 {
    *state ^= *state << 13;
    *state ^= *state >> 7;
    *state ^= *state << 17;
    *state
}

/// Other inputs than those of the demo: now and then a figure is scaled, a row left out or written twice, a name made longer.
fn made_up(node: &mut Json, state: &mut u64) {
    match node {
        Json::Array(rows) => {
            rows.iter_mut().for_each(|row| made_up(row, state));
            match next(state) % 6 {
                0 if rows.len() > 1 => drop(rows.pop()),
                1 if rows.len() < 12 => rows.extend(rows.last().cloned()),
                _ => {}
            }
        }
        Json::Object(fields) => {
            for (key, field) in fields {
                match field {
                    Json::String(name) if key == "label" && next(state).is_multiple_of(3) => {
                        name.push_str(" behind the left wheel box");
                    }
                    _ => made_up(field, state),
                }
            }
        }
        Json::String(typed) => {
            let number = typed.split(' ').next().and_then(|first| first.parse::<f64>().ok());
            if let Some(number) = number.filter(|_| next(state).is_multiple_of(5)) {
                let share = [0.3, 0.6, 0.85, 1.2, 1.7, 3.1][(next(state) % 6) as usize];
                let rest = typed.split_once(' ').map_or("", |(_, rest)| rest);
                *typed = format!("{:.0} {rest}", (number * share).ceil()).trim().to_owned();
            }
        }
        _ => {}
    }
}

#[test]
fn nor_does_any_of_made_up_projects() {
    let all = all_words();
    let (mut found, mut count) = (BTreeSet::new(), 0);
    let mut state = 0x5eed_0000_0001;
    for turn in 0..12 {
        let mut document: Json = serde_json::from_str(DEMO).unwrap();
        for sheet in document["sheets"].as_array_mut().unwrap() {
            made_up(&mut sheet["inputs"], &mut state);
        }
        let mut project = Project::from_text(&document.to_string()).unwrap();
        let system = [UnitSystem::Imperial, UnitSystem::Metric][turn % 2];
        let words = all[turn / 2 % all.len()];
        let (wrong, looked) = look(&format!("made up {turn}"), &mut project, words, system);
        found.extend(wrong);
        count += looked;
    }
    assert!(count > 1000, "{count}");
    assert_none(&found);
}
