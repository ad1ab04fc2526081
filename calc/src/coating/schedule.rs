//! Passes and coats in order: when each may start, and what falls outside of its window.
//!
//! Times are minutes since midnight before the first day of work. The order is fixed; every
//! condition says "this step not before that one plus so much", so the earliest times that meet
//! all conditions are found by raising starts until none is broken, and no other times are
//! earlier at any step.

pub use self::check::Fault;
pub use self::pace::{Daily, Pace};
use crate::source::Source;
use crate::words::{Arg, Msg, wet as words};

mod check;
mod pace;

/// Recoat windows as labels give them. The least counts from the end of a step, when its last
/// part is fresh; the most counts for whichever part waits longest, the first or the last.
pub static WINDOW: Source = Source::practice_of(words::SOURCE_WINDOW);

/// How long ahead a plan may reach, in minutes: 60 days.
pub const HORIZON_MIN: f64 = 60.0 * 24.0 * 60.0;

const DAY_MIN: f64 = 24.0 * 60.0;

/// One pass or coat.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    /// What it is called.
    pub label: String,
    /// How long the work takes, in minutes.
    pub work_min: f64,
    /// Into how many equal batches the work is mixed; 1 for what comes ready mixed.
    pub batches: u32,
    /// How long a batch stays workable, by the label, in minutes.
    pub workable_min: Option<f64>,
    /// The least wait before the next step, by the label, in minutes.
    pub recoat_least_min: f64,
    /// The longest wait before the next step, by the label, in minutes; none where it may wait
    /// for ever.
    pub recoat_most_min: Option<f64>,
    /// The wait before it bears traffic, by the label, in minutes.
    pub traffic_min: Option<f64>,
    /// How much longer than on the label everything takes at the working temperature.
    pub pace: Pace,
    /// When it did start or is set to start, in minutes; none to have it worked out.
    pub starts_min: Option<f64>,
}

impl Default for Step {
    /// No work, no wait, by the label.
    fn default() -> Self {
        Self {
            label: String::new(),
            work_min: 0.0,
            batches: 1,
            workable_min: None,
            recoat_least_min: 0.0,
            recoat_most_min: None,
            traffic_min: None,
            pace: Pace::Even(1.0),
            starts_min: None,
        }
    }
}

impl Step {
    /// Whether anything is mixed for it.
    pub fn is_mixed(&self) -> bool {
        self.workable_min.is_some() || self.batches > 1
    }
}

/// The hours of a day in which there is work, in minutes since midnight.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hours {
    /// Not before this.
    pub from_min: f64,
    /// Done by this.
    pub to_min: f64,
}

/// When one step happens.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Slot {
    /// When it is planned to start, in minutes; the earliest that meets every condition.
    pub start_min: f64,
    /// When it is then done.
    pub end_min: f64,
    /// The earliest that the step before allows it to start.
    pub earliest_min: f64,
    /// The latest that the step before allows it to start; none where it may wait for ever.
    pub latest_min: Option<f64>,
    /// The first start that both the step before and the working hours allow.
    pub offer_from_min: f64,
    /// The last start that both allow; none where it may wait for ever.
    pub offer_until_min: Option<f64>,
    /// When its last batch is mixed.
    pub last_mix_min: f64,
    /// When its last batch is mixed if it starts at the latest that the step before and the
    /// working hours allow; none where it may wait for ever.
    pub mix_by_min: Option<f64>,
    /// When it bears traffic.
    pub traffic_from_min: Option<f64>,
}

/// What is wrong with a plan at one step.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Breach {
    /// The step, counted from 0.
    pub step: usize,
    /// What is wrong.
    pub kind: BreachKind,
}

/// What can be wrong at a step.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum BreachKind {
    /// It starts before the step before allows it.
    TooEarly {
        /// By so many minutes.
        by_min: f64,
    },
    /// It starts after the recoat window of the step before has closed: abrade as the label says.
    TooLate {
        /// By so many minutes.
        by_min: f64,
    },
    /// A batch takes longer to use than it stays workable.
    BatchTooSlow {
        /// The time that a batch takes, in minutes.
        takes_min: f64,
        /// The time that it stays workable, in minutes.
        workable_min: f64,
    },
    /// It starts or ends outside of the working hours.
    OutsideHours,
}

/// A whole plan.
#[derive(Clone, Debug, PartialEq)]
pub struct Schedule {
    /// One slot per step.
    pub slots: Vec<Slot>,
    /// What is wrong; empty for a plan that can be worked to.
    pub breaches: Vec<Breach>,
    /// When every step is done and bears traffic where it names such a time.
    pub ready_min: f64,
    /// When all that was named a time for bears traffic; none where no step names one.
    pub walk_on_min: Option<f64>,
}

/// Plans steps from a first start. Source: [`WINDOW`].
///
/// A step is put off where that lets the next one, held up until the next morning, still fall
/// within its recoat window. Where no start meets every condition, the earliest times by the
/// least waits are given, with what they break.
///
/// # Errors
/// First start from 0 to 14 days; work from 0 to 14 days and waits from 0 to 30 days in minutes;
/// pace from 0.001 to 1000; batches from 1 to 10 000; hours within a day; a step no longer than a
/// day's hours.
pub fn plan(steps: &[Step], first_start_min: f64, hours: Option<Hours>) -> Result<Schedule, Fault> {
    check::check(steps, first_start_min, hours)?;
    // Clocks show whole minutes: a start is never shown sooner than it may be.
    let first_start_min = up(first_start_min);
    let earliest = raise(steps, first_start_min, hours, true);
    let starts = match earliest {
        Some(starts) => starts,
        None => raise(steps, first_start_min, hours, false)
            .ok_or(Fault::TooFar { step: steps.len().saturating_sub(1) })?,
    };
    let slots = slots(steps, &starts, hours);
    let breaches = breaches(steps, &slots, hours);
    let ready_min = slots.iter().fold(0.0_f64, |ready, slot| {
        ready.max(slot.end_min).max(slot.traffic_from_min.unwrap_or(0.0))
    });
    let walk_on_min = slots
        .iter()
        .filter_map(|slot| slot.traffic_from_min)
        .fold(None, |last: Option<f64>, time| Some(last.map_or(time, |last| last.max(time))));
    Ok(Schedule { slots, breaches, ready_min, walk_on_min })
}

/// Day (0 is the first), hour and minute of a time, rounded to the minute.
pub fn clock(time_min: f64) -> (u32, u32, u32) {
    let whole = time_min.round().clamp(0.0, 1e9);
    let day = (whole / DAY_MIN).floor();
    let of_day = whole - day * DAY_MIN;
    let hour = (of_day / 60.0).floor();
    (day as u32, hour as u32, (of_day - hour * 60.0) as u32)
}

/// The least starts that meet every condition; none where some are pushed beyond the horizon.
fn raise(
    steps: &[Step],
    first_start_min: f64,
    hours: Option<Hours>,
    keep_most: bool,
) -> Option<Vec<f64>> {
    let lift = |step: &Step, start: f64| match step.starts_min {
        Some(fixed) => fixed,
        None => within_hours(start, step.work_min, hours),
    };
    let mut starts: Vec<f64> = steps.iter().map(|step| lift(step, first_start_min)).collect();
    // Each round that changes something lifts a start to a time given by another; days bound the
    // rounds.
    for _ in 0..4000 {
        let mut changed = false;
        for at in 1..steps.len() {
            let least = earliest_after(&steps[at - 1], starts[at - 1]);
            if starts[at] < least - 1e-6 {
                let lifted = lift(&steps[at], least);
                changed = changed || lifted > starts[at] + 1e-6;
                starts[at] = lifted;
            }
        }
        for at in (1..steps.len()).rev().filter(|_| keep_most) {
            if let Some(least) = earliest_before(&steps[at - 1], &steps[at], starts[at])
                && starts[at - 1] < least - 1e-6
            {
                let lifted = lift(&steps[at - 1], least);
                changed = changed || lifted > starts[at - 1] + 1e-6;
                starts[at - 1] = lifted;
            }
        }
        if starts.iter().any(|start| *start > HORIZON_MIN) {
            return None;
        }
        if !changed {
            return Some(starts);
        }
    }
    None
}

/// Up to a whole minute.
fn up(time_min: f64) -> f64 {
    (time_min - 1e-6).ceil()
}

/// The earliest start of the next step.
fn earliest_after(step: &Step, start: f64) -> f64 {
    up(step.pace.after_least(start + step.work_min, step.recoat_least_min))
}

/// The latest start of the next step: the first part waits from start to start, the last from end
/// to end.
fn latest_after(step: &Step, start: f64, next: &Step) -> Option<f64> {
    let most = step.recoat_most_min?;
    let first = step.pace.after_most(start, most);
    let last = step.pace.after_most(start + step.work_min, most) - next.work_min;
    Some((first.min(last) + 1e-6).floor())
}

/// The earliest start of a step that lets the next one start at `next_start`.
fn earliest_before(step: &Step, next: &Step, next_start: f64) -> Option<f64> {
    let most = step.recoat_most_min?;
    let first = step.pace.before_most(next_start, most);
    let last = step.pace.before_most(next_start + next.work_min, most) - step.work_min;
    Some(up(first.max(last)))
}

/// The first time from `start` on when work of this length fits into a day's hours.
fn within_hours(start: f64, work_min: f64, hours: Option<Hours>) -> f64 {
    let Some(Hours { from_min, to_min }) = hours else { return start };
    let day = (start / DAY_MIN).floor() * DAY_MIN;
    let of_day = start - day;
    if of_day < from_min {
        day + from_min
    } else if of_day + work_min <= to_min + 1e-6 {
        start
    } else {
        day + DAY_MIN + from_min
    }
}

fn slots(steps: &[Step], starts: &[f64], hours: Option<Hours>) -> Vec<Slot> {
    let mut slots = Vec::with_capacity(steps.len());
    let mut before: Option<(&Step, f64)> = None;
    for (step, start) in steps.iter().zip(starts) {
        let end_min = start + step.work_min;
        let earliest_min = before.map_or(*start, |(last, at)| earliest_after(last, at));
        let latest_min = before.and_then(|(last, at)| latest_after(last, at, step));
        let until_mix = step.work_min - step.work_min / f64::from(step.batches);
        let latest_start = latest_min.map(|latest| latest_within(latest, step.work_min, hours));
        let wait = |label_min| up(step.pace.after_least(end_min, label_min));
        slots.push(Slot {
            start_min: *start,
            end_min,
            earliest_min,
            latest_min,
            offer_from_min: within_hours(earliest_min, step.work_min, hours),
            offer_until_min: latest_start,
            last_mix_min: start + until_mix,
            mix_by_min: latest_start.map(|latest| latest.max(*start) + until_mix),
            traffic_from_min: step.traffic_min.map(wait),
        });
        before = Some((step, *start));
    }
    slots
}

/// The last time up to `latest` when work of this length fits into a day's hours.
fn latest_within(latest: f64, work_min: f64, hours: Option<Hours>) -> f64 {
    let Some(Hours { from_min, to_min }) = hours else { return latest };
    let day = (latest / DAY_MIN).floor() * DAY_MIN;
    let of_day = latest - day;
    if of_day < from_min {
        day - DAY_MIN + to_min - work_min
    } else {
        day + of_day.min(to_min - work_min)
    }
}

fn breaches(steps: &[Step], slots: &[Slot], hours: Option<Hours>) -> Vec<Breach> {
    let mut breaches = Vec::new();
    for (at, (step, slot)) in steps.iter().zip(slots).enumerate() {
        let mut add = |kind| breaches.push(Breach { step: at, kind });
        if slot.start_min < slot.earliest_min - 1e-6 {
            add(BreachKind::TooEarly { by_min: slot.earliest_min - slot.start_min });
        }
        if let Some(latest) = slot.latest_min
            && slot.start_min > latest + 1e-6
        {
            add(BreachKind::TooLate { by_min: slot.start_min - latest });
        }
        let takes_min = step.work_min / f64::from(step.batches);
        let pace = step.pace.least(slot.start_min, slot.end_min);
        if let Some(workable) = step.workable_min
            && takes_min > workable * pace + 1e-6
        {
            add(BreachKind::BatchTooSlow { takes_min, workable_min: workable * pace });
        }
        if (within_hours(slot.start_min, step.work_min, hours) - slot.start_min).abs() > 1e-6 {
            add(BreachKind::OutsideHours);
        }
    }
    breaches
}

impl From<BreachKind> for Msg {
    fn from(kind: BreachKind) -> Self {
        match kind {
            BreachKind::TooEarly { by_min } => {
                words::TooEarly { minutes: Arg::minutes_off(by_min) }.into()
            }
            BreachKind::TooLate { by_min } => {
                words::TooLate { minutes: Arg::minutes_off(by_min) }.into()
            }
            BreachKind::BatchTooSlow { takes_min, workable_min } => words::BatchTooSlow {
                takes: Arg::minutes_of_work(takes_min),
                workable: Arg::minutes_of_work(workable_min),
            }
            .into(),
            BreachKind::OutsideHours => words::OUTSIDE_HOURS.into(),
        }
    }
}

#[cfg(test)]
mod tests;
