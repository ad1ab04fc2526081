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
//! milliseconds: no two saves make the same revision and each slot names those before it, so the
//! window that lost that race is told by `watch`, sees that its save is not in what is kept, and
//! takes the other's in (`held`, `merge`). Where the browser refuses local storage, each window has its
//! memory, and windows tell each other what they write (`shelf`): the same holds then.
//!
//! Two stores: browsers keep local storage in memory for up to a minute, so a browser that is killed
//! loses it. What is written here goes into a journal too (`journal`), which is on the disk within
//! milliseconds. On opening, the later of both is what counts (`recovery`).

mod answers;
mod arrivals;
mod held;
mod journal;
mod merge;
mod record;
mod recovery;
mod shelf;
mod slot;
mod versions;

pub use answers::{FailureReason, Listing, ListingState, LoadFailure, Loaded, SaveError};
pub use arrivals::{MOST_SETS, PartSet};
pub use held::{Held, Kept, Outcome};
pub use recovery::{Found, Unkept};
pub(crate) use slot::checksum;
pub use versions::Version;

use crate::words::say;
use arrivals::RECEIVED;
use calc::project::{MAX_BYTES, Node, Project, VERSION};
use calc::quantity::from_digits;
use calc::words::app_start;
use record::{BEFORE, BIN, DAMAGED, POINTER, Record, SLOTS};
use shelf::Shelf;
use wasm_bindgen::prelude::*;

/// Above this a project should be split: the narrowest browser holds 2.6 million characters for all
/// projects of a page, and each project is kept twice. [characters of its text]
pub const LARGE_CHARS: usize = 1_000_000;

/// The room that browsers give all pages of a host, as measured in three engines: this many
/// characters fitted; text beyond Latin letters counts twice in one of them. [characters]
const ROOM_CHARS: usize = 5_242_368;

/// From this share of the room on it is said that space is getting short.
pub const SHORT_OF_ROOM: f64 = 0.8;

/// So many projects are named as the largest.
const MOST_LARGEST: usize = 3;

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

    /// Whether windows hear of each other's saves. Where they do not, the last one wins.
    pub fn is_shared(&self) -> bool {
        self.shelf.is_shared()
    }

    /// The projects, last changed first, deleted ones left out.
    pub fn list(&self) -> Vec<Listing> {
        self.listings(false)
    }

    /// Reads a project; changes nothing that is kept.
    ///
    /// # Errors
    /// `LoadFailure` with the reason and with the kept text, where there is any.
    pub fn load(&self, id: &str) -> Result<Loaded, LoadFailure> {
        let record = Record::read(self.shelf, id);
        if let Some((found, document)) = record.newer() {
            let reason = FailureReason::Newer { found };
            return Err(LoadFailure { reason, raw: Some(document.to_owned()) });
        }
        let order = record.order();
        let mut first_error = None;
        // What is intact comes first; what is not, but can be read, is better than nothing.
        for intact in [true, false] {
            for number in order {
                let Some(slot) = record.slot(number).filter(|slot| slot.intact == intact) else {
                    continue;
                };
                match Project::from_text(slot.document) {
                    Ok(mut project) => {
                        // What is saved goes where it was read from, whatever id the text has.
                        if project.id() != id {
                            project.set_id(id);
                        }
                        let revision = if intact { slot.revision } else { record.written() };
                        return Ok(Loaded {
                            project,
                            revision,
                            changed: slot.changed,
                            before: slot.revisions_before(),
                            restored: !intact || record.is_behind(number),
                            migrated_from: Some(slot.format)
                                .filter(|format| *format < VERSION && intact),
                        });
                    }
                    Err(error) if number == order[0] || first_error.is_none() => {
                        first_error = Some((error, slot.document.to_owned()));
                    }
                    Err(_) => {}
                }
            }
        }
        Err(match first_error {
            Some((error, raw)) => {
                LoadFailure { reason: FailureReason::Damaged(error), raw: Some(raw) }
            }
            None => LoadFailure { reason: FailureReason::Missing, raw: None },
        })
    }

    /// Saves a project over the revision it was loaded or last saved with; 0 for a new one. Returns
    /// the revision for the next save.
    ///
    /// # Errors
    /// `SaveError`; what was kept before is then still kept.
    pub fn save(&self, project: &Project, revision: u64) -> Result<u64, SaveError> {
        self.save_text(project.id(), &project.to_text(), revision, &[])
    }

    /// As `save`, with the text of the project, and the revisions that it has come from beside those
    /// of what it is saved over.
    fn save_text(
        &self,
        id: &str,
        text: &str,
        revision: u64,
        before: &[u64],
    ) -> Result<u64, SaveError> {
        if text.len() > MAX_BYTES {
            return Err(SaveError::TooLarge { bytes: text.len() });
        }
        if self.is_deleted(id) {
            return Err(SaveError::Deleted);
        }
        Record::read(self.shelf, id).write(self.shelf, id, revision, before, text)
    }

    /// Saves a project beside the one that it came from, under a new id and with a word behind its name
    /// that says why; returns the copy and its revision.
    ///
    /// # Errors
    /// As `save`.
    pub fn save_copy(&self, project: &Project, why: &str) -> Result<(Project, u64), SaveError> {
        let mut copy = project.clone();
        copy.set_id(&new_id());
        copy.set_name(&say(app_start::NamedFor { name: project.name(), why }));
        let revision = self.save(&copy, 0)?;
        Ok((copy, revision))
    }

    /// Whether anything is kept under an id, be it damaged, newer or deleted.
    pub fn has(&self, id: &str) -> bool {
        !Record::read(self.shelf, id).is_empty()
    }

    /// The text in use, as it is kept: of a newer project, what to download.
    pub fn raw(&self, id: &str) -> Option<String> {
        let record = Record::read(self.shelf, id);
        if let Some((_, document)) = record.newer() {
            return Some(document.to_owned());
        }
        let [first, second] = record.order();
        let slot = record.slot(first).or_else(|| record.slot(second))?;
        Some(slot.document.to_owned())
    }

    /// The damaged text of a project whose last good copy is shown.
    pub fn damaged(&self, id: &str) -> Option<String> {
        let record = Record::read(self.shelf, id);
        record.damaged().map(str::to_owned).or_else(|| self.shelf.read(&key(DAMAGED, id)))
    }

    /// Throws the damaged text of a project away.
    pub fn forget_damaged(&self, id: &str) {
        let record = Record::read(self.shelf, id);
        if record.damaged().is_some() && record.standing().is_some() {
            self.shelf.remove(&key(SLOTS[record.order()[0]], id));
        }
        self.shelf.remove(&key(DAMAGED, id));
    }

    /// The text as it was before the format was last brought up to date.
    pub fn before(&self, id: &str) -> Option<String> {
        self.shelf.read(&key(BEFORE, id))
    }

    /// Puts a project into the bin, whatever its state.
    ///
    /// # Errors
    /// `SaveError` where even that could not be written down; the project then stays.
    pub fn delete(&self, id: &str) -> Result<(), SaveError> {
        let record = Record::read(self.shelf, id);
        if record.is_empty() {
            return Ok(());
        }
        let bin = key(BIN, id);
        let mark = (js_sys::Date::now() as u64).to_string();
        let mut marked = self.shelf.write(&bin, &mark);
        if marked == Err(SaveError::Full)
            && let Some((number, _)) = record.standing()
        {
            // Deleting is how room is made, so the copy before makes room for the mark.
            self.shelf.remove(&key(SLOTS[1 - number], id));
            marked = self.shelf.write(&bin, &mark);
            if marked == Err(SaveError::Full) {
                // There was none. The one slot needs no pointer, and a shorter mark fits in its place.
                self.shelf.remove(&key(POINTER, id));
                marked = self.shelf.write(&bin, &mark).or_else(|_| self.shelf.write(&bin, "0"));
            }
        }
        marked
    }

    /// The bin, last deleted first. `changed` is when it was deleted.
    pub fn deleted(&self) -> Vec<Listing> {
        self.listings(true)
    }

    /// Takes a project out of the bin again.
    pub fn restore(&self, id: &str) {
        self.shelf.remove(&key(BIN, id));
    }

    /// Removes a project for good. There is no way back: ask first.
    pub fn forget(&self, id: &str) {
        // The mark of the bin goes last: a page closed halfway leaves nothing that shows up again.
        self.forget_versions(id);
        for kind in SLOTS.into_iter().chain([POINTER, DAMAGED, BEFORE, RECEIVED, BIN]) {
            self.shelf.remove(&key(kind, id));
        }
    }

    /// Removes for good what has been in the bin the longest, to make room, and returns it; none
    /// where the bin is empty. Say so first.
    pub fn forget_oldest(&self) -> Option<Listing> {
        let oldest = self.deleted().pop()?;
        self.forget(&oldest.id);
        Some(oldest)
    }

    /// Calls back with the id of a project that another window saved, deleted or restored, or that the
    /// journal brought back; with an empty id where all data of the page was cleared. Watches for as
    /// long as the page lives.
    pub fn watch(&self, on_change: impl Fn(String) + 'static) {
        let on_change = recovery::watch_too(on_change);
        let seen =
            Closure::<dyn Fn(web_sys::StorageEvent)>::new(move |event: web_sys::StorageEvent| {
                let Some(whole) = event.key() else {
                    on_change(String::new());
                    return;
                };
                let own = shelf::own_part(&whole);
                if let Some((POINTER | BIN, id)) =
                    own.as_deref().and_then(|own| own.split_once(' '))
                {
                    on_change(id.to_owned());
                }
            });
        if let Some(window) = web_sys::window() {
            let listener = seen.as_ref().unchecked_ref();
            // Where the browser has no such events, the check at each save still guards.
            let _ = window.add_event_listener_with_callback("storage", listener);
        }
        seen.forget();
    }

    /// A setting of this device, such as the theme. Losing it is harmless.
    pub fn setting(&self, name: &str) -> Option<String> {
        self.shelf.read(&key(SETTING, name))
    }

    /// Keeps a setting of this device; where there is no room it is lost.
    pub fn set_setting(&self, name: &str, value: &str) {
        // Losing a setting is harmless.
        let _ = self.shelf.write(&key(SETTING, name), value);
    }

    /// The share of the browser's room for this page's host that is used up: 0 to about 1.
    pub fn room_used(&self) -> f64 {
        self.shelf.used_chars() as f64 / ROOM_CHARS as f64
    }

    /// The projects that use the most room with their copies and versions, the largest first: name and
    /// characters. What is in the bin counts too.
    pub fn largest(&self) -> Vec<(String, usize)> {
        let mut sizes: Vec<(String, usize)> = Vec::new();
        for listing in self.list().into_iter().chain(self.deleted()) {
            let mut chars = 0;
            for key in self.shelf.keys() {
                let Some((kind, rest)) = key.split_once(' ') else { continue };
                let of = if kind == versions::VERSION_KIND {
                    rest.rsplit_once(' ').map_or(rest, |(of, _)| of)
                } else {
                    rest
                };
                if of == listing.id && kind != SETTING {
                    chars += self.shelf.read(&key).map_or(0, |text| text.encode_utf16().count());
                }
            }
            let place = sizes.iter().position(|(_, other)| *other < chars);
            sizes.insert(place.unwrap_or(sizes.len()), (listing.name, chars));
        }
        sizes.truncate(MOST_LARGEST);
        sizes
    }

    /// Whether a project is in the bin.
    pub fn is_deleted(&self, id: &str) -> bool {
        self.shelf.read(&key(BIN, id)).is_some()
    }

    fn listings(&self, deleted: bool) -> Vec<Listing> {
        let mut ids: Vec<String> = Vec::new();
        for key in self.shelf.keys() {
            if let Some((kind, id)) = key.split_once(' ')
                && SLOTS.contains(&kind)
                && !ids.iter().any(|known| known == id)
            {
                ids.push(id.to_owned());
            }
        }
        let mut listings: Vec<Listing> = Vec::new();
        for id in ids {
            let mark = self.shelf.read(&key(BIN, &id));
            if mark.is_some() != deleted {
                continue;
            }
            let mut listing = self.listing(id);
            if let Some(mark) = mark {
                listing.changed = from_digits(&mark).unwrap_or(0.0);
            }
            let place = listings.iter().position(|other| other.changed < listing.changed);
            listings.insert(place.unwrap_or(listings.len()), listing);
        }
        listings
    }

    fn listing(&self, id: String) -> Listing {
        let (changed, chars) = match Record::read(self.shelf, &id).standing() {
            Some((_, slot)) => (slot.changed as f64, slot.document.encode_utf16().count()),
            None => (0.0, 0),
        };
        let (name, state) = match self.load(&id) {
            Ok(loaded) => (loaded.project.name().to_owned(), ListingState::Fine),
            Err(LoadFailure { reason: FailureReason::Newer { found }, raw }) => {
                let document: Option<Node> =
                    raw.as_deref().and_then(|raw| serde_json::from_str(raw).ok());
                let name = document.as_ref().and_then(|document| document.get("name")?.as_str());
                (name.unwrap_or_default().to_owned(), ListingState::Newer { found })
            }
            Err(_) => (String::new(), ListingState::Damaged),
        };
        Listing { id, name, changed, chars, state }
    }
}

/// A new id: short, fit for an address, and not to be guessed or met again.
pub fn new_id() -> String {
    let mut bytes = [0_u8; 12];
    let drawn = web_sys::window()
        .and_then(|window| window.crypto().ok())
        .is_some_and(|crypto| crypto.get_random_values_with_u8_array(&mut bytes).is_ok());
    if !drawn {
        for byte in &mut bytes {
            *byte = (js_sys::Math::random() * 256.0) as u8;
        }
    }
    const LETTERS: &[u8; 32] = b"abcdefghijkmnpqrstuvwxyz23456789";
    bytes.iter().map(|byte| char::from(LETTERS[usize::from(byte % 32)])).collect()
}

/// The kind of key that keeps a setting.
const SETTING: &str = "set";

fn key(kind: &str, id: &str) -> String {
    [kind, " ", id].concat()
}
