//! A browser that keeps its data in a folder, is killed without warning, and is opened again.

use crate::driver::Driver;
use crate::page::Page;
use crate::site::Site;
use anyhow::{Context, Result};
use std::path::PathBuf;
use std::sync::atomic::{AtomicU32, Ordering};
use xtask::engine::Engine;
use xtask::workspace;

/// The browser, its folder, and the site, which stays at one address.
pub struct Killable {
    engine: Engine,
    profile: PathBuf,
    driver: Option<Driver>,
}

impl Killable {
    /// Opens a browser with an empty folder.
    ///
    /// # Errors
    /// It does not start.
    pub async fn start(engine: Engine) -> Result<(Self, Page)> {
        static NUMBER: AtomicU32 = AtomicU32::new(0);
        let number = NUMBER.fetch_add(1, Ordering::Relaxed);
        let name = format!("profiles/{}-{}-{number}", engine.name(), std::process::id());
        let profile = workspace::evidence().join(name);
        let mut killable = Self { engine, profile, driver: None };
        let page = killable.open(Site::serve()?).await?;
        Ok((killable, page))
    }

    /// Kills the browser without warning and opens it again at the same site.
    ///
    /// # Errors
    /// It cannot be killed, or does not start again.
    pub async fn kill_and_open(&mut self, page: Page) -> Result<Page> {
        self.driver.take().context("it was killed before")?.kill()?;
        self.open(page.abandon()).await
    }

    /// Ends the browser as it should be ended.
    pub async fn end(self, page: Page) {
        // Where it does not end by itself the driver ends it.
        let _ = tokio::time::timeout(std::time::Duration::from_secs(10), page.quit()).await;
    }

    async fn open(&mut self, site: Site) -> Result<Page> {
        std::fs::create_dir_all(&self.profile)?;
        let driver = Driver::start(self.engine)?;
        let browser = driver.open_with(Some(&self.profile)).await?;
        self.driver = Some(driver);
        Ok(Page::new(self.engine, browser, site))
    }
}

impl Drop for Killable {
    fn drop(&mut self) {
        self.driver = None;
        let _ = std::fs::remove_dir_all(&self.profile);
    }
}
