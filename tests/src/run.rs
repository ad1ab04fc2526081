//! Runs one check in one engine, cleans up whatever happens, and keeps a picture of a failure.

use crate::driver::Driver;
use crate::page::Page;
use crate::site::Site;
use anyhow::{Result, anyhow};
use std::any::Any;
use std::future::poll_fn;
use std::panic::{AssertUnwindSafe, catch_unwind, resume_unwind};
use std::pin::pin;
use std::task::Poll;
use std::time::Duration;
use tokio::time::timeout;
use xtask::engine::Engine;

/// Longer than any check takes: a hanging browser ends here.
const LONGEST: Duration = Duration::from_secs(360);

/// Runs a check and panics where it fails, as a test must.
pub fn run(engine: Engine, name: &str, check: impl AsyncFnOnce(&mut Page) -> Result<()>) {
    let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build();
    let outcome = match runtime {
        Ok(runtime) => runtime.block_on(run_in_browser(engine, name, check)),
        Err(error) => Ok(Err(error.into())),
    };
    match outcome {
        Ok(Ok(())) => {}
        #[allow(clippy::panic, reason = "this is how a test fails")]
        Ok(Err(error)) => panic!("{name} in {}: {error:?}", engine.name()),
        Err(panic) => resume_unwind(panic),
    }
}

type Outcome = Result<Result<()>, Box<dyn Any + Send>>;

async fn run_in_browser(
    engine: Engine,
    name: &str,
    check: impl AsyncFnOnce(&mut Page) -> Result<()>,
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
