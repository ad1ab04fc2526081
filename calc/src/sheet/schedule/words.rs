//! Answers, remarks and tables of the schedule.

use crate::text::text;
use uom::si::ratio::percent as percent_unit;
use uom::si::temperature_interval::kelvin;

use super::super::coating::reasons;
use super::clock::{span, written};
use super::{Inputs, StepAir, Worked, in_the_night};
use crate::coating::verdict::{Limits, Verdict, When};
use crate::quantity::{Style, percent};
use crate::report::{Answer, Remark, Table, TableRow, Weight, texts};

/// When all of it may be walked on; none where the last of what is put on names no such time.
pub fn walk_on(inputs: &Inputs, worked: &Worked) -> Option<f64> {
    let wet = worked.steps.iter().zip(&inputs.steps).rev().find(|(_, planned)| !planned.dry)?;
    wet.0.traffic_min?;
    worked.schedule.walk_on_min
}

pub fn answers(inputs: &Inputs, worked: &Worked, style: Style) -> Vec<Answer> {
    let slots = &worked.schedule.slots;
    let done = slots.iter().fold(0.0_f64, |done, slot| done.max(slot.end_min));
    let mut answers = vec![match walk_on(inputs, worked) {
        Some(walk_on) => Answer::new("Ready to walk on", written(walk_on, style))
            .note(text!("the last step is done {}", written(done, style))),
        None => Answer::new("Last step done", written(done, style))
            .note("when it may be walked on is not shown: enter the wait for what goes on last"),
    }];
    // The last batch that is mixed at all, not that of a step of work alone.
    if let Some((step, slot, _)) = worked.all().rev().find(|(step, ..)| step.is_mixed()) {
        let by = match slot.mix_by_min {
            Some(by) if by > slot.last_mix_min + 0.5 => {
                text!(", at the latest {}", written(by, style))
            }
            _ => String::new(),
        };
        answers.push(
            Answer::new("Mix the last batch at", written(slot.last_mix_min, style)).note(text!(
                "of {}, if it starts as planned{}",
                &step.label,
                &by
            )),
        );
    }
    answers.push(works(inputs, worked));
    answers
}

/// Yes only where times, labels, air and nights are known and fit.
fn works(inputs: &Inputs, worked: &Worked) -> Answer {
    let breaches = worked.schedule.breaches.len();
    let may = |verdict: &Verdict| verdict.may_coat();
    let barred = worked.verdicts.iter().flatten().filter(|v| may(v) == Some(false)).count();
    let label = "Does the plan work?";
    match breaches + barred {
        0 => {}
        1 => return Answer::new(label, "No: 1 problem"),
        several => return Answer::new(label, text!("No: {} problems", &several)),
    }
    let wet = || inputs.steps.iter().zip(&worked.verdicts).filter(|(planned, _)| !planned.dry);
    let unknown = wet().find_map(|(planned, verdict)| match verdict {
        None => Some((planned, "air and surface over the day".to_owned())),
        Some(verdict) => may(verdict).is_none().then(|| (planned, reasons::missing(verdict))),
    });
    match unknown {
        None => Answer::new(label, "Yes, by times, labels and the air entered"),
        Some((planned, missing)) => Answer::new(label, "By its times; for the air it is not shown")
            .note(text!("{}: enter {}", &planned.step.label, &missing)),
    }
}

pub fn remarks(inputs: &Inputs, worked: &Worked, style: Style) -> Vec<Remark> {
    let mut remarks = Vec::new();
    for breach in &worked.schedule.breaches {
        let Some(step) = worked.steps.get(breach.step) else { continue };
        remarks.push(Remark::warning(text!("{}: {}.", &step.label, &breach.kind)));
    }
    for (((step, slot, air), planned), verdict) in
        worked.all().zip(&inputs.steps).zip(&worked.verdicts)
    {
        if in_the_night(slot) {
            remarks.push(Remark::warning(text!(
                "{}: falls in the night, {} to {}. Give working hours, and it moves to the morning.",
                &step.label,
                written(slot.start_min, style),
                written(slot.end_min, style)
            )));
        }
        if let (Some(air), Some(verdict)) = (air, verdict) {
            air_remarks(&step.label, &planned.limits, &air, verdict, style, &mut remarks);
        }
    }
    put_off(inputs, worked, style, &mut remarks);
    if worked.steps.iter().any(|step| step.pace.at(0.0) != 1.0) {
        remarks.push(Remark::note(
            "Colder than the labels' temperature, waits are taken longer; warmer, batches and \
             windows are taken shorter, and least waits stay as on the label. A rule of thumb: \
             touch and sand a small spot before you go on.",
        ));
    }
    if remarks.iter().all(|remark| remark.weight == Weight::Note) {
        remarks.insert(0, Remark::good("Every step falls within its window."));
    }
    remarks
}

/// Steps that wait for the working hours, or for the sake of a later one.
fn put_off(inputs: &Inputs, worked: &Worked, style: Style, remarks: &mut Vec<Remark>) {
    for (index, (step, slot, _)) in worked.all().enumerate() {
        let from = if index == 0 { inputs.start_min } else { slot.earliest_min };
        if slot.start_min > from + 0.5 && step.starts_min.is_none() {
            remarks.push(Remark::note(text!(
                "{}: put off from {} to {}; sooner, it or a later step would fall outside of the \
                 working hours or its window.",
                &step.label,
                written(from, style),
                written(slot.start_min, style)
            )));
        }
    }
}

fn air_remarks(
    label: &str,
    limits: &Limits,
    air: &StepAir,
    verdict: &Verdict,
    style: Style,
    remarks: &mut Vec<Remark>,
) {
    let margin = |(time, margin): &(f64, crate::coating::air::Margin)| {
        let kelvins = margin.margin.get::<kelvin>();
        let side = if kelvins < 0.0 { "below" } else { "above" };
        text!(
            "; at {} the surface is {} {} the dew point",
            written(*time, style),
            style.temperature_difference(kelvins.abs()),
            side
        )
    };
    for (when, then, worst) in [
        (When::Now, "while it goes on", &air.worst),
        (When::Later, "until it is dry or in the night", &air.drying),
    ] {
        let why = reasons::bars(verdict, when, limits, style);
        if !why.is_empty() {
            let dew = if worst.1.far_enough { String::new() } else { margin(worst) };
            remarks.push(Remark::warning(text!(
                "{}: {} {}{}. Keep the body warm and aired, or put it off.",
                label,
                then,
                &why,
                &dew
            )));
        }
    }
    if verdict.may_coat().is_none() {
        remarks.push(Remark::note(text!(
            "{}: whether it may go on is not shown: enter {}.",
            label,
            reasons::missing(verdict)
        )));
    }
}

/// Windows, step by step.
pub fn windows(worked: &Worked, style: Style) -> Table {
    let or_dash = |time: Option<f64>| time.map_or_else(|| "–".to_owned(), |t| written(t, style));
    let rows = worked.all().enumerate().map(|(index, (step, slot, _))| {
        let breaks = worked.schedule.breaches.iter().any(|breach| breach.step == index);
        let pace = step.pace.least(slot.start_min, slot.end_min);
        TableRow {
            cells: vec![
                if breaks { text!("{} (see above)", &step.label) } else { step.label.clone() },
                written(slot.offer_from_min, style),
                or_dash(slot.offer_until_min),
                span(step.work_min),
                step.workable_min.map_or_else(|| "–".to_owned(), |min| span((min * pace).floor())),
                or_dash(Some(slot.last_mix_min).filter(|_| step.is_mixed())),
                or_dash(slot.mix_by_min.filter(|_| step.is_mixed())),
                or_dash(slot.traffic_from_min),
            ],
            chosen: false,
        }
    });
    Table {
        title: "Windows of each step".into(),
        heads: texts(&[
            "Step",
            "May start from",
            "At the latest",
            "Work",
            "A batch lasts",
            "Last mix",
            "Mix it by",
            "Walk on from",
        ]),
        rows: rows.collect(),
    }
}

/// Air, step by step; none where none is known.
pub fn air(worked: &Worked, style: Style) -> Option<Table> {
    let rows: Vec<TableRow> = worked
        .all()
        .filter_map(|(step, slot, air)| {
            let StepAir { weather, worst: (_, worst), drying: (_, drying) } = air?;
            let above = |margin: crate::coating::air::Margin| {
                style.temperature_difference(margin.margin.get::<kelvin>())
            };
            Some(TableRow {
                cells: vec![
                    step.label.clone(),
                    written(slot.start_min, style),
                    style.temperature(weather.temperature),
                    percent(weather.humidity.get::<percent_unit>()),
                    style.temperature(weather.surface),
                    above(worst),
                    above(drying),
                ],
                chosen: false,
            })
        })
        .collect();
    (!rows.is_empty()).then(|| Table {
        title: "Air, and how far the surface is above the dew point at least".into(),
        heads: texts(&["Step", "Start", "Air", "Humidity", "Surface", "At work", "Drying"]),
        rows,
    })
}
