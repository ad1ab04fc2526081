//! Keeps projects on the device: two slots and a pointer for each, so that no write can harm what was kept before.
//!
//! Each project has two slots, `a` and `b`, and a pointer that names the slot in use. A save writes
//! the slot that is not in use, reads it back, and only then moves the pointer: whatever goes wrong
//! in between, the pointed slot is whole. The slot that was left holds the copy before, which is
//! shown when the slot in use turns out damaged. Slots carry their own revision and checksum
//! (`slot`), so a lost pointer loses nothing, and the list of projects is what the keys say.
//!
//! Two windows: a save names the revision that it started from and is refused when another one is
//! kept by now. Saving stays synchronous on purpose: a lock of the browser's is granted later, and
//! a page that is being closed has no later. What remains is two windows saving within the same few
//! milliseconds; since no two saves make the same revision, the window that lost that race is
//! refused at its next save, and told at once by `watch`.

mod record;
mod shelf;
mod slot;
mod words;

pub use words::{FailureReason, Listing, ListingState, LoadFailure, Loaded, SaveError};

use calc::project::Project;
use shelf::Shelf;

/// Above this a project should be split: the narrowest browser holds 2.6 million characters for all
/// projects of a page, and each project is kept twice. [characters of its text]
pub const LARGE_CHARS: usize = 1_000_000;

/// Where projects are kept: on the device, or in this tab's memory where the browser refuses to
/// keep anything.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Store {
    shelf: Shelf,
}

impl Store {
    /// Opens the store of this page; falls back to memory where the browser keeps nothing.
    pub fn open() -> Self {
        Self { shelf: Shelf::open() }
    }

    /// A store in this tab's memory only.
    pub fn in_memory() -> Self {
        Self { shelf: Shelf::in_memory() }
    }

    /// Whether projects outlive this tab. Where they do not, every page says so.
    pub fn keeps(&self) -> bool {
        self.shelf.keeps()
    }

    /// The projects, last changed first, deleted ones left out.
    pub fn list(&self) -> Vec<Listing> {
        todo!()
    }

    /// Reads a project; changes nothing that is kept.
    ///
    /// # Errors
    /// `LoadFailure` with the reason and with the kept text, where there is any.
    pub fn load(&self, id: &str) -> Result<Loaded, LoadFailure> {
        todo!()
    }

    /// Saves a project over the revision it was loaded or last saved with; 0 for a new one. Returns
    /// the revision for the next save.
    ///
    /// # Errors
    /// `SaveError`; what was kept before is then still kept.
    pub fn save(&self, project: &Project, revision: u64) -> Result<u64, SaveError> {
        todo!()
    }

    /// Saves a project beside the one that it came from, under a new id and a name that says so;
    /// returns the copy and its revision.
    ///
    /// # Errors
    /// As `save`.
    pub fn save_copy(&self, project: &Project) -> Result<(Project, u64), SaveError> {
        todo!()
    }

    /// Whether anything is kept under an id, be it damaged, newer or deleted.
    pub fn has(&self, id: &str) -> bool {
        todo!()
    }

    /// The text in use, as it is kept: of a newer project, what to download.
    pub fn raw(&self, id: &str) -> Option<String> {
        todo!()
    }

    /// The damaged text of a project whose last good copy is shown.
    pub fn damaged(&self, id: &str) -> Option<String> {
        todo!()
    }

    /// Throws the damaged text of a project away.
    pub fn forget_damaged(&self, id: &str) {
        todo!()
    }

    /// The text as it was before the format was last brought up to date.
    pub fn before(&self, id: &str) -> Option<String> {
        todo!()
    }

    /// Puts a project into the bin, whatever its state.
    ///
    /// # Errors
    /// `SaveError` where even that could not be written down; the project then stays.
    pub fn delete(&self, id: &str) -> Result<(), SaveError> {
        todo!()
    }

    /// The bin, last deleted first. `changed` is when it was deleted.
    pub fn deleted(&self) -> Vec<Listing> {
        todo!()
    }

    /// Takes a project out of the bin again.
    pub fn restore(&self, id: &str) {
        todo!()
    }

    /// Removes a project for good. There is no way back: ask first.
    pub fn forget(&self, id: &str) {
        todo!()
    }

    /// Removes for good what has been in the bin the longest, to make room, and returns it; none
    /// where the bin is empty. Say so first.
    pub fn forget_oldest(&self) -> Option<Listing> {
        todo!()
    }

    /// Calls back with the id of a project that another window saved, deleted or restored; with an
    /// empty id where all data of the page was cleared. Watches for as long as the page lives.
    pub fn watch(&self, on_change: impl Fn(String) + 'static) {
        todo!()
    }

    /// A setting of this device, such as the theme. Losing it is harmless.
    pub fn setting(&self, key: &str) -> Option<String> {
        todo!()
    }

    /// Keeps a setting of this device; where there is no room it is lost.
    pub fn set_setting(&self, key: &str, value: &str) {
        todo!()
    }

    /// How much this page's origin has stored, of about 5.2 million characters (half of that in
    /// some browsers for text beyond Latin letters). [characters]
    pub fn used_chars(&self) -> usize {
        todo!()
    }
}

/// A new id: short, fit for an address, and not to be guessed or met again.
pub fn new_id() -> String {
    todo!()
}
