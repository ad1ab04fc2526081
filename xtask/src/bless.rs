//! Accepts the reports as they are now as the golden ones.

use crate::tools;
use anyhow::Result;

/// Runs calc's tests with insta writing every snapshot, and takes away those that no test asks for any more.
pub fn bless() -> Result<()> {
    let calc: &[&str] = &["--package", "calc", "--features", "json"];
    for of in [calc, &["--package", "app", "--lib", "drawing::kept"]] {
        tools::run(
            tools::cargo().args(["test", "--no-fail-fast"]).args(of).env("INSTA_UPDATE", "always"),
        )?;
    }
    println!(
        "the golden reports and drawings are as the code has them now: review them with `git diff` before you commit"
    );
    Ok(())
}
