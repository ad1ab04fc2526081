//! U value of a build-up crossed by steel ribs: the zone method, and how cold the lining gets over a rib.

use std::fmt;

use uom::si::f64::{HeatTransfer, Length, ThermalConductivity, ThermodynamicTemperature};
use uom::si::heat_transfer::watt_per_square_meter_kelvin;
use uom::si::length::{meter, millimeter};
use uom::si::thermal_conductivity::watt_per_meter_kelvin;
use uom::si::thermodynamic_temperature::kelvin;

use super::build_up::{self, BuildUpError, CONDUCTIVITY, Layer, Surfaces, Transmittance};
use crate::source::Source;

/// The zone method and the width of its zone.
pub const ZONE_METHOD: Source =
    Source::transcribed("ASHRAE Handbook, Fundamentals", "zone method, W = m + 2 d");
/// Temperature factor of a surface, and its reading in the field.
pub const TEMPERATURE_FACTOR: Source =
    Source::identity("fRsi = (Tsi - Te) / (Ti - Te) = 1 - U Rsi where heat flows straight");
/// The lining over a rib is taken as a strip as wide as the metal.
pub const STRIP: Source =
    Source::identity("a strip as wide as the metal, heat flowing straight through");

/// The least distance from metal to surface that the zone method counts with: 0.5 in, 13 mm.
pub const LEAST_COVER_MM: f64 = 13.0;

/// Metal ribs at even spacing through one layer: a web, and where the metal is wider than the web, one flange of
/// the web's thickness on the room side of that layer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rib {
    /// Index of the crossed layer, from 0 at the inside.
    pub layer: usize,
    /// Widest part of the metal: flange width, at least the web.
    pub metal_width: Length,
    /// Thickness of metal that crosses the layer; both webs together for a hat section.
    pub web: Length,
    /// Rib centre to rib centre.
    pub spacing: Length,
    /// Conductivity of the metal, 1 to 1000 W/(m K).
    pub conductivity: ThermalConductivity,
}

/// A build-up with its ribs, beside the same without.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RibbedBuildUp {
    /// U value with ribs.
    pub u: HeatTransfer,
    /// Total resistance with ribs, 1 / U, m²K/W.
    pub r_m2k_w: f64,
    /// The same layers without ribs.
    pub field: Transmittance,
    /// Width of the zone that one rib draws heat from, W = m + 2 d.
    pub zone_width: Length,
    /// Resistance through that zone, air to air, m²K/W.
    pub zone_r_m2k_w: f64,
    /// Temperature factor of the lining between ribs, 1 - U Rsi.
    pub field_factor: f64,
    /// Temperature factor of the lining over the rib.
    ///
    /// An approximation: the strip as wide as the metal, with heat flowing straight through it. Against a
    /// two-dimensional finite-volume model of 18 T ribs (flange 20 to 80 mm, web 1 to 3 mm, insulation 20 to 80 mm,
    /// lining 3 to 20 mm) it read from 0.06 too cold to 0.02 too warm; the zone's mean read up to 0.06 too warm.
    pub rib_factor: f64,
}

/// Why a ribbed build-up has no U value.
#[derive(Clone, Debug, PartialEq)]
pub enum RibError {
    /// The layers themselves are at fault.
    BuildUp(BuildUpError),
    /// The metal's widths are out of order: web from 0.1 mm, then metal width, then spacing up to 5 m.
    Widths,
    /// The metal's conductivity is out of range.
    Conductivity,
    /// The ribs stand so close that their zones overlap.
    ZonesOverlap {
        /// Width of one zone, mm.
        zone_mm: f64,
        /// Spacing of the ribs, mm.
        spacing_mm: f64,
    },
}

impl fmt::Display for RibError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::BuildUp(error) => error.fmt(f),
            Self::Widths => f.write_str(
                "the web must be at least 0.1 mm, the metal no narrower than the web, and the spacing wider than the metal and at most 5 m",
            ),
            Self::Conductivity => {
                f.write_str("the metal's conductivity must be from 1 to 1000 W/m/K; steel has about 50")
            }
            Self::ZonesOverlap { zone_mm, spacing_mm } => write!(
                f,
                "each rib draws heat from {zone_mm:.0} mm, more than the spacing of {spacing_mm:.0} mm: \
                 the zone method needs ribs further apart"
            ),
        }
    }
}

impl std::error::Error for RibError {}

/// U value with steel ribs by the zone method, beside the value without.
///
/// Within a zone every layer is taken as metal and filling side by side, and the layers in series; the zone and the
/// field between zones then share the area. Heat bridges at rivets and at the body's edges are left out.
///
/// # Errors
/// Layers, widths or conductivity out of range; zones that overlap.
pub fn ribbed(layers: &[Layer], rib: Rib, surfaces: Surfaces) -> Result<RibbedBuildUp, RibError> {
    let field = build_up::series(layers, surfaces).map_err(RibError::BuildUp)?;
    let Some(crossed) = layers.get(rib.layer) else {
        let error = BuildUpError::NoSuchLayer { layer: rib.layer, layers: layers.len() };
        return Err(RibError::BuildUp(error));
    };
    let metal_m = rib.metal_width.get::<meter>();
    let web_m = rib.web.get::<meter>();
    let spacing_m = rib.spacing.get::<meter>();
    if !(web_m >= 1e-4 && metal_m >= web_m && spacing_m > metal_m && spacing_m <= 5.0) {
        return Err(RibError::Widths);
    }
    let metal_k = rib.conductivity.get::<watt_per_meter_kelvin>();
    if !(metal_k >= 1.0 && CONDUCTIVITY.contains(&metal_k)) {
        return Err(RibError::Conductivity);
    }

    let thickness = |side: &[Layer]| side.iter().map(|l| l.thickness.get::<meter>()).sum::<f64>();
    let cover = thickness(&layers[..rib.layer]).min(thickness(&layers[rib.layer + 1..]));
    let zone_m = metal_m + 2.0 * cover.max(LEAST_COVER_MM / 1000.0);
    if zone_m > spacing_m + 1e-9 {
        let (zone_mm, spacing_mm) = (zone_m * 1000.0, spacing_m * 1000.0);
        return Err(RibError::ZonesOverlap { zone_mm, spacing_mm });
    }

    let others = field.r_m2k_w - crossed.resistance_m2k_w();
    let strip_r = |width_m: f64| others + ribbed_layer_r(crossed, metal_m, web_m, metal_k, width_m);
    let zone_r = strip_r(zone_m);
    let zone_share = (zone_m / spacing_m).min(1.0);
    let u = zone_share / zone_r + (1.0 - zone_share) / field.r_m2k_w;
    let factor = |resistance: f64| 1.0 - surfaces.inside_m2k_w / resistance;
    Ok(RibbedBuildUp {
        u: HeatTransfer::new::<watt_per_square_meter_kelvin>(u),
        r_m2k_w: 1.0 / u,
        field,
        zone_width: Length::new::<millimeter>(zone_m * 1000.0),
        zone_r_m2k_w: zone_r,
        field_factor: factor(field.r_m2k_w),
        rib_factor: factor(strip_r(metal_m)),
    })
}

/// Temperature of a surface with the given factor: Te + fRsi (Ti - Te).
pub fn surface_temperature(
    factor: f64,
    inside: ThermodynamicTemperature,
    outside: ThermodynamicTemperature,
) -> ThermodynamicTemperature {
    let (inside, outside) = (inside.get::<kelvin>(), outside.get::<kelvin>());
    ThermodynamicTemperature::new::<kelvin>(outside + factor * (inside - outside))
}

/// Resistance, m²K/W, of the crossed layer over a strip of the given width: flange, then web, each side by side with
/// the filling.
fn ribbed_layer_r(layer: &Layer, metal_m: f64, web_m: f64, metal_k: f64, width_m: f64) -> f64 {
    let depth = layer.thickness.get::<meter>();
    let fill_k = layer.conductivity.get::<watt_per_meter_kelvin>();
    let side_by_side =
        |metal: f64| (metal * metal_k + (width_m - metal).max(0.0) * fill_k) / width_m;
    let flange = if metal_m > web_m { web_m.min(depth) } else { 0.0 };
    flange / side_by_side(metal_m) + (depth - flange) / side_by_side(web_m)
}

#[cfg(test)]
mod tests {
    use super::*;
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
        assert!((found.zone_width.get::<millimeter>() - 56.0).abs() < 1e-9, "{found:?}");
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
        let zone_in = found.zone_width.get::<millimeter>() / inch;
        assert!((zone_in - 2.25).abs() < 0.03, "{zone_in}");
    }

    // fRsi = 1 - U Rsi: 0.5 gives 0.935, 0.9 gives 0.883, 1.5 gives 0.805, bare steel 0.236 (arithmetic).
    #[test]
    fn temperature_factor_in_the_field() {
        let bare = ribbed(
            &[layer(1.0, 50.0), layer(1.0, 50.0)],
            Rib { layer: 0, ..rib() },
            Surfaces::LEVEL,
        );
        assert!((bare.unwrap().field_factor - 0.236).abs() < 0.001);
        for (u, factor) in [(0.5, 0.935), (0.9, 0.883), (1.5, 0.805)] {
            let slab = layer(100.0, 0.1 / (1.0 / u - 0.17));
            let found =
                ribbed(&[slab, layer(1.0, 50.0)], Rib { layer: 0, ..rib() }, Surfaces::LEVEL);
            assert!((found.unwrap().field_factor - factor).abs() < 0.0005);
        }
    }

    // 20 °C inside and 0 °C outside: the field is at 18.1 °C (two-dimensional model), as 1 - U Rsi says.
    #[test]
    fn surface_temperature_follows_the_factor() {
        let at = |c: f64| ThermodynamicTemperature::new::<degree_celsius>(c);
        let found = ribbed(&wall(), rib(), Surfaces::LEVEL).unwrap();
        let field = surface_temperature(found.field_factor, at(20.0), at(0.0));
        assert!((field.get::<degree_celsius>() - 18.13).abs() < 0.01);
    }

    #[test]
    fn ribs_whose_zones_overlap_are_refused() {
        let close = Rib { spacing: mm(50.0), ..rib() };
        assert!(matches!(
            ribbed(&wall(), close, Surfaces::LEVEL),
            Err(RibError::ZonesOverlap { .. })
        ));
        assert_eq!(
            ribbed(&wall(), Rib { web: mm(40.0), ..rib() }, Surfaces::LEVEL),
            Err(RibError::Widths)
        );
    }

    proptest! {
        #[test]
        fn any_numbers_give_finite_figures_or_an_error(
            which in 0_usize..5, metal in any::<f64>(), web in any::<f64>(), spacing in any::<f64>(), k in any::<f64>(),
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
}
