//! Trimming round a roof opening: pure formulas.
