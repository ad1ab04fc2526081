//! The air round a fresh coat: dew point, and whether the surface is far enough above it.

use uom::si::f64::{Ratio, TemperatureInterval, ThermodynamicTemperature};
use uom::si::ratio::percent;
use uom::si::temperature_interval::kelvin as kelvin_interval;
use uom::si::thermodynamic_temperature::degree_celsius;

use super::range::{OutOfRange, within};
use crate::formula::formula;
use crate::source::Source;
use crate::words::range as names;

/// The Magnus form of the saturation vapour pressure, over water and over ice.
pub static MAGNUS: Source = Source::transcribed(
    "WMO-No. 8, Guide to Instruments and Methods of Observation (2008)",
    "annex 4.B: over water 17.62 and 243.12 C, over ice 22.46 and 272.62 C; over water read in \
     Vaisala's manual of its AWS330, appendix B",
);

/// Coat only a surface at least 3 C (5 F) above the dew point.
pub static MARGIN_RULE: Source = Source::transcribed(
    "US Department of Defense, MIL-HDBK-1110, Paints and Protective Coatings for Facilities; \
     Sahawatthanakit (1988) Co. on ISO 8502-4 and ISO 12944-7",
    "section 9.6.6: surface 5 F above the dew point and rising, read in tpub.com's copy; 3 C, and air \
     below 85 % humidity",
);

/// How [`MAGNUS`] is worked, in symbols, temperatures in °C.
pub const MAGNUS_SYMBOLS: &str = "g = ln RH + 17.62 T / (243.12 + T); Td = 243.12 g / (17.62 − g)";

/// The least that a surface must be above the dew point, in kelvins. Source: [`MARGIN_RULE`].
pub const LEAST_MARGIN_K: f64 = 3.0;

/// The humidity that the air must stay below, in percent. Source: [`MARGIN_RULE`].
pub const HUMIDITY_LIMIT_PERCENT: f64 = 85.0;

/// Where moisture leaves the air.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DewPoint {
    /// The dew point over liquid water, also below 0 C, where the water would be supercooled.
    /// The margin rule is worked with this one.
    pub dew_point: ThermodynamicTemperature,
    /// The frost point, where the dew point is below 0 C: frost forms there already, a little
    /// warmer than the dew point.
    pub frost_point: Option<ThermodynamicTemperature>,
}

/// How far a surface is from dew in this air. That alone is no leave to coat: see
/// [`super::verdict`].
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Margin {
    /// Dew and frost point of the air.
    pub air: DewPoint,
    /// How far the surface is above the dew point; negative where dew falls on it.
    pub margin: TemperatureInterval,
    /// Whether that is 3 C or more.
    pub far_enough: bool,
    /// Whether the air is at 85 % humidity or above, which the same texts advise against.
    pub too_humid: bool,
}

/// The dew point of air. Source: [`MAGNUS`]. Below 0 C humidity means humidity over water, as
/// meters show it.
///
/// # Errors
/// Temperature from -45 to 60 C (the range of the formula), humidity from 1 to 100 %.
pub fn dew_point(
    temperature: ThermodynamicTemperature,
    humidity: Ratio,
) -> Result<DewPoint, OutOfRange> {
    let t = within(names::AIR_TEMPERATURE, temperature.get::<degree_celsius>(), -45.0, 60.0, "C")?;
    let relative = within(names::HUMIDITY, humidity.get::<percent>(), 1.0, 100.0, "%")?;
    let g = libm::log(relative / 100.0) + 17.62 * t / (243.12 + t);
    let celsius = |value| ThermodynamicTemperature::new::<degree_celsius>(value);
    let dew = 243.12 * g / (17.62 - g);
    let frost = 272.62 * g / (22.46 - g);
    Ok(DewPoint { dew_point: celsius(dew), frost_point: (dew < 0.0).then(|| celsius(frost)) })
}

/// Whether a surface is far enough above the dew point. Sources: [`MAGNUS`], [`MARGIN_RULE`].
///
/// # Errors
/// As [`dew_point`]; the surface from -45 to 100 C.
pub fn margin(
    temperature: ThermodynamicTemperature,
    humidity: Ratio,
    surface: ThermodynamicTemperature,
) -> Result<Margin, OutOfRange> {
    let air = dew_point(temperature, humidity)?;
    let surface =
        within(names::SURFACE_TEMPERATURE, surface.get::<degree_celsius>(), -45.0, 100.0, "C")?;
    let above = surface - air.dew_point.get::<degree_celsius>();
    Ok(Margin {
        air,
        margin: TemperatureInterval::new::<kelvin_interval>(above),
        far_enough: above >= LEAST_MARGIN_K - 1e-9,
        too_humid: humidity.get::<percent>() >= HUMIDITY_LIMIT_PERCENT,
    })
}

formula! {
    /// How far a surface is above the dew point: see [`margin`]. [K]
    AboveDew: "m = Ts − Td", &MARGIN_RULE;
    |of| {
        let [surface, dew] = [of.surface, of.dew_point].map(|at| at.get::<degree_celsius>());
        surface - dew
    } => f64 as kelvin;
    /// Of the surface.
    "Ts" as temperature: surface: ThermodynamicTemperature,
    /// Of the air at it.
    "Td" as temperature_in_sum: dew_point: ThermodynamicTemperature,
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;
    use uom::si::thermodynamic_temperature::degree_fahrenheit;

    use super::*;

    fn celsius(value: f64) -> ThermodynamicTemperature {
        ThermodynamicTemperature::new::<degree_celsius>(value)
    }

    fn dew(t: f64, humidity: f64) -> f64 {
        let air = dew_point(celsius(t), Ratio::new::<percent>(humidity)).unwrap();
        air.dew_point.get::<degree_celsius>()
    }

    /// A weather station's published dew-point table, to the 0.1 C that it prints.
    #[test]
    fn published_dew_point_table() {
        let humidities = [40.0, 50.0, 60.0, 70.0, 80.0, 90.0];
        for (t, row) in [
            (25.0, [10.4, 13.8, 16.7, 19.1, 21.3, 23.2]),
            (20.0, [6.0, 9.3, 12.0, 14.4, 16.4, 18.3]),
            (15.0, [1.5, 4.7, 7.3, 9.6, 11.6, 13.4]),
            (10.0, [-3.0, 0.1, 2.6, 4.8, 6.7, 8.4]),
            (5.0, [-7.5, -4.6, -2.1, 0.0, 1.8, 3.5]),
        ] {
            for (humidity, printed) in humidities.iter().zip(row) {
                let got = dew(t, *humidity);
                assert!(
                    (got - printed).abs() <= 0.06,
                    "{t} C {humidity} %: {got}, printed {printed}"
                );
            }
        }
        // A second published table.
        for (t, humidity, printed) in
            [(30.0, 50.0, 18.4), (30.0, 60.0, 21.4), (30.0, 80.0, 26.2), (20.0, 65.0, 13.2)]
        {
            assert!((dew(t, humidity) - printed).abs() <= 0.06, "{t} C {humidity} %");
        }
    }

    /// A US painting chart; it cuts degrees short rather than rounding them.
    #[test]
    fn published_fahrenheit_chart() {
        for (t, humidity, printed) in [(70.0, 65.0, 57.0), (80.0, 50.0, 59.0), (60.0, 80.0, 54.0)] {
            let air = dew_point(
                ThermodynamicTemperature::new::<degree_fahrenheit>(t),
                Ratio::new::<percent>(humidity),
            );
            let got = air.unwrap().dew_point.get::<degree_fahrenheit>();
            assert!((got - printed).abs() < 1.0, "{t} F {humidity} %: {got}");
        }
    }

    /// Over water and over ice at 0 C, 80 %: -3.04 C by the Magnus form over water; the ASHRAE
    /// formulation of an open psychrometric library, which goes over to ice below 0 C, gives
    /// -2.68 C.
    #[test]
    fn below_freezing_dew_and_frost_point_differ() {
        let air = dew_point(celsius(0.0), Ratio::new::<percent>(80.0)).unwrap();
        assert!((air.dew_point.get::<degree_celsius>() + 3.04).abs() < 0.005);
        let frost = air.frost_point.unwrap().get::<degree_celsius>();
        assert!((frost + 2.68).abs() < 0.005, "{frost}");
        assert!(
            dew_point(celsius(20.0), Ratio::new::<percent>(50.0)).unwrap().frost_point.is_none()
        );
    }

    /// A practice text's examples: steel at 13 C in air of 16 C and 71 % (dew point 11 C) must
    /// wait; steel at 19 C over a dew point of 15 C may be painted.
    #[test]
    fn published_margin_examples() {
        let wait = margin(celsius(16.0), Ratio::new::<percent>(71.0), celsius(13.0)).unwrap();
        assert!(!wait.far_enough && !wait.too_humid);
        assert!((wait.margin.get::<kelvin_interval>() - 2.0).abs() < 0.3);
        let paint = margin(celsius(21.0), Ratio::new::<percent>(67.4), celsius(19.0)).unwrap();
        assert!(paint.far_enough);
        // Saturated air: the margin is exactly what the surface is above the air; 3 C is enough.
        assert!(
            margin(celsius(10.0), Ratio::new::<percent>(100.0), celsius(13.0)).unwrap().far_enough
        );
        assert!(
            !margin(celsius(10.0), Ratio::new::<percent>(100.0), celsius(12.99))
                .unwrap()
                .far_enough
        );
        assert!(
            margin(celsius(10.0), Ratio::new::<percent>(85.0), celsius(20.0)).unwrap().too_humid
        );
    }

    proptest! {
        #[test]
        fn dew_point_is_never_above_the_air(
            t in any::<f64>(),
            u in -60.0..80.0,
            h in -10.0..120.0,
            s in any::<f64>(),
        ) {
            for t in [t, u] {
                if let Ok(got) = margin(celsius(t), Ratio::new::<percent>(h), celsius(s)) {
                    prop_assert!(got.margin.value.is_finite());
                }
                if let Ok(air) = dew_point(celsius(t), Ratio::new::<percent>(h)) {
                    let dew = air.dew_point.get::<degree_celsius>();
                    prop_assert!(dew.is_finite() && dew <= t + 1e-9);
                    if let Some(frost) = air.frost_point {
                        prop_assert!(frost.get::<degree_celsius>() >= dew - 1e-9);
                    }
                }
            }
        }
    }
}
