//! Projects as files.

use crate::storage::{Listing, Store};
use calc::project::Project;

/// All projects in one file.
#[derive(Clone, Debug, PartialEq)]
pub struct Collection {
    /// The text of the file.
    pub text: String,
    /// The projects that it could not take, as they cannot be read: to be named, and downloaded one
    /// by one.
    pub left_out: Vec<Listing>,
}

/// The name of the file and the text of one project.
pub fn export_one(project: &Project) -> (String, String) {
    todo!()
}

/// Every project that can be read, newer ones included; what is in the bin is left out.
pub fn export_all(store: Store) -> Collection {
    todo!()
}

/// A file name made of a project's name: no path, no hidden or reserved characters, never empty.
pub fn file_name(name: &str) -> String {
    todo!()
}
