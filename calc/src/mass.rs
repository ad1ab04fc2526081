//! Loads on the axles: pure formulas.

pub mod axles;
pub mod cautions;
pub mod densities;
