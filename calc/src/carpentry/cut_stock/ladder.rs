//! Which costs a plan can have at all: sums of the prices, so that a bound can be lifted to the next of them.

use super::model::Bin;

/// Tables longer than this are not made; every step of the price grid then counts as possible.
const LONGEST: i64 = 400_000;
/// Slack of a bound that comes from floating-point numbers, relative.
const SLACK: f64 = 1e-7;

/// Sums of prices up to a limit, a bit for each step of the price grid.
#[derive(Debug)]
pub(in crate::carpentry) struct Ladder {
    possible: Vec<u64>,
    size: usize,
}

impl Ladder {
    /// Sums of the bins' costs up to `highest`.
    pub(in crate::carpentry) fn new(bins: &[Bin], highest: i64) -> Self {
        let Ok(size) = usize::try_from(highest.saturating_add(1)) else {
            return Self { possible: Vec::new(), size: 0 };
        };
        if highest > LONGEST {
            return Self { possible: Vec::new(), size: 0 };
        }
        let mut possible = vec![0; size.div_ceil(64)];
        if let Some(first) = possible.first_mut() {
            *first = 1;
        }
        for bin in bins.iter().filter(|bin| bin.cost > 0 && bin.limit != Some(0)) {
            let Ok(mut shift) = usize::try_from(bin.cost) else { continue };
            // One of the bin, then up to three, up to seven, and so on.
            while shift < size {
                add_shifted(&mut possible, shift);
                shift *= 2;
            }
        }
        Self { possible, size }
    }

    /// The least possible cost that is not below `bound`.
    pub(in crate::carpentry) fn next(&self, bound: f64) -> i64 {
        let slack = SLACK * (1.0 + bound.abs());
        let mut at = (bound - slack).ceil().max(0.0) as i64;
        while let Some(false) = usize::try_from(at).ok().and_then(|at| self.is_possible(at)) {
            at += 1;
        }
        at
    }

    /// Whether a cost is a sum of prices; none past the table's end.
    fn is_possible(&self, at: usize) -> Option<bool> {
        let word = self.possible.get(at / 64).filter(|_| at < self.size)?;
        Some(word >> (at % 64) & 1 == 1)
    }
}

/// Adds the bits, moved up by `shift`, to themselves.
fn add_shifted(bits: &mut [u64], shift: usize) {
    let (words, rest) = (shift / 64, shift % 64);
    // From the top, so that what is read has not been added to.
    for at in (words..bits.len()).rev() {
        let mut moved = bits[at - words] << rest;
        if rest > 0 && at > words {
            moved |= bits[at - words - 1] >> (64 - rest);
        }
        bits[at] |= moved;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Against the sums counted one by one.
    #[test]
    fn every_sum_of_prices_and_no_other_is_possible() {
        for costs in [vec![1], vec![3], vec![64, 89, 102], vec![79, 96, 114, 151], vec![200, 500]] {
            let bins: Vec<Bin> = costs
                .iter()
                .map(|&cost| Bin { capacity: 1, length: 1, cost, limit: None })
                .collect();
            let ladder = Ladder::new(&bins, 1500);
            let mut sums = vec![false; 1501];
            sums[0] = true;
            for at in 1..=1500_i64 {
                let below = |cost: &i64| usize::try_from(at - cost).is_ok_and(|below| sums[below]);
                let is = costs.iter().any(below);
                sums[at as usize] = is;
                assert_eq!(ladder.next(at as f64) == at, is, "{at} of {costs:?}");
            }
            assert_eq!(ladder.next(1501.0), 1501);
        }
    }
}
