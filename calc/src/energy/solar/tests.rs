//! Monthly radiation against the textbook's examples and pvlib.

use crate::testing::any_number;
use proptest::prelude::*;

use super::*;

fn degrees(value: f64) -> Angle {
    Angle::new::<degree>(value)
}

fn site(latitude: f64, clearness: f64) -> Site {
    Site {
        latitude: degrees(latitude),
        clearness: [clearness; 12],
        ground_reflectance: GROUND_REFLECTANCE,
    }
}

fn plane(tilt: f64, azimuth: f64) -> Plane {
    Plane { tilt: degrees(tilt), azimuth: degrees(azimuth) }
}

// Madison, 43° N: daily radiation on the level by month, MJ/m² (Duffie & Beckman, example 2.20.1).
const MADISON: [f64; 12] =
    [6.44, 9.89, 12.86, 16.05, 21.36, 23.04, 22.58, 20.33, 14.59, 10.48, 6.37, 5.74];
const MADISON_GROUND: [f64; 12] = [0.7, 0.7, 0.4, 0.2, 0.2, 0.2, 0.2, 0.2, 0.2, 0.2, 0.2, 0.4];

// The example's site and slope, worked hour by hour with pvlib 0.16.1 (incidence, isotropic sky, ground) on the same
// daily profile; MJ/m².
const MADISON_SLOPE_60: [f64; 12] = [
    13.1999, 16.8192, 15.7037, 14.9577, 17.0422, 17.0340, 17.2511, 17.8794, 15.6597, 14.8638,
    10.9135, 12.2025,
];

#[test]
fn duffie_beckman_example_2_20_1_site_against_pvlib() {
    for month in 0..12 {
        let mut site = site(43.0, 0.5);
        let h0 = sun::extraterrestrial_mj_m2(site.latitude, MONTH_DAYS[month]);
        site.clearness[month] = MADISON[month] / h0;
        site.ground_reflectance = MADISON_GROUND[month];
        let found = months(&site, plane(60.0, 0.0)).unwrap()[month];
        assert!((found.level.value() - MADISON[month]).abs() < 1e-9);
        assert!((found.plane.value() - MADISON_SLOPE_60[month]).abs() < 1e-3, "{month}: {found:?}");
    }
}

// Madison in June: 23 MJ/m² (Duffie & Beckman, example 2.12.1) over 41.776 outside the atmosphere is 0.5505.
#[test]
fn duffie_beckman_clearness_of_june() {
    let found = months(&site(43.0, 0.5505), plane(0.0, 0.0)).unwrap()[5];
    assert!((found.level.value() - 23.0).abs() < 0.01, "{found:?}");
    assert!((0.37..0.40).contains(&found.diffuse.value()), "{found:?}");
}

// Latitude, clearness, tilt, azimuth, ground reflectance; MJ/m² by month, worked hour by hour with pvlib 0.16.1 on the
// same daily profile, at 20 000 steps a day.
const PVLIB_PLANES: [(f64, f64, f64, f64, f64, [f64; 12]); 8] = [
    (
        40.0,
        0.5,
        30.0,
        0.0,
        0.2,
        [
            11.94355, 14.05018, 16.15256, 18.17187, 19.25558, 19.57257, 19.35190, 18.51749,
            16.83075, 14.43167, 12.41852, 11.30192,
        ],
    ),
    (
        40.0,
        0.5,
        90.0,
        90.0,
        0.2,
        [
            5.29977, 6.73777, 8.42089, 10.18232, 11.36115, 11.81715, 11.56561, 10.61294, 9.03852,
            7.15350, 5.63087, 4.89123,
        ],
    ),
    (
        52.0,
        0.4,
        10.0,
        -45.0,
        0.2,
        [
            3.90438, 6.12461, 9.18891, 12.74309, 15.48767, 16.69359, 16.08518, 13.80374, 10.46333,
            7.02916, 4.41671, 3.33611,
        ],
    ),
    (
        -35.0,
        0.6,
        35.0,
        20.0,
        0.25,
        [
            23.52079, 22.89981, 21.38298, 18.84887, 16.65044, 15.34006, 15.85617, 17.94833,
            20.25223, 22.26550, 23.25358, 23.54625,
        ],
    ),
    (
        65.0,
        0.45,
        60.0,
        0.0,
        0.3,
        [
            5.04655, 8.57068, 11.32872, 14.13202, 16.06101, 17.02002, 16.48455, 14.83379, 12.35168,
            9.59937, 6.08692, 3.51112,
        ],
    ),
    (
        70.0,
        0.5,
        45.0,
        60.0,
        0.2,
        [
            0.0, 4.30359, 8.56063, 13.97890, 18.27396, 20.50900, 19.41186, 15.71423, 10.51469,
            5.67532, 1.44999, 0.0,
        ],
    ),
    (
        10.0,
        0.55,
        15.0,
        180.0,
        0.2,
        [
            15.03317, 16.98016, 19.02924, 20.54763, 21.11639, 21.16320, 21.05649, 20.66285,
            19.50031, 17.51625, 15.45137, 14.41990,
        ],
    ),
    (
        0.0,
        0.5,
        20.0,
        0.0,
        0.2,
        [
            19.25237, 19.13697, 18.38673, 16.81609, 15.09313, 14.16580, 14.51569, 15.96734,
            17.65185, 18.77212, 19.13497, 19.16227,
        ],
    ),
];

#[test]
fn tilted_planes_against_pvlib() {
    for (latitude, clearness, tilt, azimuth, ground_reflectance, expected) in PVLIB_PLANES {
        let site = Site { ground_reflectance, ..site(latitude, clearness) };
        let found = months(&site, plane(tilt, azimuth)).unwrap();
        for (month, expected) in found.iter().zip(expected) {
            assert!(
                (month.plane.value() - expected).abs() < 1e-3,
                "{latitude} {tilt}: {month:?} {expected}"
            );
        }
    }
}

// Rabl's worked example of the profile, as transcribed: sunset at 81.7°; a 0.5947, b 0.4844; share of the day's
// radiation in the hours around 7.5°, 22.5° and 37.5°: 0.153, 0.135, 0.106; diffuse 0.142, 0.130, 0.1085.
#[test]
fn rabl_example_of_the_day_profile() {
    let sunset = 81.7_f64.to_radians();
    let (a, b) = day_profile(sunset);
    assert!((a - 0.5947).abs() < 5e-4 && (b - 0.4844).abs() < 5e-4, "{a} {b}");
    let level = |hour: f64| libm::cos(hour) - libm::cos(sunset);
    let diffuse =
        |hour: f64| PI / 24.0 * level(hour) / (libm::sin(sunset) - sunset * libm::cos(sunset));
    for (degrees, total, expected) in
        [(7.5_f64, 0.153, 0.142), (22.5, 0.135, 0.130), (37.5, 0.106, 0.1085)]
    {
        let hour = degrees.to_radians();
        let share = diffuse(hour);
        assert!((share - expected).abs() < 0.001, "{degrees}: {share}");
        let share = (a + b * libm::cos(hour)) * share;
        assert!((share - total).abs() < 0.001, "{degrees}: {share}");
    }
}

// 40° N in December: 13.76 MJ/m² outside the atmosphere, clearness 0.45: 6.192 MJ/m², 1.720 hours of full sun.
#[test]
fn december_at_forty_degrees_north() {
    let found = months(&site(40.0, 0.45), plane(0.0, 0.0)).unwrap()[11];
    assert!((found.plane.value() - 6.192).abs() < 0.002, "{found:?}");
    assert!((found.sun_hours() - 1.720).abs() < 0.001);
    let day = day_yield(&found, Power::new::<watt>(200.0), 0.1408).unwrap().value();
    assert!((day.get::<watt_hour>() - 1.72 * 200.0 * 0.8592).abs() < 0.2);
}

// 4 hours of full sun on 200 W with 14.08 % lost bring 687.36 Wh (arithmetic).
#[test]
fn yield_of_a_day_by_arithmetic() {
    let sun = OnPlane {
        level: 14.4,
        direct: 1.0,
        diffuse: 0.0,
        tilt: degrees(0.0),
        reflectance: GROUND_REFLECTANCE,
    };
    let month = Month { plane: sun, ..months(&site(43.0, 0.5), plane(0.0, 0.0)).unwrap()[0] };
    let day = day_yield(&month, Power::new::<watt>(200.0), 0.1408).unwrap().value();
    assert!((day.get::<watt_hour>() - 687.36).abs() < 1e-9);
}

#[test]
fn a_winter_beyond_the_polar_circle_brings_nothing() {
    let found = months(&site(75.0, 0.5), plane(90.0, 0.0)).unwrap();
    assert_eq!(found[11].plane.value(), 0.0);
    assert!(found[5].plane.value() > 10.0);
}

#[test]
fn figures_out_of_range_are_refused() {
    assert_eq!(months(&site(91.0, 0.5), plane(0.0, 0.0)), Err(SolarError::Latitude));
    assert_eq!(months(&site(40.0, 1.2), plane(0.0, 0.0)), Err(SolarError::Clearness(0)));
    assert_eq!(months(&site(40.0, 0.5), plane(100.0, 0.0)), Err(SolarError::Tilt));
    assert_eq!(months(&site(40.0, 0.5), plane(30.0, f64::NAN)), Err(SolarError::Azimuth));
}

proptest! {
    #[test]
    fn any_numbers_give_finite_months_or_an_error(
        latitude in any_number(), k in any_number(), tilt in any_number(), azimuth in any_number(), ground in any_number(),
    ) {
        let site = Site { ground_reflectance: ground, ..site(latitude, k) };
        if let Ok(found) = months(&site, plane(tilt, azimuth)) {
            prop_assert!(found.iter().all(|m| m.plane.value().is_finite()));
        }
    }

    /// Every place from pole to pole: bounded, and never more than the sun could bring outside the atmosphere.
    #[test]
    fn every_plane_on_earth_stays_within_the_sun(
        latitude in -90.0..=90.0_f64, k in 0.05..=0.85_f64, tilt in 0.0..=90.0_f64, azimuth in -180.0..=180.0_f64,
    ) {
        for month in months(&site(latitude, k), plane(tilt, azimuth)).unwrap() {
            prop_assert!(month.plane.value() >= 0.0 && month.plane.value() <= 1.412 * 86.4, "{month:?}");
        }
    }

    #[test]
    fn a_level_plane_gets_what_the_level_gets(latitude in -90.0..=90.0_f64, k in 0.05..=0.85_f64, azimuth in -180.0..=180.0_f64) {
        for month in months(&site(latitude, k), plane(0.0, azimuth)).unwrap() {
            prop_assert!((month.plane.value() - month.level.value()).abs() < 1e-6 * (1.0 + month.level.value()));
        }
    }

    #[test]
    fn east_and_west_yield_the_same(
        latitude in 0.0..65.0_f64, tilt in 0.0..=90.0_f64, azimuth in 0.0..=180.0_f64,
    ) {
        let west = months(&site(latitude, 0.5), plane(tilt, azimuth)).unwrap();
        let east = months(&site(latitude, 0.5), plane(tilt, -azimuth)).unwrap();
        for (a, b) in west.iter().zip(&east) {
            prop_assert!((a.plane.value() - b.plane.value()).abs() < 1e-9);
        }
    }
}
