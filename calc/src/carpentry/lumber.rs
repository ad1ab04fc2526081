//! Softwood lumber: what a nominal size measures, and board feet.

use crate::source::Source;

/// Nominal and least dressed sizes.
pub static DRESSED_SIZES: Source = Source::transcribed(
    "American Softwood Lumber Standard PS 20",
    "nominal and minimum-dressed sizes of boards and dimension lumber",
);
/// Board feet.
pub static BOARD_FEET: Source =
    Source::from_memory("American Softwood Lumber Standard PS 20", "board measure");

/// Least dressed size of one nominal size; pieces move with their moisture after that.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DressedSize {
    /// Nominal size. [in]
    pub nominal_in: f64,
    /// Dressed dry, at most 19 % moisture. [in]
    pub dry_in: f64,
    /// Dressed green. [in]
    pub green_in: f64,
}

const fn size(nominal_in: f64, dry_in: f64, green_in: f64) -> DressedSize {
    DressedSize { nominal_in, dry_in, green_in }
}

/// Thicknesses: boards below 2 in, dimension lumber from there. Source: [`DRESSED_SIZES`].
pub static THICKNESSES: [DressedSize; 12] = [
    size(0.375, 0.3125, 0.34375),
    size(0.5, 0.4375, 0.46875),
    size(0.625, 0.5625, 0.59375),
    size(0.75, 0.625, 0.6875),
    size(1.0, 0.75, 0.78125),
    size(1.25, 1.0, 1.03125),
    size(1.5, 1.25, 1.28125),
    size(2.0, 1.5, 1.5625),
    size(2.5, 2.0, 2.0625),
    size(3.0, 2.5, 2.5625),
    size(3.5, 3.0, 3.0625),
    size(4.0, 3.5, 3.5625),
];

/// Face widths. Source: [`DRESSED_SIZES`].
pub static WIDTHS: [DressedSize; 13] = [
    size(2.0, 1.5, 1.5625),
    size(3.0, 2.5, 2.5625),
    size(4.0, 3.5, 3.5625),
    size(5.0, 4.5, 4.625),
    size(6.0, 5.5, 5.625),
    size(7.0, 6.5, 6.625),
    size(8.0, 7.25, 7.5),
    size(9.0, 8.25, 8.5),
    size(10.0, 9.25, 9.5),
    size(11.0, 10.25, 10.5),
    size(12.0, 11.25, 11.5),
    size(14.0, 13.25, 13.5),
    size(16.0, 15.25, 15.5),
];

/// Dressed thickness of a nominal one.
pub fn thickness(nominal_in: f64) -> Option<DressedSize> {
    find(&THICKNESSES, nominal_in)
}

/// Dressed width of a nominal one.
pub fn width(nominal_in: f64) -> Option<DressedSize> {
    find(&WIDTHS, nominal_in)
}

/// Board feet of one piece: nominal thickness times nominal width times length in feet, by 12.
pub fn board_feet(thickness_in: f64, width_in: f64, length_ft: f64) -> f64 {
    thickness_in * width_in * length_ft / 12.0
}

fn find(table: &[DressedSize], nominal_in: f64) -> Option<DressedSize> {
    table.iter().copied().find(|size| (size.nominal_in - nominal_in).abs() < 1e-6)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// PS 20: a two-by-four is 1 1/2 by 3 1/2 in, a one-by-eight 3/4 by 7 1/4 in, dry.
    #[test]
    fn nominal_sizes_measure_less() {
        let dry = |size: Option<DressedSize>| size.unwrap().dry_in;
        assert_eq!((dry(thickness(2.0)), dry(width(4.0))), (1.5, 3.5));
        assert_eq!((dry(thickness(1.0)), dry(width(8.0))), (0.75, 7.25));
        assert_eq!(thickness(2.0).unwrap().green_in, 1.5625);
        assert_eq!(width(13.0), None);
    }

    /// PS 20 in words: widths lose 1/2 in up to 7 in, 3/4 in from 8 in; green is never smaller than dry.
    #[test]
    fn the_tables_follow_their_rule() {
        for size in WIDTHS {
            let less = if size.nominal_in < 8.0 { 0.5 } else { 0.75 };
            assert_eq!(size.nominal_in - size.dry_in, less, "{size:?}");
        }
        for size in THICKNESSES.iter().chain(&WIDTHS) {
            assert!(size.green_in > size.dry_in && size.green_in < size.nominal_in);
        }
    }

    #[test]
    fn board_feet_are_a_twelfth_of_inches_times_feet() {
        assert_eq!(board_feet(1.0, 6.0, 12.0), 6.0);
        assert!((board_feet(2.0, 4.0, 8.0) - 5.333).abs() < 5e-4);
        assert!((board_feet(1.0, 8.0, 16.0) - 10.667).abs() < 5e-4);
    }
}
