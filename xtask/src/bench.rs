//! x
use anyhow::Result;
pub fn bench() -> Result<()> {
    Ok(())
}
