//! The page of a project: its body, its sheets with their headline answers, and its lists.

use calc::project::{Evaluation, Project, SheetEntry};
use calc::sheet as sheets;
use calc::words::{Msg, app_common, app_page as said};
use leptos::prelude::*;

use super::html::{Html, shown};
use crate::desk::Desk;
use crate::route::{Part, Route};
use crate::words::{say, text, words};

/// The page.
pub fn project_page(desk: Desk) -> AnyView {
    let cards = shown("part", move |html| {
        let all = desk.evaluation.get();
        desk.project.with(|project| {
            html.tag("h1", "", project.name());
            body_card(html, project, &all);
            sheets_by_trade(html, project, &all);
            html.link("button add", &part(project, Part::Add), text(said::ADD_SHEET));
            super::buy::summary(html, project, &all);
        });
    });
    let links = shown("part", move |html| {
        desk.project.with(|project| {
            html.raw("<p class=\"links\">");
            html.link("button", &part(project, Part::Marks), text(app_common::MARK_LIST));
            html.link("button", &part(project, Part::Cuts), text(app_common::CUT_LIST));
            html.link("button", &part(project, Part::Versions), text(app_common::VERSIONS));
            html.link("button", &part(project, Part::Pass), text(said::PASS_IT_ON));
            html.link("button", &part(project, Part::Book), text(said::BOOKLET));
            html.raw("</p>");
        });
    });
    view! { {cards}{links} }.into_any()
}

fn body_card(html: &mut Html, project: &Project, all: &Evaluation) {
    html.raw("<a class=\"card\" href=\"");
    html.text(&part(project, Part::Body));
    html.raw("\">");
    html.tag("span", "name", text(app_common::THE_BODY));
    html.tag("strong", "", &body_words(project, all));
    html.raw("</a>");
}

fn body_words(project: &Project, all: &Evaluation) -> String {
    let style = project.style();
    let body = &all.body;
    if !body.faults.is_empty() {
        return text(said::NEEDS_ATTENTION).to_owned();
    }
    let sizes: Vec<String> = [body.length, body.width, body.height]
        .into_iter()
        .flatten()
        .map(|size| style.length(size))
        .collect();
    match (sizes.is_empty(), body.ribs.len()) {
        (true, 0) => text(said::NOT_MEASURED).to_owned(),
        (true, count) => say(said::Ribs { count }),
        (false, 0) => sizes.join(" × "),
        (false, count) => {
            let ribs = Msg::from(said::Ribs { count });
            say(said::SizeAndRibs { size: sizes.join(" × "), ribs })
        }
    }
}

/// The sheets, those of one trade together, in the order of the file.
fn sheets_by_trade(html: &mut Html, project: &Project, all: &Evaluation) {
    let trade_of = |sheet: &SheetEntry<'_>| {
        let kind = sheet.kind().and_then(sheets::find);
        kind.map_or(text(said::OTHER_SHEETS), |kind| kind.trade.say(words()))
    };
    let mut trades: Vec<&str> = Vec::new();
    for sheet in project.sheets() {
        let trade = trade_of(&sheet);
        if !trades.contains(&trade) {
            trades.push(trade);
        }
    }
    for trade in trades {
        html.tag("h2", "", trade);
        html.raw("<ul class=\"cards\">");
        for sheet in project.sheets().filter(|sheet| trade_of(sheet) == trade) {
            sheet_card(html, project, all, &sheet);
        }
        html.raw("</ul>");
    }
}

fn sheet_card(html: &mut Html, project: &Project, all: &Evaluation, sheet: &SheetEntry<'_>) {
    let id = sheet.id();
    let hash = Route::Sheet(project.id().to_owned(), id.clone()).hash();
    let (class, label, text) = match all.sheet(&id) {
        Some(Ok(report)) => match report.answers.first() {
            Some(answer) => ("", answer.label.as_str(), answer.text.clone()),
            None => ("", "", "—".to_owned()),
        },
        Some(Err(faults)) => {
            ("open", "", project.style().say(said::InputsMissing { count: faults.len() }))
        }
        None => ("open", "", String::new()),
    };
    html.open("li", class);
    html.raw("<a href=\"");
    html.text(&hash);
    html.raw("\">");
    html.tag("span", "name", &super::title_of(sheet));
    html.raw("<span class=\"headline-of\">");
    html.tag_if_any("span", "label", label);
    html.raw(" ");
    html.tag("strong", "", &text);
    html.raw("</span></a></li>");
}

fn part(project: &Project, part: Part) -> String {
    Route::Part(project.id().to_owned(), part).hash()
}
