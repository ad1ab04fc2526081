//! Plans worked by hand, and what holds for every plan.

use proptest::prelude::*;

use super::*;

const HOURS: Hours = Hours { from_min: 8.0 * 60.0, to_min: 20.0 * 60.0 };

fn coat(work_min: f64, least: f64, most: Option<f64>) -> Step {
    Step {
        label: "coat".into(),
        work_min,
        batches: 1,
        workable_min: None,
        recoat_least_min: least,
        recoat_most_min: most,
        traffic_min: None,
        pace: Pace::Even(1.0),
        starts_min: None,
    }
}

#[test]
fn one_coat_after_the_other() {
    let last = Step { traffic_min: Some(24.0 * 60.0), ..coat(60.0, 0.0, None) };
    let steps = [coat(60.0, 180.0, Some(24.0 * 60.0)), coat(60.0, 180.0, None), last];
    let got = plan(&steps, 9.0 * 60.0, Some(HOURS)).unwrap();
    let starts: Vec<_> = got.slots.iter().map(|slot| clock(slot.start_min)).collect();
    assert_eq!(starts, [(0, 9, 0), (0, 13, 0), (0, 17, 0)]);
    assert_eq!(clock(got.slots[1].latest_min.unwrap()), (1, 9, 0));
    assert_eq!(clock(got.ready_min), (1, 18, 0));
    assert!(got.breaches.is_empty());
}

#[test]
fn a_coat_is_put_off_so_that_the_next_morning_is_not_too_late() {
    // From 13:30 the second coat would fall due at 19:00, too late to end by 20:00; the next
    // morning is 18 h 30 min after.
    let steps = [coat(90.0, 240.0, Some(16.0 * 60.0)), coat(90.0, 0.0, None)];
    let got = plan(&steps, 13.5 * 60.0, Some(HOURS)).unwrap();
    let starts: Vec<_> = got.slots.iter().map(|slot| clock(slot.start_min)).collect();
    assert_eq!(starts, [(0, 16, 0), (1, 8, 0)]);
    assert!(got.breaches.is_empty());
}

#[test]
fn a_window_that_cannot_be_met_is_told() {
    let steps = [coat(60.0, 300.0, Some(120.0)), coat(60.0, 0.0, None)];
    let got = plan(&steps, 9.0 * 60.0, None).unwrap();
    assert_eq!(got.breaches, [Breach { step: 1, kind: BreachKind::TooLate { by_min: 240.0 } }]);
}

#[test]
fn the_part_that_waits_longest_counts() {
    // The second coat takes 60 min longer, so its last part waits 60 min longer than its first.
    let steps = [coat(30.0, 60.0, Some(240.0)), coat(90.0, 0.0, None)];
    let got = plan(&steps, 0.0, None).unwrap();
    assert_eq!(got.slots[1].latest_min, Some(180.0));
}

#[test]
fn batches_and_the_last_bottle() {
    let step = Step { batches: 4, workable_min: Some(20.0), ..coat(60.0, 0.0, None) };
    let got = plan(std::slice::from_ref(&step), 600.0, None).unwrap();
    assert_eq!((got.slots[0].last_mix_min, got.breaches.len()), (645.0, 0));
    // At twice the pace (10 C warmer) 15 min are too long for the 10 that are left.
    let warm = Step { pace: Pace::Even(0.5), ..step };
    let got = plan(&[warm], 600.0, None).unwrap();
    let kind = BreachKind::BatchTooSlow { takes_min: 15.0, workable_min: 10.0 };
    assert_eq!(got.breaches, [Breach { step: 0, kind }]);
}

#[test]
fn a_start_that_is_set_is_judged_not_moved() {
    let early = Step { starts_min: Some(100.0), ..coat(30.0, 0.0, None) };
    let got = plan(&[coat(30.0, 120.0, None), early], 0.0, None).unwrap();
    assert_eq!(got.breaches, [Breach { step: 1, kind: BreachKind::TooEarly { by_min: 50.0 } }]);
    let night = Step { starts_min: Some(60.0), ..coat(30.0, 0.0, None) };
    let got = plan(&[night], 0.0, Some(HOURS)).unwrap();
    assert_eq!(got.breaches, [Breach { step: 0, kind: BreachKind::OutsideHours }]);
}

#[test]
fn refuses_what_cannot_be_planned() {
    assert_eq!(plan(&[], 0.0, None), Err(Fault::NoSteps));
    let long = [coat(13.0 * 60.0, 0.0, None)];
    assert!(matches!(plan(&long, 0.0, Some(HOURS)), Err(Fault::LongerThanDay { step: 0, .. })));
    let fault = plan(&[coat(-1.0, 0.0, None)], 0.0, None).unwrap_err();
    assert!(fault.to_string().starts_with("step 1: the work is -1 min"), "{fault}");
}

fn any_step() -> impl Strategy<Value = Step> {
    (0.0..300.0, 0.0..600.0, prop::option::of(0.0..3000.0), 0.25..4.0, 1_u32..9).prop_map(
        |(work_min, least, most, pace, batches)| Step {
            pace: Pace::Even(pace),
            batches,
            ..coat(work_min, least, most)
        },
    )
}

proptest! {
    #[test]
    fn a_plan_without_a_breach_keeps_every_wait(
        steps in prop::collection::vec(any_step(), 1..6),
        start in 0.0..3000.0,
        with_hours in any::<bool>(),
    ) {
        let hours = with_hours.then_some(HOURS);
        let got = plan(&steps, start, hours).unwrap();
        prop_assert!(got.slots[0].start_min >= start);
        for at in 1..steps.len() {
            let (before, now) = (&got.slots[at - 1], &got.slots[at]);
            let (step, next) = (&steps[at - 1], &steps[at]);
            // The least wait is kept whatever else has to give.
            let wait = now.start_min - before.end_min;
            prop_assert!(wait >= step.recoat_least_min * step.pace.at(0.0).max(1.0) - 1e-3);
            let longest = (now.start_min - before.start_min).max(now.start_min + next.work_min - before.end_min);
            let late = step.recoat_most_min.is_some_and(|most| longest > most * step.pace.at(0.0).min(1.0) + 1e-3);
            let told = got.breaches.iter().any(|b| b.step == at && matches!(b.kind, BreachKind::TooLate { .. }));
            prop_assert!(!late || told);
        }
        if with_hours {
            for slot in &got.slots {
                let day = (slot.start_min / DAY_MIN).floor() * DAY_MIN;
                prop_assert!(slot.start_min - day >= HOURS.from_min - 1e-6 && slot.end_min - day <= HOURS.to_min + 1e-3);
            }
        }
    }

    /// What starts later ends later, and no step is ever before its earliest: by day and by night,
    /// with any readings of the day.
    #[test]
    fn a_later_start_makes_no_step_earlier(
        steps in prop::collection::vec(any_step(), 1..6),
        paces in prop::collection::vec(0.3..3.0_f64, 2..12),
        start in 0.0..3000.0,
        later in 0.0..2000.0,
        with_hours in any::<bool>(),
    ) {
        let hours = with_hours.then_some(HOURS);
        let daily = std::rc::Rc::new(Pace::daily(&paces).unwrap());
        let steps: Vec<Step> =
            steps.into_iter().map(|step| Step { pace: Pace::Daily(daily.clone()), ..step }).collect();
        let (got, then) = (plan(&steps, start, hours).unwrap(), plan(&steps, start + later, hours).unwrap());
        for slot in got.slots.iter().chain(&then.slots) {
            prop_assert!(slot.start_min >= slot.earliest_min - 1e-6 && slot.end_min >= slot.start_min);
            prop_assert!((slot.start_min - slot.start_min.round()).abs() < 1e-6);
            prop_assert!(slot.last_mix_min >= slot.start_min && slot.last_mix_min <= slot.end_min);
            prop_assert!(slot.mix_by_min.is_none_or(|by| by >= slot.last_mix_min - 1e-6));
        }
        for pair in got.slots.windows(2) {
            prop_assert!(pair[1].start_min >= pair[0].end_min - 1e-6);
        }
        let kept = |plan: &Schedule| !plan.breaches.iter().any(|b| matches!(b.kind, BreachKind::TooLate { .. }));
        if kept(&got) == kept(&then) {
            for (one, other) in got.slots.iter().zip(&then.slots) {
                prop_assert!(other.start_min >= one.start_min - 1e-6);
            }
            prop_assert!(then.ready_min >= got.ready_min - 1e-6);
        }
    }

    #[test]
    fn no_number_breaks_it(
        a in any::<f64>(),
        b in any::<f64>(),
        c in any::<f64>(),
        d in 0.0..2000.0,
        n in any::<u32>(),
    ) {
        for (work, least, most, pace, start) in [(a, b, c, 1.0, d), (d, d, a, b, c), (d, a, d, 1.0, b), (d, d, d, 0.5, a)] {
            let step = Step { pace: Pace::Even(pace), batches: n, traffic_min: Some(least), starts_min: None, ..coat(work, least, Some(most)) };
            let fixed = Step { starts_min: Some(a), ..coat(d, 0.0, None) };
            for hours in [None, Some(HOURS), Some(Hours { from_min: a, to_min: b })] {
                if let Ok(got) = plan(&[coat(d, d, Some(d)), step.clone(), fixed.clone()], start, hours) {
                    prop_assert!(got.ready_min.is_finite());
                }
                let _ = plan(&[coat(d, d, Some(d)), step.clone()], start, hours);
            }
        }
        let _ = clock(a);
    }
}
