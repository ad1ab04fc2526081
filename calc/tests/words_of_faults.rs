//! What is said of wrong inputs: in another language no word of it is left in code.
//!
//! All is shown in the made-up language of `words`, which has no word of plain letters: such a word was typed, is a
//! unit or a key of the project file, or somebody wrote it into the code.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, missing_docs)]

use std::collections::BTreeSet;
use std::path::PathBuf;
use std::sync::OnceLock;

use calc::ask::{Ask, Kind};
use calc::carpentry::moisture::SPECIES;
use calc::drawing::Shape;
use calc::electrical::ampacity::{BOAT_CABLE, Conditions, Rated};
use calc::electrical::colours::{Colour, Hue};
use calc::electrical::conductor::Conductor;
use calc::electrical::drop::{Load, Run, operating_point};
use calc::electrical::fuse::select;
use calc::fault::Fault;
use calc::mass::densities::DENSITIES;
use calc::project::{BODY_ASKS, Body, LoadError, Project, shopping};
use calc::quantity::{DIMENSIONS, Measure, Style, UnitSystem};
use calc::sheet::{SHEETS, Sheet};
use calc::words::{Msg, Phrase, Words};
use serde_json::{Value as Json, json};
use words::{Catalogue, FIRST};

fn made_up() -> Words {
    static LOADED: OnceLock<Words> = OnceLock::new();
    *LOADED.get_or_init(|| {
        let folder = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../shared/words");
        let english = Catalogue::read(FIRST, &folder.join(FIRST)).unwrap();
        Words::load(english.table(&english.made_up())).unwrap()
    })
}

fn styles() -> [Style; 2] {
    [UnitSystem::Imperial, UnitSystem::Metric]
        .map(|system| Style { words: made_up(), ..Style::new(system) })
}

/// Sheets whose words stand in the table.
fn said() -> impl Iterator<Item = &'static Sheet> {
    SHEETS.iter().copied().filter(|sheet| matches!(sheet.title, Phrase::Id(_)))
}

/// Words of plain letters.
fn plain(text: &str) -> impl Iterator<Item = String> {
    text.split(|letter: char| !letter.is_alphabetic())
        .filter(|word| word.len() > 1 && word.chars().all(|letter| letter.is_ascii_alphabetic()))
        .map(|word| word.to_ascii_lowercase())
}

/// Words that are the same in every language.
fn units() -> BTreeSet<String> {
    let units = DIMENSIONS.iter().flat_map(|dimension| dimension.units);
    let symbols = units.flat_map(|unit| unit.symbols).flat_map(|symbol| plain(symbol));
    // The halves of a day, as a time is typed in any language.
    symbols.chain(["am", "pm"].map(str::to_owned)).collect()
}

/// What a message says in words of plain letters that are no units and stand nowhere in what was typed.
fn written_in_code(message: &str, typed: &str) -> Vec<String> {
    let mut known = units();
    known.extend(plain(typed));
    plain(message).filter(|word| !known.contains(word)).collect()
}

/// Texts and nodes that are wrong in most places, each in its own way.
fn nasty() -> Vec<Json> {
    let texts = [
        "",
        " ",
        "xyz",
        "3 kg",
        "-5",
        "2.5",
        "0",
        "12",
        "99999 m",
        "3 in ft",
        "2,300 mm",
        "1/0",
        "((1 in",
        "3 $",
        "90 5/4 in",
        "3 in\n",
        "25 C",
        "12 %",
        "1 m",
        "999 m",
    ];
    let mut all: Vec<Json> = texts.map(Json::from).into();
    all.extend([
        json!(null),
        json!(true),
        json!(0),
        json!(-1),
        json!(2.5),
        json!(1e300),
        json!([]),
        json!({}),
        json!(["xyz"]),
        json!([12]),
        json!({ "xyz": 1 }),
        json!(vec!["1 m"; 401]),
        json!("1".repeat(300)),
    ]);
    all
}

/// Pointers to all places of a document.
fn places(node: &Json, here: &str, into: &mut Vec<String>) {
    into.push(here.to_owned());
    match node {
        Json::Array(items) => {
            for (index, item) in items.iter().enumerate() {
                places(item, &format!("{here}/{index}"), into);
            }
        }
        Json::Object(fields) => {
            for (key, item) in fields {
                let key = key.replace('~', "~0").replace('/', "~1");
                places(item, &format!("{here}/{key}"), into);
            }
        }
        _ => {}
    }
}

/// What is given with each place made wrong in each way, and with each place left out.
fn spoiled(node: &Json) -> Vec<Json> {
    let mut all = Vec::new();
    let mut found = Vec::new();
    places(node, "", &mut found);
    for place in found {
        for wrong in nasty() {
            let mut spoiled = node.clone();
            *spoiled.pointer_mut(&place).unwrap() = wrong;
            all.push(spoiled);
        }
        let Some((above, key)) = place.rsplit_once('/') else { continue };
        let mut spoiled = node.clone();
        if let Some(fields) = spoiled.pointer_mut(above).unwrap().as_object_mut() {
            fields.remove(&key.replace("~1", "/").replace("~0", "~"));
            all.push(spoiled);
        }
    }
    all
}

/// Keys that may stand in what is said of how a file is built.
const KEYS: &str = "coats length true false";

/// Notations that are typed as they stand, in every language: steel by its gauge, wire by its size.
const NOTATIONS: &str = "ga AWG auto";

fn check(faults: &[Fault], typed: &str, of: &str, untouched: &mut BTreeSet<String>) {
    for fault in faults {
        // Names of woods are typed as they stand, in every language.
        let woods = DENSITIES.iter().map(|wood| wood.name);
        let woods: Vec<&str> = woods.chain(SPECIES.iter().map(|wood| wood.name)).collect();
        let typed = [typed, KEYS, NOTATIONS, &woods.join(" ")].join(" ");
        let words = written_in_code(&fault.message, &typed);
        if !words.is_empty() {
            untouched.insert(format!("{of} {}: {}", fault.field, fault.message));
        }
    }
}

fn evaluated(file: &Json) -> calc::project::Evaluation {
    let mut project = Project::from_text(&file.to_string()).unwrap();
    project.set_words(made_up());
    calc::evaluate(&project)
}

#[test]
fn faults_of_sheets_are_said_in_the_language() {
    let mut untouched = BTreeSet::new();
    for sheet in said() {
        let mut found = 0;
        let example: Json = serde_json::from_str(sheet.example).unwrap();
        for inputs in spoiled(&example) {
            for units in ["imperial", "metric"] {
                let file = json!({ "battenbook": 2, "units": units, "body": {},
                    "sheets": [{ "id": "s1", "kind": sheet.kind, "inputs": inputs }] });
                if let Err(faults) = evaluated(&file).sheet("s1").unwrap() {
                    found += faults.len();
                    check(faults, &inputs.to_string(), sheet.kind, &mut untouched);
                }
            }
        }
        assert!(found > 10, "{}: {found} faults", sheet.kind);
    }
    assert!(untouched.is_empty(), "{untouched:#?}");
}

fn each_ask(asks: &'static [&'static Ask], look: &mut impl FnMut(&'static Ask)) {
    for ask in asks {
        look(ask);
        match ask.kind {
            Kind::Group(of) | Kind::Either(of) => each_ask(of, look),
            _ => {}
        }
    }
}

#[test]
fn what_is_wrong_between_sheets_is_said_in_the_language() {
    // Titles of kinds that are not moved yet are named in English.
    let titles: Vec<&str> = SHEETS.iter().map(|sheet| sheet.title.say(Words::ENGLISH)).collect();
    let kinds: Vec<&str> = SHEETS.iter().map(|sheet| sheet.kind).collect();
    let known = [titles.join(" "), kinds.join(" "), "nowhere twice itself".to_owned()].join(" ");
    let mut untouched = BTreeSet::new();
    let mut takers = 0;
    for sheet in SHEETS {
        let mut asks = Vec::new();
        each_ask(sheet.asks, &mut |ask| {
            if matches!(ask.kind, Kind::SheetOf(_)) {
                asks.push(ask);
            }
        });
        for ask in asks {
            for id in ["nowhere", "stud_marks", "itself"] {
                let file = json!({ "battenbook": 2, "units": "metric", "body": {}, "sheets": [
                    { "id": "itself", "kind": sheet.kind, "inputs": { ask.key: id } },
                    { "id": "stud_marks", "kind": "stud_marks", "inputs": {} }] });
                let all = evaluated(&file);
                let Err(faults) = all.sheet("itself").unwrap() else { continue };
                let at: Vec<Fault> =
                    faults.iter().filter(|fault| fault.field == ask.key).cloned().collect();
                takers += at.len();
                check(&at, &known, sheet.kind, &mut untouched);
            }
        }
    }
    assert!(takers > 3, "{takers}");
    for sheets in [
        json!([{ "id": "twice", "kind": "water" }, { "id": "twice", "kind": "water" }]),
        json!([{ "id": "s1", "kind": 3 }]),
        json!([{ "id": "s1", "kind": "nowhere" }]),
        json!([{ "id": "s1", "kind": "stud_marks", "inputs": "nowhere" }]),
    ] {
        let all = evaluated(&json!({ "battenbook": 2, "sheets": sheets }));
        let Err(faults) = all.sheets[0].1.as_ref() else { panic!("{sheets} gives answers") };
        check(faults, &known, "", &mut untouched);
    }
    assert!(untouched.is_empty(), "{untouched:#?}");
}

#[test]
fn why_a_text_cannot_be_read_is_said_in_the_language() {
    let texts = [
        "",
        "3\u{0}",
        "3 $",
        "90 xyz",
        "2x4",
        "60 mw",
        "12 %",
        "10 oz",
        "5 kg",
        "25 deg",
        "90 1/2",
        "3 - 2 m",
        "3 in ft",
        "1.2.3",
        "2,300",
        "90 -1/2",
        "7 6",
        "1/2 3/4",
        "90 5/4",
        "6 in 7 ft",
        "1/0",
        "3 ft * 2 ft",
        "6 / (2 ft)",
        "25 C + 3 C",
        "-300 C",
        "(3",
        "3 +",
        "abc",
        "3 mm.",
        "99999999999999 m",
        "12 V",
        "3 m/s",
        "2 l",
    ];
    let (long, deep) = ("1".repeat(300), format!("{}1 in{}", "(".repeat(17), ")".repeat(17)));
    let mut untouched = BTreeSet::new();
    let mut refused = 0;
    for dimension in DIMENSIONS {
        for typed in texts.into_iter().chain([long.as_str(), deep.as_str()]) {
            let Err(error) = Measure::read(typed, dimension, None) else { continue };
            refused += 1;
            for style in styles() {
                let said = style.say(error.message());
                let words = written_in_code(&said, typed);
                if !words.is_empty() {
                    untouched.insert(said);
                }
            }
        }
    }
    assert!(refused > 500, "{refused}");
    assert!(untouched.is_empty(), "{untouched:#?}");
}

/// What a refusal gives as an example can be read, in every language.
#[test]
fn examples_can_be_read() {
    for tag in ["en", "es"] {
        let words = Words::of(tag).unwrap();
        for dimension in DIMENSIONS {
            let example = words.plain(dimension.example);
            let reads = Measure::read(example, dimension, dimension.units.first()).is_ok();
            // That of temperatures names two.
            assert!(reads || dimension.unit("C").is_some(), "{tag}: {example}");
        }
    }
}

/// The colours that are named where one was typed wrong can be typed, in every language.
#[test]
fn colours_that_are_named_can_be_read() {
    for tag in ["en", "es"] {
        let style = Style { words: Words::of(tag).unwrap(), ..Style::new(UnitSystem::Metric) };
        for (hue, ..) in Hue::ALL {
            let name = style.write(&hue.into());
            let read: Colour = name.parse().unwrap_or_else(|_| panic!("{tag}: {name}"));
            assert_eq!((read.ground, read.stripe), (hue, None), "{tag}: {name}");
        }
    }
}

/// A body with nothing wrong, and all that can be asked of it.
fn body() -> Json {
    json!({ "length": "5480 mm", "width": "2060 mm", "height": "1980 mm", "rib_width": "38 mm", "wall_depth": "38 mm",
        "widths": [{ "x": "0 mm", "width": "2060 mm" }, { "x": "3 m", "width": "2050 mm" }, { "x": "5 m", "width": "2040 mm" }],
        "ribs": { "measured": ["400 mm", "800 mm"] },
        "diagonals": { "first": "5860 mm", "second": "5830 mm" },
        "openings": [{ "name": "hatch", "x": "2200 mm", "y": "780 mm", "length": "600 mm", "width": "500 mm" }] })
}

fn told(asks: &[&Ask], look: &mut impl FnMut(&str)) {
    for ask in asks {
        look(ask.label.say(made_up()));
        look(ask.help.say(made_up()));
        match ask.kind {
            Kind::Group(of) | Kind::Either(of) => told(of, look),
            Kind::Rows { asks, noun, .. } => {
                look(noun.say(made_up()));
                told(asks, look);
            }
            Kind::List { of, .. } => told(&[of], look),
            Kind::Choice(of) => of.all(made_up()).for_each(|(_, name)| look(name)),
            _ => {}
        }
    }
}

#[test]
fn the_body_is_asked_and_shown_in_the_language() {
    let mut untouched = BTreeSet::new();
    let mut look = |text: &str| untouched.extend(written_in_code(text, "hatch arcsin"));
    told(BODY_ASKS, &mut look);
    told(shopping::LINE_ASKS, &mut look);
    told(shopping::OWN_ASKS, &mut look);
    let mut slips = body();
    slips["diagonals"] = json!({ "first": "5700 mm", "second": "5700 mm" });
    let mut square = body();
    square["diagonals"] = json!({ "first": "5845 mm", "second": "5845 mm" });
    let mut early = body();
    early.as_object_mut().unwrap().remove("length");
    for node in [body(), slips, square, early] {
        for style in styles() {
            let body = Body::read(&node, style);
            let report = body.findings(style);
            for answer in &report.answers {
                [&answer.label, &answer.text, &answer.note].into_iter().for_each(|text| look(text));
            }
            report.remarks.iter().for_each(|remark| look(&remark.text));
            for step in &report.working {
                [&step.name, &step.numbers, &step.result].into_iter().for_each(|text| look(text));
                look(&step.source.say(made_up()));
            }
            if let Some(drawing) = calc::project::plan(&body, style) {
                [&drawing.title, &drawing.words].into_iter().for_each(|text| look(text));
                for shape in &drawing.shapes {
                    if let Shape::Text { text, .. } | Shape::Dimension { text, .. } = shape {
                        look(text);
                    }
                }
            }
        }
    }
    assert!(untouched.is_empty(), "{untouched:?}");
}

#[test]
fn faults_of_the_body_and_the_buy_list_are_said_in_the_language() {
    let (mut untouched, mut found) = (BTreeSet::new(), 0);
    let mut bodies = spoiled(&body());
    bodies.push(json!({ "length": "4 m", "ribs": { "even": { "count": 9, "first": "0 in", "spacing": "1 m" } } }));
    bodies.push(json!({ "length": "4 m", "widths": [{ "x": "1 m", "width": "2 m" }, { "x": "1 m", "width": "2 m" }] }));
    for node in bodies {
        for style in styles() {
            let body = Body::read(&node, style);
            found += body.faults.len();
            check(&body.faults, &node.to_string(), "body", &mut untouched);
        }
    }
    let lines = json!({
        "lines": { "own/tape": { "pack": "4", "price": 2, "mass": "1 kg", "place": "1 m" } },
        "own": [{ "id": "tape", "item": "tape", "quantity": 2, "unit": "each", "price": 3, "mass": "1 kg", "place": "1 m" }]
    });
    for shopping in spoiled(&lines) {
        let all = evaluated(&json!({ "battenbook": 2, "shopping": shopping, "sheets": [] }));
        let wrong = all.shopping();
        for faults in wrong.line_faults.values().chain([&wrong.faults]) {
            found += faults.len();
            check(faults, &shopping.to_string(), "shopping", &mut untouched);
        }
    }
    assert!(found > 300, "{found}");
    assert!(untouched.is_empty(), "{untouched:#?}");
}

/// Sizes, units, the standards that are cited, and what is typed as it stands in every language.
const WIRES: &str = "AWG NEC NFPA IEC chapter table park trailers";

#[test]
fn what_is_wrong_with_wire_and_fuse_is_said_in_the_language() {
    let mut said: Vec<Msg> = Vec::new();
    let texts = ["", "16", "17 AWG", "3 mm2", "0 ohm/m", "thick"];
    let refused = texts.iter().filter_map(|text| text.parse::<Conductor>().err());
    said.extend(refused.map(|error| Msg::from(&error)));
    assert_eq!(said.len(), texts.len());
    let wire = |text: &str| text.parse::<Conductor>().unwrap();
    let unrated = [
        (wire("0.5 mm2"), BOAT_CABLE),
        (wire("0.75 mm2"), Conditions::default()),
        (wire("0.03 ohm/m"), BOAT_CABLE),
    ];
    said.extend(unrated.map(|(wire, lies)| Msg::from(Rated::new(wire, &lies).unwrap_err())));
    for load in [Load::Power(500.0), Load::Current(500.0), Load::Power(-1.0)] {
        said.push((&operating_point(12.0, load, 0.3).unwrap_err()).into());
    }
    said.push((&operating_point(f64::NAN, Load::Power(1.0), 0.3).unwrap_err()).into());
    let run = |load, length_m, bundled| Run {
        source_v: 12.0,
        low_v: None,
        load,
        length_m,
        temperature_c: 30.0,
        drop_limit_percent: 3.0,
        continuous: true,
        conditions: Conditions { bundled, ..BOAT_CABLE },
    };
    for (run, sizes) in [
        (run(Load::Power(60.0), 1000.0, 2), Conductor::awg().collect()),
        (run(Load::Power(600.0), 1000.0, 2), Conductor::awg().collect()),
        (run(Load::Current(400.0), 0.1, 30), Conductor::awg().collect()),
        (run(Load::Power(60.0), 1.0, 2), Vec::new()),
        (run(Load::Power(-60.0), 1.0, 2), Conductor::awg().collect()),
    ] {
        said.push((&run.least(sizes).unwrap_err()).into());
    }
    let rated = |text: &str| Rated::new(wire(text), &BOAT_CABLE).unwrap();
    for (needed, behind) in
        [(36.0, "10 AWG"), (72.0, "8 AWG"), (500.0, "4/0 AWG"), (900.0, "4/0 AWG"), (-1.0, "8 AWG")]
    {
        let error = select(needed, 0.0, &[rated(behind)], &BOAT_CABLE).unwrap_err();
        said.push((&error).into());
    }
    let mut untouched = BTreeSet::new();
    for message in &said {
        for style in styles() {
            let text = style.say(message.clone());
            assert!(!text.is_empty());
            if !written_in_code(&text, &[WIRES, "thick"].join(" ")).is_empty() {
                untouched.insert(text);
            }
        }
    }
    assert!(untouched.is_empty(), "{untouched:#?}");
}

#[test]
fn why_a_file_cannot_be_opened_is_said_in_the_language() {
    let errors = [
        LoadError::TooLarge { bytes: 3_000_000 },
        LoadError::NotJson { line: 3 },
        LoadError::NoVersion,
        LoadError::TooNew { found: 99 },
        LoadError::TooManySheets { count: 501 },
    ];
    for error in errors {
        let said = styles()[0].say(error.message());
        // JSON and the name of the format are no words.
        assert_eq!(written_in_code(&said, "battenbook"), [""; 0], "{said}");
    }
}

#[test]
fn what_differs_between_projects_is_said_in_the_language() {
    let mut untouched = BTreeSet::new();
    let project = |units: &str, inputs: Json, body: Json| {
        let file = json!({ "battenbook": 2, "name": "", "units": units, "body": body,
            "sheets": [{ "id": "s1", "kind": "stud_marks", "inputs": inputs }] });
        let mut project = Project::from_text(&file.to_string()).unwrap();
        project.set_words(made_up());
        project
    };
    let example: Json =
        serde_json::from_str(calc::sheet::find("stud_marks").unwrap().example).unwrap();
    let mut spoiled_body = body();
    spoiled_body["width"] = json!("2 kg");
    let [first, other] = [
        project("imperial", example, body()),
        project("metric", json!({ "board": "3 m" }), spoiled_body),
    ];
    let parts = calc::project::compare(&first, &other);
    assert!(parts.len() > 2, "{parts:#?}");
    for part in &parts {
        untouched.extend(written_in_code(&part.title, ""));
        for line in part.inputs.iter().chain(&part.answers) {
            for text in [&line.label, &line.first, &line.other] {
                untouched.extend(written_in_code(text, "kg hatch"));
            }
        }
    }
    assert!(untouched.is_empty(), "{untouched:?}");
}
