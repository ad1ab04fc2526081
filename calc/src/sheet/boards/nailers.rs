//! What is fixed along the walls before the boards go up: where, what it takes, and which boards are screwed to it.

use super::found::Found;
use super::inputs::Job;
use super::{marks, mm};
use crate::carpentry::boards::{Nailer, SupportMark};
use crate::lists::{BuyLine, LineId};
use crate::quantity::Style;
use crate::report::{CheckLine, CheckList, Remark, Table, TableRow};
use crate::text::text;
use crate::words::{Arg, Msg, boards as words};

/// Screws of a nailer stand no farther apart: common practice, no source. [mm]
const SCREWS_APART_MM: f64 = 400.0;

/// The wall that it lies along, as in the outcome.
pub(super) fn wall(nailer: &Nailer) -> &'static str {
    if nailer.rear { "rear" } else { "front" }
}

/// From its wall to its centre line. [mm]
fn away_mm(nailer: &Nailer, job: &Job) -> f64 {
    if nailer.rear { job.task.run_mm - nailer.at_mm } else { nailer.at_mm }
}

/// Which boards they hold.
pub(super) fn remark(found: &Found, style: Style) -> Option<Remark> {
    let on = |mark: &SupportMark| mark.support.is_none();
    let held = marks::kinds_where(found, |piece| piece.marks.iter().any(on));
    let (count, boards) = (held.len(), Arg::each(held));
    (count > 0).then(|| Remark::note(style.say(words::OnNailers { count, boards })))
}

/// Where each goes.
pub(super) fn table(job: &Job, found: &Found, style: Style) -> Option<Table> {
    let mark = |value: f64| style.mark(mm(value)).text;
    let row = |nailer: &Nailer| TableRow {
        cells: vec![
            style.say(words::NailerWall { wall: wall(nailer) }),
            mark(away_mm(nailer, job)),
            mark(nailer.from_mm),
            mark(nailer.to_mm),
            mark(nailer.length_mm()),
        ],
        chosen: false,
    };
    let nailers = &found.layout.nailers;
    let heads = [
        words::NAILERS_AT,
        words::NAILERS_AWAY,
        words::NAILERS_FROM,
        words::NAILERS_TO,
        words::NAILERS_LENGTH,
    ];
    (!nailers.is_empty()).then(|| Table {
        title: style.say(words::NAILERS),
        heads: heads.map(|head| style.say(head)).into(),
        rows: nailers.iter().map(row).collect(),
    })
}

/// A line of work for each. One that lies elsewhere is another.
pub(super) fn checks(job: &Job, found: &Found, style: Style) -> Vec<CheckList> {
    let mark = |value: f64| Arg::mark(mm(value));
    let line = |nailer: &Nailer| CheckLine {
        key: text!(
            "nailer {} {} {} {}",
            wall(nailer),
            LineId::mm(nailer.at_mm),
            LineId::mm(nailer.from_mm),
            LineId::mm(nailer.to_mm)
        ),
        text: style.say(words::FixNailer { wall: wall(nailer) }),
        note: style.say(words::FixNailerPlace {
            section: section(job, nailer),
            away: mark(away_mm(nailer, job)),
            from: mark(nailer.from_mm),
            to: mark(nailer.to_mm),
        }),
        warns: false,
    };
    let lines: Vec<CheckLine> = found.layout.nailers.iter().map(line).collect();
    let list = CheckList { title: style.say(words::BEFORE), lines };
    if list.lines.is_empty() { Vec::new() } else { vec![list] }
}

/// `3/4 in x 1 1/2 in, 46 in long`.
fn section(job: &Job, nailer: &Nailer) -> Msg {
    let width = Arg::mark(mm(job.task.support_width_mm.unwrap_or_default()));
    let length = Arg::mark(mm(nailer.length_mm()));
    match job.screw.strip() {
        Some(strip) => words::NailerSection { thickness: Arg::mark(strip), width, length }.into(),
        None => words::NailerSectionUnknown { width, length }.into(),
    }
}

/// Their wood, and the screws that fix them.
pub(super) fn buy(job: &Job, found: &Found, style: Style) -> Vec<BuyLine> {
    let nailers = &found.layout.nailers;
    let mut lines: Vec<BuyLine> = Vec::new();
    for nailer in nailers {
        let id = LineId::own(text!("nailer/{}", LineId::mm(nailer.length_mm())));
        match lines.iter_mut().find(|line| line.id == id) {
            Some(line) => {
                line.quantity += 1.0;
                line.needed += 1.0;
            }
            None => {
                let (item, spec) = (style.say(words::NAILER_ITEM), style.say(section(job, nailer)));
                lines.push(BuyLine::pieces(id, item, spec, 1.0));
            }
        }
    }
    let each = |nailer: &Nailer| (nailer.length_mm() / SCREWS_APART_MM).ceil().max(1.0) + 1.0;
    let screws: f64 = nailers.iter().map(each).sum();
    if screws > 0.0 {
        let [item, spec] = [words::SCREW_ITEM, words::SCREW_ITEM_NAILERS].map(|id| style.say(id));
        lines.push(BuyLine::pieces(LineId::own("nailer_screw"), item, spec, screws));
    }
    lines
}
