//! The project's menu: units, rounding, day and night, print, files.

use calc::project::Project;
use calc::quantity::{Rounding, UnitSystem};
use leptos::prelude::*;

use crate::desk::Desk;
use crate::storage::Store;
use crate::transfer;
use crate::words::{self, LANGUAGES, text};
use calc::words::{Id, app_common};

const THEMES: [(&str, Id); 3] = [
    ("auto", app_common::LIGHT_AUTO),
    ("day", app_common::LIGHT_DAY),
    ("night", app_common::LIGHT_NIGHT),
];

/// The menu.
pub fn menu(store: Store, desk: Desk) -> AnyView {
    let system = Memo::new(move |_| desk.project.with(Project::system));
    let rounding = Memo::new(move |_| desk.project.with(Project::style).rounding.name());
    let roundings = move || {
        Rounding::ALL
            .into_iter()
            .filter(|rounding| rounding.system() == system.get())
            .map(|one| {
                let selected = one.name() == rounding.get();
                view! { <option value=one.name() selected=selected>{one.name()}</option> }
            })
            .collect_view()
    };
    let set_rounding = move |event| {
        let name = event_target_value(&event);
        if let Some(one) = Rounding::ALL.into_iter().find(|one| one.name() == name) {
            desk.change(|project| project.set_rounding(one));
        }
    };
    let units =
        [(UnitSystem::Imperial, app_common::INCHES), (UnitSystem::Metric, app_common::MILLIMETERS)]
            .map(|(one, name)| {
                view! {
                    <button
                        aria-pressed=move || (system.get() == one).to_string()
                        on:click=move |_| desk.change(|project| project.set_system(one))
                    >
                        {text(name)}
                    </button>
                }
            });
    let name = Memo::new(move |_| desk.project.with(|project| project.name().to_owned()));
    view! {
        <details class="menu">
            <summary aria-label=text(app_common::MENU)>"☰"</summary>
            <div>
                <label for="project-name">{text(app_common::PROJECT_NAME)}</label>
                <input
                    id="project-name"
                    type="text"
                    autocomplete="off"
                    prop:value=name
                    on:change=move |event| {
                        let name = event_target_value(&event);
                        desk.change(|project| project.set_name(&name));
                    }
                />
                <div class="choices" role="group" aria-label=text(app_common::RESULTS_IN)>
                    <span class="label">{text(app_common::RESULTS_IN)}</span>
                    {units}
                </div>
                <label for="rounding">{text(app_common::NEAREST)}</label>
                <select id="rounding" on:change=set_rounding>{roundings}</select>
                {theme_select(store)}
                {language_select(store)}
                <button on:click=|_| {
                    let _ = window().print();
                }>{text(app_common::PRINT_PAGE)}</button>
                <button on:click=move |_| {
                    let (name, text) =
                        desk.project.with_untracked(|project| (project.name().to_owned(), project.to_text()));
                    transfer::download(&transfer::file_name(&name), &text);
                }>{text(app_common::SAVE_TO_FILE)}</button>
            </div>
        </details>
    }
    .into_any()
}

/// The choice of day and night alone, for pages without a project.
pub fn theme_button(store: Store) -> AnyView {
    view! {
        <span class="back"></span>
        <details class="menu">
            <summary aria-label=text(app_common::MENU)>"☰"</summary>
            <div>{theme_select(store)}{language_select(store)}</div>
        </details>
    }
    .into_any()
}

/// Shows day or night as chosen on this device.
pub fn apply_theme(store: Store) {
    let chosen = store.setting("theme");
    set_theme(chosen.as_deref().unwrap_or("auto"));
}

fn theme_select(store: Store) -> impl IntoView {
    let chosen = store.setting("theme").unwrap_or_default();
    let options = THEMES.map(|(key, name)| {
        let selected = key == chosen;
        view! { <option value=key selected=selected>{text(name)}</option> }
    });
    view! {
        <label for="theme">{text(app_common::LIGHT)}</label>
        <select id="theme" on:change=move |event| {
            let theme = event_target_value(&event);
            store.set_setting("theme", &theme);
            set_theme(&theme);
        }>{options}</select>
    }
}

/// The choice of the language, each by its own name.
fn language_select(store: Store) -> impl IntoView {
    let shown = words::words().tag();
    let options = LANGUAGES.map(|(tag, name)| {
        view! { <option value=tag lang=tag selected=tag == shown>{name}</option> }
    });
    view! {
        <label for="language">{text(app_common::LANGUAGE)}</label>
        <select id="language" on:change=move |event| {
            words::choose(store, &event_target_value(&event));
        }>{options}</select>
    }
}

fn set_theme(theme: &str) {
    if let Some(root) = document().document_element() {
        let known = THEMES.iter().any(|(key, _)| *key == theme);
        let _ = root.set_attribute("data-light", if known { theme } else { "auto" });
    }
}
