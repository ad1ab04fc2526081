//! Figures read aloud by a voice of the device: one that needs no network, in the language that is shown.

use calc::words::app_page as said;
use js_sys::{Array, Reflect};
use leptos::prelude::*;
use wasm_bindgen::prelude::*;
use web_sys::EventTarget;

use crate::words::{text, words};

#[wasm_bindgen]
extern "C" {
    /// `SpeechSynthesis`: some browsers have none.
    type Speech;
    #[wasm_bindgen(method, js_name = getVoices)]
    fn voices(this: &Speech) -> Array;
    #[wasm_bindgen(method)]
    fn speak(this: &Speech, words: &Utterance);
    #[wasm_bindgen(method)]
    fn cancel(this: &Speech);

    /// `SpeechSynthesisVoice`.
    type Voice;
    #[wasm_bindgen(method, getter)]
    fn lang(this: &Voice) -> String;
    #[wasm_bindgen(method, getter, js_name = localService)]
    fn is_on_device(this: &Voice) -> bool;

    #[wasm_bindgen(js_name = SpeechSynthesisUtterance)]
    type Utterance;
    #[wasm_bindgen(constructor, catch, js_class = "SpeechSynthesisUtterance")]
    fn new(text: &str) -> Result<Utterance, JsValue>;
    #[wasm_bindgen(method, setter)]
    fn set_lang(this: &Utterance, tag: &str);
    #[wasm_bindgen(method, setter)]
    fn set_voice(this: &Utterance, voice: &Voice);
}

/// Reads a text aloud whenever it changes, while that is wanted.
#[derive(Clone, Copy)]
pub struct Aloud {
    on: RwSignal<bool>,
    /// Whether the device has a voice for it. Some bring their voices late.
    can: RwSignal<bool>,
}

impl Aloud {
    /// Off until it is turned on.
    pub fn new(spoken: Memo<String>) -> Self {
        let (on, can) = (RwSignal::new(false), RwSignal::new(voice().is_some()));
        Effect::new(move |before: Option<bool>| {
            let wanted = on.get();
            if wanted {
                spoken.with(|spoken| say(spoken));
            } else if before == Some(true) {
                hush();
            }
            wanted
        });
        let came = move |_: JsValue| {
            let _ = can.try_set(voice().is_some());
        };
        let came = Closure::<dyn Fn(JsValue)>::new(came).into_js_value();
        const CAME: &str = "voiceschanged";
        if let Some(voices) = as_target() {
            let _ = voices.add_event_listener_with_callback(CAME, came.unchecked_ref());
        }
        let came = StoredValue::new_local(came);
        on_cleanup(move || {
            if let (Some(voices), Some(came)) = (as_target(), came.try_get_value()) {
                let _ = voices.remove_event_listener_with_callback(CAME, came.unchecked_ref());
            }
            if on.try_get_untracked() == Some(true) {
                hush();
            }
        });
        Self { on, can }
    }

    /// Turns it on or off.
    pub fn turn(self) {
        self.on.update(|on| *on = !*on);
    }

    /// The button that does, where there is a voice.
    pub fn button(self) -> AnyView {
        let Self { on, can } = self;
        let pressed = move || if on.get() { "true" } else { "false" };
        view! {
            <button class="bench-aloud" class:hidden=move || !can.get() data-do="aloud" aria-pressed=pressed>
                {text(said::BENCH_ALOUD)}
            </button>
        }
        .into_any()
    }
}

fn as_target() -> Option<EventTarget> {
    Some(synthesis()?.unchecked_into())
}

fn synthesis() -> Option<Speech> {
    let found = Reflect::get(&window(), &"speechSynthesis".into()).ok()?;
    found.is_object().then(|| found.unchecked_into())
}

/// A voice of the language that is shown; one that sends what it says to a server is none.
fn voice() -> Option<Voice> {
    let all = synthesis()?.voices();
    let mut ours = all
        .iter()
        .map(JsCast::unchecked_into::<Voice>)
        .filter(|voice| voice.is_on_device() && speaks(&voice.lang(), words().tag()));
    let first = ours.next()?;
    // Of several, the one of the very country.
    let exact = |voice: &Voice| same_country(&voice.lang(), words().tag());
    Some(if exact(&first) { first } else { ours.find(exact).unwrap_or(first) })
}

/// Whether a voice, by its tag as in BCP 47 (Android writes it with a low line), speaks a language.
fn speaks(voice: &str, tag: &str) -> bool {
    language(voice).eq_ignore_ascii_case(language(tag))
}

fn language(tag: &str) -> &str {
    tag.split(['-', '_']).next().unwrap_or_default()
}

fn same_country(voice: &str, tag: &str) -> bool {
    let tag = if tag == "en" { "en-US" } else { tag };
    voice.replace('_', "-").eq_ignore_ascii_case(tag)
}

fn say(spoken: &str) {
    hush();
    let (Some(voices), Some(voice)) = (synthesis(), voice()) else { return };
    if let Ok(words) = Utterance::new(spoken) {
        words.set_lang(&voice.lang());
        words.set_voice(&voice);
        voices.speak(&words);
    }
}

fn hush() {
    if let Some(voices) = synthesis() {
        voices.cancel();
    }
}

#[cfg(test)]
mod tests {
    use super::{same_country, speaks};

    #[test]
    fn a_voice_is_known_by_its_language() {
        for (voice, tag, is) in [
            ("en-US", "en", true),
            ("en_GB", "en", true),
            ("es-MX", "es", true),
            ("ES", "es", true),
            ("est-EE", "es", false),
            ("de-DE", "en", false),
            ("", "en", false),
        ] {
            assert_eq!(speaks(voice, tag), is, "{voice} {tag}");
        }
        assert!(same_country("en_US", "en") && same_country("en-GB", "en-GB"));
        assert!(!same_country("en-GB", "en"));
    }
}
