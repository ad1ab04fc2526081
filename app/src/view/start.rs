//! The start page: the projects on this device, a new one, the demo, and files in and out.

use calc::project::Project;
use calc::quantity::UnitSystem;
use leptos::prelude::*;
use wasm_bindgen::JsCast;

use crate::route::{Route, go};
use crate::storage::{Listing, ListingState, Store, new_id};
use crate::transfer::{self, Import, ImportError};

/// The project's own demo rig.
const DEMO: &str = include_str!("../../../shared/demo.json");

/// The page.
pub fn start_page(store: Store) -> AnyView {
    let version = RwSignal::new(0_u32);
    let said = RwSignal::new(String::new());
    let changed = move || version.update(|version| *version += 1);
    let projects = move || {
        version.track();
        let listings = store.list();
        if listings.is_empty() {
            return view! { <p class="help">"Nothing is kept on this device yet. The demo shows the whole way in one tap."</p> }
                .into_any();
        }
        let cards = listings.iter().map(|one| card(store, one, said, changed)).collect_view();
        view! { <ul class="cards projects">{cards}</ul> }.into_any()
    };
    let bin = move || {
        version.track();
        let deleted = store.deleted();
        (!deleted.is_empty()).then(|| {
            let lines = deleted
                .into_iter()
                .map(|one| {
                    let back = one.id.clone();
                    let gone = one.id;
                    view! {
                        <li>
                            <span class="name">{one.name}</span>
                            <button on:click=move |_| {
                                store.restore(&back);
                                changed();
                            }>"Bring back"</button>
                            <button class="danger" on:click=move |_| {
                                store.forget(&gone);
                                changed();
                            }>"Delete for good"</button>
                        </li>
                    }
                })
                .collect_view();
            view! { <section class="bin"><h2>"Taken out"</h2><ul>{lines}</ul></section> }
        })
    };
    let begin = move |project: Project| match store.save(&project, 0) {
        Ok(_) => go(&Route::Project(project.id().to_owned())),
        Err(error) => said.set(error.to_string()),
    };
    let new = move |system| begin(Project::new(&new_id(), "My rig", system));
    let demo = move |system| match Project::from_text(DEMO) {
        Ok(mut project) => {
            project.set_id(&new_id());
            project.set_system(system);
            begin(project);
        }
        Err(error) => said.set(error.to_string()),
    };
    view! {
        <h1 tabindex="-1">"Battenbook"</h1>
        <p class="purpose">"What to mark, cut, mix, wire and buy, worked out from what you measured in the rig."</p>
        {projects}
        <section class="begin">
            <h2>"Begin"</h2>
            <div class="pair">
                <button class="main" data-new="imperial" on:click=move |_| new(UnitSystem::Imperial)>"New project in inches"</button>
                <button class="main" data-new="metric" on:click=move |_| new(UnitSystem::Metric)>"New project in millimetres"</button>
                <button data-demo="imperial" on:click=move |_| demo(UnitSystem::Imperial)>"Open the demo in inches"</button>
                <button data-demo="metric" on:click=move |_| demo(UnitSystem::Metric)>"Open the demo in millimetres"</button>
            </div>
        </section>
        <p class="said" role="status">{said}</p>
        {bin}
        {files(store, said, changed)}
        <footer>
            <p>"Everything stays on this device. Once loaded, it works without signal."</p>
            <p>"Results are estimates from your measurements. Local code, the maker's instructions and licensed trades come first."</p>
        </footer>
    }
    .into_any()
}

fn card(
    store: Store,
    one: &Listing,
    said: RwSignal<String>,
    changed: impl Fn() + Copy + 'static,
) -> AnyView {
    let href = Route::Project(one.id.clone()).hash();
    let state = match one.state {
        ListingState::Fine => None,
        ListingState::Damaged => Some("cannot be read; its text is kept"),
        ListingState::Newer { .. } => Some("saved by a newer version"),
    };
    let name = if one.name.is_empty() { "without a name".to_owned() } else { one.name.clone() };
    let (take, copy_of) = (one.id.clone(), one.id.clone());
    let download_name = format!("{name}.battenbook.json");
    let raw_id = one.id.clone();
    let copy = (one.state == ListingState::Fine).then(|| {
        view! {
            <button on:click=move |_| {
                if let Ok(loaded) = store.load(&copy_of) {
                    let mut project = loaded.project;
                    project.set_id(&new_id());
                    project.set_name(&format!("{} (copy)", project.name()));
                    if let Err(error) = store.save(&project, 0) {
                        said.set(error.to_string());
                    }
                }
                changed();
            }>"Copy"</button>
        }
    });
    view! {
        <li>
            <a href=href><span class="name">{name}</span><span class="label">{state}</span></a>
            <details class="more">
                <summary aria-label="more for this project">"⋯"</summary>
                <div>
                    {copy}
                    <button on:click=move |_| {
                        if let Some(text) = store.raw(&raw_id) {
                            transfer::download(&download_name, &text);
                        }
                    }>"Save to a file"</button>
                    <button class="danger" on:click=move |_| {
                        if let Err(error) = store.delete(&take) {
                            said.set(error.to_string());
                        }
                        changed();
                    }>"Take out"</button>
                </div>
            </details>
        </li>
    }
    .into_any()
}

/// Files in and out.
fn files(
    store: Store,
    said: RwSignal<String>,
    changed: impl Fn() + Copy + 'static,
) -> impl IntoView {
    let read = move |event: leptos::ev::Event| {
        let Some(input) =
            event.target().and_then(|target| target.dyn_into::<web_sys::HtmlInputElement>().ok())
        else {
            return;
        };
        let Some(file) = input.files().and_then(|files| files.get(0)) else { return };
        transfer::read_file(&file, move |read| {
            said.set(take_in(store, read));
            changed();
        });
        input.set_value("");
    };
    view! {
        <section class="files">
            <h2>"Files"</h2>
            <label class="button" for="import">"Open a project file"</label>
            <input id="import" class="visually-hidden" type="file" accept=".json,application/json" on:change=read />
            <button on:click=move |_| {
                let all = transfer::export_all(store);
                transfer::download("battenbook-all.json", &all.text);
                if !all.left_out.is_empty() {
                    let names: Vec<String> = all.left_out.into_iter().map(|one| one.name).collect();
                    said.set(format!(
                        "Left out, as they cannot be read: {}. Save each to its own file.",
                        names.join(", ")
                    ));
                }
            }>"Save everything to a file"</button>
        </section>
    }
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
