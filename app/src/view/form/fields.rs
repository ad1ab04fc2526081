//! Puts what stands in the fields, and what is wrong with them, into the elements that are there.

use wasm_bindgen::JsCast;
use web_sys::{Element, HtmlInputElement, HtmlSelectElement};

use super::shape::{Chip, FieldState};
use crate::view::dom::{elements, focus};
use leptos::prelude::document;

/// Mends all fields of a form. `kept` says what would be kept of a text typed at a path: the field
/// that has the focus shows it as typed for as long as it means the same.
pub fn mend(root: &Element, fields: &[FieldState], kept: impl Fn(&str, &str) -> String) {
    let focused = document().active_element();
    for (element, state) in elements(Some(root), "[data-field]").into_iter().zip(fields) {
        mend_one(&element, state, focused.as_ref(), &kept);
    }
}

/// Mends the lines of all inputs.
pub fn mend_chips(root: &Element, chips: &[Chip]) {
    for (summary, chip) in elements(Some(root), "[data-chip]").into_iter().zip(chips) {
        set_text(&summary, ".value", &chip.value);
        if let Some(line) = summary.parent_element() {
            let classes = line.class_list();
            let _ = classes.toggle_with_force("wrong", chip.wrong);
            let _ = classes.toggle_with_force("needed", chip.missing);
            let _ = classes.toggle_with_force("to-measure", chip.to_measure);
        }
    }
}

fn mend_one(
    element: &Element,
    state: &FieldState,
    focused: Option<&Element>,
    kept: &impl Fn(&str, &str) -> String,
) {
    let wrong = !state.fault.is_empty() && !state.typed.trim().is_empty();
    let missing = !state.fault.is_empty() && !wrong;
    let classes = element.class_list();
    let _ = classes.toggle_with_force("wrong", wrong);
    let _ = classes.toggle_with_force("missing", missing);
    set_text(element, ".fault", &state.fault);
    if let Ok(Some(aid)) = element.query_selector(".aid")
        && aid.inner_html() != state.aid
    {
        aid.set_inner_html(&state.aid);
    }
    let Ok(Some(entry)) = element.query_selector("input, select") else { return };
    let _ = entry.set_attribute("aria-invalid", if wrong { "true" } else { "false" });
    let has_focus = focused.is_some_and(|focused| focused.is_same_node(Some(&entry)));
    if let Some(input) = entry.dyn_ref::<HtmlInputElement>() {
        let shown = input.value();
        let same = shown == state.typed || has_focus && kept(&state.path, &shown) == state.typed;
        if !same {
            input.set_value(&state.typed);
        }
        // As it stands in the field: what is kept of a bare number has its unit already.
        let own = if has_unit(&input.value()) { "" } else { state.unit };
        set_text(element, ".unit", own);
    } else if let Some(select) = entry.dyn_ref::<HtmlSelectElement>()
        && select.value() != state.typed
    {
        select.set_value(&state.typed);
    }
}

/// Takes the unit beside a field away where its text has its own now.
pub fn drop_unit(input: &HtmlInputElement) {
    if has_unit(&input.value())
        && let Ok(Some(entry)) = input.closest(".entry")
    {
        set_text(&entry, ".unit", "");
    }
}

/// Whether a text has a unit of its own, in letters or as a sign.
fn has_unit(text: &str) -> bool {
    text.chars().any(|sign| sign.is_alphabetic() || matches!(sign, '\'' | '"' | '′' | '″' | '°'))
}

fn set_text(element: &Element, selector: &str, text: &str) {
    if let Ok(Some(part)) = element.query_selector(selector)
        && part.text_content().as_deref() != Some(text)
    {
        part.set_text_content(Some(text));
    }
}

/// Where the caret or the focus stands, to be put back after the form was written anew.
pub struct Caret {
    id: String,
    /// Of a button: which of those that do the same.
    button: Option<(String, usize)>,
    text: String,
    from: Option<u32>,
    to: Option<u32>,
}

impl Caret {
    /// The caret in a field of this form, if it is in one.
    pub fn now(root: &Element) -> Option<Self> {
        let focused = document().active_element()?;
        if !root.contains(Some(&focused)) {
            return None;
        }
        let button = focused.get_attribute("data-do").map(|what| {
            let alike = doing(root, &what);
            let at = alike.iter().position(|one| one.is_same_node(Some(&focused)));
            (what, at.unwrap_or_default())
        });
        let input = focused.dyn_ref::<HtmlInputElement>();
        Some(Self {
            id: focused.id(),
            button,
            text: input.map(HtmlInputElement::value).unwrap_or_default(),
            from: input.and_then(|input| input.selection_start().ok().flatten()),
            to: input.and_then(|input| input.selection_end().ok().flatten()),
        })
    }

    /// Puts the caret back where the field is still there.
    pub fn put_back(self, root: &Element) {
        if let Some((what, at)) = self.button {
            // The same button, or the last of its kind, or what makes another.
            let mut alike = doing(root, &what);
            if alike.is_empty() {
                alike = doing(root, "add-row");
            }
            if let Some(button) = alike.get(at).or(alike.last()) {
                focus(button);
            }
            return;
        }
        let Some(element) = document().get_element_by_id(&self.id) else { return };
        if !root.contains(Some(&element)) {
            return;
        }
        if let Some(input) = element.dyn_ref::<HtmlInputElement>() {
            input.set_value(&self.text);
        }
        focus(&element);
        if let (Some(input), Some(from), Some(to)) =
            (element.dyn_ref::<HtmlInputElement>(), self.from, self.to)
        {
            let _ = input.set_selection_range(from, to);
        }
    }
}

/// The buttons of the form that do this.
fn doing(root: &Element, what: &str) -> Vec<Element> {
    elements(Some(root), &["[data-do=\"", what, "\"]"].concat())
}
