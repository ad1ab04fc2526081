//! What the tasks and the browser tests share: where things lie, a static server, and the browser engines of this machine.

pub mod engine;
pub mod server;
pub mod workspace;
