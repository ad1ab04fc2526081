//! What the browser does for the app when asked: downloads, the clipboard, keeping data for good.

use std::cell::RefCell;
use std::rc::Rc;

use js_sys::Promise;
use wasm_bindgen::prelude::*;

/// How long the browser may take to say whether it keeps the page's data. [ms]
const PATIENCE_MS: i32 = 3000;

/// How long a download may take to start before its data is let go. [ms]
const DOWNLOAD_MS: i32 = 30_000;

/// Whether the browser promises to keep the page's data when space runs short.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stay {
    /// It does.
    Promised,
    /// It does not: an export is the only backup.
    NotPromised,
    /// It cannot be asked, or has not answered in time.
    NotKnown,
}

/// Offers a text as a file; false where the browser could not be asked. Call it from a click.
pub fn download(file_name: &str, text: &str) -> bool {
    offer(file_name, text).is_ok()
}

/// Puts a text on the clipboard and calls back with whether that worked. Call it from a click, and
/// show the text in a selectable field too.
pub fn copy(text: &str, done: impl FnOnce(bool) + 'static) {
    match web_sys::window().map(|window| window.navigator().clipboard()) {
        // Pages that were not loaded securely have none.
        Some(clipboard) if !clipboard.is_undefined() => {
            let settled = move |value: Option<JsValue>| done(value.is_some());
            settle(&clipboard.write_text(text), Box::new(settled));
        }
        _ => done(false),
    }
}

/// Asks the browser to keep the page's data when space runs short. Call it after something that the
/// person did, such as the first save: some browsers ask in turn.
pub fn ask_to_stay(done: impl FnOnce(Stay) + 'static) {
    let storage = web_sys::window().map(|window| window.navigator().storage());
    let asked = storage.filter(|storage| !storage.is_undefined()).and_then(|it| it.persist().ok());
    let Some(asked) = asked else {
        done(Stay::NotKnown);
        return;
    };
    // A question that the browser put to the person may stand unanswered for ever.
    let silence = Promise::new(&mut |resolve, _| after(PATIENCE_MS, &resolve));
    let settled = move |answer: Option<JsValue>| {
        done(match answer.and_then(|answer| answer.as_bool()) {
            Some(true) => Stay::Promised,
            Some(false) => Stay::NotPromised,
            None => Stay::NotKnown,
        });
    };
    settle(&Promise::race(&js_sys::Array::of2(&asked, &silence)), Box::new(settled));
}

/// Takes the value of a settled promise; none where it was refused.
pub(super) type Answer = Box<dyn FnOnce(Option<JsValue>)>;

/// Calls back once when a promise is settled: with its value, or with none where it was refused.
pub(super) fn settle(promise: &Promise, done: Answer) {
    let kept = Rc::new(RefCell::new(Some(done)));
    let refused = kept.clone();
    let call = |kept: &RefCell<Option<Answer>>, value| {
        let done = kept.borrow_mut().take();
        if let Some(done) = done {
            done(value);
        }
    };
    let on_value = Closure::<dyn FnMut(JsValue)>::new(move |value| call(&kept, Some(value)));
    let on_refusal = Closure::<dyn FnMut(JsValue)>::new(move |_| call(&refused, None));
    // The promise that this makes is never refused: both callbacks are given.
    let _ = promise.then2(&on_value, &on_refusal);
    // A few bytes for each file read; only one of the two is ever called.
    on_value.forget();
    on_refusal.forget();
}

fn offer(file_name: &str, text: &str) -> Result<(), JsValue> {
    let window = web_sys::window().ok_or(JsValue::NULL)?;
    let document = window.document().ok_or(JsValue::NULL)?;
    let parts = js_sys::Array::of1(&JsValue::from_str(text));
    let options = web_sys::BlobPropertyBag::new();
    options.set_type("application/json");
    let blob = web_sys::Blob::new_with_str_sequence_and_options(&parts, &options)?;
    let address = web_sys::Url::create_object_url_with_blob(&blob)?;
    let anchor: web_sys::HtmlAnchorElement = document.create_element("a")?.unchecked_into();
    anchor.set_href(&address);
    anchor.set_download(file_name);
    anchor.click();
    let release = Closure::once_into_js(move || {
        // An address that is gone already needs no releasing.
        let _ = web_sys::Url::revoke_object_url(&address);
    });
    after(DOWNLOAD_MS, release.unchecked_ref());
    Ok(())
}

fn after(milliseconds: i32, call: &js_sys::Function) {
    if let Some(window) = web_sys::window() {
        // Without a timer the call is never made, which costs memory and nothing else.
        let _ = window.set_timeout_with_callback_and_timeout_and_arguments_0(call, milliseconds);
    }
}
