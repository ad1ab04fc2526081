//! Battery and solar: pure formulas.

pub mod battery_fuse;
pub mod battery_voltage;
pub mod budget;
pub mod cautions;
pub mod charging;
pub mod inverter;
pub mod peukert;
pub mod roof;
pub mod solar;
pub mod string;
pub mod sun;
pub mod water;
