//! Lamps in a ceiling: where they go and how bright they make it.

pub mod cable;
pub mod cautions;
mod nearest;
pub mod photometry;
pub mod placement;
pub mod recommended;
