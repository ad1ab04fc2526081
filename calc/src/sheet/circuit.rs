//! A low-voltage circuit as a tree: drops, wire, splices, fuse and polarity of many loads.

mod answers;
mod asked;
mod drawing;
mod findings;
mod fuses;
mod inputs;
mod joints;
mod outcome;
mod parts;
mod remarks;
mod steps;
mod tables;
#[cfg(test)]
mod tests;

use super::wiring as common;
use super::{Sheet, solve};
use crate::electrical::sources;
use crate::fault::Fault;
use crate::quantity::Style;
use crate::report::Report;
use crate::sheet::wiring::cautions::{SPLICES, WIRING};
use crate::words::{Msg, Phrase, circuit as words, common as all};

use asked::Asked;
use common::{LaidInputs, SupplyInputs};
use findings::Findings;
use inputs::Inputs;

/// The sheet.
pub static SHEET: Sheet = Sheet {
    kind: "circuit",
    title: Phrase::Id(words::TITLE),
    trade: Phrase::Id(all::TRADE_WIRING),
    purpose: Phrase::Id(words::PURPOSE),
    asks: &[
        SupplyInputs::SOURCE_VOLTAGE,
        Asked::DROP_LIMIT_PERCENT,
        Asked::RUNS,
        Asked::LOADS,
        Asked::ROWS,
        LaidInputs::INSULATION,
        Asked::CONTINUOUS,
        SupplyInputs::LOW_VOLTAGE,
        SupplyInputs::CHARGING_VOLTAGE,
        Asked::SLACK,
        LaidInputs::BUNDLED,
        LaidInputs::IN_JACKET,
        LaidInputs::IN_INSULATION,
        Asked::CONDUCTOR_CHOICES,
        Asked::POSITIVE_WIRE,
        Asked::NEGATIVE_WIRE,
        LaidInputs::CONDUCTOR_TEMPERATURE,
        LaidInputs::AIR_TEMPERATURE,
    ],
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
    ahead: None,
    solve: |reader| solve(reader, inputs::read, report),
};

/// What is wrong: the path of an input, and what is said of it.
type Wrong = (String, Msg);

fn faults(wrong: impl IntoIterator<Item = Wrong>, style: Style) -> Vec<Fault> {
    wrong.into_iter().map(|(field, why)| Fault::new(field, style.say(why))).collect()
}

fn report(inputs: &Inputs, style: Style) -> Result<Report, Vec<Fault>> {
    let Some((tree, placed)) = &inputs.network else {
        // What is wrong with the runs was noted on reading.
        return Err(Vec::new());
    };
    let findings = Findings::of(inputs, tree, placed).map_err(|wrong| faults(wrong, style))?;
    let cautions = WIRING.iter().chain(&SPLICES).copied().collect();
    if !findings.is_safe() {
        // The voltages are true whatever the wire is; nothing to buy, cut or draw is.
        return Ok(Report {
            answers: findings.answers(style),
            remarks: findings.remarks(style),
            tables: vec![findings.loads_table(style)],
            working: findings.working(style.exact()),
            cautions,
            gives: findings.gives(),
            outcome: findings.outcome(),
            faults: faults(
                findings.fuses.unsafe_for.into_iter().map(|of| (of.field, of.why)),
                style,
            ),
            ..Report::default()
        });
    }
    Ok(Report {
        answers: findings.answers(style),
        remarks: findings.remarks(style),
        tables: findings.tables(style),
        checks: vec![findings.cut_checks(style), findings.splice_checks(style)],
        tasks: findings.cut_tasks(style),
        drawings: findings.drawings(style),
        working: findings.working(style.exact()),
        cautions,
        buy: findings.buy(style),
        cut: findings.cut(style),
        gives: findings.gives(),
        outcome: findings.outcome(),
        ..Report::default()
    })
}
