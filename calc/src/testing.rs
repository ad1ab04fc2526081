//! What property tests draw from.

use proptest::prelude::*;

/// Any number at all, with those that a person types drawn more often than the rest: sizes, shares, zeros, and what is
/// no number.
pub fn any_number() -> impl Strategy<Value = f64> {
    prop_oneof![
        4 => 0.0..1.0_f64,
        6 => 0.0..1000.0_f64,
        2 => -100.0..100.0_f64,
        2 => prop::num::f64::ANY,
        1 => prop::sample::select(vec![
            0.0, -0.0, 1.0, 100.0, f64::NAN, f64::INFINITY, f64::NEG_INFINITY, f64::MAX, f64::MIN_POSITIVE,
        ]),
    ]
}
