//! What is found in the page.

use leptos::prelude::{document, request_animation_frame};
use wasm_bindgen::JsCast;
use web_sys::{Element, HtmlElement};

/// All elements that a selector names, below `root` or in the whole page, in the page's order.
pub fn elements(root: Option<&Element>, selector: &str) -> Vec<Element> {
    let found = match root {
        Some(root) => root.query_selector_all(selector),
        None => document().query_selector_all(selector),
    };
    let mut elements = Vec::new();
    if let Ok(found) = found {
        for index in 0..found.length() {
            if let Some(node) = found.item(index) {
                // A selector names nothing but elements.
                elements.push(node.unchecked_into());
            }
        }
    }
    elements
}

/// Opens all that an element is folded away in.
pub fn unfold(element: &Element) {
    let mut inner = Some(element.clone());
    while let Some(folded) = inner.and_then(|one| one.closest("details:not([open])").ok()?) {
        let _ = folded.set_attribute("open", "");
        inner = folded.parent_element();
    }
}

/// Puts the focus on an element.
pub fn focus(element: &Element) {
    if let Some(element) = element.dyn_ref::<HtmlElement>() {
        let _ = element.focus();
    }
}

/// Scrolls no further than it takes to see an element.
pub fn bring_into_sight(element: &Element) {
    let options = web_sys::ScrollIntoViewOptions::new();
    options.set_block(web_sys::ScrollLogicalPosition::Nearest);
    element.scroll_into_view_with_scroll_into_view_options(&options);
}

/// Tells an element, and what it stands in, of an event, as the browser would.
pub fn tell(element: &Element, what: &str) {
    let told = web_sys::EventInit::new();
    told.set_bubbles(true);
    if let Ok(event) = web_sys::Event::new_with_event_init_dict(what, &told) {
        let _ = element.dispatch_event(&event);
    }
}

/// Moves the focus with the next frame, when the page is written anew; not away from who types by then.
pub fn move_focus_soon(moves: impl FnOnce() + 'static) {
    request_animation_frame(move || {
        if !typing() {
            moves();
        }
    });
}

/// Whether a field is in use.
pub fn typing() -> bool {
    let focused = document().active_element();
    focused.is_some_and(|one| one.matches("input:not([type=checkbox]), select").unwrap_or(false))
}
