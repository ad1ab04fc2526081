//! Illuminance on a level plane under lamps that point straight down (point method), direct light only.

use std::f64::consts::PI;

use calc_derive::Choice;
use uom::si::angle::{degree, radian};
use uom::si::area::square_meter;
use uom::si::f64::{Angle, Area, Length};
use uom::si::length::meter;

use super::placement::Spot;
use crate::formula::{Formula as _, formula};
use crate::source::Source;
use crate::words::{Msg, lights as words};

/// E = I cos(theta) / d², the inverse square and the cosine law.
pub const POINT_METHOD: Source = Source::identity_of(words::SOURCE_POINT);
/// Intensity falls as a power of the cosine, half at the beam's edge.
pub const COSINE_POWER: Source = Source::transcribed_of(words::SOURCE_COSINE);
/// All light within the beam angle, evenly.
pub const CONE: Source = Source::identity_of(words::SOURCE_CONE);
/// A lamp is a point from five times its size on.
pub const FIVE_TIMES: Source = Source::from_memory("IES Lighting Handbook", "five-times rule");
/// N = E A / (luminous flux x utilization x maintenance).
pub const LUMEN_METHOD: Source =
    Source::from_memory("IES Lighting Handbook; CIE 40", "lumen method, room index");

/// How a lamp spreads its light.
#[derive(Choice, Clone, Copy, Debug, PartialEq, Eq)]
#[words(lights)]
pub enum BeamModel {
    /// A power of the cosine, with half the intensity at the beam's edge; beam angle 5 to 180°.
    HalfPower,
    /// All of it evenly within the beam angle, 5 to 360°. Overstates the middle of a narrow beam, by 40 % at 30°.
    Cone,
}

/// A lamp's beam.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Beam {
    peak_cd: f64,
    shape: Shape,
}

#[derive(Clone, Copy, Debug, PartialEq)]
enum Shape {
    Power(f64),
    Within { least_cosine: f64 },
}

/// Why there is no illuminance.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LightError {
    /// The luminous flux is out of range.
    Lumens,
    /// The beam angle is out of range for its model.
    BeamAngle(BeamModel),
    /// The plane is too close below the lamps, or too far.
    Height,
    /// The area is out of range.
    Area,
    /// The cells of the map are out of range.
    Cell,
    /// The illuminance that is asked for is out of range.
    Illuminance,
    /// The utilization or the maintenance factor is out of range.
    Factor,
}

impl From<LightError> for Msg {
    fn from(error: LightError) -> Self {
        match error {
            LightError::Lumens => words::WRONG_LUMENS,
            LightError::BeamAngle(BeamModel::HalfPower) => words::WRONG_BEAM,
            LightError::BeamAngle(BeamModel::Cone) => words::WRONG_CONE,
            LightError::Height => words::WRONG_HEIGHT,
            LightError::Area => words::WRONG_AREA,
            LightError::Cell => words::WRONG_CELL,
            LightError::Illuminance => words::WRONG_ILLUMINANCE,
            LightError::Factor => words::WRONG_FACTOR,
        }
        .into()
    }
}

formula! {
    /// Intensity straight ahead of a beam that fades to half at its edge.
    FadingPeak: "I₀ = Φ · (1 − ln 2 / ln cos(a/2)) / 2π", &COSINE_POWER;
    |of| of.lumens * (power(of.angle) + 1.0) / (2.0 * PI) => f64 as candelas;
    /// Luminous flux, lm.
    "Φ" as lumens: lumens: f64,
    /// From edge to edge.
    "a" as beam: angle: Angle,
}

formula! {
    /// Intensity everywhere in a beam that is even.
    EvenPeak: "I₀ = Φ / (2π · (1 − cos(a/2)))", &CONE;
    |of| of.lumens / (2.0 * PI * (1.0 - edge(of.angle))) => f64 as candelas;
    /// Luminous flux, lm.
    "Φ" as lumens: lumens: f64,
    /// From edge to edge.
    "a" as beam: angle: Angle,
}

formula! {
    /// Illuminance straight below a lamp, lx.
    Below: "E = I₀ / h²", &POINT_METHOD;
    |of| of.peak_cd / (of.height.get::<meter>() * of.height.get::<meter>()) => f64 as lux;
    /// Intensity straight down, cd.
    "I₀" as candelas: peak_cd: f64,
    /// From the plane up to the lamp.
    "h²" as squared: height: Length,
}

/// Cosine of half the beam angle.
fn edge(beam_angle: Angle) -> f64 {
    libm::cos(beam_angle.get::<radian>() / 2.0)
}

/// The power of the cosine that falls to half at the beam's edge.
fn power(beam_angle: Angle) -> f64 {
    let edge = edge(beam_angle);
    // At 180° the edge is level, its cosine 0 but for rounding, and the power all but 0: even in all directions.
    if edge > 1e-12 { -std::f64::consts::LN_2 / libm::log(edge) } else { 0.0 }
}

impl Beam {
    /// A beam of the given flux and full beam angle.
    ///
    /// # Errors
    /// Flux or beam angle out of range.
    pub fn new(lumens: f64, beam_angle: Angle, model: BeamModel) -> Result<Self, LightError> {
        if !(1.0..=1e6).contains(&lumens) {
            return Err(LightError::Lumens);
        }
        let widest = match model {
            BeamModel::HalfPower => 180.0,
            BeamModel::Cone => 360.0,
        };
        if !(5.0 - 1e-9..=widest + 1e-9).contains(&beam_angle.get::<degree>()) {
            return Err(LightError::BeamAngle(model));
        }
        Ok(match model {
            BeamModel::HalfPower => Self {
                peak_cd: FadingPeak { lumens, angle: beam_angle }.value(),
                shape: Shape::Power(power(beam_angle)),
            },
            BeamModel::Cone => Self {
                peak_cd: EvenPeak { lumens, angle: beam_angle }.value(),
                shape: Shape::Within { least_cosine: edge(beam_angle) - 1e-9 },
            },
        })
    }

    /// Intensity straight ahead, cd.
    pub fn peak_cd(&self) -> f64 {
        self.peak_cd
    }

    /// Intensity at an angle off the axis, cd.
    pub fn intensity_cd(&self, off_axis: Angle) -> f64 {
        self.at_cosine(libm::cos(off_axis.get::<radian>()))
    }

    /// Illuminance, lx, on a level plane a height below, at a distance aside.
    fn lux(&self, height_m: f64, aside_squared_m2: f64) -> f64 {
        let distance_squared = height_m * height_m + aside_squared_m2;
        let cosine = height_m / distance_squared.sqrt();
        self.at_cosine(cosine) * cosine / distance_squared
    }

    fn at_cosine(&self, cosine: f64) -> f64 {
        match self.shape {
            Shape::Power(power) if cosine > 0.0 => self.peak_cd * libm::pow(cosine, power),
            Shape::Power(_) => 0.0,
            Shape::Within { least_cosine } => {
                if cosine >= least_cosine {
                    self.peak_cd
                } else {
                    0.0
                }
            }
        }
    }
}

/// Illuminance at one spot of a plane below the lamps, lx.
///
/// # Errors
/// [`LightError::Height`] where the plane is out of range.
pub fn lux_at(beam: &Beam, lamps: &[Spot], height: Length, spot: Spot) -> Result<f64, LightError> {
    let height_m = plane_m(height)?;
    Ok(sum_lux(beam, lamps, height_m, spot.x.get::<meter>(), spot.y.get::<meter>()))
}

/// Illuminance over a rectangle, in cells.
#[derive(Clone, Debug, PartialEq)]
pub struct LightMap {
    /// Cells along the length.
    pub columns: usize,
    /// Cells across the width.
    pub rows: usize,
    /// Illuminance at the middle of each cell, lx: the first row along the length, then the next.
    pub lux: Vec<f64>,
    /// Lowest of all cells, the corners and the spots below lamps, lx.
    pub lowest: f64,
    /// Mean of all cells, lx.
    pub mean: f64,
    /// Highest of all cells, the corners and the spots below lamps, lx.
    pub highest: f64,
}

/// Illuminance over a rectangle with a corner at the origin, in cells no larger than asked for.
///
/// Direct light alone: walls and ceiling throw some back, so a light-coloured room is brighter than this.
///
/// # Errors
/// A side, the plane's height or the cells out of range.
pub fn light_map(
    beam: &Beam,
    lamps: &[Spot],
    height: Length,
    length: Length,
    width: Length,
    cell: Length,
) -> Result<LightMap, LightError> {
    let height_m = plane_m(height)?;
    let (length_m, width_m) = (length.get::<meter>(), width.get::<meter>());
    let side = 0.1..=50.0;
    if !side.contains(&length_m) || !side.contains(&width_m) {
        return Err(LightError::Area);
    }
    let cell_m = cell.get::<meter>();
    if !(0.01 - 1e-12..=50.0).contains(&cell_m) {
        return Err(LightError::Cell);
    }
    let count = |side_m: f64| (side_m / cell_m - 1e-9).ceil().max(1.0) as usize;
    let (columns, rows) = (count(length_m), count(width_m));
    if columns * rows > 40_000 {
        return Err(LightError::Cell);
    }
    let middle = |index: usize, of: usize, side_m: f64| (index as f64 + 0.5) * side_m / of as f64;
    let mut lux = Vec::with_capacity(columns * rows);
    for row in 0..rows {
        for column in 0..columns {
            let (x, y) = (middle(column, columns, length_m), middle(row, rows, width_m));
            lux.push(sum_lux(beam, lamps, height_m, x, y));
        }
    }
    // The brightest spots lie below lamps and the darkest in corners, wherever the cells happen to fall.
    let corners = [(0.0, 0.0), (length_m, 0.0), (0.0, width_m), (length_m, width_m)];
    let below = lamps.iter().take(MOST_BELOW).map(|lamp| {
        (lamp.x.get::<meter>().clamp(0.0, length_m), lamp.y.get::<meter>().clamp(0.0, width_m))
    });
    let spots: Vec<f64> = corners
        .into_iter()
        .chain(below)
        .map(|(x, y)| sum_lux(beam, lamps, height_m, x, y))
        .collect();
    let lowest = lux.iter().chain(&spots).copied().fold(f64::INFINITY, f64::min);
    let highest = lux.iter().chain(&spots).copied().fold(0.0, f64::max);
    let mean = lux.iter().sum::<f64>() / lux.len() as f64;
    Ok(LightMap { columns, rows, lux, lowest, mean, highest })
}

/// Whether a lamp of the given size is far enough away to be reckoned as a point: five times its size.
pub fn is_point_source(distance: Length, largest_size: Length) -> bool {
    distance >= 5.0 * largest_size
}

/// Lamps that bring a mean illuminance: E A / (lumens x utilization x maintenance), rounded up.
///
/// # Errors
/// A figure out of range.
pub fn lamps_needed(
    lux: f64,
    area: Area,
    lumens: f64,
    utilization: f64,
    maintenance: f64,
) -> Result<u32, LightError> {
    if !(1.0..=1e5).contains(&lux) {
        return Err(LightError::Illuminance);
    }
    let area_m2 = area.get::<square_meter>();
    if !(0.01..=2500.0).contains(&area_m2) {
        return Err(LightError::Area);
    }
    if !(1.0..=1e6).contains(&lumens) {
        return Err(LightError::Lumens);
    }
    let factor = 0.01..=1.0;
    if !factor.contains(&utilization) || !factor.contains(&maintenance) {
        return Err(LightError::Factor);
    }
    let lamps = lux * area_m2 / (lumens * utilization * maintenance);
    Ok((lamps - 1e-9).ceil().clamp(1.0, f64::from(u32::MAX)) as u32)
}

/// Room index L W / (Hm (L + W)), from which makers' tables give the utilization; Hm from lamps to plane.
///
/// # Errors
/// A side or the height out of range.
pub fn room_index(length: Length, width: Length, height: Length) -> Result<f64, LightError> {
    let (length_m, width_m) = (length.get::<meter>(), width.get::<meter>());
    let side = 0.1..=50.0;
    if !side.contains(&length_m) || !side.contains(&width_m) {
        return Err(LightError::Area);
    }
    Ok(length_m * width_m / (plane_m(height)? * (length_m + width_m)))
}

/// One foot-candle, lx.
pub const LUX_PER_FOOT_CANDLE: f64 = 1.0 / (0.3048 * 0.3048);

/// Lamps whose spot is looked at for itself; with more of them the cells tell enough.
const MOST_BELOW: usize = 60;

fn plane_m(height: Length) -> Result<f64, LightError> {
    let metres = height.get::<meter>();
    if (0.05..=20.0).contains(&metres) { Ok(metres) } else { Err(LightError::Height) }
}

fn sum_lux(beam: &Beam, lamps: &[Spot], height_m: f64, x_m: f64, y_m: f64) -> f64 {
    lamps
        .iter()
        .map(|lamp| {
            // A lamp a kilometre off, or nowhere, sheds no light that counts.
            let dx = (lamp.x.get::<meter>() - x_m).clamp(-1e3, 1e3);
            let dy = (lamp.y.get::<meter>() - y_m).clamp(-1e3, 1e3);
            let square = dx * dx + dy * dy;
            if square.is_nan() { 0.0 } else { beam.lux(height_m, square) }
        })
        .sum()
}

#[cfg(test)]
mod tests;
