//! What the list weighs and where, beside what the axles can still take.

use calc::project::{Evaluation, Place, Project};
use calc::quantity::Mass;
use calc::report::Weight as Matters;
use uom::si::mass::kilogram;

use crate::route::{Part, Route};
use crate::view::html::Html;
use crate::view::title_of;

/// The section.
pub fn section(html: &mut Html, project: &Project, all: &Evaluation) {
    let weight = &all.shopping().weight;
    let style = project.style();
    html.raw("<section class=\"weight\"><h2>Weight</h2><dl class=\"answers\">");
    let mut figure = |label: &str, text: &str, note: &str| {
        html.raw("<div class=\"answer\">");
        html.tag("dt", "", label);
        html.raw("<dd>");
        html.text(text);
        html.tag_if_any("span", "note", note);
        html.raw("</dd></div>");
    };
    let note = match weight.without_mass {
        0 => String::new(),
        count => format!("{count} of {} lines without a mass", all.buy_list.len()),
    };
    figure("All of the list", &style.mass(weight.balance.mass), &note);
    if let Some(centre) = weight.balance.centre() {
        let note = match weight.without_place {
            0 => String::new(),
            count => format!("{count} lines without a place not counted here"),
        };
        figure("Its middle, behind the front wall", &style.length(centre), &note);
    }
    html.raw("</dl>");
    let mut axles = project.sheets().filter(|sheet| sheet.kind() == Some("axles"));
    let Some(sheet) = axles.next() else {
        let hash = Route::Part(project.id().to_owned(), Part::Add).hash();
        html.link("button add", &hash, "Add the axle loads sheet");
        html.raw("</section>");
        return;
    };
    let id = sheet.id();
    html.raw("<p>");
    html.link(
        "button",
        &Route::Sheet(project.id().to_owned(), id.clone()).hash(),
        &title_of(&sheet),
    );
    html.raw("</p>");
    let counted = project.typed(&Place::Sheet(id.clone()), "project") == "true";
    match all.sheet(&id) {
        Some(Ok(report)) => {
            html.raw("<table class=\"left\"><caption>Payload left</caption><tbody>");
            for (name, path) in [
                ("Front axle", "front_left_kg"),
                ("Rear axle", "rear_left_kg"),
                ("The whole", "gross_left_kg"),
            ] {
                let left = report.outcome.number(path).unwrap_or(0.0);
                html.raw("<tr><th scope=\"row\">");
                html.raw(name);
                html.raw("</th>");
                html.tag("td", "", &style.mass(Mass::new::<kilogram>(left)));
                html.raw("</tr>");
            }
            html.raw("</tbody></table>");
            let note = if counted { "The list is counted in." } else { "Without the list." };
            html.tag("p", "help", note);
            for remark in report.remarks.iter().filter(|one| one.weight == Matters::Warning) {
                html.tag("p", "remark warning", &remark.text);
            }
        }
        _ => html.tag("p", "help", "That sheet needs mending before it tells what is left."),
    }
    if !counted {
        html.button("add", "count-weight", &id, "Count the list's weight there");
    }
    html.raw("</section>");
}
