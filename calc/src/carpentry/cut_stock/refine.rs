//! After the cost: less stock length at the same cost, then fewer different patterns.

use super::model::{Bin, Cut, Effort, Model, Packing, add};
use super::solve::solve;
use crate::sorting::sort;

/// So many shorter mixes of stock are tried.
const MOST_MIXES: usize = 8;
/// So many steps of the listing of mixes are made.
const MOST_STEPS: usize = 20_000;

/// Lowers length and patterns of a packing where it can; the cost never rises.
///
/// Of two plans of one cost, the one from less stock length wastes less, save for the kerfs that pieces flush with an end do not
/// cost. Shorter mixes of stock are listed, shortest first, and each is tried; patterns are only joined in pairs. Neither is
/// proved to be the best.
pub(in crate::carpentry) fn refine(model: &Model, packing: &mut Packing, effort: &mut Effort) {
    for mix in shorter_mixes(model, packing) {
        let bins = model.bins.iter().zip(&mix);
        let bins = bins.map(|(bin, &count)| Bin { limit: Some(count), ..bin.clone() }).collect();
        let limited = Model { bins, ..model.clone() };
        let mut part = effort.part(0.3);
        let found = solve(&limited, &mut part);
        effort.give_back(part);
        if let Ok(found) = found
            && model.cost(&found.packing) <= model.cost(packing)
            && model.length(&found.packing) < model.length(packing)
        {
            *packing = found.packing;
            break;
        }
    }
    join_pairs(model, packing);
}

/// Numbers of each bin that cost what the packing costs, are shorter, and have the room; shortest first.
fn shorter_mixes(model: &Model, packing: &Packing) -> Vec<Vec<u32>> {
    let pieces = model.weights.iter().zip(&model.demand);
    let listing = &mut Listing {
        model,
        weight: pieces.map(|(weight, &count)| weight * i64::from(count)).sum(),
        length: model.length(packing),
        steps: MOST_STEPS,
        mixes: Vec::new(),
    };
    if model.bins.len() > 1 {
        listing.extend(&mut Vec::new(), model.cost(packing), 0, 0);
    }
    sort(&mut listing.mixes);
    listing.mixes.iter().take(MOST_MIXES).map(|(_, mix)| mix.clone()).collect()
}

struct Listing<'a> {
    model: &'a Model,
    weight: i64,
    length: i64,
    steps: usize,
    mixes: Vec<(i64, Vec<u32>)>,
}

impl Listing<'_> {
    fn extend(&mut self, mix: &mut Vec<u32>, money: i64, length: i64, room: i64) {
        if self.steps == 0 || length >= self.length {
            return;
        }
        self.steps -= 1;
        let Some(bin) = self.model.bins.get(mix.len()) else {
            if money == 0 && room >= self.weight {
                self.mixes.push((length, mix.clone()));
            }
            return;
        };
        let most = self.model.most(mix.len());
        if mix.len() + 1 == self.model.bins.len() && bin.cost > 0 {
            // Of the last bin, only one number takes all the money; the others count as steps all the same.
            let longest = (self.length - 1 - length) / bin.length.max(1);
            let last = (money / bin.cost).min(longest).min(i64::from(most));
            let tried = usize::try_from(last + 1).unwrap_or(0).min(self.steps);
            self.steps -= tried;
            let times = money / bin.cost;
            if times * bin.cost == money && usize::try_from(times).is_ok_and(|times| times < tried)
            {
                let room = room + bin.capacity.max(0) * times;
                if room >= self.weight {
                    let counts = mix.iter().copied().chain([times as u32]);
                    self.mixes.push((length + bin.length * times, counts.collect()));
                }
            }
            return;
        }
        for count in 0..=most {
            let times = i64::from(count);
            if bin.cost * times > money || length + bin.length * times >= self.length {
                break;
            }
            mix.push(count);
            let (capacity, cost) = (bin.capacity.max(0) * times, bin.cost * times);
            self.extend(mix, money - cost, length + bin.length * times, room + capacity);
            mix.pop();
        }
    }
}

/// Makes one pattern of two where their pieces can be shared out evenly.
fn join_pairs(model: &Model, packing: &mut Packing) {
    let mut joined = true;
    while joined {
        joined = false;
        'pairs: for first in 0..packing.len() {
            for second in first + 1..packing.len() {
                if let Some((cut, times)) = join(model, &packing[first], &packing[second]) {
                    packing.swap_remove(second);
                    packing.swap_remove(first);
                    add(packing, cut, times);
                    joined = true;
                    break 'pairs;
                }
            }
        }
    }
}

fn join(model: &Model, (a, x): &(Cut, u32), (b, y): &(Cut, u32)) -> Option<(Cut, u32)> {
    if a.bin != b.bin {
        return None;
    }
    let mut totals = vec![0u32; model.weights.len()];
    for (cut, times) in [(a, x), (b, y)] {
        for &(kind, count) in &cut.counts {
            totals[kind] += count * times;
        }
    }
    let times = x + y;
    if totals.iter().any(|total| !total.is_multiple_of(times)) {
        return None;
    }
    let shared = totals.iter().enumerate().filter(|(_, total)| **total > 0);
    let counts: Vec<(usize, u32)> = shared.map(|(kind, total)| (kind, total / times)).collect();
    let weight: i64 =
        counts.iter().map(|&(kind, count)| model.weights[kind] * i64::from(count)).sum();
    (weight <= model.bins[a.bin].capacity).then_some((Cut { bin: a.bin, counts }, times))
}
