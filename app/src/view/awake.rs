//! Keeps the screen lit, where the browser can.

use js_sys::futures::{JsFuture, spawn_local};
use js_sys::{Function, Promise, Reflect};
use leptos::prelude::*;
use wasm_bindgen::prelude::*;

type Lock = StoredValue<Option<JsValue>, LocalStorage>;

/// Keeps the screen lit until it is dropped.
pub struct Awake {
    lock: Lock,
    seen: Option<WindowListenerHandle>,
}

impl Awake {
    /// Begins. A page that was out of sight has lost its lock, and asks for another when it is seen again.
    pub fn begin() -> Self {
        let lock = StoredValue::new_local(None);
        ask(lock);
        let seen = window_event_listener_untyped("visibilitychange", move |_| {
            if !document().hidden() {
                ask(lock);
            }
        });
        Self { lock, seen: Some(seen) }
    }
}

impl Drop for Awake {
    fn drop(&mut self) {
        if let Some(seen) = self.seen.take() {
            seen.remove();
        }
        if let Some(lock) = self.lock.try_update_value(Option::take).flatten() {
            release(&lock);
        }
    }
}

fn ask(kept: Lock) {
    let asked = (|| {
        let lock = Reflect::get(&window().navigator(), &"wakeLock".into()).ok()?;
        let request = Reflect::get(&lock, &"request".into()).ok()?.dyn_into::<Function>().ok()?;
        Some(Promise::resolve(&request.call1(&lock, &"screen".into()).ok()?))
    })();
    let Some(asked) = asked else { return };
    spawn_local(async move {
        // Refused, as on a low battery: the screen goes dark as it always does.
        if let Ok(lock) = JsFuture::from(asked).await
            && kept.try_set_value(Some(lock.clone())).is_some()
        {
            // The page was left meanwhile.
            release(&lock);
        }
    });
}

fn release(lock: &JsValue) {
    let release = Reflect::get(lock, &"release".into()).ok();
    if let Some(release) = release.and_then(|it| it.dyn_into::<Function>().ok()) {
        // What is let go already needs no letting go.
        let _ = release.call0(lock);
    }
}
