//! What has to be said of a circuit, warnings first.

use super::common::{general_remarks, limit, percent, watts};
use super::findings::Findings;
use crate::electrical::conductor::Conductor;
use crate::electrical::drop::{Load, is_within};
use crate::electrical::network::length_headroom;
use crate::quantity::{Style, plain};
use crate::report::Remark;
use crate::text::text;

impl Findings<'_> {
    pub(super) fn remarks(&self, style: Style) -> Vec<Remark> {
        let mut remarks = self.unsafe_warnings();
        remarks.extend(self.drop_warnings());
        remarks.extend(self.polarity_warnings());
        if !self.is_safe() {
            return remarks;
        }
        if self.within_limit && remarks.is_empty() {
            remarks.push(Remark::good(text!(
                "Every load is within {}, and each run stands the fuse before it.",
                limit(self.inputs.drop_limit_percent)
            )));
        }
        remarks.extend(self.fuse_notes());
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
            &mut remarks,
        );
        remarks.extend(self.choice_notes(style));
        if let Some(note) = self.headroom_note() {
            remarks.push(note);
        }
        remarks.push(Remark::note(text!(
            "{} are lost as heat along the wires, of {} from the source.",
            watts(self.wired.solution.loss_w),
            watts(self.wired.solution.source_w)
        )));
        remarks
    }

    fn drop_warnings(&self) -> Vec<Remark> {
        if self.within_limit {
            return Vec::new();
        }
        let allowed = self.inputs.drop_limit_percent;
        let too_low: Vec<&str> = self
            .loads
            .iter()
            .zip(&self.inputs.loads)
            .filter(|(placed, _)| !is_within(self.drop_percent(placed.node), allowed))
            .map(|(_, load)| load.label.as_str())
            .collect();
        let better = match self.one_size_for_all().and_then(|one| one.conductor.first().copied()) {
            Some(size) => text!(
                " {} in every run would do; set runs to auto to find the least copper.",
                &size
            ),
            None => " No size is enough: shorten the runs or split the circuit.".to_owned(),
        };
        vec![Remark::warning(text!(
            "Too much is lost on the way to {}: {} at the worst, and {} is allowed.{}",
            shortened(&too_low),
            percent(self.drop_percent(self.worst)),
            limit(allowed),
            &better
        ))]
    }

    /// What keeps wire and fuses from being shown.
    fn unsafe_warnings(&self) -> Vec<Remark> {
        let faults = self.fuses.unsafe_for.iter();
        faults
            .map(|(_, fault)| Remark::warning(text!("Not shown, since {}.", &fault.message)))
            .collect()
    }

    /// Fuses in line, devices that protect themselves, sources at far ends.
    fn fuse_notes(&self) -> Vec<Remark> {
        let mut remarks = Vec::new();
        for (run, fuse) in &self.fuses.branches {
            if !self.is_in_block(*run) {
                remarks.push(Remark::note(text!(
                    "The dimmer or switch in run {} gets a fuse of its own, {} A in line where the \
                     run leaves {}: the fuse before that is larger than its rating.",
                    self.run_name(*run),
                    plain(fuse.rating_a, 1),
                    self.tree.name(self.tree.ends(*run).0)
                )));
            }
        }
        let of = |is: fn(&super::inputs::RunInput) -> bool| -> Vec<&str> {
            let runs = self.inputs.runs.iter().filter(|run| is(run));
            runs.map(|run| run.id.as_str()).collect()
        };
        let own = of(|run| {
            run.self_protecting && (run.device_rating_a.is_some() || run.device_rating_w.is_some())
        });
        if !own.is_empty() {
            remarks.push(Remark::note(text!(
                "The dimmer or switch in {} must protect itself: the fuse before it protects the \
                 wire, not the device.",
                shortened(&own)
            )));
        }
        if !of(|run| run.device_rating_a.is_some() || run.device_rating_w.is_some()).is_empty() {
            remarks.push(Remark::note(
                "Many dimmers switch the negative: the negatives behind one go back to it alone, \
                 never to the bus, the chassis or the negative of another run.",
            ));
        }
        let far = of(|run| run.far_source);
        if !far.is_empty() {
            remarks.push(Remark::note(text!(
                "With a source at each end either can burn the wire: {} has a fuse of one rating at \
                 both ends. A lithium battery never straight on an alternator: a DC-DC charger \
                 between them.",
                shortened(&far)
            )));
        }
        if self.inputs.supply.low_v.is_none()
            && self.loads.iter().any(|load| matches!(load.load, Load::Power(_)))
        {
            remarks.push(Remark::note(
                "Constant powers draw more from a low battery: enter the battery\u{2019}s lowest \
                 voltage, and wire and fuses are chosen for it.",
            ));
        }
        remarks
    }

    /// Colours that mean opposite things on two joined leads, like ones together.
    fn polarity_warnings(&self) -> Vec<Remark> {
        let mut found: Vec<(String, Vec<&str>)> = Vec::new();
        for (place, load) in self.inputs.loads.iter().enumerate() {
            for text in self.clash_words(place) {
                match found.iter_mut().find(|(known, _)| *known == text) {
                    Some((_, labels)) => labels.push(&load.label),
                    None => found.push((text, vec![&load.label])),
                }
            }
        }
        found
            .into_iter()
            .map(|(text, labels)| {
                Remark::warning(text!("Polarity of {}: {}.", shortened(&labels), &text))
            })
            .collect()
    }

    fn choice_notes(&self, style: Style) -> Vec<Remark> {
        let Some(chosen) = &self.wired.chosen else { return Vec::new() };
        let mut remarks = Vec::new();
        if !chosen.proved {
            let over = if chosen.bound_cm3 > 0.0 {
                text!(
                    "; no mix saves more than {}",
                    percent(100.0 * (1.0 - chosen.bound_cm3 / chosen.mix.copper_cm3))
                )
            } else {
                String::new()
            };
            remarks.push(Remark::note(text!(
                "The search for the least copper was stopped before its end{}.",
                &over
            )));
        }
        if let Some(single) = &chosen.single {
            let open = self.inputs.runs.iter().position(|run| run.conductor.is_none());
            let size = open.and_then(|place| single.conductor.get(place));
            if let (Some(size), true) = (size, single.conductor != chosen.mix.conductor) {
                let more =
                    super::figures::copper_mass(single.copper_cm3 - chosen.mix.copper_cm3, style);
                remarks.push(Remark::note(text!(
                    "One spool instead: {} in all of these runs does too, with {} more \
                     copper.",
                    &size,
                    &more
                )));
            }
        }
        remarks
    }

    fn headroom_note(&self) -> Option<Remark> {
        if !self.within_limit {
            return None;
        }
        let circuit = self.circuit(&self.wired.run_ohm, self.inputs.supply.source_v);
        let factor = length_headroom(&circuit, self.inputs.drop_limit_percent).ok()??;
        let longer = (100.0 * (factor - 1.0)).floor();
        (longer >= 1.0).then(|| {
            Remark::note(text!(
                "With this wire all runs together may be {} % longer before a load drops below \
                 the limit.",
                plain(longer, 0)
            ))
        })
    }
}

/// Names in a row, the first five of them.
fn shortened(names: &[&str]) -> String {
    const SHOWN: usize = 5;
    let shown: Vec<&str> = names.iter().take(SHOWN).copied().collect();
    match names.len().saturating_sub(SHOWN) {
        0 => shown.join(", "),
        more => text!("{} and {} more", shown.join(", "), &more),
    }
}
