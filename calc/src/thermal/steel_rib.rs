//! U value of a build-up crossed by steel ribs: the zone method, and how cold the lining gets over a rib.

use std::fmt;

use uom::si::f64::{HeatTransfer, Length, ThermalConductivity, ThermodynamicTemperature};
use uom::si::heat_transfer::watt_per_square_meter_kelvin;
use uom::si::length::{meter, millimeter};
use uom::si::thermal_conductivity::watt_per_meter_kelvin;

use super::build_up::{self, BuildUpError, CONDUCTIVITY, Layer, Surfaces, Transmittance};
use super::formulas::{ByFactor, Ribbed, ZoneResistance, ZoneWidth};
use super::moisture::{AirError, check_celsius};
use crate::formula::Formula as _;
use crate::source::Source;
use crate::words::{Arg, Msg, insulation as words};

/// The zone method and the width of its zone.
pub const ZONE_METHOD: Source =
    Source::transcribed("ASHRAE Handbook, Fundamentals", "zone method, W = m + 2 d");
/// Temperature factor of a surface, and its reading in the field.
pub const TEMPERATURE_FACTOR: Source = Source::identity_of(words::SOURCE_FACTOR);
/// The lining over a rib is taken as a strip as wide as the metal.
pub const STRIP: Source = Source::identity_of(words::SOURCE_STRIP);

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
    /// U value with ribs; against the two-dimensional model named below, from 1.5 % low to 5.5 % high.
    pub u: HeatTransfer,
    /// Total resistance with ribs, 1 / U, m²K/W.
    pub r_m2k_w: f64,
    /// The same layers without ribs.
    pub field: Transmittance,
    /// Width of the zone that one rib draws heat from, W = m + 2 d.
    pub zone_width: ZoneWidth,
    /// Resistance through that zone, air to air.
    pub zone: ZoneResistance,
    /// The U value, as it is shown.
    pub shown: Ribbed,
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

impl RibError {
    /// What is wrong, as a message.
    pub fn told(&self) -> Msg {
        match self {
            Self::BuildUp(error) => error.told(),
            Self::Widths => words::RIB_WIDTHS.into(),
            Self::Conductivity => words::RIB_CONDUCTIVITY.into(),
            Self::ZonesOverlap { zone_mm, spacing_mm } => {
                let [zone, spacing] =
                    [*zone_mm, *spacing_mm].map(|mm| Arg::small(Length::new::<millimeter>(mm)));
                words::ZonesOverlap { zone, spacing }.into()
            }
        }
    }
}

impl fmt::Display for RibError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.told().fmt(f)
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
    let cover = Length::new::<meter>(cover.max(LEAST_COVER_MM / 1000.0));
    let zone_width = ZoneWidth { metal: rib.metal_width, cover };
    let zone_m = zone_width.metres();
    if zone_m > spacing_m + 1e-9 {
        let (zone_mm, spacing_mm) = (zone_m * 1000.0, spacing_m * 1000.0);
        return Err(RibError::ZonesOverlap { zone_mm, spacing_mm });
    }

    let others = field.r_m2k_w - crossed.resistance_m2k_w();
    let strip = |width_m: f64| through_strip(others, crossed, [metal_m, web_m], metal_k, width_m);
    let zone = strip(zone_m);
    let shown = Ribbed {
        zone: zone_width,
        spacing: rib.spacing,
        through: zone.value(),
        field: field.r_m2k_w,
    };
    let u = shown.value();
    let factor = |resistance: f64| 1.0 - surfaces.inside_m2k_w / resistance;
    Ok(RibbedBuildUp {
        u: HeatTransfer::new::<watt_per_square_meter_kelvin>(u),
        r_m2k_w: 1.0 / u,
        field,
        zone_width,
        zone,
        shown,
        field_factor: factor(field.r_m2k_w),
        rib_factor: factor(strip(metal_m).value()),
    })
}

impl RibbedBuildUp {
    /// Temperature of the lining between ribs, Te + fRsi (Ti - Te).
    ///
    /// # Errors
    /// [`AirError::Temperature`] where either air is out of range.
    pub fn field_surface(
        &self,
        inside: ThermodynamicTemperature,
        outside: ThermodynamicTemperature,
    ) -> Result<ThermodynamicTemperature, AirError> {
        surface(self.field_factor, inside, outside)
    }

    /// Temperature of the lining over a rib, as near as [`Self::rib_factor`] is.
    ///
    /// # Errors
    /// [`AirError::Temperature`] where either air is out of range.
    pub fn rib_surface(
        &self,
        inside: ThermodynamicTemperature,
        outside: ThermodynamicTemperature,
    ) -> Result<ThermodynamicTemperature, AirError> {
        surface(self.rib_factor, inside, outside)
    }
}

fn surface(
    factor: f64,
    inside: ThermodynamicTemperature,
    outside: ThermodynamicTemperature,
) -> Result<ThermodynamicTemperature, AirError> {
    check_celsius(inside)?;
    check_celsius(outside)?;
    Ok(ByFactor { inside, outside, factor }.value())
}

/// Resistance over a strip of the given width: in the crossed layer flange, then web, each side by side with the
/// filling.
fn through_strip(
    others: f64,
    layer: &Layer,
    [metal_m, web_m]: [f64; 2],
    metal_k: f64,
    width_m: f64,
) -> ZoneResistance {
    let depth = layer.thickness.get::<meter>();
    let fill_k = layer.conductivity.get::<watt_per_meter_kelvin>();
    let side_by_side = |metal: f64| {
        let mean = (metal * metal_k + (width_m - metal).max(0.0) * fill_k) / width_m;
        ThermalConductivity::new::<watt_per_meter_kelvin>(mean)
    };
    let flange = if metal_m > web_m { web_m.min(depth) } else { 0.0 };
    ZoneResistance {
        others,
        flange: Length::new::<meter>(flange),
        beside_flange: side_by_side(metal_m),
        depth: layer.thickness,
        beside_web: side_by_side(web_m),
    }
}

#[cfg(test)]
mod tests;
