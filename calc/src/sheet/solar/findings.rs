//! What is found of panels: answers and remarks.

use uom::si::electric_potential::volt;
use uom::si::energy::watt_hour;
use uom::si::f64::{Energy, Power};
use uom::si::power::watt;

use super::months::MONTHS;
use super::{Figures, Inputs, controller, roof};
use crate::energy::battery_voltage::LOW_VOLTAGE_V;
use crate::energy::string::ColdRule;
use crate::quantity::Style;
use crate::report::{Answer, Remark, Weight};
use crate::sorting::sort_by_key;
use crate::words::{Arg, solar as words};

pub(super) fn answers(inputs: &Inputs, figures: &Figures, style: Style) -> Vec<Answer> {
    let least = figures.least();
    let mean = figures.yields.iter().map(|energy| energy.get::<watt_hour>()).sum::<f64>() / 12.0;
    let a_day = |energy| style.say(words::ADay { energy: Arg::watt_hours(energy) });
    let need = inputs.need.map(Arg::watt_hours);
    let need = need.map(|energy| style.say(words::DarkestNeed { energy }));
    let from = style.say(words::OverYearFrom { power: Arg::watts(inputs.rated()) });
    let mut answers = vec![
        Answer::new(
            style.say(words::Darkest { month: MONTHS[least] }),
            a_day(figures.yields[least]),
        )
        .note(need.unwrap_or_default()),
        Answer::new(style.say(words::OVER_YEAR), a_day(Energy::new::<watt_hour>(mean))).note(from),
    ];
    if let Some(cold) = figures.cold {
        let limit = inputs.controller.map(Arg::volts);
        let limit = limit.map(|limit| style.say(words::ColdStringLimit { limit }));
        let volts = style.write(&Arg::volts_borne(cold.string));
        answers.push(
            Answer::new(style.say(words::COLD_STRING), volts).note(limit.unwrap_or_default()),
        );
    }
    answers
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
        (Some(false), Some(0)) => {
            remarks.push(Remark::warning(style.say(words::NONE_IN_SERIES)));
        }
        (Some(false), Some(most)) => {
            remarks.push(Remark::warning(style.say(words::TooLong { most })));
        }
        (Some(true), Some(0)) => {}
        (Some(true), Some(most)) => {
            remarks.push(Remark::good(style.say(words::WithinLimit { most })));
        }
        _ => {}
    }
    remarks.extend(need(inputs, figures, style));
    if let Some(layout) = &figures.layout {
        remarks.push(roof::remark(layout, inputs.count, style));
    }
    if let (Some(cold), Some(table)) = (figures.cold, figures.by_table) {
        let (maker, table) = (Arg::volts(cold.panel), Arg::volts(table));
        remarks.push(Remark::note(style.say(words::BothRules { maker, table })));
    }
    controller::remarks(inputs, figures, style, &mut remarks);
    if !inputs.count.is_multiple_of(inputs.in_series) {
        let (count, series) = (inputs.count, inputs.in_series);
        remarks.push(Remark::note(style.say(words::Uneven { count, series })));
    }
    let outside = figures.months.iter().zip(MONTHS).filter(|(month, _)| month.outside_fit);
    let outside: Vec<_> = outside.map(|(_, name)| name).collect();
    if !outside.is_empty() {
        let months = Arg::each(outside);
        remarks.push(Remark::note(style.say(words::OutsideFit { months })));
    }
    if let (Some(_), ColdRule::Table, Some(coldest)) = (figures.cold, inputs.rule, inputs.coldest) {
        let temperature = Arg::typed_temperature(coldest);
        remarks.push(Remark::note(style.say(words::ByTable { temperature })));
    }
    sort_by_key(&mut remarks, |remark| remark.weight != Weight::Warning);
    remarks
}

/// Where the months fall short of the need, and what closes the gap.
fn need(inputs: &Inputs, figures: &Figures, style: Style) -> Option<Remark> {
    let need = inputs.need?;
    let falls = |energy: &Energy| energy.get::<watt_hour>() + 1e-9 < need.get::<watt_hour>();
    let short = figures.yields.iter().zip(MONTHS).filter(|(energy, _)| falls(energy));
    let short: Vec<_> = short.map(|(_, name)| name).collect();
    if short.is_empty() {
        return Some(Remark::good(style.say(words::COVERED)));
    }
    let least = figures.least();
    let hours = figures.months[least].sun_hours() * (1.0 - inputs.loss);
    let more = need.get::<watt_hour>() / hours;
    let (months, month) = (Arg::each(short), MONTHS[least]);
    let lacks = Arg::watt_hours(need - figures.yields[least]);
    Some(Remark::warning(if hours > 0.01 && more < 1e5 {
        let power = Arg::watts(Power::new::<watt>(more.ceil()));
        style.say(words::ShortMore { months, month, lacks, power })
    } else {
        style.say(words::ShortDark { months, month, lacks })
    }))
}
