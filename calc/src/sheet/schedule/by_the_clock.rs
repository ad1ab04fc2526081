//! What to do at what time: a plain list to follow with a clock.

use super::Worked;
use super::clock::written;
use crate::coating::schedule::{Slot, Step};
use crate::quantity::Style;
use crate::report::{Table, TableRow, texts};
use crate::sorting::sort_by;
use crate::text::text;

/// More batches of one step than this are not listed one by one.
const MOST_LISTED: u32 = 12;

/// Starts, batches, ends, and when it bears traffic, in the order of the clock.
pub fn table(worked: &Worked, style: Style) -> Table {
    let mut events: Vec<(f64, String)> = Vec::new();
    for (index, (step, slot, _)) in worked.all().enumerate() {
        let next = worked.schedule.slots.get(index + 1);
        of_step(step, slot, next, style, &mut events);
    }
    sort_by(&mut events, |(one, _), (other, _)| one.total_cmp(other));
    let rows = events
        .into_iter()
        .map(|(time, what)| TableRow { cells: vec![written(time, style), what], chosen: false });
    Table {
        title: "By the clock".into(),
        heads: texts(&["When", "What to do"]),
        rows: rows.collect(),
    }
}

fn of_step(
    step: &Step,
    slot: &Slot,
    next: Option<&Slot>,
    style: Style,
    events: &mut Vec<(f64, String)>,
) {
    let mut add = |time: f64, what: String| events.push((time, what));
    let mix = |number: u32| match (number, step.batches) {
        (_, 1) => "mix the only batch".to_owned(),
        (number, all) if number == all => text!("mix the last batch, {} of {}", &number, &all),
        (number, all) => text!("mix batch {} of {}", &number, &all),
    };
    let latest = match slot.latest_min {
        Some(latest) => text!(" (at the latest {})", written(latest, style)),
        None => String::new(),
    };
    let start = if step.is_mixed() { text!(", {}", mix(1)) } else { String::new() };
    add(slot.start_min, text!("{}: start{}{}", &step.label, &start, &latest));
    let each = step.work_min / f64::from(step.batches);
    for number in 2..=step.batches {
        if step.batches <= MOST_LISTED || number == step.batches {
            let time = slot.start_min + each * f64::from(number - 1);
            add(time, text!("{}: {}", &step.label, mix(number)));
        }
    }
    let wait = match next {
        Some(next) if next.earliest_min > slot.end_min + 0.5 => {
            text!("; the next not before {}", written(next.earliest_min, style))
        }
        _ => String::new(),
    };
    if next.is_none_or(|next| next.start_min > slot.end_min + 0.5) {
        add(slot.end_min, text!("{}: done{}", &step.label, &wait));
    }
    if let Some(traffic) = slot.traffic_from_min {
        add(traffic, text!("{}: walk on it", &step.label));
    }
}
