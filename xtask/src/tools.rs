//! What the tasks need besides Rust, pinned and installed under `target/tools` or, on Debian as root, by the system.

use anyhow::{Context, Result, bail};
use std::path::PathBuf;
use std::process::{Command, Stdio};
use xtask::engine::{self, Engine, Programs};
use xtask::workspace;

/// The target of the app.
pub const WASM: &str = "wasm32-unknown-unknown";
const GECKODRIVER: &str = "0.37.1";

/// A package of Node's registry at one version.
pub struct NodePackage {
    name: &'static str,
    version: &'static str,
}

/// wasm-opt.
pub const BINARYEN: NodePackage = NodePackage { name: "binaryen", version: "132.0.0" };
/// The checker of accessibility.
pub const AXE: NodePackage = NodePackage { name: "axe-core", version: "4.14.1" };
/// The checker of whole pages; the last one that runs on Node 18 and 20.
pub const LIGHTHOUSE: NodePackage = NodePackage { name: "lighthouse", version: "12.8.2" };

/// The cargo that runs this task.
pub fn cargo() -> Command {
    let mut command = Command::new(std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into()));
    command.current_dir(workspace::root());
    command
}

/// Runs a command to its end.
///
/// # Errors
/// It cannot be started or fails.
pub fn run(command: &mut Command) -> Result<()> {
    let shown = show(command);
    let status = command.status().with_context(|| format!("{shown} cannot be started"))?;
    if !status.success() {
        bail!("{shown} failed ({status})");
    }
    Ok(())
}

/// The command as one would type it.
pub fn show(command: &Command) -> String {
    let words = std::iter::once(command.get_program()).chain(command.get_args());
    words.map(|word| word.to_string_lossy().into_owned()).collect::<Vec<_>>().join(" ")
}

/// Adds the wasm target to the toolchain where it is missing.
pub fn ensure_wasm_target() -> Result<()> {
    let rustc = std::env::var_os("RUSTC").unwrap_or_else(|| "rustc".into());
    let found = Command::new(&rustc)
        .current_dir(workspace::root())
        .args(["--print", "target-libdir", "--target", WASM])
        .output()
        .context("rustc cannot be started")?;
    let folder = PathBuf::from(String::from_utf8_lossy(&found.stdout).trim());
    if found.status.success() && folder.is_dir() {
        return Ok(());
    }
    println!("adding the target {WASM} to the toolchain");
    run(Command::new("rustup").current_dir(workspace::root()).args(["target", "add", WASM]))
        .with_context(|| format!("Rust's standard library for {WASM} is missing; install it with your system's packages or with rustup"))
}

/// Whether the sources of the standard library are there, added to the toolchain where rustup can: with them the library
/// is built for size.
pub fn std_sources() -> bool {
    let there = || {
        let rustc = std::env::var_os("RUSTC").unwrap_or_else(|| "rustc".into());
        let found = Command::new(rustc)
            .current_dir(workspace::root())
            .args(["--print", "sysroot"])
            .output();
        found.is_ok_and(|found| {
            let sysroot = PathBuf::from(String::from_utf8_lossy(&found.stdout).trim());
            sysroot.join("lib/rustlib/src/rust/library/Cargo.lock").is_file()
        })
    };
    if there() {
        return true;
    }
    println!("adding the sources of the standard library to the toolchain");
    let mut rustup = Command::new("rustup");
    rustup.current_dir(workspace::root()).args(["component", "add", "rust-src"]);
    run(&mut rustup).is_ok() && there()
}

/// The folder of a Node package, installed where it is missing; nothing where npm is missing (see [`ensure_node`]) or offline.
pub fn node_package(package: &NodePackage) -> Option<PathBuf> {
    let NodePackage { name, version } = package;
    let folder = workspace::tools().join("node_modules").join(name);
    let installed = std::fs::read_to_string(folder.join("package.json")).unwrap_or_default();
    if installed.contains(&format!("\"version\": \"{version}\"")) {
        return has("node").then_some(folder);
    }
    if !has("npm") {
        return None;
    }
    println!("installing {name} {version} in {}", workspace::tools().display());
    std::fs::create_dir_all(workspace::tools()).ok()?;
    let npm = Command::new("npm")
        .args([
            "install",
            "--no-save",
            "--no-package-lock",
            "--no-audit",
            "--no-fund",
            "--silent",
            "--prefix",
        ])
        .arg(workspace::tools())
        .args(pinned_with_present(package))
        .stdin(Stdio::null())
        .status();
    (npm.is_ok_and(|status| status.success()) && folder.is_dir()).then_some(folder)
}

/// npm takes away what it is not told about, so the packages that are there already are named again.
fn pinned_with_present(package: &NodePackage) -> Vec<String> {
    let present = |other: &&NodePackage| {
        other.name == package.name
            || workspace::tools().join("node_modules").join(other.name).is_dir()
    };
    [&BINARYEN, &AXE, &LIGHTHOUSE]
        .into_iter()
        .filter(present)
        .map(|package| format!("{}@{}", package.name, package.version))
        .collect()
}

/// Installs what an engine lacks where that is possible, and says what is missing otherwise.
///
/// # Errors
/// Names what is missing and the command that installs it.
pub fn ensure_engine(engine: Engine) -> Result<Programs, String> {
    if let Ok(programs) = engine.find() {
        return Ok(programs);
    }
    let packages = engine.packages();
    if may_install() {
        apt_install(packages);
    }
    if engine == Engine::Firefox && engine::program("geckodriver").is_none() {
        println!("installing geckodriver {GECKODRIVER} in {}", workspace::tools().display());
        // A failure shows below, as the driver that is still missing.
        let _ = run(cargo()
            .args(["install", "geckodriver", "--locked", "--version", GECKODRIVER, "--root"])
            .arg(workspace::tools()));
    }
    engine.find().map_err(|missing| {
        format!("{missing}; on Debian: sudo apt-get install {}", packages.join(" "))
    })
}

/// Installs Node where that is possible and it is missing.
pub fn ensure_node() {
    if !(has("node") && has("npm")) && may_install() {
        apt_install(&["nodejs", "npm"]);
    }
}

/// The runner that carries the app's unit tests into a browser, built at the version of the lock file.
pub fn browser_test_runner() -> Result<PathBuf> {
    run(cargo()
        .args(["build", "--package", "xtask", "--bin", "browser-test-runner"])
        .args(["--features", "browser-tests"]))?;
    Ok(workspace::target().join("debug/browser-test-runner"))
}

/// Whether a program is on the path.
pub fn has(name: &str) -> bool {
    engine::program(name).is_some()
}

/// Root on Debian or a child of it may install system packages; nobody else is asked for a password.
fn may_install() -> bool {
    let root = Command::new("id").arg("-u").output().is_ok_and(|id| id.stdout.trim_ascii() == b"0");
    root && has("apt-get")
}

/// Installs system packages; what is still missing afterwards is reported by whoever needs it.
fn apt_install(packages: &[&str]) {
    println!("installing {}", packages.join(" "));
    let apt = |words: &[&str]| {
        run(Command::new("apt-get")
            .env("DEBIAN_FRONTEND", "noninteractive")
            .stdin(Stdio::null())
            .args(words))
    };
    let done = apt(&["update", "-q"]).and_then(|()| {
        apt(&[&["install", "-q", "-y", "--no-install-recommends"], packages].concat())
    });
    if let Err(error) = done {
        eprintln!("{error:#}");
    }
}
