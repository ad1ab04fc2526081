//! The part of the program that is fetched when a project is first opened: the start page and the stores do without it.
//!
//! The linker's output is parted at the function below (`--cfg split`, set by the build of what is published); without that all is one
//! module, and the same calls find everything in place.
#![allow(unsafe_code, reason = "what is parted is found by the names that it exports")]

use std::cell::Cell;
use std::time::Duration;

use calc::quantity::UnitSystem;
use leptos::prelude::*;

use crate::route::Route;
use crate::storage::Store;
use crate::view::{self, Elsewhere, Frame};

/// What the part knows to do.
#[derive(Clone, Copy)]
pub struct Part {
    /// Shows a project, or what came in an address.
    pub show: fn(Store, RwSignal<Elsewhere>, ReadSignal<Route>, Frame) -> AnyView,
    /// Opens the demo; gives its id, or says why it cannot be kept.
    pub demo: fn(Store, UnitSystem) -> Result<String, String>,
}

/// The part did not come: no signal, or the server is away.
pub struct Missing;

#[cfg(split)]
impl From<wasm_split_helpers::SplitLoaderError> for Missing {
    fn from(_: wasm_split_helpers::SplitLoaderError) -> Self {
        Self
    }
}

#[cfg_attr(split, wasm_split_helpers::wasm_split(project, fallible))]
fn project() -> Result<Part, Missing> {
    calc::part::is_here();
    Ok(Part { show: view::show_project, demo: view::demo::open })
}

thread_local! {
    static PART: Cell<Option<Part>> = const { Cell::new(None) };
}

/// The part, where it is here.
pub fn here() -> Option<Part> {
    PART.get()
}

/// Fetches the part; once it is here this costs nothing.
///
/// # Errors
/// It does not come. It can be asked for again.
pub async fn fetch() -> Result<Part, Missing> {
    #[cfg(split)]
    let part = project().await?;
    #[cfg(not(split))]
    let part = project()?;
    PART.set(Some(part));
    Ok(part)
}

/// The start page is there: the line is idle now.
const IDLE: Duration = Duration::from_millis(1000);

/// Fetches the part before it is asked for.
pub fn fetch_ahead() {
    let fetch = || {
        leptos::task::spawn_local(async {
            // Whoever needs it asks again, and is told.
            let _ = fetch().await;
        });
    };
    set_timeout(fetch, IDLE);
}
