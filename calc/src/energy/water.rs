//! Fresh water aboard: how long it lasts and what it weighs.

use std::fmt;

use uom::si::f64::{Length, Mass, Time, Volume, VolumeRate};
use uom::si::length::meter;
use uom::si::mass::kilogram;
use uom::si::time::minute;
use uom::si::volume::liter;
use uom::si::volume_rate::liter_per_minute;

use crate::source::Source;

/// Days a tank lasts.
pub const DAYS: Source = Source::identity("usable water over what all use in a day");
/// Density of water at 20 °C.
pub const DENSITY: Source = Source::from_memory(
    "CRC Handbook of Chemistry and Physics",
    "density of water at 20 °C, 998 kg/m³",
);

/// Density of water at 20 °C, kg/l.
pub const WATER_KG_L: f64 = 0.998;

/// Fall of a drain of up to 2 1/2 in: 1/4 in a foot.
pub const DRAIN_FALL: f64 = 0.25 / 12.0;
/// Where the fall of drains is set.
pub const DRAIN: Source =
    Source::from_memory("International Plumbing Code", "table 704.1, 1/4 in a foot");

/// A tank and those who drink from it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Supply {
    /// People aboard, 1 to 100.
    pub people: f64,
    /// Use of each in a day, 0.01 to 1000 l.
    pub use_each: Volume,
    /// Tank, 0.1 to 100 000 l.
    pub tank: Volume,
    /// Share of the tank that cannot be drawn, 0 to below 1.
    pub dead_share: f64,
}

/// How long a tank lasts, and its weight.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Store {
    /// Days until it is drawn empty.
    pub days: f64,
    /// Mass of the water in a full tank.
    pub mass: Mass,
}

/// Why there is no answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WaterError {
    /// The people are out of range.
    People,
    /// The use is out of range.
    Use,
    /// The tank is out of range.
    Tank,
    /// The share that stays behind is out of range.
    DeadShare,
    /// The pump's flow is out of range.
    Flow,
    /// The drain's length or fall is out of range.
    Drain,
}

impl fmt::Display for WaterError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::People => "the people must be from 1 to 100",
            Self::Use => "the use must be from 0.01 to 1000 litres a person and day",
            Self::Tank => "the tank must be from 0.1 to 100 000 litres",
            Self::DeadShare => {
                "the share that stays in the tank must be from 0 to below 100 percent"
            }
            Self::Flow => "the pump's flow must be from 0.1 to 1000 litres a minute",
            Self::Drain => "the drain must be from 0 to 50 m long and fall from 0 to 100 percent",
        })
    }
}

impl std::error::Error for WaterError {}

/// Days and mass of a full tank.
///
/// # Errors
/// A figure of the supply out of range.
pub fn store(supply: Supply) -> Result<Store, WaterError> {
    let (each_l, tank_l) = (supply.use_each.get::<liter>(), supply.tank.get::<liter>());
    if !(1.0..=100.0).contains(&supply.people) {
        return Err(WaterError::People);
    }
    if !(0.01..=1000.0).contains(&each_l) {
        return Err(WaterError::Use);
    }
    if !(0.1..=100_000.0).contains(&tank_l) {
        return Err(WaterError::Tank);
    }
    if !(0.0..1.0).contains(&supply.dead_share) {
        return Err(WaterError::DeadShare);
    }
    Ok(Store {
        days: tank_l * (1.0 - supply.dead_share) / (each_l * supply.people),
        mass: Mass::new::<kilogram>(tank_l * WATER_KG_L),
    })
}

/// How long a pump runs in a day to bring what is used.
///
/// # Errors
/// The day's use above 100 000 l, or the pump's flow outside 0.1 to 1000 l/min.
pub fn pump_time(day: Volume, flow: VolumeRate) -> Result<Time, WaterError> {
    let (litres, litres_min) = (day.get::<liter>(), flow.get::<liter_per_minute>());
    if !(0.0..=100_000.0).contains(&litres) {
        return Err(WaterError::Use);
    }
    if !(0.1..=1000.0).contains(&litres_min) {
        return Err(WaterError::Flow);
    }
    Ok(Time::new::<minute>(litres / litres_min))
}

/// How much lower the end of a drain lies than its start, at a fall such as [`DRAIN_FALL`].
///
/// # Errors
/// The drain longer than 50 m, or the fall outside 0 to 1.
pub fn drain_drop(length: Length, fall: f64) -> Result<Length, WaterError> {
    if !(0.0..=50.0).contains(&length.get::<meter>()) || !(0.0..=1.0).contains(&fall) {
        return Err(WaterError::Drain);
    }
    Ok(length * fall)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::any_number;
    use proptest::prelude::*;

    fn supply(people: f64, each: f64, tank: f64, dead_share: f64) -> Supply {
        let litres = |value| Volume::new::<liter>(value);
        Supply { people, use_each: litres(each), tank: litres(tank), dead_share }
    }

    #[test]
    fn two_people_on_seventy_litres() {
        let found = store(supply(2.0, 6.0, 70.0, 0.05)).unwrap();
        assert!((found.days - 66.5 / 12.0).abs() < 1e-12);
        assert!((found.mass.get::<kilogram>() - 69.86).abs() < 1e-9);
    }

    #[test]
    fn pump_and_drain_by_arithmetic() {
        let litres = Volume::new::<liter>(12.0);
        let time = pump_time(litres, VolumeRate::new::<liter_per_minute>(8.0)).unwrap();
        assert!((time.get::<minute>() - 1.5).abs() < 1e-12);
        let drop = drain_drop(Length::new::<uom::si::length::foot>(6.0), DRAIN_FALL).unwrap();
        assert!((drop.get::<uom::si::length::inch>() - 1.5).abs() < 1e-12);
    }

    proptest! {
        #[test]
        fn any_numbers_give_finite_days_or_an_error(
            p in any_number(), u in any_number(), t in any_number(), d in any_number(),
        ) {
            if let Ok(found) = store(supply(p, u, t, d)) {
                prop_assert!(found.days.is_finite() && found.mass.value.is_finite());
            }
            if let Ok(time) = pump_time(Volume::new::<liter>(p), VolumeRate::new::<liter_per_minute>(u)) {
                prop_assert!(time.value.is_finite());
            }
            if let Ok(drop) = drain_drop(Length::new::<meter>(t), d) {
                prop_assert!(drop.value.is_finite());
            }
        }
    }
}
