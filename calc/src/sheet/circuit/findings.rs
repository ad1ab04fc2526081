//! Conductors for the open runs, the voltages, the fuse: all that the report is made from.

use super::Wrong;
use super::asked::{Asked, LoadRow, RunRow};
use super::common::{SupplyInputs, volts};
use super::fuses::{Fuses, protect};
use super::inputs::Inputs;
use crate::electrical::ampacity::Rated;
use crate::electrical::conductor::Conductor;
use crate::electrical::drop::is_within;
use crate::electrical::least_copper::{
    LeastCopper, OpenCircuit, OpenError, USUAL_EFFORT, Wiring, choose,
};
use crate::electrical::network::{self, Circuit, NetworkError, Part, PlacedLoad, Solution};
use crate::electrical::run_formulas::BothConductors;
use crate::electrical::splice::{Splice, splices};
use crate::electrical::tree::Tree;
use crate::electrical::wire::{Pair, pairs, totals_m};
use crate::formula::Formula as _;
use crate::text::text;
use crate::words::{Arg, Msg, circuit as words};

/// All that is said of a circuit.
pub(super) struct Findings<'a> {
    pub inputs: &'a Inputs,
    pub tree: &'a Tree,
    pub loads: &'a [PlacedLoad],
    /// The circuit with a conductor in every run, solved.
    pub wired: Wired,
    /// Fuses and devices, and what is not safe about them.
    pub fuses: Fuses,
    /// The loaded node with the lowest voltage.
    pub worst: usize,
    pub within_limit: bool,
    pub splices: Vec<Splice>,
    /// The two pieces of each run.
    pub pairs: Vec<Pair>,
    /// Wire by conductor, both polarities together. [m]
    pub wire_m: Vec<(Conductor, f64)>,
}

impl<'a> Findings<'a> {
    pub fn of(
        inputs: &'a Inputs,
        tree: &'a Tree,
        loads: &'a [PlacedLoad],
    ) -> Result<Self, Vec<Wrong>> {
        // Fuses at the blocks; more are put before devices that need one of their own.
        let is_block = |node: usize| {
            (0..tree.runs()).any(|run| {
                tree.ends(run).1 == node && inputs.runs.get(run).is_some_and(|r| r.fuse_block)
            })
        };
        let mut fused: Vec<bool> = (0..tree.runs()).map(|run| is_block(tree.ends(run).0)).collect();
        let in_block = fused.clone();
        let wired = loop {
            let wired = Wired::of(inputs, tree, loads, &fused)?;
            let more = protect::devices_to_fuse(inputs, tree, &fused, &wired);
            if more.is_empty() {
                break wired;
            }
            for run in more {
                if let Some(fused) = fused.get_mut(run) {
                    *fused = true;
                }
            }
        };
        let fuses = Fuses::of(inputs, tree, &fused, &in_block, &wired)?;
        let worst = wired.solution.worst_node(loads);
        let worst_percent = wired.solution.drop_percent(worst, inputs.supply.source_v);
        let lengths: Vec<(Conductor, f64)> = wired
            .conductors
            .iter()
            .zip(&inputs.runs)
            .map(|(conductor, run)| (*conductor, run.length_m))
            .collect();
        let pairs = pairs(&lengths, inputs.slack_m).map_err(|(place, range)| {
            vec![(inputs.run_field(place, RunRow::LENGTH.key), range.into())]
        })?;
        Ok(Self {
            within_limit: is_within(worst_percent, inputs.drop_limit_percent),
            splices: splices(tree, loads)
                .into_iter()
                .filter(|splice| !is_block(splice.node))
                .collect(),
            wire_m: totals_m(&pairs),
            inputs,
            tree,
            loads,
            wired,
            fuses,
            worst,
            pairs,
        })
    }

    /// The circuit as it was solved, with another source voltage and share of its run lengths.
    pub fn circuit<'b>(&'b self, run_ohm: &'b [f64], source_v: f64) -> Circuit<'b> {
        Circuit { tree: self.tree, source_v, source_ohm: 0.0, run_ohm, loads: self.loads }
    }

    /// The thinnest single size that would do in all runs, whatever was typed for them.
    pub fn one_size_for_all(&self) -> Option<Wiring> {
        let open = vec![None; self.inputs.runs.len()];
        choose_for(self.inputs, self.tree, self.loads, &open, &self.fuses.fused, 0).ok()?.single
    }

    /// Whether wire, fuses and devices are all safe: nothing is listed, cut or drawn otherwise.
    pub fn is_safe(&self) -> bool {
        self.fuses.unsafe_for.is_empty()
    }

    /// Drop at a node. [%]
    pub fn drop_percent(&self, node: usize) -> f64 {
        self.wired.solution.drop_percent(node, self.inputs.supply.source_v)
    }

    /// Voltage of a node. [V]
    pub fn node_v(&self, node: usize) -> f64 {
        self.wired.solution.node_v.get(node).copied().unwrap_or(0.0)
    }

    /// Current of a run at the source voltage. [A]
    pub fn run_a(&self, run: usize) -> f64 {
        self.wired.solution.run_a.get(run).copied().unwrap_or(0.0)
    }

    /// Power that goes into a run at its beginning. [W]
    pub fn run_w(&self, run: usize) -> f64 {
        self.node_v(self.tree.ends(run).0) * self.run_a(run)
    }

    /// Names of the loads at a node, with their number where there are several alike.
    pub fn loads_at(&self, node: usize) -> Vec<Arg> {
        self.loads
            .iter()
            .zip(&self.inputs.loads)
            .filter(|(placed, _)| placed.node == node)
            .map(|(_, load)| load.shown())
            .collect()
    }
}

/// A circuit with a conductor in every run, solved.
pub(super) struct Wired {
    /// What each run is wired with.
    pub conductors: Vec<Conductor>,
    /// Resistance of each run, both conductors. [ohm]
    pub run_ohm: Vec<f64>,
    pub solution: Solution,
    /// The same with the battery at its lowest, where that was given.
    pub low: Option<Solution>,
    /// The highest current of each run between the two. [A]
    pub highest_a: Vec<f64>,
    /// The highest current of the source. [A]
    pub source_a: f64,
    /// What each run may carry as it lies.
    pub rated: Vec<Rated>,
    /// How the open runs were chosen; none where no run was open.
    pub chosen: Option<LeastCopper>,
}

impl Wired {
    fn of(
        inputs: &Inputs,
        tree: &Tree,
        loads: &[PlacedLoad],
        fused: &[bool],
    ) -> Result<Self, Vec<Wrong>> {
        let given: Vec<Option<Conductor>> = inputs.runs.iter().map(|run| run.conductor).collect();
        let chosen = if given.contains(&None) {
            let found = choose_for(inputs, tree, loads, &given, fused, USUAL_EFFORT);
            Some(found.map_err(|error| vec![open_fault(inputs, &given, &error)])?)
        } else {
            None
        };
        let conductors: Vec<Conductor> = match &chosen {
            Some(LeastCopper { mix, .. }) => mix.conductor.clone(),
            None => given.into_iter().flatten().collect(),
        };
        let mut run_ohm = Vec::with_capacity(conductors.len());
        let (mut rated, mut faults) = (Vec::with_capacity(conductors.len()), Vec::new());
        for (place, (conductor, run)) in conductors.iter().zip(&inputs.runs).enumerate() {
            let at = |message: Msg| (inputs.run_field(place, RunRow::CONDUCTOR.key), message);
            match conductor.ohm_per_m(inputs.temperature_c) {
                Ok(ohm_per_m) => {
                    let both = BothConductors { length_m: run.length_m, ohm_per_m };
                    run_ohm.push(both.value());
                }
                Err(range) => faults.push(at(range.into())),
            }
            match Rated::new(*conductor, &inputs.conditions) {
                Ok(wire) => rated.push(wire),
                Err(unrated) => faults.push(at(unrated.into())),
            }
        }
        if !faults.is_empty() {
            // A row of lights has one conductor for all its runs.
            faults.dedup_by(|(one, _), (other, _)| one == other);
            return Err(faults);
        }
        let solved = |source_v: f64| {
            network::solve(&Circuit { tree, source_v, source_ohm: 0.0, run_ohm: &run_ohm, loads })
        };
        let solution =
            solved(inputs.supply.source_v).map_err(|error| vec![network_fault(inputs, &error)])?;
        let low = match inputs.supply.low_v.map(|low_v| (low_v, solved(low_v))) {
            Some((low_v, Err(error))) => {
                let (volts, problem) = (volts(low_v), Msg::from(&error));
                let field = SupplyInputs::LOW_VOLTAGE.key.to_owned();
                return Err(vec![(field, words::AtLow { volts, problem }.into())]);
            }
            Some((_, Ok(low))) => Some(low),
            None => None,
        };
        // The drop along a run is convex in the voltage it starts from (its current is what is left
        // of a concave voltage), and that voltage only rises with the source's: each current is
        // highest at one of the two ends.
        let highest = |at_source: f64, at_low: Option<f64>| at_source.max(at_low.unwrap_or(0.0));
        let at_low = |run: usize| low.as_ref().and_then(|low| low.run_a.get(run).copied());
        Ok(Self {
            highest_a: solution
                .run_a
                .iter()
                .enumerate()
                .map(|(run, a)| highest(*a, at_low(run)))
                .collect(),
            source_a: highest(solution.source_a, low.as_ref().map(|low| low.source_a)),
            conductors,
            run_ohm,
            solution,
            low,
            rated,
            chosen,
        })
    }
}

fn choose_for(
    inputs: &Inputs,
    tree: &Tree,
    loads: &[PlacedLoad],
    conductor: &[Option<Conductor>],
    fused: &[bool],
    effort: usize,
) -> Result<LeastCopper, OpenError> {
    let length_m: Vec<f64> = inputs.runs.iter().map(|run| run.length_m).collect();
    let open = OpenCircuit {
        tree,
        source_v: inputs.supply.source_v,
        low_v: inputs.supply.low_v,
        temperature_c: inputs.temperature_c,
        drop_limit_percent: inputs.drop_limit_percent,
        length_m: &length_m,
        conductor,
        loads,
        choices: &inputs.choices,
        conditions: inputs.conditions,
        continuous: inputs.continuous,
        fused,
    };
    choose(&open, effort)
}

/// No conductor could be chosen: named at the list of sizes, else at the first open run.
fn open_fault(inputs: &Inputs, given: &[Option<Conductor>], error: &OpenError) -> Wrong {
    if let OpenError::Network(error) = error {
        return network_fault(inputs, error);
    }
    let first_open = given.iter().position(Option::is_none).unwrap_or(0);
    let field = if inputs.choices_named {
        Asked::CONDUCTOR_CHOICES.key.to_owned()
    } else {
        inputs.run_field(first_open, RunRow::CONDUCTOR.key)
    };
    (field, error.into())
}

fn network_fault(inputs: &Inputs, error: &NetworkError) -> Wrong {
    let field = match error {
        NetworkError::Range { part: Part::Source, .. } => {
            SupplyInputs::SOURCE_VOLTAGE.key.to_owned()
        }
        NetworkError::Range { part: Part::Run(run), .. } => {
            inputs.run_field(*run, RunRow::CONDUCTOR.key)
        }
        NetworkError::Range { part: Part::Load(load), .. } => {
            inputs.loads.get(*load).map_or(Asked::LOADS.key.to_owned(), |load| {
                text!("{}.{}", &load.path, LoadRow::VALUE.key)
            })
        }
        NetworkError::Mismatch => Asked::RUNS.key.to_owned(),
        NetworkError::Collapse { .. } => Asked::LOADS.key.to_owned(),
    };
    (field, error.into())
}
