//! Serves the site on this machine; rebuilds it when a source changes and has the open pages load it anew.

use crate::build;
use anyhow::{Context, Result, bail};
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::{Arc, Condvar, Mutex, PoisonError};
use std::time::{Duration, SystemTime};
use xtask::server::{Request, Response, Server};
use xtask::workspace;

const SOURCES: [&str; 7] =
    ["Cargo.lock", "Cargo.toml", "app", "calc", "index.html", "shared", "style"];
/// Where the pages of a served site ask for news.
const NEWS: &str = "reload-news";
const SCRIPT: &str = include_str!("reload.js");

/// How to serve.
pub struct Options {
    port: u16,
    development: bool,
}

impl Options {
    /// Reads the words after `serve`.
    pub fn parse(words: &[String]) -> Result<Self> {
        let mut options = Self { port: 8080, development: false };
        let mut words = words.iter();
        while let Some(word) = words.next() {
            match word.as_str() {
                "--dev" => options.development = true,
                "--release" => options.development = false,
                "--port" => {
                    let port = words.next().map(|word| word.parse());
                    options.port = port
                        .and_then(Result::ok)
                        .context("--port wants a number, as in --port 8080")?;
                }
                other => bail!("serve does not know {other:?}; it takes --port N and --dev"),
            }
        }
        Ok(options)
    }
}

/// Builds, serves and watches, until it is stopped from outside.
pub fn serve(options: &Options) -> Result<()> {
    let build = build::Options {
        development: options.development,
        smallest: false,
        folder: workspace::target().join("served"),
        extra: Some(("reload.js".to_owned(), SCRIPT.to_owned())),
    };
    let mut seen = sources();
    let news = Arc::new(News::default());
    news.tell(build::site(&build)?.version);
    let special = {
        let news = Arc::clone(&news);
        move |request: &Request| {
            (request.path == NEWS).then(|| {
                Response::text(
                    "text/plain; charset=utf-8",
                    news.wait_for_other_than(&request.query),
                )
            })
        }
    };
    let server =
        Server::start(options.port, "/", &build.folder, Box::new(special)).with_context(|| {
            format!(
                "port {0} is taken; choose another by --port {1}",
                options.port,
                options.port.saturating_add(1)
            )
        })?;
    println!("\n  Battenbook is at {}  (end with Ctrl-C)\n", server.url());
    loop {
        std::thread::sleep(Duration::from_millis(400));
        let now = sources();
        if now == seen {
            continue;
        }
        // Editors write several files: wait until they are done.
        std::thread::sleep(Duration::from_millis(200));
        println!("{} changed: building", changed(&seen, &now));
        seen = sources();
        match build::site(&build) {
            Ok(site) => {
                println!("built; open pages load it now");
                news.tell(site.version);
            }
            Err(error) => eprintln!("{error:#}\nthe last good version stays up"),
        }
    }
}

/// The version that is served, and who waits for the next one.
#[derive(Default)]
struct News {
    version: Mutex<String>,
    changed: Condvar,
}

impl News {
    fn tell(&self, version: String) {
        *self.version.lock().unwrap_or_else(PoisonError::into_inner) = version;
        self.changed.notify_all();
    }

    /// The version as soon as it is another than `known`, or after a while in any case.
    fn wait_for_other_than(&self, known: &str) -> String {
        let version = self.version.lock().unwrap_or_else(PoisonError::into_inner);
        let waited = self
            .changed
            .wait_timeout_while(version, Duration::from_secs(20), |version| version == known);
        waited.map_or_else(|poison| poison.into_inner().0.clone(), |(version, _)| version.clone())
    }
}

type Times = BTreeMap<PathBuf, SystemTime>;

fn sources() -> Times {
    let mut times = Times::new();
    for source in SOURCES {
        note_times(&workspace::root().join(source), &mut times);
    }
    times
}

fn note_times(path: &Path, times: &mut Times) {
    let Ok(data) = std::fs::metadata(path) else { return };
    if !data.is_dir() {
        if let Ok(time) = data.modified() {
            times.insert(path.to_owned(), time);
        }
        return;
    }
    for entry in std::fs::read_dir(path).into_iter().flatten().flatten() {
        if !entry.file_name().to_string_lossy().starts_with('.') {
            note_times(&entry.path(), times);
        }
    }
}

/// Names a file that differs, for the message.
fn changed(before: &Times, after: &Times) -> String {
    let differs = |(path, time): &(&PathBuf, &SystemTime)| before.get(*path) != Some(*time);
    let gone = || before.keys().find(|path| !after.contains_key(*path));
    let path = after.iter().find(differs).map(|(path, _)| path).or_else(gone);
    path.map_or_else(String::new, |path| {
        path.strip_prefix(workspace::root()).unwrap_or(path).display().to_string()
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn whoever_knows_an_old_version_hears_of_the_new_one_at_once() {
        let news = News::default();
        news.tell("2".to_owned());
        assert_eq!(news.wait_for_other_than("1"), "2");
    }

    #[test]
    fn options_are_read_and_unknown_ones_refused() {
        let parse = |words: &[&str]| {
            Options::parse(&words.iter().map(|&word| word.to_owned()).collect::<Vec<_>>())
        };
        assert_eq!(parse(&["--port", "9000"]).unwrap().port, 9000);
        assert!(parse(&["--dev"]).unwrap().development);
        assert!(parse(&["--port"]).is_err() && parse(&["--prot", "1"]).is_err());
    }
}
