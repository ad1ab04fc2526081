//! What is saved stays, what is deleted comes back, and nothing else is touched.

use super::*;

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
fn settings_are_kept_apart() {
    let store = fresh();
    assert_eq!(store.setting("theme"), None);
    store.set_setting("theme", "night");
    assert_eq!(Store::open().setting("theme").as_deref(), Some("night"));
    assert!(store.list().is_empty());
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
fn other_apps_and_other_copies_of_the_app_are_left_alone() {
    let store = fresh();
    let others = ["a p9", "battenbook /else/ a p9", "battenbook / a", "a", "battenbook"];
    for other in others {
        local().set_item(other, "{}").unwrap();
    }
    assert!(store.list().is_empty());
    store.save(&project("p 1/\u{e4}", "Odd id"), 0).unwrap();
    assert_eq!(store.list()[0].id, "p 1/\u{e4}");
    assert!(store.room_used() > 100.0 / 5.2e6);
    store.forget("p 1/\u{e4}");
    assert_eq!(everything().len(), others.len());
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
fn a_project_too_large_to_be_read_again_is_not_saved() {
    let store = fresh();
    let large = project("p1", &"x".repeat(MAX_BYTES));
    assert!(matches!(store.save(&large, 0), Err(SaveError::TooLarge { .. })));
    assert!(everything().is_empty());
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
