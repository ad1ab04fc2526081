//! Passes and coats in order: when each may start, and when the last batch must be mixed.

mod asks;
mod by_the_clock;
mod clock;
mod drawing;
pub(super) mod label;
mod rows;
mod words;
mod working;

use std::rc::Rc;

use crate::text::text;
use crate::words::Phrase;
use uom::si::f64::ThermodynamicTemperature;
use uom::si::ratio::percent;
use uom::si::temperature_interval::kelvin;
use uom::si::thermodynamic_temperature::degree_celsius;

use self::asks::{ASKS, HOURS, START, STEPS};
use self::rows::With;
use super::{Sheet, solve};
use crate::coating::air::{self, Margin};
use crate::coating::cautions::{FOR_COATING, FOR_FILLING};
use crate::coating::climate::{self, Climate, Weather};
use crate::coating::mixing;
use crate::coating::range::{OutOfRange, ceiling};
use crate::coating::schedule::{self as plan, BreachKind, Hours, Pace, Schedule, Slot, Step};
use crate::coating::verdict::{self, Limits, Missing, Verdict, When};
use crate::fault::Fault;
use crate::outcome::Record;
use crate::quantity::Style;
use crate::report::{Caution, Report};

/// The sheet.
pub static SHEET: Sheet = Sheet {
    kind: "schedule",
    title: Phrase::Written("Filling and coating schedule"),
    trade: Phrase::Written("Floor"),
    purpose: Phrase::Written(
        "When each pass and coat may start, when to mix the last batch, when to walk on it.",
    ),
    asks: ASKS,
    sources: &[
        &plan::WINDOW,
        &mixing::POT_LIFE,
        &climate::BETWEEN,
        &air::MAGNUS,
        &air::MARGIN_RULE,
        &verdict::LABEL_LIMITS,
        &verdict::NIGHT,
    ],
    example: r#"{ "start": "8:30", "hours": { "from": "8:00", "to": "19:00" },
        "label_temperature": "25 C",
        "readings": [
            { "at": "8:00", "temperature": "14 C", "humidity_percent": 75, "surface_temperature": "13 C" },
            { "at": "13:00", "temperature": "22 C", "humidity_percent": 50, "surface_temperature": "20 C" },
            { "at": "19:00", "temperature": "18 C", "humidity_percent": 60, "surface_temperature": "17 C" } ],
        "night": { "temperature": "13 C", "humidity_percent": 72, "surface_temperature": "12 C" },
        "limits": { "temperature_least": "10 C", "temperature_most": "30 C", "humidity_most_percent": 80 },
        "steps": [
            { "label": "fill splits, pass", "passes": "gap_fill", "work": "90 min", "recoat_least": "3 h", "recoat_most": "12 h", "cure": "8 h" },
            { "label": "sand the floor", "work": "2 h", "dry": true },
            { "coats": "coating", "work": "1 h" },
            { "label": "fit the threshold", "work": "30 min", "dry": true } ] }"#,
    solve: |reader| solve(reader, asks::read, report),
};

/// What was typed, read.
struct Inputs {
    start_min: f64,
    hours: Option<Hours>,
    steps: Vec<Planned>,
}

/// A step as typed, or as another sheet has it.
struct Planned {
    /// The row that it comes from, counted from 0.
    row: usize,
    step: Step,
    /// The temperature that its label's times are for.
    label_at: ThermodynamicTemperature,
    /// The air that is expected for it; none for dry work.
    air: Option<Rc<Climate>>,
    /// Whether it is mixed in the fewest batches that stay workable.
    fewest_batches: bool,
    /// Whether it is a pass or a coat of another sheet.
    of_sheet: bool,
    /// Whether the wait behind it was given as that after the last one.
    cured: bool,
    dry: bool,
    /// What its label allows.
    limits: Limits,
    /// What is done with it besides.
    with: With,
    /// Whether it is the first pass or coat of its product.
    first: bool,
}

impl Planned {
    fn of(step: Step) -> Self {
        Self {
            row: 0,
            step,
            label_at: ThermodynamicTemperature::new::<degree_celsius>(25.0),
            air: None,
            fewest_batches: false,
            of_sheet: false,
            cured: false,
            dry: false,
            limits: Limits::default(),
            with: With::Nothing,
            first: false,
        }
    }
}

/// What was worked out.
struct Worked {
    steps: Vec<Step>,
    schedule: Schedule,
    /// Of each step, where its air is known.
    airs: Vec<Option<StepAir>>,
    /// Of each of these, whether its coat may go on.
    verdicts: Vec<Option<Verdict>>,
}

/// The air of one step.
#[derive(Clone, Copy)]
struct StepAir {
    /// When it starts.
    weather: Weather,
    /// When the surface is least above the dew point while it is worked, and by how much.
    worst: (f64, Margin),
    /// The same while it dries, until the next may follow.
    drying: (f64, Margin),
}

/// When the night is over for what was put on the day before; common practice. [min]
const MORNING_MIN: f64 = 480.0;

/// Nobody means to coat between these hours who has not said so; common practice.
const NIGHT_H: (f64, f64) = (22.0, 6.0);

impl Worked {
    /// Steps with their slots and their air.
    fn all(&self) -> impl DoubleEndedIterator<Item = (&Step, &Slot, Option<StepAir>)> {
        let pairs = self.steps.iter().zip(&self.schedule.slots);
        pairs.zip(&self.airs).map(|((step, slot), air)| (step, slot, *air))
    }
}

/// Whether work falls between ten at night and six in the morning.
fn in_the_night(slot: &Slot) -> bool {
    let hour = |time: f64| time / 60.0 - (time / 1440.0).floor() * 24.0;
    let (start, work) = (hour(slot.start_min), (slot.end_min - slot.start_min) / 60.0);
    start < NIGHT_H.1 || start >= NIGHT_H.0 || start + work > NIGHT_H.0
}

fn work(inputs: &Inputs) -> Result<Worked, Vec<Fault>> {
    let mut steps = Vec::with_capacity(inputs.steps.len());
    // A day's pace is the same for all steps of one label and one air.
    let mut known: Option<(&Rc<Climate>, ThermodynamicTemperature, Pace)> = None;
    for planned in &inputs.steps {
        let mut step = planned.step.clone();
        if let Some(air) = &planned.air {
            let again = known
                .take()
                .filter(|(of, label_at, _)| Rc::ptr_eq(of, air) && *label_at == planned.label_at);
            let pace = match again {
                Some((_, _, pace)) => pace,
                None => air.pace(planned.label_at).map_err(at_row(planned, "air"))?,
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
    let schedule = plan::plan(&steps, inputs.start_min, inputs.hours)
        .map_err(|fault| vec![Fault::new(field_of(&fault, inputs), fault.to_string())])?;
    let mut airs = Vec::with_capacity(steps.len());
    let mut verdicts = Vec::with_capacity(steps.len());
    for ((planned, step), slot) in inputs.steps.iter().zip(&steps).zip(&schedule.slots) {
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
            worst: worst.map_err(at_row(planned, "air"))?,
            drying: drying.map_err(at_row(planned, "air"))?,
        }));
        let verdict = verdict_of(planned, air, slot, dry_min);
        verdicts.push(Some(verdict.map_err(at_row(planned, "air"))?));
    }
    Ok(Worked { steps, schedule, airs, verdicts })
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

fn at_row(planned: &Planned, key: &str) -> impl FnOnce(OutOfRange) -> Vec<Fault> {
    let field = text!("{}.{}.{}", &STEPS.key, &planned.row, key);
    move |range| vec![Fault::new(field, range.to_string())]
}

/// The input that a plan's fault is about.
fn field_of(fault: &plan::Fault, inputs: &Inputs) -> String {
    let row = |step: &usize| inputs.steps.get(*step).map_or(0, |planned| planned.row);
    match fault {
        plan::Fault::NoSteps => STEPS.key.to_owned(),
        plan::Fault::LongerThanDay { step, .. } => text!("{}.{}.work", &STEPS.key, row(step)),
        plan::Fault::TooFar { step } | plan::Fault::Range { step: Some(step), .. } => {
            text!("{}.{}", &STEPS.key, row(step))
        }
        plan::Fault::Range { step: None, range } => match range.what {
            "start time" => START.key.to_owned(),
            "number of steps" => STEPS.key.to_owned(),
            _ => HOURS.key.to_owned(),
        },
    }
}

fn report(inputs: &Inputs, style: Style) -> Result<Report, Vec<Fault>> {
    let worked = work(inputs)?;
    let mut cautions = Caution::all(&FOR_FILLING);
    for caution in Caution::all(&FOR_COATING) {
        if !cautions.iter().any(|known| known.text == caution.text) {
            cautions.push(caution);
        }
    }
    let mut tables =
        vec![by_the_clock::table(inputs, &worked, style), words::windows(&worked, style)];
    tables.extend(words::air(&worked, style));
    Ok(Report {
        answers: words::answers(inputs, &worked, style),
        remarks: words::remarks(inputs, &worked, style),
        tables,
        drawings: drawing::days(inputs, &worked, style),
        working: working::working(inputs, &worked, style),
        cautions,
        outcome: outcome(inputs, &worked),
        ..Report::default()
    })
}

fn outcome(inputs: &Inputs, worked: &Worked) -> Record {
    let steps: Vec<Record> = worked
        .all()
        .zip(&inputs.steps)
        .zip(&worked.verdicts)
        .map(|(((step, slot, air), planned), verdict)| {
            let mixed = step.is_mixed();
            let record = Record::new()
                .with("label", step.label.as_str())
                .with("row", planned.row + 1)
                .with("start_min", slot.start_min)
                .with("end_min", slot.end_min)
                .with("earliest_min", slot.earliest_min)
                .maybe("latest_min", slot.latest_min)
                .with("offer_from_min", slot.offer_from_min)
                .maybe("offer_until_min", slot.offer_until_min)
                .with("last_mix_min", slot.last_mix_min)
                .maybe("mix_by_min", slot.mix_by_min.filter(|_| mixed))
                .with("batches", step.batches)
                .maybe(
                    "workable_min",
                    step.workable_min
                        .map(|min| min * step.pace.least(slot.start_min, slot.end_min)),
                )
                .maybe("traffic_from_min", slot.traffic_from_min)
                .with("in_the_night", in_the_night(slot))
                .with("pace", step.pace.at(slot.start_min));
            let Some(StepAir { weather, worst: (_, margin), drying: (_, drying) }) = air else {
                return record;
            };
            record
                .with("temperature_c", weather.temperature.get::<degree_celsius>())
                .with("humidity_percent", weather.humidity.get::<percent>())
                .with("surface_c", weather.surface.get::<degree_celsius>())
                .with("dew_point_c", margin.air.dew_point.get::<degree_celsius>())
                .with("dew_margin_c", margin.margin.get::<kelvin>())
                .maybe("may_coat", verdict.as_ref().and_then(Verdict::may_coat))
                .with("drying_margin_c", drying.margin.get::<kelvin>())
        })
        .collect();
    let breaches: Vec<Record> = worked
        .schedule
        .breaches
        .iter()
        .map(|breach| {
            let (kind, by_min) = match breach.kind {
                BreachKind::TooEarly { by_min } => ("too_early", Some(by_min)),
                BreachKind::TooLate { by_min } => ("too_late", Some(by_min)),
                BreachKind::BatchTooSlow { takes_min, workable_min } => {
                    ("batch_too_slow", Some(takes_min - workable_min))
                }
                BreachKind::OutsideHours => ("outside_hours", None),
            };
            Record::new().with("step", breach.step + 1).with("kind", kind).maybe("by_min", by_min)
        })
        .collect();
    Record::new()
        .with("steps", steps)
        .with("breaches", breaches)
        .with("ready_min", worked.schedule.ready_min)
        .maybe("walk_on_min", words::walk_on(inputs, worked))
}
