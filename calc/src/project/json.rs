//! An evaluation as JSON, for the `evaluate` program and for tests.

use serde_json::{Map, Value as Json, json};
use uom::si::length::millimeter;
use uom::si::mass::kilogram;

use super::{Evaluation, SheetResult};
use crate::fault::Fault;
use crate::lists::{CutLine, MergedBuyLine};

impl Evaluation {
    /// The evaluation as one JSON document: `sheets` by id, `body` where it has faults,
    /// `buy_list` and `cut_list`; `weight` of the buy list, and `shopping` where what was typed for
    /// the list has faults.
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
        if !self.body.faults.is_empty() {
            document["body"] = json!({ "faults": faults(&self.body.faults) });
        }
        let weight = &self.shopping.weight;
        document["weight"] = json!({
            "mass_kg": weight.balance.mass.get::<kilogram>(),
            "centre_mm": weight.balance.centre().map(|at| at.get::<millimeter>()),
            "unplaced_kg": weight.balance.unplaced().get::<kilogram>(),
            "lines_without_mass": weight.without_mass,
        });
        let mut wrong = faults(&self.shopping.faults);
        for (key, found) in &self.shopping.line_faults {
            let path = |fault: &Fault| format!("lines.{key}.{}", fault.field);
            wrong.extend(found.iter().map(|f| json!({ "field": path(f), "message": f.message })));
        }
        if !wrong.is_empty() {
            document["shopping"] = json!({ "faults": wrong });
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
        "sheets": merged.sheets().collect::<Vec<_>>(),
    });
    if let Some(packs) = merged.packs {
        entry["packs"] = json!({
            "size": count(packs.size),
            "count": count(packs.count),
            "left_over": count(packs.left_over),
        });
    }
    if let Some(cost) = line.cost {
        entry["cost"] = json!(cost);
    }
    if let Some(mass) = line.mass {
        entry["mass_kg"] = json!(mass.get::<kilogram>());
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
