//! How fast things set, by the temperature of the hour.

use std::rc::Rc;

const DAY_MIN: f64 = 24.0 * 60.0;

/// How much longer than on the label everything takes: see [`super::super::mixing::pace`]. Working
/// time is multiplied by it; waits are never taken shorter than the label gives them, nor windows
/// longer. 1 keeps all.
#[derive(Clone, Debug, PartialEq)]
pub enum Pace {
    /// The same at all times.
    Even(f64),
    /// By the time of day.
    Daily(Rc<Daily>),
}

/// A pace by the time of day, the same every day.
#[derive(Clone, Debug, PartialEq)]
pub struct Daily {
    /// At equal steps from midnight to midnight, both ends included.
    paces: Vec<f64>,
    /// How much of a least wait has passed since midnight at each of them, in label's minutes.
    slow: Vec<f64>,
    /// How much of a longest wait.
    fast: Vec<f64>,
}

impl Pace {
    /// From paces at equal steps from midnight to midnight, both ends included; none where there
    /// are fewer than two.
    pub fn daily(paces: &[f64]) -> Option<Daily> {
        if paces.len() < 2 {
            return None;
        }
        let step = DAY_MIN / (paces.len() - 1) as f64;
        // Progress in a step is the mean of its ends'.
        let sum = |rate: fn(f64) -> f64| {
            let mut sums = vec![0.0];
            let mut all = 0.0;
            for pair in paces.windows(2) {
                let &[one, other] = pair else { continue };
                all += step * (rate(one) + rate(other)) / 2.0;
                sums.push(all);
            }
            sums
        };
        let (slow, fast) = (sum(|pace| 1.0 / pace.max(1.0)), sum(|pace| 1.0 / pace.min(1.0)));
        Some(Daily { paces: paces.to_vec(), slow, fast })
    }

    /// At a time, in minutes since any midnight.
    pub fn at(&self, time_min: f64) -> f64 {
        match self {
            Self::Even(pace) => *pace,
            Self::Daily(daily) => value_at(&daily.paces, of_day(time_min)),
        }
    }

    /// When a least wait of so many label's minutes is over.
    pub fn after_least(&self, from_min: f64, label_min: f64) -> f64 {
        match self {
            Self::Even(pace) => from_min + label_min * pace.max(1.0),
            Self::Daily(daily) => passed(&daily.slow, from_min, label_min),
        }
    }

    /// When a longest wait of so many label's minutes is over.
    pub fn after_most(&self, from_min: f64, label_min: f64) -> f64 {
        match self {
            Self::Even(pace) => from_min + label_min * pace.min(1.0),
            Self::Daily(daily) => passed(&daily.fast, from_min, label_min),
        }
    }

    /// From when on a longest wait is not over yet at a time.
    pub fn before_most(&self, to_min: f64, label_min: f64) -> f64 {
        match self {
            Self::Even(pace) => to_min - label_min * pace.min(1.0),
            Self::Daily(daily) => passed(&daily.fast, to_min, -label_min),
        }
    }

    /// The least pace from one time to another.
    pub fn least(&self, from_min: f64, to_min: f64) -> f64 {
        let Self::Daily(daily) = self else { return self.at(from_min) };
        let step = step_of(&daily.paces);
        let mut least = self.at(from_min).min(self.at(to_min));
        let mut time = (from_min / step).ceil() * step;
        let end = to_min.min(from_min + DAY_MIN);
        while time < end {
            least = least.min(self.at(time));
            time += step;
        }
        least
    }
}

fn of_day(time_min: f64) -> f64 {
    time_min - (time_min / DAY_MIN).floor() * DAY_MIN
}

/// The time between two of a day's values.
fn step_of(values: &[f64]) -> f64 {
    DAY_MIN / (values.len().max(2) - 1) as f64
}

/// The value at a time of day, in a straight line between those that are known.
fn value_at(values: &[f64], of_day: f64) -> f64 {
    let place = of_day / step_of(values);
    let before = (place.floor().max(0.0) as usize).min(values.len().saturating_sub(2));
    let (Some(one), Some(other)) = (values.get(before), values.get(before + 1)) else { return 1.0 };
    one + (other - one) * (place - before as f64)
}

/// When so much more has passed, by a day's sums that grow all the time.
fn passed(sums: &[f64], from_min: f64, more: f64) -> f64 {
    let whole = sums.last().copied().unwrap_or(DAY_MIN);
    let wanted = value_at(sums, of_day(from_min)) + more;
    let days = (wanted / whole).floor();
    let rest = wanted - days * whole;
    let after = sums.partition_point(|sum| *sum <= rest).clamp(1, sums.len().max(2) - 1);
    let (Some(one), Some(other)) = (sums.get(after - 1), sums.get(after)) else { return from_min };
    let share = ((rest - one) / (other - one).max(1e-12)).clamp(0.0, 1.0);
    let midnight = (from_min / DAY_MIN).floor() * DAY_MIN;
    midnight + days * DAY_MIN + ((after - 1) as f64 + share) * step_of(sums)
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn daily(paces: &[f64]) -> Pace {
        Pace::Daily(Rc::new(Pace::daily(paces).unwrap()))
    }

    #[test]
    fn a_night_at_half_speed_by_hand() {
        // Midnight to 12:00 at pace 2, then 1, with a jump that takes an hour.
        let mut paces = [1.0; 25];
        paces[..12].fill(2.0);
        paces[24] = 2.0;
        let pace = daily(&paces);
        // From 2:00 4 h pass at half speed until 10:00.
        assert!((pace.after_least(120.0, 240.0) - 600.0).abs() < 1e-9);
        // A window is never taken longer.
        assert!((pace.after_most(120.0, 240.0) - 360.0).abs() < 1e-9);
        assert!((pace.before_most(360.0, 240.0) - 120.0).abs() < 1e-9);
        // From 13:00 to 23:00 as on the label, tomorrow too.
        assert!(
            (pace.after_least(13.0 * 60.0 + 1440.0, 600.0) - (23.0 * 60.0 + 1440.0)).abs() < 1e-9
        );
        assert_eq!(pace.least(60.0, 300.0), 2.0);
        assert_eq!(pace.least(60.0, 14.0 * 60.0), 1.0);
    }

    proptest! {
        /// An even day gives what an even pace gives; what starts later ends later; there and back.
        #[test]
        fn waits_hold_together(
            pace in 0.2..5.0_f64,
            paces in prop::collection::vec(0.2..5.0_f64, 2..30),
            from in 0.0..9000.0,
            wait in 0.0..5000.0,
            later in 0.0..2000.0,
        ) {
            let (even, flat) = (Pace::Even(pace), daily(&[pace; 7]));
            prop_assert!((even.after_least(from, wait) - flat.after_least(from, wait)).abs() < 1e-6);
            prop_assert!((even.after_most(from, wait) - flat.after_most(from, wait)).abs() < 1e-6);
            let day = daily(&paces);
            for after in [day.after_least(from, wait), day.after_most(from, wait)] {
                prop_assert!(after.is_finite() && after >= from - 1e-6);
            }
            prop_assert!(day.after_least(from, wait) >= from + wait - 1e-6);
            prop_assert!(day.after_most(from, wait) <= from + wait + 1e-6);
            prop_assert!(day.after_least(from + later, wait) >= day.after_least(from, wait) - 1e-6);
            prop_assert!((day.before_most(day.after_most(from, wait), wait) - from).abs() < 1e-5);
        }
    }
}
