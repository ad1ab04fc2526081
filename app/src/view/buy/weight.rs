//! What the list weighs and where, beside what the axles can still take.

use calc::project::shopping::WEIGHT_KEY;
use calc::project::{Evaluation, Place, Project, takes_weight};
use calc::report::Weight as Matters;
use calc::sheet;
use calc::sheet::handoffs::PayloadLeft;
use calc::words::app_store as said;

use crate::route::{Part, Route};
use crate::view::html::Html;
use crate::view::title_of;
use crate::words::{say, text};

/// The section.
pub fn section(html: &mut Html, project: &Project, all: &Evaluation) {
    let weight = &all.shopping().weight;
    let style = project.style();
    html.raw("<section class=\"weight\">");
    html.tag("h2", "", text(said::WEIGHT));
    html.raw("<dl class=\"answers\">");
    let mut figure = |label: &str, shown: &str, note: &str| {
        html.raw("<div class=\"answer\">");
        html.tag("dt", "", label);
        html.raw("<dd>");
        html.text(shown);
        html.tag_if_any("span", "note", note);
        html.raw("</dd></div>");
    };
    let note = match weight.without_mass {
        0 => String::new(),
        count => say(said::WithoutMass { count, of: all.buy_list.len() }),
    };
    figure(text(said::LIST_WEIGHT), &style.mass(weight.balance.mass), &note);
    if let Some(centre) = weight.balance.centre() {
        let note = match weight.without_place {
            0 => String::new(),
            count => say(said::WithoutPlace { count }),
        };
        figure(text(said::LIST_CENTER), &style.length(centre), &note);
    }
    html.raw("</dl>");
    let mut axles = project
        .sheets()
        .filter(|sheet| sheet.kind().and_then(sheet::find).is_some_and(takes_weight));
    let Some(sheet) = axles.next() else {
        let hash = Route::Part(project.id().to_owned(), Part::Add).hash();
        html.link("button add", &hash, text(said::ADD_AXLES));
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
    let counted = project.typed(&Place::Sheet(id.clone()), WEIGHT_KEY) == "true";
    match all.sheet(&id) {
        Some(Ok(report)) => {
            html.raw("<table class=\"left\">");
            html.tag("caption", "", text(said::PAYLOAD_LEFT));
            html.raw("<tbody>");
            let left = report.gives.get::<PayloadLeft>().into_iter().flat_map(|left| {
                [
                    (said::FRONT_AXLE, left.front),
                    (said::REAR_AXLE, left.rear),
                    (said::WHOLE_RIG, left.gross),
                ]
            });
            for (name, left) in left {
                html.raw("<tr><th scope=\"row\">");
                html.text(text(name));
                html.raw("</th>");
                html.tag("td", "", &style.mass(left));
                html.raw("</tr>");
            }
            html.raw("</tbody></table>");
            let note = text(if counted { said::COUNTED } else { said::NOT_COUNTED });
            html.tag("p", "help", note);
            for remark in report.remarks.iter().filter(|one| one.weight == Matters::Warning) {
                html.tag("p", "remark warning", &remark.text);
            }
        }
        _ => html.tag("p", "help", text(said::AXLES_FAULTY)),
    }
    if !counted {
        html.button("add", "count-weight", &id, text(said::COUNT_WEIGHT));
    }
    html.raw("</section>");
}
