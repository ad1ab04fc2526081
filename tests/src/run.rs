//! Runs one check in one engine, cleans up whatever happens, and keeps a picture of a failure.

use crate::driver::Driver;
use crate::page::Page;
use crate::site::Site;
use anyhow::{Result, anyhow};
use std::any::Any;
use std::fs::OpenOptions;
use std::future::poll_fn;
use std::io::Write as _;
use std::panic::{AssertUnwindSafe, catch_unwind, resume_unwind};
use std::pin::pin;
use std::task::Poll;
use std::time::Duration;
use tokio::time::timeout;
use xtask::engine::Engine;
use xtask::workspace::second_tries;

/// Longer than any check takes: a hanging browser ends here.
const LONGEST: Duration = Duration::from_secs(360);

/// Runs a check and panics where it fails, as a test must.
///
/// Browsers and their drivers lose an event now and then, which says nothing of the app: what failed is tried once
/// more, from the start in a new browser. What passes only then is named in [`second_tries`], which the
/// summary of `cargo xtask test` shows.
pub fn run(engine: Engine, name: &str, check: impl AsyncFn(&mut Page) -> Result<()>) {
    let first = attempt(engine, name, &check);
    let outcome = match &first {
        Ok(Ok(())) => first,
        failed => {
            let why = match failed {
                Ok(Err(error)) => format!("{error:#}"),
                _ => "a panic, see above".to_owned(),
            };
            eprintln!("{name} in {}: failed, is tried once more: {why}", engine.name());
            let second = attempt(engine, name, &check);
            if matches!(second, Ok(Ok(()))) {
                note_second_try(engine, name, &why);
            }
            second
        }
    };
    match outcome {
        Ok(Ok(())) => {}
        #[allow(clippy::panic, reason = "this is how a test fails")]
        Ok(Err(error)) => panic!("{name} in {}: {error:?}", engine.name()),
        Err(panic) => resume_unwind(panic),
    }
}

fn attempt(engine: Engine, name: &str, check: &impl AsyncFn(&mut Page) -> Result<()>) -> Outcome {
    let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build();
    match runtime {
        Ok(runtime) => runtime.block_on(run_in_browser(engine, name, check)),
        Err(error) => Ok(Err(error.into())),
    }
}

/// Keeps the name of a check that passed only at the second try, with the first one's error in one line.
fn note_second_try(engine: Engine, name: &str, why: &str) {
    let line = format!("{name} in {}: {}\n", engine.name(), why.replace('\n', " "));
    let file = second_tries();
    let kept = file
        .parent()
        .map_or(Ok(()), std::fs::create_dir_all)
        .and_then(|()| OpenOptions::new().create(true).append(true).open(&file))
        .and_then(|mut file| file.write_all(line.as_bytes()));
    if let Err(error) = kept {
        eprintln!("{}: {error}; {line}", file.display());
    }
}

type Outcome = Result<Result<()>, Box<dyn Any + Send>>;

async fn run_in_browser(
    engine: Engine,
    name: &str,
    check: &impl AsyncFn(&mut Page) -> Result<()>,
) -> Outcome {
    let opened = async {
        let site = Site::serve()?;
        let driver = Driver::start(engine)?;
        let browser = timeout(Duration::from_secs(60), driver.open()).await??;
        anyhow::Ok((driver, Page::new(engine, browser, site)))
    };
    // The driver ends last, when this function does.
    let (_driver, mut page) = match opened.await {
        Ok(opened) => opened,
        Err(error) => return Ok(Err(error)),
    };
    let outcome = caught(check(&mut page)).await;
    if !matches!(outcome, Ok(Ok(()))) {
        page.keep_evidence(name).await;
    }
    let _ = timeout(Duration::from_secs(10), page.quit()).await;
    outcome
}

/// Awaits a check; a panic in it comes back as a value, so that the browser is still ended.
async fn caught(check: impl Future<Output = Result<()>>) -> Outcome {
    let mut check = pin!(timeout(LONGEST, check));
    poll_fn(|context| match catch_unwind(AssertUnwindSafe(|| check.as_mut().poll(context))) {
        Ok(Poll::Pending) => Poll::Pending,
        Ok(Poll::Ready(Ok(result))) => Poll::Ready(Ok(result)),
        Ok(Poll::Ready(Err(_))) => Poll::Ready(Ok(Err(anyhow!("not done within {LONGEST:?}")))),
        Err(panic) => Poll::Ready(Err(panic)),
    })
    .await
}
