//! Every kind of board by its name, with the marks along it and the lines of its notches among them.

use super::found::Found;
use super::inputs::Job;
use super::{letters, mm};
use crate::carpentry::boards::{BoardPiece, Edge, Notch, SupportMark, heights_mm};
use crate::lists::{Mark, MarkStrip};
use crate::quantity::Style;
use crate::sorting::sort_by;
use crate::text::text;
use crate::words::{Arg, Msg, boards as words, common};

/// A board by its place in the layout, as in the outcome: course and piece.
pub(super) fn piece_id(piece: &BoardPiece) -> String {
    text!("b{}.{}", &piece.course, &piece.piece)
}

/// The strips of all kinds.
pub(super) fn strips(job: &Job, found: &Found, style: Style) -> Vec<MarkStrip> {
    let kinds = found.layout.kinds.iter().enumerate();
    kinds
        .map(|(index, kind)| {
            let piece = &found.layout.pieces[kind.first];
            let marks = marks(job, piece, style);
            MarkStrip { length: mm(piece.length_mm), marks, ..named(found, index, style) }
        })
        .collect()
}

/// A strip that has no marks yet: what a board of one kind is called, how many are alike and what is ripped off it.
pub(super) fn named(found: &Found, index: usize, style: Style) -> MarkStrip {
    let Some(kind) = found.layout.kinds.get(index) else { return MarkStrip::default() };
    let piece = &found.layout.pieces[kind.first];
    let ripped = |width| style.say(words::RippedTo { width });
    MarkStrip {
        id: piece_id(piece),
        label: style.say(words::BoardOf { letter: letters(index) }),
        note: width(found, piece).map_or_else(String::new, ripped),
        alike: kind.count as usize,
        ..MarkStrip::default()
    }
}

/// `92 mm`, or `92 mm at the left end, 78 mm at the right`; none where the piece is not ripped.
pub(super) fn width(found: &Found, piece: &BoardPiece) -> Option<Arg> {
    let mark = |value: f64| Arg::mark(mm(value));
    match (piece.widths_mm.first(), piece.widths_mm.last()) {
        (Some(left), Some(right)) => {
            let (left, right) = (mark(left.width_mm), mark(right.width_mm));
            Some(Msg::from(words::EndWidths { left, right }).into())
        }
        _ => rip_mm(found, piece).map(mark),
    }
}

/// The width to which a piece is ripped.
fn rip_mm(found: &Found, piece: &BoardPiece) -> Option<f64> {
    let courses = &found.layout.courses;
    let last = piece.course == courses.count;
    let end = piece.course == 1 || last;
    let uncut = if last { courses.first_mm } else { courses.last_mm };
    // With a full start the first course is not ripped though the last one is.
    let narrower = courses.count == 1 || piece.width_mm() < uncut - 1e-3;
    let equal = (courses.first_mm - courses.last_mm).abs() <= 1e-3;
    (courses.ripped && end && (narrower || equal)).then_some(piece.width_mm())
}

/// Names of the kinds whose first piece is so.
pub(super) fn kinds_where(found: &Found, is: impl Fn(&BoardPiece) -> bool) -> Vec<String> {
    let kinds = found.layout.kinds.iter().enumerate();
    kinds
        .filter(|(_, kind)| is(&found.layout.pieces[kind.first]))
        .map(|(index, _)| letters(index))
        .collect()
}

/// What an edge, a depth and an inset say to whoever saws.
pub(super) fn notch_said(notch: &Notch) -> Msg {
    let mark = |value: f64| Arg::mark(mm(value));
    let (edge, depth) = (notch.edge.name(), mark(notch.depth_mm));
    match notch.edge {
        Edge::Through => words::NOTCH_THROUGH.into(),
        _ if notch.inset_mm > 0.0 => {
            words::NotchInside { edge, from: mark(notch.inset_mm), to: depth }.into()
        }
        _ => words::NotchEdge { edge, depth }.into(),
    }
}

fn marks(job: &Job, piece: &BoardPiece, style: Style) -> Vec<Mark> {
    let on_supports = piece.marks.iter().map(|mark| {
        let (id, label): (String, Msg) = match mark.support.map(|support| support + 1) {
            Some(number) => (text!("r{}", &number), words::RibMark { number }.into()),
            None => ("nailer".to_owned(), words::NAILER_MARK.into()),
        };
        let (label, note) = (style.say(label), style.say(note(job, piece, mark)));
        Mark { id, label, at: mm(mark.offset_mm), note }
    });
    let mut marks: Vec<Mark> = on_supports.collect();
    for notch in &piece.notches {
        let opening = || job.opening(notch.opening);
        let note = style.say(notch_said(notch));
        let key = job.openings.get(notch.opening).map_or("", |opening| opening.key.as_str());
        let (from, to) = (
            style.say(words::CutOutFrom { opening: opening() }),
            style.say(words::CutOutTo { opening: opening() }),
        );
        for (end, label, at) in [("from", from, notch.from_mm), ("to", to, notch.to_mm)] {
            let id = text!("n{}.{}", key, &end);
            marks.push(Mark { id, label, at: mm(at), note: note.clone() });
        }
    }
    // Where the ripped edge of a last course changes its slant, and how wide it is there.
    let inside = piece.widths_mm.iter();
    for station in inside.filter(|one| one.x_mm > 1e-3 && one.x_mm < piece.length_mm - 1e-3) {
        let width = Arg::mark(mm(station.width_mm));
        marks.push(Mark {
            id: "bend".to_owned(),
            label: style.say(words::RIP_BENDS),
            at: mm(station.x_mm),
            note: style.say(words::RipBendsWidth { width }),
        });
    }
    sort_by(&mut marks, |a, b| a.at.value.total_cmp(&b.at.value));
    marks
}

/// What becomes of the screw, whether the mark is at a joint, and where its screws stand across the board.
fn note(job: &Job, piece: &BoardPiece, mark: &SupportMark) -> Msg {
    let mut rest: Option<Msg> = across(job, piece, mark);
    if mark.joint {
        rest = Some(both(words::JOINT.into(), rest));
    }
    both(job.finish(mark).said().into(), rest)
}

fn both(before: Msg, rest: Option<Msg>) -> Msg {
    match rest {
        Some(rest) => common::ListMiddle { before, rest }.into(),
        None => before,
    }
}

fn across(job: &Job, piece: &BoardPiece, mark: &SupportMark) -> Option<Msg> {
    let at = |value: f64| Arg::mark(mm(value));
    match *heights_mm(mark, job.task.screws_across) {
        [low, high] => {
            let above = piece.width_at_mm(mark.offset_mm) - high;
            Some(if (low - above).abs() < 0.5 {
                words::TwoScrews { edge: at(low) }.into()
            } else {
                words::TwoScrewsOffRight { low: at(low), high: at(high) }.into()
            })
        }
        [one] if mark.beside => Some(words::BesideCutOut { at: at(one) }.into()),
        _ => None,
    }
}
