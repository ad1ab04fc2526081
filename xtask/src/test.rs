//! Every check there is, each part to its end, and a summary that says what was not tested.

mod part;

use crate::build;
use crate::tools;
use anyhow::{Context, Result, bail};
use part::{Outcome, Part};
use std::collections::BTreeSet;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::sync::{Mutex, OnceLock, PoisonError};
use xtask::engine::{self, Engine};
use xtask::workspace;

/// What can be left out where it cannot be had: the engines, the checker of accessibility, the reader of printed pages.
const LEAVABLE: [&str; 5] = ["chromium", "firefox", "webkit", "axe", "print"];

/// What to test.
pub struct Options {
    only: Option<Group>,
    engines: Vec<Engine>,
    /// What is left out on purpose: what is only missing is a failure.
    without: Vec<String>,
    filter: Option<String>,
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Group {
    Native,
    Unit,
    EndToEnd,
}

impl Options {
    /// Reads the words after `test`.
    pub fn parse(words: &[String]) -> Result<Self> {
        let mut options =
            Self { only: None, engines: Engine::ALL.to_vec(), without: Vec::new(), filter: None };
        let mut words = words.iter().map(String::as_str);
        while let Some(word) = words.next() {
            match (word, words.next()) {
                ("--only", Some("native")) => options.only = Some(Group::Native),
                ("--only", Some("unit")) => options.only = Some(Group::Unit),
                ("--only", Some("e2e")) => options.only = Some(Group::EndToEnd),
                ("--only", _) => bail!("--only wants native, unit or e2e"),
                ("--engine", value) => {
                    let engine =
                        Engine::ALL.into_iter().find(|engine| value == Some(engine.name()));
                    options.engines =
                        vec![engine.context("--engine wants chromium, firefox or webkit")?];
                }
                ("--without", Some(name)) if LEAVABLE.contains(&name) => {
                    options.without.push(name.to_owned());
                }
                ("--without", _) => bail!("--without wants one of {}", LEAVABLE.join(", ")),
                ("--filter", Some(value)) => options.filter = Some(value.to_owned()),
                _ => bail!(
                    "test does not know {word:?}; it takes --only, --engine, --without and --filter"
                ),
            }
        }
        Ok(options)
    }

    fn wants(&self, group: Group) -> bool {
        self.only.is_none_or(|only| only == group)
    }

    /// A part that cannot run here: as asked for where it was named as left out, else a failure, since a run without it
    /// would look like one with it.
    fn cannot_run(&self, part: &str, name: &str, why: &str) -> Part {
        if self.without.iter().any(|left_out| left_out == name) {
            Part::not_tested(part, &format!("left out by --without {name}"))
        } else {
            Part::failed(part, &format!("{why}; --without {name} leaves it out"))
        }
    }
}

/// Runs the parts in order.
///
/// # Errors
/// A part failed, or could not be tested. Only an engine that was named as left out is no failure.
pub fn test(options: &Options) -> Result<()> {
    let mut parts = Vec::new();
    tools::ensure_wasm_target()?;
    if options.wants(Group::Native) {
        native(options, &mut parts);
    }
    if options.wants(Group::Unit) {
        unit(options, &mut parts);
    }
    if options.wants(Group::EndToEnd) {
        end_to_end(options, &mut parts);
    }
    part::print_summary(&parts);
    if options.wants(Group::EndToEnd) {
        print_second_tries();
    }
    let failed = parts.iter().filter(|part| matches!(part.outcome, Outcome::Failed(_))).count();
    if failed > 0 {
        bail!("{failed} of {} parts failed", parts.len());
    }
    Ok(())
}

/// Says which checks a browser failed at first and passed at the second try.
fn print_second_tries() {
    let lines = std::fs::read_to_string(workspace::second_tries()).unwrap_or_default();
    println!("passed only at the second try: {}", lines.lines().count());
    for line in lines.lines() {
        println!("    {line}");
    }
}

/// Form, lints, and the tests that need no browser.
fn native(options: &Options, parts: &mut Vec<Part>) {
    if options.filter.is_none() {
        parts.push(form());
        parts.push(Part::command(
            "lints (clippy)",
            tools::cargo()
                .args(["clippy", "--quiet", "--workspace", "--exclude", "app", "--all-targets"])
                .args(["--features", "calc/json", "--", "-D", "warnings"]),
        ));
        parts.push(Part::command(
            "lints of the app (clippy, wasm)",
            tools::cargo().args(["clippy", "--quiet", "--package", "app", "--all-targets"]).args([
                "--target",
                tools::WASM,
                "--",
                "-D",
                "warnings",
            ]),
        ));
    }
    let packages = ["--package", "calc", "--package", "xtask", "--features", "calc/json"];
    let filter = options.filter.as_deref();
    let mut tests = tools::cargo();
    if engine::program("cargo-nextest").is_some() {
        tests.args(["nextest", "run", "--no-fail-fast"]).args(packages).args(filter);
    } else {
        tests
            .args(["test", "--no-fail-fast", "--lib", "--bins", "--tests"])
            .args(packages)
            .args(filter);
    }
    parts.push(Part::tests("native", &mut tests));
    // What the app writes as text needs no browser either.
    let mut of_app = tools::cargo();
    of_app.args(["test", "--no-fail-fast", "--package", "app", "--lib"]).args(filter);
    parts.push(match filter {
        None => Part::tests("native, of the app", &mut of_app),
        Some(_) => Part::tests_if_any("native, of the app", &mut of_app),
    });
    if filter.is_none() {
        let mut documentation = tools::cargo();
        documentation.args(["test", "--doc", "--package", "calc", "--features", "json"]);
        parts.push(Part::tests_if_any("native, examples in the documentation", &mut documentation));
    }
}

/// Every source file, also those that a macro names and `cargo fmt` does not see.
fn form() -> Part {
    let mut rustfmt = Command::new("rustfmt");
    rustfmt.current_dir(workspace::root()).args(["--edition", "2024", "--check"]);
    for folder in ["app", "calc", "tests", "xtask"] {
        sources(&workspace::root().join(folder), &mut rustfmt);
    }
    Part::command("form (rustfmt)", &mut rustfmt)
}

/// Adds the sources below a folder to a command.
fn sources(folder: &Path, command: &mut Command) {
    let entries = std::fs::read_dir(folder).into_iter().flatten().flatten();
    let in_order: BTreeSet<PathBuf> = entries.map(|entry| entry.path()).collect();
    for path in in_order {
        if path.is_dir() {
            sources(&path, command);
        } else if path.extension().is_some_and(|ending| ending == "rs") {
            command.arg(path);
        }
    }
}

/// The app's own tests, inside browsers.
fn unit(options: &Options, parts: &mut Vec<Part>) {
    let runner = match tools::browser_test_runner() {
        Ok(runner) => runner,
        Err(error) => return parts.push(Part::failed("unit, in browsers", &format!("{error:#}"))),
    };
    for engine in options.engines.iter().copied() {
        let name = format!("unit, {}", engine.name());
        let variable = match engine {
            Engine::Chromium => "CHROMEDRIVER",
            Engine::Firefox => "GECKODRIVER",
            Engine::WebKit => {
                parts.push(Part::not_tested(&name, "the runner knows no driver of WebKitGTK"));
                continue;
            }
        };
        if options.without.iter().any(|name| name == engine.name()) {
            parts.push(options.cannot_run(&name, engine.name(), ""));
            continue;
        }
        let programs = match tools::ensure_engine(engine) {
            Ok(programs) => programs,
            Err(missing) => {
                parts.push(options.cannot_run(&name, engine.name(), &missing));
                continue;
            }
        };
        let mut tests = tools::cargo();
        tests
            .args(["test", "--no-fail-fast", "--package", "app", "--target", tools::WASM])
            .args(&options.filter)
            .env("CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_RUNNER", &runner)
            .env(variable, programs.driver);
        parts.push(Part::tests(&name, &mut tests));
    }
}

/// The whole site, from outside.
fn end_to_end(options: &Options, parts: &mut Vec<Part>) {
    if let Err(error) = build::site(&build::Options::release()) {
        return parts
            .push(Part::failed("end to end", &format!("the site cannot be built: {error:#}")));
    }
    // Altered copies of the site that earlier runs left.
    let _ = std::fs::remove_dir_all(workspace::evidence());
    tools::ensure_node();
    let left_out = |name: &str| options.without.iter().any(|one| one == name);
    let axe = !left_out("axe") && tools::node_package(&tools::AXE).is_some();
    if !axe {
        let why = "npm is missing or offline";
        parts.push(options.cannot_run("accessibility (axe-core)", "axe", why));
    }
    let poppler = !left_out("print")
        && ["pdftotext", "pdftoppm"].iter().all(|name| engine::program(name).is_some());
    if !poppler {
        let why = "pdftotext and pdftoppm (poppler-utils) are missing";
        parts.push(options.cannot_run("what is printed", "print", why));
    }
    let mut runs = Vec::new();
    for engine in options.engines.iter().copied() {
        let name = format!("end to end, {}", engine.name());
        let found = if left_out(engine.name()) {
            Err("left out".to_owned())
        } else {
            tools::ensure_engine(engine).map(|_| ())
        };
        if let Err(missing) = found {
            parts.push(options.cannot_run(&name, engine.name(), &missing));
            continue;
        }
        let mut tests = tools::cargo();
        tests.args([
            "test",
            "--no-fail-fast",
            "--package",
            "e2e",
            "--tests",
            "--",
            "--test-threads=1",
        ]);
        match &options.filter {
            Some(filter) => tests.args(["--exact", &format!("{filter}::{}", engine.name())]),
            None => tests.arg(format!("::{}", engine.name())),
        };
        if !axe {
            tests.args(["--skip", "axe_"]);
        }
        if !poppler {
            tests.args(["--skip", "prints_"]);
        }
        runs.push((name, tests));
    }
    parts.extend(several_at_once(runs));
}

/// Engines that are tested at once. A check waits for its browser most of the time, and engines have
/// nothing in common: each check has a site, a browser and a port of its own.
const AT_ONCE: usize = 2;

/// Runs tests of several names, some at once, and gives their parts in the order of the names. What
/// they print comes line by line; each line of a test names its engine.
fn several_at_once(runs: Vec<(String, Command)>) -> Vec<Part> {
    let done: Vec<OnceLock<Part>> = runs.iter().map(|_| OnceLock::new()).collect();
    let waiting = Mutex::new(runs.into_iter().zip(&done));
    let work = || {
        loop {
            // The lock is given back before the tests run.
            let next = waiting.lock().unwrap_or_else(PoisonError::into_inner).next();
            let Some(((name, mut tests), done)) = next else { return };
            done.get_or_init(|| Part::tests(&name, &mut tests));
        }
    };
    std::thread::scope(|scope| {
        for _ in 0..AT_ONCE {
            scope.spawn(work);
        }
    });
    done.into_iter().filter_map(OnceLock::into_inner).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn several_at_once_all_run_and_stand_in_order() {
        let run = |name: &str, wait: &str, result: &str| {
            let mut command = Command::new("sh");
            command.args([
                "-c",
                &format!("sleep {wait}; echo 'test result: {result}'; [ {name} != c ]"),
            ]);
            (name.to_owned(), command)
        };
        let parts = several_at_once(vec![
            run("a", "0.3", "ok. 1 passed; 0 failed; 0 ignored"),
            run("b", "0", "ok. 2 passed; 0 failed; 0 ignored"),
            run("c", "0", "FAILED. 3 passed; 1 failed; 0 ignored"),
            run("d", "0", "ok. 0 passed; 0 failed; 0 ignored"),
        ]);
        let passed: Vec<bool> =
            parts.iter().map(|part| matches!(part.outcome, Outcome::Passed)).collect();
        // The last one ran no test.
        assert_eq!(passed, [true, true, false, false]);
    }

    #[test]
    fn a_part_that_cannot_run_is_a_failure_unless_left_out() {
        let options = |words: &[&str]| {
            let words: Vec<String> = words.iter().map(|word| (*word).to_owned()).collect();
            Options::parse(&words)
        };
        let missing =
            |options: &Options| options.cannot_run("e2e", "webkit", "it is missing").outcome;
        assert!(matches!(missing(&options(&[]).unwrap()), Outcome::Failed(_)));
        let other = options(&["--without", "firefox"]).unwrap();
        assert!(matches!(missing(&other), Outcome::Failed(_)));
        let named = options(&["--without", "firefox", "--without", "webkit"]).unwrap();
        assert!(matches!(missing(&named), Outcome::NotTested(_)));
        assert!(options(&["--without", "all"]).is_err() && options(&["--without"]).is_err());
    }
}
