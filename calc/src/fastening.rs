//! Screws and the holes for them: pure formulas and tables.

pub mod acceleration;
pub mod drill_point;
pub mod hold;
pub mod length;
pub mod screw;
pub mod sheet_steel;
pub mod withdrawal;
