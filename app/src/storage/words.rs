//! What the store answers: listings, loaded projects, and refusals in words for people.

use std::fmt;

use calc::project::{LoadError, MAX_BYTES, Project};

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
        match self {
            Self::Missing => f.write_str(
                "There is no such project on this device. If you exported it elsewhere, import the file.",
            ),
            Self::Damaged(error) => {
                f.write_str("What is kept of this project cannot be read: ")?;
                error.fmt(f)?;
                f.write_str(". It is left as it is; download it before you delete it.")
            }
            Self::Newer { found } => {
                f.write_str("This project was saved by a newer version of Battenbook (format ")?;
                found.fmt(f)?;
                f.write_str("). It is left as it is. Reload to get the newer version, or download the project.")
            }
        }
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
        match self {
            Self::Full => f.write_str(
                "Not saved: the browser's space for this page is full. The last saved version is kept. \
                 Export this project now, then empty the bin, or delete old versions and projects that you no longer need.",
            ),
            Self::Blocked => f.write_str(
                "Not saved: this browser refuses to keep data for this page. Export the project as a file, \
                 then allow site data for this page or leave private browsing.",
            ),
            Self::NotKept => f.write_str(
                "Not saved: the browser did not keep what was written. The last saved version is kept. \
                 Export this project as a file, then reload.",
            ),
            Self::Moved => f.write_str(
                "Not saved: this project was changed in another window. Keep both by saving this one as a \
                 copy, or open the other version.",
            ),
            Self::Deleted => f.write_str(
                "Not saved: this project was deleted in another window. Restore it from the bin, or save this \
                 one as a copy.",
            ),
            Self::Newer { found } => {
                f.write_str("Not saved: a newer version of Battenbook has saved this project (format ")?;
                found.fmt(f)?;
                f.write_str("). Reload to get the newer version; to keep what you see here, export it first.")
            }
            Self::TooLarge { bytes } => {
                f.write_str("Not saved: the project has ")?;
                bytes.fmt(f)?;
                f.write_str(" bytes; a project may have ")?;
                MAX_BYTES.fmt(f)?;
                f.write_str(". Export it, and split it into two projects.")
            }
        }
    }
}
