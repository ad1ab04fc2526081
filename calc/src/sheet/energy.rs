//! A day's use of electricity, the battery that carries it, and how long a given battery lasts.

mod cable;
mod charging;
mod drawing;
mod findings;
mod inverter;
mod loads;
#[cfg(test)]
mod tests;

use calc_derive::{Choice, Inputs, Outcome};
use uom::si::electric_charge::ampere_hour;
use uom::si::electric_current::ampere;
use uom::si::electric_potential::volt;
use uom::si::energy::watt_hour;
use uom::si::f64::{ElectricCharge, ElectricCurrent, ElectricPotential, Energy, Power, Time};
use uom::si::power::watt;
use uom::si::time::hour;

use super::Sheet;
use super::handoffs::{DailyUse, PanelYield};
use crate::electrical::charging::{GREATEST_CHARGING_V, GREATEST_NOMINAL_V};
use crate::energy::battery_fuse::BANK;
use crate::energy::battery_voltage::{
    self, BELOW_50_V, Chemistry as Cells, LEAD_CELL, LITHIUM_CELL, LITHIUM_RESTED,
};
use crate::energy::budget::{
    BUDGET, Budget, BudgetError, DayUse, Demand, Load, OHM, Runtime, budget, runtime,
};
use crate::energy::cautions;
use crate::energy::charging::{KEPT, TAPER, TIME_TO_FULL};
use crate::energy::inverter::{CUT_OFF, DC_CURRENT, RATINGS, STARTS, cut_off};
use crate::energy::peukert::{AverageCurrent, EXPONENTS, PEUKERT, PeukertTime, Rating, discharge};
use crate::formula::Formula as _;
use crate::handoff::Handed;
use crate::lists::{BuyLine, LineId};
use crate::outcome::Outcome as _;
use crate::quantity::{CHARGE, ENERGY, Mass, Measure, Style, plain};
use crate::reader::{NamedSheet, Reader};
use crate::report::{Caution, Report};
use crate::text::text;
use crate::words::{Arg, Msg, Phrase, common, energy as words};
use cable::{Cable, CableInputs, Carried, Laid};
use charging::{Against, Brings, Charged, Charger, Kind};
use inverter::{Asked, InverterInputs};
use loads::DayLoad;

/// The sheet.
pub static SHEET: Sheet = Sheet {
    kind: "energy",
    title: Phrase::Id(words::TITLE),
    trade: Phrase::Id(common::TRADE_LIVING),
    purpose: Phrase::Id(words::PURPOSE),
    asks: Inputs::ASKS,
    sources: &[
        &BUDGET,
        &OHM,
        &PEUKERT,
        &EXPONENTS,
        &DC_CURRENT,
        &STARTS,
        &CUT_OFF,
        &RATINGS,
        &BANK,
        &LITHIUM_CELL,
        &LITHIUM_RESTED,
        &LEAD_CELL,
        &BELOW_50_V,
        &TIME_TO_FULL,
        &TAPER,
        &KEPT,
    ],
    example: r#"{ "nominal_voltage": "12.8 V", "days": 2, "usable_percent": 80, "efficiency_percent": 95,
        "loads": [
            { "label": "fridge", "power": "45 W", "hours": 24, "duty_percent": 40 },
            { "label": "lights and fan", "sheet": "circuit", "hours": 4 },
            { "label": "computer for the survey", "power": "60 W", "hours": 2 },
            { "label": "drill charger", "power": "180 W", "hours": 1, "mains": true, "start": "400 W" } ],
        "inverter": { "standby": "8 W", "hours_on": 2, "rating": "500 W", "surge": "1000 W", "maker_fuse": "70 A" },
        "battery": { "capacity": "200 Ah", "chemistry": "lithium", "charge_limit": "100 A" },
        "cable": { "length": "4 ft", "drop_limit_percent": 2 },
        "charging": [
            { "label": "while driving", "current": "30 A", "hours": 1, "kind": "dc_dc", "length": "9 ft" },
            { "label": "shore power", "power": "290 W", "kind": "shore", "length": "5 ft" },
            { "label": "panels", "solar": "solar" } ] }"#,
    ahead: Some(|reader| demand(&Job::read(reader, |_| None))),
    solve: |reader| {
        let read = |reader: &Reader<'_>| Job::read(reader, |named| reader.taken(named));
        super::tried(reader, read, solve, show)
    },
};

/// What is asked.
#[derive(Inputs)]
#[words(energy)]
struct Inputs {
    #[ask(units("V", "V"), range(1.0, 1000.0), usual("12.8 V", "12.8 V"))]
    nominal_voltage: ElectricPotential,
    #[ask(rows(1), no_help)]
    loads: Vec<loads::Row>,
    #[ask(group)]
    inverter: Option<InverterInputs>,
    #[ask(unit("d"), range(0.01, 365.0), usual("2", "2"))]
    days: f64,
    #[ask(percent, range(1.0, 100.0), usual("80", "80"))]
    usable_percent: f64,
    #[ask(percent, range(1.0, 100.0), usual("95", "95"))]
    efficiency_percent: f64,
    #[ask(group, no_help)]
    battery: Option<BatteryInputs>,
    #[ask(group)]
    cable: Option<CableInputs>,
    #[ask(rows(0), optional(), no_help)]
    charging: Vec<charging::Row>,
}

/// The battery that one has in mind.
#[derive(Inputs)]
#[words(energy)]
struct BatteryInputs {
    #[ask(read_by(&CAPACITIES, Capacity::read), usual("100 Ah", "100 Ah"))]
    capacity: Capacity,
    #[ask(choice)]
    chemistry: Chemistry,
    #[ask(unit("h"), range(1.0, 200.0), usual("20", "20"))]
    hours_rating: Option<f64>,
    #[ask(range(1.0, 2.0), usual("1.2", "1.2"))]
    peukert: Option<f64>,
    #[ask(units("A", "A"), range(0.1, 10_000.0), usual("50 A", "50 A"))]
    charge_limit: Option<ElectricCurrent>,
    #[ask(units("V", "V"), range(1.0, 1000.0), usual("14.6 V", "14.6 V"))]
    charging_voltage: Option<ElectricPotential>,
    #[ask(range(0.0, 1e6), no_help)]
    price: Option<f64>,
    #[ask(units("lb", "kg"), range(0.0, 5000.0), usual("48 lb", "22 kg"))]
    mass: Option<Mass>,
}

/// What the battery is made of.
#[derive(Clone, Copy, PartialEq, Eq, Choice)]
#[words(energy)]
enum Chemistry {
    Auto,
    Lithium,
    LeadAcid,
}

/// Capacities to choose from; others may be typed.
static CAPACITIES: [&str; 2] = ["100 Ah", "1280 Wh"];

/// A capacity as it was typed.
#[derive(Default)]
struct Capacity {
    typed: String,
    /// Charge, or energy where it was that.
    charge: ElectricCharge,
    energy: Option<Energy>,
}

impl Capacity {
    fn read(text: &str) -> Result<Self, Msg> {
        let read =
            Measure::read_any(text, &CHARGE, &[&ENERGY], None).map_err(|error| error.message())?;
        let typed = text.to_owned();
        Ok(if read.dimension().is(&ENERGY) {
            Self { typed, energy: Some(energy_of(read.si())), ..Self::default() }
        } else {
            let charge = ElectricCharge { value: read.si(), ..ElectricCharge::default() };
            Self { typed, charge, energy: None }
        })
    }
}

fn energy_of(joules: f64) -> Energy {
    Energy { value: joules, ..Energy::default() }
}

/// What was typed, read.
struct Job {
    voltage: ElectricPotential,
    loads: Vec<DayLoad>,
    inverter: Option<InverterInputs>,
    days: f64,
    usable: f64,
    efficiency: f64,
    battery: Option<Battery>,
    cable: Option<Laid>,
    chargers: Vec<Charger>,
}

/// The battery, read.
struct Battery {
    energy: Energy,
    hours: f64,
    exponent: Option<f64>,
    chemistry: Chemistry,
    charge_limit: Option<ElectricCurrent>,
    /// The highest, where its maker gives one.
    charging_voltage: Option<ElectricPotential>,
    /// As it was typed.
    capacity: String,
    price: Option<f64>,
    mass: Option<Mass>,
}

impl Job {
    /// Reads what was typed; `panels` gives what a named sheet of panels brings, where that is wanted.
    fn read(reader: &Reader<'_>, panels: impl Fn(&NamedSheet) -> Option<PanelYield>) -> Self {
        let inputs = Inputs::read(reader);
        let voltage = inputs.nominal_voltage;
        if voltage.get::<volt>() > GREATEST_NOMINAL_V + 1e-6 {
            reader.tell(Inputs::NOMINAL_VOLTAGE, words::BEYOND_48);
        }
        let loads = inputs.loads.iter().enumerate();
        let loads = loads.map(|(at, row)| DayLoad::of(reader, at, row, voltage)).collect();
        let battery = inputs.battery.map(|battery| Battery::of(reader, battery, voltage));
        let chargers = inputs.charging.iter().enumerate();
        let chargers: Vec<Charger> =
            chargers.map(|(at, row)| Charger::of(at, row, voltage, &panels)).collect();
        if battery.as_ref().is_some_and(|battery| battery.chemistry == Chemistry::Lithium) {
            for (at, charger) in chargers.iter().enumerate() {
                if charger.kind == Kind::Alternator {
                    let path =
                        text!("{}.{}.{}", Inputs::CHARGING.key, &at, charging::Row::KIND.key);
                    reader.tell_at(&path, words::STRAIGHT_LITHIUM);
                }
            }
        }
        Self {
            voltage,
            loads,
            inverter: inputs.inverter,
            days: inputs.days,
            usable: inputs.usable_percent / 100.0,
            efficiency: inputs.efficiency_percent / 100.0,
            battery,
            cable: inputs.cable.as_ref().map(Laid::of),
            chargers,
        }
    }

    fn has_mains(&self) -> bool {
        self.loads.iter().any(|load| load.mains)
    }

    fn of_battery(&self) -> Demand {
        let Self { voltage, days, usable, efficiency, .. } = *self;
        Demand { voltage, days, usable, efficiency }
    }

    /// The highest voltage that stands on fuses and holders: as the maker gives it, or by the battery's cells.
    fn charging_v(&self) -> f64 {
        let battery = self.battery.as_ref();
        let cells = match battery {
            Some(battery) if battery.chemistry == Chemistry::Lithium => Cells::Lithium,
            Some(battery) if battery.is_lead_acid() => Cells::LeadAcid,
            _ => Cells::Unknown,
        };
        match battery.and_then(|battery| battery.charging_voltage) {
            Some(given) => given.get::<volt>(),
            None => battery_voltage::highest_v(self.voltage.get::<volt>(), cells).0,
        }
    }

    /// What the battery cable carries: all loads with the inverter at its rating, or the strongest charger.
    fn carried(&self, loads: Power, lowest_v: f64) -> Carried {
        let mut power_w = loads.get::<watt>();
        let mut current_a: f64 = 0.0;
        for charger in &self.chargers {
            match (&charger.brings, charger.by_current) {
                (Brings::Power(power), false) => power_w = power_w.max(power.get::<watt>()),
                _ => current_a = current_a.max(charger.current_a.unwrap_or(0.0)),
            }
        }
        let maker_a = self.inverter.as_ref().and_then(InverterInputs::maker_fuse_a);
        Carried {
            power_w,
            current_a,
            least_fuse_a: maker_a.unwrap_or(0.0),
            lowest_v,
            charging_v: self.charging_v(),
        }
    }
}

impl Battery {
    fn of(reader: &Reader<'_>, inputs: BatteryInputs, voltage: ElectricPotential) -> Self {
        let tell = |ask: &crate::ask::Ask, message: Msg| {
            reader.tell_at(&text!("{}.{}", Inputs::BATTERY.key, ask.key), message);
        };
        if inputs.chemistry == Chemistry::Lithium && inputs.peukert.is_some() {
            tell(BatteryInputs::PEUKERT, words::PEUKERT_LITHIUM.into());
        }
        let charging_v = inputs.charging_voltage.map(|highest| highest.get::<volt>());
        if charging_v.is_some_and(|highest| highest < voltage.get::<volt>()) {
            tell(BatteryInputs::CHARGING_VOLTAGE, words::CHARGING_BELOW.into());
        }
        if charging_v.is_some_and(|highest| highest > GREATEST_CHARGING_V) {
            tell(BatteryInputs::CHARGING_VOLTAGE, words::CHARGING_BEYOND.into());
        }
        let Capacity { typed, charge, energy } = inputs.capacity;
        let energy = energy.unwrap_or_else(|| charge * voltage);
        if !typed.is_empty() && !(1.0..=1e6).contains(&energy.get::<watt_hour>()) {
            let (volts, energy) = (Arg::volts(voltage), Arg::rough_energy(energy));
            let capacity = typed.as_str();
            tell(BatteryInputs::CAPACITY, words::CapacityRange { capacity, volts, energy }.into());
        }
        Self {
            energy,
            hours: inputs.hours_rating.unwrap_or(20.0),
            exponent: inputs.peukert,
            chemistry: inputs.chemistry,
            charge_limit: inputs.charge_limit,
            charging_voltage: inputs.charging_voltage,
            capacity: typed,
            price: inputs.price,
            mass: inputs.mass,
        }
    }

    fn is_lead_acid(&self) -> bool {
        match self.chemistry {
            Chemistry::LeadAcid => true,
            Chemistry::Lithium => false,
            Chemistry::Auto => self.exponent.is_some(),
        }
    }

    /// What stays of a charge.
    ///
    /// # Source
    /// [`KEPT`]; the careful one where nobody says what it is.
    fn kept(&self) -> f64 {
        if self.chemistry == Chemistry::Lithium { 0.95 } else { 0.85 }
    }

    fn charge_limit_a(&self) -> Option<f64> {
        self.charge_limit.map(|limit| limit.get::<ampere>())
    }

    fn line(&self, voltage: ElectricPotential, style: Style) -> BuyLine {
        let volts = plain(voltage.get::<volt>(), 2);
        let id = text!("battery/{}wh/{}v", plain(self.energy.get::<watt_hour>(), 0), &volts);
        let (capacity, volts) = (self.capacity.as_str(), Arg::volts(voltage));
        let spec = style.say(words::BuyBatterySpec { capacity, volts });
        BuyLine::pieces(LineId::shared(id), style.say(words::BUY_BATTERY), spec, 1.0)
            .cost(self.price)
            .mass(self.mass)
    }
}

fn wrong(error: BudgetError) -> (String, Msg) {
    let field = match error {
        BudgetError::Power(at) => text!("loads.{}.power", &at),
        BudgetError::Time(at) => text!("loads.{}.hours", &at),
        BudgetError::Duty(at) => text!("loads.{}.duty_percent", &at),
        BudgetError::Voltage => "nominal_voltage".to_owned(),
        BudgetError::Days => "days".to_owned(),
        BudgetError::Usable => "usable_percent".to_owned(),
        BudgetError::Efficiency => "efficiency_percent".to_owned(),
        BudgetError::Capacity | BudgetError::Loss(_) | BudgetError::Sun => {
            "battery.capacity".to_owned()
        }
    };
    (field, error.told())
}

/// How long the battery carries the average load.
enum Lasts {
    /// By its energy.
    Plain(Runtime),
    /// So too, since below its rated current a battery gives its rated capacity, not the more that Peukert's law
    /// promises.
    BelowRating(Runtime),
    /// By Peukert's law.
    Lead(AverageCurrent, PeukertTime),
}

impl Lasts {
    fn of(job: &Job, battery: &Battery, day: Energy) -> Result<Option<Self>, (String, Msg)> {
        let Job { usable, efficiency, voltage, .. } = *job;
        let Some(plain) = runtime(battery.energy, usable, efficiency, day).map_err(wrong)? else {
            return Ok(None);
        };
        let average = AverageCurrent { day, voltage, efficiency };
        let current = average.value();
        let (Some(exponent), true) = (battery.exponent, current.get::<ampere>() >= 0.001) else {
            return Ok(Some(Self::Plain(plain)));
        };
        let (capacity, time) = (battery.energy / voltage, Time::new::<hour>(battery.hours));
        let found = discharge(Rating { capacity, time, exponent }, current)
            .map_err(|error| ("battery".to_owned(), error.told()))?;
        Ok(Some(if found.below_rating {
            Self::BelowRating(plain)
        } else {
            Self::Lead(average, PeukertTime { usable, time, capacity, current, exponent })
        }))
    }

    fn time(&self) -> Time {
        match self {
            Self::Plain(runtime) | Self::BelowRating(runtime) => runtime.value(),
            Self::Lead(_, peukert) => peukert.value(),
        }
    }
}

/// All that is worked out of a day.
#[derive(Outcome)]
struct Found {
    wh_day: f64,
    ah_day: f64,
    needed_wh: f64,
    needed_ah: f64,
    runtime_h: Option<f64>,
    battery_wh: Option<f64>,
    usable_wh: Option<f64>,
    efficiency_percent: f64,
    kept_percent: Option<f64>,
    all_on_w: f64,
    all_on_a: f64,
    average_w: f64,
    inverter: Option<Asked>,
    cable: Option<Cable>,
    nominal_v: f64,
    charging_v: f64,
    charging: Vec<Charged>,
    #[outcome(skip)]
    budget: Budget,
    /// The loads as they count with their names, the inverter's own use as the last where it takes any.
    #[outcome(skip)]
    loads: Vec<(Arg, DayUse)>,
    #[outcome(skip)]
    lasts: Option<Lasts>,
    /// From the battery with all loads on.
    #[outcome(skip)]
    all_on: Power,
    /// Why the battery cable is not shown.
    #[outcome(skip)]
    why_no_cable: Option<Msg>,
}

fn budget_of(loads: &[(Arg, DayUse)], job: &Job) -> Result<Budget, (String, Msg)> {
    let loads =
        loads.iter().map(|(_, day)| Load { power: day.power, time: day.time, duty: day.duty });
    budget(&loads.collect::<Vec<_>>(), job.of_battery()).map_err(wrong)
}

/// What a day takes out of the battery.
struct Day {
    budget: Budget,
    /// The loads as they count with their names, the inverter's own use as the last where it takes any.
    loads: Vec<(Arg, DayUse)>,
    inverter: Option<Asked>,
}

impl Day {
    fn of(job: &Job) -> Result<Self, (String, Msg)> {
        let loads = job.loads.iter().map(|load| (load.label.clone(), load.day));
        let mut loads: Vec<(Arg, DayUse)> = loads.collect();
        // The loads themselves first, so that a fault names the load that is wrong.
        let budget = budget_of(&loads, job)?;
        let Some(inputs) = &job.inverter else {
            return Ok(Self { budget, loads, inverter: None });
        };
        let found = Asked::of(inputs, &job.loads, job.voltage)?;
        let time = Time::new::<hour>(24.0);
        let own = DayUse { power: found.of.lost / time, time, duty: 1.0 };
        loads.push((words::OWN_USE.into(), own));
        Ok(Self { budget: budget_of(&loads, job)?, loads, inverter: Some(found) })
    }
}

/// What panels are held against. It hangs on nothing that they bring.
fn demand(job: &Job) -> Option<Handed> {
    let day = Day::of(job).ok()?.budget.day;
    let battery = job.battery.as_ref();
    let chargers = battery.into_iter().flat_map(|battery| {
        let reaches = |power: Power| power * battery.kept() * job.efficiency;
        job.chargers.iter().filter_map(move |one| Some((one.label.clone(), reaches(one.power()?))))
    });
    Some(Handed::of(DailyUse {
        day,
        usable: battery.map(|battery| battery.energy * job.usable * job.efficiency),
        charger: chargers
            .max_by(|a, b| a.1.value.total_cmp(&b.1.value))
            .filter(|(_, power)| *power > Power::default()),
        nominal: job.voltage,
        charging: ElectricPotential::new::<volt>(job.charging_v()),
    }))
}

fn solve(job: &Job) -> Result<Found, (String, Msg)> {
    let Day { budget, loads, inverter: asked } = Day::of(job)?;
    let sum = |a: Power, b: &DayLoad| a + b.day.power;
    let mut all_on = job.loads.iter().fold(Power::default(), sum);
    // Of constant power through the battery cable, with the inverter at its rating.
    let mut through = job.loads.iter().filter(|load| !load.mains).fold(Power::default(), sum);
    let mut lowest = cut_off(job.voltage);
    if let (Some(inputs), Some(found)) = (&job.inverter, &asked) {
        all_on += found.of.continuous * (1.0 / found.unit.efficiency - 1.0);
        lowest = found.unit.lowest;
        through += found.draws(inputs);
    }
    let battery = job.battery.as_ref();
    let lasts = battery.map(|battery| Lasts::of(job, battery, budget.day)).transpose()?.flatten();
    let against = Against {
        voltage: job.voltage,
        usable: job.usable,
        efficiency: job.efficiency,
        battery,
        day: budget.day,
        battery_cable: job.cable.as_ref(),
        lowest_v: lowest.get::<volt>(),
        charging_v: job.charging_v(),
    };
    let chargers = job.chargers.iter().enumerate();
    let charging = chargers
        .map(|(at, charger)| Charged::of(charger, at, &against))
        .collect::<Result<Vec<_>, _>>()?;
    let cable = job.cable.as_ref().map(|laid| match &asked {
        None if job.has_mains() => Err(words::WHY_MAINS.into()),
        _ => cable::cable(laid, &job.carried(through, lowest.get::<volt>())),
    });
    let (cable, why_no_cable) = match cable.transpose() {
        Ok(cable) => (cable, None),
        Err(why) => (None, Some(why)),
    };
    let day_wh = budget.day.get::<watt_hour>();
    let battery_wh = battery.map(|battery| battery.energy.get::<watt_hour>());
    Ok(Found {
        wh_day: day_wh,
        ah_day: budget.day_charge.value().get::<ampere_hour>(),
        needed_wh: budget.needed.value().get::<watt_hour>(),
        needed_ah: budget.needed_charge.value().get::<ampere_hour>(),
        runtime_h: lasts.as_ref().map(|lasts| lasts.time().get::<hour>()),
        battery_wh,
        usable_wh: battery_wh.map(|wh| wh * job.usable),
        efficiency_percent: job.efficiency * 100.0,
        kept_percent: battery.map(|battery| 100.0 * battery.kept()),
        all_on_w: all_on.get::<watt>(),
        all_on_a: (all_on / job.voltage).get::<ampere>(),
        average_w: day_wh / 24.0,
        inverter: asked,
        cable,
        nominal_v: job.voltage.get::<volt>(),
        charging_v: job.charging_v(),
        charging,
        budget,
        loads,
        lasts,
        all_on,
        why_no_cable,
    })
}

fn show(job: &Job, found: &Found, style: Style) -> Report {
    let cable = found.cable.as_ref();
    let inverter = job.inverter.as_ref();
    Report {
        answers: findings::answers(job, found, style),
        remarks: findings::remarks(job, found, style),
        tables: findings::tables(job, found, style),
        drawings: vec![drawing::day(job, found, style)],
        working: findings::working(job, found, style.exact()),
        cautions: Caution::all(&cautions::BATTERY),
        buy: job
            .battery
            .iter()
            .map(|battery| battery.line(job.voltage, style))
            .chain(cable.map_or_else(Vec::new, |cable| cable.buy(1, style)))
            .chain(
                cable
                    .zip(inverter)
                    .and_then(|(cable, inverter)| cable.buy_inverter_fuse(inverter, style)),
            )
            .chain(charging::buy(&found.charging, style))
            .collect(),
        outcome: found.record(),
        ..Report::default()
    }
}
