//! A course between openings: the segments that no opening cuts through, and the pieces between joints.

use super::notch::widest_strip;
use super::{BoardPiece, BoardTask, SLACK_MM, openings};
use crate::sorting::sort_by;

/// A stretch of a course that no opening cuts through: from a wall or an opening to the next. From the front wall.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Segment {
    /// Its left end. [mm]
    pub from_mm: f64,
    /// Its right end. [mm]
    pub to_mm: f64,
    /// The opening that cuts its left end; none at the front wall.
    pub from_opening: Option<usize>,
    /// The opening that cuts its right end; none at the rear wall.
    pub to_opening: Option<usize>,
}

impl Segment {
    /// A course that nothing cuts through. [mm]
    pub fn whole((from_mm, to_mm): (f64, f64)) -> Self {
        Self { from_mm, to_mm, from_opening: None, to_opening: None }
    }

    /// Its length. [mm]
    pub fn length_mm(&self) -> f64 {
        self.to_mm - self.from_mm
    }

    /// Whether an opening cuts it off at either end.
    pub fn is_cut(&self) -> bool {
        self.from_opening.is_some() || self.to_opening.is_some()
    }

    /// Whether a place lies in it. [mm]
    pub fn holds(&self, at_mm: f64) -> bool {
        at_mm > self.from_mm - SLACK_MM && at_mm < self.to_mm + SLACK_MM
    }
}

/// A piece of a course before anything is marked, from the front wall. [mm]
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Stretch {
    pub(super) from: f64,
    pub(super) to: f64,
    /// Whether its left end meets another board.
    pub(super) joined: bool,
    /// Whether its right end meets another board.
    pub(super) joins: bool,
    /// The segment that it lies in.
    pub(super) of: Segment,
}

impl Stretch {
    /// A segment in one piece.
    pub(super) fn whole(of: Segment) -> Self {
        Self { from: of.from_mm, to: of.to_mm, joined: false, joins: false, of }
    }

    /// The opening that cuts its left end.
    pub(super) fn left_opening(&self) -> Option<usize> {
        self.of.from_opening.filter(|_| !self.joined)
    }

    /// The opening that cuts its right end.
    pub(super) fn right_opening(&self) -> Option<usize> {
        self.of.to_opening.filter(|_| !self.joins)
    }
}

/// What openings take from the whole width of a course.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Gap {
    from: f64,
    to: f64,
    /// The openings at its ends.
    openings: (usize, usize),
}

/// The segments of a course that is whole as yet, from the front rearwards. Where several openings take its width together, it is cut
/// through as well; a course that tapers counts with its narrowest width along the cut.
pub fn segments(task: &BoardTask, course: &BoardPiece) -> Vec<Segment> {
    let mut found = Vec::new();
    let mut from = (course.from_mm, None);
    for gap in gaps(task, course) {
        if gap.from - from.0 > SLACK_MM {
            found.push(Segment {
                from_mm: from.0,
                to_mm: gap.from,
                from_opening: from.1,
                to_opening: Some(gap.openings.0),
            });
        }
        from = (gap.to, Some(gap.openings.1));
    }
    if course.to_mm - from.0 > SLACK_MM {
        found.push(Segment {
            from_mm: from.0,
            to_mm: course.to_mm,
            from_opening: from.1,
            to_opening: None,
        });
    }
    found
}

fn gaps(task: &BoardTask, course: &BoardPiece) -> Vec<Gap> {
    let cuts = openings::cuts(task, course);
    let mut places: Vec<f64> = cuts.iter().flat_map(|cut| [cut.along.0, cut.along.1]).collect();
    sort_by(&mut places, f64::total_cmp);
    let mut gaps: Vec<Gap> = Vec::new();
    for pair in places.windows(2) {
        let (from, to) = (pair[0], pair[1]);
        if to - from <= SLACK_MM {
            continue;
        }
        let here =
            cuts.iter().filter(|cut| cut.along.0 < to - SLACK_MM && cut.along.1 > from + SLACK_MM);
        let Some(first) = here.clone().next() else { continue };
        let width = course.narrowest_mm(from - course.from_mm, to - course.from_mm);
        if widest_strip(width, here.map(|cut| cut.across).collect()).is_some() {
            continue;
        }
        match gaps.last_mut() {
            Some(last) if from - last.to <= SLACK_MM => {
                last.to = to;
                last.openings.1 = first.opening;
            }
            _ => gaps.push(Gap { from, to, openings: (first.opening, first.opening) }),
        }
    }
    gaps
}

/// The pieces between the ends of segments and joints. Joints count from the front wall.
pub(super) fn between(segments: &[Segment], joints: &[f64]) -> Vec<Stretch> {
    let mut found = Vec::new();
    for segment in segments {
        let mut piece = Stretch::whole(*segment);
        for &at in joints {
            if at > segment.from_mm + SLACK_MM && at < segment.to_mm - SLACK_MM {
                found.push(Stretch { to: at, joins: true, ..piece });
                piece = Stretch { from: at, joined: true, ..piece };
            }
        }
        found.push(piece);
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Worked by hand: a run of 5 m with a gap from 2 to 2.6 m.
    #[test]
    fn boards_end_at_a_gap() {
        let whole = Segment::whole((0.0, 5000.0));
        let cut = [
            Segment { to_mm: 2000.0, to_opening: Some(0), ..whole },
            Segment { from_mm: 2600.0, from_opening: Some(0), ..whole },
        ];
        let pieces = |segments: &[Segment], joints: &[f64]| -> Vec<(f64, f64, bool, bool)> {
            let found = between(segments, joints);
            found.iter().map(|one| (one.from, one.to, one.joined, one.joins)).collect()
        };
        assert_eq!(
            pieces(&[whole], &[1500.0, 3000.0]),
            [
                (0.0, 1500.0, false, true),
                (1500.0, 3000.0, true, true),
                (3000.0, 5000.0, true, false)
            ]
        );
        assert_eq!(
            pieces(&cut, &[3000.0]),
            [
                (0.0, 2000.0, false, false),
                (2600.0, 3000.0, false, true),
                (3000.0, 5000.0, true, false)
            ]
        );
    }
}
