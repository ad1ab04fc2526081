//! What holds a board: its marks, and whether they are enough.

use super::notch::widest_strip;
use super::segments::{Segment, Stretch};
use super::{
    BoardPiece, BoardTask, BoardsError, LEAST_STRIP_MM, Loose, SLACK_MM, SupportMark, USUAL_EDGE_MM,
};
use crate::carpentry::joints::USUAL_LEAST_PIECE_MM;

/// What can be screwed to at a place along a piece.
struct Strip {
    /// From the piece's left end. [mm]
    at_mm: f64,
    /// From the piece's right edge. [mm]
    across_mm: (f64, f64),
    /// Whether cut-outs take the rest.
    beside: bool,
}

/// What boards are held on, and what each piece needs. Sources: [`super::ENDS`], [`super::TWO_SUPPORTS`].
#[derive(Clone, Debug, PartialEq)]
pub struct Hold {
    /// Centre lines of the supports from the front wall, in order. [mm]
    pub supports_mm: Vec<f64>,
    /// Half of the face that a screw can hit; zero where it is not known. [mm]
    pub half_mm: f64,
    /// The least from an end or a cut edge to a mark. [mm]
    pub edge_mm: f64,
    /// The least length of a piece beside a joint or an opening. [mm]
    pub least_piece_mm: f64,
    /// Between the boards' ends and the walls. [mm]
    pub(super) end_gap_mm: f64,
}

impl Hold {
    /// What the boards of a task are held on.
    pub fn new(task: &BoardTask) -> Self {
        let width = task.support_width_mm;
        let usual = width.map_or(USUAL_EDGE_MM, |width| width / 4.0);
        let edge_mm = task.edge_distance_mm.unwrap_or(usual);
        Self {
            supports_mm: task.supports_mm.clone(),
            half_mm: width.unwrap_or_default() / 2.0,
            edge_mm,
            least_piece_mm: task.least_piece_mm.unwrap_or(USUAL_LEAST_PIECE_MM).max(2.0 * edge_mm),
            end_gap_mm: task.end_gap_mm,
        }
    }

    /// Where a support's mark lies on a piece without cut-outs, from its left end, and whether that is at a joint. [mm]
    fn place(&self, support: f64, stretch: &Stretch) -> Option<(f64, bool)> {
        let (length, centre) = (stretch.to - stretch.from, support - stretch.from);
        let near = |a: f64, b: f64| (a - b).abs() < SLACK_MM;
        let place = if stretch.joined && near(support, stretch.from) {
            return Some((self.edge_mm, true));
        } else if stretch.joins && near(support, stretch.to) {
            return Some((length - self.edge_mm, true));
        } else if centre < -SLACK_MM || centre > length + SLACK_MM || length < 2.0 * self.edge_mm {
            return None;
        } else {
            centre.max(self.edge_mm).min(length - self.edge_mm)
        };
        self.is_on_face(place, centre).then_some((place, false))
    }

    /// Whether a place is still on the face of a support. Where its width is not known, only its centre line is.
    fn is_on_face(&self, place: f64, centre: f64) -> bool {
        (place - centre).abs() <= self.half_mm + SLACK_MM
    }

    /// The marks of a piece from left to right: on every support that holds it, and on a nailer where that is only one. Source:
    /// [`super::MARKS`].
    pub(super) fn marks(&self, piece: &BoardPiece, stretch: &Stretch) -> Vec<SupportMark> {
        let mut marks = Vec::new();
        for (support, &at) in self.supports_mm.iter().enumerate() {
            let Some((place, joint)) = self.place(at, stretch) else { continue };
            let found = if joint {
                self.strip(piece, place)
            } else {
                self.near(piece, place, at - stretch.from)
            };
            marks.extend(found.map(|strip| self.mark(Some(support), &strip, joint)));
        }
        if marks.len() == 1 {
            let mark = self.on_nailer(piece, stretch);
            let at = if stretch.joined { marks.len() } else { 0 };
            marks.splice(at..at, mark);
        }
        marks
    }

    fn mark(&self, support: Option<usize>, strip: &Strip, joint: bool) -> SupportMark {
        SupportMark {
            support,
            offset_mm: strip.at_mm,
            joint,
            strip_mm: strip.across_mm,
            edge_mm: self.edge_mm,
            beside: strip.beside,
        }
    }

    /// The mark on the nailer at the wall of a piece; none where it has no place, or a cut-out lies over it.
    fn on_nailer(&self, piece: &BoardPiece, stretch: &Stretch) -> Option<SupportMark> {
        let at_mm = self.nailer_mm(stretch)? - stretch.from;
        let over = |cut: &super::Notch| {
            cut.from_mm < at_mm + self.half_mm && cut.to_mm > at_mm - self.half_mm
        };
        if piece.notches.iter().any(over) {
            return None;
        }
        self.strip(piece, at_mm).map(|strip| self.mark(None, &strip, false))
    }

    /// What can be screwed to at a place, else at the nearest on the same support that stands in from the ends of the cut-outs.
    fn near(&self, piece: &BoardPiece, place: f64, centre: f64) -> Option<Strip> {
        let ends = piece.notches.iter();
        let ends = ends.flat_map(|cut| [cut.from_mm - self.edge_mm, cut.to_mm + self.edge_mm]);
        let inside = |at: &f64| {
            *at >= self.edge_mm - SLACK_MM
                && *at <= piece.length_mm - self.edge_mm + SLACK_MM
                && self.is_on_face(*at, centre)
        };
        self.strip(piece, place).or_else(|| {
            let found = ends.filter(inside).filter_map(|at| self.strip(piece, at));
            found.min_by(|a, b| (a.at_mm - centre).abs().total_cmp(&(b.at_mm - centre).abs()))
        })
    }

    /// What stays of a piece's width at a place, as far as it can be screwed to.
    fn strip(&self, piece: &BoardPiece, at_mm: f64) -> Option<Strip> {
        let width = piece.width_at_mm(at_mm);
        let near = piece.notches.iter().filter(|cut| {
            at_mm > cut.from_mm - self.edge_mm + SLACK_MM
                && at_mm < cut.to_mm + self.edge_mm - SLACK_MM
        });
        let cuts: Vec<(f64, f64)> = near.map(|cut| cut.across_mm(width)).collect();
        let beside = !cuts.is_empty();
        let across_mm = widest_strip(width, cuts)?;
        let least = LEAST_STRIP_MM.max(2.0 * self.edge_mm);
        let wide = !beside || across_mm.1 - across_mm.0 >= least - SLACK_MM;
        wide.then_some(Strip { at_mm, across_mm, beside })
    }

    /// Whether a stretch between walls and openings can be a board, or several.
    ///
    /// # Errors
    /// Where it is shorter than the least piece beside an opening, or held on fewer than two supports.
    pub(super) fn check_segment(
        &self,
        course: &BoardPiece,
        segment: &Segment,
    ) -> Result<(), BoardsError> {
        let stretch = Stretch::whole(*segment);
        let places = self.supports_mm.iter().filter(|at| self.place(**at, &stretch).is_some());
        self.check(course.course, &stretch, places.count())
    }

    /// Whether a piece with its marks is held.
    ///
    /// # Errors
    /// As [`Hold::check_segment`], and where a joint has no room for its marks.
    pub(super) fn check_piece(
        &self,
        piece: &BoardPiece,
        stretch: &Stretch,
    ) -> Result<(), BoardsError> {
        let joints = piece.marks.iter().filter(|mark| mark.joint).count();
        if joints < usize::from(stretch.joined) + usize::from(stretch.joins) {
            return Err(loose(piece.course, stretch, Loose::Joint));
        }
        self.check(piece.course, stretch, piece.marks.len())
    }

    fn check(&self, course: u32, stretch: &Stretch, held: usize) -> Result<(), BoardsError> {
        let ends = stretch.of.is_cut() || stretch.joined || stretch.joins;
        if held < LEAST_SUPPORTS {
            return Err(loose(course, stretch, Loose::Supports { held }));
        }
        if ends && stretch.to - stretch.from < self.least_piece_mm - SLACK_MM {
            let least_mm = self.least_piece_mm;
            return Err(loose(course, stretch, Loose::Short { least_mm }));
        }
        Ok(())
    }

    /// Where a segment may be joined: on supports where both boards are long enough and held. From the front wall. [mm]
    pub fn joint_places_mm(&self, segment: &Segment) -> Vec<f64> {
        let whole = Stretch::whole(*segment);
        let held = |stretch: Stretch| {
            let on = self.supports_mm.iter().filter(|at| self.place(**at, &stretch).is_some());
            let nailer = || self.nailer_mm(&stretch).is_some();
            let on = on.count();
            (on >= LEAST_SUPPORTS || on + 1 == LEAST_SUPPORTS && nailer())
                && stretch.to - stretch.from >= self.least_piece_mm - SLACK_MM
        };
        let places = self.supports_mm.iter().copied();
        places
            .filter(|&at| at > segment.from_mm + SLACK_MM && at < segment.to_mm - SLACK_MM)
            .filter(|&at| held(Stretch { to: at, joins: true, ..whole }))
            .filter(|&at| held(Stretch { from: at, joined: true, ..whole }))
            .collect()
    }
}

/// On how many supports a piece has to be. Source: [`super::TWO_SUPPORTS`].
const LEAST_SUPPORTS: usize = 2;

fn loose(course: u32, stretch: &Stretch, why: Loose) -> BoardsError {
    BoardsError::Loose {
        course,
        from_mm: stretch.from,
        to_mm: stretch.to,
        from_opening: stretch.left_opening(),
        to_opening: stretch.right_opening(),
        why,
    }
}
