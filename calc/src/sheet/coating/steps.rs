//! How a coating is worked out, step by step.

use uom::si::f64::Volume;

use super::AREA_SUM;
use super::found::{Found, OfLayer};
use super::inputs::{Boards, Coat, Job, Layer, Rectangle};
use super::shown::shopping;
use crate::coating::air::{AboveDew, Margin};
use crate::coating::climate::Weather;
use crate::coating::film::{
    DryFilm, FromCan, IntoWood, Needed, OnSurface, SpreadRate, WetFilm, WetForDry,
};
use crate::coating::{air, containers, film, surface, verdict};
use crate::formula::step;
use crate::quantity::Style;
use crate::report::Step;
use crate::text::text;
use crate::words::{Arg, Id, coating as words};

/// More rectangles than this are summed up in the working.
const MOST_LISTED: usize = 6;

pub(super) fn working(job: &Job, found: &Found, style: Style) -> Vec<Step> {
    let mut steps = area_steps(job, found, style);
    for (layer, of_layer) in job.layers.iter().zip(found.layers()) {
        let mut of_this = layer_steps(job, layer, found, of_layer, style);
        if job.layers.len() > 1 {
            for step in &mut of_this {
                let name = std::mem::take(&mut step.name);
                step.name = style.say(words::StepOf { step: name, product: layer.name(style) });
            }
        }
        steps.append(&mut of_this);
    }
    for (supply, count) in job.inputs.supplies.iter().zip(&found.counts) {
        steps.push(Step::new(
            style.say(words::StepSupply { supply: supply.label.as_str() }),
            style.say(words::STEP_SUPPLY_FORMULA),
            text!("⌈{} · {} / {}⌉", style.area(found.area), &supply.times, style.area(supply.each)),
            count.to_string(),
            &AREA_SUM,
        ));
    }
    steps.extend(air_steps(job, found, style));
    steps
}

fn area_steps(job: &Job, found: &Found, style: Style) -> Vec<Step> {
    let mut steps = Vec::new();
    let mut numbers = area_sum(&job.inputs.areas, style);
    let mut formula = words::STEP_AREA_FORMULA;
    if !job.boards.is_empty() {
        let count: u32 = job.boards.iter().map(Boards::number).sum();
        steps.push(Step::new(
            style.say(words::STEP_BOARDS),
            style.say(words::STEP_BOARDS_FORMULA),
            style.say(words::StepBoardsNumbers { count }),
            style.area(found.of_boards),
            &surface::BOARD,
        ));
        let plus = if numbers.is_empty() { "" } else { " + " };
        numbers.push_str(&text!("{}{}", plus, style.area(found.of_boards)));
        formula = words::STEP_AREA_WITH_BOARDS;
    }
    steps.push(Step::new(
        style.say(words::STEP_AREA),
        style.say(formula),
        numbers,
        style.area(found.area),
        &AREA_SUM,
    ));
    steps
}

fn layer_steps(
    job: &Job,
    layer: &Layer,
    found: &Found,
    of_layer: &OfLayer,
    style: Style,
) -> Vec<Step> {
    let wet = of_layer.wet;
    let (area, surface_factor, coats) = (found.area, job.inputs.surface_factor, layer.coats);
    let on_surface = OnSurface { area, surface_factor, coats, wet };
    let mut steps = Vec::new();
    match layer.coat {
        // What goes into the wood leaves no film.
        Coat::Spread { rate, .. } if layer.penetrating => {
            let into = IntoWood { area, surface_factor, coats, rate };
            steps.push(step(words::STEP_INTO, &into, style));
        }
        Coat::Spread { rate, solids } => {
            steps.push(step(words::STEP_WET, &WetFilm { rate }, style));
            let dry = solids.map(|solids| DryFilm { wet, solids });
            steps.extend(dry.map(|dry| step(words::STEP_DRY, &dry, style)));
            steps.push(step(words::STEP_ON, &on_surface, style));
        }
        Coat::Film { dry, solids, thinner } => {
            steps.push(step(words::STEP_WET, &WetForDry { dry, thinner, solids }, style));
            steps.push(step(words::STEP_SPREAD, &SpreadRate { wet }, style));
            steps.push(step(words::STEP_ON, &on_surface, style));
        }
    }
    let needed = Needed { net: of_layer.net_volume, loss: layer.loss };
    let needed = step(words::STEP_NEEDED, &needed, style);
    steps.push(match layer.loss_given {
        true => needed,
        false => Step { source: &film::USUAL_LOSS, ..needed },
    });
    if let (Coat::Film { thinner, .. }, true) = (&layer.coat, of_layer.thinner > Volume::default())
    {
        let can = FromCan { as_applied: of_layer.volume, thinner: *thinner };
        steps.push(step(words::STEP_CAN, &can, style));
    }
    steps.extend(containers_step(layer, of_layer, style));
    steps
}

/// `17 ft 11 3/4 in · 6 ft 9 1/8 in − 2 · 3 ft · 10 in`.
fn area_sum(areas: &[Rectangle], style: Style) -> String {
    if areas.len() > MOST_LISTED {
        return style.say(words::StepAreaAreas { count: areas.len() });
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

fn containers_step(layer: &Layer, found: &OfLayer, style: Style) -> Option<Step> {
    let choice = found.choice.as_ref()?;
    let priced = layer.offers.iter().all(|offer| offer.price.is_some());
    let name = if priced { words::STEP_CONTAINERS_PRICED } else { words::STEP_CONTAINERS };
    let volume = Arg::volume(choice.left_over);
    Some(Step::new(
        style.say(name),
        style.say(words::STEP_CONTAINERS_FORMULA),
        text!(
            "{} = {} ≥ {}",
            shopping(layer, found, style),
            style.volume(choice.total),
            style.volume_needed(found.paint)
        ),
        match choice.cost {
            Some(cost) => style.write(&Arg::price(cost)),
            None => style.say(words::StepContainersLeftOver { volume }),
        },
        &containers::METHOD,
    ))
}

fn air_steps(job: &Job, found: &Found, style: Style) -> Vec<Step> {
    let (Some(air), Some(margin)) = (&job.air, &found.margin) else { return Vec::new() };
    let mut steps = dew_steps([words::STEP_DEW, words::STEP_MARGIN], air, margin, style);
    if let Some(night) = &job.night
        && let Ok(margin) = air::margin(night.temperature, night.humidity, night.surface)
    {
        let names = [words::STEP_DEW_NIGHT, words::STEP_MARGIN_NIGHT];
        steps.append(&mut dew_steps(names, night, &margin, style));
    }
    for (layer, verdict) in job.layers.iter().zip(&found.verdicts) {
        let unknown = || Arg::from("?");
        let degrees = |limit: Option<_>| limit.map_or_else(unknown, Arg::temperature);
        let limits = &layer.limits;
        let numbers = words::StepMayNumbers {
            least: degrees(limits.least),
            most: degrees(limits.most),
            humidity: limits.humidity_most.map_or_else(unknown, Arg::ratio),
        };
        let result = match verdict.may_coat() {
            Some(true) => words::STEP_MAY_YES,
            Some(false) => words::STEP_MAY_NO,
            None => words::STEP_MAY_UNKNOWN,
        };
        steps.push(Step::new(
            style.say(words::StepMay { product: layer.name(style) }),
            style.say(words::STEP_MAY_FORMULA),
            style.say(numbers),
            style.say(result),
            &verdict::LABEL_LIMITS,
        ));
    }
    steps
}

fn dew_steps(names: [Id; 2], air: &Weather, margin: &Margin, style: Style) -> Vec<Step> {
    let [of_dew, of_margin] = names;
    let humidity = style.write(&Arg::ratio(air.humidity));
    let above = AboveDew { surface: air.surface, dew_point: margin.air.dew_point };
    vec![
        Step::new(
            style.say(of_dew),
            air::MAGNUS_SYMBOLS,
            text!("{}, {}", style.temperature(air.temperature), &humidity),
            style.temperature(margin.air.dew_point),
            &air::MAGNUS,
        ),
        step(of_margin, &above, style),
    ]
}
