//! Heat that a body loses or takes up: through its surfaces and with the fresh air.

use uom::si::area::square_meter;
use uom::si::f64::{Area, HeatTransfer, Power, ThermodynamicTemperature, VolumeRate};
use uom::si::heat_transfer::watt_per_square_meter_kelvin;
use uom::si::power::watt;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::volume_rate::cubic_meter_per_hour;

use crate::formula::{Formula, formula};
use crate::source::Source;
use crate::words::{Msg, heat_load as words};

/// Heat through surfaces in steady state.
pub static TRANSMISSION: Source = Source::identity_of(words::SOURCE_TRANSMISSION);
/// Heat carried by fresh air: 1.2 kg/m³ times 1005 J/(kg K), 0.335 Wh/(m³ K); for a flow measured in air of about
/// 20 °C ([`air_density_share`]).
pub static FRESH_AIR: Source = Source::identity_of(words::SOURCE_AIR);
/// The Btu of the International Table.
pub static BTU: Source = Source::from_memory("NIST SP 811", "1 W = 3.412142 Btu/h");

/// Sun through glass: area times its solar heat gain coefficient times the radiation on it.
pub static SOLAR_GAIN: Source = Source::identity_of(words::SOURCE_SOLAR);

/// What a cooler draws.
pub static PERFORMANCE: Source = Source::identity_of(words::SOURCE_PERFORMANCE);

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

formula! {
    /// Heat through a surface; negative flows in.
    Transmission: "Q = U · A · (θi − θe)", &TRANSMISSION;
    |of| watts(
        of.u.get::<watt_per_square_meter_kelvin>() * of.area.get::<square_meter>() * of.kelvin
    ) => Power as heat;
    /// U value, 0 to 20 W/(m² K).
    "U" as u_value: u: HeatTransfer,
    /// 0 to 10 000 m².
    "A" as area: area: Area,
    /// Warmer inside than outside by so much. [K]
    "(θi − θe)" as kelvin: kelvin: f64,
}

formula! {
    /// Heat carried out with the fresh air; negative flows in.
    AirHeat: "Q = c · V · (θi − θe)", &FRESH_AIR;
    |of| watts(of.carried * of.flow.get::<cubic_meter_per_hour>() * of.kelvin) => Power as heat;
    /// What a cubic metre carries per kelvin, such as [`AIR_WH_M3_K`]. [Wh/(m³ K)]
    "c" as air_heat: carried: f64,
    /// 0 to 10 000 m³/h.
    "V" as air_flow: flow: VolumeRate,
    /// Warmer inside than outside by so much. [K]
    "(θi − θe)" as kelvin: kelvin: f64,
}

formula! {
    /// Heat to be supplied; negative, to be taken away.
    Balance: "Q = Σ Q₁ + Q₂ − Q₃", &TRANSMISSION;
    |of| of.surfaces + of.air - of.gains => Power as heat;
    /// Through all surfaces.
    "Σ Q₁" as heat: surfaces: Power,
    /// With the fresh air.
    "Q₂" as heat: air: Power,
    /// Given off inside, 0 to 100 000 W.
    "Q₃" as heat: gains: Power,
}

formula! {
    /// Power in Btu (International Table) per hour, as heaters and coolers are sold in the US.
    InBtu: "q = Q · 3.412 Btu/(h W)", &BTU;
    |of| of.power => Power as btu;
    /// In watts.
    "Q" as watts: power: Power,
}

formula! {
    /// Sun through a window.
    SolarGain: "Q = A · g · f · I", &SOLAR_GAIN;
    |of| solar_gain(of.area, of.let_in * of.lit / 1e4, of.sun) => Power as heat;
    /// Of the glass, 0 to 10 000 m².
    "A" as area: area: Area,
    /// Share let in, 0 to 100 percent.
    "g" as percent: let_in: f64,
    /// Share in the sun, 0 to 100 percent.
    "f" as percent: lit: f64,
    /// Radiation on the lit part, 0 to 1400. [W/m²]
    "I" as radiation: sun: f64,
}

formula! {
    /// What a cooler or a heat pump draws to move heat; a US energy efficiency ratio in Btu/(W h) is 3.412 times its
    /// coefficient of performance.
    CoolerDraw: "P = Q / COP", &PERFORMANCE;
    |of| of.heat / of.performance => Power as watts;
    /// Heat moved, 0 to 100 kW.
    "Q" as watts: heat: Power,
    /// Coefficient of performance, 0.5 to 10.
    "COP" as hundredths: performance: f64,
}

/// What a body needs to be kept at its temperature.
#[derive(Clone, Debug)]
pub struct HeatLoad {
    /// Through each surface, in the order given.
    pub surfaces: Vec<Transmission>,
    /// With the fresh air.
    pub fresh_air: AirHeat,
    /// Surfaces and fresh air less the gains.
    pub total: Balance,
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

impl From<HeatLoadError> for Msg {
    fn from(error: HeatLoadError) -> Self {
        match error {
            HeatLoadError::Area(at) => words::BadArea { number: at + 1 }.into(),
            HeatLoadError::Transmittance(at) => words::BadU { number: at + 1 }.into(),
            HeatLoadError::FreshAir => words::BAD_FRESH_AIR.into(),
            HeatLoadError::Inside => words::BAD_INSIDE.into(),
            HeatLoadError::Outside => words::BAD_OUTSIDE.into(),
            HeatLoadError::Gains => words::BAD_GAINS.into(),
        }
    }
}

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

    let kelvin = inner - outer;
    let mut through = Vec::with_capacity(surfaces.len());
    for (at, Surface { area, u }) in surfaces.iter().copied().enumerate() {
        if !(0.0..=10_000.0).contains(&area.get::<square_meter>()) {
            return Err(HeatLoadError::Area(at));
        }
        if !(0.0..=20.0).contains(&u.get::<watt_per_square_meter_kelvin>()) {
            return Err(HeatLoadError::Transmittance(at));
        }
        through.push(Transmission { u, area, kelvin });
    }
    let air = AirHeat { carried: AIR_WH_M3_K, flow: fresh_air, kelvin };
    let all: f64 = through.iter().map(|one| one.value().get::<watt>()).sum();
    Ok(HeatLoad {
        surfaces: through,
        total: Balance { surfaces: watts(all), air: air.value(), gains },
        fresh_air: air,
    })
}

fn watts(watts: f64) -> Power {
    Power::new::<watt>(watts)
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

/// What a cooler draws to take a heat away; none for a coefficient or a heat out of range.
pub fn electrical_use(heat: Power, performance: f64) -> Option<CoolerDraw> {
    let heat = watts(heat.get::<watt>().abs());
    let known = (0.5..=10.0).contains(&performance) && heat.get::<watt>() <= 100_000.0;
    known.then_some(CoolerDraw { heat, performance })
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

    // Plain arithmetic outside this program: 20 m² of 0.7 at 25 K, 7.5 m² of 1.2 at 20 K, 15 m³/h at 25 K.
    #[test]
    fn transmission_and_fresh_air_by_arithmetic() {
        let wall =
            heat_load(&[surface(20.0, 0.7)], air(15.0), at(20.0), at(-5.0), watts(0.0)).unwrap();
        assert!((wall.surfaces[0].value().get::<watt>() - 350.0).abs() < 1e-9);
        assert!((btu_per_hour(wall.surfaces[0].value()) - 1194.25).abs() < 0.001);
        assert!((wall.fresh_air.value().get::<watt>() - 125.625).abs() < 1e-9);
        assert!((wall.total.value().get::<watt>() - 475.625).abs() < 1e-9);

        let floor =
            heat_load(&[surface(7.5, 1.2)], air(0.0), at(20.0), at(0.0), watts(0.0)).unwrap();
        assert!((floor.total.value().get::<watt>() - 180.0).abs() < 1e-9);
        assert!((btu_per_hour(floor.total.value()) - 614.185).abs() < 0.001);
    }

    #[test]
    fn gains_help_in_winter_and_hurt_in_summer() {
        let at_noon =
            heat_load(&[surface(10.0, 1.0)], air(0.0), at(25.0), at(35.0), watts(300.0)).unwrap();
        assert!((at_noon.total.value().get::<watt>() + 400.0).abs() < 1e-9);
        let at_night =
            heat_load(&[surface(10.0, 1.0)], air(0.0), at(20.0), at(-10.0), watts(100.0)).unwrap();
        assert!((at_night.total.value().get::<watt>() - 200.0).abs() < 1e-9);
    }

    #[test]
    fn a_cooler_draws_a_third_of_the_heat_at_a_coefficient_of_three() {
        let drawn = electrical_use(watts(-1500.0), 3.0).unwrap();
        assert!((drawn.value().get::<watt>() - 500.0).abs() < 1e-9);
        assert!(electrical_use(watts(-1500.0), 0.0).is_none());
        assert!(electrical_use(watts(f64::NAN), 3.0).is_none());
    }

    proptest! {
        #[test]
        fn any_numbers_give_finite_watts_or_an_error(
            a in any_number(), u in any_number(), v in any_number(), inner in any_number(), gain in any_number(),
        ) {
            let found = heat_load(&[surface(a, u)], air(v), at(inner), at(0.0), watts(gain));
            if let Ok(found) = found {
                let total = found.total.value();
                prop_assert!(total.value.is_finite() && btu_per_hour(total).is_finite());
            }
        }
    }
}
