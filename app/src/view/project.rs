//! The page of a project: its body, its sheets with their headline answers, and its buy list.

use calc::lists::MergedBuyLine;
use calc::project::Project;
use calc::quantity::plain;
use calc::sheet::SHEETS;
use leptos::prelude::*;

use super::report::buy_words;
use crate::desk::{Desk, tick, ticked};
use crate::route::{Part, Route, go};

/// The page.
pub fn project_page(desk: Desk) -> AnyView {
    let name = Memo::new(move |_| desk.project.with(|project| project.name().to_owned()));
    let body_link = link(desk, Part::Body);
    let add_link = link(desk, Part::Add);
    let sheets = move || {
        let all = desk.evaluation.get();
        desk.project.with(|project| {
            project
                .sheets()
                .map(|sheet| {
                    let id = sheet.id();
                    let href = Route::Sheet(project.id().to_owned(), id.clone()).hash();
                    let (class, label, text) = match all.sheet(&id) {
                        Some(Ok(report)) => report.answers.first().map_or_else(
                            || ("", String::new(), "—".to_owned()),
                            |answer| ("", answer.label.clone(), answer.text.clone()),
                        ),
                        Some(Err(faults)) => {
                            let words = if faults.len() == 1 { "thing" } else { "things" };
                            ("open", String::new(), format!("{} {words} to fill in", faults.len()))
                        }
                        None => ("open", String::new(), String::new()),
                    };
                    view! {
                        <li class=class>
                            <a href=href>
                                <span class="name">{super::title_of(&sheet)}</span>
                                <span class="label">{label}</span>
                                <strong>{text}</strong>
                            </a>
                        </li>
                    }
                })
                .collect_view()
        })
    };
    view! {
        <h1 tabindex="-1">{name}</h1>
        <a class="card" href=body_link>
            <span class="name">"The body"</span>
            <strong>{move || body_words(desk)}</strong>
        </a>
        <h2>"Sheets"</h2>
        <ul class="cards">{sheets}</ul>
        <a class="button add" href=add_link>"Add a sheet"</a>
        {buy_list(desk)}
        <p class="links">
            <a class="button" href=link(desk, Part::Marks)>"Mark list"</a>
            <a class="button" href=link(desk, Part::Cuts)>"Cut list"</a>
        </p>
    }
    .into_any()
}

/// The page on which a sheet is added.
pub fn add_page(desk: Desk) -> AnyView {
    let kinds = SHEETS
        .iter()
        .map(|sheet| {
            let add = move |_| {
                let mut id = String::new();
                desk.change(|project| {
                    id = project.add_sheet(sheet.kind, sheet.title, serde_json::json!({}));
                });
                let project = desk.project.with_untracked(|project| project.id().to_owned());
                go(&Route::Sheet(project, id));
            };
            view! {
                <li>
                    <button class="card" data-kind=sheet.kind on:click=add>
                        <span class="name">{sheet.title}</span>
                        <span>{sheet.purpose}</span>
                    </button>
                </li>
            }
        })
        .collect_view();
    view! { <h1 tabindex="-1">"Add a sheet"</h1><ul class="cards">{kinds}</ul> }.into_any()
}

/// The mark list over all sheets.
pub fn marks_page(desk: Desk) -> AnyView {
    let strips = move || {
        let style = desk.project.with(Project::style);
        let all = desk.evaluation.get();
        let strips: Vec<_> = all
            .sheets
            .iter()
            .filter_map(|(_, result)| result.as_ref().as_ref().ok())
            .flat_map(|report| report.marks.iter().map(|strip| super::report::mark_strip(strip, style)))
            .collect();
        if strips.is_empty() {
            view! { <p>"No sheet has marks yet."</p> }.into_any()
        } else {
            strips.into_any()
        }
    };
    view! { <h1 tabindex="-1">"Mark list"</h1>{strips} }.into_any()
}

/// The cut list over all sheets.
pub fn cuts_page(desk: Desk) -> AnyView {
    let lines = move || {
        let style = desk.project.with(Project::style);
        let all = desk.evaluation.get();
        if all.cut_list.is_empty() {
            return view! { <p>"No sheet has anything to cut yet."</p> }.into_any();
        }
        all.cut_list
            .iter()
            .map(|line| {
                let pieces = line
                    .line
                    .pieces
                    .iter()
                    .map(|piece| {
                        view! { <li>{piece.label.clone()}" "<strong>{style.mark(piece.length).text}</strong></li> }
                    })
                    .collect_view();
                view! {
                    <section class="cut">
                        <h2>{line.line.count}" × "{line.line.stock.clone()}</h2>
                        <ol>{pieces}</ol>
                    </section>
                }
            })
            .collect_view()
            .into_any()
    };
    view! { <h1 tabindex="-1">"Cut list"</h1>{lines} }.into_any()
}

/// The buy list: like lines merged, ticked off by thumb, ticks kept.
fn buy_list(desk: Desk) -> impl IntoView {
    let lines = move || {
        let all = desk.evaluation.get();
        if all.buy_list.is_empty() {
            return view! { <p class="help">"What the sheets need is gathered here."</p> }.into_any();
        }
        let total = all.buy_list.iter().filter_map(|line| line.line.cost).sum::<f64>();
        let unpriced = all.buy_list.iter().filter(|line| line.line.cost.is_none()).count();
        let total_words = match (total > 0.0, unpriced) {
            (false, _) => String::new(),
            (true, 0) => format!("Together {total:.2}"),
            (true, n) => format!("Together {total:.2}, and {n} without a price"),
        };
        let lines = all.buy_list.iter().map(|line| buy_line(desk, line)).collect_view();
        view! { <ul class="ticks">{lines}</ul><p class="total">{total_words}</p> }.into_any()
    };
    view! { <section class="buy"><h2>"Buy list"</h2>{lines}</section> }
}

fn buy_line(desk: Desk, merged: &MergedBuyLine) -> impl IntoView + use<> {
    let key = merged.key();
    let need = merged.line.quantity;
    let had = {
        let key = key.clone();
        desk.project.with(|project| ticked(project, "buy", &key))
    };
    // A tick stands for the quantity it was set at: a need that grew shows what is missing.
    let missing = had.map(|had| need - had).filter(|missing| *missing > 1e-9);
    let done = had.is_some() && missing.is_none();
    let words = buy_words(&merged.line);
    let cost = merged.line.cost.map(|cost| view! { <span class="cost">{format!("{cost:.2}")}</span> });
    let more = missing
        .map(|missing| view! { <span class="note warning">{format!("{} more needed", plain(missing, 1))}</span> });
    let from: Vec<String> = desk.project.with_untracked(|project| {
        merged
            .sheets
            .iter()
            .filter_map(|id| project.sheet(id))
            .map(|sheet| super::title_of(&sheet))
            .collect()
    });
    view! {
        <li class:done=done>
            <label>
                <input
                    type="checkbox"
                    prop:checked=done
                    on:change=move |event| {
                        let quantity = event_target_checked(&event).then_some(need);
                        desk.change(|project| tick(project, "buy", &key, quantity));
                    }
                />
                <span class="what">{words}<span class="note">{from.join(", ")}</span>{more}</span>
                {cost}
            </label>
        </li>
    }
}

fn body_words(desk: Desk) -> String {
    let style = desk.project.with(Project::style);
    desk.evaluation.with(|all| {
        let body = &all.body;
        let sizes: Vec<String> = [body.length, body.width, body.height]
            .into_iter()
            .flatten()
            .map(|size| style.length(size))
            .collect();
        match (sizes.is_empty(), body.ribs.len()) {
            (true, 0) => "not measured yet".to_owned(),
            (true, ribs) => format!("{ribs} ribs"),
            (false, 0) => sizes.join(" × "),
            (false, ribs) => format!("{}, {ribs} ribs", sizes.join(" × ")),
        }
    })
}

fn link(desk: Desk, part: Part) -> String {
    let id = desk.project.with_untracked(|project| project.id().to_owned());
    Route::Part(id, part).hash()
}
