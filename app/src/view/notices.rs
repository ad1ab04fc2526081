//! What is said on every page: what is not saved, what was brought back, how well this browser keeps.

use leptos::prelude::*;

use super::html::{Html, asked, shown};
use crate::desk::{Desk, unsaved};
use crate::route::{Route, go};
use crate::storage::{Found, SHORT_OF_ROOM, SaveError, Store};
use crate::transfer::{self, Stay};
use crate::words::{self, say, text};
use calc::words::app_common;

/// Under this name the device remembers what the browser said when it was asked to keep the data.
const STAY: &str = "stay";

thread_local! {
    /// Counted, not of the page that asks first: it outlives every page.
    static NEWS: ArcRwSignal<News> = ArcRwSignal::new(News::default());
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
    let news = NEWS.with(Clone::clone);
    let all = unsaved::all();
    let said = news.clone();
    let words = shown("notices", move |html| {
        language(html, store);
        let news = said.get();
        if !store.keeps() {
            not_kept(html, store, news.journal_fails);
        } else if news.journal_fails && matches!(route.get(), Route::Start) {
            notice(html, "status", text(app_common::NO_SECOND_COPY));
            html.raw("</div>");
        }
        if !news.brought_back.is_empty() {
            let names = quoted(&news.brought_back);
            notice(html, "status", &say(app_common::BroughtBack { names }));
            html.button("", "seen", "", text(app_common::OK));
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
                let name = one.project.name();
                let error = one.error.to_string();
                notice(html, "alert", &say(app_common::OnlyInTab { name, error }));
                html.button("", "try-again", id, text(app_common::TRY_AGAIN));
                html.button("", "save-unsaved", id, text(app_common::SAVE_TO_FILE));
                if one.error == SaveError::Full && !store.deleted().is_empty() {
                    html.button("danger", "empty-bin", id, text(app_common::EMPTY_TRASH));
                }
                html.link(
                    "button",
                    &Route::Project(id.to_owned()).hash(),
                    text(app_common::OPEN_IT),
                );
                html.raw("</div>");
            }
        });
    });
    let act = move |event: leptos::ev::MouseEvent| {
        let Some((what, with)) = asked(&event) else { return };
        match what.as_str() {
            "language" => words::choose(store, &with),
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

/// The device's own language on offer; or that a language could not be had.
fn language(html: &mut Html, store: Store) {
    let missing = words::missing().get();
    if !missing.is_empty() {
        let language = words::own_name(missing);
        notice(html, "alert", &say(app_common::LanguageMissing { language }));
        html.button("", "language", missing, text(app_common::TRY_AGAIN));
        let stay = words::own_name(words::words().tag());
        let stay = say(app_common::LanguageStay { language: stay });
        html.button("", "language", words::words().tag(), &stay);
        html.raw("</div>");
    } else if let Some(tag) = words::on_offer(store) {
        let (offer, take) = match tag {
            "es" => (app_common::OFFER_ES, app_common::OFFER_ES_TAKE),
            "en-GB" => (app_common::OFFER_GB, app_common::OFFER_GB_TAKE),
            _ => (app_common::OFFER_EN, app_common::OFFER_EN_TAKE),
        };
        html.raw("<div class=\"notice-line\" role=\"status\" lang=\"");
        html.raw(tag);
        html.raw("\"><p>");
        html.text(text(offer));
        html.raw("</p>");
        html.button("", "language", tag, text(take));
        let stay = words::words().tag();
        let language = words::own_name(stay);
        html.button("", "language", stay, &say(app_common::LanguageStay { language }));
        html.raw("</div>");
    }
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
            text(app_common::KEEPS_NOTHING)
        } else if store.is_shared() {
            text(app_common::SECOND_STORE)
        } else {
            text(app_common::SECOND_STORE_ONE_WINDOW)
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
        notice(html, "status", &say(app_common::Apart { field, name }));
        html.button("", "seen", "", text(app_common::OK));
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
                {text(app_common::SHORT_OF_ROOM)}" "<a href="#/">{text(app_common::SEE_LARGEST)}</a>
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
            view! { <button on:click=move |_| desk.give_way()>{text(app_common::TAKE_THEIRS)}</button> }
        });
        view! {
            {give_way}
            <button on:click=move |_| match desk.save_as_copy() {
                Ok(id) => go(&Route::Project(id)),
                Err(error) => desk.trouble.set(Some(error)),
            }>{text(app_common::KEEP_BOTH)}</button>
        }
    });
    let room = (matches!(error, SaveError::Full) && desk.bin_has_any()).then(|| {
        view! { <button on:click=move |_| desk.make_room()>{text(app_common::EMPTY_TRASH)}</button> }
    });
    view! {
        <div class="notice-line warning" role="alert">
            <p>{words}</p>
            {moved}
            {room}
            <button on:click=move |_| desk.save()>{text(app_common::TRY_AGAIN)}</button>
            <button on:click=download>{text(app_common::SAVE_TO_FILE)}</button>
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
        html.raw("<p class=\"help stay\">");
        html.text(text(app_common::MAY_BE_CLEARED));
        html.raw(" ");
        html.button("plain", "ask-to-stay", "", text(app_common::ASK_AGAIN));
        html.raw("</p>");
    }
}

fn quoted(names: &[String]) -> String {
    let names = names.iter().map(|name| say(app_common::Quoted { name: name.as_str() }));
    names.collect::<Vec<_>>().join(", ")
}
