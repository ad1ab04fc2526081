//! What a sheet gives back, in the same places whatever its trade.

use calc::drawing::Drawing;
use calc::lists::{BuyLine, CutLine, EACH, Mark, MarkStrip};
use calc::quantity::{Style, plain};
use calc::report::{Remark, Report, Step, Table, Weight};

use super::drawing::push_drawing;
use super::html::Html;
use super::tape::push_tape;
use crate::words::{say, text, words};
use calc::words::{app_page as said, app_paper, common};

/// The answers and all that has to be said about them.
pub fn answers(html: &mut Html, report: &Report) {
    figures(html, report);
    remarks(html, report.remarks.iter());
}

/// An answer of more letters than this is written smaller.
const LONG: usize = 14;

/// The answers: the first large, the others smaller beside each other.
pub fn figures(html: &mut Html, report: &Report) {
    html.raw("<dl class=\"answers\">");
    for answer in &report.answers {
        html.raw("<div class=\"answer\">");
        html.tag("dt", "", &answer.label);
        html.raw(if answer.text.chars().count() > LONG { "<dd class=\"long\"" } else { "<dd" });
        html.raw(" data-result=\"");
        html.text(&answer.label);
        html.raw("\">");
        html.text(&answer.text);
        html.tag_if_any("span", "note", &answer.note);
        html.raw("</dd></div>");
    }
    html.raw("</dl>");
}

/// What has to be said, one below another.
pub fn remarks<'a>(html: &mut Html, all: impl Iterator<Item = &'a Remark>) {
    html.raw("<ul class=\"remarks\">");
    for one in all {
        remark(html, one);
    }
    html.raw("</ul>");
}

/// What is to be changed before the work goes on, in its order.
pub fn warnings(report: &Report) -> impl Iterator<Item = &Remark> {
    report.remarks.iter().filter(|one| one.weight == Weight::Warning)
}

/// What is well, and what is worth knowing.
pub fn notes(report: &Report) -> impl Iterator<Item = &Remark> {
    report.remarks.iter().filter(|one| one.weight != Weight::Warning)
}

/// The caution that matters most for the task, in one sentence.
pub fn hazard(html: &mut Html, report: &Report) {
    let Some(caution) = report.cautions.first() else { return };
    let text = caution.text.say(words());
    let end = text.find(". ").map_or(text.len(), |end| end + 1);
    html.raw("<p class=\"hazard\"><span aria-hidden=\"true\">⚠ </span>");
    html.text(&text[..end]);
    html.raw("</p>");
}

/// What has to be said, as an item of a list.
pub fn remark(html: &mut Html, remark: &Remark) {
    let (class, sign) = match remark.weight {
        Weight::Good => ("remark good", "✓ "),
        Weight::Note => ("remark", "• "),
        Weight::Warning => ("remark warning", "! "),
    };
    html.open("li", class);
    html.raw("<span aria-hidden=\"true\">");
    html.raw(sign);
    html.raw("</span>");
    html.text(&remark.text);
    html.raw("</li>");
}

/// The drawings; `width` is the page's, in px.
/// `first` is the number of the first of them: no two drawings of a page have the same.
pub fn drawings(html: &mut Html, drawings: &[Drawing], width: f64, first: u64) {
    for (number, drawing) in (first..).zip(drawings) {
        push_drawing(html, drawing, width, number);
    }
}

/// The marks of all pieces.
pub fn marks(html: &mut Html, report: &Report, style: Style) {
    for strip in &report.marks {
        mark_strip(html, strip, style);
    }
}

/// The lines for the buy list.
pub fn buy(html: &mut Html, report: &Report) {
    html.raw("<section class=\"buy\"><ul>");
    for line in &report.buy {
        html.tag("li", "", &buy_words(line));
    }
    html.raw("</ul></section>");
}

/// What can hurt someone or ruin the job, under its heading.
pub fn cautions(html: &mut Html, report: &Report) {
    html.raw("<section class=\"cautions\">");
    html.tag("h2", "", text(app_paper::TAKE_CARE));
    caution_list(html, report);
    html.raw("</section>");
}

/// What can hurt someone or ruin the job.
pub fn caution_list(html: &mut Html, report: &Report) {
    html.raw("<ul>");
    for caution in &report.cautions {
        html.raw("<li>");
        html.text(caution.text.say(words()));
        html.tag("cite", "", &caution.source.say(words()));
        html.raw("</li>");
    }
    html.raw("</ul>");
}

/// How the answers were worked out: the steps as items of a list.
pub fn working(html: &mut Html, report: &Report) {
    for step in &report.working {
        push_step(html, step);
    }
}

/// A piece's marks: each as a number and as a piece of tape with the spot on it.
pub fn mark_strip(html: &mut Html, strip: &MarkStrip, style: Style) {
    html.raw("<section class=\"marks\">");
    html.tag("h2", "", &style.say(said::MarksOn { piece: strip.title(style) }));
    let datum = style.say(said::TapeHooked { length: strip.length });
    html.tag("p", "help", &datum);
    html.raw("<ol>");
    for mark in &strip.marks {
        html.raw("<li class=\"mark\">");
        mark_words(html, mark, style);
        push_tape(html, mark.at, style);
        html.raw("</li>");
    }
    html.raw("</ol></section>");
}

/// A mark as it is read: what it is, its figure, the exact spot beside it, what else is to be known.
pub fn mark_words(html: &mut Html, mark: &Mark, style: Style) {
    let marked = style.mark(mark.at);
    html.tag("span", "mark-label", &mark.label);
    html.raw(" ");
    html.tag("strong", "", &marked.text);
    let left_over = style.left_over(&marked);
    if !left_over.is_empty() {
        html.tag("span", "note", &style.say(said::ExactSpot { left_over }));
    }
    html.tag_if_any("span", "note", &mark.note);
}

/// A stock length and the pieces to cut from it.
pub fn cut_line(html: &mut Html, line: &CutLine, style: Style) {
    html.raw("<section class=\"cut\">");
    html.tag("h2", "", &format!("{} × {}", line.count, line.stock));
    html.raw("<ol>");
    for piece in &line.pieces {
        html.raw("<li>");
        html.text(&piece.label);
        html.raw(" ");
        html.tag("strong", "", &style.mark(piece.length).text);
        html.raw("</li>");
    }
    html.raw("</ol>");
    html.tag("p", "help", &style.say(said::LeftOver { length: line.waste }));
    html.raw("</section>");
}

/// A line of a buy list in words: `2 × floor finish, 1 gal container`.
pub fn buy_words(line: &BuyLine) -> String {
    let item = match line.spec.as_str() {
        "" => line.item.clone(),
        spec => say(common::ListMiddle { before: line.item.as_str(), rest: spec }),
    };
    if line.quantity == 0.0 && line.on_hand > 0.0 {
        return say(said::HereAlready { item, count: plain(line.on_hand, 1) });
    }
    let quantity = plain(line.quantity, 1);
    match line.unit {
        EACH => say(said::BuyLine { quantity, item }),
        unit => say(said::BuyAmount { quantity, unit, item }),
    }
}

/// Figures side by side.
pub fn table(html: &mut Html, table: &Table) {
    html.raw("<section class=\"table\" role=\"group\" tabindex=\"0\" aria-label=\"");
    html.text(&table.title);
    html.raw("\"><table>");
    html.tag("caption", "", &table.title);
    html.raw("<thead><tr>");
    for head in &table.heads {
        if head.is_empty() {
            html.raw("<td></td>");
            continue;
        }
        html.raw("<th scope=\"col\">");
        html.text(head);
        html.raw("</th>");
    }
    html.raw("</tr></thead><tbody>");
    for row in &table.rows {
        html.open("tr", if row.chosen { "chosen" } else { "" });
        for (index, cell) in row.cells.iter().enumerate() {
            if index > 0 {
                html.tag("td", "", cell);
                continue;
            }
            html.raw("<th scope=\"row\">");
            html.text(cell);
            if row.chosen {
                html.raw(" ✓");
            }
            html.raw("</th>");
        }
        html.raw("</tr>");
    }
    html.raw("</tbody></table></section>");
}

fn push_step(html: &mut Html, step: &Step) {
    html.raw("<li>");
    html.tag("b", "", &step.name);
    html.tag("span", "formula", &step.formula);
    if !step.numbers.is_empty() {
        html.raw("<span>= ");
        html.text(&step.numbers);
        html.raw("</span>");
    }
    html.raw("<span>= ");
    html.tag("strong", "", &step.result);
    html.raw("</span>");
    html.tag("cite", "", &step.source.say(words()));
    html.raw("</li>");
}
