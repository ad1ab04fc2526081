//! How the lowest voltage and the fuse came about.

use super::common::{
    ampacity_steps, amperes, fuse_steps, ohms_per_length, percent, resistance_steps, run_length,
    volts, watts,
};
use super::findings::Findings;
use crate::electrical::conductor::Conductor;
use crate::electrical::sources;
use crate::quantity::Style;
use crate::report::Step;
use crate::text::text;

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
            "Every load draws at its own voltage",
            "I = P / V, I, or V / R",
            text!("{} loads on {} runs, solved together", self.loads.len(), inputs.runs.len()),
            text!("{} from the source", amperes(self.wired.solution.source_a)),
            &sources::POWER_FLOW,
        ));
        let way = self.way_to_worst();
        for run in way.iter().take(WAY_SHOWN) {
            steps.extend(self.run_step(*run, style));
        }
        let mut drops: Vec<String> =
            way.iter().take(WAY_SHOWN).map(|run| self.run_drop(*run)).collect();
        if way.len() > WAY_SHOWN {
            drops.push("…".to_owned());
        }
        let source = volts(inputs.supply.source_v);
        let worst = volts(self.node_v(self.worst));
        steps.push(Step::new(
            text!("Voltage at {}, the lowest of all loads", self.tree.name(self.worst)),
            "V = Vs − Σ ΔV",
            text!("{} − ({})", &source, drops.join(" + ")),
            worst.clone(),
            &sources::OHMS_LAW,
        ));
        steps.push(Step::new(
            "Its share of the source voltage",
            "p = (Vs − V) / Vs",
            text!("({} − {}) / {}", &source, &worst, &source),
            percent(self.drop_percent(self.worst)),
            &sources::OHMS_LAW,
        ));
        steps.push(Step::new(
            "Check: power in is power out",
            "Vs · I = Σ P + Σ I² · R",
            text!("{} + {}", watts(self.wired.solution.load_w), watts(self.wired.solution.loss_w)),
            watts(self.wired.solution.source_w),
            &sources::OHMS_LAW,
        ));
        if !self.is_safe() {
            return steps;
        }
        if let Some(weakest) = self.weakest() {
            steps.extend(ampacity_steps(weakest, &inputs.conditions));
        }
        if let (Some(low), Some(low_v)) = (&self.wired.low, inputs.supply.low_v) {
            steps.push(Step::new(
                "Source current with the battery at its lowest",
                "I = Σ P / V + …",
                volts(low_v),
                amperes(low.source_a),
                &sources::POWER_FLOW,
            ));
        }
        steps.extend(fuse_steps(self.wired.source_a, inputs.continuous, self.fuses.main.as_ref()));
        for (run, _) in &self.fuses.branches {
            let highest_a = self.wired.highest_a.get(*run).copied().unwrap_or(0.0);
            let fuse = self.fuses.before(*run);
            steps.extend(fuse_steps(highest_a, inputs.continuous, fuse).into_iter().map(|step| {
                Step { name: text!("{}: {}", self.run_name(*run), &step.name), ..step }
            }));
        }
        steps
    }

    fn run_step(&self, run: usize, style: Style) -> Option<Step> {
        let typed = self.inputs.runs.get(run)?;
        let ohm_per_m =
            self.wired.conductors.get(run)?.ohm_per_m(self.inputs.temperature_c).ok()?;
        Some(Step::new(
            text!("Drop of {}, {} to {}", &typed.id, &typed.from, &typed.to),
            "ΔV = I · 2 · L · r",
            text!(
                "{} · 2 · {} · {}",
                amperes(self.run_a(run)),
                run_length(typed.length_m, style),
                ohms_per_length(ohm_per_m, style)
            ),
            self.run_drop(run),
            &sources::OHMS_LAW,
        ))
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
