//! The main fuse, the fuse of each branch, and the dimmers and switches behind them.

use super::Wrong;
use super::asked::{Asked, RunRow};
use super::common::{amperes, rating, volts, watts};
use super::findings::Wired;
use super::inputs::{Inputs, RunInput};
use crate::electrical::ampacity::{Rated, carries};
use crate::electrical::charging::fuse_voltage;
use crate::electrical::conductor::Conductor;
use crate::electrical::fuse::{self, Fuse, FuseError};
use crate::electrical::tree::Tree;
use crate::words::{Arg, Msg, circuit as words};

/// The fuses of a circuit, and what is not safe.
pub(super) struct Fuses {
    /// Whether each run has a fuse of its own where it begins.
    pub fused: Vec<bool>,
    /// Whether that fuse sits in a fuse block; in line where it does not.
    pub in_block: Vec<bool>,
    /// The run whose fuse protects each run; none where it is the main fuse.
    pub zone: Vec<Option<usize>>,
    /// The fuse at the source.
    pub main: Option<Fuse>,
    /// The fuse of each run that has one, in the order of the runs.
    pub branches: Vec<(usize, Fuse)>,
    /// Whether every dimmer and switch carries what flows, and stands behind a fuse no larger than
    /// its rating or protects itself.
    pub devices_ok: bool,
    /// What keeps the circuit from being safe; empty where nothing does.
    pub unsafe_for: Vec<Unsafe>,
}

/// What is not safe.
pub(super) struct Unsafe {
    /// In a few words.
    pub short: Msg,
    /// The path of its input.
    pub field: String,
    /// In full, and what would be right.
    pub why: Msg,
}

/// What a dimmer or switch may carry: the less of its amperes and its watts at the source voltage.
/// [A]
fn device_a(inputs: &Inputs, run: &RunInput) -> Option<f64> {
    let of_watts = run.device_rating_w.map(|w| w / inputs.supply.source_v);
    match (run.device_rating_a, of_watts) {
        (Some(a), Some(b)) => Some(a.min(b)),
        (a, b) => a.or(b),
    }
}

/// What a fuse has to carry for a current. [A]
fn shares(inputs: &Inputs, current_a: f64) -> (f64, f64) {
    if inputs.continuous { (current_a, 0.0) } else { (0.0, current_a) }
}

/// The rating that a current asks for, whatever stands behind it. [A]
fn rating_a(inputs: &Inputs, current_a: f64) -> Option<f64> {
    let (continuous_a, other_a) = shares(inputs, current_a);
    let needed_a = fuse::needed_a(continuous_a, other_a).ok()?;
    fuse::next_rating(needed_a).map(|(rating_a, _)| rating_a)
}

/// Devices behind a fuse that is too large for them.
pub(super) mod protect {
    use super::{Inputs, Tree, Wired, carries, device_a, rating_a};

    /// Runs to be fused where they begin, since the fuse before their device is more than its
    /// rating, and one for the run alone is not.
    pub fn devices_to_fuse(
        inputs: &Inputs,
        tree: &Tree,
        fused: &[bool],
        wired: &Wired,
    ) -> Vec<usize> {
        let zone = tree.zones(fused);
        let highest_a = |run: usize| wired.highest_a.get(run).copied().unwrap_or(0.0);
        let needs_one = |run: &usize| {
            let Some(typed) = inputs.runs.get(*run).filter(|typed| !typed.self_protecting) else {
                return false;
            };
            let Some(limit_a) = device_a(inputs, typed) else { return false };
            let before_a = match zone.get(*run).copied().flatten() {
                Some(head) => highest_a(head),
                None => wired.source_a,
            };
            let stands = |current_a: f64| {
                rating_a(inputs, current_a).is_some_and(|rating_a| carries(limit_a, rating_a))
            };
            !fused.get(*run).copied().unwrap_or(true)
                && !stands(before_a)
                && stands(highest_a(*run))
        };
        (0..tree.runs()).filter(needs_one).collect()
    }
}

impl Fuses {
    /// The fuses of a wired circuit.
    ///
    /// # Errors
    /// A conductor that was named by its size and does not carry its current; a current beyond every
    /// fuse.
    pub fn of(
        inputs: &Inputs,
        tree: &Tree,
        fused: &[bool],
        in_block: &[bool],
        wired: &Wired,
    ) -> Result<Self, Vec<Wrong>> {
        let mut found = Self {
            fused: fused.to_vec(),
            in_block: in_block.to_vec(),
            zone: tree.zones(fused),
            main: None,
            branches: Vec::new(),
            devices_ok: true,
            unsafe_for: Vec::new(),
        };
        let mut faults = Vec::new();
        for (run, (wire, current_a)) in wired.rated.iter().zip(&wired.highest_a).enumerate() {
            if !carries(wire.ampacity_a(), *current_a) {
                let ampacity = amperes(wire.ampacity_a());
                let at_source_a = wired.solution.run_a.get(run).copied();
                let current = inputs.highest_current(at_source_a, *current_a);
                let conductor = wire.conductor().to_string();
                let problem = Msg::from(words::Overheats { conductor, ampacity, current });
                // A size that was named is at fault. A resistance is held against the size below it,
                // which may be less than it is: the voltages stand, and the rest is not shown.
                let field = inputs.run_field(run, RunRow::CONDUCTOR.key);
                if matches!(wire.conductor(), Conductor::PerLength { .. }) {
                    let run = inputs.called(run);
                    let short = words::RunOverheatsShort { run: run.clone() }.into();
                    let why = words::RunOverheats { run, problem }.into();
                    found.unsafe_for.push(Unsafe { short, field, why });
                } else {
                    faults.push((field, problem));
                }
            }
        }
        if faults.is_empty() && found.unsafe_for.is_empty() {
            let heads = std::iter::once(None).chain(
                (0..tree.runs()).filter(|run| found.fused.get(*run) == Some(&true)).map(Some),
            );
            for head in heads.collect::<Vec<Option<usize>>>() {
                found.select(inputs, wired, head, &mut faults);
            }
        }
        found.check_devices(inputs, wired);
        // Rows of lights share an input: one fault for it is enough.
        let mut fields: Vec<String> = Vec::new();
        faults.retain(|fault| {
            let is_first = !fields.contains(&fault.0);
            fields.push(fault.0.clone());
            is_first
        });
        if faults.is_empty() { Ok(found) } else { Err(faults) }
    }

    /// The fuse of a zone.
    fn select(
        &mut self,
        inputs: &Inputs,
        wired: &Wired,
        head: Option<usize>,
        faults: &mut Vec<Wrong>,
    ) {
        let current_a = match head {
            Some(run) => wired.highest_a.get(run).copied().unwrap_or(0.0),
            None => wired.source_a,
        };
        let behind: Vec<usize> =
            (0..self.zone.len()).filter(|run| self.zone.get(*run) == Some(&head)).collect();
        let wires: Vec<Rated> =
            behind.iter().filter_map(|run| wired.rated.get(*run).copied()).collect();
        let (continuous_a, other_a) = shares(inputs, current_a);
        match (fuse::select(continuous_a, other_a, &wires, &inputs.conditions), head) {
            (Ok(fuse), Some(run)) => self.branches.push((run, fuse)),
            (Ok(fuse), None) => self.main = Some(fuse),
            (Err(error @ FuseError::ConductorTooThin { .. }), _) => {
                let FuseError::ConductorTooThin { weakest, .. } = &error else { return };
                let run = behind.get(*weakest).copied().unwrap_or(0);
                let called = inputs.called(run);
                let short = words::TooThinShort { run: called.clone() }.into();
                let why = words::TooThin { problem: Msg::from(&error), run: called }.into();
                let field = inputs.run_field(run, RunRow::CONDUCTOR.key);
                self.unsafe_for.push(Unsafe { short, field, why });
            }
            (Err(error), _) => {
                let problem = Msg::from(&error);
                faults.push((Asked::LOADS.key.to_owned(), words::NoFuse { problem }.into()));
            }
        }
    }

    /// Dimmers and switches against what flows and against the fuse before them.
    fn check_devices(&mut self, inputs: &Inputs, wired: &Wired) {
        for (run, typed) in inputs.runs.iter().enumerate() {
            let Some(limit_a) = device_a(inputs, typed) else { continue };
            let flows_a = wired.highest_a.get(run).copied().unwrap_or(0.0);
            let before_a = match self.zone.get(run).copied().flatten() {
                Some(head) => wired.highest_a.get(head).copied().unwrap_or(0.0),
                None => wired.source_a,
            };
            let rating_a = rating_a(inputs, before_a);
            let is_behind = rating_a.is_some_and(|rating_a| carries(limit_a, rating_a));
            if carries(limit_a, flows_a) && (is_behind || typed.self_protecting) {
                continue;
            }
            self.devices_ok = false;
            let rated = match (typed.device_rating_a, typed.device_rating_w) {
                (Some(a), None) => amperes(a),
                (None, Some(w)) => watts(w),
                _ => amperes(limit_a),
            };
            let called = || typed.called.clone();
            let why: Msg = match rating_a {
                _ if !carries(limit_a, flows_a) => {
                    words::DeviceSmall { run: called(), rated, current: amperes(flows_a) }.into()
                }
                Some(a) => words::DeviceFuse { run: called(), rated, fuse: rating(a) }.into(),
                None => words::DeviceFuseNone { run: called(), rated }.into(),
            };
            let ask = if typed.device_rating_a.is_some() {
                RunRow::DEVICE_RATING
            } else {
                RunRow::DEVICE_WATTS
            };
            let field = inputs.run_field(run, ask.key);
            let short = words::DeviceSmallShort { run: called() }.into();
            self.unsafe_for.push(Unsafe { short, field, why });
        }
    }

    /// Every fuse that is bought: its rating, and the run it stands before; none for the main fuse.
    pub fn all(&self) -> impl Iterator<Item = (Option<usize>, &Fuse)> {
        let main = self.main.iter().map(|fuse| (None, fuse));
        main.chain(self.branches.iter().map(|(run, fuse)| (Some(*run), fuse)))
    }

    /// The fuse that protects a run.
    pub fn before(&self, run: usize) -> Option<&Fuse> {
        match self.zone.get(run).copied().flatten() {
            None => self.main.as_ref(),
            Some(head) => self.branches.iter().find(|(run, _)| *run == head).map(|(_, fuse)| fuse),
        }
    }

    /// The least voltage that all fuses and holders are made for. [V]
    pub fn volts_least(&self, highest_v: f64) -> Option<f64> {
        self.all().map(|(_, fuse)| fuse_voltage(highest_v, fuse.rating_a).0).reduce(f64::max)
    }
}

impl Inputs {
    /// A run as it is called in a sentence.
    pub fn called(&self, run: usize) -> Arg {
        self.runs.get(run).map_or_else(|| "".into(), |run| run.called.clone())
    }

    /// A current; with its voltage where it is higher with the battery at its lowest: `31 A at 10.5 V`.
    fn highest_current(&self, at_source_a: Option<f64>, highest_a: f64) -> Arg {
        let current = amperes(highest_a);
        match self.supply.low_v {
            Some(low_v) if at_source_a.is_some_and(|a| highest_a > a * (1.0 + 1e-9)) => {
                Msg::from(words::CurrentAt { current, volts: volts(low_v) }).into()
            }
            _ => current.into(),
        }
    }
}
