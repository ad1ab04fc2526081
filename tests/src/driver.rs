//! Starts and ends a WebDriver server with all that it started.

use crate::display;
use anyhow::{Context, Result, anyhow, bail};
use serde_json::{Value, json};
use std::net::{Ipv4Addr, SocketAddr, TcpListener, TcpStream};
use std::os::unix::process::CommandExt;
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};
use thirtyfour::{Capabilities, WebDriver};
use xtask::engine::{Engine, Programs};

/// A phone in portrait, in CSS pixels: width and height.
pub const PHONE: (u32, u32) = (390, 844);

/// A running WebDriver server.
pub struct Driver {
    child: Child,
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
        let mut command = dying_with_this_thread(&programs);
        command
            .args(words)
            .stdin(Stdio::null())
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .process_group(0);
        if engine == Engine::WebKit {
            command.env("DISPLAY", display::display().context("no display: Xvfb is missing")?);
        }
        let child = command
            .spawn()
            .with_context(|| format!("{} cannot be started", programs.driver.display()))?;
        let driver = Self { child, port, engine, programs };
        driver.wait_until_up()?;
        Ok(driver)
    }

    /// Opens a browser.
    ///
    /// # Errors
    /// The browser does not start.
    pub async fn open(&self) -> Result<WebDriver> {
        let Value::Object(wanted) = self.capabilities() else {
            bail!("capabilities are an object")
        };
        let driver =
            WebDriver::new(format!("http://127.0.0.1:{}", self.port), Capabilities::from(wanted))
                .await?;
        driver.set_script_timeout(Duration::from_secs(90)).await?;
        driver.set_page_load_timeout(Duration::from_secs(30)).await?;
        Ok(driver)
    }

    fn capabilities(&self) -> Value {
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
        self.signal("TERM");
        let deadline = Instant::now() + Duration::from_secs(3);
        while Instant::now() < deadline && matches!(self.child.try_wait(), Ok(None)) {
            std::thread::sleep(Duration::from_millis(20));
        }
        self.signal("KILL");
        let _ = self.child.wait();
    }
}

/// The driver's command; where the system can, it ends with the test even if that is killed.
fn dying_with_this_thread(programs: &Programs) -> Command {
    if xtask::engine::program("setpriv").is_none() {
        return Command::new(&programs.driver);
    }
    let mut command = Command::new("setpriv");
    command.args(["--pdeathsig", "TERM", "--"]).arg(&programs.driver);
    command
}

fn free_port() -> Result<u16> {
    Ok(TcpListener::bind((Ipv4Addr::LOCALHOST, 0))?.local_addr()?.port())
}
