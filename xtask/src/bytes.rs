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
    let sum = |name: &str, budget: usize, counts: fn(&Row) -> bool| {
        let counted = || rows.iter().filter(|row| counts(row));
        let plain: usize = counted().map(|row| row.plain).sum();
        let loaded: usize = counted().map(|row| row.loaded).sum();
        println!("{name:<34} {plain:>10} {loaded:>10}  budget {budget}");
    };
    // What the start page does without: the part that comes later, and the keeper of the copy for offline use.
    sum("until the start page can be used", START, |row| {
        !row.name.starts_with("split_") && row.name != "sw.js"
    });
    sum("all", BUDGET, |_| true);
    Ok(())
}
