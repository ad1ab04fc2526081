//! How the lowest voltage and the fuse came about.

use super::common::{ampacity_steps, amperes, fuse_steps, resistance_steps, volts, watts};
use super::findings::Findings;
use crate::electrical::conductor::Conductor;
use crate::electrical::run_formulas::{LostShare, RunDrop};
use crate::electrical::sources;
use crate::formula::step;
use crate::quantity::Style;
use crate::report::Step;
use crate::text::text;
use crate::words::{Msg, circuit as words};

/// Most runs on the way to the worst load that are written out one by one.
const WAY_SHOWN: usize = 12;

impl Findings<'_> {
    pub(super) fn working(&self, style: Style) -> Vec<Step> {
        let inputs = self.inputs;
        let mut steps = Vec::new();
        for (conductor, _) in self.wire_m.iter().take(4) {
            if let Ok(ohm_per_m) = conductor.ohm_per_m(inputs.temperature_c) {
                let of_one = resistance_steps(*conductor, inputs.temperature_c, ohm_per_m, style);
                steps.extend(of_one);
            }
        }
        steps.push(Step::new(
            style.say(words::STEP_ALL),
            style.say(words::STEP_ALL_FORMULA),
            style.say(words::StepAllNumbers {
                loads: Msg::from(words::StepAllLoads { count: self.loads.len() }),
                runs: Msg::from(words::StepAllRuns { count: inputs.runs.len() }),
            }),
            style.say(words::StepAllResult { current: amperes(self.wired.solution.source_a) }),
            &sources::POWER_FLOW,
        ));
        let way = self.way_to_worst();
        for run in way.iter().take(WAY_SHOWN) {
            steps.extend(self.run_step(*run, style));
        }
        let mut drops: Vec<String> =
            way.iter().take(WAY_SHOWN).map(|run| self.run_drop(*run, style)).collect();
        if way.len() > WAY_SHOWN {
            drops.push("…".to_owned());
        }
        let source = style.figure(volts(inputs.supply.source_v));
        let worst = style.figure(volts(self.node_v(self.worst)));
        steps.push(Step::new(
            style.say(words::StepLowest { node: self.tree.name(self.worst) }),
            "V = Vs − Σ ΔV",
            text!("{} − ({})", &source, drops.join(" + ")),
            worst,
            &sources::OHMS_LAW,
        ));
        let (source_v, load_v) = (inputs.supply.source_v, self.node_v(self.worst));
        steps.push(step(words::STEP_SHARE, &LostShare { source_v, load_v }, style));
        steps.push(Step::new(
            style.say(words::STEP_CHECK),
            "Vs · I = Σ P + Σ I² · R",
            style.figure(text!(
                "{} + {}",
                watts(self.wired.solution.load_w),
                watts(self.wired.solution.loss_w)
            )),
            style.figure(watts(self.wired.solution.source_w)),
            &sources::OHMS_LAW,
        ));
        if !self.is_safe() {
            return steps;
        }
        if let Some(weakest) = self.weakest() {
            steps.extend(ampacity_steps(weakest, &inputs.conditions, style));
        }
        if let (Some(low), Some(low_v)) = (&self.wired.low, inputs.supply.low_v) {
            steps.push(Step::new(
                style.say(words::STEP_LOW),
                "I = Σ P / V + …",
                style.figure(volts(low_v)),
                style.figure(amperes(low.source_a)),
                &sources::POWER_FLOW,
            ));
        }
        steps.extend(fuse_steps(
            self.wired.source_a,
            inputs.continuous,
            self.fuses.main.as_ref(),
            style,
        ));
        for (run, _) in &self.fuses.branches {
            let highest_a = self.wired.highest_a.get(*run).copied().unwrap_or(0.0);
            let fuse = self.fuses.before(*run);
            steps.extend(fuse_steps(highest_a, inputs.continuous, fuse, style).into_iter().map(
                |step| {
                    let run = self.run_name(*run);
                    let name = words::StepOfRun { run, step: step.name.as_str() };
                    Step { name: style.say(name), ..step }
                },
            ));
        }
        steps
    }

    fn run_step(&self, run: usize, style: Style) -> Option<Step> {
        let typed = self.inputs.runs.get(run)?;
        let ohm_per_m =
            self.wired.conductors.get(run)?.ohm_per_m(self.inputs.temperature_c).ok()?;
        let name = words::StepRun {
            run: typed.name.clone(),
            from: typed.from.as_str(),
            to: typed.to.as_str(),
        };
        let (current_a, length_m) = (self.run_a(run), typed.length_m);
        Some(step(name, &RunDrop { current_a, length_m, ohm_per_m }, style))
    }

    /// The runs from the source to the worst load.
    fn way_to_worst(&self) -> Vec<usize> {
        let mut way = Vec::new();
        let mut node = self.worst;
        // Outwards each run comes after its feed: backwards, the way home is met in order.
        for run in self.tree.outward().iter().rev() {
            let (from, to) = self.tree.ends(*run);
            if to == node {
                way.push(*run);
                node = from;
            }
        }
        way.reverse();
        way
    }

    /// The conductor that stands the least fuse.
    fn weakest(&self) -> Option<Conductor> {
        self.wired
            .rated
            .iter()
            .min_by(|a, b| a.fuse_limit_a().total_cmp(&b.fuse_limit_a()))
            .map(|wire| wire.conductor())
    }
}
