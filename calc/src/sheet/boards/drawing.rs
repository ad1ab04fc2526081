//! The ceiling plan, and every kind of board as a template strip.

use super::found::Found;
use super::inputs::Job;
use super::{letters, marks, mm};
use crate::carpentry::boards::{BoardPiece, Notch, heights_mm};
use crate::carpentry::stations::{range_mm, width_at_mm};
use crate::drawing::{Anchor, Drawing, Fill, Pen, Point};
use crate::quantity::Style;
use crate::text::text;
use crate::words::{Arg, Msg, boards as words};

/// So many marks are drawn on the plan.
const MOST_CROSSES: usize = 800;
/// Radius of a hole on the plan, larger than life so that it is seen. [m]
const HOLE_ON_PLAN: f64 = 0.012;
/// Boards thinner than this share of the run have no room for their letter on a phone.
const LEAST_LETTERED: f64 = 0.05;

/// The plan, front wall to the left, left wall at the bottom, seen from above.
pub(super) fn plan(job: &Job, found: &Found, style: Style) -> Drawing {
    let layout = &found.layout;
    let task = &job.task;
    let widest = range_mm(&task.stations).map_or(task.field_mm, |(_, widest)| widest);
    let (run, field) = (task.run_mm / 1e3, widest / 1e3);
    // From the body's y to the drawing's.
    let at = |x_mm: f64, y_mm: f64| Point::metres(x_mm / 1e3, field - y_mm / 1e3);
    let said = words::PlanWords {
        courses: Msg::from(words::CourseCount { courses: layout.courses.count }),
        run: mm(task.run_mm),
        pieces: Msg::from(words::PieceCount { pieces: layout.pieces.len() }),
        holes: Msg::from(words::HoleCount { holes: found.all_holes() }),
    };
    let mut drawing = Drawing::new(style.say(words::PLAN), style.say(said));
    let mut walls = vec![at(task.run_mm, 0.0), at(0.0, 0.0)];
    match task.stations.as_slice() {
        [] => walls.extend([Point::metres(0.0, 0.0), Point::metres(run, 0.0)]),
        stations => walls.extend(stations.iter().map(|one| at(one.x_mm, one.width_mm))),
    }
    drawing.area(Pen::Solid, Fill::Empty, &walls);
    for piece in &layout.pieces {
        let (low, high) = piece.across_mm;
        if piece.widths_mm.is_empty() {
            let far = at(piece.to_mm, high);
            drawing.rectangle(Pen::Thin, Fill::Stock, at(piece.from_mm, low), far);
            continue;
        }
        let mut outline = vec![at(piece.to_mm, low), at(piece.from_mm, low)];
        let edge = piece.widths_mm.iter();
        outline.extend(edge.map(|one| at(piece.from_mm + one.x_mm, low + one.width_mm)));
        drawing.area(Pen::Thin, Fill::Stock, &outline);
    }
    for (course, x) in &layout.joints_mm {
        let piece = layout.pieces.iter().find(|piece| piece.course == *course);
        let (low, high) = piece.map_or((0.0, 0.0), |piece| piece.across_mm);
        drawing.line(Pen::Cut, &[at(*x, low), at(*x, high)]);
    }
    for (index, support) in task.supports_mm.iter().enumerate() {
        if *support <= task.run_mm {
            let wall = width_at_mm(&task.stations, *support).unwrap_or(task.field_mm);
            drawing.line(Pen::Centre, &[at(*support, 0.0), at(*support, wall)]);
            // Above the wall, not on its line.
            let above = at(*support, widest + task.run_mm * 0.01);
            drawing.text(above, Anchor::Middle, (index + 1).to_string());
        }
    }
    for nailer in &layout.nailers {
        let half = task.support_width_mm.unwrap_or_default() / 2.0;
        let near = at(nailer.at_mm - half, nailer.from_mm);
        drawing.rectangle(Pen::Hidden, Fill::Empty, near, at(nailer.at_mm + half, nailer.to_mm));
    }
    for (index, opening) in task.openings.iter().enumerate() {
        let (far_x, far_y) = (opening.x_mm + opening.length_mm, opening.y_mm + opening.width_mm);
        let (x, y) = (opening.x_mm, opening.y_mm);
        drawing.rectangle(Pen::Solid, Fill::Opening, at(x, y), at(far_x, far_y));
        let clearance = task.opening_clearance_mm;
        if clearance > 0.0 {
            let near = at(x - clearance, y - clearance);
            drawing.rectangle(
                Pen::Cut,
                Fill::Empty,
                near,
                at(far_x + clearance, far_y + clearance),
            );
        }
        let middle = at(f64::midpoint(x, far_x), f64::midpoint(y, far_y));
        drawing.text(middle, Anchor::Middle, job.opening(index));
    }
    if found.all_holes() <= MOST_CROSSES {
        for piece in &layout.pieces {
            for mark in &piece.marks {
                for y in heights_mm(mark, task.screws_across) {
                    let hole = at(piece.from_mm + mark.offset_mm, piece.across_mm.0 + y);
                    drawing.circle(Pen::Mark, Fill::Empty, hole, HOLE_ON_PLAN);
                }
            }
        }
    }
    let thinnest = layout.pieces.iter().map(BoardPiece::width_mm).fold(f64::INFINITY, f64::min);
    let lettered = thinnest >= task.run_mm * LEAST_LETTERED;
    for piece in layout.pieces.iter().filter(|_| lettered) {
        let (low, high) = piece.across_mm;
        // Between two marks, so that the letter does not stand on one.
        let x = match piece.marks.as_slice() {
            [first, second, ..] => f64::midpoint(first.offset_mm, second.offset_mm),
            _ => piece.length_mm * 0.3,
        };
        let place = at(piece.from_mm + x, f64::midpoint(low, high));
        drawing.text(place, Anchor::Middle, letters(piece.kind));
    }
    drawing.dimension(at(task.run_mm, 0.0), at(0.0, 0.0), 1.5, style.length(mm(task.run_mm)));
    drawing.dimension(at(0.0, 0.0), at(0.0, task.field_mm), 1.5, style.length(mm(task.field_mm)));
    if let Some(rear) = task.stations.last() {
        let (wall, corner) = (at(task.run_mm, rear.width_mm), at(task.run_mm, 0.0));
        drawing.dimension(wall, corner, 1.5, style.length(mm(rear.width_mm)));
    }
    drawing
}

/// Where a cut-out lies across its board, from the right edge. [mm]
pub(super) fn across(piece: &BoardPiece, notch: &Notch) -> (f64, f64) {
    notch.across_mm(piece.width_at_mm(f64::midpoint(notch.from_mm, notch.to_mm)))
}

/// Every kind of board, drawn as high as can be read.
pub(super) fn boards(job: &Job, found: &Found, style: Style) -> Vec<Drawing> {
    let kinds = found.layout.kinds.iter().enumerate();
    kinds
        .map(|(index, kind)| board(job, found, index, &found.layout.pieces[kind.first], style))
        .collect()
}

fn board(job: &Job, found: &Found, index: usize, piece: &BoardPiece, style: Style) -> Drawing {
    let (length, width) = (piece.length_mm / 1e3, piece.width_mm() / 1e3);
    let said = words::BoardWords {
        length: mm(piece.length_mm),
        marks: piece.marks.len(),
        notches: piece.notches.len(),
    };
    let title = marks::named(found, index, style).title(style);
    let mut drawing = Drawing::new(title, style.say(said)).strip();
    // Up is the left edge: the board as it lies in the plan.
    let at = |x_mm: f64, y_mm: f64| Point::metres(x_mm / 1e3, width - y_mm / 1e3);
    let mut outline = vec![at(piece.length_mm, 0.0), at(0.0, 0.0)];
    match piece.widths_mm.as_slice() {
        [] => outline.extend([at(0.0, piece.width_mm()), at(piece.length_mm, piece.width_mm())]),
        edge => outline.extend(edge.iter().map(|one| at(one.x_mm, one.width_mm))),
    }
    drawing.area(Pen::Solid, Fill::Stock, &outline);
    for notch in &piece.notches {
        let (low, high) = across(piece, notch);
        drawing.rectangle(Pen::Cut, Fill::Waste, at(notch.from_mm, low), at(notch.to_mm, high));
        let middle = at(f64::midpoint(notch.from_mm, notch.to_mm), f64::midpoint(low, high));
        drawing.text(middle, Anchor::Middle, job.opening(notch.opening));
        for x in [notch.from_mm, notch.to_mm] {
            let place = Point::metres(x / 1e3, width * 1.25);
            drawing.text(place, Anchor::Middle, style.mark(mm(x)).text);
        }
    }
    for mark in &piece.marks {
        let x = mark.offset_mm;
        for y in heights_mm(mark, job.task.screws_across) {
            drawing.cross(Pen::Mark, at(x, y));
        }
        drawing.text(
            Point::metres(x / 1e3, -width * 0.25),
            Anchor::Middle,
            match mark.support {
                Some(support) => text!("{} · {}", support + 1, style.mark(mm(x)).text),
                None => style.say(words::NailerAt { at: Arg::mark(mm(x)) }),
            },
        );
    }
    let (left, right) = (Point::metres(0.0, width), Point::metres(length, width));
    drawing.dimension(right, left, 3.0, style.length(mm(piece.length_mm)));
    drawing
}
