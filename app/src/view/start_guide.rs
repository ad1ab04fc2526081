//! Learning by doing: the demo opened at one board, three short steps beside it, never in the way.

use calc::project::Place;
use leptos::prelude::*;

use super::html::{Html, asked, shown};
use crate::desk::Desk;
use crate::route::{Route, go};
use crate::storage::Store;
use crate::words::{say, text};
use calc::words::app_start as words;

/// The demo's sheet that the steps are about, and the input that is changed there.
pub const SHEET: &str = "s3";
const INPUT: &str = "first_stud";
/// Under this name the device remembers whether the steps go on: nothing at first, then `on`, at last `off`.
const SETTING: &str = "guide";

/// What the start page says of it; nothing once it was done or waved away.
pub fn invitation(html: &mut Html, store: Store) {
    if store.setting(SETTING).as_deref() == Some("off") {
        return;
    }
    html.raw("<section class=\"try\">");
    html.tag("h2", "", text(words::TRY));
    html.raw("<ol>");
    for step in [words::TRY_BOARD, words::TRY_CHANGE, words::TRY_WATCH] {
        html.tag("li", "", text(step));
    }
    html.raw("</ol><div class=\"pair\">");
    html.button("main", "try", "imperial", text(words::TRY_IMPERIAL));
    html.button("main", "try", "metric", text(words::TRY_METRIC));
    html.raw("</div>");
    html.button("plain", "try-not", "", text(words::TRY_NOT));
    html.raw("</section>");
}

/// The steps begin, in the demo with this id.
pub fn begin(store: Store, project: &str) {
    store.set_setting(SETTING, "on");
    go(&Route::Sheet(project.to_owned(), SHEET.to_owned()));
}

/// The steps end, and are not offered again.
pub fn end(store: Store) {
    store.set_setting(SETTING, "off");
}

/// The steps beside the sheet that they are about; nothing on other pages.
pub fn steps(store: Store, desk: Desk, route: ReadSignal<Route>) -> AnyView {
    let on = RwSignal::new(store.setting(SETTING).as_deref() == Some("on"));
    let typed =
        move || desk.project.with(|project| project.typed(&Place::Sheet(SHEET.to_owned()), INPUT));
    let before = untrack(typed);
    let looked = RwSignal::new(false);
    let step = Memo::new(move |_| {
        let here = route.with(|route| matches!(route, Route::Sheet(_, sheet) if sheet == SHEET));
        match (on.get() && here, typed() != before, looked.get()) {
            (false, ..) => 0,
            (true, _, true) => 3,
            (true, true, false) => 2,
            (true, false, false) => 1,
        }
    });
    let metric =
        move || desk.project.with(|project| project.system() == calc::quantity::UnitSystem::Metric);
    // What is pointed at is marked by the style sheet.
    Effect::new(move |_| mark_step(step.get()));
    on_cleanup(|| mark_step(0));
    let part = shown("guide", move |html| {
        let step = step.get();
        let number = if metric() { "230" } else { "9" };
        let (what, act, button) = match step {
            1 => (say(words::StepType { number }), "field", words::SHOW_ME),
            2 => (say(words::STEP_LOOK), "marks", words::SHOW_ME),
            3 => (say(words::STEP_UNDO), "own", words::BEGIN_OWN),
            _ => return,
        };
        html.raw("<aside aria-label=\"");
        html.text(text(words::FIRST_STEPS));
        html.raw("\"><p role=\"status\">");
        html.tag("b", "", &say(words::StepOf { step: step.to_string() }));
        html.raw(" ");
        html.text(&what);
        html.raw("</p>");
        html.button("main", act, "", text(button));
        html.raw("<button data-do=\"end\" aria-label=\"");
        html.text(text(words::END_STEPS));
        html.raw("\">✕</button></aside>");
    });
    let act = move |event: leptos::ev::MouseEvent| {
        let Some((what, _)) = asked(&event) else { return };
        match what.as_str() {
            "field" => super::show(&super::page::element_id(INPUT)),
            "marks" => {
                looked.set(true);
                super::show("results");
                if let Ok(Some(marks)) = document().query_selector(".rest .part-fold:not(.hidden)")
                {
                    let _ = marks.set_attribute("open", "");
                    marks.scroll_into_view();
                }
            }
            "own" | "end" => {
                end(store);
                on.set(false);
                if what == "own" {
                    go(&Route::Start);
                }
            }
            _ => {}
        }
    };
    view! { <div on:click=act>{part}</div> }.into_any()
}

fn mark_step(step: u8) {
    if let Some(root) = document().document_element() {
        let _ = root.set_attribute("data-guide", if step == 1 { "field" } else { "" });
    }
}
