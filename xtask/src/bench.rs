//! The budgets beside what was measured. Times depend on the machine, so they are reported and never asserted.

use crate::build;
use crate::bytes::{self, BUDGET};
use crate::tools;
use anyhow::{Context, Result};
use std::path::Path;
use std::process::{Command, Stdio};
use std::time::Duration;
use xtask::engine::Engine;
use xtask::server::Server;
use xtask::workspace;

const CATEGORIES: [&str; 4] = ["performance", "accessibility", "best-practices", "seo"];

/// Measures what it can and prints one line a budget.
pub fn bench() -> Result<()> {
    let site = build::site(&build::Options::release())?;
    let first_visit: usize = bytes::first_visit(&site)?.iter().map(|row| row.loaded).sum();
    let lighthouse = lighthouse(&workspace::dist());
    let rows = [
        ("first visit, brotli", format!("{BUDGET} bytes"), Some(format!("{first_visit} bytes"))),
        (
            "evaluate() of the demo project, native",
            "1 ms".to_owned(),
            evaluate_native().map(milliseconds),
        ),
        (
            "evaluate() of the demo project, wasm",
            "3 ms".to_owned(),
            evaluate_wasm().map(milliseconds),
        ),
        (
            "keystroke to painted answer, 4x slower CPU",
            "16 ms".to_owned(),
            keystroke().map(milliseconds),
        ),
        ("Lighthouse mobile, all categories", "100".to_owned(), lighthouse),
        (
            "cut plan, 200 pieces of 4 stock lengths",
            "250 ms".to_owned(),
            cut_plan().map(milliseconds),
        ),
    ];
    println!("\n{:<44} {:>14}   measured", "budget", "");
    for (what, budget, measured) in rows {
        println!(
            "{what:<44} {budget:>14}   {}",
            measured.unwrap_or_else(|| "not measured".to_owned())
        );
    }
    Ok(())
}

/// To be measured: the median of many runs of `calc::evaluate` on the demo project, in an optimized build.
fn evaluate_native() -> Option<Duration> {
    None
}

/// To be measured: the same in a browser.
fn evaluate_wasm() -> Option<Duration> {
    None
}

/// To be measured: from a key to the answer on the screen, with the processor throttled.
fn keystroke() -> Option<Duration> {
    None
}

/// To be measured: the cut planner on 200 pieces.
fn cut_plan() -> Option<Duration> {
    None
}

fn milliseconds(time: Duration) -> String {
    format!("{:.3} ms", time.as_secs_f64() * 1000.0)
}

/// The scores of the built site, or nothing where Node or Chromium is missing.
fn lighthouse(dist: &Path) -> Option<String> {
    let chromium = match tools::ensure_engine(Engine::Chromium) {
        Ok(programs) => programs.browser,
        Err(missing) => {
            println!("Lighthouse left out: {missing}");
            return None;
        }
    };
    tools::ensure_node();
    let Some(package) = tools::node_package(&tools::LIGHTHOUSE) else {
        println!("Lighthouse left out: npm is missing or offline");
        return None;
    };
    match scores(dist, &chromium, &package) {
        Ok(scores) => Some(scores),
        Err(error) => {
            println!("Lighthouse failed: {error:#}");
            None
        }
    }
}

fn scores(dist: &Path, chromium: &Path, package: &Path) -> Result<String> {
    let server = Server::start(0, "/", dist, Box::new(|_| None))?;
    let output = Command::new("node")
        .arg(package.join("cli/index.js"))
        .args([&server.url(), "--quiet", "--output=json"])
        .arg("--chrome-flags=--headless=new --no-sandbox --disable-gpu")
        .env("CHROME_PATH", chromium)
        .stdin(Stdio::null())
        .stderr(Stdio::inherit())
        .output()?;
    let report: serde_json::Value =
        serde_json::from_slice(&output.stdout).context("its report is not JSON")?;
    let score = |category: &str| {
        let score = report.get("categories")?.get(category)?.get("score")?.as_f64()?;
        Some(format!("{category} {:.0}", score * 100.0))
    };
    let scores: Option<Vec<String>> = CATEGORIES.iter().map(|category| score(category)).collect();
    Ok(scores.context("its report lacks a category")?.join(", "))
}
