//! Two windows with the same project.

use super::*;
use app::storage::{Held, Kept};

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

    let (copy, revision) = here.save_copy(&mine, "copy").unwrap();
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

fn with_note(base: &Project, key: &str, text: &str) -> Project {
    let mut project = base.clone();
    project.set_extra(key, text.into());
    project
}

#[wasm_bindgen_test]
fn the_later_window_takes_the_earlier_one_s_change_in() {
    let store = fresh();
    let base = project("p1", "Opened");
    let opened = store.save(&base, 0).unwrap();
    let (mut here, mut there) = (Held::new(&base, opened), Held::new(&base, opened));
    let mine = with_note(&base, "mine", "typed here");
    let theirs = with_note(&base, "theirs", "typed there");
    assert_eq!(there.save(store, &theirs).kept, Ok(Kept::Together));
    let outcome = here.save(store, &mine);
    assert_eq!(outcome.kept, Ok(Kept::Together));
    let both = outcome.project.unwrap();
    assert_eq!(both, store.load("p1").unwrap().project);
    assert_eq!(both.extra("mine"), Some(&"typed here".into()));
    assert_eq!(both.extra("theirs"), Some(&"typed there".into()));
    // The other window follows, and neither has anything left to say.
    assert_eq!(there.catch_up(store, &theirs, false).unwrap().project, Some(both.clone()));
    assert_eq!(there.catch_up(store, &both, false), None);
    assert_eq!(here.catch_up(store, &both, false), None);
    assert_eq!(store.list().len(), 1);
}

#[wasm_bindgen_test]
fn the_window_that_lost_a_race_puts_its_change_in() {
    let store = fresh();
    let base = project("p1", "Opened");
    let opened = store.save(&base, 0).unwrap();
    let (mut loser, mut winner) = (Held::new(&base, opened), Held::new(&base, opened));
    let before = everything();
    let lost = with_note(&base, "lost", "typed here");
    assert_eq!(loser.save(store, &lost).kept, Ok(Kept::Together));
    // The other window saw none of that when it began, and wrote over it.
    local().clear().unwrap();
    for (key, text) in before {
        local().set_item(&key, &text).unwrap();
    }
    let won = with_note(&base, "won", "typed there");
    assert_eq!(winner.save(store, &won).kept, Ok(Kept::Together));
    let outcome = loser.catch_up(store, &lost, false).unwrap();
    assert_eq!(outcome.kept, Ok(Kept::Together));
    let kept = store.load("p1").unwrap().project;
    assert_eq!(outcome.project, Some(kept.clone()));
    assert_eq!(kept.extra("lost"), Some(&"typed here".into()));
    assert_eq!(kept.extra("won"), Some(&"typed there".into()));
    assert_eq!(winner.catch_up(store, &won, false).unwrap().project, Some(kept));
}

#[wasm_bindgen_test]
fn of_one_field_changed_in_both_windows_both_are_kept() {
    let store = fresh();
    let base = with_note(&project("p1", "Bus"), "note", "before");
    let opened = store.save(&base, 0).unwrap();
    let (mut here, mut there) = (Held::new(&base, opened), Held::new(&base, opened));
    there.save(store, &with_note(&base, "note", "typed there"));
    let outcome = here.save(store, &with_note(&base, "note", "typed here"));
    assert_eq!(outcome.kept, Ok(Kept::Apart { field: "note".to_owned() }));
    let copy = outcome.project.unwrap();
    assert_eq!(copy.name(), "Bus (other window)");
    assert_eq!(store.load(copy.id()).unwrap().project.extra("note"), Some(&"typed here".into()));
    assert_eq!(store.load("p1").unwrap().project.extra("note"), Some(&"typed there".into()));
    // This window goes on in the copy.
    let next = with_note(&copy, "note", "typed on");
    assert_eq!(here.save(store, &next).kept, Ok(Kept::Together));
    assert_eq!(store.load(copy.id()).unwrap().project, next);
    assert_eq!(store.list().len(), 2);
}

#[wasm_bindgen_test]
fn windows_that_take_each_other_in_at_once_are_put_together() {
    let store = fresh();
    let base = with_note(&with_note(&project("p1", "Bus"), "mine", "0"), "theirs", "0");
    let opened = store.save(&base, 0).unwrap();
    let (mut here, mut there) = (Held::new(&base, opened), Held::new(&base, opened));
    let typed =
        |mine: &str, theirs: &str| with_note(&with_note(&base, "mine", mine), "theirs", theirs);
    // Both type without having heard of each other, and each sees the other's first state alone.
    let back = |all: &[(String, String)]| {
        local().clear().unwrap();
        for (key, text) in all {
            local().set_item(key, text).unwrap();
        }
    };
    let before = everything();
    here.save(store, &typed("1", "0"));
    let here_first = everything();
    here.save(store, &typed("2", "0"));
    back(&before);
    there.save(store, &typed("0", "1"));
    let there_first = everything();
    there.save(store, &typed("0", "2"));
    // There sees 1 of here, and here sees 1 of there.
    back(&here_first);
    assert_eq!(there.save(store, &typed("0", "3")).kept, Ok(Kept::Together));
    let there_later = everything();
    back(&there_first);
    assert_eq!(here.save(store, &typed("3", "0")).kept, Ok(Kept::Together));
    back(&there_later);
    // Here types on and meets what there has put together: both fields as typed last, in one project.
    let outcome = here.save(store, &typed("4", "1"));
    assert_eq!(outcome.kept, Ok(Kept::Together));
    assert_eq!(store.load("p1").unwrap().project, typed("4", "3"));
    assert_eq!(store.list().len(), 1);
}
