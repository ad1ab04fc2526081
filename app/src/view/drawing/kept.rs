//! The drawings of all sheets' examples, kept as pictures that a reviewer can open: a change of a drawing is seen, not read.
//! `cargo xtask bless` draws them anew.

use std::path::PathBuf;

use calc::drawing::Drawing;
use calc::project::Project;
use calc::sheet::SHEETS;

use super::svg;

/// Width of a phone's page. [px]
const PAGE: f64 = 358.0;

/// The examples as a project of all sheets, under their kinds as ids, for those that take from others.
pub(super) fn project(units: &str) -> Project {
    let sheets: Vec<String> = SHEETS
        .iter()
        .map(|sheet| {
            format!(r#"{{ "id": "{0}", "kind": "{0}", "inputs": {1} }}"#, sheet.kind, sheet.example)
        })
        .collect();
    let body = r#"{ "length": "5480 mm", "width": "2060 mm", "height": "1980 mm", "rib_width": "38 mm",
        "ribs": { "even": { "count": 13, "first": "210 mm", "spacing": "420 mm" } },
        "openings": [{ "name": "hatch", "x": "2200 mm", "y": "780 mm", "length": "600 mm", "width": "500 mm" }] }"#;
    let file = format!(
        r#"{{ "battenbook": 1, "units": "{units}", "body": {body}, "sheets": [{}] }}"#,
        sheets.join(",")
    );
    Project::from_text(&file).unwrap()
}

/// The drawing as a file of its own: in the colours of the page by day.
fn file(drawing: &Drawing) -> String {
    let picture = svg(drawing, PAGE, 1);
    let lines = picture.replacen("<svg", "<svg class=\"drawing\"", 1).replace("><", ">\n<");
    format!(
        "<?xml-stylesheet type=\"text/css\" href=\"../../../style/40-drawing.css\"?>\n{lines}\n"
    )
}

#[test]
fn drawings_are_as_reviewed() {
    let folder = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests/drawings");
    let anew = std::env::var("INSTA_UPDATE").is_ok_and(|update| update == "always");
    let (mut known, mut changed) = (Vec::new(), Vec::new());
    for units in ["imperial", "metric"] {
        let all = calc::evaluate(&project(units));
        for sheet in SHEETS {
            let report = all.sheet(sheet.kind).unwrap().as_ref().unwrap();
            for (index, drawing) in report.drawings.iter().chain(&report.templates).enumerate() {
                let name = format!("{}_{}_{units}.svg", sheet.kind, index + 1);
                let (path, picture) = (folder.join(&name), file(drawing));
                if anew {
                    std::fs::create_dir_all(&folder).unwrap();
                    std::fs::write(&path, &picture).unwrap();
                } else if std::fs::read_to_string(&path).ok().as_ref() != Some(&picture) {
                    changed.push(name.clone());
                }
                known.push(name);
            }
        }
    }
    assert!(changed.is_empty(), "look at these, then `cargo xtask bless`: {changed:?}");
    // None is kept of a drawing that has gone.
    let kept = std::fs::read_dir(&folder).unwrap().map(|entry| entry.unwrap().file_name());
    let gone: Vec<_> =
        kept.filter(|name| !known.iter().any(|known| name == known.as_str())).collect();
    assert!(gone.is_empty(), "take these out: {gone:?}");
}
