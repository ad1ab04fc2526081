//! A low-voltage circuit as a tree: drops, wire, splices, fuse and polarity of many loads.

mod asks;
mod drawing;
mod figures;
mod findings;
mod fuses;
mod inputs;
mod joints;
mod parts;
mod remarks;
#[cfg(test)]
mod tests;
mod working;

use super::wiring as common;
use super::{Sheet, solve};
use crate::electrical::cautions::{SPLICES, WIRING};
use crate::electrical::sources;
use crate::fault::Fault;
use crate::quantity::Style;
use crate::report::Report;
use crate::words::Phrase;

use findings::Findings;
use inputs::Inputs;

/// The sheet.
pub static SHEET: Sheet = Sheet {
    kind: "circuit",
    title: Phrase::Written("Circuit"),
    trade: Phrase::Written("Wiring"),
    purpose: Phrase::Written(
        "Wire lights, fans and outlets as a tree: wire sizes, drops, splices, fuse.",
    ),
    asks: asks::ASKS,
    sources: &[
        &sources::POWER_FLOW,
        &sources::NEC_TABLE_8,
        &sources::IEC_60228_CLASS_5,
        &sources::CFR_TABLE_5,
        &sources::ABYC_BUNDLING,
        &sources::NEC_CONTINUOUS,
        &sources::FUSE_PROTECTS_CONDUCTOR,
        &sources::NEC_552_FUSE,
        &sources::SQUARE_ROUTE,
        &sources::CONNECTOR_WAYS,
        &sources::ABYC_COLOURS,
        &sources::ABYC_DROP_LIMITS,
    ],
    example: r#"{ "source_voltage": "12.8 V", "drop_limit_percent": 3, "slack": "6 in",
        "insulation": "105 C",
        "runs": [
            { "id": "r1", "from": "source", "to": "panel", "length": "9 ft", "conductor": "auto",
                "fuse_block": true },
            { "id": "r2", "from": "panel", "to": "fan", "length": "14 ft", "conductor": "auto" }
        ],
        "loads": [
            { "at": "fan", "label": "fan", "model": "power", "value": "36 W",
                "positive_lead": "black", "negative_lead": "white" }
        ],
        "rows": [
            { "label": "left", "from": "panel", "count": 4, "first": "7 ft", "spacing": "50 in",
                "model": "power", "value": "3 W", "device_rating": "8 A",
                "positive_lead": "black/white", "negative_lead": "black" },
            { "label": "right", "from": "panel", "count": 4, "first": "10 ft", "spacing": "50 in",
                "model": "power", "value": "3 W", "device_rating": "8 A",
                "positive_lead": "black/white", "negative_lead": "black" }
        ] }"#,
    solve: |reader| solve(reader, inputs::read, report),
};

fn report(inputs: &Inputs, style: Style) -> Result<Report, Vec<Fault>> {
    let Some((tree, placed)) = &inputs.network else {
        // What is wrong with the runs was noted on reading.
        return Err(Vec::new());
    };
    let findings = Findings::of(inputs, tree, placed)?;
    let cautions = WIRING.iter().chain(&SPLICES).copied().collect();
    if !findings.is_safe() {
        // The voltages are true whatever the wire is; nothing to buy, cut or draw is.
        return Ok(Report {
            answers: findings.answers(),
            remarks: findings.remarks(style),
            tables: vec![findings.loads_table()],
            working: findings.working(style),
            cautions,
            outcome: findings.outcome(),
            faults: findings.fuses.unsafe_for.into_iter().map(|(_, fault)| fault).collect(),
            ..Report::default()
        });
    }
    Ok(Report {
        answers: findings.answers(),
        remarks: findings.remarks(style),
        tables: findings.tables(style),
        checks: vec![findings.cut_checks(style), findings.splice_checks()],
        drawings: findings.drawings(),
        working: findings.working(style),
        cautions,
        buy: findings.buy(style),
        cut: findings.cut(),
        outcome: findings.outcome(),
        ..Report::default()
    })
}
