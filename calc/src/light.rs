//! Lamps in a ceiling: where they go and how bright they make it.

mod nearest;
pub mod photometry;
pub mod placement;
pub mod recommended;
