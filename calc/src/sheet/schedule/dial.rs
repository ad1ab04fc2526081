//! The clock as people keep it: to five minutes. Planned is to the minute; what is shown waits a little longer, or ends
//! a little sooner, and never the other way.

use super::found::Found;
use super::inputs::Job;

const DAY: f64 = 24.0 * 60.0;
/// Minutes between the lines of the dial: common practice, no source.
const LINES: f64 = 5.0;
/// Forgives the last bits of sums, in minutes.
const SLACK: f64 = 1e-6;

/// The lines that times are moved to: every five minutes, and the times that were typed, which so stay as they are.
pub(super) struct Dial {
    /// In minutes since midnight, whatever the day.
    more: Vec<f64>,
}

impl Dial {
    pub(super) fn of(job: &Job, found: &Found) -> Self {
        let starts = job.steps.iter().filter_map(|planned| planned.step.starts_min);
        let more = job.typed_min.iter().copied().chain(starts);
        let mut dial = Self { more: more.map(of_day).collect() };
        for slot in &found.schedule.slots {
            let windows =
                [(slot.offer_from_min, slot.offer_until_min), (slot.last_mix_min, slot.mix_by_min)];
            for (from, until) in windows {
                // No line between the two: the minute itself, or nobody would know when.
                if until.is_some_and(|until| dial.by(until) < dial.from(from)) {
                    dial.more.push(of_day(from));
                }
            }
        }
        dial
    }

    /// From when: the next line. What must dry first is dry then.
    pub(super) fn from(&self, time_min: f64) -> f64 {
        let line = ((time_min - SLACK) / LINES).ceil() * LINES;
        self.on_that_day(time_min).filter(|typed| *typed >= time_min - SLACK).fold(line, f64::min)
    }

    /// By when: the line before. What must not have set yet has not.
    pub(super) fn by(&self, time_min: f64) -> f64 {
        let line = ((time_min + SLACK) / LINES).floor() * LINES;
        self.on_that_day(time_min).filter(|typed| *typed <= time_min + SLACK).fold(line, f64::max)
    }

    fn on_that_day(&self, time_min: f64) -> impl Iterator<Item = f64> {
        let midnight = time_min - of_day(time_min);
        self.more.iter().map(move |typed| midnight + typed)
    }
}

fn of_day(time_min: f64) -> f64 {
    time_min.rem_euclid(DAY)
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::Dial;

    #[test]
    fn waits_end_later_and_windows_sooner() {
        let dial = Dial { more: vec![513.0] };
        assert_eq!([dial.from(851.0), dial.by(851.0)], [855.0, 850.0]);
        assert_eq!([dial.from(855.0), dial.by(855.0)], [855.0, 855.0]);
        // Typed 8:33, on this day and the next.
        assert_eq!([dial.from(513.0), dial.by(513.0), dial.from(511.0)], [513.0; 3]);
        assert_eq!(
            [dial.from(1952.0), dial.by(1954.0), dial.from(1954.0)],
            [1953.0, 1953.0, 1955.0]
        );
    }

    proptest! {
        #[test]
        fn the_order_is_kept(a in 0.0..20_000.0_f64, b in 0.0..20_000.0_f64, typed in 0..1440_u32) {
            let dial = Dial { more: vec![f64::from(typed)] };
            let (first, then) = (a.min(b), a.max(b));
            prop_assert!(dial.from(first) <= dial.from(then));
            prop_assert!(dial.by(first) <= dial.by(then));
            prop_assert!((0.0..5.0 + 1e-5).contains(&(dial.from(a) - a + 1e-6)));
            prop_assert!((0.0..5.0 + 1e-5).contains(&(a - dial.by(a) + 1e-6)));
        }
    }
}
