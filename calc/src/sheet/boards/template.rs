//! Cut-outs beside openings and the screws at a joint, in true size.

use super::found::Found;
use super::inputs::Job;
use super::{drawing, letters, mm};
use crate::carpentry::boards::{BoardPiece, Notch, across_mm, heights_mm};
use crate::drawing::{Anchor, Drawing, Fill, Pen, Point};
use crate::quantity::Style;
use crate::words::{Arg, boards as words};

/// So much of the board is shown on both sides of a cut-out or a joint. [mm]
const BESIDE_MM: f64 = 30.0;

/// One for the joints, where there are any, and one for each different cut-out that leaves a part
/// of the board's width.
pub(super) fn templates(job: &Job, found: &Found, style: Style) -> Vec<Drawing> {
    let pieces = &found.layout.pieces;
    let kinds = found.layout.kinds.iter().filter_map(|kind| pieces.get(kind.first));
    let cut_outs = kinds.flat_map(|piece| piece.notches.iter().map(move |notch| (piece, notch)));
    // On a board that tapers the paper's edges would not lie on the board's.
    let beside = cut_outs.filter(|(piece, _)| piece.widths_mm.is_empty());
    joint(job, found, style)
        .into_iter()
        .chain(beside.map(|(piece, notch)| cut_out(job, piece, notch, style)))
        .collect()
}

/// Both boards' ends on a support, with their screws.
fn joint(job: &Job, found: &Found, style: Style) -> Option<Drawing> {
    let joined = !found.layout.joints_mm.is_empty();
    let support = job.task.support_width_mm.filter(|_| joined)?;
    let (width, edge) = (job.task.coverage_mm, found.layout.edge_distance_mm);
    let said = words::JointTemplateWords { edge: Arg::mark(mm(edge)) };
    let mut drawing = Drawing::new(style.say(words::JOINT_TEMPLATE), style.say(said));
    let half = support.max(2.0 * edge) / 2.0 + BESIDE_MM;
    let at = |x_mm: f64, y_mm: f64| Point::metres(x_mm / 1e3, y_mm / 1e3);
    drawing.rectangle(Pen::Thin, Fill::Empty, at(-half, 0.0), at(half, width));
    for x in [-support / 2.0, support / 2.0] {
        drawing.line(Pen::Hidden, &[at(x, 0.0), at(x, width)]);
    }
    drawing.line(Pen::Solid, &[at(0.0, 0.0), at(0.0, width)]);
    for x in [-edge, edge] {
        drawing.line(Pen::Centre, &[at(x, 0.0), at(x, width)]);
        for y in across_mm((0.0, width), job.task.screws_across) {
            drawing.cross(Pen::Mark, at(x, y));
        }
    }
    drawing.text(at(0.0, width + 6.0), Anchor::Middle, style.say(words::JOINT_TEMPLATE_TEXT));
    Some(drawing)
}

/// The board around a cut-out, its left edge above.
fn cut_out(job: &Job, piece: &BoardPiece, notch: &Notch, style: Style) -> Drawing {
    let (opening, letter) = (job.opening(notch.opening), letters(piece.kind));
    let title = style.say(words::CutOutTemplate { opening, letter });
    let from = Arg::mark(mm(notch.from_mm));
    let mut drawing = Drawing::new(title, style.say(words::CutOutTemplateWords { from }));
    let width = piece.width_mm();
    let at = |x_mm: f64, y_mm: f64| Point::metres(x_mm / 1e3, (width - y_mm) / 1e3);
    let from = (notch.from_mm - BESIDE_MM).max(0.0);
    let to = (notch.to_mm + BESIDE_MM).min(piece.length_mm);
    drawing.rectangle(Pen::Thin, Fill::Empty, at(from, 0.0), at(to, width));
    let (low, high) = drawing::across(piece, notch);
    drawing.rectangle(Pen::Cut, Fill::Empty, at(notch.from_mm, low), at(notch.to_mm, high));
    for mark in piece.marks.iter().filter(|mark| mark.offset_mm > from && mark.offset_mm < to) {
        for y in heights_mm(mark, job.task.screws_across) {
            drawing.cross(Pen::Mark, at(mark.offset_mm, y));
        }
    }
    let below = |x: f64| at(x, -6.0);
    let words = |x: f64| style.mark(mm(x)).text;
    drawing.text(below(notch.from_mm), Anchor::Start, words(notch.from_mm));
    drawing.text(below(notch.to_mm), Anchor::End, words(notch.to_mm));
    drawing
}
