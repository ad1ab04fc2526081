//! The page of the measured body: every sheet that needs its measures takes them from here.

use calc::project::{BODY_ASKS, Place, Project};
use leptos::prelude::*;

use super::drawing::push_drawing;
use super::form::form;
use super::html::shown;
use super::page::width_of_results;
use crate::desk::Desk;

/// The page.
pub fn body_page(desk: Desk) -> AnyView {
    let width = width_of_results();
    let plan = shown("found", move |html| {
        let style = desk.project.with(Project::style);
        if let Some(plan) = desk.evaluation.with(|all| calc::project::plan(&all.body, style)) {
            push_drawing(html, &plan, width.get(), 0);
        }
    });
    view! {
        <h1 tabindex="-1">"The body"</h1>
        <p class="purpose">
            "Measure it once. x runs from the front wall to the rear, y from the left wall to the right, seen facing forward."
        </p>
        <div class="sheet">
            <section class="inputs" aria-label="Measurements">{form(desk, Place::Body, BODY_ASKS)}</section>
            <section class="results" aria-label="Plan">{plan}</section>
        </div>
    }
    .into_any()
}
