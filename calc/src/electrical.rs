//! Low-voltage conductors, drops, fuses and networks: pure formulas, tables and solvers.
//!
//! Quantities are plain `f64` with the unit at the end of the name (`_v`, `_a`, `_w`, `_ohm`,
//! `_m`, `_mm2`, `_c`), since the solvers mix them in every line. Every public function takes any
//! number: what is not finite or out of range comes back as a typed error that says what is right.

pub mod ampacity;
pub mod charging;
pub mod colours;
pub mod conductor;
pub mod conductor_text;
mod copper_search;
mod copper_tables;
pub mod drop;
pub mod fuse;
pub mod least_copper;
pub mod least_size;
pub mod loom;
pub mod network;
mod open_problem;
pub mod range;
pub mod run_formulas;
pub mod sources;
pub mod splice;
pub mod tree;
pub mod wanted;
pub mod wire;

#[cfg(test)]
pub(crate) mod published_networks;
