//! What the store answers: listings, loaded projects, and refusals in words for people.

use std::fmt;

use calc::project::{LoadError, MAX_BYTES, Project};
use calc::words::app_keep as words;

use crate::words::say;

/// One project in a list.
#[derive(Clone, Debug, PartialEq)]
pub struct Listing {
    /// Its id.
    pub id: String,
    /// Its name; empty where it has none or cannot be read.
    pub name: String,
    /// When it was last saved, or for a deleted one when it was deleted; 0 where not known. [ms since 1970]
    pub changed: f64,
    /// The length of its text; 0 where it cannot be read. [characters]
    pub chars: usize,
    /// Whether it can be opened.
    pub state: ListingState,
}

/// Whether a kept project can be opened.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ListingState {
    /// It can.
    Fine,
    /// No kept copy can be read; the text can be downloaded.
    Damaged,
    /// Written by a newer program; the text can be downloaded.
    Newer {
        /// The format version it was written in.
        found: u64,
    },
}

/// A project read from the store.
#[derive(Clone, Debug, PartialEq)]
pub struct Loaded {
    /// The project.
    pub project: Project,
    /// Names the write it was read from; to be handed to the next save. Only equality means anything.
    pub revision: u64,
    /// When that write was made; 0 where not known. [ms since 1970]
    pub changed: u64,
    /// The last revisions before it, the last one first.
    pub before: Vec<u64>,
    /// The last write was damaged, and the last good copy is shown instead; the damaged text is
    /// had from `Store::damaged`.
    pub restored: bool,
    /// The older format version that it was brought up from. The first save keeps the text as it
    /// was before; it is had from `Store::before`.
    pub migrated_from: Option<u64>,
}

/// Why a project could not be opened.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LoadFailure {
    /// The reason.
    pub reason: FailureReason,
    /// The kept text, to be downloaded; none where there is none.
    pub raw: Option<String>,
}

/// The reasons why a project cannot be opened.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum FailureReason {
    /// Nothing is kept under this id.
    Missing,
    /// No kept copy can be read.
    Damaged(LoadError),
    /// Written by a newer program. It is left as it is.
    Newer {
        /// The format version it was written in.
        found: u64,
    },
}

impl fmt::Display for FailureReason {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&match self {
            Self::Missing => say(words::MISSING),
            Self::Damaged(error) => say(words::Damaged { error: error.message() }),
            Self::Newer { found } => say(words::Newer { format: found.to_string() }),
        })
    }
}

/// Why something could not be saved. What was kept before is still kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SaveError {
    /// The browser's space for this page is used up.
    Full,
    /// The browser refuses to keep anything.
    Blocked,
    /// What was written could not be read back the same.
    NotKept,
    /// Another window saved this project since it was opened here.
    Moved,
    /// Another window deleted this project.
    Deleted,
    /// What is kept was written by a newer program.
    Newer {
        /// The format version it was written in.
        found: u64,
    },
    /// The project is larger than a project file may be.
    TooLarge {
        /// Its size. [bytes]
        bytes: usize,
    },
}

impl fmt::Display for SaveError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&match self {
            Self::Full => say(words::NOT_SAVED_FULL),
            Self::Blocked => say(words::NOT_SAVED_BLOCKED),
            Self::NotKept => say(words::NOT_SAVED_LOST),
            Self::Moved => say(words::NOT_SAVED_MOVED),
            Self::Deleted => say(words::NOT_SAVED_DELETED),
            Self::Newer { found } => say(words::NotSavedNewer { format: found.to_string() }),
            Self::TooLarge { bytes } => {
                say(words::NotSavedLarge { bytes: *bytes, most: MAX_BYTES })
            }
        })
    }
}
