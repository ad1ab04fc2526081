//! What differs between two projects, and a received project beside the one that was here.

use calc::project::{Found, Line, Part as Different, Project, compare};
use leptos::prelude::*;

use super::html::{Html, shown};
use crate::desk::Desk;
use crate::route::{Part, Route, go};
use crate::storage::{SaveError, Store};

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
            <h1 tabindex="-1">"Nothing to compare with"</h1>
            <p>"This project does not stand beside another of the same origin."</p>
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
        differences(html, &parts, ["yours", "received"]);
    });
    view! {
        <h1 tabindex="-1">"Received: "{move || desk.project.with(|project| project.name().to_owned())}</h1>
        <p role="status">{format!("You have a project of the same origin, \u{201c}{name}\u{201d}. It is as it was; what you received stands beside it as a copy.")}</p>
        <p class="said" role="alert">{said}</p>
        <div class="choices" role="group" aria-label="What is to stay">
            <button data-choose="mine" on:click=move |_| act(keep_mine)>"Keep mine"<span class="note">"the received one is taken out"</span></button>
            <button data-choose="theirs" on:click=move |_| act(take_theirs)>"Take theirs"<span class="note">"mine stays as a version to go back to"</span></button>
            <button data-choose="both" on:click=move |_| act(keep_both)>"Keep both"<span class="note">"as two projects"</span></button>
        </div>
        <h2>"What differs: yours → received"</h2>
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
            }>"All right"</button>
        }
        .into_any()
    } else {
        let hash = Route::Part(id, Part::Compare).hash();
        view! { <a class="button" href=hash>"See what differs"</a> }.into_any()
    };
    let words = if beside.is_empty() {
        "Received, and kept on this device."
    } else {
        "Received: a copy beside the project of the same origin that you have."
    };
    let hidden = move || !here.get();
    Some(view! { <div class="notice-line received" role="status" hidden=hidden><p>{words}</p>{way}</div> }.into_any())
}

/// Writes what differs, part by part, as `first → other`; `names` are what the two are called.
pub fn differences(html: &mut Html, parts: &[Different], names: [&str; 2]) {
    if parts.is_empty() {
        html.tag("p", "", "No input and no answer differs.");
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
            html.tag("p", "note", &format!("only in {name}"));
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
        html.tag("li", "note", &format!("and {} more", lines.len() - MOST_LINES));
    }
    html.raw("</ul>");
}

fn side(html: &mut Html, class: &str, name: &str, value: &str) {
    html.tag("span", "visually-hidden", &[name, ": "].concat());
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
    store.keep_version(&mine.project, "Before the received one was taken")?;
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
        let name = [project.name(), " (received)"].concat();
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
