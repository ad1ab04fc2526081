//! Opens a project. One that takes long to work out is worked out in steps: it is said how far it is, and it can be left.

use std::time::Duration;

use calc::project::Gradual;
use leptos::prelude::*;

use super::{keys, titled};
use crate::desk::ready;
use crate::storage::Store;
use crate::words::{say, text, words};
use calc::words::app_common;

/// A project that is worked out sooner than this is shown without a word. [ms]
const UNTOLD_MS: f64 = 250.0;

/// Work goes on for so long before the page is painted again. [ms]
const SLICE_MS: f64 = 60.0;

/// How far it is.
#[derive(Clone, PartialEq)]
enum State {
    Working(usize, usize),
    Done,
}

/// Works a project out as far as it takes long, then shows it.
pub fn opened(
    store: Store,
    id: &str,
    then: impl Fn(&str) -> AnyView + Send + Sync + 'static,
) -> AnyView {
    // What cannot be read has its own page.
    let Ok(mut loaded) = store.load(id) else { return then(id) };
    loaded.project.set_words(words());
    let mut gradual = Gradual::new(&loaded.project);
    if !go_on(&mut gradual, UNTOLD_MS) {
        ready::put(gradual.so_far());
        return then(id);
    }
    let name = loaded.project.name().to_owned();
    let (done, all) = gradual.progress();
    let state = RwSignal::new(State::Working(done, all));
    let work = StoredValue::new(Some(gradual));
    set_working(true);
    on_cleanup(|| set_working(false));
    next_slice(state, work);
    let id = id.to_owned();
    let is_done = Memo::new(move |_| state.with(|state| *state == State::Done));
    let page = move || {
        if is_done.get() {
            return then(&id);
        }
        titled(text(app_common::OPENING));
        keys::focus_heading();
        let part = move || match state.get() {
            State::Working(done, all) => done as f64 / all.max(1) as f64,
            State::Done => 1.0,
        };
        view! {
            <header class="top"><a class="back" href="#/"><span aria-hidden="true">"‹ "</span>{text(app_common::ALL_PROJECTS)}</a></header>
            <main id="main" class="working">
                <h1 tabindex="-1">{say(app_common::WorkingOut { name: name.as_str() })}</h1>
                <p>{text(app_common::WORKING_OUT_HELP)}</p>
                <p><progress aria-label=text(app_common::DONE) prop:value=part></progress></p>
                <p role="status">{move || say(app_common::DonePercent { percent: (part() * 100.0) as u32 })}</p>
                <p><a class="button" data-stop="" href="#/">{text(app_common::STOP)}</a></p>
            </main>
        }
        .into_any()
    };
    page.into_any()
}

/// Steps for so long; says whether there is more to do.
fn go_on(gradual: &mut Gradual, for_ms: f64) -> bool {
    let end = js_sys::Date::now() + for_ms;
    while gradual.step() {
        if js_sys::Date::now() > end {
            return true;
        }
    }
    false
}

fn next_slice(state: RwSignal<State>, work: StoredValue<Option<Gradual>>) {
    set_timeout(
        move || {
            // Whoever has left the page has left the work too.
            let more = work.try_update_value(|work| {
                let gradual = work.as_mut()?;
                let more = go_on(gradual, SLICE_MS);
                Some((more, gradual.progress()))
            });
            let Some(Some((more, (done, all)))) = more else { return };
            if more {
                state.set(State::Working(done, all));
                next_slice(state, work);
                return;
            }
            ready::put(work.try_update_value(Option::take).flatten().and_then(Gradual::so_far));
            set_working(false);
            state.set(State::Done);
        },
        Duration::ZERO,
    );
}

/// Tells the boot script that what is painted is not the page yet that was asked for.
pub(super) fn set_working(working: bool) {
    let Some(root) = document().document_element() else { return };
    // Where it cannot be told, a page counts as shown a little too early.
    let _ = if working {
        root.set_attribute("data-working", "")
    } else {
        root.remove_attribute("data-working")
    };
}
