//! Illuminance against arithmetic, and conservation of the luminous flux.

use super::*;
use crate::testing::any_number;
use proptest::prelude::*;

fn degrees(value: f64) -> Angle {
    Angle::new::<degree>(value)
}

fn metres(value: f64) -> Length {
    Length::new::<meter>(value)
}

fn spot(x: f64, y: f64) -> Spot {
    Spot { x: metres(x), y: metres(y) }
}

fn beam(lumens: f64, angle: f64, model: BeamModel) -> Beam {
    Beam::new(lumens, degrees(angle), model).unwrap()
}

/// Lux a distance aside of one lamp.
fn aside(beam: &Beam, height: f64, aside: f64) -> f64 {
    lux_at(beam, &[spot(0.0, 0.0)], metres(height), spot(aside, 0.0)).unwrap()
}

// Full angle, cd per 100 lm: 100 lm over the cone's solid angle (arithmetic outside this program).
#[test]
fn cone_intensities() {
    for (angle, candela) in [
        (10.0, 4182.4525),
        (24.0, 728.3179),
        (30.0, 467.0838),
        (36.0, 325.1811),
        (60.0, 118.7949),
        (90.0, 54.3389),
        (120.0, 31.8310),
        (180.0, 15.9155),
        (360.0, 7.9577),
    ] {
        let found = beam(100.0, angle, BeamModel::Cone).peak_cd();
        assert!((found - candela).abs() < 5.1e-5, "{angle}: {found}");
    }
}

// Full angle, power m, cd per 100 lm, share of the flux within half the intensity (arithmetic outside).
#[test]
fn cosine_power_intensities() {
    for (angle, power, candela, inside) in [
        (30.0, 19.993727, 334.1255, 0.5170),
        (60.0, 4.818842, 92.6097, 0.5670),
        (90.0, 2.000000, 47.7465, 0.6464),
        (120.0, 1.000000, 31.8310, 0.7500),
    ] {
        let found = beam(100.0, angle, BeamModel::HalfPower);
        assert!((found.peak_cd() - candela).abs() < 1e-4, "{angle}: {found:?}");
        let Shape::Power(m) = found.shape else { panic!("{found:?}") };
        assert!((m - power).abs() < 1e-6, "{angle}: {m}");
        let half = found.intensity_cd(degrees(angle / 2.0)) / found.peak_cd();
        assert!((half - 0.5).abs() < 1e-12, "{angle}: {half}");
        let share = 1.0 - libm::pow(libm::cos(degrees(angle / 2.0).get::<radian>()), m + 1.0);
        assert!((share - inside).abs() < 5e-5, "{angle}: {share}");
    }
}

// A lamp of the given peak by the inverse square and cosine laws (arithmetic): 1000 cd at 2 m 250 lx; 250 cd at
// 0.6 m 694.444 lx; even intensity 1000 cd 30° off the axis at 2 m 162.380 lx; 500 cd, 1.5 m, 45° 78.567 lx.
#[test]
fn inverse_square_and_cosine_law() {
    let even = |candela: f64| beam(candela * 4.0 * PI, 360.0, BeamModel::Cone);
    assert!((aside(&even(1000.0), 2.0, 0.0) - 250.0).abs() < 1e-6);
    assert!((aside(&even(250.0), 0.6, 0.0) - 694.444).abs() < 1e-3);
    let tangent = libm::tan(PI / 6.0);
    assert!((aside(&even(1000.0), 2.0, 2.0 * tangent) - 162.380).abs() < 1e-3);
    assert!((aside(&even(500.0), 1.5, 1.5) - 78.567).abs() < 1e-3);
}

// Model, lm, beam, height m, aside m, lx (arithmetic outside this program). 120° is a Lambertian source.
#[test]
fn lux_below_and_beside_a_lamp() {
    use BeamModel::{Cone, HalfPower};
    for (model, lumens, angle, height, distance, lux) in [
        (HalfPower, 200.0, 120.0, 1.2, 0.0, 44.2097),
        (HalfPower, 200.0, 120.0, 1.2, 0.5, 32.0974),
        (HalfPower, 300.0, 120.0, 1.5, 1.0, 20.3417),
        (HalfPower, 300.0, 120.0, 1.5, -1.0, 20.3417),
        (HalfPower, 200.0, 60.0, 0.9, 0.0, 228.666),
        (HalfPower, 200.0, 60.0, 0.9, 0.4, 113.0176),
        (Cone, 200.0, 60.0, 0.9, 0.0, 293.3207),
        (Cone, 200.0, 60.0, 0.9, 0.6, 0.0),
    ] {
        let found = aside(&beam(lumens, angle, model), height, distance);
        assert!((found - lux).abs() < 5e-4, "{model:?} {angle}: {found}");
    }
}

// Lumen method and room index by arithmetic.
#[test]
fn lumen_method_and_room_index() {
    let m2 = |value| Area::new::<square_meter>(value);
    assert_eq!(lamps_needed(150.0, m2(6.0), 300.0, 0.5, 0.8), Ok(8));
    assert_eq!(lamps_needed(300.0, m2(2.0), 400.0, 0.6, 0.8), Ok(4));
    assert_eq!(lamps_needed(100.0, m2(8.0), 250.0, 0.45, 0.9), Ok(8));
    // Exactly eight stay eight.
    assert_eq!(lamps_needed(160.0, m2(6.0), 300.0, 0.5, 0.8), Ok(8));
    let index = |l, w, h| room_index(metres(l), metres(w), metres(h)).unwrap();
    assert!((index(3.5, 1.8, 1.2) - 0.990566).abs() < 1e-6);
    assert!((index(4.2, 2.0, 1.1) - 1.231672).abs() < 1e-6);
    assert!((LUX_PER_FOOT_CANDLE - 10.763910).abs() < 1e-6);
}

// All the light of a lamp that sends it downwards lands on a plane that is wide enough.
#[test]
fn the_map_of_a_wide_plane_keeps_the_flux() {
    let lamp = beam(300.0, 60.0, BeamModel::HalfPower);
    let map =
        light_map(&lamp, &[spot(5.0, 5.0)], metres(1.0), metres(10.0), metres(10.0), metres(0.1))
            .unwrap();
    let flux = map.mean * 100.0;
    assert!((flux / 300.0 - 1.0).abs() < 0.002, "{flux}");
    assert_eq!((map.columns, map.rows, map.lux.len()), (100, 100, 10_000));
    assert!(map.lowest <= map.mean && map.mean <= map.highest);
}

#[test]
fn five_times_the_size_is_far_enough() {
    assert!(is_point_source(metres(1.0), metres(0.2)));
    assert!(!is_point_source(metres(0.3), metres(0.07)));
}

proptest! {
    #[test]
    fn any_numbers_give_finite_lux_or_an_error(
        lumens in any_number(), angle in any_number(), height in any_number(), x in any_number(), cell in any_number(),
    ) {
        for model in [BeamModel::HalfPower, BeamModel::Cone] {
            let Ok(beam) = Beam::new(lumens, degrees(angle), model) else { continue };
            prop_assert!(beam.peak_cd().is_finite());
            if let Ok(lux) = lux_at(&beam, &[spot(0.0, 0.0)], metres(height), spot(x, 0.0)) {
                prop_assert!(lux.is_finite());
            }
            if let Ok(map) = light_map(&beam, &[], metres(1.0), metres(x), metres(2.0), metres(cell)) {
                prop_assert!(map.mean.is_finite());
            }
        }
    }

    #[test]
    fn every_beam_spends_its_flux(angle in 30.0..179.0_f64) {
        // Ring by ring over the half sphere, the intensity times the solid angle.
        for model in [BeamModel::HalfPower, BeamModel::Cone] {
            let beam = beam(100.0, angle, model);
            let rings = 5_000;
            let flux: f64 = (0..rings).map(|ring| {
                let cosine = (f64::from(ring) + 0.5) / f64::from(rings);
                beam.at_cosine(cosine) * 2.0 * PI / f64::from(rings)
            }).sum();
            prop_assert!((flux - 100.0).abs() < 1.5, "{model:?} {flux}");
        }
    }
}
