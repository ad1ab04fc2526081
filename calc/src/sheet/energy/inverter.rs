//! The inverter behind the battery.

use calc_derive::{Inputs, Outcome};
use uom::si::electric_current::ampere;
use uom::si::energy::watt_hour;
use uom::si::f64::{ElectricCurrent, ElectricPotential, Power, Time};
use uom::si::power::watt;
use uom::si::time::hour;

use super::loads::DayLoad;
use crate::energy::inverter::{self, Inverter, InverterError, MainsLoad, cut_off};
use crate::formula::{Formula as _, step};
use crate::quantity::Style;
use crate::report::{Remark, Step};
use crate::words::{Arg, Msg, energy as words};

/// What is asked of an inverter, and of the one in mind.
#[derive(Inputs)]
#[words(energy)]
pub(super) struct InverterInputs {
    #[ask(
        percent,
        range(50.0, 100.0),
        default("90"),
        usual("90", "90"),
        word(inverter_efficiency)
    )]
    efficiency_percent: f64,
    #[ask(units("W", "W"), range(0.0, 1000.0), default("10 W"), usual("10 W", "10 W"))]
    standby: Power,
    #[ask(unit("h"), range(0.0, 24.0), default("24"), usual("24", "24"))]
    hours_on: f64,
    #[ask(units("V", "V"), range(1.0, 1000.0), usual("10.5 V", "10.5 V"))]
    lowest_voltage: Option<ElectricPotential>,
    #[ask(units("W", "W"), range(1.0, 100_000.0), usual("1000 W", "1000 W"))]
    rating: Option<Power>,
    #[ask(units("W", "W"), range(1.0, 200_000.0), usual("2000 W", "2000 W"))]
    surge: Option<Power>,
    #[ask(units("A", "A"), range(1.0, 1000.0), usual("70 A", "70 A"))]
    maker_fuse: Option<ElectricCurrent>,
}

impl InverterInputs {
    fn unit(&self, nominal: ElectricPotential) -> Inverter {
        Inverter {
            efficiency: self.efficiency_percent / 100.0,
            standby: self.standby,
            time_on: Time::new::<hour>(self.hours_on),
            lowest: self.lowest_voltage.unwrap_or_else(|| cut_off(nominal)),
        }
    }

    /// The fuse that its maker asks for. [A]
    pub fn maker_fuse_a(&self) -> Option<f64> {
        self.maker_fuse.map(|current| current.get::<ampere>())
    }

    /// Somebody gave its rating.
    pub fn is_rated(&self) -> bool {
        self.rating.is_some()
    }
}

/// What the loads ask of the inverter.
#[derive(Outcome)]
pub(super) struct Asked {
    continuous_w: f64,
    surge_w: f64,
    rating_w: Option<f64>,
    current_a: f64,
    surge_current_a: f64,
    lost_wh_day: f64,
    #[outcome(skip)]
    pub of: inverter::Ask,
    #[outcome(skip)]
    pub unit: Inverter,
}

impl Asked {
    pub fn of(
        inputs: &InverterInputs,
        loads: &[DayLoad],
        nominal: ElectricPotential,
    ) -> Result<Self, (String, Msg)> {
        let unit = inputs.unit(nominal);
        if unit.lowest > nominal {
            let volts = Arg::volts(nominal);
            return Err((
                "inverter.lowest_voltage".to_owned(),
                words::LowestAbove { volts }.into(),
            ));
        }
        let mains: Vec<MainsLoad> = loads
            .iter()
            .filter(|load| load.mains)
            .map(|load| MainsLoad {
                power: load.day.power,
                start: load.start,
                day: load.day.power * load.day.time * load.day.duty,
            })
            .collect();
        let of = inverter::ask(&mains, unit).map_err(|error| {
            let field = match error {
                InverterError::Load(_) => "loads",
                InverterError::Efficiency => "inverter.efficiency_percent",
                InverterError::Standby => "inverter.standby",
                InverterError::TimeOn => "inverter.hours_on",
                InverterError::Lowest => "inverter.lowest_voltage",
            };
            (field.to_owned(), error.told())
        })?;
        Ok(Self {
            continuous_w: of.continuous.get::<watt>(),
            surge_w: of.surge.value().get::<watt>(),
            rating_w: of.rating_w,
            current_a: of.current.value().get::<ampere>(),
            surge_current_a: of.surge_current.value().get::<ampere>(),
            lost_wh_day: of.lost.get::<watt_hour>(),
            of,
            unit,
        })
    }

    /// What the inverter can draw from the battery without end: its rating, or where nobody gave one the usual size for
    /// its loads, and never less than those; over its efficiency.
    pub fn draws(&self, inputs: &InverterInputs) -> Power {
        let size = inputs.rating.or(self.rating_w.map(Power::new::<watt>));
        let most = match size {
            Some(size) if size > self.of.continuous => size,
            _ => self.of.continuous,
        };
        most / self.unit.efficiency
    }

    pub fn remarks(&self, inputs: &InverterInputs, style: Style, remarks: &mut Vec<Remark>) {
        let short = |has: Option<Power>, needs: f64| {
            has.filter(|power| power.get::<watt>() * (1.0 + 1e-9) < needs)
        };
        let (continuous, surge) = (self.of.continuous, self.of.surge.value());
        if let Some(rating) = short(inputs.rating, self.continuous_w) {
            let (rating, needed) = (Arg::watts(rating), Arg::watts(continuous));
            remarks.push(Remark::warning(style.say(words::InverterSmall { rating, needed })));
        }
        if let Some(peak) = short(inputs.surge.or(inputs.rating), self.surge_w) {
            let (peak, needed) = (Arg::watts(peak), Arg::watts(surge));
            remarks.push(Remark::warning(style.say(words::InverterStart { needed, peak })));
        }
        remarks.push(Remark::note(style.say(words::InverterAsked {
            size: self.rating_w.map_or("none".into(), |size| Arg::watts(Power::new::<watt>(size))),
            continuous: Arg::watts(continuous),
            surge: Arg::watts(surge),
            volts: Arg::volts(self.unit.lowest),
            current: Arg::amperes(self.of.current.value()),
            start: Arg::amperes(self.of.surge_current.value()),
        })));
    }

    pub fn steps(&self, style: Style) -> [Step; 3] {
        [
            step(words::STEP_START, &self.of.surge, style),
            step(words::STEP_DC, &self.of.current, style),
            step(words::STEP_DC_START, &self.of.surge_current, style),
        ]
    }
}
