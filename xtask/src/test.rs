//! x
use anyhow::Result;
pub struct Options;
impl Options {
    pub fn parse(_: &[String]) -> Result<Self> {
        Ok(Self)
    }
}
pub fn test(_: &Options) -> Result<()> {
    Ok(())
}
