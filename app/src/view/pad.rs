//! A pad of keys for lengths, made for gloves: it takes the place of the phone's keyboard while a length is typed with the thumb. Where
//! there is a mouse it is not shown; the phone's own keyboard is one tap away.

use calc::words::app_form as said;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::Closure;
use web_sys::{Event, HtmlInputElement};

use super::dom::tell;
use super::html::{Html, asked};
use crate::words::text;

/// Fractions of an inch down to eighths, and the sixteenths that take their places after one more tap.
const FRACTIONS: [(&str, &str); 8] = [
    ("1/2", "1/16"),
    ("1/4", "3/16"),
    ("3/4", "5/16"),
    ("1/8", "7/16"),
    ("3/8", "9/16"),
    ("5/8", "11/16"),
    ("7/8", "13/16"),
    ("/16", "15/16"),
];

/// Whether fields for lengths are typed into by the pad: with a thumb, not with a mouse.
pub fn wanted() -> bool {
    thread_local! {
        static COARSE: bool = cfg!(target_arch = "wasm32")
            && matches!(window().match_media("(pointer: coarse)"), Ok(Some(found)) if found.matches());
    }
    COARSE.with(|coarse| *coarse)
}

/// The pad. It stands once on the page, and acts on the field that has the focus.
pub fn pad() -> AnyView {
    if !wanted() {
        return ().into_any();
    }
    let finer = RwSignal::new(false);
    let tap = move |event: leptos::ev::MouseEvent| {
        let (Some((what, with)), Some(input)) = (asked(&event), field()) else { return };
        match what.as_str() {
            "type" => insert(&input, &with),
            "fraction" => {
                // 41 and a half is `41 1/2`.
                let before = before_caret(&input);
                let parts = before.ends_with(|letter: char| letter.is_ascii_digit());
                insert(&input, &[if parts { " " } else { "" }, &with].concat());
            }
            "back" => erase(&input),
            "next" => super::keys::focus_after(&input),
            "keyboard" => {
                let _ = input.set_attribute("inputmode", "decimal");
                let _ = input.blur();
                let _ = input.focus();
            }
            _ => {}
        }
        finer.set(what == "finer");
    };
    let keys = move || {
        crate::words::follow();
        let mut html = Html::default();
        write(&mut html, finer.get());
        html.finish()
    };
    back_to_the_pad();
    view! {
        <div class="pad" role="region" aria-label=move || { crate::words::follow(); text(said::LENGTH_KEYS) } on:click=tap inner_html=keys></div>
    }
    .into_any()
}

fn write(html: &mut Html, finer: bool) {
    for (row, digits) in ["123", "456", "789"].into_iter().enumerate() {
        for at in 0..3 {
            let digit = &digits[at..=at];
            html.button("", "type", digit, digit);
        }
        for (eighths, sixteenths) in FRACTIONS.iter().skip(row * 3).take(3) {
            match (finer, *eighths) {
                (true, _) => html.button("fraction", "fraction", sixteenths, sixteenths),
                (false, "/16") => html.button("fraction", "finer", "", "/16"),
                (false, eighths) => html.button("fraction", "fraction", eighths, eighths),
            }
        }
    }
    html.button("", "type", " ft ", "ft");
    html.button("", "type", ".", ".");
    html.button("", "type", "0", "0");
    named(html, "back", "", "⌫", said::KEY_BACK);
    html.button("", "type", " in", "in");
    html.button("", "type", " mm", "mm");
    named(html, "type", "+", "+", said::KEY_PLUS);
    named(html, "keyboard", "", "⌨", said::KEY_KEYBOARD);
    named(html, "type", "-", "−", said::KEY_MINUS);
    named(html, "type", "*", "×", said::KEY_TIMES);
    html.button("main next", "next", "", text(said::KEY_NEXT));
}

/// A key whose face does not say what it is.
fn named(html: &mut Html, what: &str, with: &str, face: &str, name: calc::words::Id) {
    html.raw("<button data-do=\"");
    html.raw(what);
    html.raw("\" data-with=\"");
    html.text(with);
    html.raw("\" aria-label=\"");
    html.text(text(name));
    html.raw("\">");
    html.raw(face);
    html.raw("</button>");
}

fn field() -> Option<HtmlInputElement> {
    let active = document().active_element()?;
    active.closest("input[data-length]").ok()??.dyn_into().ok()
}

fn caret(input: &HtmlInputElement) -> (u32, u32) {
    let end = u32::try_from(input.value().encode_utf16().count()).unwrap_or(u32::MAX);
    let from = input.selection_start().ok().flatten().unwrap_or(end);
    (from, input.selection_end().ok().flatten().unwrap_or(end))
}

fn before_caret(input: &HtmlInputElement) -> String {
    let (from, _) = caret(input);
    let units: Vec<u16> = input.value().encode_utf16().take(from as usize).collect();
    String::from_utf16_lossy(&units)
}

/// Puts text where the caret stands, as if it were typed: the form hears of it.
pub fn insert(input: &HtmlInputElement, text: &str) {
    let (from, to) = caret(input);
    put(input, text, from, to);
}

/// Takes what is chosen, or what stands before the caret: one sign, and a blank before it.
fn erase(input: &HtmlInputElement) {
    let (from, to) = caret(input);
    let from = if from < to { from } else { from.saturating_sub(1) };
    put(input, "", from, to);
}

fn put(input: &HtmlInputElement, text: &str, from: u32, to: u32) {
    // As a keyboard tells it: before, and after.
    tell(input, "beforeinput");
    if input.set_range_text_with_start_and_end(text, from, to).is_err() {
        return;
    }
    let caret = from + u32::try_from(text.encode_utf16().count()).unwrap_or(0);
    let _ = input.set_selection_range(caret, caret);
    tell(input, "input");
}

/// A field that was left is typed into by the pad again; one that is entered comes out from behind it.
fn back_to_the_pad() {
    thread_local! {
        static LISTENS: std::cell::Cell<bool> = const { std::cell::Cell::new(false) };
    }
    if LISTENS.replace(true) {
        return;
    }
    let of = |event: &Event| {
        event
            .target()?
            .dyn_into::<HtmlInputElement>()
            .ok()
            .filter(|one| one.has_attribute("data-length"))
    };
    let left = Closure::<dyn Fn(Event)>::new(move |event: Event| {
        if let Some(input) = of(&event) {
            // After the blur that brings up the phone's keyboard comes a focus at once.
            super::dom::move_focus_soon(move || {
                if document().active_element().as_ref() != Some(input.as_ref()) {
                    let _ = input.set_attribute("inputmode", "none");
                }
            });
        }
    });
    let entered = Closure::<dyn Fn(Event)>::new(move |event: Event| {
        if let Some(input) = of(&event) {
            super::dom::bring_into_sight(&input);
        }
    });
    for (name, closure) in [("focusout", left), ("focusin", entered)] {
        let _ = document().add_event_listener_with_callback(name, closure.as_ref().unchecked_ref());
        closure.forget();
    }
}
