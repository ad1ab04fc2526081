//! Film coats on a surface: how much, what to buy, and whether the air lets one coat now.

mod drawing;
mod found;
mod inputs;
mod list;
mod order;
mod shown;
mod steps;

use self::found::{Found, solve};
use self::inputs::{ASKS, Job};
use super::{Sheet, tried};
use crate::coating::cautions::FOR_COATING;
use crate::coating::{air, containers, film, surface, verdict};
use crate::handoff::Handed;
use crate::outcome::Outcome as _;
use crate::quantity::Style;
use crate::report::{Caution, Report};
use crate::source::Source;
use crate::words::{Phrase, coating as words, common};

/// The sheet.
pub static SHEET: Sheet = Sheet {
    kind: "coating",
    title: Phrase::Id(words::TITLE),
    trade: Phrase::Id(common::TRADE_FLOOR),
    purpose: Phrase::Id(words::PURPOSE),
    asks: ASKS,
    sources: &[
        &AREA_SUM,
        &surface::BOARD,
        &film::SPREAD_RATE,
        &film::SOLIDS,
        &film::LOSS,
        &film::USUAL_LOSS,
        &containers::METHOD,
        &air::MAGNUS,
        &air::MARGIN_RULE,
        &verdict::LABEL_LIMITS,
        &verdict::NIGHT,
    ],
    example: r#"{ "product": "floor finish",
        "areas": [
            { "label": "floor", "length": "5480 mm", "width": "2060 mm" },
            { "label": "wheel boxes", "length": "36 in", "width": "10 in", "count": 2, "subtract": true } ],
        "boards": [{ "label": "threshold", "length": "2060 mm", "width": "90 mm", "thickness": "18 mm", "count": 2 }],
        "coats": 3, "film": { "dry": "40 um", "solids_percent": 42, "thinner_percent": 5 },
        "surface_factor": 1.1, "loss_percent": 15,
        "containers": [{ "size": "1 qt", "price": 31 }, { "size": "1 gal", "price": 89 }],
        "times": { "recoat_least": "3 h", "recoat_most": "24 h", "sand": "30 min", "traffic": "24 h", "at": "20 C" },
        "limits": { "temperature_least": "10 C", "temperature_most": "32 C", "humidity_most_percent": 80, "moisture_most_percent": 12 },
        "layers": [{ "product": "wood stain", "coats": 1, "finish_type": "penetrating", "spread_rate": "15 m2/l",
            "wipe_after": "10 min", "loss_percent": 10, "times": { "cure": "6 h", "at": "20 C" },
            "limits": { "temperature_least": "10 C", "temperature_most": "30 C", "humidity_most_percent": 75 },
            "containers": [{ "size": "0.5 l", "price": 14 }, { "size": "1 l", "price": 24 }] }],
        "supplies": [{ "label": "abrasive sheet 120", "each": "2 m2", "times": 2, "price": 1.2 }],
        "air": { "temperature": "64 F", "humidity_percent": 62, "surface_temperature": "61 F" },
        "night": { "temperature": "58 F", "humidity_percent": 64, "surface_temperature": "55 F" }, "moisture_percent": 9 }"#,
    ahead: None,
    solve: |reader| tried(reader, Job::read, solve, show),
};

/// Rectangles added and taken off.
static AREA_SUM: Source = Source::identity_of(words::SOURCE_AREAS);

fn show(job: &Job, found: &Found, style: Style) -> Report {
    Report {
        answers: shown::answers(job, found, style),
        remarks: shown::remarks(job, found, style),
        tables: shown::layers_table(job, found, style).into_iter().collect(),
        checks: vec![order::of_work(job, style)],
        drawings: drawing::areas(job, found.area, style),
        working: steps::working(job, found, style.exact()),
        cautions: Caution::all(&FOR_COATING),
        buy: list::buy(job, found, style),
        gives: Handed::of(found::coated(job)),
        outcome: found.record(),
        ..Report::default()
    }
}
