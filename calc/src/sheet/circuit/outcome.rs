//! The outcome of a circuit, by the names of its nodes and runs, which are the same in every language.

use calc_derive::Outcome;
use uom::si::f64::Power;
use uom::si::power::watt;

use super::findings::Findings;
use crate::electrical::conductor::Conductor;
use crate::electrical::fuse::Fuse;
use crate::electrical::least_copper::{LeastCopper, Wiring};
use crate::electrical::splice::Splice;
use crate::handoff::Handed;
use crate::outcome::{Named, Outcome as _, Record};
use crate::sheet::handoffs::{Drawn, Load};

/// All that other sheets and scripts are told.
#[derive(Outcome)]
struct Found {
    nodes: Named<NodeFound>,
    runs: Named<RunFound>,
    source_current_a: f64,
    source_power_w: f64,
    load_power_w: f64,
    loss_w: f64,
    worst_node: String,
    within_limit: bool,
    insulation_c: f64,
    device_rating_ok: bool,
    /// What is left at the worst load when the battery is at its lowest.
    low_battery: Option<LowBattery>,
    // Left out where wire, fuses or devices are not safe.
    fuse_a: Option<f64>,
    fuse_volts_least: Option<f64>,
    branches: Option<Vec<BranchFound>>,
    splices: Option<Vec<SpliceFound>>,
    wire: Option<Vec<WireFound>>,
    mix: Option<Mix>,
    /// The thinnest single size that does for all open runs.
    single: Option<Single>,
}

#[derive(Outcome)]
struct NodeFound {
    voltage_v: f64,
    drop_percent: f64,
}

#[derive(Outcome)]
struct RunFound {
    current_a: f64,
    highest_current_a: f64,
    conductor: String,
    resistance_ohm: f64,
    loss_w: f64,
    length_m: f64,
    ampacity_a: Option<f64>,
}

#[derive(Outcome)]
struct LowBattery {
    worst_node: String,
    voltage_v: f64,
    source_current_a: f64,
}

#[derive(Outcome)]
struct BranchFound {
    run: String,
    fuse_a: f64,
    in_line: bool,
}

#[derive(Outcome)]
struct SpliceFound {
    node: String,
    ways: usize,
    each_polarity: usize,
    connectors: Vec<usize>,
}

#[derive(Outcome)]
struct WireFound {
    conductor: String,
    length_m: f64,
}

#[derive(Outcome)]
struct Mix {
    copper_cm3: f64,
    bound_cm3: f64,
    proved: bool,
}

#[derive(Outcome)]
struct Single {
    conductor: String,
    copper_cm3: f64,
    fuse_a: f64,
}

impl Findings<'_> {
    pub(super) fn gives(&self) -> Handed {
        let power = Power::new::<watt>(self.wired.solution.load_w);
        Handed::of(Drawn(Ok(Load::of(power))))
    }

    pub(super) fn outcome(&self) -> Record {
        let solution = &self.wired.solution;
        let is_safe = self.is_safe();
        let chosen = self.wired.chosen.as_ref().filter(|_| is_safe);
        let found = Found {
            nodes: Named((0..self.tree.nodes()).map(|node| self.node_found(node)).collect()),
            runs: Named(self.runs_found()),
            source_current_a: self.wired.source_a,
            source_power_w: solution.source_w,
            load_power_w: solution.load_w,
            loss_w: solution.loss_w,
            worst_node: self.tree.name(self.worst).to_owned(),
            within_limit: self.within_limit,
            insulation_c: self.inputs.conditions.insulation.rating_c(),
            device_rating_ok: self.fuses.devices_ok,
            low_battery: self.low_battery(),
            fuse_a: self.fuses.main.as_ref().filter(|_| is_safe).map(|fuse| fuse.rating_a),
            fuse_volts_least: self
                .fuses
                .volts_least(self.inputs.supply.highest_v)
                .filter(|_| is_safe),
            branches: is_safe.then(|| {
                self.fuses.branches.iter().map(|branch| self.branch_found(branch)).collect()
            }),
            splices: is_safe
                .then(|| self.splices.iter().map(|splice| self.splice_found(splice)).collect()),
            wire: is_safe.then(|| self.wire_m.iter().map(WireFound::from).collect()),
            mix: chosen.map(Mix::from),
            single: chosen
                .and_then(|chosen| chosen.single.as_ref())
                .and_then(|single| self.single_found(single)),
        };
        found.record()
    }

    fn node_found(&self, node: usize) -> (String, NodeFound) {
        let found =
            NodeFound { voltage_v: self.node_v(node), drop_percent: self.drop_percent(node) };
        (self.tree.name(node).to_owned(), found)
    }

    fn runs_found(&self) -> Vec<(String, RunFound)> {
        let wired = &self.wired;
        let of = |list: &[f64], run: usize| list.get(run).copied().unwrap_or(0.0);
        let runs = self.inputs.runs.iter().zip(&wired.conductors).enumerate();
        runs.map(|(place, (run, conductor))| {
            let found = RunFound {
                current_a: self.run_a(place),
                highest_current_a: of(&wired.highest_a, place),
                conductor: conductor.to_string(),
                resistance_ohm: of(&wired.run_ohm, place),
                loss_w: of(&wired.solution.run_loss_w, place),
                length_m: run.length_m,
                ampacity_a: wired.rated.get(place).map(|wire| wire.ampacity_a()),
            };
            (run.id.clone(), found)
        })
        .collect()
    }

    fn low_battery(&self) -> Option<LowBattery> {
        let solution = self.wired.low.as_ref()?;
        let worst = solution.worst_node(self.loads);
        Some(LowBattery {
            worst_node: self.tree.name(worst).to_owned(),
            voltage_v: solution.node_v.get(worst).copied().unwrap_or(0.0),
            source_current_a: solution.source_a,
        })
    }

    fn branch_found(&self, (run, fuse): &(usize, Fuse)) -> BranchFound {
        BranchFound {
            run: self.run_id(*run).to_owned(),
            fuse_a: fuse.rating_a,
            in_line: !self.is_in_block(*run),
        }
    }

    fn splice_found(&self, splice: &Splice) -> SpliceFound {
        SpliceFound {
            node: self.tree.name(splice.node).to_owned(),
            ways: splice.ways,
            each_polarity: splice.connectors.len(),
            connectors: splice.connectors.clone(),
        }
    }

    fn single_found(&self, single: &Wiring) -> Option<Single> {
        let open = self.inputs.runs.iter().position(|run| run.conductor.is_none())?;
        let conductor = single.conductor.get(open)?.to_string();
        Some(Single { conductor, copper_cm3: single.copper_cm3, fuse_a: single.fuse_a })
    }
}

impl From<&(Conductor, f64)> for WireFound {
    fn from((conductor, length_m): &(Conductor, f64)) -> Self {
        Self { conductor: conductor.to_string(), length_m: *length_m }
    }
}

impl From<&LeastCopper> for Mix {
    fn from(chosen: &LeastCopper) -> Self {
        Self {
            copper_cm3: chosen.mix.copper_cm3,
            bound_cm3: chosen.bound_cm3,
            proved: chosen.proved,
        }
    }
}
