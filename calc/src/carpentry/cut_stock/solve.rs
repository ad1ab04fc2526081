//! The cut planner's order of work: a plan by hand, a bound, dives, then the exact search in growing steps.

use super::dive::dive;
use super::greedy;
use super::ladder::Ladder;
use super::mixes;
use super::model::{Cut, Effort, Model, Packing};
use super::relax::{Relaxation, relax};
use super::search::{pool, search};
use super::simplex::End;

/// Relative slack of a bound.
const BOUND_SLACK: f64 = 2e-7;
/// With less effort left than this no mixes of stock are tried: listing them takes longer than a quick plan.
const LEAST_FOR_MIXES: usize = 5_000_000;
/// More cuts than this are not searched.
const MOST_CUTS: usize = 20_000;
/// So many are searched for a cheaper plan where there are too many for a proof.
const MOST_PROMISING: usize = 1_000;
/// With more kinds of piece than this the linear programs are left out.
const MOST_KINDS: usize = 400;

/// The cheapest plan found, and what is known about cheaper ones. Costs in steps of the price grid.
#[derive(Debug)]
pub(in crate::carpentry) struct Solved {
    pub packing: Packing,
    pub bound: i64,
}

/// Why there is no plan.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(in crate::carpentry) enum Failed {
    /// No plan exists within the limits.
    Impossible,
    /// None was found before effort ran out.
    NotFound,
}

/// The cheapest plan of the model.
pub(in crate::carpentry) fn solve(model: &Model, effort: &mut Effort) -> Result<Solved, Failed> {
    solve_with(model, true, effort)
}

/// The same, with dives that do not call for a plan of their last pieces.
pub(in crate::carpentry) fn solve_without_end(
    model: &Model,
    effort: &mut Effort,
) -> Result<Solved, Failed> {
    solve_with(model, false, effort)
}

fn solve_with(model: &Model, exact_end: bool, effort: &mut Effort) -> Result<Solved, Failed> {
    if !has_room(model) {
        return Err(Failed::Impossible);
    }
    let mut best = greedy::fill(model);
    let most: i64 = (0..model.bins.len())
        .map(|bin| model.bins[bin].cost.saturating_mul(i64::from(model.most(bin))))
        .fold(0, i64::saturating_add);
    let mut highest = best.as_ref().map_or(most, |packing| model.cost(packing));
    let mut ladder = Ladder::new(&model.bins, highest);
    let simple = material_bound(model).max(alone_bound(model));
    let mut bound = ladder.next(simple);
    if best.is_none() || bound < highest {
        let mut part = effort.part(0.1);
        if let Some(full) = greedy::fill_full(model, &mut part)
            && (best.is_none() || model.cost(&full) < highest)
        {
            highest = model.cost(&full);
            best = Some(full);
            ladder = Ladder::new(&model.bins, highest);
            bound = ladder.next(simple);
        }
        effort.give_back(part);
    }
    let reached = |best: &Option<Packing>, bound: i64| {
        best.as_ref().is_some_and(|packing| reaches(model.cost(packing), bound))
    };
    if reached(&best, bound) || model.weights.len() > MOST_KINDS {
        return finish(best, bound, Failed::NotFound);
    }
    let known: Vec<Cut> = best.iter().flatten().map(|(cut, _)| cut.clone()).collect();
    let mut part = effort.part(0.7);
    let root = relax(model, &known, true, &mut part);
    effort.give_back(part);

    if root.end == End::Infeasible {
        return finish(best, bound, Failed::Impossible);
    }
    bound = bound.max(ladder.next(root.bound));
    if reached(&best, bound) {
        return finish(best, bound, Failed::NotFound);
    }
    // An unfinished fractional plan is worth a dive, but proves no more than its bound.
    let mut part = effort.part(if root.end == End::Optimal { 0.4 } else { 1.0 });
    if let Some(found) = dive(model, &root, bound, exact_end, &mut part)
        && best.as_ref().is_none_or(|known| model.cost(&found) < model.cost(known))
    {
        best = Some(found);
    }
    effort.give_back(part);
    if root.end != End::Optimal {
        return finish(best, bound, Failed::NotFound);
    }
    if exact_end
        && model.bins.len() > 1
        && effort.left() >= LEAST_FOR_MIXES
        && !reached(&best, bound)
        && let Some(known) = best.as_ref().map(|packing| model.cost(packing))
    {
        let mut part = effort.part(0.6);
        if let Some(found) = mixes::cheaper(model, &root, bound, known, &mut part) {
            best = Some(found);
        }
        effort.give_back(part);
    }
    let mut window = 0;
    while !reached(&best, bound) {
        if effort.is_spent() {
            return finish(best, bound, Failed::NotFound);
        }
        highest = best.as_ref().map_or(highest, |packing| model.cost(packing) - 1);
        if bound > highest {
            return finish(best, bound, Failed::Impossible);
        }
        let ceiling = bound.saturating_add(window).min(highest);
        let room = ceiling as f64 - root.bound;
        let Some(cuts) = pool(model, &root, room, MOST_CUTS, effort) else {
            if window > 0 {
                window /= 4;
                continue;
            }
            // Too many to prove anything: the most promising of them may still hold a cheaper plan.
            let found = promising(model, &root, room, &ladder, highest, bound, effort);
            return finish(found.or(best), bound, Failed::NotFound);
        };
        let (found, complete) = search(model, &cuts, &ladder, ceiling, bound, u32::MAX, effort);
        match (found, complete) {
            (Some(found), true) => {
                bound = model.cost(&found);
                best = Some(found);
            }
            (Some(found), false) => best = Some(found),
            (None, true) => {
                window = (ceiling - bound + 1).saturating_mul(2);
                bound = ladder.next((ceiling + 1) as f64);
            }
            (None, false) => return finish(best, bound, Failed::NotFound),
        }
    }
    finish(best, bound, Failed::NotFound)
}

/// True when a cost is the bound, to the digits that a bound has: on a price grid of under five million steps, exactly.
pub(in crate::carpentry) fn reaches(cost: i64, bound: i64) -> bool {
    cost - bound <= (bound as f64 * BOUND_SLACK) as i64
}

/// A cheaper plan from the cuts of least reduced cost.
fn promising(
    model: &Model,
    root: &Relaxation,
    mut room: f64,
    ladder: &Ladder,
    highest: i64,
    goal: i64,
    effort: &mut Effort,
) -> Option<Packing> {
    while !effort.is_spent() {
        room *= 0.6;
        if let Some(cuts) = pool(model, root, room, MOST_PROMISING, effort) {
            let mut best = None;
            let (mut slips, mut highest) = (1, highest);
            while !effort.is_spent() {
                let (found, complete) = search(model, &cuts, ladder, highest, goal, slips, effort);
                if let Some(found) = found {
                    highest = model.cost(&found) - 1;
                    best = Some(found);
                }
                if complete || highest < goal {
                    break;
                }
                slips *= 2;
            }
            return best;
        }
    }
    None
}

/// Whether all bins together have room for all pieces.
fn has_room(model: &Model) -> bool {
    let pieces = model.weights.iter().zip(&model.demand);
    let weight: i64 = pieces.map(|(weight, &count)| weight * i64::from(count)).sum();
    let mut room = 0_i64;
    for bin in &model.bins {
        let Some(limit) = bin.limit else { return true };
        room = room.saturating_add(bin.capacity.max(0).saturating_mul(i64::from(limit)));
    }
    room >= weight && has_bins(model)
}

/// Whether the pieces too long to share a bin have one each.
fn has_bins(model: &Model) -> bool {
    let mut pieces = 0;
    alone(model).all(|(weight, count)| {
        pieces += u64::from(count);
        let mut wide = model.bins.iter().filter(|bin| bin.capacity >= weight);
        let bins = wide.try_fold(0, |sum, bin| Some(sum + u64::from(bin.limit?)));
        bins.is_none_or(|bins| bins >= pieces)
    })
}

/// The pieces of which no two fit into one bin, longest first: weights and counts.
fn alone(model: &Model) -> impl Iterator<Item = (i64, u32)> {
    let widest = model.bins.iter().map(|bin| bin.capacity).max().unwrap_or(0);
    let pieces = model.weights.iter().copied().zip(model.demand.iter().copied());
    pieces.take_while(move |(weight, _)| 2 * weight > widest)
}

/// Each piece that cannot share a bin with another such piece in the cheapest that takes it.
fn alone_bound(model: &Model) -> f64 {
    let cheapest = |weight: i64| {
        let bins = model.bins.iter().filter(|bin| bin.capacity >= weight && bin.limit != Some(0));
        bins.map(|bin| bin.cost).min().unwrap_or(0)
    };
    alone(model).map(|(weight, count)| cheapest(weight) as f64 * f64::from(count)).sum()
}

fn finish(best: Option<Packing>, bound: i64, failed: Failed) -> Result<Solved, Failed> {
    best.map(|packing| Solved { packing, bound }).ok_or(failed)
}

/// All pieces as one heap, cut from the stock that gives most room for its price, after what is free.
fn material_bound(model: &Model) -> f64 {
    let pieces = model.weights.iter().zip(&model.demand);
    let mut weight: i64 = pieces.map(|(weight, &count)| weight * i64::from(count)).sum();
    let mut rate = f64::INFINITY;
    for bin in model.bins.iter().filter(|bin| bin.capacity > 0) {
        match (bin.cost, bin.limit) {
            (0, Some(limit)) => weight -= bin.capacity.saturating_mul(i64::from(limit)),
            (0, None) => weight = 0,
            (cost, _) => rate = rate.min(cost as f64 / bin.capacity as f64),
        }
    }
    if rate.is_finite() { rate * weight.max(0) as f64 } else { 0.0 }
}
