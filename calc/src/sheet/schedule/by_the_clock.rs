//! What to do at what time: a plain list to follow with a clock.

use super::clock::{span, written};
use super::rows::With;
use super::{Inputs, Planned, Worked};
use crate::coating::schedule::{Slot, Step};
use crate::quantity::Style;
use crate::report::{Table, TableRow, texts};
use crate::sorting::sort_by;
use crate::text::text;

/// More batches of one step than this are not listed one by one.
const MOST_LISTED: u32 = 12;

/// Starts, batches, ends, and when it bears traffic, in the order of the clock.
pub fn table(inputs: &Inputs, worked: &Worked, style: Style) -> Table {
    let mut events: Vec<(f64, String)> = Vec::new();
    let mut before: Option<&Planned> = None;
    for (index, ((step, slot, _), planned)) in worked.all().zip(&inputs.steps).enumerate() {
        let next = worked.schedule.slots.get(index + 1);
        // What comes first stands first: the sort keeps the order of equal times.
        let after_filler = before.is_some_and(|before| before.with == With::Filler);
        if after_filler && !matches!(planned.with, With::Filler | With::Wash) {
            events.push((
                slot.start_min,
                text!(
                    "before {}, and in good time: wash the filler with water and a pad, let it dry",
                    &step.label
                ),
            ));
        }
        if let Some(first) = before_it(planned) {
            events.push((slot.start_min, text!("before {}: {}", &step.label, first)));
        }
        of_step(step, slot, next, style, &mut events);
        if let With::Wiped(after) = planned.with {
            wiped(step, slot, after, style, &mut events);
        }
        before = Some(planned);
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

/// What must be done before it; nothing where nothing is known of it.
fn before_it(planned: &Planned) -> Option<&'static str> {
    match (planned.with, planned.first) {
        (With::Filler, true) => Some(
            "check with the moisture meter that the wood is dry; close gaps and holes from below with \
             tape or plugs; mask the edges; wet out with the mix as it is, then thicken",
        ),
        (With::Filler, false) | (With::Nothing | With::Wash, _) => None,
        (With::Film | With::Wiped(_), true) => {
            Some("check the wood with the moisture meter; try a test patch; take the dust off")
        }
        (With::Film | With::Wiped(_), false) => Some("take the dust off"),
    }
}

/// When what has not gone into the wood is wiped off.
fn wiped(
    step: &Step,
    slot: &Slot,
    after: Option<f64>,
    style: Style,
    events: &mut Vec<(f64, String)>,
) {
    const RAGS: &str = "spread the rags flat outdoors, each by itself";
    match after {
        Some(after) => events.push((
            slot.start_min + after,
            text!(
                "{}: wipe it off from now on, each part {} after it went on, the last at {}; {}",
                &step.label,
                span(after),
                written(slot.end_min + after, style),
                RAGS
            ),
        )),
        None => events.push((
            slot.start_min,
            text!(
                "{}: wipe each part off after as many minutes as the label says; {}",
                &step.label,
                RAGS
            ),
        )),
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
    let latest = match slot.offer_until_min {
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
            text!("; the next not before {}", written(next.offer_from_min, style))
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
