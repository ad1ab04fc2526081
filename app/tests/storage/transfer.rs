//! Files out and in; files that mean harm.

use super::*;

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
    assert_eq!(refused[0].reason, LoadError::TooNew { found: 99 });

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
fn one_project_goes_out_and_comes_in_the_same() {
    let mut mine = project("p1", "Field bus");
    mine.add_sheet(
        "coating",
        "Floor \u{201c}A\u{201d}",
        serde_json::json!({ "coats": "2", "later": [1, 2.50] }),
    );
    let (name, text) = export_one(&mine);
    assert_eq!(name, "battenbook-Field-bus.json");
    assert_eq!(read(&text), Ok(Import::One(mine.clone())));
    assert_eq!(read(&format!("\u{feff}{text}")), Ok(Import::One(mine)));
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
    let not_json =
        |error: ImportError| matches!(error, ImportError::Project(LoadError::NotJson { .. }));
    assert!(not_json(refused("")));
    assert!(not_json(refused("<html>")));
    assert!(not_json(refused(&format!("{{\"battenbook\": 1, \"x\": {}", "[".repeat(1_000_000)))));
    let deep = format!("{{\"battenbook\": 1, \"x\": {}{}}}", "[".repeat(1000), "]".repeat(1000));
    assert!(not_json(refused(&deep)));
    let deep = format!("{{\"battenbook_collection\": 1, \"projects\": [{deep}]}}");
    assert!(not_json(refused(&deep)));

    assert!(matches!(refused(&" ".repeat(MAX_FILE_BYTES + 1)), ImportError::TooLarge { .. }));
    let large = format!("{{\"battenbook\": 1, \"x\": \"{}\"}}", "x".repeat(MAX_BYTES));
    let too_large = |error| matches!(error, ImportError::Project(LoadError::TooLarge { .. }));
    assert!(too_large(refused(&large)));
    // It counts as it is kept, not as it was written: blanks make it no larger, and none make it no smaller.
    let blanks = format!("{{\"battenbook\": 1{}}}", " ".repeat(MAX_BYTES));
    assert!(read(&blanks).is_ok());
    let without_blanks = format!("{{\"battenbook\":1,\"x\":[{}1]}}", "1,".repeat(MAX_BYTES / 5));
    assert!(without_blanks.len() < MAX_BYTES && too_large(refused(&without_blanks)));

    let no_version = ImportError::Project(LoadError::NoVersion);
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
    let count = MOST_PROJECTS + 1;
    assert_eq!(refused(&many(count)), ImportError::TooMany { count });
    assert!(read(&many(MOST_PROJECTS)).is_ok());

    let sheets =
        format!("{{\"battenbook\": 1, \"sheets\": [{}]}}", vec!["{}"; MOST_SHEETS + 1].join(","));
    let too_many = LoadError::TooManySheets { count: MOST_SHEETS + 1 };
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
    let Some(Ok(text)) = answer else { panic!("not read") };
    assert!(matches!(read(&text), Ok(Import::One(project)) if project.name() == "From a file"));
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

#[wasm_bindgen_test]
fn everything_as_one_file_says_where_the_copy_before_was_used() {
    let store = fresh();
    let revision = store.save(&project("p1", "Before"), 0).unwrap();
    store.save(&project("p1", "After"), revision).unwrap();
    store.save(&project("p2", "Whole"), 0).unwrap();
    assert!(export_all(store).restored.is_empty());
    put(&pointed("p1"), "p1", "cut sh");
    let all = export_all(store);
    assert_eq!(all.restored, ["Before"]);
    let Ok(Import::Many { projects, refused }) = read(&all.text) else { panic!("not read") };
    assert_eq!((projects.len(), refused.len()), (2, 0));
}
