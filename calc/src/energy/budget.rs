//! A day's use of electricity and the battery and panels that cover it.

use std::fmt;

use uom::si::electric_charge::ampere_hour;
use uom::si::electric_potential::volt;
use uom::si::energy::watt_hour;
use uom::si::f64::{ElectricCharge, ElectricPotential, Energy, Power, Time};
use uom::si::power::watt;
use uom::si::time::hour;

use crate::formula::{Formula as _, formula};
use crate::source::Source;
use crate::words::{Msg, energy as words};

/// Energy and charge of a day, size of battery and panels.
pub const BUDGET: Source =
    Source::from_memory("IEEE 1013; IEEE 1562", "method in outline: E = sum(P t)");
/// P = U I.
pub static OHM: Source = Source::identity_of(words::SOURCE_OHM);
/// Losses of a panel installation, each a share, combined as 1 - product(1 - loss).
pub const PANEL_LOSSES: Source = Source::transcribed("NREL/TP-6A20-62641", "system losses");

/// One load of a day.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Load {
    /// Power while it draws, 0 to 100 kW.
    pub power: Power,
    /// Time switched on in a day, 0 to 24 h.
    pub time: Time,
    /// Share of that time in which it draws, 0 to 1; 1 for a lamp, about 0.4 for a fridge.
    pub duty: f64,
}

/// How a battery is to carry the loads.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Demand {
    /// Nominal voltage of the battery, 1 to 1000 V.
    pub voltage: ElectricPotential,
    /// Days without charging, 0.01 to 365.
    pub days: f64,
    /// Share of the capacity that may be used, 0.01 to 1.
    pub usable: f64,
    /// What of the stored energy reaches the loads, 0.01 to 1.
    pub efficiency: f64,
}

/// A day's use and the battery for it.
#[derive(Clone, Debug, PartialEq)]
pub struct Budget {
    /// Each load's energy in a day, in the order given.
    pub loads: Vec<Energy>,
    /// All loads in a day.
    pub day: Energy,
    /// The same as charge at the nominal voltage.
    pub day_charge: AsCharge,
    /// Nominal capacity of the battery that carries the days.
    pub needed: BatterySize,
    /// The same as charge at the nominal voltage.
    pub needed_charge: AsCharge,
}

formula! {
    /// What a load uses in a day.
    DayUse: "E = P · t · d", &BUDGET;
    |of| Energy::new::<watt_hour>(of.power.get::<watt>() * of.time.get::<hour>() * of.duty) => Energy as day_energy;
    /// While it draws.
    "P" as exact_watts: power: Power,
    /// Switched on, in a day.
    "t" as exact_hours: time: Time,
    /// Share of that time that it draws.
    "d" as share: duty: f64,
}

formula! {
    /// Energy as charge at the nominal voltage.
    AsCharge: "Q = E / U", &OHM;
    |of| ElectricCharge::new::<ampere_hour>(of.energy.get::<watt_hour>() / of.voltage.get::<volt>()) => ElectricCharge as ampere_hours;
    /// The energy.
    "E" as day_energy: energy: Energy,
    /// Nominal.
    "U" as volts: voltage: ElectricPotential,
}

formula! {
    /// Nominal capacity of the battery that carries the days.
    BatterySize: "C = E · n / (u · η)", &BUDGET;
    |of| Energy::new::<watt_hour>(of.day.get::<watt_hour>() * of.days / (of.usable * of.efficiency)) => Energy as day_energy;
    /// All loads in a day.
    "E" as day_energy: day: Energy,
    /// Days without charging.
    "n" as hundredths: days: f64,
    /// Usable share.
    "u" as share: usable: f64,
    /// Share that reaches the loads.
    "η" as share: efficiency: f64,
}

formula! {
    /// How long a battery carries the day's average load.
    Runtime: "t = C · u · η · 24 h / E", &BUDGET;
    |of| Time::new::<hour>(of.capacity.get::<watt_hour>() * of.usable * of.efficiency * 24.0 / of.day.get::<watt_hour>()) => Time as spell;
    /// Of the battery.
    "C" as day_energy: capacity: Energy,
    /// Usable share.
    "u" as share: usable: f64,
    /// Share that reaches the loads.
    "η" as share: efficiency: f64,
    /// All loads in a day.
    "E" as day_energy: day: Energy,
}

/// Why there is no budget.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum BudgetError {
    /// A load's power is out of range; loads count from 0.
    Power(usize),
    /// A load's time is out of range; loads count from 0.
    Time(usize),
    /// A load's duty is out of range; loads count from 0.
    Duty(usize),
    /// The nominal voltage is out of range.
    Voltage,
    /// The days are out of range.
    Days,
    /// The usable share is out of range.
    Usable,
    /// The efficiency is out of range.
    Efficiency,
    /// The battery's energy is out of range.
    Capacity,
    /// A loss is out of range; losses count from 0.
    Loss(usize),
    /// The hours of full sun are out of range.
    Sun,
}

impl BudgetError {
    /// What is wrong, as a message.
    pub fn told(self) -> Msg {
        match self {
            Self::Power(at) => words::LoadPowerRange { load: at + 1 }.into(),
            Self::Time(at) => words::LoadTimeRange { load: at + 1 }.into(),
            Self::Duty(at) => words::LoadDutyRange { load: at + 1 }.into(),
            Self::Voltage => words::VOLTAGE_RANGE.into(),
            Self::Days => words::DAYS_RANGE.into(),
            Self::Usable => words::USABLE_RANGE.into(),
            Self::Efficiency => words::EFFICIENCY_RANGE.into(),
            Self::Capacity => words::ENERGY_RANGE.into(),
            Self::Loss(at) => words::LossRange { loss: at + 1 }.into(),
            Self::Sun => words::SUN_RANGE.into(),
        }
    }
}

impl fmt::Display for BudgetError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.told().fmt(f)
    }
}

impl std::error::Error for BudgetError {}

/// A day's use, E = sum(P t duty), and the battery for it, C = E days / (usable x efficiency).
///
/// # Errors
/// A load or a figure of the demand out of range.
pub fn budget(loads: &[Load], demand: Demand) -> Result<Budget, BudgetError> {
    let volts = demand.voltage.get::<volt>();
    if !(1.0..=1000.0).contains(&volts) {
        return Err(BudgetError::Voltage);
    }
    if !(0.01..=365.0).contains(&demand.days) {
        return Err(BudgetError::Days);
    }
    if !SHARE.contains(&demand.usable) {
        return Err(BudgetError::Usable);
    }
    if !SHARE.contains(&demand.efficiency) {
        return Err(BudgetError::Efficiency);
    }
    let each = loads
        .iter()
        .enumerate()
        .map(|(at, load)| day_wh(at, load))
        .collect::<Result<Vec<f64>, BudgetError>>()?;
    let day: f64 = each.iter().sum();
    let day = Energy::new::<watt_hour>(day);
    let Demand { voltage, days, usable, efficiency } = demand;
    let needed = BatterySize { day, days, usable, efficiency };
    Ok(Budget {
        loads: each.into_iter().map(Energy::new::<watt_hour>).collect(),
        day,
        day_charge: AsCharge { energy: day, voltage },
        needed,
        needed_charge: AsCharge { energy: needed.value(), voltage },
    })
}

/// How long a battery carries the average load of the day; none where nothing draws, or for longer than a century.
///
/// # Errors
/// Capacity, usable share or efficiency out of range.
pub fn runtime(
    capacity: Energy,
    usable: f64,
    efficiency: f64,
    day: Energy,
) -> Result<Option<Runtime>, BudgetError> {
    let stored = capacity.get::<watt_hour>();
    if !(stored > 0.0 && stored <= 1e6) {
        return Err(BudgetError::Capacity);
    }
    if !SHARE.contains(&usable) {
        return Err(BudgetError::Usable);
    }
    if !SHARE.contains(&efficiency) {
        return Err(BudgetError::Efficiency);
    }
    let runtime = Runtime { capacity, usable, efficiency, day };
    let hours = runtime.value().get::<hour>();
    Ok((hours > 0.0 && hours <= CENTURY_H).then_some(runtime))
}

/// Rated power of panels that yield a day's energy, P = E / (sun hours x (1 - loss)).
///
/// # Errors
/// The hours of full sun, the loss or the day's energy out of range.
pub fn panels_for(day: Energy, sun: Time, loss: f64) -> Result<Power, BudgetError> {
    let hours = sun.get::<hour>();
    if !(hours > 0.01 && hours <= 24.0) {
        return Err(BudgetError::Sun);
    }
    if !(0.0..=0.99).contains(&loss) {
        return Err(BudgetError::Loss(0));
    }
    let wh = day.get::<watt_hour>();
    if !(0.0..=1e7).contains(&wh) {
        return Err(BudgetError::Capacity);
    }
    Ok(Power::new::<watt>(wh / (hours * (1.0 - loss))))
}

/// Independent losses taken together: 1 - product(1 - loss).
///
/// # Errors
/// A loss out of range.
pub fn combined_loss(losses: &[f64]) -> Result<f64, BudgetError> {
    let mut kept = 1.0;
    for (at, loss) in losses.iter().enumerate() {
        if !(0.0..1.0).contains(loss) {
            return Err(BudgetError::Loss(at));
        }
        kept *= 1.0 - loss;
    }
    Ok(1.0 - kept)
}

/// Usual losses of a panel installation with their names: soiling, shading, snow, mismatch, wiring, connections,
/// first light, nameplate, age, availability ([`PANEL_LOSSES`]).
pub static USUAL_LOSSES: [(&str, f64); 10] = [
    ("soiling", 0.02),
    ("shading", 0.03),
    ("snow", 0.0),
    ("mismatch", 0.02),
    ("wiring", 0.02),
    ("connections", 0.005),
    ("first light", 0.015),
    ("nameplate", 0.01),
    ("age", 0.0),
    ("availability", 0.03),
];

const SHARE: std::ops::RangeInclusive<f64> = 0.01..=1.0;
const CENTURY_H: f64 = 876_600.0;

fn day_wh(at: usize, load: &Load) -> Result<f64, BudgetError> {
    let (watts, hours) = (load.power.get::<watt>(), load.time.get::<hour>());
    if !(0.0..=100_000.0).contains(&watts) {
        return Err(BudgetError::Power(at));
    }
    if !(0.0..=24.0 + 1e-9).contains(&hours) {
        return Err(BudgetError::Time(at));
    }
    if !(0.0..=1.0).contains(&load.duty) {
        return Err(BudgetError::Duty(at));
    }
    Ok(watts * hours * load.duty)
}

#[cfg(test)]
mod tests;
