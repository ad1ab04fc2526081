//! Low-voltage conductors, drops, fuses and networks: pure formulas, tables and solvers.
