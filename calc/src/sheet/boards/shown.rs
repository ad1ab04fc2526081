//! Boards in words: answers, remarks, the tables.

use uom::si::length::millimeter;

use super::found::{Found, RipAt};
use super::inputs::Job;
use super::{choices, letters, marks, mm, nailers};
use crate::carpentry::boards::{BoardPiece, LEAST_STRIP_MM};
use crate::carpentry::cautions::{DUST, LOOK_BEHIND, MEASURE_AGAIN, OVERHEAD, SAW};
use crate::carpentry::courses::{SHOWN_MM, first_course_range_mm};
use crate::formula::Formula as _;
use crate::quantity::{Length, Style, money};
use crate::report::{Answer, Caution, Remark, Table, TableRow};
use crate::source::Source;
use crate::text::text;
use crate::words::{Arg, Id, Msg, Phrase, boards as words, cut_plan};

static CAUTIONS: &[(Phrase, Source)] = &[LOOK_BEHIND, OVERHEAD, DUST, SAW, MEASURE_AGAIN];

pub(super) fn cautions() -> Vec<Caution> {
    Caution::all(CAUTIONS)
}

pub(super) fn answers(job: &Job, found: &Found, style: Style) -> Vec<Answer> {
    let plan = &found.cut_plan.plan;
    let cost = match plan.priced {
        true => style.say(words::BoughtFor { cost: money(plan.cost) }),
        false => String::new(),
    };
    let (shown, filled) = (found.shown_holes(), found.filler.holes);
    let filler = Arg::volume(found.filler.value());
    vec![
        first_cut(job, found, style),
        Answer::new(style.say(cut_plan::BUY), found.cut_plan.bought_words(style)).note(cost),
        Answer::new(style.say(words::HOLES), found.all_holes().to_string())
            .note(style.say(words::HolesFinish { shown, filled, filler })),
    ]
}

/// What the saw is set to first: the rip of the outer courses, or the length of the first board where none is ripped.
fn first_cut(job: &Job, found: &Found, style: Style) -> Answer {
    let courses = &found.layout.courses;
    let count = || Msg::from(words::CourseCount { courses: courses.count });
    if let [front, .., rear] = found.last_rips() {
        let [front, rear] = [front, rear].map(|at| Arg::mark(mm(at.rip_mm)));
        let range = style.say(words::RipTaperedRange { front, rear });
        if courses.count == 1 {
            let note = style.say(words::RIP_ONLY_FRONT_REAR);
            return Answer::new(style.say(words::RIP_ONLY_TAPERED), range).note(note);
        }
        let first = found.layout.pieces.first().map_or(0.0, BoardPiece::width_mm);
        let note: Msg = if first < job.task.coverage_mm - 1e-3 {
            let first = Arg::mark(mm(courses.first_mm));
            words::RipTaperedFirst { first, courses: count() }.into()
        } else {
            words::RipTaperedFull { courses: count() }.into()
        };
        return Answer::new(style.say(words::RIP_TAPERED), range).note(style.say(note));
    }
    let set_to = |label: Msg, length_mm: f64, note: Msg| {
        let marked = style.mark(mm(length_mm));
        let (note, over) = (style.say(note), style.left_over(&marked));
        let note = match over.is_empty() {
            true => note,
            false => style.say(words::Rounded { over, note }),
        };
        Answer::new(style.say(label), marked.text).note(note)
    };
    if !courses.ripped {
        let length = found.layout.pieces.first().map_or(0.0, |piece| piece.length_mm);
        let label = words::CutFirst { letter: letters(0) };
        return set_to(label.into(), length, words::CutFirstCourses { courses: count() }.into());
    }
    let equal = (courses.first_mm - courses.last_mm).abs() < 1e-3;
    match (courses.count, equal) {
        (1, _) => set_to(words::RIP_ONLY.into(), courses.first_mm, count()),
        (_, true) => set_to(words::RIP_BOTH.into(), courses.first_mm, count()),
        (_, false) => {
            let note = words::RipLastFirstFull { courses: count() };
            set_to(words::RIP_LAST.into(), courses.last_mm, note.into())
        }
    }
}

pub(super) fn remarks(job: &Job, found: &Found, style: Style) -> Vec<Remark> {
    let layout = &found.layout;
    let note = |message: Msg| Remark::note(style.say(message));
    let warning = |message: Msg| Remark::warning(style.say(message));
    let mut remarks = Vec::new();
    if job.openings_unknown {
        remarks.push(warning(words::OPENINGS_UNKNOWN.into()));
    }
    if layout.joint_in_opening {
        remarks.push(warning(words::JOINT_IN_OPENING.into()));
    }
    remarks.extend(nailers::remark(found, style));
    remarks.extend(not_held(job, found).map(note));
    remarks.extend(slivers(found).map(warning));
    remarks.extend(narrow_rip(job, found).map(warning));
    remarks.extend(joints(job, found, style));
    remarks.extend(taper(found, style));
    remarks.push(first_course_remark(job, found, style));
    if layout.pieces.iter().any(|piece| !piece.notches.is_empty()) {
        remarks.push(note(words::FACING.into()));
    }
    remarks.extend(flange(job, style));
    let lap = job.inputs.full_width.map(|full| full - job.inputs.coverage);
    if let Some(lap) = lap.filter(|lap| layout.courses.ripped && lap.get::<millimeter>() > 0.05) {
        remarks.push(note(words::Lap { lap: Arg::mark(lap) }.into()));
    }
    remarks.extend(job.movement.iter().flat_map(|movement| movement.remarks(style)));
    remarks.push(job.screw.remark(style));
    if !job.usual.is_empty() {
        remarks.push(note(words::LeftOut { values: Arg::each(job.usual.iter().cloned()) }.into()));
    }
    if let Some(spare) = &found.spare {
        let (count, length) = (spare.count, mm(spare.length_mm));
        remarks.push(note(words::Spares { count, length }.into()));
    }
    remarks.extend(choices::remarks(found, job.inputs.joint_price, style));
    remarks.extend(found.cut_plan.remarks(style));
    remarks
}

/// Supports that lie under a board and hold it nowhere.
fn not_held(job: &Job, found: &Found) -> Option<Msg> {
    let supports = &job.task.supports_mm;
    let boards = marks::kinds_where(found, |piece| {
        let under = supports.iter().filter(|at| **at >= piece.from_mm && **at <= piece.to_mm);
        under.count() > piece.marks.iter().filter(|mark| mark.support.is_some()).count()
    });
    let [edge, strip] =
        [found.layout.edge_distance_mm, LEAST_STRIP_MM].map(|length| Arg::mark(mm(length)));
    let (count, boards) = (boards.len(), Arg::each(boards));
    (count > 0).then(|| words::NotHeld { count, boards, edge, strip }.into())
}

/// Boards of which a cut-out leaves a strip that splits.
fn slivers(found: &Found) -> Option<Msg> {
    let thin = |piece: &BoardPiece| piece.stays_mm().is_some_and(|stays| stays < LEAST_STRIP_MM);
    let boards = marks::kinds_where(found, thin);
    let (count, boards) = (boards.len(), Arg::each(boards));
    let strip = Arg::mark(mm(LEAST_STRIP_MM));
    (count > 0).then(|| words::Slivers { count, boards, strip }.into())
}

/// A last course of less than half a board, where nobody asked for it.
fn narrow_rip(job: &Job, found: &Found) -> Option<Msg> {
    let courses = &found.layout.courses;
    let narrow = courses.ripped
        && courses.last_mm < job.task.coverage_mm / 2.0 - 1e-3
        && job.task.least_rip_mm.is_none();
    let rip = Arg::mark(mm(courses.last_mm));
    narrow.then(|| match job.balanced() {
        true => words::NarrowRip { rip }.into(),
        false => words::NarrowRipFull { rip }.into(),
    })
}

fn joints(job: &Job, found: &Found, style: Style) -> Option<Remark> {
    let layout = &found.layout;
    let joints = layout.joints_mm.len();
    let said: Msg = if joints == 0 {
        return None;
    } else if layout.stagger_mm > 0.0 {
        words::JointsStaggered { joints, stagger: Arg::mark(mm(layout.stagger_mm)) }.into()
    } else if job.task.stagger_mm.is_none() {
        return Some(Remark::warning(style.say(words::JOINTS_NOT_STAGGERED)));
    } else {
        words::JointsInLine { joints }.into()
    };
    Some(Remark::note(style.say(said)))
}

/// How wide the last course is along the run.
fn taper(found: &Found, style: Style) -> Option<Remark> {
    if !found.layout.taper_kept {
        return Some(Remark::warning(style.say(words::TAPER_LOST)));
    }
    let rips = found.last_rips();
    let at = |rip: &RipAt| -> Msg {
        let [rip, place] = [rip.rip_mm, rip.x_mm].map(|length| Arg::mark(mm(length)));
        words::RipAt { rip, place }.into()
    };
    let places = Arg::each(rips.iter().map(at));
    // Between two stations the wall is straight; at each in between it may bend.
    let said: Msg = match rips.len() {
        0 => return None,
        1 | 2 => words::TaperKept { places }.into(),
        _ => words::TaperKeptBends { places }.into(),
    };
    Some(Remark::note(style.say(said)))
}

/// How far the first course may lie off at its far end.
fn first_course_remark(job: &Job, found: &Found, style: Style) -> Remark {
    let (near, far, last, least) = first_course(job, found);
    match first_course_range_mm(near, far, last, least, SHOWN_MM) {
        Some((low, high)) => {
            let mark = |by: f64| Arg::mark(mm(by));
            let said: Msg = if low > 0.0 {
                words::FirstCourseFarther { least: mark(low), most: mark(high) }.into()
            } else if high < 0.0 {
                words::FirstCourseCloser { least: mark(-high), most: mark(-low) }.into()
            } else {
                words::FirstCourse { nearer: mark(-low), farther: mark(high) }.into()
            };
            Remark::note(style.say(said))
        }
        None => Remark::warning(style.say(words::FIRST_COURSE_TOO_NARROW)),
    }
}

/// Field at the front and at the rear, last course, least rip. [mm]
pub(super) fn first_course(job: &Job, found: &Found) -> (f64, f64, f64, f64) {
    let near = job.task.field_mm;
    let courses = &found.layout.courses;
    let least = found.layout.least_rip_mm.min(courses.last_mm);
    (near, job.field_rear_mm.unwrap_or(near), courses.last_mm, least)
}

fn flange(job: &Job, style: Style) -> Option<Remark> {
    let flange = job.inputs.flange.filter(|_| !job.task.openings.is_empty())?;
    let cut = mm(job.task.opening_clearance_mm);
    let over = flange - cut;
    Some(if over > Length::default() {
        Remark::good(style.say(words::FlangeCovers { over: Arg::mark(over) }))
    } else {
        let [flange, cut] = [flange, cut].map(Arg::mark);
        Remark::warning(style.say(words::FlangeShort { flange, cut }))
    })
}

pub(super) fn tables(job: &Job, found: &Found, style: Style) -> Vec<Table> {
    let pieces = &found.layout.pieces;
    let rows = found.layout.kinds.iter().enumerate().map(|(index, kind)| {
        let first = &pieces[kind.first];
        let alike = pieces.iter().filter(|piece| piece.kind == index);
        let places: Vec<String> =
            alike.map(|piece| text!("{}.{}", &piece.course, &piece.piece)).collect();
        let notches = first.notches.iter().map(|notch| {
            let opening = job.opening(notch.opening);
            style.say(words::NotchOf { opening, notch: marks::notch_said(notch) })
        });
        let notches: Vec<String> = notches.collect();
        let width = marks::width(found, first).unwrap_or_else(|| words::FULL.into());
        TableRow {
            cells: vec![
                letters(index),
                kind.count.to_string(),
                style.mark(mm(first.length_mm)).text,
                style.write(&width),
                places.join(" "),
                notches.join("; "),
            ],
            chosen: false,
        }
    });
    let heads: [Id; 6] = [
        words::TABLE_BOARD,
        words::TABLE_COUNT,
        words::TABLE_LENGTH,
        words::TABLE_WIDTH,
        words::TABLE_PLACES,
        words::TABLE_CUT_OUT,
    ];
    let mut tables = vec![Table {
        title: style.say(words::TABLE),
        heads: heads.map(|head| style.say(head)).into(),
        rows: rows.collect(),
    }];
    tables.extend(nailers::table(job, found, style));
    tables.extend(choices::table(found, style));
    tables
}
