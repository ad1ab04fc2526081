//! What a plan can be made for.

use super::super::range::{OutOfRange, within};
use super::{DAY_MIN, HORIZON_MIN, Hours, Pace, Step};

/// Why no plan is made.
#[derive(Clone, Debug, PartialEq)]
pub enum Fault {
    /// There is nothing to plan.
    NoSteps,
    /// A step takes longer than a working day has.
    LongerThanDay {
        /// The step, counted from 0.
        step: usize,
        /// How long it takes, in minutes.
        work_min: f64,
        /// How long a day is, in minutes.
        day_min: f64,
    },
    /// The plan reaches beyond [`HORIZON_MIN`].
    TooFar {
        /// The first step beyond it, counted from 0.
        step: usize,
    },
    /// A value of a step is outside its range.
    Range {
        /// The step, counted from 0; none for what belongs to no step.
        step: Option<usize>,
        /// What is outside.
        range: OutOfRange,
    },
}

/// Checks what a plan is to be made of.
pub fn check(steps: &[Step], first_start_min: f64, hours: Option<Hours>) -> Result<(), Fault> {
    if steps.is_empty() {
        return Err(Fault::NoSteps);
    }
    let of_plan = |range| Fault::Range { step: None, range };
    within("start time", first_start_min, 0.0, 14.0 * DAY_MIN, "min").map_err(of_plan)?;
    within("number of steps", steps.len() as f64, 1.0, 60.0, "").map_err(of_plan)?;
    if let Some(Hours { from_min, to_min }) = hours {
        within("start of the working day", from_min, 0.0, DAY_MIN, "min").map_err(of_plan)?;
        within("end of the working day", to_min, from_min, DAY_MIN, "min").map_err(of_plan)?;
    }
    for (at, step) in steps.iter().enumerate() {
        let of_step = |range| Fault::Range { step: Some(at), range };
        let wait = |what, value: f64| {
            within(what, value, 0.0, 30.0 * DAY_MIN, "min").map(|_| ()).map_err(of_step)
        };
        within("work", step.work_min, 0.0, 14.0 * DAY_MIN, "min").map_err(of_step)?;
        within("number of batches", f64::from(step.batches), 1.0, 1e4, "").map_err(of_step)?;
        if let Pace::Even(pace) = step.pace {
            within("pace", pace, 0.001, 1000.0, "").map_err(of_step)?;
        }
        wait("least recoat time", step.recoat_least_min)?;
        wait("longest recoat time", step.recoat_most_min.unwrap_or(0.0))?;
        wait("working time", step.workable_min.unwrap_or(0.0))?;
        wait("wait before traffic", step.traffic_min.unwrap_or(0.0))?;
        let fixed = step.starts_min.unwrap_or(0.0);
        within("start of the step", fixed, 0.0, HORIZON_MIN, "min").map_err(of_step)?;
        if let Some(Hours { from_min, to_min }) = hours
            && step.work_min > to_min - from_min + 1e-6
        {
            let (work_min, day_min) = (step.work_min, to_min - from_min);
            return Err(Fault::LongerThanDay { step: at, work_min, day_min });
        }
    }
    Ok(())
}

impl std::fmt::Display for Fault {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::NoSteps => {
                f.write_str("there is no step to plan; give at least one pass or coat")
            }
            Self::LongerThanDay { step, work_min, day_min } => write!(
                f,
                "step {} takes {work_min:.0} min, the working day has {day_min:.0}; \
                 split the step, or give longer hours",
                step + 1
            ),
            Self::TooFar { step } => write!(
                f,
                "step {} would start more than 60 days ahead; check the waits and the hours",
                step + 1
            ),
            Self::Range { step: Some(step), range } => write!(f, "step {}: {range}", step + 1),
            Self::Range { step: None, range } => range.fmt(f),
        }
    }
}
