//! Screws and the holes for them: pure formulas and tables.

pub mod acceleration;
pub mod drill_point;
pub mod hold;
pub mod length;
pub mod screw;
pub mod sheet_steel;
pub mod steel_pilot;
pub mod window;
pub mod withdrawal;
