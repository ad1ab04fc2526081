//! Files from elsewhere are hostile until read: what is refused, in which words, and what is shown as text.

use e2e::{Page, Result, ensure, in_each_engine, project_with_every_sheet};
use serde_json::{Value, json};

in_each_engine!(
    shows_script_in_names_as_text,
    refuses_what_is_no_project_file,
    gives_everything_as_one_file_and_takes_it_back,
);

const HOSTILE: &str = "<img src=x onerror=\"window.hit=1\"><script>window.hit=2</script>'\"&amp;";

/// Puts hostile text into every name of a document: whatever is text and no measure, number or keyword.
fn harm(node: &mut Value) {
    match node {
        Value::Array(items) => items.iter_mut().for_each(harm),
        Value::Object(fields) => {
            for (key, value) in fields {
                let named =
                    ["name", "label", "title", "product", "model_name"].contains(&key.as_str());
                if named && value.is_string() {
                    *value = json!(format!("{HOSTILE} {}", value.as_str().unwrap_or_default()));
                } else {
                    harm(value);
                }
            }
        }
        _ => {}
    }
}

async fn shows_script_in_names_as_text(page: &mut Page) -> Result<()> {
    let mut project: Value = serde_json::from_str(&project_with_every_sheet()?)?;
    harm(&mut project);
    project["id"] = json!("<script>window.hit=3</script>/../#");
    let all = project["sheets"].as_array_mut().map_or(&mut [][..], |all| all);
    for sheet in &mut *all {
        sheet["title"] = json!(format!("{HOSTILE} {}", sheet["kind"].as_str().unwrap_or_default()));
    }
    let mut kinds: Vec<String> =
        all.iter().filter_map(|sheet| sheet["kind"].as_str()).map(str::to_owned).collect();
    let strange = json!({ "id": "strange", "kind": HOSTILE, "inputs": { "<b>": HOSTILE } });
    if let Some(all) = project["sheets"].as_array_mut() {
        all.push(strange);
    }
    kinds.push("strange".into());

    page.open("#/").await?;
    page.wait_for_page().await?;
    page.import(&project.to_string()).await?;
    page.wait_for_text(".said", "<script>").await?;
    page.wait_for_text(".projects", "<img src=x").await?;
    nothing_ran(page, "the start page").await?;
    page.click(".projects li > a").await?;
    page.wait_for_text("h1", "<img src=x").await?;
    nothing_ran(page, "the project's page").await?;
    for part in ["body", "add", "marks", "cuts", "pass", "versions"] {
        page.go_to(part).await?;
        nothing_ran(page, part).await?;
    }
    for kind in kinds {
        page.go_to(&format!("s/{kind}")).await?;
        page.wait_for("h1").await?;
        if kind != "strange" {
            page.wait_for(".answers [data-result]").await?;
            page.wait_for_text("h1", "<script>").await?;
        }
        nothing_ran(page, &kind).await?;
    }
    Ok(())
}

async fn nothing_ran(page: &Page, at: &str) -> Result<()> {
    page.settle().await?;
    let found = page
        .execute(
            "return [window.hit ?? null, [...document.querySelectorAll('#app script, #app img, #app iframe, #app [onerror]')].map(e => e.outerHTML)]",
            vec![],
        )
        .await?;
    ensure!(found == json!([null, []]), "{at}: {found}");
    Ok(())
}

async fn refuses_what_is_no_project_file(page: &mut Page) -> Result<()> {
    let deep = "[".repeat(5000);
    let deep_inputs = format!(
        r#"{{"battenbook":1,"sheets":[{{"id":"s1","kind":"coating","inputs":{}1{}}}]}}"#,
        r#"{"a":"#.repeat(400),
        "}".repeat(400)
    );
    let many = format!(
        r#"{{"battenbook":1,"sheets":[{}]}}"#,
        vec![r#"{"kind":"coating"}"#; 501].join(",")
    );
    page.open("#/").await?;
    page.wait_for_page().await?;
    let cases = [
        ("this is no JSON", "Nothing was imported"),
        ("", "Nothing was imported"),
        (deep.as_str(), "Nothing was imported"),
        (deep_inputs.as_str(), "Nothing was imported"),
        (r#"{"name":"from another program"}"#, "Nothing was imported"),
        (r#"{"battenbook":99,"name":"later"}"#, "newer"),
        (r#"{"battenbook_collection":2,"projects":[]}"#, "newer"),
        (many.as_str(), "501 sheets"),
    ];
    for (text, words) in cases {
        page.reload().await?;
        page.wait_for_page().await?;
        page.import(text).await?;
        page.wait_for_text(".said", words).await?;
        let said = page.text(".said").await?;
        ensure!(said.starts_with("Nothing was imported: ") && said.ends_with(['.', '?']), "{said}");
        println!("{said}");
    }
    page.screenshot("import-refused").await?;
    page.reload().await?;
    page.wait_for_text("main", "No projects on this device yet").await
}

async fn gives_everything_as_one_file_and_takes_it_back(page: &mut Page) -> Result<()> {
    page.open_demo(e2e::Metric).await?;
    page.go_to("s/s4").await?;
    page.fill("length", "7.25").await?;
    page.leave_field().await?;
    page.settle().await?;
    page.open("#/").await?;
    page.wait_for("[data-do=save-all]").await?;
    page.gather_downloads().await?;
    page.click("[data-do=save-all]").await?;
    let texts = page.downloads().await?;
    ensure!(texts.len() == 1, "{} files are offered", texts.len());
    // Another device: nothing is kept there.
    page.clear_device().await?;
    page.reload().await?;
    page.wait_for_text("main", "No projects on this device yet").await?;
    page.import(&texts[0]).await?;
    page.wait_for_text(".projects", "Bookmobile").await?;
    page.click(".projects li > a").await?;
    page.go_to("s/s4").await?;
    page.wait_for_value("length", "7.25 m").await?;
    // The same file again harms nothing: both are there.
    page.open("#/").await?;
    page.wait_for_page().await?;
    page.import(&texts[0]).await?;
    page.wait_until(
        "both projects",
        "return document.querySelectorAll('.projects li').length === 2",
    )
    .await
}
