//! Courses that may not be joined somewhere: openings, where there is no support to join them on.

use super::{JointTask, SLACK_MM, are_apart};

/// No joint between two places, in some courses.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NoJoint {
    /// The first of these courses, from 0.
    pub first_course: usize,
    /// The last of them.
    pub last_course: usize,
    /// From the run's left end; a joint just there may be. [mm]
    pub from_mm: f64,
    /// From the run's left end; a joint just there may be. [mm]
    pub to_mm: f64,
}

/// Layouts that stand in for others; the first ones are tried.
const MOST_STAND_INS: usize = 60;

/// Whether a course may have these joints.
fn is_free(task: &JointTask, course: usize, joints: &[f64]) -> bool {
    task.no_joint.iter().all(|none| {
        course < none.first_course
            || course > none.last_course
            || joints
                .iter()
                .all(|at| *at <= none.from_mm + SLACK_MM || *at >= none.to_mm - SLACK_MM)
    })
}

/// The layouts of all courses with stand-ins where a course may not have its own, the fewest that keep the stagger: those courses
/// and their neighbours may change. `None` where nothing serves.
pub(super) fn courses(
    task: &JointTask,
    layouts: &[Vec<f64>],
    taken: &[usize],
) -> Option<Vec<usize>> {
    let own_is_free =
        |course: usize| taken.get(course).is_none_or(|own| is_free(task, course, &layouts[*own]));
    // For each course: layout, changes so far, and the place of the one before in its list.
    let mut steps: Vec<Vec<(usize, usize, usize)>> = Vec::new();
    for (course, own) in taken.iter().enumerate() {
        let mut options = Vec::new();
        if own_is_free(course) {
            options.push(*own);
        }
        let beside = course.saturating_sub(1)..=course + 1;
        if !beside.into_iter().all(own_is_free) {
            let others = (0..layouts.len()).filter(|other| other != own);
            let free = others.filter(|other| is_free(task, course, &layouts[*other]));
            options.extend(free.take(MOST_STAND_INS));
        }
        let mut step = Vec::new();
        for layout in options {
            let change = usize::from(layout != *own);
            let best = match steps.last() {
                None => Some((change, 0)),
                Some(before) => {
                    let may = before.iter().enumerate().filter(|(_, (other, ..))| {
                        are_apart(task, &layouts[*other], &layouts[layout])
                    });
                    may.map(|(at, (_, changes, _))| (changes + change, at)).min()
                }
            };
            step.extend(best.map(|(changes, at)| (layout, changes, at)));
        }
        steps.push(step);
    }
    let last = steps.last()?.iter().enumerate().min_by_key(|(at, (_, changes, _))| (*changes, *at));
    let mut at = last?.0;
    let mut found = Vec::with_capacity(taken.len());
    for step in steps.iter().rev() {
        let (layout, _, before) = *step.get(at)?;
        found.push(layout);
        at = before;
    }
    found.reverse();
    Some(found)
}

#[cfg(test)]
mod tests {
    use super::super::{JointError, JointTask, Stock, plan_joints};
    use super::*;

    /// Ribs every 400 mm over 4 m, boards of up to 2.6 m: one joint to a course.
    fn task(no_joint: Vec<NoJoint>) -> JointTask {
        JointTask {
            run_mm: 4000.0,
            supports_mm: (1..10).map(|rib| 400.0 * f64::from(rib)).collect(),
            support_width_mm: 40.0,
            edge_distance_mm: 10.0,
            stagger_mm: 400.0,
            least_piece_mm: 0.0,
            courses: 8,
            no_joint,
            stock: vec![Stock { length_mm: 2600.0, price: Some(1.0), on_hand: 0, available: None }],
            kerf_mm: 0.0,
            end_trim_mm: 0.0,
            effort: 100_000,
        }
    }

    /// Joints may lie at 1600, 2000 and 2400; courses 3 and 4 may not have 2000.
    #[test]
    fn only_the_courses_of_an_opening_change() {
        let hatch = NoJoint { first_course: 3, last_course: 4, from_mm: 1700.0, to_mm: 2300.0 };
        let plan = plan_joints(&task(vec![hatch])).unwrap();
        for (course, joints) in plan.joints_mm.iter().enumerate() {
            assert!(
                joints.len() == 1
                    && ((3..=4).contains(&course)).then_some(joints[0]) != Some(2000.0)
            );
        }
        assert!(plan.joints_mm.windows(2).all(|pair| (pair[0][0] - pair[1][0]).abs() >= 399.0));
        // What is free costs no more than what is not.
        assert!(
            (plan.cut_plan.cost - plan_joints(&task(Vec::new())).unwrap().cut_plan.cost).abs()
                < 1e-9
        );
    }

    #[test]
    fn no_place_at_all_is_a_refusal() {
        let everywhere = NoJoint { first_course: 0, last_course: 7, from_mm: 0.0, to_mm: 4000.0 };
        assert!(matches!(plan_joints(&task(vec![everywhere])), Err(JointError::Stagger { .. })));
    }
}
