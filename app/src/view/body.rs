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
    let drawing = drawing_of(desk, typing);
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
            // Before what was typed is worked out: the first sign of a figure is another body too.
            on:beforeinput=move |_| typed(true)
            on:input=move |_| {
                typed(true);
                // What is typed may add a row.
                point_out_soon();
            }
            on:focusin=move |_| point_out_soon()
            on:change=move |_| typed(false)
            on:focusout=move |_| {
                typed(false);
                point_out_soon();
            }
        >
            <section class="results plan" aria-label=text(said::PLAN)>{plan(drawing)}</section>
            <section class="results first">
                <p class="help">{move || drawing.with(|drawing| drawing.title.clone())}</p>
                {findings}
            </section>
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

/// The plan as it is drawn: anew as a field is left, not with each digit, since half a figure is another body.
fn drawing_of(desk: Desk, typing: RwSignal<bool>) -> Memo<Drawing> {
    Memo::new(move |before: Option<&Drawing>| {
        let style = desk.project.with(Project::style);
        desk.evaluation.with(|all| match before {
            Some(before) if typing.get() => before.clone(),
            _ => calc::project::asking_plan(&all.body, style),
        })
    })
}

/// The plan: a tap on a part of it asks for what it shows.
fn plan(drawing: Memo<Drawing>) -> AnyView {
    let width = width_of_results();
    let picture =
        shown("part", move |html| drawing.with(|drawing| push_asking(html, drawing, width.get())));
    Effect::new(move |_| {
        drawing.track();
        width.track();
        point_out_soon();
    });
    let ask = move |event: leptos::ev::MouseEvent| {
        if let Some((_, path)) = asked(&event) {
            ask_for(&path);
        }
    };
    view! { <div on:click=ask>{picture}</div> }.into_any()
}

/// Points out in the plan what is being typed, and keeps its field clear of the plan and the pad: with the next frame, when the plan
/// stands as high as it is now.
fn point_out_soon() {
    request_animation_frame(|| {
        let field = document().active_element().filter(|one| one.has_attribute("data-path"));
        point_out(field.as_ref().and_then(|field| field.get_attribute("data-path")));
        if let Some(field) = field {
            super::dom::bring_into_sight(&field);
        }
    });
}

fn point_out(active: Option<String>) {
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
