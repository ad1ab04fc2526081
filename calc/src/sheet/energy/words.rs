//! What is said about a day's use: answers, remarks, tables, working, and the bars.

use crate::sorting::sort_by;
use crate::text::text;
use uom::si::electric_charge::ampere_hour;
use uom::si::electric_current::ampere;
use uom::si::electric_potential::volt;
use uom::si::energy::watt_hour;
use uom::si::f64::{ElectricCharge, ElectricPotential, Energy, Power, Time};
use uom::si::power::watt;
use uom::si::time::hour;

use super::super::bars::{self, Bar};
use super::{CHARGE_EFFICIENCY, Inputs, Lasts, OHM};
use crate::drawing::{Drawing, Fill};
use crate::energy::budget::{BUDGET, Budget, Demand};
use crate::energy::charging::TIME_TO_FULL;
use crate::energy::peukert::PEUKERT;
use crate::quantity::{amount, percent, plain};
use crate::report::{Answer, Remark, Step, Table, TableRow, texts};

fn wh(energy: Energy) -> String {
    let wh = energy.get::<watt_hour>();
    amount(wh, if wh < 100.0 { 1 } else { 0 }, "Wh")
}

fn ah(charge: ElectricCharge) -> String {
    amount(charge.get::<ampere_hour>(), 1, "Ah")
}

fn volts(voltage: ElectricPotential) -> String {
    amount(voltage.get::<volt>(), 2, "V")
}

/// Hours, and from two days on days.
fn spell(time: Time) -> String {
    let hours = time.get::<hour>();
    if hours < 48.0 { amount(hours, 1, "h") } else { amount(hours / 24.0, 1, "days") }
}

fn days(number: f64) -> String {
    if number == 1.0 { "one day".to_owned() } else { amount(number, 2, "days") }
}

fn share(value: f64) -> String {
    percent(value * 100.0)
}

pub(super) fn answers(inputs: &Inputs, budget: &Budget, lasts: Option<&Lasts>) -> Vec<Answer> {
    let mut answers = vec![
        Answer::new("Used in a day", wh(budget.day)).note(text!(
            "{} at {}",
            ah(budget.day_charge),
            volts(inputs.voltage)
        )),
        Answer::new(text!("Battery for {}", days(inputs.demand.days)), ah(budget.needed_charge))
            .note(text!("{} at {}, at least", wh(budget.needed), volts(inputs.voltage))),
    ];
    if let Some(lasts) = lasts {
        answers.push(
            Answer::new("Your battery lasts", spell(lasts.time))
                .note("at the day's average load, with nothing charging"),
        );
    }
    answers
}

pub(super) fn remarks(
    inputs: &Inputs,
    budget: &Budget,
    lasts: Option<&Lasts>,
    all_on: Power,
) -> Vec<Remark> {
    let mut remarks = Vec::new();
    let days = days(inputs.demand.days);
    if let (Some(battery), Some(lasts)) = (&inputs.battery, lasts) {
        if lasts.time.get::<hour>() + 1e-6 < inputs.demand.days * 24.0 {
            remarks.push(Remark::warning(text!(
                "Your battery does not last {}: it holds {} of the {} needed. Use less, \
                 charge sooner, or take a larger one.",
                &days,
                wh(battery.energy),
                wh(budget.needed)
            )));
        } else {
            remarks.push(Remark::good(text!("Your battery carries {}.", &days)));
        }
        match lasts.peukert {
            Some((found, _)) if found.below_rating => remarks.push(Remark::note(
                "The average load is below the battery's rated current: its rated capacity is \
                 counted, not the more that Peukert's law promises.",
            )),
            None if inputs.demand.usable <= 0.6 => remarks.push(Remark::note(
                "A lead-acid battery gives less at a high current: enter its Peukert exponent.",
            )),
            _ => {}
        }
    }
    remarks.push(Remark::note(text!(
        "All loads at once draw {} or {}: size the battery's cable and fuse for that on the \
         voltage drop sheet.",
        amount(all_on.get::<watt>(), 1, "W"),
        amount((all_on / inputs.voltage).get::<ampere>(), 1, "A")
    )));
    remarks
}

fn label(inputs: &Inputs, index: usize) -> String {
    match inputs.labels.get(index) {
        Some(label) if !label.is_empty() => label.clone(),
        _ => text!("load {}", index + 1),
    }
}

pub(super) fn tables(inputs: &Inputs, budget: &Budget, full: &[Time]) -> Vec<Table> {
    let day = budget.day.get::<watt_hour>();
    let mut rows: Vec<(usize, &Energy)> = budget.loads.iter().enumerate().collect();
    sort_by(&mut rows, |a, b| b.1.value.total_cmp(&a.1.value));
    let rows = rows.into_iter().map(|(index, energy)| {
        let part = if day > 0.0 { energy.get::<watt_hour>() / day } else { 0.0 };
        TableRow { cells: vec![label(inputs, index), wh(*energy), share(part)], chosen: false }
    });
    let mut tables = vec![Table {
        title: "What the day goes to".into(),
        heads: texts(&["Load", "In a day", "Share"]),
        rows: rows.collect(),
    }];
    if !full.is_empty() {
        let rows = full.iter().zip(&inputs.charging).map(|(time, (label, power))| TableRow {
            cells: vec![label.clone(), amount(power.get::<watt>(), 0, "W"), spell(*time)],
            chosen: false,
        });
        tables.push(Table {
            title: "From the lowest charge to full, at least".into(),
            heads: texts(&["Charged by", "Power", "Time"]),
            rows: rows.collect(),
        });
    }
    tables
}

pub(super) fn working(
    inputs: &Inputs,
    budget: &Budget,
    lasts: Option<&Lasts>,
    full: &[Time],
) -> Vec<Step> {
    let mut steps: Vec<Step> = inputs
        .loads
        .iter()
        .zip(&budget.loads)
        .enumerate()
        .map(|(index, (load, energy))| {
            Step::new(
                label(inputs, index),
                "E = P · t · d",
                text!(
                    "{} · {} · {}",
                    amount(load.power.get::<watt>(), 2, "W"),
                    amount(load.time.get::<hour>(), 2, "h"),
                    share(load.duty)
                ),
                wh(*energy),
                &BUDGET,
            )
        })
        .collect();
    let Demand { days, usable, efficiency, .. } = inputs.demand;
    steps.push(Step::new("Day", "Σ E", "all loads", wh(budget.day), &BUDGET));
    steps.push(Step::new(
        "Day as charge",
        "Q = E / U",
        text!("{} / {}", wh(budget.day), volts(inputs.voltage)),
        ah(budget.day_charge),
        &OHM,
    ));
    steps.push(Step::new(
        "Battery",
        "C = E · n / (u · η)",
        text!(
            "{} · {} / ({} · {})",
            wh(budget.day),
            plain(days, 2),
            share(usable),
            share(efficiency)
        ),
        text!("{} = {}", wh(budget.needed), ah(budget.needed_charge)),
        &BUDGET,
    ));
    let Some(battery) = &inputs.battery else { return steps };
    if let Some(Lasts { time, peukert }) = lasts {
        match peukert {
            Some((found, current)) if !found.below_rating => {
                steps.push(Step::new(
                    "Average current",
                    "I = E / (24 h · U · η)",
                    text!(
                        "{} / (24 h · {} · {})",
                        wh(budget.day),
                        volts(inputs.voltage),
                        share(efficiency)
                    ),
                    amount(current.get::<ampere>(), 2, "A"),
                    &OHM,
                ));
                let capacity = battery.energy / inputs.voltage;
                let (hours, amperes) =
                    (plain(battery.hours, 1), amount(current.get::<ampere>(), 2, "A"));
                steps.push(Step::new(
                    "Lasts, lead-acid",
                    "t = u · H · (C / (I · H))^k",
                    text!(
                        "{} · {} h · ({} / ({} · {} h))^{}",
                        share(usable),
                        &hours,
                        ah(capacity),
                        &amperes,
                        &hours,
                        plain(battery.exponent.unwrap_or(1.0), 3)
                    ),
                    spell(*time),
                    &PEUKERT,
                ));
            }
            _ => steps.push(Step::new(
                "Lasts",
                "t = C · u · η · 24 h / E",
                text!(
                    "{} · {} · {} · 24 h / {}",
                    wh(battery.energy),
                    share(usable),
                    share(efficiency),
                    wh(budget.day)
                ),
                spell(*time),
                &BUDGET,
            )),
        }
    }
    for (time, (label, power)) in full.iter().zip(&inputs.charging) {
        let limit = battery.charge_limit.map_or(*power, |limit| limit * inputs.voltage);
        let lesser = if limit < *power { limit } else { *power };
        steps.push(Step::new(
            text!("To full: {}", &label),
            "t = C · u / (P · η)",
            text!(
                "{} · {} / ({} · {})",
                wh(battery.energy),
                share(usable),
                amount(lesser.get::<watt>(), 0, "W"),
                share(CHARGE_EFFICIENCY)
            ),
            spell(*time),
            &TIME_TO_FULL,
        ));
    }
    steps
}

/// A bar for each load of the day; below, needed and own battery to one scale.
pub(super) fn day(inputs: &Inputs, budget: &Budget) -> Drawing {
    let mut drawing = Drawing::new(
        "A day's use and the battery",
        text!("Bars for each load of the day, {} in all, and for the battery.", wh(budget.day)),
    );
    let loads: Vec<Bar> = budget
        .loads
        .iter()
        .enumerate()
        .map(|(index, energy)| Bar {
            text: text!("{} · {}", label(inputs, index), wh(*energy)),
            value: energy.get::<watt_hour>(),
            fill: Fill::Level(2),
        })
        .collect();
    let end = bars::draw(&mut drawing, &loads, 0.0);
    let bar =
        |text: String, energy: Energy, fill| Bar { text, value: energy.get::<watt_hour>(), fill };
    let mut sizes = vec![
        bar(text!("one day · {}", wh(budget.day)), budget.day, Fill::Level(2)),
        bar(text!("battery needed · {}", wh(budget.needed)), budget.needed, Fill::Stock),
    ];
    if let Some(battery) = &inputs.battery {
        let text = text!("your battery · {}", wh(battery.energy));
        sizes.push(bar(text, battery.energy, Fill::Level(1)));
    }
    bars::draw(&mut drawing, &sizes, end + 0.06);
    drawing
}
