//! Lines of a sheet to be ticked off as the work goes on; the ticks are kept.

use calc::project::Project;
use calc::report::{CheckLine, CheckList};
use leptos::ev::Event;
use leptos::prelude::*;

use super::html::{Html, asked, shown};
use super::sheet::{Result, with_report};
use crate::desk::{Desk, tick, ticked};

/// All lists of a sheet.
pub fn check_lists(desk: Desk, id: &str, result: Result) -> AnyView {
    let name = StoredValue::new(list_name(id));
    let lists = shown("part", move |html| {
        with_report(result, |report| {
            let Some(report) = report else { return };
            desk.project.with(|project| {
                name.with_value(|name| {
                    for list in &report.checks {
                        check_list(html, project, name, list);
                    }
                });
            });
        });
    });
    let ticking = move |event: Event| {
        let Some((_, key)) = asked(&event) else { return };
        let done = event_target_checked(&event).then_some(1.0);
        desk.change(|project| name.with_value(|name| tick(project, name, &key, done)));
        super::focus_again("data-with", &key);
    };
    view! { <div on:change=ticking>{lists}</div> }.into_any()
}

/// The list that the ticks of a sheet are kept in.
fn list_name(id: &str) -> String {
    format!("sheet {id}")
}

fn check_list(html: &mut Html, project: &Project, name: &str, list: &CheckList) {
    let is_done = |line: &CheckLine| ticked(project, name, &line.key).is_some();
    let done = list.lines.iter().filter(|line| is_done(line)).count();
    html.raw("<section class=\"checks\">");
    html.tag("h2", "", &list.title);
    html.tag("p", "help", &format!("{done} of {} done", list.lines.len()));
    html.raw("<ul class=\"ticks\">");
    for line in &list.lines {
        let done = is_done(line);
        html.open("li", if done { "done" } else { "" });
        html.raw("<label><input type=\"checkbox\" data-do=\"tick\" data-with=\"");
        html.text(&line.key);
        html.raw(if done { "\" checked>" } else { "\">" });
        html.raw("<span class=\"what\">");
        html.text(&line.text);
        html.tag_if_any("span", if line.warns { "note warning" } else { "note" }, &line.note);
        html.raw("</span></label></li>");
    }
    html.raw("</ul></section>");
}
