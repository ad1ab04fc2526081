//! What panels yield month by month: clearness, direct and diffuse parts, a tilted plane.

use crate::sorting::sort_by;
use std::f64::consts::PI;
use std::fmt;

use uom::si::angle::{degree, radian};
use uom::si::energy::watt_hour;
use uom::si::f64::{Angle, Energy, Power};
use uom::si::power::watt;

use super::sun::{self, Incidence, MONTH_DAYS};
use crate::source::Source;

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
    /// On a level plane outside the atmosphere, MJ/m².
    pub h0_mj_m2: f64,
    /// On a level plane on the ground, MJ/m².
    pub level_mj_m2: f64,
    /// On the panels' plane, MJ/m².
    pub plane_mj_m2: f64,
    /// Diffuse share of the radiation on the level.
    pub diffuse_share: f64,
    /// The clearness lies outside the 0.3 to 0.8 that the diffuse share was fitted to.
    pub outside_fit: bool,
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

impl fmt::Display for SolarError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Latitude => {
                f.write_str("the latitude must be from -90 to 90 degrees, south negative")
            }
            Self::Clearness(month) => write!(
                f,
                "month {}: the clearness must be from 0.05 to 0.85; usual are 0.3 in cloudy winters to 0.7 in deserts",
                month + 1
            ),
            Self::GroundReflectance => f.write_str(
                "the ground's reflectance must be from 0 to 1; bare ground has 0.2, snow 0.7",
            ),
            Self::Tilt => f.write_str("the tilt must be from 0 (flat) to 90 degrees (upright)"),
            Self::Azimuth => {
                f.write_str("the azimuth must be from -180 to 180 degrees; 0 faces the equator")
            }
            Self::Power => f.write_str("the panels' rated power must be from 0 to 1 000 000 W"),
            Self::Loss => f.write_str("the losses must be from 0 to below 100 percent"),
        }
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
pub fn day_yield(month: &Month, rated: Power, loss: f64) -> Result<Energy, SolarError> {
    let watts = rated.get::<watt>();
    if !(0.0..=1e6).contains(&watts) {
        return Err(SolarError::Power);
    }
    if !(0.0..1.0).contains(&loss) {
        return Err(SolarError::Loss);
    }
    Ok(Energy::new::<watt_hour>(month.sun_hours() * watts * (1.0 - loss)))
}

impl Month {
    /// Hours of full sun (1 kW/m²) on the panels' plane that bring as much as the mean day.
    pub fn sun_hours(&self) -> f64 {
        self.plane_mj_m2 / 3.6
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

    let h0_mj_m2 = sun::extraterrestrial_mj_m2(site.latitude, day);
    let level_mj_m2 = clearness * h0_mj_m2;
    let sunset = sun::sunset_hour_angle(latitude, declination);
    let diffuse_share = diffuse_share(clearness, sunset);
    let direct_ratio = direct_ratio(latitude, declination, sunset, plane, diffuse_share);
    let cosine = libm::cos(plane.tilt.get::<radian>());
    let sky = diffuse_share * (1.0 + cosine) / 2.0;
    let ground = site.ground_reflectance * (1.0 - cosine) / 2.0;
    Month {
        h0_mj_m2,
        level_mj_m2,
        plane_mj_m2: level_mj_m2 * (direct_ratio + sky + ground),
        diffuse_share,
        outside_fit: !FITTED.contains(&clearness),
    }
}

/// Diffuse share of a month's radiation. Below the fitted clearness the curve runs on to 1, above it stays level.
fn diffuse_share(clearness: f64, sunset: Angle) -> f64 {
    let k = clearness.min(*FITTED.end());
    let share = if sunset.get::<degree>() <= 81.4 {
        1.391 + k * (-3.560 + k * (4.189 - 2.137 * k))
    } else {
        1.311 + k * (-3.022 + k * (3.427 - 1.821 * k))
    };
    share.clamp(0.0, 1.0)
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
