//! What a person sees: the frame around every page, and the pages.

pub mod add;
pub mod aloud;
pub mod awake;
pub mod bench;
pub mod body;
pub mod book;
pub mod buy;
pub mod checks;
pub mod coming;
pub mod compare;
pub mod cuts;
pub mod demo;
pub mod dom;
pub mod drawing;
pub mod editors;
pub mod form;
pub mod get;
pub mod html;
pub mod keys;
pub mod marks;
pub mod menu;
pub mod nav;
pub mod notices;
pub mod offers;
pub mod opening;
mod pad;
pub mod page;
pub mod pass;
pub mod project;
pub mod report;
pub mod sheet;
pub mod start;
pub mod start_guide;
pub mod taking_in;
pub mod tape;
pub mod templates;
pub mod ticks;
pub mod tree;
pub mod unroll;
pub mod versions;
pub mod whatif;

use calc::project::SheetEntry;
use calc::sheet as sheets;
use leptos::prelude::*;

use crate::desk::{Desk, unsaved};
use crate::route::{Part, Route, follow_hash, go_instead};
use crate::storage::{FailureReason, LoadFailure, Store};
use crate::transfer;
use crate::words::{self, say, text};
use calc::words::app_common;
use dom::elements;

/// What another tab saved last.
#[derive(Clone, Default)]
pub struct Elsewhere {
    /// Counts up: the same project may be saved again.
    number: u32,
    /// The project's id; empty where everything was cleared.
    id: String,
}

/// What stands around a page: it is kept while the pages in it change.
#[derive(Clone, PartialEq)]
pub enum Frame {
    /// The start page.
    Start,
    /// What came in the address.
    Get(String),
    /// A project, by its id.
    Project(String),
}

/// The whole app: the frame, and in it the page that the address names.
#[component]
pub fn App(
    /// Where projects are kept.
    store: Store,
) -> impl IntoView {
    let route = follow_hash();
    let elsewhere = RwSignal::new(Elsewhere::default());
    store.watch(move |id| {
        elsewhere.update(|last| *last = Elsewhere { number: last.number + 1, id })
    });
    menu::apply_theme(store);
    keys::steady_taps();
    keys::follow_what_is_seen();
    let frame = Memo::new(move |_| {
        route.with(|route| match route {
            Route::Get(data) => Frame::Get(data.clone()),
            route => route.project().map_or(Frame::Start, |id| Frame::Project(id.to_owned())),
        })
    });
    let all = move || {
        view! {
            <a class="skip" href="#main" on:click=|event| {
                event.prevent_default();
                keys::focus_heading();
            }>{text(app_common::SKIP)}</a>
            {notices::notices(store, route)}
            {move || match frame.get() {
                Frame::Start => {
                    titled(text(app_common::PROJECTS));
                    view! {
                        <header class="top">{menu::theme_button(store)}</header>
                        <main id="main">{start::start_page(store)}</main>
                    }
                    .into_any()
                }
                other => coming::shown(move |part| (part.show)(store, elsewhere, route, other.clone())),
            }}
        }
        .into_any()
    };
    // In another language everything is another text: it is drawn anew.
    move || {
        words::follow();
        all()
    }
}

/// Shows what the part that comes later knows to show.
pub fn show_project(
    store: Store,
    elsewhere: RwSignal<Elsewhere>,
    route: ReadSignal<Route>,
    frame: Frame,
) -> AnyView {
    match frame {
        Frame::Start => ().into_any(),
        Frame::Get(data) => {
            titled(text(app_common::RECEIVED));
            get::get_page(store, data)
        }
        Frame::Project(id) => {
            opening::opened(store, &id, move |id| open_project(store, elsewhere, route, id))
        }
    }
}

fn open_project(
    store: Store,
    elsewhere: RwSignal<Elsewhere>,
    route: ReadSignal<Route>,
    id: &str,
) -> AnyView {
    let (desk, restored) = match unsaved::find(id) {
        Some(one) => (Desk::resume(store, one), false),
        None => match store.load(id) {
            Ok(loaded) => (Desk::new(store, loaded.project, loaded.revision), loaded.restored),
            Err(failure) => return cannot_open(id, failure),
        },
    };
    let restored = restored.then(|| {
        let damaged = store.damaged(id).is_some();
        let said = if damaged { app_common::RESTORED_DAMAGED } else { app_common::RESTORED };
        view! { <p class="notice-line warning" role="status">{text(said)}</p> }
    });
    follow(elsewhere, desk, id);
    book::follow_printing(store, desk, route);
    let page = move || {
        let page = match route.get() {
            Route::Start | Route::Get(_) => return ().into_any(),
            Route::Project(_) => project::project_page(desk),
            Route::Part(_, Part::Body) => body::body_page(desk),
            Route::Part(_, Part::Add) => add::add_page(desk),
            Route::Part(_, Part::Buy) => buy::buy_page(desk),
            Route::Line(_, key) => buy::line_page(desk, &key),
            Route::Part(_, Part::Marks) => marks::marks_page(desk),
            Route::Bench(_, sheet) => bench::bench_page(desk, &sheet),
            Route::Part(_, Part::Cuts) => cuts::cuts_page(desk),
            Route::Part(_, Part::Pass) => pass::pass_page(desk),
            Route::Part(_, Part::Versions) => versions::versions_page(desk),
            Route::Part(_, Part::Compare) => compare::compare_page(desk),
            Route::Version(_, number) => versions::version_page(desk, number),
            Route::Part(_, Part::Book) => book::book_page(store, desk),
            Route::Part(_, Part::Today) => book::today_page(store, desk),
            Route::Sheet(_, sheet) => sheet::sheet_page(desk, &sheet),
            Route::Templates(_, sheet) => templates::templates_page(store, desk, &sheet),
        };
        titled(&desk.project.with_untracked(|project| project.name().to_owned()));
        keys::focus_heading();
        page
    };
    let back = move || match route.get() {
        Route::Start | Route::Get(_) | Route::Project(_) => {
            (Route::Start.hash(), text(app_common::ALL_PROJECTS).to_owned())
        }
        Route::Version(id, _) => {
            (Route::Part(id, Part::Versions).hash(), text(app_common::VERSIONS).to_owned())
        }
        Route::Templates(id, sheet) => {
            let title = desk.project.with(|project| {
                project.sheet(&sheet).map_or_else(String::new, |sheet| title_of(&sheet))
            });
            (Route::Sheet(id, sheet).hash(), title)
        }
        Route::Line(id, _) => {
            (Route::Part(id, Part::Buy).hash(), text(app_common::BUY_LIST).to_owned())
        }
        Route::Bench(id, _) => {
            (Route::Part(id, Part::Marks).hash(), text(app_common::MARK_LIST).to_owned())
        }
        Route::Part(id, _) | Route::Sheet(id, _) => {
            (Route::Project(id).hash(), desk.project.with(|project| project.name().to_owned()))
        }
    };
    view! {
        <header class="top">
            <a class="back" href=move || back().0><span aria-hidden="true">"‹ "</span><span class="where">{move || back().1}</span></a>
            <button aria-label=text(app_common::UNDO) disabled=move || !desk.steps().0 on:click=move |_| desk.undo()>"↶"</button>
            <button aria-label=text(app_common::REDO) disabled=move || !desk.steps().1 on:click=move |_| desk.redo()>"↷"</button>
            {menu::menu(store, desk)}
        </header>
        {restored}
        {move || compare::received_notice(store, &route.get())}
        {notices::of_project(desk)}
        {start_guide::steps(store, desk, route)}
        <main id="main">{page}</main>
        {nav::places(desk, route)}
        {pad::pad()}
        <div id="paper" class="paper"></div>
    }
    .into_any()
}

/// Keeps the open project in step with other tabs, and saves it before the page goes away.
fn follow(elsewhere: RwSignal<Elsewhere>, desk: Desk, id: &str) {
    let id = id.to_owned();
    Effect::new(move |before: Option<()>| {
        let changed = elsewhere.get();
        // The first run only tells what happened before this project was opened.
        if before.is_some() && (changed.id == id || changed.id.is_empty()) {
            desk.catch_up();
        }
    });
    // Where both windows changed one field, this one goes on in a copy: at the same place there.
    let opened = desk.project.with_untracked(|project| project.id().to_owned());
    Effect::new(move |_| {
        let now = desk.project.with(|project| project.id().to_owned());
        if now != opened {
            go_on_in(opened.clone(), now);
        }
    });
    let hide = window_event_listener_untyped("pagehide", move |_| desk.save_now());
    let keys = window_event_listener(leptos::ev::keydown, move |event| {
        if (event.ctrl_key() || event.meta_key()) && event.key().eq_ignore_ascii_case("z") {
            event.prevent_default();
            if event.shift_key() { desk.redo() } else { desk.undo() }
        }
    });
    on_cleanup(move || {
        hide.remove();
        keys.remove();
    });
}

/// How often it is looked whether a field is left. [ms]
const LOOK_MS: u64 = 400;

/// Goes to the same page of the copy that this window goes on in. While a field is typed into, what is
/// typed goes into the copy already, and only the address waits: the page must not be made anew under
/// the fingers.
fn go_on_in(before: String, now: String) {
    if dom::typing() {
        let later = move || go_on_in(before, now);
        set_timeout(later, std::time::Duration::from_millis(LOOK_MS));
        return;
    }
    let hash = window().location().hash().unwrap_or_default();
    let prefix = Route::Project(before).hash();
    // Whoever went elsewhere meanwhile stays there.
    if let Some(rest) = hash.strip_prefix(&prefix) {
        go_instead(&Route::from_hash(&[&Route::Project(now).hash(), rest].concat()));
    }
}

/// A project that cannot be opened: why, and its text to take away.
fn cannot_open(id: &str, failure: LoadFailure) -> AnyView {
    titled(text(app_common::CANNOT_OPEN));
    keys::focus_heading();
    let words = match failure.reason {
        FailureReason::Missing => text(app_common::MISSING_HERE).to_owned(),
        FailureReason::Newer { .. } => text(app_common::SAVED_BY_NEWER).to_owned(),
        FailureReason::Damaged(error) => say(app_common::Unreadable { error: error.message() }),
    };
    let download = failure.raw.map(|raw| {
        let name = format!("{id}.battenbook.json");
        view! { <button on:click=move |_| {
            transfer::download(&name, &raw);
        }>{text(app_common::SAVE_ITS_TEXT)}</button> }
    });
    view! {
        <header class="top"><a class="back" href="#/"><span aria-hidden="true">"‹ "</span>{text(app_common::ALL_PROJECTS)}</a></header>
        <main id="main"><h1 tabindex="-1">{text(app_common::CANNOT_OPEN)}</h1><p>{words}</p>{download}</main>
    }
    .into_any()
}

/// The title of a sheet: its own, else that of its kind.
fn title_of(sheet: &SheetEntry<'_>) -> String {
    match (sheet.title(), sheet.kind().and_then(sheets::find)) {
        ("", Some(kind)) => kind.title.say(words::words()).to_owned(),
        ("", None) => sheet.id(),
        (title, _) => title.to_owned(),
    }
}

/// Brings an element into sight and puts the focus on it.
fn show(id: &str) {
    let Some(element) = document().get_element_by_id(id) else { return };
    dom::unfold(&element);
    element.scroll_into_view();
    dom::focus(&element);
}

/// Puts the focus back on the element with this attribute after its part was written anew.
fn focus_again(attribute: &'static str, value: &str) {
    let value = value.to_owned();
    dom::move_focus_soon(move || {
        let all = elements(None, &format!("[{attribute}]"));
        let same = |one: &&web_sys::Element| one.get_attribute(attribute).as_ref() == Some(&value);
        if let Some(element) = all.iter().find(same) {
            dom::unfold(element);
            dom::focus(element);
        }
    });
}

fn titled(page: &str) {
    document().set_title(&say(app_common::Titled { page }));
}
