//! Battenbook in the browser: the single page around `calc`.

pub mod desk;
pub mod route;
pub mod storage;
pub mod transfer;
pub mod view;

use leptos::prelude::*;
use wasm_bindgen::JsCast;

/// The id of the element that `index.html` keeps for the app.
pub const MOUNT: &str = "app";

/// Puts the app into the element with the id [`MOUNT`]; does nothing on a page that has none.
pub fn start() {
    let mount = web_sys::window()
        .and_then(|window| window.document())
        .and_then(|document| document.get_element_by_id(MOUNT))
        .and_then(|element| element.dyn_into::<web_sys::HtmlElement>().ok());
    if let Some(element) = mount {
        mount_to(element, view::App).forget();
    }
}
