//! A schedule worked out: the steps with their slots and their air, and what is wrong with them.

use std::rc::Rc;

use calc_derive::Outcome;
use uom::si::f64::ThermodynamicTemperature;
use uom::si::ratio::percent;
use uom::si::temperature_interval::kelvin;

use super::inputs::{Inputs, Job, Planned, STEPS};
use crate::coating::air::Margin;
use crate::coating::climate::{Climate, Weather};
use crate::coating::range::{OutOfRange, ceiling};
use crate::coating::schedule::{self as plan, Breach, BreachKind, Pace, Schedule, Slot, Step};
use crate::coating::verdict::{Missing, Verdict, When};
use crate::text::text;
use crate::words::{Msg, range as names};

/// All that is worked out.
#[derive(Outcome)]
pub(super) struct Found {
    #[outcome(name = "steps")]
    handed: Vec<Handed>,
    breaches: Vec<Broken>,
    ready_min: f64,
    /// When all of it may be walked on; none where the last of what is put on names no such time.
    pub(super) walk_on_min: Option<f64>,

    #[outcome(skip)]
    pub(super) steps: Vec<Step>,
    #[outcome(skip)]
    pub(super) schedule: Schedule,
    /// Of each step, where its air is known.
    #[outcome(skip)]
    pub(super) airs: Vec<Option<StepAir>>,
    /// Of each of these, whether its coat may go on.
    #[outcome(skip)]
    pub(super) verdicts: Vec<Option<Verdict>>,
}

/// A step as others take it.
#[derive(Outcome)]
struct Handed {
    label: String,
    row: usize,
    start_min: f64,
    end_min: f64,
    earliest_min: f64,
    latest_min: Option<f64>,
    offer_from_min: f64,
    offer_until_min: Option<f64>,
    last_mix_min: f64,
    mix_by_min: Option<f64>,
    batches: u32,
    workable_min: Option<f64>,
    traffic_from_min: Option<f64>,
    in_the_night: bool,
    pace: f64,
    temperature: Option<ThermodynamicTemperature>,
    humidity_percent: Option<f64>,
    surface: Option<ThermodynamicTemperature>,
    dew_point: Option<ThermodynamicTemperature>,
    dew_margin_c: Option<f64>,
    may_coat: Option<bool>,
    drying_margin_c: Option<f64>,
}

/// What is wrong with the plan at one step.
#[derive(Outcome)]
struct Broken {
    step: usize,
    kind: &'static str,
    by_min: Option<f64>,
}

/// The air of one step.
#[derive(Clone, Copy)]
pub(super) struct StepAir {
    /// When it starts.
    pub(super) weather: Weather,
    /// When the surface is least above the dew point while it is worked, and by how much.
    pub(super) worst: (f64, Margin),
    /// The same while it dries, until the next may follow.
    pub(super) drying: (f64, Margin),
}

/// When the night is over for what was put on the day before; common practice. [min]
const MORNING_MIN: f64 = 480.0;

/// Nobody means to coat between these hours who has not said so; common practice.
const NIGHT_H: (f64, f64) = (22.0, 6.0);

impl Found {
    /// Steps with their slots and their air.
    pub(super) fn all(
        &self,
    ) -> impl DoubleEndedIterator<Item = (&Step, &Slot, Option<StepAir>)> + ExactSizeIterator {
        let pairs = self.steps.iter().zip(&self.schedule.slots);
        pairs.zip(&self.airs).map(|((step, slot), air)| (step, slot, *air))
    }
}

/// Whether work falls between ten at night and six in the morning.
pub(super) fn in_the_night(slot: &Slot) -> bool {
    let hour = |time: f64| time / 60.0 - (time / 1440.0).floor() * 24.0;
    let (start, work) = (hour(slot.start_min), (slot.end_min - slot.start_min) / 60.0);
    start < NIGHT_H.1 || start >= NIGHT_H.0 || start + work > NIGHT_H.0
}

/// What is wrong, and with which input.
type Wrong = (String, Msg);

/// The steps as they are planned: with their pace, and mixed in as many batches as that takes.
fn paced(job: &Job) -> Result<Vec<Step>, Wrong> {
    let mut steps = Vec::with_capacity(job.steps.len());
    // A day's pace is the same for all steps of one label and one air.
    let mut known: Option<(&Rc<Climate>, ThermodynamicTemperature, Pace)> = None;
    for planned in &job.steps {
        let mut step = planned.step.clone();
        if let Some(air) = &planned.air {
            let again = known
                .take()
                .filter(|(of, label_at, _)| Rc::ptr_eq(of, air) && *label_at == planned.label_at);
            let pace = match again {
                Some((_, _, pace)) => pace,
                None => air.pace(planned.label_at).map_err(of_air(planned))?,
            };
            step.pace = pace.clone();
            known = Some((air, planned.label_at, pace));
        }
        if let (true, Some(workable)) = (planned.fewest_batches, step.workable_min) {
            let least = workable * step.pace.least(0.0, 1440.0);
            step.batches = ceiling(step.work_min / least).clamp(1.0, 10_000.0) as u32;
        }
        steps.push(step);
    }
    Ok(steps)
}

/// Works it out.
pub(super) fn solve(job: &Job) -> Result<Found, Wrong> {
    let steps = paced(job)?;
    let schedule = plan::plan(&steps, job.start_min, job.hours)
        .map_err(|fault| (field_of(&fault, job), fault.into()))?;
    let mut airs = Vec::with_capacity(steps.len());
    let mut verdicts = Vec::with_capacity(steps.len());
    for ((planned, step), slot) in job.steps.iter().zip(&steps).zip(&schedule.slots) {
        let Some(air) = &planned.air else {
            airs.push(None);
            verdicts.push(None);
            continue;
        };
        let dry_min = step.pace.after_least(slot.end_min, step.recoat_least_min);
        let worst = air.worst(slot.start_min, slot.end_min);
        let drying = air.worst(slot.end_min, dry_min);
        airs.push(Some(StepAir {
            weather: air.at(slot.start_min),
            worst: worst.map_err(of_air(planned))?,
            drying: drying.map_err(of_air(planned))?,
        }));
        let verdict = verdict_of(planned, air, slot, dry_min);
        verdicts.push(Some(verdict.map_err(of_air(planned))?));
    }
    let handed = job.steps.iter().zip(&steps).zip(&schedule.slots).zip(airs.iter().zip(&verdicts));
    let handed = handed.map(|(((planned, step), slot), (air, verdict))| {
        hand(planned, step, slot, air.as_ref(), verdict.as_ref())
    });
    Ok(Found {
        handed: handed.collect(),
        breaches: schedule.breaches.iter().map(broken).collect(),
        ready_min: schedule.ready_min,
        walk_on_min: walk_on(job, &steps, &schedule),
        steps,
        schedule,
        airs,
        verdicts,
    })
}

fn walk_on(job: &Job, steps: &[Step], schedule: &Schedule) -> Option<f64> {
    let wet = steps.iter().zip(&job.steps).rev().find(|(_, planned)| !planned.dry)?;
    wet.0.traffic_min?;
    schedule.walk_on_min
}

fn hand(
    planned: &Planned,
    step: &Step,
    slot: &Slot,
    air: Option<&StepAir>,
    verdict: Option<&Verdict>,
) -> Handed {
    let weather = air.map(|air| air.weather);
    let worst = air.map(|air| air.worst.1);
    let workable = step.workable_min.map(|min| min * step.pace.least(slot.start_min, slot.end_min));
    Handed {
        label: step.label.clone(),
        row: planned.row + 1,
        start_min: slot.start_min,
        end_min: slot.end_min,
        earliest_min: slot.earliest_min,
        latest_min: slot.latest_min,
        offer_from_min: slot.offer_from_min,
        offer_until_min: slot.offer_until_min,
        last_mix_min: slot.last_mix_min,
        mix_by_min: slot.mix_by_min.filter(|_| step.is_mixed()),
        batches: step.batches,
        workable_min: workable,
        traffic_from_min: slot.traffic_from_min,
        in_the_night: in_the_night(slot),
        pace: step.pace.at(slot.start_min),
        temperature: weather.map(|weather| weather.temperature),
        humidity_percent: weather.map(|weather| weather.humidity.get::<percent>()),
        surface: weather.map(|weather| weather.surface),
        dew_point: worst.map(|worst| worst.air.dew_point),
        dew_margin_c: worst.map(|worst| worst.margin.get::<kelvin>()),
        may_coat: verdict.and_then(Verdict::may_coat),
        drying_margin_c: air.map(|air| air.drying.1.margin.get::<kelvin>()),
    }
}

fn broken(breach: &Breach) -> Broken {
    let (kind, by_min) = match breach.kind {
        BreachKind::TooEarly { by_min } => ("too_early", Some(by_min)),
        BreachKind::TooLate { by_min } => ("too_late", Some(by_min)),
        BreachKind::BatchTooSlow { takes_min, workable_min } => {
            ("batch_too_slow", Some(takes_min - workable_min))
        }
        BreachKind::OutsideHours => ("outside_hours", None),
    };
    Broken { step: breach.step + 1, kind, by_min }
}

/// Whether it may go on: while it is worked, until it is dry, and through the coming night.
fn verdict_of(
    planned: &Planned,
    air: &Climate,
    slot: &Slot,
    dry_min: f64,
) -> Result<Verdict, OutOfRange> {
    let mut verdict = Verdict::default();
    verdict.bar(When::Now, &air.bars(&planned.limits, slot.start_min, slot.end_min)?);
    let morning = ((slot.end_min - MORNING_MIN) / 1440.0).floor() * 1440.0 + 1440.0 + MORNING_MIN;
    let until = dry_min.max(morning);
    // Where the night is not known, what the line between the readings forbids is forbidden all the more.
    verdict.bar(When::Later, &air.bars(&planned.limits, slot.end_min, until)?);
    if !air.speaks_for(slot.start_min, slot.end_min) || !air.speaks_for(slot.end_min, until) {
        verdict.missing.push(Missing::Night);
    }
    verdict.needs(&planned.limits);
    Ok(verdict)
}

fn of_air(planned: &Planned) -> impl FnOnce(OutOfRange) -> Wrong {
    let field = text!("{}.{}.air", STEPS.key, &planned.row);
    move |range| (field, range.into())
}

/// The input that a plan's fault is about.
fn field_of(fault: &plan::Fault, job: &Job) -> String {
    let row = |step: &usize| job.steps.get(*step).map_or(0, |planned| planned.row);
    match fault {
        plan::Fault::NoSteps => STEPS.key.to_owned(),
        plan::Fault::LongerThanDay { step, .. } => text!("{}.{}.work", STEPS.key, row(step)),
        plan::Fault::TooFar { step } | plan::Fault::Range { step: Some(step), .. } => {
            text!("{}.{}", STEPS.key, row(step))
        }
        plan::Fault::Range { step: None, range } => match range.what {
            names::START_TIME => Inputs::START.key.to_owned(),
            names::NUMBER_OF_STEPS => STEPS.key.to_owned(),
            _ => Inputs::HOURS.key.to_owned(),
        },
    }
}
