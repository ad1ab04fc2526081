//! A circuit as a tree of runs with loads of all kinds, solved exactly.
//!
//! The load currents depend on the voltages and the voltages on the currents. Newton's method
//! replaces each load by its tangent; on a tree the linear system that is left is solved by one
//! pass inwards and one outwards. Started from the source voltage everywhere, the voltages only
//! ever fall, and stop at the greatest solution: the stable one. If no solution exists, a pivot of
//! the inward pass turns negative or a voltage does, which is how collapse is told from slowness.
//!
//! # Source
//! [`super::sources::POWER_FLOW`], [`super::sources::MONOTONE_NEWTON`].

use std::fmt;

use super::drop::Load;
use super::range::{self, OutOfRange};
use super::tree::Tree;
use crate::quantity::plain;
use crate::words::{Msg, electrical as words};

/// A load at a node.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlacedLoad {
    /// Number of the node in the tree.
    pub node: usize,
    /// How it draws.
    pub load: Load,
    /// So many alike, at the same node.
    pub count: u32,
}

/// A circuit to be solved.
#[derive(Clone, Copy, Debug)]
pub struct Circuit<'a> {
    /// Its shape.
    pub tree: &'a Tree,
    /// Voltage of the source when nothing is drawn, 0.1 to 1000 V.
    pub source_v: f64,
    /// Resistance inside the source, in ohm; 0 where it is unknown.
    pub source_ohm: f64,
    /// Resistance of each run, both conductors, in ohm, in the order of the tree's runs.
    pub run_ohm: &'a [f64],
    /// The loads.
    pub loads: &'a [PlacedLoad],
}

/// Voltages, currents and losses of a circuit at rest.
#[derive(Clone, Debug, PartialEq)]
pub struct Solution {
    /// Voltage of each node, in V; node 0 is the source's terminal.
    pub node_v: Vec<f64>,
    /// Current of each run, in A.
    pub run_a: Vec<f64>,
    /// Power lost in each run, in W.
    pub run_loss_w: Vec<f64>,
    /// Current of each load, all of its count, in A.
    pub load_a: Vec<f64>,
    /// Current of the source, in A.
    pub source_a: f64,
    /// Power of the source, in W, what its own resistance loses included.
    pub source_w: f64,
    /// Power that reaches the loads, in W.
    pub load_w: f64,
    /// Power lost in runs and source, in W.
    pub loss_w: f64,
    /// Greatest disagreement between the voltages and the currents, in V.
    pub residual_v: f64,
}

/// What a quantity out of range belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// The source.
    Source,
    /// A run, by its place.
    Run(usize),
    /// A load, by its place.
    Load(usize),
}

/// Why a circuit has no solution.
#[derive(Clone, Debug, PartialEq)]
pub enum NetworkError {
    /// A quantity is out of range.
    Range {
        /// What it belongs to.
        part: Part,
        /// The quantity.
        range: OutOfRange,
    },
    /// Resistances or nodes that are not those of the tree.
    Mismatch,
    /// No steady voltage exists: the wires cannot deliver what the loads ask for.
    Collapse {
        /// Name of the load's node where the voltage is lowest when it breaks down.
        node: String,
        /// Share of all loads together that the circuit can still carry.
        bearable: f64,
    },
}

/// What the loads at one node draw, summed.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Draw {
    power_w: f64,
    current_a: f64,
    siemens: f64,
}

/// Voltages that agree with their currents, or the node where they broke down.
pub(super) type Settled = Result<Vec<f64>, usize>;

/// Solves a circuit.
///
/// Voltages and currents agree to 1e-9 V or better ([`Solution::residual_v`]); the voltages are
/// those of the stable solution.
///
/// # Errors
/// [`NetworkError`] when a quantity is out of range or no steady voltage exists.
pub fn solve(circuit: &Circuit<'_>) -> Result<Solution, NetworkError> {
    let Circuit { tree, source_v, source_ohm, run_ohm, loads } = *circuit;
    let draws = draws(circuit)?;
    let node_v = settle(tree, source_v, source_ohm, run_ohm, &draws)
        .map_err(|at| collapse(circuit, &draws, at))?;
    let (node_a, residual_v) = flows(tree, source_v, source_ohm, run_ohm, &draws, &node_v);
    let run_a: Vec<f64> = (0..tree.runs()).map(|run| node_a[tree.ends(run).1]).collect();
    let run_loss_w: Vec<f64> = run_a.iter().zip(run_ohm).map(|(a, ohm)| a * a * ohm).collect();
    let load_a: Vec<f64> = loads
        .iter()
        .map(|load| Draw::of(load.load).amperes(node_v[load.node]) * f64::from(load.count))
        .collect();
    let load_w = loads.iter().zip(&load_a).map(|(load, a)| node_v[load.node] * a).sum();
    let source_a = node_a[0];
    Ok(Solution {
        loss_w: run_loss_w.iter().sum::<f64>() + source_a * source_a * source_ohm,
        node_v,
        run_a,
        run_loss_w,
        load_a,
        source_a,
        source_w: source_v * source_a,
        load_w,
        residual_v,
    })
}

/// The greatest factor by which all runs together may be longer with every load still within
/// `limit_percent`, found by halving, from below; below 1 where a load already loses too much.
///
/// `None` when a thousand times the length is still within the limit, or nothing is.
///
/// # Errors
/// [`NetworkError`] when a quantity is out of range.
pub fn length_headroom(
    circuit: &Circuit<'_>,
    limit_percent: f64,
) -> Result<Option<f64>, NetworkError> {
    let draws = draws(circuit)?;
    let limit_percent = range::DROP_LIMIT_PERCENT
        .check(limit_percent)
        .map_err(|range| NetworkError::Range { part: Part::Source, range })?;
    let is_within = |factor: f64| {
        let run_ohm: Vec<f64> = circuit.run_ohm.iter().map(|ohm| ohm * factor).collect();
        settle(circuit.tree, circuit.source_v, circuit.source_ohm, &run_ohm, &draws).is_ok_and(
            |volts| {
                draws.iter().zip(&volts).all(|(draw, v)| {
                    let percent = 100.0 * (circuit.source_v - v) / circuit.source_v;
                    !draw.is_load() || super::drop::is_within(percent, limit_percent)
                })
            },
        )
    };
    let (mut low, mut high) = (0.0, 1000.0);
    if is_within(high) || !is_within(low) {
        return Ok(None);
    }
    for _ in 0..50 {
        let middle = (low + high) / 2.0;
        if is_within(middle) { low = middle } else { high = middle }
    }
    Ok(Some(low))
}

impl Solution {
    /// Drop at a node as a share of the source voltage, in percent.
    pub fn drop_percent(&self, node: usize, source_v: f64) -> f64 {
        self.node_v.get(node).map_or(0.0, |v| 100.0 * (source_v - v) / source_v)
    }

    /// The node with a load that has the lowest voltage; the source when there is no load.
    pub fn worst_node(&self, loads: &[PlacedLoad]) -> usize {
        let volts = |node: usize| self.node_v.get(node).copied().unwrap_or(f64::INFINITY);
        let mut worst = 0;
        for load in loads.iter().filter(|load| load.count > 0) {
            if volts(load.node) < volts(worst) {
                worst = load.node;
            }
        }
        worst
    }
}

impl Draw {
    fn of(load: Load) -> Self {
        match load {
            Load::Power(power_w) => Self { power_w, ..Self::default() },
            Load::Current(current_a) => Self { current_a, ..Self::default() },
            Load::Resistance(ohm) => Self { siemens: 1.0 / ohm, ..Self::default() },
        }
    }

    pub(super) fn amperes(self, volts: f64) -> f64 {
        let of_power = if self.power_w > 0.0 { self.power_w / volts } else { 0.0 };
        of_power + self.current_a + self.siemens * volts
    }

    /// Whether anything is drawn at all.
    pub(super) fn is_load(self) -> bool {
        self.power_w > 0.0 || self.current_a > 0.0 || self.siemens > 0.0
    }

    /// Least and greatest current anywhere between two voltages.
    pub(super) fn bounds_a(self, least_v: f64, most_v: f64) -> (f64, f64) {
        (
            self.power_w / most_v + self.current_a + self.siemens * least_v,
            self.power_w / least_v + self.current_a + self.siemens * most_v,
        )
    }

    /// Least power at or above a voltage.
    pub(super) fn least_w(self, least_v: f64) -> f64 {
        self.power_w + self.current_a * least_v + self.siemens * least_v * least_v
    }

    fn times(self, factor: f64) -> Self {
        Self {
            power_w: self.power_w * factor,
            current_a: self.current_a * factor,
            siemens: self.siemens * factor,
        }
    }
}

/// The loads of a circuit summed by node, all its quantities checked.
pub(super) fn draws(circuit: &Circuit<'_>) -> Result<Vec<Draw>, NetworkError> {
    let in_part = |part| move |range| NetworkError::Range { part, range };
    range::SOURCE_VOLTAGE_V.check(circuit.source_v).map_err(in_part(Part::Source))?;
    range::RUN_RESISTANCE_OHM.check(circuit.source_ohm).map_err(in_part(Part::Source))?;
    if circuit.run_ohm.len() != circuit.tree.runs() {
        return Err(NetworkError::Mismatch);
    }
    for (run, ohm) in circuit.run_ohm.iter().enumerate() {
        range::RUN_RESISTANCE_OHM.check(*ohm).map_err(in_part(Part::Run(run)))?;
    }
    let mut draws = vec![Draw::default(); circuit.tree.nodes()];
    for (place, PlacedLoad { node, load, count }) in circuit.loads.iter().enumerate() {
        let load = load.checked().map_err(in_part(Part::Load(place)))?;
        let draw = draws.get_mut(*node).ok_or(NetworkError::Mismatch)?;
        let all = Draw::of(load).times(f64::from(*count));
        draw.power_w += all.power_w;
        draw.current_a += all.current_a;
        draw.siemens += all.siemens;
    }
    Ok(draws)
}

/// Newton's method from above.
pub(super) fn settle(
    tree: &Tree,
    source_v: f64,
    source_ohm: f64,
    run_ohm: &[f64],
    draws: &[Draw],
) -> Settled {
    const ROUNDS: usize = 200;
    let mut volts = vec![source_v; tree.nodes()];
    let mut agreed = false;
    for _ in 0..ROUNDS {
        match newton_step(tree, source_v, source_ohm, run_ohm, draws, &volts) {
            Ok(next) => {
                let step = next.iter().zip(&volts).fold(0.0, |s: f64, (a, b)| s.max((a - b).abs()));
                volts = next;
                let (_, residual_v) = flows(tree, source_v, source_ohm, run_ohm, draws, &volts);
                agreed = residual_v <= 1e-12 * source_v;
                if agreed && step <= 1e-11 * source_v {
                    return Ok(volts);
                }
            }
            // At the very limit of what the wires deliver, rounding may tip the last step over.
            Err(_) if agreed => return Ok(volts),
            Err(node) => return Err(node),
        }
    }
    // Only the very limit is so slow: each round halves the distance there.
    if agreed { Ok(volts) } else { Err(0) }
}

/// One step: every load replaced by its tangent at `volts`, I = a + b V, and the tree solved.
fn newton_step(
    tree: &Tree,
    source_v: f64,
    source_ohm: f64,
    run_ohm: &[f64],
    draws: &[Draw],
    volts: &[f64],
) -> Settled {
    let mut a = Vec::with_capacity(volts.len());
    let mut b = Vec::with_capacity(volts.len());
    for (draw, v) in draws.iter().zip(volts) {
        let slope = if draw.power_w > 0.0 { draw.power_w / (v * v) } else { 0.0 };
        a.push(2.0 * slope * v + draw.current_a);
        b.push(draw.siemens - slope);
    }
    // Inwards: what a run and all behind it draw, as a + b V of the node it starts from.
    let mut pivots = vec![1.0; volts.len()];
    for &run in tree.outward().iter().rev() {
        let (from, to) = tree.ends(run);
        let pivot = 1.0 + b[to] * run_ohm[run];
        if pivot.is_nan() || pivot <= 0.0 {
            return Err(to);
        }
        pivots[to] = pivot;
        a[from] += a[to] / pivot;
        b[from] += b[to] / pivot;
    }
    let pivot = 1.0 + b[0] * source_ohm;
    if pivot.is_nan() || pivot <= 0.0 {
        return Err(0);
    }
    // Outwards: the voltages.
    let mut next = vec![(source_v - a[0] * source_ohm) / pivot; volts.len()];
    for &run in tree.outward() {
        let (from, to) = tree.ends(run);
        next[to] = (next[from] - a[to] * run_ohm[run]) / pivots[to];
        if next[to].is_nan() || next[to] <= 0.0 {
            return Err(to);
        }
    }
    if next[0].is_nan() || next[0] <= 0.0 { Err(0) } else { Ok(next) }
}

/// Current into each node with all behind it, and the greatest disagreement with the voltages.
fn flows(
    tree: &Tree,
    source_v: f64,
    source_ohm: f64,
    run_ohm: &[f64],
    draws: &[Draw],
    volts: &[f64],
) -> (Vec<f64>, f64) {
    let mut node_a: Vec<f64> = draws.iter().zip(volts).map(|(d, v)| d.amperes(*v)).collect();
    for &run in tree.outward().iter().rev() {
        let (from, to) = tree.ends(run);
        node_a[from] += node_a[to];
    }
    let mut residual_v = (source_v - source_ohm * node_a[0] - volts[0]).abs();
    for &run in tree.outward() {
        let (from, to) = tree.ends(run);
        residual_v = residual_v.max((volts[from] - run_ohm[run] * node_a[to] - volts[to]).abs());
    }
    (node_a, residual_v)
}

/// How much of the loads together still has a steady voltage, found by halving, from below; and
/// the node that is lowest there. `at` is named where no load at all can be borne.
fn collapse(circuit: &Circuit<'_>, draws: &[Draw], at: usize) -> NetworkError {
    let Circuit { tree, source_v, source_ohm, run_ohm, .. } = *circuit;
    let (mut low, mut high) = (0.0, 1.0);
    let mut lowest = at;
    for _ in 0..40 {
        let middle = (low + high) / 2.0;
        let fewer: Vec<Draw> = draws.iter().map(|draw| draw.times(middle)).collect();
        match settle(tree, source_v, source_ohm, run_ohm, &fewer) {
            Err(_) => high = middle,
            Ok(volts) => {
                low = middle;
                let loaded = (0..volts.len()).filter(|node| draws[*node].is_load());
                lowest = loaded.min_by(|a, b| volts[*a].total_cmp(&volts[*b])).unwrap_or(at);
            }
        }
    }
    NetworkError::Collapse { node: tree.name(lowest).to_string(), bearable: low }
}

impl From<&NetworkError> for Msg {
    fn from(error: &NetworkError) -> Self {
        match error {
            NetworkError::Range { range, .. } => (*range).into(),
            NetworkError::Mismatch => words::NETWORK_MISMATCH.into(),
            NetworkError::Collapse { node, bearable } => words::NetworkCollapse {
                node: node.as_str(),
                bearable: plain((100.0 * bearable).floor(), 0),
            }
            .into(),
        }
    }
}

/// In English, for tests.
impl fmt::Display for NetworkError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        Msg::from(self).fmt(f)
    }
}

impl std::error::Error for NetworkError {}

#[cfg(test)]
#[path = "network_tests.rs"]
mod tests;
