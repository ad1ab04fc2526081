//! How a schedule is worked out, step by step.

use uom::si::f64::ThermodynamicTemperature;

use super::clock::moment;
use super::found::{Found, StepAir};
use super::inputs::{Job, Planned};
use crate::coating::air::AboveDew;
use crate::coating::climate::{self, Weather};
use crate::coating::schedule::{Slot, Step as Pass, WINDOW};
use crate::coating::{air as dew, mixing};
use crate::formula::step as formula_step;
use crate::quantity::{Style, span};
use crate::report::Step;
use crate::text::text;
use crate::words::{Arg, schedule as words};

pub(super) fn working(job: &Job, found: &Found, style: Style) -> Vec<Step> {
    let time = |time: f64| style.write(&moment(time));
    let mut steps = Vec::new();
    let mut before: Option<(&Pass, &Slot)> = None;
    for ((step, slot, _), planned) in found.all().zip(&job.steps) {
        let name = || planned.name.clone();
        let Some((last, at)) = before.replace((step, slot)) else {
            steps.push(Step::new(
                style.say(words::StepStart { step: name() }),
                style.say(words::STEP_START_FORMULA),
                time(slot.start_min),
                time(slot.start_min),
                &WINDOW,
            ));
            continue;
        };
        // What the label's minutes come to, by the temperature of the hours.
        let factor = |label_min: f64, whole: f64| {
            let factor = if label_min > 0.0 { whole / label_min } else { 1.0 };
            style.write(&Arg::hundredths(factor))
        };
        let least = last.recoat_least_min;
        steps.push(Step::new(
            style.say(words::StepWait { step: name() }),
            style.say(words::STEP_WAIT_FORMULA),
            text!(
                "{} + {} · {}",
                time(at.end_min),
                span(least),
                factor(least, last.pace.after_least(at.end_min, least) - at.end_min)
            ),
            time(slot.earliest_min),
            &WINDOW,
        ));
        if let (Some(latest), Some(most)) = (slot.latest_min, last.recoat_most_min) {
            steps.push(Step::new(
                style.say(words::StepWindow { step: name() }),
                style.say(words::STEP_WINDOW_FORMULA),
                text!(
                    "{} + {} · {} − {}",
                    time(at.start_min),
                    span(most),
                    factor(most, last.pace.after_most(at.start_min, most) - at.start_min),
                    span((step.work_min - last.work_min).max(0.0))
                ),
                time(latest),
                &WINDOW,
            ));
        }
    }
    steps.extend(air_steps(job, found, style));
    steps
}

/// Pace and dew point, once for each weather.
fn air_steps(job: &Job, found: &Found, style: Style) -> Vec<Step> {
    let mut steps = Vec::new();
    let mut known: Vec<(Weather, ThermodynamicTemperature)> = Vec::new();
    for ((step, slot, air), planned) in found.all().zip(&job.steps) {
        let Some(air) = air else { continue };
        if known.contains(&(air.weather, planned.label_at)) {
            continue;
        }
        known.push((air.weather, planned.label_at));
        steps.extend(air_of(step, slot, &air, planned, style));
    }
    steps
}

fn air_of(step: &Pass, slot: &Slot, air: &StepAir, planned: &Planned, style: Style) -> Vec<Step> {
    let mut steps = Vec::new();
    let Some(climate) = &planned.air else { return steps };
    let name = || planned.name.clone();
    let StepAir { weather, worst: (time, margin), .. } = air;
    if !climate.is_even() {
        let result = words::StepAirResult {
            temperature: Arg::temperature(weather.temperature),
            humidity: Arg::ratio(weather.humidity),
            surface: Arg::temperature(weather.surface),
        };
        steps.push(Step::new(
            style.say(words::StepAir { step: name() }),
            "x = x₁ + (x₂ − x₁) · (t − t₁) / (t₂ − t₁)",
            text!("t = {}", style.write(&moment(slot.start_min))),
            style.say(result),
            &climate::BETWEEN,
        ));
    }
    steps.push(Step::new(
        style.say(words::StepPace { step: name() }),
        style.say(words::STEP_PACE_FORMULA),
        text!(
            "2^(({} − {}) / {})",
            style.temperature(planned.label_at),
            style.temperature(weather.temperature),
            style.temperature_difference(10.0)
        ),
        style.write(&Arg::hundredths(step.pace.at(slot.start_min))),
        &mixing::POT_LIFE,
    ));
    let at_worst = climate.at(*time);
    let humidity = style.write(&Arg::ratio(at_worst.humidity));
    steps.push(Step::new(
        style.say(words::StepDew { step: name(), time: moment(*time) }),
        dew::MAGNUS_SYMBOLS,
        text!("{}, {}", style.temperature(at_worst.temperature), &humidity),
        style.temperature(margin.air.dew_point),
        &dew::MAGNUS,
    ));
    let above = AboveDew { surface: at_worst.surface, dew_point: margin.air.dew_point };
    steps.push(formula_step(words::StepMargin { step: name() }, &above, style));
    steps
}
