//! What a sheet gives back, in the same places whatever its trade.

use calc::lists::{BuyLine, CutLine, Mark, MarkStrip};
use calc::quantity::{Style, plain};
use calc::report::{Remark, Report, Step, Table, Weight};

use super::drawing::push_drawing;
use super::html::Html;
use super::tape::push_tape;
use crate::words::words;

/// The answers: large, one to three; then what has to be said about them.
pub fn answers(html: &mut Html, report: &Report) {
    html.raw("<dl class=\"answers\">");
    for answer in &report.answers {
        html.raw("<div class=\"answer\">");
        html.tag("dt", "", &answer.label);
        html.raw("<dd data-result=\"");
        html.text(&answer.label);
        html.raw("\">");
        html.text(&answer.text);
        html.tag_if_any("span", "note", &answer.note);
        html.raw("</dd></div>");
    }
    html.raw("</dl><ul class=\"remarks\">");
    for one in &report.remarks {
        remark(html, one);
    }
    html.raw("</ul>");
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
pub fn drawings(html: &mut Html, report: &Report, width: f64, first: u64) {
    for (number, drawing) in (first..).zip(&report.drawings) {
        push_drawing(html, drawing, width, number);
    }
}

/// The marks and the tables.
pub fn marks_and_tables(html: &mut Html, report: &Report, style: Style) {
    for strip in &report.marks {
        mark_strip(html, strip, style);
    }
    for one in &report.tables {
        table(html, one);
    }
}

/// The cautions, and what goes on the lists.
pub fn cautions_and_lists(html: &mut Html, report: &Report, style: Style) {
    cautions(html, report);
    if !report.buy.is_empty() {
        html.raw("<section class=\"buy\"><h2>To buy</h2><ul>");
        for line in &report.buy {
            html.tag("li", "", &buy_words(line));
        }
        html.raw("</ul></section>");
    }
    for line in &report.cut {
        cut_line(html, line, style);
    }
}

/// What can hurt someone or ruin the job.
pub fn cautions(html: &mut Html, report: &Report) {
    html.raw("<section class=\"cautions\"><h2>Take care</h2><ul>");
    for caution in &report.cautions {
        html.raw("<li>");
        html.text(caution.text.say(words()));
        html.tag("cite", "", &caution.source.say(words()));
        html.raw("</li>");
    }
    html.raw("</ul></section>");
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
    html.tag("h2", "", &format!("Marks on the {}", strip.title(style)));
    let datum =
        format!("All from the left end of {}, tape hooked once.", style.length(strip.length));
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
        html.tag("span", "note", &format!("exact spot {left_over}"));
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
    html.tag("p", "help", &format!("Left over: {}", style.length(line.waste)));
    html.raw("</section>");
}

/// A line of a buy list in words: `2 × floor finish, 1 gal container`.
pub fn buy_words(line: &BuyLine) -> String {
    if line.quantity == 0.0 && line.on_hand > 0.0 {
        let name = [line.item.as_str(), line.spec.as_str()].join(", ");
        return format!("{name}: {} here already, none to buy", plain(line.on_hand, 1));
    }
    let quantity = plain(line.quantity, 1);
    let unit = if line.unit == "each" { " ×".to_owned() } else { format!(" {} of", line.unit) };
    if line.spec.is_empty() {
        format!("{quantity}{unit} {}", line.item)
    } else {
        format!("{quantity}{unit} {}, {}", line.item, line.spec)
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
