//! Films, mixing, beads and the air they dry in: pure formulas.
