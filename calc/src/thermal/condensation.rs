//! Condensation inside a build-up: temperatures, vapour pressures and dew planes (ISO 13788, steady state).

use std::fmt;

use uom::si::f64::{Pressure, ThermodynamicTemperature};
use uom::si::length::meter;
use uom::si::pressure::pascal;
use uom::si::thermodynamic_temperature::degree_celsius;

use super::build_up::{self, BuildUpError, Layer, Surfaces};
use super::formulas::{self, Gathers};
use super::moisture::{self, Air, AirError};
use crate::formula::Formula as _;
use crate::source::Source;
use crate::words::{Msg, insulation as words};

/// Vapour diffusion through layers in steady state, the pressure line being the lower convex hull.
pub const METHOD: Source =
    Source::transcribed("ISO 13788", "interstitial condensation; Glaser's method");
/// Vapour permeability of still air.
pub const AIR_PERMEABILITY: Source =
    Source::transcribed("ISO 13788", "vapor permeability of air, 2e-10 kg/(m s Pa)");
/// Where a layer is looked into between its faces.
pub const SLICES: Source = Source::from_memory(
    "ISO 13788",
    "layers divided so that no slice has more than 0.25 m2K/W; here 0.02, so that a layer entered as two gives the same",
);

/// Vapour permeability of still air, kg/(m s Pa).
pub const AIR_PERMEABILITY_KG_M_S_PA: f64 = 2e-10;

/// One layer with its resistance to vapour.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct VapourLayer {
    /// Thickness and conductivity.
    pub layer: Layer,
    /// Vapour resistance factor mu, 0.01 to 1e7; 1 is still air, 1e6 stands for metal and glass.
    pub vapour_factor: f64,
}

/// State at a face of a layer: the inner surface first, then behind each layer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Face {
    /// Air-layer thickness that resists vapour as much, summed from the inner surface, m.
    pub sd_m: f64,
    /// Temperature.
    pub temperature: ThermodynamicTemperature,
    /// Saturation pressure at that temperature.
    pub saturation: Pressure,
    /// Vapour pressure; nowhere above saturation.
    pub vapour: Pressure,
}

/// A plane where vapour turns to water or frost.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Plane {
    /// Behind this layer, counted from 1 at the inside.
    pub after_layer: usize,
    /// Temperature of the plane.
    pub temperature: ThermodynamicTemperature,
    /// What gathers there, g per m² and day.
    pub condenses_g_m2_day: f64,
    /// What that comes from.
    pub gathers: Gathers,
}

/// A layer within which vapour turns to water or frost.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Within {
    /// The layer, counted from 1 at the inside.
    pub layer: usize,
    /// Of the coldest place in it where water gathers.
    pub temperature: ThermodynamicTemperature,
    /// What gathers in all of it, between its faces, g per m² and day.
    pub condenses_g_m2_day: f64,
}

/// Temperatures, pressures and dew planes through a build-up.
///
/// The method knows vapour diffusion alone. Air that leaks past the lining usually carries far more, so no plane in
/// the list is no clearance; nor does it know storage, capillary suction, latent heat, ribs or corners.
#[derive(Clone, Debug, PartialEq)]
pub struct Profile {
    /// From the inner surface to the outer one: one more than layers.
    pub faces: Vec<Face>,
    /// Where water gathers between layers.
    pub planes: Vec<Plane>,
    /// Where water gathers within layers, between their faces.
    pub within: Vec<Within>,
    /// The inner surface is at or below the room's dew point.
    pub inner_surface_wet: bool,
    /// The outer surface is below the outside air's dew point.
    pub outer_surface_wet: bool,
}

/// Why there is no profile.
#[derive(Clone, Debug, PartialEq)]
pub enum ProfileError {
    /// A layer or a surface is out of range.
    BuildUp(BuildUpError),
    /// The air on the inside is out of range.
    Inside(AirError),
    /// The air on the outside is out of range.
    Outside(AirError),
    /// A layer's vapour factor is out of range; layers count from 0.
    VapourFactor(usize),
}

impl ProfileError {
    /// What is wrong, as a message.
    pub fn told(&self) -> Msg {
        match self {
            Self::BuildUp(error) => error.told(),
            Self::Inside(error) => words::AirInside { what: error.told() }.into(),
            Self::Outside(error) => words::AirOutside { what: error.told() }.into(),
            Self::VapourFactor(layer) => words::VapourRange { layer: layer + 1 }.into(),
        }
    }
}

impl fmt::Display for ProfileError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.told().fmt(f)
    }
}

impl std::error::Error for ProfileError {}

/// Temperatures, pressures and dew planes of a build-up between two airs, from inside to outside.
///
/// The vapour pressure over the summed sd is the lower convex hull of room air, saturation at every face between
/// layers and at every slice within them ([`SLICES`]), and outside air: where the hull bends at saturation, water
/// gathers at delta0 x (slope before - slope behind).
///
/// # Errors
/// Layers, surfaces, vapour factors or air out of range.
pub fn profile(
    layers: &[VapourLayer],
    surfaces: Surfaces,
    inside: Air,
    outside: Air,
) -> Result<Profile, ProfileError> {
    let plain: Vec<Layer> = layers.iter().map(|l| l.layer).collect();
    let total = build_up::series(&plain, surfaces).map_err(ProfileError::BuildUp)?.r_m2k_w;
    if let Some(at) = layers.iter().position(|l| !(0.01..=1e7).contains(&l.vapour_factor)) {
        return Err(ProfileError::VapourFactor(at));
    }
    let inner_pa = moisture::vapour_pa(inside).map_err(ProfileError::Inside)?;
    let outer_pa = moisture::vapour_pa(outside).map_err(ProfileError::Outside)?;
    let inner_c = inside.temperature.get::<degree_celsius>();
    let outer_c = outside.temperature.get::<degree_celsius>();
    let celsius = |resistance: f64| inner_c + (outer_c - inner_c) * (resistance / total).min(1.0);

    // Summed resistance and sd at every face, and at the slices between: the face behind, or the layer cut.
    let mut steps =
        vec![Cut { resistance: surfaces.inside_m2k_w, sd_m: 0.0, place: Place::Face(0) }];
    let (mut resistance, mut sd_m) = (surfaces.inside_m2k_w, 0.0);
    for (index, l) in layers.iter().enumerate() {
        let (r, sd) =
            (l.layer.resistance_m2k_w(), l.vapour_factor * l.layer.thickness.get::<meter>());
        let slices = (r / SLICE_M2K_W - 1e-9).ceil().clamp(1.0, 400.0);
        for slice in 1..slices as usize {
            let part = slice as f64 / slices;
            steps.push(Cut {
                resistance: resistance + part * r,
                sd_m: sd_m + part * sd,
                place: Place::Within(index + 1),
            });
        }
        resistance += r;
        sd_m += sd;
        steps.push(Cut { resistance, sd_m, place: Place::Face(index + 1) });
    }
    let end = steps.len() - 1;
    let mut line: Vec<Point> = steps
        .iter()
        .map(|cut| Point { sd_m: cut.sd_m, pa: moisture::saturation_pa(celsius(cut.resistance)) })
        .collect();
    let saturation: Vec<f64> = line.iter().map(|p| p.pa).collect();
    // The surfaces hold no more vapour than saturates them.
    line[0].pa = inner_pa.min(saturation[0]);
    line[end].pa = outer_pa.min(saturation[end]);
    let hull = lower_hull(&line);

    let temperature =
        |resistance: f64| ThermodynamicTemperature::new::<degree_celsius>(celsius(resistance));
    let faces = steps
        .iter()
        .zip(&saturation)
        .filter(|(cut, _)| matches!(cut.place, Place::Face(_)))
        .map(|(cut, saturation)| Face {
            sd_m: cut.sd_m,
            temperature: temperature(cut.resistance),
            saturation: Pressure::new::<pascal>(*saturation),
            vapour: Pressure::new::<pascal>(on_line(&line, &hull, cut.sd_m)),
        })
        .collect();

    let slope =
        |from: usize, to: usize| (line[to].pa - line[from].pa) / (line[to].sd_m - line[from].sd_m);
    let mut planes = Vec::new();
    let mut within: Vec<Within> = Vec::new();
    for w in hull.windows(3) {
        let gathers = Gathers { before: -slope(w[0], w[1]), behind: -slope(w[1], w[2]) };
        let grams = gathers.value();
        let cut = steps[w[1]];
        let temperature = temperature(cut.resistance);
        match (cut.place, within.last_mut()) {
            (Place::Face(after_layer), _) if grams > LEAST_RATE_G_M2_DAY => {
                planes.push(Plane { after_layer, temperature, condenses_g_m2_day: grams, gathers });
            }
            (Place::Within(layer), Some(last)) if last.layer == layer => {
                last.condenses_g_m2_day += grams;
                if temperature < last.temperature {
                    last.temperature = temperature;
                }
            }
            (Place::Within(layer), _) => {
                within.push(Within { layer, temperature, condenses_g_m2_day: grams });
            }
            (Place::Face(_), _) => {}
        }
    }
    within.retain(|within| within.condenses_g_m2_day > LEAST_RATE_G_M2_DAY);

    Ok(Profile {
        faces,
        planes,
        within,
        inner_surface_wet: inner_pa >= saturation[0],
        outer_surface_wet: outer_pa > saturation[end] * (1.0 + 1e-9),
    })
}

/// Temperatures at the faces of plain layers, from the inner surface to the outer one: in step with the resistance.
///
/// # Errors
/// Layers, surfaces or temperatures out of range.
pub fn temperatures(
    layers: &[Layer],
    surfaces: Surfaces,
    inside: ThermodynamicTemperature,
    outside: ThermodynamicTemperature,
) -> Result<Vec<ThermodynamicTemperature>, ProfileError> {
    let total = build_up::series(layers, surfaces).map_err(ProfileError::BuildUp)?.r_m2k_w;
    moisture::check_celsius(inside).map_err(ProfileError::Inside)?;
    moisture::check_celsius(outside).map_err(ProfileError::Outside)?;
    let mut resistance = surfaces.inside_m2k_w;
    let at = |upto: f64| formulas::Within { inside, outside, upto, total }.value();
    let mut faces = vec![at(resistance)];
    for layer in layers {
        resistance += layer.resistance_m2k_w();
        faces.push(at(resistance));
    }
    Ok(faces)
}

/// The most resistance that a slice of a layer has, m²K/W.
const SLICE_M2K_W: f64 = 0.02;

/// Where the pressure line is looked at.
#[derive(Clone, Copy)]
struct Cut {
    resistance: f64,
    sd_m: f64,
    place: Place,
}

#[derive(Clone, Copy)]
enum Place {
    /// The face behind so many layers.
    Face(usize),
    /// Within this layer, counted from 1.
    Within(usize),
}

impl Profile {
    /// All that gathers at planes and within layers, g per m² and day.
    pub fn condenses_g_m2_day(&self) -> f64 {
        self.planes.iter().map(|plane| plane.condenses_g_m2_day).sum::<f64>()
            + self.within.iter().map(|within| within.condenses_g_m2_day).sum::<f64>()
    }
}

/// Less than this, g per m² and day, is rounding and no water.
const LEAST_RATE_G_M2_DAY: f64 = 1e-6;

#[derive(Clone, Copy)]
struct Point {
    sd_m: f64,
    pa: f64,
}

/// Indices of the lower convex hull of points that run from left to right, ends included.
fn lower_hull(points: &[Point]) -> Vec<usize> {
    let mut hull: Vec<usize> = Vec::with_capacity(points.len());
    for next in 0..points.len() {
        while let [.., before, tip] = hull[..] {
            let (a, b, c) = (points[before], points[tip], points[next]);
            let turn = (b.sd_m - a.sd_m) * (c.pa - a.pa) - (b.pa - a.pa) * (c.sd_m - a.sd_m);
            if turn > 0.0 {
                break;
            }
            hull.pop();
        }
        hull.push(next);
    }
    hull
}

/// Pressure of the hull at a place between its ends, Pa.
fn on_line(points: &[Point], hull: &[usize], sd_m: f64) -> f64 {
    let behind = hull.partition_point(|&index| points[index].sd_m < sd_m);
    let right = points[hull[behind.min(hull.len() - 1)]];
    let left = points[hull[behind.saturating_sub(1).min(hull.len() - 1)]];
    let span = right.sd_m - left.sd_m;
    if span <= 0.0 { right.pa } else { left.pa + (right.pa - left.pa) * (sd_m - left.sd_m) / span }
}

#[cfg(test)]
mod tests;
