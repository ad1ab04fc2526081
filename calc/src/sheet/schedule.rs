//! Passes and coats in order: when each may start, and when the last batch must be mixed.

mod asks;
mod clock;
mod drawing;
mod words;

use crate::text::text;
use uom::si::f64::{Ratio, ThermodynamicTemperature};
use uom::si::temperature_interval::kelvin;

use self::asks::{ASKS, HOURS, START, STEPS};
use super::{Sheet, solve};
use crate::coating::air::{self, Margin};
use crate::coating::cautions::{FOR_COATING, FOR_FILLING};
use crate::coating::mixing;
use crate::coating::schedule::{self as plan, BreachKind, Hours, Schedule, Step};
use crate::fault::Fault;
use crate::outcome::Record;
use crate::quantity::Style;
use crate::report::{Caution, Report};

/// The sheet.
pub static SHEET: Sheet = Sheet {
    kind: "schedule",
    title: "Filling and coating schedule",
    trade: "Floor",
    purpose: "When each pass and coat may start, when to mix the last batch, when to walk on it.",
    asks: ASKS,
    sources: &[&plan::WINDOW, &mixing::POT_LIFE, &air::MAGNUS, &air::MARGIN_RULE],
    example: r#"{ "start": "8:30", "hours": { "from": "8:00", "to": "19:00" },
        "label_temperature": "25 C",
        "air": { "temperature": "20 C", "humidity_percent": 60, "surface_temperature": "18 C" },
        "steps": [
            { "label": "fill, first pass", "work": "90 min", "filler": "gap_fill", "recoat_least": "3 h", "recoat_most": "12 h" },
            { "label": "fill, second pass", "work": "90 min", "filler": "gap_fill", "recoat_least": "8 h" },
            { "label": "sand", "work": "2 h", "dry": true },
            { "label": "first coat", "work": "1 h", "recoat_least": "3 h", "recoat_most": "24 h" },
            { "label": "second coat", "work": "1 h", "recoat_least": "3 h", "recoat_most": "24 h" },
            { "label": "last coat", "work": "1 h", "traffic": "24 h",
                "air": { "temperature": "16 C", "humidity_percent": 75, "surface_temperature": "13 C" } } ] }"#,
    solve: |reader| solve(reader, asks::read, report),
};

/// Air and surface, measured or expected.
#[derive(Clone, Copy, PartialEq)]
struct Weather {
    temperature: ThermodynamicTemperature,
    humidity: Ratio,
    surface: ThermodynamicTemperature,
}

/// What was typed, read.
struct Inputs {
    start_min: f64,
    hours: Option<Hours>,
    label_temperature: ThermodynamicTemperature,
    /// Steps as typed: each with the air that is expected for it.
    steps: Vec<(Step, Option<Weather>)>,
}

/// What was worked out.
struct Worked {
    steps: Vec<Step>,
    schedule: Schedule,
    /// Of each step, where its air is known.
    margins: Vec<Option<Margin>>,
}

fn work(inputs: &Inputs) -> Result<Worked, Vec<Fault>> {
    let mut steps = Vec::with_capacity(inputs.steps.len());
    let mut margins = Vec::with_capacity(inputs.steps.len());
    for (index, (step, weather)) in inputs.steps.iter().enumerate() {
        let at = |range: crate::coating::range::OutOfRange| {
            vec![Fault::new(text!("{}.{}.air", &STEPS.key, &index), range.to_string())]
        };
        let mut step = step.clone();
        let mut margin = None;
        if let Some(weather) = weather {
            step.pace = mixing::pace(inputs.label_temperature, weather.temperature).map_err(at)?;
            let known = air::margin(weather.temperature, weather.humidity, weather.surface);
            margin = Some(known.map_err(at)?);
        }
        steps.push(step);
        margins.push(margin);
    }
    let schedule = plan::plan(&steps, inputs.start_min, inputs.hours).map_err(|fault| {
        let field = match fault {
            plan::Fault::NoSteps => STEPS.key.to_owned(),
            plan::Fault::LongerThanDay { step, .. } => text!("{}.{}.work", &STEPS.key, &step),
            plan::Fault::TooFar { step } | plan::Fault::Range { step: Some(step), .. } => {
                text!("{}.{}", &STEPS.key, &step)
            }
            plan::Fault::Range { step: None, ref range } => match range.what {
                "start time" => START.key.to_owned(),
                "number of steps" => STEPS.key.to_owned(),
                _ => HOURS.key.to_owned(),
            },
        };
        vec![Fault::new(field, fault.to_string())]
    })?;
    Ok(Worked { steps, schedule, margins })
}

fn report(inputs: &Inputs, style: Style) -> Result<Report, Vec<Fault>> {
    let worked = work(inputs)?;
    let mut cautions = Caution::all(&FOR_FILLING);
    for caution in Caution::all(&FOR_COATING) {
        if !cautions.iter().any(|known| known.text == caution.text) {
            cautions.push(caution);
        }
    }
    Ok(Report {
        answers: words::answers(&worked, style),
        remarks: words::remarks(inputs, &worked, style),
        tables: words::tables(&worked, style),
        drawings: vec![drawing::time_line(&worked, style)],
        working: words::working(inputs, &worked, style),
        cautions,
        outcome: outcome(&worked),
        ..Report::default()
    })
}

fn outcome(worked: &Worked) -> Record {
    let steps: Vec<Record> = worked
        .steps
        .iter()
        .zip(&worked.schedule.slots)
        .zip(&worked.margins)
        .map(|((step, slot), margin)| {
            Record::new()
                .with("label", step.label.as_str())
                .with("start_min", slot.start_min)
                .with("end_min", slot.end_min)
                .with("earliest_min", slot.earliest_min)
                .maybe("latest_min", slot.latest_min)
                .with("last_mix_min", slot.last_mix_min)
                .maybe("traffic_from_min", slot.traffic_from_min)
                .with("pace", step.pace)
                .maybe("dew_margin_c", margin.map(|margin| margin.margin.get::<kelvin>()))
                .maybe("may_coat", margin.map(|margin| margin.may_coat))
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
}
