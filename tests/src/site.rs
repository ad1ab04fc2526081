//! The built site, served from a sub-path, and altered copies of it.

use anyhow::{Context, Result, ensure};
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicU32, Ordering};
use std::sync::{Arc, Mutex, PoisonError};
use xtask::hash::{integrity, short_hash};
use xtask::server::{Request, Response, Server};
use xtask::workspace;

/// A sub-path, since the site must run from any.
const PREFIX: &str = "/sub/app/";
/// A page outside the service worker's scope that frames the site at a phone's size.
const FRAME: &str = "/phone.html";

/// A page of another origin that frames the site.
const STRANGER: &str = "/stranger.html";

/// What the site answers in place of its files, where it answers at all.
type Fault = dyn Fn(&Request) -> Option<Response> + Send;

/// The site being served; `stop` takes it off the air.
pub struct Site {
    server: Server,
    fault: Arc<Mutex<Option<Box<Fault>>>>,
}

impl Site {
    /// Serves the built site.
    ///
    /// # Errors
    /// It has not been built.
    pub fn serve() -> Result<Self> {
        let dist = dist()?;
        let fault: Arc<Mutex<Option<Box<Fault>>>> = Arc::default();
        let answers = Arc::clone(&fault);
        let special = move |request: &Request| {
            let fault = answers.lock().unwrap_or_else(PoisonError::into_inner);
            let wrong = fault.as_ref().filter(|_| !request.path.starts_with('/'));
            wrong.and_then(|fault| fault(request)).or_else(|| frame(request))
        };
        let server = Server::start(0, PREFIX, &dist, Box::new(special))?;
        Ok(Self { server, fault })
    }

    /// From now on the site answers so where this gives an answer, and with its files elsewhere.
    pub fn break_with(&self, fault: impl Fn(&Request) -> Option<Response> + Send + 'static) {
        *self.fault.lock().unwrap_or_else(PoisonError::into_inner) = Some(Box::new(fault));
    }

    /// From now on the site answers with its files again.
    pub fn mend(&self) {
        *self.fault.lock().unwrap_or_else(PoisonError::into_inner) = None;
    }

    /// Serves a page of another origin that shows this site in a frame; gives its server and its address.
    ///
    /// # Errors
    /// There is no free port.
    pub fn framed_by_a_stranger(&self) -> Result<(Server, String)> {
        let page = format!(
            "<!doctype html><html lang=en><title>Stranger</title><iframe title=x src=\"{}\" \
             style=\"width:390px;height:700px\"></iframe>",
            self.url()
        );
        let special = move |request: &Request| {
            (request.path == STRANGER)
                .then(|| Response::text("text/html; charset=utf-8", page.clone()))
        };
        let server = Server::start(0, "/none/", &dist()?, Box::new(special))?;
        let address = format!("{}{STRANGER}", server.origin());
        Ok((server, address))
    }

    /// The address of the site.
    pub fn url(&self) -> String {
        self.server.url()
    }

    /// The address of the page that frames the site.
    pub fn frame_url(&self) -> String {
        format!("{}{FRAME}", self.server.origin())
    }

    /// From now on serves another folder.
    pub fn set_folder(&self, folder: &Path) {
        self.server.set_folder(folder);
    }

    /// Closes the port and every connection.
    pub fn stop(&mut self) {
        self.server.stop();
    }
}

/// A copy of the built site to alter, without the compressed files, which would hide what is altered.
///
/// # Errors
/// The site has not been built, or a file cannot be copied.
pub fn copy_of_dist() -> Result<PathBuf> {
    static NUMBER: AtomicU32 = AtomicU32::new(0);
    let number = NUMBER.fetch_add(1, Ordering::Relaxed);
    let copy = workspace::target().join(format!("e2e/sites/{}-{number}", std::process::id()));
    copy_folder(&dist()?, &copy)?;
    Ok(copy)
}

/// A copy of the built site as its next version: another style sheet, and so another page and list of files. Its `data-version` is `next`.
///
/// # Errors
/// The built site is not as expected.
pub fn next_version() -> Result<NextVersion> {
    let folder = copy_of_dist()?;
    let old_style = file_named(&folder, "style-", ".css")?;
    let style = std::fs::read(folder.join(&old_style))?;
    let changed = [style.as_slice(), b"\n.next{top:0}"].concat();
    let new_style = format!("style-{}.css", short_hash(&changed));
    std::fs::remove_file(folder.join(&old_style))?;
    std::fs::write(folder.join(&new_style), &changed)?;

    let page = std::fs::read_to_string(folder.join("index.html"))?;
    let version = page.split("data-version=\"").nth(1).and_then(|rest| rest.split('"').next());
    let version = version.context("the page names its version")?;
    let new_page = page
        .replace(&format!("data-version=\"{version}\""), "data-version=\"next\"")
        .replace(&old_style, &new_style)
        .replace(&integrity(&style), &integrity(&changed));
    std::fs::write(folder.join("index.html"), &new_page)?;

    let worker = std::fs::read_to_string(folder.join("sw.js"))?;
    let new_worker = worker
        .replace("const VERSION = \"", "const VERSION = \"next-")
        .replace(&old_style, &new_style)
        .replace(&integrity(&style), &integrity(&changed))
        .replace(&integrity(page.as_bytes()), &integrity(new_page.as_bytes()));
    ensure!(new_worker.contains(&integrity(new_page.as_bytes())), "the worker lists the page");
    ensure!(new_worker.contains(&new_style), "the worker lists the style sheet");
    std::fs::write(folder.join("sw.js"), new_worker)?;
    Ok(NextVersion { folder, changed_file: new_style })
}

/// See [`next_version`].
pub struct NextVersion {
    /// Where it lies.
    pub folder: PathBuf,
    /// The file that the version before did not have.
    pub changed_file: String,
}

fn dist() -> Result<PathBuf> {
    let dist = workspace::dist();
    ensure!(
        dist.join("index.html").is_file(),
        "the site is not built: run `cargo xtask test` or `cargo xtask build`"
    );
    Ok(dist)
}

fn file_named(folder: &Path, start: &str, end: &str) -> Result<String> {
    for entry in std::fs::read_dir(folder)? {
        let name = entry?.file_name().to_string_lossy().into_owned();
        if name.starts_with(start) && name.ends_with(end) {
            return Ok(name);
        }
    }
    anyhow::bail!("no {start}*{end} in {}", folder.display())
}

fn copy_folder(from: &Path, to: &Path) -> Result<()> {
    std::fs::create_dir_all(to)?;
    for entry in std::fs::read_dir(from)? {
        let entry = entry?;
        let target = to.join(entry.file_name());
        let compressed =
            entry.path().extension().is_some_and(|ending| ending == "br" || ending == "gz");
        if entry.file_type()?.is_dir() {
            copy_folder(&entry.path(), &target)?;
        } else if !compressed {
            std::fs::copy(entry.path(), target)?;
        }
    }
    Ok(())
}

fn frame(request: &Request) -> Option<Response> {
    let (width, height) = crate::driver::PHONE;
    (request.path == FRAME).then(|| {
        Response::text(
            "text/html; charset=utf-8",
            format!(
                "<!doctype html><html lang=en><title>Phone</title><body style=\"margin:0\">\
                 <iframe title=Phone src=\"{PREFIX}\" style=\"width:{width}px;height:{height}px;border:0\"></iframe>"
            ),
        )
    })
}
