//! Points of a project to go back to: kept, listed, compared with now, taken out.

use calc::project::compare;
use leptos::prelude::*;

use super::compare::differences;
use super::html::{Html, asked, shown};
use crate::desk::Desk;
use crate::route::{Route, go};
use crate::storage::{LARGE_CHARS, ListingState, SHORT_OF_ROOM, SaveError, Store, Version};
use crate::transfer;
use crate::words::{say, text, words as language};
use calc::words::{app_common, app_keep, app_pass as words, app_start};

/// The page of all versions.
pub fn versions_page(desk: Desk) -> AnyView {
    let store = desk.store();
    let id = desk.project.with_untracked(|project| project.id().to_owned());
    let changes = RwSignal::new(0_u32);
    let said = RwSignal::new(String::new());
    let taken_out = RwSignal::new(None::<(u64, String)>);
    let list = {
        let id = id.clone();
        shown("versions", move |html| {
            changes.track();
            if let Some((number, _)) = taken_out.get() {
                html.raw("<p role=\"status\">");
                html.text(text(words::VERSION_DELETED));
                html.raw(" ");
                html.button("", "back", &number.to_string(), text(words::UNDO_DELETE));
                html.raw("</p>");
            }
            rows(html, &id, &store.versions(&id));
            room(html, store, store.room_used());
        })
    };
    let act = move |event: leptos::ev::MouseEvent| {
        let Some((what, with)) = asked(&event) else { return };
        let Ok(number) = with.parse() else { return };
        said.set(String::new());
        match what.as_str() {
            "take-out" => {
                taken_out.set(store.take_version_out(&id, number).map(|whole| (number, whole)));
            }
            "back" => {
                if let Some((number, whole)) = taken_out.get_untracked() {
                    match store.put_version_back(&id, number, &whole) {
                        Ok(()) => taken_out.set(None),
                        Err(error) => said.set(error.to_string()),
                    }
                }
            }
            "save" => {
                if let Some(text) = store.version(&id, number).err().and_then(|failure| failure.raw)
                {
                    transfer::download(&transfer::file_name(&[&id, " ", &with].concat()), &text);
                }
            }
            _ => {}
        }
        changes.update(|changes| *changes += 1);
    };
    let keep = move || {
        let name = field_value("version-name");
        let name = if name.trim().is_empty() { when(js_sys::Date::now()) } else { name };
        desk.save_now();
        match desk.project.with_untracked(|project| store.keep_version(project, &name)) {
            Ok(_) => said.set(say(words::VersionKept { name: name.trim() })),
            Err(error) => said.set(kept_words(&error)),
        }
        changes.update(|changes| *changes += 1);
    };
    view! {
        <h1 tabindex="-1">{text(app_common::VERSIONS)}</h1>
        <p class="purpose">{text(words::VERSIONS_HELP)}</p>
        <div class="field">
            <label for="version-name">{text(words::VERSION_NAME)}</label>
            <input id="version-name" type="text" autocomplete="off" maxlength="80" placeholder=text(words::VERSION_EXAMPLE) />
        </div>
        <p><button class="main wide" data-keep="" on:click=move |_| keep()>{text(words::KEEP_VERSION)}</button></p>
        <p class="said" role="status">{said}</p>
        <div on:click=act>{list}</div>
    }
    .into_any()
}

/// The page of one version: what differs between then and now, and the way back.
pub fn version_page(desk: Desk, number: u64) -> AnyView {
    let store = desk.store();
    let id = desk.project.with_untracked(|project| project.id().to_owned());
    let (then, name) = match store.version(&id, number) {
        Ok((mut then, name)) => {
            then.set_words(language());
            (then, name)
        }
        Err(failure) => {
            return view! {
                <h1 tabindex="-1">{text(words::NO_VERSION)}</h1>
                <p>{failure.reason.to_string()}</p>
            }
            .into_any();
        }
    };
    let said = RwSignal::new(String::new());
    let differences = {
        let then = then.clone();
        shown("part", move |html| {
            let parts = desk.project.with(|now| compare(&then, now));
            differences(html, &parts, [text(words::THEN), text(words::NOW)]);
        })
    };
    let back_name = name.clone();
    let back = move |_| {
        desk.save_now();
        let kept = say(words::BeforeGoingBack { name: back_name.as_str() });
        // Undo takes the step back too, but only for as long as the page is open.
        if let Err(error) = desk.project.with_untracked(|now| store.keep_version(now, &kept)) {
            said.set(kept_words(&error));
            return;
        }
        let then = then.clone();
        desk.change(move |project| *project = then);
        let id = desk.project.with_untracked(|project| project.id().to_owned());
        go(&Route::Project(id));
    };
    view! {
        <h1 tabindex="-1">{name}</h1>
        <p class="help">{when(number as f64)}</p>
        <p><button class="main wide" data-go-back="" on:click=back>{text(words::GO_BACK)}</button></p>
        <p class="help">{text(words::GO_BACK_HELP)}</p>
        <p class="said" role="alert">{said}</p>
        <h2>{text(words::DIFFERS_THEN)}</h2>
        {differences}
    }
    .into_any()
}

fn rows(html: &mut Html, id: &str, versions: &[Version]) {
    if versions.is_empty() {
        html.tag("p", "help", text(words::NONE_KEPT));
        return;
    }
    html.raw("<ul class=\"cards\">");
    for version in versions {
        let number = version.number.to_string();
        html.raw("<li>");
        let name = if version.name.is_empty() { text(app_common::UNNAMED) } else { &version.name };
        let about = format!("{} · {}", when(version.number as f64), size(version.chars));
        let trouble = match version.state {
            ListingState::Fine => {
                html.raw("<a href=\"");
                html.text(&Route::Version(id.to_owned(), version.number).hash());
                html.raw("\">");
                html.tag("span", "name", name);
                html.tag("span", "label", &about);
                html.raw("</a>");
                ""
            }
            ListingState::Damaged => text(words::VERSION_DAMAGED),
            ListingState::Newer { .. } => text(words::VERSION_NEWER),
        };
        if !trouble.is_empty() {
            html.tag("span", "name", name);
            html.tag("span", "label", &about);
            html.tag("p", "note warning", trouble);
            html.button("", "save", &number, text(app_common::SAVE_ITS_TEXT));
        }
        html.raw("<button class=\"danger\" data-do=\"take-out\" data-with=\"");
        html.text(&number);
        html.raw("\" aria-label=\"");
        html.text(&say(words::DeleteVersion { name }));
        html.raw("\">");
        html.text(text(words::DELETE));
        html.raw("</button></li>");
    }
    html.raw("</ul>");
    let all = versions.iter().map(|version| version.chars).sum();
    html.tag("p", "help", &say(words::VersionsSize { size: size(all) }));
}

/// Says when the room on the device is getting short; writes nothing as long as there is enough.
pub fn room(html: &mut Html, store: Store, used: f64) {
    if store.keeps() && used > SHORT_OF_ROOM {
        let percent = (used * 100.0).min(100.0).round() as u32;
        html.raw("<p class=\"note warning room\" role=\"status\">");
        html.text(&say(app_start::Room { percent }));
        html.raw(" ");
        let largest: Vec<String> = store
            .largest()
            .into_iter()
            .map(|(name, chars)| say(app_start::NamedSize { name, size: size(chars) }))
            .collect();
        html.text(&say(app_start::Largest { names: largest.join(", ") }));
        html.raw("</p>");
    }
}

/// What is said of a project's size where it is too large to be handled well.
pub fn large(chars: usize) -> &'static str {
    if chars > LARGE_CHARS { text(app_start::VERY_LARGE) } else { "" }
}

/// A size as people read it.
pub fn size(chars: usize) -> String {
    say(app_start::Size { size: chars.div_ceil(1000) })
}

/// A moment as date and time of this device: `2026-11-25 10:40`.
pub fn when(milliseconds: f64) -> String {
    let date = js_sys::Date::new(&milliseconds.into());
    format!(
        "{}-{:02}-{:02} {:02}:{:02}",
        date.get_full_year(),
        date.get_month() + 1,
        date.get_date(),
        date.get_hours(),
        date.get_minutes()
    )
}

/// What a text field of the page holds.
pub fn field_value(id: &str) -> String {
    use wasm_bindgen::JsCast;
    let field = document().get_element_by_id(id);
    let field = field.and_then(|field| field.dyn_into::<web_sys::HtmlInputElement>().ok());
    field.map(|field| field.value()).unwrap_or_default()
}

fn kept_words(error: &SaveError) -> String {
    match error {
        SaveError::Full => say(app_keep::NO_ROOM_VERSION),
        error => error.to_string(),
    }
}
