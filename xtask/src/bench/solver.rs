//! The cut planner beside a general-purpose solver, HiGHS, on the same tasks; left out where Python or its package is missing.

use crate::tools;
use anyhow::{Context, Result, ensure};
use serde_json::Value;
use std::io::Write;
use std::path::PathBuf;
use std::process::{Command, Stdio};
use xtask::workspace;

/// The solver's package.
const PACKAGE: &str = "highspy==1.16.0";
/// The longest that the solver may take for one task. [s]
const LIMIT_S: &str = "20";
const PROGRAM: &str = include_str!("solver.py");

/// Prints one line a task: costs, whether they are proved, and times.
pub fn compare() {
    if let Err(reason) = compared() {
        println!("\nThe cut planner beside a general-purpose solver is left out: {reason:#}");
    }
}

fn compared() -> Result<()> {
    ensure_package()?;
    let ours = tools::cargo()
        .args(["run", "--quiet", "--profile", "fast", "--package", "calc"])
        .args(["--example", "cut_compare", "--"])
        .arg(workspace::root().join("shared/cutstock"))
        .stderr(Stdio::inherit())
        .output()?;
    ensure!(ours.status.success(), "the planner's own answers failed");
    let mut python = python()
        .args(["-c", PROGRAM, LIMIT_S])
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()?;
    python.stdin.take().context("no way to the solver")?.write_all(&ours.stdout)?;
    let theirs = python.wait_with_output()?;
    ensure!(theirs.status.success(), "the solver failed");
    let ours: Vec<Value> = serde_json::from_slice(&ours.stdout)?;
    let theirs = String::from_utf8_lossy(&theirs.stdout);
    let answer = theirs.lines().next_back().context("the solver said nothing")?;
    let theirs: Vec<Value> = serde_json::from_str(answer)?;
    println!(
        "\n{:<32} {:>12} {:>12} {:>7} {:>11} {:>11} {:>8}",
        "cut plans", "planner", "HiGHS", "ratio", "planner", "HiGHS", "faster"
    );
    for (own, other) in ours.iter().zip(&theirs) {
        println!("{}", line(own, other));
    }
    println!(
        "p: proved. HiGHS solves an arc-flow model on one thread, for at most {LIMIT_S} s a task."
    );
    Ok(())
}

fn line(own: &Value, other: &Value) -> String {
    let cost = |of: &Value| {
        let proved = if of["proved"] == true { " p" } else { "  " };
        of["cost"].as_f64().map_or("none".to_owned(), |cost| format!("{cost:.2}{proved}"))
    };
    let seconds = |of: &Value| of["seconds"].as_f64().unwrap_or(f64::NAN);
    let ratio = match (own["cost"].as_f64(), other["cost"].as_f64()) {
        (Some(own), Some(other)) if other > 0.0 => format!("{:.4}", own / other),
        _ => "–".to_owned(),
    };
    let name = own["name"].as_str().unwrap_or_default();
    let (own_cost, own_ms) = (cost(own), seconds(own) * 1e3);
    if other["seconds"].is_null() {
        return format!(
            "{name:<32} {own_cost:>12} {:>12} {:>7} {own_ms:>8.2} ms",
            "too large", "–"
        );
    }
    format!(
        "{name:<32} {own_cost:>12} {:>12} {ratio:>7} {own_ms:>8.2} ms {:>8.0} ms {:>7.0}x",
        cost(other),
        seconds(other) * 1e3,
        seconds(other) / seconds(own)
    )
}

/// The solver's package under `target/tools`, installed where it can be.
fn ensure_package() -> Result<()> {
    let there = || -> Result<bool> {
        let found = python().args(["-c", "import highspy"]).stderr(Stdio::null()).status();
        Ok(found.context("python3 cannot be started")?.success())
    };
    if there()? {
        return Ok(());
    }
    println!("installing {PACKAGE} under {}", packages().display());
    let installed = Command::new("python3")
        .args(["-m", "pip", "install", "--quiet", "--target"])
        .arg(packages())
        .arg(PACKAGE)
        .status()?;
    ensure!(installed.success() && there()?, "{PACKAGE} cannot be installed");
    Ok(())
}

fn packages() -> PathBuf {
    workspace::tools().join("python")
}

fn python() -> Command {
    let mut python = Command::new("python3");
    python.env("PYTHONPATH", packages());
    python
}
