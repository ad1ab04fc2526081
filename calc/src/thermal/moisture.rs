//! Water vapour in air: saturation pressure, dew point, and the humidity a cold surface stands (ISO 13788).

use std::fmt;

use uom::si::f64::{Pressure, ThermodynamicTemperature};
use uom::si::pressure::pascal;
use uom::si::thermodynamic_temperature::degree_celsius;

use crate::source::Source;
use crate::words::{Msg, insulation as words};

/// Saturation pressure at and above 0 °C, and its inverse.
pub const SATURATION: Source =
    Source::transcribed("ISO 13788", "saturation pressure, 610.5 exp(17.269 T / (237.3 + T))");
/// Saturation pressure over ice.
pub const SATURATION_ICE: Source = Source::from_memory(
    "ISO 13788",
    "saturation pressure below 0 °C, 610.5 exp(21.875 T / (265.5 + T))",
);

/// From this relative humidity at a surface on mould can grow, well before it gets wet.
pub const MOULD: Source =
    Source::transcribed("ISO 13788", "critical humidity at a surface against mold: 80 %");
/// The same as a share.
pub const MOULD_HUMIDITY: f64 = 0.8;

/// Air on one side.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Air {
    /// -60 to 80 °C.
    pub temperature: ThermodynamicTemperature,
    /// Relative humidity, 0 to 1.
    pub humidity: f64,
}

/// What keeps air from being reckoned with.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum AirError {
    /// The temperature is out of range.
    Temperature,
    /// The relative humidity is out of range.
    Humidity,
}

impl AirError {
    /// What is wrong, as a message.
    pub fn told(self) -> Msg {
        match self {
            Self::Temperature => words::AIR_TEMPERATURE.into(),
            Self::Humidity => words::AIR_HUMIDITY.into(),
        }
    }
}

impl fmt::Display for AirError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.told().fmt(f)
    }
}

impl std::error::Error for AirError {}

/// Saturation pressure of water vapour by ISO 13788, -60 to 80 °C.
///
/// # Errors
/// [`AirError::Temperature`] outside the range.
pub fn saturation_pressure(temperature: ThermodynamicTemperature) -> Result<Pressure, AirError> {
    let celsius = check_celsius(temperature)?;
    Ok(Pressure::new::<pascal>(saturation_pa(celsius)))
}

/// Pressure of the water vapour in air.
///
/// # Errors
/// [`AirError`] where temperature or humidity is out of range.
pub fn vapour_pressure(air: Air) -> Result<Pressure, AirError> {
    Ok(Pressure::new::<pascal>(vapour_pa(air)?))
}

/// Dew point by the inverse of ISO 13788's formula; below 0 °C the frost point. Humidity from 0.01 to 1.
///
/// # Errors
/// [`AirError`] where temperature or humidity is out of range.
pub fn dew_point_iso_13788(air: Air) -> Result<ThermodynamicTemperature, AirError> {
    let pressure = vapour_pa(air)?;
    if air.humidity < 0.01 {
        return Err(AirError::Humidity);
    }
    Ok(ThermodynamicTemperature::new::<degree_celsius>(saturates_at(pressure)))
}

/// The relative humidity of room air, 0 to 1, at which a surface of the given temperature gets wet.
///
/// # Errors
/// [`AirError::Temperature`] where either temperature is out of range.
pub fn humidity_limit(
    room: ThermodynamicTemperature,
    surface: ThermodynamicTemperature,
) -> Result<f64, AirError> {
    let (room, surface) = (check_celsius(room)?, check_celsius(surface)?);
    Ok((saturation_pa(surface) / saturation_pa(room)).min(1.0))
}

/// Saturation pressure, Pa, at a temperature in range.
pub(super) fn saturation_pa(celsius: f64) -> f64 {
    if celsius >= 0.0 {
        610.5 * libm::exp(17.269 * celsius / (237.3 + celsius))
    } else {
        610.5 * libm::exp(21.875 * celsius / (265.5 + celsius))
    }
}

/// The temperature, °C, at which a vapour pressure above 0 Pa saturates.
pub(super) fn saturates_at(pascals: f64) -> f64 {
    let logarithm = libm::log(pascals / 610.5);
    if logarithm >= 0.0 {
        237.3 * logarithm / (17.269 - logarithm)
    } else {
        265.5 * logarithm / (21.875 - logarithm)
    }
}

/// Vapour pressure of air in range, Pa.
pub(super) fn vapour_pa(air: Air) -> Result<f64, AirError> {
    let celsius = check_celsius(air.temperature)?;
    if !(0.0..=1.0).contains(&air.humidity) {
        return Err(AirError::Humidity);
    }
    Ok(air.humidity * saturation_pa(celsius))
}

/// The temperature in °C if it is in range.
pub(super) fn check_celsius(temperature: ThermodynamicTemperature) -> Result<f64, AirError> {
    let celsius = temperature.get::<degree_celsius>();
    if (-60.0..=80.0).contains(&celsius) { Ok(celsius) } else { Err(AirError::Temperature) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::any_number;
    use proptest::prelude::*;

    fn at(celsius: f64) -> ThermodynamicTemperature {
        ThermodynamicTemperature::new::<degree_celsius>(celsius)
    }

    fn air(celsius: f64, percent: f64) -> Air {
        Air { temperature: at(celsius), humidity: percent / 100.0 }
    }

    // ISO 13788 formula worked outside this program, beside the ASHRAE formulation (psychrolib 2.5.0): °C, ISO Pa,
    // ASHRAE Pa.
    const SATURATION_PA: [(f64, f64, f64); 11] = [
        (-20.0, 102.740, 103.260),
        (-10.0, 259.333, 259.903),
        (-5.0, 401.181, 401.764),
        (0.0, 610.500, 611.154),
        (5.0, 871.865, 872.487),
        (10.0, 1227.310, 1227.995),
        (15.0, 1704.407, 1705.448),
        (20.0, 2336.951, 2338.804),
        (25.0, 3165.920, 3169.216),
        (30.0, 4240.505, 4246.030),
        (40.0, 7370.928, 7383.460),
    ];

    #[test]
    fn saturation_pressure_by_iso_13788_and_close_to_ashrae() {
        for (celsius, iso, ashrae) in SATURATION_PA {
            let found = saturation_pressure(at(celsius)).unwrap().get::<pascal>();
            assert!((found - iso).abs() < 0.001, "{celsius}: {found}");
            assert!((found / ashrae - 1.0).abs() < 0.0055, "{celsius}: {found}");
        }
    }

    // ASHRAE Handbook Fundamentals 2017, chapter 1 table 3, as transcribed: -20, -5, 5, 25 and 50 °C.
    #[test]
    fn saturation_pressure_close_to_the_ashrae_table() {
        for (celsius, pa) in
            [(-20.0, 103.24), (-5.0, 401.74), (5.0, 872.6), (25.0, 3169.7), (50.0, 12351.3)]
        {
            let found = saturation_pressure(at(celsius)).unwrap().get::<pascal>();
            assert!((found / pa - 1.0).abs() < 0.0055, "{celsius}: {found}");
        }
    }

    // °C, percent, dew point by the ISO inverse (worked outside), by psychrolib 2.5.0.
    const DEW_POINTS: [(f64, f64, f64, f64); 12] = [
        (20.0, 50.0, 9.2690, 9.2724),
        (20.0, 60.0, 12.0039, 12.0075),
        (20.0, 70.0, 14.3640, 14.3671),
        (18.0, 80.0, 14.4995, 14.5012),
        (22.0, 40.0, 7.7899, 7.7942),
        (25.0, 50.0, 13.8570, 13.8640),
        (15.0, 90.0, 13.3739, 13.3745),
        (10.0, 60.0, 2.6045, 2.5998),
        (5.0, 80.0, 1.8448, 1.8413),
        (30.0, 70.0, 23.9226, 23.9279),
        (-5.0, 80.0, -7.5814, -7.5853),
        (0.0, 90.0, -1.2726, -1.2735),
    ];

    #[test]
    fn dew_points_by_iso_13788_and_close_to_psychrolib() {
        for (celsius, percent, iso, ashrae) in DEW_POINTS {
            let found = dew_point_iso_13788(air(celsius, percent)).unwrap().get::<degree_celsius>();
            assert!((found - iso).abs() < 0.0001, "{celsius} {percent}: {found}");
            assert!((found - ashrae).abs() < 0.02, "{celsius} {percent}: {found}");
        }
    }

    // A lining at 9.3 °C in a room of 20 °C stands 50 percent: its dew point is 9.27 °C (ISO 13788 inverse).
    #[test]
    fn the_humidity_limit_is_the_dew_point_read_backwards() {
        let limit = humidity_limit(at(20.0), at(9.2690)).unwrap();
        assert!((limit - 0.5).abs() < 1e-5, "{limit}");
        assert_eq!(humidity_limit(at(20.0), at(25.0)), Ok(1.0));
    }

    #[test]
    fn air_out_of_range_is_refused() {
        assert_eq!(dew_point_iso_13788(air(20.0, 0.5)), Err(AirError::Humidity));
        assert_eq!(dew_point_iso_13788(air(20.0, 100.5)), Err(AirError::Humidity));
        assert_eq!(dew_point_iso_13788(air(-274.0, 50.0)), Err(AirError::Temperature));
        assert_eq!(saturation_pressure(at(f64::NAN)), Err(AirError::Temperature));
    }

    proptest! {
        #[test]
        fn any_air_gives_a_finite_dew_point_or_an_error(celsius in any_number(), humidity in any_number()) {
            if let Ok(dew) = dew_point_iso_13788(Air { temperature: at(celsius), humidity }) {
                prop_assert!(dew.value.is_finite());
            }
        }

        #[test]
        fn the_dew_point_is_where_the_vapour_saturates(celsius in -30.0..60.0_f64, percent in 5.0..100.0_f64) {
            let air = air(celsius, percent);
            let dew = dew_point_iso_13788(air).unwrap();
            prop_assert!(dew.get::<degree_celsius>() <= celsius + 1e-9);
            let back = saturation_pa(dew.get::<degree_celsius>());
            prop_assert!((back / vapour_pa(air).unwrap() - 1.0).abs() < 1e-9);
        }
    }
}
