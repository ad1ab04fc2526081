//! Screws and the holes for them: pure formulas and tables.
