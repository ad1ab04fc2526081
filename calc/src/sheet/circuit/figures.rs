//! Answers, tables, list lines and outcome of a circuit.

use super::common::{
    amperes, drop_volts, limit, percent, run_length, volts, watts, wire_id, wire_line, wire_name,
};
use super::findings::Findings;
use crate::ask::pick;
use crate::electrical::conductor::{COPPER_KG_PER_M_MM2, Conductor};
use crate::electrical::least_copper::Wiring;
use crate::electrical::loom::{bundle_diameter_mm, sleeve_mm};
use crate::electrical::network::solve;
use crate::electrical::wire::{SPOOLS, spools};
use crate::lists::{BuyLine, CutLine, Piece};
use crate::outcome::Record;
use crate::quantity::{Length, Mass, Style, UnitSystem, plain};
use crate::report::{Answer, Table, TableRow, texts};
use crate::text::text;
use uom::si::length::{meter, millimeter};
use uom::si::mass::kilogram;

impl Findings<'_> {
    pub(super) fn answers(&self) -> Vec<Answer> {
        let worst = text!(
            "{} ({})",
            volts(self.node_v(self.worst)),
            percent(self.drop_percent(self.worst))
        );
        let lowest = Answer::new("Lowest voltage at a load", worst).note(text!(
            "at {}; {} is allowed",
            self.tree.name(self.worst),
            limit(self.inputs.drop_limit_percent)
        ));
        let draws = text!("all loads on draw {}", amperes(self.wired.source_a));
        let branches: Vec<String> = self
            .fuses
            .branches
            .iter()
            .map(|(run, fuse)| text!("{} {} A", self.run_name(*run), plain(fuse.rating_a, 1)))
            .collect();
        let fuse = match self.fuses.main.as_ref().filter(|_| self.is_safe()) {
            Some(fuse) if branches.is_empty() => {
                Answer::new("Fuse at the source", text!("{} A", plain(fuse.rating_a, 1)))
                    .note(draws)
            }
            Some(fuse) => {
                Answer::new("Main fuse at the source", text!("{} A", plain(fuse.rating_a, 1)))
                    .note(text!("{}; fuses of branches: {}", &draws, branches.join(", ")))
            }
            None => {
                let why = self.fuses.unsafe_for.first().map_or("", |(short, _)| short.as_str());
                let answer = Answer::new("Fuse and wire", text!("not shown: {}", &why));
                return vec![lowest, answer.note(draws)];
            }
        };
        let mut sizes: Vec<String> = self.wire_m.iter().map(|(c, _)| c.to_string()).collect();
        if sizes.len() > 3 {
            sizes = vec![text!("{} sizes", sizes.len())];
        }
        let wire = Answer::new("Wire", sizes.join(", ")).note(match &self.wired.chosen {
            Some(chosen) if chosen.proved => "the least copper that is enough",
            Some(_) => "the least copper that was found",
            None => "as given",
        });
        vec![lowest, fuse, wire]
    }

    pub(super) fn tables(&self, style: Style) -> Vec<Table> {
        let mut tables = vec![self.loads_table(), self.runs_table(style)];
        tables.extend(self.fuses_table());
        tables.extend(self.devices_table());
        tables.extend(self.polarity_table());
        tables.push(self.wire_table(style));
        tables.extend(self.spools_table(style));
        tables.push(self.what_if_table());
        tables
    }

    pub(super) fn loads_table(&self) -> Table {
        let row = |(place, placed): (usize, &crate::electrical::network::PlacedLoad)| {
            let label = self.inputs.loads.get(place).map_or("", |load| load.label.as_str());
            let label = match placed.count {
                1 => label.to_owned(),
                several => text!("{} × {}", &several, &label),
            };
            let drop = self.drop_percent(placed.node);
            TableRow {
                cells: vec![
                    label,
                    self.tree.name(placed.node).to_owned(),
                    volts(self.node_v(placed.node)),
                    percent(drop),
                    amperes(self.wired.solution.load_a.get(place).copied().unwrap_or(0.0)),
                ],
                chosen: placed.node == self.worst,
            }
        };
        Table {
            title: "Voltage at every load, all of them on".into(),
            heads: texts(&["Load", "At", "Voltage", "Drop", "Draws"]),
            rows: self.loads.iter().enumerate().map(row).collect(),
        }
    }

    fn runs_table(&self, style: Style) -> Table {
        let row = |(place, run): (usize, &super::inputs::RunInput)| {
            let conductor = self.wired.conductors.get(place).copied();
            let cut_m = self.pairs.get(place).map_or(run.length_m, |pair| pair.length_m);
            let carries = self.wired.rated.get(place).map(|wire| wire.ampacity_a());
            TableRow {
                cells: vec![
                    text!("{}: {} to {}", &run.id, &run.from, &run.to),
                    text!(
                        "{}{}",
                        style.length(Length::new::<meter>(run.length_m)),
                        if run.is_routed { ", from where it lies" } else { "" }
                    ),
                    conductor.map(|c| c.to_string()).unwrap_or_default(),
                    text!("{} + and −", style.length(Length::new::<meter>(cut_m))),
                    amperes(self.wired.highest_a.get(place).copied().unwrap_or(0.0)),
                    carries.map_or("–".to_owned(), amperes),
                ],
                chosen: false,
            }
        };
        Table {
            title: "Runs: what to cut, slack at both ends counted".into(),
            heads: texts(&["Run", "One way", "Conductor", "Cut", "Current", "May carry"]),
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
                    conductor.to_string(),
                    run_length(*metres, style),
                    spool_words(metres / 2.0, style),
                    bundle.map_or("–".to_owned(), millimetres),
                    bundle.and_then(sleeve_mm).map_or("–".to_owned(), millimetres),
                ],
                chosen: false,
            }
        };
        Table {
            title: text!("Wire, and the sleeve for {} conductors of one size", &together),
            heads: texts(&[
                "Conductor",
                "In all, + and −",
                "Spools of each colour",
                "Bundle about",
                "Sleeve inside",
            ]),
            rows: self.wire_m.iter().map(row).collect(),
        }
    }

    /// One size for all open runs against the best mix.
    fn spools_table(&self, style: Style) -> Option<Table> {
        let chosen = self.wired.chosen.as_ref()?;
        let row = |name: &str, wiring: &Wiring, is_chosen: bool| {
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
                    name.to_owned(),
                    sizes.join(", "),
                    copper_mass(wiring.copper_cm3, style),
                    percent(drop),
                    text!("{} A", plain(wiring.fuse_a, 1)),
                ],
                chosen: is_chosen,
            }
        };
        let mut rows = vec![row("best mix", &chosen.mix, true)];
        if let Some(single) = &chosen.single {
            rows.push(row("one size", single, false));
        }
        Some(Table {
            title: "One spool or a mix, for the runs that are auto".into(),
            heads: texts(&["", "Sizes", "Copper", "Greatest drop", "Fuse"]),
            rows,
        })
    }

    /// The main fuse and the fuse of each branch, with what they protect.
    fn fuses_table(&self) -> Option<Table> {
        if self.fuses.branches.is_empty() {
            return None;
        }
        let row = |(run, fuse): (Option<usize>, &crate::electrical::fuse::Fuse)| {
            let behind = self.fuses.zone.iter().enumerate().filter(|(_, zone)| **zone == run);
            let runs: Vec<&str> = behind.map(|(run, _)| self.run_name(run)).collect();
            let place = match run {
                None => "main, at the source".to_owned(),
                Some(run) => text!(
                    "{}, {}",
                    self.run_name(run),
                    if self.is_in_block(run) {
                        "in the fuse block"
                    } else {
                        "in line, where it begins"
                    }
                ),
            };
            let cells = vec![
                place,
                text!("{} A", plain(fuse.rating_a, 1)),
                amperes(fuse.needed_a),
                runs.join(", "),
            ];
            TableRow { cells, chosen: run.is_none() }
        };
        Some(Table {
            title: "Fuses: each protects the runs behind it".into(),
            heads: texts(&["Fuse", "Rating", "Carries at least", "Protects"]),
            rows: self.fuses.all().map(row).collect(),
        })
    }

    /// Dimmers and switches: what they carry, what flows, and the fuse before them.
    fn devices_table(&self) -> Option<Table> {
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
                    run.id.clone(),
                    carries.join(", "),
                    text!("{}, {}", amperes(flows_a), watts(self.run_w(place))),
                    fuse.map_or("–".to_owned(), |fuse| text!("{} A", plain(fuse.rating_a, 1))),
                    if run.self_protecting { "protects itself" } else { "the fuse is no larger" }
                        .to_owned(),
                ],
                chosen: false,
            });
        }
        (!rows.is_empty()).then(|| Table {
            title: "Dimmers and switches".into(),
            heads: texts(&["In run", "Carries", "Flows", "Fuse before it", "Safe since"]),
            rows,
        })
    }

    /// Cases, each with its source voltage and the resistances of the runs.
    fn what_ifs(&self) -> Vec<(String, f64, Vec<f64>)> {
        let source_v = self.inputs.supply.source_v;
        let low_v = self.inputs.supply.low_v.unwrap_or(0.9 * source_v);
        let low = match self.inputs.supply.low_v {
            Some(low_v) => text!("battery low, {}", volts(low_v)),
            None => "source 10 % lower".to_owned(),
        };
        let longer: Vec<f64> = self.wired.run_ohm.iter().map(|ohm| 1.25 * ohm).collect();
        let mut cases = vec![
            ("as planned".to_owned(), source_v, self.wired.run_ohm.clone()),
            (low.clone(), low_v, self.wired.run_ohm.clone()),
            ("every run 25 % longer".to_owned(), source_v, longer.clone()),
        ];
        let runs = self.inputs.runs.iter().enumerate();
        if let Some((place, run)) = runs.max_by(|a, b| a.1.length_m.total_cmp(&b.1.length_m)) {
            let mut one = self.wired.run_ohm.clone();
            if let Some(ohm) = one.get_mut(place) {
                *ohm *= 1.5;
            }
            cases.push((text!("longest run ({}) 50 % longer", &run.id), source_v, one));
        }
        cases.push((text!("{}, and every run 25 % longer", &low), low_v, longer));
        cases
    }

    fn what_if_table(&self) -> Table {
        let row = |(name, source_v, ohm): (String, f64, Vec<f64>)| {
            let chosen = name == "as planned";
            let mut cells = vec![name];
            match solve(&self.circuit(&ohm, source_v)) {
                Ok(solution) => {
                    let worst = solution.worst_node(self.loads);
                    let worst_v = solution.node_v.get(worst).copied().unwrap_or(0.0);
                    cells.push(volts(worst_v));
                    cells.push(percent(solution.drop_percent(worst, source_v)));
                    cells.push(amperes(solution.source_a));
                }
                Err(_) => cells.extend(texts(&["no steady voltage", "–", "–"])),
            }
            TableRow { cells, chosen }
        };
        Table {
            title: "What if, with this wire and all loads on".into(),
            heads: texts(&["", "Lowest voltage", "Drop", "Source gives"]),
            rows: self.what_ifs().into_iter().map(row).collect(),
        }
    }

    pub(super) fn buy(&self, style: Style) -> Vec<BuyLine> {
        let mut buy: Vec<BuyLine> = self
            .wire_m
            .iter()
            .filter(|(_, metres)| *metres > 0.0)
            .map(|(conductor, metres)| {
                wire_line(*conductor, *metres, &self.inputs.conditions, style)
            })
            .collect();
        buy.extend(self.fuse_lines());
        buy.extend(self.device_lines());
        buy.extend(self.connector_lines());
        buy
    }

    /// Two pieces of wire for each run, one of each polarity.
    pub(super) fn cut(&self) -> Vec<CutLine> {
        let line = |(conductor, _): &(Conductor, f64)| CutLine {
            id: wire_id(*conductor, &self.inputs.conditions),
            stock: text!(
                "wire {}, one positive and one negative",
                wire_name(*conductor, &self.inputs.conditions)
            ),
            count: 2,
            pieces: self
                .pairs
                .iter()
                .filter(|pair| pair.conductor == *conductor)
                .map(|pair| Piece {
                    id: self.run_key(pair.run),
                    label: self.inputs.runs.get(pair.run).map_or(String::new(), |r| r.id.clone()),
                    length: Length::new::<meter>(pair.length_m),
                })
                .collect(),
            waste: Length::default(),
        };
        self.wire_m.iter().map(line).collect()
    }

    pub(super) fn outcome(&self) -> Record {
        let mut nodes = Record::new();
        for node in 0..self.tree.nodes() {
            let record = Record::new()
                .with("voltage_v", self.node_v(node))
                .with("drop_percent", self.drop_percent(node));
            nodes = nodes.with_typed(self.tree.name(node).to_owned(), record);
        }
        let mut runs = Record::new();
        for (place, run) in self.inputs.runs.iter().enumerate() {
            let Some(conductor) = self.wired.conductors.get(place) else { continue };
            let loss_w = self.wired.solution.run_loss_w.get(place).copied().unwrap_or(0.0);
            let record = Record::new()
                .with("current_a", self.run_a(place))
                .with("highest_current_a", self.wired.highest_a.get(place).copied().unwrap_or(0.0))
                .with("conductor", conductor.to_string())
                .with("resistance_ohm", self.wired.run_ohm.get(place).copied().unwrap_or(0.0))
                .with("loss_w", loss_w)
                .with("length_m", run.length_m)
                .maybe("ampacity_a", self.wired.rated.get(place).map(|wire| wire.ampacity_a()));
            runs = runs.with_typed(run.id.clone(), record);
        }
        let wire = self.wire_m.iter().map(|(conductor, metres)| {
            Record::new().with("conductor", conductor.to_string()).with("length_m", *metres)
        });
        let mut outcome = Record::new()
            .with("nodes", nodes)
            .with("runs", runs)
            .with("source_current_a", self.wired.source_a)
            .with("source_power_w", self.wired.solution.source_w)
            .with("load_power_w", self.wired.solution.load_w)
            .with("loss_w", self.wired.solution.loss_w)
            .with("worst_node", self.tree.name(self.worst))
            .with("within_limit", self.within_limit)
            .with("insulation_c", self.inputs.conditions.insulation.rating_c())
            .with("device_rating_ok", self.fuses.devices_ok)
            .maybe("low_battery", self.low_battery());
        if !self.is_safe() {
            return outcome;
        }
        let branches = self.fuses.branches.iter().map(|(run, fuse)| {
            Record::new()
                .with("run", self.run_name(*run))
                .with("fuse_a", fuse.rating_a)
                .with("in_line", !self.is_in_block(*run))
        });
        outcome = outcome
            .maybe("fuse_a", self.fuses.main.as_ref().map(|fuse| fuse.rating_a))
            .maybe("fuse_volts_least", self.fuses.volts_least(self.inputs.supply.highest_v))
            .with("branches", branches.collect::<Vec<_>>())
            .with("splices", self.splice_records())
            .with("wire", wire.collect::<Vec<_>>());
        if let Some(chosen) = &self.wired.chosen {
            let single = chosen.single.as_ref().and_then(|wiring| {
                let open = self.inputs.runs.iter().position(|run| run.conductor.is_none())?;
                let conductor = wiring.conductor.get(open)?;
                Some(
                    Record::new()
                        .with("conductor", conductor.to_string())
                        .with("copper_cm3", wiring.copper_cm3)
                        .with("fuse_a", wiring.fuse_a),
                )
            });
            outcome = outcome
                .with(
                    "mix",
                    Record::new()
                        .with("copper_cm3", chosen.mix.copper_cm3)
                        .with("bound_cm3", chosen.bound_cm3)
                        .with("proved", chosen.proved),
                )
                .maybe("single", single);
        }
        outcome
    }

    /// What is left at the worst load when the battery is at its lowest.
    fn low_battery(&self) -> Option<Record> {
        let solution = self.wired.low.as_ref()?;
        let worst = solution.worst_node(self.loads);
        Some(
            Record::new()
                .with("worst_node", self.tree.name(worst))
                .with("voltage_v", solution.node_v.get(worst).copied().unwrap_or(0.0))
                .with("source_current_a", solution.source_a),
        )
    }

    /// Drop along a run. [V]
    pub(super) fn run_drop(&self, run: usize) -> String {
        drop_volts(self.run_a(run) * self.wired.run_ohm.get(run).copied().unwrap_or(0.0))
    }
}

/// Mass of so much copper, in print. A metre of 1 mm² is a cubic centimetre.
pub(super) fn copper_mass(cm3: f64, style: Style) -> String {
    style.mass(Mass::new::<kilogram>(cm3 * COPPER_KG_PER_M_MM2))
}

/// `1 of 25 ft`: spools for so much wire of one colour.
fn spool_words(metres: f64, style: Style) -> String {
    let (unit, metres_each) = match style.system {
        UnitSystem::Imperial => ("ft", 0.3048),
        UnitSystem::Metric => ("m", 1.0),
    };
    let sold = pick(SPOOLS, style.system);
    spools(metres / metres_each, &sold).map_or("–".to_owned(), |(count, spool)| {
        text!("{} of {} {}", &count, plain(spool, 0), unit)
    })
}
