//! The messages of all languages: whole, filled with the same values, and nowhere put together in code.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, missing_docs)]

use std::collections::BTreeSet;
use std::path::PathBuf;

use calc::ask::{Ask, Kind};
use calc::drawing::Shape;
use calc::project::Project;
use calc::report::Report;
use calc::sheet::{SHEETS, Sheet};
use calc::thermal::materials::MATERIALS;
use calc::words::Words;
use serde_json::{Value as Json, json};
use words::{Catalogue, FIRST, languages};

/// Sheets whose words stand in the table, all of them.
const SAID: &[&str] = &[
    // A line each.
    "stud_marks",
    "water",
    "axles",
    "trim",
    "cut_plan",
    "insulation",
    "lights",
    "heat_load",
    "solar",
];

fn folder() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../shared/words")
}

fn english() -> Catalogue {
    Catalogue::read(FIRST, &folder().join(FIRST)).unwrap()
}

/// The example of a sheet, as it is typed.
fn example(kind: &str) -> Json {
    let sheet = SHEETS.iter().find(|sheet| sheet.kind == kind).unwrap();
    serde_json::from_str(sheet.example).unwrap()
}

/// The kinds of sheets whose results an example takes, and those that they take.
fn taken(kind: &str, found: &mut BTreeSet<&'static str>) {
    let text = example(kind).to_string();
    for sheet in SHEETS {
        if sheet.kind != kind
            && text.contains(&format!("\"{}\"", sheet.kind))
            && found.insert(sheet.kind)
        {
            taken(sheet.kind, found);
        }
    }
}

fn evaluated(kind: &str, units: &str, words: Words) -> Report {
    let mut others = BTreeSet::new();
    taken(kind, &mut others);
    let others = others.into_iter().map(|kind| (kind, kind));
    let sheets: Vec<Json> = std::iter::once(("s1", kind))
        .chain(others)
        .map(|(id, kind)| json!({ "id": id, "kind": kind, "inputs": example(kind) }))
        .collect();
    let body = json!({ "length": "5480 mm", "width": "2060 mm", "height": "1980 mm", "rib_width": "38 mm",
        "ribs": { "even": { "count": 13, "first": "210 mm", "spacing": "420 mm" } },
        "openings": [{ "name": "hatch", "x": "2200 mm", "y": "780 mm", "length": "600 mm", "width": "500 mm" }] });
    let file = json!({ "battenbook": 2, "units": units, "body": body, "sheets": sheets });
    let mut project = Project::from_text(&file.to_string()).unwrap();
    project.set_words(words);
    calc::evaluate(&project).sheet("s1").unwrap().clone().unwrap()
}

#[test]
fn every_language_says_every_message_with_the_same_values() {
    let english = english();
    for (tag, folder) in languages(&folder()).unwrap() {
        let language = Catalogue::read(&tag, &folder).unwrap();
        let problems = english.problems_of(&language);
        assert!(problems.is_empty(), "{problems:#?}");
    }
}

#[test]
fn no_sentence_is_put_together_in_code() {
    let english = english();
    let made_up = Words::load(english.table(&english.made_up())).unwrap();
    for kind in SAID {
        let sheet = SHEETS.iter().find(|sheet| sheet.kind == *kind).unwrap();
        let mut untouched = BTreeSet::new();
        let others = others(sheet, made_up);
        let mut look = |text: &str| {
            untouched.extend(plain_words(&without(text, &others)));
        };
        asked(sheet, made_up, &mut look);
        for units in ["imperial", "metric"] {
            shown(&evaluated(kind, units, made_up), made_up, &mut look);
        }
        assert!(untouched.is_empty(), "{kind}: written in code: {untouched:?}");
    }
}

#[test]
fn another_language_changes_no_number_and_no_id() {
    let english = english();
    for (tag, folder) in languages(&folder()).unwrap() {
        let loaded = english.table(&Catalogue::read(&tag, &folder).unwrap());
        let words = Words::load(loaded).unwrap();
        assert_eq!(Words::of(&tag).map(Words::tag), Some(words.tag()));
        for sheet in SHEETS {
            if !SAID.contains(&sheet.kind) {
                continue;
            }
            let (one, other) = (
                evaluated(sheet.kind, "imperial", Words::ENGLISH),
                evaluated(sheet.kind, "imperial", words),
            );
            assert_eq!(one.outcome, other.outcome, "{tag}");
            let ids = |report: &Report| -> Vec<String> {
                let marks = report.marks.iter().flat_map(|strip| {
                    strip.marks.iter().map(|mark| format!("{}/{}", strip.id, mark.id))
                });
                marks.chain(report.buy.iter().map(|line| line.id.of_sheet("s1"))).collect()
            };
            assert_eq!(ids(&one), ids(&other), "{tag}");
            // What is offered is typed into another sheet, whose rows are found again by its names.
            let offered = |report: &Report| -> Vec<Vec<(String, String)>> {
                report.offers.iter().map(|offer| offer.inputs.clone()).collect()
            };
            assert_eq!(offered(&one), offered(&other), "{tag}");
        }
    }
}

#[test]
fn a_table_that_is_cut_short_is_refused() {
    let english = english();
    let table = english.table(&english);
    assert!(Words::load(table.clone()).is_ok());
    for length in (0..table.len()).step_by(7) {
        assert!(Words::load(table[..length].to_vec()).is_err(), "{length} bytes");
    }
}

/// What a report shows that no language has a say in: names that were typed, and who is cited in a table.
fn others(sheet: &Sheet, words: Words) -> Vec<String> {
    fn names(of: &Json, found: &mut Vec<String>) {
        match of {
            Json::Object(fields) => fields.iter().for_each(|(key, value)| match value {
                Json::String(name) if ["name", "label", "material"].contains(&key.as_str()) => {
                    found.push(name.clone());
                }
                _ => names(value, found),
            }),
            Json::Array(items) => items.iter().for_each(|item| names(item, found)),
            _ => {}
        }
    }
    let mut found = vec!["hatch".to_owned()];
    let mut kinds = BTreeSet::from([sheet.kind]);
    taken(sheet.kind, &mut kinds);
    kinds.into_iter().for_each(|kind| names(&example(kind), &mut found));
    for material in &MATERIALS {
        let factor = material.vapour_factor.map(|factor| factor.source.say(words));
        found.extend([material.conductivity_w_mk.source.say(words)].into_iter().chain(factor));
    }
    found
}

/// A text without the names in it; nothing of a name that was cut short to fit.
fn without(text: &str, names: &[String]) -> String {
    match text.strip_suffix('…') {
        Some(begun) if names.iter().any(|name| name.starts_with(begun)) => String::new(),
        _ => names.iter().fold(text.to_owned(), |rest, name| rest.replace(name, "")),
    }
}

/// All that is told of a sheet before anything is typed.
fn asked(sheet: &Sheet, words: Words, look: &mut impl FnMut(&str)) {
    for phrase in [sheet.title, sheet.trade, sheet.purpose] {
        look(phrase.say(words));
    }
    for ask in sheet.asks {
        of_ask(ask, words, look);
    }
}

fn of_ask(ask: &Ask, words: Words, look: &mut impl FnMut(&str)) {
    look(ask.label.say(words));
    look(ask.help.say(words));
    match ask.kind {
        Kind::Group(of) | Kind::Either(of) => of.iter().for_each(|ask| of_ask(ask, words, look)),
        Kind::Rows { asks, noun, .. } => {
            look(noun.say(words));
            asks.iter().for_each(|ask| of_ask(ask, words, look));
        }
        Kind::List { of, .. } => of_ask(of, words, look),
        Kind::Choice(of) => of.all(words).for_each(|(_, name)| look(name)),
        _ => {}
    }
}

/// All that a report says, but for who is cited.
fn shown(report: &Report, words: Words, look: &mut impl FnMut(&str)) {
    let mut texts: Vec<&str> = Vec::new();
    for answer in &report.answers {
        texts.extend([answer.label.as_str(), &answer.text, &answer.note]);
    }
    texts.extend(report.remarks.iter().map(|remark| remark.text.as_str()));
    for table in &report.tables {
        texts.push(&table.title);
        let cells = table.rows.iter().flat_map(|row| &row.cells);
        texts.extend(table.heads.iter().chain(cells).map(String::as_str));
    }
    for list in &report.checks {
        texts.push(&list.title);
        texts.extend(list.lines.iter().flat_map(|line| [line.text.as_str(), &line.note]));
    }
    texts.extend(report.offers.iter().map(|offer| offer.label.say(words)));
    for strip in &report.marks {
        texts.extend([strip.label.as_str(), &strip.note]);
        texts.extend(strip.marks.iter().flat_map(|mark| [mark.label.as_str(), &mark.note]));
    }
    texts.extend(report.working.iter().flat_map(|step| [step.name.as_str(), &step.numbers]));
    texts.extend(report.cautions.iter().map(|caution| caution.text.say(words)));
    texts.extend(report.buy.iter().flat_map(|line| [line.item.as_str(), &line.spec]));
    for line in &report.cut {
        texts.push(&line.stock);
        texts.extend(line.pieces.iter().map(|piece| piece.label.as_str()));
    }
    for drawing in report.drawings.iter().chain(&report.templates) {
        texts.extend([drawing.title.as_str(), &drawing.words]);
        for shape in &drawing.shapes {
            if let Shape::Text { text, .. } | Shape::Dimension { text, .. } = shape {
                texts.push(text);
            }
        }
    }
    texts.into_iter().for_each(look);
}

/// Words of plain letters, which the made-up language has none of; units and functions are the same in every language.
fn plain_words(text: &str) -> Vec<String> {
    const UNITS: &[&str] = &[
        "in", "ft", "mm", "m", "gal", "qt", "fl", "oz", "ml", "lb", "kg", "min", //
        "Btu", "cfm", "Wh", "MJ", "Pa", "lm", "lx", "fc", "cd", "cos", "sin", "ln", //
    ];
    text.split(|letter: char| !letter.is_alphabetic())
        .filter(|word| word.len() > 1 && word.chars().all(|letter| letter.is_ascii_alphabetic()))
        .filter(|word| !UNITS.contains(word))
        .map(str::to_owned)
        .collect()
}
