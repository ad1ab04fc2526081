//! From cut plan to saw: planned by typing, planned anew at the store, ticked off while cutting and marking.

use calc::project::Lacking;
use e2e::{Engine, Imperial, Metric, Page, Result, answers_in, ensure, in_each_engine};
use serde_json::json;
use std::process::Command;

in_each_engine!(
    plans_cuts_and_takes_what_the_store_has,
    keeps_a_what_if_until_it_is_dropped,
    sheets_of_one_section_are_cut_and_bought_together,
    ticks_of_cuts_outlive_a_reload_and_a_new_plan,
    ticks_of_marks_follow_the_marks,
    plans_anew_with_the_server_gone,
    axe_finds_nothing_on_lists_in_use,
);

/// Only Chromium's driver prints what the phone shows.
mod prints_the_lists {
    #[test]
    fn chromium() {
        e2e::run(e2e::Engine::Chromium, "prints_the_lists", super::prints_the_lists);
    }
}

/// Types a cut plan: rails of 5 ft, from lengths of 8 ft and 10 ft.
async fn type_a_plan(page: &mut Page) -> Result<()> {
    page.add_sheet("cut_plan").await?;
    page.fill_all(&[
        ("pieces.0.label", "rail"),
        ("pieces.0.length", "5'"),
        ("pieces.0.count", "4"),
        ("stock.0.length", "8"),
        ("stock.0.price", "5"),
    ])
    .await?;
    page.click("[data-do=add-row][data-with=stock]").await?;
    page.fill_all(&[("stock.1.length", "10"), ("stock.1.price", "7"), ("kerf", "0")]).await
}

async fn wait_for_own_answers(page: &mut Page) -> Result<()> {
    page.leave_field().await?;
    let id = page.sheet_id().await?;
    let project = page.kept_project().await?;
    page.wait_for_answers(&answers_in(&project, &id)?).await
}

/// A cell of the table that compares: by hand, two 10 ft lengths take the four rails, or four of 8 ft.
async fn wait_for_comparison(page: &mut Page, row: &[&str]) -> Result<()> {
    let script = "return [...document.querySelectorAll('.what-if tbody tr')].some(row =>
        JSON.stringify([...row.children].map(cell => cell.textContent)) === arguments[0])";
    let wanted = serde_json::to_string(row)?;
    page.wait_until_with(&format!("{wanted} side by side"), script, vec![json!(wanted)]).await
}

const NO_TEN: &str = "[data-do=lacking][data-with='stock|10 ft']";

async fn plans_cuts_and_takes_what_the_store_has(page: &mut Page) -> Result<()> {
    page.begin_project(Imperial).await?;
    type_a_plan(page).await?;
    wait_for_own_answers(page).await?;
    page.wait_for_text("[data-result=Buy]", "2 × 10 ft").await?;
    page.click(NO_TEN).await?;
    wait_for_comparison(page, &["To pay", "14.00", "20.00"]).await?;
    wait_for_comparison(page, &["Best there is", "proved", "proved"]).await?;
    page.screenshot("what-if").await?;
    // Nothing has changed yet.
    page.wait_for_text("[data-result=Buy]", "2 × 10 ft").await?;
    page.click("[data-do=take]").await?;
    page.wait_for_text("[data-result=Buy]", "4 × 8 ft").await?;
    page.wait_for_value("stock.1.available", "0").await?;
    wait_for_own_answers(page).await?;
    page.click("[aria-label=Undo]").await?;
    page.wait_for_text("[data-result=Buy]", "2 × 10 ft").await
}

async fn keeps_a_what_if_until_it_is_dropped(page: &mut Page) -> Result<()> {
    page.begin_project(Imperial).await?;
    type_a_plan(page).await?;
    page.leave_field().await?;
    page.click(NO_TEN).await?;
    page.click("[data-do=keep]").await?;
    let id = page.sheet_id().await?;
    ensure!(page.kept_project().await?.lacking(&id).lacks("stock", "10 ft"), "it is not kept");
    page.reload().await?;
    wait_for_comparison(page, &["To pay", "14.00", "20.00"]).await?;
    // It follows the sheet.
    page.fill("pieces.0.count", "2").await?;
    wait_for_comparison(page, &["To pay", "7.00", "10.00"]).await?;
    page.click("[data-do=drop]").await?;
    page.wait_until_gone(".what-if table").await?;
    ensure!(page.kept_project().await?.lacking(&id) == Lacking::default(), "it is still kept");
    Ok(())
}

async fn sheets_of_one_section_are_cut_and_bought_together(page: &mut Page) -> Result<()> {
    page.begin_project(Imperial).await?;
    for (label, length) in [("rail", "5'"), ("rung", "3'")] {
        page.add_sheet("cut_plan").await?;
        page.fill_all(&[
            ("pieces.0.label", label),
            ("pieces.0.length", length),
            ("pieces.0.count", "4"),
            ("stock.0.length", "8"),
            ("stock.0.price", "5"),
            ("kerf", "0"),
        ])
        .await?;
        page.leave_field().await?;
    }
    page.go_to("cuts").await?;
    // By hand: apart 4 + 2 lengths, together one rail and one rung from each of four.
    page.wait_for_text(".cut-group .remark", "20.00 instead of 30.00, 10.00 saved").await?;
    page.wait_for_text(".bar h3", "4 × 8 ft").await?;
    page.screenshot("cut-list").await?;
    page.go_to("buy").await?;
    page.wait_for_text("main", "4 × board, 8 ft").await?;
    Ok(())
}

/// Whether the first box for this is ticked.
async fn first_is_ticked(page: &Page, what: &str) -> Result<bool> {
    let script = "return document.querySelector(`input[data-do=${arguments[0]}]`).checked";
    Ok(page.execute(script, vec![json!(what)]).await? == json!(true))
}

async fn ticks_of_cuts_outlive_a_reload_and_a_new_plan(page: &mut Page) -> Result<()> {
    page.begin_project(Imperial).await?;
    type_a_plan(page).await?;
    page.leave_field().await?;
    page.go_to("cuts").await?;
    page.wait_for_text(".progress", "0 of 4 pieces cut").await?;
    page.click("input[data-do=piece]").await?;
    page.wait_for_text(".progress", "1 of 4 pieces cut").await?;
    page.settle().await?;
    page.reload().await?;
    page.wait_for_text(".progress", "1 of 4 pieces cut").await?;
    ensure!(first_is_ticked(page, "piece").await?, "the tick of a piece is gone");
    // The whole length.
    page.click("input[data-do=bar]").await?;
    page.wait_for_text(".progress", "2 of 4 pieces cut").await?;
    // More rails: the length that is cut already is still one of the plan.
    page.go_to("s/s1").await?;
    page.fill("pieces.0.count", "6").await?;
    page.leave_field().await?;
    page.go_to("cuts").await?;
    page.wait_for_text(".progress", "2 of 6 pieces cut").await?;
    // Other rails: what was cut is told, and can be forgotten.
    page.go_to("s/s1").await?;
    page.fill("pieces.0.length", "4'").await?;
    page.leave_field().await?;
    page.go_to("cuts").await?;
    page.wait_for_text(".progress", "0 of 6 pieces cut").await?;
    page.wait_for_text(".cut-before", "rail 60 in, rail 60 in").await?;
    page.click("[data-do=forget]").await?;
    page.wait_until_gone(".cut-before").await
}

async fn ticks_of_marks_follow_the_marks(page: &mut Page) -> Result<()> {
    page.begin_project(Metric).await?;
    page.add_sheet("stud_marks").await?;
    page.fill_all(&[
        ("board", "3.6 m"),
        ("first_stud", "137"),
        ("studs.0", "412"),
        ("studs.1", "821"),
        ("studs.2", "1236"),
    ])
    .await?;
    page.leave_field().await?;
    page.go_to("marks").await?;
    page.wait_until_marks(&["137 mm", "546 mm", "961 mm"]).await?;
    page.wait_for_text("button.headline", "137 mm").await?;
    page.click("#mark-0-0").await?;
    page.wait_for_text("button.headline", "546 mm").await?;
    page.settle().await?;
    page.reload().await?;
    page.wait_for_text("button.headline", "546 mm").await?;
    ensure!(first_is_ticked(page, "mark").await?, "the tick of a mark is gone");
    // The way to what is next.
    page.click("button.headline").await?;
    page.wait_until("the next mark in focus", "return document.activeElement.id === 'mark-0-1'")
        .await?;
    page.click("#mark-0-1").await?;
    page.wait_for_text("button.headline", "961 mm").await?;
    page.screenshot("mark-list-ticked").await?;
    // The second stud moves: its mark is to be made again, the first one stays.
    page.go_to("s/s1").await?;
    page.fill("studs.1", "830").await?;
    page.leave_field().await?;
    page.go_to("marks").await?;
    page.wait_until_marks(&["137 mm", "555 mm", "961 mm"]).await?;
    page.wait_for_text("button.headline", "555 mm").await?;
    // Undo takes a tick back in place.
    page.click("#mark-0-1").await?;
    page.wait_for_text("button.headline", "961 mm").await?;
    page.click("[aria-label=Undo]").await?;
    page.wait_for_text("button.headline", "555 mm").await?;
    page.wait_until("no tick", "return !document.querySelector('#mark-0-1').checked").await?;
    // The whole board.
    page.click("#board-0").await?;
    page.wait_for_text("p.headline", "All marked").await
}

async fn plans_anew_with_the_server_gone(page: &mut Page) -> Result<()> {
    page.open("").await?;
    page.wait_until_kept().await?;
    page.go_offline();
    page.reload().await?;
    page.begin_project(Imperial).await?;
    type_a_plan(page).await?;
    page.leave_field().await?;
    page.click(NO_TEN).await?;
    wait_for_comparison(page, &["To pay", "14.00", "20.00"]).await?;
    page.click("[data-do=take]").await?;
    page.wait_for_text("[data-result=Buy]", "4 × 8 ft").await?;
    page.settle().await?;
    page.reload().await?;
    wait_for_own_answers(page).await?;
    page.go_to("cuts").await?;
    page.wait_for_text(".bar h3", "4 × 8 ft").await
}

async fn axe_finds_nothing_on_lists_in_use(page: &mut Page) -> Result<()> {
    page.begin_project(Imperial).await?;
    type_a_plan(page).await?;
    page.add_sheet("stud_marks").await?;
    page.fill_all(&[("board", "8"), ("first_stud", "5"), ("studs.0", "9"), ("studs.1", "25")])
        .await?;
    page.leave_field().await?;
    for (part, tick) in
        [("s/s1", NO_TEN), ("cuts", "input[data-do=piece]"), ("marks", "input[data-do=mark]")]
    {
        page.go_to(part).await?;
        page.click(tick).await?;
        page.settle().await?;
        for light in ["day", "night"] {
            page.set_light(light).await?;
            let found = page.axe().await?;
            ensure!(found.is_empty(), "{part} by {light}:\n{}", found.join("\n"));
        }
    }
    Ok(())
}

async fn prints_the_lists(page: &mut Page) -> Result<()> {
    if xtask::engine::program("pdftotext").is_none() {
        println!("the print view is not tested: pdftotext is missing");
        return Ok(());
    }
    ensure!(page.engine() == Engine::Chromium, "only Chromium prints the phone's page");
    page.open_demo(Imperial).await?;
    page.go_to("marks").await?;
    page.wait_for(".mark .tape svg").await?;
    let marks = page.marks().await?;
    let printed = page.print("mark-list").await?;
    let text = Command::new("pdftotext").arg("-layout").arg(&printed).arg("-").output()?;
    let text = String::from_utf8_lossy(&text.stdout).into_owned();
    for mark in &marks {
        ensure!(text.contains(mark.as_str()), "no {mark} in print");
    }
    page.go_to("cuts").await?;
    page.wait_for(".bar svg").await?;
    let project = page.kept_project().await?;
    let all = calc::evaluate(&project);
    let printed = page.print("cut-list").await?;
    let text = Command::new("pdftotext").arg("-layout").arg(&printed).arg("-").output()?;
    let text = String::from_utf8_lossy(&text.stdout).into_owned();
    let bars = all.cut_list.iter().flat_map(|group| &group.bars);
    for piece in bars.flat_map(|bar| &bar.pieces) {
        let length = project.style().mark(piece.length).text;
        ensure!(text.contains(&length), "no {length} in print");
    }
    Ok(())
}
