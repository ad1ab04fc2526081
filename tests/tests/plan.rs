//! Measuring on the plan: a tap asks for what it shows, and what was entered stands in it to scale.

use e2e::{Imperial, Page, Result, ensure, in_each_engine};
use serde_json::json;

in_each_engine!(measures_on_the_plan, axe_finds_nothing_on_the_plan);

/// Only Chromium's driver can take the mouse away, so that the pad is there.
mod measures_a_body_with_digits_and_next {
    #[test]
    fn chromium() {
        e2e::run(
            e2e::Engine::Chromium,
            "measures_a_body_with_digits_and_next",
            super::measures_a_body_with_digits_and_next,
        );
    }
}

/// The key that goes on to the next field.
const ENTER: &str = "\u{e007}";

/// The selector of the place in the plan that asks for the input at a path.
fn place(path: &str) -> String {
    format!(".plan [data-do=ask][data-with='{path}']")
}

async fn wait_for_field(page: &Page, path: &str) -> Result<()> {
    page.wait_until_with(
        &format!("the focus in {path}"),
        "return document.activeElement?.dataset.path === arguments[0]",
        vec![json!(path)],
    )
    .await
}

async fn wait_for_name(page: &Page, path: &str, name: &str) -> Result<()> {
    page.wait_until_with(
        &format!("{path} named {name}"),
        "return document.querySelector(arguments[0])?.getAttribute('aria-label') === arguments[1]",
        vec![json!(place(path)), json!(name)],
    )
    .await
}

/// Taps a place of the plan, which asks for this field, and types into it.
async fn enter(page: &Page, path: &str, field: &str, text: &str) -> Result<()> {
    page.click(&place(path)).await?;
    wait_for_field(page, field).await?;
    page.press(text).await?;
    page.press(ENTER).await
}

/// Where the ribs with these numbers stand in the plan, from the left. [px]
async fn ribs_at<const N: usize>(page: &Page, numbers: [&str; N]) -> Result<[f64; N]> {
    let script = "return arguments[0].map(number =>
        Number([...document.querySelectorAll('.plan svg text')].find(one => one.textContent === number).getAttribute('x')))";
    let found = page.execute(script, vec![json!(numbers.as_slice())]).await?;
    let found: Vec<f64> = serde_json::from_value(found)?;
    found.try_into().map_err(|_| e2e::anyhow!("not {N} ribs"))
}

async fn measures_on_the_plan(page: &mut Page) -> Result<()> {
    page.begin_project(Imperial).await?;
    page.go_to("body").await?;
    page.wait_for(".plan svg").await?;
    page.leave_field().await?;
    page.screenshot("plan-empty").await?;
    page.wait_for_text(".rig", "not to scale").await?;
    let front = "return [...document.querySelectorAll('.plan svg text')].some(one => one.textContent.includes('Front'))";
    ensure!(page.execute(front, vec![]).await? == json!(true), "the front is not named");
    // Each place has a name, and takes a thumb.
    let small = "return [...document.querySelectorAll('.plan [data-do=ask]')].map(one => [one.ariaLabel ?? one.getAttribute('aria-label'), one.getBoundingClientRect()])
        .filter(([name, room]) => !name || Math.min(room.width, room.height) < 44 - 0.5).map(one => JSON.stringify(one))";
    let small = page.execute(small, vec![]).await?;
    ensure!(small == json!([]), "too small or without a name: {small}");

    enter(page, "length", "length", "216").await?;
    wait_for_name(page, "length", "Length inside: 18 ft").await?;
    enter(page, "width", "width", "81").await?;
    wait_for_name(page, "width", "Width inside: 6 ft 9 in").await?;
    page.wait_for_text(".rig .help", "body, to scale").await?;
    page.click(&place("ribs.measured.0")).await?;
    // One reading after another, each in its place as soon as it is left.
    for (at, rib) in ["16", "58 1/2", "100", "141 1/4", "183"].into_iter().enumerate() {
        let path = format!("ribs.measured.{at}");
        wait_for_field(page, &path).await?;
        page.press(rib).await?;
        // The next one comes below it.
        page.wait_for(&format!("[data-path='ribs.measured.{}']", at + 1)).await?;
        page.press(ENTER).await?;
        page.wait_for(&format!(".plan .target:not(.blank)[data-with='{path}']")).await?;
    }
    wait_for_field(page, "ribs.measured.5").await?;
    let [first, second, last] = ribs_at(page, ["1", "2", "5"]).await?;
    let share = (last - first) / (second - first);
    let wanted = (183.0 - 16.0) / (58.5 - 16.0);
    ensure!((share - wanted).abs() < 0.05, "rib 5 stands at {share} of rib 2, not at {wanted}");

    // A rib that was read wrong is tapped, and moves; the field that was typed into is left.
    page.click(&place("ribs.measured.1")).await?;
    wait_for_field(page, "ribs.measured.1").await?;
    page.type_into("[data-path='ribs.measured.1']", "60").await?;
    page.press(ENTER).await?;
    wait_for_name(page, "ribs.measured.1", "Rib 2: 60 in").await?;
    let [_, moved] = ribs_at(page, ["1", "2"]).await?;
    ensure!(moved > second + 1.0, "rib 2 stood at {second}, and stands at {moved}");

    enter(page, "diagonals.first", "diagonals.first", "231").await?;
    wait_for_field(page, "diagonals.second").await?;
    page.press("230 3/8").await?;
    page.press(ENTER).await?;
    page.wait_for(".plan .target:not(.blank)[data-with='diagonals.second']").await?;
    page.wait_for_text(".found", "Out of square").await?;

    // An opening has no row yet: it gets one.
    page.click(&place("openings.0")).await?;
    wait_for_field(page, "openings.0.name").await?;
    for (field, text) in
        [("name", "vent"), ("x", "95"), ("y", "33"), ("length", "14"), ("width", "14")]
    {
        wait_for_field(page, &format!("openings.0.{field}")).await?;
        page.press(text).await?;
        page.press(ENTER).await?;
    }
    wait_for_name(page, "openings.0.x", "vent: 95 in").await?;
    page.click(&place("openings.0.x")).await?;
    wait_for_field(page, "openings.0.x").await?;
    let pointed =
        "return document.querySelector(arguments[0]).getAttribute('aria-current') === 'true'";
    page.wait_until_with("the opening pointed out", pointed, vec![json!(place("openings.0.x"))])
        .await?;
    page.leave_field().await?;
    page.screenshot("plan-measured").await?;
    Ok(())
}

async fn axe_finds_nothing_on_the_plan(page: &mut Page) -> Result<()> {
    page.begin_project(Imperial).await?;
    page.go_to("body").await?;
    page.wait_for(&place("length")).await?;
    let mut found = page.axe().await?;
    page.open_demo(Imperial).await?;
    page.go_to("body").await?;
    page.wait_for(&place("ribs.measured.12")).await?;
    found.extend(page.axe().await?);
    ensure!(found.is_empty(), "{}", found.join("\n"));
    Ok(())
}

/// Taps and signs to measure a body of five ribs on its plan: what the tape says, and a key after each.
const TAPS: u32 = 7;
const SIGNS: u32 = 30;

async fn measures_a_body_with_digits_and_next(page: &mut Page) -> Result<()> {
    let readings = [
        ("length", "216"),
        ("width", "81 1/8"),
        ("ribs.measured.0", "16"),
        ("ribs.measured.1", "58 1/2"),
        ("ribs.measured.2", "100"),
        ("ribs.measured.3", "141 1/4"),
        ("ribs.measured.4", "183"),
    ];
    page.touch_only().await?;
    for (size, name) in
        [((390, 844), "plan-pad"), ((320, 568), "plan-pad-small"), ((844, 390), "plan-pad-wide")]
    {
        page.as_large_as(size).await?;
        page.begin_project(Imperial).await?;
        page.go_to("body").await?;
        let (mut taps, mut typed) = (0, 0);
        for (path, text) in readings {
            // The pad is up from the start: the field that comes first has the focus.
            wait_for_field(page, path).await?;
            page.press(text).await?;
            typed += u32::try_from(text.chars().count())?;
            page.settle().await?;
            // Plan, field and pad, none over another.
            let script = "const of = what => document.querySelector(what).getBoundingClientRect();
                const [top, plan, pad] = ['.top', '.plan svg', '.pad'].map(of);
                const field = document.activeElement.getBoundingClientRect();
                const apart = pad.left >= field.right - 1 || field.bottom <= pad.top + 1;
                return [plan.top >= top.bottom - 1, plan.height >= 80, field.top >= plan.bottom - 1, apart,
                    field.bottom <= innerHeight, pad.bottom <= innerHeight + 1, plan.right <= innerWidth,
                    plan.right <= pad.left || plan.bottom <= pad.top, document.documentElement.scrollWidth <= innerWidth]";
            let seen = page.execute(script, vec![]).await?;
            let all = seen.as_array().is_some_and(|all| all.iter().all(|one| *one == json!(true)));
            ensure!(all, "{path} at {size:?}: {seen}");
            taps += 1;
            page.click(".pad .next").await?;
            page.settle().await?;
        }
        page.wait_for(&format!("{}:not(.blank)", place("ribs.measured.4"))).await?;
        page.screenshot(name).await?;
        println!("{taps} taps and {typed} signs for the body at {size:?}");
        ensure!(taps <= TAPS && typed <= SIGNS, "{taps} taps, {typed} signs");
    }
    Ok(())
}
