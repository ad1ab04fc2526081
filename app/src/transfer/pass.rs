//! A project made ready to be passed on by link or by codes, and taken in from them.

use calc::project::{MAX_BYTES, Project};

use super::import::{Import, ImportError, Refusal, keep, read};
use super::link::{BadLink, Carried, compact, from_letters, join, read_link, to_letters};
use super::pack::{pack, unpack};
use crate::storage::{ListingState, Store};

/// What became of a link.
#[derive(Clone, Debug, PartialEq)]
pub enum Received {
    /// The project is kept under this id, beside the one with the other id where there is one.
    Kept {
        /// Its id.
        id: String,
        /// The project of the same origin that was here already.
        beside: Option<String>,
    },
    /// The very same project is here already, under this id.
    Known(String),
    /// A part was kept; others are still to come.
    Waiting {
        /// The part's number.
        number: usize,
        /// The numbers that have not come.
        missing: Vec<usize>,
        /// How many there are in all.
        count: usize,
    },
}

/// The data of a project's link; none where this browser cannot pack.
pub async fn data_of(project: &Project) -> Option<String> {
    Some(to_letters(&pack(compact(&project.to_text()).as_bytes()).await?))
}

/// Takes in what an address below `#/get/` carries.
///
/// # Errors
/// What went wrong, in words. A part that cannot be kept is told too: the sequence would never end.
pub async fn receive(store: Store, text: &str) -> Result<Received, String> {
    let bad = |error: BadLink| ["Nothing was taken in: ", &error.to_string()].concat();
    let data = match read_link(text).map_err(bad)? {
        Carried::Whole(data) => data,
        Carried::Part { number, count, set, data } => {
            if !store.keep_part(&set, count, number, &data) {
                return Err(
                    "There is no room on this device to keep the code until the others come."
                        .to_owned(),
                );
            }
            let sets = store.part_sets();
            let Some(here) = sets.into_iter().find(|one| one.id == set && one.count == count)
            else {
                return Err(bad(BadLink::NotTogether));
            };
            let missing = here.missing();
            if !missing.is_empty() {
                return Ok(Received::Waiting { number, missing, count });
            }
            store.forget_parts(&set, count);
            join(&set, &here.parts).map_err(bad)?
        }
    };
    let project = project_of(&data).await?;
    if let Some(id) = known(store, &project) {
        return Ok(Received::Known(id));
    }
    let there = project.id().to_owned();
    let kept = keep(store, project).map_err(|error| error.to_string())?;
    let id = kept.project.id().to_owned();
    let beside = (id != there && store.received(&id).is_some()).then_some(there);
    if beside.is_none() {
        store.set_received(&id, "");
    }
    Ok(Received::Kept { id, beside })
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
    let damaged = "Nothing was taken in: ";
    let bytes = unpacked.map_err(|error| [damaged, &error.to_string()].concat())?;
    let text =
        String::from_utf8(bytes).map_err(|_| [damaged, &BadLink::Damaged.to_string()].concat())?;
    match read(&text) {
        Ok(Import::One(project)) => Ok(project),
        Ok(Import::Many { .. }) => {
            let none = ImportError::Project(Refusal::Load(calc::project::LoadError::NoVersion));
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
