//! Where the sun stands, and what it would bring with no air in between.

use std::f64::consts::PI;

use uom::si::angle::{degree, radian};
use uom::si::f64::Angle;

use crate::formula::formula;
use crate::source::Source;

/// Declination, sunset, incidence on a slope, and the day's radiation outside the atmosphere.
pub const GEOMETRY: Source = Source::transcribed(
    "Duffie & Beckman, Solar Engineering of Thermal Processes",
    "sections 1.6 and 1.10, eq. 1.10.3",
);
/// A day in each month whose radiation comes closest to the month's mean.
pub const MEAN_DAYS: Source =
    Source::from_memory("Klein, Solar Energy 19 (1977)", "recommended average day of each month");

/// Radiation that reaches the upper atmosphere at the mean distance of the sun, W/m².
pub const SOLAR_CONSTANT_W_M2: f64 = 1367.0;

/// Day of the year, from 1, that stands for each month.
pub const MONTH_DAYS: [u32; 12] = [17, 47, 75, 105, 135, 162, 198, 228, 258, 288, 318, 344];

/// Declination by Cooper: 23.45° sin(360° (284 + n) / 365) on day n of the year.
///
/// Within 0.9° of the exact one, worst at the equinoxes.
pub(super) fn declination(day: u32) -> Angle {
    let turn = 2.0 * PI * (284.0 + f64::from(day.min(LAST_DAY))) / 365.0;
    Angle::new::<degree>(23.45 * libm::sin(turn))
}

/// Hour angle of sunset, cos ws = -tan(latitude) tan(declination): 0 in the polar night, 180° in the polar day.
/// The latitude must be within ±90°.
pub(super) fn sunset_hour_angle(latitude: Angle, declination: Angle) -> Angle {
    let Sun { level, swing } = Sun::over(latitude, declination);
    let angle = if level >= swing {
        PI
    } else if level <= -swing {
        0.0
    } else {
        libm::acos(-level / swing)
    };
    Angle::new::<radian>(angle)
}

formula! {
    /// Radiation of a day on a level plane outside the atmosphere, H₀, MJ/m².
    OutsideAir: "H₀ = (86 400 s · 1367 W/m² / π) · (1 + 0.033 cos(2π j / 365)) · (cos φ cos δ sin ωs + ωs sin φ sin δ)",
    &GEOMETRY;
    |of| {
        let turn = 2.0 * PI * f64::from(of.day.min(LAST_DAY)) / 365.0;
        let normal = SOLAR_CONSTANT_W_M2 * (1.0 + 0.033 * libm::cos(turn));
        let sunset = of.sunset.get::<radian>();
        let sun = Sun::over(of.latitude, of.declination);
        86_400.0 / PI * normal * (sun.swing * libm::sin(sunset) + sunset * sun.level).max(0.0) / 1e6
    } => f64 as megajoules;
    /// -90 to 90°.
    "φ" as degrees: latitude: Angle,
    /// The sun's.
    "δ" as degrees: declination: Angle,
    /// Hour angle at which it sets.
    "ωs" as degrees: sunset: Angle,
    /// Of the year, from 1.
    "j" as count: day: u32,
}

/// Radiation of day n on a level plane outside the atmosphere. The latitude must be within ±90°.
pub(super) fn outside_air(latitude: Angle, day: u32) -> OutsideAir {
    let declination = declination(day);
    let sunset = sunset_hour_angle(latitude, declination);
    OutsideAir { latitude, declination, sunset, day }
}

/// The same, MJ/m².
#[cfg(test)]
pub(super) fn extraterrestrial_mj_m2(latitude: Angle, day: u32) -> f64 {
    crate::formula::Formula::value(&outside_air(latitude, day))
}

/// Cosine of the angle between the sun and the normal of a plane, as `flat + even cos w + odd sin w` over the hour
/// angle w, 0 at noon and positive in the afternoon.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Incidence {
    /// Part that does not change over the day.
    pub flat: f64,
    /// Part that goes with cos w.
    pub even: f64,
    /// Part that goes with sin w.
    pub odd: f64,
}

impl Incidence {
    /// On a plane of the given tilt, turned by azimuth from south (west positive).
    pub fn on_plane(latitude: Angle, declination: Angle, tilt: Angle, azimuth: Angle) -> Self {
        let (sin_phi, cos_phi) = sin_cos(latitude);
        let (sin_delta, cos_delta) = sin_cos(declination);
        let (sin_beta, cos_beta) = sin_cos(tilt);
        let (sin_gamma, cos_gamma) = sin_cos(azimuth);
        Self {
            flat: sin_delta * (sin_phi * cos_beta - cos_phi * sin_beta * cos_gamma),
            even: cos_delta * (cos_phi * cos_beta + sin_phi * sin_beta * cos_gamma),
            odd: cos_delta * sin_beta * sin_gamma,
        }
    }

    /// Cosine of the angle at an hour angle; negative where the sun is behind the plane.
    pub fn cosine(&self, hour_angle: Angle) -> f64 {
        let (sine, cosine) = sin_cos(hour_angle);
        self.flat + self.even * cosine + self.odd * sine
    }
}

/// The sun's height over a place: cosine of the zenith angle is `level + swing cos w`.
struct Sun {
    level: f64,
    swing: f64,
}

impl Sun {
    fn over(latitude: Angle, declination: Angle) -> Self {
        let (sin_phi, cos_phi) = sin_cos(latitude);
        let (sin_delta, cos_delta) = sin_cos(declination);
        Self { level: sin_phi * sin_delta, swing: (cos_phi * cos_delta).max(0.0) }
    }
}

const LAST_DAY: u32 = 366;

fn sin_cos(angle: Angle) -> (f64, f64) {
    libm::sincos(angle.get::<radian>())
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn degrees(value: f64) -> Angle {
        Angle::new::<degree>(value)
    }

    // Duffie & Beckman example 1.10.1: 43° N on 15 April (day 105): 33.8 MJ/m², sunset at 98.9°.
    #[test]
    fn duffie_beckman_example_1_10_1() {
        let h0 = extraterrestrial_mj_m2(degrees(43.0), 105);
        let sunset = sunset_hour_angle(degrees(43.0), declination(105)).get::<degree>();
        assert!((h0 - 33.8).abs() < 0.05 && (h0 - 33.7748).abs() < 1e-3, "{h0}");
        assert!((sunset - 98.9).abs() < 0.05, "{sunset}");
    }

    // Duffie & Beckman example 1.6.1: 43° N, 13 February, slope 45° turned 15° to the west, 10:30 solar time: 35°.
    // Slope over level at that hour: 1.66602 by the same formulas outside this program.
    #[test]
    fn duffie_beckman_example_1_6_1() {
        let (latitude, delta, hour) = (degrees(43.0), degrees(-14.0), degrees(-22.5));
        let slope = Incidence::on_plane(latitude, delta, degrees(45.0), degrees(15.0)).cosine(hour);
        let angle = libm::acos(slope).to_degrees();
        assert!((angle - 35.0).abs() < 0.5 && (angle - 35.1762).abs() < 1e-4, "{angle}");
        let level = Incidence::on_plane(latitude, delta, degrees(0.0), degrees(0.0)).cosine(hour);
        assert!((slope / level - 1.66602).abs() < 1e-5, "{}", slope / level);
    }

    // FAO Irrigation and Drainage Paper 56, example 8: 20° S on 3 September (day 246): 32.2 MJ/m². FAO's declination
    // and solar constant differ a little from those used here.
    #[test]
    fn fao_56_example_8() {
        let h0 = extraterrestrial_mj_m2(degrees(-20.0), 246);
        assert!((h0 - 32.2).abs() < 0.2, "{h0}");
        let sunset = sunset_hour_angle(degrees(-20.0), declination(246)).get::<radian>();
        assert!((sunset - 1.527).abs() < 0.005, "{sunset}");
    }

    // FAO Irrigation and Drainage Paper 56, annex 2 table 2.6, northern hemisphere, on the 15th, MJ/m². The mean days
    // used here lie up to five days off the 15th, which moves the radiation by up to 0.4 MJ/m².
    const FAO_56_TABLE_2_6: [(f64, [f64; 12]); 8] = [
        (28.0, [22.3, 26.8, 32.2, 37.1, 40.0, 40.9, 40.4, 38.2, 33.9, 28.5, 23.3, 21.0]),
        (30.0, [21.1, 25.8, 31.4, 36.8, 40.0, 41.2, 40.6, 38.1, 33.4, 27.6, 22.2, 19.8]),
        (34.0, [18.7, 23.7, 29.9, 36.1, 40.0, 41.6, 40.8, 37.6, 32.1, 25.6, 19.9, 17.3]),
        (38.0, [16.2, 21.5, 28.1, 35.2, 39.8, 41.8, 40.8, 37.0, 30.7, 23.6, 17.5, 14.8]),
        (40.0, [15.0, 20.4, 27.2, 34.7, 39.7, 41.9, 40.8, 36.7, 30.0, 22.5, 16.3, 13.6]),
        (44.0, [12.5, 18.0, 25.3, 33.5, 39.3, 41.9, 40.7, 35.9, 28.4, 20.3, 13.9, 11.1]),
        (48.0, [10.1, 15.7, 23.3, 32.2, 38.8, 41.8, 40.4, 34.9, 26.6, 18.1, 11.4, 8.7]),
        (50.0, [8.9, 14.4, 22.2, 31.5, 38.5, 41.7, 40.2, 34.4, 25.7, 16.9, 10.2, 7.5]),
    ];

    #[test]
    fn fao_56_table_2_6() {
        for (latitude, months) in FAO_56_TABLE_2_6 {
            for (day, expected) in MONTH_DAYS.into_iter().zip(months) {
                let h0 = extraterrestrial_mj_m2(degrees(latitude), day);
                assert!((h0 - expected).abs() < 0.4, "{latitude} {day}: {h0}");
            }
        }
    }

    // Duffie & Beckman eq. 1.10.3 on the mean days, worked outside this program, MJ/m².
    const MEAN_DAYS_H0: [(f64, [f64; 12]); 9] = [
        (0.0, [36.23, 37.47, 37.90, 36.80, 34.79, 33.51, 33.94, 35.71, 37.24, 37.37, 36.38, 35.66]),
        (
            25.0,
            [24.16, 28.44, 33.30, 37.50, 39.78, 40.46, 39.99, 38.24, 34.71, 29.78, 25.12, 22.89],
        ),
        (
            30.0,
            [21.27, 25.97, 31.58, 36.81, 40.01, 41.13, 40.46, 37.93, 33.39, 27.55, 22.33, 19.90],
        ),
        (
            35.0,
            [18.27, 23.33, 29.62, 35.85, 39.97, 41.56, 40.68, 37.36, 31.81, 25.13, 19.43, 16.85],
        ),
        (
            40.0,
            [15.21, 20.54, 27.44, 34.63, 39.69, 41.76, 40.67, 36.53, 29.99, 22.53, 16.44, 13.76],
        ),
        (
            45.0,
            [12.13, 17.63, 25.05, 33.16, 39.19, 41.75, 40.43, 35.46, 27.95, 19.78, 13.40, 10.68],
        ),
        (50.0, [9.09, 14.63, 22.47, 31.46, 38.47, 41.58, 40.01, 34.17, 25.69, 16.90, 10.36, 7.68]),
        (55.0, [6.14, 11.57, 19.72, 29.56, 37.59, 41.29, 39.46, 32.68, 23.24, 13.93, 7.38, 4.84]),
        (60.0, [3.42, 8.52, 16.83, 27.47, 36.62, 41.01, 38.85, 31.03, 20.62, 10.89, 4.54, 2.30]),
    ];

    #[test]
    fn duffie_beckman_formula_on_mean_days() {
        for (latitude, months) in MEAN_DAYS_H0 {
            for (day, expected) in MONTH_DAYS.into_iter().zip(months) {
                let h0 = extraterrestrial_mj_m2(degrees(latitude), day);
                assert!((h0 - expected).abs() < 0.0051, "{latitude} {day}: {h0}");
            }
        }
        for (latitude, day, expected) in
            [(0.0, 80, 37.8330), (52.5, 355, 5.9952), (66.9, 355, 0.0), (70.0, 172, 42.7326)]
        {
            let h0 = extraterrestrial_mj_m2(degrees(latitude), day);
            assert!((h0 - expected).abs() < 1e-4, "{latitude} {day}: {h0}");
        }
    }

    // Zenith angles by pvlib 0.16.1 from Spencer's declination: latitude, declination, hour angle, zenith, degrees.
    #[test]
    fn pvlib_zenith_angles() {
        for (latitude, delta, hour, zenith) in [
            (51.5, -0.4610, -2.0449, 51.9899),
            (40.0, 23.4520, -105.3359, 85.9888),
            (40.0, 23.4520, -0.3359, 16.5504),
            (40.0, -23.4199, 0.5388, 63.4219),
            (60.0, 23.4520, -5.3359, 36.7388),
            (60.0, -23.4199, -4.4612, 83.5001),
            (35.0, 0.6376, 16.8143, 37.7709),
            (-35.0, -21.2727, -3.1612, 14.0050),
        ] {
            let level =
                Incidence::on_plane(degrees(latitude), degrees(delta), degrees(0.0), degrees(0.0));
            let found = libm::acos(level.cosine(degrees(hour))).to_degrees();
            assert!((found - zenith).abs() < 2e-4, "{latitude} {hour}: {found}");
        }
    }

    // Declination by Cooper, and by the NREL algorithm (pvlib 0.16.1): day, Cooper, exact, degrees.
    #[test]
    fn declination_by_cooper_and_close_to_the_exact_one() {
        for (day, cooper, exact) in [
            (79, -0.8072, 0.0488),
            (172, 23.4498, 23.4379),
            (355, -23.4498, -23.4381),
            (265, -0.6054, -0.0435),
            (15, -21.2695, -21.1008),
        ] {
            let found = declination(day).get::<degree>();
            assert!((found - cooper).abs() < 1e-4, "{day}: {found}");
            assert!((found - exact).abs() < 0.9, "{day}: {found}");
        }
    }

    #[test]
    fn polar_night_and_polar_day() {
        assert_eq!(sunset_hour_angle(degrees(80.0), declination(355)).get::<radian>(), 0.0);
        assert_eq!(sunset_hour_angle(degrees(80.0), declination(172)).get::<radian>(), PI);
        assert_eq!(extraterrestrial_mj_m2(degrees(90.0), 355), 0.0);
        assert!(extraterrestrial_mj_m2(degrees(90.0), 172) > 40.0);
    }

    proptest! {
        #[test]
        fn every_place_and_day_have_a_radiation(latitude in -90.0..=90.0_f64, day in any::<u32>()) {
            let h0 = extraterrestrial_mj_m2(degrees(latitude), day);
            prop_assert!((0.0..50.0).contains(&h0));
        }

        #[test]
        fn both_hemispheres_mirror_each_other(latitude in 0.0..90.0_f64, delta in -23.4..23.4_f64) {
            let north = sunset_hour_angle(degrees(latitude), degrees(delta)).get::<radian>();
            let south = sunset_hour_angle(degrees(-latitude), degrees(-delta)).get::<radian>();
            prop_assert!((north - south).abs() < 1e-12);
        }
    }
}
