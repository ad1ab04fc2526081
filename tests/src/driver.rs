//! Starts and ends a WebDriver server with all that it started.

use crate::display;
use anyhow::{Context, Result, anyhow, bail, ensure};
use serde_json::{Value, json};
use std::net::{Ipv4Addr, SocketAddr, TcpListener, TcpStream};
use std::os::unix::process::CommandExt;
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::sync::atomic::{AtomicU32, Ordering};
use std::time::{Duration, Instant};
use thirtyfour::{Capabilities, WebDriver};
use xtask::engine::{Engine, Programs};

/// A phone in portrait, in CSS pixels: width and height.
pub const PHONE: (u32, u32) = (390, 844);

/// WebKitGTK 2.50's compiling beside the code that runs. With it on, on the virtual machines that these checks run on, wasm goes wrong now
/// and then, in no other engine: of 166 fresh modules that worked out the demo's answers and a ceiling's joints four times, 12 trapped (out
/// of bounds, or a panic that no input brings about), whatever else was switched off. With it off none of 215 did. The checks are of the
/// pages: they run with it off.
const COMPILES_BESIDE: &str = "JSC_useConcurrentJIT";

/// A running WebDriver server.
pub struct Driver {
    child: Child,
    /// Ends the server and its browser when these tests end, however they end.
    watcher: Child,
    /// Where the browser puts what it needs for a while.
    scratch: PathBuf,
    port: u16,
    engine: Engine,
    programs: Programs,
}

impl Driver {
    /// Starts the engine's server on a free port.
    ///
    /// # Errors
    /// A program is missing or does not come up.
    pub fn start(engine: Engine) -> Result<Self> {
        let programs = engine
            .find()
            .map_err(|missing| anyhow!("{missing}: `cargo xtask test` installs it or says how"))?;
        let port = free_port()?;
        let mut words = vec![format!("--port={port}")];
        if engine == Engine::Firefox {
            // Its default is one fixed port, which two drivers would fight for.
            words.push(format!("--websocket-port={}", free_port()?));
        }
        static NUMBER: AtomicU32 = AtomicU32::new(0);
        let number = NUMBER.fetch_add(1, Ordering::Relaxed);
        // Not below the checkout: sockets lie in it, and their paths must be short.
        let scratch = std::env::temp_dir().join(format!("e2e-{}-{number}", std::process::id()));
        std::fs::create_dir_all(&scratch)?;
        let mut command = Command::new(&programs.driver);
        command
            .args(words)
            .env("TMPDIR", &scratch)
            .stdin(Stdio::null())
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .process_group(0);
        if engine == Engine::WebKit {
            command.env("DISPLAY", display::display().context("no display: Xvfb is missing")?);
            command.env(COMPILES_BESIDE, "false");
        }
        let child = command
            .spawn()
            .with_context(|| format!("{} cannot be started", programs.driver.display()))?;
        let watcher = watcher(child.id(), &scratch)?;
        let driver = Self { child, watcher, scratch, port, engine, programs };
        driver.wait_until_up()?;
        Ok(driver)
    }

    /// Opens a browser.
    ///
    /// # Errors
    /// The browser does not start.
    pub async fn open(&self) -> Result<WebDriver> {
        self.open_with(None).await
    }

    /// Opens a browser that keeps its data in a folder, where one is given; WebKitGTK's driver has no
    /// such browser.
    ///
    /// # Errors
    /// The browser does not start.
    pub async fn open_with(&self, profile: Option<&Path>) -> Result<WebDriver> {
        let Value::Object(wanted) = self.capabilities(profile) else {
            bail!("capabilities are an object")
        };
        let driver =
            WebDriver::new(format!("http://127.0.0.1:{}", self.port), Capabilities::from(wanted))
                .await?;
        driver.set_script_timeout(Duration::from_secs(90)).await?;
        driver.set_page_load_timeout(Duration::from_secs(30)).await?;
        Ok(driver)
    }

    /// Ends the driver and all that it started without warning, as a flat battery does.
    ///
    /// # Errors
    /// A process is still there after that.
    pub fn kill(mut self) -> Result<()> {
        let all = descendants(self.child.id())?;
        // What it watches has ended after this, and its number may be another's.
        let _ = self.watcher.kill();
        ensure!(all.len() > 1, "the driver has started no browser");
        // All at once: none is left to tidy up for another.
        let words = all.iter().map(u32::to_string);
        Command::new("kill").args(["-s", "KILL"]).args(words).stderr(Stdio::null()).status()?;
        self.child.wait()?;
        let deadline = Instant::now() + Duration::from_secs(10);
        while all.iter().any(|id| is_running(*id)) {
            ensure!(Instant::now() < deadline, "the browser does not end");
            std::thread::sleep(Duration::from_millis(10));
        }
        Ok(())
    }

    fn capabilities(&self, profile: Option<&Path>) -> Value {
        let mut wanted = self.plain_capabilities();
        if let Some(profile) = profile {
            let profile = profile.display().to_string();
            match self.engine {
                Engine::Chromium => {
                    if let Some(words) = wanted["goog:chromeOptions"]["args"].as_array_mut() {
                        words.push(json!(format!("--user-data-dir={profile}")));
                    }
                }
                Engine::Firefox => {
                    wanted["moz:firefoxOptions"]["args"] =
                        json!(["-headless", "-profile", profile]);
                }
                Engine::WebKit => {}
            }
        }
        wanted
    }

    fn plain_capabilities(&self) -> Value {
        let binary = &self.programs.browser;
        let (width, height) = PHONE;
        match self.engine {
            Engine::Chromium => json!({"browserName": "chrome", "goog:chromeOptions": {
                "binary": binary,
                "args": ["--headless=new", "--no-sandbox", "--disable-gpu", "--disable-dev-shm-usage"],
                "mobileEmulation": {"deviceMetrics":
                    {"width": width, "height": height, "pixelRatio": 2, "touch": true, "mobile": true}},
            }}),
            Engine::Firefox => json!({"browserName": "firefox", "moz:firefoxOptions": {
                "binary": binary, "args": ["-headless"],
            }}),
            Engine::WebKit => json!({"browserName": "MiniBrowser", "webkitgtk:browserOptions": {
                "binary": binary, "args": ["--automation"],
            }}),
        }
    }

    fn wait_until_up(&self) -> Result<()> {
        let address = SocketAddr::from((Ipv4Addr::LOCALHOST, self.port));
        let deadline = Instant::now() + Duration::from_secs(20);
        while TcpStream::connect(address).is_err() {
            if Instant::now() > deadline {
                bail!("{} does not answer", self.programs.driver.display());
            }
            std::thread::sleep(Duration::from_millis(20));
        }
        Ok(())
    }

    fn signal(&self, name: &str) {
        // The whole group: a driver that dies leaves its browser behind.
        let group = format!("-{}", self.child.id());
        let _ =
            Command::new("kill").args(["-s", name, "--", &group]).stderr(Stdio::null()).status();
    }
}

impl Drop for Driver {
    fn drop(&mut self) {
        let _ = self.watcher.kill();
        let _ = self.watcher.wait();
        self.signal("TERM");
        let deadline = Instant::now() + Duration::from_secs(3);
        while Instant::now() < deadline && matches!(self.child.try_wait(), Ok(None)) {
            std::thread::sleep(Duration::from_millis(20));
        }
        self.signal("KILL");
        let _ = self.child.wait();
        let _ = std::fs::remove_dir_all(&self.scratch);
    }
}

/// A shell that waits until this process is gone, then ends the group of a driver: a browser is kept
/// from one check to the next, so none of them can end it.
fn watcher(group: u32, scratch: &Path) -> Result<Child> {
    let script = "cat; kill -s TERM -- \"-$1\"; sleep 2; kill -s KILL -- \"-$1\"; rm -rf -- \"$2\"";
    Command::new("sh")
        .args(["-c", script, "watcher", &group.to_string()])
        .arg(scratch)
        .stdin(Stdio::piped())
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .process_group(0)
        .spawn()
        .context("sh cannot be started")
}

/// A process and all that it has started, and they in turn, by their ids.
fn descendants(first: u32) -> Result<Vec<u32>> {
    let mut all = vec![first];
    let mut parents = Vec::new();
    for entry in std::fs::read_dir("/proc")? {
        let name = entry?.file_name();
        let Some(id) = name.to_str().and_then(|name| name.parse::<u32>().ok()) else { continue };
        if let Some(parent) = status_of(id).map(|(_, parent)| parent) {
            parents.push((id, parent));
        }
    }
    let mut next = 0;
    while let Some(parent) = all.get(next).copied() {
        all.extend(parents.iter().filter(|(_, of)| *of == parent).map(|(id, _)| *id));
        next += 1;
    }
    Ok(all)
}

/// The state of a process, a letter, and its parent.
fn status_of(id: u32) -> Option<(char, u32)> {
    let line = std::fs::read_to_string(format!("/proc/{id}/stat")).ok()?;
    // The name before it may hold anything, in brackets.
    let mut words = line.rsplit_once(')')?.1.split_whitespace();
    Some((words.next()?.chars().next()?, words.next()?.parse().ok()?))
}

fn is_running(id: u32) -> bool {
    status_of(id).is_some_and(|(state, _)| state != 'Z' && state != 'X')
}

fn free_port() -> Result<u16> {
    Ok(TcpListener::bind((Ipv4Addr::LOCALHOST, 0))?.local_addr()?.port())
}
