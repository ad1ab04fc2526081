//! The buy list of the project: like lines merged, ticked off by thumb, ticks kept.

use calc::lists::MergedBuyLine;
use calc::project::{Evaluation, Project};
use calc::quantity::plain;
use leptos::prelude::*;

use super::html::{Html, asked, shown};
use super::report::buy_words;
use crate::desk::{Desk, tick, ticked};

/// The list.
pub fn buy_list(desk: Desk) -> AnyView {
    let list = shown("part", move |html| {
        let all = desk.evaluation.get();
        desk.project.with(|project| lines(html, project, &all));
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
    view! { <div on:change=ticking>{list}</div> }.into_any()
}

fn lines(html: &mut Html, project: &Project, all: &Evaluation) {
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
