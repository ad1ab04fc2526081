//! Answers, remarks, tables and working of the schedule.

use crate::text::text;
use uom::si::temperature_interval::kelvin;

use super::clock::{span, written};
use super::{Inputs, Weather, Worked};
use crate::coating::air::{self, HUMIDITY_LIMIT_PERCENT, LEAST_MARGIN_K};
use crate::coating::mixing;
use crate::coating::schedule::WINDOW;
use crate::quantity::{Style, percent, plain};
use crate::report::{Answer, Remark, Step, Table, TableRow, Weight, texts};

pub fn answers(worked: &Worked, style: Style) -> Vec<Answer> {
    let slots = &worked.schedule.slots;
    let traffic = slots.iter().any(|slot| slot.traffic_from_min.is_some());
    let mut answers = vec![Answer::new(
        if traffic { "Ready to walk on" } else { "Done" },
        written(worked.schedule.ready_min, style),
    )];
    // The last batch that is mixed at all, not that of a step of work alone.
    let mixed = worked.steps.iter().zip(slots).rev();
    let mut mixed = mixed.filter(|(step, _)| step.workable_min.is_some());
    if let Some((step, slot)) = mixed.next() {
        answers.push(
            Answer::new("Mix the last batch at", written(slot.last_mix_min, style))
                .note(text!("of {}, if it starts as planned", &step.label)),
        );
    }
    let breaches = worked.schedule.breaches.len();
    let cold = worked.margins.iter().flatten().filter(|margin| !margin.may_coat).count();
    let text = match breaches + cold {
        0 => "Yes".to_owned(),
        1 => "No: 1 problem".to_owned(),
        several => text!("No: {} problems", &several),
    };
    answers.push(Answer::new("Does the plan work?", text));
    answers
}

pub fn remarks(inputs: &Inputs, worked: &Worked, style: Style) -> Vec<Remark> {
    let mut remarks = Vec::new();
    if let Some(first) = worked.schedule.slots.first()
        && first.start_min > inputs.start_min + 0.5
    {
        remarks.push(Remark::note(text!(
            "The first step is put off to {}: from {} on, it or a later step would fall outside of \
             the working hours or its window.",
            written(first.start_min, style),
            written(inputs.start_min, style)
        )));
    }
    for breach in &worked.schedule.breaches {
        let Some(step) = worked.steps.get(breach.step) else { continue };
        remarks.push(Remark::warning(text!("{}: {}.", &step.label, &breach.kind)));
    }
    for (step, margin) in worked.steps.iter().zip(&worked.margins) {
        let Some(margin) = margin else { continue };
        if !margin.may_coat {
            remarks.push(Remark::warning(text!(
                "{}: the surface is {} above the dew point, and {} is the least; warm it, or wait \
                 for drier air.",
                &step.label,
                style.temperature_difference(margin.margin.get::<kelvin>()),
                style.temperature_difference(LEAST_MARGIN_K)
            )));
        }
        if margin.too_humid {
            remarks.push(Remark::warning(text!(
                "{}: the air is at {} humidity or more; wait for drier air.",
                &step.label,
                percent(HUMIDITY_LIMIT_PERCENT)
            )));
        }
    }
    if worked.steps.iter().any(|step| step.pace > 1.05) {
        remarks.push(Remark::note(
            "Colder than the labels' temperature: waits are taken longer by a rule of thumb. Touch \
             and sand a small spot before you go on.",
        ));
    }
    if worked.steps.iter().any(|step| step.pace < 0.95) {
        remarks.push(Remark::note(
            "Warmer than the labels' temperature: batches and windows are taken shorter by a rule \
             of thumb; least waits stay as on the label.",
        ));
    }
    if remarks.iter().all(|remark| remark.weight == Weight::Note) {
        remarks.push(Remark::good("Every step falls within its window."));
    }
    remarks
}

pub fn tables(worked: &Worked, style: Style) -> Vec<Table> {
    let row = |(index, step): (usize, &crate::coating::schedule::Step)| {
        let slot = worked.schedule.slots.get(index)?;
        let or_dash =
            |time: Option<f64>| time.map_or_else(|| "–".to_owned(), |t| written(t, style));
        let margin = worked.margins.get(index).copied().flatten();
        let breaks = worked.schedule.breaches.iter().any(|breach| breach.step == index);
        Some(TableRow {
            cells: vec![
                if breaks { text!("{} (see above)", &step.label) } else { step.label.clone() },
                written(slot.start_min, style),
                written(slot.end_min, style),
                or_dash(step.workable_min.map(|_| slot.last_mix_min)),
                written(slot.earliest_min, style),
                or_dash(slot.latest_min),
                or_dash(slot.traffic_from_min),
                margin.map_or_else(
                    || "–".to_owned(),
                    |margin| style.temperature_difference(margin.margin.get::<kelvin>()),
                ),
            ],
            chosen: false,
        })
    };
    let heads = [
        "Step",
        "Start",
        "Done",
        "Last mix",
        "May start from",
        "At the latest",
        "Walk on from",
        "Above dew point",
    ];
    vec![Table {
        title: "Step by step".into(),
        heads: texts(&heads),
        rows: worked.steps.iter().enumerate().filter_map(row).collect(),
    }]
}

pub fn working(inputs: &Inputs, worked: &Worked, style: Style) -> Vec<Step> {
    let mut steps = Vec::new();
    let pairs = worked.steps.iter().zip(&worked.schedule.slots);
    for (index, (step, slot)) in pairs.clone().enumerate() {
        let before = index.checked_sub(1).and_then(|at| pairs.clone().nth(at));
        let Some((last, at)) = before else {
            steps.push(Step::new(
                text!("{}: start", &step.label),
                "as entered",
                written(slot.start_min, style),
                written(slot.start_min, style),
                &WINDOW,
            ));
            continue;
        };
        steps.push(Step::new(
            text!("{}: may start from", &step.label),
            "end of the step before + least wait · max(pace, 1)",
            text!(
                "{} + {} · {}",
                written(at.end_min, style),
                span(last.recoat_least_min),
                plain(last.pace.max(1.0), 2)
            ),
            written(slot.earliest_min, style),
            &WINDOW,
        ));
        if let (Some(latest), Some(most)) = (slot.latest_min, last.recoat_most_min) {
            steps.push(Step::new(
                text!("{}: at the latest", &step.label),
                "start of the step before + longest wait · min(pace, 1) − work that takes longer",
                text!(
                    "{} + {} · {} − {}",
                    written(at.start_min, style),
                    span(most),
                    plain(last.pace.min(1.0), 2),
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
    let mut last: Option<Weather> = None;
    let weathers = inputs.steps.iter().map(|(_, weather)| *weather);
    for ((weather, step), margin) in weathers.zip(&worked.steps).zip(&worked.margins) {
        let (Some(weather), Some(margin)) = (weather, margin) else { continue };
        if last == Some(weather) {
            continue;
        }
        last = Some(weather);
        steps.push(Step::new(
            text!("{}: pace, by which labels' times are multiplied", &step.label),
            "2^((T label − T) / 10 °C)",
            text!(
                "2^(({} − {}) / {})",
                style.temperature(inputs.label_temperature),
                style.temperature(weather.temperature),
                style.temperature_difference(10.0)
            ),
            plain(step.pace, 2),
            &mixing::POT_LIFE,
        ));
        let dew = style.temperature(margin.air.dew_point);
        steps.push(Step::new(
            text!("{}: dew point (T in °C)", &step.label),
            "g = ln RH + 17.62 T / (243.12 + T); Td = 243.12 g / (17.62 − g)",
            text!(
                "{}, {}",
                style.temperature(weather.temperature),
                percent(weather.humidity.get::<uom::si::ratio::percent>())
            ),
            dew.clone(),
            &air::MAGNUS,
        ));
        steps.push(Step::new(
            text!("{}: surface above the dew point", &step.label),
            "m = Ts − Td",
            text!("{} − {}", style.temperature(weather.surface), &dew),
            style.temperature_difference(margin.margin.get::<kelvin>()),
            &air::MARGIN_RULE,
        ));
    }
    steps
}
