//! Paper: the booklet of a whole project, and what each page gives when it is printed.

mod lists;
mod sheet;
mod today;
mod whole;

use calc::project::{BODY_ASKS, Evaluation, Place, Project};
use calc::quantity::UnitSystem;
use calc::words::{Id, app_common, app_paper as said};
use leptos::prelude::*;
use uom::si::length::meter;

use calc::drawing::{Drawing, Fill, Pen, Point};
use calc::project::Body;
use calc::quantity::Style;

use super::drawing::push_drawing;
use super::html::{Html, shown};
use crate::desk::Desk;
use crate::route::{Part, Route};
use crate::storage::Store;
use crate::words::text;

/// Width of a drawing on paper. [px]
const WIDTH: f64 = 660.0;
/// Sizes of paper: key, and name on the page.
const SIZES: [(&str, &str); 2] = [("a4", "A4"), ("letter", "Letter")];

/// The page that shows the booklet and prints it.
pub fn book_page(store: Store, desk: Desk) -> AnyView {
    let booklet = shown("book", move |html| {
        let all = desk.evaluation.get();
        desk.project.with(|project| whole::push_book(html, project, &all));
    });
    let date = Memo::new(move |_| desk.project.with(date_of));
    let id = desk.project.with_untracked(|project| project.id().to_owned());
    let today = Route::Part(id, Part::Today).hash();
    view! {
        <h1 tabindex="-1">{text(said::BOOKLET)}</h1>
        <div class="controls">
            {paper_choice(store, desk)}
            <label for="book-date">{text(said::DATE)}</label>
            <input
                id="book-date"
                type="text"
                autocomplete="off"
                prop:value=date
                on:change=move |event| {
                    let date = event_target_value(&event).trim().to_owned();
                    desk.change(|project| project.set_extra("booklet", serde_json::json!({ "date": date })));
                }
            />
            {print_button(said::PRINT)}
            <a class="button" href=today>{text(said::TODAY_SHEET)}</a>
        </div>
        {booklet}
    }
    .into_any()
}

/// The page that shows today's sheet and prints it.
pub fn today_page(store: Store, desk: Desk) -> AnyView {
    let sheet = shown("part", move |html| {
        let all = desk.evaluation.get();
        desk.project.with(|project| today::push_today(html, project, &all));
    });
    view! {
        <h1 tabindex="-1">{text(said::TODAY)}</h1>
        <div class="controls">
            <p>{text(said::TODAY_HELP)}</p>
            {paper_choice(store, desk)}
            {print_button(said::PRINT_TODAY)}
        </div>
        {sheet}
    }
    .into_any()
}

/// The choice of A4 or Letter; kept on this device.
pub fn paper_choice(store: Store, desk: Desk) -> AnyView {
    let chosen = size_of(store, desk.project.with_untracked(Project::system));
    let options = SIZES.map(|(key, name)| {
        let selected = key == chosen;
        view! { <option value=key selected=selected>{name}</option> }
    });
    view! {
        <label for="paper-size">{text(said::PAPER)}</label>
        <select id="paper-size" on:change=move |event| {
            let size = event_target_value(&event);
            store.set_setting("paper", &size);
            set_size(&size);
        }>{options}</select>
    }
    .into_any()
}

/// Prints the page.
pub fn print_button(words: Id) -> AnyView {
    view! {
        <button class="main" on:click=|_| {
            let _ = window().print();
        }>{text(words)}</button>
    }
    .into_any()
}

/// While the project is open: the chosen paper, and a clean page in place of the one on the screen
/// for as long as it is printed. Nothing of it is made before that: typing stays quick.
pub fn follow_printing(store: Store, desk: Desk, route: ReadSignal<Route>) {
    Effect::new(move |_| set_size(size_of(store, desk.project.with(Project::system))));
    let put = |markup: &str| {
        if let Some(paper) = document().get_element_by_id("paper") {
            paper.set_inner_html(markup);
        }
    };
    let before = window_event_listener_untyped("beforeprint", move |_| {
        let mut html = Html::default();
        let all = desk.evaluation.get_untracked();
        desk.project
            .with_untracked(|project| push_page(&mut html, project, &all, &route.get_untracked()));
        put(&html.finish());
    });
    let after = window_event_listener_untyped("afterprint", move |_| put(""));
    on_cleanup(move || {
        before.remove();
        after.remove();
    });
}

fn size_of(store: Store, system: UnitSystem) -> &'static str {
    let kept = store.setting("paper");
    let known = SIZES.into_iter().find(|(key, _)| kept.as_deref() == Some(key));
    match (known, system) {
        (Some((key, _)), _) => key,
        (None, UnitSystem::Imperial) => "letter",
        (None, UnitSystem::Metric) => "a4",
    }
}

fn set_size(size: &str) {
    if let Some(root) = document().document_element() {
        let _ = root.set_attribute("data-paper", size);
    }
}

fn date_of(project: &Project) -> String {
    let date = project.extra("booklet").and_then(|booklet| booklet.get("date")?.as_str());
    date.unwrap_or_default().to_owned()
}

/// What a page is on paper; nothing for a page that is printed as it stands.
fn push_page(html: &mut Html, project: &Project, all: &Evaluation, route: &Route) {
    let style = project.style();
    match route {
        Route::Sheet(_, id) => sheet::push_sheet(html, project, all, id),
        Route::Part(_, Part::Body) => {
            html.tag("h2", "", text(app_common::THE_BODY));
            push_body(html, project, all, false);
        }
        Route::Part(_, Part::Marks) => lists::push_marks(html, project, all),
        Route::Part(_, Part::Cuts) => {
            html.tag("h2", "", text(app_common::CUT_LIST));
            lists::push_cuts(html, all, style);
        }
        Route::Part(_, Part::Today) => return today::push_today(html, project, all),
        Route::Project(_) => {
            html.tag("h1", "", project.name());
            push_contents(html, project, all);
            html.tag("h2", "", text(app_common::BUY_LIST));
            lists::push_buy(html, project, all);
            html.tag("h2", "", text(app_common::CUT_LIST));
            lists::push_cuts(html, all, style);
        }
        _ => return,
    }
    if !matches!(route, Route::Project(_)) {
        html.tag("p", "imprint", project.name());
    }
}

/// The sheets in their order, each with the first figure that it came to.
fn push_contents(html: &mut Html, project: &Project, all: &Evaluation) {
    html.raw("<table class=\"contents\"><tbody>");
    for (index, entry) in project.sheets().enumerate() {
        push_contents_row(
            html,
            index + 1,
            &super::title_of(&entry),
            first_figure(all, &entry.id()),
        );
    }
    html.raw("</tbody></table>");
}

fn push_contents_row(html: &mut Html, number: usize, title: &str, figure: (&str, &str)) {
    html.raw("<tr>");
    html.tag("td", "number", &number.to_string());
    html.tag("th", "", title);
    html.tag("td", "", figure.0);
    html.raw("<td>");
    html.tag("strong", "", figure.1);
    html.raw("</td></tr>");
}

/// What a sheet came to first of all: what it is, and its figure.
fn first_figure<'a>(all: &'a Evaluation, id: &str) -> (&'a str, &'a str) {
    match all.sheet(id) {
        Some(Ok(report)) => report
            .answers
            .first()
            .map_or(("", ""), |answer| (answer.label.as_str(), answer.text.as_str())),
        _ => ("", text(said::NOT_WORKED_OUT)),
    }
}

fn push_body(html: &mut Html, project: &Project, all: &Evaluation, in_book: bool) {
    sheet::push_inputs(html, project, all, &Place::Body, BODY_ASKS, in_book);
    if let Some(plan) = calc::project::plan(&all.body, project.style()) {
        match in_book {
            true => sheet::push_figure(html, &plan, 901),
            false => push_drawing(html, &plan, WIDTH, 901),
        }
    }
}

/// The rig from its side, front to the left: floor, roof and ribs where they were measured.
fn side_view(body: &Body, style: Style) -> Option<Drawing> {
    let (length, height) = (body.length?, body.height?);
    let (long, high) = (length.get::<meter>(), height.get::<meter>());
    let mut drawing = Drawing::new(text(said::SIDE_VIEW), text(said::SIDE_VIEW_WORDS));
    let at = Point::metres;
    drawing.rectangle(Pen::Solid, Fill::Stock, at(0.0, 0.0), at(long, high));
    let face = body.rib_width.map_or(0.0, |face| face.get::<meter>());
    for rib in &body.ribs {
        let x = rib.get::<meter>();
        drawing.rectangle(
            Pen::Thin,
            Fill::Empty,
            at(x - face / 2.0, 0.0),
            at(x + face / 2.0, high),
        );
    }
    for opening in &body.openings {
        let (from, to) = (opening.x.get::<meter>(), (opening.x + opening.length).get::<meter>());
        drawing.rectangle(Pen::Solid, Fill::Opening, at(from, -high * 0.04), at(to, 0.0));
    }
    drawing.dimension(at(long, high), at(0.0, high), 1.5, style.length(length));
    drawing.dimension(at(0.0, high), at(0.0, 0.0), 1.5, style.length(height));
    Some(drawing)
}
