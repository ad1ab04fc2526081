//! Files as projects. A file is treated as hostile: limits first, and nothing kept is ever replaced.

use std::fmt;

use calc::project::limits::{MAX_FILE_BYTES, MOST_PROJECTS};
use calc::project::{LoadError, MAX_BYTES, Node, Project};
use calc::words::app_keep as words;
use wasm_bindgen::prelude::*;

use super::{names, platform};
use crate::storage::{SaveError, Store, new_id};
use crate::words::say;

/// The field that tells a file of many projects, with the version of that format.
pub(super) const COLLECTION_KEY: &str = "battenbook_collection";

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
    pub reason: LoadError,
}

/// Why a file is not taken.
#[derive(Clone, Debug, PartialEq)]
pub enum ImportError {
    /// Larger than `MAX_FILE_BYTES`.
    TooLarge {
        /// Its size. [bytes]
        bytes: f64,
    },
    /// The browser could not read it.
    Unreadable,
    /// It is no project file that can be taken.
    Project(LoadError),
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

impl fmt::Display for ImportError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let why = match self {
            Self::TooLarge { bytes } => {
                say(words::FileLarge { bytes: *bytes as usize, most: MAX_FILE_BYTES })
            }
            Self::Unreadable => say(words::FILE_UNREADABLE),
            Self::Project(refusal) => say(words::FileRefused { why: refusal.message() }),
            Self::CollectionTooNew => say(words::FILE_NEWER),
            Self::TooMany { count } => say(words::FileMany { count: *count, most: MOST_PROJECTS }),
        };
        f.write_str(&say(words::NotImported { why }))
    }
}

/// A file that is read project by project, since one of many takes long.
#[derive(Debug)]
pub struct Reading {
    nodes: std::vec::IntoIter<Node>,
    count: usize,
    /// The file is one project by itself.
    alone: bool,
}

impl Reading {
    /// Reads what kind of file a text is.
    ///
    /// # Errors
    /// `ImportError` where the file as a whole cannot be taken.
    pub fn of(text: &str) -> Result<Self, ImportError> {
        if text.len() > MAX_FILE_BYTES {
            return Err(ImportError::TooLarge { bytes: text.len() as f64 });
        }
        // The reader of JSON refuses what is nested deeper than 128 levels.
        let document: Node = serde_json::from_str(text.strip_prefix('\u{feff}').unwrap_or(text))
            .map_err(|error| ImportError::Project(LoadError::NotJson { line: error.line() }))?;
        let alone = document.get(COLLECTION_KEY).is_none();
        let nodes = match document.get(COLLECTION_KEY).map(Node::as_u64) {
            None => vec![document],
            Some(Some(1)) => nodes_of(document)?,
            Some(Some(2..)) => return Err(ImportError::CollectionTooNew),
            Some(_) => return Err(ImportError::Project(LoadError::NoVersion)),
        };
        Ok(Self { count: nodes.len(), nodes: nodes.into_iter(), alone })
    }

    /// How many projects were read, and how many there are.
    pub fn progress(&self) -> (usize, usize) {
        (self.count - self.nodes.len(), self.count)
    }

    /// Whether the file is one project by itself: then what it is refused for is said of the file.
    pub const fn alone(&self) -> bool {
        self.alone
    }
}

impl Iterator for Reading {
    type Item = Result<Project, Refused>;

    fn next(&mut self) -> Option<Self::Item> {
        let node = self.nodes.next()?;
        let name = names::clean(node.get("name").and_then(Node::as_str).unwrap_or_default());
        let number = self.progress().0;
        Some(one(node).map_err(|reason| Refused { number, name, reason }))
    }
}

/// Reads the text of a file.
///
/// # Errors
/// `ImportError` where the file as a whole cannot be taken.
pub fn read(text: &str) -> Result<Import, ImportError> {
    let mut reading = Reading::of(text)?;
    if reading.alone() {
        return match reading.next() {
            Some(Ok(project)) => Ok(Import::One(project)),
            Some(Err(refused)) => Err(ImportError::Project(refused.reason)),
            None => Err(ImportError::Project(LoadError::NoVersion)),
        };
    }
    let (mut projects, mut refused) = (Vec::new(), Vec::new());
    for one in reading {
        match one {
            Ok(project) => projects.push(project),
            Err(one) => refused.push(one),
        }
    }
    Ok(Import::Many { projects, refused })
}

/// Reads the text of a chosen file, its size first, and calls back with it.
pub fn read_file(file: &web_sys::File, done: impl FnOnce(Result<String, ImportError>) + 'static) {
    let bytes = file.size();
    if bytes > MAX_FILE_BYTES as f64 {
        done(Err(ImportError::TooLarge { bytes }));
        return;
    }
    let read = move |text: Option<JsValue>| {
        done(text.and_then(|text| text.as_string()).ok_or(ImportError::Unreadable));
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

fn nodes_of(mut document: Node) -> Result<Vec<Node>, ImportError> {
    let Some(Node::Array(nodes)) = document.get_mut("projects") else {
        return Err(ImportError::Project(LoadError::NoVersion));
    };
    if nodes.len() > MOST_PROJECTS {
        return Err(ImportError::TooMany { count: nodes.len() });
    }
    Ok(std::mem::take(nodes))
}

fn one(document: Node) -> Result<Project, LoadError> {
    let mut project = Project::from_node(document)?;
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
    // It counts as it is kept, however it was written.
    let bytes = project.to_text().len();
    if bytes > MAX_BYTES {
        return Err(LoadError::TooLarge { bytes });
    }
    Ok(project)
}

/// Whether an id can stand in the page's address as it is.
fn is_fit(id: &str) -> bool {
    (1..=64).contains(&id.len())
        && id.bytes().all(|byte| byte.is_ascii_alphanumeric() || byte == b'-' || byte == b'_')
}
