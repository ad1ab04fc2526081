//! What some of the stock lengths give is looked at beside what all of them give: a length more never makes a ceiling dearer.

use super::{
    JointError, JointPlan, JointTask, Planned, SAME_COST, cheapest, cut_task, same, search,
};
use crate::carpentry::cut_stock::{CutPlan, Piece, Stock, plan};

/// So many sets of stock lengths are looked at, each with one less than another: all of them for four lengths.
const MOST_SETS: usize = 15;

/// The best of what the stock lengths at these indexes give, and all sets of fewer. A set that cannot give anything better is left out
/// with all that it holds; what is left is searched as if there were no other lengths.
pub(super) fn least(task: &JointTask, all: Vec<usize>) -> Result<JointPlan, JointError> {
    let Some(mut best) = search(&of(task, &all), f64::INFINITY)? else {
        return Err(JointError::Number);
    };
    best.plan = wider(best.plan, task, &all);
    let mut seen = vec![all];
    let mut at = 0;
    while at < seen.len() && !best.plan.proved {
        let set = seen[at].clone();
        at += 1;
        for left_out in &set {
            let fewer: Vec<usize> = set.iter().copied().filter(|one| one != left_out).collect();
            if fewer.is_empty() || seen.contains(&fewer) || seen.len() >= MOST_SETS {
                continue;
            }
            let (_, known) = cheapest(&best.plan.choices, task.joint_price);
            match search(&of(task, &fewer), known - SAME_COST * known.abs()) {
                Ok(Some(found)) => {
                    take(&mut best, wider(found.plan, task, &fewer), task);
                    seen.push(fewer);
                }
                Ok(None) => {}
                // Not with these; with fewer of them only by chance.
                Err(_) => seen.push(fewer),
            }
        }
    }
    Ok(best.plan)
}

/// The task with the stock at these indexes.
fn of(task: &JointTask, set: &[usize]) -> JointTask {
    let stock: Vec<Stock> = set.iter().map(|at| task.stock[*at]).collect();
    JointTask { stock, ..task.clone() }
}

/// A plan of some stock as one of all.
fn wider(mut plan: JointPlan, task: &JointTask, set: &[usize]) -> JointPlan {
    let spread = |counts: &[u32]| {
        let mut all = vec![0; task.stock.len()];
        for (at, count) in set.iter().zip(counts) {
            all[*at] = *count;
        }
        all
    };
    let cuts = &mut plan.cut_plan;
    (cuts.bought, cuts.on_hand_used) = (spread(&cuts.bought), spread(&cuts.on_hand_used));
    for pattern in &mut cuts.patterns {
        pattern.stock = set[pattern.stock];
    }
    plan
}

/// Takes over what is cheaper of another plan.
fn take(best: &mut Planned, mut other: JointPlan, task: &JointTask) {
    let price = task.joint_price;
    let chosen = other.choices[other.chosen];
    let (_, known) = cheapest(&best.plan.choices, price);
    if chosen.cost + price * f64::from(chosen.joints) >= known - SAME_COST * known.abs() {
        return;
    }
    // With all lengths the same pieces may cost less still.
    match plan(&cut_task(task, pieces(&other.cut_plan))) {
        Ok(all) if all.cost < other.cut_plan.cost => {
            other.choices[other.chosen].cost = all.cost;
            other.cut_plan = all;
        }
        Ok(all) => {
            other.cut_plan.bound = all.bound.min(other.cut_plan.cost);
            other.cut_plan.proved = same(other.cut_plan.cost, all.bound);
        }
        Err(_) => (other.cut_plan.bound, other.cut_plan.proved) = (0.0, false),
    }
    best.plan.joints_mm = other.joints_mm;
    best.plan.lengths_mm = other.lengths_mm;
    best.plan.cut_plan = other.cut_plan;
    let choices = &mut best.plan.choices;
    choices.extend(other.choices);
    crate::sorting::sort_by(choices, |a, b| {
        a.joints.cmp(&b.joints).then(a.cost.total_cmp(&b.cost))
    });
    let mut least = f64::INFINITY;
    choices.retain(|choice| {
        let cheaper = choice.cost < least - SAME_COST * choice.cost.abs();
        least = least.min(choice.cost);
        cheaper
    });
    for choice in choices.iter_mut() {
        let own = best.bounds.iter().find(|(joints, _)| *joints == choice.joints);
        let bound = own.map_or(best.bound, |(_, bound)| *bound);
        choice.proved = same(choice.cost, bound);
        choice.bound = if choice.proved { choice.cost } else { bound };
    }
    let (chosen, cost) = cheapest(choices, price);
    best.plan.chosen = chosen;
    best.plan.proved = same(cost, best.plan.bound);
    if best.plan.proved {
        best.plan.bound = cost;
    }
}

/// What a cut plan cuts, with its labels.
fn pieces(plan: &CutPlan) -> Vec<Piece> {
    let mut found: Vec<Piece> = Vec::new();
    for pattern in &plan.patterns {
        for piece in &pattern.pieces {
            match found.iter_mut().find(|known| known.label == piece.label) {
                Some(known) => known.count += pattern.count,
                None => found.push(Piece {
                    label: piece.label,
                    length_mm: piece.length_mm,
                    count: pattern.count,
                }),
            }
        }
    }
    found
}
