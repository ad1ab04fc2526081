//! What if the store lacks something: one tap for each thing it has not, and both results side by side.
//!
//! Stands on the page of every sheet that chooses from a list of things to be bought, whatever they are.

use calc::project::{Lacking, Place, choices, side_by_side};
use calc::sheet::Sheet;
use calc::words::{app_page, app_store as said};
use leptos::prelude::*;

use super::html::{Html, asked};
use super::report::table;
use super::sheet::folded_unless;
use crate::desk::Desk;
use crate::words::{text, words};

/// The part of a sheet's page; nothing where the sheet has nothing to choose from.
pub fn what_if(desk: Desk, id: &str, sheet: &'static Sheet) -> AnyView {
    let id = StoredValue::new(id.to_owned());
    let kept = Memo::new(move |_| id.with_value(|id| desk.project.with(|p| p.lacking(id))));
    let lacking = RwSignal::new(kept.get_untracked());
    // What is kept changes from elsewhere too: by undo, or in another tab.
    Effect::new(move |before: Option<()>| {
        let kept = kept.get();
        if before.is_some() {
            lacking.set(kept);
        }
    });
    let head = Memo::new(move |_| {
        let any = id.with_value(|id| {
            desk.project.with(|project| {
                project.sheet(id).is_some_and(|one| !choices(sheet.asks, one.inputs()).is_empty())
            })
        });
        any.then(|| text(app_page::WHAT_IF).to_owned())
    });
    let write = move |html: &mut Html| {
        let all = desk.evaluation.get();
        desk.project.with(|project| {
            id.with_value(|id| {
                let Some(entry) = project.sheet(id) else { return };
                let offered = choices(sheet.asks, entry.inputs());
                if offered.is_empty() {
                    return;
                }
                let lacking = lacking.get();
                html.raw("<section class=\"what-if\">");
                html.tag("p", "help", text(said::AT_STORE_HELP));
                for list in &offered {
                    html.raw("<div class=\"choices\">");
                    if offered.len() > 1 {
                        html.tag("span", "label", list.label.say(words()));
                    }
                    for (name, for_sale) in &list.entries {
                        chip(html, &list.list, name, *for_sale, &lacking);
                    }
                    html.raw("</div>");
                }
                if !lacking.is_empty() {
                    let then =
                        calc::project::what_if(project, &all, id, &lacking.applied(entry.inputs()));
                    match (all.sheet(id), &then) {
                        (Some(Ok(now)), Ok(then)) => {
                            table(html, &side_by_side(project, id, now, then));
                        }
                        (_, Err(faults)) => {
                            for fault in faults {
                                html.tag("p", "note warning", &fault.message);
                            }
                        }
                        _ => {}
                    }
                    html.raw("<div class=\"row-keys\">");
                    if then.is_ok() {
                        html.button("main", "take", "", text(said::USE_THIS));
                    }
                    if kept.get() != lacking {
                        html.button("", "keep", "", text(said::KEEP_BOTH));
                    }
                    html.button("", "drop", "", text(said::DROP));
                    html.raw("</div>");
                }
                html.raw("</section>");
            });
        });
    };
    let part = folded_unless(!lacking.with_untracked(Lacking::is_empty), head, Box::new(write));
    let tapped = move |event: leptos::ev::MouseEvent| {
        let Some((what, with)) = asked(&event) else { return };
        let id = id.get_value();
        match what.as_str() {
            "lacking" => {
                if let Some((list, name)) = with.split_once('|') {
                    lacking.update(|lacking| lacking.turn(list, name));
                }
                super::focus_again("data-with", &with);
            }
            "take" => {
                let taken = lacking.get_untracked();
                desk.change(|project| {
                    let inputs = project.sheet(&id).map(|entry| taken.applied(entry.inputs()));
                    if let Some(inputs) = inputs {
                        project.set(&Place::Sheet(id.clone()), "", inputs);
                    }
                    project.keep_lacking(&id, &Lacking::default());
                });
                lacking.set(Lacking::default());
            }
            "keep" => {
                let kept = lacking.get_untracked();
                desk.change(|project| project.keep_lacking(&id, &kept));
            }
            "drop" => {
                if !kept.get_untracked().is_empty() {
                    desk.change(|project| project.keep_lacking(&id, &Lacking::default()));
                }
                lacking.set(Lacking::default());
            }
            _ => {}
        }
    };
    view! { <div on:click=tapped>{part}</div> }.into_any()
}

fn chip(html: &mut Html, list: &str, name: &str, for_sale: bool, lacking: &Lacking) {
    let there = for_sale && !lacking.lacks(list, name);
    html.raw("<button data-do=\"lacking\" data-with=\"");
    html.text(&format!("{list}|{name}"));
    html.raw(if there { "\" aria-pressed=\"true\"" } else { "\" aria-pressed=\"false\"" });
    // Left out by the sheet's own inputs: the form is the place to take it in again.
    html.raw(if for_sale { ">" } else { " disabled>" });
    html.raw(if there {
        "<span aria-hidden=\"true\">✓ </span>"
    } else {
        "<span aria-hidden=\"true\">✗ </span>"
    });
    html.text(name);
    html.raw("</button>");
}
