//! Surfaces of boards, and what is used up by area: rollers, pads, abrasive sheets.

use uom::si::area::square_meter;
use uom::si::f64::{Area, Length};
use uom::si::length::millimeter;

use super::range::{OutOfRange, ceiling, within};
use crate::source::Source;
use crate::words::{range as names, wet as words};

/// Faces and edges of a board.
pub static BOARD: Source = Source::identity_of(words::SOURCE_BOARD);

/// Which sides of a board are coated.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Sides {
    /// How many faces: 0, 1 or 2.
    pub faces: u8,
    /// How many long edges: 0, 1 or 2.
    pub edges: u8,
    /// How many ends: 0, 1 or 2.
    pub ends: u8,
}

/// All six sides, for boards that are finished before they are fitted.
pub const ALL_SIDES: Sides = Sides { faces: 2, edges: 2, ends: 2 };

/// The surface of `count` boards. Source: [`BOARD`].
///
/// # Errors
/// Length and width from 0 to 100 000 mm, thickness from 0 to 1000 mm, up to 100 000 boards, two of
/// each side at most.
pub fn boards(
    count: u32,
    length: Length,
    width: Length,
    thickness: Length,
    sides: Sides,
) -> Result<Area, OutOfRange> {
    within(names::NUMBER_OF_BOARDS, f64::from(count), 0.0, 1e5, "")?;
    within(names::BOARD_LENGTH, length.get::<millimeter>(), 0.0, 1e5, "mm")?;
    within(names::BOARD_WIDTH, width.get::<millimeter>(), 0.0, 1e5, "mm")?;
    within(names::BOARD_THICKNESS, thickness.get::<millimeter>(), 0.0, 1000.0, "mm")?;
    let [faces, edges, ends] = [sides.faces, sides.edges, sides.ends].map(f64::from);
    within(names::NUMBER_OF_FACES, faces, 0.0, 2.0, "")?;
    within(names::NUMBER_OF_EDGES, edges, 0.0, 2.0, "")?;
    within(names::NUMBER_OF_ENDS, ends, 0.0, 2.0, "")?;
    let each = faces * length * width + edges * length * thickness + ends * width * thickness;
    Ok(f64::from(count) * each)
}

/// How many rollers, pads or abrasive sheets an area takes, each of which does `each`.
///
/// # Errors
/// Area from 0 to 1e6 m², each from 0.01 to 10 000 m².
pub fn used_up(area: Area, each: Area) -> Result<u32, OutOfRange> {
    let area = within(names::AREA, area.get::<square_meter>(), 0.0, 1e6, "m2")?;
    let each = within(names::AREA_THAT_ONE_DOES, each.get::<square_meter>(), 0.01, 1e4, "m2")?;
    Ok(ceiling(area / each) as u32)
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn mm(value: f64) -> Length {
        Length::new::<millimeter>(value)
    }

    #[test]
    fn a_board_on_all_sides() {
        // 2 x (1 x 0.1 + 1 x 0.02 + 0.1 x 0.02) = 0.244.
        let area = boards(3, mm(1000.0), mm(100.0), mm(20.0), ALL_SIDES).unwrap();
        assert!((area.get::<square_meter>() - 3.0 * 0.244).abs() < 1e-12);
        let face = Sides { faces: 1, edges: 0, ends: 0 };
        let area = boards(1, mm(1000.0), mm(100.0), mm(20.0), face).unwrap();
        assert!((area.get::<square_meter>() - 0.1).abs() < 1e-12);
        assert!(boards(1, mm(1.0), mm(1.0), mm(1.0), Sides { faces: 3, ..face }).is_err());
    }

    #[test]
    fn whole_sheets() {
        let m2 = Area::new::<square_meter>;
        assert_eq!(used_up(m2(11.3), m2(0.5)), Ok(23));
        assert_eq!(used_up(m2(0.1 + 0.2), m2(0.1)), Ok(3));
    }

    proptest! {
        #[test]
        fn no_number_breaks_it(
            a in any::<f64>(),
            b in any::<f64>(),
            c in any::<f64>(),
            n in any::<u32>(),
        ) {
            if let Ok(area) = boards(n, mm(a), mm(b), mm(c), ALL_SIDES) {
                prop_assert!(area.value.is_finite());
            }
            let _ = used_up(Area::new::<square_meter>(a), Area::new::<square_meter>(b));
        }
    }
}
