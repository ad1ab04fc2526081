//! What is seen: the pages and the pictures on them.

pub mod drawing;
pub mod tape;
