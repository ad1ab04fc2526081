//! The start page: the projects on this device, a new one, the demo, and files in and out.

use calc::project::Project;
use calc::quantity::UnitSystem;
use leptos::prelude::*;
use wasm_bindgen::JsCast;

use super::html::{Html, asked, shown};
use super::versions::{field_value, large, room, size};
use crate::desk::unsaved;
use crate::route::{Part, Route, go};
use crate::storage::{Listing, ListingState, Store, new_id};
use crate::transfer::{self, Import, ImportError};

/// The project's own demo rig.
const DEMO: &str = include_str!("../../../shared/demo.json");

/// With more projects than this they can be searched.
const FEW: usize = 5;

/// The page.
pub fn start_page(store: Store) -> AnyView {
    let version = RwSignal::new(0_u32);
    let said = RwSignal::new(String::new());
    let wanted = RwSignal::new(String::new());
    let kept = Memo::new(move |_| {
        version.track();
        store.list()
    });
    let used = Memo::new(move |_| {
        version.track();
        store.room_used()
    });
    let many = Memo::new(move |_| kept.with(Vec::len) > FEW);
    let page = shown("start", move |html| {
        // The bin can change where the list does not.
        version.track();
        let wanted = if many.get() { wanted.get() } else { String::new() };
        super::start_guide::invitation(html, store);
        kept.with(|kept| projects(html, store, kept, &wanted));
        room(html, store, used.get());
        html.raw(BEGIN);
        super::notices::may_be_cleared(html, store);
        bin(html, &store.deleted());
    });
    let search = move || {
        many.get().then(|| {
            view! {
                <div class="field search">
                    <label for="search">"Search the projects"</label>
                    <input
                        id="search"
                        type="search"
                        autocomplete="off"
                        prop:value=wanted
                        on:input=move |event| wanted.set(event_target_value(&event))
                    />
                </div>
            }
        })
    };
    let act = move |event: leptos::ev::MouseEvent| {
        let Some((what, with)) = asked(&event) else { return };
        match act(store, &what, &with) {
            Ok(words) => said.set(words),
            Err(words) => said.set(words),
        }
        // There may be room by now.
        unsaved::try_again(store);
        version.update(|version| *version += 1);
    };
    let read = move |event: leptos::ev::Event| {
        let Some(input) =
            event.target().and_then(|target| target.dyn_into::<web_sys::HtmlInputElement>().ok())
        else {
            return;
        };
        let Some(file) = input.files().and_then(|files| files.get(0)) else { return };
        transfer::read_file(&file, move |read| {
            said.set(take_in(store, read));
            version.update(|version| *version += 1);
        });
        input.set_value("");
    };
    view! {
        <h1 tabindex="-1">"Battenbook"</h1>
        <p class="purpose">"What to mark, cut, mix, wire and buy, worked out from what you measured in the rig."</p>
        <p class="said" role="status">{said}</p>
        {search}
        <div on:click=act>{page}</div>
        <section class="files">
            <h2>"Files"</h2>
            <label class="button" for="import">"Open a project file"</label>
            <input id="import" class="visually-hidden" type="file" accept=".json,.txt,application/json,text/plain" on:change=read />
        </section>
        <footer>
            <p>"Everything stays on this device. Once loaded, it works without signal."</p>
            <p>"Results are estimates from your measurements. Local code, the maker's instructions and licensed trades come first."</p>
        </footer>
    }
    .into_any()
}

/// How to begin, and all projects as one file: always the same.
const BEGIN: &str = "<section class=\"begin\"><h2>Begin</h2><div class=\"pair\">\
    <button class=\"main\" data-do=\"new\" data-with=\"imperial\">New project in inches</button>\
    <button class=\"main\" data-do=\"new\" data-with=\"metric\">New project in millimetres</button>\
    <button data-do=\"demo\" data-with=\"imperial\">Open the demo in inches</button>\
    <button data-do=\"demo\" data-with=\"metric\">Open the demo in millimetres</button>\
    </div><p><button class=\"wide\" data-do=\"save-all\">Save everything to a file</button></p></section>";

fn projects(html: &mut Html, store: Store, listings: &[Listing], wanted: &str) {
    if listings.is_empty() {
        html.tag(
            "p",
            "help",
            "Nothing is kept on this device yet. The demo shows the whole way in one tap.",
        );
    }
    let wanted = small_letters(wanted.trim());
    let is_wanted = |one: &Listing| small_letters(&one.name).contains(&wanted);
    if !listings.is_empty() && !listings.iter().any(is_wanted) {
        html.tag("p", "help", "No project has that in its name.");
    }
    html.raw("<ul class=\"cards projects\">");
    for one in listings.iter().filter(|one| is_wanted(one)) {
        let beside = store.received(&one.id).is_some_and(|beside| !beside.is_empty());
        let damaged = one.state == ListingState::Fine && store.damaged(&one.id).is_some();
        let state = match one.state {
            _ if unsaved::find(&one.id).is_some() => "not saved; kept in this tab only",
            ListingState::Fine if damaged => "a damaged save of it is kept too",
            ListingState::Fine if beside => "received, beside your own",
            ListingState::Fine => large(one.chars),
            ListingState::Damaged => "cannot be read; its text is kept",
            ListingState::Newer { .. } => "saved by a newer version",
        };
        html.raw("<li><a href=\"");
        html.text(&Route::Project(one.id.clone()).hash());
        html.raw("\">");
        html.tag("span", "name", name_of(one));
        html.tag_if_any("span", "label", state);
        html.raw("</a><details class=\"more\"><summary aria-label=\"more for ");
        html.text(name_of(one));
        html.raw("\">⋯</summary><div>");
        if one.state == ListingState::Fine {
            rename(html, one);
            if beside {
                let hash = Route::Part(one.id.clone(), Part::Compare).hash();
                html.link("button", &hash, "See what differs");
            }
            html.button("", "copy", &one.id, "Copy");
            let hash = Route::Part(one.id.clone(), Part::Pass).hash();
            html.link("button", &hash, "Pass it on");
        }
        html.button("", "save", &one.id, "Save to a file");
        if damaged {
            html.button("", "save-damaged", &one.id, "Save the damaged text to a file");
            html.button("danger", "forget-damaged", &one.id, "Throw the damaged text away");
        }
        if store.before(&one.id).is_some() {
            html.button("", "save-before", &one.id, "Save the text from before the last update");
        }
        html.button("danger", "delete", &one.id, "Take out");
        if one.chars > 0 {
            html.tag("span", "note", &size(one.chars));
        }
        html.raw("</div></details></li>");
    }
    html.raw("</ul>");
}

fn rename(html: &mut Html, one: &Listing) {
    html.raw("<label class=\"whole\">Name<input type=\"text\" autocomplete=\"off\" maxlength=\"80\" id=\"name-");
    html.text(&one.id);
    html.raw("\" value=\"");
    html.text(&one.name);
    html.raw("\"></label>");
    html.button("", "rename", &one.id, "Rename");
}

/// A text in small letters, by the browser: the tables for it are there already.
fn small_letters(text: &str) -> String {
    js_sys::JsString::from(text).to_lower_case().into()
}

/// What was taken out, to be brought back or deleted for good.
fn bin(html: &mut Html, deleted: &[Listing]) {
    if deleted.is_empty() {
        return;
    }
    html.raw("<section class=\"bin\"><h2>Taken out</h2><ul>");
    for one in deleted {
        html.raw("<li>");
        html.tag("span", "name", name_of(one));
        html.button("", "restore", &one.id, "Bring back");
        html.button("danger", "forget", &one.id, "Delete for good");
        html.raw("</li>");
    }
    html.raw("</ul></section>");
}

/// The name of a kept project; its id where it is not listed.
fn name_in(store: Store, id: &str) -> String {
    let named = store.list().into_iter().find(|one| one.id == id);
    named.map_or_else(|| id.to_owned(), |one| one.name)
}

fn name_of(one: &Listing) -> &str {
    if one.name.is_empty() { "without a name" } else { &one.name }
}

/// Does what was tapped; says in words what there is to say.
fn act(store: Store, what: &str, with: &str) -> Result<String, String> {
    let system = if with == "imperial" { UnitSystem::Imperial } else { UnitSystem::Metric };
    let words = |error: crate::storage::SaveError| error.to_string();
    match what {
        "new" => begin(store, &Project::new(&new_id(), "My rig", system))?,
        "demo" | "try" => {
            let mut demo = Project::from_text(DEMO).map_err(|error| error.to_string())?;
            demo.set_id(&new_id());
            demo.set_system(system);
            begin(store, &demo)?;
            if what == "try" {
                super::start_guide::begin(store, demo.id());
            }
        }
        "try-not" => super::start_guide::end(store),
        "copy" => {
            let unsaved = unsaved::find(with).map(|one| (one.project, false));
            let loaded = store.load(with).ok().map(|loaded| (loaded.project, loaded.restored));
            if let Some((project, restored)) = unsaved.or(loaded) {
                store.save_copy(&project, "copy").map_err(words)?;
                return Ok(said_of_copy(restored));
            }
        }
        "rename" => {
            let name = field_value(&["name-", with].concat());
            if let Some(mut one) = unsaved::find(with).filter(|_| !name.trim().is_empty()) {
                one.project.set_name(name.trim());
                unsaved::put(store, one);
            } else if let Ok(mut loaded) = store.load(with)
                && !name.trim().is_empty()
            {
                loaded.project.set_name(name.trim());
                store.save(&loaded.project, loaded.revision).map_err(words)?;
                return Ok(said_of_copy(loaded.restored));
            }
        }
        "save-before" => {
            if let Some(text) = store.before(with) {
                let name = format!("{} before", name_in(store, with));
                transfer::download(&transfer::file_name(&name), &text);
            }
        }
        "save" => {
            let unsaved = unsaved::find(with).map(|one| one.project.to_text());
            // The damaged text has a button of its own.
            let before = store.load(with).ok().filter(|loaded| loaded.restored);
            let restored = unsaved.is_none() && before.is_some();
            let before = before.map(|loaded| loaded.project.to_text());
            if let Some(text) = unsaved.or(before).or_else(|| store.raw(with)) {
                transfer::download(&transfer::file_name(&name_in(store, with)), &text);
            }
            return Ok(said_of_copy(restored));
        }
        "save-damaged" => {
            if let Some(text) = store.damaged(with) {
                let name = format!("{} damaged", name_in(store, with));
                transfer::download(&transfer::file_name(&name), &text);
            }
        }
        "forget-damaged" => store.forget_damaged(with),
        "save-all" => {
            let all = transfer::export_all(store);
            transfer::download("battenbook-all.json", &all.text);
            let mut said = Vec::new();
            if !all.left_out.is_empty() {
                let names: Vec<String> = all.left_out.into_iter().map(|one| one.name).collect();
                said.push(format!(
                    "Left out, as they cannot be read: {}. Save each to its own file.",
                    names.join(", ")
                ));
            }
            if !all.restored.is_empty() {
                said.push(format!(
                    "The last save of these was damaged or is missing, so the file has the one before it: {}.",
                    all.restored.join(", ")
                ));
            }
            return Ok(said.join(" "));
        }
        "delete" => {
            let name = name_in(store, with);
            store.delete(with).map_err(words)?;
            return Ok(format!(
                "\u{201c}{name}\u{201d} is taken out; it can be brought back below."
            ));
        }
        "restore" => store.restore(with),
        "forget" => {
            unsaved::drop_one(store, with);
            store.forget(with);
        }
        "ask-to-stay" => super::notices::ask_to_stay(store, true),
        _ => {}
    }
    Ok(String::new())
}

fn begin(store: Store, project: &Project) -> Result<(), String> {
    store.save(project, 0).map_err(|error| error.to_string())?;
    super::notices::ask_to_stay(store, false);
    go(&Route::Project(project.id().to_owned()));
    Ok(())
}

/// Says it where the copy before the last save had to be used; nothing where it had not.
fn said_of_copy(restored: bool) -> String {
    let words =
        "The last save of this project was damaged or is missing: the one before it was used.";
    if restored { words.to_owned() } else { String::new() }
}

/// Keeps what a file holds, beside what is kept already, and says in words what became of it.
fn take_in(store: Store, read: Result<Import, ImportError>) -> String {
    let (projects, refused) = match read {
        Ok(Import::One(project)) => (vec![project], Vec::new()),
        Ok(Import::Many { projects, refused }) => (projects, refused),
        Err(error) => return error.to_string(),
    };
    let mut words: Vec<String> = Vec::new();
    for project in projects {
        words.push(match transfer::keep(store, project) {
            Ok(kept) if store.received(kept.project.id()).is_some() => {
                format!(
                    "Opened \u{201c}{}\u{201d} beside your own, as a copy.",
                    kept.project.name()
                )
            }
            Ok(kept) => {
                super::notices::ask_to_stay(store, false);
                format!("Opened \u{201c}{}\u{201d}.", kept.project.name())
            }
            Err(error) => error.to_string(),
        });
    }
    words.extend(refused.iter().map(|one| format!("Number {}: {}", one.number, one.reason)));
    words.join(" ")
}
