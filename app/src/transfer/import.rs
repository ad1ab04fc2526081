//! Files as projects. A file is treated as hostile: limits first, and nothing kept is ever replaced.

use std::fmt;

use crate::storage::{SaveError, Store};
use calc::project::{LoadError, Project};

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

/// Reads the text of a file.
///
/// # Errors
/// `ImportError` where the file as a whole cannot be taken.
pub fn read(text: &str) -> Result<Import, ImportError> {
    todo!()
}

/// Reads a chosen file, its size first, and calls back with what it holds.
pub fn read_file(file: &web_sys::File, done: impl FnOnce(Result<Import, ImportError>) + 'static) {
    todo!()
}

/// Keeps an imported project beside what is there already: under its own id where that is free and
/// fit for an address, else under a new one.
///
/// # Errors
/// As `Store::save`.
pub fn keep(store: Store, project: Project) -> Result<Imported, SaveError> {
    todo!()
}
