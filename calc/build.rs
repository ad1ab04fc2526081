//! Puts the message files of all languages into tables, and their names into code.

use std::error::Error;
use std::path::{Path, PathBuf};

use words::{Catalogue, FIRST, languages};

fn main() -> Result<(), Box<dyn Error>> {
    let folder = Path::new("../shared/words");
    println!("cargo::rerun-if-changed={}", folder.display());
    println!("cargo::rerun-if-changed=build.rs");
    let out = PathBuf::from(std::env::var("OUT_DIR")?);
    let read = |tag: &str, folder: &Path| {
        Catalogue::read(tag, folder).map_err(|problems| {
            let lines: Vec<String> = problems.iter().map(ToString::to_string).collect();
            format!("the messages of {tag} cannot be read:\n{}", lines.join("\n"))
        })
    };
    let first = read(FIRST, &folder.join(FIRST))?;
    std::fs::write(out.join("words.rs"), first.rust())?;
    let mut tables = String::new();
    for (tag, folder) in languages(folder)? {
        std::fs::write(out.join(format!("{tag}.words")), first.table(&read(&tag, &folder)?))?;
        tables.push_str(&format!(
            "({tag:?}, include_bytes!(concat!(env!(\"OUT_DIR\"), \"/{tag}.words\"))),\n"
        ));
    }
    std::fs::write(out.join("tables.rs"), format!("&[\n{tables}]"))?;
    Ok(())
}
