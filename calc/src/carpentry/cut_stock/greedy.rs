//! A first plan for the cut planner: longest piece first, each bin the one that pays best for what it takes.

use super::model::{Cut, Model, Packing, add, take, use_one};

/// Fills bin after bin; `None` when the limits leave pieces over.
pub(super) fn fill(model: &Model) -> Option<Packing> {
    let mut demand = model.demand.clone();
    let mut limits: Vec<Option<u32>> = model.bins.iter().map(|bin| bin.limit).collect();
    let mut packing = Packing::new();
    while let Some(longest) = demand.iter().position(|&count| count > 0) {
        let rest: i64 =
            demand.iter().zip(&model.weights).map(|(&count, weight)| i64::from(count) * weight).sum();
        let mut best: Option<(f64, Cut)> = None;
        for (index, bin) in model.bins.iter().enumerate() {
            if limits[index] == Some(0) || bin.capacity < model.weights[longest] {
                continue;
            }
            let cut = longest_first(model, &demand, index);
            let taken: i64 =
                cut.counts.iter().map(|&(kind, count)| model.weights[kind] * i64::from(count)).sum();
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
