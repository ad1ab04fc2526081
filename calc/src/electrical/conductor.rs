//! Conductors: sizes, resistance at temperature, copper area, diameter, mass.

use std::fmt;

use super::range::{CONDUCTOR_OHM_PER_M, CONDUCTOR_TEMPERATURE_C, OutOfRange};
use super::run_formulas::{WarmAwg, WarmMetric};
use super::sources;
use crate::formula::Formula as _;
use crate::quantity::{plain, significant};
use crate::source::Source;
use crate::text::text;

pub use super::conductor_text::{ConductorTextError, Series};

/// One row of NEC chapter 9 table 8: stranded, uncoated copper.
#[derive(Debug, PartialEq)]
pub struct AwgSize {
    /// Size as printed on the jacket, without the unit: `16`, `1/0`.
    pub label: &'static str,
    /// Copper area in circular mils, the table's own rounding.
    pub circular_mils: f64,
    /// Resistance at 75 C in ohm per 1000 ft.
    pub ohm_per_kft_at_75_c: f64,
    /// Bare diameter in inches.
    pub diameter_in: f64,
}

/// One row of IEC 60228, class 5 (flexible), plain copper.
#[derive(Debug, PartialEq)]
pub struct MetricSize {
    /// Nominal area in mm². A label: the resistance below is what is guaranteed.
    pub area_mm2: f64,
    /// Greatest resistance at 20 C in ohm per km.
    pub ohm_per_km_at_20_c: f64,
}

/// What a run is wired with; both of its conductors are the same.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Conductor {
    /// An American wire gauge size.
    Awg(&'static AwgSize),
    /// A metric size.
    SquareMillimetre(&'static MetricSize),
    /// Resistance of one conductor by its length, as measured or from a data sheet.
    PerLength {
        /// In ohm/m, at whatever temperature it was measured.
        ohm_per_m: f64,
    },
}

/// AWG sizes from the thinnest to the thickest.
///
/// # Source
/// [`sources::NEC_TABLE_8`], the stranded column: the solid column of 18 to 8 AWG is 2 % lower.
#[allow(clippy::approx_constant, reason = "3.14 is the resistance of 14 AWG")]
pub static AWG_SIZES: [AwgSize; 15] = [
    awg("18", 1620.0, 7.95, 0.046),
    awg("16", 2580.0, 4.99, 0.058),
    awg("14", 4110.0, 3.14, 0.073),
    awg("12", 6530.0, 1.98, 0.092),
    awg("10", 10_380.0, 1.24, 0.116),
    awg("8", 16_510.0, 0.778, 0.146),
    awg("6", 26_240.0, 0.491, 0.184),
    awg("4", 41_740.0, 0.308, 0.232),
    awg("3", 52_620.0, 0.245, 0.260),
    awg("2", 66_360.0, 0.194, 0.292),
    awg("1", 83_690.0, 0.154, 0.332),
    awg("1/0", 105_600.0, 0.122, 0.372),
    awg("2/0", 133_100.0, 0.0967, 0.418),
    awg("3/0", 167_800.0, 0.0766, 0.470),
    awg("4/0", 211_600.0, 0.0608, 0.528),
];

/// Metric sizes from the thinnest to the thickest.
///
/// # Source
/// [`sources::IEC_60228_CLASS_5`].
pub static METRIC_SIZES: [MetricSize; 14] = [
    metric(0.5, 39.0),
    metric(0.75, 26.0),
    metric(1.0, 19.5),
    metric(1.5, 13.3),
    metric(2.5, 7.98),
    metric(4.0, 4.95),
    metric(6.0, 3.30),
    metric(10.0, 1.91),
    metric(16.0, 1.21),
    metric(25.0, 0.780),
    metric(35.0, 0.554),
    metric(50.0, 0.386),
    metric(70.0, 0.272),
    metric(95.0, 0.206),
];

/// Square millimetres in a circular mil.
///
/// # Source
/// [`sources::CIRCULAR_MIL`].
pub const MM2_PER_CIRCULAR_MIL: f64 = std::f64::consts::FRAC_PI_4 * 0.0254 * 0.0254;

/// Mass of a metre of copper of 1 mm², in kg.
///
/// # Source
/// [`sources::COPPER_DENSITY`].
pub const COPPER_KG_PER_M_MM2: f64 = 0.00889;

const METRES_PER_KILOFOOT: f64 = 304.8;

impl Conductor {
    /// The thicknesses of AWG, thinnest first.
    pub fn awg() -> impl Iterator<Item = Self> {
        AWG_SIZES.iter().map(Self::Awg)
    }

    /// The thicknesses of IEC 60228 class 5, thinnest first.
    pub fn metric() -> impl Iterator<Item = Self> {
        METRIC_SIZES.iter().map(Self::SquareMillimetre)
    }

    /// Its name as part of an id, the same however sizes are written: `awg16`, `1.5mm2`, `0.0135ohm_m`.
    pub fn id(self) -> String {
        match self {
            Self::Awg(size) => text!("awg{}", size.label.replace('/', "_")),
            Self::SquareMillimetre(size) => text!("{}mm2", plain(size.area_mm2, 3)),
            Self::PerLength { ohm_per_m } => text!("{}ohm_m", significant(ohm_per_m, 6)),
        }
    }

    /// A conductor by its resistance, 1e-7 to 100 ohm/m.
    ///
    /// # Errors
    /// [`OutOfRange`] beyond that.
    pub fn per_length(ohm_per_m: f64) -> Result<Self, OutOfRange> {
        Ok(Self::PerLength { ohm_per_m: CONDUCTOR_OHM_PER_M.check(ohm_per_m)? })
    }

    /// Resistance of one conductor in ohm/m at its own temperature, -50 to 200 C.
    ///
    /// AWG: R75 (1 + 0.00323 (T - 75)); mm²: R20 (1 + 0.00393 (T - 20)). A resistance that was
    /// given is taken as it is: nobody knows the temperature it was measured at.
    ///
    /// # Errors
    /// [`OutOfRange`] for a temperature outside -50 to 200 C.
    ///
    /// # Source
    /// [`Conductor::resistance_source`], [`sources::NEC_TABLE_8_NOTE`],
    /// [`sources::COPPER_TEMPERATURE_COEFFICIENT`].
    pub fn ohm_per_m(self, temperature_c: f64) -> Result<f64, OutOfRange> {
        let copper_c = CONDUCTOR_TEMPERATURE_C.check(temperature_c)?;
        Ok(match self {
            Self::Awg(size) => {
                let at_75 = size.ohm_per_kft_at_75_c / METRES_PER_KILOFOOT;
                WarmAwg { at_75, copper_c }.value()
            }
            Self::SquareMillimetre(size) => {
                WarmMetric { at_20: size.ohm_per_km_at_20_c / 1000.0, copper_c }.value()
            }
            Self::PerLength { ohm_per_m } => ohm_per_m,
        })
    }

    /// Where the resistance comes from.
    pub fn resistance_source(self) -> &'static Source {
        match self {
            Self::Awg(_) => &sources::NEC_TABLE_8,
            Self::SquareMillimetre(_) => &sources::IEC_60228_CLASS_5,
            Self::PerLength { .. } => &sources::GIVEN_RESISTANCE,
        }
    }

    /// Whether it is the AWG size of that label.
    pub fn is_awg(self, label: &str) -> bool {
        matches!(self, Self::Awg(size) if size.label == label)
    }

    /// Copper area in mm²; unknown for a conductor given by its resistance.
    pub fn area_mm2(self) -> Option<f64> {
        match self {
            Self::Awg(size) => Some(size.circular_mils * MM2_PER_CIRCULAR_MIL),
            Self::SquareMillimetre(size) => Some(size.area_mm2),
            Self::PerLength { .. } => None,
        }
    }

    /// Diameter over the strands, in mm.
    ///
    /// # Source
    /// AWG: [`sources::NEC_TABLE_8`]. mm²: [`sources::STRANDED_DIAMETER`].
    pub fn bare_diameter_mm(self) -> Option<f64> {
        match self {
            Self::Awg(size) => Some(size.diameter_in * 25.4),
            Self::SquareMillimetre(size) => {
                Some(1.14 * (size.area_mm2 / std::f64::consts::FRAC_PI_4).sqrt())
            }
            Self::PerLength { .. } => None,
        }
    }

    /// Diameter over the insulation, in mm, for looms and sleeves. Makers differ: measure the wire
    /// in hand where it matters.
    ///
    /// # Source
    /// [`Conductor::bare_diameter_mm`] and [`sources::INSULATION_WALL`].
    pub fn overall_diameter_mm(self) -> Option<f64> {
        let wall_mm = match self.area_mm2()? {
            area if area < 5.6 => 0.76,
            area if area < 8.5 => 1.14,
            area if area < 34.0 => 1.52,
            _ => 2.03,
        };
        Some(self.bare_diameter_mm()? + 2.0 * wall_mm)
    }

    /// Mass of the copper of one metre of one conductor, in kg.
    ///
    /// # Source
    /// [`sources::COPPER_DENSITY`].
    pub fn copper_kg_per_m(self) -> Option<f64> {
        Some(self.area_mm2()? * COPPER_KG_PER_M_MM2)
    }
}

impl fmt::Display for Conductor {
    /// The one spelling that is stored and shown: `16 AWG`, `1.5 mm2`, `0.0135 ohm/m`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Awg(size) => write!(f, "{} AWG", size.label),
            Self::SquareMillimetre(size) => write!(f, "{} mm2", size.area_mm2),
            Self::PerLength { ohm_per_m } => write!(f, "{ohm_per_m} ohm/m"),
        }
    }
}

const fn awg(label: &'static str, circular_mils: f64, ohm_per_kft: f64, inches: f64) -> AwgSize {
    AwgSize { label, circular_mils, ohm_per_kft_at_75_c: ohm_per_kft, diameter_in: inches }
}

const fn metric(area_mm2: f64, ohm_per_km: f64) -> MetricSize {
    MetricSize { area_mm2, ohm_per_km_at_20_c: ohm_per_km }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn conductor(text: &str) -> Conductor {
        text.parse().expect(text)
    }

    /// NEC chapter 9 table 8, as transcribed; ohm/km = ohm/kft / 0.3048.
    #[test]
    #[allow(clippy::approx_constant, reason = "3.14 is the resistance of 14 AWG")]
    fn awg_resistance_at_75_c_is_the_table_value() {
        for (text, ohm_per_kft) in [("18 AWG", 7.95), ("14 AWG", 3.14), ("10 AWG", 1.24)] {
            let r = conductor(text).ohm_per_m(75.0).unwrap();
            assert!((r * 304.8 - ohm_per_kft).abs() < 1e-12, "{text}");
        }
        let r = conductor("4/0 AWG").ohm_per_m(75.0).unwrap();
        assert!((r * 304.8 - 0.0608).abs() < 1e-12);
    }

    /// ASTM B258 areas and annealed copper of IEC 60287 (0.017241 ohm mm2/m at 20 C): stranding
    /// makes the table's conductors 1 to 4 % longer, never shorter.
    #[test]
    fn awg_resistance_lies_just_above_solid_annealed_copper() {
        for conductor in Conductor::awg() {
            let solid = 0.017_241 * (1.0 + 0.00393 * 55.0) / conductor.area_mm2().unwrap();
            let ratio = conductor.ohm_per_m(75.0).unwrap() / solid;
            assert!((1.005..1.04).contains(&ratio), "{conductor}: {ratio}");
        }
    }

    /// IEC 60228 class 5, and class 5 against class 2 where it is the lower one (50 mm2).
    #[test]
    fn metric_resistance_at_20_c_is_the_table_value() {
        for (text, ohm_per_km) in
            [("0.5 mm2", 39.0), ("1.5 mm2", 13.3), ("2.5 mm2", 7.98), ("50 mm2", 0.386)]
        {
            let r = conductor(text).ohm_per_m(20.0).unwrap();
            assert!((r * 1000.0 - ohm_per_km).abs() < 1e-12, "{text}");
        }
    }

    /// IEC 60228's own factors back to 20 C (1/1.020 at 15 C, 1/0.962 at 30 C, 1/0.820 at 75 C)
    /// agree with the linear law within their three digits.
    #[test]
    fn temperature_law_agrees_with_iec_60228_factors() {
        let wire = conductor("4 mm2");
        let r20 = wire.ohm_per_m(20.0).unwrap();
        for (t, k) in [(5.0, 1.064), (15.0, 1.020), (30.0, 0.962), (50.0, 0.893), (75.0, 0.820)] {
            let back = wire.ohm_per_m(t).unwrap() * k;
            assert!((back / r20 - 1.0).abs() < 0.003, "{t} C: {}", back / r20);
        }
    }

    #[test]
    fn temperature_changes_awg_by_the_note_and_a_given_resistance_not_at_all() {
        let r = conductor("16 AWG").ohm_per_m(30.0).unwrap();
        assert!((r - 4.99 / 304.8 * (1.0 - 0.00323 * 45.0)).abs() < 1e-15);
        let given = conductor("0.0135 ohm/m");
        assert_eq!(given.ohm_per_m(-20.0), Ok(0.0135));
        assert_eq!(given.ohm_per_m(90.0), Ok(0.0135));
        assert!(given.ohm_per_m(f64::NAN).is_err());
    }

    /// ASTM B258 areas as computed from the diameters; the NEC rounds circular mils.
    #[test]
    fn awg_area_and_mass() {
        for (text, mm2) in [("18 AWG", 0.8230), ("10 AWG", 5.2612), ("4/0 AWG", 107.2193)] {
            let area = conductor(text).area_mm2().unwrap();
            assert!((area / mm2 - 1.0).abs() < 0.003, "{text}: {area}");
        }
        let kg = conductor("10 mm2").copper_kg_per_m().unwrap();
        assert!((kg - 0.0889).abs() < 1e-12);
    }

    #[test]
    fn thicker_is_wider_heavier_and_of_less_resistance() {
        for sizes in [Conductor::awg().collect::<Vec<_>>(), Conductor::metric().collect()] {
            for pair in sizes.windows(2) {
                assert!(pair[0].ohm_per_m(30.0).unwrap() > pair[1].ohm_per_m(30.0).unwrap());
                assert!(pair[0].area_mm2().unwrap() < pair[1].area_mm2().unwrap());
                assert!(pair[0].overall_diameter_mm() < pair[1].overall_diameter_mm());
                assert!(pair[0].overall_diameter_mm() > pair[0].bare_diameter_mm());
            }
        }
    }

    proptest! {
        #[test]
        fn resistance_is_finite_and_positive_or_refused(t in any::<f64>(), r in any::<f64>()) {
            for wire in Conductor::awg().chain(Conductor::metric()) {
                if let Ok(r) = wire.ohm_per_m(t) {
                    prop_assert!(r.is_finite() && r > 0.0);
                }
            }
            if let Ok(wire) = Conductor::per_length(r) {
                prop_assert!(wire.ohm_per_m(20.0).is_ok_and(|r| r.is_finite() && r > 0.0));
            }
        }
    }
}
