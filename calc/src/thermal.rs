//! Heat and moisture through a build-up: pure formulas and tables.
