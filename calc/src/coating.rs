//! Films, mixing, beads and the air they dry in: pure formulas.

pub mod air;
pub mod bead;
pub mod cautions;
pub mod climate;
pub mod containers;
pub mod film;
pub mod gap;
pub mod mixing;
pub mod purchase;
pub mod range;
pub mod schedule;
pub mod surface;
pub mod verdict;
