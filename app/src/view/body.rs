//! The page of the measured body: every sheet that needs its measures takes them from here.

use calc::project::{BODY_ASKS, Place};
use leptos::prelude::*;

use super::asks::asks;
use super::drawing::DrawingView;
use super::page::Page;
use crate::desk::Desk;

/// The page.
pub fn body_page(desk: Desk) -> AnyView {
    let page = Page::new(desk, Place::Body);
    let inputs = asks(&page, BODY_ASKS, "");
    let plan = move || {
        let style = desk.project.with(calc::project::Project::style);
        desk.evaluation.with(|all| calc::project::plan(&all.body, style))
    };
    view! {
        <h1 tabindex="-1">"The body"</h1>
        <p class="purpose">
            "Measure it once. x runs from the front wall to the rear, y from the left wall to the right, seen facing forward."
        </p>
        <div class="sheet">
            <section class="inputs" aria-label="Measurements">{inputs}</section>
            <section class="results" aria-label="Plan">
                {move || plan().map(|drawing| view! { <DrawingView drawing=drawing /> })}
            </section>
        </div>
    }
    .into_any()
}
