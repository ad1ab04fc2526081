//! Strips in words: answers, remarks, the table, a strip as a template, and the working.

use super::kinds::Kind;
use super::{Found, Job, mm};
use crate::carpentry::cautions::{DRILLED_STEEL, DUST, LOOK_BEHIND, MEASURE_AGAIN, OVERHEAD, SAW};
use crate::carpentry::setting_out::{EQUAL_SPACING, StripLength};
use crate::carpentry::stations::BETWEEN;
use crate::coating::cautions::FOR_GLUING;
use crate::drawing::{Anchor, Drawing, Fill, Pen, Point};
use crate::formula::{Formula as _, step};
use crate::lists::{Mark, MarkStrip};
use crate::quantity::{Length, Style};
use crate::report::{Answer, Caution, Remark, Step, Table, TableRow};
use crate::source::Source;
use crate::text::text;
use crate::words::{Arg, Msg, Phrase, cut_plan, furring as words};

static CAUTIONS: &[(Phrase, Source)] =
    &[LOOK_BEHIND, OVERHEAD, DUST, SAW, DRILLED_STEEL, MEASURE_AGAIN];

/// So many lengths of strip are worked out in full.
const MOST_WORKED: usize = 16;

pub(super) fn cautions(job: &Job) -> Vec<Caution> {
    let mut cautions = Caution::all(CAUTIONS);
    if job.inputs.adhesive.is_some() {
        cautions.extend(Caution::all(&FOR_GLUING));
    }
    cautions
}

fn mark(value: f64, style: Style) -> String {
    style.mark(mm(value)).text
}

/// From screw to screw, as they are marked.
fn spacing(kind: &Kind) -> Length {
    match kind.screw_marks_mm.as_slice() {
        [first, second, ..] => mm(second - first),
        _ => Length::default(),
    }
}

pub(super) fn answers(job: &Job, found: &Found, style: Style) -> Vec<Answer> {
    let kinds = &found.strip_kinds;
    let many = kinds.len() > 1;
    let label = style.say(words::Cut { strips: found.strips });
    let longest = style.mark(mm(found.strip_length_mm));
    let cut = match kinds.last().filter(|_| many) {
        Some(shortest) => {
            let (least, most) = (Arg::mark(mm(shortest.length_mm)), longest.text);
            Answer::new(label, style.say(words::Range { least, most }))
                .note(style.say(words::CUT_NOTE))
        }
        None => Answer::new(label, longest.text.clone()).note(style.left_over(&longest)),
    };
    let counts = || kinds.iter().map(Kind::per_strip);
    let (least, most) = (counts().min().unwrap_or(0), counts().max().unwrap_or(0));
    let each = match least == most {
        true => most.to_string(),
        false => style.say(words::Range { least, most: Arg::count(most) }),
    };
    let spacing = Arg::mark(kinds.iter().map(spacing).fold(Length::default(), Length::max));
    let screws = found.screws;
    let apart: Msg = match many {
        true => words::ScrewsAtMostApart { screws, spacing }.into(),
        false => words::ScrewsApart { screws, spacing }.into(),
    };
    let last = match (&job.inputs.screw, &found.screw) {
        (Some(screw), Some(choice)) => {
            Answer::new(style.say(words::SCREW), style.say(choice.size()))
                .note(style.say(choice.range(screw.self_drilling)))
        }
        _ => Answer::new(style.say(cut_plan::BUY), found.cut_plan.bought_words(style)),
    };
    vec![cut, Answer::new(style.say(words::SCREWS), each).note(style.say(apart)), last]
}

/// Which strip goes where, where they are not all alike.
pub(super) fn tables(found: &Found, style: Style) -> Vec<Table> {
    if found.strip_kinds.len() < 2 {
        return Vec::new();
    }
    let rows = found.strip_kinds.iter().map(|kind| TableRow {
        cells: vec![
            style.say(kind.name()),
            places(kind, style),
            mark(kind.length_mm, style),
            kind.per_strip().to_string(),
            style.mark(spacing(kind)).text,
        ],
        chosen: false,
    });
    let heads = [
        words::TABLE_STRIP,
        words::TABLE_GOES_ON,
        words::TABLE_LENGTH,
        words::TABLE_SCREWS,
        words::TABLE_APART,
    ];
    vec![Table {
        title: style.say(words::TABLE),
        heads: heads.map(|head| style.say(head)).into(),
        rows: rows.collect(),
    }]
}

fn places(kind: &Kind, style: Style) -> String {
    kind.places().map_or_else(String::new, |places| style.say(places))
}

pub(super) fn remarks(job: &Job, found: &Found, style: Style) -> Vec<Remark> {
    let note = |message: Msg| Remark::note(style.say(message));
    let warning = |message: Msg| Remark::warning(style.say(message));
    let mut remarks = Vec::new();
    if let (Some(screw), Some(choice)) = (&job.inputs.screw, &found.screw) {
        remarks.extend(screw.remarks(choice, job.inputs.section.thickness, style));
    }
    if !job.usual.is_empty() {
        remarks.push(note(words::LeftOut { values: Arg::each(job.usual.iter().cloned()) }.into()));
    }
    if job.clearance_mm() < 0.5 {
        remarks.push(warning(words::NO_CLEARANCE.into()));
    }
    remarks.push(note(words::ALONG_RIBS.into()));
    remarks.extend(interrupted(job).map(warning));
    if job.end_mm() < 10.0 {
        remarks.push(warning(words::NEAR_END.into()));
    }
    remarks.extend(found.cut_plan.remarks(style));
    remarks
}

/// Strips that end at an opening.
fn interrupted(job: &Job) -> Option<Msg> {
    let mut ribs: Vec<usize> = Vec::new();
    let mut names: Vec<&str> = Vec::new();
    for span in &job.spans {
        let Some(name) = span.opening.as_deref() else { continue };
        if ribs.last() != Some(&span.rib) {
            ribs.push(span.rib);
        }
        if !names.contains(&name) {
            names.push(name);
        }
    }
    let (count, openings) = (ribs.len(), Arg::each(names));
    (count > 0).then(|| words::Interrupted { count, ribs: Arg::each(ribs), openings }.into())
}

pub(super) fn marks(kind: &Kind, style: Style) -> MarkStrip {
    let marks = (1usize..).zip(&kind.screw_marks_mm).map(|(number, at)| Mark {
        id: text!("s{}", &number),
        label: style.say(words::ScrewMark { number }),
        at: mm(*at),
        note: String::new(),
    });
    MarkStrip {
        id: kind.id(),
        label: style.say(kind.name()),
        note: places(kind, style),
        own_datum: false,
        alike: kind.count as usize,
        length: mm(kind.length_mm),
        marks: marks.collect(),
    }
}

pub(super) fn strip(job: &Job, kind: &Kind, style: Style) -> Drawing {
    let (strip, length) = (kind.length_mm / 1e3, mm(kind.length_mm));
    let title: Msg = match kind.places() {
        Some(ribs) => words::DrawingLongest { ribs }.into(),
        None => words::DRAWING.into(),
    };
    let (screws, end) = (kind.per_strip(), job.inputs.end_distance);
    let words = style.say(words::DrawingWords { length, screws, end });
    let mut drawing = Drawing::new(style.say(title), words).strip();
    // Never so thin that it cannot be seen.
    let high = job.inputs.section.width.value.max(strip * 0.02);
    drawing.rectangle(Pen::Solid, Fill::Stock, Point::metres(0.0, 0.0), Point::metres(strip, high));
    for at in &kind.screw_marks_mm {
        let x = at / 1e3;
        drawing.cross(Pen::Mark, Point::metres(x, high / 2.0));
        drawing.text(Point::metres(x, -high * 0.3), Anchor::Middle, mark(*at, style));
    }
    let (left, right) = (Point::metres(0.0, high), Point::metres(strip, high));
    drawing.dimension(right, left, 2.0, style.length(length));
    drawing
}

pub(super) fn working(job: &Job, found: &Found, style: Style) -> Vec<Step> {
    let kinds = || found.strip_kinds.iter().take(MOST_WORKED);
    let clearance = job.inputs.end_clearance;
    let mut steps: Vec<Step> = kinds()
        .map(|kind| {
            let span = mm(kind.length_mm + 2.0 * job.clearance_mm());
            let of = StripLength { span, clearance };
            match (&kind.letter, kind.places()) {
                (Some(letter), Some(ribs)) => {
                    let name = words::StepStripOf { letter: letter.as_str(), ribs };
                    Step { source: &BETWEEN, ..step(name, &of, style) }
                }
                _ => step(words::STEP_STRIP, &of, style),
            }
        })
        .collect();
    steps.push(step(words::STEP_SPACING, &found.longest().spacing(job), style));
    // `13 · 8`, or for each length of strip `1 · 8 + 3 · 7`.
    let terms: Vec<String> =
        kinds().map(|kind| text!("{} · {}", &kind.count, kind.per_strip())).collect();
    steps.push(Step::new(
        style.say(words::STEP_SCREWS),
        "Σ m · n",
        terms.join(" + "),
        found.screws.to_string(),
        &EQUAL_SPACING,
    ));
    steps.extend(found.screw.iter().flat_map(|choice| choice.working(style)));
    if let Some(glue) = &found.adhesive {
        let (volume, cartridges) = (Arg::volume(glue.volume.value()), glue.cartridges);
        let result = style.say(words::StepAdhesiveResult { cartridges, volume });
        steps.push(Step { result, ..step(words::STEP_ADHESIVE, &glue.volume, style) });
    }
    steps.extend(found.cut_plan.working(style));
    steps
}
