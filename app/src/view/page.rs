//! What every editing page needs: what is wrong by path, the ids of its fields, its width.

use std::collections::BTreeMap;

use calc::fault::Fault;
use calc::project::{Evaluation, Place};
use leptos::prelude::*;

/// What is wrong with the inputs of a place, by path; the first thing said of each.
pub fn faults_by_path<'a>(all: &'a Evaluation, place: &Place) -> BTreeMap<&'a str, &'a str> {
    let faults: &[Fault] = match place {
        Place::Body => &all.body.faults,
        Place::Sheet(id) => match all.sheet(id) {
            Some(Err(faults)) => faults,
            Some(Ok(report)) => &report.faults,
            None => &[],
        },
        Place::Shopping => &all.shopping().faults,
        Place::Line(key) => all.shopping().line_faults.get(key).map_or(&[], Vec::as_slice),
    };
    let mut by_path = BTreeMap::new();
    for fault in faults {
        by_path.entry(fault.field.as_str()).or_insert(fault.message.as_str());
    }
    by_path
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
