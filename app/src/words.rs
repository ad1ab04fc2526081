//! The language that every page, list and paper is written in, and how the app says its own words in it.
//!
//! English is in the module. Another language is a table of its own beside it, fetched when somebody chooses it; the
//! service worker keeps it from then on. Where it cannot be fetched, that is said, and the language stays as it is.

use std::cell::Cell;

use calc::quantity::{Style, UnitSystem};
use calc::words::{Id, Msg, Words, app_page};
use js_sys::futures::JsFuture;
use js_sys::{Object, Promise, Reflect, Uint8Array};
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::*;
use web_sys::HtmlElement;

use crate::storage::Store;

/// The languages that can be chosen: tag, and what each calls itself.
pub const LANGUAGES: [(&str, &str); 3] =
    [("en", "English (US)"), ("en-GB", "English (UK)"), ("es", "Español")];

/// The choice is kept on this device under this name.
const SETTING: &str = "language";

thread_local! {
    static SHOWN: Cell<Words> = const { Cell::new(Words::ENGLISH) };
    static SWITCH: Switch = Switch { turned: ArcRwSignal::new(0), missing: ArcRwSignal::new("") };
}

/// What the pages hear of a change of language. Counted, not of the page that asks first: it outlives every page.
struct Switch {
    /// Counts up with each change: everything is drawn anew.
    turned: ArcRwSignal<u32>,
    /// The tag of the language that could not be fetched; empty where there is none.
    missing: ArcRwSignal<&'static str>,
}

/// The words of the language that is shown.
pub fn words() -> Words {
    SHOWN.get()
}

/// A message that stands by itself.
pub fn text(id: Id) -> &'static str {
    words().plain(id)
}

/// A message with what it is filled with: counts, names, other messages. Quantities come written in the project's
/// style, or are said by it: `project.style().say(…)`.
pub fn say(message: impl Into<Msg>) -> String {
    Style { words: words(), ..Style::new(UnitSystem::Imperial) }.say(message)
}

/// A figure that stands by itself, as the language writes it.
pub fn figure(text: String) -> String {
    words().figure(text)
}

/// What is drawn with this is drawn anew when the language changes.
pub fn follow() {
    SWITCH.with(|switch| switch.turned.track());
}

/// The language that was chosen and could not be fetched, by its tag.
pub fn missing() -> ArcRwSignal<&'static str> {
    SWITCH.with(|switch| switch.missing.clone())
}

/// What a language calls itself.
pub fn own_name(tag: &str) -> &'static str {
    LANGUAGES.iter().find(|(known, _)| *known == tag).map_or("", |(_, name)| name)
}

/// Takes up the language that was chosen before.
pub async fn begin(store: Store) {
    name_states();
    let kept = store.setting(SETTING).unwrap_or_default();
    if let Some((tag, _)) = LANGUAGES.iter().find(|(tag, _)| *tag == kept) {
        turn_to(tag).await;
    }
}

/// Changes the language and keeps the choice; where its words cannot be had, says so and changes nothing.
pub fn choose(store: Store, tag: &str) {
    let Some((tag, _)) = LANGUAGES.iter().find(|(known, _)| *known == tag) else { return };
    js_sys::futures::spawn_local(async move {
        if turn_to(tag).await {
            store.set_setting(SETTING, tag);
        }
    });
}

/// The device's own language, where it can be had here, is not shown, and nobody has chosen any yet.
pub fn on_offer(store: Store) -> Option<&'static str> {
    if store.setting(SETTING).is_some() {
        return None;
    }
    let device = window().navigator().language()?;
    let tag = nearest(&device)?;
    (tag != words().tag()).then_some(tag)
}

/// The language nearest to what a device speaks, by its tag as in BCP 47.
fn nearest(device: &str) -> Option<&'static str> {
    let mut parts = device.split(['-', '_']);
    let language = parts.next()?.to_ascii_lowercase();
    let region = parts.next_back().map(str::to_ascii_uppercase);
    // English is spelled in the American way where that is taught, and in the British way everywhere else.
    let american = ["US", "PH", "LR", "PR", "GU", "VI", "AS", "MP"];
    let tag = match region {
        Some(region) if language == "en" && !american.contains(&region.as_str()) => "en-GB",
        _ => language.as_str(),
    };
    LANGUAGES.iter().map(|(known, _)| *known).find(|known| *known == tag)
}

/// Says everything in the words of a table from now on.
pub(crate) fn speak(shown: Words) {
    SHOWN.set(shown);
}

/// Shows the words of a table, as soon as something is drawn.
pub fn show(shown: Words) {
    speak(shown);
    if let Some(root) = document().document_element() {
        let _ = root.set_attribute("lang", shown.tag());
    }
    name_states();
    SWITCH.with(|switch| {
        switch.missing.set("");
        switch.turned.update(|turned| *turned += 1);
    });
}

/// What the style sheet says beside a field by its state.
fn name_states() {
    let root = document().document_element().and_then(|root| root.dyn_into::<HtmlElement>().ok());
    let Some(root) = root else { return };
    for (name, id) in
        [("--said-needed", app_page::NEEDED), ("--said-attention", app_page::NEEDS_ATTENTION)]
    {
        let quoted = ["\"", &text(id).replace(['"', '\\'], ""), "\""].concat();
        let _ = root.style().set_property(name, &quoted);
    }
}

async fn turn_to(tag: &'static str) -> bool {
    if words().tag() == tag {
        missing().set("");
        return true;
    }
    let found = if tag == Words::ENGLISH.tag() { Some(Words::ENGLISH) } else { fetched(tag).await };
    match found {
        Some(found) => show(found),
        None => missing().set(tag),
    }
    found.is_some()
}

#[wasm_bindgen]
extern "C" {
    #[wasm_bindgen(catch, js_name = fetch)]
    fn fetch(address: &str, options: &JsValue) -> Result<Promise, JsValue>;
    type Answer;
    #[wasm_bindgen(method, getter)]
    fn ok(this: &Answer) -> bool;
    #[wasm_bindgen(method, catch, js_name = arrayBuffer)]
    fn bytes(this: &Answer) -> Result<Promise, JsValue>;
}

/// Fetches the table of a language: the page names its file and what it has to be (`data-words-es`), so that it is of
/// this very version.
async fn fetched(tag: &str) -> Option<Words> {
    let named = document().document_element()?.get_attribute(&["data-words-", tag].concat())?;
    let (file, integrity) = named.split_once(' ')?;
    let options = Object::new();
    for (key, value) in [("integrity", integrity), ("credentials", "same-origin")] {
        Reflect::set(&options, &key.into(), &value.into()).ok()?;
    }
    let answer = JsFuture::from(fetch(&["./", file].concat(), &options).ok()?).await.ok()?;
    let answer: Answer = answer.unchecked_into();
    if !answer.ok() {
        return None;
    }
    let bytes = JsFuture::from(answer.bytes().ok()?).await.ok()?;
    let found = Words::load(Uint8Array::new(&bytes).to_vec()).ok()?;
    (found.tag() == tag).then_some(found)
}

#[cfg(test)]
mod tests {
    use super::nearest;

    #[test]
    fn a_device_is_offered_the_language_it_speaks() {
        for (device, tag) in [
            ("en", Some("en")),
            ("en-US", Some("en")),
            ("en-GB", Some("en-GB")),
            ("en-AU", Some("en-GB")),
            ("en-Latn-NZ", Some("en-GB")),
            ("es-MX", Some("es")),
            ("ES", Some("es")),
            ("eo", None),
            ("", None),
        ] {
            assert_eq!(nearest(device), tag, "{device}");
        }
    }
}
