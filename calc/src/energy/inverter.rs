//! An inverter: how large for the loads behind it, what it draws from the battery, what it loses in a day.

use std::fmt;

use uom::si::electric_potential::volt;
use uom::si::f64::{ElectricCurrent, ElectricPotential, Energy, Power, Time};
use uom::si::power::watt;
use uom::si::time::hour;

use crate::formula::{Formula as _, formula};
use crate::source::Source;
use crate::words::{Msg, energy as words};

/// Current at the battery.
pub static DC_CURRENT: Source = Source::identity_of(words::SOURCE_DC);
/// All loads at once, and the hardest start among them.
pub static STARTS: Source = Source::practice_of(words::SOURCE_STARTS);
/// Where inverters switch themselves off.
pub static CUT_OFF: Source = Source::practice_of(words::SOURCE_CUT_OFF);
/// Usual sizes.
pub static RATINGS: Source = Source::practice_of(words::SOURCE_RATINGS);

/// Continuous ratings that inverters are sold in. [W]
pub const RATINGS_W: [f64; 11] =
    [150.0, 300.0, 500.0, 1000.0, 1500.0, 2000.0, 3000.0, 4000.0, 5000.0, 8000.0, 10_000.0];

/// One load behind the inverter.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MainsLoad {
    /// While it runs, 0 to 100 kW.
    pub power: Power,
    /// For a moment as it starts, where that is more; compressors, pumps and motors.
    pub start: Option<Power>,
    /// What it uses in a day.
    pub day: Energy,
}

/// An inverter at a battery.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Inverter {
    /// Power out over power in, 0.5 to 1.
    pub efficiency: f64,
    /// What it draws with nothing plugged in, 0 to 1 kW.
    pub standby: Power,
    /// Time switched on in a day, 0 to 24 h.
    pub time_on: Time,
    /// Lowest voltage of the battery that it still runs at, 1 to 1000 V.
    pub lowest: ElectricPotential,
}

/// What the loads ask of an inverter.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ask {
    /// All loads on.
    pub continuous: Power,
    /// All loads on and the hardest start among them.
    pub surge: HardestStart,
    /// The least usual size that gives the continuous power; none beyond the list.
    pub rating_w: Option<f64>,
    /// From the battery at its lowest voltage, all loads on.
    pub current: DcCurrent,
    /// The same in the moment of the hardest start.
    pub surge_current: DcCurrent,
    /// What it takes in a day beyond what the loads use.
    pub lost: Energy,
}

formula! {
    /// All loads on and the hardest start among them.
    HardestStart: "P = Σ P + max(P_start − P)", &STARTS;
    |of| of.running + of.more => Power as watts;
    /// All loads on.
    "Σ P" as watts: running: Power,
    /// What the hardest start takes beyond that.
    "max(P_start − P)" as watts: more: Power,
}

formula! {
    /// What an inverter draws from the battery.
    DcCurrent: "I = P / (η · U)", &DC_CURRENT;
    |of| of.power / of.efficiency / of.voltage => ElectricCurrent as amperes;
    /// What its loads take.
    "P" as watts: power: Power,
    /// Power out over power in.
    "η" as share: efficiency: f64,
    /// Of the battery.
    "U" as volts: voltage: ElectricPotential,
}

/// Why there is no inverter.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum InverterError {
    /// A load is out of range; loads count from 0.
    Load(usize),
    /// The efficiency is out of range.
    Efficiency,
    /// The standby power is out of range.
    Standby,
    /// The time switched on is out of range.
    TimeOn,
    /// The lowest voltage is out of range.
    Lowest,
}

impl InverterError {
    /// What is wrong, as a message.
    pub fn told(self) -> Msg {
        match self {
            Self::Load(at) => words::InverterLoadRange { load: at + 1 }.into(),
            Self::Efficiency => words::INVERTER_EFFICIENCY_RANGE.into(),
            Self::Standby => words::STANDBY_RANGE.into(),
            Self::TimeOn => words::TIME_ON_RANGE.into(),
            Self::Lowest => words::LOWEST_RANGE.into(),
        }
    }
}

impl fmt::Display for InverterError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.told().fmt(f)
    }
}

impl std::error::Error for InverterError {}

/// What loads ask of an inverter.
///
/// # Errors
/// A load or a figure of the inverter out of range.
pub fn ask(loads: &[MainsLoad], inverter: Inverter) -> Result<Ask, InverterError> {
    let power = 0.0..=100_000.0;
    if !(0.5..=1.0).contains(&inverter.efficiency) {
        return Err(InverterError::Efficiency);
    }
    let standby_w = inverter.standby.get::<watt>();
    if !(0.0..=1000.0).contains(&standby_w) {
        return Err(InverterError::Standby);
    }
    if !(0.0..=24.0).contains(&inverter.time_on.get::<hour>()) {
        return Err(InverterError::TimeOn);
    }
    if !(1.0..=1000.0).contains(&inverter.lowest.get::<volt>()) {
        return Err(InverterError::Lowest);
    }
    let (mut continuous, mut more, mut day) = (0.0, 0.0_f64, Energy::default());
    for (at, load) in loads.iter().enumerate() {
        let runs = load.power.get::<watt>();
        let starts = load.start.map_or(runs, |start| start.get::<watt>());
        if !power.contains(&runs) || !power.contains(&starts) || !load.day.value.is_finite() {
            return Err(InverterError::Load(at));
        }
        continuous += runs;
        more = more.max(starts - runs);
        day += load.day;
    }
    let watts = Power::new::<watt>;
    let surge = HardestStart { running: watts(continuous), more: watts(more) };
    let current =
        |power| DcCurrent { power, efficiency: inverter.efficiency, voltage: inverter.lowest };
    Ok(Ask {
        continuous: watts(continuous),
        surge,
        rating_w: RATINGS_W.into_iter().find(|rating| continuous <= rating * (1.0 + 1e-9)),
        current: current(watts(continuous)),
        surge_current: current(surge.value()),
        lost: day * (1.0 / inverter.efficiency - 1.0) + inverter.standby * inverter.time_on,
    })
}

/// Where an inverter for a battery of this nominal voltage switches itself off: 10.5 V for each 12 V block.
pub fn cut_off(nominal: ElectricPotential) -> ElectricPotential {
    let volts = nominal.get::<volt>();
    let blocks = (volts / 12.4).round();
    ElectricPotential::new::<volt>(if blocks >= 1.0 { 10.5 * blocks } else { 0.85 * volts })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::any_number;
    use proptest::prelude::*;
    use uom::si::electric_current::ampere;
    use uom::si::energy::watt_hour;

    fn inverter(efficiency: f64, standby: f64, hours: f64, lowest: f64) -> Inverter {
        Inverter {
            efficiency,
            standby: Power::new::<watt>(standby),
            time_on: Time::new::<hour>(hours),
            lowest: ElectricPotential::new::<volt>(lowest),
        }
    }

    fn load(power: f64, start: Option<f64>, day: f64) -> MainsLoad {
        MainsLoad {
            power: Power::new::<watt>(power),
            start: start.map(Power::new::<watt>),
            day: Energy::new::<watt_hour>(day),
        }
    }

    // Plain arithmetic: 900 W and 300 W (1200 W as it starts) at 90 % and 10.5 V: 1200 W, 2100 W, 126.98 A, 222.22 A;
    // 450 Wh behind it lose 50 Wh, and 10 W over 6 h are 60 Wh.
    #[test]
    fn two_loads_behind_an_inverter() {
        let loads = [load(900.0, None, 300.0), load(300.0, Some(1200.0), 150.0)];
        let found = ask(&loads, inverter(0.9, 10.0, 6.0, 10.5)).unwrap();
        assert!((found.continuous.get::<watt>() - 1200.0).abs() < 1e-9);
        assert!((found.surge.value().get::<watt>() - 2100.0).abs() < 1e-9);
        assert!((found.current.value().get::<ampere>() - 126.984).abs() < 1e-3);
        assert!((found.surge_current.value().get::<ampere>() - 222.222).abs() < 1e-3);
        assert!((found.lost.get::<watt_hour>() - 110.0).abs() < 1e-9);
        assert_eq!(found.rating_w, Some(1500.0));
    }

    #[test]
    fn cut_off_goes_by_blocks_of_twelve_volts() {
        let at = |volts| cut_off(ElectricPotential::new::<volt>(volts)).get::<volt>();
        for (nominal, lowest) in
            [(12.0, 10.5), (12.8, 10.5), (24.0, 21.0), (25.6, 21.0), (51.2, 42.0), (48.0, 42.0)]
        {
            assert_eq!(at(nominal), lowest, "{nominal}");
        }
        assert!(at(6.0) < 6.0);
    }

    proptest! {
        #[test]
        fn any_numbers_give_finite_figures_or_an_error(
            p in any_number(), s in any_number(), e in any_number(), w in any_number(), h in any_number(), v in any_number(),
        ) {
            if let Ok(found) = ask(&[load(p, Some(s), 1.0)], inverter(e, w, h, v)) {
                prop_assert!(found.surge_current.value().value.is_finite() && found.lost.value.is_finite());
                prop_assert!(found.surge.value() >= found.continuous);
            }
        }
    }
}
