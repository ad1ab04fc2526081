//! What is said about a day's use: answers, remarks, tables, working, and the bars.

use crate::sorting::{sort_by, sort_by_key};
use crate::text::text;
use uom::si::electric_charge::ampere_hour;
use uom::si::electric_current::ampere;
use uom::si::electric_potential::volt;
use uom::si::energy::watt_hour;
use uom::si::f64::{ElectricCharge, ElectricPotential, Energy, Time};
use uom::si::power::watt;
use uom::si::time::hour;

use super::super::bars::{self, Bar};
use super::charging::{self, ChargedBy};
use super::{Figures, Inputs, Lasts, OHM, supply};
use crate::drawing::{Anchor, Drawing, Fill, Pen, Point};
use crate::energy::budget::{BUDGET, Demand};
use crate::energy::peukert::PEUKERT;
use crate::quantity::{Style, amount, percent, plain};
use crate::report::{Answer, Remark, Step, Table, TableRow, Weight, texts};
use crate::sheet::solar::MONTHS;

fn wh(energy: Energy) -> String {
    let wh = energy.get::<watt_hour>();
    amount(wh, if wh < 100.0 { 1 } else { 0 }, "Wh")
}

fn ah(charge: ElectricCharge) -> String {
    amount(charge.get::<ampere_hour>(), 1, "Ah")
}

pub(super) fn volts(voltage: ElectricPotential) -> String {
    amount(voltage.get::<volt>(), 2, "V")
}

/// Hours, and from two days on days.
pub(super) fn spell(time: Time) -> String {
    let hours = time.get::<hour>();
    if hours < 48.0 { amount(hours, 1, "h") } else { amount(hours / 24.0, 1, "days") }
}

fn days(number: f64) -> String {
    if number == 1.0 { "one day".to_owned() } else { amount(number, 2, "days") }
}

fn share(value: f64) -> String {
    percent(value * 100.0)
}

pub(super) fn answers(inputs: &Inputs, figures: &Figures) -> Vec<Answer> {
    let (budget, lasts) = (&figures.budget, figures.lasts.as_ref());
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

pub(super) fn remarks(inputs: &Inputs, figures: &Figures) -> Vec<Remark> {
    let (budget, lasts, all_on) = (&figures.budget, figures.lasts.as_ref(), figures.all_on);
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
    match (&inputs.inverter, &figures.inverter) {
        (Some(inverter), Some(asked)) => supply::inverter_remarks(inverter, asked, &mut remarks),
        _ if inputs.loads.iter().any(|load| load.mains) => remarks.push(Remark::warning(
            "Some loads run on mains voltage: fill in the inverter, which takes its share too.",
        )),
        _ => {}
    }
    let all = text!(
        "All loads at once draw {} or {} at {}",
        amount(all_on.get::<watt>(), 1, "W"),
        amount((all_on / inputs.voltage).get::<ampere>(), 1, "A"),
        volts(inputs.voltage)
    );
    match &figures.cable {
        Some(Ok(cable)) => {
            remarks.push(Remark::note(text!("{}.", &all)));
            cable.remarks("Battery cable", true, &mut remarks);
            if let Some(inverter) = &inputs.inverter {
                cable.inverter_remarks(inverter, &mut remarks);
            }
        }
        Some(Err(message)) => {
            remarks.push(Remark::warning(text!("Battery cable and fuse: not shown: {}.", &message)))
        }
        None => remarks.push(Remark::note(text!(
            "{}. Not shown: the battery cable and its fuse: fill in the cable to size them.",
            &all
        ))),
    }
    super::checks::remarks(inputs, &mut remarks);
    figures.charger_cables.remarks(inputs, &mut remarks);
    brought(inputs, figures, &mut remarks);
    sort_by_key(&mut remarks, |remark| remark.weight != Weight::Warning);
    remarks
}

/// Whether what charges on an ordinary day makes up for the day.
fn brought(inputs: &Inputs, figures: &Figures, remarks: &mut Vec<Remark>) {
    let Some(battery) = &inputs.battery else { return };
    let drawn = figures.budget.day / inputs.demand.efficiency;
    let mut brought: Energy = figures
        .charged
        .iter()
        .filter_map(|charged| charged.day)
        .fold(Energy::default(), |a, b| a + b);
    let hours = brought > Energy::default();
    let panels = inputs.charging.iter().filter_map(|charger| match &charger.by {
        ChargedBy::Months(months) => Some(months),
        ChargedBy::Power(_) => None,
    });
    let mut months = [0.0; 12];
    let mut any = false;
    for yields in panels {
        any |= yields.len() == 12;
        for (month, wh) in months.iter_mut().zip(yields) {
            *month += wh;
        }
    }
    let darkest = months.iter().enumerate().min_by(|a, b| a.1.total_cmp(b.1));
    let mut when = "On an ordinary day";
    if let (true, Some((index, wh))) = (any, darkest) {
        brought += Energy::new::<watt_hour>(*wh) * battery.kept();
        when = MONTHS.get(index).copied().unwrap_or_default();
    }
    if !any && !hours {
        return;
    }
    let when = if any { text!("On a mean day of {}", &when) } else { when.to_owned() };
    let figures = text!(
        "{} all charging together leaves {} in the battery, and the day takes {} out of it",
        &when,
        wh(brought),
        wh(drawn)
    );
    remarks.push(if brought < drawn {
        Remark::warning(text!("{}: it runs down.", &figures))
    } else {
        Remark::good(text!("{}.", &figures))
    });
}

fn label(figures: &Figures, index: usize) -> String {
    figures.labels.get(index).cloned().unwrap_or_default()
}

pub(super) fn tables(inputs: &Inputs, figures: &Figures, style: Style) -> Vec<Table> {
    let budget = &figures.budget;
    let day = budget.day.get::<watt_hour>();
    let mut rows: Vec<(usize, &Energy)> = budget.loads.iter().enumerate().collect();
    sort_by(&mut rows, |a, b| b.1.value.total_cmp(&a.1.value));
    let rows = rows.into_iter().map(|(index, energy)| {
        let part = if day > 0.0 { energy.get::<watt_hour>() / day } else { 0.0 };
        TableRow { cells: vec![label(figures, index), wh(*energy), share(part)], chosen: false }
    });
    let mut tables = vec![Table {
        title: "What the day goes to".into(),
        heads: texts(&["Load", "In a day", "Share"]),
        rows: rows.collect(),
    }];
    if let Some(Ok(cable)) = &figures.cable {
        tables.push(Table {
            title: "Battery cable".into(),
            heads: texts(&["Cable", "One way", "Current", "Drop", "Fuse"]),
            rows: vec![TableRow { cells: cable.cells(style), chosen: false }],
        });
    }
    tables.extend(figures.charger_cables.table(inputs, style));
    tables.extend(charging::tables(inputs, &figures.charged));
    tables
}

pub(super) fn working(inputs: &Inputs, figures: &Figures) -> Vec<Step> {
    let (budget, lasts) = (&figures.budget, figures.lasts.as_ref());
    let mut steps: Vec<Step> = figures
        .loads
        .iter()
        .zip(&budget.loads)
        .enumerate()
        .map(|(index, (load, energy))| {
            Step::new(
                label(figures, index),
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
    if let (Some(inverter), Some(asked)) = (&inputs.inverter, &figures.inverter) {
        supply::inverter_steps(inverter, asked, &mut steps);
    }
    if let Some(Ok(cable)) = &figures.cable {
        cable.steps(&mut steps);
    }
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
    charging::steps(inputs, battery, &figures.charged, &mut steps);
    steps
}

/// A bar for each load of the day; below, needed and own battery to one scale.
pub(super) fn day(inputs: &Inputs, figures: &Figures) -> Drawing {
    let budget = &figures.budget;
    let mut drawing = Drawing::new(
        "A day's use and the battery",
        text!("Bars for each load of the day, {} in all, and for the battery.", wh(budget.day)),
    );
    let loads: Vec<Bar> = budget
        .loads
        .iter()
        .enumerate()
        .map(|(index, energy)| Bar {
            text: text!("{} · {}", label(figures, index), wh(*energy)),
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
    let end = bars::draw(&mut drawing, &sizes, end + 0.06);
    one_day(&mut drawing, figures, end + 0.14);
    drawing
}

/// The day as one bar, its loads end to end.
fn one_day(drawing: &mut Drawing, figures: &Figures, top: f64) {
    const HEIGHT: f64 = 0.06;
    /// Width of a letter on a phone, where the bar is as wide as the page.
    const LETTER: f64 = 0.025;
    let day = figures.budget.day.get::<watt_hour>();
    if day <= 0.0 {
        return;
    }
    drawing.text(Point::metres(0.0, top - 0.03), Anchor::Start, "the day, load by load");
    let mut from = 0.0;
    for (index, energy) in figures.budget.loads.iter().enumerate() {
        let to = from + energy.get::<watt_hour>() / day;
        let fill = Fill::Level((index % 5) as u8);
        drawing.rectangle(
            Pen::Solid,
            fill,
            Point::metres(from, top),
            Point::metres(to, top + HEIGHT),
        );
        // A name needs room below its part; the table has them all.
        let name = label(figures, index);
        if to - from > LETTER * name.chars().count() as f64 {
            let below = Point::metres((from + to) / 2.0, top + HEIGHT + 0.04);
            drawing.text(below, Anchor::Middle, name);
        }
        from = to;
    }
}
