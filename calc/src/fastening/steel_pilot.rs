//! The hole that a tapping screw wants in sheet steel.

use uom::si::f64::Length;
use uom::si::length::millimeter;

use crate::source::Source;

/// Holes for thread-forming (tapping) screws in sheet steel. Makers' tables differ by a drill or two: the one on the box comes first.
pub static STEEL_PILOTS: Source = Source::from_memory(
    "Machinery's Handbook, drilled holes for type AB tapping screws in steel",
    "by size and thickness, rounded to 0.1 mm; the table on the box comes first",
);

/// The steel of each column of [`ROWS`] is at most so thick; thicker steel wants the maker's table. [mm]
const THICKNESS_MM: [f64; 4] = [0.95, 1.55, 1.95, 2.7];

/// Holes by gauge, thin steel to thick. [mm]
static ROWS: [(u8, [f64; 4]); 5] = [
    (6, [2.7, 2.8, 3.0, 3.1]),
    (8, [3.1, 3.3, 3.4, 3.6]),
    (10, [3.7, 3.9, 4.0, 4.1]),
    (12, [4.2, 4.5, 4.6, 4.7]),
    (14, [4.8, 5.1, 5.2, 5.3]),
];

/// The hole in steel of this thickness; none where the table has none: then the maker's table is all there is. Source:
/// [`STEEL_PILOTS`].
pub fn steel_pilot(gauge: u8, steel: Length) -> Option<Length> {
    let (_, holes) = ROWS.iter().find(|(number, _)| *number == gauge)?;
    let steel = steel.get::<millimeter>();
    let column = THICKNESS_MM.iter().position(|most| steel <= *most && steel > 0.0)?;
    holes.get(column).map(|hole| Length::new::<millimeter>(*hole))
}

#[cfg(test)]
mod tests {
    use super::super::screw::by_gauge;
    use super::*;

    /// Identity: a hole for a thread that is formed lies between two thirds of the screw's diameter and all of it, and no smaller in
    /// thicker steel or for a larger screw.
    #[test]
    fn holes_leave_a_thread() {
        let hole = |gauge: u8, steel: f64| {
            steel_pilot(gauge, Length::new::<millimeter>(steel))
                .map(|hole| hole.get::<millimeter>())
        };
        let mut smaller = [0.0; 4];
        for (gauge, _) in ROWS {
            let diameter = by_gauge(gauge).unwrap().diameter().get::<millimeter>();
            let holes = [0.9, 1.5, 1.9, 2.6].map(|steel| hole(gauge, steel).unwrap());
            for (hole, smaller) in holes.iter().zip(smaller) {
                assert!(*hole > diameter * 2.0 / 3.0 && *hole < diameter * 0.9 && *hole > smaller);
            }
            assert!(holes.windows(2).all(|pair| pair[0] <= pair[1]));
            smaller = holes;
        }
        assert_eq!(
            (hole(8, 3.5), hole(8, 0.0), hole(8, f64::NAN), hole(9, 1.0)),
            (None, None, None, None)
        );
    }
}
