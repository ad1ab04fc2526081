//! Boards over supports: courses, pieces, the marks and the notches of every piece.
//!
//! x runs from the front wall, y from the left wall (seen facing forward); the first course lies along y = 0. Seen along the
//! boards, facing +x, a board's left edge is the one of greater y.

mod notch;

use crate::sorting::sort_by;
use std::fmt;

pub use notch::{Edge, Notch, Opening};

use super::courses::{Courses, CoursesError, Start, courses, usual_least_rip_mm};
use super::cut_stock::Stock;
use super::joints::{JointError, JointPlan, JointTask, USUAL_LEAST_PIECE_MM, plan_joints};
use crate::source::Source;

/// Where the marks lie.
pub static MARKS: Source = Source::identity(
    "mark = support - left end; at a joint both boards end on the support's centre line and their marks stand in by the edge distance",
);
/// Marks at a joint where no edge distance is given.
pub static HALF_BEARING: Source = Source::common_practice(
    "at a joint each board bears on half the support, its mark in the middle of that half",
);

/// Strips beside a cut-out that are too narrow for a screw.
pub static LEAST_STRIP: Source =
    Source::common_practice("a strip of less than 1 in beside a cut-out splits at a screw");
/// The width of [`LEAST_STRIP`]. [mm]
pub const LEAST_STRIP_MM: f64 = 25.4;

/// Slack of comparisons. [mm]
const SLACK_MM: f64 = 1e-3;
/// Least distance of joints in neighbouring courses where none is given: six inches, see [`super::joints::STRIP_STAGGER`]. [mm]
pub const USUAL_STAGGER_MM: f64 = 152.4;

/// What is to be covered, and with what.
#[derive(Clone, Debug, PartialEq)]
pub struct BoardTask {
    /// Along the boards, wall to wall. [mm]
    pub run_mm: f64,
    /// Across the boards, wall to wall. [mm]
    pub field_mm: f64,
    /// Width that one course covers. [mm]
    pub coverage_mm: f64,
    /// Left free at either end of the run. [mm]
    pub end_gap_mm: f64,
    /// Left free at either side of the field. [mm]
    pub side_gap_mm: f64,
    /// Where the first course begins.
    pub start: Start,
    /// No rip may be narrower; none given: half a course where that can be had. [mm]
    pub least_rip_mm: Option<f64>,
    /// Centre lines of the supports from the front wall, in order. [mm]
    pub supports_mm: Vec<f64>,
    /// Face of a support that a screw can hit; needed where boards are joined. [mm]
    pub support_width_mm: Option<f64>,
    /// From a board's end to its mark at a joint; none given: a quarter of the support's face. [mm]
    pub edge_distance_mm: Option<f64>,
    /// Least distance of joints in neighbouring courses; none given: [`USUAL_STAGGER_MM`] where that can be had. [mm]
    pub stagger_mm: Option<f64>,
    /// Openings in the field.
    pub openings: Vec<Opening>,
    /// Cut away around an opening on all four sides. [mm]
    pub opening_clearance_mm: f64,
    /// Stock lengths.
    pub stock: Vec<Stock>,
    /// Width of the saw cut. [mm]
    pub kerf_mm: f64,
    /// Taken off each stock length in all. [mm]
    pub end_trim_mm: f64,
    /// Effort of a full cut plan.
    pub effort: u64,
}

/// A mark on a support.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SupportMark {
    /// Index of the support.
    pub support: usize,
    /// From the piece's left end. [mm]
    pub offset_mm: f64,
    /// At a butt joint.
    pub joint: bool,
}

/// A piece of a course.
#[derive(Clone, Debug, PartialEq)]
pub struct BoardPiece {
    /// Its course, counted from 1 at y = 0.
    pub course: u32,
    /// Its place in the course, counted from 1 at the front.
    pub piece: u32,
    /// Its left end, from the front wall. [mm]
    pub from_mm: f64,
    /// Its right end, from the front wall. [mm]
    pub to_mm: f64,
    /// Its length. [mm]
    pub length_mm: f64,
    /// Covered strip of the field, from the left wall: lower and higher edge. [mm]
    pub across_mm: (f64, f64),
    /// Its marks from left to right.
    pub marks: Vec<SupportMark>,
    /// What is cut out of it.
    pub notches: Vec<Notch>,
    /// Which kind of piece it is: an index into [`BoardLayout::kinds`].
    pub kind: usize,
}

/// Pieces that are cut, marked and notched alike.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Kind {
    /// Index of the first of them.
    pub first: usize,
    /// How many.
    pub count: u32,
}

/// All boards of a field.
#[derive(Clone, Debug, PartialEq)]
pub struct BoardLayout {
    /// Number of courses and their rips.
    pub courses: Courses,
    /// All pieces, course by course.
    pub pieces: Vec<BoardPiece>,
    /// The different pieces.
    pub kinds: Vec<Kind>,
    /// From a board's end to its mark at a joint. [mm]
    pub edge_distance_mm: f64,
    /// Stagger that the joints keep. [mm]
    pub stagger_mm: f64,
    /// No rip is narrower than this. [mm]
    pub least_rip_mm: f64,
    /// Sets of joints that were compared.
    pub compared: usize,
    /// True when all of them were.
    pub every_pattern_compared: bool,
}

/// Why boards cannot be laid out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum BoardsError {
    /// The end gaps leave no run, or the side gaps no field.
    Gap {
        /// True for the end gap, false for the side gap.
        end: bool,
    },
    /// Boards are joined, and the width of the supports is not known.
    SupportWidth,
    /// The courses cannot be laid.
    Courses(CoursesError),
    /// The joints cannot be laid.
    Joints(JointError),
}

impl fmt::Display for BoardsError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Gap { end: true } => f.write_str("the gaps at both ends leave no run; give less"),
            Self::Gap { end: false } => {
                f.write_str("the gaps at both sides leave no field; give less")
            }
            Self::SupportWidth => f.write_str(
                "boards are joined here: give the width of the supports that a screw can hit",
            ),
            Self::Courses(error) => error.fmt(f),
            Self::Joints(error) => error.fmt(f),
        }
    }
}

impl std::error::Error for BoardsError {}

/// Lays out courses, joints, marks and notches.
///
/// A mark lies on every support under a piece, save where an opening cuts the piece through; beside a notch that leaves part of
/// the width, the part that stays is marked. Source: [`MARKS`].
///
/// # Errors
/// Where gaps, courses, supports, stagger or stock do not allow it.
pub fn lay_out(task: &BoardTask) -> Result<BoardLayout, BoardsError> {
    let run_mm = task.run_mm - 2.0 * task.end_gap_mm;
    let field_mm = task.field_mm - 2.0 * task.side_gap_mm;
    if !(run_mm.is_finite() && run_mm > SLACK_MM) {
        return Err(BoardsError::Gap { end: true });
    }
    if !(field_mm.is_finite() && field_mm > SLACK_MM) {
        return Err(BoardsError::Gap { end: false });
    }
    let (courses, least_rip_mm) = lay_courses(task, field_mm)?;
    let longest_mm = longest_mm(task);
    let support_width_mm = match task.support_width_mm {
        Some(width) => width,
        None if run_mm > longest_mm + SLACK_MM => return Err(BoardsError::SupportWidth),
        // Nothing is joined, so any width serves.
        None => 1.0,
    };
    let edge_distance_mm = task.edge_distance_mm.unwrap_or(support_width_mm / 4.0);
    let joint_task = JointTask {
        run_mm,
        supports_mm: task.supports_mm.iter().map(|at| at - task.end_gap_mm).collect(),
        support_width_mm,
        edge_distance_mm,
        stagger_mm: task.stagger_mm.unwrap_or(USUAL_STAGGER_MM),
        least_piece_mm: USUAL_LEAST_PIECE_MM.max(2.0 * edge_distance_mm),
        courses: courses.count,
        stock: task.stock.clone(),
        kerf_mm: task.kerf_mm,
        end_trim_mm: task.end_trim_mm,
        effort: task.effort,
    };
    let (joints, stagger_mm) = join(&joint_task, task.stagger_mm.is_some())?;
    let mut layout = BoardLayout {
        courses,
        pieces: Vec::new(),
        kinds: Vec::new(),
        edge_distance_mm,
        stagger_mm,
        least_rip_mm,
        compared: joints.compared,
        every_pattern_compared: joints.every_pattern_compared,
    };
    let mut low = task.side_gap_mm;
    for (course, cuts) in (1u32..).zip(&joints.joints_mm) {
        let high = low + course_width_mm(&courses, course, task.coverage_mm);
        let mut from = 0.0;
        for (piece, &to) in (1u32..).zip(cuts.iter().chain([&run_mm])) {
            let one = BoardPiece {
                course,
                piece,
                from_mm: task.end_gap_mm + from,
                to_mm: task.end_gap_mm + to,
                length_mm: to - from,
                across_mm: (low, high),
                marks: marks(&joint_task, from, to, piece > 1),
                notches: Vec::new(),
                kind: 0,
            };
            layout.add(cut_out(one, task));
            from = to;
        }
        low = high;
    }
    Ok(layout)
}

/// The joints, and the stagger that they keep. Where no joints leave pieces of the usual least length, shorter ones serve, as
/// long as both their marks are on them; then, where no stagger was asked for, joints in line.
fn join(task: &JointTask, asked: bool) -> Result<(JointPlan, f64), BoardsError> {
    let staggers = if asked { vec![task.stagger_mm] } else { vec![task.stagger_mm, 0.0] };
    let mut refused = JointError::Stagger { stagger_mm: task.stagger_mm };
    for stagger_mm in staggers {
        for least_piece_mm in [task.least_piece_mm, 2.0 * task.edge_distance_mm] {
            match plan_joints(&JointTask { stagger_mm, least_piece_mm, ..task.clone() }) {
                Ok(plan) => return Ok((plan, stagger_mm)),
                Err(error @ (JointError::Stagger { .. } | JointError::ShortPiece { .. })) => {
                    refused = error;
                }
                Err(error) => return Err(BoardsError::Joints(error)),
            }
        }
    }
    Err(BoardsError::Joints(refused))
}

/// Width that a course covers. [mm]
fn course_width_mm(courses: &Courses, course: u32, coverage_mm: f64) -> f64 {
    if course == 1 {
        courses.first_mm
    } else if course == courses.count {
        courses.last_mm
    } else {
        coverage_mm
    }
}

/// The courses, and the least rip that was held.
fn lay_courses(task: &BoardTask, field_mm: f64) -> Result<(Courses, f64), BoardsError> {
    let lay = |least_mm: f64| courses(field_mm, task.coverage_mm, task.start, least_mm);
    let least_mm = task.least_rip_mm.unwrap_or(usual_least_rip_mm(task.coverage_mm));
    match (lay(least_mm), task.least_rip_mm) {
        (Err(CoursesError::RipTooNarrow { .. }), None) => Ok((lay(0.0), 0.0)),
        (courses, _) => Ok((courses, least_mm)),
    }
    .and_then(|(courses, least_mm)| Ok((courses.map_err(BoardsError::Courses)?, least_mm)))
}

/// The longest piece that the stock gives. [mm]
fn longest_mm(task: &BoardTask) -> f64 {
    let there = task.stock.iter().filter(|stock| stock.on_hand > 0 || stock.available != Some(0));
    there.map(|stock| stock.length_mm - task.end_trim_mm).fold(0.0, f64::max)
}

/// The marks of a piece between two places of the run; all of `task` counts from the run's left end.
fn marks(task: &JointTask, from: f64, to: f64, joined: bool) -> Vec<SupportMark> {
    let ends = to < task.run_mm - SLACK_MM;
    let near = |a: f64, b: f64| (a - b).abs() < SLACK_MM;
    let mut marks = Vec::new();
    for (support, &at) in task.supports_mm.iter().enumerate() {
        let mark = if joined && near(at, from) {
            SupportMark { support, offset_mm: task.edge_distance_mm, joint: true }
        } else if ends && near(at, to) {
            SupportMark { support, offset_mm: to - from - task.edge_distance_mm, joint: true }
        } else if at >= from - SLACK_MM && at <= to + SLACK_MM {
            let offset_mm = (at - from).clamp(0.0, to - from);
            SupportMark { support, offset_mm, joint: false }
        } else {
            continue;
        };
        marks.push(mark);
    }
    marks
}

/// The piece with its notches, and without the marks that they take away.
fn cut_out(mut piece: BoardPiece, task: &BoardTask) -> BoardPiece {
    let openings = task.openings.iter().enumerate();
    piece.notches = openings
        .filter_map(|(index, opening)| {
            notch::notch(
                index,
                opening,
                task.opening_clearance_mm,
                (piece.from_mm, piece.to_mm),
                piece.across_mm,
            )
        })
        .collect();
    sort_by(&mut piece.notches, |a, b| a.from_mm.total_cmp(&b.from_mm));
    let through = |mark: &SupportMark| {
        piece.notches.iter().any(|notch| {
            notch.edge == Edge::Through
                && mark.offset_mm > notch.from_mm - SLACK_MM
                && mark.offset_mm < notch.to_mm + SLACK_MM
        })
    };
    piece.marks = piece.marks.iter().copied().filter(|mark| !through(mark)).collect();
    piece
}

impl BoardLayout {
    /// Adds a piece and finds its kind.
    fn add(&mut self, mut piece: BoardPiece) {
        let pieces = &self.pieces;
        let known = self.kinds.iter().position(|kind| pieces[kind.first].is_like(&piece));
        piece.kind = known.unwrap_or(self.kinds.len());
        match known {
            Some(kind) => self.kinds[kind].count += 1,
            None => self.kinds.push(Kind { first: self.pieces.len(), count: 1 }),
        }
        self.pieces.push(piece);
    }

    /// Number of marks of all pieces.
    pub fn holes(&self) -> usize {
        self.pieces.iter().map(|piece| piece.marks.len()).sum()
    }
}

impl BoardPiece {
    /// Width that it covers. [mm]
    pub fn width_mm(&self) -> f64 {
        self.across_mm.1 - self.across_mm.0
    }

    /// The narrowest strip that stays beside a notch; `None` where there is no notch, or where it cuts the piece through. For a
    /// cut-out inside the board the wider of its two strips counts. [mm]
    pub fn stays_mm(&self) -> Option<f64> {
        let beside = self.notches.iter().filter(|notch| notch.edge != Edge::Through);
        beside.map(|notch| self.width_mm() - notch.depth_mm).min_by(f64::total_cmp)
    }

    /// Whether both are cut, ripped, marked and notched alike.
    fn is_like(&self, other: &Self) -> bool {
        let near = |a: f64, b: f64| (a - b).abs() < SLACK_MM;
        near(self.length_mm, other.length_mm)
            && near(self.width_mm(), other.width_mm())
            && self.marks.len() == other.marks.len()
            && self.notches.len() == other.notches.len()
            && self.marks.iter().zip(&other.marks).all(|(a, b)| {
                a.support == b.support && a.joint == b.joint && near(a.offset_mm, b.offset_mm)
            })
            && self.notches.iter().zip(&other.notches).all(|(a, b)| {
                a.opening == b.opening
                    && a.edge == b.edge
                    && near(a.from_mm, b.from_mm)
                    && near(a.to_mm, b.to_mm)
                    && near(a.depth_mm, b.depth_mm)
                    && near(a.inset_mm, b.inset_mm)
            })
    }
}
