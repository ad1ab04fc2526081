//! Setting out, boards and cut plans: pure formulas and solvers.
//!
//! Lengths are f64 in mm, as every name says. What can fail checks its numbers and gives typed errors; the plain formulas take
//! finite numbers, which is all that a measured text can give.

pub mod boards;
pub mod cautions;
pub mod courses;
pub mod cut_stock;
pub mod joints;
pub mod lumber;
pub mod margin;
pub mod moisture;
pub mod setting_out;
pub mod squareness;
pub mod stations;
