//! What a window holds of a project that it has open, and how it is saved beside other windows.
//!
//! A save is refused when another window has saved since. Then the other's changes are taken in,
//! field by field, from the last state that both had in common, and the save is tried again. Only
//! where both have changed one field is the project as it stands here saved as one of its own.

use calc::project::{Node, Project};

use super::merge::merge;
use super::{Loaded, SaveError, Store};

/// What a window saves is known to the others after this time. [ms]
const KNOWN_MS: f64 = 1500.0;

/// So often another window's changes are taken in for one save.
const MOST_TRIES: usize = 5;

/// The states of an open project that other windows' changes may have come from.
#[derive(Clone, Debug, Default)]
pub struct Held {
    revision: u64,
    /// The last states that were loaded or saved here, the last one at the end.
    states: Vec<State>,
}

#[derive(Clone, Debug)]
struct State {
    revision: u64,
    /// When it was saved here; 0 for a state that was loaded. [ms since 1970]
    at: f64,
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
        Self { revision, states: Vec::new() }
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
            match store.save_text(id, &text, self.revision) {
                Ok(revision) => {
                    self.note(revision, text);
                    return Outcome { kept: Ok(Kept::Together), project: stands };
                }
                Err(SaveError::Moved) => {}
                Err(error) => return Outcome { kept: Err(error), project: stands },
            }
            let Ok(theirs) = store.load(id) else { break };
            let there = theirs.project.to_text();
            let both = match self.base_of(&theirs).map(|base| put_together(base, &text, &there)) {
                Some(both) => both,
                // Nothing is known of where the two come from.
                None if text == there => Ok(text.clone()),
                None => Err(String::new()),
            };
            match both {
                Ok(both) => {
                    self.begin_at(theirs.revision, there);
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
            if self.last().is_some_and(|last| follows(&theirs, last)) {
                self.begin_at(theirs.revision, theirs.project.to_text());
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
        match store.save_copy(project, "other window") {
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
        self.states = vec![State { revision, at: 0.0, text }];
    }

    fn note(&mut self, revision: u64, text: String) {
        let now = js_sys::Date::now();
        self.revision = revision;
        self.states.push(State { revision, at: now, text });
        // This save was taken over the state before, so what is older than that is settled.
        let settled = self.states.iter().rposition(|state| now - state.at > KNOWN_MS);
        self.states.drain(..settled.unwrap_or(0));
    }

    fn last(&self) -> Option<&State> {
        self.states.last()
    }

    /// The last state here that another window's save has come from, as far as can be told; of what
    /// is not certain, the earliest.
    fn base_of(&self, theirs: &Loaded) -> Option<&str> {
        let state = self.states.iter().rev().find(|state| follows(theirs, state));
        Some(state.or_else(|| self.states.first())?.text.as_str())
    }
}

/// Whether a save has come from a state here.
fn follows(theirs: &Loaded, state: &State) -> bool {
    theirs.revision == state.revision
        || theirs.before.contains(&state.revision)
        || theirs.changed as f64 > state.at + KNOWN_MS
}

/// The text of both put together; where that cannot be, the field that is in the way.
fn put_together(base: &str, mine: &str, theirs: &str) -> Result<String, String> {
    let read = |text: &str| serde_json::from_str::<Node>(text).unwrap_or(Node::Null);
    let (base, mine, theirs) = (read(base), read(mine), read(theirs));
    match merge(&base, &mine, &theirs) {
        Ok(both) => Ok(serde_json::to_string_pretty(&both).unwrap_or_default()),
        Err(conflict) => Err(conflict.0.join(" › ")),
    }
}
