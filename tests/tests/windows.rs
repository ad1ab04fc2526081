//! Two windows in sight with one project: what is typed in both within milliseconds is kept.
//!
//! `WINDOW_TRIALS=200` makes the trials more.

use calc::project::{Place, Project};
use e2e::{Imperial, Page, Result, bail, ensure, field, in_each_engine};
use serde_json::{Value, json};

in_each_engine!(
    two_windows_lose_nothing_in_different_fields,
    two_windows_keep_both_of_one_field,
    what_two_windows_add_is_all_there,
);

fn trials() -> usize {
    std::env::var("WINDOW_TRIALS").ok().and_then(|times| times.parse().ok()).unwrap_or(20)
}

/// How far apart the two windows type, one trial after the other. [ms]
const APART: [i64; 10] = [0, 1, -1, 3, -5, 10, -20, 35, -50, 50];

/// Has a window type a value into a field at a moment of the clock. [ms since 1970]
async fn type_at(page: &Page, path: &str, value: &str, at: f64) -> Result<()> {
    let script = "const [selector, value, at] = arguments;
        window.typedAt = 0;
        const type = () => {
            const field = document.querySelector(selector);
            field.focus();
            field.value = value;
            field.dispatchEvent(new InputEvent('input', { bubbles: true }));
            window.typedAt = Date.now();
        };
        const wait = at - Date.now();
        if (wait < 0) throw new Error(`too late by ${-wait} ms`);
        setTimeout(type, wait)";
    page.execute(script, vec![json!(field(path)), json!(value), json!(at)]).await?;
    Ok(())
}

async fn now(page: &Page) -> Result<f64> {
    Ok(page.execute("return Date.now()", vec![]).await?.as_f64().unwrap_or_default())
}

async fn wait_until_typed(page: &Page) -> Result<f64> {
    page.wait_until("what is to be typed", "return window.typedAt > 0").await?;
    let at = page.execute("return window.typedAt", vec![]).await?;
    page.execute("window.typedAt = 0", vec![]).await?;
    Ok(at.as_f64().unwrap_or_default())
}

async fn in_sight(page: &Page) -> Result<()> {
    let state = page.execute("return document.visibilityState", vec![]).await?;
    ensure!(state == json!("visible"), "the window is {state}");
    Ok(())
}

/// All projects that are kept, by the slots in use.
async fn all_kept(page: &Page) -> Result<Vec<Project>> {
    let script = "return Object.keys(localStorage).filter(key => key.includes(' ptr ')).map(key =>
        localStorage[key.replace(' ptr ', ` ${localStorage[key].split(' ')[0]} `)] ?? '')";
    let Value::Array(slots) = page.execute(script, vec![]).await? else {
        bail!("slots are a list")
    };
    let mut projects = Vec::new();
    for slot in slots.iter().filter_map(Value::as_str) {
        let document = slot.split_once('\n').map_or("", |(_, document)| document);
        projects.push(Project::from_text(document).map_err(|error| e2e::anyhow!("{error}"))?);
    }
    Ok(projects)
}

fn typed(project: &Project, path: &str) -> String {
    project.typed(&Place::Sheet("s4".to_owned()), path)
}

async fn two_windows_lose_nothing_in_different_fields(page: &mut Page) -> Result<()> {
    page.open_demo(Imperial).await?;
    page.go_to("s/s4").await?;
    page.wait_for_value("length", "18 ft").await?;
    let hash = page.execute("return location.hash", vec![]).await?;
    let first = page.leave_for_new_window(hash.as_str().unwrap_or_default()).await?;
    page.wait_for_value("length", "18 ft").await?;
    let second = page.browser().window().await?;
    let mut farthest = 0.0_f64;
    for number in 0..trials() {
        let length = format!("{} ft", 20 + number);
        let power = format!("{} W", 40 + number);
        in_sight(page).await?;
        let at = now(page).await? + 500.0;
        type_at(page, "power", &power, at).await?;
        page.back_to_first_tab(&first).await?;
        in_sight(page).await?;
        type_at(page, "length", &length, at + APART[number % APART.len()] as f64).await?;
        let here = wait_until_typed(page).await?;
        page.wait_for_value("power", &power).await?;
        page.wait_for_value("length", &length).await?;
        page.to_new_tab(&second).await?;
        let there = wait_until_typed(page).await?;
        page.wait_for_value("length", &length).await?;
        page.wait_for_value("power", &power).await?;
        farthest = farthest.max((here - there).abs());
        let all = all_kept(page).await?;
        ensure!(all.len() == 1, "trial {number}: {} projects", all.len());
        let kept = (typed(&all[0], "length"), typed(&all[0], "power"));
        ensure!(kept == (length, power), "trial {number}: kept {kept:?}");
    }
    println!("typed at most {farthest} ms apart");
    // And all of it is there for who comes later.
    let kept = page.kept_project().await?;
    page.reload_window().await?;
    page.wait_for_value("length", &typed(&kept, "length")).await?;
    page.wait_for_value("power", &typed(&kept, "power")).await
}

async fn two_windows_keep_both_of_one_field(page: &mut Page) -> Result<()> {
    for number in 0..trials().div_ceil(5) {
        page.open_demo(Imperial).await?;
        page.go_to("s/s4").await?;
        let hash = page.execute("return location.hash", vec![]).await?;
        let first = page.leave_for_new_window(hash.as_str().unwrap_or_default()).await?;
        page.wait_for(&field("length")).await?;
        let second = page.browser().window().await?;
        let (mine, theirs) = (format!("{} ft", 100 + number), format!("{} ft", 300 + number));
        let at = now(page).await? + 500.0;
        type_at(page, "length", &theirs, at).await?;
        page.back_to_first_tab(&first).await?;
        type_at(page, "length", &mine, at + APART[number % APART.len()] as f64).await?;
        wait_until_typed(page).await?;
        page.to_new_tab(&second).await?;
        wait_until_typed(page).await?;
        page.leave_field().await?;
        // Either one came so much later that it saw the other's, or both are there.
        page.settle().await?;
        let script = "return [...Object.values(localStorage)].join()";
        for _ in 0..40 {
            let found = page.execute(script, vec![]).await?;
            let found = found.as_str().unwrap_or_default();
            if [&mine, &theirs].iter().all(|one| found.contains(&format!("\"{one}\""))) {
                break;
            }
            page.settle().await?;
        }
        let all = all_kept(page).await?;
        let lengths: Vec<String> = all.iter().map(|project| typed(project, "length")).collect();
        let names: Vec<&str> = all.iter().map(Project::name).collect();
        ensure!(
            lengths.contains(&mine) && lengths.contains(&theirs),
            "trial {number}: {mine} and {theirs} were typed, kept: {lengths:?} {names:?}"
        );
        ensure!(
            names.iter().any(|name| name.ends_with("(other window)")),
            "trial {number}: neither is named: {names:?}"
        );
        page.close_window(&first).await?;
    }
    Ok(())
}

async fn what_two_windows_add_is_all_there(page: &mut Page) -> Result<()> {
    page.open_demo(Imperial).await?;
    page.go_to("s/s4").await?;
    let project = page.project_hash().await?;
    let first = page.leave_for_new_window(&format!("{project}/s/s1")).await?;
    page.wait_for(&field("coats")).await?;
    let second = page.browser().window().await?;
    // Many keystrokes in both at once, each saved.
    let many = "const [selector, from, at] = arguments;
        window.typedAt = 0;
        let number = 0;
        const type = () => {
            const field = document.querySelector(selector);
            field.focus();
            field.value = from + number;
            field.dispatchEvent(new InputEvent('input', { bubbles: true }));
            number += 1;
            if (number < 40) setTimeout(type, 20); else window.typedAt = Date.now();
        };
        setTimeout(type, at - Date.now())";
    let at = now(page).await? + 500.0;
    page.execute(many, vec![json!(field("coats")), json!(2), json!(at)]).await?;
    page.back_to_first_tab(&first).await?;
    page.execute(many, vec![json!(field("length")), json!(100), json!(at)]).await?;
    wait_until_typed(page).await?;
    page.to_new_tab(&second).await?;
    wait_until_typed(page).await?;
    page.leave_field().await?;
    page.back_to_first_tab(&first).await?;
    page.leave_field().await?;
    page.wait_for_value("length", "139 ft").await?;
    // In one project, since the fields are two.
    let mut kept = Vec::new();
    for _ in 0..40 {
        page.settle().await?;
        let of = |project: &Project| {
            (typed(project, "length"), project.typed(&Place::Sheet("s1".to_owned()), "coats"))
        };
        kept = all_kept(page).await?.iter().map(of).collect();
        if kept == [("139 ft".to_owned(), "41".to_owned())] {
            return Ok(());
        }
    }
    bail!("kept: {kept:?}")
}
