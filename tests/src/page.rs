//! The app's page at a phone's size, as a person uses it.

use crate::driver::PHONE;
use crate::site::Site;
use anyhow::{Context, Result, bail, ensure};
use base64::Engine as _;
use base64::prelude::BASE64_STANDARD;
use serde_json::{Value, json};
use std::path::PathBuf;
use std::time::{Duration, Instant};
use thirtyfour::common::print::PrintParameters;
use thirtyfour::error::WebDriverErrorInner;
use thirtyfour::extensions::query::ElementQueryable;
use thirtyfour::{By, Key, WebDriver, WebElement, WindowHandle};
use xtask::engine::Engine;
use xtask::workspace;

const PATIENCE: Duration = Duration::from_secs(15);
const INTERVAL: Duration = Duration::from_millis(40);
const RUNNING: &str = "return document.documentElement.dataset.app === 'running'";

/// The page in one engine. Chromium plays a phone; the other two show the site in a frame of a phone's size.
pub struct Page {
    engine: Engine,
    browser: WebDriver,
    /// The site that it shows.
    pub site: Site,
    visited: bool,
}

/// Opens what the element with a selector is folded behind; where it is not there yet, all parts that are written as they open.
const UNFOLD: &str = "const found = document.querySelector(arguments[0]);
    if (!found) document.querySelectorAll('main details.part-fold:not([open])').forEach(one => one.open = true);
    for (let one = found?.closest('main details'); one; one = one.parentElement.closest('main details')) {
        if (!one.querySelector(':scope > summary').contains(found)) one.open = true;
    }";

/// As `UNFOLD`, for what an XPath names.
const UNFOLD_PATH: &str = "const found = document.evaluate(arguments[0], document, null, 9).singleNodeValue;
    if (!found) document.querySelectorAll('main details.part-fold:not([open])').forEach(one => one.open = true);
    for (let one = found?.closest('main details'); one; one = one.parentElement.closest('main details')) {
        if (!one.querySelector(':scope > summary').contains(found)) one.open = true;
    }";

impl Page {
    pub(crate) fn new(engine: Engine, browser: WebDriver, site: Site) -> Self {
        Self { engine, browser, site, visited: false }
    }

    /// Lets go of the browser without a word to it, and gives the site back, which stays on the air.
    pub(crate) fn abandon(self) -> Site {
        // Closing its session would wait for a driver that is gone.
        std::mem::forget(self.browser);
        self.site
    }

    /// The engine that shows the page.
    pub fn engine(&self) -> Engine {
        self.engine
    }

    /// WebDriver itself, for what this has no word for.
    pub fn browser(&self) -> &WebDriver {
        &self.browser
    }

    /// Goes to a place in the app by its hash, as in `#/project/1`; the first time loads the page and waits until the app runs.
    pub async fn open(&mut self, hash: &str) -> Result<()> {
        if !self.visited {
            self.load().await?;
            self.wait_until("the app to run", RUNNING).await?;
            self.visited = true;
        }
        if !hash.is_empty() {
            self.execute("location.hash = arguments[0]", vec![json!(hash)]).await?;
        }
        Ok(())
    }

    /// Loads the page without waiting for the app.
    pub async fn load(&mut self) -> Result<()> {
        if self.engine == Engine::Chromium {
            self.browser.goto(self.site.url()).await?;
        } else {
            // All of the frame must lie in the window, or clicks at its foot go nowhere.
            self.browser.set_window_rect(0, 0, PHONE.0 + 210, PHONE.1 + 156).await?;
            self.browser.goto(self.site.frame_url()).await?;
            self.browser.enter_frame(0).await?;
        }
        Ok(())
    }

    /// Loads the page again, as a person does, and waits until the app runs.
    ///
    /// # Errors
    /// The app does not run within the usual patience.
    pub async fn reload(&mut self) -> Result<()> {
        self.reload_within(PATIENCE).await
    }

    /// Loads the page again and waits until the app runs, but no longer than `patience`.
    ///
    /// # Errors
    /// The app does not run by then.
    pub async fn reload_within(&mut self, patience: Duration) -> Result<()> {
        // WebDriver's own refresh goes past the service worker in Firefox.
        self.execute("window.beforeReload = true; setTimeout(() => location.reload())", vec![])
            .await?;
        self.wait_for_new_document(patience).await
    }

    /// Waits until the app runs in another document than the one marked by `window.beforeReload`.
    async fn wait_for_new_document(&mut self, patience: Duration) -> Result<()> {
        let script = "return location.protocol !== 'about:' && !window.beforeReload
                && document.documentElement.dataset.app === 'running'";
        let deadline = Instant::now() + patience;
        loop {
            // Between two documents any answer may be an error.
            if self.back_in_frame().await.is_ok()
                && let Ok(Value::Bool(true)) = self.execute(script, vec![]).await
            {
                return Ok(());
            }
            ensure!(Instant::now() < deadline, "the app does not run again within {patience:?}");
            tokio::time::sleep(INTERVAL).await;
        }
    }

    /// Clicks, and waits until the app runs in the document that follows.
    pub async fn click_and_wait_for_reload(&mut self, selector: &str) -> Result<()> {
        self.execute("window.beforeReload = true", vec![]).await?;
        self.click(selector).await?;
        self.wait_for_new_document(PATIENCE).await
    }

    /// Comes to the app anew, by an address with this hash, as from a bookmark.
    pub async fn arrive(&mut self, hash: &str) -> Result<()> {
        let address = format!("{}{hash}", self.site.url());
        if self.engine == Engine::Chromium {
            self.browser.goto("about:blank").await?;
            self.browser.goto(&address).await?;
        } else {
            self.browser.enter_default_frame().await?;
            let script = "const frame = document.querySelector('iframe');
                frame.onload = () => { frame.onload = null; frame.src = arguments[0] };
                frame.src = 'about:blank'";
            self.execute(script, vec![json!(address)]).await?;
        }
        self.wait_for_new_document(PATIENCE).await
    }

    /// Waits until the whole site is kept on the device.
    pub async fn wait_until_kept(&self) -> Result<()> {
        self.wait_until(
            "the copy for offline use",
            "return document.documentElement.dataset.offline === 'ready'",
        )
        .await
    }

    /// Asks the service worker to look for a new version, as coming back to the page does.
    pub async fn look_for_update(&self) -> Result<()> {
        let script = "const done = arguments[arguments.length - 1];
            navigator.serviceWorker.getRegistration().then(r => r.update()).then(() => done(true), () => done(false))";
        self.browser.execute_async(script, vec![]).await?;
        Ok(())
    }

    /// Waits for a page, not for the one that says that a big project is being worked out: on a slow machine the demo is one.
    pub async fn wait_for_page(&self) -> Result<()> {
        self.wait_for("main:not(.working) h1").await?;
        Ok(())
    }

    /// Waits for an element that can be seen.
    pub async fn wait_for(&self, selector: &str) -> Result<WebElement> {
        self.find(By::Css(selector), UNFOLD, selector).await
    }

    /// Waits for an element that can be seen; a person opens the lines that it is folded behind.
    async fn find(&self, by: By, unfold: &str, name: &str) -> Result<WebElement> {
        let deadline = Instant::now() + PATIENCE;
        loop {
            self.execute(unfold, vec![json!(name)]).await?;
            let query = self.browser.query(by.clone()).wait(INTERVAL * 4, INTERVAL);
            match query.and_displayed().first().await {
                // Not there yet, or written anew before it was looked at: look again.
                Err(error)
                    if matches!(
                        *error,
                        WebDriverErrorInner::StaleElementReference(_)
                            | WebDriverErrorInner::NoSuchElement(_)
                    ) && Instant::now() < deadline => {}
                found => return found.with_context(|| format!("no {name} to see")),
            }
        }
    }

    /// Opens all lines of the page, and what they hold.
    pub async fn unfold_all(&self) -> Result<()> {
        let script = "const folded = document.querySelectorAll('main details:not([open]):not(.more):not(.menu)');
            folded.forEach(one => one.open = true);
            return folded.length === 0";
        self.wait_until_with("everything unfolded", script, vec![]).await
    }

    /// Waits until there is no such element.
    pub async fn wait_until_gone(&self, selector: &str) -> Result<()> {
        self.wait_until_with(
            &format!("{selector} to go"),
            "return document.querySelector(arguments[0]) === null",
            vec![json!(selector)],
        )
        .await
    }

    /// The text of the first such element as it is seen.
    pub async fn text(&self, selector: &str) -> Result<String> {
        self.wait_for(selector).await?;
        let text = self
            .execute(
                "return document.querySelector(arguments[0])?.innerText",
                vec![json!(selector)],
            )
            .await?;
        Ok(text.as_str().unwrap_or_default().trim().to_owned())
    }

    /// Waits until the first such element's text contains `part`.
    pub async fn wait_for_text(&self, selector: &str, part: &str) -> Result<()> {
        let waited = self
            .wait_until_with(
                &format!("{part:?} in {selector}"),
                // A text may stand behind a line that is not open yet.
                "const found = document.querySelector(arguments[0]);
                    if (found?.innerText.includes(arguments[1])) return true;
                    found?.closest('main')?.querySelectorAll('details.part-fold:not([open])').forEach(one => one.open = true);
                    for (let one = found?.closest('main details'); one; one = one.parentElement.closest('main details')) {
                        if (!one.querySelector(':scope > summary').contains(found)) one.open = true;
                    }
                    return false",
                vec![json!(selector), json!(part)],
            )
            .await;
        if let Err(error) = waited {
            let script = "return document.querySelector(arguments[0])?.innerText.slice(0, 400)";
            let seen = self.execute(script, vec![json!(selector)]).await?;
            return Err(error.context(format!("saw {seen}")));
        }
        Ok(())
    }

    /// What a field holds.
    pub async fn value(&self, selector: &str) -> Result<String> {
        self.wait_for(selector).await?;
        let value = self
            .execute("return document.querySelector(arguments[0])?.value", vec![json!(selector)])
            .await?;
        Ok(value.as_str().unwrap_or_default().to_owned())
    }

    /// Clicks.
    pub async fn click(&self, selector: &str) -> Result<()> {
        let element = self.wait_for(selector).await?;
        self.click_on(&element).await.with_context(|| format!("clicking {selector}"))
    }

    /// Clicks what an XPath names.
    pub async fn click_path(&self, path: &str) -> Result<()> {
        let element = self.find(By::XPath(path), UNFOLD_PATH, path).await?;
        self.click_on(&element).await.with_context(|| format!("clicking {path}"))
    }

    /// Presses an element, runs a script while it is held, and lets it go.
    pub async fn tap_while(&self, selector: &str, script: &str) -> Result<()> {
        let element = self.wait_for(selector).await?;
        self.bring_to_middle(&element).await?;
        self.browser
            .action_chain()
            .move_to_element_center(&element)
            .click_and_hold()
            .perform()
            .await?;
        self.execute(script, vec![]).await?;
        Ok(self.browser.action_chain().release().perform().await?)
    }

    /// Clicks an element in the middle of the window, clear of what sticks to its edges.
    async fn click_on(&self, element: &WebElement) -> Result<()> {
        self.bring_to_middle(element).await?;
        Ok(element.click().await?)
    }

    pub(crate) async fn bring_to_middle(&self, element: &WebElement) -> Result<()> {
        let script = "arguments[0].scrollIntoView({ block: 'center', behavior: 'instant' })";
        self.browser.execute(script, vec![element.to_json()?]).await?;
        Ok(())
    }

    /// Opens the app in a new tab, by an address with this hash; gives the tab that was left.
    pub async fn leave_for_new_tab(&self, hash: &str) -> Result<WindowHandle> {
        let left = self.browser.window().await?;
        let tab = self.browser.new_tab().await?;
        self.browser.switch_to_window(tab).await?;
        self.browser.goto(format!("{}{hash}", self.site.url())).await?;
        self.wait_until("the app to run in a new tab", RUNNING).await?;
        Ok(left)
    }

    /// Opens the app in a new window beside this one, both in sight, by an address with this hash; gives
    /// the window that was left.
    pub async fn leave_for_new_window(&self, hash: &str) -> Result<WindowHandle> {
        let left = self.browser.window().await?;
        let window = self.browser.new_window().await?;
        self.browser.switch_to_window(window).await?;
        self.browser.goto(format!("{}{hash}", self.site.url())).await?;
        self.wait_until("the app to run in a new window", RUNNING).await?;
        Ok(left)
    }

    /// Loads a window or tab again that `leave_for_new_window` or `leave_for_new_tab` opened.
    pub async fn reload_window(&self) -> Result<()> {
        self.execute("window.beforeReload = true; setTimeout(() => location.reload())", vec![])
            .await?;
        let script =
            "return !window.beforeReload && document.documentElement.dataset.app === 'running'";
        self.wait_until("the app to run again", script).await
    }

    /// Closes a window or tab that `leave_for_new_window` or `leave_for_new_tab` opened, and goes back to
    /// the first one.
    pub async fn close_window(&self, first: &WindowHandle) -> Result<()> {
        self.browser.close_window().await?;
        self.browser.switch_to_window(first.clone()).await?;
        self.back_in_frame().await
    }

    /// Goes back to the first tab; gives the tab that was left.
    pub async fn back_to_first_tab(&self, first: &WindowHandle) -> Result<WindowHandle> {
        let left = self.browser.window().await?;
        self.browser.switch_to_window(first.clone()).await?;
        self.back_in_frame().await?;
        Ok(left)
    }

    /// Goes to a tab that `back_to_first_tab` left.
    pub async fn to_new_tab(&self, tab: &WindowHandle) -> Result<()> {
        Ok(self.browser.switch_to_window(tab.clone()).await?)
    }

    /// Types into a field, over what it held; no text empties it.
    pub async fn type_into(&self, selector: &str, text: &str) -> Result<()> {
        let field = self.wait_for(selector).await?;
        self.execute(
            "const f = document.querySelector(arguments[0]); f.focus(); f.select()",
            vec![json!(selector)],
        )
        .await?;
        let keys =
            if text.is_empty() { char::from(Key::Backspace).to_string() } else { text.to_owned() };
        field.send_keys(keys).await.with_context(|| format!("typing into {selector}"))
    }

    /// Presses keys wherever the focus is.
    pub async fn press(&self, keys: &str) -> Result<()> {
        Ok(self.browser.action_chain().send_keys(keys).perform().await?)
    }

    /// Runs a script in the page and gives what it returns.
    pub async fn execute(&self, script: &str, arguments: Vec<Value>) -> Result<Value> {
        Ok(self.browser.execute(script, arguments).await?.json().clone())
    }

    /// Waits until a script returns true.
    pub async fn wait_until(&self, what: &str, script: &str) -> Result<()> {
        self.wait_until_with(what, script, vec![]).await
    }

    /// Takes the server off the air; what the page shows then comes from the device.
    pub fn go_offline(&mut self) {
        self.site.stop();
    }

    /// What axe-core finds wrong with the page as it is, one line each. Only in tests with `axe` in their name:
    /// they are left out where axe-core cannot be installed.
    pub async fn axe(&self) -> Result<Vec<String>> {
        let file = workspace::tools().join("node_modules/axe-core/axe.min.js");
        let source = std::fs::read_to_string(file)
            .context("axe-core is missing: `cargo xtask test` installs it")?;
        self.execute(&source, vec![]).await?;
        let script = "const done = arguments[arguments.length - 1];
            axe.run(document).then(
                found => done(found.violations.map(v => v.id + ': ' + v.help + ' at ' + v.nodes.map(n => n.target).join(', '))),
                error => done(['axe failed: ' + error]))";
        Ok(self.browser.execute_async(script, vec![]).await?.convert()?)
    }

    /// Keeps a picture under `target/e2e/`, and says where.
    pub async fn screenshot(&self, name: &str) -> Result<PathBuf> {
        let folder = workspace::target().join("e2e");
        std::fs::create_dir_all(&folder)?;
        let file = folder.join(format!("{name}-{}.png", self.engine.name()));
        self.browser.screenshot(&file).await?;
        Ok(file)
    }

    /// As `screenshot`, but of the page from top to foot where the engine can take it.
    pub async fn whole_screenshot(&self, name: &str) -> Result<PathBuf> {
        let file = self.screenshot(name).await?;
        if self.engine == Engine::Chromium {
            let height =
                self.execute("return document.documentElement.scrollHeight", vec![]).await?;
            // Half of the phone's fine pixels: long pages stay a size that viewers take.
            let clip = json!({ "x": 0, "y": 0, "width": PHONE.0, "height": height, "scale": 0.5 });
            let wanted = json!({ "captureBeyondViewport": true, "clip": clip });
            let shot = self.browser.cdp().send_raw("Page.captureScreenshot", wanted).await?;
            let picture = BASE64_STANDARD.decode(shot["data"].as_str().unwrap_or_default())?;
            std::fs::write(&file, picture)?;
        }
        Ok(file)
    }

    /// Shows the page at another size than a phone's in portrait, in CSS pixels. Chromium keeps it for the checks after this
    /// one, so whoever takes it goes back to [`PHONE`].
    pub async fn resize(&self, (width, height): (u32, u32)) -> Result<()> {
        if self.engine == Engine::Chromium {
            let metrics =
                json!({ "width": width, "height": height, "deviceScaleFactor": 2, "mobile": true });
            self.browser.cdp().send_raw("Emulation.setDeviceMetricsOverride", metrics).await?;
        } else {
            self.browser.enter_default_frame().await?;
            self.browser.set_window_rect(0, 0, width + 210, height + 156).await?;
            let script = "const frame = document.querySelector('iframe');
                frame.style.width = arguments[0] + 'px'; frame.style.height = arguments[1] + 'px'";
            self.execute(script, vec![json!(width), json!(height)]).await?;
            self.browser.enter_frame(0).await?;
        }
        self.wait_until_with(
            "the size",
            "return innerWidth === arguments[0] && innerHeight === arguments[1]",
            vec![json!(width), json!(height)],
        )
        .await
    }

    /// Drags from the middle of an element by so many pixels, as a swipe does.
    pub async fn drag(&self, selector: &str, (x, y): (i64, i64)) -> Result<()> {
        let element = self.wait_for(selector).await?;
        let drag = self.browser.action_chain().move_to_element_center(&element).click_and_hold();
        Ok(drag.move_by_offset(x, y).release().perform().await?)
    }

    /// A phone without a mouse, from the next load on; only Chromium's driver can.
    pub async fn touch_only(&self) -> Result<()> {
        let touch = json!({ "enabled": true, "maxTouchPoints": 1 });
        self.browser.cdp().send_raw("Emulation.setTouchEmulationEnabled", touch).await?;
        Ok(())
    }

    /// Another phone, or the same on its side; only Chromium can.
    pub async fn as_large_as(&self, (width, height): (u32, u32)) -> Result<()> {
        let size =
            json!({ "width": width, "height": height, "deviceScaleFactor": 2, "mobile": true });
        self.browser.cdp().send_raw("Emulation.setDeviceMetricsOverride", size).await?;
        Ok(())
    }

    /// Makes the processor that many times slower, as a phone's is; only Chromium can.
    pub async fn slow_down(&self, times: u32) -> Result<()> {
        let rate = json!({ "rate": times });
        self.browser.cdp().send_raw("Emulation.setCPUThrottlingRate", rate).await?;
        Ok(())
    }

    /// Prints the page to a file, and says where.
    pub async fn print(&self, name: &str) -> Result<PathBuf> {
        let folder = workspace::target().join("e2e/print");
        std::fs::create_dir_all(&folder)?;
        let file = folder.join(format!("{name}-{}.pdf", self.engine.name()));
        std::fs::write(&file, self.browser.print_page(PrintParameters::default()).await?)?;
        Ok(file)
    }

    /// Prints the page as a print dialogue left as it is does: on the paper that the page asks for.
    /// Chromium only.
    pub async fn print_on_its_paper(&self, name: &str) -> Result<PathBuf> {
        let folder = workspace::target().join("e2e/print");
        std::fs::create_dir_all(&folder)?;
        let file = folder.join(format!("{name}-{}.pdf", self.engine.name()));
        let wanted = json!({ "preferCSSPageSize": true, "printBackground": false });
        let printed = self.browser.cdp().send_raw("Page.printToPDF", wanted).await?;
        std::fs::write(
            &file,
            BASE64_STANDARD.decode(printed["data"].as_str().unwrap_or_default())?,
        )?;
        Ok(file)
    }

    /// The inner width of the page in CSS pixels, to be a phone's.
    pub async fn check_phone_width(&self) -> Result<()> {
        let width = self.execute("return innerWidth", vec![]).await?;
        ensure!(width == json!(PHONE.0), "the page is {width} wide");
        Ok(())
    }

    pub(crate) async fn keep_evidence(&self, name: &str) {
        match self.screenshot(name).await {
            Ok(file) => {
                eprintln!("{name} in {}: picture in {}", self.engine.name(), file.display())
            }
            Err(error) => eprintln!("{name} in {}: no picture: {error}", self.engine.name()),
        }
        let script = "const main = document.querySelector('main') ?? document.documentElement;
            return `${location.href} ${document.activeElement?.outerHTML.slice(0, 300)} ${main.outerHTML.slice(0, 12000)}`";
        if let Ok(text) = self.execute(script, vec![]).await {
            eprintln!("{}", text.as_str().unwrap_or_default());
        }
    }

    /// Has the browser forget what the site keeps there, as far as it can: sites of one host share
    /// some of their room.
    pub(crate) async fn forget_all(&self) {
        let script = "localStorage.clear();
            navigator.serviceWorker.getRegistrations().then(all => all.forEach(one => one.unregister()))";
        let _ = self.execute(script, vec![]).await;
    }

    pub(crate) async fn quit(self) -> Result<()> {
        Ok(self.browser.quit().await?)
    }

    async fn back_in_frame(&self) -> Result<()> {
        if self.engine != Engine::Chromium {
            self.browser.enter_default_frame().await?;
            self.browser.enter_frame(0).await?;
        }
        Ok(())
    }

    /// Waits until a script returns true for these arguments.
    pub async fn wait_until_with(
        &self,
        what: &str,
        script: &str,
        arguments: Vec<Value>,
    ) -> Result<()> {
        let deadline = Instant::now() + PATIENCE;
        loop {
            let answer = self.execute(script, arguments.clone()).await;
            if matches!(answer, Ok(Value::Bool(true))) {
                return Ok(());
            }
            if Instant::now() > deadline {
                // An error stays what it is: a lost session is told from an answer that was not the one.
                let answer = answer.with_context(|| format!("waited in vain for {what}"))?;
                bail!("waited in vain for {what}: {answer:?}");
            }
            tokio::time::sleep(INTERVAL).await;
        }
    }
}
