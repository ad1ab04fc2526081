//! What charges the battery held against what battery and cables stand.

use super::cable::{Cable, CableInputs, Carried, cable};
use super::charging::{Charger, name};
use super::{Inputs, charging_v};
use crate::lists::BuyLine;
use crate::quantity::{Style, amount};
use crate::report::{Remark, Table, TableRow, texts};
use crate::sheet::wiring::amperes;
use crate::text::text;

/// The cable of each charger, by its place; none where its way or its current was not given.
pub(super) struct Cables(Vec<Option<Result<Cable, String>>>);

impl Cables {
    pub fn of_all(inputs: &Inputs, lowest_v: f64) -> Self {
        Self(
            inputs
                .charging
                .iter()
                .map(|charger| {
                    let (way_m, current_a) = (charger.way_m?, charger.current_a?);
                    let carried = Carried {
                        power_w: 0.0,
                        current_a,
                        least_fuse_a: 0.0,
                        lowest_v,
                        charging_v: charging_v(inputs),
                    };
                    Some(cable(&CableInputs::of_charger(inputs.cable.as_ref(), way_m), &carried))
                })
                .collect(),
        )
    }

    /// The cable of one charger, where it could be worked out.
    pub fn of(&self, index: usize) -> Option<&Cable> {
        self.0.get(index)?.as_ref()?.as_ref().ok()
    }

    /// Every cable with a fuse at either end.
    pub fn buy(&self, style: Style) -> Vec<BuyLine> {
        (0..self.0.len())
            .filter_map(|index| self.of(index))
            .flat_map(|cable| cable.buy(2, style))
            .collect()
    }

    /// One row for each cable.
    pub fn table(&self, inputs: &Inputs, style: Style) -> Option<Table> {
        let rows: Vec<TableRow> = inputs
            .charging
            .iter()
            .enumerate()
            .filter_map(|(index, charger)| {
                let mut cells = vec![name(charger, index)];
                cells.extend(self.of(index)?.cells(style));
                Some(TableRow { cells, chosen: false })
            })
            .collect();
        (!rows.is_empty()).then(|| Table {
            title: "Cables of the chargers, the fuse at both ends".into(),
            heads: texts(&["Charger", "Cable", "One way", "Current", "Drop", "Fuse"]),
            rows,
        })
    }

    pub fn remarks(&self, inputs: &Inputs, remarks: &mut Vec<Remark>) {
        let mut open: Vec<String> = Vec::new();
        for (index, charger) in inputs.charging.iter().enumerate() {
            let name = name(charger, index);
            match self.0.get(index).and_then(Option::as_ref) {
                Some(Ok(cable)) => {
                    let name = text!("Cable of {}", &name);
                    cable.remarks(&name, false, remarks);
                }
                Some(Err(message)) => remarks.push(Remark::warning(text!(
                    "Cable of {}: not shown: {}.",
                    &name,
                    message
                ))),
                None if charger.power().is_some() => open.push(name),
                None => {}
            }
        }
        if !open.is_empty() {
            remarks.push(Remark::note(text!(
                "Not shown: the cables of {} and the fuses that each needs at both ends, since battery and charger can both feed it: enter the way from charger to battery.",
                open.join(", ")
            )));
        }
    }
}

/// Chargers against the battery's limit, and the alternator against what lithium draws.
pub(super) fn remarks(inputs: &Inputs, remarks: &mut Vec<Remark>) {
    let battery = inputs.battery.as_ref();
    let limit_a = battery
        .and_then(|battery| battery.charge_limit)
        .map(|limit| limit.get::<uom::si::electric_current::ampere>());
    let chargers: Vec<(&Charger, String, f64)> = inputs
        .charging
        .iter()
        .enumerate()
        .filter_map(|(index, charger)| Some((charger, name(charger, index), charger.current_a?)))
        .collect();
    let Some((_, _, _)) = chargers.first() else { return };
    let all: f64 = chargers.iter().map(|(_, _, current)| current).sum();
    match limit_a {
        None => remarks.push(Remark::note(
            "Not shown: whether the battery stands what charges it: enter the most that it may be charged with.",
        )),
        Some(limit) => {
            let mut above = false;
            for (_, name, current) in &chargers {
                if *current > limit * (1.0 + 1e-9) {
                    above = true;
                    remarks.push(Remark::warning(text!(
                        "{} charges with {}, and the battery stands {}: set it lower, or take a smaller one.",
                        name,
                        amperes(*current),
                        amperes(limit)
                    )));
                }
            }
            if !above && all > limit * (1.0 + 1e-9) {
                remarks.push(Remark::warning(text!(
                    "All chargers at once bring {}, and the battery stands {}: never all at a time, or set them lower.",
                    amperes(all),
                    amperes(limit)
                )));
            }
        }
    }
    for (charger, name, current) in &chargers {
        match charger.kind {
            "alternator" if battery.is_none_or(|battery| !battery.lead_acid) => {
                remarks.push(Remark::warning(text!(
                    "{}: straight from the alternator only a lead-acid battery is charged. Choose the kind of battery, or put a DC-DC charger between.",
                    name
                )));
            }
            "alternator" => remarks.push(Remark::warning(text!(
                "{}: nothing limits the {} to that: an empty battery draws what the alternator gives. Cable and both fuses for the alternator\u{2019}s full current, or a DC-DC charger between.",
                name,
                amperes(*current)
            ))),
            "dc_dc" => remarks.push(Remark::note(text!(
                "{}: on the alternator\u{2019}s side the DC-DC charger draws more than it gives, {} or more: size that cable and its two fuses by its maker\u{2019}s sheet.",
                name,
                amount((current * 1.2).ceil(), 0, "A")
            ))),
            "auto" if charger.power().is_some() => remarks.push(Remark::note(text!(
                "Not shown: whether {} limits its current: say what kind of charger it is.",
                name
            ))),
            _ => {}
        }
    }
}
