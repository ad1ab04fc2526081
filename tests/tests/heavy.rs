//! Large projects stay usable: it is said that it goes on, it can be left, and no list is drawn without end.

use calc::ask::MOST_ROWS;
use e2e::{
    Engine, Page, Result, ensure, in_each_engine, project_with_cut_plans, project_with_ribs,
};
use serde_json::json;
use std::time::{Duration, Instant};

in_each_engine!(
    says_how_far_it_is_and_can_be_left,
    draws_no_more_ribs_than_are_read,
    opens_a_file_of_many_in_steps_and_can_be_stopped,
);

/// Enough to be worked out for many seconds with the processor slowed down.
const PLANS: usize = 120;

async fn take_in(page: &mut Page, text: &str, name: &str) -> Result<()> {
    page.open("#/").await?;
    page.wait_for("main h1").await?;
    page.import(text).await?;
    page.wait_for_text(".said", name).await
}

async fn says_how_far_it_is_and_can_be_left(page: &mut Page) -> Result<()> {
    take_in(page, &project_with_cut_plans("heavy", PLANS), "Heavy").await?;
    if page.engine() == Engine::Chromium {
        page.slow_down(4).await?;
    }
    let begun = Instant::now();
    page.execute("location.hash = '#/p/heavy/cuts'", vec![]).await?;
    page.wait_for_text("h1", "Working out").await?;
    let told = begun.elapsed();
    println!("{}: told after {told:?}", page.engine().name());
    let part = "return document.querySelector('progress')?.value ?? 1";
    let first = page.execute(part, vec![]).await?.as_f64().unwrap_or(1.0);
    page.wait_until_with(
        "progress",
        "return (document.querySelector('progress')?.value ?? 1) > arguments[0]",
        vec![json!(first)],
    )
    .await?;
    page.screenshot("working-out").await?;
    // It can be left, at once.
    page.click("[data-stop]").await?;
    page.wait_for_text(".projects", "Heavy").await?;
    if page.engine() == Engine::Chromium {
        page.slow_down(1).await?;
    }
    // Or waited for: then every plan is there.
    let begun = Instant::now();
    page.execute("location.hash = '#/p/heavy/cuts'", vec![]).await?;
    let drawn = "return document.querySelectorAll('.cut-group').length";
    let count = loop {
        let count = page.execute(drawn, vec![]).await?.as_u64().unwrap_or_default();
        if count > 0 {
            break count;
        }
        ensure!(begun.elapsed() < Duration::from_secs(120), "not opened after two minutes");
        tokio::time::sleep(Duration::from_millis(100)).await;
    };
    println!("{}: opened after {:?}", page.engine().name(), begun.elapsed());
    // Drawn as it comes into view: not all at first, more as one scrolls.
    ensure!(count < PLANS as u64, "all {count} plans are drawn at once");
    let scroll = "window.scrollTo(0, document.documentElement.scrollHeight);
        return document.querySelectorAll('.cut-group').length > arguments[0]";
    page.wait_until_with("more of the list", scroll, vec![json!(count)]).await
}

async fn draws_no_more_ribs_than_are_read(page: &mut Page) -> Result<()> {
    page.open("#/").await?;
    page.wait_for("main h1").await?;
    if page.engine() == Engine::Chromium {
        page.slow_down(4).await?;
    }
    let begun = Instant::now();
    take_in(page, &project_with_ribs("ribs", 88_000), "Many ribs").await?;
    println!("{}: taken in after {:?}", page.engine().name(), begun.elapsed());
    let begun = Instant::now();
    page.execute("location.hash = '#/p/ribs/body'", vec![]).await?;
    page.wait_for_text("main", "there are 88000 here").await?;
    println!("{}: the body's page after {:?}", page.engine().name(), begun.elapsed());
    let drawn = "return document.querySelectorAll('[data-path^=\"ribs.measured.\"]').length";
    ensure!(page.execute(drawn, vec![]).await? == json!(MOST_ROWS), "not {MOST_ROWS} fields");
    ensure!(begun.elapsed() < Duration::from_secs(10), "the page takes {:?}", begun.elapsed());
    Ok(())
}

/// So many that opening them takes many steps of painting.
const MANY: usize = 250;

async fn opens_a_file_of_many_in_steps_and_can_be_stopped(page: &mut Page) -> Result<()> {
    let projects: Vec<serde_json::Value> = (0..MANY)
        .map(|number| {
            let mut one: serde_json::Value = serde_json::from_str(e2e::DEMO)?;
            one["id"] = json!(format!("many-{number}"));
            one["name"] = json!(format!("Rig {number}"));
            Ok(one)
        })
        .collect::<Result<_>>()?;
    let text = json!({ "battenbook_collection": 1, "projects": projects }).to_string();
    page.open("#/").await?;
    page.wait_for("main h1").await?;
    if page.engine() == Engine::Chromium {
        page.slow_down(4).await?;
    }
    // Stopped as soon as it has told twice how far it is.
    let watch = "window.told = new Set();
        new MutationObserver(() => {
            const words = document.querySelector('[data-taking-in] [role=status]')?.textContent ?? '';
            if (/^Opening project \\d+ of /.test(words)) window.told.add(words);
            if (window.told.size === 2) document.querySelector('[data-taking-in] button').click();
        }).observe(document.querySelector('main'), { childList: true, characterData: true, subtree: true })";
    page.execute(watch, vec![]).await?;
    page.import(&text).await?;
    page.wait_for_text(".said", "Stopped.").await?;
    let said = page.text(".said").await?;
    let kept = said.split(' ').nth(1).and_then(|count| count.parse::<usize>().ok()).unwrap_or(0);
    ensure!(kept > 0 && kept < MANY, "told after the stop: {said}");
    ensure!(
        said.contains(&format!("{kept} of {MANY} projects were opened and are kept.")),
        "{said}"
    );
    let listed = "return document.querySelectorAll('.projects > li').length === arguments[0]";
    page.wait_until_with("all that were kept in the list", listed, vec![json!(kept)]).await?;
    // What was kept is whole, and the rest can still be opened.
    page.click(".projects li > a").await?;
    page.wait_for_text("h1", "Rig ").await
}
