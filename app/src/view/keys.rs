//! Moving from field to field with the keyboard, and taps beside a field.

use std::cell::{Cell, RefCell};
use std::rc::Rc;
use std::time::Duration;

use leptos::ev::{Event, KeyboardEvent, MouseEvent};
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::Closure;
use web_sys::{Element, HtmlElement, HtmlInputElement};

use super::dom::{elements, focus, tell, unfold};

/// Goes on to the next field of the page, as the phone's "next" key promises.
pub fn focus_next(event: &KeyboardEvent) {
    let Some(here) = event.target().and_then(|target| target.dyn_into::<Element>().ok()) else {
        return;
    };
    event.prevent_default();
    focus_after(&here);
}

/// Goes on from a field to the next one.
pub fn focus_after(here: &Element) {
    let fields = elements(None, "main input, main select");
    let mut after = fields.iter().skip_while(|field| !field.is_same_node(Some(here))).skip(1);
    let line = |field: &Element| field.closest("details.ask").ok().flatten();
    let before = line(here);
    match after.find(|field| in_sight(field) || is_needed(field)) {
        Some(next) => {
            unfold(next);
            focus(next);
            // One at a time: what has been told closes to its line.
            if let Some(before) = before.filter(|before| !before.contains(Some(next))) {
                super::form::close_line(&before);
            }
        }
        // The last one: it is done with, and on to the answer.
        None => {
            tell(here, "change");
            if before.is_some() {
                super::show("results");
            }
        }
    }
}

/// Whether a field is not folded away.
fn in_sight(field: &Element) -> bool {
    matches!(field.closest("details:not([open])"), Ok(None))
}

/// Whether a field that is folded away is still needed for an answer.
fn is_needed(field: &Element) -> bool {
    let Ok(Some(ask)) = field.closest("details.ask.needed, details.ask.to-measure") else {
        return false;
    };
    match ask.query_selector(".field.missing") {
        Ok(Some(_)) => matches!(field.closest(".field.missing"), Ok(Some(_))),
        // A list as a whole: its first blank field.
        _ => {
            field.dyn_ref::<HtmlInputElement>().is_some_and(|input| input.value().trim().is_empty())
        }
    }
}

/// Makes taps hit what they aim at. A field grows while the focus is in it (its keys come) and
/// shrinks when it is left, so what lies below would move from under the thumb in mid-tap: the focus
/// leaves the field only when the tap is complete, and buttons beside a field never take it. Where the
/// page moved all the same, the tap goes to what was pressed. A tap elsewhere closes an open menu.
pub fn steady_taps() {
    let pressed = Rc::new(RefCell::new(None::<Press>));
    let down = Closure::<dyn Fn(Event)>::new({
        let pressed = pressed.clone();
        let number = Cell::new(0_u32);
        move |event: Event| {
            number.set(number.get().wrapping_add(1));
            pressed.replace(Press::of(&event, number.get()));
        }
    });
    let focus = Closure::<dyn Fn(Event)>::new(|event: Event| {
        let Some(target) = target_of(&event) else { return };
        if field_in_use().is_some() || matches!(target.closest(".field button"), Ok(Some(_))) {
            event.prevent_default();
        }
    });
    let up = Closure::<dyn Fn(Event)>::new({
        let pressed = pressed.clone();
        move |event: Event| {
            let let_go = pressed.borrow().as_ref().and_then(|press| press.let_go(&event));
            let Some(number) = let_go else {
                pressed.replace(None);
                return;
            };
            let pressed = pressed.clone();
            // After the browser's own click, if there is one: there is none on what has gone. The next press may be there
            // by then; it is another one.
            set_timeout(
                move || {
                    let this = pressed.borrow_mut().take_if(|press| press.number == number);
                    if let Some(what) = this.and_then(|press| press.still_there()) {
                        what.click();
                    }
                },
                Duration::ZERO,
            );
        }
    });
    let click = Closure::<dyn Fn(Event)>::new(move |event: Event| {
        let meant = pressed.take();
        if let Some(press) = meant.filter(|press| press.ended_elsewhere(&event)) {
            event.stop_immediate_propagation();
            event.prevent_default();
            if let Some(what) = press.still_there() {
                what.click();
            }
            return;
        }
        close_menus(&event);
        let Some(target) = target_of(&event) else { return };
        if let (Ok(None), Some(field)) = (target.closest(".keys, .pad"), field_in_use()) {
            let _ = field.blur();
        }
    });
    let on = [("pointerdown", down), ("mousedown", focus), ("mouseup", up), ("click", click)];
    for (name, closure) in on {
        // Before the page's own listeners: they find the field left.
        let _ = document().add_event_listener_with_callback_and_bool(
            name,
            closure.as_ref().unchecked_ref(),
            true,
        );
        closure.forget();
    }
}

/// So far a finger may slide within a tap. [CSS px]
const SLIDE: i32 = 10;

/// A button, link or line that is pressed, until it is let go.
struct Press {
    number: u32,
    what: Element,
    at: (i32, i32),
}

impl Press {
    fn of(event: &Event, number: u32) -> Option<Self> {
        let mouse = event.dyn_ref::<MouseEvent>().filter(|mouse| mouse.button() == 0)?;
        Some(Self { number, what: target_of(event)?, at: (mouse.client_x(), mouse.client_y()) })
    }

    /// Whether the finger let go where it pressed, and something else is there by now.
    fn ended_elsewhere(&self, event: &Event) -> bool {
        let same = target_of(event).is_some_and(|target| target.is_same_node(Some(&self.what)));
        self.is_near(event) && !same
    }

    /// The number of the press, where it was let go in its place.
    fn let_go(&self, event: &Event) -> Option<u32> {
        self.is_near(event).then_some(self.number)
    }

    fn is_near(&self, event: &Event) -> bool {
        let Some(mouse) = event.dyn_ref::<MouseEvent>() else { return false };
        let (x, y) = (mouse.client_x() - self.at.0, mouse.client_y() - self.at.1);
        x.abs().max(y.abs()) <= SLIDE
    }

    /// What was pressed, or what was put in its place when the page was written anew.
    fn still_there(&self) -> Option<HtmlElement> {
        if self.what.is_connected() {
            return self.what.clone().dyn_into().ok();
        }
        // What was touched may be a word within its button.
        let button = self.what.closest("[data-do]").ok()??;
        let names = ["data-do", "data-with"].map(|name| (name, button.get_attribute(name)));
        let same = |element: &Element| {
            names.iter().all(|(name, value)| element.get_attribute(name) == *value)
        };
        elements(None, "[data-do]").into_iter().find(same)?.dyn_into().ok()
    }
}

/// Bars at the lower edge follow what is seen: a phone's keyboard covers the page without making it shorter.
pub fn follow_what_is_seen() {
    let Some(seen) = js_sys::Reflect::get(&window(), &"visualViewport".into())
        .ok()
        .and_then(|seen| seen.dyn_into::<web_sys::EventTarget>().ok())
    else {
        return;
    };
    let told = {
        let seen = seen.clone();
        Closure::<dyn Fn(Event)>::new(move |_: Event| {
            let of = |name: &str| js_sys::Reflect::get(&seen, &name.into()).ok()?.as_f64();
            let whole = window().inner_height().ok().and_then(|height| height.as_f64());
            let root =
                document().document_element().and_then(|root| root.dyn_into::<HtmlElement>().ok());
            if let (Some(height), Some(top), Some(whole), Some(root)) =
                (of("height"), of("offsetTop"), whole, root)
            {
                let covered = format!("{}px", (whole - height - top).max(0.0).round());
                let before = root.style().get_property_value("--covered").unwrap_or_default();
                let _ = root.style().set_property("--covered", &covered);
                // The keyboard came up over the field that it is for.
                if covered != before && super::dom::typing() {
                    stay_in_sight();
                }
            }
        })
    };
    for name in ["resize", "scroll"] {
        let _ = seen.add_event_listener_with_callback(name, told.as_ref().unchecked_ref());
    }
    told.forget();
}

/// Brings the field that is typed into between the bars.
fn stay_in_sight() {
    let Some(field) = document().active_element() else { return };
    super::dom::bring_into_sight(&field);
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
