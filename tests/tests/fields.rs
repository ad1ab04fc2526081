//! Fields as thumbs use them: units, keys for lengths, faults, undo, lists that grow.

use calc::project::{Place, Project};
use e2e::{Engine, Imperial, Metric, Page, Result, answers_in, ensure, field, in_each_engine};
use serde_json::json;

in_each_engine!(
    keeps_the_unit_beside_a_bare_number,
    types_what_a_number_pad_lacks,
    says_what_is_wrong_beside_the_field,
    takes_back_and_brings_again,
    measures_the_ribs_one_by_one,
    fills_the_usual_value_with_a_tap,
    gives_a_tap_to_what_was_pressed,
);

/// The page moves, or is written anew, between the press and the letting go.
async fn gives_a_tap_to_what_was_pressed(page: &mut Page) -> Result<()> {
    page.begin_project(Imperial).await?;
    page.add_sheet("coating").await?;
    let add = "[data-do=add-row][data-with=areas]";
    let moved = "document.querySelector('main').style.paddingTop = '300px'";
    page.tap_while(add, moved).await?;
    page.wait_for(&field("areas.1.length")).await?;
    page.settle().await?;
    let anew = "const old = document.querySelector('[data-do=add-row][data-with=areas]');
        old.parentNode.style.paddingTop = '150px'; old.replaceWith(old.cloneNode(true))";
    page.tap_while(add, anew).await?;
    page.wait_for(&field("areas.2.length")).await?;
    // Once a tap, not twice.
    page.settle().await?;
    page.wait_until_gone(&field("areas.3.length")).await?;
    // Two quick taps are two: what waits for the first one's end does not press the second.
    let quick =
        "const tap = (at) => ['pointerdown', 'mousedown', 'mouseup', 'click'].forEach((name) =>
            at.dispatchEvent(new PointerEvent(name, { bubbles: true, cancelable: true })));
        tap(document.querySelector('main h1'));
        tap(document.querySelector('[data-do=add-row][data-with=areas]'));
        document.querySelector('[data-do=add-row][data-with=areas]')
            .dispatchEvent(new PointerEvent('pointerdown', { bubbles: true, cancelable: true }))";
    page.execute(quick, vec![]).await?;
    page.settle().await?;
    page.wait_for(&field("areas.3.length")).await?;
    page.wait_until_gone(&field("areas.4.length")).await
}

async fn keeps_the_unit_beside_a_bare_number(page: &mut Page) -> Result<()> {
    page.begin_project(Imperial).await?;
    page.add_sheet("coating").await?;
    let unit = "[data-field=\"areas.0.length\"] .unit";
    page.wait_for_text(unit, "in").await?;
    page.fill("areas.0.length", "90 1/2").await?;
    ensure!(page.value(&field("areas.0.length")).await? == "90 1/2", "typing was disturbed");
    ensure!(page.text(unit).await? == "in", "the unit went while the number was typed");
    page.leave_field().await?;
    page.wait_for_value("areas.0.length", "90 1/2 in").await?;
    // Now it stands in the field.
    page.wait_until(
        "the unit to go",
        "return document.querySelector('[data-field=\"areas.0.length\"] .unit').textContent === ''",
    )
    .await?;
    // What has its own unit keeps it, whatever the page's.
    page.fill("areas.0.width", "2.3 m").await?;
    page.leave_field().await?;
    page.wait_for_value("areas.0.width", "2.3 m").await?;
    page.set_system(Metric).await?;
    page.wait_for_value("areas.0.length", "90 1/2 in").await?;
    page.fill("areas.0.width", "2300").await?;
    page.leave_field().await?;
    page.wait_for_value("areas.0.width", "2300 mm").await?;
    page.fill("coats", "3").await?;
    page.leave_field().await?;
    page.wait_for_value("coats", "3").await
}

async fn types_what_a_number_pad_lacks(page: &mut Page) -> Result<()> {
    page.begin_project(Imperial).await?;
    page.add_sheet("stud_marks").await?;
    let key = |name: &str| format!("[data-field=first_stud] [data-do=key][aria-label=\"{name}\"]");
    if page.engine() == Engine::WebKit {
        // A window without a window manager is never active, so its fields never count as focused: the keys' coming and
        // going is not tested there, what they do is.
        let show = "const style = new CSSStyleSheet(); style.replaceSync('.keys { display: grid !important }');
            document.adoptedStyleSheets = [style]";
        page.execute(show, vec![]).await?;
    }
    page.click(&field("first_stud")).await?;
    // Where a thumb types, the pad comes first; the phone's keyboard is one tap away, and has these keys above it.
    if page.execute("return matchMedia('(pointer: coarse)').matches", vec![]).await? == json!(true)
    {
        page.click(".pad [data-do=keyboard]").await?;
    }
    page.press("7").await?;
    page.click(&key("feet")).await?;
    page.press(" 6 1").await?;
    page.click(&key("fraction stroke")).await?;
    page.press("2").await?;
    page.click(&key("inches")).await?;
    page.wait_for_value("first_stud", "7' 6 1/2\"").await?;
    // At the caret, not at the end.
    page.fill("first_stud", "912").await?;
    let script = "document.querySelector(arguments[0]).setSelectionRange(1, 1)";
    page.execute(script, vec![json!(field("first_stud"))]).await?;
    page.click(&key("space")).await?;
    page.press("1").await?;
    page.click(&key("fraction stroke")).await?;
    page.wait_for_value("first_stud", "9 1/12").await?;
    let focus = page.execute("return document.activeElement.dataset.path", vec![]).await?;
    ensure!(focus == json!("first_stud"), "the keys took the focus: {focus}");
    page.leave_field().await?;
    page.wait_for_value("first_stud", "9 1/12 in").await
}

async fn says_what_is_wrong_beside_the_field(page: &mut Page) -> Result<()> {
    page.begin_project(Imperial).await?;
    page.add_sheet("voltage_drop").await?;
    page.click("[data-fill]").await?;
    page.wait_for(".answers [data-result]").await?;
    page.fill("length", "about 18").await?;
    page.wait_for("[data-field=length].wrong .fault").await?;
    page.wait_until_gone(".answers [data-result]").await?;
    let invalid = field("length") + "[aria-invalid=true]";
    page.wait_for(&invalid).await?;
    let described = page
        .execute(
            "const f = document.querySelector(arguments[0]);
            return f.getAttribute('aria-describedby').split(' ').map(id => document.getElementById(id).textContent)",
            vec![json!(invalid)],
        )
        .await?;
    let fault = page.text("[data-field=length] .fault").await?;
    ensure!(
        !fault.is_empty() && described[0] == json!(fault),
        "{described} does not say {fault:?}"
    );
    page.screenshot("fault").await?;
    // From the list of what is needed to the field, and all is well again.
    page.click(".to-mend [data-do=show]").await?;
    let focus = page.execute("return document.activeElement.dataset.path", vec![]).await?;
    ensure!(focus == json!("length"), "the focus is on {focus}");
    page.fill("length", "18").await?;
    page.wait_for(".answers [data-result]").await?;
    page.wait_until_gone("[aria-invalid=true]").await
}

async fn takes_back_and_brings_again(page: &mut Page) -> Result<()> {
    page.begin_project(Imperial).await?;
    page.add_sheet("trim").await?;
    page.fill("height", "2 3/8").await?;
    page.leave_field().await?;
    page.fill("height", "3").await?;
    page.leave_field().await?;
    page.wait_for_value("height", "3 in").await?;
    page.click("[aria-label=Undo]").await?;
    page.wait_for_value("height", "2 3/8 in").await?;
    page.click("[aria-label=Undo]").await?;
    page.wait_for_value("height", "").await?;
    page.click("[aria-label=Redo]").await?;
    page.wait_for_value("height", "2 3/8 in").await?;
    page.click("[aria-label=Redo]").await?;
    page.wait_for_value("height", "3 in").await?;
    page.wait_for("[aria-label=Redo]:disabled").await?;
    // The whole sheet goes, and comes back.
    let sheet = page.sheet_id().await?;
    page.click_button("Remove this sheet (undo brings it back)").await?;
    page.wait_for("a.add").await?;
    page.wait_until_gone(".cards a[href*=\"/s/\"]").await?;
    page.click("[aria-label=Undo]").await?;
    page.click(&format!(".cards a[href$=\"/s/{sheet}\"]")).await?;
    page.wait_for_value("height", "3 in").await
}

async fn measures_the_ribs_one_by_one(page: &mut Page) -> Result<()> {
    page.begin_project(Metric).await?;
    page.go_to("body").await?;
    page.fill_all(&[("length", "5480"), ("width", "2060")]).await?;
    page.click("details[data-group='ask ribs'] > summary").await?;
    page.click_button("Measured one by one").await?;
    let ribs = ["212", "631", "1049", "1472"];
    page.click(&field("ribs.measured.0")).await?;
    for (index, rib) in ribs.into_iter().enumerate() {
        let focus = page.execute("return document.activeElement.dataset.path", vec![]).await?;
        ensure!(focus == json!(format!("ribs.measured.{index}")), "the focus is on {focus}");
        page.press(rib).await?;
        // The next field opens by itself, and Enter goes on to it.
        page.wait_for(&field(&format!("ribs.measured.{}", index + 1))).await?;
        page.press(&char::from(thirtyfour::Key::Enter).to_string()).await?;
    }
    page.wait_for_value("ribs.measured.3", "1472 mm").await?;
    page.wait_for(".results svg").await?;
    page.screenshot("body").await?;

    page.add_sheet("stud_marks").await?;
    page.fill("board", "1600").await?;
    page.fill("first_stud", "100").await?;
    page.wait_for_text("[data-field=studs], .list", "4 ribs").await?;
    page.wait_until_marks(&["100 mm", "519 mm", "937 mm", "1360 mm"]).await?;
    // Moving a rib moves the mark that hangs on it.
    page.go_to("body").await?;
    page.fill("ribs.measured.2", "1060").await?;
    page.go_to("s/s1").await?;
    page.wait_until_marks(&["100 mm", "519 mm", "948 mm", "1360 mm"]).await?;
    let project: Project = page.kept_project().await?;
    page.wait_for_answers(&answers_in(&project, "s1")?).await?;
    ensure!(project.row_count(&Place::Body, "ribs.measured") == 4, "an empty rib was kept");
    Ok(())
}

async fn fills_the_usual_value_with_a_tap(page: &mut Page) -> Result<()> {
    page.begin_project(Metric).await?;
    page.add_sheet("coating").await?;
    page.click("[data-field=coats] .usual").await?;
    page.wait_for_value("coats", "3").await?;
    page.wait_until_gone("[data-field=coats] .usual").await?;
    // What is measured in the rig has an example, and nothing to take over.
    page.wait_until_gone("[data-field=\"areas.0.length\"] .usual").await?;
    let example = "return document.querySelector('[data-path=\"areas.0.length\"]').placeholder";
    ensure!(page.execute(example, vec![]).await? == json!("e.g. 4500 mm"), "an example");
    Ok(())
}
