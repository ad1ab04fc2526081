//! The budgets beside what was measured. Times depend on the machine, so they are reported and never asserted.

mod in_engine;
mod solver;

use crate::build;
use crate::bytes::{self, BUDGET};
use crate::tools;
use anyhow::{Context, Result};
use std::collections::BTreeMap;
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
    let native = native();
    let time = |name: &str| {
        let seconds: f64 = native.get(name)?.parse().ok()?;
        Some(milliseconds(Duration::from_secs_f64(seconds)))
    };
    let cut_plan = time("cut_plan").map(|time| {
        let proved = native.get("cut_plan_proved").is_some_and(|proved| proved == "true");
        time + if proved { ", proved" } else { ", with its bound and gap" }
    });
    let reader = time("read_texts").map(|time| {
        let unsound = native.get("read_texts_unsound").map_or("?", String::as_str);
        format!("{unsound} unsound, {time}")
    });
    let wasm = in_engine::evaluate().map(Duration::from_secs_f64).map(milliseconds);
    let layout = in_engine::layout().map(Duration::from_secs_f64).map(milliseconds);
    let keystroke = worst_and_median(in_engine::keystrokes());
    let rows = [
        ("everything, brotli", format!("{BUDGET} bytes"), Some(format!("{first_visit} bytes"))),
        ("evaluate() of the demo project, native", "1 ms".to_owned(), time("evaluate")),
        ("evaluate() of 60 sheets, native", "4 ms".to_owned(), time("evaluate_60")),
        (
            "the same and its buy list after a keystroke",
            "1 ms".to_owned(),
            time("evaluate_60_typed"),
        ),
        ("evaluate() of the demo project, wasm", "3 ms".to_owned(), wasm),
        ("keystroke to painted answer, 4x slower CPU", "16 ms".to_owned(), keystroke),
        ("Lighthouse mobile, all categories", "100".to_owned(), lighthouse),
        ("joints, 16 courses over 13 ribs, native", "250 ms".to_owned(), time("layout_16")),
        ("joints, 16 courses over 13 ribs, wasm", "250 ms".to_owned(), layout),
        ("cut plan, 200 pieces of 4 stock lengths", "250 ms".to_owned(), cut_plan),
        ("a million made-up texts read, native", "0 unsound".to_owned(), reader),
    ];
    println!("\n{:<44} {:>14}   measured", "budget", "");
    for (what, budget, measured) in rows {
        println!(
            "{what:<44} {budget:>14}   {}",
            measured.unwrap_or_else(|| "not measured".to_owned())
        );
    }
    solver::compare();
    Ok(())
}

/// The figures of calc's own bench, by name; empty where it cannot run.
fn native() -> BTreeMap<String, String> {
    let mut cargo = tools::cargo();
    cargo
        .args(["run", "--quiet", "--profile", "fast", "--package", "calc", "--example", "budgets"])
        .arg("--")
        .arg(workspace::root().join("shared/demo.json"))
        .stderr(Stdio::inherit());
    let Ok(output) = cargo.output() else { return BTreeMap::new() };
    String::from_utf8_lossy(&output.stdout)
        .lines()
        .filter_map(|line| line.split_once(' '))
        .map(|(name, figure)| (name.to_owned(), figure.to_owned()))
        .collect()
}

/// Of the sheets' times, the one in the middle and the longest, in words.
fn worst_and_median(mut times: Vec<(String, f64)>) -> Option<String> {
    calc::sorting::sort_by(&mut times, |a, b| a.1.total_cmp(&b.1));
    let (_, median) = times.get(times.len() / 2)?;
    let (worst, longest) = times.last()?;
    let words = |seconds: f64| milliseconds(Duration::from_secs_f64(seconds));
    Some(format!(
        "{}, the median of {} sheets; {} on {worst}",
        words(*median),
        times.len(),
        words(*longest)
    ))
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
