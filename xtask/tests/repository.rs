//! Rules of this repository that no compiler checks.

use std::path::{Path, PathBuf};
use xtask::workspace;

fn files(folder: &Path, endings: &[&str], found: &mut Vec<PathBuf>) {
    for entry in std::fs::read_dir(folder).into_iter().flatten().flatten() {
        let path = entry.path();
        if path.is_dir() {
            files(&path, endings, found);
        } else if path
            .extension()
            .is_some_and(|found| endings.iter().any(|ending| found == *ending))
        {
            found.push(path);
        }
    }
}

fn texts(folders: &[&str], endings: &[&str]) -> Vec<(PathBuf, String)> {
    let mut found = Vec::new();
    for folder in folders {
        files(&workspace::root().join(folder), endings, &mut found);
    }
    assert!(!found.is_empty(), "no file to check in {folders:?}");
    found
        .into_iter()
        .map(|path| (path.clone(), std::fs::read_to_string(path).unwrap_or_default()))
        .collect()
}

#[test]
fn every_source_file_opens_with_what_it_is_for() {
    for (path, text) in texts(&["app", "calc", "tests", "xtask"], &["rs"]) {
        assert!(text.starts_with("//! "), "{} starts with a line of //!", path.display());
    }
}

/// The content security policy blocks them; classes and `style:property=` work. A component's own `style` is none.
#[test]
fn no_style_attributes_in_the_app() {
    for (path, text) in texts(&["app/src"], &["rs"]) {
        for (at, _) in text.match_indices(" style=") {
            let tag = text[..at].rsplit('<').next().unwrap();
            let on_element = tag.starts_with(|first: char| first.is_ascii_lowercase());
            let line = text[..at].lines().count();
            assert!(!on_element, "{}:{line} sets a style attribute", path.display());
        }
    }
}

#[test]
fn the_policy_is_strict() {
    let page = std::fs::read_to_string(workspace::root().join("index.html")).unwrap();
    let policy =
        page.split("content=\"default-src").nth(1).and_then(|rest| rest.split('"').next()).unwrap();
    assert!(policy.starts_with(" 'none';"), "what is not named is forbidden");
    for loose in ["unsafe-inline", "'unsafe-eval'", "http:", "https:", "*"] {
        assert!(!policy.contains(loose), "{loose} in the policy");
    }
}

/// The site asks no other host for anything. A namespace is a name, not an address.
#[test]
fn the_site_names_no_other_origin() {
    let page = (
        PathBuf::from("index.html"),
        std::fs::read_to_string(workspace::root().join("index.html")).unwrap(),
    );
    let parts = texts(&["app/assets", "style"], &["css", "js", "svg", "webmanifest"]);
    for (path, text) in parts.into_iter().chain([page]) {
        let text = text.replace("http://www.w3.org/2000/svg", "");
        assert!(
            !text.contains("http://") && !text.contains("https://") && !text.contains("url(//"),
            "{}",
            path.display()
        );
    }
}
