//! The wire from where it comes up to the first lamp of a row, and on from lamp to lamp.

use uom::si::f64::Length;

use super::placement::Spot;

/// A stretch of wire, one way.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stretch {
    /// The lamp that it comes from; none from the feed.
    pub from: Option<usize>,
    /// The lamp that it feeds.
    pub to: usize,
    /// Its length.
    pub length: Length,
}

/// The stretches of wire for rows of lamps, each row fed by a wire of its own from `feed` and its
/// lamps one after another: a row begins at the lamp nearest to the feed, and goes on to the
/// nearest of those that are left. `rows` names the lamps of each row by their places in `lamps`;
/// what names none is left out.
///
/// # Source
/// [`crate::electrical::sources::SQUARE_ROUTE`].
pub fn stretches(
    feed: Spot,
    up_and_over: Length,
    lamps: &[Spot],
    rows: &[Vec<usize>],
) -> Vec<Stretch> {
    let mut found = Vec::new();
    for row in rows {
        let mut left: Vec<(usize, Spot)> =
            row.iter().filter_map(|lamp| Some((*lamp, *lamps.get(*lamp)?))).collect();
        let (mut from, mut at) = (None, feed);
        while let Some((place, way)) = nearest(at, &left) {
            let (to, spot) = left.remove(place);
            let length = if from.is_none() { way + up_and_over } else { way };
            found.push(Stretch { from, to, length });
            (from, at) = (Some(to), spot);
        }
    }
    found
}

/// The first of the nearest lamps, and the way to it.
fn nearest(at: Spot, lamps: &[(usize, Spot)]) -> Option<(usize, Length)> {
    let way = |spot: &Spot| (spot.x - at.x).abs() + (spot.y - at.y).abs();
    let mut best: Option<(usize, Length)> = None;
    for (place, (_, spot)) in lamps.iter().enumerate() {
        let way = way(spot);
        if best.is_none_or(|(_, least)| way < least) {
            best = Some((place, way));
        }
    }
    best
}

#[cfg(test)]
mod tests {
    use super::*;
    use uom::si::length::meter;

    fn metres(value: f64) -> Length {
        Length::new::<meter>(value)
    }

    fn spot(x: f64, y: f64) -> Spot {
        Spot { x: metres(x), y: metres(y) }
    }

    // By hand: a feed at the rear, so that both rows run forwards.
    #[test]
    fn a_row_begins_nearest_to_the_feed() {
        let lamps = [spot(1.0, 0.5), spot(2.0, 0.5), spot(1.0, 1.5), spot(2.25, 1.5)];
        let found = stretches(spot(3.0, 0.0), metres(2.0), &lamps, &[vec![0, 1], vec![2, 3]]);
        let found: Vec<(Option<usize>, usize, f64)> =
            found.iter().map(|s| (s.from, s.to, s.length.get::<meter>())).collect();
        assert_eq!(found, [(None, 1, 3.5), (Some(1), 0, 1.0), (None, 3, 4.25), (Some(3), 2, 1.25)]);
        assert!(stretches(spot(0.0, 0.0), metres(0.0), &lamps, &[vec![9]]).is_empty());
    }
}
