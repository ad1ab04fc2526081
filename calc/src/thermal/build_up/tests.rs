//! U values against the formulas of ISO 6946 worked by hand, and what is refused.

use super::*;
use crate::testing::any_number;
use proptest::prelude::*;

fn layer(thickness_mm: f64, conductivity: f64) -> Layer {
    Layer {
        thickness: Length::new::<millimeter>(thickness_mm),
        conductivity: ThermalConductivity::new::<watt_per_meter_kelvin>(conductivity),
    }
}

fn bridge(layer: usize, share: f64, conductivity: f64) -> Bridge {
    Bridge {
        layer,
        share,
        conductivity: ThermalConductivity::new::<watt_per_meter_kelvin>(conductivity),
    }
}

fn assert_result(
    found: &Transmittance,
    upper: f64,
    lower: f64,
    total: f64,
    u: f64,
    error_percent: f64,
) {
    assert!((found.upper_m2k_w - upper).abs() < 1e-6, "{found:?}");
    assert!((found.lower_m2k_w - lower).abs() < 1e-6, "{found:?}");
    assert!((found.r_m2k_w - total).abs() < 1e-6, "{found:?}");
    assert!((found.u.get::<watt_per_square_meter_kelvin>() - u).abs() < 1e-6, "{found:?}");
    assert!((100.0 * found.relative_error - error_percent).abs() < 1e-4, "{found:?}");
}

fn van_wall() -> [Layer; 3] {
    [layer(6.0, 0.13), layer(40.0, 0.034), layer(1.0, 50.0)]
}

// The expected figures below are the formulas of ISO 6946 worked in plain arithmetic outside this program.
#[test]
fn iso_6946_formula_house_wall_with_timber_studs() {
    let wall = [
        layer(12.5, 0.25),
        layer(140.0, 0.038),
        layer(9.0, 0.13),
        Layer::with_resistance(Length::new::<millimeter>(25.0), 0.09),
        layer(102.0, 0.77),
    ];
    let found = bridged(&wall, bridge(1, 0.15, 0.13), Surfaces::LEVEL).unwrap();
    assert_result(&found, 3.367006, 3.214401, 3.290703, 0.303886, 2.3187);
}

#[test]
fn iso_6946_formula_van_wall_floor_and_roof() {
    let wall = bridged(&van_wall(), bridge(1, 0.12, 0.13), Surfaces::LEVEL).unwrap();
    assert_result(&wall, 1.161497, 1.094908, 1.128203, 0.886365, 2.9511);

    let floor = [layer(12.0, 0.13), layer(25.0, 0.034), layer(1.0, 50.0)];
    let floor = bridged(&floor, bridge(1, 0.08, 0.13), Surfaces::DOWNWARD).unwrap();
    assert_result(&floor, 0.953854, 0.902136, 0.927995, 1.077592, 2.7866);

    let roof = [layer(6.0, 0.13), layer(30.0, 0.026), layer(1.0, 50.0)];
    let roof = series(&roof, Surfaces::UPWARD).unwrap();
    assert_result(&roof, 1.340020, 1.340020, 1.340020, 0.746258, 0.0);
}

#[test]
fn iso_6946_scope_refuses_steel_webs() {
    for share in [0.02, 0.005] {
        let refused = bridged(&van_wall(), bridge(1, share, 50.0), Surfaces::LEVEL);
        assert_eq!(refused, Err(BuildUpError::MetalBridge { conductivity_w_mk: 50.0 }));
    }
}

#[test]
fn limits_more_than_half_apart_are_refused() {
    let wall = [layer(100.0, 0.02)];
    let refused = bridged(&wall, bridge(0, 0.10, 2.0), Surfaces::LEVEL);
    let Err(BuildUpError::LimitsApart { ratio }) = refused else {
        panic!("{refused:?}");
    };
    assert!(ratio > LARGEST_RATIO);
}

#[test]
fn what_is_wrong_is_said_and_what_would_be_right() {
    assert_eq!(series(&[], Surfaces::LEVEL), Err(BuildUpError::NoLayers));
    assert_eq!(series(&[layer(0.0, 0.1)], Surfaces::LEVEL), Err(BuildUpError::Thickness(0)));
    assert_eq!(
        series(&[layer(1.0, 0.1), layer(1.0, f64::NAN)], Surfaces::LEVEL),
        Err(BuildUpError::Conductivity(1))
    );
    let message =
        bridged(&van_wall(), bridge(7, 0.1, 0.1), Surfaces::LEVEL).unwrap_err().to_string();
    assert_eq!(message, "there is no layer 8: the layers go from 1 to 3");
    let message =
        bridged(&van_wall(), bridge(1, 0.1, 50.0), Surfaces::LEVEL).unwrap_err().to_string();
    assert!(message.starts_with("a bridge of 50 W/(m K) is metal, which ISO 6946 leaves out"));
    assert!(message.contains("Enter it as a steel rib"), "{message}");
}

proptest! {
    #[test]
    fn any_numbers_give_a_finite_u_value_or_an_error(
        t in any_number(), k in any_number(), share in any_number(), kb in any_number(),
        inside in any_number(), which in any::<usize>(),
    ) {
        let layers = [layer(t, k), layer(40.0, 0.034)];
        let surfaces = Surfaces { inside_m2k_w: inside, outside_m2k_w: 0.04 };
        if let Ok(found) = bridged(&layers, bridge(which, share, kb), surfaces) {
            prop_assert!(found.r_m2k_w.is_finite() && found.u.value.is_finite());
        }
    }

    #[test]
    fn the_total_lies_between_both_limits_and_a_better_bridge_lowers_u(
        t in 1.0..200.0_f64, k in 0.02..0.5_f64, share in 0.01..0.5_f64, kb in 0.02..0.6_f64,
    ) {
        let layers = [layer(6.0, 0.13), layer(t, k)];
        if let Ok(found) = bridged(&layers, bridge(1, share, kb), Surfaces::LEVEL) {
            prop_assert!(found.upper_m2k_w >= found.lower_m2k_w - 1e-12);
            let better = bridged(&layers, bridge(1, share, kb * 0.9), Surfaces::LEVEL).unwrap();
            prop_assert!(better.u <= found.u);
        }
    }
}
