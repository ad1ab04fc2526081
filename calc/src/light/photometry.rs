//! Illuminance on a level plane under lamps that point straight down (point method), direct light only.

use std::f64::consts::PI;
use std::fmt;

use uom::si::angle::{degree, radian};
use uom::si::area::square_meter;
use uom::si::f64::{Angle, Area, Length};
use uom::si::length::meter;

use super::placement::Spot;
use crate::source::Source;

/// E = I cos(theta) / d², the inverse square and the cosine law.
pub const POINT_METHOD: Source =
    Source::identity("point source: E = I cos(theta) / d², the definition of illuminance");
/// Intensity falls as a power of the cosine, half at the beam's edge.
pub const COSINE_POWER: Source = Source::transcribed(
    "LED optics literature",
    "I = I0 cos^m(theta), m = -ln 2 / ln cos(half the beam angle)",
);
/// All light within the beam angle, evenly.
pub const CONE: Source =
    Source::identity("solid angle of a cone, 2 pi (1 - cos(half the beam angle))");
/// A lamp is a point from five times its size on.
pub const FIVE_TIMES: Source = Source::from_memory("IES Lighting Handbook", "five-times rule");
/// N = E A / (luminous flux x utilization x maintenance).
pub const LUMEN_METHOD: Source =
    Source::from_memory("IES Lighting Handbook; CIE 40", "lumen method, room index");

/// How a lamp spreads its light.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
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

impl fmt::Display for LightError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Lumens => "the luminous flux must be from 1 to 1 000 000 lm",
            Self::BeamAngle(BeamModel::HalfPower) => {
                "the beam angle must be from 5 to 180 degrees; beyond 180 use the cone"
            }
            Self::BeamAngle(BeamModel::Cone) => "the beam angle must be from 5 to 360 degrees",
            Self::Height => "the plane must lie from 0.05 to 20 m below the lamps",
            Self::Area => "the area's sides must be from 0.1 to 50 m",
            Self::Cell => "the cells must be at least 10 mm, and at most 40 000 of them",
            Self::Illuminance => "the illuminance must be from 1 to 100 000 lx",
            Self::Factor => "the utilization and maintenance factors must be above 0 and at most 1",
        })
    }
}

impl std::error::Error for LightError {}

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
        let edge = libm::cos(beam_angle.get::<radian>() / 2.0);
        Ok(match model {
            // At 180° the edge is level, its cosine 0 but for rounding, and the power all but 0: even in all directions.
            BeamModel::HalfPower => {
                let power =
                    if edge > 1e-12 { -std::f64::consts::LN_2 / libm::log(edge) } else { 0.0 };
                Self { peak_cd: lumens * (power + 1.0) / (2.0 * PI), shape: Shape::Power(power) }
            }
            BeamModel::Cone => Self {
                peak_cd: lumens / (2.0 * PI * (1.0 - edge)),
                shape: Shape::Within { least_cosine: edge - 1e-9 },
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
    /// Lowest cell.
    pub lowest: f64,
    /// Mean of all cells.
    pub mean: f64,
    /// Highest cell.
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
    if !(cell_m >= 0.01 - 1e-12 && cell_m <= 50.0) {
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
    let lowest = lux.iter().copied().fold(f64::INFINITY, f64::min);
    let highest = lux.iter().copied().fold(0.0, f64::max);
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

fn plane_m(height: Length) -> Result<f64, LightError> {
    let metres = height.get::<meter>();
    if (0.05..=20.0).contains(&metres) { Ok(metres) } else { Err(LightError::Height) }
}

fn sum_lux(beam: &Beam, lamps: &[Spot], height_m: f64, x_m: f64, y_m: f64) -> f64 {
    lamps
        .iter()
        .map(|lamp| {
            // A spot beyond a kilometre sheds no light here, and keeps its square finite.
            let dx = (lamp.x.get::<meter>() - x_m).clamp(-1e3, 1e3);
            let dy = (lamp.y.get::<meter>() - y_m).clamp(-1e3, 1e3);
            beam.lux(height_m, dx * dx + dy * dy)
        })
        .sum()
}

#[cfg(test)]
mod tests {
    use super::*;
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
        let map = light_map(
            &lamp,
            &[spot(5.0, 5.0)],
            metres(1.0),
            metres(10.0),
            metres(10.0),
            metres(0.1),
        )
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
            lumens in any::<f64>(), angle in any::<f64>(), height in any::<f64>(), x in any::<f64>(), cell in any::<f64>(),
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
        fn every_beam_spends_its_flux(angle in 5.0..179.0_f64) {
            // Ring by ring over the half sphere, the intensity times the solid angle.
            for model in [BeamModel::HalfPower, BeamModel::Cone] {
                let beam = beam(100.0, angle, model);
                let rings = 2_000;
                let flux: f64 = (0..rings).map(|ring| {
                    let cosine = (f64::from(ring) + 0.5) / f64::from(rings);
                    beam.at_cosine(cosine) * 2.0 * PI / f64::from(rings)
                }).sum();
                prop_assert!((flux - 100.0).abs() < 1.5, "{model:?} {flux}");
            }
        }
    }
}
