//! Battenbook in the browser: the single page around `calc`.

pub mod desk;
mod part;
pub mod route;
pub mod storage;
pub mod transfer;
pub mod view;
pub mod words;

use std::cell::Cell;
use std::rc::Rc;
use std::time::Duration;

use leptos::prelude::*;
use wasm_bindgen::JsCast;

/// The id of the element that `index.html` keeps for the app.
pub const MOUNT: &str = "app";

/// The second store is waited for so long, so that nothing older is shown first; what it says later is
/// taken in as from another window.
const PATIENCE: Duration = Duration::from_millis(1500);

/// What a project of many sheets takes, without the module's own data. [bytes]
const ROOM: usize = 8 << 20;

/// Puts the app into the element with the id [`MOUNT`], once the stores are open; does nothing on a
/// page that has none.
pub fn start() {
    let mount = web_sys::window()
        .and_then(|window| window.document())
        .and_then(|document| document.get_element_by_id(MOUNT))
        .and_then(|element| element.dyn_into::<web_sys::HtmlElement>().ok());
    let Some(element) = mount else { return };
    // Memory that grows while a page is at work is moved in engines that give it no room of its own; this much, which
    // a full project needs, is had in one step before anything is in it.
    drop(std::hint::black_box(Vec::<u8>::with_capacity(ROOM)));
    let store = storage::Store::open();
    let mounted = Rc::new(Cell::new(false));
    let mount = move || {
        if !mounted.replace(true) {
            mount_to(element.clone(), move || view! { <view::App store=store /> }).forget();
        }
    };
    let late = mount.clone();
    set_timeout(late, PATIENCE);
    js_sys::futures::spawn_local(async move {
        words::begin(store).await;
        let found = store.open_journal(view::notices::journal_state).await;
        view::notices::tell(store, found);
        mount();
        part::fetch_ahead();
    });
}
