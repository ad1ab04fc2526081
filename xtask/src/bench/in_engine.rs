//! What is timed in a browser's engine: the evaluation as wasm, and keys typed on the page.

use crate::tools;
use anyhow::{Context, Result, ensure};
use std::path::PathBuf;
use std::process::{Command, Stdio};
use xtask::engine::Engine;
use xtask::workspace;

/// Runs what a module exports until the engine has compiled all for speed, then prints the median in seconds.
const RUN: &str = "
    const [path, name, warm, timed] = process.argv.slice(1);
    const bytes = require('fs').readFileSync(path);
    WebAssembly.instantiate(bytes, {}).then(({ instance }) => {
        const { load, [name]: run } = instance.exports;
        if (load && !load() || !run()) throw new Error(name + ' gives nothing');
        const times = [];
        for (let at = 0; at < +warm + +timed; at++) {
            const start = performance.now();
            run();
            if (at >= warm) times.push(performance.now() - start);
        }
        console.log(times.sort((a, b) => a - b)[times.length >> 1] / 1000);
    });";

/// Seconds of evaluate() of the demo project in Node's wasm engine; none where Node is missing.
pub fn evaluate() -> Option<f64> {
    median("evaluate", [100, 200])
}

/// Seconds of a ceiling's joints, 16 courses over 13 ribs, in the same engine.
pub fn layout() -> Option<f64> {
    median("layout", [2, 9])
}

/// The median time of what the module exports under a name; `runs` to warm up, and timed ones.
fn median(export: &str, runs: [u32; 2]) -> Option<f64> {
    tools::ensure_node();
    if !tools::has("node") {
        println!("{export} as wasm left out: Node is missing");
        return None;
    }
    told(seconds(export, runs))
}

fn seconds(export: &str, runs: [u32; 2]) -> Result<f64> {
    let mut node = Command::new("node");
    node.arg("-e").arg(RUN).arg(module()?).arg(export);
    let output = node.args(runs.map(|count| count.to_string())).output()?;
    let text = String::from_utf8_lossy(&output.stdout);
    text.trim().parse().with_context(|| String::from_utf8_lossy(&output.stderr).into_owned())
}

fn module() -> Result<PathBuf> {
    let mut cargo = tools::cargo();
    cargo.args(["build", "--quiet", "--release", "--target", "wasm32-unknown-unknown"]);
    cargo.args(["--package", "app", "--example", "evaluate_wasm"]);
    tools::run(&mut cargo)?;
    let folder = workspace::target().join("wasm32-unknown-unknown/release/examples");
    Ok(folder.join("evaluate_wasm.wasm"))
}

/// Seconds from a key to the painted page, the processor four times slower, for each kind of
/// sheet in the demo project; empty where Chromium is missing.
pub fn keystrokes() -> Vec<(String, f64)> {
    if let Err(missing) = tools::ensure_engine(Engine::Chromium) {
        println!("keystrokes left out: {missing}");
        return Vec::new();
    }
    told(typed()).unwrap_or_default()
}

fn typed() -> Result<Vec<(String, f64)>> {
    let mut cargo = tools::cargo();
    cargo.args(["run", "--quiet", "--package", "e2e", "--example", "keystroke"]);
    let output = cargo.stderr(Stdio::inherit()).output()?;
    ensure!(output.status.success(), "the page could not be typed on");
    let text = String::from_utf8_lossy(&output.stdout);
    let read = |line: &str| {
        let (kind, seconds) = line.strip_prefix("keystroke ")?.split_once(' ')?;
        Some((kind.to_owned(), seconds.parse().ok()?))
    };
    Ok(text.lines().filter_map(read).collect())
}

/// The value; what went wrong is told and leaves the figure out.
fn told<T>(result: Result<T>) -> Option<T> {
    result.map_err(|error| println!("left out: {error:#}")).ok()
}
