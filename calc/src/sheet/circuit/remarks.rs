//! What has to be said of a circuit, warnings first.

use super::common::{drop_beside, general_remarks, limit, percent, rating, watts};
use super::findings::Findings;
use super::joints::Contradiction;
use crate::electrical::conductor::Conductor;
use crate::electrical::drop::{Load, is_within};
use crate::electrical::network::length_headroom;
use crate::quantity::{Style, amount};
use crate::report::Remark;
use crate::words::{Arg, Msg, circuit as words, wiring};

impl Findings<'_> {
    pub(super) fn remarks(&self, style: Style) -> Vec<Remark> {
        let mut remarks = self.unsafe_warnings(style);
        remarks.extend(self.drop_warnings(style));
        remarks.extend(self.polarity_warnings(style));
        if !self.is_safe() {
            return remarks;
        }
        if self.within_limit && remarks.is_empty() {
            let limit = limit(self.inputs.drop_limit_percent);
            remarks.push(Remark::good(style.say(words::Good { limit })));
        }
        remarks.extend(self.fuse_notes(style));
        let fuses_a: Vec<f64> = self.fuses.all().map(|(_, fuse)| fuse.rating_a).collect();
        let mut used: Vec<Conductor> = Vec::new();
        for conductor in &self.wired.conductors {
            if !used.contains(conductor) {
                used.push(*conductor);
            }
        }
        general_remarks(
            &self.inputs.supply,
            &used,
            &fuses_a,
            &self.inputs.conditions,
            style,
            &mut remarks,
        );
        remarks.extend(self.choice_notes(style));
        if let Some(note) = self.headroom_note(style) {
            remarks.push(note);
        }
        let (loss, all) = (self.wired.solution.loss_w, self.wired.solution.source_w);
        let heat = words::Heat { loss: watts(loss), all: watts(all) };
        remarks.push(Remark::note(style.say(heat)));
        remarks
    }

    fn drop_warnings(&self, style: Style) -> Vec<Remark> {
        if self.within_limit {
            return Vec::new();
        }
        let allowed = self.inputs.drop_limit_percent;
        let too_low: Vec<Arg> = self
            .loads
            .iter()
            .zip(&self.inputs.loads)
            .filter(|(placed, _)| !is_within(self.drop_percent(placed.node), allowed))
            .map(|(_, load)| load.label.clone())
            .collect();
        let instead: Msg =
            match self.one_size_for_all().and_then(|one| one.conductor.first().copied()) {
                Some(size) => words::Instead { size: size.to_string() }.into(),
                None => words::INSTEAD_NONE.into(),
            };
        vec![Remark::warning(style.say(words::Lost {
            loads: shortened(too_low),
            percent: drop_beside(self.drop_percent(self.worst), allowed),
            limit: limit(allowed),
            instead,
        }))]
    }

    /// What keeps wire and fuses from being shown.
    fn unsafe_warnings(&self, style: Style) -> Vec<Remark> {
        let all = self.fuses.unsafe_for.iter();
        all.map(|of| Remark::warning(style.say(words::NotShown { problem: of.why.clone() })))
            .collect()
    }

    /// Fuses in line, devices that protect themselves, sources at far ends.
    fn fuse_notes(&self, style: Style) -> Vec<Remark> {
        let mut remarks = Vec::new();
        let mut note = |message: Msg| remarks.push(Remark::note(style.say(message)));
        for (run, fuse) in &self.fuses.branches {
            if !self.is_in_block(*run) {
                let node = self.tree.name(self.tree.ends(*run).0);
                let (run, rating) = (self.inputs.called(*run), rating(fuse.rating_a));
                note(words::InLine { run, rating, node }.into());
            }
        }
        let of = |is: fn(&super::inputs::RunInput) -> bool| -> Vec<Arg> {
            let runs = self.inputs.runs.iter().filter(|run| is(run));
            runs.map(|run| run.called.clone()).collect()
        };
        let own = of(|run| {
            run.self_protecting && (run.device_rating_a.is_some() || run.device_rating_w.is_some())
        });
        if !own.is_empty() {
            note(words::MustProtect { count: own.len(), runs: shortened(own) }.into());
        }
        if !of(|run| run.device_rating_a.is_some() || run.device_rating_w.is_some()).is_empty() {
            note(words::SWITCH_NEGATIVE.into());
        }
        let far = of(|run| run.far_source);
        if !far.is_empty() {
            note(words::FarFuses { runs: shortened(far) }.into());
        }
        if self.inputs.supply.low_v.is_none()
            && self.loads.iter().any(|load| matches!(load.load, Load::Power(_)))
        {
            note(wiring::CONSTANT_POWER.into());
        }
        remarks
    }

    /// Colours that mean opposite things on two joined leads, like ones together.
    fn polarity_warnings(&self, style: Style) -> Vec<Remark> {
        let mut found: Vec<(Contradiction, Vec<Arg>)> = Vec::new();
        for (place, load) in self.inputs.loads.iter().enumerate() {
            for clash in self.clashes_of(place) {
                match found.iter_mut().find(|(known, _)| *known == clash) {
                    Some((_, labels)) => labels.push(load.label.clone()),
                    None => found.push((clash, vec![load.label.clone()])),
                }
            }
        }
        found
            .into_iter()
            .map(|(clash, labels)| {
                let (loads, clash) = (shortened(labels), self.clash(clash));
                Remark::warning(style.say(words::Polarity { loads, clash }))
            })
            .collect()
    }

    fn choice_notes(&self, style: Style) -> Vec<Remark> {
        let Some(chosen) = &self.wired.chosen else { return Vec::new() };
        let mut remarks = Vec::new();
        if !chosen.proved {
            let stopped: Msg = if chosen.bound_cm3 > 0.0 {
                let saves = percent(100.0 * (1.0 - chosen.bound_cm3 / chosen.mix.copper_cm3));
                words::StoppedBound { saves }.into()
            } else {
                words::STOPPED.into()
            };
            remarks.push(Remark::note(style.say(stopped)));
        }
        if let Some(single) = &chosen.single {
            let open = self.inputs.runs.iter().position(|run| run.conductor.is_none());
            let size = open.and_then(|place| single.conductor.get(place));
            if let (Some(size), true) = (size, single.conductor != chosen.mix.conductor) {
                let more =
                    super::answers::copper_mass(single.copper_cm3 - chosen.mix.copper_cm3, style);
                let spool = words::OneSpool { size: size.to_string(), more };
                remarks.push(Remark::note(style.say(spool)));
            }
        }
        remarks
    }

    fn headroom_note(&self, style: Style) -> Option<Remark> {
        if !self.within_limit {
            return None;
        }
        let circuit = self.circuit(&self.wired.run_ohm, self.inputs.supply.source_v);
        let factor = length_headroom(&circuit, self.inputs.drop_limit_percent).ok()??;
        let longer = (100.0 * (factor - 1.0)).floor();
        (longer >= 1.0)
            .then(|| Remark::note(style.say(words::Headroom { percent: amount(longer, 0, "%") })))
    }
}

/// Names in a row, the first five of them.
fn shortened(mut names: Vec<Arg>) -> Arg {
    const SHOWN: usize = 5;
    let more = names.len().saturating_sub(SHOWN);
    names.truncate(SHOWN);
    if more > 0 {
        names.push(Msg::from(words::MoreNames { more }).into());
    }
    Arg::Each(names)
}
