//! What goes into the holes above sunk screws.

use std::f64::consts::PI;

use uom::si::f64::{Length, Volume};

use crate::coating::gap::VOLUMES;
use crate::formula::formula;

formula! {
    /// Filler for equal holes, as wide at the bottom as at the top.
    FilledHoles: "V = n · π / 4 · d² · h", &VOLUMES;
    |of| PI / 4.0 * of.diameter * of.diameter * of.depth * f64::from(of.holes) => Volume as volume;
    /// How many.
    "n" as count: holes: u32,
    /// Across a hole.
    "d²" as small_squared: diameter: Length,
    /// How deep it is.
    "h" as small: depth: Length,
}
