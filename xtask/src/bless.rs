//! x
use anyhow::Result;
pub fn bless() -> Result<()> {
    Ok(())
}
