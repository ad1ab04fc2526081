//! The page of the measured body: every sheet that needs its measures takes them from here.

use calc::project::{BODY_ASKS, Place, Project};
use calc::words::{app_common, app_page as said};
use leptos::prelude::*;

use super::drawing::push_drawing;
use super::form::form;
use super::html::shown;
use super::page::width_of_results;
use super::report;
use crate::desk::Desk;
use crate::words::text;

/// The page.
pub fn body_page(desk: Desk) -> AnyView {
    let width = width_of_results();
    let plan = shown("part", move |html| {
        let style = desk.project.with(Project::style);
        if let Some(plan) = desk.evaluation.with(|all| calc::project::plan(&all.body, style)) {
            push_drawing(html, &plan, width.get(), 0);
        }
    });
    let found = Memo::new(move |_| {
        let style = desk.project.with(Project::style);
        desk.evaluation.with(|all| all.body.findings(style))
    });
    let findings = shown("found", move |html| {
        found.with(|found| {
            if !found.answers.is_empty() || !found.remarks.is_empty() {
                report::answers(html, found);
            }
        });
    });
    let working = shown("part", move |html| {
        found.with(|found| {
            if !found.working.is_empty() {
                html.raw("<details class=\"working\">");
                html.tag("summary", "", text(said::WORKING));
                html.raw("<div class=\"steps\"><ol>");
                report::working(html, found);
                html.raw("</ol></div></details>");
            }
        });
    });
    let measured = Memo::new(move |_| desk.evaluation.with(|all| all.body.length.is_some()));
    view! {
        <h1 tabindex="-1">{text(app_common::THE_BODY)}</h1>
        <p class="purpose" class:hidden=move || measured.get()>
            {text(said::BODY_HELP)}
        </p>
        <div class="sheet">
            <section class="results first" aria-label=text(said::PLAN)>
                {plan}
                {findings}
            </section>
            <section class="inputs" aria-label=text(said::MEASUREMENTS)>{form(desk, Place::Body, BODY_ASKS)}</section>
            <section class="results rest">{working}</section>
        </div>
    }
    .into_any()
}
