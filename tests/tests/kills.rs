//! A browser that is killed without warning while someone types loses at most the last second.
//!
//! WebKitGTK is left out: its driver opens only browsers that keep nothing past their end.
//!
//! `KILL_AFTER=2,8,30,60 KILL_TRIALS=3 cargo xtask test --filter ...` makes the trials longer and more.

use e2e::{Engine, Imperial, Killable, Page, Result, Shown, bail, ensure, field};
use serde_json::json;
use std::time::{Duration, Instant};

mod a_killed_browser_loses_at_most_a_second {
    #[test]
    fn chromium() {
        super::trials(e2e::Engine::Chromium);
    }
    #[test]
    fn firefox() {
        super::trials(e2e::Engine::Firefox);
    }
}

mod what_does_not_fit_survives_too {
    #[test]
    fn chromium() {
        super::full_and_killed(e2e::Engine::Chromium);
    }
    #[test]
    fn firefox() {
        super::full_and_killed(e2e::Engine::Firefox);
    }
}

/// Between two values. The driver itself takes a part of it.
const PACE: Duration = Duration::from_millis(100);
/// What may be missing.
const MOST_LOST: Duration = Duration::from_secs(1);

fn trials(engine: Engine) {
    let seconds = std::env::var("KILL_AFTER").unwrap_or_else(|_| "2,8".to_owned());
    let times = std::env::var("KILL_TRIALS").ok().and_then(|times| times.parse().ok()).unwrap_or(1);
    let runtime = tokio_runtime();
    let mut failed = Vec::new();
    for _ in 0..times {
        for seconds in seconds.split(',').filter_map(|one| one.trim().parse().ok()) {
            match runtime.block_on(trial(engine, Duration::from_secs(seconds))) {
                Ok((typed, lost, told)) => println!(
                    "{}, killed after {seconds} s: {typed} values typed, {:.2} s missing, {}",
                    engine.name(),
                    lost.as_secs_f64(),
                    if told { "brought back" } else { "nothing to bring back" },
                ),
                Err(error) => {
                    let why = format!("killed after {seconds} s: {error:#}");
                    println!("{}: {why}", engine.name());
                    failed.push(why);
                }
            }
        }
    }
    assert!(failed.is_empty(), "{}: {failed:#?}", engine.name());
}

/// Types for so long, kills, opens again: how many values were typed, how much is missing, and whether
/// the app said that it brought something back.
async fn trial(engine: Engine, typing: Duration) -> Result<(usize, Duration, bool)> {
    let (mut killable, mut page) = Killable::start(engine).await?;
    page.open_demo(Imperial).await?;
    page.go_to("s/s4").await?;
    page.wait_for_value("length", "18 ft").await?;
    let hash = page.execute("return location.hash", vec![]).await?;
    let begun = Instant::now();
    let mut typed: Vec<Instant> = Vec::new();
    while begun.elapsed() < typing {
        let value = FIRST + typed.len();
        typed.push(Instant::now());
        type_value(&page, value).await?;
        let next = begun + PACE * u32::try_from(typed.len()).unwrap_or(u32::MAX);
        tokio::time::sleep(next.saturating_duration_since(Instant::now())).await;
    }
    let killed = Instant::now();
    let mut page = killable.kill_and_open(page).await?;
    page.open("").await?;
    page.open(hash.as_str().unwrap_or_default()).await?;
    page.wait_for(&field("length")).await?;
    let value = page.value(&field("length")).await?;
    let Some(last) = value.split(' ').next().and_then(|number| number.parse::<usize>().ok()) else {
        bail!("the field holds {value:?}")
    };
    ensure!((FIRST..FIRST + typed.len()).contains(&last), "the field holds {value:?}");
    // All that was typed after the value that is there is missing.
    let lost = typed.get(last - FIRST + 1).map_or(Duration::ZERO, |first| killed - *first);
    ensure!(lost <= MOST_LOST, "{:.2} s are missing: {value:?} is there", lost.as_secs_f64());
    let told = "return document.body.innerText.includes('Brought back as last typed')";
    let told = page.execute(told, vec![]).await? == json!(true);
    // The answers are those of the value that is there, and it can be typed on.
    let answers: Vec<Shown> = page.shown_answers().await?;
    ensure!(!answers.is_empty(), "no answers are shown");
    page.fill("length", "12").await?;
    page.leave_field().await?;
    let kept = page.kept_project().await?;
    let sheet = calc::project::Place::Sheet("s4".to_owned());
    ensure!(kept.typed(&sheet, "length").starts_with("12"), "what is typed afterwards is not kept");
    killable.end(page).await;
    Ok((typed.len(), lost, told))
}

/// The first value; each further one is larger by one, all of four digits. [in]
const FIRST: usize = 1000;

/// Types a whole value at once, so that no half of it is ever kept.
async fn type_value(page: &Page, value: usize) -> Result<()> {
    let script = "const field = document.querySelector(arguments[0]);
        field.focus();
        field.value = arguments[1];
        field.dispatchEvent(new InputEvent('input', { bubbles: true }))";
    page.execute(script, vec![json!(field("length")), json!(format!("{value} in"))]).await?;
    Ok(())
}

#[allow(clippy::expect_used, reason = "a test that cannot begin has failed")]
fn tokio_runtime() -> tokio::runtime::Runtime {
    tokio::runtime::Builder::new_current_thread().enable_all().build().expect("a runtime")
}

/// What was typed while there was no room is there after a kill too.
fn full_and_killed(engine: Engine) {
    let outcome = tokio_runtime().block_on(async {
        let (mut killable, mut page) = Killable::start(engine).await?;
        page.open_demo(Imperial).await?;
        page.go_to("s/s4").await?;
        page.fill_store().await?;
        page.fill("length", "23").await?;
        page.leave_field().await?;
        page.wait_for_text("[role=alert]", "space for this page is full").await?;
        page.journal_is_written().await?;
        let hash = page.execute("return location.hash", vec![]).await?;
        let mut page = killable.kill_and_open(page).await?;
        page.open("").await?;
        page.open(hash.as_str().unwrap_or_default()).await?;
        page.wait_for_value("length", "23 ft").await?;
        killable.end(page).await;
        Ok::<(), e2e::Error>(())
    });
    assert!(outcome.is_ok(), "{}: {outcome:?}", engine.name());
}
