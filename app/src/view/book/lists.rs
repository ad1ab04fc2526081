//! The project's lists on paper: marks large, one board a strip; things to cut and to buy with boxes to tick.

use calc::lists::{MarkStrip, in_si};
use calc::project::{Evaluation, Project};
use calc::quantity::Style;
use uom::si::length::meter;

use super::WIDTH;
use crate::desk::ticked;
use crate::view::buy::words;
use crate::view::drawing::paper::{Paper, push_whole};
use crate::view::html::Html;
use crate::view::title_of;

/// The board of a strip, from its upper to its lower edge. [px]
const BOARD: (f64, f64) = (24.0, 46.0);
/// Room for a mark's number. [px]
const NUMBER: f64 = 18.0;

/// The marks of all sheets.
pub fn push_marks(html: &mut Html, all: &Evaluation, style: Style) {
    html.tag("h2", "", "Mark list");
    let reports = all.sheets.iter().filter_map(|(_, result)| result.as_ref().as_ref().ok());
    for strip in reports.flat_map(|report| &report.marks) {
        push_strip(html, strip, style);
    }
}

/// A board with its marks numbered on it, and their figures large below.
pub fn push_strip(html: &mut Html, strip: &MarkStrip, style: Style) {
    html.raw("<section class=\"strip\">");
    html.tag("h3", "", &strip.title(style));
    html.tag(
        "p",
        "help",
        &format!("All from the left end of {}, tape hooked once.", style.length(strip.length)),
    );
    html.raw("<div class=\"drawing\">");
    html.raw(&board(strip));
    html.raw("</div><ol>");
    for (index, mark) in strip.marks.iter().enumerate() {
        html.raw("<li><span class=\"number\">");
        html.text(&(index + 1).to_string());
        html.raw("</span><strong>");
        html.text(&style.mark(mark.at).text);
        html.raw("</strong><span class=\"note\">");
        html.text(&mark.label);
        if !mark.note.is_empty() {
            html.raw(", ");
            html.text(&mark.note);
        }
        html.raw("</span></li>");
    }
    html.raw("</ol></section>");
}

fn board(strip: &MarkStrip) -> String {
    let length = strip.length.get::<meter>();
    let scale = if length > 1e-6 { (WIDTH - 2.0) / length } else { 0.0 };
    let mut paper = Paper::new(WIDTH, BOARD.1 + 2.0);
    let right = 1.0 + length * scale;
    let outline = [(1.0, BOARD.0), (right, BOARD.0), (right, BOARD.1), (1.0, BOARD.1)];
    paper.path("pen-solid fill-stock", &outline, true);
    let mut free_from = f64::NEG_INFINITY;
    for (index, mark) in strip.marks.iter().enumerate() {
        // A mark beyond the board's ends is said, not drawn.
        let x = 1.0 + mark.at.get::<meter>() * scale;
        if !(0.0..=WIDTH).contains(&x) {
            continue;
        }
        paper.path("pen-mark", &[(x, BOARD.0), (x, BOARD.1)], false);
        if x - NUMBER / 2.0 >= free_from {
            let mut number = String::new();
            push_whole(&mut number, index as u64 + 1);
            let at = x.clamp(NUMBER / 2.0, WIDTH - NUMBER / 2.0);
            paper.text("text", (at, BOARD.0 - 12.0), (1.0, 0.0), &number);
            free_from = x + NUMBER / 2.0;
        }
    }
    paper.finish()
}

/// The stock lengths with a box for each piece.
pub fn push_cuts(html: &mut Html, all: &Evaluation, style: Style) {
    html.tag("h2", "", "Cut list");
    for group in &all.cut_list {
        for bar in &group.bars {
            html.raw("<section class=\"cut\">");
            html.tag("h3", "", &format!("{} × {}", bar.count, bar.stock));
            html.raw("<ul class=\"boxes\">");
            for piece in &bar.pieces {
                html.raw("<li><span class=\"box\"></span> ");
                html.tag("strong", "", &style.mark(piece.length).text);
                html.raw(" ");
                html.text(&piece.label);
                html.raw("</li>");
            }
            html.raw("</ul>");
            html.tag("p", "help", &format!("Left over: {}", style.length(bar.waste)));
            html.raw("</section>");
        }
    }
}

/// The buy list, what is ticked off already ticked.
pub fn push_buy(html: &mut Html, project: &Project, all: &Evaluation) {
    html.tag("h2", "", "Buy list");
    html.raw("<table class=\"boxes\"><tbody>");
    for merged in &all.buy_list {
        let had = ticked(project, "buy", merged.key());
        let need = in_si(merged.asked(), merged.line.unit);
        let done = need <= 1e-9 || had.is_some_and(|had| had >= need - 1e-9);
        html.raw("<tr><td><span class=\"box\">");
        html.raw(if done { "✓" } else { "" });
        html.raw("</span></td>");
        html.tag("td", "", &words(merged));
        let sheets = merged.sheets().filter_map(|id| project.sheet(id));
        let from: Vec<String> = sheets.map(|sheet| title_of(&sheet)).collect();
        html.tag("td", "note", &from.join(", "));
        let cost = merged.line.cost.map_or_else(String::new, |cost| format!("{cost:.2}"));
        html.tag("td", "", &cost);
        html.raw("</tr>");
    }
    html.raw("</tbody></table>");
}
