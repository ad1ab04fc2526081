//! Whole layouts from fractional ones: take the whole parts, solve the rest again, and so on.

use super::master::{Master, Times};
use crate::carpentry::cut_stock::model::Effort;
use crate::carpentry::cut_stock::simplex::End;

/// Steps for the rest after something was fixed.
const MOST_STEPS: u64 = 400_000;

/// Layouts that a dive has fixed: index and how often.
pub(super) type Fixed = Times;

/// Dives from the solved `master`; `turn` says how many of the first choices give way to the next best. `None` where the rest has no
/// solution, or effort ran out.
pub(super) fn dive(master: &mut Master<'_>, turn: usize, effort: &mut Effort) -> Option<Fixed> {
    let mut fixed: Fixed = Vec::new();
    let mut turns = turn;
    while master.groups.iter().any(|group| group.count > 0) {
        let mut taken = master.taken();
        taken.retain(|(group, ..)| master.groups[*group].count > 0);
        // The farthest along comes first; of equals the first that came up.
        crate::sorting::sort_by(&mut taken, |a, b| b.2.total_cmp(&a.2).then(a.1.cmp(&b.1)));
        let mut whole: Vec<(usize, Times, u32)> = Vec::new();
        for (group, layouts, value) in &taken {
            let times = (value + 1e-4).floor() as u32;
            if times > 0 {
                whole.push((*group, layouts.clone(), times));
            }
        }
        if turns > 0 && taken.len() > 1 {
            let at = turns % taken.len();
            turns /= taken.len();
            whole = vec![(taken[at].0, taken[at].1.clone(), 1)];
        }
        if whole.is_empty() {
            let (group, layouts, _) = taken.into_iter().next()?;
            whole.push((group, layouts, 1));
        }
        for (group, layouts, times) in whole {
            let times = times.min(master.groups[group].count);
            for _ in 0..times {
                let mut joints = 0;
                for &(layout, often) in &layouts {
                    joints += master.layouts[layout].joints_mm.len() as u32 * often;
                }
                if master.joints.is_some_and(|left| left < joints) {
                    break;
                }
                if let Some(left) = master.joints.as_mut() {
                    *left -= joints;
                }
                master.groups[group].count -= 1;
                for &(layout, often) in &layouts {
                    let pieces = master.layouts[layout].pieces.clone();
                    for (kind, count) in pieces {
                        master.fixed[kind] += count * often;
                    }
                    match fixed.iter_mut().find(|(known, _)| *known == layout) {
                        Some((_, count)) => *count += often,
                        None => fixed.push((layout, often)),
                    }
                }
            }
        }
        if master.groups.iter().any(|group| group.count > 0) {
            // A rest that is solved only nearly guides as well.
            let mut part = effort.steps(MOST_STEPS);
            let end = master.solve(&mut part);
            effort.give_back(part);
            if end == End::Infeasible || effort.is_spent() {
                return None;
            }
        }
    }
    Some(fixed)
}
