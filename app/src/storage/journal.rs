//! The second store: all that the first one holds, in the browser's database, on the disk at once.
//!
//! Browsers write local storage to the disk when they find the time; one that is killed while
//! someone types loses up to a minute of it. The database is written in transactions. Whatever is
//! written or removed on the shelf is noted here, and what was noted goes into one transaction as
//! soon as the one before it has ended: a key is read from the shelf again just then, so nothing
//! that is typed waits for the disk.
//!
//! Each transaction carries a number that the shelf gets too and that only grows: by it `recovery`
//! sees which of the two stores is later. A key that was removed stays in the journal without a
//! text, so that what is gone is not taken for something that the journal never heard of.
//!
//! Beside the shelf's keys the journal keeps what did not fit on the shelf: projects as they were
//! typed while there was no room.

use std::cell::RefCell;

use js_sys::futures::JsFuture;
use js_sys::{Array, Function, Object, Promise, Reflect};
use wasm_bindgen::prelude::*;

use super::shelf::{self, Shelf};

/// The key of the number that says which store is later.
pub const LATEST: &str = "latest";

/// The shelf's keys and texts.
const COPIES: &str = "copies";
/// What did not fit on the shelf, by the project's id.
const UNKEPT: &str = "unkept";

/// How long to wait before a write that failed is tried again, at first and at most. [ms]
const RETRY_MS: [i32; 2] = [100, 60_000];

#[wasm_bindgen]
extern "C" {
    type Factory;
    #[derive(Clone)]
    type Database;
    type Transaction;
    type Copies;
    #[derive(Clone)]
    type Request;

    #[wasm_bindgen(method, catch)]
    fn open(this: &Factory, name: &str, version: u32) -> Result<Request, JsValue>;

    #[wasm_bindgen(method, getter, catch)]
    fn result(this: &Request) -> Result<JsValue, JsValue>;
    #[wasm_bindgen(method, setter)]
    fn set_onsuccess(this: &Request, call: &Function);
    #[wasm_bindgen(method, setter)]
    fn set_onerror(this: &Request, call: &Function);
    #[wasm_bindgen(method, setter)]
    fn set_onupgradeneeded(this: &Request, call: &Function);

    #[wasm_bindgen(method, catch, js_name = createObjectStore)]
    fn create(this: &Database, name: &str) -> Result<JsValue, JsValue>;
    #[wasm_bindgen(method, catch)]
    fn transaction(
        this: &Database,
        stores: &Array,
        mode: &str,
        options: &Object,
    ) -> Result<Transaction, JsValue>;
    #[wasm_bindgen(method)]
    fn close(this: &Database);
    #[wasm_bindgen(method, setter)]
    fn set_onversionchange(this: &Database, call: &Function);

    #[wasm_bindgen(method, catch, js_name = objectStore)]
    fn store(this: &Transaction, name: &str) -> Result<Copies, JsValue>;
    #[wasm_bindgen(method, setter)]
    fn set_oncomplete(this: &Transaction, call: &Function);
    #[wasm_bindgen(method, setter)]
    fn set_onabort(this: &Transaction, call: &Function);

    #[wasm_bindgen(method, catch)]
    fn get(this: &Copies, key: &str) -> Result<Request, JsValue>;
    #[wasm_bindgen(method, catch, js_name = getAll)]
    fn get_all(this: &Copies) -> Result<Request, JsValue>;
    #[wasm_bindgen(method, catch, js_name = getAllKeys)]
    fn get_all_keys(this: &Copies) -> Result<Request, JsValue>;
    #[wasm_bindgen(method, catch)]
    fn put(this: &Copies, value: &JsValue, key: &str) -> Result<Request, JsValue>;
    #[wasm_bindgen(method, catch)]
    fn delete(this: &Copies, key: &str) -> Result<Request, JsValue>;
}

/// The journal of this window.
struct Journal {
    /// The shelf that it copies; none until it is opened.
    shelf: Option<Shelf>,
    database: Option<Database>,
    /// Keys of the shelf that are to be copied.
    keys: Vec<String>,
    /// Projects that did not fit on the shelf: id and slot; none where they do by now.
    unkept: Vec<(String, Option<String>)>,
    writing: bool,
    failing: bool,
    /// Is told when writing begins to fail and when it works again.
    told: fn(bool),
}

thread_local! {
    static JOURNAL: RefCell<Journal> = const {
        RefCell::new(Journal {
            shelf: None,
            database: None,
            keys: Vec::new(),
            unkept: Vec::new(),
            writing: false,
            failing: false,
            told: |_| {},
        })
    };
}

/// Begins to note what changes on a shelf, and to write it once `go_on` says so; `told` hears of it
/// when writing fails and when it works again.
pub fn begin(shelf: Shelf, told: fn(bool)) {
    JOURNAL.with_borrow_mut(|journal| {
        journal.shelf = Some(shelf);
        journal.told = told;
        // Nothing is written before it is known which of the two stores is later.
        journal.writing = true;
    });
}

/// Writes what was noted by now, and from now on.
pub fn go_on() {
    js_sys::futures::spawn_local(write_all());
}

/// Notes nothing any more.
pub fn give_up() {
    JOURNAL.with_borrow_mut(|journal| journal.shelf = None);
    tell(true);
}

/// Whether the last write went well.
pub fn works() -> bool {
    JOURNAL.with_borrow(|journal| journal.shelf.is_some() && !journal.failing)
}

/// Notes that a key of the shelf has changed.
pub fn note(key: &str) {
    add(|journal| {
        if !journal.keys.iter().any(|known| known == key) {
            journal.keys.push(key.to_owned());
        }
    });
}

/// Keeps a project that does not fit on the shelf, as a slot; none where it does by now.
pub fn keep_unkept(id: &str, slot: Option<String>) {
    add(|journal| {
        journal.unkept.retain(|(known, _)| known != id);
        journal.unkept.push((id.to_owned(), slot));
    });
}

fn add(change: impl FnOnce(&mut Journal)) {
    let idle = JOURNAL.with_borrow_mut(|journal| {
        if journal.shelf.is_none() {
            return false;
        }
        change(journal);
        !std::mem::replace(&mut journal.writing, true)
    });
    if idle {
        // What is written in this turn of the event loop goes into one transaction.
        js_sys::futures::spawn_local(write_all());
    }
}

/// Writes until nothing is left to be written.
async fn write_all() {
    let mut wait = RETRY_MS[0];
    loop {
        let (keys, unkept) = JOURNAL.with_borrow_mut(|journal| {
            let taken = (std::mem::take(&mut journal.keys), std::mem::take(&mut journal.unkept));
            journal.writing = !(taken.0.is_empty() && taken.1.is_empty());
            taken
        });
        if keys.is_empty() && unkept.is_empty() {
            return;
        }
        if write(&keys, &unkept).await.is_ok() {
            wait = RETRY_MS[0];
            tell(false);
            continue;
        }
        JOURNAL.with_borrow_mut(|journal| {
            journal.database = None;
            for key in keys {
                if !journal.keys.contains(&key) {
                    journal.keys.push(key);
                }
            }
            for (id, slot) in unkept {
                if !journal.unkept.iter().any(|(known, _)| *known == id) {
                    journal.unkept.push((id, slot));
                }
            }
        });
        // A connection that the browser has closed meanwhile is no fault yet.
        if wait > RETRY_MS[0] {
            tell(true);
        }
        pause(wait).await;
        wait = (wait * 2).min(RETRY_MS[1]);
    }
}

/// Says that writing fails, or works again, when that is new.
pub fn tell(failing: bool) {
    let told = JOURNAL.with_borrow_mut(|journal| {
        (std::mem::replace(&mut journal.failing, failing) != failing).then_some(journal.told)
    });
    if let Some(told) = told {
        told(failing);
    }
}

async fn write(keys: &[String], unkept: &[(String, Option<String>)]) -> Result<(), JsValue> {
    let Some(shelf) = JOURNAL.with_borrow(|journal| journal.shelf) else { return Ok(()) };
    if JOURNAL.with_borrow(|journal| journal.database.is_none()) {
        let database = connect().await?;
        JOURNAL.with_borrow_mut(|journal| journal.database = Some(database));
    }
    let written = JOURNAL.with_borrow(|journal| {
        let database = journal.database.as_ref().ok_or(JsValue::NULL)?;
        let transaction = begin_transaction(database, "readwrite")?;
        let copies = transaction.store(COPIES)?;
        let latest = next_number(shelf.read(LATEST).as_deref());
        // Where the shelf has no room for the number, the journal is taken for the later one.
        let _ = shelf.write_here(LATEST, &latest);
        copies.put(&JsValue::from_str(&latest), LATEST)?;
        for key in keys {
            let text = shelf.read(key);
            copies.put(&text.map_or(JsValue::NULL, |text| JsValue::from_str(&text)), key)?;
        }
        let others = transaction.store(UNKEPT)?;
        for (id, slot) in unkept {
            match slot {
                Some(slot) => others.put(&JsValue::from_str(slot), id)?,
                None => others.delete(id)?,
            };
        }
        Ok::<_, JsValue>(Promise::new(&mut |resolve, reject| {
            transaction.set_oncomplete(&resolve);
            transaction.set_onabort(&reject);
        }))
    })?;
    JsFuture::from(written).await?;
    Ok(())
}

/// A larger number than the last one: the time, as long as the clock is not turned back.
fn next_number(last: Option<&str>) -> String {
    let last: u64 = last.and_then(|last| last.parse().ok()).unwrap_or(0);
    (last + 1).max(js_sys::Date::now() as u64).to_string()
}

/// What the journal says at first: its number, and what did not fit on the shelf.
pub struct Head {
    /// The number of its last transaction; none in a new journal.
    pub latest: Option<String>,
    /// Projects that did not fit: id and slot.
    pub unkept: Vec<(String, Option<String>)>,
}

/// Opens the journal and reads what it says at first.
pub async fn head() -> Result<Head, JsValue> {
    let database = connect().await?;
    let transaction = begin_transaction(&database, "readonly")?;
    let latest = transaction.store(COPIES)?.get(LATEST)?;
    let unkept = ask_for_all(&transaction.store(UNKEPT)?)?;
    let latest = done(&latest).await?.as_string();
    let unkept = all(unkept).await?;
    JOURNAL.with_borrow_mut(|journal| journal.database = Some(database));
    Ok(Head { latest, unkept })
}

/// All keys and texts of the journal; a key without a text was removed.
pub async fn copies() -> Result<Vec<(String, Option<String>)>, JsValue> {
    let asked = JOURNAL.with_borrow(|journal| {
        let database = journal.database.as_ref().ok_or(JsValue::NULL)?;
        ask_for_all(&begin_transaction(database, "readonly")?.store(COPIES)?)
    })?;
    all(asked).await
}

fn ask_for_all(copies: &Copies) -> Result<[Request; 2], JsValue> {
    Ok([copies.get_all_keys()?, copies.get_all()?])
}

async fn all([keys, texts]: [Request; 2]) -> Result<Vec<(String, Option<String>)>, JsValue> {
    let keys: Array = done(&keys).await?.unchecked_into();
    let texts: Array = done(&texts).await?.unchecked_into();
    let mut all = Vec::new();
    for index in 0..keys.length() {
        if let Some(key) = keys.get(index).as_string() {
            all.push((key, texts.get(index).as_string()));
        }
    }
    Ok(all)
}

async fn connect() -> Result<Database, JsValue> {
    let window = web_sys::window().ok_or(JsValue::NULL)?;
    // Where site data is blocked, reading the property alone can throw.
    let factory = Reflect::get(&window, &JsValue::from_str("indexedDB"))?;
    if !factory.is_object() {
        return Err(JsValue::NULL);
    }
    let request = factory.unchecked_into::<Factory>().open(shelf::own_prefix().trim_end(), 1)?;
    let asked = request.clone();
    let make = Closure::once_into_js(move || {
        if let Ok(database) = asked.result() {
            let database: Database = database.unchecked_into();
            for name in [COPIES, UNKEPT] {
                // Without its stores the database is of no use, which the first transaction tells.
                let _ = database.create(name);
            }
        }
    });
    request.set_onupgradeneeded(make.unchecked_ref());
    let database: Database = done(&request).await?.unchecked_into();
    // Who wants to delete the database does not wait for this window; the next write opens it again.
    let closed = database.clone();
    let close = Closure::once_into_js(move || {
        closed.unchecked_into::<Database>().close();
    });
    database.set_onversionchange(close.unchecked_ref());
    Ok(database)
}

fn begin_transaction(database: &Database, mode: &str) -> Result<Transaction, JsValue> {
    let options = Object::new();
    // On the disk, where the browser can promise that; others do not look at it.
    let _ = Reflect::set(&options, &JsValue::from_str("durability"), &JsValue::from_str("strict"));
    let stores = Array::of2(&JsValue::from_str(COPIES), &JsValue::from_str(UNKEPT));
    database.transaction(&stores, mode, &options)
}

async fn done(request: &Request) -> Result<JsValue, JsValue> {
    let promise = Promise::new(&mut |resolve, reject| {
        request.set_onsuccess(&resolve);
        request.set_onerror(&reject);
    });
    JsFuture::from(promise).await?;
    request.result()
}

async fn pause(milliseconds: i32) {
    let promise = Promise::new(&mut |resolve, _| {
        if let Some(window) = web_sys::window() {
            let _ = window
                .set_timeout_with_callback_and_timeout_and_arguments_0(&resolve, milliseconds);
        }
    });
    let _ = JsFuture::from(promise).await;
}
