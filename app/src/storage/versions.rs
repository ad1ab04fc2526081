//! Named points of a project to go back to, each under a key of its own that is never written again.
//!
//! A version is a slot: checksum, the number of the version as its revision, when it was kept, and
//! a document whose first line is the name. Nothing that is kept is touched by keeping another, so
//! no write can lose a version, and the project itself is never written here.

use calc::project::{LoadError, MAX_BYTES, Project, VERSION};
use calc::sorting;

use super::{FailureReason, ListingState, LoadFailure, SaveError, Store, key, slot};

/// The kind of key that keeps a version: `version ID NUMBER`.
pub(super) const VERSION_KIND: &str = "version";

/// A version in a list.
#[derive(Clone, Debug, PartialEq)]
pub struct Version {
    /// Its number: when it was kept. [ms since 1970]
    pub number: u64,
    /// The name that it was given.
    pub name: String,
    /// The room that it takes. [characters]
    pub chars: usize,
    /// Whether it can be gone back to.
    pub state: ListingState,
}

impl Store {
    /// Keeps the project as it is now as a version with a name; returns the version's number.
    ///
    /// # Errors
    /// `SaveError`; the project and all other versions are as they were.
    pub fn keep_version(&self, project: &Project, name: &str) -> Result<u64, SaveError> {
        let text = project.to_text();
        if text.len() > MAX_BYTES {
            return Err(SaveError::TooLarge { bytes: text.len() });
        }
        let mut number = js_sys::Date::now() as u64;
        while self.shelf.read(&version_key(project.id(), number)).is_some() {
            number += 1;
        }
        let name: String = name.chars().map(|c| if c.is_control() { ' ' } else { c }).collect();
        let document = [name.trim(), "\n", &text].concat();
        let whole = slot::compose(number, number, VERSION, &[], &document);
        self.write_version(project.id(), number, &whole)?;
        Ok(number)
    }

    /// The versions of a project, the last kept first.
    pub fn versions(&self, id: &str) -> Vec<Version> {
        let mut versions = Vec::new();
        for number in self.version_numbers(id) {
            let Some(whole) = self.shelf.read(&version_key(id, number)) else { continue };
            let slot = slot::read(&whole);
            let (name, text) = slot.document.split_once('\n').unwrap_or(("", slot.document));
            let state = match Project::from_text(text) {
                Ok(_) if slot.intact => ListingState::Fine,
                Err(LoadError::TooNew { found }) => ListingState::Newer { found },
                _ => ListingState::Damaged,
            };
            let name = if slot.intact { name.to_owned() } else { String::new() };
            let chars = whole.encode_utf16().count();
            versions.push(Version { number, name, chars, state });
        }
        sorting::sort_by_key(&mut versions, |version| u64::MAX - version.number);
        versions
    }

    /// A version as a project, with the id of the project that it is a version of, and its name.
    ///
    /// # Errors
    /// `LoadFailure` with the reason and the kept text.
    pub fn version(&self, id: &str, number: u64) -> Result<(Project, String), LoadFailure> {
        let Some(whole) = self.shelf.read(&version_key(id, number)) else {
            return Err(LoadFailure { reason: FailureReason::Missing, raw: None });
        };
        let slot = slot::read(&whole);
        let (name, text) = slot.document.split_once('\n').unwrap_or(("", slot.document));
        let failure = |reason| LoadFailure { reason, raw: Some(text.to_owned()) };
        match Project::from_text(text) {
            Ok(mut project) if slot.intact => {
                project.set_id(id);
                Ok((project, name.to_owned()))
            }
            Ok(_) => Err(failure(FailureReason::Damaged(LoadError::NotJson { line: 1 }))),
            Err(LoadError::TooNew { found }) => Err(failure(FailureReason::Newer { found })),
            Err(error) => Err(failure(FailureReason::Damaged(error))),
        }
    }

    /// Takes a version out; what it returns is for `put_version_back`.
    pub fn take_version_out(&self, id: &str, number: u64) -> Option<String> {
        let key = version_key(id, number);
        let whole = self.shelf.read(&key);
        self.shelf.remove(&key);
        whole
    }

    /// Puts a version back that was taken out.
    ///
    /// # Errors
    /// `SaveError` where there is no room any more.
    pub fn put_version_back(&self, id: &str, number: u64, whole: &str) -> Result<(), SaveError> {
        self.write_version(id, number, whole)
    }

    pub(super) fn version_numbers(&self, id: &str) -> Vec<u64> {
        let mut numbers = Vec::new();
        for key in self.shelf.keys() {
            // Ids may hold spaces; numbers do not.
            if let Some((VERSION_KIND, rest)) = key.split_once(' ')
                && let Some((of, number)) = rest.rsplit_once(' ')
                && of == id
                && let Ok(number) = number.parse()
            {
                numbers.push(number);
            }
        }
        numbers
    }

    pub(super) fn forget_versions(&self, id: &str) {
        for number in self.version_numbers(id) {
            self.shelf.remove(&version_key(id, number));
        }
    }

    fn write_version(&self, id: &str, number: u64, whole: &str) -> Result<(), SaveError> {
        let key = version_key(id, number);
        self.shelf.write(&key, whole)?;
        if self.shelf.read(&key).as_deref() != Some(whole) {
            self.shelf.remove(&key);
            return Err(SaveError::NotKept);
        }
        Ok(())
    }
}

fn version_key(id: &str, number: u64) -> String {
    key(VERSION_KIND, &[id, " ", &number.to_string()].concat())
}
