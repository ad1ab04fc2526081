//! The mark list over all sheets.

use calc::project::Project;
use leptos::prelude::*;

use super::html::shown;
use super::report::mark_strip;
use crate::desk::Desk;

/// The page.
pub fn marks_page(desk: Desk) -> AnyView {
    let strips = shown("part", move |html| {
        let style = desk.project.with(Project::style);
        let all = desk.evaluation.get();
        let reports = all.sheets.iter().filter_map(|(_, result)| result.as_ref().as_ref().ok());
        let mut any = false;
        for strip in reports.flat_map(|report| &report.marks) {
            mark_strip(html, strip, style);
            any = true;
        }
        if !any {
            html.tag("p", "help", "No sheet has marks yet.");
        }
    });
    view! { <h1 tabindex="-1">"Mark list"</h1>{strips} }.into_any()
}
