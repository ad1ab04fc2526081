//! Boards over supports: courses, pieces, the marks and the notches of every piece.
//!
//! x runs from the front wall, y from the left wall (seen facing forward); the first course lies along y = 0. Seen along the
//! boards, facing +x, a board's left edge is the one of greater y.

mod across;
mod notch;
mod openings;
mod piece;

use crate::sorting::sort_by;
use std::fmt;

pub use across::{ACROSS, LEAST_ACROSS_MM, across_mm, heights_mm};
pub use notch::{Edge, Notch, Opening};
pub use piece::BoardPiece;

use self::openings::Stretch;
use super::courses::{Courses, CoursesError, Start, courses_along, usual_least_rip_mm};
use super::cut_stock::Stock;
use super::joints::{JointError, JointPlan, JointTask, USUAL_LEAST_PIECE_MM, plan_joints};
use super::stations::{Station, range_mm};
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
    /// Across the boards, wall to wall; at the front where it is not the same everywhere. [mm]
    pub field_mm: f64,
    /// Widths of the field from the front wall to the end of the run, where it is not the same everywhere; else none.
    pub stations: Vec<Station>,
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
    /// Whether boards end at an opening that takes their whole width; else one board runs through and is cut in place.
    pub end_at_openings: bool,
    /// Screws side by side on every support: one or two.
    pub screws_across: u32,
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
    /// False where the last course is somewhere narrower than the least rip or wider than a board, as the field tapers.
    pub taper_kept: bool,
    /// Where two boards meet: course, and place from the front wall. [mm]
    pub joints_mm: Vec<(u32, f64)>,
    /// True where a joint lies in what an opening takes from its course.
    pub joint_in_opening: bool,
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
    let (courses, least_rip_mm, taper_kept) = lay_courses(task, field_mm)?;
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
        no_joint: openings::no_joints(task, &courses, support_width_mm),
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
        taper_kept,
        joints_mm: Vec::new(),
        joint_in_opening: false,
        compared: joints.compared,
        every_pattern_compared: joints.every_pattern_compared,
    };
    let mut low = task.side_gap_mm;
    for (course, cuts) in (1u32..).zip(&joints.joints_mm) {
        let width = course_width_mm(&courses, course, task.coverage_mm);
        let last = course == courses.count;
        for (piece, stretch) in (1u32..).zip(stretches(task, cuts, run_mm, (low, low + width))) {
            let Stretch { from, to, .. } = stretch;
            let (from_mm, to_mm) = (task.end_gap_mm + from, task.end_gap_mm + to);
            let mut one = BoardPiece {
                course,
                piece,
                from_mm,
                to_mm,
                length_mm: to - from,
                across_mm: (low, low + width),
                widths_mm: Vec::new(),
                marks: marks(&joint_task, &stretch),
                notches: Vec::new(),
                kind: 0,
            };
            if last {
                one.taper(&task.stations, task.coverage_mm);
            }
            if stretch.joined {
                layout.joints_mm.push((course, from_mm));
            }
            let one = cut_out(one, task);
            layout.joint_in_opening |= openings::cuts_joint(&one, &stretch);
            layout.add(one);
        }
        low += width;
    }
    Ok(layout)
}

/// The pieces of a course, before anything is marked.
fn stretches(task: &BoardTask, cuts: &[f64], run_mm: f64, across_mm: (f64, f64)) -> Vec<Stretch> {
    if task.end_at_openings {
        let gaps = openings::gaps(task, run_mm, across_mm);
        return openings::between(&gaps, cuts, run_mm, longest_mm(task));
    }
    openings::between(&[], cuts, run_mm, 0.0)
}

/// The joints, and the stagger that they keep: clear of openings, else anywhere. Where no joints leave pieces of the
/// usual least length, shorter ones serve, as long as both their marks are on them; then, where no stagger was asked for, joints in
/// line.
fn join(task: &JointTask, asked: bool) -> Result<(JointPlan, f64), BoardsError> {
    let staggers = if asked { vec![task.stagger_mm] } else { vec![task.stagger_mm, 0.0] };
    let mut no_joints = vec![task.no_joint.clone()];
    if !task.no_joint.is_empty() {
        no_joints.push(Vec::new());
    }
    let mut refused = JointError::Stagger { stagger_mm: task.stagger_mm };
    for stagger_mm in staggers {
        for least_piece_mm in [task.least_piece_mm, 2.0 * task.edge_distance_mm] {
            for no_joint in no_joints.clone() {
                let of = JointTask { stagger_mm, least_piece_mm, no_joint, ..task.clone() };
                match plan_joints(&of) {
                    Ok(plan) => return Ok((plan, stagger_mm)),
                    Err(error @ (JointError::Stagger { .. } | JointError::ShortPiece { .. })) => {
                        refused = error;
                    }
                    Err(error) => return Err(BoardsError::Joints(error)),
                }
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

/// The courses, the least rip that was held, and whether it and the coverage are kept all along the run.
fn lay_courses(task: &BoardTask, field_mm: f64) -> Result<(Courses, f64, bool), BoardsError> {
    let (low, high) = range_mm(&task.stations).unwrap_or((task.field_mm, task.field_mm));
    let uneven_mm = ((low - task.field_mm).min(0.0), (high - task.field_mm).max(0.0));
    let lay = |least_mm: f64| {
        courses_along(field_mm, uneven_mm, task.coverage_mm, task.start, least_mm)
            .map(|(courses, kept)| (courses, least_mm, kept))
    };
    let least_mm = task.least_rip_mm.unwrap_or(usual_least_rip_mm(task.coverage_mm));
    match (lay(least_mm), task.least_rip_mm) {
        // Half a course is only what is usual: less serves where it cannot be had.
        (Err(CoursesError::RipTooNarrow { .. }) | Ok((.., false)), None) => lay(0.0),
        (laid, _) => laid,
    }
    .map_err(BoardsError::Courses)
}

/// The longest piece that the stock gives. [mm]
fn longest_mm(task: &BoardTask) -> f64 {
    let there = task.stock.iter().filter(|stock| stock.on_hand > 0 || stock.available != Some(0));
    there.map(|stock| stock.length_mm - task.end_trim_mm).fold(0.0, f64::max)
}

/// The marks of a piece; all of `task` counts from the run's left end.
fn marks(task: &JointTask, stretch: &Stretch) -> Vec<SupportMark> {
    let Stretch { from, to, joined, joins } = *stretch;
    let near = |a: f64, b: f64| (a - b).abs() < SLACK_MM;
    let mut marks = Vec::new();
    for (support, &at) in task.supports_mm.iter().enumerate() {
        let mark = if joined && near(at, from) {
            SupportMark { support, offset_mm: task.edge_distance_mm, joint: true }
        } else if joins && near(at, to) {
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
                // A board that tapers is as wide as it is in the middle of the cut.
                (
                    piece.across_mm.0,
                    piece.across_mm.0 + piece.width_at_mm(middle_mm(opening, &piece)),
                ),
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

/// Middle of what an opening takes of a piece along it, from its left end. [mm]
fn middle_mm(opening: &Opening, piece: &BoardPiece) -> f64 {
    let from = opening.x_mm.max(piece.from_mm);
    let to = (opening.x_mm + opening.length_mm).min(piece.to_mm);
    f64::midpoint(from, to) - piece.from_mm
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

    /// Number of holes in all pieces: those of every mark, side by side ones counted each.
    pub fn holes(&self, screws_across: u32) -> usize {
        let of = |piece: &BoardPiece| -> usize {
            piece.marks.iter().map(|mark| heights_mm(piece, mark, screws_across).len()).sum()
        };
        self.pieces.iter().map(of).sum()
    }
}
