//! What the tasks and the browser tests share: where things lie, hashes, a static server, and the browser engines of this machine.

pub mod engine;
pub mod hash;
pub mod server;
pub mod workspace;
