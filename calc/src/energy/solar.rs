//! What panels yield month by month: clearness, direct and diffuse parts, a tilted plane.

use crate::sorting::sort_by;
use std::f64::consts::PI;
use std::fmt;

use uom::si::angle::{degree, radian};
use uom::si::energy::watt_hour;
use uom::si::f64::{Angle, Energy, Power};
use uom::si::power::watt;

use super::budget::PANEL_LOSSES;
use super::sun::{self, Incidence, MONTH_DAYS};
use super::sun::{GEOMETRY, OutsideAir};
use crate::formula::{Formula as _, formula};
use crate::source::Source;
use crate::words::{Msg, solar as words};

/// Share of the month's radiation that is diffuse, from the clearness.
pub const DIFFUSE_SHARE: Source = Source::transcribed(
    "Erbs, Klein & Duffie (1982), in Duffie & Beckman, Solar Engineering of Thermal Processes",
    "eq. 2.12.1; clearness from 0.3 to 0.8",
);
/// How the day's radiation spreads over its hours.
pub const DAY_PROFILE: Source = Source::transcribed(
    "Collares-Pereira & Rabl (1979), in Duffie & Beckman, Solar Engineering of Thermal Processes",
    "eq. 2.13.2 and 2.13.4",
);
/// The day's profile scaled so that its hours add up to the day.
pub const DAY_PROFILE_SCALE: Source = Source::from_memory(
    "Gueymard, Solar Energy 37 (1986)",
    "correction of the Collares-Pereira & Rabl profile",
);
/// Monthly mean on a tilted plane under an isotropic sky.
pub const TILTED_PLANE: Source = Source::transcribed(
    "Klein & Theilacker (1981), in Duffie & Beckman, Solar Engineering of Thermal Processes",
    "section 2.20",
);
/// Reflectance of ordinary ground.
pub const GROUND: Source = Source::transcribed(
    "Duffie & Beckman, Solar Engineering of Thermal Processes",
    "example 2.20.1: 0.2 bare ground, 0.7 under snow",
);

/// Reflectance of ground without snow.
pub const GROUND_REFLECTANCE: f64 = 0.2;

/// Where the panels stand and how clear its sky is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Site {
    /// -90 to 90°, south negative.
    pub latitude: Angle,
    /// Clearness index of each month, radiation on the ground over that outside the atmosphere; 0.05 to 0.85.
    pub clearness: [f64; 12],
    /// Share of the light that the ground throws back, 0 to 1.
    pub ground_reflectance: f64,
}

/// How the panels lie.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Plane {
    /// From the level, 0 to 90°.
    pub tilt: Angle,
    /// Turned away from the equator, -180 to 180°; 0 faces the equator. East and west yield the same.
    pub azimuth: Angle,
}

/// Daily means of one month.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Month {
    /// On a level plane outside the atmosphere.
    pub outside: OutsideAir,
    /// On a level plane on the ground.
    pub level: OnLevel,
    /// Diffuse share of the radiation on the level.
    pub diffuse: DiffuseShare,
    /// On the panels' plane.
    pub plane: OnPlane,
    /// The clearness lies outside the 0.3 to 0.8 that the diffuse share was fitted to.
    pub outside_fit: bool,
}

formula! {
    /// Radiation of a day on a level plane on the ground, MJ/m².
    OnLevel: "H = K · H₀", &GEOMETRY;
    |of| of.clearness * of.outside => f64 as megajoules;
    /// Clearness, 0.05 to 0.85.
    "K" as factor: clearness: f64,
    /// Outside the atmosphere, MJ/m².
    "H₀" as megajoules: outside: f64,
}

formula! {
    /// Diffuse share of a month's radiation, 0 to 1. The factors go by the hour of sunset; below the fitted clearness the curve runs
    /// on to 1, above it stays level.
    DiffuseShare: "D = c₀ + K · (c₁ + K · (c₂ − c₃ · K))", &DIFFUSE_SHARE;
    |of| {
        let k = of.clearness;
        (of.none + k * (of.once + k * (of.twice - of.thrice * k))).clamp(0.0, 1.0)
    } => f64 as share;
    /// Clearness, no more than was fitted to.
    "K" as factor: clearness: f64,
    /// Factor that stands by itself.
    "c₀" as factor: none: f64,
    /// Factor of the clearness.
    "c₁" as factor: once: f64,
    /// Factor of its square.
    "c₂" as factor: twice: f64,
    /// Factor of its cube, taken away.
    "c₃" as factor: thrice: f64,
}

formula! {
    /// Radiation of a day on the panels' plane, MJ/m²: direct, from the sky and from the ground.
    OnPlane: "H_t = H · (R_b + D · (1 + cos β) / 2 + ρ · (1 − cos β) / 2)", &TILTED_PLANE;
    |of| {
        let cosine = libm::cos(of.tilt.get::<radian>());
        let sky = of.diffuse * (1.0 + cosine) / 2.0;
        let ground = of.reflectance * (1.0 - cosine) / 2.0;
        of.level * (of.direct + sky + ground)
    } => f64 as megajoules;
    /// On the level, MJ/m².
    "H" as megajoules: level: f64,
    /// Direct on the plane over all on the level.
    "R_b" as factor: direct: f64,
    /// Diffuse share on the level.
    "D" as share: diffuse: f64,
    /// From the level.
    "β" as degrees: tilt: Angle,
    /// Of the ground.
    "ρ" as factor: reflectance: f64,
}

formula! {
    /// Energy of a mean day.
    DayYield: "E = H_t / 3.6 · P · (1 − v)", &PANEL_LOSSES;
    |of| Energy::new::<watt_hour>(of.plane / 3.6 * of.rated.get::<watt>() * (1.0 - of.loss)) => Energy as watt_hours;
    /// On the panels, MJ/m².
    "H_t" as megajoules: plane: f64,
    /// Rated power of all panels.
    "P" as watts: rated: Power,
    /// Losses, 0 to below 1.
    "v" as share: loss: f64,
}

/// Why there is no yield.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum SolarError {
    /// The latitude is out of range.
    Latitude,
    /// A month's clearness is out of range; months count from 0.
    Clearness(usize),
    /// The ground's reflectance is out of range.
    GroundReflectance,
    /// The tilt is out of range.
    Tilt,
    /// The azimuth is out of range.
    Azimuth,
    /// The panels' rated power is out of range.
    Power,
    /// The losses are out of range.
    Loss,
}

impl SolarError {
    /// What is wrong, as a message.
    pub fn told(self) -> Msg {
        match self {
            Self::Latitude => words::LATITUDE_RANGE.into(),
            Self::Clearness(month) => words::ClearnessRange { month: month + 1 }.into(),
            Self::GroundReflectance => words::GROUND_RANGE.into(),
            Self::Tilt => words::TILT_RANGE.into(),
            Self::Azimuth => words::AZIMUTH_RANGE.into(),
            Self::Power => words::POWER_RANGE.into(),
            Self::Loss => words::LOSS_RANGE.into(),
        }
    }
}

impl fmt::Display for SolarError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.told().fmt(f)
    }
}

impl std::error::Error for SolarError {}

/// Daily means of radiation for the twelve months, January first.
///
/// Radiation outside the atmosphere on the month's mean day, times the clearness; its diffuse share; then direct,
/// diffuse (the sky equally bright all over) and reflected light on the plane. Nothing shades the panels.
///
/// # Errors
/// A figure of the site or the plane out of range.
pub fn months(site: &Site, plane: Plane) -> Result<[Month; 12], SolarError> {
    let latitude = site.latitude.get::<degree>();
    if !(-90.0..=90.0).contains(&latitude) {
        return Err(SolarError::Latitude);
    }
    if let Some(month) = site.clearness.iter().position(|k| !CLEARNESS.contains(k)) {
        return Err(SolarError::Clearness(month));
    }
    if !(0.0..=1.0).contains(&site.ground_reflectance) {
        return Err(SolarError::GroundReflectance);
    }
    if !(0.0..=90.0 + 1e-9).contains(&plane.tilt.get::<degree>()) {
        return Err(SolarError::Tilt);
    }
    if plane.azimuth.get::<degree>().abs() <= 180.0 + 1e-9 {
        Ok(std::array::from_fn(|month| mean_day(site, plane, month)))
    } else {
        Err(SolarError::Azimuth)
    }
}

/// Energy of a mean day from panels of the given rated power: hours of full sun x rated power x (1 - loss).
///
/// # Errors
/// The rated power or the losses out of range.
pub fn day_yield(month: &Month, rated: Power, loss: f64) -> Result<DayYield, SolarError> {
    let watts = rated.get::<watt>();
    if !(0.0..=1e6).contains(&watts) {
        return Err(SolarError::Power);
    }
    if !(0.0..1.0).contains(&loss) {
        return Err(SolarError::Loss);
    }
    Ok(DayYield { plane: month.plane.value(), rated, loss })
}

impl Month {
    /// Hours of full sun (1 kW/m²) on the panels' plane that bring as much as the mean day.
    pub fn sun_hours(&self) -> f64 {
        self.plane.value() / 3.6
    }
}

const CLEARNESS: std::ops::RangeInclusive<f64> = 0.05..=0.85;
/// The clearness that the diffuse share was fitted to.
const FITTED: std::ops::RangeInclusive<f64> = 0.3..=0.8;
/// A day whose cosine of the zenith angle sums to less counts as night.
const LEAST_DAY: f64 = 1e-9;

fn mean_day(site: &Site, plane: Plane, month: usize) -> Month {
    let day = MONTH_DAYS[month];
    let clearness = site.clearness[month];
    let declination = sun::declination(day);
    // South of the equator the sun's path is the northern one seen in a mirror.
    let mirror = if site.latitude.value < 0.0 { -1.0 } else { 1.0 };
    let (latitude, declination) = (site.latitude * mirror, declination * mirror);

    let outside = sun::outside_air(site.latitude, day);
    let level = OnLevel { clearness, outside: outside.value() };
    let sunset = sun::sunset_hour_angle(latitude, declination);
    let diffuse = diffuse_share(clearness, sunset);
    let direct = direct_ratio(latitude, declination, sunset, plane, diffuse.value());
    Month {
        outside,
        level,
        diffuse,
        plane: OnPlane {
            level: level.value(),
            direct,
            diffuse: diffuse.value(),
            tilt: plane.tilt,
            reflectance: site.ground_reflectance,
        },
        outside_fit: !FITTED.contains(&clearness),
    }
}

/// Diffuse share of a month's radiation.
fn diffuse_share(clearness: f64, sunset: Angle) -> DiffuseShare {
    let clearness = clearness.min(*FITTED.end());
    if sunset.get::<degree>() <= 81.4 {
        DiffuseShare { clearness, none: 1.391, once: -3.560, twice: 4.189, thrice: 2.137 }
    } else {
        DiffuseShare { clearness, none: 1.311, once: -3.022, twice: 3.427, thrice: 1.821 }
    }
}

/// Direct radiation on the plane over all radiation on the level, both summed over the day.
///
/// With the hours' shares r_t = (a + b cos w) r_d and r_d in step with the sun's height, the sun's height cancels out
/// of the ratio of slope to level, and the day's sum is a closed integral between the hours at which the sun rises and
/// sets on the plane.
fn direct_ratio(
    latitude: Angle,
    declination: Angle,
    sunset: Angle,
    plane: Plane,
    diffuse_share: f64,
) -> f64 {
    let level_plane = Angle::new::<radian>(0.0);
    let level = Incidence::on_plane(latitude, declination, level_plane, level_plane);
    let slope = Incidence::on_plane(latitude, declination, plane.tilt, plane.azimuth);
    let end = sunset.get::<radian>();
    let day = integral(level, 1.0, 0.0, -end, end);
    if day <= LEAST_DAY {
        return 0.0;
    }
    let (a, b) = day_profile(end);
    let scale = integral(level, a, b, -end, end) / day;
    let (a, b) = (a / scale - diffuse_share, b / scale);

    // The plane sees the sun between zeros of flat + even cos w + odd sin w.
    let mut bounds = vec![-end, end];
    let swing = libm::hypot(slope.even, slope.odd);
    if swing > slope.flat.abs() {
        let middle = libm::atan2(slope.odd, slope.even);
        let half = libm::acos(-slope.flat / swing);
        for bound in [middle - half, middle + half] {
            bounds.push(wrapped(bound).clamp(-end, end));
        }
    }
    sort_by(&mut bounds, f64::total_cmp);
    let seen: f64 = bounds
        .windows(2)
        .filter(|w| slope.cosine(Angle::new::<radian>((w[0] + w[1]) / 2.0)) > 0.0)
        .map(|w| integral(slope, a, b, w[0], w[1]))
        .sum();
    (seen / day).max(0.0)
}

/// The profile's a and b in r_t = (a + b cos w) r_d, for a sunset hour angle in radians.
fn day_profile(sunset: f64) -> (f64, f64) {
    let sine = libm::sin(sunset - PI / 3.0);
    (0.409 + 0.5016 * sine, 0.6609 - 0.4767 * sine)
}

/// Integral of (a + b cos w)(flat + even cos w + odd sin w) from one hour angle to another.
fn integral(cosine: Incidence, a: f64, b: f64, from: f64, to: f64) -> f64 {
    let Incidence { flat, even, odd } = cosine;
    let ((sin0, cos0), (sin1, cos1)) = (libm::sincos(from), libm::sincos(to));
    (a * flat + b * even / 2.0) * (to - from) + (a * even + b * flat) * (sin1 - sin0)
        - a * odd * (cos1 - cos0)
        + b * even / 2.0 * (sin1 * cos1 - sin0 * cos0)
        + b * odd / 2.0 * (sin1 * sin1 - sin0 * sin0)
}

/// An angle within two turns, brought to -pi to pi.
fn wrapped(angle: f64) -> f64 {
    if angle > PI {
        angle - 2.0 * PI
    } else if angle < -PI {
        angle + 2.0 * PI
    } else {
        angle
    }
}

#[cfg(test)]
mod tests;
