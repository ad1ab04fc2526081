//! What has to be said of a circuit, warnings first.

use super::common::{amperes, general_remarks, limit, percent, watts};
use super::findings::Findings;
use crate::electrical::ampacity::ampacity_a;
use crate::electrical::drop::is_within;
use crate::electrical::fuse::FuseError;
use crate::electrical::network::length_headroom;
use crate::quantity::{Style, plain};
use crate::report::Remark;
use crate::text::text;

impl Findings<'_> {
    pub(super) fn remarks(&self, style: Style) -> Vec<Remark> {
        let mut remarks = self.drop_warnings();
        remarks.extend(self.current_warnings());
        remarks.extend(self.polarity_warnings());
        if self.within_limit && self.fuse.is_ok() && remarks.is_empty() {
            remarks.push(Remark::good(text!(
                "Every load is within {}, and the fuse protects every run.",
                limit(self.inputs.drop_limit_percent)
            )));
        }
        general_remarks(
            self.inputs.source_v,
            &self.conductors,
            &self.inputs.conditions,
            &mut remarks,
        );
        remarks.extend(self.choice_notes(style));
        if let Some(note) = self.headroom_note() {
            remarks.push(note);
        }
        remarks.push(Remark::note(text!(
            "{} are lost as heat along the wires, of {} from the source.",
            watts(self.solution.loss_w),
            watts(self.solution.source_w)
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

    fn current_warnings(&self) -> Vec<Remark> {
        let runs = &self.inputs.runs;
        let mut remarks = Vec::new();
        for place in self.overloaded() {
            let (Some(run), Some(conductor)) = (runs.get(place), self.conductors.get(place)) else {
                continue;
            };
            remarks.push(Remark::warning(text!(
                "Run {} overheats: {} as it lies may carry {}, and {} flow.",
                &run.id,
                &conductor,
                ampacity_a(*conductor, &self.inputs.conditions).map_or("?".to_owned(), amperes),
                amperes(self.run_a(place))
            )));
        }
        match &self.fuse {
            Err(error @ FuseError::ConductorTooThin { weakest, .. }) => {
                let run = runs.get(*weakest).map_or("", |run| run.id.as_str());
                remarks.push(Remark::warning(text!(
                    "No fuse fits: {}. The weakest is run {}; a fuse of its own where it \
                     branches off would do too.",
                    &error,
                    &run
                )));
            }
            Err(error) => remarks.push(Remark::warning(text!("No fuse fits: {}.", &error))),
            Ok(fuse) if !fuse.unrated.is_empty() => {
                let ids: Vec<&str> = fuse
                    .unrated
                    .iter()
                    .filter_map(|place| runs.get(*place).map(|run| run.id.as_str()))
                    .collect();
                remarks.push(Remark::warning(text!(
                    "No table says what the wire of {} may carry: the fuse was not held against \
                     it. Look up what its maker allows.",
                    shortened(&ids)
                )));
            }
            Ok(_) => {}
        }
        for (place, run) in runs.iter().enumerate() {
            match run.device_rating_a {
                Some(rating_a) if self.run_a(place) > rating_a * (1.0 + 1e-9) => {
                    remarks.push(Remark::warning(text!(
                        "The dimmer or switch in run {} carries {}, and {} flow: take a larger \
                         one or split the run.",
                        &run.id,
                        amperes(rating_a),
                        amperes(self.run_a(place))
                    )));
                }
                _ => {}
            }
            let flows_w = self.run_w(place);
            if let Some(rating_w) = run.device_rating_w.filter(|w| flows_w > w * (1.0 + 1e-9)) {
                remarks.push(Remark::warning(text!(
                    "The dimmer or switch in run {} is good for {}, and {} go through: take a \
                     larger one or split the run.",
                    &run.id,
                    watts(rating_w),
                    watts(flows_w)
                )));
            }
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
        let Some(chosen) = &self.chosen else { return Vec::new() };
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
        let circuit = self.circuit(&self.run_ohm, self.inputs.source_v);
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
