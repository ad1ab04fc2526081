//! Heat and moisture through a build-up: pure formulas and tables.

pub mod build_up;
pub mod cautions;
pub mod condensation;
pub mod formulas;
pub mod heat_loss;
pub mod materials;
pub mod moisture;
pub mod steel_rib;
