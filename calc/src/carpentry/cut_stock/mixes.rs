//! Cheaper plans from the mixes of stock that have the room: each mix is fixed, then dived for.

use super::dive::dive;
use super::model::{Bin, Cut, Effort, Model, Packing};
use super::relax::{Relaxation, relax};
use super::simplex::End;
use crate::sorting::sort_by;

/// So many steps of the listing are made.
const MOST_STEPS: usize = 60_000;
/// So many mixes of one cost are tried: those with most room to spare.
const MOST_OF_ONE_COST: usize = 2;
/// A known cut that costs this part of its bin more than its pieces are worth is of no use.
const DEAR: f64 = 0.02;

/// A plan cheaper than `highest`, of `lowest` at least, from a mix of stock that has the room; the cheapest found. Dearer mixes have
/// more room to spare and are packed more easily, so the costs are halved like the pages of a book.
pub(super) fn cheaper(
    model: &Model,
    root: &Relaxation,
    lowest: i64,
    highest: i64,
    effort: &mut Effort,
) -> Option<Packing> {
    let mut mixes = mixes(model, lowest, highest);
    sort_by(&mut mixes, |a, b| a.cost.cmp(&b.cost).then(b.room.cmp(&a.room)));
    let mut costs: Vec<i64> = mixes.iter().map(|mix| mix.cost).collect();
    costs.dedup();
    let known: Vec<Cut> =
        root.cuts.iter().filter(|cut| is_of_use(model, root, cut)).cloned().collect();
    let mut best = None;
    let (mut low, mut high) = (0, costs.len());
    while low < high && !effort.is_spent() {
        let middle = usize::midpoint(low, high);
        let cost = costs[middle];
        let of_this_cost = mixes.iter().filter(|mix| mix.cost == cost).take(MOST_OF_ONE_COST);
        let mut found = None;
        for mix in of_this_cost {
            let mut part = effort.part(0.15);
            found = pack(model, mix, &known, &mut part);
            effort.give_back(part);
            if found.is_some() {
                break;
            }
        }
        match found {
            Some(packing) => {
                let cost = model.cost(&packing);
                high = costs.partition_point(|&known| known < cost);
                best = Some(packing);
            }
            None => low = middle + 1,
        }
    }
    best
}

/// A plan from a mix.
fn pack(model: &Model, mix: &Mix, known: &[Cut], effort: &mut Effort) -> Option<Packing> {
    let bins = model.bins.iter().zip(&mix.counts);
    let bins = bins.map(|(bin, &count)| Bin { limit: Some(count), ..bin.clone() }).collect();
    let limited = Model { bins, ..model.clone() };
    let fraction = relax(&limited, known, false, effort);
    if fraction.end != End::Optimal {
        return None;
    }
    dive(&limited, &fraction, mix.cost, true, effort)
}

fn is_of_use(model: &Model, root: &Relaxation, cut: &Cut) -> bool {
    let worth: f64 =
        cut.counts.iter().map(|&(kind, count)| root.duals[kind] * f64::from(count)).sum();
    let cost = model.bins[cut.bin].cost as f64;
    cost - root.bin_duals[cut.bin] - worth <= DEAR * cost
}

/// How many of each bin, what they cost, and the room they have.
struct Mix {
    cost: i64,
    room: i64,
    counts: Vec<u32>,
}

/// Mixes that cost from `lowest` to below `highest` and have room for all pieces.
fn mixes(model: &Model, lowest: i64, highest: i64) -> Vec<Mix> {
    let pieces = model.weights.iter().zip(&model.demand);
    let mut listing = Listing {
        model,
        weight: pieces.map(|(weight, &count)| weight * i64::from(count)).sum(),
        lowest,
        highest,
        steps: MOST_STEPS,
        found: Vec::new(),
    };
    listing.extend(&mut Vec::new(), 0, 0);
    listing.found
}

struct Listing<'a> {
    model: &'a Model,
    weight: i64,
    lowest: i64,
    highest: i64,
    steps: usize,
    found: Vec<Mix>,
}

impl Listing<'_> {
    fn extend(&mut self, counts: &mut Vec<u32>, cost: i64, room: i64) {
        if self.steps == 0 {
            return;
        }
        self.steps -= 1;
        let at = counts.len();
        let Some(bin) = self.model.bins.get(at) else {
            if cost >= self.lowest && room >= self.weight {
                self.found.push(Mix { cost, room, counts: counts.clone() });
            }
            return;
        };
        let most = self.model.most(at);
        let capacity = bin.capacity.max(0);
        // What costs nothing is all there.
        let least = if bin.cost == 0 { most } else { 0 };
        // The most room that the money left buys of the bins still to come.
        let later = self.model.bins.get(at + 1..).unwrap_or_default();
        let free: i64 = later
            .iter()
            .zip(at + 1..)
            .filter(|(bin, _)| bin.cost == 0)
            .map(|(bin, at)| bin.capacity.max(0).saturating_mul(i64::from(self.model.most(at))))
            .fold(0, i64::saturating_add);
        let rate = later
            .iter()
            .filter(|bin| bin.cost > 0 && bin.limit != Some(0))
            .map(|bin| bin.capacity.max(0) as f64 / bin.cost as f64)
            .fold(0.0, f64::max);
        for count in least..=most {
            let times = i64::from(count);
            let spent = cost.saturating_add(bin.cost.saturating_mul(times));
            if spent >= self.highest {
                break;
            }
            let room = room.saturating_add(capacity.saturating_mul(times));
            let most_room =
                room.saturating_add(free) as f64 + rate * (self.highest - 1 - spent) as f64;
            if most_room >= self.weight as f64 - 1.0 {
                counts.push(count);
                self.extend(counts, spent, room);
                counts.pop();
            }
        }
    }
}
