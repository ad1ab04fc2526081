//! The tables of a circuit: loads, runs, fuses, dimmers, wire, and what would be with other wire.

use super::answers::copper_mass;
use super::common::{amperes, drop_beside, percent, rating, run_length, volts, watts};
use super::findings::Findings;
use crate::ask::pick;
use crate::electrical::conductor::Conductor;
use crate::electrical::least_copper::Wiring;
use crate::electrical::loom::{bundle_diameter_mm, sleeve_mm};
use crate::electrical::network::solve;
use crate::electrical::wire::{SPOOLS, spools};
use crate::quantity::{Length, Style, UnitSystem, amount};
use crate::report::{Table, TableRow};
use crate::words::{Arg, Id, Msg, circuit as words};
use uom::si::length::{meter, millimeter};

impl Findings<'_> {
    pub(super) fn tables(&self, style: Style) -> Vec<Table> {
        let mut tables = vec![self.loads_table(style), self.runs_table(style)];
        tables.extend(self.fuses_table(style));
        tables.extend(self.devices_table(style));
        tables.extend(self.polarity_table(style));
        tables.push(self.wire_table(style));
        tables.extend(self.spools_table(style));
        tables.push(self.what_if_table(style));
        tables
    }

    pub(super) fn loads_table(&self, style: Style) -> Table {
        let row = |(place, placed): (usize, &crate::electrical::network::PlacedLoad)| {
            let label = self.inputs.loads.get(place).map(|load| style.write(&load.shown()));
            let drop = self.drop_percent(placed.node);
            TableRow {
                cells: vec![
                    label.unwrap_or_default(),
                    self.tree.name(placed.node).to_owned(),
                    style.figure(volts(self.node_v(placed.node))),
                    style.figure(drop_beside(drop, self.inputs.drop_limit_percent)),
                    style.figure(amperes(
                        self.wired.solution.load_a.get(place).copied().unwrap_or(0.0),
                    )),
                ],
                chosen: placed.node == self.worst,
            }
        };
        Table {
            title: style.say(words::TABLE_LOADS),
            heads: heads(
                &[
                    words::TABLE_LOADS_LOAD,
                    words::TABLE_LOADS_AT,
                    words::TABLE_LOADS_VOLTAGE,
                    words::TABLE_LOADS_DROP,
                    words::TABLE_LOADS_DRAWS,
                ],
                style,
            ),
            rows: self.loads.iter().enumerate().map(row).collect(),
        }
    }

    fn runs_table(&self, style: Style) -> Table {
        let row = |(place, run): (usize, &super::inputs::RunInput)| {
            let length = Length::new::<meter>(run.length_m);
            let conductor = self.wired.conductors.get(place).copied();
            let cut_m = self.pairs.get(place).map_or(run.length_m, |pair| pair.length_m);
            let carries = self.wired.rated.get(place).map(|wire| wire.ampacity_a());
            TableRow {
                cells: vec![
                    style.say(words::TableRunsName {
                        run: run.name.clone(),
                        from: run.from.as_str(),
                        to: run.to.as_str(),
                    }),
                    match run.is_routed {
                        true => style.say(words::TableRunsRouted { length }),
                        false => style.length(length),
                    },
                    style.figure(conductor.map(|c| c.to_string()).unwrap_or_default()),
                    style.say(words::TableRunsPieces { length: Length::new::<meter>(cut_m) }),
                    style.figure(amperes(self.wired.highest_a.get(place).copied().unwrap_or(0.0))),
                    style.figure(carries.map_or("–".to_owned(), amperes)),
                ],
                chosen: false,
            }
        };
        Table {
            title: style.say(words::TABLE_RUNS),
            heads: heads(
                &[
                    words::TABLE_RUNS_RUN,
                    words::TABLE_RUNS_LENGTH,
                    words::TABLE_RUNS_WIRE,
                    words::TABLE_RUNS_CUT,
                    words::TABLE_RUNS_CURRENT,
                    words::TABLE_RUNS_CARRIES,
                ],
                style,
            ),
            rows: self.inputs.runs.iter().enumerate().map(row).collect(),
        }
    }

    fn wire_table(&self, style: Style) -> Table {
        let together = self.inputs.conditions.bundled.clamp(2, 100);
        let row = |(conductor, metres): &(Conductor, f64)| {
            let bundle = conductor
                .overall_diameter_mm()
                .and_then(|d| bundle_diameter_mm(&vec![d; together as usize]));
            let millimetres = |mm: f64| style.small(Length::new::<millimeter>(mm));
            TableRow {
                cells: vec![
                    style.figure(conductor.to_string()),
                    run_length(*metres, style),
                    spool_words(metres / 2.0, style),
                    bundle.map_or("–".to_owned(), millimetres),
                    bundle.and_then(sleeve_mm).map_or("–".to_owned(), millimetres),
                ],
                chosen: false,
            }
        };
        Table {
            title: style.say(words::TableWire { count: together }),
            heads: heads(
                &[
                    words::TABLE_WIRE_WIRE,
                    words::TABLE_WIRE_ALL,
                    words::TABLE_WIRE_SPOOLS,
                    words::TABLE_WIRE_BUNDLE,
                    words::TABLE_WIRE_SLEEVE,
                ],
                style,
            ),
            rows: self.wire_m.iter().map(row).collect(),
        }
    }

    /// One size for all open runs against the best mix.
    fn spools_table(&self, style: Style) -> Option<Table> {
        let chosen = self.wired.chosen.as_ref()?;
        let row = |name: Id, wiring: &Wiring, is_chosen: bool| {
            let mut sizes: Vec<String> = Vec::new();
            for (conductor, run) in wiring.conductor.iter().zip(&self.inputs.runs) {
                let size = conductor.to_string();
                if run.conductor.is_none() && !sizes.contains(&size) {
                    sizes.push(size);
                }
            }
            let worst = wiring.solution.worst_node(self.loads);
            let drop = wiring.solution.drop_percent(worst, self.inputs.supply.source_v);
            TableRow {
                cells: vec![
                    style.say(name),
                    style.figure(sizes.join(", ")),
                    copper_mass(wiring.copper_cm3, style),
                    style.figure(drop_beside(drop, self.inputs.drop_limit_percent)),
                    style.figure(rating(wiring.fuse_a)),
                ],
                chosen: is_chosen,
            }
        };
        let mut rows = vec![row(words::TABLE_MIX_MIX, &chosen.mix, true)];
        if let Some(single) = &chosen.single {
            rows.push(row(words::TABLE_MIX_SINGLE, single, false));
        }
        Some(Table {
            title: style.say(words::TABLE_MIX),
            heads: [
                vec![String::new()],
                heads(
                    &[
                        words::TABLE_MIX_SIZES,
                        words::TABLE_MIX_COPPER,
                        words::TABLE_MIX_DROP,
                        words::TABLE_MIX_FUSE,
                    ],
                    style,
                ),
            ]
            .concat(),
            rows,
        })
    }

    /// The main fuse and the fuse of each branch, with what they protect.
    fn fuses_table(&self, style: Style) -> Option<Table> {
        if self.fuses.branches.is_empty() {
            return None;
        }
        let row = |(run, fuse): (Option<usize>, &crate::electrical::fuse::Fuse)| {
            let behind = self.fuses.zone.iter().enumerate().filter(|(_, zone)| **zone == run);
            let runs: Vec<Arg> = behind.map(|(run, _)| self.run_name(run)).collect();
            let place: Msg = match run {
                None => words::TABLE_FUSES_MAIN.into(),
                Some(at) if self.is_in_block(at) => {
                    words::TableFusesInBlock { run: self.run_name(at) }.into()
                }
                Some(at) => words::TableFusesInLine { run: self.run_name(at) }.into(),
            };
            let cells = vec![
                style.say(place),
                style.figure(rating(fuse.rating_a)),
                style.figure(amperes(fuse.needed_a)),
                self.in_a_row(runs, style),
            ];
            TableRow { cells, chosen: run.is_none() }
        };
        Some(Table {
            title: style.say(words::TABLE_FUSES),
            heads: heads(
                &[
                    words::TABLE_FUSES_FUSE,
                    words::TABLE_FUSES_RATING,
                    words::TABLE_FUSES_LEAST,
                    words::TABLE_FUSES_PROTECTS,
                ],
                style,
            ),
            rows: self.fuses.all().map(row).collect(),
        })
    }

    /// Dimmers and switches: what they carry, what flows, and the fuse before them.
    fn devices_table(&self, style: Style) -> Option<Table> {
        let mut rows = Vec::new();
        for (place, run) in self.inputs.runs.iter().enumerate() {
            let (rating_a, rating_w) = (run.device_rating_a, run.device_rating_w);
            if rating_a.is_none() && rating_w.is_none() {
                continue;
            }
            let flows_a = self.wired.highest_a.get(place).copied().unwrap_or(0.0);
            let carries: Vec<String> =
                rating_a.map(amperes).into_iter().chain(rating_w.map(watts)).collect();
            let fuse = self.fuses.before(place);
            rows.push(TableRow {
                cells: vec![
                    style.write(&run.name),
                    style.figure(carries.join(", ")),
                    style.figure([amperes(flows_a), watts(self.run_w(place))].join(", ")),
                    style.figure(fuse.map_or("–".to_owned(), |fuse| rating(fuse.rating_a))),
                    style.say(if run.self_protecting {
                        words::TABLE_DEVICES_OWN
                    } else {
                        words::TABLE_DEVICES_BY_FUSE
                    }),
                ],
                chosen: false,
            });
        }
        (!rows.is_empty()).then(|| Table {
            title: style.say(words::TABLE_DEVICES),
            heads: heads(
                &[
                    words::TABLE_DEVICES_RUN,
                    words::TABLE_DEVICES_RATED,
                    words::TABLE_DEVICES_CARRIES,
                    words::TABLE_DEVICES_FUSE,
                    words::TABLE_DEVICES_SAFE,
                ],
                style,
            ),
            rows,
        })
    }

    /// Cases, each with its source voltage and the resistances of the runs.
    fn what_ifs(&self) -> Vec<(Msg, f64, Vec<f64>)> {
        let source_v = self.inputs.supply.source_v;
        let low_v = self.inputs.supply.low_v.unwrap_or(0.9 * source_v);
        let low: Msg = match self.inputs.supply.low_v {
            Some(low_v) => words::TableWhatIfLow { volts: volts(low_v) }.into(),
            None => words::TABLE_WHAT_IF_TENTH.into(),
        };
        let longer: Vec<f64> = self.wired.run_ohm.iter().map(|ohm| 1.25 * ohm).collect();
        let mut cases = vec![
            (words::TABLE_WHAT_IF_PLANNED.into(), source_v, self.wired.run_ohm.clone()),
            (low.clone(), low_v, self.wired.run_ohm.clone()),
            (words::TABLE_WHAT_IF_LONGER.into(), source_v, longer.clone()),
        ];
        let runs = self.inputs.runs.iter().enumerate();
        if let Some((place, run)) = runs.max_by(|a, b| a.1.length_m.total_cmp(&b.1.length_m)) {
            let mut one = self.wired.run_ohm.clone();
            if let Some(ohm) = one.get_mut(place) {
                *ohm *= 1.5;
            }
            let longest = words::TableWhatIfLongest { run: run.name.clone() };
            cases.push((longest.into(), source_v, one));
        }
        cases.push((words::TableWhatIfBoth { low }.into(), low_v, longer));
        cases
    }

    fn what_if_table(&self, style: Style) -> Table {
        let row = |(place, (name, source_v, ohm)): (usize, (Msg, f64, Vec<f64>))| {
            let mut cells = vec![style.say(name)];
            match solve(&self.circuit(&ohm, source_v)) {
                Ok(solution) => {
                    let worst = solution.worst_node(self.loads);
                    let worst_v = solution.node_v.get(worst).copied().unwrap_or(0.0);
                    cells.push(style.figure(volts(worst_v)));
                    cells.push(style.figure(percent(solution.drop_percent(worst, source_v))));
                    cells.push(style.figure(amperes(solution.source_a)));
                }
                Err(_) => {
                    let none = || "–".to_owned();
                    cells.extend([style.say(words::TABLE_WHAT_IF_UNSTEADY), none(), none()]);
                }
            }
            // The first is as it is planned.
            TableRow { cells, chosen: place == 0 }
        };
        Table {
            title: style.say(words::TABLE_WHAT_IF),
            heads: [
                vec![String::new()],
                heads(
                    &[
                        words::TABLE_WHAT_IF_LOWEST,
                        words::TABLE_WHAT_IF_DROP,
                        words::TABLE_WHAT_IF_SOURCE,
                    ],
                    style,
                ),
            ]
            .concat(),
            rows: self.what_ifs().into_iter().enumerate().map(row).collect(),
        }
    }
}

/// `1 of 25 ft`: spools for so much wire of one colour.
fn spool_words(metres: f64, style: Style) -> String {
    let (unit, metres_each) = match style.system {
        UnitSystem::Imperial => ("ft", 0.3048),
        UnitSystem::Metric => ("m", 1.0),
    };
    let sold = pick(SPOOLS, style.system);
    spools(metres / metres_each, &sold).map_or("–".to_owned(), |(count, spool)| {
        style.say(words::TableWireSpool { count, length: amount(spool, 0, unit) })
    })
}

fn heads(of: &[Id], style: Style) -> Vec<String> {
    of.iter().map(|head| style.say(*head)).collect()
}
