//! Nailers: what is fixed along a wall where a board reaches from it to a joint, and only that joint's support would hold it.

use super::hold::Hold;
use super::segments::Stretch;
use super::{BoardPiece, BoardTask, SLACK_MM, SupportMark};
use crate::source::Source;
use crate::words::carpentry as words;

/// Why there are nailers.
pub static NAILER: Source = Source::practice_of(words::SOURCE_NAILER);

/// A strip along a wall.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Nailer {
    /// At the rear wall, or at the front one.
    pub rear: bool,
    /// Its centre line, from the front wall. [mm]
    pub at_mm: f64,
    /// Its right end, from the left wall of the field (y = 0). [mm]
    pub from_mm: f64,
    /// Its left end. [mm]
    pub to_mm: f64,
}

impl Nailer {
    /// Its length. [mm]
    pub fn length_mm(&self) -> f64 {
        self.to_mm - self.from_mm
    }
}

impl Hold {
    /// Centre line of the nailer for a piece from a wall to a joint, from the front wall: against the wall, but so that its screws keep
    /// off the board's end, and clear of every support. None where the piece is no such one, or has no room for it. [mm]
    pub(super) fn nailer_mm(&self, stretch: &Stretch) -> Option<f64> {
        let width = 2.0 * self.half_mm;
        let (end, other, step) = match (stretch.joined, stretch.joins) {
            (false, true) if stretch.of.from_opening.is_none() => (stretch.from, stretch.to, 1.0),
            (true, false) if stretch.of.to_opening.is_none() => (stretch.to, stretch.from, -1.0),
            _ => return None,
        };
        let mut in_mm = (self.half_mm - self.end_gap_mm).max(self.edge_mm);
        let mut away: Vec<f64> = self.supports_mm.iter().map(|at| (at - end) * step).collect();
        crate::sorting::sort_by(&mut away, f64::total_cmp);
        for support in away {
            if (support - in_mm).abs() < width - SLACK_MM {
                in_mm = support + width;
            }
        }
        let room = (other - end) * step - width;
        (width > 0.0 && in_mm <= room + SLACK_MM).then_some(end + in_mm * step)
    }
}

/// The nailers of all pieces: one along each wall where one is needed, from the first board on it to the last, but for openings in
/// between.
pub(super) fn nailers(task: &BoardTask, hold: &Hold, pieces: &[BoardPiece]) -> Vec<Nailer> {
    let mut found = Vec::new();
    for rear in [false, true] {
        let on = |mark: &&SupportMark| mark.support.is_none();
        let on =
            |piece: &BoardPiece| Some((piece.marks.iter().find(on)?.offset_mm, piece.across_mm));
        let mut held: Vec<(f64, f64)> = Vec::new();
        let mut at_mm = 0.0;
        for piece in pieces.iter().filter(|piece| (piece.piece > 1) == rear) {
            let Some((offset_mm, (low, high))) = on(piece) else { continue };
            at_mm = piece.from_mm + offset_mm;
            held.push((low, high.min(low + piece.width_at_mm(offset_mm))));
        }
        let (Some(first), Some(last)) = (held.first(), held.last()) else { continue };
        let mut from_mm = first.0;
        for (low, high) in taken(task, (at_mm - hold.half_mm, at_mm + hold.half_mm)) {
            found.push(Nailer { rear, at_mm, from_mm, to_mm: low.min(last.1) });
            from_mm = from_mm.max(high);
        }
        found.push(Nailer { rear, at_mm, from_mm, to_mm: last.1 });
        found.retain(|nailer| {
            let under = |(low, high): &(f64, f64)| {
                *low < nailer.to_mm - SLACK_MM && *high > nailer.from_mm + SLACK_MM
            };
            nailer.rear != rear || nailer.length_mm() > SLACK_MM && held.iter().any(under)
        });
    }
    found
}

/// What openings take across the field over a stretch along the boards, in order. [mm]
fn taken(task: &BoardTask, (from_mm, to_mm): (f64, f64)) -> Vec<(f64, f64)> {
    let clear = task.opening_clearance_mm;
    let over = task
        .openings
        .iter()
        .filter(|one| one.x_mm - clear < to_mm && one.x_mm + one.length_mm + clear > from_mm);
    let mut found: Vec<(f64, f64)> =
        over.map(|one| (one.y_mm - clear, one.y_mm + one.width_mm + clear)).collect();
    crate::sorting::sort_by(&mut found, |a, b| a.0.total_cmp(&b.0));
    found
}
