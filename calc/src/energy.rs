//! Battery and solar: pure formulas.
