//! What is kept of one project, and the write that cannot harm it.

use calc::project::{LoadError, Project, VERSION};

use super::shelf::Shelf;
use super::slot::{self, Slot};
use super::{SaveError, key};

/// The two slots, as kinds of keys.
pub const SLOTS: [&str; 2] = ["a", "b"];
/// The kind of key that names the slot in use, and the revision in it: `a 1048577`.
pub const POINTER: &str = "ptr";
/// The kind of key that keeps a damaged text when its slot is needed.
pub const DAMAGED: &str = "damaged";
/// The kind of key that keeps the text before the format was brought up to date.
pub const BEFORE: &str = "before";
/// The kind of key that says that a project is in the bin, and since when.
pub const BIN: &str = "bin";

/// Revisions count in the upper bits; the lower ones are drawn, so that two windows never make the
/// same.
const DRAWN_BITS: u32 = 20;

/// What is kept of one project, read at once.
#[derive(Debug)]
pub struct Record {
    /// The pointer: the number of the slot in use, and its revision.
    pointer: Option<(usize, u64)>,
    slots: [Option<String>; 2],
}

impl Record {
    /// Reads what is kept under an id.
    pub fn read(shelf: Shelf, id: &str) -> Self {
        let pointer = shelf.read(&key(POINTER, id));
        Self {
            pointer: pointer.as_deref().and_then(read_pointer),
            slots: SLOTS.map(|slot| shelf.read(&key(slot, id))),
        }
    }

    /// Whether neither slot is there.
    pub fn is_empty(&self) -> bool {
        self.slots.iter().all(Option::is_none)
    }

    /// A slot, where it is there.
    pub fn slot(&self, number: usize) -> Option<Slot<'_>> {
        self.slots[number].as_deref().map(slot::read)
    }

    /// The numbers of the slots, the one in use first. Without a pointer that is the one that was
    /// written last.
    pub fn order(&self) -> [usize; 2] {
        let first = match self.pointer {
            Some((number, _)) => number,
            None => {
                let rank = |number| self.slot(number).map(|slot| (slot.intact, slot.revision));
                usize::from(rank(1) > rank(0))
            }
        };
        [first, 1 - first]
    }

    /// The first slot in order that is intact, and its number.
    pub fn standing(&self) -> Option<(usize, Slot<'_>)> {
        let intact =
            |number| self.slot(number).filter(|slot| slot.intact).map(|slot| (number, slot));
        let [first, second] = self.order();
        intact(first).or_else(|| intact(second))
    }

    /// The revision that the pointer names; 0 without one.
    pub fn written(&self) -> u64 {
        self.pointer.map_or(0, |(_, revision)| revision)
    }

    /// Whether the slot with this number is older than what was saved last, as far as can be told: the
    /// pointer names another or a later write, or there is no pointer and the other slot is damaged.
    pub fn is_behind(&self, number: usize) -> bool {
        let revision = self.slot(number).map_or(0, |slot| slot.revision);
        match self.pointer {
            // The drawn bits say nothing of which is later.
            Some((pointed, written)) => {
                pointed != number || written >> DRAWN_BITS > revision >> DRAWN_BITS
            }
            None => self.slot(1 - number).is_some_and(|other| !other.intact),
        }
    }

    /// The record that another store has of the same project, given its three texts.
    pub fn of(pointer: Option<&str>, slots: [Option<String>; 2]) -> Self {
        Self { pointer: pointer.and_then(read_pointer), slots }
    }

    /// Takes the last good text of another store's record over where it is later than what stands
    /// here. What stands here stays as the copy before. True where it was later.
    pub fn take_over(&self, shelf: Shelf, id: &str, other: &Self) -> Result<bool, SaveError> {
        let Some((theirs, slot)) = other.standing() else { return Ok(false) };
        let standing = self.standing();
        if standing.is_some_and(|(_, own)| own.revision >= slot.revision) {
            return Ok(false);
        }
        let target = standing.map_or(self.order()[0], |(number, _)| 1 - number);
        self.set_aside(shelf, id, target)?;
        let whole = other.slots[theirs].as_deref().unwrap_or_default();
        shelf.take(&key(SLOTS[target], id), Some(whole))?;
        let pointer = [SLOTS[target], " ", &slot.revision.to_string()].concat();
        shelf.take(&key(POINTER, id), Some(&pointer))?;
        Ok(true)
    }

    /// The text of the slot in use where it is damaged.
    pub fn damaged(&self) -> Option<&str> {
        let slot = self.slot(self.order()[0])?;
        (!slot.intact).then_some(slot.document)
    }

    /// The format version and the document of a slot that a newer program wrote, even one that frames
    /// its slots in another way.
    pub fn newer(&self) -> Option<(u64, &str)> {
        self.order().into_iter().find_map(|number| {
            let slot = self.slot(number)?;
            let found = if slot.intact {
                Some(slot.format).filter(|format| *format > VERSION)
            } else {
                match Project::from_text(slot.document) {
                    Err(LoadError::TooNew { found }) => Some(found),
                    _ => None,
                }
            };
            found.map(|found| (found, slot.document))
        })
    }

    /// Writes a document that came from a revision, and from those in `before` beside that one's own;
    /// returns its revision.
    pub fn write(
        &self,
        shelf: Shelf,
        id: &str,
        from: u64,
        before: &[u64],
        document: &str,
    ) -> Result<u64, SaveError> {
        let standing = self.standing();
        self.check(standing, from)?;
        let pointed = self.order()[0];
        let (target, latest) = match standing {
            Some((number, slot)) => {
                if number == pointed && slot.document == document {
                    return Ok(slot.revision);
                }
                (1 - number, slot.revision)
            }
            None if self.is_empty() => (0, 0),
            None => (1 - pointed, 0),
        };
        self.set_aside(shelf, id, target)?;
        let pointer_key = key(POINTER, id);
        let latest = latest.max(from).max(self.written());
        let revision = next_revision(latest);
        let changed = js_sys::Date::now() as u64;
        let of_slot = standing.map(|(_, slot)| slot.line_of()).unwrap_or_default();
        let before = slot::in_order(&of_slot, before);
        let whole = slot::compose(revision, changed, VERSION, &before, document);
        let target_key = key(SLOTS[target], id);
        shelf.write(&target_key, &whole)?;
        if shelf.read(&target_key).as_deref() != Some(&whole) {
            shelf.remove(&target_key);
            return Err(SaveError::NotKept);
        }
        let pointer = shelf.read(&pointer_key);
        if pointer.as_deref().and_then(read_pointer) != self.pointer {
            // Another window was faster; its pointer may name this very slot, so it is left.
            return Err(SaveError::Moved);
        }
        let pointer = [SLOTS[target], " ", &revision.to_string()].concat();
        if let Err(error) = shelf.write(&pointer_key, &pointer) {
            shelf.remove(&target_key);
            return Err(error);
        }
        Ok(revision)
    }

    /// Whether a document that came from a revision may follow what is kept.
    fn check(&self, standing: Option<(usize, Slot<'_>)>, from: u64) -> Result<(), SaveError> {
        if self.is_empty() {
            // New, or all data was cleared while it was open: nothing can be overwritten.
            return Ok(());
        }
        if let Some((found, _)) = self.newer() {
            return Err(SaveError::Newer { found });
        }
        // Where the slot in use was damaged, whoever wrote it last may write it again.
        let pointed = standing.is_some_and(|(number, _)| number == self.order()[0]);
        let follows = standing.is_some_and(|(_, slot)| slot.revision == from);
        if follows || (!pointed && self.written() == from) { Ok(()) } else { Err(SaveError::Moved) }
    }

    /// Keeps what a write would lose beyond the copy before: a damaged text, and the text in an
    /// older format.
    fn set_aside(&self, shelf: Shelf, id: &str, target: usize) -> Result<(), SaveError> {
        if let Some(slot) = self.slot(target).filter(|slot| !slot.intact) {
            shelf.write(&key(DAMAGED, id), slot.document)?;
        }
        match self.standing() {
            Some((_, slot)) if slot.format < VERSION => {
                shelf.write(&key(BEFORE, id), slot.document)
            }
            _ => Ok(()),
        }
    }
}

fn read_pointer(text: &str) -> Option<(usize, u64)> {
    let (name, revision) = text.split_once(' ')?;
    let number = SLOTS.iter().position(|slot| *slot == name)?;
    Some((number, revision.parse().ok()?))
}

fn next_revision(latest: u64) -> u64 {
    let drawn = (js_sys::Math::random() * f64::from(1_u32 << DRAWN_BITS)) as u64;
    (((latest >> DRAWN_BITS) + 1) << DRAWN_BITS) | drawn
}
