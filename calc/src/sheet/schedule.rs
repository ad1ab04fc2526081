//! Passes and coats in order: when each may start, and when the last batch must be mixed.

mod by_the_clock;
mod clock;
mod dial;
mod drawing;
mod found;
mod inputs;
pub(super) mod label;
mod rows;
mod shown;
mod steps;

use self::found::{Found, solve};
use self::inputs::{ASKS, Job};
use super::{Sheet, tried};
use crate::coating::cautions::{FOR_COATING, FOR_FILLING};
use crate::coating::{air, climate, mixing, schedule as plan, verdict};
use crate::outcome::Outcome as _;
use crate::quantity::Style;
use crate::report::{Caution, Report};
use crate::words::{Phrase, common, schedule as words};

/// The sheet.
pub static SHEET: Sheet = Sheet {
    kind: "schedule",
    title: Phrase::Id(words::TITLE),
    trade: Phrase::Id(common::TRADE_FLOOR),
    purpose: Phrase::Id(words::PURPOSE),
    asks: ASKS,
    sources: &[
        &plan::WINDOW,
        &mixing::POT_LIFE,
        &climate::BETWEEN,
        &air::MAGNUS,
        &air::MARGIN_RULE,
        &verdict::LABEL_LIMITS,
        &verdict::NIGHT,
    ],
    example: r#"{ "start": "8:30", "hours": { "from": "8:00", "to": "19:00" },
        "label_temperature": "25 C",
        "readings": [
            { "at": "8:00", "temperature": "14 C", "humidity_percent": 75, "surface_temperature": "13 C" },
            { "at": "13:00", "temperature": "22 C", "humidity_percent": 50, "surface_temperature": "20 C" },
            { "at": "19:00", "temperature": "18 C", "humidity_percent": 60, "surface_temperature": "17 C" } ],
        "night": { "temperature": "13 C", "humidity_percent": 72, "surface_temperature": "12 C" },
        "limits": { "temperature_least": "10 C", "temperature_most": "30 C", "humidity_most_percent": 80 },
        "steps": [
            { "label": "fill splits, pass", "passes": "gap_fill", "work": "90 min", "recoat_least": "3 h", "recoat_most": "12 h", "cure": "8 h" },
            { "label": "sand the floor", "work": "2 h", "dry": true },
            { "coats": "coating", "work": "1 h" },
            { "label": "fit the threshold", "work": "30 min", "dry": true } ] }"#,
    ahead: None,
    solve: |reader| tried(reader, Job::read, solve, show),
};

fn show(job: &Job, found: &Found, style: Style) -> Report {
    let mut cautions = Caution::all(&FOR_FILLING);
    for caution in Caution::all(&FOR_COATING) {
        if !cautions.iter().any(|known| known.text == caution.text) {
            cautions.push(caution);
        }
    }
    let mut tables =
        vec![by_the_clock::table(job, found, style), shown::windows(job, found, style)];
    tables.extend(shown::air(job, found, style));
    Report {
        answers: shown::answers(job, found, style),
        remarks: shown::remarks(job, found, style),
        tables,
        drawings: drawing::days(job, found, style),
        working: steps::working(job, found, style.exact()),
        cautions,
        outcome: found.record(),
        ..Report::default()
    }
}
