//! Points of a project to go back to: kept, listed, compared with now, taken out.

use calc::project::compare;
use leptos::prelude::*;

use super::compare::differences;
use super::html::{Html, asked, shown};
use crate::desk::Desk;
use crate::route::{Route, go};
use crate::storage::{LARGE_CHARS, ListingState, SHORT_OF_ROOM, SaveError, Store, Version};
use crate::transfer;

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
                html.raw("<p role=\"status\">Taken out. ");
                html.button("", "back", &number.to_string(), "Bring it back");
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
            Ok(_) => said.set(format!("Kept as \u{201c}{}\u{201d}.", name.trim())),
            Err(error) => said.set(kept_words(&error)),
        }
        changes.update(|changes| *changes += 1);
    };
    view! {
        <h1 tabindex="-1">"Versions"</h1>
        <p class="purpose">"A version is the project as it is at one moment: before the store, before the ceiling goes up. You can compare it with now at any time, and go back to it."</p>
        <div class="field">
            <label for="version-name">"Name of this moment"</label>
            <input id="version-name" type="text" autocomplete="off" maxlength="80" placeholder="before the store" />
        </div>
        <p><button class="main wide" data-keep="" on:click=move |_| keep()>"Keep it as a version"</button></p>
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
        Ok(version) => version,
        Err(failure) => {
            return view! {
                <h1 tabindex="-1">"No such version"</h1>
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
            differences(html, &parts, ["then", "now"]);
        })
    };
    let back_name = name.clone();
    let back = move |_| {
        desk.save_now();
        let kept = ["Before going back to ", &back_name].concat();
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
        <p><button class="main wide" data-go-back="" on:click=back>"Go back to this version"</button></p>
        <p class="help">"What you have now is kept as a version first, and undo (↶) takes the step back."</p>
        <p class="said" role="alert">{said}</p>
        <h2>"What differs: then → now"</h2>
        {differences}
    }
    .into_any()
}

fn rows(html: &mut Html, id: &str, versions: &[Version]) {
    if versions.is_empty() {
        html.tag("p", "help", "No version is kept yet.");
        return;
    }
    html.raw("<ul class=\"cards\">");
    for version in versions {
        let number = version.number.to_string();
        html.raw("<li>");
        let name = if version.name.is_empty() { "without a name" } else { &version.name };
        let about = format!("{} · {}", when(version.number as f64), size(version.chars));
        let words = match version.state {
            ListingState::Fine => {
                html.raw("<a href=\"");
                html.text(&Route::Version(id.to_owned(), version.number).hash());
                html.raw("\">");
                html.tag("span", "name", name);
                html.tag("span", "label", &about);
                html.raw("</a>");
                ""
            }
            ListingState::Damaged => "It cannot be read; its text is kept.",
            ListingState::Newer { .. } => {
                "It was kept by a newer version of Battenbook. Reload to get that one."
            }
        };
        if !words.is_empty() {
            html.tag("span", "name", name);
            html.tag("span", "label", &about);
            html.tag("p", "note warning", words);
            html.button("", "save", &number, "Save its text to a file");
        }
        html.raw("<button class=\"danger\" data-do=\"take-out\" data-with=\"");
        html.text(&number);
        html.raw("\" aria-label=\"Take out: ");
        html.text(name);
        html.raw("\">Take out</button></li>");
    }
    html.raw("</ul>");
    let all = versions.iter().map(|version| version.chars).sum();
    html.tag("p", "help", &format!("Together {}.", size(all)));
}

/// Says when the room on the device is getting short; writes nothing as long as there is enough.
pub fn room(html: &mut Html, store: Store, used: f64) {
    if store.keeps() && used > SHORT_OF_ROOM {
        let words = format!(
            "Space is getting short: {:.0} % of what the browser gives this page is used. Save to a file what you want to be sure of; then take out old versions, and delete for good what was taken out.",
            (used * 100.0).min(100.0)
        );
        html.raw("<p class=\"note warning room\" role=\"status\">");
        html.text(&words);
        html.raw(" Largest: ");
        let largest: Vec<String> = store
            .largest()
            .into_iter()
            .map(|(name, chars)| ["\u{201c}", &name, "\u{201d} ", &size(chars)].concat())
            .collect();
        html.text(&largest.join(", "));
        html.raw(".</p>");
    }
}

/// What is said of a project's size where it is too large to be handled well.
pub fn large(chars: usize) -> &'static str {
    if chars > LARGE_CHARS { "very large; split it into two projects" } else { "" }
}

/// A size as people read it.
pub fn size(chars: usize) -> String {
    format!("{} KB", chars.div_ceil(1000))
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
        SaveError::Full => {
            "There is no room for another version. The project itself is kept. Take out old versions, or delete for good what was taken out on the start page.".to_owned()
        }
        error => error.to_string(),
    }
}
