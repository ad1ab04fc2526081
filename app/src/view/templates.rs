//! Templates in true size: cut into pieces that fit a sheet of paper, with crosses to join them by
//! and a square to measure that the printer kept the scale.

use calc::drawing::{Anchor, Drawing, Point, Shape};
use calc::words::{Arg, Msg, app_paper as said};
use leptos::prelude::*;

use super::book::{paper_choice, print_button};
use super::drawing::paper::Paper;
use super::drawing::pen_class;
use super::html::{Html, escape, shown};
use crate::desk::Desk;
use crate::storage::Store;
use crate::words::{say, text};

/// What of a template is on one piece, both its joints included: fits A4 and Letter. [mm]
const PIECE: (f64, f64) = (176.0, 214.0);
/// What two neighbours both show. [mm]
const OVERLAP: f64 = 12.0;
/// Air around a template. [mm]
const AIR: f64 = 4.0;
/// A template of more pieces is no help. More than any flange of a roof opening needs.
const MOST_PIECES: usize = 60;

/// The page.
pub fn templates_page(store: Store, desk: Desk, id: &str) -> AnyView {
    let id = id.to_owned();
    let pieces = shown("templates", move |html| {
        let all = desk.evaluation.get();
        let templates = match all.sheet(&id) {
            Some(Ok(report)) => report.templates.as_slice(),
            _ => &[],
        };
        if templates.is_empty() {
            html.tag("p", "help", text(said::NO_TEMPLATES));
            return;
        }
        control_square(html);
        for template in templates {
            push_template(html, template);
        }
    });
    view! {
        <h1 tabindex="-1">{text(said::TEMPLATES)}</h1>
        <div class="controls">
            <p>{text(said::HOW_TO_PRINT)}</p>
            {paper_choice(store, desk)}
            {print_button(said::PRINT)}
        </div>
        {pieces}
    }
    .into_any()
}

/// A square of 100 mm and two lines of 4 in.
fn control_square(html: &mut Html) {
    let mut paper = Paper::in_millimetres((0.0, 0.0), (PIECE.0, 112.0));
    let square = [(2.0, 2.0), (102.0, 2.0), (102.0, 102.0), (2.0, 102.0)];
    paper.path("pen-solid", &square, true);
    let inches = 101.6;
    // A line along each way of the paper: printers scale the two apart.
    paper.path("pen-solid", &[(2.0, 108.0), (2.0 + inches, 108.0)], false);
    paper.path("pen-solid", &[(110.0, 2.0), (110.0, 2.0 + inches)], false);
    for at in 0..=4 {
        let at = 2.0 + 25.4 * f64::from(at);
        paper.path("pen-thin", &[(at, 105.5), (at, 110.5)], false);
        paper.path("pen-thin", &[(107.5, at), (112.5, at)], false);
    }
    let words = [
        text(said::SQUARE_EACH_WAY),
        text(said::SQUARE_MEASURE),
        text(said::SQUARE_IS),
        text(said::SQUARE_LINES),
        text(said::SQUARE_IF_NOT),
    ];
    let mut at = (52.0, 52.0, "text");
    for words in words {
        label(&mut paper, at.2, (at.0, at.1), words);
        at = if at.0 < 100.0 { (117.0, 16.0, "text text-start") } else { (at.0, at.1 + 7.0, at.2) };
    }
    html.raw("<figure class=\"template control\" tabindex=\"0\" role=\"img\" aria-label=\"");
    html.text(text(said::SQUARE));
    html.raw("\">");
    html.raw(&paper.finish());
    html.raw("</figure>");
}

/// A template in pieces.
fn push_template(html: &mut Html, template: &Drawing) {
    let Some((low, high)) = template.bounds() else { return };
    let low = (low.x * 1e3 - AIR, low.y * 1e3 - AIR);
    let size = (high.x * 1e3 + AIR - low.0, high.y * 1e3 + AIR - low.1);
    let (columns, rows) = (pieces(size.0, PIECE.0), pieces(size.1, PIECE.1));
    html.raw("<section class=\"cut-out\">");
    html.tag("h2", "", &template.title);
    html.tag("p", "", &template.words);
    if columns * rows > MOST_PIECES {
        html.tag("p", "", text(said::TOO_LARGE));
    } else {
        for row in 0..rows {
            for column in 0..columns {
                let grid = Grid { low, size, columns, rows };
                push_piece(html, template, &grid, column, row);
            }
        }
    }
    html.raw("</section>");
}

/// How many pieces a size takes.
fn pieces(size: f64, piece: f64) -> usize {
    ((size - OVERLAP) / (piece - OVERLAP) - 1e-6).ceil().max(1.0) as usize
}

/// How a template is cut into pieces. [mm]
struct Grid {
    low: (f64, f64),
    size: (f64, f64),
    columns: usize,
    rows: usize,
}

fn push_piece(html: &mut Html, template: &Drawing, grid: &Grid, column: usize, row: usize) {
    let step = (PIECE.0 - OVERLAP, PIECE.1 - OVERLAP);
    let corner = (grid.low.0 + step.0 * column as f64, grid.low.1 + step.1 * row as f64);
    let end = (grid.low.0 + grid.size.0, grid.low.1 + grid.size.1);
    let size = (PIECE.0.min(end.0 - corner.0), PIECE.1.min(end.1 - corner.1));
    let number = row * grid.columns + column + 1;
    let count = grid.columns * grid.rows;
    let mut joints: Vec<Arg> = Vec::new();
    let mut paper = Paper::in_millimetres(corner, size);
    draw(&mut paper, template);
    let half = OVERLAP / 2.0;
    let (left, right) = (corner.0 + half, corner.0 + step.0 + half);
    let (top, bottom) = (corner.1 + half, corner.1 + step.1 + half);
    let inside = |at: f64, from: f64, size: f64| at.clamp(from + 3.0, from + (size - 3.0).max(3.0));
    // Two crosses on every joint, in the same spots on both its pieces.
    let mut joint = |exists: bool, side: Msg, crosses: [(f64, f64); 2]| {
        if exists {
            paper.path("joint", &crosses, false);
            for (x, y) in crosses {
                paper.path("pen-thin", &[(x - 3.0, y), (x + 3.0, y)], false);
                paper.path("pen-thin", &[(x, y - 3.0), (x, y + 3.0)], false);
            }
            joints.push(side.into());
        }
    };
    let (y0, y1) = (inside(top, corner.1, size.1), inside(bottom, corner.1, size.1));
    let (x0, x1) = (inside(left, corner.0, size.0), inside(right, corner.0, size.0));
    let piece = number - 1;
    joint(column > 0, said::JointLeft { piece }.into(), [(left, y0), (left, y1)]);
    let piece = number + 1;
    joint(column + 1 < grid.columns, said::JointRight { piece }.into(), [(right, y0), (right, y1)]);
    let piece = number.saturating_sub(grid.columns);
    joint(row > 0, said::JointAbove { piece }.into(), [(x0, top), (x1, top)]);
    let piece = number + grid.columns;
    joint(row + 1 < grid.rows, said::JointBelow { piece }.into(), [(x0, bottom), (x1, bottom)]);
    html.raw("<figure class=\"template\" tabindex=\"0\">");
    if count > 1 {
        let words = say(said::Piece { number, count, joints: Arg::each(joints) });
        html.tag("figcaption", "", &words);
    }
    html.raw("<div role=\"img\" aria-label=\"");
    html.text(&template.title);
    html.raw("\">");
    html.raw(&paper.finish());
    html.raw("</div></figure>");
}

/// The whole template; the piece shows what lies on it.
fn draw(paper: &mut Paper, template: &Drawing) {
    let mm = |point: &Point| (point.x * 1e3, point.y * 1e3);
    for shape in &template.shapes {
        match shape {
            Shape::Line { points, pen } | Shape::Area { points, pen, .. } => {
                let points: Vec<_> = points.iter().map(mm).collect();
                let closed = matches!(shape, Shape::Area { .. });
                paper.path(pen_class(*pen), &points, closed);
            }
            Shape::Circle { centre, radius, pen, .. } => {
                let (x, y) = mm(centre);
                paper.open("circle", pen_class(*pen));
                for (name, value) in [("cx", x), ("cy", y), ("r", radius * 1e3)] {
                    paper.number(name, value);
                }
                paper.push("/>");
            }
            Shape::Cross { at, pen } => {
                let (x, y) = mm(at);
                let class = pen_class(*pen);
                paper.path(class, &[(x - 3.0, y - 3.0), (x + 3.0, y + 3.0)], false);
                paper.path(class, &[(x - 3.0, y + 3.0), (x + 3.0, y - 3.0)], false);
            }
            Shape::Text { at, text, anchor } => {
                let class = match anchor {
                    Anchor::Start => "text text-start",
                    Anchor::Middle => "text",
                    Anchor::End => "text text-end",
                };
                label(paper, class, mm(at), text);
            }
            // A template is its own size: its figures stand as texts.
            Shape::Dimension { .. } => {}
        }
    }
}

fn label(paper: &mut Paper, class: &str, at: (f64, f64), text: &str) {
    paper.open("text", class);
    paper.number("x", at.0);
    paper.number("y", at.1 + 1.4);
    paper.push(">");
    let mut escaped = String::new();
    escape(&mut escaped, text);
    paper.push(&escaped);
    paper.push("</text>");
}
