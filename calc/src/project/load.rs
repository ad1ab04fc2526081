//! Loading a project file: its version first, then the steps from older versions to this one.

use std::fmt;

mod v1;

pub(super) use v1::pin;
pub(crate) use v1::settle;

use crate::part;
use crate::words::{Arg, Msg, Words, project as words};

use super::limits::{MAX_BYTES, MOST_SHEETS};
use super::{Node, Project, shopping};

/// A step from one version of the format to the next.
struct Migration {
    /// What the step does, as a verb: it names the step in messages.
    #[allow(dead_code, reason = "it names the step for those who read the list")]
    name: &'static str,
    /// Changes the document in place.
    step: fn(&mut serde_json::Map<String, Node>),
}

/// The steps, oldest first: the first leads from version 1 to version 2. Steps are only ever
/// added; one that was released is never changed. Each has a kept sample of the version before it
/// in `tests/project_versions/`.
static MIGRATIONS: &[Migration] =
    &[Migration { name: "name lines by what they are", step: v1::set_aside }];

/// The version of the format that this program writes.
pub const VERSION: u64 = 1 + MIGRATIONS.len() as u64;

/// Why a project file could not be read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum LoadError {
    /// Larger than `MAX_BYTES`.
    TooLarge {
        /// Its size. [bytes]
        bytes: usize,
    },
    /// Not JSON, or nested too deep.
    NotJson {
        /// Where reading stopped, from 1.
        line: usize,
    },
    /// JSON, but not a set of named fields with a format version.
    NoVersion,
    /// Written by a newer program.
    TooNew {
        /// The version it was written in.
        found: u64,
    },
    /// More sheets than `MOST_SHEETS`.
    TooManySheets {
        /// How many.
        count: usize,
    },
}

impl LoadError {
    /// What is said of it.
    pub fn message(&self) -> Msg {
        let start = || format!("{{ \"battenbook\": {VERSION}");
        match self {
            Self::TooLarge { bytes } => words::TooLarge { bytes: *bytes, most: MAX_BYTES }.into(),
            Self::NotJson { line } => words::NotJson { line: *line, start: start() }.into(),
            Self::NoVersion => words::NoVersion { start: start() }.into(),
            Self::TooNew { found } => {
                let [found, known] = [*found, VERSION].map(Arg::Count);
                words::TooNew { found, known }.into()
            }
            Self::TooManySheets { count } => {
                words::TooManySheets { count: *count, most: MOST_SHEETS }.into()
            }
        }
    }
}

/// In English: for scripts, and for where no language is known yet.
impl fmt::Display for LoadError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.message().english())
    }
}

impl std::error::Error for LoadError {}

impl Project {
    /// Reads a project file, bringing an older one up to this version.
    ///
    /// # Errors
    /// `LoadError` where the text is too large, is no JSON, has no format version, or has one
    /// newer than this program knows. What is wrong inside its sheets is a fault of the sheet.
    pub fn from_text(text: &str) -> Result<Self, LoadError> {
        if text.len() > MAX_BYTES {
            return Err(LoadError::TooLarge { bytes: text.len() });
        }
        // A file saved by an editor may begin with a byte order mark.
        let text = text.strip_prefix('\u{feff}').unwrap_or(text);
        let node: Node = serde_json::from_str(text)
            .map_err(|error| LoadError::NotJson { line: error.line() })?;
        Self::from_node(node)
    }

    /// As `from_text`, of a text that was read as JSON already. Its size is for the caller to look at: it counts as it is kept,
    /// however it was written.
    ///
    /// # Errors
    /// As `from_text`.
    pub fn from_node(node: Node) -> Result<Self, LoadError> {
        let Node::Object(mut document) = node else { return Err(LoadError::NoVersion) };
        let found = document
            .get("battenbook")
            .and_then(Node::as_u64)
            .filter(|version| *version >= 1)
            .ok_or(LoadError::NoVersion)?;
        if found > VERSION {
            return Err(LoadError::TooNew { found });
        }
        let steps = usize::try_from(found - 1).unwrap_or(usize::MAX);
        for migration in MIGRATIONS.iter().skip(steps) {
            (migration.step)(&mut document);
        }
        document.insert("battenbook".into(), Node::from(VERSION));
        let mut project = Self { document, words: Words::ENGLISH };
        shopping::name_own_rows(&mut project);
        part::settled(&mut project);
        let count = project.sheets().count();
        if count > MOST_SHEETS {
            return Err(LoadError::TooManySheets { count });
        }
        Ok(project)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_no_project_file_is_refused_with_the_reason() {
        let refusal = |text: &str| Project::from_text(text).unwrap_err().to_string();
        assert!(refusal("").contains("not JSON"));
        assert!(refusal("{\"battenbook\": 1,").contains("line 1"));
        assert_eq!(Project::from_text("[]"), Err(LoadError::NoVersion));
        assert_eq!(Project::from_text("{\"battenbook\": \"1\"}"), Err(LoadError::NoVersion));
        assert_eq!(Project::from_text("{\"battenbook\": 0}"), Err(LoadError::NoVersion));
        assert_eq!(
            Project::from_text("{\"battenbook\": 99}"),
            Err(LoadError::TooNew { found: 99 })
        );
        let deep = format!("{{\"battenbook\":1,\"x\":{}", "[".repeat(100_000));
        assert!(refusal(&deep).contains("not JSON"));
        assert!(refusal(&" ".repeat(MAX_BYTES + 1)).contains("bytes"));
    }

    #[test]
    fn no_more_sheets_are_read_than_can_be_added() {
        let mut project = Project::new("p", "", crate::quantity::UnitSystem::Metric);
        while !project.is_full() {
            project.add_sheet("coating", "", Node::Null);
        }
        assert_eq!(project.add_sheet("coating", "", Node::Null), "");
        assert_eq!(project.sheets().count(), MOST_SHEETS);
        assert_eq!(Project::from_text(&project.to_text()), Ok(project));
        let sheets = vec!["{}"; MOST_SHEETS + 1].join(",");
        let text = format!("{{\"battenbook\": 1, \"sheets\": [{sheets}]}}");
        let refused = Project::from_text(&text).unwrap_err();
        assert_eq!(refused, LoadError::TooManySheets { count: MOST_SHEETS + 1 });
    }

    #[test]
    fn a_byte_order_mark_is_passed_over() {
        assert!(Project::from_text("\u{feff}{\"battenbook\": 1}").is_ok());
    }
}
