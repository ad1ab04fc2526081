//! What is found in the page.

use leptos::prelude::document;
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

/// Puts the focus on an element.
pub fn focus(element: &Element) {
    if let Some(element) = element.dyn_ref::<HtmlElement>() {
        let _ = element.focus();
    }
}

/// Whether someone types by now: what waited for the next frame must not take the focus from them.
pub fn typing() -> bool {
    let focused = document().active_element();
    focused.is_some_and(|one| one.matches("input:not([type=checkbox]), select").unwrap_or(false))
}
