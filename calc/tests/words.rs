//! The messages of all languages: whole, filled with the same values, and nowhere put together in code.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, missing_docs)]

use std::collections::BTreeSet;
use std::path::PathBuf;

use calc::ask::{Ask, Kind};
use calc::drawing::Shape;
use calc::fault::Fault;
use calc::project::Project;
use calc::quantity::{LENGTH, Length, Mass, Measure, Style, UnitSystem, Volume};
use calc::report::{Figure, Report};
use calc::sheet::{SHEETS, Sheet};
use calc::thermal::materials::MATERIALS;
use calc::words::Words;
use serde_json::{Value as Json, json};
use uom::si::length::meter;
use uom::si::mass::kilogram;
use uom::si::volume::liter;
use words::{Catalogue, FIRST, Piece, languages};

fn metres(value: f64) -> Length {
    Length::new::<meter>(value)
}

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
    evaluated_with(kind, &example(kind), units, words).unwrap()
}

/// As `evaluated`, of other inputs than those of the example.
fn evaluated_with(
    kind: &str,
    inputs: &Json,
    units: &str,
    words: Words,
) -> Result<Report, Vec<Fault>> {
    let mut others = BTreeSet::new();
    taken(kind, &mut others);
    let others = others.into_iter().map(|kind| (kind, kind));
    let sheets: Vec<Json> = std::iter::once(("s1", kind))
        .chain(others)
        .map(|(id, kind)| {
            let inputs = if id == "s1" { inputs.clone() } else { example(kind) };
            json!({ "id": id, "kind": kind, "inputs": inputs })
        })
        .collect();
    let body = json!({ "length": "5480 mm", "width": "2060 mm", "height": "1980 mm", "rib_width": "38 mm",
        "ribs": { "even": { "count": 13, "first": "210 mm", "spacing": "420 mm" } },
        "openings": [{ "name": "hatch", "x": "2200 mm", "y": "780 mm", "length": "600 mm", "width": "500 mm" }] });
    let file = json!({ "battenbook": 2, "units": units, "body": body, "sheets": sheets });
    let mut project = Project::from_text(&file.to_string()).unwrap();
    project.set_words(words);
    calc::evaluate(&project).sheet("s1").unwrap().clone()
}

#[test]
fn every_language_says_every_message_with_the_same_values() {
    let english = english();
    for (tag, folder) in languages(&folder()).unwrap() {
        let language = english.read_beside(&tag, &folder).unwrap();
        let problems = english.problems_of(&language);
        assert!(problems.is_empty(), "{problems:#?}");
    }
}

/// Sections of standards, which keep their point in every language.
const SECTIONS: [&str; 11] = [
    "183.425", "183.455", "552.10", "240.4", "300.15", "314.29", "523.9", "690.7", "7.3", "7.5",
    "Y14.5",
];

/// The words of a message, with those that it chooses from.
fn words_of(pieces: &[Piece], found: &mut String) {
    for piece in pieces {
        match piece {
            Piece::Words(text) => found.push_str(text),
            Piece::Argument(_) => found.push(' '),
            Piece::Select(_, options) => {
                options.iter().for_each(|(_, pieces)| words_of(pieces, found));
            }
        }
    }
}

#[test]
fn figures_in_messages_are_written_as_the_language_writes_them() {
    let english = english();
    let mut with_comma = 0;
    for (tag, folder) in languages(&folder()).unwrap() {
        let language = english.read_beside(&tag, &folder).unwrap();
        let words = Words::load(english.table(&language)).unwrap();
        let sign = if words.figure("1.5".into()) == "1.5" { '.' } else { ',' };
        for text in &language.texts {
            let mut said = String::new();
            words_of(&text.pieces, &mut said);
            let figures = said.split(|letter: char| {
                !letter.is_ascii_alphanumeric() && letter != '.' && letter != ','
            });
            for figure in figures.map(|one| one.trim_end_matches(['.', ','])) {
                let inner = figure.find(['.', ',']).filter(|at| {
                    figure.as_bytes().get(at + 1).is_some_and(u8::is_ascii_digit)
                        && *at > 0
                        && figure.as_bytes().get(at - 1).is_some_and(u8::is_ascii_digit)
                });
                let is_grouped = sign == '.'
                    && figure.contains(',')
                    && figure.split(',').skip(1).all(|group| group.len() == 3);
                let is_section = SECTIONS.contains(&figure);
                let Some(at) = inner.filter(|_| !is_grouped && !is_section) else { continue };
                with_comma += usize::from(sign == ',');
                assert!(
                    figure[at..].starts_with(sign),
                    "{tag}/{}.ftl, {}: {figure}",
                    text.file,
                    text.name
                );
            }
        }
    }
    assert!(with_comma > 50, "only {with_comma} figures looked at");
}

#[test]
fn no_sentence_is_put_together_in_code() {
    let english = english();
    let made_up = Words::load(english.table(&english.made_up())).unwrap();
    for sheet in SHEETS {
        let kind = sheet.kind;
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

/// What the examples of the wiring sheets do not come to: inputs to be laid over the example, each with whether wire
/// and fuse are safe with them.
fn wiring() -> Vec<(&'static str, Json, bool)> {
    let run = |more: Json| {
        let mut run = json!({ "id": "r1", "from": "source", "to": "a", "length": "3 m", "conductor": "14 AWG" });
        run.as_object_mut().unwrap().extend(more.as_object().unwrap().clone());
        run
    };
    let lamp = |watts: &str| json!({ "at": "a", "model": "power", "value": watts });
    let one = |more: Json, watts: &str| json!({ "runs": [run(more)], "loads": [lamp(watts)], "rows": [] });
    let fork = |watts: &str, device: Json| {
        json!({ "runs": [
            { "id": "r1", "from": "source", "to": "a", "length": "1 m", "conductor": "8 AWG" },
            { "id": "r2", "from": "a", "to": "b", "length": "1 m", "conductor": "16 AWG", "device_rating": device } ],
            "loads": [lamp(watts), { "at": "b", "model": "resistance", "value": "12 ohm" }], "rows": [] })
    };
    let lights = json!({ "label": "left", "from": "source", "count": 4, "first": "7 ft", "spacing": "50 in",
        "model": "current", "value": "0.25 A", "device_rating": "8 A", "protects_itself": true });
    let leads = |positive: &str, negative: &str| {
        json!({ "at": "a", "label": "b", "model": "power", "value": "3 W", "count": 3,
            "positive_lead": positive, "negative_lead": negative })
    };
    vec![
        ("voltage_drop", json!({ "low_voltage": "10.5 V", "far_source": true }), true),
        (
            "voltage_drop",
            json!({ "conductor": "2.5 mm2", "bundled": 4, "air_temperature": "45 C" }),
            true,
        ),
        (
            "voltage_drop",
            json!({ "conductor": "18 AWG", "continuous": false, "in_insulation": true }),
            true,
        ),
        (
            "voltage_drop",
            json!({ "conductor": "auto mm2", "in_jacket": true, "insulation": "60 C" }),
            true,
        ),
        ("voltage_drop", json!({ "conductor": "0.009 ohm/m" }), true),
        (
            "voltage_drop",
            json!({ "power": null, "current": "3 A", "charging_voltage": "14.4 V" }),
            true,
        ),
        (
            "voltage_drop",
            json!({ "power": "300 W", "conductor": "0.02 ohm/m", "length": "1 m" }),
            false,
        ),
        (
            "voltage_drop",
            json!({ "power": "260 W", "conductor": "14 AWG", "length": "1 m", "low_voltage": "9 V" }),
            false,
        ),
        (
            "voltage_drop",
            json!({ "source_voltage": "51.2 V", "power": "4000 W", "length": "1 m" }),
            true,
        ),
        ("circuit", json!({ "low_voltage": "10.5 V", "slack": null, "continuous": false }), true),
        (
            "circuit",
            json!({ "bundled": 6, "in_jacket": true, "conductor_choices": ["10 AWG", "4 AWG"] }),
            true,
        ),
        (
            "circuit",
            one(json!({ "conductor": "4 AWG", "far_source": true, "fuse_block": false }), "300 W"),
            true,
        ),
        ("circuit", one(json!({ "device_rating": "2 A" }), "60 W"), false),
        ("circuit", one(json!({ "device_watts": "50 W", "device_rating": "6 A" }), "60 W"), false),
        ("circuit", one(json!({ "conductor": "0.02 ohm/m", "length": "1 m" }), "300 W"), false),
        ("circuit", one(json!({ "conductor": "16 AWG", "length": "30 m" }), "20 W"), true),
        (
            "circuit",
            one(
                json!({ "length": null, "route": { "from": { "x": "1 m", "y": "0 m" },
            "to": { "x": "2 m", "y": "1 m" }, "rise": "2 m" } }),
                "20 W",
            ),
            true,
        ),
        ("circuit", fork("300 W", json!("2 A")), true),
        ("circuit", fork("300 W", json!(null)), false),
        (
            "circuit",
            json!({ "rows": [lights], "runs": [run(json!({}))], "loads": [lamp("3 W")] }),
            true,
        ),
        (
            "circuit",
            json!({ "runs": [run(json!({}))], "rows": [],
            "loads": [leads("white", "blue"), leads("brown", "white"), leads("black", "black")] }),
            true,
        ),
    ]
}

#[test]
fn wiring_says_nothing_in_code_whatever_is_typed() {
    let english = english();
    let made_up = Words::load(english.table(&english.made_up())).unwrap();
    for (kind, over, is_safe) in wiring() {
        let sheet = SHEETS.iter().find(|sheet| sheet.kind == kind).unwrap();
        let mut inputs = example(kind);
        inputs.as_object_mut().unwrap().extend(over.as_object().unwrap().clone());
        let mut names = others(sheet, made_up);
        names.extend(["r1", "r2", "a", "b"].map(str::to_owned));
        for units in ["imperial", "metric"] {
            let report = evaluated_with(kind, &inputs, units, made_up)
                .unwrap_or_else(|faults| panic!("{over}: {faults:#?}"));
            assert_eq!(report.faults.is_empty(), is_safe, "{over}: {:?}", report.remarks);
            let mut untouched = BTreeSet::new();
            let mut look = |text: &str| {
                untouched.extend(plain_words(&without(text, &names)));
            };
            shown(&report, made_up, &mut look);
            report.faults.iter().for_each(|fault| look(&fault.message));
            assert!(untouched.is_empty(), "{over}: written in code: {untouched:?}");
        }
    }
}

/// What the example of the boards has no need to say: a body that tapers, nailers, a wide board with a lamp in it, nothing
/// priced or known of the screw, and boards that would hang loose.
#[test]
fn boards_that_go_another_way_are_said_in_the_language() {
    let english = english();
    let made_up = Words::load(english.table(&english.made_up())).unwrap();
    let ribs = json!({ "measured": ["300 mm", "900 mm", "1500 mm", "2100 mm", "2700 mm"] });
    let body = |more: Json| {
        let mut body =
            json!({ "length": "3 m", "width": "1 m", "rib_width": "38 mm", "ribs": ribs });
        body.as_object_mut().unwrap().extend(more.as_object().unwrap().clone());
        body
    };
    let inputs = |more: Json| {
        let mut inputs = json!({ "coverage": "130 mm", "stock": [{ "length": "3.2 m" }],
            "kerf": "3 mm", "start": "full" });
        inputs.as_object_mut().unwrap().extend(more.as_object().unwrap().clone());
        inputs
    };
    let opening = |x: &str, y: &str, width: &str| json!({ "openings": [{ "x": x, "y": y, "length": "100 mm", "width": width }] });
    let stations = json!({ "widths": [{ "x": "0 mm", "width": "1 m" },
        { "x": "2 m", "width": "1010 mm" }, { "x": "3 m", "width": "1005 mm" }] });
    let tapered = json!({ "species": "oak, red", "screws_across": "2", "thickness": "19 mm",
        "strip_thickness": "19 mm", "full_width": "136 mm", "start": "balanced" });
    let nailed = json!({ "stock": [{ "length": "2720 mm" }], "least_piece": "200 mm",
        "joint_stagger": "0 mm", "strip_thickness": "19 mm" });
    let wide = json!({ "coverage": "400 mm", "flange": "2 mm", "joint_price": 3 });
    let said = [
        (body(stations), inputs(tapered)),
        (body(json!({})), inputs(nailed)),
        (body(opening("1 m", "300 mm", "20 mm")), inputs(wide)),
        (body(json!({ "width": "1052 mm" })), inputs(json!({}))),
    ];
    let refused = [
        (body(opening("400 mm", "0 mm", "1 m")), inputs(json!({}))),
        (body(json!({})), inputs(json!({ "least_rip": "100 mm" }))),
        (body(json!({})), inputs(json!({ "stock": [{ "length": "500 mm" }] }))),
        (body(json!({})), inputs(json!({ "end_gap": "1 m", "run": "1500 mm" }))),
        (
            body(json!({})),
            inputs(
                json!({ "screw": "4 x 60 mm", "thickness": "19 mm", "strip_thickness": "19 mm" }),
            ),
        ),
    ];
    let report = |body: &Json, inputs: &Json| {
        let sheets = json!([{ "id": "s1", "kind": "boards", "inputs": inputs }]);
        let file = json!({ "battenbook": 2, "units": "metric", "body": body, "sheets": sheets });
        let mut project = Project::from_text(&file.to_string()).unwrap();
        project.set_words(made_up);
        calc::evaluate(&project).sheet("s1").unwrap().clone()
    };
    let mut untouched = BTreeSet::new();
    let mut nailers = 0;
    for (body, inputs) in &said {
        let report = report(body, inputs).unwrap();
        nailers += report.outcome.list("nailers").len();
        // What nobody named is a board, whatever the language.
        let mut look = |text: &str| untouched.extend(plain_words(&text.replace("board", "")));
        shown(&report, made_up, &mut look);
    }
    for (body, inputs) in &refused {
        for fault in report(body, inputs).unwrap_err() {
            untouched.extend(plain_words(&fault.message));
        }
    }
    assert!(untouched.is_empty(), "written in code: {untouched:?}");
    assert!(nailers > 0);
}

/// What the examples of the wet trades have no need to say: nothing priced, joints that move, cups without a limit, air
/// that forbids a coat or is not known, windows that are missed, nights that are worked through.
#[test]
fn filling_and_coating_another_way_is_said_in_the_language() {
    let english = english();
    let made_up = Words::load(english.table(&english.made_up())).unwrap();
    let evaluated = |kind: &str, inputs: &Json, others: &Json| {
        let mut sheets = vec![json!({ "id": "s1", "kind": kind, "inputs": inputs })];
        sheets.extend(others.as_array().unwrap().iter().cloned());
        let file = json!({ "battenbook": 2, "units": "imperial", "sheets": sheets });
        let mut project = Project::from_text(&file.to_string()).unwrap();
        project.set_words(made_up);
        calc::evaluate(&project).sheet("s1").unwrap().clone()
    };
    let gap = json!({ "length": "1 m", "width": "4 mm", "depth": "18 mm" });
    let hole = json!({ "diameter": "20 mm", "depth": "18 mm" });
    let wood = |wettest: u32| json!({ "species": "oak, red", "board_width": "90 mm", "wettest_percent": wettest });
    let fillings = [
        json!({ "gaps": [gap], "holes": [hole], "mix": { "a": 2, "b": 1 }, "wood": wood(14),
            "pour_rate": "20 ml/min" }),
        json!({ "gaps": vec![gap.clone(); 30], "mix": { "a": 2, "b": 1 }, "passes": 2, "wood": wood(20),
            "pot_life": { "time": "3 h", "at": "25 C" }, "temperature": "12 C",
            "containers": [{ "part": "kit", "size": "1 l" }] }),
        json!({ "gaps": [gap], "mix": { "by": "mass", "a": 2, "b": 1, "density_a": "1.1 kg/l",
            "density_b": "1 kg/l" }, "batch_limit": "500 ml", "cup_diameter": "80 mm" }),
    ];
    let area = json!({ "length": "2 m", "width": "1 m", "faces": 2 });
    let damp =
        json!({ "temperature": "2 C", "humidity_percent": 90, "surface_temperature": "-3 C" });
    let hot =
        json!({ "temperature": "34 C", "humidity_percent": 70, "surface_temperature": "33 C" });
    let mild =
        json!({ "temperature": "20 C", "humidity_percent": 40, "surface_temperature": "20 C" });
    let limits = json!({ "temperature_least": "10 C", "temperature_most": "30 C",
        "humidity_most_percent": 60, "moisture_most_percent": 12 });
    let coating = |air: &Json, night: &Json| {
        json!({ "areas": [area], "coats": 1, "spread_rate": "10 m2/l", "solids_percent": 40,
            "air": air, "night": night, "limits": limits, "moisture_percent": 20 })
    };
    let oil = json!({ "areas": vec![area.clone(); 8], "coats": 2, "finish_type": "penetrating",
        "spread_rate": "15 m2/l", "air": mild, "containers": [{ "size": "5 l" }] });
    let boards = json!({ "boards": [{ "length": "2 m", "width": "90 mm", "thickness": "18 mm" }],
        "coats": 2, "film": { "dry": "40 um", "solids_percent": 40 }, "air": mild, "night": damp,
        "limits": limits, "moisture_percent": 9 });
    let coatings = [
        coating(&damp, &mild),
        coating(&hot, &json!(null)),
        coating(&mild, &hot),
        oil.clone(),
        boards,
    ];
    let filler = json!({ "gaps": [gap], "mix": { "a": 2, "b": 1 }, "passes": 2,
        "times": { "work": "30 min", "prepare": "45 min", "wash": "1 h", "recoat_least": "3 h" } });
    let others = json!([{ "id": "f", "kind": "gap_fill", "inputs": filler },
        { "id": "c", "kind": "coating", "inputs": oil }]);
    let schedules = [
        json!({ "start": "8:00", "air": damp, "limits": limits, "steps": [{ "passes": "f" },
            { "coats": "c", "work": "1 h", "sand": "20 min", "recoat_most": "2 h" }] }),
        json!({ "start": "23:00", "steps": [{ "work": "1 h", "recoat_least": "1 h", "recoat_most": "2 h" },
            { "work": "90 min", "starts": "day 3 9:00", "batches": 2, "workable": "10 min" },
            { "label": "", "coats": "c", "work": "1 h" }, { "work": "1 h", "starts": "23:10" }] }),
        json!({ "start": "8:00", "hours": { "from": "8:00", "to": "12:00" }, "readings": [
            { "at": "6:00", "temperature": "5 C", "humidity_percent": 95, "surface_temperature": "3 C" },
            { "at": "14:00", "temperature": "20 C", "humidity_percent": 50, "surface_temperature": "20 C" }],
            "steps": [{ "work": "2 h", "recoat_least": "1 h" }, { "work": "2 h", "starts": "20:00" }] }),
    ];
    let none = json!([]);
    let all = fillings.iter().map(|inputs| ("gap_fill", inputs, &none));
    let all = all.chain(coatings.iter().map(|inputs| ("coating", inputs, &none)));
    let all = all.chain(schedules.iter().map(|inputs| ("schedule", inputs, &others)));
    let mut untouched = BTreeSet::new();
    for (kind, inputs, others) in all {
        let report = evaluated(kind, inputs, others).unwrap();
        let mut look = |text: &str| untouched.extend(plain_words(text));
        shown(&report, made_up, &mut look);
    }
    assert!(untouched.is_empty(), "written in code: {untouched:?}");
}

#[test]
fn another_language_changes_no_number_and_no_id() {
    let english = english();
    for (tag, folder) in languages(&folder()).unwrap() {
        let loaded = english.table(&english.read_beside(&tag, &folder).unwrap());
        let words = Words::load(loaded).unwrap();
        assert_eq!(Words::of(&tag).map(Words::tag), Some(words.tag()));
        for sheet in SHEETS {
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

/// What somebody left unnamed is called in the language; in outcomes it has one name whatever is spoken.
#[test]
fn what_was_not_named_is_named_in_the_language() {
    let folder = folder();
    let loaded = Catalogue::read("es", &folder.join("es")).unwrap();
    let spanish = Words::load(english().table(&loaded)).unwrap();
    let filler = json!({ "gaps": [{ "length": "1 m", "width": "3 mm", "depth": "18 mm" }],
        "mix": { "a": 2, "b": 1 }, "times": { "work": "30 min" } });
    let steps = json!([{ "passes": "f" }, { "work": "1 h" }]);
    let file = json!({ "battenbook": 2, "units": "metric", "sheets": [
        { "id": "f", "kind": "gap_fill", "inputs": filler },
        { "id": "s", "kind": "schedule", "inputs": { "start": "8:00", "steps": steps } }] });
    let told = |words: Words| {
        let mut project = Project::from_text(&file.to_string()).unwrap();
        project.set_words(words);
        let all = calc::evaluate(&project);
        let item = all.sheet("f").unwrap().as_ref().unwrap().buy[0].item.clone();
        let days = all.sheet("s").unwrap().as_ref().unwrap();
        let rows = days.tables[1].rows.iter().map(|row| row.cells[0].clone()).collect::<Vec<_>>();
        (item, rows, days.outcome.clone())
    };
    let ((item, rows, outcome), (in_spanish, named, same)) = (told(Words::ENGLISH), told(spanish));
    assert_eq!((item.as_str(), in_spanish.as_str()), ("filler, part A", "masilla, parte A"));
    assert_eq!([rows, named], [["filler", "step 2"], ["masilla", "paso 2"]]);
    assert_eq!(outcome, same);
}

/// Numbers as CLDR has them: a comma before the decimals in Spanish, a point in English.
#[test]
fn figures_have_the_decimal_sign_of_their_language() {
    let english = english();
    let spanish = Catalogue::read("es", &folder().join("es")).unwrap();
    let words = Words::load(english.table(&spanish)).unwrap();
    let style = Style { words, ..Style::new(UnitSystem::Metric) };
    assert_eq!(style.length(metres(12.345)), "12,35 m");
    assert_eq!(style.mass(Mass::new::<kilogram>(3.872)), "3,9 kg");
    let poured = Volume::new::<liter>(1.141);
    assert_eq!(style.volume_needed_both(poured), "1,15 l (1,21 qt)");
    assert_eq!(style.poured_into_one(poured, poured).level, "2,3 l");
    // A can keeps the size on its label, as it is written here.
    let imperial = Style { words, ..Style::new(UnitSystem::Imperial) };
    assert_eq!(imperial.container(Volume::new::<liter>(2.5)), "2,5 l");
    assert_eq!(Style::new(UnitSystem::Metric).length(metres(12.345)), "12.35 m");
    // Neither a name nor a sentence's end has a decimal sign in it.
    assert_eq!(words.figure("A 1. B.".to_owned()), "A 1. B.");
    let said = style.say(calc::words::common::ListMiddle { before: "mix v1.5", rest: "2.5 l" });
    assert_eq!(said, "mix v1.5, 2,5 l");
    // What is read off such a page can be typed again.
    let typed = Measure::read("12,35 m", &LENGTH, None).unwrap();
    assert!((typed.si() - 12.35).abs() < 1e-12);
}

/// Figures of wiring that stand by themselves: answers, cells of tables, the working, what stands in drawings. Texts name
/// sections of standards too, which are no figures.
#[test]
fn figures_of_wiring_have_the_decimal_sign_of_their_language() {
    let english = english();
    let spanish = Catalogue::read("es", &folder().join("es")).unwrap();
    let words = Words::load(english.table(&spanish)).unwrap();
    let has_point = |text: &str| {
        let letters: Vec<char> = text.chars().collect();
        let is_digit = |at: usize| letters.get(at).is_some_and(char::is_ascii_digit);
        (1..letters.len()).any(|at| letters[at] == '.' && is_digit(at - 1) && is_digit(at + 1))
    };
    let mut commas = 0;
    for kind in ["voltage_drop", "circuit"] {
        for units in ["imperial", "metric"] {
            let report = evaluated(kind, units, words);
            let mut texts: Vec<&String> =
                report.answers.iter().map(|answer| &answer.text).collect();
            texts.extend(
                report.tables.iter().flat_map(|table| &table.rows).flat_map(|row| &row.cells),
            );
            texts.extend(
                report.working.iter().flat_map(|step| [&step.formula, &step.numbers, &step.result]),
            );
            for shape in report.drawings.iter().flat_map(|drawing| &drawing.shapes) {
                if let Shape::Text { text, .. } | Shape::Dimension { text, .. } = shape {
                    texts.push(text);
                }
            }
            commas += texts.iter().filter(|text| text.contains(',')).count();
            let pointed: Vec<&&String> = texts.iter().filter(|text| has_point(text)).collect();
            assert!(pointed.is_empty(), "{kind}: {pointed:?}");
        }
    }
    assert!(commas > 100, "{commas}");
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
    /// Keys of names; those of a circuit's runs and nodes among them.
    const NAMES: &[&str] =
        &["name", "label", "material", "product", "screw", "id", "from", "to", "at"];
    fn names(of: &Json, found: &mut Vec<String>) {
        match of {
            Json::Object(fields) => fields.iter().for_each(|(key, value)| match value {
                Json::String(name) if NAMES.contains(&key.as_str()) => found.push(name.clone()),
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
    // A name that has another one in it goes first.
    calc::sorting::sort_by_key(&mut found, |name| std::cmp::Reverse(name.len()));
    found
}

/// A text without the names in it, nor a name at its end that was cut short to fit.
fn without(text: &str, names: &[String]) -> String {
    let is_begun = |begun: &str| names.iter().any(|name| name.starts_with(begun));
    let text = match text.strip_suffix('…') {
        Some(begun) if is_begun(begun) => "",
        Some(begun) => match begun.rsplit_once(' ') {
            Some((whole, last)) if is_begun(last) => whole,
            _ => begun,
        },
        None => text,
    };
    names.iter().fold(text.to_owned(), |rest, name| rest.replace(name, ""))
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
    for task in &report.tasks {
        texts.extend([task.piece.as_str(), &task.text, &task.note]);
        if let Figure::Amount(amount) = &task.figure {
            texts.push(amount);
        }
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

/// What is shown of a report but for its working, which keeps all digits.
fn shown_at_first(mut report: Report, look: &mut impl FnMut(&str)) {
    report.working.clear();
    // What others say, in their own figures.
    report.cautions.clear();
    shown(&report, Words::ENGLISH, look);
}

/// Figures in a text that nobody reads off a scale, a thermometer, a meter or a clock.
fn too_fine(text: &str, near_dew: bool) -> Vec<String> {
    let split = |c: char| c.is_whitespace() || "()·;,–+".contains(c);
    let tokens: Vec<&str> = text.split(split).filter(|token| !token.is_empty()).collect();
    let mut found = Vec::new();
    for (at, token) in tokens.iter().enumerate() {
        let token = token.trim_end_matches('.');
        let off_line = |minutes: &str| minutes.parse::<u32>().is_ok_and(|minutes| minutes % 5 != 0);
        // 12:37
        if token.split_once(':').is_some_and(|(hours, minutes)| {
            hours.parse::<u32>().is_ok() && minutes.len() == 2 && off_line(minutes)
        }) {
            found.push(token.to_owned());
        }
        let Ok(number) = token.parse::<f64>() else { continue };
        let number = number.abs();
        let decimals = token.split_once('.').map_or(0, |(_, decimals)| decimals.len());
        let unit = tokens.get(at + 1).map_or("", |unit| unit.trim_end_matches([':', '.']));
        let most = match unit {
            "lb" if number < 10.0 => 2,
            "kg" if number < 5.0 => 2,
            // Above the dew point a tenth counts.
            "°F" | "°C" if near_dew && number < 10.0 => 1,
            // A small part of a mix keeps the ratio.
            "g" | "ml" if number < 50.0 => {
                if number < 1.0 {
                    2
                } else {
                    1
                }
            }
            "lb" | "kg" | "°F" | "°C" | "g" | "ml" => 0,
            "V" if number < 100.0 => 2,
            // Nobody measures one small hole.
            "oz" | "fl" if number < 1.0 => 4,
            "oz" | "fl" | "l" | "qt" | "gal" => 2,
            _ => usize::MAX,
        };
        // From an hour up to five minutes: `2 h 25 min`.
        let hours = at >= 2 && tokens[at - 1] == "h";
        let minutes = unit == "min" && (hours || number >= 60.0) && off_line(token);
        if decimals > most || minutes {
            found.push(format!("{token} {unit}"));
        }
    }
    found
}

#[test]
fn what_is_too_fine_is_found() {
    for text in
        ["12:37 pm", "3903.9 lb left", "71.3 °F", "2 h 37 min", "71 min", "12.345 V", "129.4 g."]
    {
        assert_eq!(too_fine(text, true).len(), 1, "{text}");
    }
    for text in [
        "12:35 pm",
        "3904 lb left",
        "8.5 lb",
        "71 °F",
        "2 h 35 min",
        "41 min",
        "12.34 V",
        "1.2 kg/m³",
    ] {
        assert_eq!(too_fine(text, false), Vec::<String>::new(), "{text}");
    }
}

#[test]
fn figures_are_as_fine_as_the_hand_has_them() {
    let mut found = BTreeSet::new();
    for units in ["imperial", "metric"] {
        for sheet in SHEETS {
            let near_dew = ["coating", "schedule"].contains(&sheet.kind);
            shown_at_first(evaluated(sheet.kind, units, Words::ENGLISH), &mut |text| {
                let figures = too_fine(text, near_dew).into_iter();
                found.extend(
                    figures.map(|figure| format!("{} {units}: {figure} in {text}", sheet.kind)),
                );
            });
        }
        for (kind, over, _) in wiring() {
            let mut inputs = example(kind);
            inputs.as_object_mut().unwrap().extend(over.as_object().unwrap().clone());
            shown_at_first(
                evaluated_with(kind, &inputs, units, Words::ENGLISH).unwrap(),
                &mut |text| {
                    found.extend(
                        too_fine(text, false)
                            .into_iter()
                            .map(|figure| format!("{kind}: {figure} in {text}")),
                    );
                },
            );
        }
    }
    assert!(found.is_empty(), "{found:#?}");
}

/// Words of plain letters, which the made-up language has none of; units and functions are the same in every language.
fn plain_words(text: &str) -> Vec<String> {
    const UNITS: &[&str] = &[
        "in", "ft", "mm", "m", "gal", "qt", "fl", "oz", "ml", "lb", "kg", "min", //
        "Btu", "cfm", "Wh", "MJ", "Pa", "lm", "lx", "fc", "cd", "cos", "sin", "ln", "MPa",
        "mil", //
        "AWG", "Ah", "ohm", "kft", "km", //
    ];
    text.split(|letter: char| !letter.is_alphabetic())
        .filter(|word| word.len() > 1 && word.chars().all(|letter| letter.is_ascii_alphabetic()))
        .filter(|word| !UNITS.contains(word))
        .map(str::to_owned)
        .collect()
}
