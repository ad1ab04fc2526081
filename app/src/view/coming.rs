//! What is shown while the part of the program with a project's pages is on its way.

use std::time::Duration;

use calc::words::app_common;
use leptos::prelude::*;

use super::{keys, opening, titled};
use crate::part::{self, Part};
use crate::words::text;

/// A part that comes sooner than this is not announced. [ms]
const UNTOLD: Duration = Duration::from_millis(250);

/// Whether the part is here, and if not, what of it.
#[derive(Clone, Copy, PartialEq)]
enum State {
    Untold,
    Coming,
    Missing,
    Here,
}

/// Shows what needs the part; until it is here, that it is on its way, or that it has not come and can be asked for again.
pub fn shown(page: impl Fn(Part) -> AnyView + Send + Sync + 'static) -> AnyView {
    if let Some(part) = part::here() {
        return page(part);
    }
    let state = RwSignal::new(State::Untold);
    let ask = move || {
        opening::set_working(true);
        leptos::task::spawn_local(async move {
            let came = part::fetch().await.is_ok();
            opening::set_working(false);
            let _ = state.try_set(if came { State::Here } else { State::Missing });
        });
    };
    ask();
    on_cleanup(|| opening::set_working(false));
    set_timeout(
        move || {
            // Told only where it changes: what stands here is written anew with each word.
            if state.try_get_untracked() == Some(State::Untold) {
                state.set(State::Coming);
            }
        },
        UNTOLD,
    );
    let again = move |_| {
        state.set(State::Coming);
        ask();
    };
    let view = move || match (state.get(), part::here()) {
        (State::Here, Some(part)) => page(part),
        (State::Untold | State::Here, _) => ().into_any(),
        (State::Coming, _) => waiting(text(app_common::PART_COMING), ().into_any()),
        (State::Missing, _) => {
            let button = view! { <button class="main" data-do="again" on:click=again>{text(app_common::TRY_AGAIN)}</button> };
            waiting(text(app_common::PART_MISSING), button.into_any())
        }
    };
    view.into_any()
}

fn waiting(said: &'static str, more: AnyView) -> AnyView {
    titled(text(app_common::OPENING));
    keys::focus_heading();
    view! {
        <header class="top"><a class="back" href="#/"><span aria-hidden="true">"‹ "</span>{text(app_common::ALL_PROJECTS)}</a></header>
        <main id="main" class="working">
            <h1 tabindex="-1">{text(app_common::OPENING)}</h1>
            <p role="status">{said}</p>
            {more}
        </main>
    }
    .into_any()
}
