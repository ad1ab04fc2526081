//! Runs one check in one engine, cleans up whatever happens, and keeps a picture of a failure.
//!
//! A browser takes longer to start than most checks take. Each check has a site at a port of its own,
//! and so nothing in common with another one in what browsers keep: a browser serves one check after
//! the other. After a check that failed it is ended, and the next begins in a new one.

use crate::driver::Driver;
use crate::page::Page;
use crate::site::Site;
use anyhow::{Context, Error, Result, anyhow};
use std::any::Any;
use std::fs::OpenOptions;
use std::future::poll_fn;
use std::io::Write as _;
use std::panic::{AssertUnwindSafe, catch_unwind, resume_unwind};
use std::pin::pin;
use std::sync::{Mutex, OnceLock, PoisonError};
use std::task::Poll;
use std::time::Duration;
use thirtyfour::WebDriver;
use thirtyfour::error::{WebDriverError, WebDriverErrorInner};
use tokio::runtime::Runtime;
use tokio::time::timeout;
use xtask::engine::Engine;
use xtask::workspace::second_tries;

/// Longer than any check takes: a hanging browser ends here.
const LONGEST: Duration = Duration::from_secs(360);

/// Runs a check and panics where it fails, as a test must.
///
/// Browsers and their drivers lose a session now and then, which says nothing of the app: what ended so is tried once
/// more, from the start in a new browser; what passes only then is named in [`second_tries`], which the summary of
/// `cargo xtask test` shows. What the check itself found wrong is not tried again: once is a failure.
pub fn run(engine: Engine, name: &str, check: impl AsyncFn(&mut Page) -> Result<()>) {
    let begun = std::time::Instant::now();
    let mut outcome = attempt(engine, name, &check);
    if let Ok(Err(error)) = &outcome
        && is_of_the_driver(error)
    {
        let why = format!("{error:#}");
        eprintln!("{name} in {}: the driver failed, is tried once more: {why}", engine.name());
        outcome = attempt(engine, name, &check);
        if matches!(outcome, Ok(Ok(()))) {
            note_second_try(engine, name, &why);
        }
    }
    // Shown with --nocapture.
    println!("{:.1} s: {name} in {}", begun.elapsed().as_secs_f64(), engine.name());
    match outcome {
        Ok(Ok(())) => {}
        #[allow(clippy::panic, reason = "this is how a test fails")]
        Ok(Err(error)) => panic!("{name} in {}: {error:?}", engine.name()),
        Err(panic) => resume_unwind(panic),
    }
}

/// An error that says nothing of the app: the driver or the browser did not come up, went away, or answers no more.
fn is_of_the_driver(error: &Error) -> bool {
    if error.downcast_ref::<NoBrowser>().is_some() {
        return true;
    }
    match error.downcast_ref::<WebDriverError>().map(WebDriverError::as_inner) {
        // A tab that crashed is no such error: it may be the app that did it.
        Some(WebDriverErrorInner::UnknownError(info)) => {
            info.value.message.contains("not connected to DevTools")
        }
        Some(inner) => matches!(
            inner,
            WebDriverErrorInner::InvalidSessionId(_)
                | WebDriverErrorInner::SessionNotCreated(_)
                | WebDriverErrorInner::SessionCreateError(_)
                | WebDriverErrorInner::HttpError(_)
                | WebDriverErrorInner::RequestFailed(_)
                | WebDriverErrorInner::FatalError(_)
        ),
        None => false,
    }
}

/// The browser or its driver did not start.
#[derive(Debug)]
struct NoBrowser;

impl std::fmt::Display for NoBrowser {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str("the browser did not start")
    }
}

fn attempt(engine: Engine, name: &str, check: &impl AsyncFn(&mut Page) -> Result<()>) -> Outcome {
    match runtime() {
        Ok(runtime) => runtime.block_on(run_in_browser(engine, name, check)),
        Err(error) => Ok(Err(error)),
    }
}

/// The one that all connections to browsers belong to, since they outlive a check.
fn runtime() -> Result<&'static Runtime> {
    static RUNTIME: OnceLock<Option<Runtime>> = OnceLock::new();
    let make = || tokio::runtime::Builder::new_current_thread().enable_all().build().ok();
    RUNTIME.get_or_init(make).as_ref().context("no runtime")
}

/// A browser that is up.
struct Session {
    engine: Engine,
    browser: WebDriver,
    driver: Driver,
}

/// Browsers that wait for the next check.
static WAITING: Mutex<Vec<Session>> = Mutex::new(Vec::new());

impl Session {
    /// One that waits, else a new one.
    async fn take(engine: Engine) -> Result<Self> {
        let waiting = {
            let mut all = WAITING.lock().unwrap_or_else(PoisonError::into_inner);
            let place = all.iter().position(|one| one.engine == engine);
            place.map(|place| all.swap_remove(place))
        };
        if let Some(session) = waiting {
            return Ok(session);
        }
        let driver = Driver::start(engine).context(NoBrowser)?;
        let opened = timeout(Duration::from_secs(60), driver.open()).await;
        let browser = opened.context(NoBrowser)?.context(NoBrowser)?;
        Ok(Self { engine, browser, driver })
    }

    /// Has it wait for the next check, with one empty window; ends it where that cannot be.
    async fn put_back(self) {
        let emptied = timeout(Duration::from_secs(10), empty(&self.browser)).await;
        if matches!(emptied, Ok(Ok(()))) {
            WAITING.lock().unwrap_or_else(PoisonError::into_inner).push(self);
        } else {
            self.end().await;
        }
    }

    async fn end(self) {
        let Self { browser, driver, .. } = self;
        let _ = timeout(Duration::from_secs(10), browser.quit()).await;
        drop(driver);
    }
}

/// Closes all windows but one, and leaves the site in that.
async fn empty(browser: &WebDriver) -> Result<()> {
    let mut windows = browser.windows().await?.into_iter();
    let first = windows.next().context("no window is left")?;
    for other in windows {
        browser.switch_to_window(other).await?;
        browser.close_window().await?;
    }
    browser.switch_to_window(first).await?;
    browser.enter_default_frame().await?;
    browser.goto("about:blank").await?;
    Ok(())
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
        anyhow::Ok((Session::take(engine).await?, site))
    };
    let (session, site) = match opened.await {
        Ok(opened) => opened,
        Err(error) => return Ok(Err(error)),
    };
    let mut page = Page::new(engine, session.browser.clone(), site);
    let outcome = caught(check(&mut page)).await;
    if matches!(outcome, Ok(Ok(()))) {
        page.forget_all().await;
        session.put_back().await;
    } else {
        page.keep_evidence(name).await;
        session.end().await;
    }
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

#[cfg(test)]
mod tests {
    use super::*;
    use thirtyfour::error::WebDriverErrorInfo;

    #[test]
    fn only_the_driver_s_own_errors_are_tried_again() {
        let info = || WebDriverErrorInfo::new("x".to_owned());
        let of = |inner: WebDriverErrorInner| Error::from(WebDriverError::from_inner(inner));
        for lost in [
            of(WebDriverErrorInner::InvalidSessionId(info())).context("waited in vain"),
            of(WebDriverErrorInner::HttpError("connection refused".to_owned())),
            of(WebDriverErrorInner::SessionNotCreated(info())).context(NoBrowser),
            anyhow!("no answer").context(NoBrowser),
        ] {
            assert!(is_of_the_driver(&lost), "{lost:#}");
        }
        for found in [
            anyhow!("waited in vain for the answer"),
            of(WebDriverErrorInner::NoSuchElement(info())).context("no h1 to see"),
            of(WebDriverErrorInner::JavascriptError(info())),
            of(WebDriverErrorInner::UnknownError(info())),
            of(WebDriverErrorInner::WebDriverTimeout(info())),
            of(WebDriverErrorInner::ElementClickIntercepted(info())),
        ] {
            assert!(!is_of_the_driver(&found), "{found:#}");
        }
    }
}
