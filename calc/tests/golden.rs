//! Golden reports: each sheet's example, worked out and written down in full, to be reviewed as a diff.
//! `cargo xtask bless` writes them anew.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, missing_docs)]

use std::collections::HashMap;
use std::collections::hash_map::Entry;
use std::fmt::Write as _;

use calc::project::Project;
use calc::quantity::{Style, UnitSystem};
use calc::report::{Figure, Report};
use calc::sheet::SHEETS;
use serde_json::{Value as Json, json};

#[test]
fn reports_are_as_reviewed() {
    let mut settings = insta::Settings::clone_current();
    settings.set_snapshot_path("golden");
    settings.set_prepend_module_to_snapshot(false);
    settings.set_omit_expression(true);
    settings.bind(|| {
        let mut outcomes = HashMap::new();
        for units in ["imperial", "metric"] {
            // One project with all sheets, under their kinds as ids, for those that take from others.
            let sheets: Vec<Json> = SHEETS
                .iter()
                .map(|sheet| {
                    let inputs: Json = serde_json::from_str(sheet.example).unwrap();
                    json!({ "id": sheet.kind, "kind": sheet.kind, "inputs": inputs })
                })
                .collect();
            let file = json!({ "battenbook": 1, "units": units, "body": body(), "sheets": sheets });
            let evaluation = calc::evaluate(&Project::from_text(&file.to_string()).unwrap());
            for sheet in SHEETS {
                let report = evaluation.sheet(sheet.kind).unwrap().as_ref().unwrap();
                insta::assert_snapshot!(format!("{}_{units}", sheet.kind), written(report));
                // The numbers are the same in both.
                let outcome = format!("{:#}", Json::from(&report.outcome));
                match outcomes.entry(sheet.kind) {
                    Entry::Vacant(first) => {
                        insta::assert_snapshot!(format!("{}_outcome", sheet.kind), outcome);
                        first.insert(outcome);
                    }
                    Entry::Occupied(first) => {
                        assert_eq!(*first.get(), outcome, "{} in {units}", sheet.kind);
                    }
                }
            }
        }
    });
}

fn body() -> Json {
    json!({ "length": "5480 mm", "width": "2060 mm", "height": "1980 mm", "rib_width": "38 mm",
        "ribs": { "even": { "count": 13, "first": "210 mm", "spacing": "420 mm" } },
        "openings": [{ "name": "hatch", "x": "2200 mm", "y": "780 mm", "length": "600 mm", "width": "500 mm" }] })
}

/// A report as text, all of it.
fn written(report: &Report) -> String {
    let mut out = String::new();
    for answer in &report.answers {
        let _ = writeln!(out, "# {}: {}  {}", answer.label, answer.text, answer.note);
    }
    for remark in &report.remarks {
        let _ = writeln!(out, "{:?}: {}", remark.weight, remark.text);
    }
    for table in &report.tables {
        let _ = writeln!(out, "\n[{}]\n{}", table.title, table.heads.join(" | "));
        for row in &table.rows {
            let chosen = if row.chosen { " <-" } else { "" };
            let _ = writeln!(out, "{}{chosen}", row.cells.join(" | "));
        }
    }
    for list in &report.checks {
        let _ = writeln!(out, "\nto tick off: {}", list.title);
        for line in &list.lines {
            let sign = if line.warns { " !" } else { "" };
            let _ = writeln!(out, "- {} /{sign} {}   ({})", line.text, line.note, line.key);
        }
    }
    for task in &report.tasks {
        let figure = match &task.figure {
            Figure::Tape(length) => format!("{length:?}"),
            Figure::Amount(text) => text.clone(),
        };
        let _ = writeln!(
            out,
            "at the bench: {} | {} | {figure} | {} ({})",
            task.piece, task.text, task.note, task.key
        );
    }
    for offer in &report.offers {
        let _ = writeln!(out, "\noffer: {} -> {}", offer.label, offer.kind);
        for (path, text) in &offer.inputs {
            let _ = writeln!(out, "{path} = {text}");
        }
    }
    for strip in &report.marks {
        let _ = writeln!(
            out,
            "\nmarks on {} ({})",
            strip.title(Style::new(UnitSystem::Imperial)),
            strip.id
        );
        for mark in &strip.marks {
            let _ = writeln!(out, "{:?} {} {} ({})", mark.at, mark.label, mark.note, mark.id);
        }
    }
    let _ = writeln!(out, "\nworking");
    for step in &report.working {
        let _ = writeln!(
            out,
            "{}: {} = {} = {}   [{}]",
            step.name, step.formula, step.numbers, step.result, step.source
        );
    }
    let _ = writeln!(out, "\ncautions");
    for caution in &report.cautions {
        let _ = writeln!(out, "- {} [{}]", caution.text, caution.source);
    }
    for line in &report.buy {
        let _ = writeln!(
            out,
            "buy {} {} | {} | {} | {:?} ({}; needed {})",
            line.quantity,
            line.unit,
            line.item,
            line.spec,
            line.cost,
            line.id.of_sheet("SHEET"),
            line.needed
        );
    }
    for line in &report.cut {
        let pieces: Vec<String> =
            line.pieces.iter().map(|p| format!("{} {:?} ({})", p.label, p.length, p.id)).collect();
        let id = line.id.text();
        let _ = writeln!(out, "cut {} x {} ({id}): {}", line.count, line.stock, pieces.join(", "));
    }
    for taken in &report.from_body {
        let _ = writeln!(out, "from the body: {} = {}", taken.field, taken.text);
    }
    // What they look like is kept as pictures in `app/tests/drawings`.
    for drawing in &report.templates {
        let _ = writeln!(out, "\ntemplate {:?}: {}", drawing.title, drawing.words);
    }
    for drawing in &report.drawings {
        let _ = writeln!(out, "\ndrawing {:?}: {}", drawing.title, drawing.words);
    }
    out
}
