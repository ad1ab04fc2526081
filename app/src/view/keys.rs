//! Moving from field to field with the keyboard, and taps beside a field.

use leptos::ev::{Event, KeyboardEvent};
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::Closure;
use web_sys::{Element, HtmlElement};

use super::dom::{elements, focus};

/// Goes on to the next field of the page, as the phone's "next" key promises.
pub fn focus_next(event: &KeyboardEvent) {
    let Some(here) = event.target().and_then(|target| target.dyn_into::<Element>().ok()) else {
        return;
    };
    let fields = elements(None, "main input, main select");
    let mut after = fields.iter().skip_while(|field| !field.is_same_node(Some(&here)));
    if let Some(next) = after.nth(1) {
        event.prevent_default();
        focus(next);
    }
}

/// Makes taps hit what they aim at. A field grows while the focus is in it (its keys come) and
/// shrinks when it is left, so what lies below would move from under the thumb in mid-tap: the focus
/// leaves the field only when the tap is complete, and buttons beside a field never take it. A tap
/// elsewhere closes an open menu.
pub fn steady_taps() {
    let down = Closure::<dyn Fn(Event)>::new(|event: Event| {
        let Some(target) = target_of(&event) else { return };
        if field_in_use().is_some() || matches!(target.closest(".field button"), Ok(Some(_))) {
            event.prevent_default();
        }
    });
    let click = Closure::<dyn Fn(Event)>::new(|event: Event| {
        close_menus(&event);
        let Some(target) = target_of(&event) else { return };
        if let (Ok(None), Some(field)) = (target.closest(".keys"), field_in_use()) {
            let _ = field.blur();
        }
    });
    for (name, closure) in [("mousedown", down), ("click", click)] {
        // Before the page's own listeners: they find the field left.
        let _ = document().add_event_listener_with_callback_and_bool(
            name,
            closure.as_ref().unchecked_ref(),
            true,
        );
        closure.forget();
    }
}

/// Closes the menus that a tap is not in.
fn close_menus(event: &Event) {
    let target = event.target().and_then(|target| target.dyn_into::<web_sys::Node>().ok());
    for menu in elements(None, ".menu[open], .more[open]") {
        if !menu.contains(target.as_ref()) {
            let _ = menu.remove_attribute("open");
        }
    }
}

/// What a tap is aimed at, where it takes a whole tap.
fn target_of(event: &Event) -> Option<Element> {
    let target = event.target()?.dyn_into::<Element>().ok()?;
    target.closest("button, summary, a, label").ok()?
}

/// The field that is typed into.
fn field_in_use() -> Option<HtmlElement> {
    let active = document().active_element()?;
    let field = active.closest(".field input, .field select").ok()??;
    field.dyn_into().ok()
}

/// Puts the focus on the page's heading after a change of page, for screen readers and keyboards: as soon
/// as the page stands, since a later move would take the focus, and the page's place, from who goes on at once.
pub fn focus_heading() {
    queue_microtask(|| {
        if let Ok(Some(heading)) = document().query_selector("main h1") {
            focus(&heading);
        }
    });
}
