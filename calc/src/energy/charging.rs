//! How long shore power, an alternator or panels take to fill a battery.

use std::fmt;

use uom::si::energy::watt_hour;
use uom::si::f64::{Energy, Power, Time};
use uom::si::power::watt;
use uom::si::time::hour;

use crate::source::Source;

/// Time is energy over power.
pub const TIME_TO_FULL: Source =
    Source::identity("missing energy over charging power times charging efficiency");

/// How a lead-acid battery takes its last fifth.
pub const TAPER: Source = Source::common_practice(
    "lead-acid takes full current to 80 %, then less and less, down to a fiftieth of its capacity an hour",
);

/// Where a lead-acid battery starts to take less, and the rate that counts as full: shares of its capacity, and of its
/// capacity an hour.
const TAPER_FROM: f64 = 0.8;
const TAPER_END: f64 = 0.02;

/// What charges a battery.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Charging {
    /// Power of charger, alternator or panels at the battery, 0.1 W to 100 kW.
    pub power: Power,
    /// The most the battery may be charged with, by its maker; 0.1 W to 100 kW.
    pub battery_limit: Power,
    /// Share of the charge that stays in the battery, 0.01 to 1: about 0.95 for lithium, 0.85 for lead-acid.
    pub efficiency: f64,
}

/// Why there is no time.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ChargingError {
    /// The missing energy is out of range.
    Missing,
    /// The charging power is out of range.
    Power,
    /// The battery's limit is out of range.
    BatteryLimit,
    /// The efficiency is out of range.
    Efficiency,
}

impl fmt::Display for ChargingError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Missing => "the missing energy must be from 0 to 1 000 000 Wh",
            Self::Power => "the charging power must be from 0.1 to 100 000 W",
            Self::BatteryLimit => {
                "the most the battery may be charged with must be from 0.1 to 100 000 W"
            }
            Self::Efficiency => "the charging efficiency must be from 1 to 100 percent",
        })
    }
}

impl std::error::Error for ChargingError {}

/// Time to bring the missing energy into the battery, at the charger's power or the battery's limit, whichever is less.
///
/// At least this long: towards the end every battery takes less, lead-acid for hours.
///
/// # Errors
/// A figure out of range.
pub fn time_to_full(missing: Energy, charging: Charging) -> Result<Time, ChargingError> {
    let power = 0.1..=100_000.0;
    let (charger, limit) = (charging.power.get::<watt>(), charging.battery_limit.get::<watt>());
    let missing_wh = missing.get::<watt_hour>();
    if !(0.0..=1e6).contains(&missing_wh) {
        return Err(ChargingError::Missing);
    }
    if !power.contains(&charger) {
        return Err(ChargingError::Power);
    }
    if !power.contains(&limit) {
        return Err(ChargingError::BatteryLimit);
    }
    if !(0.01..=1.0).contains(&charging.efficiency) {
        return Err(ChargingError::Efficiency);
    }
    Ok(Time::new::<hour>(missing_wh / (charger.min(limit) * charging.efficiency)))
}

/// As [`time_to_full`] for a lead-acid battery of the given capacity: full current up to 80 %, then falling off
/// exponentially. What is missing of the last fifth, E, takes E / (P₀ − P₁) · ln(P₀ / P₁), from the power P₀ that the
/// charging brings to P₁, a fiftieth of the capacity an hour.
///
/// # Errors
/// A figure out of range.
pub fn time_to_full_lead_acid(
    missing: Energy,
    capacity: Energy,
    charging: Charging,
) -> Result<Time, ChargingError> {
    let all = time_to_full(missing, charging)?;
    let (missing_wh, capacity_wh) = (missing.get::<watt_hour>(), capacity.get::<watt_hour>());
    if !(missing_wh..=1e6).contains(&capacity_wh) {
        return Err(ChargingError::Missing);
    }
    let last_wh = missing_wh.min((1.0 - TAPER_FROM) * capacity_wh);
    let lesser = if charging.battery_limit < charging.power {
        charging.battery_limit
    } else {
        charging.power
    };
    let full = lesser.get::<watt>() * charging.efficiency;
    let end = TAPER_END * capacity_wh;
    if full <= end || last_wh <= 0.0 {
        return Ok(all);
    }
    let last_h = last_wh / (full - end) * libm::log(full / end);
    Ok(Time::new::<hour>((missing_wh - last_wh) / full + last_h))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::any_number;
    use proptest::prelude::*;

    fn charging(power: f64, limit: f64, efficiency: f64) -> Charging {
        let watts = |value| Power::new::<watt>(value);
        Charging { power: watts(power), battery_limit: watts(limit), efficiency }
    }

    fn hours(missing: f64, charging: Charging) -> Result<f64, ChargingError> {
        time_to_full(Energy::new::<watt_hour>(missing), charging).map(|time| time.get::<hour>())
    }

    #[test]
    fn the_smaller_of_charger_and_limit_sets_the_pace() {
        assert_eq!(hours(950.0, charging(500.0, 1280.0, 0.95)), Ok(2.0));
        assert_eq!(hours(950.0, charging(500.0, 250.0, 0.95)), Ok(4.0));
        assert_eq!(hours(0.0, charging(500.0, 250.0, 0.95)), Ok(0.0));
        assert_eq!(hours(1.0, charging(0.0, 250.0, 0.95)), Err(ChargingError::Power));
    }

    // Arithmetic: 1200 Wh half empty at 120 W kept: 360 Wh in 3 h, then 240 Wh / (120 - 24) ln 5 = 4.0236 h.
    #[test]
    fn lead_acid_takes_longer_over_its_last_fifth() {
        let (missing, all) = (Energy::new::<watt_hour>(600.0), Energy::new::<watt_hour>(1200.0));
        let found = time_to_full_lead_acid(missing, all, charging(120.0, 500.0, 1.0)).unwrap();
        assert!((found.get::<hour>() - 7.023_594_8).abs() < 1e-6, "{found:?}");
        // A trickle never tapers.
        let trickle = time_to_full_lead_acid(missing, all, charging(20.0, 500.0, 1.0)).unwrap();
        assert!((trickle.get::<hour>() - 30.0).abs() < 1e-9);
    }

    proptest! {
        #[test]
        fn lead_acid_never_fills_faster(
            missing in 0.0..1000.0_f64, more in 0.0..1000.0_f64, power in 0.1..5000.0_f64, efficiency in 0.01..1.0_f64,
        ) {
            let wh = |value| Energy::new::<watt_hour>(value);
            let charging = charging(power, 2000.0, efficiency);
            let plain = time_to_full(wh(missing), charging).unwrap();
            let lead = time_to_full_lead_acid(wh(missing), wh(missing + more), charging).unwrap();
            prop_assert!(lead.value.is_finite() && lead.value >= plain.value * (1.0 - 1e-9));
        }

        #[test]
        fn any_numbers_give_finite_hours_or_an_error(
            missing in any_number(), power in any_number(), limit in any_number(), efficiency in any_number(),
        ) {
            if let Ok(hours) = hours(missing, charging(power, limit, efficiency)) {
                prop_assert!(hours.is_finite() && hours >= 0.0);
            }
        }
    }
}
