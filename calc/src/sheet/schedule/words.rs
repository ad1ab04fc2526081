//! Answers, remarks and tables of the schedule.

use crate::text::text;
use uom::si::ratio::percent as percent_unit;
use uom::si::temperature_interval::kelvin;

use super::clock::{span, written};
use super::{Inputs, StepAir, Worked, in_the_night};
use crate::coating::air::{HUMIDITY_LIMIT_PERCENT, LEAST_MARGIN_K};
use crate::quantity::{Style, percent};
use crate::report::{Answer, Remark, Table, TableRow, Weight, texts};

pub fn answers(worked: &Worked, style: Style) -> Vec<Answer> {
    let slots = &worked.schedule.slots;
    let traffic = slots.iter().any(|slot| slot.traffic_from_min.is_some());
    let mut answers = vec![Answer::new(
        if traffic { "Ready to walk on" } else { "Done" },
        written(worked.schedule.ready_min, style),
    )];
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
    let breaches = worked.schedule.breaches.len();
    let wet = worked.airs.iter().flatten().filter(|air| !air.worst.1.may_coat).count();
    let text = match breaches + wet {
        0 => "Yes".to_owned(),
        1 => "No: 1 problem".to_owned(),
        several => text!("No: {} problems", &several),
    };
    answers.push(Answer::new("Does the plan work?", text));
    answers
}

pub fn remarks(inputs: &Inputs, worked: &Worked, style: Style) -> Vec<Remark> {
    let mut remarks = Vec::new();
    for breach in &worked.schedule.breaches {
        let Some(step) = worked.steps.get(breach.step) else { continue };
        remarks.push(Remark::warning(text!("{}: {}.", &step.label, &breach.kind)));
    }
    for (step, slot, air) in worked.all() {
        if in_the_night(slot) {
            remarks.push(Remark::warning(text!(
                "{}: falls in the night, {} to {}. Give working hours, and it moves to the morning.",
                &step.label,
                written(slot.start_min, style),
                written(slot.end_min, style)
            )));
        }
        if let Some(air) = air {
            air_remarks(&step.label, &air, style, &mut remarks);
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

fn air_remarks(label: &str, air: &StepAir, style: Style, remarks: &mut Vec<Remark>) {
    let least = style.temperature_difference(LEAST_MARGIN_K);
    let margin = |(time, margin): &(f64, crate::coating::air::Margin)| {
        let kelvins = margin.margin.get::<kelvin>();
        let side = if kelvins < 0.0 { "below" } else { "above" };
        text!(
            "the surface is {} {} the dew point at {}",
            style.temperature_difference(kelvins.abs()),
            side,
            written(*time, style)
        )
    };
    if !air.worst.1.may_coat {
        remarks.push(Remark::warning(text!(
            "{}: {}, and {} above is the least; warm it, or wait for drier air.",
            label,
            margin(&air.worst),
            &least
        )));
    } else if !air.drying.1.may_coat {
        remarks.push(Remark::note(text!(
            "{}: while it dries {}, less than {}. Keep the body warm and aired until then.",
            label,
            margin(&air.drying),
            &least
        )));
    }
    if air.worst.1.too_humid {
        remarks.push(Remark::warning(text!(
            "{}: the air is at {} humidity or more; wait for drier air.",
            label,
            percent(HUMIDITY_LIMIT_PERCENT)
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
                written(slot.earliest_min, style),
                or_dash(slot.latest_min),
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
