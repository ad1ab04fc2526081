//! What holds on every page: accessible by day and night, no wider than the phone, fit for a thumb, printed with its answers.

use calc::project::Project;
use calc::sheet::SHEETS;
use e2e::{
    Engine, Metric, PHONE, Page, Result, answers_in, ensure, in_each_engine,
    project_with_every_sheet,
};
use serde_json::json;
use std::process::Command;

in_each_engine!(
    axe_finds_nothing_on_every_page_by_day,
    axe_finds_nothing_on_every_page_by_night,
    nothing_scrolls_sideways_and_all_fits_a_thumb,
);

/// Only Chromium's driver prints what the phone shows.
mod prints_the_answers {
    #[test]
    fn chromium() {
        e2e::run(e2e::Engine::Chromium, "prints_the_answers", super::prints_the_answers);
    }
}

/// The height that a thumb needs. [px]
const LEAST_HEIGHT: u32 = 48;

async fn axe_finds_nothing_on_every_page_by_day(page: &mut Page) -> Result<()> {
    axe_everywhere(page, "day").await
}

async fn axe_finds_nothing_on_every_page_by_night(page: &mut Page) -> Result<()> {
    axe_everywhere(page, "night").await
}

async fn axe_everywhere(page: &mut Page, light: &str) -> Result<()> {
    let mut found = Vec::new();
    on_every_page(page, async |page, name| {
        page.set_light(light).await?;
        let here = page.axe().await?;
        found.extend(here.into_iter().map(|one| format!("{name}: {one}")));
        Ok(())
    })
    .await?;
    ensure!(found.is_empty(), "by {light}:\n{}", found.join("\n"));
    Ok(())
}

async fn nothing_scrolls_sideways_and_all_fits_a_thumb(page: &mut Page) -> Result<()> {
    let too_wide = "
        // Not innerWidth: a phone's browser widens that to what overflows.
        const wide = arguments[1];
        if (document.documentElement.scrollWidth <= wide) return [];
        const out = [...document.querySelectorAll('#app *')].filter(one =>
            one.getBoundingClientRect().right > wide + 1 && !one.parentElement.closest('.table, .drawing-window'));
        return ['scrolls sideways to ' + document.documentElement.scrollWidth + ' px', ...out.slice(0, 3).map(one => one.outerHTML.slice(0, 120))]";
    let too_small = "
        const all = document.querySelectorAll('button, a[href], summary, input, select, label:has(input)');
        const seen = [...all].filter(one => one.checkVisibility({ visibilityProperty: true, opacityProperty: true })
            && !one.closest('.visually-hidden, .skip') && !(one.matches('input') && one.closest('label')));
        // Parts of a plan that stand close share their room; each has its field below, of full size (WCAG 2.2, 2.5.8: 24 px).
        const least = one => one.matches('.target') ? 24 : arguments[0];
        return seen.filter(one => one.getBoundingClientRect().height < least(one) - 0.5)
            .map(one => Math.round(one.getBoundingClientRect().height) + ' px: ' + one.outerHTML.slice(0, 120))";
    let mut found = Vec::new();
    on_every_page(page, async |page, name| {
        for script in [too_wide, too_small] {
            let here = page.execute(script, vec![json!(LEAST_HEIGHT), json!(PHONE.0)]).await?;
            let here: Vec<String> = serde_json::from_value(here)?;
            found.extend(here.iter().take(6).map(|one| format!("{name}: {one}")));
        }
        Ok(())
    })
    .await?;
    ensure!(found.is_empty(), "{}", found.join("\n"));
    // Both would have been seen.
    let bad = "const one = document.createElement('button'); one.className = 'bad';
        one.style.cssText = 'min-height: 0; height: 20px; padding: 0; width: 500px';
        document.querySelector('main').append(one)";
    page.execute(bad, vec![]).await?;
    for script in [too_wide, too_small] {
        let here =
            page.execute(script, vec![json!(LEAST_HEIGHT), json!(PHONE.0)]).await?.to_string();
        ensure!(here.contains("class=\\\"bad\\\""), "not seen: {here}");
    }
    Ok(())
}

/// Shows each page there is, with all that can be opened open.
async fn on_every_page(
    page: &mut Page,
    mut check: impl AsyncFnMut(&mut Page, &str) -> Result<()>,
) -> Result<()> {
    page.open("#/").await?;
    page.wait_for_page().await?;
    open_all(page).await?;
    check(page, "empty start").await?;
    page.open("#/p/nowhere").await?;
    page.wait_for_text("h1", "Can't open this project").await?;
    check(page, "no such project").await?;
    page.open_demo(Metric).await?;
    page.open("#/").await?;
    page.click("details.more summary").await?;
    page.click("[data-do=delete]").await?;
    page.wait_for(".bin").await?;
    page.open_every_sheet().await?;
    page.open("#/").await?;
    page.wait_for(".projects li").await?;
    open_all(page).await?;
    check(page, "start").await?;
    page.open("#/p/every").await?;
    page.wait_for(".cards").await?;
    let parts = [
        "", "body", "add", "buy", "buy/x", "marks", "cuts", "book", "pass", "versions", "compare",
        "s/none",
    ]
    .map(str::to_owned);
    let sheets = SHEETS.iter().map(|sheet| format!("s/{}", sheet.kind));
    for part in parts.into_iter().chain(sheets) {
        page.go_to(&part).await?;
        page.wait_for_page().await?;
        if part.starts_with("s/") && part != "s/none" {
            page.wait_for(".answers [data-result]").await?;
        }
        open_all(page).await?;
        check(page, &format!("page {part:?}")).await?;
    }
    // A tap beside the menu closes it.
    page.go_to("").await?;
    let list = page.wait_for(".buy h2").await?;
    let script = "arguments[0].scrollIntoView({ block: 'end', behavior: 'instant' })";
    page.browser().execute(script, vec![list.to_json()?]).await?;
    list.click().await?;
    page.wait_until_gone("details.menu[open]").await?;
    // A sheet with nothing in it, and one with faults.
    page.add_sheet("coating").await?;
    open_all(page).await?;
    check(page, "blank coating").await?;
    page.fill("areas.0.length", "nine feet").await?;
    page.wait_for(".wrong").await?;
    check(page, "coating with a fault").await
}

async fn open_all(page: &Page) -> Result<()> {
    page.execute("for (const one of document.querySelectorAll('details')) one.open = true", vec![])
        .await?;
    page.settle().await
}

async fn prints_the_answers(page: &mut Page) -> Result<()> {
    // `cargo xtask test` leaves tests named `prints_…` out, and says so, where this is missing.
    ensure!(xtask::engine::program("pdftotext").is_some(), "pdftotext is missing");
    ensure!(page.engine() == Engine::Chromium, "only Chromium prints the phone's page");
    page.open_every_sheet().await?;
    let project = Project::from_text(&project_with_every_sheet()?)
        .map_err(|error| e2e::anyhow!("{error}"))?;
    for sheet in SHEETS {
        page.go_to(&format!("s/{}", sheet.kind)).await?;
        page.wait_for(".answers [data-result]").await?;
        let printed = page.print(sheet.kind).await?;
        let text = Command::new("pdftotext").arg("-raw").arg(&printed).arg("-").output()?;
        let text = flat(&String::from_utf8_lossy(&text.stdout));
        for answer in answers_in(&project, sheet.kind)? {
            ensure!(
                text.contains(&flat(&answer.text)),
                "{}: no {:?} in print",
                sheet.kind,
                answer.text
            );
        }
    }
    Ok(())
}

/// A text without the breaks that a line of print may have.
fn flat(text: &str) -> String {
    text.split_whitespace().collect()
}
