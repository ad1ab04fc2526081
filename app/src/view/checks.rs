//! Lines of a sheet to be ticked off as the work goes on; the ticks are kept.

use calc::project::Project;
use calc::report::{CheckLine, CheckList};
use calc::words::app_page as said;
use leptos::ev::Event;
use leptos::prelude::*;

use super::html::{Html, asked};
use super::sheet::{Result, folded, with_report};
use crate::desk::{Desk, tick, ticked};

/// All lists of a sheet.
pub fn check_lists(desk: Desk, id: &str, result: Result) -> AnyView {
    let name = StoredValue::new(list_name(id));
    let head = Memo::new(move |_| {
        with_report(result, |report| {
            let heads: Vec<String> = desk.project.with(|project| {
                name.with_value(|name| {
                    report.map(|report| {
                        report.checks.iter().map(|list| head(project, name, list)).collect()
                    })
                })
            })?;
            (!heads.is_empty()).then(|| heads.join(" · "))
        })
    });
    let lists = folded(
        head,
        Box::new(move |html| {
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
        }),
    );
    let ticking = move |event: Event| {
        let Some((_, key)) = asked(&event) else { return };
        let done = event_target_checked(&event).then_some(1.0);
        desk.change(|project| name.with_value(|name| tick(project, name, &key, done)));
        super::focus_again("data-with", &key);
    };
    view! { <div on:change=ticking>{lists}</div> }.into_any()
}

/// The list that the ticks of a sheet are kept in.
pub(super) fn list_name(id: &str) -> String {
    format!("sheet {id}")
}

/// A list's title, and how far it is.
fn head(project: &Project, name: &str, list: &CheckList) -> String {
    let done = list.lines.iter().filter(|line| ticked(project, name, &line.key).is_some()).count();
    project.style().say(said::ToDo { title: list.title.clone(), done, count: list.lines.len() })
}

fn check_list(html: &mut Html, project: &Project, name: &str, list: &CheckList) {
    let is_done = |line: &CheckLine| ticked(project, name, &line.key).is_some();
    html.raw("<section class=\"checks\">");
    html.tag("h2", "", &head(project, name, list));
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
