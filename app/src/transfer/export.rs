//! Projects as files.

use calc::project::Project;

use super::import::COLLECTION_KEY;
use super::names;
use crate::storage::{Listing, ListingState, Store};

/// All projects in one file.
#[derive(Clone, Debug, PartialEq)]
pub struct Collection {
    /// The text of the file.
    pub text: String,
    /// The projects that it could not take, as they cannot be read: to be named, and downloaded one
    /// by one.
    pub left_out: Vec<Listing>,
    /// The names of projects whose last save is damaged or missing: the file has the one before it.
    pub restored: Vec<String>,
}

/// The name of the file and the text of one project.
pub fn export_one(project: &Project) -> (String, String) {
    (file_name(project.name()), project.to_text())
}

/// Every project that can be read, newer ones included; what is in the bin is left out.
pub fn export_all(store: Store) -> Collection {
    let mut texts = Vec::new();
    let (mut left_out, mut restored) = (Vec::new(), Vec::new());
    for listing in store.list() {
        // What could not be saved is later than what is kept.
        let unsaved = crate::desk::unsaved::find(&listing.id).map(|one| one.project.to_text());
        let text = unsaved.or_else(|| match listing.state {
            ListingState::Fine => store.load(&listing.id).ok().map(|loaded| {
                if loaded.restored {
                    restored.push(listing.name.clone());
                }
                loaded.project.to_text()
            }),
            ListingState::Newer { .. } => store.raw(&listing.id),
            ListingState::Damaged => None,
        });
        match text {
            Some(text) => texts.push(text),
            None => left_out.push(listing),
        }
    }
    let text =
        ["{\"", COLLECTION_KEY, "\": 1, \"projects\": [\n", &texts.join(",\n"), "\n]}\n"].concat();
    Collection { text, left_out, restored }
}

/// A file name made of a project's name: no path, no hidden or reserved characters, never empty.
pub fn file_name(name: &str) -> String {
    let mut safe = String::from("battenbook");
    let mut gap = true;
    for character in names::clean(name).chars() {
        let kept = character.is_ascii_alphanumeric() || !character.is_ascii();
        if kept {
            if gap {
                safe.push('-');
            }
            safe.push(character);
        }
        gap = !kept;
    }
    safe.push_str(".json");
    safe
}
