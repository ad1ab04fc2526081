//! A project made ready to be passed on by link or by codes, and taken in from them.

use calc::project::{MAX_BYTES, Project};

use super::import::{Import, ImportError, keep, read};
use super::link::{BadLink, Carried, compact, from_letters, join, read_link, to_letters};
use super::pack::{pack, unpack};
use crate::storage::{ListingState, SaveError, Store};
use crate::words::say;
use calc::words::app_keep as words;

/// What a link or a code brings. Nothing of it is kept yet, but for further codes of a sequence whose first one was.
#[derive(Clone, Debug, PartialEq)]
pub enum Arrived {
    /// A whole project, to be kept or not.
    Whole(Offer),
    /// The very same project is here already, under this id.
    Known(String),
    /// The first code of a sequence, to be kept until the others come, or not.
    FirstPart {
        /// The code's number.
        number: usize,
        /// How many there are in all.
        count: usize,
    },
    /// A code was kept beside those of its sequence; others are still to come.
    Waiting {
        /// The code's number.
        number: usize,
        /// The numbers that have not come.
        missing: Vec<usize>,
        /// How many there are in all.
        count: usize,
    },
}

/// A project that came, and what keeping it would take.
#[derive(Clone, Debug, PartialEq)]
pub struct Offer {
    /// The project as read.
    pub project: Project,
    /// The size of its file. [bytes]
    pub bytes: usize,
    /// The share of the browser's room for this page that it would use, as it is kept: 0 to 1 and more.
    pub room: f64,
    /// Whether a project of the same origin is here: it stays as it is, and this one stands beside it.
    pub beside: bool,
    /// The sequence of codes that it came by.
    set: Option<(String, usize)>,
}

/// A project that was taken in.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Taken {
    /// Its id.
    pub id: String,
    /// The project of the same origin that was here already.
    pub beside: Option<String>,
}

/// The data of a project's link; none where this browser cannot pack.
pub async fn data_of(project: &Project) -> Option<String> {
    Some(to_letters(&pack(compact(&project.to_text()).as_bytes()).await?))
}

/// Reads what an address below `#/get/` carries. Of a sequence that is new here nothing is kept unless `keep_codes`.
///
/// # Errors
/// What went wrong, in words. A part that cannot be kept is told too: the sequence would never end.
pub async fn look_at(store: Store, text: &str, keep_codes: bool) -> Result<Arrived, String> {
    let bad = |error: BadLink| say(words::LinkRefused { why: error.to_string() });
    let mut from = None;
    let data = match read_link(text).map_err(bad)? {
        Carried::Whole(data) => data,
        Carried::Part { number, count, set, data } => {
            let here = || {
                let mut sets = store.part_sets().into_iter();
                sets.find(|one| one.id == set && one.count == count)
            };
            if here().is_none() && !keep_codes {
                return Ok(Arrived::FirstPart { number, count });
            }
            if !store.keep_part(&set, count, number, &data) {
                return Err(say(words::CODE_NO_ROOM));
            }
            let Some(here) = here() else { return Err(bad(BadLink::NotTogether)) };
            let missing = here.missing();
            if !missing.is_empty() {
                return Ok(Arrived::Waiting { number, missing, count });
            }
            let joined = join(&set, &here.parts);
            if joined.is_err() {
                store.forget_parts(&set, count);
            }
            from = Some((set, count));
            joined.map_err(bad)?
        }
    };
    let project = project_of(&data).await?;
    let text = project.to_text();
    let offer = Offer {
        bytes: text.len(),
        room: store.room_for(&text),
        beside: store.has(project.id()),
        project,
        set: from,
    };
    match known(store, &offer.project) {
        Some(id) => {
            leave(store, &offer);
            Ok(Arrived::Known(id))
        }
        None => Ok(Arrived::Whole(offer)),
    }
}

/// Keeps what was offered, beside what is here.
///
/// # Errors
/// As `Store::save`; nothing has changed then.
pub fn take_in(store: Store, offer: &Offer) -> Result<Taken, SaveError> {
    let there = offer.project.id().to_owned();
    let kept = keep(store, offer.project.clone())?;
    leave(store, offer);
    let id = kept.project.id().to_owned();
    let beside = (id != there && store.received(&id).is_some()).then_some(there);
    if beside.is_none() {
        store.set_received(&id, "");
    }
    Ok(Taken { id, beside })
}

/// Drops what is kept of an offer: the codes that it came by.
pub fn leave(store: Store, offer: &Offer) {
    if let Some((set, count)) = &offer.set {
        store.forget_parts(set, *count);
    }
}

/// The project that a link's data holds.
///
/// # Errors
/// Why it cannot be taken, in words.
pub async fn project_of(data: &str) -> Result<Project, String> {
    let unpacked = match from_letters(data) {
        Some(bytes) => unpack(&bytes, MAX_BYTES).await,
        None => Err(BadLink::Damaged),
    };
    let bad = |error: BadLink| say(words::LinkRefused { why: error.to_string() });
    let bytes = unpacked.map_err(bad)?;
    let whole = String::from_utf8(bytes).map_err(|_| bad(BadLink::Damaged))?;
    match read(&whole) {
        Ok(Import::One(project)) => Ok(project),
        Ok(Import::Many { .. }) => {
            let none = ImportError::Project(calc::project::LoadError::NoVersion);
            Err(none.to_string())
        }
        Err(error) => Err(error.to_string()),
    }
}

/// The id under which the very same project is here already.
fn known(store: Store, project: &Project) -> Option<String> {
    let same = |id: &str| {
        store.load(id).is_ok_and(|loaded| {
            let mut here = loaded.project;
            here.set_id(project.id());
            here == *project
        })
    };
    let listings = store.list();
    let fine = listings.into_iter().filter(|one| one.state == ListingState::Fine);
    fine.map(|one| one.id)
        .filter(|id| id == project.id() || store.received(id).as_deref() == Some(project.id()))
        .find(|id| same(id))
}
