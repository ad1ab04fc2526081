//! The open project: its state, what is derived from it, undo and redo, and saving.

pub mod ready;
pub mod unsaved;

use std::sync::Arc;

use calc::ask::{Ask, Kind};
use calc::project::{Evaluation, Node, Place, Project};
use calc::quantity::Measure;
use leptos::prelude::*;

use crate::storage::{Held, Kept, Outcome, SaveError, Store};
use crate::words::{text, words};
use calc::words::app_start;
use unsaved::Unsaved;

/// Most steps that can be undone.
const MOST_STEPS: usize = 200;

/// The open project, as every page of it sees it.
#[derive(Clone, Copy)]
pub struct Desk {
    /// The project as typed.
    pub project: RwSignal<Project>,
    /// All that follows from it.
    pub evaluation: Memo<Arc<Evaluation>>,
    /// Why the last save failed, in words; none when all is kept.
    pub trouble: RwSignal<Option<SaveError>>,
    /// The line of the buy list that was looked at last: there one goes on.
    pub line: StoredValue<String>,
    history: RwSignal<History>,
    store: Store,
    held: StoredValue<Held>,
    save_waits: StoredValue<bool>,
    /// The field that this window and another have changed at once; empty where there is none.
    pub apart: RwSignal<String>,
}

/// What undo and redo go back and forth between.
#[derive(Clone, Default)]
struct History {
    past: Vec<Project>,
    future: Vec<Project>,
    /// The field that the last change was typed into: more typing there is the same step.
    field: Option<String>,
}

impl Desk {
    /// Opens a loaded project.
    pub fn new(store: Store, project: Project, revision: u64) -> Self {
        let held = Held::new(&project, revision);
        Self::with(store, project, held, None)
    }

    /// Opens a project that could not be saved, as it stood.
    pub fn resume(store: Store, one: Unsaved) -> Self {
        Self::with(store, one.project, one.held, Some(one.error))
    }

    fn with(store: Store, mut project: Project, held: Held, trouble: Option<SaveError>) -> Self {
        project.set_words(words());
        let project = RwSignal::new(project);
        let desk = Self {
            project,
            evaluation: Memo::new_with_compare(
                move |before: Option<&Arc<Evaluation>>| {
                    let ready = if before.is_none() { ready::take() } else { None };
                    let before = before.or(ready.as_ref()).map(Arc::as_ref);
                    Arc::new(project.with(|project| calc::project::evaluate_since(project, before)))
                },
                // It hangs on the project alone, which has changed; comparing whole reports is dear.
                |_, _| true,
            ),
            trouble: RwSignal::new(trouble),
            line: StoredValue::new(String::new()),
            history: RwSignal::new(History::default()),
            store,
            held: StoredValue::new(held),
            save_waits: StoredValue::new(false),
            apart: RwSignal::new(String::new()),
        };
        unsaved::set_open(Some(desk));
        on_cleanup(move || {
            desk.save_now();
            unsaved::set_open(None);
        });
        desk
    }

    /// Changes the project: one step that can be undone, saved at once.
    pub fn change(&self, change: impl FnOnce(&mut Project)) {
        self.step(None, change);
    }

    /// Keeps what is typed into a field. Typing on in one field is one step.
    pub fn type_into(&self, place: &Place, path: &str, ask: &Ask, text: &str) {
        let system = self.project.with_untracked(Project::system);
        let stored = stored_text(ask, text, ask.unit_in(system));
        if self.project.with_untracked(|project| project.typed(place, path)) == stored {
            return;
        }
        let field = match place {
            Place::Body => format!("body {path}"),
            Place::Sheet(id) => format!("{id} {path}"),
            Place::Shopping => format!("shopping {path}"),
            Place::Line(key) => format!("{key} {path}"),
        };
        self.step(Some(field), |project| project.set_typed(place, path, &ask.kind, &stored));
    }

    /// Ends the step that typing into a field belongs to.
    pub fn leave_field(&self) {
        self.history.update_untracked(|history| history.field = None);
    }

    /// Whether there is anything to undo, and to redo.
    pub fn steps(&self) -> (bool, bool) {
        self.history.with(|history| (!history.past.is_empty(), !history.future.is_empty()))
    }

    /// Takes the last step back.
    pub fn undo(&self) {
        self.turn(|history| (&mut history.past, &mut history.future));
    }

    /// Takes the last undo back.
    pub fn redo(&self) {
        self.turn(|history| (&mut history.future, &mut history.past));
    }

    /// Takes in what another window has saved. What is not saved yet here stays, and is put together
    /// with it.
    pub fn catch_up(&self) {
        let waits = self.save_waits.get_value() || self.trouble.with_untracked(Option::is_some);
        self.save_waits.set_value(false);
        let outcome = self.project.with_untracked(|project| {
            self.held.try_update_value(|held| held.catch_up(self.store, project, waits))
        });
        if let Some(Some(outcome)) = outcome {
            self.settle(outcome);
        }
    }

    /// Saves now what waits to be saved.
    pub fn save_now(&self) {
        if self.save_waits.try_get_value().unwrap_or(false) {
            self.save();
        }
    }

    /// Saves, whether it failed before or not.
    pub fn save(&self) {
        self.save_waits.set_value(false);
        let outcome = self.project.with_untracked(|project| {
            self.held.try_update_value(|held| held.save(self.store, project))
        });
        if let Some(outcome) = outcome {
            self.settle(outcome);
        }
    }

    /// Takes what another window has saved in place of what stands here.
    pub fn give_way(&self) {
        let id = self.project.with_untracked(|project| project.id().to_owned());
        let theirs = self.held.try_update_value(|held| held.give_way(self.store, &id)).flatten();
        if let Some(theirs) = theirs {
            unsaved::drop_one(self.store, &id);
            self.trouble.set(None);
            self.show(theirs);
        }
    }

    /// Saves the project as it stands here beside the other window's, and says under which id.
    pub fn save_as_copy(&self) -> Result<String, SaveError> {
        let (copy, _) = self
            .project
            .with_untracked(|project| self.store.save_copy(project, text(app_start::WHY_COPY)))?;
        self.save_waits.set_value(false);
        self.trouble.set(None);
        self.project.with_untracked(|project| unsaved::drop_one(self.store, project.id()));
        Ok(copy.id().to_owned())
    }

    /// What a save has brought: the page shows it, and what failed is kept in this tab.
    fn settle(&self, outcome: Outcome) {
        let id = self.project.with_untracked(|project| project.id().to_owned());
        if let Some(project) = outcome.project {
            self.show(project);
        }
        match outcome.kept {
            Ok(kept) => {
                unsaved::drop_one(self.store, &id);
                if self.trouble.with_untracked(Option::is_some) {
                    self.trouble.set(None);
                }
                if let Kept::Apart { field } = kept {
                    self.apart.set(field);
                }
            }
            Err(error) => {
                self.trouble.set(Some(error));
                let project = self.project.get_untracked();
                unsaved::put(self.store, Unsaved { project, held: self.held.get_value(), error });
            }
        }
    }

    /// Shows the project as another window's changes have made it. The steps before are no way back:
    /// they would undo those changes too.
    fn show(&self, mut project: Project) {
        project.set_words(words());
        self.history.set(History::default());
        self.project.set(project);
    }

    /// Where the project is kept.
    pub fn store(&self) -> Store {
        self.store
    }

    /// Whether anything was taken out that could be deleted for good to make room.
    pub fn bin_has_any(&self) -> bool {
        !self.store.deleted().is_empty()
    }

    /// Deletes for good what was taken out, and saves again.
    pub fn make_room(&self) {
        while self.store.forget_oldest().is_some() {}
        unsaved::try_again(self.store);
    }

    fn step(&self, field: Option<String>, change: impl FnOnce(&mut Project)) {
        // Typing on in a field copies no project: its step is there already.
        let goes_on = field.is_some() && self.history.with_untracked(|all| all.field == field);
        let before = (!goes_on).then(|| self.project.get_untracked());
        self.project.update(|project| {
            change(project);
            // A version that was gone back to is said in the language of now.
            project.set_words(words());
        });
        self.history.update(|history| {
            history.future.clear();
            if let Some(before) = before {
                history.past.push(before);
                if history.past.len() > MOST_STEPS {
                    history.past.remove(0);
                }
            }
            history.field = field;
        });
        self.save_soon();
    }

    fn turn(&self, ends: impl FnOnce(&mut History) -> (&mut Vec<Project>, &mut Vec<Project>)) {
        let now = self.project.get_untracked();
        let mut turned = None;
        self.history.update(|history| {
            history.field = None;
            let (from, to) = ends(history);
            turned = from.pop();
            if turned.is_some() {
                to.push(now);
            }
        });
        if let Some(project) = turned {
            self.project.set(project);
            self.save_soon();
        }
    }

    /// Saves as soon as the answer is painted, so that typing never waits for the storage.
    fn save_soon(&self) {
        if !self.save_waits.get_value() {
            self.save_waits.set_value(true);
            let desk = *self;
            set_timeout(move || desk.save_now(), std::time::Duration::ZERO);
        }
    }
}

/// What is kept of typed text: a bare number gets the unit that stands beside its field.
pub fn stored_text(ask: &Ask, text: &str, unit: Option<&'static calc::quantity::Unit>) -> String {
    match ask.kind {
        Kind::Measure { dimension, .. } => Measure::read(text, dimension, unit)
            .map_or_else(|_| text.trim().to_owned(), |measure| measure.stored()),
        Kind::Words => text.to_owned(),
        _ => text.trim().to_owned(),
    }
}

/// Ticked lines of a list, by key, with the quantity that was ticked off.
pub fn ticked(project: &Project, list: &str, key: &str) -> Option<f64> {
    project.extra("ticked")?.get(list)?.get(key)?.as_f64()
}

/// Ticks a line off with its quantity, or takes the tick back.
pub fn tick(project: &mut Project, list: &str, key: &str, quantity: Option<f64>) {
    let mut all = match project.extra("ticked") {
        Some(Node::Object(all)) => all.clone(),
        _ => serde_json::Map::new(),
    };
    let lines = all.entry(list).or_insert_with(|| serde_json::json!({}));
    if !lines.is_object() {
        *lines = serde_json::json!({});
    }
    if let Node::Object(lines) = lines {
        match quantity {
            Some(quantity) => {
                lines.insert(key.to_owned(), serde_json::json!(quantity));
            }
            None => {
                lines.shift_remove(key);
            }
        }
    }
    project.set_extra("ticked", Node::Object(all));
}
