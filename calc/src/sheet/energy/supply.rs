//! The inverter behind the battery.

use uom::si::electric_current::ampere;
use uom::si::f64::{ElectricPotential, Power, Time};
use uom::si::power::watt;
use uom::si::time::hour;

use super::loads::DayLoad;
use super::words::volts;
use crate::ask::Ask;
use crate::energy::inverter::{
    self, DC_CURRENT, Inverter, InverterError, MainsLoad, STARTS, cut_off,
};
use crate::fault::Fault;
use crate::outcome::Record;
use crate::quantity::{CURRENT, POWER, VOLTAGE, amount, percent};
use crate::reader::Reader;
use crate::report::{Remark, Step};
use crate::sheet::wiring::amperes;
use crate::text::text;

static EFFICIENCY: Ask = Ask::percent("efficiency_percent", "Inverter's efficiency", (50.0, 100.0))
    .default("90")
    .usual("90", "90")
    .help("In its data sheet; less at small loads.");
static STANDBY: Ask =
    Ask::measure("standby", "Draws with nothing on", &POWER, ["W", "W"], (0.0, 1000.0))
        .default("10 W")
        .usual("10 W", "10 W")
        .help("Idle or no-load power in its data sheet.");
static HOURS_ON: Ask = Ask::number_in("hours_on", "Hours switched on", "h", (0.0, 24.0))
    .default("24")
    .usual("24", "24")
    .help("In a day; switch it off between uses and this falls.");
static LOWEST: Ask =
    Ask::measure("lowest_voltage", "Battery's lowest voltage", &VOLTAGE, ["V", "V"], (1.0, 1000.0))
        .optional()
        .usual("10.5 V", "10.5 V")
        .help("Where inverter or battery switches off: there the current is greatest. Left blank: 10.5 V for each 12 V.");
static RATING: Ask =
    Ask::measure("rating", "The inverter you have in mind", &POWER, ["W", "W"], (1.0, 100_000.0))
        .optional()
        .usual("1000 W", "1000 W")
        .help("What it gives without end, in W (not VA).");
static SURGE: Ask =
    Ask::measure("surge", "Its power for a start", &POWER, ["W", "W"], (1.0, 200_000.0))
        .optional()
        .usual("2000 W", "2000 W")
        .help("Peak or surge power, for a second or more.");
static MAKER_FUSE: Ask = Ask::measure(
    "maker_fuse",
    "Fuse its maker asks for",
    &CURRENT,
    ["A", "A"],
    (1.0, 1000.0),
)
.optional()
.usual("70 A", "70 A")
.help("DC fuse in front of it, in its instructions: they come before anything worked out here.");
pub(super) static INVERTER: Ask = Ask::group(
    "inverter",
    "Inverter",
    &[&EFFICIENCY, &STANDBY, &HOURS_ON, &LOWEST, &RATING, &SURGE, &MAKER_FUSE],
)
.optional()
.help("For what runs on mains voltage.");

/// An inverter, and the one in mind.
pub(super) struct InverterInputs {
    pub unit: Inverter,
    rating: Option<Power>,
    surge: Option<Power>,
    pub maker_fuse_a: Option<f64>,
}

impl InverterInputs {
    /// What it can draw from the battery without end: its rating, or where nobody gave one the usual size for its
    /// loads, and never less than those; over its efficiency.
    pub fn draws(&self, asked: &inverter::Ask) -> Power {
        let size = self.rating.or(asked.rating_w.map(Power::new::<watt>));
        let most = match size {
            Some(size) if size > asked.continuous => size,
            _ => asked.continuous,
        };
        most / self.unit.efficiency
    }

    /// Somebody gave its rating.
    pub fn is_rated(&self) -> bool {
        self.rating.is_some()
    }
}

pub(super) fn read_inverter(group: &Reader<'_>, nominal: ElectricPotential) -> InverterInputs {
    InverterInputs {
        unit: Inverter {
            efficiency: group.number(&EFFICIENCY) / 100.0,
            standby: group.measure(&STANDBY),
            time_on: Time::new::<hour>(group.number(&HOURS_ON)),
            lowest: group.maybe(&LOWEST).unwrap_or_else(|| cut_off(nominal)),
        },
        rating: group.maybe(&RATING),
        surge: group.maybe(&SURGE),
        maker_fuse_a: group.maybe_si(&MAKER_FUSE),
    }
}

/// What the loads ask of the inverter.
pub(super) fn ask_of(
    unit: Inverter,
    loads: &[DayLoad],
    nominal: ElectricPotential,
) -> Result<inverter::Ask, Vec<Fault>> {
    if unit.lowest > nominal {
        return Err(vec![Fault::new(
            "inverter.lowest_voltage",
            text!("the lowest voltage must lie below the nominal {}", volts(nominal)),
        )]);
    }
    let mains: Vec<MainsLoad> = loads
        .iter()
        .filter(|load| load.mains)
        .map(|load| MainsLoad {
            power: load.load.power,
            start: load.start,
            day: load.load.power * load.load.time * load.load.duty,
        })
        .collect();
    inverter::ask(&mains, unit).map_err(|error| {
        let field = match error {
            InverterError::Load(_) => "loads",
            InverterError::Efficiency => "inverter.efficiency_percent",
            InverterError::Standby => "inverter.standby",
            InverterError::TimeOn => "inverter.hours_on",
            InverterError::Lowest => "inverter.lowest_voltage",
        };
        vec![Fault::new(field, error.to_string())]
    })
}

pub(super) fn inverter_remarks(
    inputs: &InverterInputs,
    asked: &inverter::Ask,
    remarks: &mut Vec<Remark>,
) {
    let (continuous, surge) = (asked.continuous.get::<watt>(), asked.surge.get::<watt>());
    let short = |has: Option<Power>, needs: f64| {
        has.map(|power| power.get::<watt>()).filter(|watts| *watts * (1.0 + 1e-9) < needs)
    };
    if let Some(rating) = short(inputs.rating, continuous) {
        remarks.push(Remark::warning(text!(
            "The inverter gives {}, and its loads take {} together: a larger one, or not all at once.",
            amount(rating, 0, "W"),
            amount(continuous, 0, "W")
        )));
    }
    if let Some(peak) = short(inputs.surge.or(inputs.rating), surge) {
        remarks.push(Remark::warning(text!(
            "The hardest start takes {}, and the inverter gives {} for a moment.",
            amount(surge, 0, "W"),
            amount(peak, 0, "W")
        )));
    }
    remarks.push(Remark::note(text!(
        "Inverter: {} without end and {} for a start{}. At {} it draws {} from the battery, {} in a start.",
        amount(continuous, 0, "W"),
        amount(surge, 0, "W"),
        match asked.rating_w {
            Some(size) => text!(", a usual size is {}", amount(size, 0, "W")),
            None => String::new(),
        },
        volts(inputs.unit.lowest),
        amperes(asked.current.get::<ampere>()),
        amperes(asked.surge_current.get::<ampere>())
    )));
}

pub(super) fn inverter_steps(
    inputs: &InverterInputs,
    asked: &inverter::Ask,
    steps: &mut Vec<Step>,
) {
    let watts = |power: Power| amount(power.get::<watt>(), 0, "W");
    let efficiency = percent(inputs.unit.efficiency * 100.0);
    steps.push(Step::new(
        "Inverter: hardest start",
        "P = Σ P + max(P_start − P)",
        text!("{} + {}", watts(asked.continuous), watts(asked.surge - asked.continuous)),
        watts(asked.surge),
        &STARTS,
    ));
    for (name, power, current) in [
        ("Inverter: from the battery", asked.continuous, asked.current),
        ("Inverter: in a start", asked.surge, asked.surge_current),
    ] {
        steps.push(Step::new(
            name,
            "I = P / (η · U)",
            text!("{} / ({} · {})", watts(power), &efficiency, volts(inputs.unit.lowest)),
            amperes(current.get::<ampere>()),
            &DC_CURRENT,
        ));
    }
}

pub(super) fn inverter_record(asked: &inverter::Ask) -> Record {
    Record::new()
        .with("continuous_w", asked.continuous.get::<watt>())
        .with("surge_w", asked.surge.get::<watt>())
        .maybe("rating_w", asked.rating_w)
        .with("current_a", asked.current.get::<ampere>())
        .with("surge_current_a", asked.surge_current.get::<ampere>())
        .with("lost_wh_day", asked.lost.get::<uom::si::energy::watt_hour>())
}
