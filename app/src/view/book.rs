//! Paper: the booklet of a whole project, and what each page gives when it is printed.

mod lists;
mod sheet;

use calc::project::{BODY_ASKS, Evaluation, Place, Project};
use calc::quantity::UnitSystem;
use leptos::prelude::*;
use uom::si::length::meter;

use calc::drawing::{Drawing, Fill, Pen, Point};
use calc::project::Body;
use calc::quantity::Style;
use calc::report::Caution;

use super::drawing::push_drawing;
use super::html::{Html, shown};
use crate::desk::Desk;
use crate::route::{Part, Route};
use crate::storage::Store;
use crate::words::words;

/// Width of a drawing on paper. [px]
const WIDTH: f64 = 660.0;
/// Sizes of paper: key, and name on the page.
const SIZES: [(&str, &str); 2] = [("a4", "A4"), ("letter", "Letter")];

/// The page that shows the booklet and prints it.
pub fn book_page(store: Store, desk: Desk) -> AnyView {
    let booklet = shown("book", move |html| {
        let all = desk.evaluation.get();
        desk.project.with(|project| push_book(html, project, &all));
    });
    let date = Memo::new(move |_| desk.project.with(date_of));
    view! {
        <h1 tabindex="-1">"Booklet"</h1>
        <div class="controls">
            {paper_choice(store, desk)}
            <label for="book-date">"Date on the cover, as you write it (or none)"</label>
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
            {print_button()}
        </div>
        {booklet}
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
        <label for="paper-size">"Paper"</label>
        <select id="paper-size" on:change=move |event| {
            let size = event_target_value(&event);
            store.set_setting("paper", &size);
            set_size(&size);
        }>{options}</select>
    }
    .into_any()
}

/// Prints the page.
pub fn print_button() -> AnyView {
    view! {
        <button class="main" on:click=|_| {
            let _ = window().print();
        }>"Print"</button>
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
        Route::Sheet(_, id) => sheet::push_sheet(html, project, all, id, &mut None),
        Route::Part(_, Part::Body) => push_body(html, project, all),
        Route::Part(_, Part::Marks) => lists::push_marks(html, all, style),
        Route::Part(_, Part::Cuts) => lists::push_cuts(html, all, style),
        Route::Project(_) => {
            html.tag("h1", "", project.name());
            push_contents(html, project, all);
            lists::push_buy(html, project, all);
            lists::push_cuts(html, all, style);
        }
        _ => return,
    }
    if !matches!(route, Route::Project(_)) {
        html.tag("p", "imprint", project.name());
    }
}

/// Cover, contents, body, sheets, lists, and what the sheets say to take care of.
fn push_book(html: &mut Html, project: &Project, all: &Evaluation) {
    let style = project.style();
    html.raw("<section class=\"cover\">");
    html.tag("p", "title", project.name());
    html.tag_if_any("p", "date", &date_of(project));
    if let Some(rig) = side_view(&all.body, style) {
        push_drawing(html, &rig, WIDTH, 900);
    }
    html.tag("p", "help", "Estimates from measurements. Local code, the maker's instructions and licensed trades come first.");
    html.raw("</section><section class=\"chapter\">");
    html.tag("h2", "", "Contents");
    push_contents(html, project, all);
    html.raw("</section><section class=\"chapter\">");
    push_body(html, project, all);
    html.raw("</section>");
    let mut cautions = Some(Vec::new());
    for entry in project.sheets() {
        html.raw("<section class=\"chapter\">");
        sheet::push_sheet(html, project, all, &entry.id(), &mut cautions);
        html.raw("</section>");
    }
    let lists: [&dyn Fn(&mut Html); 2] =
        [&|html| lists::push_cuts(html, all, style), &|html| lists::push_buy(html, project, all)];
    for list in lists {
        html.raw("<section class=\"chapter\">");
        list(html);
        html.raw("</section>");
    }
    push_cautions(html, &cautions.unwrap_or_default());
}

/// Cautions with their numbers, once each.
fn push_cautions(html: &mut Html, cautions: &[Caution]) {
    html.raw("<section class=\"chapter cautions\"><h2>Take care</h2><ol>");
    for caution in cautions {
        html.raw("<li>");
        html.text(caution.text.say(words()));
        html.tag("cite", "", &caution.source.say(words()));
        html.raw("</li>");
    }
    html.raw("</ol></section>");
}

/// The sheets in their order, each with the first figure that it came to.
fn push_contents(html: &mut Html, project: &Project, all: &Evaluation) {
    html.raw("<table class=\"contents\"><tbody>");
    for (index, entry) in project.sheets().enumerate() {
        html.raw("<tr><td>");
        html.text(&(index + 1).to_string());
        html.raw("</td>");
        html.tag("th", "", &super::title_of(&entry));
        let (label, text) = match all.sheet(&entry.id()) {
            Some(Ok(report)) => report
                .answers
                .first()
                .map_or(("", ""), |answer| (answer.label.as_str(), answer.text.as_str())),
            _ => ("", "not worked out yet"),
        };
        html.tag("td", "", label);
        html.raw("<td>");
        html.tag("strong", "", text);
        html.raw("</td></tr>");
    }
    html.raw("</tbody></table>");
}

fn push_body(html: &mut Html, project: &Project, all: &Evaluation) {
    html.tag("h2", "", "The body");
    sheet::push_inputs(html, project, all, &Place::Body, BODY_ASKS);
    if let Some(plan) = calc::project::plan(&all.body, project.style()) {
        push_drawing(html, &plan, WIDTH, 901);
    }
}

/// The rig from its side, front to the left: floor, roof and ribs where they were measured.
fn side_view(body: &Body, style: Style) -> Option<Drawing> {
    let (length, height) = (body.length?, body.height?);
    let (long, high) = (length.get::<meter>(), height.get::<meter>());
    let mut drawing = Drawing::new(
        "The rig from its left side, front to the left",
        "The body from its left side: its length, height, ribs and roof openings.",
    );
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
