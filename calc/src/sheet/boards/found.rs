//! What the boards sheet comes to: the layout, the cut plan, and what hangs on them.

use calc_derive::Outcome;
use uom::si::f64::Length;
use uom::si::length::millimeter;

use super::inputs::Job;
use super::marks::piece_id;
use super::screw::Lengths;
use super::{faults, letters};
use crate::carpentry::boards::{
    BoardLayout, BoardPiece, FilledHoles, Nailer, Notch, SupportMark, heights_mm, lay_out,
};
use crate::carpentry::joints::LayoutChoice;
use crate::carpentry::margin::spare_boards;
use crate::cutting::planned::{Planned, Wanted};
use crate::cutting::stock;
use crate::handoff::Handed;
use crate::quantity::Style;
use crate::sheet::handoffs::LaidBoards;
use crate::words::{Id, Msg, boards as words};

/// All that is worked out.
#[derive(Outcome)]
pub(super) struct Found {
    pub(super) courses: u32,
    pub(super) first_rip_mm: f64,
    pub(super) last_rip_mm: f64,
    course_edges_mm: Vec<f64>,
    pieces: Vec<Piece>,
    nailers: Vec<Place>,
    /// Those of the marks on ribs.
    holes: usize,
    /// Of these the filled ones.
    filled_holes: usize,
    /// Over nailers; all of them are filled.
    nailer_holes: usize,
    joint_in_opening: bool,
    pub(super) filler: FilledHoles,
    /// Widths of the last course along the run, where it tapers.
    last_rip_at: Option<Vec<RipAt>>,
    pub(super) cut_plan: Planned,
    screw: Option<Lengths>,
    pub(super) spare: Option<Spare>,
    board_grows_mm: Option<f64>,
    board_shrinks_mm: Option<f64>,
    layouts: Vec<Layout>,
    layout_bound: f64,
    layout_proved: bool,
    #[outcome(skip)]
    pub(super) layout: BoardLayout,
}

impl Found {
    pub(super) fn gives(&self) -> Handed {
        let mm = Length::new::<millimeter>;
        let pieces = self.pieces.iter();
        Handed::of(LaidBoards {
            course_edges: self.course_edges_mm.iter().copied().map(mm).collect(),
            pieces: pieces
                .map(|one| (mm(one.length_mm), mm(one.y_to_mm - one.y_from_mm)))
                .collect(),
        })
    }
}

/// A piece of a course.
#[derive(Outcome)]
struct Piece {
    course: u32,
    piece: u32,
    from_mm: f64,
    to_mm: f64,
    length_mm: f64,
    marks: Vec<MarkAt>,
    nailer_mark: Option<MarkAt>,
    notches: Vec<CutOut>,
    y_from_mm: f64,
    y_to_mm: f64,
    board: String,
    left_end_width_mm: Option<f64>,
    right_end_width_mm: Option<f64>,
}

/// A mark on a piece.
#[derive(Outcome)]
struct MarkAt {
    /// Counted from 1; none on a nailer.
    rib: Option<usize>,
    offset_mm: f64,
    finish: &'static str,
    /// From the right edge, where that is not the middle of the board.
    across_mm: Option<Vec<f64>>,
}

/// What an opening cuts out of a piece.
#[derive(Outcome)]
struct CutOut {
    opening: String,
    from_mm: f64,
    to_mm: f64,
    edge: &'static str,
    depth_mm: f64,
    inset_mm: f64,
}

/// A nailer in its place.
#[derive(Outcome)]
struct Place {
    wall: &'static str,
    at_mm: f64,
    from_mm: f64,
    to_mm: f64,
    length_mm: f64,
}

/// The last course at a place from the front wall.
#[derive(Clone, Copy, Outcome)]
pub(super) struct RipAt {
    pub(super) x_mm: f64,
    pub(super) rip_mm: f64,
}

/// Boards beside those of the cut plan.
#[derive(Outcome)]
pub(super) struct Spare {
    pub(super) count: u32,
    /// The longest that is bought: it can take the place of any other.
    pub(super) length_mm: f64,
    #[outcome(skip)]
    pub(super) price: Option<f64>,
}

/// The least cost for a number of joints.
#[derive(Outcome)]
struct Layout {
    joints: u32,
    cost: f64,
    bound: f64,
    proved: bool,
}

/// What becomes of a screw's head.
#[derive(Clone, Copy, PartialEq)]
pub(super) enum Finish {
    /// Left to be seen.
    Shown,
    /// Sunk and filled.
    Filled,
}

impl Finish {
    /// In the outcome.
    fn name(self) -> &'static str {
        match self {
            Self::Shown => "shown",
            Self::Filled => "filled",
        }
    }

    pub(super) fn said(self) -> Id {
        match self {
            Self::Shown => words::SHOWN,
            Self::Filled => words::FILLED,
        }
    }
}

impl Job {
    pub(super) fn finish(&self, mark: &SupportMark) -> Finish {
        let shown = |support: usize| {
            self.inputs.shown_ribs.iter().any(|number| *number as usize == support + 1)
        };
        if mark.support.is_some_and(shown) { Finish::Shown } else { Finish::Filled }
    }

    fn filled_holes(&self, layout: &BoardLayout) -> usize {
        let marks = layout.pieces.iter().flat_map(|piece| &piece.marks);
        let filled = marks.filter(|mark| self.finish(mark) == Finish::Filled);
        filled.map(|mark| heights_mm(mark, self.task.screws_across).len()).sum()
    }
}

impl Found {
    /// Lays the boards out and plans their cuts.
    pub(super) fn of(job: &Job, style: Style) -> Result<Self, (String, Msg)> {
        let layout = lay_out(&job.task).map_err(|error| faults::refused(&error, job))?;
        let english = style.english();
        let wanted = layout.kinds.iter().enumerate().map(|(index, kind)| {
            let name = || words::BoardOf { letter: letters(index) };
            let piece = &layout.pieces[kind.first];
            Wanted {
                id: piece_id(piece),
                label: style.say(name()),
                name: english.say(name()),
                length_mm: piece.length_mm,
                count: kind.count,
            }
        });
        let cut_plan = Planned::follow(wanted.collect(), &job.shelf, &layout.joining.cut_plan)
            .map_err(|error| stock::refused(&error, |_| "stock".into()))?;
        let across = job.task.screws_across;
        let (holes, filled) = (layout.holes(across), job.filled_holes(&layout));
        let nailer_holes = layout.nailer_holes(across);
        let widths = last_rips(&layout);
        Ok(Self {
            courses: layout.courses.count,
            first_rip_mm: layout.courses.first_mm,
            last_rip_mm: layout.courses.last_mm,
            course_edges_mm: layout.edges_mm.clone(),
            pieces: layout.pieces.iter().map(|piece| Piece::of(job, piece)).collect(),
            nailers: layout.nailers.iter().map(Place::of).collect(),
            holes: holes - nailer_holes,
            filled_holes: filled - nailer_holes,
            nailer_holes,
            joint_in_opening: layout.joint_in_opening,
            filler: FilledHoles {
                holes: u32::try_from(filled).unwrap_or(u32::MAX),
                diameter: job.inputs.fill_diameter,
                depth: job.inputs.fill_depth,
            },
            last_rip_at: (!widths.is_empty()).then_some(widths),
            spare: spare(job, &cut_plan),
            cut_plan,
            screw: job.screw.lengths(),
            board_grows_mm: job.movement.as_ref().map(|movement| movement.grows().mm()),
            board_shrinks_mm: job.movement.as_ref().map(|movement| movement.shrinks().mm()),
            layouts: layout.joining.choices.iter().map(Layout::of).collect(),
            layout_bound: layout.joining.bound,
            layout_proved: layout.joining.proved,
            layout,
        })
    }

    /// In all boards, those over nailers among them.
    pub(super) fn all_holes(&self) -> usize {
        self.holes + self.nailer_holes
    }

    /// Those that stay in sight.
    pub(super) fn shown_holes(&self) -> usize {
        self.holes.saturating_sub(self.filled_holes)
    }

    /// The last course from front to rear; none where it is equally wide.
    pub(super) fn last_rips(&self) -> &[RipAt] {
        self.last_rip_at.as_deref().unwrap_or_default()
    }
}

impl Piece {
    fn of(job: &Job, piece: &BoardPiece) -> Self {
        let across = job.task.screws_across;
        let mark = |mark: &SupportMark| MarkAt {
            rib: mark.support.map(|support| support + 1),
            offset_mm: mark.offset_mm,
            finish: job.finish(mark).name(),
            across_mm: (across > 1 || mark.beside).then(|| heights_mm(mark, across)),
        };
        let cut_out = |notch: &Notch| CutOut {
            opening: job.openings.get(notch.opening).map_or(String::new(), |one| one.name.clone()),
            from_mm: notch.from_mm,
            to_mm: notch.to_mm,
            edge: notch.edge.name(),
            depth_mm: notch.depth_mm,
            inset_mm: notch.inset_mm,
        };
        Self {
            course: piece.course,
            piece: piece.piece,
            from_mm: piece.from_mm,
            to_mm: piece.to_mm,
            length_mm: piece.length_mm,
            marks: piece.marks.iter().filter(|one| one.support.is_some()).map(mark).collect(),
            nailer_mark: piece.marks.iter().find(|one| one.support.is_none()).map(mark),
            notches: piece.notches.iter().map(cut_out).collect(),
            y_from_mm: piece.across_mm.0,
            y_to_mm: piece.across_mm.1,
            board: letters(piece.kind),
            left_end_width_mm: piece.widths_mm.first().map(|station| station.width_mm),
            right_end_width_mm: piece.widths_mm.last().map(|station| station.width_mm),
        }
    }
}

impl Place {
    fn of(nailer: &Nailer) -> Self {
        Self {
            wall: super::nailers::wall(nailer),
            at_mm: nailer.at_mm,
            from_mm: nailer.from_mm,
            to_mm: nailer.to_mm,
            length_mm: nailer.length_mm(),
        }
    }
}

impl Layout {
    fn of(choice: &LayoutChoice) -> Self {
        let LayoutChoice { joints, cost, bound, proved } = *choice;
        Self { joints, cost, bound, proved }
    }
}

fn last_rips(layout: &BoardLayout) -> Vec<RipAt> {
    let mut found: Vec<RipAt> = Vec::new();
    for piece in &layout.pieces {
        for station in &piece.widths_mm {
            let x_mm = piece.from_mm + station.x_mm;
            // Where two pieces meet both have the width of the joint.
            if found.last().is_none_or(|before| x_mm - before.x_mm > 1e-3) {
                found.push(RipAt { x_mm, rip_mm: station.width_mm });
            }
        }
    }
    found
}

/// The spare boards. Source: [`crate::carpentry::margin::CULL`].
fn spare(job: &Job, cut_plan: &Planned) -> Option<Spare> {
    let bought = &cut_plan.plan.bought;
    let count = spare_boards(bought.iter().sum(), job.inputs.cull_percent);
    let some = job.shelf.stock.iter().zip(bought).filter(|(_, count)| **count > 0);
    let longest = some.max_by(|a, b| a.0.length_mm.total_cmp(&b.0.length_mm));
    longest.filter(|_| count > 0).map(|(stock, _)| Spare {
        count,
        length_mm: stock.length_mm,
        price: stock.price,
    })
}
