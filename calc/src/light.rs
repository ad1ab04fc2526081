//! Lamps in a ceiling: where they go and how bright they make it.

mod arrange;
pub mod cable;
pub mod cautions;
pub mod most;
mod nearest;
pub mod photometry;
pub mod placement;
pub mod recommended;
