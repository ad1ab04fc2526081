//! The app mounts in a real browser.
#![allow(clippy::expect_used, reason = "a test fails by panicking")]

use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};

wasm_bindgen_test_configure!(run_in_browser);

#[wasm_bindgen_test]
async fn shows_its_name_inside_the_mount_element() {
    let document = web_sys::window().and_then(|window| window.document()).expect("a document");
    let mount = document.create_element("div").expect("a new element");
    mount.set_id(app::MOUNT);
    document.body().expect("a body").append_child(&mount).expect("the element joins the page");
    app::start();
    // The stores are opened first.
    for _ in 0..60 {
        if mount.has_child_nodes() {
            break;
        }
        let later = js_sys::Promise::new(&mut |resolve, _| {
            let window = web_sys::window().expect("a window");
            let waits = window.set_timeout_with_callback_and_timeout_and_arguments_0(&resolve, 50);
            assert!(waits.is_ok(), "a timer");
        });
        js_sys::futures::JsFuture::from(later).await.expect("time goes on");
    }
    assert!(mount.text_content().unwrap_or_default().contains("Battenbook"));
}
