//! Wire to cut and to buy: pieces of each run with slack, and totals by conductor.

use super::conductor::Conductor;
use super::range::{OutOfRange, RUN_LENGTH_M, Range};

/// Extra length at each end of a piece.
pub const SLACK_M: Range = Range::new("slack", 0.0, 10.0, "m");

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
