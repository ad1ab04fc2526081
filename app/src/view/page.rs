//! What every part of an editing page knows: the open project, where its inputs stand, what is wrong with them.

use std::collections::BTreeMap;

use calc::fault::Fault;
use calc::project::Place;
use leptos::prelude::*;

use crate::desk::Desk;

/// An editing page: the body's or a sheet's.
#[derive(Clone)]
pub struct Page {
    /// The open project.
    pub desk: Desk,
    /// Where the page's inputs stand.
    pub place: Place,
    /// What is wrong with them, by path.
    faults: Memo<BTreeMap<String, String>>,
}

impl Page {
    /// The page of the body or of a sheet.
    pub fn new(desk: Desk, place: Place) -> Self {
        let at = place.clone();
        let faults = Memo::new(move |_| {
            desk.evaluation.with(|all| {
                let faults: &[Fault] = match &at {
                    Place::Body => &all.body.faults,
                    Place::Sheet(id) => match all.sheet(id) {
                        Some(Err(faults)) => faults,
                        _ => &[],
                    },
                };
                let mut by_path = BTreeMap::new();
                for fault in faults {
                    by_path.entry(fault.field.clone()).or_insert_with(|| fault.message.clone());
                }
                by_path
            })
        });
        Self { desk, place, faults }
    }

    /// All faults of the page, by path.
    pub fn faults(&self) -> Memo<BTreeMap<String, String>> {
        self.faults
    }

    /// What is wrong with the input at a path.
    pub fn fault_at(&self, path: &str) -> Memo<Option<String>> {
        let (faults, path) = (self.faults, path.to_owned());
        Memo::new(move |_| faults.with(|faults| faults.get(&path).cloned()))
    }

    /// The id of the element for the input at a path.
    pub fn id_of(&self, path: &str) -> String {
        element_id(path)
    }
}

/// The id of the element for the input at a path.
pub fn element_id(path: &str) -> String {
    format!("in-{}", path.replace('.', "-"))
}

/// The width that the page has for drawings, kept up to date. [px]
pub fn width_of_results() -> RwSignal<f64> {
    let width = RwSignal::new(358.0);
    let measure = move || {
        let Ok(Some(results)) = document().query_selector(".results") else { return };
        let now = f64::from(results.client_width());
        // Not laid out yet: keep what was there.
        if now > 0.0 && width.try_get_untracked().is_some_and(|before| before != now) {
            width.set(now);
        }
    };
    request_animation_frame(measure);
    let resized = window_event_listener(leptos::ev::resize, move |_| measure());
    on_cleanup(move || resized.remove());
    width
}
