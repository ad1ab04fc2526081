//! Lamps in a ceiling: where they go and how bright they make it.
