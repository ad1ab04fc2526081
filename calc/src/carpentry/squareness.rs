//! Squareness from two diagonals.

use crate::source::Source;
use crate::words::body as words;

/// Parallelogram law on both diagonals.
pub static DIAGONALS: Source = Source::identity_of(words::SOURCE_SHEAR);
/// Where the mean of the squares of both diagonals must lie.
pub static BOTH_DIAGONALS: Source = Source::identity_of(words::SOURCE_BOTH);
/// How far the diagonals may miss length and width before one of the measures is called a slip.
pub static SLIP: Source = Source::practice_of(words::SOURCE_SLIP);
/// The share of [`SLIP`].
pub const SLIP_SHARE: f64 = 0.002;
/// A triangle with sides 3, 4 and 5 has a right angle.
pub static TRIPLE: Source = Source::identity("3^2 + 4^2 = 5^2");

/// How far a four-sided body is out of square.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Squareness {
    /// How far the far side is shifted along the length against the near one; above zero when the first diagonal is the longer. [mm]
    pub shear_mm: f64,
    /// The angle that is missing to, or over, the right angle. [deg]
    pub angle_deg: f64,
    /// Difference of the diagonals, first less second. [mm]
    pub difference_mm: f64,
}

impl Squareness {
    /// How far the rear is shifted across against the front, over the whole length: shear x length / width. Above zero when the
    /// first diagonal is the longer. [mm]
    pub fn drift_mm(&self, length_mm: f64, width_mm: f64) -> f64 {
        let drift_mm = self.shear_mm * length_mm / width_mm;
        if drift_mm.is_finite() { drift_mm } else { 0.0 }
    }
}

/// How far both diagonals together are longer than those of a rectangle of these sides; shorter: below zero. A body that leans has
/// one longer and one shorter: what is left over is a slip in one of the four measures. [mm]
pub fn misfit_mm(
    length_mm: f64,
    width_mm: f64,
    first_diagonal_mm: f64,
    second_diagonal_mm: f64,
) -> f64 {
    let squares = first_diagonal_mm * first_diagonal_mm + second_diagonal_mm * second_diagonal_mm;
    (squares / 2.0).sqrt() - diagonal_mm(length_mm, width_mm)
}

/// Squareness of a body with equal opposite sides; `None` where the four lengths make no such body.
///
/// Equal diagonals prove a rectangle only if the opposite sides are equal too: measure all four sides first.
pub fn squareness(
    length_mm: f64,
    width_mm: f64,
    first_diagonal_mm: f64,
    second_diagonal_mm: f64,
) -> Option<Squareness> {
    let lengths = [length_mm, width_mm, first_diagonal_mm, second_diagonal_mm];
    if lengths.iter().any(|length| !(length.is_finite() && *length > 0.0)) {
        return None;
    }
    let difference_mm = first_diagonal_mm - second_diagonal_mm;
    let shear_mm = difference_mm * (first_diagonal_mm + second_diagonal_mm) / (4.0 * length_mm);
    if shear_mm.abs() >= width_mm {
        return None;
    }
    let angle_deg = libm::asin(shear_mm / width_mm).to_degrees();
    Some(Squareness { shear_mm, angle_deg, difference_mm })
}

/// Diagonal of a true rectangle. [mm]
pub fn diagonal_mm(length_mm: f64, width_mm: f64) -> f64 {
    libm::hypot(length_mm, width_mm)
}

/// First less second diagonal when the far side is shifted by `shear_mm`, the distance of the sides being `width_mm`. [mm]
pub fn diagonal_difference_mm(length_mm: f64, width_mm: f64, shear_mm: f64) -> f64 {
    libm::hypot(length_mm + shear_mm, width_mm) - libm::hypot(length_mm - shear_mm, width_mm)
}

/// Sides and long side of a right-angled triangle in steps of one unit. [mm]
pub fn right_triangle_mm(unit_mm: f64) -> [f64; 3] {
    [3.0 * unit_mm, 4.0 * unit_mm, 5.0 * unit_mm]
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Identities, worked out independently with the exact roots.
    #[test]
    fn diagonals_tell_the_shear() {
        let cases = [
            (4270.0, 1830.0, 5.0, 9.1914, 5e-5),
            (4270.0, 1830.0, 10.0, 18.3829, 5e-5),
            (168.0, 72.0, 0.25, 0.45957, 5e-6),
            (168.0, 72.0, 0.5, 0.91914, 5e-6),
            (190.75, 90.0, 0.25, 0.45219, 5e-6),
        ];
        for (length, width, shear, difference, within) in cases {
            let found = diagonal_difference_mm(length, width, shear);
            assert!((found - difference).abs() <= within, "{found}");
            let first = diagonal_mm(length + shear, width);
            let second = diagonal_mm(length - shear, width);
            let back = squareness(length, width, first, second).unwrap();
            assert!((back.shear_mm - shear).abs() < 1e-9, "{back:?}");
            // Parallelogram law: sides of length and of hypot(width, shear).
            let side = diagonal_mm(width, shear);
            assert!(misfit_mm(length, side, first, second).abs() < 1e-9);
            let drift = back.drift_mm(length, width);
            assert!((drift - (first * first - second * second) / (4.0 * width)).abs() < 1e-6);
        }
        assert!((diagonal_mm(4270.0, 1830.0) - 4645.62).abs() < 5e-3);
    }

    #[test]
    fn a_rectangle_is_square_and_nonsense_is_none() {
        let [a, b, c] = right_triangle_mm(300.0);
        assert_eq!((a, b, c), (900.0, 1200.0, 1500.0));
        assert_eq!(squareness(b, a, c, c).unwrap().shear_mm, 0.0);
        assert_eq!(squareness(0.0, a, c, c), None);
        assert_eq!(squareness(b, a, f64::NAN, c), None);
        assert_eq!(squareness(10.0, 10.0, 1000.0, 1.0), None);
    }
}
