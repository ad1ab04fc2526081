//! What is said about panels: answers, remarks, and the working of the string in the cold.

use crate::sorting::sort_by_key;
use crate::text::text;
use uom::si::electric_potential::volt;
use uom::si::energy::watt_hour;
use uom::si::f64::{ElectricPotential, Energy, ThermodynamicTemperature};
use uom::si::power::watt;
use uom::si::thermodynamic_temperature::degree_celsius;

use super::{Figures, Inputs, controller, months, roof};
use crate::energy::battery_voltage::LOW_VOLTAGE_V;
use crate::energy::string::{ColdRule, METHOD, NEC_690_8, TABLE, string_wire_a};
use crate::quantity::{Style, amount, plain};
use crate::report::{Answer, Remark, Step, Weight};

pub(super) fn answers(inputs: &Inputs, figures: &Figures) -> Vec<Answer> {
    let least = figures.least();
    let mean = figures.yields.iter().map(|energy| energy.get::<watt_hour>()).sum::<f64>() / 12.0;
    let mut answers = vec![
        Answer::new(
            text!("In the darkest month, {}", months::NAMES[least]),
            months::wh_day(figures.yields[least]),
        )
        .note(match inputs.need {
            Some(need) => text!("{} needed", months::wh_day(need)),
            None => String::new(),
        }),
        Answer::new("Over the year", months::wh_day(Energy::new::<watt_hour>(mean)))
            .note(text!("from {}", amount(inputs.rated().get::<watt>(), 0, "W"))),
    ];
    if let Some(cold) = figures.cold {
        answers.push(Answer::new("String on the coldest morning", volts(cold.string)).note(
            match inputs.controller {
                Some(limit) => text!("the controller takes {}", volts(limit)),
                None => String::new(),
            },
        ));
    }
    answers
}

pub(super) fn volts(voltage: ElectricPotential) -> String {
    amount(voltage.get::<volt>(), 1, "V")
}

pub(super) fn remarks(inputs: &Inputs, figures: &Figures, style: Style) -> Vec<Remark> {
    let mut remarks = Vec::new();
    // From 50 V on a string is none of ours, whatever the controller takes.
    let most = figures.most_in_series.map(|most| {
        let below = figures.cold.map_or(0.0, |cold| {
            ((LOW_VOLTAGE_V - 1e-6) / cold.panel.get::<volt>().max(0.1)).floor()
        });
        f64::from(most).min(below) as u32
    });
    match (figures.within_controller, most) {
        (Some(false), Some(0)) => remarks.push(Remark::warning(
            "Even one panel exceeds the controller's limit, or 50 V, in the cold: take another controller, or other panels.",
        )),
        (Some(false), Some(most)) => remarks.push(Remark::warning(text!(
            "In the cold this string exceeds the controller's limit and destroys it: at most {} \
             in series.",
            &most
        ))),
        (Some(true), Some(0)) => {}
        (Some(true), Some(most)) => remarks.push(Remark::good(text!(
            "The string stays below the controller's limit in the cold; up to {} in series would, below 50 V.",
            &most
        ))),
        _ => {}
    }
    remarks.extend(need_remark(inputs, figures));
    if let Some(layout) = &figures.layout {
        remarks.push(roof::remark(layout, inputs.count));
    }
    if let (Some(cold), Some(table)) = (figures.cold, figures.by_table) {
        remarks.push(Remark::note(text!(
            "One panel: {} by the maker's figure, {} by the electrical code's table; the maker's comes first.",
            volts(cold.panel),
            volts(table)
        )));
    }
    controller::remarks(inputs, figures, &mut remarks);
    if !inputs.count.is_multiple_of(inputs.in_series) {
        remarks.push(Remark::note(text!(
            "{} panels do not make full strings of {}.",
            &inputs.count,
            &inputs.in_series
        )));
    }
    let outside: Vec<&str> = figures
        .months
        .iter()
        .zip(months::NAMES)
        .filter(|(month, _)| month.outside_fit)
        .map(|(_, name)| name)
        .collect();
    if !outside.is_empty() {
        remarks.push(Remark::note(text!(
            "The clearness of {} lies outside the 0.3 to 0.8 that the method was fitted to.",
            outside.join(", ")
        )));
    }
    if figures.cold.is_some() && matches!(inputs.rule, ColdRule::Table) {
        remarks.push(Remark::note(text!(
            "The voltage at {} is by the electrical code's table for crystalline silicon; the \
             maker's own figure comes first.",
            inputs.coldest.map_or_else(String::new, |t| style.temperature(t))
        )));
    }
    sort_by_key(&mut remarks, |remark| remark.weight != Weight::Warning);
    remarks
}

/// Where the months fall short of the need, and what closes the gap.
fn need_remark(inputs: &Inputs, figures: &Figures) -> Option<Remark> {
    let need = inputs.need?;
    let short: Vec<&str> = figures
        .yields
        .iter()
        .zip(months::NAMES)
        .filter(|(energy, _)| energy.get::<watt_hour>() + 1e-9 < need.get::<watt_hour>())
        .map(|(_, name)| name)
        .collect();
    if short.is_empty() {
        return Some(Remark::good("On a mean day the panels cover the need in every month."));
    }
    let least = figures.least();
    let gap = need - figures.yields[least];
    let hours = figures.months[least].sun_hours() * (1.0 - inputs.loss);
    let more = need.get::<watt_hour>() / hours;
    let closes = if hours > 0.01 && more < 1e5 {
        text!(
            "panels of {} in all, or {} a day from driving or shore power",
            amount(more.ceil(), 0, "W"),
            months::wh(gap)
        )
    } else {
        text!("{} a day from driving or shore power", months::wh(gap))
    };
    Some(Remark::warning(text!(
        "Too little in {}: in {} it lacks {} a day. It takes {}.",
        short.join(", "),
        months::NAMES[least],
        months::wh(gap),
        &closes
    )))
}

pub(super) fn string_steps(inputs: &Inputs, figures: &Figures, style: Style) -> Vec<Step> {
    let (Some(cold), Some(open_circuit), Some(coldest)) =
        (figures.cold, inputs.open_circuit, inputs.coldest)
    else {
        return Vec::new();
    };
    let (formula, numbers, source) = match inputs.rule {
        ColdRule::Coefficient(percent) => (
            "V = Voc · (1 + β · (θ − 25 °C))",
            text!(
                "{} · (1 + ({} %) · ({} − {}))",
                volts(open_circuit),
                plain(percent, 3),
                style.temperature(coldest),
                style.temperature(ThermodynamicTemperature::new::<degree_celsius>(25.0))
            ),
            &METHOD,
        ),
        ColdRule::Table => (
            "V = Voc · factor",
            text!(
                "{} · {}",
                volts(open_circuit),
                plain(cold.panel.get::<volt>() / open_circuit.get::<volt>(), 2)
            ),
            &TABLE,
        ),
    };
    let mut steps = vec![
        Step::new("Panel on the coldest morning", formula, numbers, volts(cold.panel), source),
        Step::new(
            "String on the coldest morning",
            "n · V",
            text!("{} · {}", &inputs.in_series, volts(cold.panel)),
            volts(cold.string),
            &METHOD,
        ),
    ];
    if let Some(short) = inputs.short_circuit_a {
        steps.push(Step::new(
            "The wire of a string carries at least",
            "I = 1.25 · 1.25 · Isc",
            text!("1.5625 · {}", amount(short, 2, "A")),
            amount(string_wire_a(short), 2, "A"),
            &NEC_690_8,
        ));
    }
    steps
}
