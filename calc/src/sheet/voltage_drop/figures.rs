//! The conductors beside each other, and the working.

use super::{Findings, is_enough};
use crate::electrical::conductor::Conductor;
use crate::electrical::drop::{DropError, Load, Wired, greatest_resistance_ohm};
use crate::electrical::sources;
use crate::quantity::{Style, UnitSystem};
use crate::report::{Step, Table, TableRow, texts};
use crate::sheet::wiring::{
    ampacity_steps, amperes, drop_volts, fuse_steps, limit, ohms, ohms_per_length, percent,
    resistance_steps, run_at_most, run_length, volts, watts,
};
use crate::text::text;

impl Findings<'_> {
    /// AWG and metric sizes, those of the style's system first.
    pub(super) fn tables(&self, style: Style) -> Vec<Table> {
        let is_awg = |conductor: &Conductor| matches!(conductor, Conductor::Awg(_));
        let mut tables = vec![
            self.table("AWG sizes beside each other", is_awg, style),
            self.table("Metric sizes beside each other", |c| !is_awg(c), style),
        ];
        if style.system == UnitSystem::Metric {
            tables.reverse();
        }
        tables
    }

    fn table(&self, title: &str, of: impl Fn(&Conductor) -> bool, style: Style) -> Table {
        Table {
            title: title.into(),
            heads: texts(&["Conductor", "Drop", "Longest run", "May carry", "Enough"]),
            rows: self
                .choices
                .iter()
                .filter(|(conductor, _)| of(conductor))
                .map(|(conductor, wired)| TableRow {
                    cells: cells(*conductor, wired, style),
                    chosen: *conductor == self.wired.conductor,
                })
                .collect(),
        }
    }

    pub(super) fn working(&self, style: Style) -> Vec<Step> {
        let run = self.run;
        let wired = &self.wired;
        let Ok(ohm_per_m) = wired.conductor.ohm_per_m(run.temperature_c) else {
            return Vec::new();
        };
        let mut steps = resistance_steps(wired.conductor, run.temperature_c, ohm_per_m, style);
        let resistance = ohms(wired.resistance_ohm);
        let source = volts(run.source_v);
        let current = amperes(wired.current_a);
        steps.push(Step::new(
            "Both conductors",
            "R = 2 · L · r",
            text!(
                "2 · {} · {}",
                run_length(run.length_m, style),
                ohms_per_length(ohm_per_m, style)
            ),
            resistance.clone(),
            &sources::OHMS_LAW,
        ));
        if let Load::Power(power_w) = run.load {
            let power = watts(power_w);
            steps.push(Step::new(
                "Voltage at the load",
                "V = (Vs + √(Vs² − 4 · R · P)) / 2",
                text!("({} + √(({})² − 4 · {} · {})) / 2", &source, &source, &resistance, &power),
                volts(wired.load_v),
                &sources::CONSTANT_POWER,
            ));
            steps.push(Step::new(
                "Current",
                "I = P / V",
                text!("{} / {}", &power, volts(wired.load_v)),
                current.clone(),
                &sources::OHMS_LAW,
            ));
        }
        steps.push(Step::new(
            "Drop",
            "ΔV = I · R",
            text!("{} · {}", &current, &resistance),
            drop_volts(wired.drop_v),
            &sources::OHMS_LAW,
        ));
        steps.push(Step::new(
            "Share of the source voltage",
            "p = ΔV / Vs",
            text!("{} / {}", drop_volts(wired.drop_v), &source),
            percent(wired.drop_percent),
            &sources::OHMS_LAW,
        ));
        steps.push(Step::new(
            "Lost as heat",
            "Pv = I · ΔV",
            text!("{} · {}", &current, drop_volts(wired.drop_v)),
            watts(wired.loss_w),
            &sources::OHMS_LAW,
        ));
        steps.extend(self.longest_run_steps(ohm_per_m, style));
        steps.extend(ampacity_steps(wired.conductor, &run.conditions));
        if let (Some(low_v), Load::Power(_)) = (run.low_v, run.load) {
            steps.push(Step::new(
                "Current with the battery at its lowest",
                "I = P / V",
                volts(low_v),
                amperes(wired.highest_a),
                &sources::CONSTANT_POWER,
            ));
        }
        let fuse = wired.fuse.as_ref().ok().filter(|_| wired.carries());
        steps.extend(fuse_steps(wired.highest_a, run.continuous, fuse));
        steps
    }

    fn longest_run_steps(&self, ohm_per_m: f64, style: Style) -> Vec<Step> {
        let run = self.run;
        let most = greatest_resistance_ohm(run.source_v, run.load, run.drop_limit_percent);
        let (Ok(Some(most_ohm)), Some(longest_m)) = (most, self.wired.longest_run_m) else {
            return Vec::new();
        };
        let source = volts(run.source_v);
        let share = limit(run.drop_limit_percent);
        let (formula, numbers) = match run.load {
            Load::Power(power_w) => (
                "R = Vs² · p · (1 − p) / P",
                text!("({})² · {} · (1 − {}) / {}", &source, &share, &share, watts(power_w)),
            ),
            _ => (
                "R = p · Vs / I",
                text!("{} · {} / {}", &share, &source, amperes(self.wired.current_a)),
            ),
        };
        vec![
            Step::new(
                "Most resistance at the limit",
                formula,
                numbers,
                ohms(most_ohm),
                &sources::OHMS_LAW,
            ),
            Step::new(
                "Longest run, one way",
                "L = R / (2 · r)",
                text!("{} / (2 · {})", ohms(most_ohm), ohms_per_length(ohm_per_m, style)),
                run_at_most(longest_m, style),
                &sources::OHMS_LAW,
            ),
        ]
    }
}

fn cells(conductor: Conductor, wired: &Result<Wired, DropError>, style: Style) -> Vec<String> {
    let Ok(wired) = wired else {
        let none = String::from("–");
        let why = "no: no steady voltage".to_owned();
        return vec![conductor.to_string(), none.clone(), none.clone(), none, why];
    };
    let enough = match (wired.within_limit, wired.is_protected()) {
        _ if is_enough(wired) => "yes",
        (false, false) => "no: drop, current",
        (false, true) => "no: drop",
        _ if wired.ampacity_a.is_none() => "no: current unknown",
        _ => "no: current",
    };
    vec![
        conductor.to_string(),
        percent(wired.drop_percent),
        wired.longest_run_m.map_or("–".to_owned(), |m| run_at_most(m, style)),
        wired.ampacity_a.map_or("–".to_owned(), amperes),
        enough.to_owned(),
    ]
}
