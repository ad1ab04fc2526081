//! The page on which a sheet is added.

use calc::sheet::SHEETS;
use calc::words::{Phrase, app_page as said};
use leptos::prelude::*;

use super::html::{asked, shown};
use crate::desk::Desk;
use crate::route::{Route, go};
use crate::words::{text, words};

/// The page.
pub fn add_page(desk: Desk) -> AnyView {
    if desk.project.with_untracked(calc::project::Project::is_full) {
        return view! {
            <h1 tabindex="-1">{text(said::ADD_SHEET)}</h1>
            <p class="note warning">{text(said::FULL)}</p>
        }
        .into_any();
    }
    let kinds = shown("part", |html| {
        let mut trade = Phrase::NONE;
        for sheet in SHEETS {
            if sheet.trade.say(words()) != trade.say(words()) {
                if !trade.is_none() {
                    html.raw("</ul>");
                }
                trade = sheet.trade;
                html.tag("h2", "", trade.say(words()));
                html.raw("<ul class=\"cards\">");
            }
            html.raw("<li><button class=\"card\" data-do=\"add\" data-with=\"");
            html.raw(sheet.kind);
            html.raw("\">");
            html.tag("span", "name", sheet.title.say(words()));
            html.tag("span", "", sheet.purpose.say(words()));
            html.raw("</button></li>");
        }
        html.raw("</ul>");
    });
    let add = move |event: leptos::ev::MouseEvent| {
        let Some(sheet) = asked(&event).and_then(|(_, kind)| calc::sheet::find(&kind)) else {
            return;
        };
        let mut id = String::new();
        desk.change(|project| {
            id = project.add_sheet(sheet.kind, sheet.title.say(words()), serde_json::json!({}));
        });
        let project = desk.project.with_untracked(|project| project.id().to_owned());
        go(&Route::Sheet(project, id));
    };
    view! { <h1 tabindex="-1">{text(said::ADD_SHEET)}</h1><div on:click=add>{kinds}</div> }
        .into_any()
}
