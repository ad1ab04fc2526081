//! The page of one line of the buy list: its packs, price, mass and place, the sheets it comes from, and what if the store
//! lacks it.

use calc::lists::MergedBuyLine;
use calc::project::shopping::LINE_ASKS;
use calc::project::{Place, choices};
use calc::sheet;
use calc::words::app_store as said;
use leptos::prelude::*;

use super::{about, counted, name, words};
use crate::desk::Desk;
use crate::route::Route;
use crate::view::form::form;
use crate::view::html::shown;
use crate::view::title_of;
use crate::view::whatif::what_if;
use crate::words::{say, text};

/// The page of the line with this key.
pub fn line_page(desk: Desk, key: &str) -> AnyView {
    desk.line.set_value(key.to_owned());
    let place = Place::Line(key.to_owned());
    let lacking = lacking(desk, key);
    let key = key.to_owned();
    let head = shown("part", move |html| {
        let all = desk.evaluation.get();
        let Some(merged) = all.buy_list.iter().find(|line| line.key() == key) else {
            html.raw("<h1 tabindex=\"-1\">");
            html.text(text(said::NOT_LISTED));
            html.raw("</h1>");
            html.tag("p", "help", text(said::NOT_LISTED_HELP));
            return;
        };
        html.raw("<h1 tabindex=\"-1\">");
        html.text(&name(merged));
        html.raw("</h1>");
        desk.project.with(|project| {
            html.tag("p", "purpose", &words(merged));
            html.tag_if_any("p", "help", &about(project, merged));
            html.tag("h2", "", text(said::NEEDED_BY));
            html.raw("<ul class=\"cards\">");
            for share in &merged.from {
                html.raw("<li>");
                let quantity = counted(share.quantity, merged);
                match project.sheet(&share.sheet) {
                    Some(sheet) => {
                        html.raw("<a href=\"");
                        html.text(&Route::Sheet(project.id().to_owned(), sheet.id()).hash());
                        html.raw("\">");
                        html.tag("span", "name", &title_of(&sheet));
                        html.tag("strong", "", &quantity);
                        html.raw("</a>");
                    }
                    None => html.tag("p", "", &say(said::OwnLines { count: quantity })),
                }
                html.raw("</li>");
            }
            html.raw("</ul>");
        });
    });
    view! {
        {head}
        <section class="inputs" aria-label=text(said::IN_STORE)>
            <h2>{text(said::IN_STORE)}</h2>
            {form(desk, place, LINE_ASKS)}
        </section>
        {lacking}
    }
    .into_any()
}

/// What if the store has not got it: for each sheet that asks for it and can be had in something else. They stay while the page
/// stands, whatever is taken.
fn lacking(desk: Desk, key: &str) -> Vec<AnyView> {
    let all = desk.evaluation.get_untracked();
    let merged = all.buy_list.iter().find(|line| line.key() == key);
    let ids = merged.into_iter().flat_map(MergedBuyLine::sheets);
    ids.filter_map(|id| {
        let (kind, title) = desk.project.with_untracked(|project| {
            let entry = project.sheet(id)?;
            let kind = sheet::find(entry.kind()?)?;
            let any = !choices(kind.asks, entry.inputs()).is_empty();
            any.then(|| (kind, title_of(&entry)))
        })?;
        let part = what_if(desk, id, kind);
        Some(
            view! { <section class="lacking"><h2>{say(said::OutOfStock { sheet: title })}</h2>{part}</section> }
                .into_any(),
        )
    })
    .collect()
}
