//! Which part may know which: trades know no sheets, sheets no project, the report no kind of sheet, the pages no kind by its name.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, missing_docs)]

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

use calc::ask::{Ask, Kind};

/// What formulas, tables and solvers stand in.
const TRADES: &[&str] = &[
    "carpentry",
    "coating",
    "electrical",
    "energy",
    "fastening",
    "light",
    "mass",
    "opening",
    "thermal",
];
/// What sheets are made with.
const TOOLS: &[&str] = &[
    "ask", "body", "cutting", "drawing", "fault", "formula", "handoff", "lists", "node", "outcome",
    "quantity", "reader", "report", "sorting", "source", "text", "words",
];

fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

/// The files of a part: `name.rs`, and all in `name/`.
fn files(of: &Path, found: &mut Vec<PathBuf>) {
    let file = of.with_extension("rs");
    if file.is_file() {
        found.push(file);
    }
    let Ok(entries) = std::fs::read_dir(of) else { return };
    for entry in entries {
        let path = entry.unwrap().path();
        if path.is_dir() {
            let mut inner = Vec::new();
            files(&path, &mut inner);
            found
                .extend(inner.into_iter().filter(|file| !found.contains(file)).collect::<Vec<_>>());
        } else if path.extension().is_some_and(|ending| ending == "rs") && !found.contains(&path) {
            found.push(path);
        }
    }
}

/// The lines of code of a file, without comments and tests.
fn code(file: &Path) -> Vec<String> {
    if file.file_stem().is_some_and(|name| name == "tests" || name == "testing") {
        return Vec::new();
    }
    let text = std::fs::read_to_string(file).unwrap();
    let code = text.split("#[cfg(test)]\nmod tests").next().unwrap_or_default();
    code.lines().filter(|line| !line.trim_start().starts_with("//")).map(str::to_owned).collect()
}

/// Where a part names one that it may not know.
fn named(parts: &[&str], not: &[&str]) -> Vec<String> {
    let mut found = Vec::new();
    for part in parts {
        let mut all = Vec::new();
        files(&root().join("src").join(part), &mut all);
        assert!(!all.is_empty(), "there is no {part}");
        for file in all {
            for line in code(&file) {
                if not.iter().any(|not| line.contains(&format!("crate::{not}"))) {
                    found.push(format!(
                        "{}: {}",
                        file.strip_prefix(root()).unwrap().display(),
                        line.trim()
                    ));
                }
            }
        }
    }
    found
}

fn holds(found: &[String]) {
    assert!(found.is_empty(), "{}", found.join("\n"));
}

#[test]
fn trades_know_no_sheets() {
    holds(&named(TRADES, &["sheet", "project", "report", "lists", "ask", "cutting"]));
}

#[test]
fn tools_know_no_sheets_and_no_project() {
    holds(&named(TOOLS, &["sheet", "project"]));
}

#[test]
fn sheets_know_no_project() {
    holds(&named(&["sheet"], &["project"]));
}

/// But for the one place that has an editor for a kind, and the list of what is aboard.
#[test]
fn pages_know_no_kind_by_name() {
    let mut all = Vec::new();
    files(&root().join("../app/src"), &mut all);
    let mut found = Vec::new();
    for file in all.iter().filter(|file| !file.ends_with("view/editors.rs")) {
        for line in code(file) {
            for sheet in calc::sheet::SHEETS {
                let name = format!("\"{}\"", sheet.kind);
                // The name of a list of ticks, older than the sheets' kinds.
                if line.contains(&name) && !line.contains("const BOARDS") {
                    found.push(format!("{}: {}", file.display(), line.trim()));
                }
            }
        }
    }
    holds(&found);
}

/// The kinds of sheets that asks name.
fn kinds_named(asks: &[&Ask], found: &mut BTreeSet<&'static str>) {
    for ask in asks {
        match ask.kind {
            Kind::SheetOf(kinds) => found.extend(kinds.split(' ')),
            Kind::Group(of) | Kind::Either(of) | Kind::Rows { asks: of, .. } => {
                kinds_named(of, found)
            }
            _ => {}
        }
    }
}

/// What a sheet hangs on: another's result, or what that hands over before it is worked out.
#[derive(Clone, Copy, PartialEq)]
enum Hangs {
    Result(&'static str),
    Ahead(&'static str),
}

fn hangs_on(what: Hangs) -> Vec<Hangs> {
    let (Hangs::Result(kind) | Hangs::Ahead(kind)) = what;
    let mut named = BTreeSet::new();
    kinds_named(calc::sheet::find(kind).unwrap().asks, &mut named);
    let of = named.into_iter().map(|kind| match calc::sheet::find(kind).unwrap().ahead {
        Some(_) => Hangs::Ahead(kind),
        None => Hangs::Result(kind),
    });
    // From its inputs alone: nothing that is handed ahead hangs on anything else that is.
    of.filter(|of| matches!((what, of), (Hangs::Result(_), _) | (_, Hangs::Result(_)))).collect()
}

fn on_the_way(what: Hangs, way: &mut Vec<Hangs>) -> bool {
    if way.contains(&what) {
        return true;
    }
    way.push(what);
    let ring = hangs_on(what).into_iter().any(|next| on_the_way(next, way));
    way.pop();
    ring
}

/// So each sheet is worked out once, when it is first asked for, whatever is typed.
#[test]
fn sheets_form_no_ring() {
    for sheet in calc::sheet::SHEETS {
        assert!(!on_the_way(Hangs::Result(sheet.kind), &mut Vec::new()), "{}", sheet.kind);
        let mut named = BTreeSet::new();
        kinds_named(sheet.asks, &mut named);
        // What takes the weight of all lists buys nothing, and nothing hangs on it.
        assert!(!named.contains("axles"), "{}", sheet.kind);
    }
    let mut of_solar = BTreeSet::new();
    kinds_named(calc::sheet::find("solar").unwrap().asks, &mut of_solar);
    assert_eq!(of_solar, BTreeSet::from(["energy"]));
    assert!(hangs_on(Hangs::Result("energy")).contains(&Hangs::Ahead("solar")));
}

#[test]
fn it_would_be_seen() {
    assert!(!named(&["project"], &["report"]).is_empty());
    assert!(!named(&["sheet"], &["report"]).is_empty());
}
