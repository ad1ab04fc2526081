//! Today's sheet: what is left of the work on one page, to be folded for the wallet.

use calc::project::{Evaluation, Project};
use calc::words::{Id, app_paper as said};

use super::{date_of, first_figure};
use crate::desk::ticked;
use crate::view::drawing::paper::text_width;
use crate::view::html::Html;
use crate::view::marks::{MARKS, boards};
use crate::view::{buy, checks, cuts, title_of};
use crate::words::{say, text};

/// Lines in a panel, its heading not counted: so many fit the least of them, on Letter.
const LINES: usize = 12;
/// What fits a line, as wide as at the letters' usual height. [px]
const LINE: f64 = 375.0;

/// A line: its figure, and what it is of.
type Row = (String, String);

/// The page: eight panels, each of a fixed size, with no more than fits them.
pub fn push_today(html: &mut Html, project: &Project, all: &Evaluation) {
    let lists = [
        (said::MARKS_NEXT, marks(project, all), 2),
        (said::CUTS_NEXT, cuts(project, all), 1),
        (said::CHECKS_LEFT, checks(project, all), 1),
        (said::LEFT_TO_BUY, buy::left_lines(project, all), 1),
        (said::FIGURES, figures(project, all), 2),
    ];
    html.raw("<div class=\"wallet\"><section class=\"panel\">");
    html.tag("h2", "", &[text(said::TODAY), ": ", project.name()].concat());
    html.tag_if_any("p", "", &date_of(project));
    html.raw("<ul>");
    let left = said::LeftToday {
        marks: lists[0].1.len(),
        pieces: cuts::open_pieces(project, all).len(),
        checks: lists[2].1.len(),
    };
    push_row(html, &(String::new(), say(left)));
    let (count, cost) = buy::left_words(project, all);
    push_row(html, &(cost, count));
    html.raw("</ul>");
    html.tag("p", "", text(said::FOLD));
    html.raw("</section>");
    for (title, rows, panels) in lists {
        push_panels(html, title, &rows, panels);
    }
    html.raw("</div>");
}

/// A list on so many panels; what does not fit is counted.
fn push_panels(html: &mut Html, title: Id, rows: &[Row], panels: usize) {
    let mut rest = rows;
    for panel in 1..=panels {
        html.raw("<section class=\"panel\">");
        html.tag("h2", "", text(title));
        if rows.is_empty() {
            html.tag("p", "", text(said::NOTHING_LEFT));
        }
        let all_fit = fitting(rest, LINES) == rest.len();
        // The last panel keeps a line for what is not on it.
        let room = if all_fit || panel < panels { LINES } else { LINES - 1 };
        let (here, later) = rest.split_at(fitting(rest, room));
        html.raw("<ul>");
        here.iter().for_each(|row| push_row(html, row));
        html.raw("</ul>");
        if panel == panels && !later.is_empty() {
            html.tag("p", "more", &say(said::AndMore { count: later.len() }));
        }
        html.raw("</section>");
        rest = later;
    }
}

fn push_row(html: &mut Html, row: &Row) {
    html.raw("<li>");
    html.tag_if_any("strong", "", &row.0);
    html.raw(" ");
    html.text(&row.1);
    html.raw("</li>");
}

/// How many of the rows, from the first, fit so many lines.
fn fitting(rows: &[Row], lines: usize) -> usize {
    let mut used = 0.0;
    let fits = |row: &&Row| {
        // Figures are bold, and words go to the next line whole.
        let wide = text_width(&row.0) * 1.15 + text_width(&row.1);
        used += (wide * 1.1 / LINE).ceil().max(1.0);
        used <= lines as f64
    };
    rows.iter().take_while(fits).count()
}

/// The marks that are not ticked, board by board.
fn marks(project: &Project, all: &Evaluation) -> Vec<Row> {
    let style = project.style();
    let mut rows = Vec::new();
    for board in boards(all) {
        if board.done(project) >= board.strip.alike {
            continue;
        }
        for mark in &board.strip.marks {
            if ticked(project, MARKS, &board.mark_key(mark)).is_none() {
                let of = [board.name(), ": ", &mark.label].concat();
                rows.push((style.mark(mark.at).text, of));
            }
        }
    }
    rows
}

/// The pieces that are not cut; like ones that follow each other together.
fn cuts(project: &Project, all: &Evaluation) -> Vec<Row> {
    let mut rows: Vec<(usize, Row)> = Vec::new();
    for (bar, piece) in cuts::open_pieces(project, all) {
        let of = say(said::PieceFrom { piece: piece.label.clone(), stock: bar.stock.clone() });
        let row = (project.style().mark(piece.length).text, of);
        match rows.last_mut() {
            Some((count, last)) if *last == row => *count += 1,
            _ => rows.push((1, row)),
        }
    }
    let counted = rows.into_iter().map(|(count, (length, of))| match count {
        1 => (length, of),
        _ => (format!("{count} × {length}"), of),
    });
    counted.collect()
}

/// What is not ticked of the sheets' own lists.
fn checks(project: &Project, all: &Evaluation) -> Vec<Row> {
    let mut rows = Vec::new();
    for (id, result) in &all.sheets {
        let Ok(report) = result.as_ref() else { continue };
        let name = checks::list_name(id);
        for line in report.checks.iter().flat_map(|list| &list.lines) {
            if ticked(project, &name, &line.key).is_none() {
                rows.push((String::new(), line.text.clone()));
            }
        }
    }
    rows
}

/// The first figure of each sheet.
fn figures(project: &Project, all: &Evaluation) -> Vec<Row> {
    let sheets = project.sheets();
    sheets.map(|sheet| (first_figure(all, &sheet.id()).1.to_owned(), title_of(&sheet))).collect()
}
