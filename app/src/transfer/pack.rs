//! Packing and unpacking with the browser's own streams: no code of ours, and a cap while it grows.
//!
//! Source of the format: RFC 1951 (DEFLATE), as the Compression Streams standard's `deflate-raw`.

use js_sys::futures::JsFuture;
use js_sys::{Array, Promise, Reflect, Uint8Array};
use wasm_bindgen::prelude::*;

use super::link::BadLink;

const FORMAT: &str = "deflate-raw";

#[wasm_bindgen]
extern "C" {
    #[wasm_bindgen(js_name = CompressionStream)]
    type Packer;
    #[wasm_bindgen(constructor, js_class = "CompressionStream", catch)]
    fn new(format: &str) -> Result<Packer, JsValue>;

    #[wasm_bindgen(js_name = DecompressionStream)]
    type Unpacker;
    #[wasm_bindgen(constructor, js_class = "DecompressionStream", catch)]
    fn new(format: &str) -> Result<Unpacker, JsValue>;

    type Streamed;
    #[wasm_bindgen(method, catch)]
    fn stream(this: &Streamed) -> Result<Stream, JsValue>;

    type Stream;
    #[wasm_bindgen(method, catch, js_name = pipeThrough)]
    fn pipe_through(this: &Stream, through: &JsValue) -> Result<Stream, JsValue>;
    #[wasm_bindgen(method, catch, js_name = getReader)]
    fn reader(this: &Stream) -> Result<Reader, JsValue>;

    type Reader;
    #[wasm_bindgen(method)]
    fn read(this: &Reader) -> Promise;
    #[wasm_bindgen(method)]
    fn cancel(this: &Reader) -> Promise;
}

/// Packs bytes; none where this browser cannot.
pub async fn pack(bytes: &[u8]) -> Option<Vec<u8>> {
    through(Packer::new(FORMAT).ok()?.into(), bytes, usize::MAX).await.ok()
}

/// Unpacks bytes, and stops as soon as there are more than `most`.
///
/// # Errors
/// `BadLink`: cannot unpack here, damaged, or too large.
pub async fn unpack(bytes: &[u8], most: usize) -> Result<Vec<u8>, BadLink> {
    let unpacker = Unpacker::new(FORMAT).map_err(|_| BadLink::CannotUnpack)?;
    through(unpacker.into(), bytes, most).await
}

async fn through(transform: JsValue, bytes: &[u8], most: usize) -> Result<Vec<u8>, BadLink> {
    let damaged = |_| BadLink::Damaged;
    let parts = Array::of1(&Uint8Array::from(bytes));
    let blob = web_sys::Blob::new_with_u8_array_sequence(&parts).map_err(damaged)?;
    let blob: Streamed = JsValue::from(blob).unchecked_into();
    let stream = blob.stream().and_then(|stream| stream.pipe_through(&transform));
    let reader = stream.and_then(|stream| stream.reader()).map_err(damaged)?;
    let mut all = Vec::new();
    loop {
        let step = JsFuture::from(reader.read()).await.map_err(damaged)?;
        let value = Reflect::get(&step, &JsValue::from_str("value")).map_err(damaged)?;
        if value.is_undefined() {
            return Ok(all);
        }
        let chunk: Uint8Array = value.unchecked_into();
        if chunk.length() as usize > most.saturating_sub(all.len()) {
            // Whatever it answers, nothing more is read.
            let _ = reader.cancel();
            return Err(BadLink::TooLong);
        }
        all.extend(chunk.to_vec());
    }
}
