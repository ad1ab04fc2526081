//! Splices one by one, their connectors, and the polarity of every load's leads.

use super::findings::Findings;
use crate::electrical::conductor::Conductor;
use crate::electrical::splice::Splice;
use crate::lists::BuyLine;
use crate::outcome::Record;
use crate::report::{Table, TableRow, texts};
use crate::sorting::sort_by;
use crate::text::text;

impl Findings<'_> {
    /// Splice by splice, in the order of the runs: to be ticked off.
    pub(super) fn splices_table(&self) -> Table {
        let rows = self.splices.iter().map(|splice| TableRow {
            cells: vec![
                self.tree.name(splice.node).to_owned(),
                text!("{} ways, twice", &splice.ways),
                self.joins(splice),
                connectors_text(splice),
            ],
            chosen: false,
        });
        Table {
            title: "Splice by splice, once for + and once for −".into(),
            heads: texts(&["Splice", "Ways", "Joins", "Connectors for each"]),
            rows: rows.collect(),
        }
    }

    /// `r3 from left 1, lamp 2, r4 on to left 3`.
    fn joins(&self, splice: &Splice) -> String {
        let runs = &self.inputs.runs;
        let mut parts = Vec::new();
        if let Some(feed) = runs.get(splice.feed) {
            parts.push(text!("{} from {}", &feed.id, &feed.from));
        }
        for load in splice.loads.iter().filter_map(|place| self.inputs.loads.get(*place)) {
            let several = match load.count {
                1 => String::new(),
                count => text!("{} × ", &count),
            };
            parts.push(match &load.leads {
                Some(leads) => text!(
                    "{}{} (+ {} to {}, − {} to {})",
                    &several,
                    &load.label,
                    &leads.positive,
                    &self.inputs.wire.positive,
                    &leads.negative,
                    &self.inputs.wire.negative
                ),
                None => text!("{}{}", &several, &load.label),
            });
        }
        for run in splice.onward.iter().filter_map(|place| runs.get(*place)) {
            parts.push(text!("{} on to {}", &run.id, &run.to));
        }
        parts.join(", ")
    }

    pub(super) fn splice_records(&self) -> Vec<Record> {
        self.splices
            .iter()
            .map(|splice| {
                Record::new()
                    .with("node", self.tree.name(splice.node))
                    .with("ways", splice.ways)
                    .with("each_polarity", splice.connectors.len())
                    .with("connectors", splice.connectors.clone())
            })
            .collect()
    }

    /// Connectors of both polarities by their ways and the thickest wire that goes in.
    pub(super) fn connector_lines(&self) -> Vec<BuyLine> {
        let mut counts: Vec<(usize, String, f64)> = Vec::new();
        for splice in &self.splices {
            let thickest = self.thickest(splice);
            for ways in &splice.connectors {
                let spec = match thickest {
                    Some(size) => text!("{} ways, takes {}", &ways, &size),
                    None => text!("{} ways", &ways),
                };
                match counts.iter_mut().find(|(_, known, _)| *known == spec) {
                    Some((.., count)) => *count += 2.0,
                    None => counts.push((*ways, spec, 2.0)),
                }
            }
        }
        sort_by(&mut counts, |a, b| (a.0, &a.1).cmp(&(b.0, &b.1)));
        counts
            .into_iter()
            .map(|(_, spec, quantity)| BuyLine {
                item: "splice connector".into(),
                spec,
                quantity,
                unit: "each",
                cost: None,
                mass: None,
            })
            .collect()
    }

    fn thickest(&self, splice: &Splice) -> Option<Conductor> {
        std::iter::once(&splice.feed)
            .chain(&splice.onward)
            .filter_map(|run| self.conductors.get(*run))
            .filter_map(|conductor| Some((conductor.area_mm2()?, *conductor)))
            .max_by(|a, b| a.0.total_cmp(&b.0))
            .map(|(_, conductor)| conductor)
    }

    /// Which lead of each load is which, and what it is joined to.
    pub(super) fn polarity_table(&self) -> Option<Table> {
        let wire = &self.inputs.wire;
        let rows: Vec<TableRow> = self
            .inputs
            .loads
            .iter()
            .filter_map(|load| {
                let leads = load.leads.as_ref()?;
                Some(TableRow {
                    cells: vec![
                        load.label.clone(),
                        text!("{} to {}", &leads.positive, &wire.positive),
                        text!("{} to {}", &leads.negative, &wire.negative),
                    ],
                    chosen: false,
                })
            })
            .collect();
        (!rows.is_empty()).then(|| Table {
            title: "Polarity: lead of the load to wire of the run".into(),
            heads: texts(&["Load", "+ positive", "− negative"]),
            rows,
        })
    }
}

/// `1 of 3 ways`, `2 of 5 ways and 1 of 3 ways, linked`.
fn connectors_text(splice: &Splice) -> String {
    let mut counts: Vec<(usize, usize)> = Vec::new();
    for ways in &splice.connectors {
        match counts.iter_mut().find(|(known, _)| known == ways) {
            Some((_, count)) => *count += 1,
            None => counts.push((*ways, 1)),
        }
    }
    let parts: Vec<String> =
        counts.iter().map(|(ways, count)| text!("{} of {} ways", &count, &ways)).collect();
    let linked = if splice.connectors.len() > 1 { ", linked" } else { "" };
    text!("{}{}", parts.join(" and "), &linked)
}
