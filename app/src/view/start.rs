//! The start page: the projects on this device, a new one, the demo, and files in and out.

use calc::project::Project;
use calc::quantity::UnitSystem;
use leptos::prelude::*;
use wasm_bindgen::JsCast;

use super::html::{Html, asked, shown};
use crate::route::{Route, go};
use crate::storage::{Listing, ListingState, Store, new_id};
use crate::transfer::{self, Import, ImportError};

/// The project's own demo rig.
const DEMO: &str = include_str!("../../../shared/demo.json");

/// The page.
pub fn start_page(store: Store) -> AnyView {
    let version = RwSignal::new(0_u32);
    let said = RwSignal::new(String::new());
    let page = shown("start", move |html| {
        version.track();
        super::start_guide::invitation(html, store);
        projects(html, store);
        html.raw(BEGIN);
        bin(html, &store.deleted());
    });
    let act = move |event: leptos::ev::MouseEvent| {
        let Some((what, with)) = asked(&event) else { return };
        match act(store, &what, &with) {
            Ok(words) => said.set(words),
            Err(words) => said.set(words),
        }
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
        <div on:click=act>{page}</div>
        <section class="files">
            <h2>"Files"</h2>
            <label class="button" for="import">"Open a project file"</label>
            <input id="import" class="visually-hidden" type="file" accept=".json,application/json" on:change=read />
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

fn projects(html: &mut Html, store: Store) {
    let listings = store.list();
    if listings.is_empty() {
        html.tag(
            "p",
            "help",
            "Nothing is kept on this device yet. The demo shows the whole way in one tap.",
        );
    }
    html.raw("<ul class=\"cards projects\">");
    for one in &listings {
        let damaged = one.state == ListingState::Fine && store.damaged(&one.id).is_some();
        let state = match one.state {
            ListingState::Fine if damaged => "a damaged save of it is kept too",
            ListingState::Fine => "",
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
            html.button("", "copy", &one.id, "Copy");
        }
        html.button("", "save", &one.id, "Save to a file");
        if damaged {
            html.button("", "save-damaged", &one.id, "Save the damaged text to a file");
            html.button("danger", "forget-damaged", &one.id, "Throw the damaged text away");
        }
        html.button("danger", "delete", &one.id, "Take out");
        html.raw("</div></details></li>");
    }
    html.raw("</ul>");
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
            if let Ok(loaded) = store.load(with) {
                let mut copy = loaded.project;
                copy.set_id(&new_id());
                copy.set_name(&format!("{} (copy)", copy.name()));
                store.save(&copy, 0).map_err(words)?;
            }
        }
        "save" => {
            if let Some(text) = store.raw(with) {
                transfer::download(&transfer::file_name(&name_in(store, with)), &text);
            }
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
            let names: Vec<String> = all.left_out.into_iter().map(|one| one.name).collect();
            if !names.is_empty() {
                return Err(format!(
                    "Left out, as they cannot be read: {}. Save each to its own file.",
                    names.join(", ")
                ));
            }
        }
        "delete" => store.delete(with).map_err(words)?,
        "restore" => store.restore(with),
        "forget" => store.forget(with),
        _ => {}
    }
    Ok(String::new())
}

fn begin(store: Store, project: &Project) -> Result<(), String> {
    store.save(project, 0).map_err(|error| error.to_string())?;
    // Some browsers ask the person; whatever the answer, the project is saved.
    transfer::ask_to_stay(|_| {});
    go(&Route::Project(project.id().to_owned()));
    Ok(())
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
            Ok(kept) => format!("Opened \u{201c}{}\u{201d}.", kept.project.name()),
            Err(error) => error.to_string(),
        });
    }
    words.extend(refused.iter().map(|one| format!("Number {}: {}", one.number, one.reason)));
    words.join(" ")
}
