//! What to do at what time: a plain list to follow with a clock.

use super::clock::moment;
use super::dial::Dial;
use super::found::Found;
use super::inputs::{Job, Planned};
use super::rows::With;
use crate::coating::schedule::{Slot, Step};
use crate::quantity::{Style, span};
use crate::report::{Table, TableRow};
use crate::sorting::sort_by;
use crate::words::{Arg, Msg, schedule as words};

/// More batches of one step than this are not listed one by one.
const MOST_LISTED: u32 = 12;

/// What is done at a time, as it is shown.
type Event = (f64, Msg);

/// Starts, batches, ends, and when it bears traffic, in the order of the clock.
pub(super) fn table(job: &Job, found: &Found, style: Style) -> Table {
    let dial = &Dial::of(job, found);
    let mut events: Vec<Event> = Vec::new();
    let mut before: Option<&Planned> = None;
    for (index, ((step, slot, _), planned)) in found.all().zip(&job.steps).enumerate() {
        let next = found.schedule.slots.get(index + 1);
        // What comes first stands first: the sort keeps the order of equal times.
        let after_filler = before.is_some_and(|before| before.with == With::Filler);
        if after_filler && !matches!(planned.with, With::Filler | With::Wash) {
            let wash = words::BeforeWash { step: planned.name.clone() };
            events.push((dial.from(slot.start_min), wash.into()));
        }
        events.extend(before_it(planned).map(|first| (dial.from(slot.start_min), first)));
        of_step(planned, step, (slot, next), dial, &mut events);
        if let With::Wiped(after) = planned.with {
            events.push(wiped(planned, slot, after, dial));
        }
        before = Some(planned);
    }
    sort_by(&mut events, |(one, _), (other, _)| one.total_cmp(other));
    let rows = events.into_iter().map(|(time, what)| TableRow {
        cells: vec![style.write(&moment(time)), style.say(what)],
        chosen: false,
    });
    Table {
        title: style.say(words::CLOCK),
        heads: [words::CLOCK_WHEN, words::CLOCK_WHAT].map(|head| style.say(head)).into(),
        rows: rows.collect(),
    }
}

/// What must be done before it; nothing where nothing is known of it.
fn before_it(planned: &Planned) -> Option<Msg> {
    let step = planned.name.clone();
    Some(match (planned.with, planned.first) {
        (With::Filler, true) => words::BeforeFiller { step }.into(),
        (With::Filler, false) | (With::Nothing | With::Wash, _) => return None,
        (With::Film | With::Wiped(_), true) => words::BeforeFirstCoat { step }.into(),
        (With::Film | With::Wiped(_), false) => words::BeforeCoat { step }.into(),
    })
}

/// When what has not gone into the wood is wiped off: so long after the times shown, rounded down, as it sets.
fn wiped(planned: &Planned, slot: &Slot, after_min: Option<f64>, dial: &Dial) -> Event {
    let step = planned.name.clone();
    match after_min {
        Some(after_min) => {
            let (after, last) =
                (span(after_min), moment(dial.by(dial.from(slot.end_min) + after_min)));
            let first = dial.by(dial.from(slot.start_min) + after_min);
            (first, words::WipeFrom { step, after, last }.into())
        }
        None => (dial.from(slot.start_min), words::WipeByLabel { step }.into()),
    }
}

/// Which of its batches is mixed.
fn mix(number: u32, count: u32) -> Arg {
    let (of, number) = (Arg::count(count), (number, Arg::count(number)));
    match number {
        _ if count == 1 => words::MIX_ONLY.into(),
        (last, number) if last == count => {
            Msg::from(words::MixLastBatch { number, count: of }).into()
        }
        (_, number) => Msg::from(words::MixBatch { number, count: of }).into(),
    }
}

fn of_step(
    planned: &Planned,
    step: &Step,
    (slot, next): (&Slot, Option<&Slot>),
    dial: &Dial,
    events: &mut Vec<Event>,
) {
    let name = || planned.name.clone();
    let mut add = |time: f64, what: Msg| events.push((dial.from(time), what));
    let latest = slot.offer_until_min.map(|time| moment(dial.by(time)));
    let first = step.is_mixed().then(|| mix(1, step.batches));
    add(
        slot.start_min,
        match (first, latest) {
            (None, None) => words::Begin { step: name() }.into(),
            (None, Some(latest)) => words::BeginBy { step: name(), latest }.into(),
            (Some(mix), None) => words::BeginMix { step: name(), mix }.into(),
            (Some(mix), Some(latest)) => words::BeginMixBy { step: name(), mix, latest }.into(),
        },
    );
    let each = step.work_min / f64::from(step.batches);
    for number in 2..=step.batches {
        if step.batches <= MOST_LISTED || number == step.batches {
            let time = slot.start_min + each * f64::from(number - 1);
            add(time, words::Mix { step: name(), mix: mix(number, step.batches) }.into());
        }
    }
    let waits = next.filter(|next| next.earliest_min > slot.end_min + 0.5);
    if next.is_none_or(|next| next.start_min > slot.end_min + 0.5) {
        let done: Msg = match waits {
            Some(next) => {
                words::FinishedWait { step: name(), time: moment(dial.from(next.offer_from_min)) }
                    .into()
            }
            None => words::Finished { step: name() }.into(),
        };
        add(slot.end_min, done);
    }
    if let Some(traffic) = slot.traffic_from_min {
        add(traffic, words::WalkOn { step: name() }.into());
    }
}
