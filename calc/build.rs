//! Puts the message files of all languages into tables, and their names into code.

use std::error::Error;
use std::path::{Path, PathBuf};

fn main() -> Result<(), Box<dyn Error>> {
    let folder = Path::new("../shared/words");
    println!("cargo::rerun-if-changed={}", folder.display());
    println!("cargo::rerun-if-changed=build.rs");
    let out = PathBuf::from(std::env::var("OUT_DIR")?);
    let (first, all) = words::tables(folder)?;
    std::fs::write(out.join("words.rs"), first.rust())?;
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
