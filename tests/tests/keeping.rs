//! Nothing is lost: reloads, bins, copies, two tabs, no server, damaged storage, ticks.

use calc::project::Place;
use e2e::{Imperial, Metric, Page, Result, answers_in, ensure, field, in_each_engine};
use serde_json::json;

in_each_engine!(
    finds_everything_typed_after_a_reload,
    brings_a_deleted_project_back,
    copies_a_project,
    follows_another_tab,
    works_with_the_server_gone,
    shows_the_copy_before_when_the_last_save_is_damaged,
    says_which_project_is_damaged_and_gives_its_text,
    ticks_off_what_is_bought,
    mends_a_damaged_save_from_the_second_store,
    brings_all_back_when_the_first_store_is_lost,
    what_was_deleted_for_good_stays_gone,
    a_full_store_loses_nothing,
);

async fn finds_everything_typed_after_a_reload(page: &mut Page) -> Result<()> {
    page.begin_project(Imperial).await?;
    page.add_sheet("trim").await?;
    page.fill("height", "2 3/8").await?;
    page.fill("corners.0.name", "driver's side <ä> \"½\"").await?;
    page.fill("corners.0.standoff", "not measured yet").await?;
    page.click("details.rename summary").await?;
    page.type_into("#sheet-title", "Roof fan").await?;
    page.leave_field().await?;
    page.wait_for_text("h1", "Roof fan").await?;
    page.reload().await?;
    page.wait_for_text("h1", "Roof fan").await?;
    page.wait_for_value("height", "2 3/8 in").await?;
    page.wait_for_value("corners.0.name", "driver's side <ä> \"½\"").await?;
    page.wait_for_value("corners.0.standoff", "not measured yet").await?;
    // Typed and closed at once, the field still in use.
    page.fill("clearance", "1/8").await?;
    page.arrive("#/").await?;
    page.wait_for_text(".projects", "My rig").await?;
    page.click(".projects li > a").await?;
    page.click(".cards a[href$=\"/s/s1\"]").await?;
    page.wait_for_value("clearance", "1/8 in").await
}

async fn brings_a_deleted_project_back(page: &mut Page) -> Result<()> {
    page.open_demo(Metric).await?;
    page.open("#/").await?;
    page.wait_for_text(".projects", "Bookmobile").await?;
    page.click("details.more summary").await?;
    page.click("[data-do=delete]").await?;
    page.wait_for_text(".bin", "Bookmobile").await?;
    page.wait_until_gone(".projects li").await?;
    page.reload().await?;
    page.click("[data-do=restore]").await?;
    page.wait_for_text(".projects", "Bookmobile").await?;
    page.wait_until_gone(".bin").await?;
    page.click(".projects li > a").await?;
    page.wait_for_text(".cards", "Maple floor finish").await?;
    // For good is for good.
    page.open("#/").await?;
    page.click("details.more summary").await?;
    page.click("[data-do=delete]").await?;
    page.click("[data-do=forget]").await?;
    page.wait_until_gone(".bin").await?;
    let left = page.kept_keys().await?;
    page.reload().await?;
    page.wait_for_text("main", "No projects on this device yet").await?;
    ensure!(left.is_empty(), "left: {left:?}");
    Ok(())
}

async fn copies_a_project(page: &mut Page) -> Result<()> {
    page.open_demo(Imperial).await?;
    let first = page.project_hash().await?;
    page.open("#/").await?;
    page.click("details.more summary").await?;
    page.click("[data-do=copy]").await?;
    page.wait_for_text(".projects", "(copy)").await?;
    page.click(&format!(".projects li > a:not([href=\"{first}\"])")).await?;
    page.wait_for_text("h1", "(copy)").await?;
    page.go_to("s/s4").await?;
    page.fill("length", "40 ft").await?;
    page.open(&format!("{first}/s/s4")).await?;
    page.wait_for_value("length", "18 ft").await
}

async fn follows_another_tab(page: &mut Page) -> Result<()> {
    page.open_demo(Imperial).await?;
    page.go_to("s/s4").await?;
    page.wait_for_value("length", "18 ft").await?;
    let hash = page.execute("return location.hash", vec![]).await?;
    let here = page.leave_for_new_tab(hash.as_str().unwrap_or_default()).await?;
    page.wait_for_value("length", "18 ft").await?;
    page.click(&field("length")).await?;
    page.fill("length", "25").await?;
    page.leave_field().await?;
    let project = page.kept_project().await?;
    let there = page.back_to_first_tab(&here).await?;
    page.wait_for_value("length", "25 ft").await?;
    page.wait_for_answers(&answers_in(&project, "s4")?).await?;
    // And the other way round.
    page.fill("length", "30").await?;
    page.leave_field().await?;
    page.settle().await?;
    page.to_new_tab(&there).await?;
    page.wait_for_value("length", "30 ft").await
}

async fn works_with_the_server_gone(page: &mut Page) -> Result<()> {
    page.open("").await?;
    page.wait_until_kept().await?;
    page.go_offline();
    page.reload().await?;
    page.open_demo(Metric).await?;
    page.go_to("s/s1").await?;
    page.fill("coats", "5").await?;
    page.reload().await?;
    page.wait_for_value("coats", "5").await?;
    let project = page.kept_project().await?;
    page.wait_for_answers(&answers_in(&project, "s1")?).await?;
    // By a bookmark.
    let deep = page.project_hash().await? + "/s/s4";
    page.arrive("#/").await?;
    page.wait_for_text("h1", "Battenbook").await?;
    page.arrive(&deep).await?;
    page.wait_for_text("h1", "Fan feed").await?;
    page.wait_for_answers(&answers_in(&project, "s4")?).await
}

async fn shows_the_copy_before_when_the_last_save_is_damaged(page: &mut Page) -> Result<()> {
    page.open_demo(Imperial).await?;
    page.go_to("s/s4").await?;
    page.fill("length", "20").await?;
    page.leave_field().await?;
    page.settle().await?;
    page.harm_kept(false, "rubbish {\"").await?;
    page.reload().await?;
    page.wait_for_text(".notice-line.warning", "damaged").await?;
    // It is said each time, as long as it is so.
    page.reload().await?;
    page.wait_for_text(".notice-line.warning", "damaged").await?;
    // The save before the last one.
    page.wait_for_text("h1", "Fan feed").await?;
    page.wait_for(".answers [data-result]").await?;
    // It can be worked on, and the damaged text can still be had.
    page.fill("length", "22").await?;
    page.leave_field().await?;
    page.reload().await?;
    page.wait_for_value("length", "22 ft").await?;
    page.open("#/").await?;
    page.gather_downloads().await?;
    page.click("details.more summary").await?;
    page.click("[data-do=save-damaged]").await?;
    let texts = page.downloads().await?;
    ensure!(texts == ["rubbish {\""], "offered: {texts:?}");
    Ok(())
}

async fn says_which_project_is_damaged_and_gives_its_text(page: &mut Page) -> Result<()> {
    page.begin_project(Imperial).await?;
    page.open_demo(Imperial).await?;
    page.go_to("s/s4").await?;
    page.fill("length", "20").await?;
    page.leave_field().await?;
    page.settle().await?;
    page.harm_kept(true, "rubbish <b>{\"</b>").await?;
    page.reload().await?;
    page.wait_for_text("h1", "Can't open this project").await?;
    page.gather_downloads().await?;
    page.click_button("Save its text to a file").await?;
    let texts = page.downloads().await?;
    ensure!(texts == ["rubbish <b>{\"</b>"], "offered: {texts:?}");
    page.arrive("#/").await?;
    page.wait_for_text(".projects", "can't be read; its text is kept").await?;
    page.screenshot("damaged").await?;
    page.gather_downloads().await?;
    let damaged = "//li[contains(., \"can't be read\")]";
    page.click_path(&format!("{damaged}//summary")).await?;
    page.click_path(&format!("{damaged}//button[@data-do='save']")).await?;
    let texts = page.downloads().await?;
    ensure!(texts == ["rubbish <b>{\"</b>"], "offered: {texts:?}");
    // The other project is as it was.
    page.click_path("//li/a[contains(., 'My rig')]").await?;
    page.wait_for_text("h1", "My rig").await
}

async fn ticks_off_what_is_bought(page: &mut Page) -> Result<()> {
    page.open_demo(Imperial).await?;
    page.go_to("buy").await?;
    page.wait_for(".ticks li").await?;
    // The finish of the floor, which grows with the coats.
    let tick = ".ticks input[data-with*=\"maple-floor-finish\"]";
    let script =
        "return [...document.querySelectorAll(arguments[0])].map(t => [t.dataset.with, t.checked])";
    let before = page.execute(script, vec![json!(tick)]).await?;
    ensure!(before.as_array().is_some_and(|all| !all.is_empty()), "no finish to buy: {before}");
    ensure!(before[0][1] == json!(false), "ticked already");
    page.click(tick).await?;
    page.wait_for(".ticks li.done").await?;
    page.reload().await?;
    page.wait_for(".ticks li.done").await?;
    let after = page.execute(script, vec![json!(tick)]).await?;
    ensure!(after[0][1] == json!(true), "the tick is lost: {after}");

    let key = before[0][0].as_str().unwrap_or_default().to_owned();
    let quantity = |project: &calc::project::Project| {
        let all = calc::evaluate(project);
        all.buy_list.iter().find(|line| line.key() == key).map_or(0.0, |line| line.line.quantity)
    };
    let had = quantity(&page.kept_project().await?);
    page.go_to("s/s1").await?;
    // Coats enough that more of the very same container is the cheapest.
    page.fill("coats", "30").await?;
    page.leave_field().await?;
    let project = page.kept_project().await?;
    ensure!(project.typed(&Place::Sheet("s1".into()), "coats") == "30", "the coats were not kept");
    let missing = quantity(&project) - had;
    ensure!(missing >= 1.0, "the need did not grow: {missing}");
    page.go_to("buy").await?;
    page.wait_for_text(".ticks .note.warning", &format!("{missing} more needed")).await?;
    let after = page.execute(script, vec![json!(tick)]).await?;
    ensure!(after[0][1] == json!(false), "still ticked off, though more is needed");
    page.screenshot("buy-list").await?;
    Ok(())
}

async fn mends_a_damaged_save_from_the_second_store(page: &mut Page) -> Result<()> {
    page.open_demo(Imperial).await?;
    page.go_to("s/s4").await?;
    page.fill("length", "20").await?;
    page.leave_field().await?;
    page.journal_is_written().await?;
    for both in [false, true] {
        page.harm_first_store(both, "rubbish {\"").await?;
        page.reload().await?;
        page.wait_for_text(".notices", "Restored as last typed: \u{201c}Bookmobile").await?;
        page.wait_for_value("length", "20 ft").await?;
        page.journal_is_written().await?;
    }
    // It is whole again, and can be worked on.
    page.reload().await?;
    page.wait_for_value("length", "20 ft").await?;
    page.wait_until_gone(".notice-line").await?;
    page.fill("length", "22").await?;
    page.leave_field().await?;
    page.reload().await?;
    page.wait_for_value("length", "22 ft").await
}

async fn brings_all_back_when_the_first_store_is_lost(page: &mut Page) -> Result<()> {
    page.open_demo(Imperial).await?;
    page.go_to("versions").await?;
    page.type_into("#version-name", "before the store").await?;
    page.click("[data-keep]").await?;
    page.wait_for_text(".said", "Saved as").await?;
    page.go_to("s/s4").await?;
    page.fill("length", "20").await?;
    page.leave_field().await?;
    page.journal_is_written().await?;
    page.execute("localStorage.clear()", vec![]).await?;
    page.reload().await?;
    page.wait_for_text(".notices", "Restored as last typed: \u{201c}Bookmobile").await?;
    page.wait_for_value("length", "20 ft").await?;
    page.go_to("versions").await?;
    page.wait_for_text(".versions", "before the store").await?;
    page.click("[data-do=seen]").await?;
    page.wait_until_gone(".notice-line").await?;
    page.open("#/").await?;
    page.wait_for_text(".projects", "Bookmobile").await
}

/// A browser that was killed comes back with an older first store.
async fn what_was_deleted_for_good_stays_gone(page: &mut Page) -> Result<()> {
    page.begin_project(Imperial).await?;
    page.open_demo(Imperial).await?;
    let gone = page.project_hash().await?;
    page.journal_is_written().await?;
    let older = page.execute("return JSON.stringify(localStorage)", vec![]).await?;
    page.open("#/").await?;
    page.click_path("//li[contains(., 'Bookmobile')]//summary").await?;
    page.click_path("//li[contains(., 'Bookmobile')]//button[@data-do='delete']").await?;
    page.wait_for_text(".bin", "Bookmobile").await?;
    page.journal_is_written().await?;
    let go_back = "localStorage.clear(); Object.assign(localStorage, JSON.parse(arguments[0]))";
    page.execute(go_back, vec![older.clone()]).await?;
    page.reload().await?;
    page.wait_for_text(".bin", "Bookmobile").await?;
    page.click("[data-do=forget]").await?;
    page.wait_until_gone(".bin").await?;
    page.journal_is_written().await?;
    page.execute(go_back, vec![older]).await?;
    page.reload().await?;
    page.wait_for_text(".projects", "My rig").await?;
    page.wait_until_gone(".bin").await?;
    let left =
        page.execute("return document.querySelectorAll('.projects li').length", vec![]).await?;
    ensure!(left == json!(1), "{left} projects are listed");
    page.arrive(&gone).await?;
    page.wait_for_text("h1", "Can't open this project").await
}

async fn a_full_store_loses_nothing(page: &mut Page) -> Result<()> {
    page.open_demo(Metric).await?;
    // Another project of its size; the demo itself is there once.
    page.open("#/").await?;
    page.click("details.more summary").await?;
    page.click("[data-do=copy]").await?;
    page.wait_for(".projects li:nth-child(2)").await?;
    page.open_demo(Imperial).await?;
    page.go_to("s/s4").await?;
    page.fill_store().await?;
    let guarded = "return !dispatchEvent(new Event('beforeunload', { cancelable: true }))";
    ensure!(page.execute(guarded, vec![]).await? == json!(false), "a guard with nothing unsaved");
    page.fill("length", "23").await?;
    page.leave_field().await?;
    page.wait_for_text("[role=alert]", "space for this page is full").await?;
    ensure!(page.execute(guarded, vec![]).await? == json!(true), "no guard");
    // The notice goes along, and what was typed stays.
    page.open("#/").await?;
    page.wait_for_text("[role=alert]", "only in this tab").await?;
    page.wait_for_text(".projects", "not saved").await?;
    page.screenshot("full").await?;
    page.gather_downloads().await?;
    page.click("[data-do=save-unsaved]").await?;
    let texts = page.downloads().await?;
    ensure!(texts.len() == 1 && texts[0].contains("\"23 ft\""), "the file: {texts:?}");
    page.click("[role=alert] a.button").await?;
    page.go_to("s/s4").await?;
    page.wait_for_value("length", "23 ft").await?;
    page.wait_for_text("[role=alert]", "space for this page is full").await?;
    // In another project too.
    page.open("#/").await?;
    page.click(".projects li:last-child > a").await?;
    page.wait_for(".cards").await?;
    page.wait_for_text("[role=alert]", "only in this tab").await?;
    page.click("[data-do=try-again]").await?;
    page.wait_for_text("[role=alert]", "only in this tab").await?;
    // Room is made as told: taking out works with none left, and then all is saved.
    page.open("#/").await?;
    page.click(".projects li:last-child summary").await?;
    page.click(".projects li:last-child [data-do=delete]").await?;
    page.wait_for_text(".bin", "Bookmobile").await?;
    page.click("[data-do=empty-bin]").await?;
    page.wait_until_gone("[role=alert]").await?;
    ensure!(page.execute(guarded, vec![]).await? == json!(false), "the guard stays");
    page.click(".projects li > a").await?;
    page.go_to("s/s4").await?;
    page.wait_for_value("length", "23 ft").await?;
    page.reload().await?;
    page.wait_for_value("length", "23 ft").await
}
