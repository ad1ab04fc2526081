//! Heat that a body loses or takes up: through its surfaces and with the fresh air.

use std::fmt;

use uom::si::area::square_meter;
use uom::si::f64::{Area, HeatTransfer, Power, ThermodynamicTemperature, VolumeRate};
use uom::si::heat_transfer::watt_per_square_meter_kelvin;
use uom::si::power::watt;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::volume_rate::cubic_meter_per_hour;

use crate::source::Source;

/// Heat through surfaces in steady state.
pub const TRANSMISSION: Source = Source::identity("Q = sum(U A) (Ti - Te), the definition of U");
/// Heat carried by fresh air: 1.2 kg/m³ times 1005 J/(kg K), 0.335 Wh/(m³ K); for a flow measured in air of about
/// 20 °C ([`air_density_share`]).
pub const FRESH_AIR: Source = Source::identity(
    "0.335 Wh/(m3 K) from air of 1.2 kg/m3, which it weighs at about 20 °C at sea level, and 1005 J/(kg K)",
);
/// The Btu of the International Table.
pub const BTU: Source = Source::from_memory("NIST SP 811", "1 W = 3.412142 Btu/h");

/// Sun through glass: area times its solar heat gain coefficient times the radiation on it.
pub const SOLAR_GAIN: Source =
    Source::identity("the solar heat gain coefficient is heat let in over radiation on the glass");

/// Heat that a cubic metre of air carries per kelvin, Wh/(m³ K).
pub const AIR_WH_M3_K: f64 = 0.335;

/// How much more a cubic metre of air weighs at a temperature than the 1.2 kg that are counted: 353 kg K/m³ over the
/// temperature at sea level, over 1.2. From -60 to 80 °C.
pub fn air_density_share(temperature: ThermodynamicTemperature) -> f64 {
    353.0 / (temperature.get::<degree_celsius>() + 273.15).max(200.0) / 1.2
}

/// One surface of the body.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Surface {
    /// 0 to 10 000 m².
    pub area: Area,
    /// U value, 0 to 20 W/(m² K).
    pub u: HeatTransfer,
}

/// What a body needs to be kept at its temperature.
#[derive(Clone, Debug, PartialEq)]
pub struct HeatLoad {
    /// Through each surface, in the order given; negative flows in.
    pub surfaces: Vec<Power>,
    /// With the fresh air; negative flows in.
    pub fresh_air: Power,
    /// Surfaces and fresh air less the gains: heat to be supplied, or where negative, to be taken away.
    pub total: Power,
}

/// Why there is no heat load.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum HeatLoadError {
    /// A surface's area is out of range; surfaces count from 0.
    Area(usize),
    /// A surface's U value is out of range; surfaces count from 0.
    Transmittance(usize),
    /// The flow of fresh air is out of range.
    FreshAir,
    /// The inside temperature is out of range.
    Inside,
    /// The outside temperature is out of range.
    Outside,
    /// The gains are out of range.
    Gains,
}

impl fmt::Display for HeatLoadError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Area(at) => write!(f, "surface {}: the area must be from 0 to 10 000 m2", at + 1),
            Self::Transmittance(at) => write!(
                f,
                "surface {}: the U value must be from 0 to 20 W/m2/K; bare steel has 5.9",
                at + 1
            ),
            Self::FreshAir => f.write_str("the fresh air must be from 0 to 10 000 m3/h"),
            Self::Inside => f.write_str("the inside temperature must be from -60 to 80 C"),
            Self::Outside => f.write_str("the outside temperature must be from -60 to 80 C"),
            Self::Gains => f.write_str("the gains must be from 0 to 100 000 W"),
        }
    }
}

impl std::error::Error for HeatLoadError {}

/// Heat to be supplied (positive) or taken away (negative) in steady state.
///
/// Sun on the body, heat kept in its mass, and the moisture a cooler takes out of the air are left out: give the sun
/// as a gain.
///
/// # Errors
/// An area, U value, air flow, temperature or gain out of range.
pub fn heat_load(
    surfaces: &[Surface],
    fresh_air: VolumeRate,
    inside: ThermodynamicTemperature,
    outside: ThermodynamicTemperature,
    gains: Power,
) -> Result<HeatLoad, HeatLoadError> {
    let air_m3_h = fresh_air.get::<cubic_meter_per_hour>();
    let (inner, outer) = (inside.get::<degree_celsius>(), outside.get::<degree_celsius>());
    let gains_w = gains.get::<watt>();
    let celsius = -60.0..=80.0;
    if !(0.0..=10_000.0).contains(&air_m3_h) {
        return Err(HeatLoadError::FreshAir);
    }
    if !celsius.contains(&inner) {
        return Err(HeatLoadError::Inside);
    }
    if !celsius.contains(&outer) {
        return Err(HeatLoadError::Outside);
    }
    if !(0.0..=100_000.0).contains(&gains_w) {
        return Err(HeatLoadError::Gains);
    }

    let mut watts = Vec::with_capacity(surfaces.len());
    for (at, surface) in surfaces.iter().enumerate() {
        let area = surface.area.get::<square_meter>();
        let u = surface.u.get::<watt_per_square_meter_kelvin>();
        if !(0.0..=10_000.0).contains(&area) {
            return Err(HeatLoadError::Area(at));
        }
        if !(0.0..=20.0).contains(&u) {
            return Err(HeatLoadError::Transmittance(at));
        }
        watts.push(u * area * (inner - outer));
    }
    let air_w = AIR_WH_M3_K * air_m3_h * (inner - outer);
    let total = watts.iter().sum::<f64>() + air_w - gains_w;
    Ok(HeatLoad {
        surfaces: watts.into_iter().map(Power::new::<watt>).collect(),
        fresh_air: Power::new::<watt>(air_w),
        total: Power::new::<watt>(total),
    })
}

/// Sun through glass, for an area up to 10 000 m², a share let in and lit of 0 to 1, and radiation on the lit part of
/// 0 to 1400 W/m²; none beyond these.
pub fn solar_gain(area: Area, share: f64, sun_w_m2: f64) -> Power {
    let square_metres = area.get::<square_meter>();
    let known = (0.0..=10_000.0).contains(&square_metres)
        && (0.0..=1.0).contains(&share)
        && (0.0..=1400.0).contains(&sun_w_m2);
    Power::new::<watt>(if known { square_metres * share * sun_w_m2 } else { 0.0 })
}

/// What a cooler or a heat pump draws to move heat: heat over its coefficient of performance, 0.5 to 10; a US energy
/// efficiency ratio in Btu/(W h) is 3.412 times that. None for a coefficient or a heat (100 kW) out of range.
pub fn electrical_use(heat: Power, coefficient_of_performance: f64) -> Option<Power> {
    let watts = heat.get::<watt>().abs();
    ((0.5..=10.0).contains(&coefficient_of_performance) && watts <= 100_000.0)
        .then(|| Power::new::<watt>(watts / coefficient_of_performance))
}

/// Power in Btu (International Table) per hour, as heaters and coolers are sold in the US.
pub fn btu_per_hour(power: Power) -> f64 {
    power.get::<watt>() * 3600.0 / JOULES_PER_BTU
}

/// The Btu of the International Table, J.
const JOULES_PER_BTU: f64 = 1_055.055_852_62;

#[cfg(test)]
mod density_tests {
    use super::*;

    // Dry air at 101 325 Pa by the ideal gas law, 287.05 J/(kg K): 1.2041 kg/m³ at 20 °C, 1.3945 at -20 °C.
    #[test]
    fn cold_air_is_denser() {
        let at = |c| air_density_share(ThermodynamicTemperature::new::<degree_celsius>(c)) * 1.2;
        assert!((at(20.0) - 1.2041).abs() < 5e-4 && (at(-20.0) - 1.3945).abs() < 5e-4);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::any_number;
    use proptest::prelude::*;

    fn at(celsius: f64) -> ThermodynamicTemperature {
        ThermodynamicTemperature::new::<degree_celsius>(celsius)
    }

    fn surface(area: f64, u: f64) -> Surface {
        Surface {
            area: Area::new::<square_meter>(area),
            u: HeatTransfer::new::<watt_per_square_meter_kelvin>(u),
        }
    }

    fn air(m3_h: f64) -> VolumeRate {
        VolumeRate::new::<cubic_meter_per_hour>(m3_h)
    }

    fn watts(value: f64) -> Power {
        Power::new::<watt>(value)
    }

    // Plain arithmetic outside this program: 20 m² of 0.7 at 25 K, 7.5 m² of 1.2 at 20 K, 15 m³/h at 25 K.
    #[test]
    fn transmission_and_fresh_air_by_arithmetic() {
        let wall =
            heat_load(&[surface(20.0, 0.7)], air(15.0), at(20.0), at(-5.0), watts(0.0)).unwrap();
        assert!((wall.surfaces[0].get::<watt>() - 350.0).abs() < 1e-9);
        assert!((btu_per_hour(wall.surfaces[0]) - 1194.25).abs() < 0.001);
        assert!((wall.fresh_air.get::<watt>() - 125.625).abs() < 1e-9);
        assert!((wall.total.get::<watt>() - 475.625).abs() < 1e-9);

        let floor =
            heat_load(&[surface(7.5, 1.2)], air(0.0), at(20.0), at(0.0), watts(0.0)).unwrap();
        assert!((floor.total.get::<watt>() - 180.0).abs() < 1e-9);
        assert!((btu_per_hour(floor.total) - 614.185).abs() < 0.001);
    }

    #[test]
    fn gains_help_in_winter_and_hurt_in_summer() {
        let at_noon =
            heat_load(&[surface(10.0, 1.0)], air(0.0), at(25.0), at(35.0), watts(300.0)).unwrap();
        assert!((at_noon.total.get::<watt>() + 400.0).abs() < 1e-9);
        let at_night =
            heat_load(&[surface(10.0, 1.0)], air(0.0), at(20.0), at(-10.0), watts(100.0)).unwrap();
        assert!((at_night.total.get::<watt>() - 200.0).abs() < 1e-9);
    }

    #[test]
    fn a_cooler_draws_a_third_of_the_heat_at_a_coefficient_of_three() {
        let drawn = electrical_use(watts(-1500.0), 3.0).unwrap();
        assert!((drawn.get::<watt>() - 500.0).abs() < 1e-9);
        assert_eq!(electrical_use(watts(-1500.0), 0.0), None);
        assert_eq!(electrical_use(watts(f64::NAN), 3.0), None);
    }

    proptest! {
        #[test]
        fn any_numbers_give_finite_watts_or_an_error(
            a in any_number(), u in any_number(), v in any_number(), inner in any_number(), gain in any_number(),
        ) {
            let found = heat_load(&[surface(a, u)], air(v), at(inner), at(0.0), watts(gain));
            if let Ok(found) = found {
                prop_assert!(found.total.value.is_finite() && btu_per_hour(found.total).is_finite());
            }
        }
    }
}
