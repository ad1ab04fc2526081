//! Versions: kept beside the project, none ever lost to another write.

use super::*;

#[wasm_bindgen_test]
fn a_version_is_there_as_it_was_and_the_project_untouched() {
    for store in [fresh(), Store::in_memory()] {
        let mut mine = project("p 1/\u{e4}", "Field bus");
        let revision = store.save(&mine, 0).unwrap();
        let first = store.keep_version(&mine, "before\nthe store \u{bd}").unwrap();
        mine.set_name("Later");
        let second = store.keep_version(&mine, "after").unwrap();
        assert!(second > first, "kept within the same millisecond, still two");
        let names: Vec<String> =
            store.versions(mine.id()).into_iter().map(|one| one.name).collect();
        assert_eq!(names, ["after", "before the store \u{bd}"], "the last kept first");
        let (then, name) = store.version(mine.id(), first).unwrap();
        assert_eq!((then.name(), name.as_str()), ("Field bus", "before the store \u{bd}"));
        assert_eq!(
            store.load(mine.id()).unwrap().revision,
            revision,
            "the project itself is not written"
        );
        assert_eq!(store.list().len(), 1, "a version is no project");
        assert!(store.versions("p").is_empty(), "another id that begins the same");
        let size = store.versions(mine.id())[0].chars;
        assert!(size > mine.to_text().len() && size < mine.to_text().len() + 100);

        let whole = store.take_version_out(mine.id(), first).unwrap();
        assert_eq!(store.versions(mine.id()).len(), 1);
        assert_eq!(store.version(mine.id(), first).unwrap_err().reason, FailureReason::Missing);
        store.put_version_back(mine.id(), first, &whole).unwrap();
        assert_eq!(store.version(mine.id(), first).unwrap().0, then);
        store.forget(mine.id());
    }
    assert!(everything().is_empty(), "{:?}", everything());
}

#[wasm_bindgen_test]
fn a_version_that_cannot_be_written_costs_nothing_that_is_kept() {
    let store = fresh();
    let mine = project("p1", "Field bus");
    store.save(&mine, 0).unwrap();
    let first = store.keep_version(&mine, "first").unwrap();
    let before = everything();
    fill();
    assert_eq!(store.keep_version(&mine, "no room"), Err(SaveError::Full));
    run(
        "for (const key of Object.keys(localStorage)) if (!key.startsWith('battenbook')) localStorage.removeItem(key);",
    );
    assert_eq!(everything(), before);
    with_set_item("set(key, text.slice(0, -1));", || {
        assert_eq!(store.keep_version(&mine, "cut short"), Err(SaveError::NotKept));
    });
    assert_eq!(everything(), before, "half a version is no version");
    assert_eq!(store.version("p1", first).unwrap().0, mine);
}

#[wasm_bindgen_test]
fn a_damaged_or_newer_version_is_listed_and_its_text_can_be_had() {
    let store = fresh();
    let mine = project("p1", "Field bus");
    store.save(&mine, 0).unwrap();
    let number = store.keep_version(&mine, "first").unwrap();
    let kept = get("version", &format!("p1 {number}")).unwrap();
    put("version", &format!("p1 {number}"), &kept.replace("Field", "Fxeld"));
    assert_eq!(store.versions("p1")[0].state, ListingState::Damaged);
    let failure = store.version("p1", number).unwrap_err();
    assert!(matches!(failure.reason, FailureReason::Damaged(_)));
    assert!(failure.raw.unwrap().contains("Fxeld"));
    put("version", "p1 7", &slot(7, 99, "later\n{\"battenbook\": 99}"));
    assert_eq!(store.versions("p1")[1].state, ListingState::Newer { found: 99 });
    assert_eq!(store.version("p1", 7).unwrap_err().reason, FailureReason::Newer { found: 99 });
}

#[wasm_bindgen_test]
fn the_room_that_is_used_is_told() {
    let store = fresh();
    assert!(store.room_used() < 0.01);
    local().set_item("filler", &"x".repeat(2_621_184)).unwrap();
    let half = store.room_used();
    assert!((half - 0.5).abs() < 0.01, "{half}");
    // Beyond Latin letters the narrowest browser holds half as much.
    local().set_item("filler", &"\u{20ac}".repeat(1_310_592)).unwrap();
    assert!((store.room_used() - half).abs() < 0.01);
}
