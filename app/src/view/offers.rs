//! New sheets made from a sheet's results in one tap, and what is said when those results change.

use calc::words::app_page;
use leptos::ev::MouseEvent;
use leptos::prelude::*;

use super::html::{asked, shown};
use super::sheet::{Result, with_report};
use crate::desk::Desk;
use crate::route::{Route, go};
use crate::words::words;
use crate::words::{say, text};

/// What a sheet offers, each a button; and a way to what was made of it before.
pub fn offers(desk: Desk, id: &str, result: Result) -> AnyView {
    let id = StoredValue::new(id.to_owned());
    let buttons = shown("offers", move |html| {
        with_report(result, |report| {
            let Some(report) = report else { return };
            desk.project.with(|project| {
                for (index, offer) in report.offers.iter().enumerate() {
                    html.button("", "make", &index.to_string(), offer.label.say(words()));
                    let made = id.with_value(|id| project.made_of(id, offer.kind));
                    if let Some(made) = made.and_then(|made| project.sheet(&made)) {
                        let to = Route::Sheet(project.id().to_owned(), made.id()).hash();
                        html.link(
                            "button",
                            &to,
                            &say(app_page::GoTo { sheet: super::title_of(&made) }),
                        );
                    }
                }
            });
        });
    });
    let make = move |event: MouseEvent| {
        let Some((_, index)) = asked(&event) else { return };
        let offer = result.with_untracked(|result| {
            let report = result.as_ref()?.as_ref().as_ref().ok()?;
            report.offers.get(index.parse::<usize>().ok()?).cloned()
        });
        let Some(offer) = offer else { return };
        let mut made = String::new();
        desk.change(|project| id.with_value(|id| made = project.make_offered(id, &offer)));
        go(&Route::Sheet(desk.project.with_untracked(|project| project.id().to_owned()), made));
    };
    view! { <div on:click=make>{buttons}</div> }.into_any()
}

/// Said on top of a sheet when the one that it was made from has changed since.
pub fn behind(desk: Desk, id: &str) -> AnyView {
    let id = StoredValue::new(id.to_owned());
    let notice = shown("part", move |html| {
        desk.evaluation.with(|all| {
            desk.project.with(|project| {
                let Some(behind) = id.with_value(|id| project.behind(id, all)) else { return };
                let source = project.sheet(&behind.source);
                let title = source.as_ref().map_or_else(String::new, super::title_of);
                html.raw("<div class=\"notice-line warning\" role=\"status\">");
                let count = behind.changes;
                html.tag("p", "", &say(app_page::HasChanged { sheet: title, count }));
                html.button("", "catch-up", "", text(app_page::CATCH_UP));
                html.raw("</div>");
            });
        });
    });
    let take = move |event: MouseEvent| {
        if asked(&event).is_none() {
            return;
        }
        let all = desk.evaluation.get_untracked();
        id.with_value(|id| {
            let offer = desk
                .project
                .with_untracked(|project| project.behind(id, &all).map(|b| b.offer.clone()));
            if let Some(offer) = offer {
                desk.change(|project| project.catch_up(id, &offer));
            }
        });
    };
    view! { <div on:click=take>{notice}</div> }.into_any()
}
