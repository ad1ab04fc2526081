//! What is said on every page: what is not saved, what was brought back, how well this browser keeps.

use leptos::prelude::*;

use super::html::{Html, asked, shown};
use crate::desk::{Desk, unsaved};
use crate::route::{Route, go};
use crate::storage::{Found, SHORT_OF_ROOM, SaveError, Store};
use crate::transfer::{self, Stay};

/// Under this name the device remembers what the browser said when it was asked to keep the data.
const STAY: &str = "stay";

thread_local! {
    static NEWS: RwSignal<News> = RwSignal::new(News::default());
}

/// What the stores have said.
#[derive(Clone, Default)]
struct News {
    /// Projects that were brought back from the second store.
    brought_back: Vec<String>,
    /// The second store does not take what is written.
    journal_fails: bool,
}

/// Hears of the second store that it does not take what is written, or does again.
pub fn journal_state(failing: bool) {
    NEWS.with(|news| news.update(|news| news.journal_fails = failing));
}

/// Says what was found in the second store.
pub fn tell(store: Store, found: Found) {
    NEWS.with(|news| news.update(|news| news.brought_back.extend(found.brought_back)));
    unsaved::recall(store, found.unkept);
}

/// The notices above every page.
pub fn notices(store: Store, route: ReadSignal<Route>) -> AnyView {
    let news = NEWS.with(|news| *news);
    let all = unsaved::all();
    let words = shown("notices", move |html| {
        let news = news.get();
        if !store.keeps() {
            not_kept(html, store, news.journal_fails);
        } else if news.journal_fails && matches!(route.get(), Route::Start) {
            notice(
                html,
                "status",
                "This browser takes no second copy of what you type. If it is ended by force or the battery goes flat, the last minute can be lost.",
            );
            html.raw("</div>");
        }
        if !news.brought_back.is_empty() {
            let names = quoted(&news.brought_back);
            notice(
                html,
                "status",
                &[
                    "The browser ended before it had kept everything. Brought back as last typed: ",
                    &names,
                    ".",
                ]
                .concat(),
            );
            html.button("", "seen", "", "All right");
            html.raw("</div>");
        }
        let open = route.with(|route| route.project().map(str::to_owned));
        all.with(|all| {
            for one in all {
                let id = one.project.id();
                // The open project's own notice says it; what is in the bin waits there.
                if open.as_deref() == Some(id) || store.is_deleted(id) {
                    continue;
                }
                let words = [
                    "\u{201c}",
                    one.project.name(),
                    "\u{201d} is kept in this tab only. ",
                    &one.error.to_string(),
                ];
                notice(html, "alert", &words.concat());
                html.button("", "try-again", id, "Try again");
                html.button("", "save-unsaved", id, "Save it to a file");
                if one.error == SaveError::Full && !store.deleted().is_empty() {
                    html.button("danger", "empty-bin", id, "Delete for good what was taken out");
                }
                html.link("button", &Route::Project(id.to_owned()).hash(), "Open it");
                html.raw("</div>");
            }
        });
    });
    let act = move |event: leptos::ev::MouseEvent| {
        let Some((what, with)) = asked(&event) else { return };
        match what.as_str() {
            "seen" => news.update(|news| news.brought_back.clear()),
            "try-again" => unsaved::try_again(store),
            "empty-bin" => {
                while store.forget_oldest().is_some() {}
                unsaved::try_again(store);
            }
            "save-unsaved" => {
                if let Some(one) = unsaved::find(&with) {
                    let name = transfer::file_name(one.project.name());
                    transfer::download(&name, &one.project.to_text());
                }
            }
            _ => {}
        }
    };
    view! { <div on:click=act>{words}</div> }.into_any()
}

fn notice(html: &mut Html, role: &str, words: &str) {
    html.raw("<div class=\"notice-line warning\" role=\"");
    html.raw(role);
    html.raw("\"><p>");
    html.text(words);
    html.raw("</p>");
}

fn not_kept(html: &mut Html, store: Store, journal_fails: bool) {
    notice(
        html,
        "status",
        if journal_fails {
            "This browser keeps nothing for this page (private mode, or storage is switched off). Save your project to a file before you close it."
        } else if store.is_shared() {
            "This browser refuses its usual storage; what you type is kept in its second one. Save your project to a file before you close it."
        } else {
            "This browser refuses its usual storage; what you type is kept in its second one. Use one window only, and save your project to a file before you close it."
        },
    );
    html.raw("</div>");
}

/// The notices of the open project: what could not be saved, and what another window has changed too.
pub fn of_project(desk: Desk) -> AnyView {
    let trouble = move || desk.trouble.get().map(|error| trouble(desk, &error));
    let apart = shown("notices", move |html| {
        let field = desk.apart.get();
        if field.is_empty() {
            return;
        }
        let name = desk.project.with(|project| project.name().to_owned());
        notice(
            html,
            "status",
            &[
                "Another window changed the same field at the same time (",
                &field,
                "). Both are kept: this window goes on in a copy, \u{201c}",
                &name,
                "\u{201d}, and the other one's stands beside it.",
            ]
            .concat(),
        );
        html.button("", "seen", "", "All right");
        html.raw("</div>");
    });
    let seen = move |event: leptos::ev::MouseEvent| {
        if asked(&event).is_some() {
            desk.apart.set(String::new());
        }
    };
    let short = (desk.store().keeps() && desk.store().room_used() > SHORT_OF_ROOM).then(|| {
        view! {
            <p class="notice-line warning" role="status">
                "Space is getting short on this device. "<a href="#/">"See what is largest"</a>
            </p>
        }
    });
    view! { {short}{trouble}<div on:click=seen>{apart}</div> }.into_any()
}

/// What is said where a save failed, and what can be done.
fn trouble(desk: Desk, error: &SaveError) -> AnyView {
    let words = error.to_string();
    let download = move |_| {
        let (name, text) =
            desk.project.with_untracked(|project| (project.name().to_owned(), project.to_text()));
        transfer::download(&transfer::file_name(&name), &text);
    };
    let moved = matches!(error, SaveError::Moved | SaveError::Deleted).then(|| {
        let give_way = matches!(error, SaveError::Moved).then(|| {
            view! { <button on:click=move |_| desk.give_way()>"Take the other window's"</button> }
        });
        view! {
            {give_way}
            <button on:click=move |_| match desk.save_as_copy() {
                Ok(id) => go(&Route::Project(id)),
                Err(error) => desk.trouble.set(Some(error)),
            }>"Keep both: this one as a copy"</button>
        }
    });
    let room = (matches!(error, SaveError::Full) && desk.bin_has_any()).then(|| {
        view! { <button on:click=move |_| desk.make_room()>"Delete for good what was taken out"</button> }
    });
    view! {
        <div class="notice-line warning" role="alert">
            <p>{words}</p>
            {moved}
            {room}
            <button on:click=move |_| desk.save()>"Try again"</button>
            <button on:click=download>"Save it to a file"</button>
        </div>
    }
    .into_any()
}

/// Asks the browser once to keep the data when space runs short, and remembers what it said. Some
/// browsers ask the person in turn; whatever comes of it, nothing waits for it.
pub fn ask_to_stay(store: Store, again: bool) {
    if !again && store.setting(STAY).is_some() {
        return;
    }
    // Asked once even where no answer ever comes.
    store.set_setting(STAY, "asked");
    transfer::ask_to_stay(move |stay| {
        store.set_setting(
            STAY,
            match stay {
                Stay::Promised => "yes",
                Stay::NotPromised => "no",
                Stay::NotKnown => "asked",
            },
        );
    });
}

/// Says on the start page that the browser has not promised to keep the data.
pub fn may_be_cleared(html: &mut Html, store: Store) {
    if store.setting(STAY).as_deref() == Some("no") {
        html.raw("<p class=\"help stay\">This browser has not promised to keep what is here when the device runs short of space. Save everything to a file now and then. ");
        html.button("plain", "ask-to-stay", "", "Ask the browser again");
        html.raw("</p>");
    }
}

fn quoted(names: &[String]) -> String {
    let names: Vec<String> =
        names.iter().map(|name| ["\u{201c}", name, "\u{201d}"].concat()).collect();
    names.join(", ")
}
