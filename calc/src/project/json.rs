//! An evaluation as JSON, for the `evaluate` program and for tests.

use serde_json::{Map, Value as Json, json};
use uom::si::length::millimeter;

use super::{Evaluation, SheetResult};
use crate::fault::Fault;
use crate::lists::{CutLine, MergedBuyLine};

impl Evaluation {
    /// The evaluation as one JSON document: `sheets` by id, `body` where it has faults or more than its
    /// plain measures,
    /// `buy_list` and `cut_list`.
    pub fn to_json(&self) -> Json {
        let mut sheets = Map::new();
        for (id, result) in &self.sheets {
            sheets.insert(id.clone(), sheet(result));
        }
        let mut document = json!({
            "sheets": sheets,
            "buy_list": self.buy_list.iter().map(buy_line).collect::<Vec<_>>(),
            "cut_list": self
                .cut_list
                .iter()
                .map(|line| cut_line(&line.line, &line.sheet))
                .collect::<Vec<_>>(),
        });
        let mut body = Json::from(&self.body.findings(self.basis.style).outcome);
        if !self.body.faults.is_empty() {
            body["faults"] = faults(&self.body.faults).into();
        }
        if body.as_object().is_some_and(|found| !found.is_empty()) {
            document["body"] = body;
        }
        document
    }
}

fn sheet(result: &SheetResult) -> Json {
    match result {
        Ok(report) => json!({ "ok": Json::from(&report.outcome) }),
        Err(found) => json!({ "faults": faults(found) }),
    }
}

fn faults(faults: &[Fault]) -> Vec<Json> {
    faults.iter().map(|fault| json!({ "field": fault.field, "message": fault.message })).collect()
}

fn buy_line(merged: &MergedBuyLine) -> Json {
    let line = &merged.line;
    let mut entry = json!({
        "item": line.item,
        "spec": line.spec,
        "quantity": count(line.quantity),
        "unit": line.unit,
        "sheets": merged.sheets,
    });
    if let Some(cost) = line.cost {
        entry["cost"] = json!(cost);
    }
    if let Some(mass) = line.mass {
        entry["mass_kg"] = json!(mass.get::<uom::si::mass::kilogram>());
    }
    entry
}

fn cut_line(line: &CutLine, sheet: &str) -> Json {
    json!({
        "stock": line.stock,
        "count": line.count,
        "pieces": line
            .pieces
            .iter()
            .map(|piece| json!({
                "label": piece.label,
                "length_mm": piece.length.get::<millimeter>(),
            }))
            .collect::<Vec<_>>(),
        "sheets": [sheet],
    })
}

/// A whole quantity without a point: 2, not 2.0.
fn count(quantity: f64) -> Json {
    if quantity == quantity.round() && quantity.abs() < 1e15 {
        json!(quantity as i64)
    } else {
        json!(quantity)
    }
}
