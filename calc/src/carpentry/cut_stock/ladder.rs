//! Which costs a plan can have at all: sums of the prices, so that a bound can be lifted to the next of them.

use super::model::Bin;

/// Tables longer than this are not made; every step of the price grid then counts as possible.
const LONGEST: i64 = 400_000;
/// Slack of a bound that comes from floating-point numbers, relative.
const SLACK: f64 = 1e-7;

/// Sums of prices up to a limit.
#[derive(Debug)]
pub(super) struct Ladder {
    possible: Vec<bool>,
}

impl Ladder {
    /// Sums of the bins' costs up to `highest`.
    pub(super) fn new(bins: &[Bin], highest: i64) -> Self {
        let Ok(size) = usize::try_from(highest.saturating_add(1)) else {
            return Self { possible: Vec::new() };
        };
        if highest > LONGEST {
            return Self { possible: Vec::new() };
        }
        let mut possible = vec![false; size];
        if let Some(first) = possible.first_mut() {
            *first = true;
        }
        for bin in bins.iter().filter(|bin| bin.cost > 0 && bin.limit != Some(0)) {
            let Ok(cost) = usize::try_from(bin.cost) else { continue };
            for at in cost..size {
                possible[at] |= possible[at - cost];
            }
        }
        Self { possible }
    }

    /// The least possible cost that is not below `bound`.
    pub(super) fn next(&self, bound: f64) -> i64 {
        let slack = SLACK * (1.0 + bound.abs());
        let mut at = (bound - slack).ceil().max(0.0) as i64;
        while let Some(false) = usize::try_from(at).ok().and_then(|at| self.possible.get(at)) {
            at += 1;
        }
        at
    }
}
