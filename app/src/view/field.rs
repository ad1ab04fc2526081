//! One field: a label, the typed text, its unit, keys that phones lack, and what is wrong with it.

use calc::ask::{Ask, Kind, Need};
use calc::quantity::{LENGTH, Unit};
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::HtmlInputElement;

use super::page::Page;
use crate::desk::stored_text;

/// Keys that a phone's number pad lacks: what is shown, what is typed, and its name.
const LENGTH_KEYS: &[(&str, &str, &str)] = &[
    ("′", "'", "feet"),
    ("″", "\"", "inches"),
    ("/", "/", "fraction stroke"),
    ("␣", " ", "space"),
    ("+", "+", "plus"),
    ("−", "-", "minus"),
    ("×", "*", "times"),
];

/// A field for the ask that stands at a path.
pub fn field(page: &Page, ask: &'static Ask, path: String) -> AnyView {
    let Page { desk, place, .. } = page.clone();
    let id = page.id_of(&path);
    let stored = {
        let (place, path) = (place.clone(), path.clone());
        Memo::new(move |_| desk.project.with(|project| project.typed(&place, &path)))
    };
    let unit = Memo::new(move |_| {
        desk.project.with(|project| ask.unit_in(project.system())).map_or("", Unit::symbol)
    });
    let typed = RwSignal::new(stored.get_untracked());
    let normalised = move || {
        let unit = desk.project.with_untracked(|project| ask.unit_in(project.system()));
        stored_text(ask, &typed.get_untracked(), unit)
    };
    // What is typed stands in the field as typed; anything else that changes the stored text
    // (undo, the usual value, another tab) is shown.
    Effect::new(move |_| {
        let now = stored.get();
        if now != normalised() {
            typed.set(now);
        }
    });
    let write = {
        let (place, path) = (place.clone(), path.clone());
        move |text: String| {
            typed.set(text);
            desk.type_into(&place, &path, ask, &typed.get_untracked());
        }
    };
    let focused = RwSignal::new(false);
    let fault = page.fault_at(&path);
    let wrong = Memo::new(move |_| fault.get().is_some() && !stored.get().trim().is_empty());
    let input = NodeRef::<leptos::html::Input>::new();
    let described = format!("{id}-help {id}-fault");
    let label_id = format!("{id}-label");

    let keys = is_length(ask).then(|| {
        let write = write.clone();
        move || focused.get().then(|| keys_row(input, write.clone()))
    });
    let aid = aid(page, ask, &path, stored, write.clone());
    let suggestions = match ask.kind {
        Kind::Notation { suggestions, .. } if !suggestions.is_empty() => {
            let options: Vec<_> =
                suggestions.iter().map(|text| view! { <option value=*text></option> }).collect();
            Some(view! { <datalist id=format!("{id}-choices")>{options}</datalist> })
        }
        _ => None,
    };
    let list = suggestions.is_some().then(|| format!("{id}-choices"));
    let mode = input_mode(ask);
    let on_enter = move |event: leptos::ev::KeyboardEvent| {
        if event.key() == "Enter" {
            super::keys::focus_next(&event);
        }
    };

    view! {
        <div class="field" class:wrong=wrong class:missing=move || fault.get().is_some() && !wrong.get()>
            <label id=label_id for=id.clone()>{ask.label}{optional_word(ask)}</label>
            <div class="entry">
                <input
                    node_ref=input
                    id=id.clone()
                    type="text"
                    inputmode=mode
                    autocomplete="off"
                    autocapitalize="off"
                    spellcheck="false"
                    enterkeyhint="next"
                    data-path=path.clone()
                    list=list
                    placeholder=move || placeholder(desk.project.with(|p| ask.usual_in(p.system())))
                    aria-describedby=described
                    aria-invalid=move || wrong.get().to_string()
                    prop:value=typed
                    on:input=move |event| write(event_target_value(&event))
                    on:focus=move |_| focused.set(true)
                    on:blur=move |_| {
                        focused.set(false);
                        desk.leave_field();
                        typed.set(stored.get_untracked());
                    }
                    on:keydown=on_enter
                />
                <span class="unit" aria-hidden="true">{move || unit_word(ask, unit.get())}</span>
            </div>
            {keys}
            {suggestions}
            <p class="fault" id=format!("{id}-fault")>{move || fault.get()}</p>
            {aid}
            <p class="help" id=format!("{id}-help")>{ask.help}</p>
        </div>
    }
    .into_any()
}

/// A choice between a few, a flag, or the id of another sheet: all are picked, not typed.
pub fn picker(page: &Page, ask: &'static Ask, path: String) -> AnyView {
    let Page { desk, place, .. } = page.clone();
    let id = page.id_of(&path);
    let fault = page.fault_at(&path);
    let stored = {
        let (place, path) = (place.clone(), path.clone());
        Memo::new(move |_| desk.project.with(|project| project.typed(&place, &path)))
    };
    let shown = move || match (stored.get(), ask.need) {
        (text, Need::Default(usual)) if text.is_empty() => usual.to_owned(),
        (text, _) => text,
    };
    let options = move || match ask.kind {
        Kind::Choice(of) => {
            of.iter().map(|(key, name)| ((*key).to_owned(), (*name).to_owned())).collect()
        }
        Kind::Flag => vec![("true".to_owned(), "yes".to_owned()), ("false".into(), "no".into())],
        Kind::SheetOf(kind) => desk.project.with(|project| {
            let nothing = std::iter::once((String::new(), "—".to_owned()));
            let sheets = project
                .sheets()
                .filter(|sheet| sheet.kind() == Some(kind))
                .map(|sheet| (sheet.id(), super::title_of(&sheet)));
            nothing.chain(sheets).collect::<Vec<_>>()
        }),
        _ => Vec::new(),
    };
    let write = {
        let (place, path) = (place.clone(), path.clone());
        move |event| {
            desk.type_into(&place, &path, ask, &event_target_value(&event));
            desk.leave_field();
        }
    };
    view! {
        <div class="field" class:wrong=move || fault.get().is_some()>
            <label for=id.clone()>{ask.label}{optional_word(ask)}</label>
            <select
                id=id.clone()
                data-path=path.clone()
                aria-describedby=format!("{id}-help {id}-fault")
                on:change=write
                prop:value=shown
            >
                {move || {
                    let now = shown();
                    options()
                        .into_iter()
                        .map(|(key, name)| {
                            let selected = key == now;
                            view! { <option value=key selected=selected>{name}</option> }
                        })
                        .collect_view()
                }}
            </select>
            <p class="fault" id=format!("{id}-fault")>{move || fault.get()}</p>
            <p class="help" id=format!("{id}-help")>{ask.help}</p>
        </div>
    }
    .into_any()
}

/// What fills a blank field with one tap, or says where its value comes from.
fn aid(
    page: &Page,
    ask: &'static Ask,
    path: &str,
    stored: Memo<String>,
    write: impl Fn(String) + Clone + 'static + Send + Sync,
) -> AnyView {
    let desk = page.desk;
    let blank = Memo::new(move |_| stored.get().trim().is_empty());
    if let Need::Body(part) = ask.need {
        let of_body = Memo::new(move |_| {
            let style = desk.project.with(calc::project::Project::style);
            desk.evaluation.with(|all| all.body.part(part, style)).map(|(_, words)| words)
        });
        let name = part.name();
        return (move || {
            let words = of_body.get()?;
            Some(if blank.get() {
                view! { <p class="taken">{format!("Uses {name}: {words}")}</p> }.into_any()
            } else {
                let write = write.clone();
                view! {
                    <button class="usual" on:click=move |_| write(String::new())>
                        {format!("Use {name}: {words}")}
                    </button>
                }
                .into_any()
            })
        })
        .into_any();
    }
    let _ = path;
    if let Need::Default(text) = ask.need {
        return (move || blank.get().then(|| view! { <p class="taken">"Left blank: "{text}</p> }))
            .into_any();
    }
    (move || {
        let usual = desk.project.with(|project| ask.usual_in(project.system()));
        let write = write.clone();
        (blank.get() && !usual.is_empty()).then(|| {
            view! {
                <button class="usual" on:click=move |_| write(usual.to_owned())>
                    "usual: "{usual}
                </button>
            }
        })
    })
    .into_any()
}

fn keys_row(
    input: NodeRef<leptos::html::Input>,
    write: impl Fn(String) + Clone + 'static,
) -> impl IntoView {
    let keys: Vec<_> = LENGTH_KEYS
        .iter()
        .map(|(shown, text, name)| {
            let write = write.clone();
            view! {
                <button
                    type="button"
                    tabindex="-1"
                    aria-label=*name
                    // The field keeps the focus, and the phone its keyboard.
                    on:pointerdown=move |event| event.prevent_default()
                    on:mousedown=move |event| event.prevent_default()
                    on:click=move |_| {
                        if let Some(input) = input.get_untracked() {
                            insert(&input, text);
                            write(input.value());
                        }
                    }
                >
                    {*shown}
                </button>
            }
        })
        .collect();
    view! { <div class="keys" role="group" aria-label="keys for lengths">{keys}</div> }
}

/// Puts text where the caret stands.
fn insert(input: &HtmlInputElement, text: &str) {
    let end = u32::try_from(input.value().encode_utf16().count()).unwrap_or(u32::MAX);
    let from = input.selection_start().ok().flatten().unwrap_or(end);
    let to = input.selection_end().ok().flatten().unwrap_or(end);
    if input.set_range_text_with_start_and_end(text, from, to).is_ok() {
        let caret = from + u32::try_from(text.encode_utf16().count()).unwrap_or(0);
        let _ = input.set_selection_range(caret, caret);
    }
    let _ = input.unchecked_ref::<web_sys::HtmlElement>().focus();
}

fn is_length(ask: &Ask) -> bool {
    matches!(ask.kind, Kind::Measure { dimension, .. } if dimension.is(&LENGTH))
}

fn input_mode(ask: &Ask) -> &'static str {
    match ask.kind {
        Kind::Count { .. } => "numeric",
        Kind::Number { .. } => "decimal",
        Kind::Measure { .. } if is_length(ask) => "decimal",
        _ => "text",
    }
}

fn unit_word(ask: &Ask, unit: &'static str) -> &'static str {
    match ask.kind {
        Kind::Number { unit, .. } => unit,
        _ => unit,
    }
}

fn optional_word(ask: &Ask) -> Option<AnyView> {
    (ask.need == Need::Optional)
        .then(|| view! { <span class="optional">" (if you like)"</span> }.into_any())
}

fn placeholder(usual: &'static str) -> String {
    if usual.is_empty() { String::new() } else { format!("e.g. {usual}") }
}
