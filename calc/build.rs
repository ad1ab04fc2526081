//! Puts the message files of all languages into tables, and their names into code.

use std::error::Error;
use std::path::{Path, PathBuf};

/// The files whose messages the first part of a program in two parts can say: of the start page, of what is kept, of files that are read.
const FIRST_PART: [&str; 6] =
    ["app_common", "app_keep", "app_start", "common", "project", "reader"];

fn main() -> Result<(), Box<dyn Error>> {
    let folder = Path::new("../shared/words");
    println!("cargo::rerun-if-changed={}", folder.display());
    println!("cargo::rerun-if-changed=build.rs");
    let out = PathBuf::from(std::env::var("OUT_DIR")?);
    let (first, all) = words::tables(folder)?;
    std::fs::write(out.join("words.rs"), first.rust())?;
    std::fs::write(out.join("first.words"), first.table(&first.only(&FIRST_PART)))?;
    let mut tables = String::new();
    for (tag, table) in all {
        std::fs::write(out.join(format!("{tag}.words")), table)?;
        tables.push_str(&format!(
            "({tag:?}, include_bytes!(concat!(env!(\"OUT_DIR\"), \"/{tag}.words\"))),\n"
        ));
    }
    std::fs::write(out.join("tables.rs"), format!("&[\n{tables}]"))?;
    Ok(())
}
