//! Answers, remarks and working of the coating sheet.

use uom::si::f64::Ratio;
use uom::si::ratio::percent;
use uom::si::temperature_interval::kelvin;

use super::{AREA_SUM, Coat, Inputs, Rectangle, Worked, bought};
use crate::coating::air::{self, HUMIDITY_LIMIT_PERCENT, LEAST_MARGIN_K, Margin};
use crate::coating::{containers, film};
use crate::quantity::{Style, Volume, money, percent as write_percent, plain};
use crate::report::{Answer, Remark, Step};

/// Less left over than this share of the need is pointed out.
const SCANT: f64 = 0.03;

/// More rectangles than this are summed up in the working.
const MOST_LISTED: usize = 6;

/// A rectangle's name: its label, else its number; with how many there are.
pub fn named(rectangle: &Rectangle, index: usize) -> String {
    let name = match rectangle.label.as_str() {
        "" => format!("area {}", index + 1),
        label => label.to_owned(),
    };
    match rectangle.count {
        1 => name,
        count => format!("{name} × {count}"),
    }
}

pub fn answers(inputs: &Inputs, worked: &Worked, style: Style) -> Vec<Answer> {
    let mut answers = Vec::new();
    if let Some(choice) = &worked.choice {
        let left = format!("{} left over", style.volume(choice.left_over));
        answers.push(Answer::new("Buy", shopping(inputs, worked, style)).note(match choice.cost {
            Some(cost) => format!("{} in all; {left}", money(cost)),
            None => left,
        }));
    }
    let coats = match inputs.coats {
        1 => "1 coat".to_owned(),
        coats => format!("{coats} coats"),
    };
    let thinned = worked.thinner > Volume::default();
    answers.push(
        Answer::new(
            if thinned { "Needed, before thinning" } else { "Needed" },
            style.volume_both(worked.paint),
        )
        .note(format!(
            "{coats} on {}, {} wet each",
            style.area(worked.area),
            style.film(worked.wet)
        )),
    );
    if let Some(margin) = &worked.margin {
        let above = margin.margin.get::<kelvin>();
        let answer = match (margin.may_coat, margin.too_humid) {
            (false, _) => "No: wait",
            (true, true) => "Better wait",
            (true, false) => "Yes",
        };
        answers.push(Answer::new("Coat now?", answer).note(above_dew_point(above, style)));
    }
    answers
}

/// `2 × 1 gal + 1 × 1 qt`.
fn shopping(inputs: &Inputs, worked: &Worked, style: Style) -> String {
    let cans = worked.choice.iter().flat_map(|choice| bought(&inputs.offers, choice));
    let cans: Vec<String> =
        cans.map(|(offer, count)| format!("{count} × {}", style.container(offer.size))).collect();
    cans.join(" + ")
}

fn above_dew_point(kelvin_above: f64, style: Style) -> String {
    let side = if kelvin_above < 0.0 { "below" } else { "above" };
    format!(
        "the surface is {} {side} the dew point",
        style.temperature_difference(kelvin_above.abs())
    )
}

pub fn remarks(inputs: &Inputs, worked: &Worked, style: Style) -> Vec<Remark> {
    let mut remarks = Vec::new();
    if let Some(margin) = &worked.margin {
        air_remarks(margin, style, &mut remarks);
    }
    if worked.thinner > Volume::default() {
        remarks.push(Remark::note(format!(
            "Mix {} from the can with {} of thinner: {} as applied. The containers cover what \
             comes from the can.",
            style.volume(worked.paint),
            style.volume(worked.thinner),
            style.volume(worked.amount.needed),
        )));
    }
    match &worked.choice {
        None => remarks.push(Remark::note(
            "Add the containers on the shelf, with their prices, to see which to buy.",
        )),
        Some(choice) => {
            if inputs.offers.iter().any(|offer| offer.price.is_none()) {
                remarks.push(Remark::note(
                    "Not every container has a price, so these leave the least over; with all \
                     prices the cheapest are chosen.",
                ));
            }
            if choice.left_over < worked.paint * SCANT {
                remarks.push(Remark::note(format!(
                    "Only {} is left over: with a little more loss than entered it will not do.",
                    style.volume(choice.left_over)
                )));
            }
            if !choice.proved {
                remarks.push(Remark::note(
                    "There are too many ways to try them all: another choice might be a little \
                     better.",
                ));
            }
        }
    }
    remarks
}

fn air_remarks(margin: &Margin, style: Style, remarks: &mut Vec<Remark>) {
    let least = style.temperature_difference(LEAST_MARGIN_K);
    let dew = style.temperature(margin.air.dew_point);
    let above = above_dew_point(margin.margin.get::<kelvin>(), style);
    if !margin.may_coat {
        remarks.push(Remark::warning(format!(
            "Do not coat yet: {above} of {dew}, and {least} above it is the least. Warm the \
             surface, or wait for drier air."
        )));
    }
    if margin.too_humid {
        remarks.push(Remark::warning(format!(
            "The air is at {} humidity or more: wait for drier air, whatever the dew point.",
            write_percent(HUMIDITY_LIMIT_PERCENT)
        )));
    }
    if margin.may_coat && !margin.too_humid {
        remarks.push(Remark::good(format!(
            "Dry enough: {above} of {dew}; {least} is the least. Measure again before each coat."
        )));
    }
    if let Some(frost) = margin.air.frost_point {
        remarks.push(Remark::note(format!(
            "Frost forms from {} on: the label's least temperature comes first.",
            style.temperature(frost)
        )));
    }
}

pub fn working(inputs: &Inputs, worked: &Worked, style: Style) -> Vec<Step> {
    let share = |ratio: Ratio| write_percent(ratio.get::<percent>());
    let mut steps = vec![Step::new(
        "Area to coat",
        "A = Σ n · l · w",
        area_sum(&inputs.areas, style),
        style.area(worked.area),
        &AREA_SUM,
    )];
    match inputs.coat {
        Coat::Spread { rate, solids } => {
            steps.push(Step::new(
                "Wet film of one coat",
                "t = 1 / s",
                format!("1 / {}", style.spread_rate(rate.value)),
                style.film(worked.wet),
                &film::SPREAD_RATE,
            ));
            if let (Some(solids), Some(dry)) = (solids, worked.dry) {
                steps.push(Step::new(
                    "Dry film of one coat",
                    "d = t · S",
                    format!("{} · {}", style.film(worked.wet), share(solids)),
                    style.film(dry),
                    &film::SOLIDS,
                ));
            }
        }
        Coat::Film { dry, solids, thinner } => {
            steps.push(Step::new(
                "Wet film of one coat",
                "t = d · (1 + T) / S",
                format!("{} · (1 + {}) / {}", style.film(dry), share(thinner), share(solids)),
                style.film(worked.wet),
                &film::SOLIDS,
            ));
            steps.push(Step::new(
                "Spread rate, as applied",
                "s = 1 / t",
                format!("1 / {}", style.film(worked.wet)),
                style.spread_rate((1.0 / worked.wet).value),
                &film::SPREAD_RATE,
            ));
        }
    }
    steps.push(Step::new(
        "On the surface, all coats",
        "N = A · f · n · t",
        format!(
            "{} · {} · {} · {}",
            style.area(worked.area),
            plain(inputs.surface_factor, 3),
            inputs.coats,
            style.film(worked.wet)
        ),
        style.volume_both(worked.amount.net),
        &film::SPREAD_RATE,
    ));
    steps.push(Step::new(
        "Needed, as applied",
        "V = N / (1 − loss)",
        format!("{} / (1 − {})", style.volume(worked.amount.net), share(inputs.loss)),
        style.volume_both(worked.amount.needed),
        &film::LOSS,
    ));
    if let (Coat::Film { thinner, .. }, true) = (&inputs.coat, worked.thinner > Volume::default()) {
        steps.push(Step::new(
            "From the can",
            "P = V / (1 + T)",
            format!("{} / (1 + {})", style.volume(worked.amount.needed), share(*thinner)),
            style.volume_both(worked.paint),
            &film::SOLIDS,
        ));
    }
    steps.extend(containers_step(inputs, worked, style));
    steps.extend(air_steps(inputs, worked, style));
    steps
}

/// `17 ft 11 3/4 in · 6 ft 9 1/8 in − 2 · 3 ft · 10 in`.
fn area_sum(areas: &[Rectangle], style: Style) -> String {
    if areas.len() > MOST_LISTED {
        return format!("{} areas", areas.len());
    }
    let mut text = String::new();
    for (index, area) in areas.iter().enumerate() {
        text.push_str(match (index, area.subtract) {
            (0, false) => "",
            (0, true) => "−",
            (_, false) => " + ",
            (_, true) => " − ",
        });
        if area.count > 1 {
            text.push_str(&format!("{} · ", area.count));
        }
        text.push_str(&format!("{} · {}", style.length(area.length), style.length(area.width)));
    }
    text
}

fn containers_step(inputs: &Inputs, worked: &Worked, style: Style) -> Option<Step> {
    let choice = worked.choice.as_ref()?;
    let priced = inputs.offers.iter().all(|offer| offer.price.is_some());
    Some(Step::new(
        if priced { "Cheapest containers" } else { "Containers that leave least over" },
        "Σ n · size ≥ P",
        format!(
            "{} = {} ≥ {}",
            shopping(inputs, worked, style),
            style.volume(choice.total),
            style.volume(worked.paint)
        ),
        match choice.cost {
            Some(cost) => money(cost),
            None => format!("{} left over", style.volume(choice.left_over)),
        },
        &containers::METHOD,
    ))
}

fn air_steps(inputs: &Inputs, worked: &Worked, style: Style) -> Vec<Step> {
    let (Some(air), Some(margin)) = (&inputs.air, &worked.margin) else { return Vec::new() };
    let dew = style.temperature(margin.air.dew_point);
    vec![
        Step::new(
            "Dew point (T in °C)",
            "g = ln RH + 17.62 T / (243.12 + T); Td = 243.12 g / (17.62 − g)",
            format!("{}, {}", style.temperature(air.temperature), write_percent(air.humidity.get::<percent>())),
            dew.clone(),
            &air::MAGNUS,
        ),
        Step::new(
            "Surface above the dew point",
            "m = Ts − Td",
            format!("{} − {dew}", style.temperature(air.surface)),
            style.temperature_difference(margin.margin.get::<kelvin>()),
            &air::MARGIN_RULE,
        ),
    ]
}
