//! A program in two parts (`--cfg split`): its first part keeps, lists and reads projects, but works none out, and has the words of the
//! start page alone. Until the other part is here, what needs it is left as it is.
//!
//! Without that switch all is here from the start.

#[cfg(split)]
use std::sync::OnceLock;

use crate::project::{Project, settle};
use crate::words::Words;

#[cfg(split)]
struct Later {
    settle: fn(&mut Project),
    words: Words,
}

#[cfg(split)]
static LATER: OnceLock<Later> = OnceLock::new();

/// To be called by the later part as it comes, and by nothing else: what is named here is linked to where this is called from.
pub fn is_here() {
    #[cfg(split)]
    let _ = LATER.set(Later { settle, words: Words::all_english() });
}

/// What is kept under the words of an old format is looked for among what a project gives; what cannot be found is kept on.
pub(crate) fn settled(project: &mut Project) {
    #[cfg(not(split))]
    settle(project);
    #[cfg(split)]
    if let Some(later) = LATER.get() {
        (later.settle)(project);
    }
}

/// The first language, whole; nothing where it is not here yet, or was asked for before.
pub(crate) fn whole_words() -> Option<Words> {
    #[cfg(not(split))]
    return None;
    #[cfg(split)]
    LATER.get().map(|later| later.words)
}
