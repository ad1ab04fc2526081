//! Downloads, the clipboard, and the browser's word to keep data; its answers are played by the test.

use super::*;

#[wasm_bindgen_test]
async fn a_download_carries_name_and_text() {
    run("window.kept_click = HTMLAnchorElement.prototype.click;
         HTMLAnchorElement.prototype.click = function () {
             window.file_name = this.download;
             window.file_text = null;
             fetch(this.href).then((answer) => answer.text()).then((text) => { window.file_text = text; });
         };");
    let text = "{\"name\": \"5 \u{bd}\u{2033} </script>\"}";
    assert!(download("battenbook-bus.json", text));
    run("HTMLAnchorElement.prototype.click = window.kept_click;");
    wait(300).await;
    assert_eq!(run("return window.file_name").as_string().unwrap(), "battenbook-bus.json");
    assert_eq!(run("return window.file_text").as_string().unwrap(), text);
}

#[wasm_bindgen_test]
async fn the_clipboard_answers_or_is_missing() {
    let answers = Rc::new(RefCell::new(Vec::new()));
    for clipboard in [
        "{ writeText(text) { window.copied = text; return Promise.resolve(); } }",
        "{ writeText() { return Promise.reject(new DOMException('no', 'NotAllowedError')); } }",
        "undefined",
    ] {
        play("clipboard", clipboard);
        let heard = answers.clone();
        copy("1200 mm", move |copied| heard.borrow_mut().push(copied));
        run("delete navigator.clipboard");
        wait(20).await;
    }
    assert_eq!(*answers.borrow(), [true, false, false]);
    assert_eq!(run("return window.copied").as_string().unwrap(), "1200 mm");
}

#[wasm_bindgen_test]
async fn the_browser_is_asked_to_keep_data_but_not_waited_for() {
    let answers = Rc::new(RefCell::new(Vec::new()));
    run("window.kept_timeout = window.setTimeout;
         window.setTimeout = (call, time) => window.kept_timeout.call(window, call, time / 100);");
    for storage in [
        "{ persist: () => Promise.resolve(true) }",
        "{ persist: () => Promise.resolve(false) }",
        "{ persist: () => new Promise(() => {}) }",
        "{ persist: () => Promise.reject(new TypeError('no')) }",
        "{ persist() { throw new TypeError('no'); } }",
        "undefined",
    ] {
        play("storage", storage);
        let heard = answers.clone();
        ask_to_stay(move |stay| heard.borrow_mut().push(stay));
        run("delete navigator.storage");
        wait(10_000).await;
    }
    run("window.setTimeout = window.kept_timeout;");
    use Stay::{NotKnown, NotPromised, Promised};
    let expected = [Promised, NotPromised, NotKnown, NotKnown, NotKnown, NotKnown];
    assert_eq!(*answers.borrow(), expected);
}

/// Puts something in the place of a part of the browser.
fn play(part: &str, value: &str) {
    run(&format!(
        "Object.defineProperty(navigator, '{part}', {{ configurable: true, value: {value} }});"
    ));
}
