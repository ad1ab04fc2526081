//! U value of a build-up: layers in series, and timber that crosses one of them (ISO 6946).

use std::fmt;

use uom::si::f64::{HeatTransfer, Length, ThermalConductivity};
use uom::si::heat_transfer::watt_per_square_meter_kelvin;
use uom::si::length::{meter, millimeter};
use uom::si::thermal_conductivity::watt_per_meter_kelvin;

use super::formulas::{InSeries, LayerResistance, LowerLimit, Mean, UpperLimit};
use crate::formula::Formula as _;
use crate::quantity::plain;
use crate::source::Source;
use crate::words::{Arg, Msg, insulation as words};

/// The combined method: mean of an upper and a lower limit of the resistance.
pub const COMBINED_METHOD: Source =
    Source::transcribed("ISO 6946", "upper and lower limit, combined method");
/// Surface resistances by the direction of the heat flow.
pub const SURFACE_RESISTANCES: Source =
    Source::transcribed("ISO 6946", "conventional surface resistances");
/// The method's bound on upper over lower limit.
pub const RATIO_LIMIT: Source = Source::from_memory("ISO 6946", "R'/R'' not above 1.5");
/// Metal that crosses the insulation lies outside the method.
pub const METAL_SCOPE: Source = Source::transcribed("ISO 6946", "scope: metal bridges excluded");

/// The largest upper over lower limit that the combined method is used for.
pub const LARGEST_RATIO: f64 = 1.5;
/// From this conductivity on, W/(m K), a bridge is taken for metal. No stone, timber or plastic of a
/// fit-out reaches it and no metal lies below it (stainless steel, the poorest, has 16).
pub const METAL_CONDUCTIVITY: f64 = 10.0;

/// One layer of a build-up.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Layer {
    /// 0.01 mm to 5 m.
    pub thickness: Length,
    /// 0.001 to 1000 W/(m K).
    pub conductivity: ThermalConductivity,
}

impl Layer {
    /// A layer given by its thermal resistance, m²K/W, such as an air gap.
    pub fn with_resistance(thickness: Length, resistance_m2k_w: f64) -> Self {
        let conductivity = thickness.get::<meter>() / resistance_m2k_w;
        Self {
            thickness,
            conductivity: ThermalConductivity::new::<watt_per_meter_kelvin>(conductivity),
        }
    }

    /// Thickness over conductivity, m²K/W; finite for a layer in range.
    pub fn resistance_m2k_w(&self) -> f64 {
        self.resistance().value()
    }

    /// Thickness over conductivity, m²K/W, as it is shown.
    pub fn resistance(&self) -> LayerResistance {
        LayerResistance { thickness: self.thickness, conductivity: self.conductivity }
    }
}

/// Resistances of the air films on both faces, m²K/W, each 0 to 1.
///
/// They hold for a parked body in ordinary wind; driving or a gale makes the outer one smaller.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Surfaces {
    /// Towards the room.
    pub inside_m2k_w: f64,
    /// Towards the weather.
    pub outside_m2k_w: f64,
}

impl Surfaces {
    /// Heat flows upwards: a roof in winter.
    pub const UPWARD: Self = Self { inside_m2k_w: 0.10, outside_m2k_w: 0.04 };
    /// Heat flows level, within 30° of it: a wall.
    pub const LEVEL: Self = Self { inside_m2k_w: 0.13, outside_m2k_w: 0.04 };
    /// Heat flows downwards: a floor in winter.
    pub const DOWNWARD: Self = Self { inside_m2k_w: 0.17, outside_m2k_w: 0.04 };
}

/// Timber, or another material that is no metal, crossing the whole thickness of one layer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bridge {
    /// Index of the layer, from 0 at the inside.
    pub layer: usize,
    /// Share of the area that the bridge takes up, above 0 and below 1.
    pub share: f64,
    /// Conductivity of the bridge.
    pub conductivity: ThermalConductivity,
}

/// How much heat a build-up lets through.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Transmittance {
    /// U value, air to air.
    pub u: HeatTransfer,
    /// Total resistance, air to air, m²K/W: the mean of both limits.
    pub r_m2k_w: f64,
    /// Upper limit: heat keeps to its path, m²K/W. Equal to the lower one where nothing bridges.
    pub upper_m2k_w: f64,
    /// Lower limit: each layer evens out sideways, m²K/W.
    pub lower_m2k_w: f64,
    /// Largest relative error, (upper - lower) / (2 total); 0 where nothing bridges.
    pub relative_error: f64,
}

/// Why a build-up has no U value by this method.
#[derive(Clone, Debug, PartialEq)]
pub enum BuildUpError {
    /// No layer was given.
    NoLayers,
    /// A layer's thickness is out of range; layers count from 0.
    Thickness(usize),
    /// A layer's or a bridge's conductivity is out of range; layers count from 0.
    Conductivity(usize),
    /// A surface resistance is out of range.
    SurfaceResistance,
    /// The bridge names a layer that is not there.
    NoSuchLayer {
        /// The index that was named, from 0.
        layer: usize,
        /// How many layers there are.
        layers: usize,
    },
    /// The bridge's share of the area is not between 0 and 1.
    Share(f64),
    /// The bridge is metal.
    MetalBridge {
        /// Conductivity of the bridge, W/(m K).
        conductivity_w_mk: f64,
    },
    /// The limits lie too far apart for their mean to mean anything.
    LimitsApart {
        /// Upper over lower limit.
        ratio: f64,
    },
}

impl BuildUpError {
    /// What is wrong, as a message.
    pub fn told(&self) -> Msg {
        match self {
            Self::NoLayers => words::NO_LAYERS.into(),
            Self::Thickness(layer) => words::ThicknessRange { layer: layer + 1 }.into(),
            Self::Conductivity(layer) => words::ConductivityRange { layer: layer + 1 }.into(),
            Self::SurfaceResistance => words::FILM_RANGE.into(),
            Self::NoSuchLayer { layer, layers } => {
                words::NoSuchLayer { layers: *layers, layer: layer.saturating_add(1) }.into()
            }
            Self::Share(_) => words::SHARE_RANGE.into(),
            Self::MetalBridge { conductivity_w_mk } => {
                let conductivity =
                    ThermalConductivity::new::<watt_per_meter_kelvin>(*conductivity_w_mk);
                words::MetalBridge { conductivity: Arg::conductivity(conductivity) }.into()
            }
            Self::LimitsApart { ratio } => {
                words::LimitsApart { ratio: plain(*ratio, 2), most: plain(LARGEST_RATIO, 2) }.into()
            }
        }
    }
}

impl fmt::Display for BuildUpError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.told().fmt(f)
    }
}

impl std::error::Error for BuildUpError {}

/// U value of plain layers, from the inside to the outside: R = Rsi + sum(d / lambda) + Rse.
///
/// # Errors
/// A layer or a surface resistance out of range, or no layers.
pub fn series(layers: &[Layer], surfaces: Surfaces) -> Result<Transmittance, BuildUpError> {
    check(layers, surfaces)?;
    let resistance = in_series(layers, surfaces).value();
    Ok(transmittance(resistance, resistance))
}

/// Resistance of plain layers, from air to air.
pub fn in_series(layers: &[Layer], surfaces: Surfaces) -> InSeries {
    InSeries {
        inside: surfaces.inside_m2k_w,
        layers: layers.iter().map(Layer::resistance_m2k_w).sum(),
        outside: surfaces.outside_m2k_w,
    }
}

/// U value by the combined method: one layer is crossed by timber for a share of the area.
///
/// # Errors
/// As [`series`], and where the method does not hold: a metal bridge, or limits too far apart.
pub fn bridged(
    layers: &[Layer],
    bridge: Bridge,
    surfaces: Surfaces,
) -> Result<Transmittance, BuildUpError> {
    let Mean { upper, lower } = limits(layers, bridge, surfaces)?;
    Ok(transmittance(upper.value(), lower.value()))
}

/// Both limits of the resistance by the combined method.
///
/// # Errors
/// As [`bridged`].
pub fn limits(layers: &[Layer], bridge: Bridge, surfaces: Surfaces) -> Result<Mean, BuildUpError> {
    check(layers, surfaces)?;
    let conductivity_w_mk = bridge.conductivity.get::<watt_per_meter_kelvin>();
    let Some(crossed) = layers.get(bridge.layer) else {
        return Err(BuildUpError::NoSuchLayer { layer: bridge.layer, layers: layers.len() });
    };
    if !CONDUCTIVITY.contains(&conductivity_w_mk) {
        return Err(BuildUpError::Conductivity(bridge.layer));
    }
    if !(bridge.share > 0.0 && bridge.share < 1.0) {
        return Err(BuildUpError::Share(bridge.share));
    }
    if conductivity_w_mk >= METAL_CONDUCTIVITY {
        return Err(BuildUpError::MetalBridge { conductivity_w_mk });
    }

    let others = surface_sum(surfaces)
        + layers
            .iter()
            .enumerate()
            .filter(|(index, _)| *index != bridge.layer)
            .map(|(_, layer)| layer.resistance_m2k_w())
            .sum::<f64>();
    let field = crossed.resistance_m2k_w();
    let timber = crossed.thickness.get::<meter>() / conductivity_w_mk;
    let share = bridge.share;
    let upper = UpperLimit { share, through: others + timber, beside: others + field };
    let lower = LowerLimit { others, share, bridge: timber, filling: field };
    let ratio = upper.value() / lower.value();
    if ratio > LARGEST_RATIO + 1e-9 {
        return Err(BuildUpError::LimitsApart { ratio });
    }
    Ok(Mean { upper, lower })
}

/// The conductivities that are taken for a material's, W/(m K).
pub(super) const CONDUCTIVITY: std::ops::RangeInclusive<f64> = 0.001..=1000.0;

/// Whether every layer and both surfaces are in range.
pub(super) fn check(layers: &[Layer], surfaces: Surfaces) -> Result<(), BuildUpError> {
    if layers.is_empty() {
        return Err(BuildUpError::NoLayers);
    }
    let film = 0.0..=1.0;
    if !film.contains(&surfaces.inside_m2k_w) || !film.contains(&surfaces.outside_m2k_w) {
        return Err(BuildUpError::SurfaceResistance);
    }
    for (index, layer) in layers.iter().enumerate() {
        if !(0.01..=5000.0).contains(&layer.thickness.get::<millimeter>()) {
            return Err(BuildUpError::Thickness(index));
        }
        if !CONDUCTIVITY.contains(&layer.conductivity.get::<watt_per_meter_kelvin>()) {
            return Err(BuildUpError::Conductivity(index));
        }
    }
    Ok(())
}

/// Both air films together, m²K/W.
pub(super) fn surface_sum(surfaces: Surfaces) -> f64 {
    surfaces.inside_m2k_w + surfaces.outside_m2k_w
}

fn transmittance(upper: f64, lower: f64) -> Transmittance {
    let total = (upper + lower) / 2.0;
    Transmittance {
        u: HeatTransfer::new::<watt_per_square_meter_kelvin>(1.0 / total),
        r_m2k_w: total,
        upper_m2k_w: upper,
        lower_m2k_w: lower,
        // Rounding may put the lower limit a hair above the upper one where the bridge is the field's material.
        relative_error: ((upper - lower) / (2.0 * total)).max(0.0),
    }
}

#[cfg(test)]
mod tests;
