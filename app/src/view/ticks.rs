//! Pages with many things to tick off: written anew only when what they list changes, ticked in place, so that a tap is quick
//! however long the list is.

use calc::project::Project;
use leptos::ev::Event;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::{Element, HtmlInputElement};

use super::html::{Html, asked};
use crate::desk::Desk;

/// What a page of ticks does: `write` lists everything from the evaluation; `done` says whether a box (what it ticks, with what) is
/// ticked in a project; `turn` is called when a box was turned; `told` tells lines how far what is ticked under them is.
pub fn tick_part(
    desk: Desk,
    write: impl Fn(&mut Html) + Send + Sync + 'static,
    done: fn(&Project, &str, &str) -> bool,
    turn: impl Fn(&str, &str, bool) + Send + Sync + 'static,
    told: fn(&Element),
) -> AnyView {
    let root = NodeRef::<leptos::html::Div>::new();
    let text = Memo::new(move |_| {
        let mut html = Html::default();
        write(&mut html);
        html.finish()
    });
    let written = StoredValue::new(String::new());
    Effect::new(move |_| {
        let Some(root) = root.get() else { return };
        text.with(|text| {
            if written.with_value(|written| written != text) {
                let part: Element = root.clone().unchecked_into();
                // What comes into view later is ticked then; the page may be gone by that time.
                let tick_more = move || {
                    let _ = desk.project.try_with_untracked(|project| mend(&part, project, done));
                    told(&part);
                };
                super::unroll::unroll(&root, text, tick_more);
                written.set_value(text.clone());
            }
        });
        desk.project.with(|project| mend(&root, project, done));
        told(&root);
    });
    let turned = move |event: Event| {
        if let Some((what, with)) = asked(&event) {
            turn(&what, &with, event_target_checked(&event));
        }
    };
    view! { <div class="part" node_ref=root on:change=turned></div> }.into_any()
}

/// A box to tick, to be put into a label.
pub fn tick_box(html: &mut Html, what: &str, with: &str, id: &str) {
    html.raw("<input type=\"checkbox\" data-do=\"");
    html.raw(what);
    html.raw("\" data-with=\"");
    html.text(with);
    if !id.is_empty() {
        html.raw("\" id=\"");
        html.text(id);
    }
    html.raw("\">");
}

/// Ticks the boxes as the project has it, and tells the line that each stands in.
fn mend(root: &Element, project: &Project, done: fn(&Project, &str, &str) -> bool) {
    let Ok(boxes) = root.query_selector_all("input[data-do]") else { return };
    for index in 0..boxes.length() {
        let Some(one) = boxes.item(index).and_then(|node| node.dyn_into::<HtmlInputElement>().ok())
        else {
            continue;
        };
        let get = |name: &str| one.get_attribute(name).unwrap_or_default();
        let ticked = done(project, &get("data-do"), &get("data-with"));
        if one.checked() != ticked {
            one.set_checked(ticked);
        }
        if let Ok(Some(line)) = one.closest("li") {
            let _ = line.class_list().toggle_with_force("done", ticked);
        }
    }
}
