//! Looms: how thick a bundle of wires is, and the sleeve around it.

use crate::sorting::sort_by;

/// Least circle around n equal circles by the circle's own diameter, n = 1 to 20.
///
/// # Source
/// [`super::sources::CIRCLE_PACKING`].
pub static ENCLOSING_RATIO: [f64; 20] = [
    1.0, 2.0, 2.1547, 2.4142, 2.7013, 3.0, 3.0, 3.3048, 3.6131, 3.813, 3.9238, 4.029, 4.2361,
    4.328, 4.521, 4.615, 4.792, 4.863, 4.8637, 5.122,
];

/// Inner diameters of split corrugated sleeves in mm, as commonly sold.
///
/// # Source
/// Common practice, no source.
pub const SLEEVES_MM: [f64; 9] = [4.5, 7.5, 10.0, 13.0, 17.0, 22.0, 26.0, 29.0, 37.0];

/// Diameter of a bundle in mm, from the diameters of its wires over their insulation.
///
/// The rule 1.2 sqrt(sum of d²) is under what geometry allows for small bundles, so the greatest is
/// taken of it and of the circles that enclose the k thickest wires counted as the kth, k up to 20.
/// `None` for no wire, a diameter that is not between 0 and 1000 mm, or more than 10,000 wires.
///
/// # Source
/// [`super::sources::BUNDLE_RULE`], [`ENCLOSING_RATIO`].
pub fn bundle_diameter_mm(wires_mm: &[f64]) -> Option<f64> {
    let in_range = |d: &f64| (0.0..=1000.0).contains(d);
    if wires_mm.is_empty() || wires_mm.len() > 10_000 || !wires_mm.iter().all(in_range) {
        return None;
    }
    let squares: f64 = wires_mm.iter().map(|d| d * d).sum();
    let mut thickest_first = wires_mm.to_vec();
    sort_by(&mut thickest_first, |a, b| b.total_cmp(a));
    let enclosing = thickest_first.iter().zip(&ENCLOSING_RATIO).map(|(d, ratio)| d * ratio);
    // Two wires side by side are as wide as both, the thinner one in full.
    let two: f64 = thickest_first.iter().take(2).sum();
    let rule = if wires_mm.len() == 1 { 0.0 } else { 1.2 * squares.sqrt() };
    Some(enclosing.fold(rule.max(two), f64::max))
}

/// The next sleeve that a bundle goes into; `None` when it is thicker than all of them.
pub fn sleeve_mm(bundle_mm: f64) -> Option<f64> {
    SLEEVES_MM.iter().copied().find(|inner| bundle_mm <= inner * (1.0 + 1e-9))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// Circle packings: exact for the first few by plane geometry.
    #[test]
    fn ratios_of_equal_circles() {
        assert!((ENCLOSING_RATIO[2] - (1.0 + 2.0 / 3f64.sqrt())).abs() < 5e-5);
        assert!((ENCLOSING_RATIO[3] - (1.0 + 2f64.sqrt())).abs() < 5e-5);
        assert!((ENCLOSING_RATIO[4] - (1.0 + (2.0 + 2.0 / 5f64.sqrt()).sqrt())).abs() < 5e-5);
        assert!(ENCLOSING_RATIO.windows(2).all(|pair| pair[0] <= pair[1]));
        // No packing fills more than the plane's densest, pi / sqrt(12).
        for (i, ratio) in ENCLOSING_RATIO.iter().enumerate() {
            let filled = (i + 1) as f64 / (ratio * ratio);
            assert!(i == 0 || filled < 0.9069, "{}: {filled}", i + 1);
        }
    }

    /// The rule is under the geometry at 2 to 6, 9 and 10 wires and above it at 7, 12 and 19.
    #[test]
    fn bundles_of_equal_wires() {
        for (n, ratio) in [
            (1, 1.0),
            (2, 2.0),
            (3, 2.1547),
            (6, 3.0),
            (7, 1.2 * 7f64.sqrt()),
            (10, 3.813),
            (12, 1.2 * 12f64.sqrt()),
            (25, 6.0),
        ] {
            let bundle = bundle_diameter_mm(&vec![2.5; n]).unwrap();
            assert!((bundle - 2.5 * ratio).abs() < 1e-9, "{n}: {bundle}");
        }
        assert_eq!(bundle_diameter_mm(&[6.0, 2.0]), Some(8.0));
        assert_eq!(bundle_diameter_mm(&[]), None);
        assert_eq!(bundle_diameter_mm(&[f64::NAN]), None);
        assert_eq!(
            (sleeve_mm(7.5), sleeve_mm(7.6), sleeve_mm(40.0)),
            (Some(7.5), Some(10.0), None)
        );
        assert_eq!(sleeve_mm(f64::NAN), None);
    }

    proptest! {
        #[test]
        fn one_wire_more_is_no_thinner(wires in prop::collection::vec(0.5..20.0f64, 1..40), d in 0.5..20.0f64) {
            let before = bundle_diameter_mm(&wires).unwrap();
            let mut more = wires.clone();
            more.push(d);
            prop_assert!(bundle_diameter_mm(&more).unwrap() >= before);
        }
    }
}
