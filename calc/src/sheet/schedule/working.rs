//! The working of the schedule.

use crate::text::text;
use uom::si::f64::ThermodynamicTemperature;
use uom::si::ratio::percent as percent_unit;
use uom::si::temperature_interval::kelvin;

use super::clock::{span, written};
use super::{Inputs, StepAir, Worked};
use crate::coating::climate::{self, Weather};
use crate::coating::schedule::{Slot, Step as Pass, WINDOW};
use crate::coating::{air, mixing};
use crate::quantity::{Style, percent, plain};
use crate::report::Step;

pub fn working(inputs: &Inputs, worked: &Worked, style: Style) -> Vec<Step> {
    let mut steps = Vec::new();
    let mut before: Option<(&Pass, &Slot)> = None;
    for (step, slot, _) in worked.all() {
        let Some((last, at)) = before.replace((step, slot)) else {
            steps.push(Step::new(
                text!("{}: start", &step.label),
                "as entered",
                written(slot.start_min, style),
                written(slot.start_min, style),
                &WINDOW,
            ));
            continue;
        };
        // What the label's minutes come to, by the temperature of the hours.
        let factor = |label_min: f64, whole: f64| {
            let factor = if label_min > 0.0 { whole / label_min } else { 1.0 };
            plain(factor, 2)
        };
        let least = last.recoat_least_min;
        steps.push(Step::new(
            text!("{}: the wait is over at", &step.label),
            "end of the step before + least wait · mean of max(pace, 1)",
            text!(
                "{} + {} · {}",
                written(at.end_min, style),
                span(least),
                factor(least, last.pace.after_least(at.end_min, least) - at.end_min)
            ),
            written(slot.earliest_min, style),
            &WINDOW,
        ));
        if let (Some(latest), Some(most)) = (slot.latest_min, last.recoat_most_min) {
            steps.push(Step::new(
                text!("{}: the window closes at", &step.label),
                "start of the step before + longest wait · mean of min(pace, 1) − work that takes longer",
                text!(
                    "{} + {} · {} − {}",
                    written(at.start_min, style),
                    span(most),
                    factor(most, last.pace.after_most(at.start_min, most) - at.start_min),
                    span((step.work_min - last.work_min).max(0.0))
                ),
                written(latest, style),
                &WINDOW,
            ));
        }
    }
    steps.extend(air_steps(inputs, worked, style));
    steps
}

/// Pace and dew point, once for each weather.
fn air_steps(inputs: &Inputs, worked: &Worked, style: Style) -> Vec<Step> {
    let mut steps = Vec::new();
    let mut known: Vec<(Weather, ThermodynamicTemperature)> = Vec::new();
    for ((step, slot, air), planned) in worked.all().zip(&inputs.steps) {
        let (Some(found), Some(climate)) = (air, &planned.air) else { continue };
        let StepAir { weather, worst: (time, margin), .. } = found;
        if known.contains(&(weather, planned.label_at)) {
            continue;
        }
        known.push((weather, planned.label_at));
        if !climate.is_even() {
            steps.push(Step::new(
                text!("{}: air when it starts", &step.label),
                "x = x₁ + (x₂ − x₁) · (t − t₁) / (t₂ − t₁)",
                text!("t = {}", written(slot.start_min, style)),
                in_words(&weather, style),
                &climate::BETWEEN,
            ));
        }
        steps.push(Step::new(
            text!("{}: pace, by which labels' times are multiplied", &step.label),
            "2^((T label − T) / 10 °C)",
            text!(
                "2^(({} − {}) / {})",
                style.temperature(planned.label_at),
                style.temperature(weather.temperature),
                style.temperature_difference(10.0)
            ),
            plain(step.pace.at(slot.start_min), 2),
            &mixing::POT_LIFE,
        ));
        let at_worst = climate.at(time);
        let dew = style.temperature(margin.air.dew_point);
        steps.push(Step::new(
            text!("{}: dew point at {} (T in °C)", &step.label, written(time, style)),
            "g = ln RH + 17.62 T / (243.12 + T); Td = 243.12 g / (17.62 − g)",
            text!(
                "{}, {}",
                style.temperature(at_worst.temperature),
                percent(at_worst.humidity.get::<percent_unit>())
            ),
            dew.clone(),
            &air::MAGNUS,
        ));
        steps.push(Step::new(
            text!("{}: surface above the dew point", &step.label),
            "m = Ts − Td",
            text!("{} − {}", style.temperature(at_worst.surface), &dew),
            style.temperature_difference(margin.margin.get::<kelvin>()),
            &air::MARGIN_RULE,
        ));
    }
    steps
}

fn in_words(weather: &Weather, style: Style) -> String {
    text!(
        "{}, {}, surface {}",
        style.temperature(weather.temperature),
        percent(weather.humidity.get::<percent_unit>()),
        style.temperature(weather.surface)
    )
}
