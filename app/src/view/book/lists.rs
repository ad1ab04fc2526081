//! The project's lists on paper: one board a strip, several to a page; things to cut and to buy with boxes to tick.

use calc::lists::{MarkStrip, in_si};
use calc::project::{Evaluation, Project};
use calc::quantity::{Style, money};
use calc::words::{app_common, app_page};
use uom::si::length::meter;

use crate::desk::ticked;
use crate::view::buy::words;
use crate::view::drawing::paper::{Paper, push_whole};
use crate::view::html::Html;
use crate::view::title_of;
use crate::words::{figure, text};

/// Width of a strip: two stand side by side on paper. [px]
const STRIP: f64 = 336.0;
/// The board of a strip, from its upper to its lower edge. [px]
const BOARD: (f64, f64) = (18.0, 32.0);
/// Room for a mark's number. [px]
const NUMBER: f64 = 18.0;

/// The marks of all sheets.
pub fn push_marks(html: &mut Html, project: &Project, all: &Evaluation) {
    html.tag("h2", "", text(app_common::MARK_LIST));
    html.raw("<div class=\"strips\">");
    for (id, result) in &all.sheets {
        if let (Ok(report), Some(sheet)) = (result.as_ref(), project.sheet(id)) {
            push_strips(html, &title_of(&sheet), &report.marks, project.style());
        }
    }
    html.raw("</div>");
}

/// The boards of a sheet, each with its marks numbered on it and their figures below.
pub fn push_strips(html: &mut Html, sheet: &str, strips: &[MarkStrip], style: Style) {
    for strip in strips {
        html.raw("<section class=\"strip\">");
        html.tag("h3", "", &strip.title(style));
        html.raw("<p class=\"help\"><b>");
        html.text(sheet);
        html.raw("</b> ");
        html.text(&style.say(app_page::TapeHooked { length: strip.length }));
        html.raw("</p><div class=\"drawing\">");
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
}

/// The board as a tape: each mark's number above it, or below it where the one before is in its way.
fn board(strip: &MarkStrip) -> String {
    let length = strip.length.get::<meter>();
    let scale = if length > 1e-6 { (STRIP - 2.0) / length } else { 0.0 };
    let rows = [BOARD.0 - NUMBER / 2.0, BOARD.1 + NUMBER / 2.0];
    let mut free_from = [f64::NEG_INFINITY; 2];
    // The marks on the board, and the height of each one's number.
    let mut marks = Vec::new();
    for (index, mark) in strip.marks.iter().enumerate() {
        // A mark beyond the board's ends is said, not drawn.
        let x = 1.0 + mark.at.get::<meter>() * scale;
        if !(0.0..=STRIP).contains(&x) {
            continue;
        }
        let at = x.clamp(NUMBER / 2.0, STRIP - NUMBER / 2.0);
        let row = free_from.iter().position(|free_from| at - NUMBER / 2.0 >= *free_from);
        if let Some(row) = row {
            free_from[row] = at + NUMBER / 2.0;
        }
        marks.push((index, x, at, row.map(|row| rows[row])));
    }
    let below = if free_from[1] > 0.0 { NUMBER } else { 1.0 };
    let mut paper = Paper::new(STRIP, BOARD.1 + below);
    let right = 1.0 + length * scale;
    let outline = [(1.0, BOARD.0), (right, BOARD.0), (right, BOARD.1), (1.0, BOARD.1)];
    paper.path("pen-solid fill-stock", &outline, true);
    for (index, x, at, row) in marks {
        paper.path("pen-mark", &[(x, BOARD.0), (x, BOARD.1)], false);
        if let Some(y) = row {
            let mut number = String::new();
            push_whole(&mut number, index as u64 + 1);
            paper.text("text", (at, y), (1.0, 0.0), &number);
        }
    }
    paper.finish()
}

/// The stock lengths with a box for each piece.
pub fn push_cuts(html: &mut Html, all: &Evaluation, style: Style) {
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
            html.tag("p", "help", &style.say(app_page::LeftOver { length: bar.waste }));
            html.raw("</section>");
        }
    }
}

/// The buy list, what is ticked off already ticked.
pub fn push_buy(html: &mut Html, project: &Project, all: &Evaluation) {
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
        let cost = merged.line.cost.map_or_else(String::new, |cost| figure(money(cost)));
        html.tag("td", "", &cost);
        html.raw("</tr>");
    }
    html.raw("</tbody></table>");
}
