//! An evaluation as JSON, for the `evaluate` program and for tests.

use serde_json::{Map, Value as Json, json};
use uom::si::length::millimeter;
use uom::si::mass::kilogram;

use super::{CutBar, Evaluation, SheetResult};
use crate::fault::Fault;
use crate::lists::MergedBuyLine;
use crate::text::text;

impl Evaluation {
    /// The evaluation as one JSON document: `sheets` by id (with `faults` beside `ok` where the values are
    /// true and what was typed is not safe), `body` where it has faults or more than
    /// its plain measures, `buy_list` and `cut_list`; `weight` of the buy list, and `shopping` where
    /// what was typed for the list has faults.
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
                .flat_map(|group| &group.bars)
                .map(cut_bar)
                .collect::<Vec<_>>(),
        });
        let mut body = Json::from(&self.body.findings(self.basis.style).outcome);
        if !self.body.faults.is_empty() {
            body["faults"] = faults(&self.body.faults).into();
        }
        if body.as_object().is_some_and(|found| !found.is_empty()) {
            document["body"] = body;
        }
        let weight = &self.shopping().weight;
        document["weight"] = json!({
            "mass_kg": weight.balance.mass.get::<kilogram>(),
            "centre_mm": weight.balance.centre().map(|at| at.get::<millimeter>()),
            "unplaced_kg": weight.balance.unplaced().get::<kilogram>(),
            "lines_without_mass": weight.without_mass,
        });
        let mut wrong = faults(&self.shopping().faults);
        for (key, found) in &self.shopping().line_faults {
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
        Ok(report) if report.faults.is_empty() => json!({ "ok": Json::from(&report.outcome) }),
        Ok(report) => {
            json!({ "ok": Json::from(&report.outcome), "faults": faults(&report.faults) })
        }
        Err(found) => json!({ "faults": faults(found) }),
    }
}

fn faults(faults: &[Fault]) -> Vec<Json> {
    faults.iter().map(|fault| json!({ "field": fault.field, "message": fault.message })).collect()
}

fn buy_line(merged: &MergedBuyLine) -> Json {
    let line = &merged.line;
    let mut entry = json!({
        "id": merged.id,
        "item": line.item,
        "spec": line.spec,
        "quantity": count(merged.bought()),
        "unit": line.unit,
        "needed": count(line.needed),
        "sheets": merged.sheets().collect::<Vec<_>>(),
    });
    if line.on_hand > 0.0 {
        entry["on_hand"] = count(line.on_hand);
    }
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

fn cut_bar(bar: &CutBar) -> Json {
    let mut sheets: Vec<&str> = Vec::new();
    for piece in &bar.pieces {
        if !sheets.contains(&piece.sheet.as_str()) {
            sheets.push(&piece.sheet);
        }
    }
    json!({
        "id": bar.key(),
        "stock": bar.stock,
        "count": bar.count,
        "pieces": bar
            .pieces
            .iter()
            .map(|piece| json!({
                "id": text!("{}.{}", &piece.sheet, &piece.id),
                "label": piece.label,
                "length_mm": piece.length.get::<millimeter>(),
                "sheet": piece.sheet,
            }))
            .collect::<Vec<_>>(),
        "sheets": sheets,
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
