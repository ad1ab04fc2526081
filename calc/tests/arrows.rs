//! Which part may know which: trades know no sheets, sheets no project, the report no kind of sheet, the pages no kind by its name.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, missing_docs)]

use std::path::{Path, PathBuf};

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
    "ask", "body", "cutting", "drawing", "fault", "formula", "lists", "node", "outcome",
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

#[test]
fn it_would_be_seen() {
    assert!(!named(&["project"], &["report"]).is_empty());
    assert!(!named(&["sheet"], &["report"]).is_empty());
}
