//! Mixes of stock: so many of each length, whatever is cut from them.

use super::cheapest::Prices;
use super::field::Field;
use super::master::{Group, Master};
use crate::carpentry::cut_stock::model::Bin;
use crate::sorting::sort_by;

/// Steps of one listing.
const MOST_STEPS: usize = 60_000;

/// How many of each bin, and what they cost.
#[derive(Clone, Debug)]
pub(super) struct Mix {
    pub cost: i64,
    counts: Vec<u32>,
}

/// Mixes by rising cost.
pub(super) struct List {
    pub mixes: Vec<Mix>,
    /// Whether no mix is missing below the dearest of them.
    pub complete: bool,
    /// Whether these are all.
    pub all: bool,
}

impl Mix {
    /// A program that asks how many lengths more than a mix are wanted: the mix is free, the longest length costs one.
    pub(super) fn master<'a>(field: &'a Field, bins: &[Bin]) -> Master<'a> {
        let mut free: Vec<Bin> =
            bins.iter().map(|bin| Bin { cost: 0, limit: Some(0), ..bin.clone() }).collect();
        if let Some(longest) = bins.iter().max_by_key(|bin| bin.capacity) {
            free.push(Bin { cost: 1, limit: None, ..longest.clone() });
        }
        Master::new(field, free, false)
    }

    /// Gives a program of [`Mix::master`] this mix.
    pub(super) fn limit(&self, master: &mut Master<'_>) {
        for (bin, count) in master.bins.iter_mut().zip(&self.counts) {
            bin.limit = Some(*count);
        }
    }
}

/// Mixes that cost from `lowest` to below `highest` and have room for all courses; `None` where stock without limit costs nothing.
pub(super) fn mixes(
    field: &Field,
    bins: &[Bin],
    lowest: i64,
    highest: i64,
    most: usize,
) -> Option<List> {
    if bins.iter().any(|bin| bin.cost == 0 && bin.limit.is_none()) {
        return None;
    }
    let lengths: Vec<f64> = field.weights.iter().map(|weight| *weight as f64).collect();
    let weights = Group::all(field).into_iter().map(|group| {
        let found = group.cheapest(field, Prices { pieces: &lengths, joint: 0.0 });
        found.map_or(0.0, |(weight, _)| weight * f64::from(group.count))
    });
    let mut listing = Listing {
        bins,
        weight: weights.sum::<f64>() - 1.0,
        lowest,
        highest,
        steps: MOST_STEPS,
        found: Vec::new(),
    };
    listing.extend(&mut Vec::new(), 0, 0.0);
    let complete = listing.steps > 0;
    let mut found = listing.found;
    // Of one cost the roomiest first.
    sort_by(&mut found, |a, b| {
        a.0.cost.cmp(&b.0.cost).then(b.1.total_cmp(&a.1)).then(a.0.counts.cmp(&b.0.counts))
    });
    let all = complete && found.len() <= most;
    found.truncate(most);
    Some(List { mixes: found.into_iter().map(|(mix, _)| mix).collect(), complete, all })
}

struct Listing<'a> {
    bins: &'a [Bin],
    weight: f64,
    lowest: i64,
    highest: i64,
    steps: usize,
    found: Vec<(Mix, f64)>,
}

impl Listing<'_> {
    fn extend(&mut self, counts: &mut Vec<u32>, cost: i64, room: f64) {
        if self.steps == 0 {
            return;
        }
        self.steps -= 1;
        let Some(bin) = self.bins.get(counts.len()) else {
            if cost >= self.lowest && room >= self.weight {
                self.found.push((Mix { cost, counts: counts.clone() }, room));
            }
            return;
        };
        let capacity = bin.capacity.max(0) as f64;
        let later = &self.bins[counts.len() + 1..];
        let free = later.iter().filter(|bin| bin.cost == 0);
        let free: f64 =
            free.map(|bin| bin.capacity.max(0) as f64 * f64::from(bin.limit.unwrap_or(0))).sum();
        let rates = later.iter().filter(|bin| bin.cost > 0 && bin.limit != Some(0));
        let rate =
            rates.map(|bin| bin.capacity.max(0) as f64 / bin.cost as f64).fold(0.0, f64::max);
        // What costs nothing is all there.
        let least = if bin.cost == 0 { bin.limit.unwrap_or(0) } else { 0 };
        for count in least..=bin.limit.unwrap_or(u32::MAX) {
            let spent = cost.saturating_add(bin.cost.saturating_mul(i64::from(count)));
            if spent >= self.highest {
                break;
            }
            let room = room + capacity * f64::from(count);
            // The most room that the money left buys of what is still to come.
            let left = (self.highest - 1 - spent) as f64;
            if room + free + rate * left >= self.weight {
                counts.push(count);
                self.extend(counts, spent, room);
                counts.pop();
            }
        }
    }
}
