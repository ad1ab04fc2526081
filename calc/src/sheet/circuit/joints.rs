//! Splices one by one, their connectors, and the polarity of every load's leads.

use super::common::{wire_id, wire_name};
use super::findings::Findings;
use crate::electrical::colours::clashes;
use crate::electrical::splice::Splice;
use crate::electrical::wire::Pair;
use crate::outcome::Record;
use crate::quantity::{Length, Style, plain};
use crate::report::{CheckLine, CheckList, Table, TableRow, texts};
use crate::text::text;
use uom::si::length::meter;

impl Findings<'_> {
    /// Splice by splice, in the order of the runs.
    pub(super) fn splice_checks(&self) -> CheckList {
        let line = |splice: &Splice| {
            let node = self.tree.name(splice.node);
            let colours = self.colours_at(splice);
            let mut notes = vec![if self.needs_studs(splice) {
                "ring lugs on a stud or bus bar for each".to_owned()
            } else {
                text!("connectors for each: {}", connectors_text(splice))
            }];
            notes.extend(colours.clone());
            CheckLine {
                // With other ways, or other colours, it is other work.
                key: text!(
                    "splice/{}/{}{}",
                    self.run_key(splice.feed),
                    &splice.ways,
                    self.colours_key(splice)
                ),
                text: text!("{}: {} ways, twice: {}", &node, &splice.ways, self.joins(splice)),
                note: notes.join("; "),
                warns: splice.loads.iter().any(|load| !self.clash_words(*load).is_empty()),
            }
        };
        CheckList {
            title: "Splice by splice, once for + and once for −".into(),
            lines: self.splices.iter().map(line).collect(),
        }
    }

    /// The wire to cut, run by run.
    pub(super) fn cut_checks(&self, style: Style) -> CheckList {
        let wire = &self.inputs.wire;
        let line = |pair: &Pair| {
            let run = self.inputs.runs.get(pair.run)?;
            let length = style.length(Length::new::<meter>(pair.length_m));
            Some(CheckLine {
                // A tick holds for the piece that was cut, to the millimetre.
                key: text!(
                    "cut/{}/{}/{}mm",
                    self.run_key(pair.run),
                    wire_id(pair.conductor, &self.inputs.conditions).text(),
                    plain(pair.length_m * 1000.0, 0)
                ),
                text: text!(
                    "{}: {} of {}, one {} (+) and one {} (−)",
                    &run.id,
                    &length,
                    wire_name(pair.conductor, &self.inputs.conditions),
                    &wire.positive,
                    &wire.negative
                ),
                note: text!("{} to {}, slack at both ends counted", &run.from, &run.to),
                warns: false,
            })
        };
        CheckList {
            title: "Wire to cut, run by run".into(),
            lines: self.pairs.iter().filter_map(line).collect(),
        }
    }

    /// `panel (r3), lamp 2, on to left 3 (r4)`.
    fn joins(&self, splice: &Splice) -> String {
        let runs = &self.inputs.runs;
        let mut parts = Vec::new();
        if let Some(feed) = runs.get(splice.feed) {
            parts.push(text!("from {} ({})", &feed.from, &feed.id));
        }
        for load in splice.loads.iter().filter_map(|place| self.inputs.loads.get(*place)) {
            parts.push(match load.count {
                1 => load.label.clone(),
                count => text!("{} × {}", &count, &load.label),
            });
        }
        for run in splice.onward.iter().filter_map(|place| runs.get(*place)) {
            parts.push(text!("on to {} ({})", &run.to, &run.id));
        }
        parts.join(", ")
    }

    /// Both colours wherever a lead has another one than the wire that it is joined to.
    fn colours_at(&self, splice: &Splice) -> Vec<String> {
        let wire = self.inputs.wire;
        let loads = splice.loads.iter().filter_map(|place| self.inputs.loads.get(*place));
        loads
            .filter_map(|load| {
                let leads = load.leads.filter(|leads| *leads != wire)?;
                Some(text!(
                    "{}: + {} to {}, − {} to {}",
                    &load.label,
                    &leads.positive,
                    &wire.positive,
                    &leads.negative,
                    &wire.negative
                ))
            })
            .collect()
    }

    /// The same for a tick: by the load's key, and nothing of its name.
    fn colours_key(&self, splice: &Splice) -> String {
        let wire = self.inputs.wire;
        let mut key = String::new();
        for place in &splice.loads {
            let Some(load) = self.inputs.loads.get(*place) else { continue };
            if let Some(leads) = load.leads.filter(|leads| *leads != wire) {
                key.push_str(&text!("/l{}:{}:{}", &load.key, leads.id(), wire.id()));
            }
        }
        key
    }

    /// Which run it is, whatever it is called.
    pub(super) fn run_key(&self, place: usize) -> String {
        self.inputs.runs.get(place).map_or_else(String::new, |run| run.key.clone())
    }

    /// Where the colours of a load's leads contradict those of the wires and of the other leads that
    /// they are joined to.
    pub(super) fn clash_words(&self, load: usize) -> Vec<String> {
        let Some(leads) = self.inputs.loads.get(load).and_then(|load| load.leads) else {
            return Vec::new();
        };
        let mut words: Vec<String> =
            clashes(leads, self.inputs.wire).iter().map(ToString::to_string).collect();
        let at = |load: usize| self.loads.get(load).map(|placed| placed.node);
        for (other, joined) in self.inputs.loads.iter().enumerate() {
            let Some(theirs) = joined.leads.filter(|_| other != load && at(other) == at(load))
            else {
                continue;
            };
            if leads.positive == theirs.negative || leads.negative == theirs.positive {
                words.push(text!(
                    "its colours mean the opposite of those of {} at the same splice: join + to \
                     +, whatever the colour",
                    &joined.label
                ));
            }
        }
        words
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

    /// Which lead of each load is which, and what it is joined to.
    pub(super) fn polarity_table(&self) -> Option<Table> {
        let wire = &self.inputs.wire;
        let rows: Vec<TableRow> = self
            .inputs
            .loads
            .iter()
            .enumerate()
            .filter_map(|(place, load)| {
                let leads = load.leads.as_ref()?;
                let beware = !self.clash_words(place).is_empty();
                Some(TableRow {
                    cells: vec![
                        load.label.clone(),
                        text!("{} to {}", &leads.positive, &wire.positive),
                        text!("{} to {}", &leads.negative, &wire.negative),
                        if beware { "! not by colour" } else { "" }.to_owned(),
                    ],
                    chosen: false,
                })
            })
            .collect();
        (!rows.is_empty()).then(|| Table {
            title: "Polarity: lead of the load to wire of the run".into(),
            heads: texts(&["Load", "+ positive", "− negative", ""]),
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
