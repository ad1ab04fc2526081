//! The browser engines that the tests run in, and where this machine keeps them.

use crate::workspace;
use std::path::{Path, PathBuf};

/// One of the three engines that phones and desktops run.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Engine {
    /// Chromium.
    Chromium,
    /// Firefox.
    Firefox,
    /// WebKitGTK.
    WebKit,
}

/// The programs of an engine that was found.
#[derive(Clone, Debug)]
pub struct Programs {
    /// The browser.
    pub browser: PathBuf,
    /// Its WebDriver server.
    pub driver: PathBuf,
}

impl Engine {
    /// All of them, in the order of the tests.
    pub const ALL: [Self; 3] = [Self::Chromium, Self::Firefox, Self::WebKit];

    /// The name in test names and options.
    pub fn name(self) -> &'static str {
        match self {
            Self::Chromium => "chromium",
            Self::Firefox => "firefox",
            Self::WebKit => "webkit",
        }
    }

    /// The Debian packages that bring browser and driver (Firefox's driver comes by cargo).
    pub fn packages(self) -> &'static [&'static str] {
        match self {
            Self::Chromium => &["chromium", "chromium-driver"],
            Self::Firefox => &["firefox-esr"],
            Self::WebKit => &["webkit2gtk-driver", "xvfb"],
        }
    }

    /// The engine's programs on this machine.
    ///
    /// # Errors
    /// Names the first program that is missing.
    pub fn find(self) -> Result<Programs, String> {
        let need = |names: &[&str]| {
            names
                .iter()
                .find_map(|name| program(name))
                .ok_or_else(|| format!("{} is missing", names.join(" or ")))
        };
        let (browser, driver): (&[&str], _) = match self {
            Self::Chromium => (&["chromium", "chromium-browser", "google-chrome"], "chromedriver"),
            Self::Firefox => (&["firefox-esr", "firefox"], "geckodriver"),
            Self::WebKit => (&["MiniBrowser"], "WebKitWebDriver"),
        };
        if self == Self::WebKit && std::env::var_os("DISPLAY").is_none() {
            need(&["Xvfb"])?;
        }
        Ok(Programs { browser: need(browser)?, driver: need(&[driver])? })
    }
}

/// A program among the project's own tools, on the path, or where WebKitGTK hides its browser.
pub fn program(name: &str) -> Option<PathBuf> {
    let path = std::env::var_os("PATH").unwrap_or_default();
    let own = workspace::tools().join("bin");
    std::iter::once(own)
        .chain(std::env::split_paths(&path))
        .chain(webkit_folders())
        .map(|folder| folder.join(name))
        .find(|file| is_program(file))
}

fn is_program(file: &Path) -> bool {
    std::fs::metadata(file).is_ok_and(|data| data.is_file())
}

fn webkit_folders() -> impl Iterator<Item = PathBuf> {
    let library = Path::new("/usr/lib");
    let libexec = Path::new("/usr/libexec");
    let architecture = library.join(format!("{}-linux-gnu", std::env::consts::ARCH));
    [architecture, library.to_owned(), libexec.to_owned()].into_iter().flat_map(|folder| {
        ["webkit2gtk-4.1", "webkitgtk-6.0", "webkit2gtk-4.0"].map(|name| folder.join(name))
    })
}
