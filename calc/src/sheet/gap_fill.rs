//! Two-part filler for gaps and holes: how much, in which batches, and what to buy.

mod drawing;
mod found;
mod inputs;
mod list;
mod mixing_tasks;
mod order;
mod shown;
mod steps;
mod wood;

use uom::si::f64::Length;

use self::found::{Found, solve};
use self::inputs::{Inputs, Job};
use super::schedule::label::{LIMITS, OF_FILLER};
use super::{Sheet, tried};
use crate::carpentry::moisture;
use crate::coating::cautions::FOR_FILLING;
use crate::coating::{film, gap, mixing, purchase};
use crate::lists::{Mark, MarkStrip};
use crate::outcome::Outcome as _;
use crate::quantity::Style;
use crate::report::{Caution, Report};
use crate::words::{Arg, Msg, Phrase, common, gap_fill as words};

/// The sheet.
pub static SHEET: Sheet = Sheet {
    kind: "gap_fill",
    title: Phrase::Id(words::TITLE),
    trade: Phrase::Id(common::TRADE_FLOOR),
    purpose: Phrase::Id(words::PURPOSE),
    asks: &[
        Inputs::PRODUCT,
        Inputs::GAPS,
        Inputs::HOLES,
        Inputs::PASSES,
        Inputs::SHRINK_PERCENT,
        Inputs::LOSS_PERCENT,
        Inputs::MIX,
        Inputs::POT_LIFE,
        Inputs::TEMPERATURE,
        Inputs::POUR_RATE,
        Inputs::BATCH_LIMIT,
        Inputs::CUP_DIAMETER,
        Inputs::CONTAINERS,
        &OF_FILLER,
        &LIMITS,
        Inputs::WOOD,
    ],
    sources: &[
        &gap::VOLUMES,
        &gap::SHRINKAGE,
        &film::USUAL_LOSS,
        &mixing::SHARES,
        &mixing::POT_LIFE,
        &mixing::BATCHES,
        &mixing::CUP_HEAT,
        &purchase::METHOD,
        &moisture::CHANGE,
    ],
    example: r#"{ "product": "clear epoxy",
        "gaps": [{ "label": "splits within boards", "count": 6, "length": "2400 mm", "width": "3 mm", "depth": "18 mm" }],
        "holes": [
            { "label": "old screw holes", "count": 40, "diameter": "10 mm", "depth": "18 mm" },
            { "label": "countersinks", "count": 60, "diameter": "9 mm", "depth": "4 mm", "shape": "countersunk", "bottom": "4 mm" },
            { "label": "plugged holes", "count": 12, "diameter": "20 mm", "depth": "18 mm", "shape": "plugged",
                "plug_diameter": "19 mm", "plug_length": "12 mm" } ],
        "passes": 2, "shrink_percent": 3, "loss_percent": 15,
        "mix": { "by": "mass", "a": 100, "b": 53, "density_a": "1.14 kg/l", "density_b": "1.02 kg/l" },
        "pot_life": { "time": "25 min", "at": "25 C" }, "temperature": "18 C", "pour_rate": "20 ml/min", "batch_limit": "85 ml",
        "cup_diameter": "80 mm",
        "limits": { "temperature_least": "10 C", "temperature_most": "30 C", "humidity_most_percent": 80, "moisture_most_percent": 12 },
        "containers": [
            { "part": "kit", "size": "0.75 l", "price": 48 }, { "part": "kit", "size": "1.5 l", "price": 84 },
            { "part": "a", "size": "0.5 l", "price": 33 }, { "part": "b", "size": "0.25 l", "price": 22 } ] }"#,
    ahead: None,
    solve: |reader| tried(reader, Job::read, solve, show),
};

fn show(job: &Job, found: &Found, style: Style) -> Report {
    let mut drawings = vec![drawing::cup(job, found, style)];
    drawings.extend(drawing::sections(&job.inputs, style));
    Report {
        answers: shown::answers(job, found, style),
        remarks: shown::remarks(job, found, style),
        tables: shown::tables(job, found, style),
        checks: vec![order::of_work(&job.inputs, style)],
        tasks: mixing_tasks::of_cups(job, found, style),
        drawings,
        marks: cup_strip(job, found, style).into_iter().collect(),
        working: steps::working(job, found, style.exact()),
        cautions: Caution::all(&FOR_FILLING),
        buy: list::buy(job, found, style),
        gives: found.gives(job),
        outcome: found.record(),
        ..Report::default()
    }
}

/// The two marks on a straight-walled cup, as heights above its bottom: what to pour, and the level
/// after it.
fn cup_strip(job: &Job, found: &Found, style: Style) -> Option<MarkStrip> {
    let [first, second] = found.cup_heights?;
    let pour = style.poured_into_one(found.in_cup.a, found.in_cup.b);
    let mark = |id: &str, label: Msg, at: Length, level: &str| Mark {
        id: id.to_owned(),
        label: style.say(label),
        at,
        note: style.say(words::MarkLevel { level }),
    };
    let poured = words::MarkFirst { amount: pour.first.as_str() };
    let then = words::MarkSecond { amount: pour.second.as_str() };
    let across = Arg::short(job.inputs.cup_diameter?);
    Some(MarkStrip {
        id: "cup".into(),
        label: style.say(words::CupStrip { across }),
        note: style.say(words::CUP_STRIP_NOTE),
        own_datum: true,
        alike: 1,
        length: second,
        marks: vec![
            mark("a", poured.into(), first, &pour.first),
            mark("b", then.into(), second, &pour.level),
        ],
    })
}

/// A name that has room on a drawing.
pub(super) fn shortened(name: &str) -> String {
    let mut letters = name.chars();
    let start: String = letters.by_ref().take(28).collect();
    if letters.next().is_some() { start.trim_end().to_owned() + "…" } else { start }
}
