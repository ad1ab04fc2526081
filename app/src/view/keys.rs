//! Moving from field to field with the keyboard.

use leptos::ev::KeyboardEvent;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::{Element, HtmlElement};

/// Goes on to the next field of the page, as the phone's "next" key promises.
pub fn focus_next(event: &KeyboardEvent) {
    let Some(here) = event.target().and_then(|target| target.dyn_into::<Element>().ok()) else {
        return;
    };
    let Ok(fields) = document().query_selector_all("main input, main select") else { return };
    let mut found = false;
    for index in 0..fields.length() {
        let Some(field) = fields.item(index) else { continue };
        if found {
            if let Ok(field) = field.dyn_into::<HtmlElement>() {
                event.prevent_default();
                let _ = field.focus();
            }
            return;
        }
        found = field.is_same_node(Some(&here));
    }
}

/// Puts the focus on the page's heading after a change of page, for screen readers and keyboards.
pub fn focus_heading() {
    request_animation_frame(|| {
        if let Ok(Some(heading)) = document().query_selector("main h1")
            && let Ok(heading) = heading.dyn_into::<HtmlElement>()
        {
            let _ = heading.focus();
        }
    });
}
