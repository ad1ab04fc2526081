//! Splices one by one, their connectors, and the polarity of every load's leads.

use super::common::{wire_id, wire_name};
use super::findings::Findings;
use crate::electrical::colours::{Clash, clashes};
use crate::electrical::splice::Splice;
use crate::electrical::wire::Pair;
use crate::quantity::{Length, Style, plain};
use crate::report::{CheckLine, CheckList, Figure, Table, TableRow, Task};
use crate::text::text;
use crate::words::{Arg, Msg, circuit as words};
use uom::si::length::meter;

/// What the colours of a load's leads contradict.
#[derive(Clone, Copy, PartialEq)]
pub(super) enum Contradiction {
    /// Those of the wire.
    OfWire(Clash),
    /// Those of another load at the same splice, by its place.
    OfLoad(usize),
}

impl Findings<'_> {
    /// Splice by splice, in the order of the runs.
    pub(super) fn splice_checks(&self, style: Style) -> CheckList {
        let line = |splice: &Splice| {
            let node = self.tree.name(splice.node);
            let connectors: Msg = if self.needs_studs(splice) {
                words::CHECKS_SPLICE_STUDS.into()
            } else {
                words::ChecksSpliceConnectors { connectors: connectors(splice) }.into()
            };
            let mut notes = vec![style.say(connectors)];
            notes.extend(self.colours_at(splice).into_iter().map(|colours| style.say(colours)));
            let joined: Vec<String> =
                self.joins(splice).iter().map(|joined| style.write(joined)).collect();
            let text =
                words::ChecksSpliceLine { node, ways: splice.ways, joined: joined.join(", ") };
            CheckLine {
                // With other ways, or other colours, it is other work.
                key: text!(
                    "splice/{}/{}{}",
                    self.run_key(splice.feed),
                    &splice.ways,
                    self.colours_key(splice)
                ),
                text: style.say(text),
                note: notes.join("; "),
                warns: splice.loads.iter().any(|load| !self.clashes_of(*load).is_empty()),
            }
        };
        CheckList {
            title: style.say(words::CHECKS_SPLICE),
            lines: self.splices.iter().map(line).collect(),
        }
    }

    /// The wire to cut, run by run.
    pub(super) fn cut_checks(&self, style: Style) -> CheckList {
        let wire = &self.inputs.wire;
        let line = |pair: &Pair| {
            let run = self.inputs.runs.get(pair.run)?;
            let text = words::ChecksCutLine {
                run: run.name.clone(),
                length: Length::new::<meter>(pair.length_m),
                wire: wire_name(pair.conductor, &self.inputs.conditions),
                positive: wire.positive,
                negative: wire.negative,
            };
            let (from, to) = (run.from.as_str(), run.to.as_str());
            Some(CheckLine {
                key: self.cut_key(pair),
                text: style.say(text),
                note: style.say(words::ChecksCutNote { from, to }),
                warns: false,
            })
        };
        CheckList {
            title: style.say(words::CHECKS_CUT),
            lines: self.pairs.iter().filter_map(line).collect(),
        }
    }

    /// A tick holds for the piece that was cut, to the millimetre.
    fn cut_key(&self, pair: &Pair) -> String {
        text!(
            "cut/{}/{}/{}mm",
            self.run_key(pair.run),
            wire_id(pair.conductor, &self.inputs.conditions).text(),
            plain(pair.length_m * 1000.0, 0)
        )
    }

    /// The same at the bench: run by run, the length on the tape.
    pub(super) fn cut_tasks(&self, style: Style) -> Vec<Task> {
        let wires = &self.inputs.wire;
        let task = |pair: &Pair| {
            let run = self.inputs.runs.get(pair.run)?;
            let wire = wire_name(pair.conductor, &self.inputs.conditions);
            let (positive, negative) = (wires.positive, wires.negative);
            let (from, to) = (run.from.as_str(), run.to.as_str());
            Some(Task {
                key: self.cut_key(pair),
                piece: style.write(&run.name),
                text: style.say(words::ChecksCutBench { wire, positive, negative }),
                figure: Figure::Tape(Length::new::<meter>(pair.length_m)),
                note: style.say(words::ChecksCutNote { from, to }),
            })
        };
        self.pairs.iter().filter_map(task).collect()
    }

    /// What meets at a splice: the run that feeds it, the loads, the runs that go on.
    fn joins(&self, splice: &Splice) -> Vec<Arg> {
        let runs = &self.inputs.runs;
        let feed = runs.get(splice.feed).map(|feed| {
            let (node, run) = (feed.from.as_str(), feed.name.clone());
            Arg::from(Msg::from(words::JoinsFrom { node, run }))
        });
        let loads = splice.loads.iter().filter_map(|place| self.inputs.loads.get(*place));
        let onward = splice.onward.iter().filter_map(|place| runs.get(*place)).map(|run| {
            let (node, run) = (run.to.as_str(), run.name.clone());
            Arg::from(Msg::from(words::JoinsOn { node, run }))
        });
        feed.into_iter().chain(loads.map(|load| load.shown())).chain(onward).collect()
    }

    /// Both colours wherever a lead has another one than the wire that it is joined to.
    fn colours_at(&self, splice: &Splice) -> Vec<Msg> {
        let wire = self.inputs.wire;
        let loads = splice.loads.iter().filter_map(|place| self.inputs.loads.get(*place));
        loads
            .filter_map(|load| {
                let leads = load.leads.filter(|leads| *leads != wire)?;
                Some(
                    words::LeadColors {
                        load: load.label.clone(),
                        positive: leads.positive,
                        positive_wire: wire.positive,
                        negative: leads.negative,
                        negative_wire: wire.negative,
                    }
                    .into(),
                )
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
    pub(super) fn clashes_of(&self, load: usize) -> Vec<Contradiction> {
        let Some(leads) = self.inputs.loads.get(load).and_then(|load| load.leads) else {
            return Vec::new();
        };
        let mut found: Vec<Contradiction> =
            clashes(leads, self.inputs.wire).into_iter().map(Contradiction::OfWire).collect();
        let at = |load: usize| self.loads.get(load).map(|placed| placed.node);
        for (other, joined) in self.inputs.loads.iter().enumerate() {
            let Some(theirs) = joined.leads.filter(|_| other != load && at(other) == at(load))
            else {
                continue;
            };
            if leads.positive == theirs.negative || leads.negative == theirs.positive {
                found.push(Contradiction::OfLoad(other));
            }
        }
        found
    }

    /// In words.
    pub(super) fn clash(&self, found: Contradiction) -> Msg {
        match found {
            Contradiction::OfWire(clash) => clash.into(),
            Contradiction::OfLoad(other) => {
                let other = self.inputs.loads.get(other).map(|load| load.label.clone());
                words::ClashJoined { other: other.unwrap_or_else(|| "".into()) }.into()
            }
        }
    }

    /// Which lead of each load is which, and what it is joined to.
    pub(super) fn polarity_table(&self, style: Style) -> Option<Table> {
        let wire = &self.inputs.wire;
        let rows: Vec<TableRow> = self
            .inputs
            .loads
            .iter()
            .enumerate()
            .filter_map(|(place, load)| {
                let leads = load.leads.as_ref()?;
                let joined = |lead, wire| style.say(words::TablePolarityJoined { lead, wire });
                let beware = !self.clashes_of(place).is_empty();
                Some(TableRow {
                    cells: vec![
                        style.write(&load.label),
                        joined(leads.positive, wire.positive),
                        joined(leads.negative, wire.negative),
                        match beware {
                            true => style.say(words::TABLE_POLARITY_BEWARE),
                            false => String::new(),
                        },
                    ],
                    chosen: false,
                })
            })
            .collect();
        (!rows.is_empty()).then(|| Table {
            title: style.say(words::TABLE_POLARITY),
            heads: vec![
                style.say(words::TABLE_POLARITY_LOAD),
                style.say(words::TABLE_POLARITY_POSITIVE),
                style.say(words::TABLE_POLARITY_NEGATIVE),
                String::new(),
            ],
            rows,
        })
    }
}

/// `1 of 3 ways`, `2 of 5 ways and 1 of 3 ways, linked`.
fn connectors(splice: &Splice) -> Arg {
    let mut counts: Vec<(usize, usize)> = Vec::new();
    for ways in &splice.connectors {
        match counts.iter_mut().find(|(known, _)| known == ways) {
            Some((_, count)) => *count += 1,
            None => counts.push((*ways, 1)),
        }
    }
    let each = counts
        .iter()
        .map(|(ways, count)| Arg::from(Msg::from(words::Connector { count: *count, ways: *ways })));
    let connectors = Arg::each(each);
    match splice.connectors.len() {
        0 | 1 => connectors,
        _ => Msg::from(words::ConnectorLinked { connectors }).into(),
    }
}
