//! Drill points of self-drilling screws: which number drills through how much steel.

use uom::si::f64::Length;
use uom::si::length::inch;

use crate::source::Source;

/// How much steel a drill point gets through. Two tables are about, and differ by up to 0.010 in:
/// the lower figure of both stands here. It counts all steel that is drilled before the threads
/// engage.
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

    /// The most steel that it drills on a screw of this gauge. Source: [`CAPACITY`]. None where
    /// the screw is not made with it.
    pub fn capacity(self, gauge: u8) -> Option<Length> {
        let row = ROWS.iter().find(|row| row.gauge == gauge)?;
        row.capacity[self as usize].map(thousandths)
    }

    /// How far it reaches before the first full thread. Source: [`POINT_LENGTH`]; points 4 and 5
    /// are as long as what they drill beyond point 3's capacity, plus point 3's length (common
    /// practice: a point must clear the steel before the thread engages).
    pub fn length(self, gauge: u8) -> Option<Length> {
        let [two, three] = ROWS.iter().find(|row| row.gauge == gauge)?.length;
        match self {
            Self::Two => Some(thousandths(two)),
            Self::Three => Some(thousandths(three)),
            Self::Four | Self::Five => {
                let more = self.capacity(gauge)? - Self::Three.capacity(gauge)?;
                Some(thousandths(three) + more)
            }
        }
    }
}

/// The shortest point that drills all the steel; none where no point does, or where the gauge is
/// not made self-drilling.
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

/// Capacities of points 2 to 5, and lengths of points 2 and 3, in thousandths of an inch.
struct Row {
    gauge: u8,
    capacity: [Option<u16>; 4],
    length: [u16; 2],
}

/// Gauge 14 is the 1/4 in screw.
static ROWS: [Row; 5] = [
    Row { gauge: 6, capacity: [Some(80), Some(110), None, None], length: [190, 220] },
    Row { gauge: 8, capacity: [Some(90), Some(140), None, None], length: [211, 251] },
    Row { gauge: 10, capacity: [Some(100), Some(175), None, None], length: [235, 300] },
    Row { gauge: 12, capacity: [Some(140), Some(210), Some(250), Some(500)], length: [283, 353] },
    Row { gauge: 14, capacity: [Some(175), Some(210), Some(250), Some(500)], length: [318, 393] },
];

fn thousandths(value: u16) -> Length {
    Length::new::<inch>(f64::from(value) / 1000.0)
}

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

    /// ICC-ES ESR-1976, table 2, limits the #12 and the 1/4 in screw to 0.250 in of steel with
    /// the points it covers; and ASTM C1513-18, table 5, tests every size in plates of 0.062 to
    /// 0.068 in, so each must drill that.
    #[test]
    fn published_limits_hold() {
        for row in &ROWS {
            assert!(point(row.gauge, 0.068) == Some(2));
            let capacities: Vec<_> = row.capacity.iter().flatten().collect();
            assert!(capacities.windows(2).all(|pair| pair[0] < pair[1]));
        }
        for gauge in [12, 14] {
            assert_eq!(DrillPoint::Four.capacity(gauge), Some(thousandths(250)));
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
