//! What is fixed along the walls before the boards go up: where, what it takes, and which boards are screwed to it.

use super::{Inputs, Worked, mm, words};
use crate::carpentry::boards::Nailer;
use crate::lists::{BuyLine, LineId};
use crate::outcome::Record;
use crate::quantity::Style;
use crate::report::{CheckLine, CheckList, Remark, Table, TableRow, texts};
use crate::text::text;

/// Screws of a nailer stand no farther apart: common practice, no source. [mm]
const SCREWS_APART_MM: f64 = 400.0;

fn wall(nailer: &Nailer) -> &'static str {
    if nailer.rear { "rear" } else { "front" }
}

/// From its wall to its centre line. [mm]
fn away_mm(nailer: &Nailer, inputs: &Inputs) -> f64 {
    if nailer.rear { inputs.task.run_mm - nailer.at_mm } else { nailer.at_mm }
}

pub(super) fn records(worked: &Worked) -> Vec<Record> {
    let record = |nailer: &Nailer| {
        Record::new()
            .with("wall", wall(nailer))
            .with("at_mm", nailer.at_mm)
            .with("from_mm", nailer.from_mm)
            .with("to_mm", nailer.to_mm)
            .with("length_mm", nailer.length_mm())
    };
    worked.layout.nailers.iter().map(record).collect()
}

/// Which boards they hold.
pub(super) fn remark(worked: &Worked) -> Option<Remark> {
    let on = |mark: &crate::carpentry::boards::SupportMark| mark.support.is_none();
    let held = words::kinds_where(worked, |piece| piece.marks.iter().any(on));
    (!held.is_empty()).then(|| {
        Remark::note(text!(
            "From the wall to its joint one support and a nailer at the wall hold board {}: fix the nailers first. Their wood is on the buy list; it is not part of what the layouts are compared by.",
            held.join(", ")
        ))
    })
}

/// Where each goes.
pub(super) fn table(inputs: &Inputs, worked: &Worked, style: Style) -> Option<Table> {
    let mark = |value: f64| style.mark(mm(value)).text;
    let row = |nailer: &Nailer| TableRow {
        cells: vec![
            text!("{} wall", wall(nailer)),
            mark(away_mm(nailer, inputs)),
            mark(nailer.from_mm),
            mark(nailer.to_mm),
            mark(nailer.length_mm()),
        ],
        chosen: false,
    };
    let nailers = &worked.layout.nailers;
    (!nailers.is_empty()).then(|| Table {
        title: "Nailers, faces in the plane of the supports".into(),
        heads: texts(&["At", "Wall to centre line", "From left wall", "To", "Length"]),
        rows: nailers.iter().map(row).collect(),
    })
}

/// A line of work for each. One that lies elsewhere is another.
pub(super) fn checks(inputs: &Inputs, worked: &Worked, style: Style) -> Vec<CheckList> {
    let mark = |value: f64| style.mark(mm(value)).text;
    let line = |nailer: &Nailer| CheckLine {
        key: text!(
            "nailer {} {} {} {}",
            wall(nailer),
            LineId::mm(nailer.at_mm),
            LineId::mm(nailer.from_mm),
            LineId::mm(nailer.to_mm)
        ),
        text: text!("Fix a nailer along the {} wall", wall(nailer)),
        note: text!(
            "{}; centre line {} from the wall, {} to {} from the left wall; face in the plane of the supports.",
            section(inputs, nailer, style),
            mark(away_mm(nailer, inputs)),
            mark(nailer.from_mm),
            mark(nailer.to_mm)
        ),
        warns: false,
    };
    let lines: Vec<CheckLine> = worked.layout.nailers.iter().map(line).collect();
    let list = CheckList { title: "Before the boards go up".into(), lines };
    if list.lines.is_empty() { Vec::new() } else { vec![list] }
}

/// `3/4 in x 1 1/2 in, 46 in long`.
fn section(inputs: &Inputs, nailer: &Nailer, style: Style) -> String {
    let mark = |value: f64| style.mark(mm(value)).text;
    let width = mark(inputs.task.support_width_mm.unwrap_or_default());
    let length = mark(nailer.length_mm());
    match inputs.screw.strip() {
        Some(strip) => text!("{} x {}, {} long", style.mark(strip).text, width, length),
        None => text!("as thick as the supports, {} wide, {} long", width, length),
    }
}

/// Their wood, and the screws that fix them.
pub(super) fn buy(inputs: &Inputs, worked: &Worked, style: Style) -> Vec<BuyLine> {
    let nailers = &worked.layout.nailers;
    let mut lines: Vec<BuyLine> = Vec::new();
    for nailer in nailers {
        let id = LineId::own(text!("nailer/{}", LineId::mm(nailer.length_mm())));
        match lines.iter_mut().find(|line| line.id == id) {
            Some(line) => {
                line.quantity += 1.0;
                line.needed += 1.0;
            }
            None => {
                lines.push(BuyLine::pieces(id, "nailer", section(inputs, nailer, style), 1.0));
            }
        }
    }
    let each = |nailer: &Nailer| (nailer.length_mm() / SCREWS_APART_MM).ceil().max(1.0) + 1.0;
    let screws: f64 = nailers.iter().map(each).sum();
    if screws > 0.0 {
        let spec = "for the nailers, as long as what they are fixed to allows";
        lines.push(BuyLine::pieces(LineId::own("nailer_screw"), "screw", spec, screws));
    }
    lines
}
