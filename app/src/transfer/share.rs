//! The system's share sheet, where there is one that takes files.

use js_sys::{Array, Object, Promise, Reflect};
use wasm_bindgen::prelude::*;

use super::platform::settle;

#[wasm_bindgen]
extern "C" {
    type Sharer;
    #[wasm_bindgen(method, catch, js_name = canShare)]
    fn can_share(this: &Sharer, data: &JsValue) -> Result<bool, JsValue>;
    #[wasm_bindgen(method, catch)]
    fn share(this: &Sharer, data: &JsValue) -> Result<Promise, JsValue>;

    #[wasm_bindgen(js_name = File)]
    type SharedFile;
    #[wasm_bindgen(constructor, js_class = "File", catch)]
    fn new(parts: &Array, name: &str, options: &JsValue) -> Result<SharedFile, JsValue>;
}

/// Whether the system has a share sheet that takes a project file.
pub fn can_share() -> bool {
    sharing("project.json", "{}").is_some()
}

/// Hands a text to the share sheet as a file. Call it from a click. Where the person closes the sheet
/// nothing is said.
pub fn share(file_name: &str, text: &str) {
    if let Some((sharer, data)) = sharing(file_name, text)
        && let Ok(promise) = sharer.share(&data)
    {
        settle(&promise, Box::new(|_| {}));
    }
}

/// What to share and by whom. Some systems share no files that end in `json`: for them it is plain text,
/// which is opened just as well.
fn sharing(file_name: &str, text: &str) -> Option<(Sharer, JsValue)> {
    let sharer: Sharer = JsValue::from(web_sys::window()?.navigator()).unchecked_into();
    let plain_name = [file_name.strip_suffix(".json").unwrap_or(file_name), ".txt"].concat();
    for (name, kind) in [(file_name, "application/json"), (plain_name.as_str(), "text/plain")] {
        let options = object("type", &JsValue::from_str(kind))?;
        let parts = Array::of1(&JsValue::from_str(text));
        let file = SharedFile::new(&parts, name, &options).ok()?;
        let data = object("files", &Array::of1(&file))?;
        if sharer.can_share(&data) == Ok(true) {
            return Some((sharer, data));
        }
    }
    None
}

fn object(key: &str, value: &JsValue) -> Option<JsValue> {
    let object = Object::new();
    Reflect::set(&object, &JsValue::from_str(key), value).ok()?;
    Some(object.into())
}
