//! The page of one line of the buy list: its packs, price, mass and place, and the sheets it comes from.

use calc::project::Place;
use calc::project::shopping::LINE_ASKS;
use leptos::prelude::*;

use super::{about, counted, name, words};
use crate::desk::Desk;
use crate::route::Route;
use crate::view::form::form;
use crate::view::html::shown;
use crate::view::title_of;

/// The page of the line with this key.
pub fn line_page(desk: Desk, key: &str) -> AnyView {
    desk.line.set_value(key.to_owned());
    let place = Place::Line(key.to_owned());
    let key = key.to_owned();
    let head = shown("part", move |html| {
        let all = desk.evaluation.get();
        let Some(merged) = all.buy_list.iter().find(|line| line.key() == key) else {
            html.raw("<h1 tabindex=\"-1\">Not on the list any more</h1>");
            html.tag("p", "help", "No sheet asks for it now.");
            return;
        };
        html.raw("<h1 tabindex=\"-1\">");
        html.text(&name(merged));
        html.raw("</h1>");
        desk.project.with(|project| {
            html.tag("p", "purpose", &words(merged));
            html.tag_if_any("p", "help", &about(project, merged));
            html.raw("<h2>Asked for by</h2><ul class=\"cards\">");
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
                    None => html.tag("p", "", &format!("Your own lines: {quantity}")),
                }
                html.raw("</li>");
            }
            html.raw("</ul>");
        });
    });
    view! {
        {head}
        <section class="inputs" aria-label="In the store">
            <h2>"In the store"</h2>
            {form(desk, place, LINE_ASKS)}
        </section>
    }
    .into_any()
}
