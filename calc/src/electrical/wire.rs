//! Wire to cut and to buy: pieces of each run with slack, and totals by conductor.

use super::conductor::Conductor;
use super::range::{OutOfRange, RUN_LENGTH_M, Range};

/// Extra length at each end of a piece.
pub const SLACK_M: Range = Range::new(crate::words::electrical::RANGE_SLACK, 0.0, 10.0, "m");

/// The way of a wire that is laid square to the walls from one point to another, and up and over
/// once: |dx| + |dy| + rise. In m; points along and across the body.
///
/// # Source
/// [`super::sources::SQUARE_ROUTE`].
pub fn route_m(from: (f64, f64), to: (f64, f64), rise_m: f64) -> f64 {
    (to.0 - from.0).abs() + (to.1 - from.1).abs() + rise_m
}

/// Lengths of wire on a spool as commonly sold, in feet and in metres, least first.
///
/// # Source
/// Common practice, no source.
pub const SPOOLS: [[f64; 5]; 2] =
    [[25.0, 50.0, 100.0, 250.0, 500.0], [5.0, 10.0, 25.0, 50.0, 100.0]];

/// Spools of one length for `needed` of wire: how many, and how long each. The least spool that is
/// enough, else several of the longest. None where nothing, or no finite length, is needed.
pub fn spools(needed: f64, sold: &[f64]) -> Option<(u32, f64)> {
    if !(needed > 0.0 && needed < 1e6) {
        return None;
    }
    let is_enough = |spool: &&f64| **spool * (1.0 + 1e-9) >= needed;
    if let Some(spool) = sold.iter().find(is_enough) {
        return Some((1, *spool));
    }
    let longest = sold.last().copied().filter(|longest| *longest > 0.0)?;
    Some(((needed / longest * (1.0 - 1e-9)).ceil() as u32, longest))
}

/// The two pieces of a run, positive and negative, of one length.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pair {
    /// Place of the run.
    pub run: usize,
    /// What both are cut from.
    pub conductor: Conductor,
    /// Length of each of the two, slack at both ends included, in m.
    pub length_m: f64,
}

/// The pieces of every run: its one-way length, and `slack_m` (0 to 10 m) at each end for
/// stripping and joining.
///
/// # Errors
/// The place of the run and [`OutOfRange`] for a length outside 0 to 10,000 m; the slack is counted
/// to the first run.
pub fn pairs(runs: &[(Conductor, f64)], slack_m: f64) -> Result<Vec<Pair>, (usize, OutOfRange)> {
    let slack_m = SLACK_M.check(slack_m).map_err(|range| (0, range))?;
    let pair = |(run, (conductor, length_m)): (usize, &(Conductor, f64))| {
        let length_m = RUN_LENGTH_M.check(*length_m).map_err(|range| (run, range))?;
        Ok(Pair { run, conductor: *conductor, length_m: length_m + 2.0 * slack_m })
    };
    runs.iter().enumerate().map(pair).collect()
}

/// Wire to buy by conductor, both polarities together, in m, in the order of first use.
///
/// Half of each total is one colour.
pub fn totals_m(pairs: &[Pair]) -> Vec<(Conductor, f64)> {
    let mut totals: Vec<(Conductor, f64)> = Vec::new();
    for pair in pairs {
        match totals.iter_mut().find(|(conductor, _)| *conductor == pair.conductor) {
            Some((_, length_m)) => *length_m += 2.0 * pair.length_m,
            None => totals.push((pair.conductor, 2.0 * pair.length_m)),
        }
    }
    totals
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_way_along_across_and_over() {
        assert!((route_m((0.3, 0.0), (2.0, 1.5), 2.1) - 5.3).abs() < 1e-12);
        assert!((route_m((2.0, 1.5), (0.3, 0.0), 0.0) - 3.2).abs() < 1e-12);
    }

    #[test]
    fn the_least_spool_that_is_enough() {
        let feet = &SPOOLS[0];
        assert_eq!(spools(12.0, feet), Some((1, 25.0)));
        assert_eq!(spools(25.0, feet), Some((1, 25.0)));
        assert_eq!(spools(25.1, feet), Some((1, 50.0)));
        assert_eq!(spools(1001.0, feet), Some((3, 500.0)));
        assert_eq!(spools(0.0, feet), None);
        assert_eq!(spools(f64::NAN, feet), None);
        assert_eq!(spools(1.0, &[]), None);
    }

    #[test]
    fn both_conductors_and_slack_at_both_ends() {
        let wire = |text: &str| text.parse::<Conductor>().unwrap();
        let runs = [(wire("16 AWG"), 2.0), (wire("14 AWG"), 1.0), (wire("16 AWG"), 0.5)];
        let pairs = pairs(&runs, 0.1).unwrap();
        assert!((pairs[0].length_m - 2.2).abs() < 1e-12);
        let totals = totals_m(&pairs);
        assert_eq!(totals.len(), 2);
        assert_eq!(totals[0].0, wire("16 AWG"));
        assert!((totals[0].1 - 2.0 * (2.2 + 0.7)).abs() < 1e-12);
        assert!((totals[1].1 - 2.4).abs() < 1e-12);
        let bad = [(wire("16 AWG"), 1.0), (wire("16 AWG"), f64::NAN)];
        assert_eq!(super::pairs(&bad, 0.1).unwrap_err().0, 1);
        assert!(super::pairs(&runs, -1.0).is_err());
    }
}
