//! The zone method against a published example, arithmetic and a two-dimensional model.

use super::*;
use crate::testing::any_number;
use proptest::prelude::*;
use uom::si::thermodynamic_temperature::degree_celsius;

fn mm(value: f64) -> Length {
    Length::new::<millimeter>(value)
}

fn conductivity(value: f64) -> ThermalConductivity {
    ThermalConductivity::new::<watt_per_meter_kelvin>(value)
}

fn layer(thickness_mm: f64, k: f64) -> Layer {
    Layer { thickness: mm(thickness_mm), conductivity: conductivity(k) }
}

fn wall() -> [Layer; 3] {
    [layer(6.0, 0.13), layer(40.0, 0.034), layer(1.0, 50.0)]
}

fn rib() -> Rib {
    Rib {
        layer: 1,
        metal_width: mm(30.0),
        web: mm(1.0),
        spacing: mm(600.0),
        conductivity: conductivity(50.0),
    }
}

// Zone method worked in plain arithmetic outside this program: U 1.01235 against 0.718058 without ribs.
#[test]
fn zone_method_arithmetic_of_the_reference_rib() {
    let found = ribbed(&wall(), rib(), Surfaces::LEVEL).unwrap();
    assert!((found.u.value - 1.01235).abs() < 1e-5, "{found:?}");
    assert!((found.field.u.value - 0.718058).abs() < 1e-6, "{found:?}");
    assert!((found.zone_width.value().get::<millimeter>() - 56.0).abs() < 1e-9, "{found:?}");
}

// A two-dimensional finite-volume model of the same rib (refined until it stood still) gives U 0.9955, and
// temperature factors 0.464 over the rib and 0.907 in the field.
#[test]
fn zone_method_against_a_two_dimensional_model() {
    let found = ribbed(&wall(), rib(), Surfaces::LEVEL).unwrap();
    assert!((found.u.value / 0.9955 - 1.0).abs() < 0.02, "{found:?}");
    assert!((found.field_factor - 0.907).abs() < 0.0005, "{found:?}");
    assert!(found.rib_factor < 0.464 && found.rib_factor > 0.464 - 0.01, "{found:?}");
}

// More T ribs from such a model: flange mm, web mm, insulation mm, lining mm, U, factor over the rib.
#[test]
fn more_ribs_against_a_two_dimensional_model() {
    for (flange, web, insulation, lining, u, factor) in [
        (20.0, 1.0, 40.0, 6.0, 0.954, 0.447),
        (80.0, 1.0, 40.0, 6.0, 1.132, 0.550),
        (30.0, 1.0, 20.0, 6.0, 1.487, 0.417),
        (30.0, 1.0, 80.0, 6.0, 0.659, 0.544),
        (30.0, 1.0, 40.0, 3.0, 1.024, 0.387),
        (30.0, 1.0, 40.0, 18.0, 0.890, 0.662),
        (30.0, 3.0, 40.0, 6.0, 1.041, 0.398),
    ] {
        let layers = [layer(lining, 0.13), layer(insulation, 0.034), layer(1.0, 50.0)];
        let rib = Rib { metal_width: mm(flange), web: mm(web), ..rib() };
        let found = ribbed(&layers, rib, Surfaces::LEVEL).unwrap();
        assert!((found.u.value / u - 1.0).abs() < 0.055, "{flange} {web}: {found:?}");
        let warmer = found.rib_factor - factor;
        assert!(warmer < 0.022 && warmer > -0.06, "{flange} {web}: {warmer}");
    }
}

// ASHRAE zone method, published example as transcribed: 1.25 in metal under 0.5 in board, 16 in on centre:
// zone 2.25 in, field 13.75 in.
#[test]
fn ashrae_zone_width_example() {
    let inch = 25.4;
    let layers = [layer(0.5 * inch, 0.16), layer(3.5 * inch, 0.04), layer(0.5 * inch, 0.16)];
    let rib = Rib {
        layer: 1,
        metal_width: mm(1.25 * inch),
        web: mm(1.0),
        spacing: mm(16.0 * inch),
        conductivity: conductivity(45.0),
    };
    // 0.5 in is 12.7 mm; the SI edition of the rule rounds its least cover to 13 mm.
    let found = ribbed(&layers, rib, Surfaces::LEVEL).unwrap();
    let zone_in = found.zone_width.value().get::<millimeter>() / inch;
    assert!((zone_in - 2.25).abs() < 0.03, "{zone_in}");
}

// fRsi = 1 - U Rsi: 0.5 gives 0.935, 0.9 gives 0.883, 1.5 gives 0.805, bare steel 0.236 (arithmetic).
#[test]
fn temperature_factor_in_the_field() {
    let bare =
        ribbed(&[layer(1.0, 50.0), layer(1.0, 50.0)], Rib { layer: 0, ..rib() }, Surfaces::LEVEL);
    assert!((bare.unwrap().field_factor - 0.236).abs() < 0.001);
    for (u, factor) in [(0.5, 0.935), (0.9, 0.883), (1.5, 0.805)] {
        let slab = layer(100.0, 0.1 / (1.0 / u - 0.17));
        let found = ribbed(&[slab, layer(1.0, 50.0)], Rib { layer: 0, ..rib() }, Surfaces::LEVEL);
        assert!((found.unwrap().field_factor - factor).abs() < 0.0005);
    }
}

// 20 °C inside and 0 °C outside: the field is at 18.1 °C (two-dimensional model), as 1 - U Rsi says.
#[test]
fn surface_temperature_follows_the_factor() {
    let at = |c: f64| ThermodynamicTemperature::new::<degree_celsius>(c);
    let found = ribbed(&wall(), rib(), Surfaces::LEVEL).unwrap();
    let field = found.field_surface(at(20.0), at(0.0)).unwrap();
    assert!((field.get::<degree_celsius>() - 18.13).abs() < 0.01);
    // The two-dimensional model has 9.3 °C over the rib; this reads a little colder.
    let rib = found.rib_surface(at(20.0), at(0.0)).unwrap().get::<degree_celsius>();
    assert!(rib > 9.0 && rib < 9.3, "{rib}");
    assert_eq!(found.rib_surface(at(f64::NAN), at(0.0)), Err(AirError::Temperature));
}

#[test]
fn ribs_whose_zones_overlap_are_refused() {
    let close = Rib { spacing: mm(50.0), ..rib() };
    assert!(matches!(ribbed(&wall(), close, Surfaces::LEVEL), Err(RibError::ZonesOverlap { .. })));
    assert_eq!(
        ribbed(&wall(), Rib { web: mm(40.0), ..rib() }, Surfaces::LEVEL),
        Err(RibError::Widths)
    );
}

proptest! {
    #[test]
    fn any_numbers_give_finite_figures_or_an_error(
        which in 0_usize..5, metal in any_number(), web in any_number(), spacing in any_number(), k in any_number(),
    ) {
        let rib = Rib {
            layer: which,
            metal_width: mm(metal),
            web: mm(web),
            spacing: mm(spacing),
            conductivity: conductivity(k),
        };
        if let Ok(found) = ribbed(&wall(), rib, Surfaces::LEVEL) {
            prop_assert!(found.u.value.is_finite() && found.rib_factor.is_finite());
        }
    }

    #[test]
    fn ribs_never_help(metal in 2.0..100.0_f64, web in 0.5..2.0_f64, spacing in 200.0..1000.0_f64) {
        let rib = Rib { metal_width: mm(metal), web: mm(web), spacing: mm(spacing), ..rib() };
        let found = ribbed(&wall(), rib, Surfaces::LEVEL).unwrap();
        prop_assert!(found.u >= found.field.u);
        prop_assert!(found.rib_factor <= found.field_factor);
    }
}
