//! Setting out, boards and cut plans: pure formulas and solvers.

pub mod error_growth;
