//! What things weigh, and the loads on the axles: pure formulas.

pub mod axles;
pub mod balance;
pub mod cautions;
pub mod densities;
