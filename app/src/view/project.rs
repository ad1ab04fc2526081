//! The page of a project: its body, its sheets with their headline answers, and its lists.

use calc::lists::MergedBuyLine;
use calc::project::{Evaluation, Project};
use calc::quantity::plain;
use calc::sheet::SHEETS;
use leptos::prelude::*;

use super::html::{Html, asked, shown};
use super::report::{buy_words, cut_line, mark_strip};
use crate::desk::{Desk, tick, ticked};
use crate::route::{Part, Route, go};

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
        });
    });
    let list = shown("part", move |html| {
        let all = desk.evaluation.get();
        desk.project.with(|project| {
            buy_list(html, project, &all);
            html.raw("<p class=\"links\">");
            html.link("button", &part(project, Part::Marks), "Mark list");
            html.link("button", &part(project, Part::Cuts), "Cut list");
            html.raw("</p>");
        });
    });
    let ticking = move |event: leptos::ev::Event| {
        let Some((_, key)) = asked(&event) else { return };
        let needed = event_target_checked(&event).then(|| {
            desk.evaluation.with_untracked(|all| {
                let line = all.buy_list.iter().find(|line| line.key() == key);
                line.map_or(0.0, |line| line.line.quantity)
            })
        });
        desk.change(|project| tick(project, "buy", &key, needed));
        super::focus_again("data-with", &key);
    };
    view! { {cards}<div on:change=ticking>{list}</div> }.into_any()
}

/// The page on which a sheet is added.
pub fn add_page(desk: Desk) -> AnyView {
    let kinds = shown("part", |html| {
        let mut trade = "";
        for sheet in SHEETS {
            if sheet.trade != trade {
                if !trade.is_empty() {
                    html.raw("</ul>");
                }
                trade = sheet.trade;
                html.tag("h2", "", trade);
                html.raw("<ul class=\"cards\">");
            }
            html.raw("<li><button class=\"card\" data-do=\"add\" data-with=\"");
            html.raw(sheet.kind);
            html.raw("\">");
            html.tag("span", "name", sheet.title);
            html.tag("span", "", sheet.purpose);
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
            id = project.add_sheet(sheet.kind, sheet.title, serde_json::json!({}));
        });
        let project = desk.project.with_untracked(|project| project.id().to_owned());
        go(&Route::Sheet(project, id));
    };
    view! { <h1 tabindex="-1">"Add a sheet"</h1><div on:click=add>{kinds}</div> }.into_any()
}

/// The mark list over all sheets.
pub fn marks_page(desk: Desk) -> AnyView {
    let strips = shown("part", move |html| {
        let style = desk.project.with(Project::style);
        let all = desk.evaluation.get();
        let reports = all.sheets.iter().filter_map(|(_, result)| result.as_ref().as_ref().ok());
        let mut any = false;
        for strip in reports.flat_map(|report| &report.marks) {
            mark_strip(html, strip, style);
            any = true;
        }
        if !any {
            html.tag("p", "help", "No sheet has marks yet.");
        }
    });
    view! { <h1 tabindex="-1">"Mark list"</h1>{strips} }.into_any()
}

/// The cut list over all sheets.
pub fn cuts_page(desk: Desk) -> AnyView {
    let lines = shown("part", move |html| {
        let style = desk.project.with(Project::style);
        let all = desk.evaluation.get();
        for line in &all.cut_list {
            cut_line(html, &line.line, style);
        }
        if all.cut_list.is_empty() {
            html.tag("p", "help", "No sheet has anything to cut yet.");
        }
    });
    view! { <h1 tabindex="-1">"Cut list"</h1>{lines} }.into_any()
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

/// The buy list: like lines merged, ticked off by thumb, ticks kept.
fn buy_list(html: &mut Html, project: &Project, all: &Evaluation) {
    html.raw("<section class=\"buy\"><h2>Buy list</h2>");
    if all.buy_list.is_empty() {
        html.tag("p", "help", "What the sheets need is gathered here.");
    }
    html.raw("<ul class=\"ticks\">");
    for line in &all.buy_list {
        buy_line(html, project, line);
    }
    html.raw("</ul>");
    let priced = all.buy_list.iter().filter_map(|line| line.line.cost);
    let (total, count) = priced.fold((0.0, 0), |(total, count), cost| (total + cost, count + 1));
    if count > 0 {
        let without = all.buy_list.len() - count;
        let words = match without {
            0 => format!("Together {total:.2}"),
            _ => format!("Together {total:.2}, and {without} without a price"),
        };
        html.tag("p", "total", &words);
    }
    html.raw("</section>");
}

fn buy_line(html: &mut Html, project: &Project, merged: &MergedBuyLine) {
    let key = merged.key();
    let need = merged.line.quantity;
    let had = ticked(project, "buy", &key);
    // A tick stands for the quantity it was set at: a need that grew shows what is missing.
    let missing = had.map(|had| need - had).filter(|missing| *missing > 1e-9);
    let done = had.is_some() && missing.is_none();
    html.open("li", if done { "done" } else { "" });
    html.raw("<label><input type=\"checkbox\" data-do=\"tick\" data-with=\"");
    html.text(&key);
    html.raw(if done { "\" checked>" } else { "\">" });
    html.raw("<span class=\"what\">");
    html.text(&buy_words(&merged.line));
    let from: Vec<String> = merged
        .sheets
        .iter()
        .filter_map(|id| project.sheet(id))
        .map(|sheet| super::title_of(&sheet))
        .collect();
    html.tag("span", "note", &from.join(", "));
    if let Some(missing) = missing {
        html.tag("span", "note warning", &format!("{} more needed", plain(missing, 1)));
    }
    html.raw("</span>");
    if let Some(cost) = merged.line.cost {
        html.tag("span", "cost", &format!("{cost:.2}"));
    }
    html.raw("</label></li>");
}

fn part(project: &Project, part: Part) -> String {
    Route::Part(project.id().to_owned(), part).hash()
}
