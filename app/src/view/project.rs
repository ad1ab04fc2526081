//! The page of a project: its body, its sheets with their headline answers, and its lists.

use calc::project::{Evaluation, Project};
use leptos::prelude::*;

use super::html::{Html, shown};
use crate::desk::Desk;
use crate::route::{Part, Route};

/// The page.
pub fn project_page(desk: Desk) -> AnyView {
    let cards = shown("part", move |html| {
        let all = desk.evaluation.get();
        desk.project.with(|project| {
            html.tag("h1", "", project.name());
            body_card(html, project, &all);
            html.raw("<h2>Sheets</h2><ul class=\"cards\">");
            sheet_cards(html, project, &all);
            html.raw("</ul>");
            html.link("button add", &part(project, Part::Add), "Add a sheet");
            super::buy::summary(html, project, &all);
        });
    });
    let links = shown("part", move |html| {
        desk.project.with(|project| {
            html.raw("<p class=\"links\">");
            html.link("button", &part(project, Part::Marks), "Mark list");
            html.link("button", &part(project, Part::Cuts), "Cut list");
            html.link("button", &part(project, Part::Versions), "Versions");
            html.link("button", &part(project, Part::Pass), "Pass it on");
            html.link("button", &part(project, Part::Book), "Booklet to print");
            html.raw("</p>");
        });
    });
    view! { {cards}{links} }.into_any()
}

fn body_card(html: &mut Html, project: &Project, all: &Evaluation) {
    html.raw("<a class=\"card\" href=\"");
    html.text(&part(project, Part::Body));
    html.raw("\"><span class=\"name\">The body</span>");
    html.tag("strong", "", &body_words(project, all));
    html.raw("</a>");
}

fn body_words(project: &Project, all: &Evaluation) -> String {
    let style = project.style();
    let body = &all.body;
    if !body.faults.is_empty() {
        return "something to mend".to_owned();
    }
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
}

fn sheet_cards(html: &mut Html, project: &Project, all: &Evaluation) {
    for sheet in project.sheets() {
        let id = sheet.id();
        let hash = Route::Sheet(project.id().to_owned(), id.clone()).hash();
        let (class, label, text) = match all.sheet(&id) {
            Some(Ok(report)) => match report.answers.first() {
                Some(answer) => ("", answer.label.as_str(), answer.text.clone()),
                None => ("", "", "—".to_owned()),
            },
            Some(Err(faults)) => {
                let things = if faults.len() == 1 { "thing" } else { "things" };
                ("open", "", format!("{} {things} to fill in", faults.len()))
            }
            None => ("open", "", String::new()),
        };
        html.open("li", class);
        html.raw("<a href=\"");
        html.text(&hash);
        html.raw("\">");
        html.tag("span", "name", &super::title_of(&sheet));
        html.tag_if_any("span", "label", label);
        html.tag("strong", "", &text);
        html.raw("</a></li>");
    }
}

fn part(project: &Project, part: Part) -> String {
    Route::Part(project.id().to_owned(), part).hash()
}
