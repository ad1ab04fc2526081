//! Trimming round a roof opening: pure formulas.

pub mod cautions;
pub mod trim;
