//! Projects that could not be saved: they stay in this tab wherever in the app one goes, and in the
//! journal where that works, until they are saved, saved to a file, or given up.

use std::cell::Cell;

use calc::project::Project;
use leptos::prelude::*;
use wasm_bindgen::prelude::Closure;
use wasm_bindgen::{JsCast, JsValue};

use super::Desk;
use crate::storage::{Held, Kept, SaveError, Store, Unkept};

/// A project that could not be saved.
#[derive(Clone)]
pub struct Unsaved {
    /// The project as it stands.
    pub project: Project,
    /// The states that it came from.
    pub held: Held,
    /// Why it could not be saved.
    pub error: SaveError,
}

thread_local! {
    /// Counted, not of the page that asks first: it outlives every page.
    static ALL: ArcRwSignal<Vec<Unsaved>> = ArcRwSignal::new(Vec::new());
    /// The desk of the open project.
    static OPEN: Cell<Option<Desk>> = const { Cell::new(None) };
    /// What the browser asks before it leaves the page.
    static GUARD: Closure<dyn Fn(web_sys::Event)> = Closure::new(|event: web_sys::Event| {
        event.prevent_default();
        // Some browsers ask only where this is set too.
        let _ = js_sys::Reflect::set(
            &event,
            &JsValue::from_str("returnValue"),
            &JsValue::from_str("unsaved"),
        );
    });
}

/// All of them.
pub fn all() -> ArcRwSignal<Vec<Unsaved>> {
    ALL.with(Clone::clone)
}

/// The one with this id.
pub fn find(id: &str) -> Option<Unsaved> {
    all().with_untracked(|all| all.iter().find(|one| one.project.id() == id).cloned())
}

/// Keeps one.
pub fn put(store: Store, one: Unsaved) {
    store.keep_unkept(&one.project, one.held.revision());
    all().update(|all| {
        all.retain(|other| other.project.id() != one.project.id());
        all.push(one);
    });
    guard();
}

/// Drops one that is saved by now or given up.
pub fn drop_one(store: Store, id: &str) {
    if find(id).is_some() {
        store.forget_unkept(id);
        all().update(|all| all.retain(|one| one.project.id() != id));
        guard();
    }
}

/// Takes in what an earlier visit could not save, and tries to save it.
pub fn recall(store: Store, unkept: Vec<Unkept>) {
    for Unkept { project, revision } in unkept {
        let held = Held::over(revision);
        put(store, Unsaved { project, held, error: SaveError::Full });
    }
    try_again(store);
}

/// Tries to save all of them, as there may be room by now. Those in the bin wait there.
pub fn try_again(store: Store) {
    let open = OPEN.get();
    let open_id = open.map(|desk| desk.project.with_untracked(|project| project.id().to_owned()));
    for mut one in all().get_untracked() {
        let id = one.project.id().to_owned();
        if store.is_deleted(&id) {
            continue;
        }
        if let Some(desk) = open.filter(|_| open_id.as_ref() == Some(&id)) {
            desk.save();
            continue;
        }
        let outcome = one.held.save(store, &one.project);
        match outcome.kept {
            Ok(Kept::Together | Kept::Apart { .. }) => drop_one(store, &id),
            Err(error) => {
                let project = outcome.project.unwrap_or(one.project);
                put(store, Unsaved { project, held: one.held, error });
            }
        }
    }
}

/// The desk of the open project begins or ends.
pub(super) fn set_open(desk: Option<Desk>) {
    OPEN.set(desk);
}

/// Has the browser ask before it leaves the page as long as anything is not saved.
fn guard() {
    let any = all().with_untracked(|all| !all.is_empty());
    GUARD.with(|guard| {
        window().set_onbeforeunload(any.then(|| guard.as_ref().unchecked_ref()));
    });
}
