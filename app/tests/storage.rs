//! Storage and transfer in a real browser: what goes wrong there, and what must still be kept.
#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

use std::cell::RefCell;
use std::rc::Rc;

use app::storage::{FailureReason, ListingState, SaveError, Store, new_id};
use app::transfer::{
    Import, ImportError, MAX_IMPORT_BYTES, MOST_PROJECTS, MOST_SHEETS, Refusal, export_all,
    file_name, keep, read, read_file,
};
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

#[wasm_bindgen_test]
fn what_is_saved_is_there_again() {
    let store = fresh();
    let floor = project("p1", "Floor");
    let first = store.save(&floor, 0).unwrap();
    assert_eq!(store.save(&floor, first), Ok(first), "nothing changed, nothing written");
    let walls = renamed(&floor, "Walls \u{20ac} \u{1f528}");
    let second = store.save(&walls, first).unwrap();
    assert_ne!(first, second);

    let loaded = Store::open().load("p1").unwrap();
    assert_eq!((loaded.project, loaded.revision), (walls, second));
    assert!(!loaded.restored);
    assert_eq!(loaded.migrated_from, None);

    store.save(&project("p2", "Roof"), 0).unwrap();
    let list = store.list();
    assert_eq!(list.len(), 2);
    assert!(list.iter().all(|listing| listing.state == ListingState::Fine));
    assert!(list.iter().all(|listing| (js_sys::Date::now() - listing.changed).abs() < 10_000.0));
    assert_eq!(store.load("p3").unwrap_err().reason, FailureReason::Missing);
}

#[wasm_bindgen_test]
fn a_full_storage_keeps_the_old_text() {
    let store = fresh();
    let old = project("p1", "Old");
    let revision = store.save(&old, 0).unwrap();
    fill();
    let before = everything();
    let larger = renamed(&old, &"long ".repeat(2000));
    assert_eq!(store.save(&larger, revision), Err(SaveError::Full));
    assert_eq!(store.save(&project("p2", "New"), 0), Err(SaveError::Full));
    assert_eq!(everything(), before);
    let loaded = store.load("p1").unwrap();
    assert_eq!((loaded.project, loaded.revision, loaded.restored), (old, revision, false));

    // A full storage is still one that keeps: what it holds can be read.
    let again = Store::open();
    assert!(again.keeps());
    assert_eq!(again.list().len(), 1);

    local().remove_item("filler0").unwrap();
    store.save(&larger, revision).unwrap();
    assert_eq!(store.load("p1").unwrap().project, larger);
    local().clear().unwrap();
}

#[wasm_bindgen_test]
fn deleting_works_in_a_full_storage() {
    let store = fresh();
    let revision = store.save(&project("p1", "One"), 0).unwrap();
    store.save(&project("p1", "One again"), revision).unwrap();
    fill();
    assert_eq!(store.delete("p1"), Ok(()));
    assert!(store.list().is_empty());
    store.restore("p1");
    assert_eq!(store.load("p1").unwrap().project.name(), "One again");
    local().clear().unwrap();
}

#[wasm_bindgen_test]
fn a_write_that_fails_halfway_leaves_the_old_text() {
    let store = fresh();
    let old = project("p1", "Old");
    let revision = store.save(&old, 0).unwrap();
    let new = renamed(&old, "New");

    let no_pointer =
        "if (key.includes(' ptr ')) throw new DOMException('no', 'SecurityError'); set(key, text);";
    with_set_item(no_pointer, || assert_eq!(store.save(&new, revision), Err(SaveError::Blocked)));
    assert_eq!(store.load("p1").unwrap().project, old);
    assert_eq!(get("b", "p1"), None, "the half-made write is gone");

    let cut = "set(key, text.slice(0, -5));";
    with_set_item(cut, || assert_eq!(store.save(&new, revision), Err(SaveError::NotKept)));
    assert_eq!(store.load("p1").unwrap().project, old);
    assert_eq!(get("b", "p1"), None);

    store.save(&new, revision).unwrap();
    assert_eq!(store.load("p1").unwrap().project, new);
}

#[wasm_bindgen_test]
fn a_damaged_slot_falls_back_to_the_copy_before() {
    let store = fresh();
    let old = project("p1", "Old");
    let first = store.save(&old, 0).unwrap();
    let second = store.save(&renamed(&old, "New"), first).unwrap();
    let damaged_slot = pointed("p1");
    let whole = get(&damaged_slot, "p1").unwrap();
    put(&damaged_slot, "p1", &whole[..whole.len() - 20]);

    let loaded = store.load("p1").unwrap();
    assert!(loaded.restored);
    assert_eq!(loaded.project, old);
    assert_eq!(store.list()[0].state, ListingState::Fine);
    let damaged = store.damaged("p1").unwrap();
    assert!(damaged.contains("New"));

    // Another window has the whole text still; it may write it again, or this one goes on.
    let newest = store.save(&renamed(&old, "Newest"), loaded.revision).unwrap();
    assert_eq!(store.damaged("p1"), Some(damaged), "kept under a key of its own");
    assert!(!store.load("p1").unwrap().restored);
    assert_eq!(store.save(&renamed(&old, "Late"), second), Err(SaveError::Moved));
    store.save(&renamed(&old, "Next"), newest).unwrap();
    store.forget_damaged("p1");
    assert_eq!(store.damaged("p1"), None);
}

#[wasm_bindgen_test]
fn the_window_that_has_the_whole_text_mends_a_damaged_slot() {
    let store = fresh();
    let old = project("p1", "Old");
    let first = store.save(&old, 0).unwrap();
    let second = store.save(&renamed(&old, "New"), first).unwrap();
    put(&pointed("p1"), "p1", "gone");
    store.save(&renamed(&old, "New"), second).unwrap();
    let loaded = store.load("p1").unwrap();
    assert_eq!((loaded.project.name(), loaded.restored), ("New", false));
}

#[wasm_bindgen_test]
fn a_changed_character_inside_a_text_is_seen() {
    let store = fresh();
    let old = project("p1", "Old");
    let first = store.save(&old, 0).unwrap();
    store.save(&renamed(&old, "1200 mm"), first).unwrap();
    let whole = get(&pointed("p1"), "p1").unwrap();
    put(&pointed("p1"), "p1", &whole.replace("1200 mm", "1700 mm"));
    let loaded = store.load("p1").unwrap();
    assert_eq!((loaded.project.name(), loaded.restored), ("Old", true));
}

#[wasm_bindgen_test]
fn both_slots_damaged_are_kept_and_can_be_downloaded() {
    let store = fresh();
    let old = project("p1", "Old");
    let first = store.save(&old, 0).unwrap();
    let second = store.save(&renamed(&old, "New"), first).unwrap();
    put("a", "p1", "{\"battenbook\": 1, \"na");
    put("b", "p1", "\u{0}\u{0}");
    let before = everything();
    let failure = store.load("p1").unwrap_err();
    assert!(matches!(failure.reason, FailureReason::Damaged(LoadError::NotJson { .. })));
    assert_eq!(failure.raw.as_deref(), Some("\u{0}\u{0}"), "the slot in use");
    assert_eq!(store.raw("p1"), failure.raw);
    assert_eq!(store.list()[0].state, ListingState::Damaged);
    assert_eq!(store.save(&project("p1", "Other"), 0), Err(SaveError::Moved));
    assert_eq!(everything(), before);
    // A window that has it open still may save it.
    store.save(&renamed(&old, "New"), second).unwrap();
    assert_eq!(store.load("p1").unwrap().project.name(), "New");
}

#[wasm_bindgen_test]
fn a_lost_or_muddled_pointer_loses_nothing() {
    let store = fresh();
    let mut revision = 0;
    for name in ["One", "Two", "Three"] {
        revision = store.save(&project("p1", name), revision).unwrap();
        for pointer in [None, Some("c 7"), Some("")] {
            match pointer {
                Some(text) => put("ptr", "p1", text),
                None => local().remove_item(&key("ptr", "p1")).unwrap(),
            }
            let loaded = store.load("p1").unwrap();
            assert_eq!((loaded.project.name(), loaded.revision), (name, revision));
        }
    }
}

#[wasm_bindgen_test]
fn a_newer_project_is_never_overwritten() {
    let store = fresh();
    let revision = store.save(&project("p1", "Mine"), 0).unwrap();
    let newer = r#"{"battenbook": 99, "id": "p1", "name": "From later"}"#;
    for text in [slot(revision + 1_048_576, 99, newer), newer.to_owned()] {
        put("b", "p1", &text);
        put("ptr", "p1", &format!("b {}", revision + 1_048_576));
        let before = everything();
        let failure = store.load("p1").unwrap_err();
        assert_eq!(failure.reason, FailureReason::Newer { found: 99 });
        assert_eq!(failure.raw.as_deref(), Some(newer));
        for from in [0, revision, revision + 1_048_576] {
            let refusal = store.save(&project("p1", "Mine, changed"), from);
            assert_eq!(refusal, Err(SaveError::Newer { found: 99 }));
        }
        assert_eq!(everything(), before);
        let listing = store.list().remove(0);
        assert_eq!(
            (listing.name.as_str(), listing.state),
            ("From later", ListingState::Newer { found: 99 })
        );
    }
}

#[wasm_bindgen_test]
fn two_windows_do_not_overwrite_each_other() {
    let here = fresh();
    let there = Store::open();
    let opened = here.save(&project("p1", "Opened"), 0).unwrap();
    there.save(&project("p1", "There"), opened).unwrap();
    let mine = project("p1", "Here");
    assert_eq!(here.save(&mine, opened), Err(SaveError::Moved));
    assert_eq!(here.save(&mine, 0), Err(SaveError::Moved));
    assert_eq!(here.load("p1").unwrap().project.name(), "There");

    let (copy, revision) = here.save_copy(&mine).unwrap();
    assert_ne!(copy.id(), "p1");
    assert_eq!(here.load(copy.id()).unwrap().project.name(), "Here (copy)");
    here.save(&renamed(&copy, "Here, going on"), revision).unwrap();
    assert_eq!(here.list().len(), 2);
}

#[wasm_bindgen_test]
fn the_window_that_lost_a_race_is_refused_at_its_next_save() {
    let store = fresh();
    let opened = store.save(&project("p1", "Opened"), 0).unwrap();
    let before = everything();
    let loser = store.save(&project("p1", "Loser"), opened).unwrap();
    // The other window saw none of that when it began.
    local().clear().unwrap();
    for (key, text) in before {
        local().set_item(&key, &text).unwrap();
    }
    let winner = store.save(&project("p1", "Winner"), opened).unwrap();
    assert_ne!(loser, winner);
    assert_eq!(store.save(&project("p1", "Loser, next"), loser), Err(SaveError::Moved));
    // The same with the writes of both mixed: the loser's pointer arrived last.
    put("ptr", "p1", &format!("{} {loser}", pointed("p1")));
    assert_eq!(store.save(&project("p1", "Loser, next"), loser), Err(SaveError::Moved));
    let loaded = store.load("p1").unwrap();
    assert_eq!((loaded.project.name(), loaded.revision), ("Winner", winner));
}

#[wasm_bindgen_test]
fn deleting_can_be_taken_back() {
    for store in [fresh(), Store::in_memory()] {
        let revision = store.save(&project("p1", "One"), 0).unwrap();
        store.delete("p1").unwrap();
        store.delete("not there").unwrap();
        assert!(store.list().is_empty());
        assert_eq!(store.deleted()[0].name, "One");
        assert_eq!(store.save(&project("p1", "Late"), revision), Err(SaveError::Deleted));
        store.restore("p1");
        assert!(store.deleted().is_empty());
        assert_eq!(store.load("p1").unwrap().project.name(), "One");
        store.save(&project("p1", "On"), revision).unwrap();
        store.delete("p1").unwrap();
        store.forget("p1");
        assert!(store.deleted().is_empty());
        assert!(!store.has("p1"));
        assert_eq!(store.load("p1").unwrap_err().reason, FailureReason::Missing);
    }
    assert!(everything().is_empty());
}

#[wasm_bindgen_test]
fn the_bin_makes_room_oldest_first() {
    let store = fresh();
    for (id, time) in [("p1", "1700000000002"), ("p2", "1700000000001"), ("p3", "1700000000003")] {
        store.save(&project(id, id), 0).unwrap();
        store.delete(id).unwrap();
        put("bin", id, time);
    }
    let order = ["p2", "p1", "p3"].map(|_| store.forget_oldest().unwrap().id);
    assert_eq!(order, ["p2", "p1", "p3"]);
    assert_eq!(store.forget_oldest(), None);
    assert!(everything().is_empty());
}

#[wasm_bindgen_test]
fn a_blocked_storage_is_told_and_memory_stands_in() {
    local().clear().unwrap();
    for getter in [
        "get() { throw new DOMException('blocked', 'SecurityError'); }",
        "get() { return null; }",
        "get() { return { setItem() { throw new DOMException('no room', 'QuotaExceededError'); }, length: 0 }; }",
    ] {
        run(&format!(
            "window.kept_storage = Object.getOwnPropertyDescriptor(window, 'localStorage');
             Object.defineProperty(window, 'localStorage', {{ configurable: true, {getter} }});"
        ));
        let store = Store::open();
        run("Object.defineProperty(window, 'localStorage', window.kept_storage);");
        assert!(!store.keeps());
        let revision = store.save(&project("m1", "In memory"), 0).unwrap();
        assert_eq!(store.load("m1").unwrap().revision, revision);
        assert_eq!(store.save(&project("m1", "Other"), 0), Err(SaveError::Moved));
        assert_eq!(store.list().len(), 1);
        store.forget("m1");
        assert!(everything().is_empty(), "memory writes nothing to the device");
    }
    assert!(Store::open().keeps());
}

#[wasm_bindgen_test]
fn a_storage_that_gets_blocked_later_refuses_and_harms_nothing() {
    let store = fresh();
    let revision = store.save(&project("p1", "Old"), 0).unwrap();
    with_set_item("throw new DOMException('blocked', 'SecurityError');", || {
        assert_eq!(store.save(&project("p1", "New"), revision), Err(SaveError::Blocked));
        assert!(!Store::open().keeps());
    });
    assert_eq!(store.load("p1").unwrap().project.name(), "Old");
}

#[wasm_bindgen_test]
fn data_cleared_while_a_project_is_open_is_saved_again() {
    let store = fresh();
    let revision = store.save(&project("p1", "Open"), 0).unwrap();
    local().clear().unwrap();
    store.save(&project("p1", "Open, changed"), revision).unwrap();
    assert_eq!(store.load("p1").unwrap().project.name(), "Open, changed");
}

#[wasm_bindgen_test]
fn the_text_before_a_change_of_format_is_kept_once() {
    let store = fresh();
    let old = r#"{"battenbook": 1, "id": "p1", "name": "Old format"}"#;
    put("a", "p1", &slot(1_048_576, 0, old));
    put("ptr", "p1", "a 1048576");
    let loaded = store.load("p1").unwrap();
    assert_eq!(loaded.migrated_from, Some(0));
    let revision = store.save(&loaded.project, loaded.revision).unwrap();
    assert_eq!(store.before("p1").as_deref(), Some(old));
    let revision = store.save(&renamed(&loaded.project, "Two"), revision).unwrap();
    store.save(&renamed(&loaded.project, "Three"), revision).unwrap();
    assert_eq!(store.before("p1").as_deref(), Some(old));
    assert_eq!(store.load("p1").unwrap().migrated_from, None);
}

#[wasm_bindgen_test]
fn other_apps_and_other_copies_of_the_app_are_left_alone() {
    let store = fresh();
    let others = ["a p9", "battenbook /else/ a p9", "battenbook / a", "a", "battenbook"];
    for other in others {
        local().set_item(other, "{}").unwrap();
    }
    assert!(store.list().is_empty());
    store.save(&project("p 1/\u{e4}", "Odd id"), 0).unwrap();
    assert_eq!(store.list()[0].id, "p 1/\u{e4}");
    assert!(store.used_chars() > 100);
    store.forget("p 1/\u{e4}");
    assert_eq!(everything().len(), others.len());
}

#[wasm_bindgen_test]
fn settings_are_kept_apart() {
    let store = fresh();
    assert_eq!(store.setting("theme"), None);
    store.set_setting("theme", "night");
    assert_eq!(Store::open().setting("theme").as_deref(), Some("night"));
    assert!(store.list().is_empty());
}

#[wasm_bindgen_test]
fn what_another_window_does_is_heard() {
    let store = fresh();
    let heard = Rc::new(RefCell::new(Vec::new()));
    let ears = heard.clone();
    store.watch(move |id| ears.borrow_mut().push(id));
    let tell = |key: &str| {
        let event = js_sys::Function::new_with_args(
            "key",
            "dispatchEvent(new StorageEvent('storage', { key }))",
        );
        event.call1(&JsValue::NULL, &JsValue::from_str(key)).unwrap();
    };
    tell(&key("ptr", "p1"));
    tell(&key("bin", "p2"));
    tell(&key("a", "p3"));
    tell(&key("set", "theme"));
    tell("ptr p4");
    run("dispatchEvent(new StorageEvent('storage', { key: null }))");
    assert_eq!(*heard.borrow(), ["p1", "p2", ""]);
}

#[wasm_bindgen_test]
fn ids_are_new_and_fit_for_an_address() {
    let ids: Vec<String> = (0..1000).map(|_| new_id()).collect();
    for (index, id) in ids.iter().enumerate() {
        assert_eq!(id.len(), 12);
        assert!(id.bytes().all(|byte| byte.is_ascii_lowercase() || byte.is_ascii_digit()));
        assert!(!ids[..index].contains(id));
    }
}

#[wasm_bindgen_test]
fn a_project_too_large_to_be_read_again_is_not_saved() {
    let store = fresh();
    let large = project("p1", &"x".repeat(MAX_BYTES));
    assert!(matches!(store.save(&large, 0), Err(SaveError::TooLarge { .. })));
    assert!(everything().is_empty());
}

#[wasm_bindgen_test]
fn everything_goes_out_and_comes_in_beside() {
    let store = fresh();
    store.save(&project("p1", "One"), 0).unwrap();
    store.save(&project("p2", "Two \u{201c}quoted\u{201d} \"so\""), 0).unwrap();
    put("a", "newer", r#"{"battenbook": 99, "name": "Later"}"#);
    put("a", "bad", "{");
    store.save(&project("p5", "In the bin"), 0).unwrap();
    store.delete("p5").unwrap();

    let all = export_all(store);
    let left_out: Vec<&str> = all.left_out.iter().map(|listing| listing.id.as_str()).collect();
    assert_eq!(left_out, ["bad"]);
    let Ok(Import::Many { projects, refused }) = read(&all.text) else { panic!("not read") };
    assert_eq!(projects.len(), 2);
    assert_eq!(refused[0].name, "Later");
    assert_eq!(refused[0].reason, Refusal::Load(LoadError::TooNew { found: 99 }));

    let before = store.load("p1").unwrap();
    for project in projects {
        let id = project.id().to_owned();
        let imported = keep(store, project).unwrap();
        assert_ne!(imported.project.id(), id, "importing never overwrites");
        assert_eq!(store.load(imported.project.id()).unwrap().project, imported.project);
    }
    assert_eq!(store.load("p1").unwrap(), before);
    let empty = fresh();
    let Ok(Import::Many { projects, .. }) = read(&all.text) else { panic!("not read") };
    let ids: Vec<String> = projects
        .into_iter()
        .map(|project| keep(empty, project).unwrap().project.id().to_owned())
        .collect();
    assert!(ids.contains(&"p1".to_owned()) && ids.contains(&"p2".to_owned()), "free ids stay");
}

#[wasm_bindgen_test]
fn an_id_of_something_in_the_bin_or_unfit_for_an_address_is_replaced() {
    let store = fresh();
    store.save(&project("p1", "One"), 0).unwrap();
    store.delete("p1").unwrap();
    for id in ["p1", "", "../..", "a b", "<img src=x>", &"x".repeat(65), "\u{e4}"] {
        let imported = keep(store, project(id, "In")).unwrap();
        assert_ne!(imported.project.id(), id);
        assert_eq!(imported.project.id().len(), 12);
    }
}

#[wasm_bindgen_test]
fn script_in_names_stays_text_and_hidden_characters_go() {
    let script = "<script>alert(1)</script>";
    let text = format!(
        r#"{{"battenbook": 1, "id": "h", "name": "\u0000{script}\u202e\u200b\n{}", "sheets": [
            {{"id": "s1", "title": "\u2066{script}\u0007", "kind": "coating"}}, 5, null, "x"], "__proto__": {{"a": 1}}}}"#,
        "n".repeat(10_000)
    );
    let Ok(Import::One(project)) = read(&text) else { panic!("not read") };
    assert!(project.name().starts_with(script));
    assert_eq!(project.name().chars().count(), 80);
    assert!(!project.name().contains(|character: char| character.is_control()));
    assert!(!project.name().contains(['\u{202e}', '\u{200b}']));
    assert_eq!(project.sheet("s1").unwrap().title(), script);
}

#[wasm_bindgen_test]
fn hostile_files_are_refused_with_the_reason() {
    let refused = |text: &str| read(text).unwrap_err();
    let not_json = |error: ImportError| {
        matches!(error, ImportError::Project(Refusal::Load(LoadError::NotJson { .. })))
    };
    assert!(not_json(refused("")));
    assert!(not_json(refused("<html>")));
    assert!(not_json(refused(&format!("{{\"battenbook\": 1, \"x\": {}", "[".repeat(1_000_000)))));
    let deep = format!("{{\"battenbook\": 1, \"x\": {}{}}}", "[".repeat(1000), "]".repeat(1000));
    assert!(not_json(refused(&deep)));
    let deep = format!("{{\"battenbook_collection\": 1, \"projects\": [{deep}]}}");
    assert!(not_json(refused(&deep)));

    assert!(matches!(refused(&" ".repeat(MAX_IMPORT_BYTES + 1)), ImportError::TooLarge { .. }));
    let large = format!("{{\"battenbook\": 1, \"x\": \"{}\"}}", "x".repeat(MAX_BYTES));
    let too_large = Refusal::Load(LoadError::TooLarge { bytes: large.len() });
    assert_eq!(refused(&large), ImportError::Project(too_large));

    let no_version = ImportError::Project(Refusal::Load(LoadError::NoVersion));
    for text in [
        "null",
        "7",
        "\"text\"",
        "[]",
        "{}",
        r#"{"battenbook": "1"}"#,
        r#"{"battenbook": -1}"#,
        r#"{"battenbook_collection": "1", "projects": []}"#,
        r#"{"battenbook_collection": 1}"#,
        r#"{"battenbook_collection": 1, "projects": {"a": 1}}"#,
    ] {
        assert_eq!(refused(text), no_version, "{text}");
    }
    assert_eq!(refused(r#"{"battenbook_collection": 2}"#), ImportError::CollectionTooNew);

    let many = |count: usize| {
        let one = format!("{{\"battenbook\": {VERSION}}}");
        format!("{{\"battenbook_collection\": 1, \"projects\": [{}]}}", vec![one; count].join(","))
    };
    assert_eq!(refused(&many(1000)), ImportError::TooMany { count: 1000 });
    assert!(read(&many(MOST_PROJECTS)).is_ok());

    let sheets =
        format!("{{\"battenbook\": 1, \"sheets\": [{}]}}", vec!["{}"; MOST_SHEETS + 1].join(","));
    let too_many = Refusal::TooManySheets { count: MOST_SHEETS + 1 };
    assert_eq!(refused(&sheets), ImportError::Project(too_many));
}

#[wasm_bindgen_test]
fn a_bad_project_harms_no_other_in_its_file() {
    let text = r#"{"battenbook_collection": 1, "projects": [
        null, {"battenbook": 1, "name": "Good", "body": 5, "sheets": "none"},
        {"name": "\u202eNo version"}, {"battenbook": 99, "name": 7}, [[]]]}"#;
    let Ok(Import::Many { projects, refused }) = read(text) else { panic!("not read") };
    assert_eq!(projects.len(), 1);
    assert_eq!(projects[0].name(), "Good");
    let seen: Vec<_> =
        refused.iter().map(|refused| (refused.number, refused.name.as_str())).collect();
    assert_eq!(seen, [(1, ""), (3, "No version"), (4, ""), (5, "")]);
}

#[wasm_bindgen_test]
fn imports_of_one_id_twice_are_both_kept() {
    let store = fresh();
    let text = r#"{"battenbook_collection": 1, "projects": [
        {"battenbook": 1, "id": "x", "name": "A"}, {"battenbook": 1, "id": "x", "name": "B"}]}"#;
    let Ok(Import::Many { projects, .. }) = read(text) else { panic!("not read") };
    for project in projects {
        keep(store, project).unwrap();
    }
    assert_eq!(store.list().len(), 2);
}

#[wasm_bindgen_test]
async fn a_file_is_measured_before_it_is_read() {
    let file = |script: &str| web_sys::File::from(run(script));
    let answers = Rc::new(RefCell::new(Vec::new()));
    let take = |answers: &Rc<RefCell<Vec<_>>>| {
        let answers = answers.clone();
        move |answer| answers.borrow_mut().push(answer)
    };
    let huge = file("window.was_read = false; const f = new File(['{}'], 'huge.json');
        Object.defineProperty(f, 'size', { value: 5e9 }); f.text = () => { window.was_read = true; return Promise.resolve('{}'); };
        return f");
    read_file(&huge, take(&answers));
    assert_eq!(answers.borrow_mut().pop(), Some(Err(ImportError::TooLarge { bytes: 5e9 })));
    assert_eq!(run("return window.was_read"), JsValue::FALSE);

    let broken = file(
        "const f = new File([''], 'x'); f.text = () => Promise.reject(new Error('gone')); return f",
    );
    read_file(&broken, take(&answers));
    wait(50).await;
    assert_eq!(answers.borrow_mut().pop(), Some(Err(ImportError::Unreadable)));

    let good = file(r#"return new File(['{"battenbook": 1, "name": "From a file"}'], 'x.json')"#);
    read_file(&good, take(&answers));
    wait(200).await;
    let answer = answers.borrow_mut().pop();
    assert!(matches!(answer, Some(Ok(Import::One(project))) if project.name() == "From a file"));
}

#[wasm_bindgen_test]
fn file_names_are_safe() {
    assert_eq!(file_name("Field bus"), "battenbook-Field-bus.json");
    assert_eq!(file_name(""), "battenbook.json");
    assert_eq!(file_name("../../etc/passwd"), "battenbook-etc-passwd.json");
    assert_eq!(file_name("con"), "battenbook-con.json");
    assert_eq!(file_name("a\u{202e}gpj.exe\u{0}\n:*?"), "battenbook-agpj-exe.json");
    assert_eq!(file_name("B\u{fc}cherbus"), "battenbook-B\u{fc}cherbus.json");
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
