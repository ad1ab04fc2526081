//! Widths measured at several stations along a body, and the width in between.

use crate::source::Source;
use crate::words::body as words;

/// The walls run straight from station to station.
pub static BETWEEN: Source = Source::identity_of(words::SOURCE_BETWEEN);

/// A width measured somewhere along the body.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Station {
    /// From the front wall. [mm]
    pub x_mm: f64,
    /// Wall to wall there. [mm]
    pub width_mm: f64,
}

/// The width at a place: linear between stations, which stand in order of x; `None` without stations. Source: [`BETWEEN`]. [mm]
pub fn width_at_mm(stations: &[Station], x_mm: f64) -> Option<f64> {
    let behind = stations.iter().position(|station| station.x_mm >= x_mm);
    let (before, after) = match behind {
        None => return stations.last().map(|last| last.width_mm),
        Some(0) => return stations.first().map(|first| first.width_mm),
        Some(at) => (stations.get(at - 1)?, stations.get(at)?),
    };
    let share = (x_mm - before.x_mm) / (after.x_mm - before.x_mm);
    let width_mm = before.width_mm + (after.width_mm - before.width_mm) * share;
    Some(if width_mm.is_finite() { width_mm } else { after.width_mm })
}

/// The stations from one place to another, with both places among them; none without stations. [mm]
pub fn between(stations: &[Station], from_mm: f64, to_mm: f64) -> Vec<Station> {
    let at = |x_mm: f64| width_at_mm(stations, x_mm).map(|width_mm| Station { x_mm, width_mm });
    let inside = stations.iter().copied();
    let inside = inside.filter(|station| station.x_mm > from_mm && station.x_mm < to_mm);
    at(from_mm).into_iter().chain(inside).chain(at(to_mm)).collect()
}

/// The narrowest and the widest of some stations. [mm]
pub fn range_mm(stations: &[Station]) -> Option<(f64, f64)> {
    let first = stations.first()?.width_mm;
    let widths = stations.iter().map(|station| station.width_mm);
    Some(widths.fold((first, first), |(low, high), width| (low.min(width), high.max(width))))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn stations() -> Vec<Station> {
        [(500.0, 2000.0), (2500.0, 2040.0), (4500.0, 1990.0)]
            .map(|(x_mm, width_mm)| Station { x_mm, width_mm })
            .to_vec()
    }

    /// Worked by hand: half-way from 2000 to 2040 and a fifth of the way from 2040 to 1990.
    #[test]
    fn the_width_runs_straight_between_stations() {
        let at = |x: f64| width_at_mm(&stations(), x).unwrap();
        assert_eq!([at(1500.0), at(2900.0), at(2500.0)], [2020.0, 2030.0, 2040.0]);
        assert_eq!([at(0.0), at(6000.0)], [2000.0, 1990.0]);
        assert_eq!(width_at_mm(&[], 100.0), None);
        assert_eq!(range_mm(&stations()), Some((1990.0, 2040.0)));
    }

    #[test]
    fn a_part_of_the_body_has_its_ends_among_its_stations() {
        let part = between(&stations(), 1500.0, 6000.0);
        let places: Vec<f64> = part.iter().map(|station| station.x_mm).collect();
        assert_eq!(places, [1500.0, 2500.0, 4500.0, 6000.0]);
        assert_eq!(between(&[], 0.0, 1.0), []);
    }

    #[test]
    fn two_stations_in_one_place_give_a_width() {
        let twice = [(0.0, 5.0), (0.0, 7.0)].map(|(x_mm, width_mm)| Station { x_mm, width_mm });
        assert!(width_at_mm(&twice, 0.0).unwrap().is_finite());
        assert!(width_at_mm(&twice, f64::NAN).unwrap().is_finite());
    }
}
