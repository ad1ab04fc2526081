//! Joints and openings: where no joint lies, and boards that end at an opening.

use super::{BoardPiece, BoardTask, Edge, SLACK_MM, notch};
use crate::carpentry::courses::Courses;
use crate::carpentry::joints::NoJoint;
use crate::sorting::sort_by;

/// A piece of a course before anything is marked, from the run's left end. [mm]
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Stretch {
    pub(super) from: f64,
    pub(super) to: f64,
    /// Whether its left end meets another board.
    pub(super) joined: bool,
    /// Whether its right end meets another board.
    pub(super) joins: bool,
}

/// Where courses may have no joint: what openings take of them, and so far beside it that a support there has all of its face.
pub(super) fn no_joints(task: &BoardTask, courses: &Courses, support_mm: f64) -> Vec<NoJoint> {
    let beside = task.opening_clearance_mm + support_mm / 2.0;
    let course_of = |y_mm: f64| {
        let full = (y_mm - task.side_gap_mm - courses.first_mm) / task.coverage_mm + 1.0;
        // The saturation is meant: what lies beyond a wall belongs to the course beside it.
        (full.floor().max(0.0) as usize).min(courses.count.saturating_sub(1) as usize)
    };
    let mut found = Vec::new();
    for opening in &task.openings {
        let low = opening.y_mm - task.opening_clearance_mm;
        let high = opening.y_mm + opening.width_mm + task.opening_clearance_mm;
        found.push(NoJoint {
            first_course: course_of(low + SLACK_MM),
            last_course: course_of(high - SLACK_MM),
            from_mm: opening.x_mm - beside - task.end_gap_mm,
            to_mm: opening.x_mm + opening.length_mm + beside - task.end_gap_mm,
        });
    }
    found
}

/// What openings take from the whole width of a course, from the run's left end, in order. [mm]
pub(super) fn gaps(task: &BoardTask, run_mm: f64, across_mm: (f64, f64)) -> Vec<(f64, f64)> {
    let along = (task.end_gap_mm, task.end_gap_mm + run_mm);
    let mut gaps = Vec::new();
    for (index, opening) in task.openings.iter().enumerate() {
        let cut = notch::notch(index, opening, task.opening_clearance_mm, along, across_mm);
        if let Some(cut) = cut.filter(|cut| cut.edge == Edge::Through) {
            gaps.push((cut.from_mm, cut.to_mm));
        }
    }
    sort_by(&mut gaps, |a, b| a.0.total_cmp(&b.0));
    gaps
}

/// The pieces between gaps and joints. A joint that a gap has made needless goes: where gaps are left between, both its boards are
/// one as long as the stock gives it.
pub(super) fn between(
    gaps: &[(f64, f64)],
    joints: &[f64],
    run_mm: f64,
    longest_mm: f64,
) -> Vec<Stretch> {
    let mut found = Vec::new();
    let mut start = 0.0;
    for (gap_from, gap_to) in gaps.iter().copied().chain([(run_mm, run_mm)]) {
        if gap_from - start > SLACK_MM {
            let inside = joints.iter().copied();
            let mut inside: Vec<f64> =
                inside.filter(|at| *at > start + SLACK_MM && *at < gap_from - SLACK_MM).collect();
            if !gaps.is_empty() {
                drop_needless(&mut inside, (start, gap_from), longest_mm);
            }
            let first = found.len();
            let mut from = start;
            for to in inside.into_iter().chain([gap_from]) {
                let joined = found.len() > first;
                found.push(Stretch { from, to, joined, joins: to < gap_from });
                from = to;
            }
        }
        start = f64::max(start, gap_to);
    }
    found
}

/// Takes out every joint whose two boards one board can be.
fn drop_needless(joints: &mut Vec<f64>, (from, to): (f64, f64), longest_mm: f64) {
    let mut at = 0;
    while at < joints.len() {
        let before = if at == 0 { from } else { joints[at - 1] };
        let after = joints.get(at + 1).copied().unwrap_or(to);
        if after - before <= longest_mm + SLACK_MM {
            joints.remove(at);
        } else {
            at += 1;
        }
    }
}

/// Whether an opening takes some of the board at one of its joints.
pub(super) fn cuts_joint(piece: &BoardPiece, stretch: &Stretch) -> bool {
    piece.notches.iter().any(|notch| {
        stretch.joined && notch.from_mm <= SLACK_MM
            || stretch.joins && notch.to_mm >= piece.length_mm - SLACK_MM
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn pieces(gaps: &[(f64, f64)], joints: &[f64], longest: f64) -> Vec<(f64, f64, bool, bool)> {
        let found = between(gaps, joints, 5000.0, longest);
        found.iter().map(|one| (one.from, one.to, one.joined, one.joins)).collect()
    }

    /// Worked by hand: a run of 5 m with a gap from 2 to 2.6 m.
    #[test]
    fn boards_end_at_a_gap() {
        let whole = pieces(&[], &[1500.0, 3000.0], 100.0);
        assert_eq!(
            whole,
            [
                (0.0, 1500.0, false, true),
                (1500.0, 3000.0, true, true),
                (3000.0, 5000.0, true, false)
            ]
        );
        // A joint in the gap is none any more, and those that one board can bridge are needless.
        let gap = [(2000.0, 2600.0)];
        assert_eq!(
            pieces(&gap, &[2300.0], 3000.0),
            [(0.0, 2000.0, false, false), (2600.0, 5000.0, false, false)]
        );
        assert_eq!(
            pieces(&gap, &[1500.0, 3000.0], 2400.0),
            [(0.0, 2000.0, false, false), (2600.0, 5000.0, false, false)]
        );
        assert_eq!(
            pieces(&gap, &[1500.0, 3000.0], 2200.0),
            [
                (0.0, 2000.0, false, false),
                (2600.0, 3000.0, false, true),
                (3000.0, 5000.0, true, false)
            ]
        );
        // Gaps at the wall and over one another leave no sliver.
        let many = [(0.0, 300.0), (200.0, 400.0), (4800.0, 5000.0)];
        assert_eq!(pieces(&many, &[], 5000.0), [(400.0, 4800.0, false, false)]);
    }
}
