//! Long parts of a page, put there as they come into view: a list of thousands of lines is never all drawn at once.

use std::cell::RefCell;
use std::rc::Rc;

use js_sys::{Array, Function, Object, Reflect};
use wasm_bindgen::prelude::*;
use web_sys::Element;

/// Where a text may be parted: what stands between two of these is whole elements. People's text never holds it, since its `<` is
/// written otherwise.
pub const BREAK: &str = "<!---->";

/// So much is put there at once. [bytes]
const AT_ONCE: usize = 40_000;

/// How near the end of what is there has to come to the window before more follows.
const NEAR: &str = "1500px 0px";

#[wasm_bindgen]
extern "C" {
    #[wasm_bindgen(js_name = IntersectionObserver)]
    type Observer;
    #[wasm_bindgen(constructor, js_class = "IntersectionObserver", catch)]
    fn new(call: &Function, options: &JsValue) -> Result<Observer, JsValue>;
    #[wasm_bindgen(method)]
    fn observe(this: &Observer, element: &Element);
    #[wasm_bindgen(method)]
    fn disconnect(this: &Observer);
}

/// Parts a text into pieces of about the size that is put there at once.
fn pieces(text: &str) -> Vec<String> {
    let mut pieces: Vec<String> = Vec::new();
    for part in text.split(BREAK) {
        match pieces.last_mut() {
            Some(last) if last.len() + part.len() <= AT_ONCE => last.push_str(part),
            _ => pieces.push(part.to_owned()),
        }
    }
    pieces
}

/// Puts a text into an element in place of what was there: its beginning now, the rest as one comes near it. `drawn` is called after
/// each further piece.
pub fn unroll(root: &Element, text: &str, drawn: impl Fn() + 'static) {
    let mut rest = pieces(text);
    rest.reverse();
    root.set_inner_html(&rest.pop().unwrap_or_default());
    let end = web_sys::window().and_then(|window| window.document()?.create_element("div").ok());
    let Some(end) = end.filter(|_| !rest.is_empty()) else { return };
    // The list was written anew meanwhile, or has gone with its page, where the end stands in it no more.
    let put_back = root.append_with_node_1(&end);
    let rest = Rc::new(RefCell::new(rest));
    let watched = Rc::new(RefCell::new(None::<Observer>));
    let put = {
        let (end, rest, watched) = (end.clone(), rest.clone(), watched.clone());
        move |entries: Array| {
            let is_near = |entry: JsValue| {
                let seen = Reflect::get(&entry, &JsValue::from_str("isIntersecting"));
                seen.is_ok_and(|seen| seen.is_truthy())
            };
            if !entries.iter().any(is_near) {
                return;
            }
            let piece = rest.borrow_mut().pop();
            if let Some(piece) = &piece {
                // The end has no parent any more where the list was written anew.
                let _ = end.insert_adjacent_html("beforebegin", piece);
                drawn();
            }
            if let Some(observer) = watched.borrow().as_ref() {
                observer.disconnect();
                if piece.is_some() && !rest.borrow().is_empty() {
                    // Begun anew, so that it is told again where the end is still near.
                    observer.observe(&end);
                }
            }
            if rest.borrow().is_empty() {
                end.remove();
            }
        }
    };
    let put = Closure::<dyn Fn(Array)>::new(put);
    let options = Object::new();
    // Without the margin more follows a little later.
    let _ = Reflect::set(&options, &JsValue::from_str("rootMargin"), &JsValue::from_str(NEAR));
    match Observer::new(put.as_ref().unchecked_ref(), &options).ok().filter(|_| put_back.is_ok()) {
        Some(observer) => {
            observer.observe(&end);
            watched.replace(Some(observer));
            // A few bytes for each long list that is written.
            put.forget();
        }
        None => {
            while let Some(piece) = rest.borrow_mut().pop() {
                let _ = root.insert_adjacent_html("beforeend", &piece);
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn pieces_are_whole_parts_in_order() {
        let parts: Vec<String> =
            (0..50).map(|n| format!("<p>{}</p>", "x".repeat(n * 100))).collect();
        let pieces = pieces(&parts.join(BREAK));
        assert!(pieces.len() > 2 && pieces.iter().all(|piece| piece.len() <= AT_ONCE));
        assert!(pieces.iter().all(|piece| piece.starts_with("<p>") && piece.ends_with("</p>")));
        assert_eq!(pieces.concat(), parts.concat());
        assert_eq!(super::pieces(""), [""]);
        let long = "x".repeat(AT_ONCE + 1);
        assert_eq!(super::pieces(&[&long, "y"].join(BREAK)), [long, "y".to_owned()]);
    }
}
