//! What was worked out of a project before it is opened, to be taken over by its desk.

use std::cell::RefCell;
use std::sync::Arc;

use calc::project::Evaluation;

thread_local! {
    static READY: RefCell<Option<Arc<Evaluation>>> = const { RefCell::new(None) };
}

/// Puts it down for the next desk.
pub fn put(evaluation: Option<Arc<Evaluation>>) {
    READY.set(evaluation);
}

/// Takes it, once.
pub fn take() -> Option<Arc<Evaluation>> {
    READY.take()
}
