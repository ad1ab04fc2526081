//! What a window holds of a project that it has open, and how it is saved beside other windows.
//!
//! A save is refused when another window has saved since. Then the other's changes are taken in,
//! field by field, from the last state that both had in common, and the save is tried again. Only
//! where both have changed one field is the project as it stands here saved as one of its own.
//!
//! Each save names the revisions that it has come from, also those that another window's was put
//! together with here. By them each window sees which of the states that it has had are in what the
//! other has saved; all of these are what the two have in common.

use calc::words::app_start;

use crate::words::text;
use calc::project::{Node, Project};

use super::merge::merge;
use super::slot::in_order;
use super::{Loaded, SaveError, Store};

/// What a window saves is known to the others after this time. [ms]
const KNOWN_MS: f64 = 1500.0;

/// The most states that are kept to be looked at.
const MOST_STATES: usize = 64;

/// So often another window's changes are taken in for one save.
const MOST_TRIES: usize = 5;

/// The states of an open project that other windows' changes may have come from.
#[derive(Clone, Debug, Default)]
pub struct Held {
    revision: u64,
    /// The last revisions that what stands here has come from, the last one first.
    before: Vec<u64>,
    /// The last states that were loaded or saved here, the last one at the end: what stands here has
    /// come from each of them.
    states: Vec<State>,
}

#[derive(Clone, Debug)]
struct State {
    revision: u64,
    /// When it was saved or taken in here; 0 for the state that was loaded. [ms since 1970]
    at: f64,
    /// Saved here, not by another window.
    own: bool,
    text: String,
}

/// How a save ended.
#[derive(Clone, Debug, PartialEq)]
pub enum Kept {
    /// The project is kept, with the other windows' changes.
    Together,
    /// Another window has changed the same field. It is kept there; what stands here is kept as a
    /// project of its own, which goes on here.
    Apart {
        /// The field, in the words that the project has for it.
        field: String,
    },
}

/// What a save has brought.
#[derive(Clone, Debug, PartialEq)]
pub struct Outcome {
    /// How it ended.
    pub kept: Result<Kept, SaveError>,
    /// The project as it stands now, where it is not what was to be saved.
    pub project: Option<Project>,
}

impl Held {
    /// A project as it was loaded.
    pub fn new(project: &Project, revision: u64) -> Self {
        let mut held = Self::default();
        held.begin_at(revision, project.to_text());
        held
    }

    /// A project whose earlier states are not known.
    pub fn over(revision: u64) -> Self {
        Self { revision, ..Self::default() }
    }

    /// The revision that it was loaded or last saved with.
    pub fn revision(&self) -> u64 {
        self.revision
    }

    /// Saves the project as it stands here.
    pub fn save(&mut self, store: Store, project: &Project) -> Outcome {
        let id = project.id();
        let mut text = project.to_text();
        let mut stands = None;
        for _ in 0..MOST_TRIES {
            match store.save_text(id, &text, self.revision, &self.before) {
                Ok(revision) => {
                    self.note(revision, text);
                    return Outcome { kept: Ok(Kept::Together), project: stands };
                }
                Err(SaveError::Moved) => {}
                Err(error) => return Outcome { kept: Err(error), project: stands },
            }
            let Ok(theirs) = store.load(id) else { break };
            let there = theirs.project.to_text();
            let both = match self.bases_of(&theirs).as_slice() {
                // Nothing is known of where the two come from.
                [] if text == there => Ok(text.clone()),
                [] => Err(String::new()),
                bases => put_together(bases, &text, &there),
            };
            match both {
                Ok(both) => {
                    self.take_in(&theirs, there);
                    stands = Project::from_text(&both).ok();
                    text = both;
                }
                Err(field) => {
                    return self.save_apart(store, stands.as_ref().unwrap_or(project), field);
                }
            }
        }
        Outcome { kept: Err(SaveError::Moved), project: stands }
    }

    /// Looks at what another window has saved. `changed` says that something here waits to be saved.
    /// None where there is nothing new.
    pub fn catch_up(&mut self, store: Store, project: &Project, changed: bool) -> Option<Outcome> {
        if !changed {
            let theirs = store.load(project.id()).ok()?;
            if theirs.revision == self.revision {
                return None;
            }
            if self.states.last().is_some_and(|last| follows(&theirs, last)) {
                self.take_in(&theirs, theirs.project.to_text());
                return Some(Outcome { kept: Ok(Kept::Together), project: Some(theirs.project) });
            }
        }
        Some(self.save(store, project))
    }

    /// Takes what another window has saved, whatever stands here.
    pub fn give_way(&mut self, store: Store, id: &str) -> Option<Project> {
        let theirs = store.load(id).ok()?;
        self.begin_at(theirs.revision, theirs.project.to_text());
        Some(theirs.project)
    }

    fn save_apart(&mut self, store: Store, project: &Project, field: String) -> Outcome {
        match store.save_copy(project, text(app_start::WHY_WINDOW)) {
            Ok((copy, revision)) => {
                self.begin_at(revision, copy.to_text());
                Outcome { kept: Ok(Kept::Apart { field }), project: Some(copy) }
            }
            Err(SaveError::Full) => Outcome { kept: Err(SaveError::Full), project: None },
            Err(_) => Outcome { kept: Err(SaveError::Moved), project: None },
        }
    }

    fn begin_at(&mut self, revision: u64, text: String) {
        self.revision = revision;
        self.before = vec![revision];
        self.states = vec![State { revision, at: 0.0, own: false, text }];
    }

    fn note(&mut self, revision: u64, text: String) {
        self.before = in_order(&self.before, &[revision]);
        self.add(revision, true, text);
    }

    /// What another window has saved is a part of what stands here from now on.
    fn take_in(&mut self, theirs: &Loaded, text: String) {
        self.before = in_order(&in_order(&self.before, &theirs.before), &[theirs.revision]);
        self.add(theirs.revision, false, text);
    }

    fn add(&mut self, revision: u64, own: bool, text: String) {
        let now = js_sys::Date::now();
        self.revision = revision;
        self.states.push(State { revision, at: now, own, text });
        // Every window knows by now what is older than that.
        let settled = self.states.iter().rposition(|state| now - state.at > KNOWN_MS);
        let too_many = self.states.len().saturating_sub(MOST_STATES);
        self.states.drain(..settled.unwrap_or(0).max(too_many));
    }

    /// The states here that another window's save has come from too, as far as can be told, the last
    /// one first: the last that was saved here and the last that was taken in here, since windows that
    /// take each other in at the same time have no one state in common that is later than all others.
    /// Where none is certain, the earliest.
    fn bases_of(&self, theirs: &Loaded) -> Vec<&str> {
        let last = |own| self.states.iter().rposition(|one| one.own == own && follows(theirs, one));
        let mut found: Vec<usize> = last(true).into_iter().chain(last(false)).collect();
        if found.is_empty() && !self.states.is_empty() {
            found.push(0);
        }
        if found.is_sorted() {
            found.reverse();
        }
        found.into_iter().map(|index| self.states[index].text.as_str()).collect()
    }
}

/// Whether a save has come from a state here.
fn follows(theirs: &Loaded, state: &State) -> bool {
    if theirs.revision == state.revision || theirs.before.contains(&state.revision) {
        return true;
    }
    // Revisions stand in order: one that would stand before the last that is named is not there.
    let named = theirs.before.last().is_some_and(|last| *last < state.revision);
    !named && theirs.changed as f64 > state.at + KNOWN_MS
}

/// The text of both put together; where that cannot be, the field that is in the way.
fn put_together(bases: &[&str], mine: &str, theirs: &str) -> Result<String, String> {
    let read = |text: &str| serde_json::from_str::<Node>(text).unwrap_or(Node::Null);
    let bases: Vec<Node> = bases.iter().map(|base| read(base)).collect();
    let bases: Vec<&Node> = bases.iter().collect();
    match merge(&bases, &read(mine), &read(theirs)) {
        Ok(both) => Ok(serde_json::to_string_pretty(&both).unwrap_or_default()),
        Err(conflict) => Err(conflict.0.join(" › ")),
    }
}
