//! What a page asks, whatever it is: fields, groups, rows, lists and alternatives.

use calc::ask::{Ask, Kind, MOST_ROWS, Need};
use calc::project::{Node, Place, Project};
use leptos::prelude::*;

use super::field::{field, picker};
use super::page::Page;

/// The inputs for all asks below a path.
pub fn asks(page: &Page, asks: &'static [&'static Ask], path: &str) -> AnyView {
    asks.iter().map(|ask| one(page, ask, path)).collect_view().into_any()
}

fn one(page: &Page, ask: &'static Ask, path: &str) -> AnyView {
    let here = join(path, ask.key);
    match ask.kind {
        Kind::Choice(_) | Kind::Flag | Kind::SheetOf(_) => picker(page, ask, here),
        Kind::Group(of) => group(page, ask, of, here),
        Kind::Rows { asks, noun, at_least } => rows(page, ask, asks, noun, at_least, here),
        Kind::List { of, .. } => list(page, ask, of, here),
        Kind::Either(of) => either(page, ask, of, path.to_owned()),
        _ => field(page, ask, here),
    }
}

/// Several inputs under one key; an optional group opens on demand.
fn group(page: &Page, ask: &'static Ask, of: &'static [&'static Ask], path: String) -> AnyView {
    let inner = asks(page, of, &path);
    let fault = fault_line(page, &path);
    let help = (!ask.help.is_empty()).then(|| view! { <p class="help">{ask.help}</p> });
    if ask.need == Need::Optional {
        let open = page.desk.project.with_untracked(|project| filled(project, &page.place, &path));
        return view! {
            <details class="group" open=open>
                <summary>{ask.label}<span class="optional">" (if you like)"</span></summary>
                {help}
                {fault}
                {inner}
            </details>
        }
        .into_any();
    }
    view! { <fieldset class="group"><legend>{ask.label}</legend>{help}{fault}{inner}</fieldset> }
        .into_any()
}

/// Rows of inputs, one card each.
fn rows(
    page: &Page,
    ask: &'static Ask,
    of: &'static [&'static Ask],
    noun: &'static str,
    at_least: usize,
    path: String,
) -> AnyView {
    let Page { desk, place, .. } = page.clone();
    let count = {
        let (place, path) = (place.clone(), path.clone());
        // A sheet that cannot do without a row shows its first one from the start.
        Memo::new(move |_| {
            desk.project.with(|project| project.row_count(&place, &path)).max(at_least.min(1))
        })
    };
    let card = {
        let (page, place, path) = (page.clone(), place.clone(), path.clone());
        move |index: usize| {
            let at = join(&path, &index.to_string());
            let inner = asks(&page, of, &at);
            let fault = fault_line(&page, &at);
            let (place, path) = (place.clone(), path.clone());
            let copy = (place.clone(), path.clone());
            view! {
                <fieldset class="row">
                    <legend>{format!("{} {}", capital(noun), index + 1)}</legend>
                    {fault}
                    {inner}
                    <div class="row-keys">
                        <button on:click=move |_| desk.change(|project| {
                            let node = project
                                .node(&copy.0, &join(&copy.1, &index.to_string()))
                                .cloned()
                                .unwrap_or_else(|| serde_json::json!({}));
                            project.add_row(&copy.0, &copy.1, node);
                        })>"Copy this "{noun}</button>
                        <button on:click=move |_| desk.change(|project| {
                            project.remove_row(&place, &path, index);
                        })>"Take it out"</button>
                    </div>
                </fieldset>
            }
        }
    };
    let add = {
        let (place, path) = (place.clone(), path.clone());
        move |_: leptos::ev::MouseEvent| {
            desk.change(|project| {
                // The first row stands on the page before it stands in the file.
                if project.row_count(&place, &path) == 0 && at_least > 0 {
                    project.add_row(&place, &path, serde_json::json!({}));
                }
                project.add_row(&place, &path, serde_json::json!({}));
            });
        }
    };
    let full = move || count.get() >= MOST_ROWS;
    let fault = fault_line(page, &path);
    view! {
        <section class="rows" data-path=path.clone()>
            <h3>{ask.label}</h3>
            <p class="help">{ask.help}</p>
            {fault}
            <For each=move || 0..count.get() key=|index| *index children=card />
            <button class="add" disabled=full on:click=add>"Add another "{noun}</button>
        </section>
    }
    .into_any()
}

/// Values in order: the next field opens by itself when the last one is filled.
fn list(page: &Page, ask: &'static Ask, of: &'static Ask, path: String) -> AnyView {
    let Page { desk, place, .. } = page.clone();
    let count = {
        let (place, path) = (place.clone(), path.clone());
        Memo::new(move |_| {
            desk.project.with(|project| {
                let all = project.row_count(&place, &path);
                let last_blank = all > 0
                    && project.typed(&place, &join(&path, &(all - 1).to_string())).is_empty();
                if last_blank { all } else { all + 1 }
            })
        })
    };
    let one = {
        let (page, place, path) = (page.clone(), place.clone(), path.clone());
        move |index: usize| {
            let at = join(&path, &index.to_string());
            let inner = field(&page, of, at);
            let (place, path) = (place.clone(), path.clone());
            let there = {
                let (place, path) = (place.clone(), path.clone());
                move || desk.project.with(|project| index < project.row_count(&place, &path))
            };
            view! {
                <li value=index + 1>
                    <span class="number" aria-hidden="true">{index + 1}</span>
                    {inner}
                    {move || {
                        let (place, path) = (place.clone(), path.clone());
                        there().then(|| view! {
                            <button
                                class="remove"
                                aria-label=format!("take out {} {}", of.label, index + 1)
                                on:click=move |_| desk.change(|project| {
                                    project.remove_row(&place, &path, index);
                                })
                            >
                                "✕"
                            </button>
                        })
                    }}
                </li>
            }
        }
    };
    let fault = fault_line(page, &path);
    let taken = (matches!(ask.need, Need::Body(_))).then(|| {
        let ribs = move || desk.evaluation.with(|all| all.body.ribs.len());
        let blank = {
            let (place, path) = (place.clone(), path.clone());
            move || desk.project.with(|project| project.row_count(&place, &path)) == 0
        };
        move || {
            (blank() && ribs() > 0).then(
                || view! { <p class="taken">{format!("Uses the body's {} ribs", ribs())}</p> },
            )
        }
    });
    view! {
        <section class="list" data-path=path.clone()>
            <h3>{ask.label}</h3>
            <p class="help">{ask.help}</p>
            {fault}
            {taken}
            <ol><For each=move || 0..count.get() key=|index| *index children=one /></ol>
        </section>
    }
    .into_any()
}

/// One of several inputs: which one is a choice of its own.
fn either(page: &Page, ask: &'static Ask, of: &'static [&'static Ask], path: String) -> AnyView {
    let Page { desk, place, .. } = page.clone();
    let given = {
        let (place, path) = (place.clone(), path.clone());
        Memo::new(move |_| {
            desk.project.with(|project| {
                of.iter().position(|one| filled(project, &place, &join(&path, one.key)))
            })
        })
    };
    let picked = RwSignal::new(given.get_untracked().unwrap_or(0));
    let chosen = Memo::new(move |_| given.get().unwrap_or_else(|| picked.get()));
    // What was typed under the other choice comes back when the choice does.
    let put_by = StoredValue::new(vec![Node::Null; of.len()]);
    let pick = {
        let (place, path) = (place.clone(), path.clone());
        move |index: usize| {
            let before = chosen.get_untracked();
            if before == index {
                return;
            }
            picked.set(index);
            let Some((old, new)) = of.get(before).zip(of.get(index)) else { return };
            let (old, new) = (join(&path, old.key), join(&path, new.key));
            let was = desk.project.with_untracked(|p| p.node(&place, &old).cloned());
            let back = put_by.with_value(|all| all.get(index).cloned()).unwrap_or_default();
            if was.is_none() && back.is_null() {
                return;
            }
            put_by.update_value(|all| {
                if let Some(slot) = all.get_mut(before) {
                    *slot = was.unwrap_or_default();
                }
            });
            desk.change(|project| {
                project.set(&place, &old, Node::Null);
                project.set(&place, &new, back);
            });
        }
    };
    let buttons = of
        .iter()
        .enumerate()
        .map(|(index, one)| {
            let pick = pick.clone();
            view! {
                <button
                    type="button"
                    aria-pressed=move || (chosen.get() == index).to_string()
                    on:click=move |_| pick(index)
                >
                    {one.label}
                </button>
            }
        })
        .collect_view();
    let page = page.clone();
    view! {
        <div class="either">
            <div class="choices" role="group" aria-label=ask.label>
                <span class="label">{ask.label}{(ask.need == Need::Optional).then_some(" (if you like)")}</span>
                {buttons}
            </div>
            {move || of.get(chosen.get()).map(|ask| one(&page, ask, &path))}
        </div>
    }
    .into_any()
}

/// What is wrong with the whole of a group, a row or a list.
fn fault_line(page: &Page, path: &str) -> impl IntoView + use<> {
    let fault = page.fault_at(path);
    move || fault.get().map(|fault| view! { <p class="fault whole">{fault}</p> })
}

/// Whether anything at all was entered at a path.
fn filled(project: &Project, place: &Place, path: &str) -> bool {
    match project.node(place, path) {
        None | Some(Node::Null) => false,
        Some(Node::String(text)) => !text.is_empty(),
        Some(Node::Array(items)) => !items.is_empty(),
        Some(Node::Object(fields)) => !fields.is_empty(),
        Some(_) => true,
    }
}

fn join(path: &str, key: &str) -> String {
    match (path.is_empty(), key.is_empty()) {
        (true, _) => key.to_owned(),
        (_, true) => path.to_owned(),
        _ => format!("{path}.{key}"),
    }
}

fn capital(word: &str) -> String {
    let mut letters = word.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}
