//! The cut list over all sheets.

use calc::project::Project;
use leptos::prelude::*;

use super::html::shown;
use super::report::cut_line;
use crate::desk::Desk;

/// The page.
pub fn cuts_page(desk: Desk) -> AnyView {
    let lines = shown("part", move |html| {
        let style = desk.project.with(Project::style);
        let all = desk.evaluation.get();
        for line in &all.cut_list {
            cut_line(html, &line.line, style);
        }
        if all.cut_list.is_empty() {
            html.tag("p", "help", "No sheet has anything to cut yet.");
        }
    });
    view! { <h1 tabindex="-1">"Cut list"</h1>{lines} }.into_any()
}
