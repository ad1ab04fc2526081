//! From sources to a site: the app by cargo, its glue by wasm-bindgen, then the page around it, compressed.

use crate::page::{self, Parts, Site};
use crate::tools::{self, WASM};
use anyhow::{Context, Result, bail};
use std::collections::BTreeMap;
use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::Command;
use xtask::workspace;

/// What is worth compressing; pictures are compressed already.
const TEXTUAL: [&str; 7] = ["html", "css", "js", "wasm", "svg", "webmanifest", "bin"];

/// With this set the program is built as one module.
const WHOLE: &str = "BATTENBOOK_ONE_MODULE";

/// How to build.
pub struct Options {
    /// Cargo's development profile: quicker to build, bigger and slower to run.
    pub development: bool,
    /// The utmost in small files, which takes its time.
    pub smallest: bool,
    /// Where the site goes.
    pub folder: PathBuf,
    /// A script for development alone, by its name.
    pub extra: Option<(String, String)>,
}

impl Options {
    /// Whether the program is parted: the rest is fetched when it is needed. Not for development, where that takes longer than it saves;
    /// and one module can be had, to see whether a fault is of the parting.
    fn split(&self) -> bool {
        self.smallest && std::env::var_os(WHOLE).is_none()
    }

    /// What is published.
    pub fn release() -> Self {
        Self { development: false, smallest: true, folder: workspace::dist(), extra: None }
    }
}

/// Builds the site and writes it, with its compressed copies, in place of the one before.
///
/// # Errors
/// A source does not compile or a tool is missing; the site before then stays.
pub fn site(options: &Options) -> Result<Site> {
    tools::ensure_wasm_target()?;
    let staging = workspace::target().join("site");
    let module = compile(options)?;
    let optimizer = if options.smallest { optimizer() } else { None };
    if staging.exists() {
        std::fs::remove_dir_all(&staging)?;
    }
    let (module, parts) = match options.split() {
        true => split(&module, &staging)?,
        false => (module, Vec::new()),
    };
    bind(&module, &staging, options, options.development || optimizer.is_some())?;
    let wasm = staging.join("app_bg.wasm");
    if let Some(optimizer) = optimizer {
        for module in parts.iter().chain([&wasm]) {
            optimize(module, &optimizer)?;
        }
    }
    let site = page::assemble(gather(&staging, &wasm, &parts, options)?)?;
    write(&site, options)?;
    Ok(site)
}

/// The brotli bytes of a file at the highest quality.
pub fn brotli(bytes: &[u8], quality: i32) -> Result<Vec<u8>> {
    let params = brotli::enc::BrotliEncoderParams {
        quality,
        lgwin: 22,
        size_hint: bytes.len(),
        ..Default::default()
    };
    let mut out = Vec::new();
    brotli::BrotliCompress(&mut &*bytes, &mut out, &params)?;
    Ok(out)
}

fn compile(options: &Options) -> Result<PathBuf> {
    let mut cargo = tools::cargo();
    cargo.args(["build", "--package", "app", "--bin", "app", "--target", WASM]);
    let profile = if options.development {
        "debug"
    } else {
        cargo.arg("--release");
        // Messages of panics name source files: the same on every machine, and nobody's home folder.
        let home = std::env::var("CARGO_HOME")
            .unwrap_or_else(|_| format!("{}/.cargo", std::env::var("HOME").unwrap_or_default()));
        let root = workspace::root();
        // erase_components: one type for all views, which is smaller once there are many. disable-lsr: no pointers of
        // their own for what loops step through, a hundredth of the compressed bytes (browsers optimize loops anyway).
        let mut flags = format!(
            "--cfg erase_components -Cllvm-args=-disable-lsr --remap-path-prefix={home}=cargo --remap-path-prefix={}=.",
            root.display()
        );
        if options.split() {
            // What the parting needs to know: what refers to what, each constant by itself.
            flags += " --cfg split -Clink-arg=--emit-relocs -Clink-arg=--no-merge-data-segments";
        }
        if options.smallest && tools::std_sources() {
            // About a tenth of the bytes: the standard library built for size, and a panic that only stops (the boot
            // script says what happened). Both are switches that this release of the compiler keeps behind a variable.
            cargo.env("RUSTC_BOOTSTRAP", "1");
            cargo.args(["-Zbuild-std=std,panic_abort", "-Zbuild-std-features=optimize_for_size"]);
            flags += " -Zunstable-options -Cpanic=immediate-abort -Zlocation-detail=none";
        } else if options.smallest {
            println!("the standard library's sources cannot be had: about a tenth more to load");
        }
        cargo.env("CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_RUSTFLAGS", flags);
        "release"
    };
    tools::run(&mut cargo)?;
    Ok(workspace::target().join(WASM).join(profile).join("app.wasm"))
}

/// Parts the program at its marked functions: what comes first, for wasm-bindgen, and the others.
fn split(module: &Path, staging: &Path) -> Result<(PathBuf, Vec<PathBuf>)> {
    let input = read(module)?;
    let main = staging.join("main.wasm");
    let mut how = wasm_split_cli_support::Options::new(&input);
    how.output_dir = staging;
    how.main_out_path = &main;
    how.link_name = LOADER;
    how.main_module = GLUE;
    let parted = wasm_split_cli_support::transform(how)
        .map_err(|error| anyhow::anyhow!("the program could not be parted: {error:?}"))?;
    Ok((main, parted.split_modules))
}

/// The script that fetches the parts, as the program imports it, and the glue, as that script imports it.
const LOADER: &str = "./parts.js";
const GLUE: &str = "./app.js";

fn bind(module: &Path, staging: &Path, options: &Options, names: bool) -> Result<()> {
    wasm_bindgen_cli_support::Bindgen::new()
        .input_path(module)
        .web(true)?
        .out_name("app")
        .typescript(false)
        .omit_default_module_path(true)
        .keep_debug(options.development)
        // What the parts share with the first.
        .keep_lld_exports(options.split())
        .remove_producers_section(true)
        .remove_name_section(!names)
        .generate(staging)
        .context("wasm-bindgen could not write the glue")
}

/// Passes of wasm-opt that take plain bytes but add compressed ones: what is alike is torn apart (functions in the order of
/// their calls, a data section in pieces) or made less alike (parts merged, inlined, kept in locals). Each was measured.
const SKIPPED: [&str; 7] = [
    "memory-packing",
    "reorder-functions",
    "local-cse",
    "merge-similar-functions",
    "inlining-optimizing",
    "simplify-locals",
    "code-folding",
];

/// wasm-opt; nothing where Node is missing.
fn optimizer() -> Option<PathBuf> {
    let binaryen = tools::node_package(&tools::BINARYEN);
    if binaryen.is_none() {
        println!("wasm-opt: left out, since npm is missing or offline (about 2 % more to load)");
    }
    binaryen.map(|folder| folder.join("bin/wasm-opt"))
}

/// A last pass by wasm-opt: it takes some 3 % of the plain and 2 % of the compressed bytes, and the functions' names.
fn optimize(wasm: &Path, optimizer: &Path) -> Result<()> {
    let smaller = wasm.with_extension("opt.wasm");
    // No feature flags: the module's own target_features section says what may be used.
    let mut command = Command::new("node");
    command.arg(optimizer).arg("-Oz").arg(wasm).arg("-o").arg(&smaller);
    // The first kilobyte is the far end of the stack: no address is reckoned from there.
    command.arg("--low-memory-unused");
    command.args(SKIPPED.map(|pass| format!("--skip-pass={pass}")));
    // Last, so that copies of one generic function stand together.
    command.arg("--reorder-functions-by-name");
    tools::run(&mut command)?;
    std::fs::rename(smaller, wasm)?;
    Ok(())
}

fn gather(staging: &Path, wasm: &Path, modules: &[PathBuf], options: &Options) -> Result<Parts> {
    let root = workspace::root();
    let assets = root.join("app/assets");
    let mut fixed = BTreeMap::new();
    for (name, path) in files_under(&assets)? {
        if !matches!(name.as_str(), "boot.js" | "sw.js") {
            fixed.insert(name, read(&path)?);
        }
    }
    let mut snippets = BTreeMap::new();
    let folder = staging.join("snippets");
    if folder.exists() {
        for (name, path) in files_under(&folder)? {
            snippets.insert(format!("snippets/{name}"), read(&path)?);
        }
    }
    let mut style = String::new();
    for (name, path) in files_under(&root.join("style"))? {
        if name.ends_with(".css") {
            style += &text(&path)?;
            style.push('\n');
        }
    }
    let mut parts = BTreeMap::new();
    for module in modules {
        let name = module.file_stem().unwrap_or_default().to_string_lossy().into_owned();
        parts.insert(name, read(module)?);
    }
    let loader = staging.join(LOADER);
    Ok(Parts {
        loader: if loader.exists() { text(&loader)? } else { String::new() },
        parts,
        page: text(&root.join("index.html"))?,
        boot: text(&assets.join("boot.js"))?,
        worker: text(&assets.join("sw.js"))?,
        style,
        glue: text(&staging.join("app.js"))?,
        wasm: read(wasm)?,
        words: tables(&root.join("shared/words"))?,
        snippets,
        fixed,
        extra: options.extra.clone(),
    })
}

/// The words of each language that is not a part of the app, as the app reads them.
fn tables(folder: &Path) -> Result<BTreeMap<String, Vec<u8>>> {
    let (_, mut tables) = words::tables(folder).map_err(anyhow::Error::msg)?;
    tables.remove(words::FIRST);
    Ok(tables)
}

/// All files below a folder by their path from it, in order.
fn files_under(folder: &Path) -> Result<BTreeMap<String, PathBuf>> {
    let mut found = BTreeMap::new();
    for entry in std::fs::read_dir(folder).with_context(|| folder.display().to_string())? {
        let entry = entry?;
        let name = entry.file_name().to_string_lossy().into_owned();
        if name.starts_with('.') {
            continue;
        }
        if entry.file_type()?.is_dir() {
            for (below, path) in files_under(&entry.path())? {
                found.insert(format!("{name}/{below}"), path);
            }
        } else {
            found.insert(name, entry.path());
        }
    }
    Ok(found)
}

fn read(path: &Path) -> Result<Vec<u8>> {
    std::fs::read(path).with_context(|| path.display().to_string())
}

fn text(path: &Path) -> Result<String> {
    std::fs::read_to_string(path).with_context(|| path.display().to_string())
}

/// Writes beside the old site and swaps the two, so that a reader never sees half of one.
fn write(site: &Site, options: &Options) -> Result<()> {
    let folder = &options.folder;
    let beside = |ending: &str| folder.with_extension(ending);
    let (new, old) = (beside("new"), beside("old"));
    for leftover in [&new, &old] {
        if leftover.exists() {
            std::fs::remove_dir_all(leftover)?;
        }
    }
    std::thread::scope(|scope| {
        let writers: Vec<_> = site
            .files
            .iter()
            .map(|(name, bytes)| {
                let path = new.join(name);
                scope.spawn(move || write_file(&path, bytes, options.smallest))
            })
            .collect();
        writers.into_iter().try_for_each(|writer| match writer.join() {
            Ok(result) => result,
            Err(_) => bail!("compressing a file failed"),
        })
    })?;
    if folder.exists() {
        std::fs::rename(folder, &old)?;
    }
    std::fs::rename(&new, folder)?;
    if old.exists() {
        std::fs::remove_dir_all(&old)?;
    }
    Ok(())
}

fn write_file(path: &Path, bytes: &[u8], smallest: bool) -> Result<()> {
    if let Some(folder) = path.parent() {
        std::fs::create_dir_all(folder)?;
    }
    std::fs::write(path, bytes)?;
    let beside = |ending: &str| PathBuf::from(format!("{}.{ending}", path.display()));
    if path.extension().is_some_and(|ending| TEXTUAL.iter().any(|textual| ending == *textual)) {
        let (brotli_quality, gzip_level) = if smallest { (11, 9) } else { (2, 1) };
        std::fs::write(beside("br"), brotli(bytes, brotli_quality)?)?;
        let mut gzip =
            flate2::write::GzEncoder::new(Vec::new(), flate2::Compression::new(gzip_level));
        gzip.write_all(bytes)?;
        std::fs::write(beside("gz"), gzip.finish()?)?;
    }
    Ok(())
}
