//! What the boards sheet says: answers, remarks, the table of boards.

use super::{Inputs, Worked, last_rips, letters, mm, piece_id, spare};
use crate::carpentry::boards::{
    BoardPiece, BoardsError, Edge, LEAST_STRIP_MM, Loose, Notch, SupportMark,
};
use crate::carpentry::cautions::{DUST, LOOK_BEHIND, MEASURE_AGAIN, OVERHEAD, SAW};
use crate::carpentry::courses::{SHOWN_MM, first_course_range_mm};
use crate::fault::Fault;
use crate::lists::MarkStrip;
use crate::quantity::Style;
use crate::report::{Answer, Caution, Remark, Table, TableRow, texts};
use crate::source::Source;
use crate::text::text;
use crate::words::Phrase;

static CAUTIONS: &[(Phrase, Source)] = &[LOOK_BEHIND, OVERHEAD, DUST, SAW, MEASURE_AGAIN];

pub(super) fn cautions() -> Vec<Caution> {
    Caution::all(CAUTIONS)
}

/// What a board of one kind is called, with how many are alike and what is ripped off it.
pub(super) fn kind_label(worked: &Worked, index: usize, style: Style) -> String {
    kind_strip(worked, index, style).title(style)
}

/// The same as a strip that has no marks yet.
pub(super) fn kind_strip(worked: &Worked, index: usize, style: Style) -> MarkStrip {
    let Some(kind) = worked.layout.kinds.get(index) else { return MarkStrip::default() };
    let piece = &worked.layout.pieces[kind.first];
    let rip = rip_words(worked, piece, style);
    MarkStrip {
        id: piece_id(piece),
        label: text!("board {}", letters(index)),
        note: rip.map_or_else(String::new, |rip| text!("ripped to {}", &rip)),
        alike: kind.count as usize,
        ..MarkStrip::default()
    }
}

/// `92 mm`, or `92 mm at the left end, 78 mm at the right`.
fn rip_words(worked: &Worked, piece: &BoardPiece, style: Style) -> Option<String> {
    let mark = |value: f64| style.mark(mm(value)).text;
    match (piece.widths_mm.first(), piece.widths_mm.last()) {
        (Some(left), Some(right)) => Some(text!(
            "{} at the left end, {} at the right",
            mark(left.width_mm),
            mark(right.width_mm)
        )),
        _ => rip(worked, piece).map(mark),
    }
}

/// What is said of two screws side by side.
pub(super) fn across_words(
    piece: &BoardPiece,
    mark: &SupportMark,
    (low, high): (f64, f64),
    style: Style,
) -> String {
    let text = |value: f64| style.mark(mm(value)).text;
    let above = piece.width_at_mm(mark.offset_mm) - high;
    if (low - above).abs() < 0.5 {
        text!(", 2 screws, {} from either edge", text(low))
    } else {
        text!(", 2 screws, {} and {} from the right edge", text(low), text(high))
    }
}

/// The width to which a piece is ripped. [mm]
fn rip(worked: &Worked, piece: &BoardPiece) -> Option<f64> {
    let courses = &worked.layout.courses;
    let last = piece.course == courses.count;
    let end = piece.course == 1 || last;
    let uncut = if last { courses.first_mm } else { courses.last_mm };
    // With a full start the first course is not ripped though the last one is.
    let narrower = courses.count == 1 || piece.width_mm() < uncut - 1e-3;
    let equal = (courses.first_mm - courses.last_mm).abs() <= 1e-3;
    (courses.ripped && end && (narrower || equal)).then_some(piece.width_mm())
}

pub(super) fn answers(inputs: &Inputs, worked: &Worked, style: Style) -> Vec<Answer> {
    let layout = &worked.layout;
    let courses = &layout.courses;
    let mark = |value: f64| style.mark(mm(value)).text;
    let along = last_rips(worked);
    let rips = if let (Some((_, front)), Some((_, rear))) = (along.first(), along.last()) {
        text!(
            "first {}, last ripped from {} at the front to {} at the rear",
            if layout.pieces[0].width_mm() < inputs.task.coverage_mm - 1e-3 {
                text!("ripped to {}", mark(courses.first_mm))
            } else {
                "full".to_owned()
            },
            mark(*front),
            mark(*rear)
        )
    } else if !courses.ripped {
        "no rip".to_owned()
    } else if (courses.first_mm - courses.last_mm).abs() < 1e-3 {
        text!("first and last ripped to {}", mark(courses.first_mm))
    } else {
        text!("last ripped to {}", mark(courses.last_mm))
    };
    let (holes, filled) = (worked.holes, worked.filled_holes);
    let cost = worked.planned.plan.priced.then(|| crate::quantity::money(worked.planned.plan.cost));
    vec![
        Answer::new("Courses", courses.count.to_string()).note(rips),
        Answer::new("Buy", worked.planned.bought_words(style))
            .note(cost.map_or(String::new(), |cost| text!("for {}", &cost))),
        Answer::new("Holes", holes.to_string()).note(text!(
            "{} shown, {} filled, which takes {} of filler",
            holes.saturating_sub(filled),
            &filled,
            style.volume(worked.filler)
        )),
    ]
}

pub(super) fn remarks(inputs: &Inputs, worked: &Worked, style: Style) -> Vec<Remark> {
    let layout = &worked.layout;
    let mark = |value: f64| style.mark(mm(value)).text;
    let mut remarks = Vec::new();
    if inputs.openings_unknown {
        remarks.push(Remark::warning(
            "An opening of the body has a fault, so no board is notched here: mend it on the body page.",
        ));
    }
    if layout.joint_in_opening {
        remarks.push(Remark::warning(
            "A joint lies where an opening cuts into its boards: no other supports give joints with this stock. Longer stock may.",
        ));
    }
    remarks.extend(super::nailers::remark(worked));
    remarks.extend(not_held_remark(inputs, worked, style));
    let slivers =
        kinds_where(worked, |piece| piece.stays_mm().is_some_and(|stays| stays < LEAST_STRIP_MM));
    if !slivers.is_empty() {
        remarks.push(Remark::warning(text!("Beside the cut-out less than {} of the width stays: board {}. Such a strip splits at a screw: shift the courses (start, side gap), or back it and glue it.", mark(LEAST_STRIP_MM), slivers.join(", "))));
    }
    if layout.courses.ripped
        && layout.courses.last_mm < inputs.task.coverage_mm / 2.0 - 1e-3
        && inputs.task.least_rip_mm.is_none()
    {
        remarks.push(Remark::warning(text!(
            "The last course is ripped to {}, less than half a course{}.",
            mark(layout.courses.last_mm),
            if inputs.balanced() { "" } else { ": a balanced start gives wider ends" }
        )));
    }
    if !layout.joints_mm.is_empty() {
        remarks.push(joints_remark(inputs, worked, style));
    }
    remarks.extend(taper_remark(worked, style));
    remarks.extend(first_course_remark(inputs, worked, style));
    if layout.pieces.iter().any(|piece| !piece.notches.is_empty()) {
        remarks.push(Remark::note(
            "Left and right edges are as you stand facing the rear. The drawings look down from above: for a ceiling the face you see from below is turned away.",
        ));
    }
    remarks.extend(flange_remark(inputs, style));
    if let Some(full_mm) = inputs.full_width_mm.filter(|_| layout.courses.ripped) {
        let lap = full_mm - inputs.task.coverage_mm;
        if lap > 0.05 {
            remarks.push(Remark::note(text!("Rips are measured on the face that shows: tongue or lap ({}) comes on top where it stays.", mark(lap))));
        }
    }
    if let Some(movement) = &inputs.movement {
        remarks.extend(movement.remarks(style));
    }
    remarks.push(inputs.screw.remark(style));
    if !inputs.usual.is_empty() {
        remarks.push(Remark::note(text!(
            "Left out, so the usual stands: {}.",
            inputs.usual.join("; ")
        )));
    }
    if let Some(spare) = spare(inputs, worked) {
        remarks.push(Remark::note(text!(
            "Beside the cut plan the buy list has {} of {} to spare.",
            if spare.count == 1 {
                "one board".to_owned()
            } else {
                text!("{} boards", &spare.count)
            },
            style.length(mm(spare.stock.length_mm))
        )));
    }
    remarks.extend(super::choices::remarks(worked, inputs.task.joint_price, style));
    remarks.extend(worked.planned.remarks(style));
    remarks
}

/// Names of the kinds whose first piece is so.
pub(super) fn kinds_where(worked: &Worked, is: impl Fn(&BoardPiece) -> bool) -> Vec<String> {
    let kinds = worked.layout.kinds.iter().enumerate();
    kinds
        .filter(|(_, kind)| is(&worked.layout.pieces[kind.first]))
        .map(|(index, _)| letters(index))
        .collect()
}

/// Supports that lie under a board and hold it nowhere.
fn not_held_remark(inputs: &Inputs, worked: &Worked, style: Style) -> Option<Remark> {
    let supports = &inputs.task.supports_mm;
    let found = kinds_where(worked, |piece| {
        let under = supports.iter().filter(|at| **at >= piece.from_mm && **at <= piece.to_mm);
        under.count() > piece.marks.iter().filter(|mark| mark.support.is_some()).count()
    });
    let edge = style.mark(mm(worked.layout.edge_distance_mm)).text;
    (!found.is_empty()).then(|| {
        Remark::note(text!(
            "No screw on a support that is less than {} from a cut or an end, or where less than {} stays beside a cut-out: board {}. Its other supports hold it.",
            edge,
            style.mark(mm(LEAST_STRIP_MM)).text,
            found.join(", ")
        ))
    })
}

/// A board that would hang loose, and what would be right.
pub(super) fn loose(error: &BoardsError, inputs: &Inputs, style: Style) -> Fault {
    let BoardsError::Loose { course, from_mm, to_mm, from_opening, to_opening, why } = *error
    else {
        return Fault::new("supports", error.to_string());
    };
    let length = style.length(mm(to_mm - from_mm));
    let end = |opening: Option<usize>, wall: &str| {
        opening.map_or(wall.to_owned(), |index| text!("the {}", inputs.opening_name(index)))
    };
    let cut = from_opening.is_some() || to_opening.is_some();
    let place = if cut {
        text!(
            "in course {} the board between {} and {} ({})",
            &course,
            end(
                from_opening,
                if from_mm > inputs.task.end_gap_mm + 1.0 { "a joint" } else { "the front wall" }
            ),
            end(
                to_opening,
                if to_mm < inputs.task.run_mm - inputs.task.end_gap_mm - 1.0 {
                    "a joint"
                } else {
                    "the rear wall"
                }
            ),
            length
        )
    } else {
        text!("in course {} a board of {}", &course, length)
    };
    match why {
        Loose::Supports { held } => {
            let on = match held {
                0 => "no support",
                _ => "one support",
            };
            let mend = if cut {
                ": fix blocking under it and enter the blocking's centre line here among the ribs, or move the opening"
            } else {
                ": enter every centre line that it can be screwed to"
            };
            Fault::new("supports", text!("{} would hang loose, held on {}{}", place, on, mend))
        }
        Loose::Short { least_mm } => Fault::new(
            "least_piece",
            text!(
                "{} is shorter than the least piece of {}; move the opening, or give a smaller least piece",
                place,
                style.length(mm(least_mm))
            ),
        ),
        Loose::Joint => Fault::new(
            "stock",
            text!(
                "{} has a joint where a cut-out leaves no room for its screws; longer stock may need no joint there",
                place
            ),
        ),
    }
}

fn joints_remark(inputs: &Inputs, worked: &Worked, style: Style) -> Remark {
    let layout = &worked.layout;
    let stagger = if layout.stagger_mm > 0.0 {
        text!("at least {} apart from course to course", style.mark(mm(layout.stagger_mm)).text)
    } else if inputs.task.stagger_mm.is_none() {
        return Remark::warning(
            "Joints lie on supports, but these supports and lengths allow no stagger from course to course: longer stock would.",
        );
    } else {
        "with no stagger asked for".to_owned()
    };
    Remark::note(text!(
        "{} on supports, {}.",
        super::choices::joints_words(layout.joints_mm.len()),
        &stagger
    ))
}

/// How wide the last course is along the run.
fn taper_remark(worked: &Worked, style: Style) -> Option<Remark> {
    let along = last_rips(worked);
    let mark = |value: f64| style.mark(mm(value)).text;
    let places: Vec<String> =
        along.iter().map(|(x, rip)| text!("{} at {}", mark(*rip), mark(*x))).collect();
    if !worked.layout.taper_kept {
        return Some(Remark::warning(
            "The field tapers by more than the last course can take up: somewhere it would be narrower than the least rip, or wider than a board. Share the taper over the courses, or change the start.",
        ));
    }
    (!places.is_empty()).then(|| {
        Remark::note(text!(
            "The last course follows the right wall: {} from the front wall. Mark these widths on its boards, {}, and saw along it.",
            places.join(", "),
            // Between two stations the wall is straight; at each in between it may bend.
            if places.len() > 2 { "join each to the next by a straight line" } else { "join them by a straight line" }
        ))
    })
}

/// How far the first course may lie off at its far end.
fn first_course_remark(inputs: &Inputs, worked: &Worked, style: Style) -> Option<Remark> {
    let (near, far, last, least) = first_course(inputs, worked);
    let small = |value: f64| style.mark(mm(value)).text;
    let text = match first_course_range_mm(near, far, last, least, SHOWN_MM) {
        Some((low, high)) => text!(
            "Lay the first course by a stretched line. At the rear it may lie from {} nearer to the left wall to {} farther from it than at the front before the last course shows it.",
            small((-low).max(0.0)),
            small(high.max(0.0))
        ),
        None => {
            return Some(Remark::warning(
                "The field tapers so much that the last course would be ripped too narrow at one end: share the taper over the courses, or change the start.",
            ));
        }
    };
    Some(Remark::note(text))
}

/// Field at the front and at the rear, last course, least rip. [mm]
pub(super) fn first_course(inputs: &Inputs, worked: &Worked) -> (f64, f64, f64, f64) {
    let near = inputs.task.field_mm;
    let courses = &worked.layout.courses;
    let least = worked.layout.least_rip_mm.min(courses.last_mm);
    (near, inputs.field_rear_mm.unwrap_or(near), courses.last_mm, least)
}

fn flange_remark(inputs: &Inputs, style: Style) -> Option<Remark> {
    let flange_mm = inputs.flange_mm.filter(|_| !inputs.task.openings.is_empty())?;
    let over = flange_mm - inputs.task.opening_clearance_mm;
    let text = |value: f64| style.mark(mm(value)).text;
    Some(if over > 0.0 {
        Remark::good(text!(
            "The trim flange covers the cut around the openings and {} beyond it.",
            text(over)
        ))
    } else {
        Remark::warning(text!(
            "The trim flange reaches {} beyond the opening, the cut {}: it stays in sight. Take less clearance.",
            text(flange_mm),
            text(inputs.task.opening_clearance_mm)
        ))
    })
}

/// What an edge, a depth and an inset say to whoever saws.
pub(super) fn notch_words(notch: &Notch, style: Style) -> String {
    let mark = |value: f64| style.mark(mm(value)).text;
    match notch.edge {
        Edge::Through => "through the whole width".to_owned(),
        edge if notch.inset_mm > 0.0 => text!(
            "inside the board, from {} to {} off the {} edge",
            mark(notch.inset_mm),
            mark(notch.depth_mm),
            edge.name()
        ),
        edge => text!("{} deep from the {} edge", mark(notch.depth_mm), edge.name()),
    }
}

pub(super) fn tables(inputs: &Inputs, worked: &Worked, style: Style) -> Vec<Table> {
    let kinds = worked.layout.kinds.iter().enumerate();
    let rows = kinds.map(|(index, kind)| {
        let first = &worked.layout.pieces[kind.first];
        let places: Vec<String> = worked
            .layout
            .pieces
            .iter()
            .filter(|piece| piece.kind == index)
            .map(|piece| text!("{}.{}", &piece.course, &piece.piece))
            .collect();
        let notches: Vec<String> = first
            .notches
            .iter()
            .map(|notch| {
                let name = inputs.opening_name(notch.opening);
                text!("{}: {}", &name, notch_words(notch, style))
            })
            .collect();
        TableRow {
            cells: vec![
                letters(index),
                kind.count.to_string(),
                style.mark(mm(first.length_mm)).text,
                rip_words(worked, first, style).unwrap_or_else(|| "full".to_owned()),
                places.join(" "),
                notches.join("; "),
            ],
            chosen: false,
        }
    });
    let mut tables = vec![Table {
        title: "Boards, and where each goes: course.piece, from left wall and front".into(),
        heads: texts(&["Board", "How many", "Length", "Width", "Places", "Cut out"]),
        rows: rows.collect(),
    }];
    tables.extend(super::nailers::table(inputs, worked, style));
    tables.extend(super::choices::table(worked, style));
    tables
}
