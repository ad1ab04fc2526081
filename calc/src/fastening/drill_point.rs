//! Drill points of self-drilling screws: which number drills through how much steel.

use uom::si::f64::Length;
use uom::si::length::inch;

use crate::source::Source;

/// How much steel a drill point gets through. Two tables are about, and differ by up to 0.010 in: the lower figure of both stands here.
/// It counts all steel that is drilled before the threads engage.
pub static CAPACITY: Source = Source::from_memory(
    "SAE J78 and makers' selection tables",
    "greatest thickness by size and point; the lower of two tables",
);

/// How long the point is, up to the first full thread.
pub static POINT_LENGTH: Source = Source::transcribed(
    "SAE J78",
    "protrusion allowance for points 2 and 3, as a screw maker prints it",
);

/// A drill point by its number.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum DrillPoint {
    /// Number 2: the short flute.
    Two,
    /// Number 3.
    Three,
    /// Number 4.
    Four,
    /// Number 5: the long flute.
    Five,
}

impl DrillPoint {
    /// The number stamped on the box.
    pub fn number(self) -> u8 {
        match self {
            Self::Two => 2,
            Self::Three => 3,
            Self::Four => 4,
            Self::Five => 5,
        }
    }

    /// The most steel that it drills on a screw of this gauge. Source: [`CAPACITY`]. None where the screw is not made with it.
    pub fn capacity(self, gauge: u8) -> Option<Length> {
        let row = ROWS.iter().find(|row| row.gauge == gauge)?;
        let inches = match self {
            Self::Two => Some(row.two),
            Self::Three => Some(row.three),
            Self::Four => row.four,
            Self::Five => row.five,
        };
        inches.map(Length::new::<inch>)
    }

    /// How far it reaches before the first full thread. Source: [`POINT_LENGTH`]; points 4 and 5 are as long as what they drill
    /// beyond point 3's capacity, plus point 3's length (common practice: a point must clear the steel before the thread engages).
    pub fn length(self, gauge: u8) -> Option<Length> {
        let row = ROWS.iter().find(|row| row.gauge == gauge)?;
        let longer = |capacity: Option<f64>| Some(row.three_long + (capacity? - row.three));
        let inches = match self {
            Self::Two => Some(row.two_long),
            Self::Three => Some(row.three_long),
            Self::Four => longer(row.four),
            Self::Five => longer(row.five),
        };
        inches.map(Length::new::<inch>)
    }
}

/// The shortest point that drills all the steel; none where no point does, or where the gauge is not made self-drilling.
pub fn for_steel(gauge: u8, steel: Length) -> Option<DrillPoint> {
    let steel = steel.get::<inch>();
    [DrillPoint::Two, DrillPoint::Three, DrillPoint::Four, DrillPoint::Five].into_iter().find(
        |point| {
            let capacity = point.capacity(gauge).map(|most| most.get::<inch>());
            // Not `!(steel > most)`: what is no number must drill nothing.
            capacity.is_some_and(|most| steel <= most + 1e-9 && steel >= 0.0)
        },
    )
}

/// All in inches.
struct Row {
    gauge: u8,
    two: f64,
    three: f64,
    four: Option<f64>,
    five: Option<f64>,
    two_long: f64,
    three_long: f64,
}

/// Gauge 14 is the 1/4 in screw.
static ROWS: [Row; 5] = [
    Row {
        gauge: 6,
        two: 0.080,
        three: 0.110,
        four: None,
        five: None,
        two_long: 0.190,
        three_long: 0.220,
    },
    Row {
        gauge: 8,
        two: 0.090,
        three: 0.140,
        four: None,
        five: None,
        two_long: 0.211,
        three_long: 0.251,
    },
    Row {
        gauge: 10,
        two: 0.100,
        three: 0.175,
        four: None,
        five: None,
        two_long: 0.235,
        three_long: 0.300,
    },
    Row {
        gauge: 12,
        two: 0.140,
        three: 0.210,
        four: Some(0.250),
        five: Some(0.500),
        two_long: 0.283,
        three_long: 0.353,
    },
    Row {
        gauge: 14,
        two: 0.175,
        three: 0.210,
        four: Some(0.250),
        five: Some(0.500),
        two_long: 0.318,
        three_long: 0.393,
    },
];

#[cfg(test)]
mod tests {
    use super::*;

    fn point(gauge: u8, steel: f64) -> Option<u8> {
        for_steel(gauge, Length::new::<inch>(steel)).map(DrillPoint::number)
    }

    #[test]
    fn the_shortest_point_that_drills_it() {
        assert_eq!(
            [point(8, 0.0598), point(8, 0.090), point(8, 0.12), point(8, 0.15)],
            [Some(2), Some(2), Some(3), None]
        );
        assert_eq!(
            [point(12, 0.2), point(12, 0.25), point(12, 0.4), point(12, 0.6)],
            [Some(3), Some(4), Some(5), None]
        );
        assert_eq!([point(4, 0.03), point(8, f64::NAN), point(8, -0.1)], [None; 3]);
    }

    /// ICC-ES ESR-1976, table 2, limits the #12 and the 1/4 in screw to 0.250 in of steel with the points it covers; and ASTM C1513-18,
    /// table 5, tests every size in plates of 0.062 to 0.068 in, so each must drill that.
    #[test]
    fn published_limits_hold() {
        for row in &ROWS {
            assert!(point(row.gauge, 0.068) == Some(2));
            assert!(row.two < row.three && row.four.is_none_or(|four| row.three < four));
        }
        for gauge in [12, 14] {
            assert_eq!(DrillPoint::Four.capacity(gauge), Some(Length::new::<inch>(0.250)));
        }
    }

    #[test]
    fn longer_points_drill_more() {
        for row in &ROWS {
            let points = [DrillPoint::Two, DrillPoint::Three, DrillPoint::Four, DrillPoint::Five];
            let lengths: Vec<_> =
                points.iter().filter_map(|point| point.length(row.gauge)).collect();
            assert!(lengths.windows(2).all(|pair| pair[0] < pair[1]));
        }
    }
}
