//! Full, blocked and damaged storage, and projects of a newer program.

use super::*;

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
fn deleting_works_with_a_single_copy_in_a_full_storage() {
    let store = fresh();
    store.save(&project("p1", "One"), 0).unwrap();
    fill();
    assert_eq!(store.delete("p1"), Ok(()));
    assert!(store.list().is_empty());
    assert_eq!(store.deleted()[0].name, "One");
    store.restore("p1");
    let loaded = store.load("p1").unwrap();
    assert_eq!((loaded.project.name(), loaded.restored), ("One", false));
    local().clear().unwrap();
}

#[wasm_bindgen_test]
fn without_a_pointer_a_damaged_last_save_is_told() {
    let store = fresh();
    let first = store.save(&project("p1", "Old"), 0).unwrap();
    let second = store.save(&project("p1", "New"), first).unwrap();
    let used = pointed("p1");
    let whole = get(&used, "p1").unwrap();
    // The pointer says that there was a later write than the one that is there.
    put("ptr", "p1", &format!("{used} {}", second + (1 << 21)));
    assert!(store.load("p1").unwrap().restored);
    local().remove_item(&key("ptr", "p1")).unwrap();
    assert!(!store.load("p1").unwrap().restored, "both are whole");
    put(&used, "p1", &whole[..whole.len() - 20]);
    for _ in 0..2 {
        let loaded = store.load("p1").unwrap();
        assert_eq!((loaded.project.name(), loaded.restored), ("Old", true), "told each time");
    }
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
fn a_text_that_can_be_read_is_shown_though_its_slot_is_muddled() {
    let store = fresh();
    put("a", "p1", r#"{"battenbook": 1, "id": "another", "name": "By hand"}"#);
    for name in ["By hand", "Saved"] {
        let loaded = store.load("p1").unwrap();
        assert_eq!((loaded.project.id(), loaded.project.name()), ("p1", name));
        assert_eq!(loaded.restored, name == "By hand");
        store.save(&renamed(&loaded.project, "Saved"), loaded.revision).unwrap();
    }
    let whole = get(&pointed("p1"), "p1").unwrap();
    put(&pointed("p1"), "p1", whole.split_once('\n').unwrap().1);
    let loaded = store.load("p1").unwrap();
    store.save(&renamed(&loaded.project, "Again"), loaded.revision).unwrap();
    assert_eq!(store.list().len(), 1);
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
        assert_eq!(store.raw("p1").as_deref(), Some(newer));
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
