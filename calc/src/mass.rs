//! Loads on the axles: pure formulas.
