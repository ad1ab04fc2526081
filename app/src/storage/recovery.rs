//! Which of the two stores is later, when the page is opened: what is missing on the shelf is brought
//! back from the journal, project by project by their revisions, and the journal is brought up to date.

use std::cell::RefCell;
use std::rc::Rc;

use calc::project::Project;

use super::record::{BIN, POINTER, Record, SLOTS};
use super::{Store, journal, key, slot};

/// What was found in the journal when the page was opened.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Found {
    /// Whether there is a journal; where there is none, a browser that is killed can lose a minute.
    pub works: bool,
    /// The names of projects that had not reached the first store, and were brought back.
    pub brought_back: Vec<String>,
    /// Projects that could not be saved then, as they stood.
    pub unkept: Vec<Unkept>,
}

/// A project that could not be saved, as it stood.
#[derive(Clone, Debug, PartialEq)]
pub struct Unkept {
    /// The project.
    pub project: Project,
    /// The revision that it was to be saved over.
    pub revision: u64,
}

type Watcher = Rc<dyn Fn(String)>;

thread_local! {
    /// Who is told of projects that are brought back while the page is open already.
    static WATCHERS: RefCell<Vec<Watcher>> = const { RefCell::new(Vec::new()) };
}

/// Has someone told too.
pub fn watch_too(on_change: impl Fn(String) + 'static) -> Watcher {
    let on_change: Watcher = Rc::new(on_change);
    WATCHERS.with_borrow_mut(|all| all.push(on_change.clone()));
    on_change
}

impl Store {
    /// Opens the journal and brings both stores to the later state of the two. Until that is done
    /// nothing is written to the journal; what is saved here meanwhile counts. `told` hears when
    /// writing to the journal begins to fail, and when it works again.
    pub async fn open_journal(self, told: fn(bool)) -> Found {
        journal::begin(self.shelf, told);
        match self.compare().await {
            Ok(found) => {
                journal::tell(false);
                journal::go_on();
                found
            }
            Err(_) => {
                journal::give_up();
                Found::default()
            }
        }
    }

    /// Whether the second store takes what is written.
    pub fn journal_works(&self) -> bool {
        journal::works()
    }

    /// Keeps a project that cannot be saved in the journal alone: there is room there.
    pub fn keep_unkept(&self, project: &Project, revision: u64) {
        let now = js_sys::Date::now() as u64;
        let text = slot::compose(revision, now, calc::project::VERSION, &[], &project.to_text());
        journal::keep_unkept(project.id(), Some(text));
    }

    /// Drops what `keep_unkept` kept.
    pub fn forget_unkept(&self, id: &str) {
        journal::keep_unkept(id, None);
    }

    async fn compare(&self) -> Result<Found, wasm_bindgen::JsValue> {
        let head = journal::head().await?;
        let mut found = Found { works: true, ..Found::default() };
        let own = self.shelf.read(journal::LATEST);
        if own != head.latest || self.any_damaged() {
            let copies = journal::copies().await?;
            found = self.take_over(&copies, number(&head.latest) > number(&own));
        }
        for (id, whole) in head.unkept {
            let whole = whole.unwrap_or_default();
            let slot = slot::read(&whole);
            if let Ok(mut project) = Project::from_text(slot.document) {
                project.set_id(&id);
                found.unkept.push(Unkept { project, revision: slot.revision });
            }
        }
        Ok(found)
    }

    /// Whether the slot in use of any project is missing or damaged.
    fn any_damaged(&self) -> bool {
        let pointers = self.shelf.keys();
        pointers.iter().filter_map(|key| key.strip_prefix("ptr ")).any(|id| {
            let record = Record::read(self.shelf, id);
            !record.slot(record.order()[0]).is_some_and(|slot| slot.intact)
        })
    }

    /// Brings the shelf up to date; `newer` says that the journal as a whole is the later one.
    fn take_over(&self, copies: &[(String, Option<String>)], newer: bool) -> Found {
        let shelf = self.shelf;
        let mut found = Found { works: true, ..Found::default() };
        let mut ids: Vec<&str> = Vec::new();
        for (whole, text) in copies {
            let Some((kind, id)) = whole.split_once(' ') else { continue };
            if SLOTS.contains(&kind) || kind == POINTER {
                if !ids.contains(&id) {
                    ids.push(id);
                }
            } else if newer && shelf.read(whole) != *text {
                // What has no room is still in the journal, and is tried again the next time.
                let _ = shelf.take(whole, text.as_deref());
            }
        }
        for id in ids {
            let of = |kind| {
                let wanted = key(kind, id);
                copies.iter().find(|(whole, _)| *whole == wanted)?.1.clone()
            };
            let theirs = Record::of(of(POINTER).as_deref(), SLOTS.map(of));
            let ours = Record::read(shelf, id);
            if theirs.is_empty() && newer {
                for kind in SLOTS.into_iter().chain([POINTER]) {
                    let _ = shelf.take(&key(kind, id), None);
                }
                continue;
            }
            // Gone from the shelf, which is the later one: deleted for good.
            if !newer && ours.is_empty() && shelf.read(&key(POINTER, id)).is_none() {
                continue;
            }
            let Some((_, slot)) = theirs.standing() else { continue };
            let same = ours.standing().is_some_and(|(_, own)| own.document == slot.document);
            let Ok(mut project) = Project::from_text(slot.document) else { continue };
            match ours.take_over(shelf, id, &theirs) {
                Ok(true) if !same => {
                    found.brought_back.push(project.name().to_owned());
                    tell(id);
                }
                Ok(_) => {}
                Err(_) => {
                    let revision = ours.standing().map_or(0, |(_, own)| own.revision);
                    project.set_id(id);
                    found.unkept.push(Unkept { project, revision });
                }
            }
        }
        self.copy_all(copies);
        found
    }

    /// Has the journal take all that is on the shelf by now.
    fn copy_all(&self, copies: &[(String, Option<String>)]) {
        for key in self.shelf.keys() {
            if key != journal::LATEST {
                journal::note(&key);
            }
        }
        for (key, text) in copies {
            if text.is_some() && key != journal::LATEST && self.shelf.read(key).is_none() {
                journal::note(key);
            }
        }
    }
}

fn number(text: &Option<String>) -> u64 {
    text.as_deref().and_then(|text| text.parse().ok()).unwrap_or(0)
}

/// Tells of a key that another window has written or removed, where it says that a project is another
/// one now.
pub fn tell_of(own: &str) {
    if let Some((POINTER | BIN, id)) = own.split_once(' ') {
        tell(id);
    }
}

fn tell(id: &str) {
    let all = WATCHERS.with_borrow(Vec::clone);
    for watcher in all {
        watcher(id.to_owned());
    }
}
