//! The page of the measured body: every sheet that needs its measures takes them from here. It is measured on its plan.

use calc::drawing::Drawing;
use calc::project::{BODY_ASKS, Place, Project};
use calc::words::{app_common, app_page as said};
use leptos::prelude::*;

use super::dom::elements;
use super::drawing::push_asking;
use super::form::{ask_for, form};
use super::html::{asked, shown};
use super::page::width_of_results;
use super::report;
use crate::desk::Desk;
use crate::words::text;

/// The page.
pub fn body_page(desk: Desk) -> AnyView {
    let typing = RwSignal::new(false);
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
    // A page that goes takes its field along: that is left after it.
    let typed = move |is: bool| {
        let _ = typing.try_set(is);
    };
    view! {
        <h1 tabindex="-1">{text(app_common::THE_BODY)}</h1>
        <div
            class="sheet rig"
            on:input=move |_| typed(true)
            on:focusin=move |_| point_out()
            on:focusout=move |_| {
                typed(false);
                point_out();
            }
        >
            <section class="results plan" aria-label=text(said::PLAN)>{plan(desk, typing)}</section>
            <section class="results first">{findings}</section>
            <section class="inputs" aria-label=text(said::MEASUREMENTS)>
                <p class="purpose" class:hidden=move || measured.get()>
                    {text(said::BODY_HELP)}
                </p>
                {form(desk, Place::Body, BODY_ASKS)}
            </section>
            <section class="results rest">{working}</section>
        </div>
    }
    .into_any()
}

/// The plan: a tap on a part of it asks for what it shows. It is drawn anew as a field is left, not with each digit: half a figure is
/// another body.
fn plan(desk: Desk, typing: RwSignal<bool>) -> AnyView {
    let width = width_of_results();
    let drawing = Memo::new(move |before: Option<&Drawing>| {
        let style = desk.project.with(Project::style);
        desk.evaluation.with(|all| match before {
            Some(before) if typing.get() => before.clone(),
            _ => calc::project::asking_plan(&all.body, style),
        })
    });
    let picture =
        shown("part", move |html| drawing.with(|drawing| push_asking(html, drawing, width.get())));
    Effect::new(move |_| {
        drawing.track();
        width.track();
        request_animation_frame(point_out);
    });
    let ask = move |event: leptos::ev::MouseEvent| {
        if let Some((_, path)) = asked(&event) {
            ask_for(&path);
        }
    };
    view! { <div on:click=ask>{picture}</div> }.into_any()
}

/// Points out in the plan what is being typed.
fn point_out() {
    let active = document().active_element().and_then(|active| active.get_attribute("data-path"));
    for target in elements(None, ".plan [data-do=ask]") {
        let path = target.get_attribute("data-with").unwrap_or_default();
        let is_asked = active.as_deref().is_some_and(|active| {
            active.strip_prefix(&path).is_some_and(|rest| rest.is_empty() || rest.starts_with('.'))
        });
        if is_asked {
            let _ = target.set_attribute("aria-current", "true");
        } else {
            let _ = target.remove_attribute("aria-current");
        }
    }
}
