//! Learning by doing: the demo opened at one board, three short steps above it, to a rig of one's own.

use calc::project::Place;
use calc::quantity::UnitSystem;
use leptos::prelude::*;
use wasm_bindgen::JsCast;

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

/// The steps beside the sheet that they are about; nothing on other pages. All three stay in sight, with what is to be done now.
pub fn steps(store: Store, desk: Desk, route: ReadSignal<Route>) -> AnyView {
    let on = RwSignal::new(store.setting(SETTING).as_deref() == Some("on"));
    let mark = move || {
        desk.evaluation.with(|all| {
            let report = all.sheet(SHEET)?.as_ref().ok()?;
            let marks = &report.marks.first()?.marks;
            // The first one is where it was traced: what was typed, and nothing new.
            marks.get(1).or(marks.first()).map(|mark| (mark.label.clone(), mark.at))
        })
    };
    let typed =
        move || desk.project.with(|project| project.typed(&Place::Sheet(SHEET.to_owned()), INPUT));
    let (before, typed_before) = untrack(|| (mark(), typed()));
    let was = before.as_ref().map(|(_, at)| *at);
    let looked = RwSignal::new(false);
    let step = Memo::new(move |_| {
        let here = route.with(|route| matches!(route, Route::Sheet(_, sheet) if sheet == SHEET));
        let moved = match (was, mark()) {
            (Some(was), Some((_, now))) => now != was,
            _ => false,
        };
        match (on.get() && here && was.is_some(), moved, looked.get()) {
            (false, ..) => 0,
            (true, true, _) => 3,
            (true, false, true) => 2,
            (true, false, false) => 1,
        }
    });
    let system = move || desk.project.with(calc::project::Project::system);
    // What is pointed at is marked by the style sheet.
    Effect::new(move |_| mark_step(step.get()));
    on_cleanup(|| mark_step(0));
    let part = shown("part", move |html| {
        let step = step.get();
        let style = desk.project.with(calc::project::Project::style);
        let (Some((what, now)), Some(was)) = (mark().or(before.clone()), was) else { return };
        let [now, was] = [now, was].map(|at| style.mark(at).text);
        let (said, act, button) = match step {
            1 => (say(words::StepLook { what, mark: now }), "change", words::CHANGE_IT),
            2 => {
                let number = another_number(system(), &typed_before);
                (say(words::StepType { number, what, mark: now }), "field", words::SHOW_ME)
            }
            3 => (say(words::StepMoved { what, was, now }), "own", words::BEGIN_OWN),
            _ => return,
        };
        html.raw("<aside aria-label=\"");
        html.text(text(words::FIRST_STEPS));
        html.raw("\"><ol>");
        for (at, name) in [words::NAME_LOOK, words::NAME_CHANGE, words::NAME_OWN].iter().enumerate()
        {
            html.raw(if at + 1 == usize::from(step) {
                "<li aria-current=\"step\">"
            } else {
                "<li>"
            });
            html.text(&(at + 1).to_string());
            html.raw(" ");
            html.text(text(*name));
            html.raw("</li>");
        }
        html.raw("</ol><button data-do=\"end\" aria-label=\"");
        html.text(text(words::END_STEPS));
        html.raw("\">✕</button><p role=\"status\">");
        html.text(&said);
        html.raw("</p>");
        html.button("main", act, "", text(button));
        html.raw("</aside>");
    });
    let act = move |event: leptos::ev::MouseEvent| {
        let Some((what, _)) = asked(&event) else { return };
        match what.as_str() {
            "change" | "field" => {
                looked.set(true);
                super::form::ask_for(INPUT);
                // What is typed takes the place of what stands there.
                if let Some(field) = document().active_element().and_then(|one| one.dyn_into().ok())
                {
                    let field: web_sys::HtmlInputElement = field;
                    field.select();
                }
            }
            "own" | "end" => {
                end(store);
                on.set(false);
                if what == "own" && super::start::begin_own(store, system()).is_err() {
                    // No room: the start page says what can be done.
                    go(&Route::Start);
                }
            }
            _ => {}
        }
    };
    view! { <div class="guide" on:click=act>{part}</div> }.into_any()
}

/// A number to type, other than what stands there.
fn another_number(system: UnitSystem, typed: &str) -> &'static str {
    let [one, other] = match system {
        UnitSystem::Imperial => ["9", "8"],
        UnitSystem::Metric => ["230", "215"],
    };
    if typed.trim_start().starts_with(one) { other } else { one }
}

fn mark_step(step: u8) {
    if let Some(root) = document().document_element() {
        let _ = root.set_attribute("data-guide", if step == 2 { "field" } else { "" });
    }
}
