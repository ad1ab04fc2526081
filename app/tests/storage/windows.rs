//! Two windows with the same project.

use super::*;

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
