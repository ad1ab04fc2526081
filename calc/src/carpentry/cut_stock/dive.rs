//! Whole plans from fractional ones: take the whole parts, solve the rest again, and so on.

use super::greedy;
use super::model::{Cut, Effort, Model, Packing, add, take, use_one};
use super::relax::{Relaxation, relax};
use super::simplex::End;
use super::solve::solve_without_end;
use crate::sorting::{sort, sort_by};

/// Parts of a cut above this are taken as a whole one.
const NEARLY_WHOLE: f64 = 0.7;

/// So many pieces at the end of a dive are planned exactly.
const MOST_AT_END: u32 = 40;

/// Dives from a fractional plan to a whole one; gives the cheapest met on the way, `goal` ends it early. With `exact_end` the last
/// pieces get a plan of their own.
pub(super) fn dive(
    model: &Model,
    root: &Relaxation,
    goal: i64,
    mut exact_end: bool,
    effort: &mut Effort,
) -> Option<Packing> {
    let mut best: Option<Packing> = None;
    let mut demand = model.demand.clone();
    let mut limits: Vec<Option<u32>> = model.bins.iter().map(|bin| bin.limit).collect();
    let mut packing = Packing::new();
    let mut used = root.used.clone();
    let mut cuts = root.cuts.clone();
    loop {
        let whole: Vec<(Cut, u32)> =
            used.iter().map(|(cut, times)| (cut.clone(), (times + 1e-6).floor() as u32)).collect();
        let rounded = if whole.iter().any(|(_, times)| *times > 0) {
            whole
        } else {
            // Nothing whole left: the cut that is most nearly whole, the fuller one of equals.
            let weight = |cut: &Cut| -> i64 {
                cut.counts.iter().map(|&(kind, count)| model.weights[kind] * i64::from(count)).sum()
            };
            let mut order: Vec<&(Cut, f64)> = used.iter().collect();
            sort_by(&mut order, |(a, x), (b, y)| {
                y.total_cmp(x).then(weight(b).cmp(&weight(a))).then(a.cmp(b))
            });
            // Together with it, those that are nearly as whole.
            order
                .iter()
                .enumerate()
                .filter(|(at, (_, times))| *at == 0 || *times > NEARLY_WHOLE)
                .map(|(_, (cut, _))| (cut.clone(), 1))
                .collect()
        };
        if rounded.is_empty() {
            return best;
        }
        for (cut, times) in rounded {
            for _ in 0..times {
                if limits[cut.bin] == Some(0) {
                    break;
                }
                if cut.counts.iter().any(|&(kind, count)| demand[kind] < count)
                    && !packing.is_empty()
                {
                    break;
                }
                let taken = take(&mut demand, &cut);
                use_one(&mut limits, taken.bin);
                add(&mut packing, taken, 1);
            }
        }
        let (rest, kinds) = model.residual(&demand, &limits);
        let by_hand = [greedy::fill(&rest), greedy::fill_full(&rest, effort)];
        for filled in by_hand.into_iter().flatten() {
            let mut whole = packing.clone();
            for (cut, times) in filled {
                add(&mut whole, widen(&cut, &kinds), times);
            }
            if best.as_ref().is_none_or(|known| model.cost(&whole) < model.cost(known)) {
                best = Some(whole);
            }
        }
        let pieces: u32 = rest.demand.iter().sum();
        if exact_end && pieces <= MOST_AT_END && !kinds.is_empty() {
            exact_end = false;
            let mut part = effort.part(0.5);
            if let Ok(solved) = solve_without_end(&rest, &mut part) {
                let mut whole = packing.clone();
                for (cut, times) in solved.packing {
                    add(&mut whole, widen(&cut, &kinds), times);
                }
                if best.as_ref().is_none_or(|known| model.cost(&whole) < model.cost(known)) {
                    best = Some(whole);
                }
            }
            effort.give_back(part);
        }
        let reached = best.as_ref().is_some_and(|known| model.cost(known) <= goal);
        if kinds.is_empty() || reached || effort.is_spent() {
            return best;
        }
        let known: Vec<Cut> = narrow(&cuts, &rest, &kinds, model.weights.len());
        let next = relax(&rest, &known, false, effort);
        if next.end != End::Optimal {
            return best;
        }
        used = next.used.iter().map(|(cut, times)| (widen(cut, &kinds), *times)).collect();
        cuts = next.cuts.iter().map(|cut| widen(cut, &kinds)).collect();
    }
}

/// A cut of the rest in the whole model's kinds.
pub(super) fn widen(cut: &Cut, kinds: &[usize]) -> Cut {
    let counts = cut.counts.iter().map(|&(kind, count)| (kinds[kind], count)).collect();
    Cut { bin: cut.bin, counts }
}

/// Known cuts trimmed to what the rest still wants, each once.
fn narrow(cuts: &[Cut], rest: &Model, kinds: &[usize], all: usize) -> Vec<Cut> {
    let mut place = vec![None; all];
    for (index, &kind) in kinds.iter().enumerate() {
        place[kind] = Some(index);
    }
    let mut narrowed: Vec<Cut> = cuts
        .iter()
        .filter_map(|cut| {
            let counts: Vec<(usize, u32)> = cut
                .counts
                .iter()
                .filter_map(|&(kind, count)| place[kind].map(|at| (at, count.min(rest.demand[at]))))
                .collect();
            (!counts.is_empty()).then_some(Cut { bin: cut.bin, counts })
        })
        .collect();
    sort(&mut narrowed);
    narrowed.dedup();
    narrowed
}
