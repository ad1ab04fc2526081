//! A first plan for the cut planner: longest piece first, each bin the one that pays best for what it takes.

use super::knapsack::{Item, Knapsack};
use super::model::{Cut, Effort, Model, Packing, add, take, use_one};

/// Steps for one full bin.
const FULLEST_STEPS: usize = 40_000;

/// Fills bin after bin, longest piece first; `None` when the limits leave pieces over.
pub(super) fn fill(model: &Model) -> Option<Packing> {
    fill_by(model, &mut |demand, bin| longest_first(model, demand, bin))
}

/// Fills bin after bin with the longest piece and the rest as full as can be (minimum bin slack).
pub(super) fn fill_full(model: &Model, effort: &mut Effort) -> Option<Packing> {
    fill_by(model, &mut |demand, bin| {
        if effort.is_spent() {
            longest_first(model, demand, bin)
        } else {
            fullest(model, demand, bin, effort)
        }
    })
}

fn fill_by(model: &Model, cut_of: &mut dyn FnMut(&[u32], usize) -> Cut) -> Option<Packing> {
    let mut demand = model.demand.clone();
    let mut limits: Vec<Option<u32>> = model.bins.iter().map(|bin| bin.limit).collect();
    let mut packing = Packing::new();
    while let Some(longest) = demand.iter().position(|&count| count > 0) {
        let rest: i64 = demand
            .iter()
            .zip(&model.weights)
            .map(|(&count, weight)| i64::from(count) * weight)
            .sum();
        let mut best: Option<(f64, Cut)> = None;
        for (index, bin) in model.bins.iter().enumerate() {
            if limits[index] == Some(0) || bin.capacity < model.weights[longest] {
                continue;
            }
            let cut = cut_of(&demand, index);
            let taken: i64 = cut
                .counts
                .iter()
                .map(|&(kind, count)| model.weights[kind] * i64::from(count))
                .sum();
            // The last bin is worth all it costs; before that, price (or length) for each bit of piece.
            let price = if bin.cost > 0 { bin.cost as f64 } else { bin.capacity as f64 * 1e-9 };
            let mut rate = price / taken as f64;
            if taken == rest {
                rate *= 0.5;
            }
            if best.as_ref().is_none_or(|(least, _)| rate < *least) {
                best = Some((rate, cut));
            }
        }
        let (_, cut) = best?;
        let taken = take(&mut demand, &cut);
        use_one(&mut limits, taken.bin);
        add(&mut packing, taken, 1);
    }
    Some(packing)
}

fn longest_first(model: &Model, demand: &[u32], bin: usize) -> Cut {
    let mut room = model.bins[bin].capacity;
    let mut counts = Vec::new();
    for (kind, &wanted) in demand.iter().enumerate() {
        let weight = model.weights[kind];
        let count = wanted.min(u32::try_from(room / weight).unwrap_or(u32::MAX));
        if count > 0 {
            room -= weight * i64::from(count);
            counts.push((kind, count));
        }
    }
    Cut { bin, counts }
}

fn fullest(model: &Model, demand: &[u32], bin: usize, effort: &mut Effort) -> Cut {
    let mut rest = demand.to_vec();
    let Some(longest) = demand.iter().position(|&count| count > 0) else {
        return Cut { bin, counts: Vec::new() };
    };
    rest[longest] -= 1;
    let room = model.bins[bin].capacity - model.weights[longest];
    let items = model.weights.iter().zip(&rest).enumerate();
    let knapsack = Knapsack::new(
        items
            .map(|(kind, (&weight, &count))| Item { kind, weight, value: weight as f64, count })
            .collect(),
    );
    let mut steps = Effort::new(FULLEST_STEPS as u64);
    let mut counts = knapsack.best(room, 0.0, &mut steps).map_or_else(Vec::new, |best| best.counts);
    effort.spend(FULLEST_STEPS - steps.left());
    match counts.iter_mut().find(|(kind, _)| *kind == longest) {
        Some((_, count)) => *count += 1,
        None => counts.insert(0, (longest, 1)),
    }
    Cut { bin, counts }
}
