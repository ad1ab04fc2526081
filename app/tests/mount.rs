//! The app mounts in a real browser.
#![allow(clippy::expect_used, reason = "a test fails by panicking")]

use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};

wasm_bindgen_test_configure!(run_in_browser);

#[wasm_bindgen_test]
fn shows_its_name_inside_the_mount_element() {
    let document = web_sys::window().and_then(|window| window.document()).expect("a document");
    let mount = document.create_element("div").expect("a new element");
    mount.set_id(app::MOUNT);
    document.body().expect("a body").append_child(&mount).expect("the element joins the page");
    app::start();
    assert!(mount.text_content().unwrap_or_default().contains("Battenbook"));
}
