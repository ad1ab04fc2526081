//! Dew planes against the method of ISO 13788 worked by hand, and conservation of vapour.

use super::*;
use crate::testing::any_number;
use proptest::prelude::*;
use uom::si::f64::{Length, ThermalConductivity};
use uom::si::length::millimeter;
use uom::si::thermal_conductivity::watt_per_meter_kelvin;

fn layer(thickness_mm: f64, conductivity: f64, vapour_factor: f64) -> VapourLayer {
    let layer = Layer {
        thickness: Length::new::<millimeter>(thickness_mm),
        conductivity: ThermalConductivity::new::<watt_per_meter_kelvin>(conductivity),
    };
    VapourLayer { layer, vapour_factor }
}

fn air(celsius: f64, percent: f64) -> Air {
    let temperature = ThermodynamicTemperature::new::<degree_celsius>(celsius);
    Air { temperature, humidity: percent / 100.0 }
}

fn ply() -> VapourLayer {
    layer(6.0, 0.13, 200.0)
}

fn wool() -> VapourLayer {
    layer(40.0, 0.035, 1.0)
}

fn steel() -> VapourLayer {
    layer(1.0, 50.0, 1e6)
}

/// The one plane that a case is to have.
fn only_plane(profile: &Profile) -> Plane {
    assert_eq!(profile.planes.len(), 1, "{profile:?}");
    profile.planes[0]
}

/// Layer behind which, °C, saturation pressure Pa, g per m² and day.
fn assert_plane(profile: &Profile, after: usize, celsius: f64, saturation: f64, grams: f64) {
    let plane = only_plane(profile);
    assert_eq!(plane.after_layer, after);
    assert!((plane.temperature.get::<degree_celsius>() - celsius).abs() < 1e-4, "{plane:?}");
    assert!((profile.faces[after].saturation.get::<pascal>() - saturation).abs() < 1e-3);
    assert!((plane.condenses_g_m2_day - grams).abs() < 1e-4, "{plane:?}");
}

// The cases' figures are the formulas of ISO 13788 worked outside this program.
#[test]
fn iso_13788_method_wool_behind_ply_on_steel() {
    let wall = [ply(), wool(), steel()];
    let found = profile(&wall, Surfaces::LEVEL, air(20.0, 60.0), air(0.0, 85.0)).unwrap();
    assert!((found.faces[0].vapour.get::<pascal>() - 1402.171).abs() < 1e-3);
    assert!((found.faces[3].vapour.get::<pascal>() - 518.925).abs() < 1e-3);
    assert_plane(&found, 2, 0.5889, 637.167, 10.6587);
    // Per month of 30 days.
    assert!((found.planes[0].condenses_g_m2_day * 0.03 - 0.31976).abs() < 1e-5);

    let colder = profile(&wall, Surfaces::LEVEL, air(18.0, 70.0), air(-10.0, 80.0)).unwrap();
    assert_plane(&colder, 2, -9.1755, 279.006, 16.2333);
}

#[test]
fn iso_13788_method_foam_on_steel_lets_less_through() {
    let wall = [ply(), layer(40.0, 0.034, 150.0), steel()];
    let found = profile(&wall, Surfaces::LEVEL, air(20.0, 60.0), air(0.0, 85.0)).unwrap();
    assert_plane(&found, 2, 0.5747, 636.511, 1.8356);
}

#[test]
fn iso_13788_method_ply_on_both_sides() {
    let wall = [ply(), wool(), layer(6.0, 0.13, 70.0)];
    let found = profile(&wall, Surfaces::LEVEL, air(20.0, 50.0), air(0.0, 85.0)).unwrap();
    assert_plane(&found, 2, 1.2262, 667.178, 0.8863);
}

// The straight line from room to outside crosses saturation at three faces, but only one is a dew plane.
#[test]
fn iso_13788_method_takes_the_convex_hull_not_every_crossing() {
    let wall = [
        layer(12.5, 0.25, 10.0),
        layer(100.0, 0.04, 1.0),
        layer(12.0, 0.13, 70.0),
        layer(20.0, 0.04, 60.0),
        layer(5.0, 0.8, 25.0),
    ];
    let found = profile(&wall, Surfaces::LEVEL, air(20.0, 60.0), air(-10.0, 80.0)).unwrap();
    let plane = only_plane(&found);
    assert_eq!(plane.after_layer, 2);
    assert!((plane.condenses_g_m2_day - 73.0119).abs() < 1e-4, "{plane:?}");
    let at = |face: usize| (found.faces[face].sd_m, found.faces[face].vapour.get::<pascal>());
    for (face, sd, pa) in [(3, 1.065, 342.754), (4, 2.265, 220.230)] {
        assert!((at(face).0 - sd).abs() < 1e-9 && (at(face).1 - pa).abs() < 1e-3, "{:?}", at(face));
        assert!(found.faces[face].saturation.get::<pascal>() > pa);
    }
}

#[test]
fn dry_air_and_a_vapour_tight_lining_leave_no_plane() {
    let wall = [steel(), wool(), ply()];
    let found = profile(&wall, Surfaces::LEVEL, air(20.0, 40.0), air(0.0, 85.0)).unwrap();
    assert!(found.planes.is_empty() && !found.inner_surface_wet, "{found:?}");
}

#[test]
fn a_bare_steel_wall_is_wet_inside() {
    let found = profile(&[steel()], Surfaces::LEVEL, air(20.0, 60.0), air(0.0, 85.0)).unwrap();
    assert!(found.inner_surface_wet);
}

// Between two faces saturation sags below the straight line across a thick layer: counted, though no face is wet.
#[test]
fn dew_inside_a_layer_is_counted() {
    let wall = [layer(300.0, 0.04, 50.0)];
    let found = profile(&wall, Surfaces::LEVEL, air(25.0, 70.0), air(-10.0, 95.0)).unwrap();
    assert!(found.planes.is_empty());
    assert!(found.within.len() == 1 && found.within[0].layer == 1, "{:?}", found.within);
    assert!(found.condenses_g_m2_day() > 0.1, "{:?}", found.within);
}

// A layer entered as two or three of the same material is the same wall.
#[test]
fn a_split_layer_gathers_as_much() {
    let total = |parts: &[f64]| {
        let mut wall = vec![ply()];
        wall.extend(parts.iter().map(|part| layer(*part, 0.04, 5.0)));
        wall.push(layer(6.0, 0.13, 70.0));
        let found = profile(&wall, Surfaces::LEVEL, air(22.0, 75.0), air(-15.0, 90.0)).unwrap();
        found.condenses_g_m2_day()
    };
    let whole = total(&[240.0]);
    for parts in [&[120.0, 120.0][..], &[50.0, 190.0], &[30.0, 77.0, 133.0]] {
        assert!((total(parts) / whole - 1.0).abs() < 2e-3, "{parts:?}: {} {whole}", total(parts));
    }
}

#[test]
fn inputs_out_of_range_are_refused() {
    let found =
        |mu, inside| profile(&[layer(6.0, 0.13, mu)], Surfaces::LEVEL, inside, air(0.0, 80.0));
    assert_eq!(found(0.0, air(20.0, 50.0)), Err(ProfileError::VapourFactor(0)));
    assert_eq!(found(f64::NAN, air(20.0, 50.0)), Err(ProfileError::VapourFactor(0)));
    assert_eq!(found(1.0, air(20.0, 150.0)), Err(ProfileError::Inside(AirError::Humidity)));
}

proptest! {
    #[test]
    fn any_numbers_give_finite_figures_or_an_error(
        mu in any_number(), t in any_number(), celsius in any_number(), percent in any_number(),
    ) {
        let wall = [ply(), layer(t, 0.04, mu), steel()];
        if let Ok(found) = profile(&wall, Surfaces::LEVEL, air(celsius, percent), air(0.0, 85.0)) {
            prop_assert!(found.faces.iter().all(|f| f.vapour.value.is_finite() && f.temperature.value.is_finite()));
            prop_assert!(found.planes.iter().all(|p| p.condenses_g_m2_day.is_finite()));
        }
    }

    /// Nothing is above saturation, and what flows in is what gathers and what flows out.
    #[test]
    fn the_line_stays_below_saturation_and_vapour_is_conserved(
        layers in prop::collection::vec((1.0..150.0_f64, 0.02..2.0_f64, 1.0..500.0_f64), 1..7),
        inner in -5.0..35.0_f64, outer in -20.0..35.0_f64, wet in 10.0..100.0_f64, damp in 10.0..100.0_f64,
    ) {
        let wall: Vec<_> = layers.iter().map(|&(t, k, mu)| layer(t, k, mu)).collect();
        let found = profile(&wall, Surfaces::LEVEL, air(inner, wet), air(outer, damp)).unwrap();
        for face in &found.faces {
            prop_assert!(face.vapour.value <= face.saturation.value * (1.0 + 1e-9) + 1e-9);
        }
        let flow = |a: &Face, b: &Face| AIR_PERMEABILITY_KG_M_S_PA * 8.64e7
            * (a.vapour.value - b.vapour.value) / (b.sd_m - a.sd_m);
        let faces = &found.faces;
        let enters = flow(&faces[0], &faces[1]);
        let leaves = flow(&faces[faces.len() - 2], &faces[faces.len() - 1]);
        // The slope between two faces is what enters or leaves only where nothing gathers between them.
        if found.within.iter().any(|within| within.layer == 1 || within.layer == layers.len()) {
            return Ok(());
        }
        let gathers = found.condenses_g_m2_day();
        prop_assert!((enters - leaves - gathers).abs() < 1e-4 * (1.0 + enters.abs()));
    }
}

#[test]
fn temperatures_are_those_of_the_profile() {
    let layers = [ply(), wool(), steel()];
    let plain: Vec<Layer> = layers.iter().map(|layer| layer.layer).collect();
    let (inside, outside) = (air(20.0, 60.0), air(0.0, 85.0));
    let profile = profile(&layers, Surfaces::LEVEL, inside, outside).unwrap();
    let alone =
        temperatures(&plain, Surfaces::LEVEL, inside.temperature, outside.temperature).unwrap();
    let of_profile: Vec<ThermodynamicTemperature> =
        profile.faces.iter().map(|face| face.temperature).collect();
    assert_eq!(alone, of_profile);
}
