//! What a plan can be made for.

use super::super::range::{OutOfRange, within};
use super::{DAY_MIN, HORIZON_MIN, Hours, Pace, Step};
use crate::words::{Arg, Msg, range as names, wet as words};

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
    within(names::START_TIME, first_start_min, 0.0, 14.0 * DAY_MIN, "min").map_err(of_plan)?;
    within(names::NUMBER_OF_STEPS, steps.len() as f64, 1.0, 60.0, "").map_err(of_plan)?;
    if let Some(Hours { from_min, to_min }) = hours {
        within(names::START_OF_THE_WORKING_DAY, from_min, 0.0, DAY_MIN, "min").map_err(of_plan)?;
        within(names::END_OF_THE_WORKING_DAY, to_min, from_min, DAY_MIN, "min").map_err(of_plan)?;
    }
    for (at, step) in steps.iter().enumerate() {
        let of_step = |range| Fault::Range { step: Some(at), range };
        let wait = |what, value: f64| {
            within(what, value, 0.0, 30.0 * DAY_MIN, "min").map(|_| ()).map_err(of_step)
        };
        within(names::WORK, step.work_min, 0.0, 14.0 * DAY_MIN, "min").map_err(of_step)?;
        within(names::NUMBER_OF_BATCHES, f64::from(step.batches), 1.0, 1e4, "").map_err(of_step)?;
        if let Pace::Even(pace) = step.pace {
            within(names::PACE, pace, 0.001, 1000.0, "").map_err(of_step)?;
        }
        wait(names::LEAST_RECOAT_TIME, step.recoat_least_min)?;
        wait(names::LONGEST_RECOAT_TIME, step.recoat_most_min.unwrap_or(0.0))?;
        wait(names::WORKING_TIME, step.workable_min.unwrap_or(0.0))?;
        wait(names::WAIT_BEFORE_TRAFFIC, step.traffic_min.unwrap_or(0.0))?;
        let fixed = step.starts_min.unwrap_or(0.0);
        within(names::START_OF_THE_STEP, fixed, 0.0, HORIZON_MIN, "min").map_err(of_step)?;
        if let Some(Hours { from_min, to_min }) = hours
            && step.work_min > to_min - from_min + 1e-6
        {
            let (work_min, day_min) = (step.work_min, to_min - from_min);
            return Err(Fault::LongerThanDay { step: at, work_min, day_min });
        }
    }
    Ok(())
}

impl From<Fault> for Msg {
    fn from(fault: Fault) -> Self {
        match fault {
            Fault::NoSteps => words::NO_STEPS.into(),
            Fault::LongerThanDay { step, work_min, day_min } => {
                let (work, day) = (Arg::minutes_of_work(work_min), Arg::minutes_of_work(day_min));
                words::LongerThanDay { step: step + 1, work, day }.into()
            }
            Fault::TooFar { step } => {
                let days = Arg::count((HORIZON_MIN / DAY_MIN) as u32);
                words::TooFar { step: step + 1, days }.into()
            }
            Fault::Range { step: Some(step), range } => {
                words::OfStep { step: step + 1, problem: Self::from(range) }.into()
            }
            Fault::Range { step: None, range } => range.into(),
        }
    }
}

/// In English, for tests and scripts.
impl std::fmt::Display for Fault {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        Msg::from(self.clone()).fmt(f)
    }
}
