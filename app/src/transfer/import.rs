//! Files as projects. A file is treated as hostile: limits first, and nothing kept is ever replaced.

use std::fmt;

use calc::project::{LoadError, MAX_BYTES, Node, Project};
use wasm_bindgen::prelude::*;

use super::{names, platform};
use crate::storage::{SaveError, Store, new_id};

/// The field that tells a file of many projects, with the version of that format.
pub(super) const COLLECTION_KEY: &str = "battenbook_collection";

/// The largest file that is read: more than all projects that a browser can keep. [bytes]
pub const MAX_IMPORT_BYTES: usize = 12_000_000;

/// The most projects in one file.
pub const MOST_PROJECTS: usize = 500;

/// The most sheets in one project.
pub const MOST_SHEETS: usize = 500;

/// What a file holds.
#[derive(Clone, Debug, PartialEq)]
pub enum Import {
    /// One project.
    One(Project),
    /// A file of many.
    Many {
        /// Those that can be read.
        projects: Vec<Project>,
        /// Those that cannot.
        refused: Vec<Refused>,
    },
}

/// A project of a file that cannot be read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Refused {
    /// Its place in the file, from 1.
    pub number: usize,
    /// Its name, where it has one.
    pub name: String,
    /// Why.
    pub reason: Refusal,
}

/// Why a project of a file is not taken.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Refusal {
    /// It cannot be read.
    Load(LoadError),
    /// More sheets than `MOST_SHEETS`.
    TooManySheets {
        /// How many.
        count: usize,
    },
}

/// Why a file is not taken.
#[derive(Clone, Debug, PartialEq)]
pub enum ImportError {
    /// Larger than `MAX_IMPORT_BYTES`.
    TooLarge {
        /// Its size. [bytes]
        bytes: f64,
    },
    /// The browser could not read it.
    Unreadable,
    /// It is no project file that can be taken.
    Project(Refusal),
    /// A file of many projects, written by a newer program.
    CollectionTooNew,
    /// More projects than `MOST_PROJECTS`.
    TooMany {
        /// How many.
        count: usize,
    },
}

/// A project that was imported and kept.
#[derive(Clone, Debug, PartialEq)]
pub struct Imported {
    /// The project, with the id under which it is kept.
    pub project: Project,
    /// The revision for its next save.
    pub revision: u64,
}

impl fmt::Display for Refusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Load(error) => error.fmt(f),
            Self::TooManySheets { count } => {
                f.write_str("the project has ")?;
                count.fmt(f)?;
                f.write_str(" sheets; at most ")?;
                MOST_SHEETS.fmt(f)?;
                f.write_str(" are taken")
            }
        }
    }
}

impl fmt::Display for ImportError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("Nothing was imported: ")?;
        match self {
            Self::TooLarge { bytes } => {
                f.write_str("the file has ")?;
                (*bytes as u64).fmt(f)?;
                f.write_str(" bytes; at most ")?;
                MAX_IMPORT_BYTES.fmt(f)?;
                f.write_str(" are read. A project file is far smaller; is it the right file?")
            }
            Self::Unreadable => f.write_str("the browser could not read the file. Choose it again."),
            Self::Project(refusal) => {
                refusal.fmt(f)?;
                f.write_str(".")
            }
            Self::CollectionTooNew => f.write_str(
                "the file was written by a newer version of Battenbook. Reload to get that version, and import it again.",
            ),
            Self::TooMany { count } => {
                f.write_str("the file has ")?;
                count.fmt(f)?;
                f.write_str(" projects; at most ")?;
                MOST_PROJECTS.fmt(f)?;
                f.write_str(" are taken. Import them from several files.")
            }
        }
    }
}

/// Reads the text of a file.
///
/// # Errors
/// `ImportError` where the file as a whole cannot be taken.
pub fn read(text: &str) -> Result<Import, ImportError> {
    if text.len() > MAX_IMPORT_BYTES {
        return Err(ImportError::TooLarge { bytes: text.len() as f64 });
    }
    // The reader of JSON refuses what is nested deeper than 128 levels.
    let document: Option<Node> =
        serde_json::from_str(text.strip_prefix('\u{feff}').unwrap_or(text)).ok();
    let version = document.as_ref().and_then(|document| document.get(COLLECTION_KEY));
    match version.map(Node::as_u64) {
        None => one(text).map(Import::One).map_err(ImportError::Project),
        Some(Some(1)) => many(document.as_ref().and_then(|document| document.get("projects"))),
        Some(Some(2..)) => Err(ImportError::CollectionTooNew),
        Some(_) => Err(ImportError::Project(Refusal::Load(LoadError::NoVersion))),
    }
}

/// Reads a chosen file, its size first, and calls back with what it holds.
pub fn read_file(file: &web_sys::File, done: impl FnOnce(Result<Import, ImportError>) + 'static) {
    let bytes = file.size();
    if bytes > MAX_IMPORT_BYTES as f64 {
        done(Err(ImportError::TooLarge { bytes }));
        return;
    }
    let read = move |text: Option<JsValue>| {
        done(match text.and_then(|text| text.as_string()) {
            Some(text) => read(&text),
            None => Err(ImportError::Unreadable),
        });
    };
    platform::settle(&file.text(), Box::new(read));
}

/// Keeps an imported project beside what is there already: under its own id where that is free and
/// fit for an address, else under a new one.
///
/// # Errors
/// As `Store::save`.
pub fn keep(store: Store, mut project: Project) -> Result<Imported, SaveError> {
    let there = project.id().to_owned();
    if !is_fit(&there) || store.has(&there) {
        project.set_id(&new_id());
    }
    let revision = store.save(&project, 0)?;
    // What can be looked at beside the other is noted, so that the two can be compared.
    if project.id() != there && is_fit(&there) && !store.is_deleted(&there) {
        store.set_received(project.id(), &there);
    }
    Ok(Imported { project, revision })
}

fn many(projects: Option<&Node>) -> Result<Import, ImportError> {
    let Some(Node::Array(nodes)) = projects else {
        return Err(ImportError::Project(Refusal::Load(LoadError::NoVersion)));
    };
    if nodes.len() > MOST_PROJECTS {
        return Err(ImportError::TooMany { count: nodes.len() });
    }
    let mut projects = Vec::new();
    let mut refused = Vec::new();
    for (index, node) in nodes.iter().enumerate() {
        // Through its text again: one way in, with all of its limits.
        let text = serde_json::to_string_pretty(node).unwrap_or_default();
        match one(&text) {
            Ok(project) => projects.push(project),
            Err(reason) => {
                let name = node.get("name").and_then(Node::as_str).unwrap_or_default();
                refused.push(Refused { number: index + 1, name: names::clean(name), reason });
            }
        }
    }
    Ok(Import::Many { projects, refused })
}

fn one(text: &str) -> Result<Project, Refusal> {
    let mut project = Project::from_text(text).map_err(Refusal::Load)?;
    let count = project.sheets().count();
    if count > MOST_SHEETS {
        return Err(Refusal::TooManySheets { count });
    }
    let name = names::clean(project.name());
    if name != project.name() {
        project.set_name(&name);
    }
    let mut titles = Vec::new();
    for sheet in project.sheets() {
        let title = names::clean(sheet.title());
        if title != sheet.title() {
            titles.push((sheet.id(), title));
        }
    }
    for (id, title) in titles {
        project.set_sheet_title(&id, &title);
    }
    // Files are written to be read by people, so what was read may grow when it is saved.
    let bytes = project.to_text().len();
    if bytes > MAX_BYTES {
        return Err(Refusal::Load(LoadError::TooLarge { bytes }));
    }
    Ok(project)
}

/// Whether an id can stand in the page's address as it is.
fn is_fit(id: &str) -> bool {
    (1..=64).contains(&id.len())
        && id.bytes().all(|byte| byte.is_ascii_alphanumeric() || byte == b'-' || byte == b'_')
}
