//! What differs between two projects, and a received project beside the one that was here.

use calc::project::{Found, Line, Part as Different, Project, compare};
use leptos::prelude::*;

use super::html::{Html, shown};
use crate::desk::Desk;
use crate::route::{Part, Route, go};
use crate::storage::{SaveError, Store};
use crate::words::{say, text};
use calc::words::{app_common, app_pass as words, app_start};

/// The most values that are written out for one part.
const MOST_LINES: usize = 60;

/// The page of a received project: what differs from the one that was here, and which is to stay.
pub fn compare_page(desk: Desk) -> AnyView {
    let store = desk.store();
    let id = desk.project.with_untracked(|project| project.id().to_owned());
    let beside = store.received(&id).filter(|beside| !store.is_deleted(beside));
    let mine = beside.and_then(|beside| store.load(&beside).ok()).map(|loaded| loaded.project);
    let Some(mine) = mine else {
        return view! {
            <h1 tabindex="-1">{text(words::NOTHING_TO_COMPARE)}</h1>
            <p>{text(words::NOTHING_TO_COMPARE_HELP)}</p>
        }
        .into_any();
    };
    let said = RwSignal::new(String::new());
    let act = move |what: fn(Desk) -> Result<String, SaveError>| match what(desk) {
        Ok(id) => go(&Route::Project(id)),
        Err(error) => said.set(error.to_string()),
    };
    let name = mine.name().to_owned();
    let differences = shown("part", move |html| {
        let parts = desk.project.with(|theirs| compare(&mine, theirs));
        differences(html, &parts, [text(words::YOURS), text(words::RECEIVED)]);
    });
    view! {
        <h1 tabindex="-1">{move || desk.project.with(|project| say(words::ReceivedName { name: project.name() }))}</h1>
        <p role="status">{say(words::ReceivedHelp { name })}</p>
        <p class="said" role="alert">{said}</p>
        <div class="choices" role="group" aria-label=text(words::WHICH_STAYS)>
            <button data-choose="mine" on:click=move |_| act(keep_mine)>{text(words::KEEP_MINE)}<span class="note">{text(words::KEEP_MINE_NOTE)}</span></button>
            <button data-choose="theirs" on:click=move |_| act(take_theirs)>{text(words::TAKE_THEIRS)}<span class="note">{text(words::TAKE_THEIRS_NOTE)}</span></button>
            <button data-choose="both" on:click=move |_| act(keep_both)>{text(words::KEEP_BOTH)}<span class="note">{text(words::KEEP_BOTH_NOTE)}</span></button>
        </div>
        <h2>{text(words::DIFFERS_RECEIVED)}</h2>
        {differences}
    }
    .into_any()
}

/// The notice above a project that was received and not yet looked at.
pub fn received_notice(store: Store, route: &Route) -> Option<AnyView> {
    let id = route.project()?.to_owned();
    let beside = store.received(&id)?;
    if matches!(route, Route::Part(_, Part::Compare)) {
        return None;
    }
    let here = RwSignal::new(true);
    let way = if beside.is_empty() || store.is_deleted(&beside) {
        view! {
            <button on:click=move |_| {
                store.settle_received(&id);
                here.set(false);
            }>{text(app_common::OK)}</button>
        }
        .into_any()
    } else {
        let hash = Route::Part(id, Part::Compare).hash();
        view! { <a class="button" href=hash>{text(app_start::SEE_DIFFERENCES)}</a> }.into_any()
    };
    let told = text(if beside.is_empty() { words::RECEIVED_KEPT } else { words::RECEIVED_COPY });
    let hidden = move || !here.get();
    Some(view! { <div class="notice-line received" role="status" hidden=hidden><p>{told}</p>{way}</div> }.into_any())
}

/// Writes what differs, part by part, as `first → other`; `names` are what the two are called.
pub fn differences(html: &mut Html, parts: &[Different], names: [&str; 2]) {
    if parts.is_empty() {
        html.tag("p", "", text(words::NO_DIFFERENCE));
    }
    for part in parts {
        html.raw("<section class=\"different\"><h3>");
        html.text(&part.title);
        html.raw("</h3>");
        let only = match part.found {
            Found::InBoth => None,
            Found::InFirst => Some(names[0]),
            Found::InOther => Some(names[1]),
        };
        if let Some(name) = only {
            html.tag("p", "note", &say(words::OnlyIn { name }));
        }
        lines(html, "", &part.inputs, names);
        lines(html, "answers-differ", &part.answers, names);
        html.raw("</section>");
    }
}

fn lines(html: &mut Html, class: &str, lines: &[Line], names: [&str; 2]) {
    if lines.is_empty() {
        return;
    }
    html.open("ul", class);
    for line in lines.iter().take(MOST_LINES) {
        html.raw("<li>");
        html.tag("span", "label", &line.label);
        html.raw(" ");
        side(html, "first", names[0], &line.first);
        html.raw(" <span aria-hidden=\"true\">→</span> ");
        side(html, "other", names[1], &line.other);
        html.raw("</li>");
    }
    if lines.len() > MOST_LINES {
        html.tag("li", "note", &say(words::AndMore { count: lines.len() - MOST_LINES }));
    }
    html.raw("</ul>");
}

fn side(html: &mut Html, class: &str, name: &str, value: &str) {
    html.tag("span", "visually-hidden", &[&say(words::Side { name }), " "].concat());
    html.tag("span", class, if value.is_empty() { "—" } else { value });
}

fn keep_mine(desk: Desk) -> Result<String, SaveError> {
    let (store, id, beside) = ends(desk)?;
    store.delete(&id)?;
    store.settle_received(&id);
    Ok(beside)
}

/// The one that was here is kept as a version first: where even that fails, nothing is changed.
fn take_theirs(desk: Desk) -> Result<String, SaveError> {
    let (store, id, beside) = ends(desk)?;
    let Ok(mine) = store.load(&beside) else { return Err(SaveError::Deleted) };
    store.keep_version(&mine.project, text(words::BEFORE_THEIRS))?;
    let mut theirs: Project = desk.project.get_untracked();
    theirs.set_id(&beside);
    store.save(&theirs, mine.revision)?;
    // From here on the received copy is a second one of what is kept.
    store.settle_received(&id);
    store.delete(&id)?;
    Ok(beside)
}

fn keep_both(desk: Desk) -> Result<String, SaveError> {
    let (store, id, _) = ends(desk)?;
    desk.change(|project| {
        let why = text(app_start::WHY_RECEIVED);
        let name = say(app_start::NamedFor { name: project.name(), why });
        project.set_name(&name);
    });
    desk.save_now();
    store.settle_received(&id);
    Ok(id)
}

/// The store, the id of the received project, and that of the one beside which it was put.
fn ends(desk: Desk) -> Result<(Store, String, String), SaveError> {
    desk.save_now();
    let store = desk.store();
    let id = desk.project.with_untracked(|project| project.id().to_owned());
    match store.received(&id) {
        Some(beside) => Ok((store, id, beside)),
        // Another tab has settled it.
        None => Err(SaveError::Moved),
    }
}
