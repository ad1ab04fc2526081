//! The bytes of the site against the budget.

use crate::build;
use crate::page::Site;
use anyhow::Result;
use xtask::server;

/// What may be loaded until the start page can be used, in bytes after brotli.
pub const START: usize = 120_000;
/// What may be loaded in all, for use without signal.
pub const BUDGET: usize = 500_000;

/// A file's bytes, plain and as a browser loads them.
pub struct Row {
    /// Its name.
    pub name: String,
    /// Plain.
    pub plain: usize,
    /// After brotli, or plain where that is what the host sends.
    pub loaded: usize,
}

/// What a first visit loads.
pub fn first_visit(site: &Site) -> Result<Vec<Row>> {
    let rows = site.first_visit.iter().filter_map(|name| site.files.get_key_value(name));
    rows.map(|(name, bytes)| {
        Ok(Row { name: name.clone(), plain: bytes.len(), loaded: build::brotli(bytes, 11)?.len() })
    })
    .collect()
}

/// Prints the table of a first visit.
pub fn print_table(site: &Site) -> Result<()> {
    let rows = first_visit(site)?;
    println!("{:<34} {:>10} {:>10}", "first visit", "bytes", "brotli");
    for row in &rows {
        let mark = if server::is_hashed(&row.name) { "" } else { "  asked for anew at each visit" };
        println!("{:<34} {:>10} {:>10}{mark}", row.name, row.plain, row.loaded);
    }
    let plain: usize = rows.iter().map(|row| row.plain).sum();
    let loaded: usize = rows.iter().map(|row| row.loaded).sum();
    let later = |row: &&Row| row.name.starts_with("split_") || row.name == "sw.js";
    let (mut first, mut first_plain) = (loaded, plain);
    for row in rows.iter().filter(later) {
        first -= row.loaded;
        first_plain -= row.plain;
    }
    println!(
        "{:<34} {first_plain:>10} {first:>10}  budget {START}",
        "until the start page can be used"
    );
    println!("{:<34} {plain:>10} {loaded:>10}  budget {BUDGET}", "all");
    Ok(())
}
