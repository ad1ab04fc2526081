//! A first plan for the cut planner: longest piece first, each bin the one that pays best for what it takes.

use super::knapsack::{Item, Knapsack};
use super::model::{Cut, Effort, Model, Packing, add, take, use_one};

/// Steps for one full bin.
const FULLEST_STEPS: usize = 40_000;

/// Fills bin after bin, longest piece first; `None` when the limits leave pieces over.
pub(in crate::carpentry) fn fill(model: &Model) -> Option<Packing> {
    fill_by(model, None)
}

/// Fills bin after bin with the longest piece and the rest as full as can be (minimum bin slack).
pub(in crate::carpentry) fn fill_full(model: &Model, effort: &mut Effort) -> Option<Packing> {
    fill_by(model, Some(effort))
}

/// With effort each bin is filled as full as can be, without it longest piece first.
fn fill_by(model: &Model, mut effort: Option<&mut Effort>) -> Option<Packing> {
    let widest = model.bins.iter().map(|bin| bin.capacity).max().unwrap_or(0);
    let mut demand = model.demand.clone();
    let mut limits: Vec<Option<u32>> = model.bins.iter().map(|bin| bin.limit).collect();
    let mut packing = Packing::new();
    while let Some(longest) = demand.iter().position(|&count| count > 0) {
        let rest: i64 = demand
            .iter()
            .zip(&model.weights)
            .map(|(&count, weight)| i64::from(count) * weight)
            .sum();
        let before = effort.as_ref().map_or(0, |effort| effort.left());
        let mut best: Option<(f64, Cut)> = None;
        for (index, bin) in model.bins.iter().enumerate() {
            if limits[index] == Some(0) || bin.capacity < model.weights[longest] {
                continue;
            }
            let cut = match &mut effort {
                Some(effort) if !effort.is_spent() => fullest(model, &demand, index, effort),
                _ => longest_first(model, &demand, index),
            };
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
        // While more pieces are left than any bin takes, the next bin is filled as this one was: so are all of these at once.
        let room = widest - model.weights[longest];
        let mut times = limits[taken.bin].unwrap_or(u32::MAX);
        for &(kind, count) in &taken.counts {
            let fitting = u32::try_from(room / model.weights[kind]).unwrap_or(u32::MAX);
            let needed = fitting.saturating_add(if kind == longest { 2 } else { 1 });
            times = times.min(demand[kind].checked_sub(needed).map_or(0, |over| over / count + 1));
        }
        if let Some(effort) = &mut effort {
            let spent = before - effort.left();
            match spent.checked_mul(times as usize) {
                Some(spent) if spent < effort.left() => {
                    effort.spend(spent);
                }
                _ => times = 0,
            }
        }
        for (kind, count) in &taken.counts {
            demand[*kind] -= count * times;
        }
        if let Some(limit) = &mut limits[taken.bin] {
            *limit -= times;
        }
        add(&mut packing, taken, 1 + times);
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
