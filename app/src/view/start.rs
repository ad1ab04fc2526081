//! The start page: the projects on this device, a new one, the demo, and files in and out.

use calc::project::Project;
use calc::quantity::UnitSystem;
use leptos::prelude::*;
use wasm_bindgen::JsCast;

use super::html::{Html, asked, shown};
use super::taking_in::TakingIn;
use super::versions::{field_value, large, room, size, when};
use crate::desk::unsaved;
use crate::part;
use crate::route::{Part, Route, go};
use crate::storage::{Listing, ListingState, Store, new_id};
use crate::transfer;
use crate::words::{say, text};
use calc::words::{app_common, app_start as words};

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
        begin_part(html);
        super::notices::may_be_cleared(html, store);
        bin(html, &store.deleted());
    });
    let search = move || {
        many.get().then(|| {
            view! {
                <div class="field search">
                    <label for="search">{text(words::SEARCH)}</label>
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
        if what == "demo" || what == "try" {
            return open_demo(store, what == "try", system_of(&with), said);
        }
        match act(store, &what, &with) {
            Ok(told) | Err(told) => said.set(told),
        }
        // There may be room by now.
        unsaved::try_again(store);
        version.update(|version| *version += 1);
    };
    let taking_in = TakingIn::new(store, said, version);
    let read = move |event: leptos::ev::Event| {
        let Some(input) =
            event.target().and_then(|target| target.dyn_into::<web_sys::HtmlInputElement>().ok())
        else {
            return;
        };
        let Some(file) = input.files().and_then(|files| files.get(0)) else { return };
        taking_in.begin(&file);
        input.set_value("");
    };
    view! {
        <h1 tabindex="-1">"Battenbook"</h1>
        <p class="purpose">{text(words::PURPOSE)}</p>
        <p class="said" role="status">{said}</p>
        {taking_in.progress()}
        {search}
        <div on:click=act>{page}</div>
        <section class="files">
            <h2>{text(words::FILES)}</h2>
            <label class="button" for="import">{text(words::OPEN_FILE)}</label>
            <input id="import" class="visually-hidden" type="file" accept=".json,.txt,application/json,text/plain" on:change=read />
        </section>
        <footer>
            <p>{text(words::STAYS_HERE)}</p>
            <p>{text(words::ESTIMATES)}</p>
        </footer>
    }
    .into_any()
}

/// How to begin, and all projects as one file: always the same.
fn begin_part(html: &mut Html) {
    html.raw("<section class=\"begin\">");
    html.tag("h2", "", text(words::BEGIN));
    html.raw("<label class=\"whole\">");
    html.text(text(words::NEW_NAME));
    html.raw("<input type=\"text\" autocomplete=\"off\" maxlength=\"80\" enterkeyhint=\"done\" id=\"new-name\" placeholder=\"");
    html.text(text(words::MY_RIG));
    html.raw("\"></label><div class=\"pair\">");
    html.button("main", "new", "imperial", text(words::NEW_IMPERIAL));
    html.button("main", "new", "metric", text(words::NEW_METRIC));
    html.button("", "demo", "imperial", text(words::DEMO_IMPERIAL));
    html.button("", "demo", "metric", text(words::DEMO_METRIC));
    html.raw("</div><p>");
    html.button("wide", "save-all", "", text(words::SAVE_ALL));
    html.raw("</p></section>");
}

fn projects(html: &mut Html, store: Store, listings: &[Listing], wanted: &str) {
    if listings.is_empty() {
        html.tag("p", "help", text(words::NONE_YET));
    }
    let wanted = small_letters(wanted.trim());
    let is_wanted = |one: &Listing| small_letters(&one.name).contains(&wanted);
    if !listings.is_empty() && !listings.iter().any(is_wanted) {
        html.tag("p", "help", text(words::NONE_FOUND));
    }
    html.raw("<ul class=\"cards projects\">");
    for one in listings.iter().filter(|one| is_wanted(one)) {
        let beside = store.received(&one.id).is_some_and(|beside| !beside.is_empty());
        let damaged = one.state == ListingState::Fine && store.damaged(&one.id).is_some();
        let state = match one.state {
            _ if unsaved::find(&one.id).is_some() => text(words::STATE_UNSAVED),
            ListingState::Fine if damaged => text(words::STATE_DAMAGED_SAVE),
            ListingState::Fine if beside => text(words::STATE_RECEIVED),
            ListingState::Fine => large(one.chars),
            ListingState::Damaged => text(words::STATE_DAMAGED),
            ListingState::Newer { .. } => text(words::STATE_NEWER),
        };
        html.raw("<li><a href=\"");
        html.text(&Route::Project(one.id.clone()).hash());
        html.raw("\">");
        html.tag("span", "name", name_of(one));
        html.tag_if_any("span", "label", state);
        if one.changed > 0.0 {
            let about = [when(one.changed).as_str(), " · ", &size(one.chars)].concat();
            html.tag("span", "note", &about);
        }
        html.raw("</a><details class=\"more\"><summary aria-label=\"");
        html.text(&say(words::MoreFor { name: name_of(one) }));
        html.raw("\">⋯</summary><div>");
        if one.state == ListingState::Fine {
            rename(html, one);
            if beside {
                let hash = Route::Part(one.id.clone(), Part::Compare).hash();
                html.link("button", &hash, text(words::SEE_DIFFERENCES));
            }
            html.button("", "copy", &one.id, text(words::COPY));
            let hash = Route::Part(one.id.clone(), Part::Pass).hash();
            html.link("button", &hash, text(words::SHARE));
        }
        html.button("", "save", &one.id, text(app_common::SAVE_TO_FILE));
        if damaged {
            html.button("", "save-damaged", &one.id, text(words::SAVE_DAMAGED));
            html.button("danger", "forget-damaged", &one.id, text(words::DISCARD_DAMAGED));
        }
        if store.before(&one.id).is_some() {
            html.button("", "save-before", &one.id, text(words::SAVE_BEFORE));
        }
        html.button("danger", "delete", &one.id, text(words::DELETE));
        html.raw("</div></details></li>");
    }
    html.raw("</ul>");
}

fn rename(html: &mut Html, one: &Listing) {
    html.raw("<label class=\"whole\">");
    html.text(text(words::NAME));
    html.raw("<input type=\"text\" autocomplete=\"off\" maxlength=\"80\" id=\"name-");
    html.text(&one.id);
    html.raw("\" value=\"");
    html.text(&one.name);
    html.raw("\"></label>");
    html.button("", "rename", &one.id, text(words::RENAME));
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
    html.raw("<section class=\"bin\">");
    html.tag("h2", "", text(words::TRASH));
    html.raw("<ul>");
    for one in deleted {
        html.raw("<li>");
        html.tag("span", "name", name_of(one));
        html.button("", "restore", &one.id, text(words::RESTORE));
        html.button("danger", "forget", &one.id, text(words::FORGET));
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
    if one.name.is_empty() { text(app_common::UNNAMED) } else { &one.name }
}

/// Does what was tapped; says in words what there is to say.
fn act(store: Store, what: &str, with: &str) -> Result<String, String> {
    let told = |error: crate::storage::SaveError| error.to_string();
    match what {
        "new" => {
            let typed = field_value("new-name");
            let name = match typed.trim() {
                "" => text(words::MY_RIG),
                name => name,
            };
            begin(store, &Project::new(&new_id(), name, system_of(with)))?;
        }
        "try-not" => super::start_guide::end(store),
        "copy" => {
            let unsaved = unsaved::find(with).map(|one| (one.project, false));
            let loaded = store.load(with).ok().map(|loaded| (loaded.project, loaded.restored));
            if let Some((project, restored)) = unsaved.or(loaded) {
                store.save_copy(&project, text(words::WHY_COPY)).map_err(told)?;
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
                store.save(&loaded.project, loaded.revision).map_err(told)?;
                return Ok(said_of_copy(loaded.restored));
            }
        }
        "save-before" => {
            if let Some(text) = store.before(with) {
                let name = say(words::FileBefore { name: name_in(store, with) });
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
                let name = say(words::FileDamaged { name: name_in(store, with) });
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
                said.push(say(words::LeftOut { names: names.join(", ") }));
            }
            if !all.restored.is_empty() {
                said.push(say(words::OlderUsed { names: all.restored.join(", ") }));
            }
            return Ok(said.join(" "));
        }
        "delete" => {
            let name = name_in(store, with);
            store.delete(with).map_err(told)?;
            return Ok(say(words::Deleted { name }));
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

fn system_of(name: &str) -> UnitSystem {
    if name == "imperial" { UnitSystem::Imperial } else { UnitSystem::Metric }
}

/// Opens the demo, once the part of the program is here that knows it.
fn open_demo(store: Store, guided: bool, system: UnitSystem, said: RwSignal<String>) {
    leptos::task::spawn_local(async move {
        let opened = match part::fetch().await {
            Ok(part) => (part.demo)(store, system),
            Err(part::Missing) => Err(text(app_common::PART_MISSING).to_owned()),
        };
        match opened {
            Ok(id) if guided => super::start_guide::begin(store, &id),
            Ok(_) => {}
            Err(why) => {
                let _ = said.try_set(why);
            }
        }
    });
}

/// Begins a project, and goes to it.
pub fn begin(store: Store, project: &Project) -> Result<(), String> {
    keep(store, project)?;
    go(&Route::Project(project.id().to_owned()));
    Ok(())
}

/// Begins a project to measure one's own rig in.
pub fn begin_own(store: Store, system: UnitSystem) -> Result<(), String> {
    let project = Project::new(&new_id(), text(words::MY_RIG), system);
    keep(store, &project)?;
    go(&Route::Part(project.id().to_owned(), Part::Body));
    Ok(())
}

fn keep(store: Store, project: &Project) -> Result<(), String> {
    store.save(project, 0).map_err(|error| error.to_string())?;
    super::notices::ask_to_stay(store, false);
    Ok(())
}

/// Says it where the copy before the last save had to be used; nothing where it had not.
fn said_of_copy(restored: bool) -> String {
    if restored { text(words::OLDER_USED_ONE).to_owned() } else { String::new() }
}
