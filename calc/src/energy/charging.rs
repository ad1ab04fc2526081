//! How long shore power, an alternator or panels take to fill a battery.

use std::fmt;

use uom::si::energy::watt_hour;
use uom::si::f64::{Energy, Power, Time};
use uom::si::power::watt;
use uom::si::time::hour;

use crate::formula::{Formula as _, formula};
use crate::source::Source;
use crate::words::{Msg, energy as words};

/// Time is energy over power.
pub static TIME_TO_FULL: Source = Source::identity_of(words::SOURCE_FULL);

/// How a lead-acid battery takes its last fifth.
pub static TAPER: Source = Source::practice_of(words::SOURCE_TAPER);
/// What stays in a battery of what is charged.
pub static KEPT: Source = Source::practice_of(words::SOURCE_KEPT);

formula! {
    /// How long a steady power takes to bring a share of the capacity.
    TimeToFull: "t = C · u / (P · η)", &TIME_TO_FULL;
    |of| Time::new::<hour>((of.capacity * of.share).get::<watt_hour>() / (of.power.get::<watt>() * of.efficiency)) => Time as spell;
    /// Of the battery.
    "C" as watt_hours: capacity: Energy,
    /// What is missing of it.
    "u" as share: share: f64,
    /// At the battery.
    "P" as watts: power: Power,
    /// What stays of the charge.
    "η" as share: efficiency: f64,
}

formula! {
    /// The same for a lead-acid battery, which takes less and less over its last fifth.
    TimeToFullLeadAcid: "t = C · u₁ / (P · η) + C · u₂ / (P · η − P₁) · ln(P · η / P₁)", &TAPER;
    |of| {
        let (full, end) = (of.power.get::<watt>() * of.efficiency, of.end.get::<watt>());
        let last = (of.capacity * of.last).get::<watt_hour>();
        let first = (of.capacity * of.first).get::<watt_hour>();
        Time::new::<hour>(first / full + last / (full - end) * libm::log(full / end))
    } => Time as spell;
    /// Of the battery.
    "C" as watt_hours: capacity: Energy,
    /// Missing up to 80 %.
    "u₁" as share: first: f64,
    /// Missing of the last fifth.
    "u₂" as share: last: f64,
    /// At the battery.
    "P" as watts: power: Power,
    /// What stays of the charge.
    "η" as share: efficiency: f64,
    /// What it takes where it counts as full.
    "P₁" as watts: end: Power,
}

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

impl ChargingError {
    /// What is wrong, as a message.
    pub fn told(self) -> Msg {
        match self {
            Self::Missing => words::MISSING_RANGE.into(),
            Self::Power => words::CHARGE_POWER_RANGE.into(),
            Self::BatteryLimit => words::CHARGE_LIMIT_RANGE.into(),
            Self::Efficiency => words::CHARGE_EFFICIENCY_RANGE.into(),
        }
    }
}

impl fmt::Display for ChargingError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.told().fmt(f)
    }
}

impl std::error::Error for ChargingError {}

/// Time to bring a share of a capacity into the battery, at the charger's power or the battery's limit, whichever is
/// less.
///
/// At least this long: towards the end every battery takes less, lead-acid for hours.
///
/// # Errors
/// A figure out of range.
pub fn time_to_full(
    capacity: Energy,
    share: f64,
    charging: Charging,
) -> Result<TimeToFull, ChargingError> {
    let power = 0.1..=100_000.0;
    let (charger, limit) = (charging.power.get::<watt>(), charging.battery_limit.get::<watt>());
    let missing_wh = (capacity * share).get::<watt_hour>();
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
    let power = Power::new::<watt>(charger.min(limit));
    Ok(TimeToFull { capacity, share, power, efficiency: charging.efficiency })
}

/// As [`time_to_full`] for a lead-acid battery: full current up to 80 %, then falling off exponentially. What is missing
/// of the last fifth, E, takes E / (P₀ − P₁) · ln(P₀ / P₁), from the power P₀ that the charging brings to P₁, a fiftieth
/// of the capacity an hour; where the charging brings no more than that, or nothing is missing, it is the same time.
///
/// # Errors
/// A figure out of range.
pub fn time_to_full_lead_acid(
    capacity: Energy,
    share: f64,
    charging: Charging,
) -> Result<ToFull, ChargingError> {
    let all = time_to_full(capacity, share, charging)?;
    if !(0.0..=1.0).contains(&share) || capacity.get::<watt_hour>() > 1e6 {
        return Err(ChargingError::Missing);
    }
    let last = share.min(1.0 - TAPER_FROM);
    let end = Power::new::<watt>(TAPER_END * capacity.get::<watt_hour>());
    let TimeToFull { power, efficiency, .. } = all;
    if power * efficiency <= end || last * capacity.value <= 0.0 {
        return Ok(ToFull::Steady(all));
    }
    Ok(ToFull::Tapering(TimeToFullLeadAcid {
        capacity,
        first: share - last,
        last,
        power,
        efficiency,
        end,
    }))
}

/// How long a battery takes to full.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum ToFull {
    /// At one power all the time.
    Steady(TimeToFull),
    /// With less and less at the end.
    Tapering(TimeToFullLeadAcid),
}

impl ToFull {
    /// The time.
    pub fn time(&self) -> Time {
        match self {
            Self::Steady(steady) => steady.value(),
            Self::Tapering(tapering) => tapering.value(),
        }
    }
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
        time_to_full(Energy::new::<watt_hour>(missing), 1.0, charging)
            .map(|full| full.value().get::<hour>())
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
        let (all, missing) = (Energy::new::<watt_hour>(1200.0), 0.5);
        let found =
            time_to_full_lead_acid(all, missing, charging(120.0, 500.0, 1.0)).unwrap().time();
        assert!((found.get::<hour>() - 7.023_594_8).abs() < 1e-6, "{found:?}");
        // A trickle never tapers.
        let trickle =
            time_to_full_lead_acid(all, missing, charging(20.0, 500.0, 1.0)).unwrap().time();
        assert!((trickle.get::<hour>() - 30.0).abs() < 1e-9);
    }

    proptest! {
        #[test]
        fn lead_acid_never_fills_faster(
            missing in 0.0..1000.0_f64, more in 0.0..1000.0_f64, power in 0.1..5000.0_f64, efficiency in 0.01..1.0_f64,
        ) {
            let wh = |value| Energy::new::<watt_hour>(value);
            let charging = charging(power, 2000.0, efficiency);
            let share = missing / (missing + more).max(1e-9);
            let plain = time_to_full(wh(missing + more), share, charging).unwrap().value();
            let lead = time_to_full_lead_acid(wh(missing + more), share, charging).unwrap().time();
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
