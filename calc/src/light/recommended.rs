//! How bright it should be for what is done there.

use super::photometry::LUX_PER_FOOT_CANDLE;
use crate::source::Source;

/// Maintained illuminance recommended for a task.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Recommendation {
    /// What is done there.
    pub task: &'static str,
    /// Illuminance on the task, lx.
    pub lux: f64,
    /// Who recommends it.
    pub source: Source,
}

/// The recommendations, brightest first. EN 12464-1 is written for work places, not for dwellings.
pub static RECOMMENDED: [Recommendation; 11] = [
    task("writing, typing, reading at work", 500.0, EN_12464),
    task("kitchen at work", 500.0, EN_12464),
    task("kitchen counter, range, sink", 40.0 * LUX_PER_FOOT_CANDLE, IES),
    task("reading for long", 40.0 * LUX_PER_FOOT_CANDLE, IES),
    task("bathroom", 300.0, UFC_3),
    task("reading now and then", 20.0 * LUX_PER_FOOT_CANDLE, IES),
    task("tea kitchen, toilet at work", 200.0, EN_12464),
    task("kitchen, background", 10.0 * LUX_PER_FOOT_CANDLE, IES),
    task("passage at work", 100.0, EN_12464),
    task("living, dining, sleeping, bath: background", 5.0 * LUX_PER_FOOT_CANDLE, IES),
    task("dining table", 50.0, UFC_3),
];

const EN_12464: Source = Source::transcribed("EN 12464-1", "table of maintained illuminance");
const IES: Source =
    Source::transcribed("IES Lighting Handbook, an older edition", "table 10-7, p. 10-34");
const UFC_3: Source = Source::transcribed("US DoD UFC 3-530-01 (2006)", "recommended illuminance");

const fn task(task: &'static str, lux: f64, source: Source) -> Recommendation {
    Recommendation { task, lux, source }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn brightest_first_and_foot_candles_as_printed() {
        assert!(RECOMMENDED.windows(2).all(|pair| pair[0].lux >= pair[1].lux));
        // The IES table's 40, 20, 10 and 5 foot-candles are 431, 215, 108 and 54 lx.
        let ies: Vec<f64> =
            RECOMMENDED.iter().filter(|r| r.source == IES).map(|r| r.lux.round()).collect();
        assert_eq!(ies, [431.0, 431.0, 215.0, 108.0, 54.0]);
    }
}
