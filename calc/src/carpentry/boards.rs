//! Boards over supports: courses, pieces, the marks and the notches of every piece.
//!
//! x runs from the front wall, y from the left wall (seen facing forward); the first course lies along y = 0. Seen along the
//! boards, facing +x, a board's left edge is the one of greater y.

mod across;
mod error;
mod filler;
mod hold;
mod nailer;
mod notch;
mod openings;
mod piece;
mod segments;

pub use across::{ACROSS, LEAST_ACROSS_MM, across_mm, heights_mm};
pub use error::{BoardsError, Loose};
pub use filler::FilledHoles;
pub use hold::Hold;
pub use nailer::{NAILER, Nailer};
pub use notch::{Edge, Notch, Opening};
pub use piece::BoardPiece;
pub use segments::{Segment, segments};

use uom::si::f64::Length;

use super::courses::{Courses, CoursesError, Start, courses_along, usual_least_rip_mm};
use super::cut_stock::Stock;
use super::joints::{JointError, JointPlan, JointTask, Span, plan_joints};
use super::stations::{Station, range_mm};
use crate::formula::formula;
use crate::source::Source;
use crate::words::carpentry as words;

/// Where the marks lie.
pub static MARKS: Source = Source::identity_of(words::SOURCE_MARKS);
/// Marks near an end that is no joint, a wall's or an opening's.
pub static ENDS: Source = Source::practice_of(words::SOURCE_ENDS);
/// Boards on fewer supports hang loose.
pub static TWO_SUPPORTS: Source = Source::practice_of(words::SOURCE_TWO_SUPPORTS);
/// The edge distance where neither it nor the width of the supports is given.
pub static USUAL_EDGE: Source = Source::practice_of(words::SOURCE_USUAL_EDGE);
/// The distance of [`USUAL_EDGE`]. [mm]
pub const USUAL_EDGE_MM: f64 = 9.525;
/// Marks at a joint where no edge distance is given.
pub static HALF_BEARING: Source = Source::practice_of(words::SOURCE_HALF_BEARING);

/// Strips beside a cut-out that are too narrow for a screw.
pub static LEAST_STRIP: Source = Source::practice_of(words::SOURCE_LEAST_STRIP);
/// The width of [`LEAST_STRIP`]. [mm]
pub const LEAST_STRIP_MM: f64 = 25.4;

formula! {
    /// Where a support lies on a board, from its left end.
    MarkOnBoard: "m = s − a", &MARKS;
    |of| of.support - of.left_end => Length as mark;
    /// Center line of the support, from the front wall.
    "s" as mark: support: Length,
    /// The board's left end, from the front wall.
    "a" as mark: left_end: Length,
}

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
    /// Left free between the faces of two boards beside each other. [mm]
    pub joint_gap_mm: f64,
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
    /// The least from a board's end, a cut edge of it or a joint to a mark; none given: a quarter of the support's face. [mm]
    pub edge_distance_mm: Option<f64>,
    /// No piece beside a joint or an opening is shorter; none given: [`super::joints::USUAL_LEAST_PIECE_MM`]. [mm]
    pub least_piece_mm: Option<f64>,
    /// Least distance of joints in neighbouring courses; none given: [`USUAL_STAGGER_MM`] where that can be had. [mm]
    pub stagger_mm: Option<f64>,
    /// What one more joint is worth, in the terms of the stock's prices; in mm where nothing is priced.
    pub joint_price: f64,
    /// Openings in the field.
    pub openings: Vec<Opening>,
    /// Cut away around an opening on all four sides. [mm]
    pub opening_clearance_mm: f64,
    /// Screws side by side on every support: one or two.
    pub screws_across: u32,
    /// Stock lengths.
    pub stock: Vec<Stock>,
    /// Width of the saw cut. [mm]
    pub kerf_mm: f64,
    /// Taken off each stock length in all. [mm]
    pub end_trim_mm: f64,
    /// Effort for choosing joints and stock, in the cut planner's steps.
    pub effort: u64,
}

/// A mark on a support.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SupportMark {
    /// Index of the support; none on a nailer.
    pub support: Option<usize>,
    /// From the piece's left end. [mm]
    pub offset_mm: f64,
    /// At a butt joint.
    pub joint: bool,
    /// What is left of the board's width there, from its right edge: all of it, or the widest strip beside cut-outs. [mm]
    pub strip_mm: (f64, f64),
    /// The least from a cut edge. [mm]
    pub edge_mm: f64,
    /// Whether a cut-out beside it, or nearer than the edge distance, takes some of the width.
    pub beside: bool,
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
    /// Where the first course begins and where each course ends, from the left wall. [mm]
    pub edges_mm: Vec<f64>,
    /// The least from a board's end or a cut edge to a mark. [mm]
    pub edge_distance_mm: f64,
    /// Stagger that the joints keep. [mm]
    pub stagger_mm: f64,
    /// No rip is narrower than this. [mm]
    pub least_rip_mm: f64,
    /// False where the last course is somewhere narrower than the least rip or wider than a board, as the field tapers.
    pub taper_kept: bool,
    /// What is fixed along the walls for boards that only one support would hold.
    pub nailers: Vec<Nailer>,
    /// Where two boards meet: course, and place from the front wall. [mm]
    pub joints_mm: Vec<(u32, f64)>,
    /// True where a joint lies in what an opening takes from its course.
    pub joint_in_opening: bool,
    /// The choice of joints and stock: joints from the front wall.
    pub joining: JointPlan,
}

/// Lays out courses, joints, marks and notches.
///
/// A board that an opening cuts through is two pieces. A mark lies on every support that holds a piece; beside a notch that leaves
/// part of the width, the part that stays is marked where it is wide enough. A board from a wall to a joint that only one support
/// holds is marked on a nailer at the wall as well. Sources: [`MARKS`], [`ENDS`], [`LEAST_STRIP`], [`NAILER`].
///
/// # Errors
/// Where gaps, courses, supports, stagger, openings or stock do not allow it.
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
    let hold = Hold::new(task);
    let whole = whole_courses(task, &courses, run_mm);
    let cut: Vec<Vec<Segment>> = whole.iter().map(|course| segments(task, course)).collect();
    for (course, segments) in whole.iter().zip(&cut) {
        segments.iter().try_for_each(|segment| hold.check_segment(course, segment))?;
    }
    let longest_mm = longest_mm(task);
    let longest_segment_mm = cut.iter().flatten().map(Segment::length_mm).fold(0.0, f64::max);
    if task.support_width_mm.is_none() && longest_segment_mm > longest_mm + SLACK_MM {
        return Err(BoardsError::SupportWidth);
    }
    let (joining, stagger_mm) = join(task, &hold, &whole, &cut)?;
    let joints_mm = joining.joints_mm.clone();
    let mut layout = BoardLayout {
        courses,
        pieces: Vec::new(),
        kinds: Vec::new(),
        edges_mm: vec![task.side_gap_mm],
        edge_distance_mm: hold.edge_mm,
        stagger_mm,
        least_rip_mm,
        taper_kept,
        nailers: Vec::new(),
        joints_mm: Vec::new(),
        joint_in_opening: false,
        joining,
    };
    for ((course, segments), cuts) in whole.iter().zip(&cut).zip(joints_mm) {
        layout.edges_mm.push(course.across_mm.1);
        for (piece, stretch) in (1u32..).zip(segments::between(segments, &cuts)) {
            let mut one = course.part(piece, (stretch.from, stretch.to));
            one.notches = openings::notches(task, &one);
            one.marks = hold.marks(&one, &stretch);
            hold.check_piece(&one, &stretch)?;
            if stretch.joined {
                layout.joints_mm.push((course.course, one.from_mm));
            }
            layout.joint_in_opening |= openings::cuts_joint(&one, &stretch);
            layout.add(one);
        }
    }
    layout.nailers = nailer::nailers(task, &hold, &layout.pieces);
    Ok(layout)
}

/// Every course in one piece from end gap to end gap, as it lies before anything is cut.
fn whole_courses(task: &BoardTask, courses: &Courses, run_mm: f64) -> Vec<BoardPiece> {
    let mut found = Vec::with_capacity(courses.count as usize);
    let mut low = task.side_gap_mm;
    for course in 1..=courses.count {
        let width = course_width_mm(courses, course, task.coverage_mm);
        let mut one = BoardPiece {
            course,
            piece: 1,
            from_mm: task.end_gap_mm,
            to_mm: task.end_gap_mm + run_mm,
            length_mm: run_mm,
            across_mm: (low, low + width),
            widths_mm: Vec::new(),
            marks: Vec::new(),
            notches: Vec::new(),
            kind: 0,
        };
        if course == courses.count {
            one.taper(&task.stations, task.coverage_mm);
        }
        found.push(one);
        low += width + task.joint_gap_mm;
    }
    found
}

/// The joints, and the stagger that they keep: clear of openings, else anywhere that leaves no piece loose; then, where no stagger
/// was asked for, joints in line.
fn join(
    task: &BoardTask,
    hold: &Hold,
    whole: &[BoardPiece],
    cut: &[Vec<Segment>],
) -> Result<(JointPlan, f64), BoardsError> {
    let anywhere = spans(task, hold, whole, cut, false);
    let clear = spans(task, hold, whole, cut, true);
    let mut places = vec![clear];
    if places[0] != anywhere {
        places.push(anywhere);
    }
    let joint_task = JointTask {
        courses: Vec::new(),
        support_width_mm: task.support_width_mm.unwrap_or(2.0 * hold.edge_mm).max(1e-3),
        edge_distance_mm: hold.edge_mm,
        stagger_mm: task.stagger_mm.unwrap_or(USUAL_STAGGER_MM),
        least_piece_mm: hold.least_piece_mm,
        joint_price: task.joint_price,
        stock: task.stock.clone(),
        kerf_mm: task.kerf_mm,
        end_trim_mm: task.end_trim_mm,
        effort: task.effort,
    };
    let mut staggers = vec![joint_task.stagger_mm];
    if task.stagger_mm.is_none() {
        staggers.push(0.0);
    }
    let mut refused = JointError::Stagger { stagger_mm: joint_task.stagger_mm };
    for stagger_mm in staggers {
        for courses in &places {
            let of = JointTask { stagger_mm, courses: courses.clone(), ..joint_task.clone() };
            match plan_joints(&of) {
                Ok(plan) => return Ok((plan, stagger_mm)),
                Err(
                    error @ (JointError::Stagger { .. }
                    | JointError::ShortPiece { .. }
                    | JointError::Unreachable { .. }),
                ) => refused = error,
                Err(error) => return Err(BoardsError::Joints(error)),
            }
        }
    }
    Err(BoardsError::Joints(refused))
}

/// The segments of each course with the places where they may be joined: where no piece is loose or too short, and, with `clear`,
/// away from what openings take of the width.
fn spans(
    task: &BoardTask,
    hold: &Hold,
    whole: &[BoardPiece],
    cut: &[Vec<Segment>],
    clear: bool,
) -> Vec<Vec<Span>> {
    let courses = whole.iter().zip(cut);
    courses
        .map(|(course, segments)| {
            let beside =
                if clear { openings::beside(course, task, 2.0 * hold.half_mm) } else { Vec::new() };
            let is_clear = |at: &f64| {
                beside.iter().all(|(from, to)| *at <= from + SLACK_MM || *at >= to - SLACK_MM)
            };
            let span = |segment: &Segment| {
                // Without a width of the supports nothing is joined.
                let places = match task.support_width_mm {
                    Some(_) => hold.joint_places_mm(segment),
                    None => Vec::new(),
                };
                Span {
                    from_mm: segment.from_mm,
                    to_mm: segment.to_mm,
                    joints_mm: places.into_iter().filter(is_clear).collect(),
                }
            };
            segments.iter().map(span).collect()
        })
        .collect()
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
    let gap_mm = task.joint_gap_mm;
    // Every board with the gap beside it; the last one has none.
    let lay = |least_mm: f64| {
        let (pitch_mm, least_pitch_mm) = (task.coverage_mm + gap_mm, least_mm + gap_mm);
        courses_along(field_mm + gap_mm, uneven_mm, pitch_mm, task.start, least_pitch_mm)
            .map(|(courses, kept)| {
                let of = |pitch_mm: f64| (pitch_mm - gap_mm).max(0.0);
                let (first_mm, last_mm) = (of(courses.first_mm), of(courses.last_mm));
                (Courses { first_mm, last_mm, ..courses }, least_mm, kept)
            })
            .map_err(|error| match error {
                CoursesError::RipTooNarrow { rip_mm, .. } => {
                    CoursesError::RipTooNarrow { rip_mm: (rip_mm - gap_mm).max(0.0), least_mm }
                }
                CoursesError::Width { .. } => error,
            })
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
        self.holes_of(screws_across, |_| true)
    }

    /// Number of them over nailers.
    pub fn nailer_holes(&self, screws_across: u32) -> usize {
        self.holes_of(screws_across, |mark| mark.support.is_none())
    }

    fn holes_of(&self, screws_across: u32, is: impl Fn(&SupportMark) -> bool) -> usize {
        let marks = self.pieces.iter().flat_map(|piece| &piece.marks).filter(|mark| is(mark));
        marks.map(|mark| heights_mm(mark, screws_across).len()).sum()
    }
}
