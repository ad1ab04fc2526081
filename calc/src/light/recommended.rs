//! How bright it should be for what is done there.

use super::photometry::LUX_PER_FOOT_CANDLE;
use crate::source::Source;
use crate::words::{Id, lights as words};

/// Maintained illuminance recommended for a task.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Recommendation {
    /// What is done there.
    pub task: Id,
    /// Illuminance on the task, lx.
    pub lux: f64,
    /// Who recommends it.
    pub source: Source,
}

/// The recommendations, brightest first. EN 12464-1 is written for work places, not for dwellings.
pub static RECOMMENDED: [Recommendation; 11] = [
    task(words::TASK_OFFICE, 500.0, EN_12464),
    task(words::TASK_COMMERCIAL_KITCHEN, 500.0, EN_12464),
    task(words::TASK_COUNTER, 40.0 * LUX_PER_FOOT_CANDLE, IES),
    task(words::TASK_LONG_READING, 40.0 * LUX_PER_FOOT_CANDLE, IES),
    task(words::TASK_BATHROOM, 300.0, UFC_3),
    task(words::TASK_SHORT_READING, 20.0 * LUX_PER_FOOT_CANDLE, IES),
    task(words::TASK_KITCHENETTE, 200.0, EN_12464),
    task(words::TASK_KITCHEN, 10.0 * LUX_PER_FOOT_CANDLE, IES),
    task(words::TASK_HALLWAY, 100.0, EN_12464),
    task(words::TASK_LIVING, 5.0 * LUX_PER_FOOT_CANDLE, IES),
    task(words::TASK_DINING, 50.0, UFC_3),
];

const EN_12464: Source = Source::transcribed_of(words::SOURCE_EN_12464);
const IES: Source = Source::transcribed_of(words::SOURCE_IES);
const UFC_3: Source = Source::transcribed_of(words::SOURCE_UFC);

const fn task(task: Id, lux: f64, source: Source) -> Recommendation {
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
