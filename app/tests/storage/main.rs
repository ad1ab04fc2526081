//! Storage and transfer in a real browser: what goes wrong there, and what must still be kept.
#![cfg(target_arch = "wasm32")]
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test that cannot go on has failed")]

mod keeping;
mod passing;
mod platform;
mod transfer;
mod trouble;
mod versions;
mod windows;

use std::cell::RefCell;
use std::rc::Rc;

use app::storage::{FailureReason, ListingState, SaveError, Store, new_id};
use app::transfer::{
    Import, ImportError, Stay, ask_to_stay, copy, download, export_all, export_one, file_name,
    keep, read, read_file,
};
use calc::project::limits::{MAX_FILE_BYTES, MOST_PROJECTS, MOST_SHEETS};
use calc::project::{LoadError, MAX_BYTES, Project, VERSION};
use calc::quantity::UnitSystem;
use wasm_bindgen::JsValue;
use wasm_bindgen_test::*;

wasm_bindgen_test_configure!(run_in_browser);

fn local() -> web_sys::Storage {
    web_sys::window().unwrap().local_storage().unwrap().unwrap()
}

/// An empty store on the device.
fn fresh() -> Store {
    // A test that failed may have left its own way to write behind.
    run("if (window.kept_set_item) Storage.prototype.setItem = window.kept_set_item;");
    local().clear().unwrap();
    let store = Store::open();
    assert!(store.keeps());
    store
}

fn project(id: &str, name: &str) -> Project {
    Project::new(id, name, UnitSystem::Metric)
}

fn renamed(project: &Project, name: &str) -> Project {
    let mut project = project.clone();
    project.set_name(name);
    project
}

/// The whole key of a kind of entry of a project.
fn key(kind: &str, id: &str) -> String {
    let path = web_sys::window().unwrap().location().pathname().unwrap();
    let folder = &path[..=path.rfind('/').unwrap()];
    format!("battenbook {folder} {kind} {id}")
}

fn get(kind: &str, id: &str) -> Option<String> {
    local().get_item(&key(kind, id)).unwrap()
}

fn put(kind: &str, id: &str, text: &str) {
    local().set_item(&key(kind, id), text).unwrap();
}

/// The slot that the pointer names.
fn pointed(id: &str) -> String {
    get("ptr", id).unwrap().split(' ').next().unwrap().to_owned()
}

/// A slot as another version of the program writes it.
fn slot(revision: u64, format: u64, document: &str) -> String {
    let rest = format!("{revision} 1700000000000 {format}\n{document}");
    let sum = rest.bytes().fold(0xcbf2_9ce4_8422_2325_u64, |sum, byte| {
        (sum ^ u64::from(byte)).wrapping_mul(0x0000_0100_0000_01b3)
    });
    format!("{sum} {rest}")
}

fn everything() -> Vec<(String, String)> {
    let storage = local();
    let mut all: Vec<_> = (0..storage.length().unwrap())
        .map(|index| storage.key(index).unwrap().unwrap())
        .map(|key| (key.clone(), storage.get_item(&key).unwrap().unwrap()))
        .collect();
    #[allow(clippy::disallowed_methods, reason = "not part of the app")]
    all.sort();
    all
}

fn run(script: &str) -> JsValue {
    js_sys::Function::new_no_args(script).call0(&JsValue::NULL).unwrap()
}

/// Fills the storage to the last character.
fn fill() {
    run("let size = 1 << 20, n = 0;
         while (size >= 1) {
             try { localStorage.setItem('filler' + n, 'x'.repeat(size)); n += 1; } catch { size >>= 1; }
         }
         for (let i = 0; i < 20; i++) { try { localStorage.setItem('f' + n + i, ''); } catch {} }");
}

/// Replaces the storage's own way to write while `act` runs.
fn with_set_item(body: &str, act: impl FnOnce()) {
    run(&format!(
        "window.kept_set_item = Storage.prototype.setItem;
         Storage.prototype.setItem = function (key, text) {{
             const set = (key, text) => window.kept_set_item.call(this, key, text); {body} }};"
    ));
    act();
    run("Storage.prototype.setItem = window.kept_set_item;");
}

/// Lets the page go on for a while.
async fn wait(milliseconds: i32) {
    let later = js_sys::Promise::new(&mut |resolve, _| {
        web_sys::window()
            .unwrap()
            .set_timeout_with_callback_and_timeout_and_arguments_0(&resolve, milliseconds)
            .unwrap();
    });
    js_sys::futures::JsFuture::from(later).await.unwrap();
}
