//! Text under keys: the browser's local storage, or this tab's memory where that is blocked. Windows
//! that have only their memory tell each other what they write, so that each has what all have written,
//! as with a storage in common.

use std::cell::RefCell;
use std::collections::BTreeMap;

use gloo_storage::{LocalStorage, Storage as _};
use js_sys::Array;
use wasm_bindgen::JsCast;
use wasm_bindgen::JsValue;
use wasm_bindgen::prelude::Closure;

use super::{SaveError, journal, recovery};

thread_local! {
    /// The browser's storage, once a probe has found that it works.
    static LOCAL: RefCell<Option<web_sys::Storage>> = const { RefCell::new(None) };
    /// What stands in for it in this tab.
    static MEMORY: RefCell<BTreeMap<String, String>> = const { RefCell::new(BTreeMap::new()) };
    /// Where windows without a storage in common hear of each other.
    static CHANNEL: RefCell<Option<web_sys::BroadcastChannel>> = const { RefCell::new(None) };
    /// What all keys begin with. Every page of a host shares one storage, so keys carry the name of
    /// the app and the folder that this copy of it is served from.
    static PREFIX: String = prefix();
}

/// A set of keys and texts. What it is made of lives with the page, so it can be handed around
/// freely.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Shelf {
    local: bool,
}

impl Shelf {
    /// The browser's storage where it works, else memory.
    pub fn open() -> Self {
        let local = probe();
        if local {
            LOCAL.set(Some(LocalStorage::raw()));
        } else {
            join();
        }
        Self { local }
    }

    /// Memory.
    pub fn in_memory() -> Self {
        Self { local: false }
    }

    /// Whether what is written outlives the tab.
    pub fn keeps(self) -> bool {
        self.local
    }

    /// Whether other windows hear of what is written here.
    pub fn is_shared(self) -> bool {
        self.local || CHANNEL.with_borrow(Option::is_some)
    }

    /// The text under a key.
    pub fn read(self, key: &str) -> Option<String> {
        let key = full(key);
        if !self.local {
            return MEMORY.with_borrow(|memory| memory.get(&key).cloned());
        }
        LOCAL.with_borrow(|local| local.as_ref()?.get_item(&key).ok()?)
    }

    /// Puts a text under a key, and soon into the journal. On an error the text that was there stays.
    pub fn write(self, key: &str, text: &str) -> Result<(), SaveError> {
        self.write_here(key, text)?;
        journal::note(key);
        self.tell(key, Some(text));
        Ok(())
    }

    /// Takes a key out, and soon out of the journal.
    pub fn remove(self, key: &str) {
        self.remove_here(key);
        journal::note(key);
        self.tell(key, None);
    }

    /// Takes over what the journal has under a key. Other windows have that or something later.
    pub fn take(self, key: &str, text: Option<&str>) -> Result<(), SaveError> {
        match text {
            Some(text) => self.write_here(key, text)?,
            None => self.remove_here(key),
        }
        journal::note(key);
        Ok(())
    }

    fn tell(self, key: &str, text: Option<&str>) {
        if self.local {
            return;
        }
        CHANNEL.with_borrow(|channel| {
            if let Some(channel) = channel {
                let said = Array::of2(
                    &JsValue::from_str(key),
                    &text.map_or(JsValue::NULL, JsValue::from_str),
                );
                // Who cannot be told sees it in the journal when it is opened the next time.
                let _ = channel.post_message(&said);
            }
        });
    }

    /// As `write`, without the journal.
    pub fn write_here(self, key: &str, text: &str) -> Result<(), SaveError> {
        let key = full(key);
        if !self.local {
            MEMORY.with_borrow_mut(|memory| memory.insert(key, text.to_owned()));
            return Ok(());
        }
        LOCAL.with_borrow(|local| match local {
            Some(storage) => storage.set_item(&key, text).map_err(|error| {
                if is_quota(&error) { SaveError::Full } else { SaveError::Blocked }
            }),
            None => Err(SaveError::Blocked),
        })
    }

    /// As `remove`, without the journal.
    fn remove_here(self, key: &str) {
        let key = full(key);
        if !self.local {
            MEMORY.with_borrow_mut(|memory| memory.remove(&key));
            return;
        }
        LOCAL.with_borrow(|local| {
            if let Some(storage) = local {
                // A storage that refuses to remove keeps what it has, which harms nothing.
                let _ = storage.remove_item(&key);
            }
        });
    }

    /// The keys of this app, without what all of them begin with.
    pub fn keys(self) -> Vec<String> {
        let mut keys = Vec::new();
        PREFIX.with(|prefix| {
            self.each_key(&mut |key| {
                if let Some(key) = key.strip_prefix(prefix.as_str()) {
                    keys.push(key.to_owned());
                }
            });
        });
        keys
    }

    /// How many characters all keys and texts have, other apps of the host included; a text that goes
    /// beyond Latin letters counts twice, as it does where browsers are narrowest.
    pub fn used_chars(self) -> usize {
        let mut all = Vec::new();
        self.each_key(&mut |key| all.push(key.to_owned()));
        let mut chars = 0;
        for key in all {
            let text = if self.local {
                LOCAL.with_borrow(|local| local.as_ref()?.get_item(&key).ok()?)
            } else {
                MEMORY.with_borrow(|memory| memory.get(&key).cloned())
            };
            chars += room_of(&key) + text.map_or(0, |text| room_of(&text));
        }
        chars
    }

    fn each_key(self, visit: &mut dyn FnMut(&str)) {
        if !self.local {
            MEMORY.with_borrow(|memory| memory.keys().for_each(|key| visit(key)));
            return;
        }
        LOCAL.with_borrow(|local| {
            let Some(storage) = local else { return };
            for index in 0..storage.length().unwrap_or(0) {
                if let Ok(Some(key)) = storage.key(index) {
                    visit(&key);
                }
            }
        });
    }
}

/// Tells other windows what is written to the memory from now on, and takes in what they tell.
fn join() {
    if CHANNEL.with_borrow(Option::is_some) {
        return;
    }
    let Ok(channel) = web_sys::BroadcastChannel::new(own_prefix().trim_end()) else { return };
    let hear = Closure::<dyn Fn(web_sys::MessageEvent)>::new(|event: web_sys::MessageEvent| {
        let Ok(said) = event.data().dyn_into::<Array>() else { return };
        let Some(key) = said.get(0).as_string() else { return };
        let shelf = Shelf { local: false };
        let _ = shelf.take(&key, said.get(1).as_string().as_deref());
        recovery::tell_of(&key);
    });
    channel.set_onmessage(Some(hear.as_ref().unchecked_ref()));
    hear.forget();
    CHANNEL.set(Some(channel));
}

/// How many characters of room a text takes where browsers are narrowest.
pub fn room_of(text: &str) -> usize {
    let chars = text.encode_utf16().count();
    if text.chars().all(|letter| u32::from(letter) < 256) { chars } else { 2 * chars }
}

/// The part of a key of the browser's storage that is this app's own; none for other apps' keys.
pub fn own_part(key: &str) -> Option<String> {
    PREFIX.with(|prefix| key.strip_prefix(prefix.as_str()).map(str::to_owned))
}

/// What all keys of this copy of the app begin with: the name of its journal too.
pub fn own_prefix() -> String {
    full("")
}

fn full(key: &str) -> String {
    PREFIX.with(|prefix| [prefix, key].concat())
}

fn prefix() -> String {
    let path = web_sys::window().and_then(|window| window.location().pathname().ok());
    let path = path.as_deref().unwrap_or("/");
    let folder = path.rfind('/').map_or("/", |last| &path[..=last]);
    // A path holds no plain space, so no folder's keys begin like another's.
    ["battenbook ", folder, " "].concat()
}

/// Whether the browser's storage works. Reading the property alone can throw where the person
/// blocks site data, and a storage can be there and take nothing.
fn probe() -> bool {
    let Some(Ok(Some(storage))) = web_sys::window().map(|window| window.local_storage()) else {
        return false;
    };
    let key = full("probe");
    match storage.set_item(&key, "1") {
        Ok(()) => {
            let kept = matches!(storage.get_item(&key), Ok(Some(text)) if text == "1");
            kept && storage.remove_item(&key).is_ok()
        }
        // Full, but what it holds can be read.
        Err(error) => is_quota(&error) && storage.length().unwrap_or(0) > 0,
    }
}

fn is_quota(error: &JsValue) -> bool {
    let name = js_sys::Reflect::get(error, &JsValue::from_str("name")).ok();
    let name = name.and_then(|name| name.as_string()).unwrap_or_default();
    name == "QuotaExceededError" || name == "NS_ERROR_DOM_QUOTA_REACHED"
}
