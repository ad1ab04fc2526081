//! The working of the coating sheet.

use crate::text::text;
use uom::si::f64::Ratio;
use uom::si::ratio::percent;
use uom::si::temperature_interval::kelvin;

use super::words::shopping;
use super::{AREA_SUM, Boards, Coat, Inputs, Layer, Rectangle, Worked, WorkedLayer};
use crate::coating::air::Margin;
use crate::coating::climate::Weather;
use crate::coating::{air, containers, film, surface, verdict};
use crate::quantity::{Style, Volume, money, percent as write_percent, plain};
use crate::report::Step;

/// More rectangles than this are summed up in the working.
const MOST_LISTED: usize = 6;

pub fn working(inputs: &Inputs, worked: &Worked, style: Style) -> Vec<Step> {
    let mut steps = Vec::new();
    let mut numbers = area_sum(&inputs.areas, style);
    if !inputs.boards.is_empty() {
        let count: u32 = inputs.boards.iter().map(Boards::number).sum();
        steps.push(Step::new(
            "Boards",
            "B = Σ n · (faces · l · w + edges · l · t + ends · w · t)",
            text!("{} boards", &count),
            style.area(worked.of_boards),
            &surface::BOARD,
        ));
        let plus = if numbers.is_empty() { "" } else { " + " };
        numbers.push_str(&text!("{}{}", &plus, style.area(worked.of_boards)));
    }
    steps.push(Step::new(
        "Area to coat",
        if inputs.boards.is_empty() {
            "A = Σ n · faces · l · w"
        } else {
            "A = Σ n · faces · l · w + B"
        },
        numbers,
        style.area(worked.area),
        &AREA_SUM,
    ));
    for (layer, of_layer) in inputs.layers.iter().zip(&worked.layers) {
        let mut of_this = layer_steps(inputs, layer, worked, of_layer, style);
        if inputs.layers.len() > 1 {
            for step in &mut of_this {
                step.name = text!("{}, {}", &step.name, &layer.product);
            }
        }
        steps.append(&mut of_this);
    }
    for (supply, count) in inputs.supplies.iter().zip(&worked.supplies) {
        steps.push(Step::new(
            supply.label.clone(),
            "n = ⌈A · times / each⌉",
            text!(
                "⌈{} · {} / {}⌉",
                style.area(worked.area),
                &supply.times,
                style.area(supply.each)
            ),
            count.to_string(),
            &AREA_SUM,
        ));
    }
    steps.extend(air_steps(inputs, worked, style));
    steps
}

fn layer_steps(
    inputs: &Inputs,
    layer: &Layer,
    worked: &Worked,
    of_layer: &WorkedLayer,
    style: Style,
) -> Vec<Step> {
    let share = |ratio: Ratio| write_percent(ratio.get::<percent>());
    let wet = style.film(of_layer.wet);
    let mut steps = Vec::new();
    match layer.coat {
        // What goes into the wood leaves no film.
        Coat::Spread { .. } if layer.penetrating => {}
        Coat::Spread { rate, solids } => {
            steps.push(Step::new(
                "Wet film of one coat",
                "t = 1 / s",
                text!("1 / {}", style.spread_rate(rate.value)),
                wet.clone(),
                &film::SPREAD_RATE,
            ));
            if let (Some(solids), Some(dry)) = (solids, of_layer.dry) {
                steps.push(Step::new(
                    "Dry film of one coat",
                    "d = t · S",
                    text!("{} · {}", &wet, share(solids)),
                    style.film(dry),
                    &film::SOLIDS,
                ));
            }
        }
        Coat::Film { dry, solids, thinner } => {
            steps.push(Step::new(
                "Wet film of one coat",
                "t = d · (1 + T) / S",
                text!("{} · (1 + {}) / {}", style.film(dry), share(thinner), share(solids)),
                wet.clone(),
                &film::SOLIDS,
            ));
            steps.push(Step::new(
                "Spread rate, as applied",
                "s = 1 / t",
                text!("1 / {}", &wet),
                style.spread_rate((1.0 / of_layer.wet).value),
                &film::SPREAD_RATE,
            ));
        }
    }
    let spread = match layer.coat {
        Coat::Spread { rate, .. } if layer.penetrating => Some(style.spread_rate(rate.value)),
        _ => None,
    };
    steps.push(Step::new(
        if spread.is_some() { "Into the wood, all coats" } else { "On the surface, all coats" },
        if spread.is_some() { "N = A · f · n / s" } else { "N = A · f · n · t" },
        text!(
            "{} · {} · {} {}",
            style.area(worked.area),
            plain(inputs.surface_factor, 3),
            &layer.coats,
            match spread {
                Some(rate) => text!("/ {}", &rate),
                None => text!("· {}", &wet),
            }
        ),
        style.volume_needed_both(of_layer.amount.net),
        &film::SPREAD_RATE,
    ));
    let needed = style.volume_needed(of_layer.amount.needed);
    steps.push(Step::new(
        "Needed, as applied",
        "V = N / (1 − loss)",
        text!("{} / (1 − {})", style.volume_needed(of_layer.amount.net), share(layer.loss)),
        style.volume_needed_both(of_layer.amount.needed),
        if layer.loss_given { &film::LOSS } else { &film::USUAL_LOSS },
    ));
    if let (Coat::Film { thinner, .. }, true) = (&layer.coat, of_layer.thinner > Volume::default())
    {
        steps.push(Step::new(
            "From the can",
            "P = V / (1 + T)",
            text!("{} / (1 + {})", &needed, share(*thinner)),
            style.volume_needed_both(of_layer.paint),
            &film::SOLIDS,
        ));
    }
    steps.extend(containers_step(layer, of_layer, style));
    steps
}

/// `17 ft 11 3/4 in · 6 ft 9 1/8 in − 2 · 3 ft · 10 in`.
fn area_sum(areas: &[Rectangle], style: Style) -> String {
    if areas.len() > MOST_LISTED {
        return text!("{} areas", areas.len());
    }
    let mut text = String::new();
    for (index, area) in areas.iter().enumerate() {
        text.push_str(match (index, area.subtract) {
            (0, false) => "",
            (0, true) => "−",
            (_, false) => " + ",
            (_, true) => " − ",
        });
        for several in [area.count, area.faces] {
            if several > 1 {
                text.push_str(&text!("{} · ", &several));
            }
        }
        text.push_str(&text!("{} · {}", style.length(area.length), style.length(area.width)));
    }
    text
}

fn containers_step(layer: &Layer, worked: &WorkedLayer, style: Style) -> Option<Step> {
    let choice = worked.choice.as_ref()?;
    let priced = layer.offers.iter().all(|offer| offer.price.is_some());
    Some(Step::new(
        if priced { "Cheapest containers" } else { "Containers that leave least over" },
        "Σ n · size ≥ P",
        text!(
            "{} = {} ≥ {}",
            shopping(layer, worked, style),
            style.volume(choice.total),
            style.volume_needed(worked.paint)
        ),
        match choice.cost {
            Some(cost) => money(cost),
            None => text!("{} left over", style.volume(choice.left_over)),
        },
        &containers::METHOD,
    ))
}

fn air_steps(inputs: &Inputs, worked: &Worked, style: Style) -> Vec<Step> {
    let (Some(air), Some(margin)) = (&inputs.air, &worked.margin) else { return Vec::new() };
    let mut steps = dew_steps("", air, margin, style);
    if let Some(night) = &inputs.night
        && let Ok(margin) = air::margin(night.temperature, night.humidity, night.surface)
    {
        steps.append(&mut dew_steps(", in the night", night, &margin, style));
    }
    for (layer, verdict) in inputs.layers.iter().zip(&worked.verdicts) {
        let degrees =
            |limit: Option<_>| limit.map_or_else(unknown, |limit| style.temperature(limit));
        let humidity = layer.limits.humidity_most;
        steps.push(Step::new(
            text!("May it go on, {}", &layer.product),
            "least ≤ air, surface ≤ greatest; RH ≤ limit, RH < 85 %; m ≥ 3 °C; now and in the night",
            text!(
                "{} to {}, {}",
                degrees(layer.limits.least),
                degrees(layer.limits.most),
                humidity.map_or_else(unknown, |most| write_percent(most.get::<percent>()))
            ),
            match verdict.may_coat() {
                Some(true) => "yes",
                Some(false) => "no",
                None => "not shown",
            },
            &verdict::LABEL_LIMITS,
        ));
    }
    steps
}

fn unknown() -> String {
    "?".to_owned()
}

fn dew_steps(when: &str, air: &Weather, margin: &Margin, style: Style) -> Vec<Step> {
    let dew = style.temperature(margin.air.dew_point);
    vec![
        Step::new(
            text!("Dew point{} (T in °C)", when),
            "g = ln RH + 17.62 T / (243.12 + T); Td = 243.12 g / (17.62 − g)",
            text!(
                "{}, {}",
                style.temperature(air.temperature),
                write_percent(air.humidity.get::<percent>())
            ),
            dew.clone(),
            &air::MAGNUS,
        ),
        Step::new(
            text!("Surface above the dew point{}", when),
            "m = Ts − Td",
            text!("{} − {}", style.temperature(air.surface), &dew),
            style.temperature_difference(margin.margin.get::<kelvin>()),
            &air::MARGIN_RULE,
        ),
    ]
}
