//! What openings take of a course, its notches, and where no joint lies.

use super::{BoardPiece, BoardTask, Edge, Notch, Opening, SLACK_MM, notch, segments::Stretch};
use crate::sorting::sort_by;

/// What an opening takes of a course: from the front wall, and from the course's right edge. [mm]
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Taken {
    pub(super) opening: usize,
    pub(super) along: (f64, f64),
    pub(super) across: (f64, f64),
}

/// What each opening takes of a course, at the course's narrowest along it.
pub(super) fn cuts(task: &BoardTask, course: &BoardPiece) -> Vec<Taken> {
    let mut found = Vec::new();
    for (opening, one) in task.openings.iter().enumerate() {
        let (from, to) = along_mm(one, task.opening_clearance_mm, course);
        let width = course.narrowest_mm(from - course.from_mm, to - course.from_mm);
        if let Some(cut) = notch_of(opening, one, task, course, width) {
            let along = (course.from_mm + cut.from_mm, course.from_mm + cut.to_mm);
            found.push(Taken { opening, along, across: cut.across_mm(width) });
        }
    }
    found
}

/// The notches of a piece, from left to right.
pub(super) fn notches(task: &BoardTask, piece: &BoardPiece) -> Vec<Notch> {
    let mut found = Vec::new();
    for (index, opening) in task.openings.iter().enumerate() {
        // A board that tapers is as wide as it is in the middle of the cut.
        let (from, to) = along_mm(opening, 0.0, piece);
        let width = piece.width_at_mm(f64::midpoint(from, to) - piece.from_mm);
        let cut = notch_of(index, opening, task, piece, width);
        found.extend(cut.filter(|cut| cut.edge != Edge::Through));
    }
    sort_by(&mut found, |a, b| a.from_mm.total_cmp(&b.from_mm));
    found
}

/// Where an opening lies along a piece, from the front wall. [mm]
fn along_mm(opening: &Opening, clearance_mm: f64, piece: &BoardPiece) -> (f64, f64) {
    let from = (opening.x_mm - clearance_mm).max(piece.from_mm);
    (from, (opening.x_mm + opening.length_mm + clearance_mm).min(piece.to_mm))
}

fn notch_of(
    index: usize,
    opening: &Opening,
    task: &BoardTask,
    piece: &BoardPiece,
    width_mm: f64,
) -> Option<Notch> {
    let low = piece.across_mm.0;
    let along = (piece.from_mm, piece.to_mm);
    notch::notch(index, opening, task.opening_clearance_mm, along, (low, low + width_mm))
}

/// Stretches beside what openings take of part of a course's width, so far that a support there has all of its face: where no joint
/// lies. A joint in what is cut through is none. From the front wall. [mm]
pub(super) fn beside(course: &BoardPiece, task: &BoardTask, support_mm: f64) -> Vec<(f64, f64)> {
    let mut found = Vec::new();
    for cut in cuts(task, course) {
        let width = course.narrowest_mm(cut.along.0 - course.from_mm, cut.along.1 - course.from_mm);
        if notch::widest_strip(width, vec![cut.across]).is_some() {
            found.push((cut.along.0 - support_mm / 2.0, cut.along.1 + support_mm / 2.0));
        }
    }
    found
}

/// Whether an opening takes some of the board at one of its joints.
pub(super) fn cuts_joint(piece: &BoardPiece, stretch: &Stretch) -> bool {
    piece.notches.iter().any(|notch| {
        stretch.joined && notch.from_mm <= SLACK_MM
            || stretch.joins && notch.to_mm >= piece.length_mm - SLACK_MM
    })
}
