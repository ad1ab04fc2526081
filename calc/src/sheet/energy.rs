//! A day's use of electricity, the battery that carries it, and how long a given battery lasts.

#[cfg(test)]
mod tests;
mod words;

use crate::text::text;
use uom::si::electric_charge::{ampere_hour, coulomb};
use uom::si::electric_current::ampere;
use uom::si::electric_potential::volt;
use uom::si::energy::{joule, watt_hour};
use uom::si::f64::{ElectricCharge, ElectricCurrent, ElectricPotential, Energy, Power, Time};
use uom::si::power::watt;
use uom::si::time::hour;

use super::{Sheet, solve};
use crate::ask::Ask;
use crate::energy::budget::{BUDGET, BudgetError, Demand, Load, budget, runtime};
use crate::energy::cautions;
use crate::energy::charging::{Charging, TIME_TO_FULL, time_to_full};
use crate::energy::peukert::{Discharge, EXPONENTS, PEUKERT, Rating, discharge};
use crate::fault::Fault;
use crate::lists::BuyLine;
use crate::outcome::Record;
use crate::quantity::{
    CHARGE, CURRENT, ENERGY, MASS, Mass, Measure, POWER, Style, VOLTAGE, plain, significant,
};
use crate::reader::Reader;
use crate::report::{Caution, Report};
use crate::source::Source;

/// The sheet.
pub static SHEET: Sheet = Sheet {
    kind: "energy",
    title: "Battery and a day's use",
    trade: "Living in it",
    purpose: "Add up what a day draws, size the battery for the days without charging, and see how long a battery lasts.",
    asks: &[&NOMINAL_VOLTAGE, &LOADS, &DAYS, &USABLE, &EFFICIENCY, &BATTERY, &CHARGING],
    sources: &[&BUDGET, &OHM, &PEUKERT, &EXPONENTS, &TIME_TO_FULL, &CHARGED_SHARE],
    example: r#"{ "nominal_voltage": "12.8 V", "days": 2, "usable_percent": 80, "efficiency_percent": 95,
        "loads": [
            { "label": "fridge", "power": "45 W", "hours": 24, "duty_percent": 40 },
            { "label": "ceiling lights", "power": "20 W", "hours": 4 },
            { "label": "roof fan", "power": "15 W", "hours": 8 },
            { "label": "computer for the survey", "power": "60 W", "hours": 2 },
            { "label": "water pump", "current": "4.7 A", "hours": "0.25" } ],
        "battery": { "capacity": "200 Ah", "charge_limit": "100 A" },
        "charging": [
            { "label": "while driving", "power": "380 W" },
            { "label": "shore power", "power": "290 W" } ] }"#,
    solve: |reader| solve(reader, read, report),
};

static NOMINAL_VOLTAGE: Ask = Ask::measure(
    "nominal_voltage",
    "Battery's nominal voltage",
    &VOLTAGE,
    ["V", "V"],
    (1.0, 1000.0),
)
.usual("12.8 V", "12.8 V")
.help("On the battery: 12 V for lead-acid, 12.8 V for lithium iron phosphate.");
static LABEL: Ask = Ask::words("label", "What it is").usual("fridge", "fridge");
static LOAD_POWER: Ask = Ask::measure("power", "Power", &POWER, ["W", "W"], (0.0, 100_000.0))
    .usual("45 W", "45 W")
    .help("On its label, while it runs.");
static LOAD_CURRENT: Ask =
    Ask::measure("current", "Current", &CURRENT, ["A", "A"], (0.0, 10_000.0))
        .usual("3.5 A", "3.5 A")
        .help("On its label, at the battery's voltage.");
static LOAD_SHEET: Ask = Ask::sheet_of("sheet", "Cooler of a heater and cooler sheet", "heat_load")
    .help("Takes the power that the cooler draws from there and follows it.");
static DRAW: Ask = Ask::either("Power or current", &[&LOAD_POWER, &LOAD_CURRENT, &LOAD_SHEET]);
static HOURS: Ask = Ask::number_in("hours", "Hours a day", "h", (0.0, 24.0))
    .usual("4", "4")
    .help("Switched on, in a day of the kind you plan for.");
static DUTY: Ask = Ask::percent("duty_percent", "Share of that time it runs", (0.0, 100.0))
    .default("100")
    .usual("40", "40")
    .help("A fridge runs a third to a half of the time; a lamp all of it.");
static LOADS: Ask =
    Ask::rows("loads", "Loads of a day", "load", 1, &[&LABEL, &DRAW, &HOURS, &DUTY]);
static DAYS: Ask = Ask::number_in("days", "Days without charging", "d", (0.01, 365.0))
    .usual("2", "2")
    .help("How long you stand where nothing charges.");
static USABLE: Ask = Ask::percent("usable_percent", "Share of the battery to use", (1.0, 100.0))
    .usual("80", "80")
    .help("Lead-acid lasts by 50 %, lithium iron phosphate by 80 %; the maker says more.");
static EFFICIENCY: Ask =
    Ask::percent("efficiency_percent", "Share that reaches the loads", (1.0, 100.0))
        .usual("95", "95")
        .help("Cables and converters take the rest; 85 with an inverter.");
static CAPACITY: Ask = Ask::notation("capacity", "Capacity", "capacity", &["100 Ah", "1280 Wh"])
    .usual("100 Ah", "100 Ah")
    .help("On the battery, in Ah or Wh; of several, all together.");
static HOURS_RATING: Ask = Ask::number_in("hours_rating", "Hours of the rating", "h", (1.0, 200.0))
    .optional()
    .usual("20", "20")
    .help("Behind the capacity on a lead-acid battery: C20 is 20 hours.");
static PEUKERT_EXPONENT: Ask = Ask::number("peukert", "Peukert exponent", (1.0, 2.0))
    .optional()
    .usual("1.2", "1.2")
    .help("Lead-acid only: 1.1 to 1.3, from the maker's sheet. Leave out for lithium.");
static CHARGE_LIMIT: Ask = Ask::measure(
    "charge_limit",
    "Most it may be charged with",
    &CURRENT,
    ["A", "A"],
    (0.1, 10_000.0),
)
.optional()
.usual("50 A", "50 A")
.help("On the battery or in its maker's sheet.");
static BATTERY_PRICE: Ask = Ask::number("price", "Price", (0.0, 1e6)).optional();
static BATTERY_MASS: Ask = Ask::measure("mass", "Mass", &MASS, ["lb", "kg"], (0.0, 5000.0))
    .optional()
    .usual("48 lb", "22 kg")
    .help("For the weight on the buy list; on the battery, or in its maker's sheet.");
static BATTERY: Ask = Ask::group(
    "battery",
    "The battery you have in mind",
    &[&CAPACITY, &HOURS_RATING, &PEUKERT_EXPONENT, &CHARGE_LIMIT, &BATTERY_PRICE, &BATTERY_MASS],
)
.optional();
static CHARGE_POWER: Ask =
    Ask::measure("power", "Power at the battery", &POWER, ["W", "W"], (0.1, 100_000.0))
        .usual("380 W", "380 W")
        .help("Charging current on its label times the battery's voltage.");
static CHARGING: Ask =
    Ask::rows("charging", "What charges it", "charger", 0, &[&LABEL, &CHARGE_POWER]).optional();

/// P = U I.
static OHM: Source = Source::identity("power is voltage times current");
/// What stays in a battery of what is charged.
static CHARGED_SHARE: Source =
    Source::common_practice("of a charge 85 % stays in a lead-acid battery, 95 % in lithium");
/// The careful one of both.
const CHARGE_EFFICIENCY: f64 = 0.85;

/// What was typed, read.
struct Inputs {
    voltage: ElectricPotential,
    labels: Vec<String>,
    loads: Vec<Load>,
    demand: Demand,
    battery: Option<Battery>,
    charging: Vec<(String, Power)>,
}

/// The battery that one has in mind.
struct Battery {
    energy: Energy,
    hours: f64,
    exponent: Option<f64>,
    charge_limit: Option<ElectricCurrent>,
    /// As it was typed.
    capacity: String,
    price: Option<f64>,
    mass: Option<Mass>,
}

fn read(reader: &Reader<'_>) -> Inputs {
    let voltage: ElectricPotential = reader.measure(&NOMINAL_VOLTAGE);
    let rows = reader.rows(&LOADS, |row| {
        let power = match row.which(&DRAW) {
            Some(1) => row.measure::<ElectricCurrent>(&LOAD_CURRENT) * voltage,
            Some(0) => row.measure(&LOAD_POWER),
            Some(_) => cooler_power(row),
            None => Power::default(),
        };
        let load = Load {
            power,
            time: Time::new::<hour>(row.number(&HOURS)),
            duty: row.number(&DUTY) / 100.0,
        };
        (row.words(&LABEL), load)
    });
    let (labels, loads) = rows.into_iter().unzip();
    Inputs {
        voltage,
        labels,
        loads,
        demand: Demand {
            voltage,
            days: reader.number(&DAYS),
            usable: reader.number(&USABLE) / 100.0,
            efficiency: reader.number(&EFFICIENCY) / 100.0,
        },
        battery: reader.maybe_group(&BATTERY, |group| Battery {
            energy: group
                .notation(&CAPACITY, Energy::new::<watt_hour>(1.0), |text| capacity(text, voltage)),
            hours: group.maybe_number(&HOURS_RATING).unwrap_or(20.0),
            exponent: group.maybe_number(&PEUKERT_EXPONENT),
            charge_limit: group.maybe(&CHARGE_LIMIT),
            capacity: group.words(&CAPACITY),
            price: group.maybe_number(&BATTERY_PRICE),
            mass: group.maybe(&BATTERY_MASS),
        }),
        charging: reader.rows(&CHARGING, |row| (row.words(&LABEL), row.measure(&CHARGE_POWER))),
    }
}

/// What the cooler of another sheet draws.
fn cooler_power(row: &Reader<'_>) -> Power {
    let Some(outcome) = row.sheet(&LOAD_SHEET) else { return Power::default() };
    match outcome.number("cooler_w") {
        Some(watts) => Power::new::<watt>(watts),
        None => {
            row.fault_at(
                &LOAD_SHEET,
                "this sheet sizes no cooler: fill in its noon and its coefficient of performance",
            );
            Power::default()
        }
    }
}

/// A capacity in ampere hours or watt hours, as energy at the nominal voltage.
fn capacity(text: &str, voltage: ElectricPotential) -> Result<Energy, String> {
    let read = Measure::read_any(text, &CHARGE, &[&ENERGY], None).map_err(|e| e.to_string())?;
    let energy = if read.dimension().is(&ENERGY) {
        Energy::new::<joule>(read.si())
    } else {
        ElectricCharge::new::<coulomb>(read.si()) * voltage
    };
    let wh = energy.get::<watt_hour>();
    if (1.0..=1e6).contains(&wh) {
        Ok(energy)
    } else {
        Err(text!(
            "the battery must hold from 1 to 1 000 000 Wh; {} at {} V are {} Wh",
            &text,
            plain(voltage.get::<volt>(), 2),
            significant(wh, 4)
        ))
    }
}

fn fault(error: BudgetError) -> Vec<Fault> {
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
    vec![Fault::new(field, error.to_string())]
}

impl Battery {
    fn line(&self, voltage: ElectricPotential) -> BuyLine {
        BuyLine {
            item: "battery".into(),
            spec: text!("{}, {} V", &self.capacity, plain(voltage.get::<volt>(), 2)),
            quantity: 1.0,
            unit: "each",
            cost: self.price,
            mass: self.mass,
        }
    }
}

/// How long the battery carries the average load.
struct Lasts {
    time: Time,
    /// By Peukert's law, with the current that it was worked out for.
    peukert: Option<(Discharge, ElectricCurrent)>,
}

fn lasts(inputs: &Inputs, battery: &Battery, day: Energy) -> Result<Option<Lasts>, Vec<Fault>> {
    let Demand { usable, efficiency, .. } = inputs.demand;
    let Some(plain) = runtime(battery.energy, usable, efficiency, day).map_err(fault)? else {
        return Ok(None);
    };
    let Some(exponent) = battery.exponent else {
        return Ok(Some(Lasts { time: plain, peukert: None }));
    };
    let average_w = day.get::<watt_hour>() / 24.0 / efficiency;
    let current = Power::new::<watt>(average_w) / inputs.voltage;
    if current.get::<ampere>() < 0.001 {
        return Ok(Some(Lasts { time: plain, peukert: None }));
    }
    let rating = Rating {
        capacity: battery.energy / inputs.voltage,
        time: Time::new::<hour>(battery.hours),
        exponent,
    };
    let found = discharge(rating, current)
        .map_err(|error| vec![Fault::new("battery", error.to_string())])?;
    // Below its rated current a battery gives its rated capacity, not the more that the law promises.
    let time = if found.below_rating { plain } else { found.time * usable };
    Ok(Some(Lasts { time, peukert: Some((found, current)) }))
}

/// Time to charge the share that may be used.
fn times_to_full(inputs: &Inputs, battery: &Battery) -> Result<Vec<Time>, Vec<Fault>> {
    let missing = battery.energy * inputs.demand.usable;
    inputs
        .charging
        .iter()
        .enumerate()
        .map(|(index, (_, power))| {
            let limit = battery.charge_limit.map_or(*power, |limit| limit * inputs.voltage);
            let charging =
                Charging { power: *power, battery_limit: limit, efficiency: CHARGE_EFFICIENCY };
            time_to_full(missing, charging).map_err(|error| {
                vec![Fault::new(text!("charging.{}.power", &index), error.to_string())]
            })
        })
        .collect()
}

/// Volts, amperes and watt hours are the same in both unit systems.
fn report(inputs: &Inputs, _style: Style) -> Result<Report, Vec<Fault>> {
    let budget = budget(&inputs.loads, inputs.demand).map_err(fault)?;
    let lasts = match &inputs.battery {
        Some(battery) => lasts(inputs, battery, budget.day)?,
        None => None,
    };
    let full = match &inputs.battery {
        Some(battery) => times_to_full(inputs, battery)?,
        None => Vec::new(),
    };
    let all_on = inputs.loads.iter().fold(Power::default(), |sum, load| sum + load.power);
    let day_wh = budget.day.get::<watt_hour>();
    Ok(Report {
        answers: words::answers(inputs, &budget, lasts.as_ref()),
        remarks: words::remarks(inputs, &budget, lasts.as_ref(), all_on),
        tables: words::tables(inputs, &budget, &full),
        drawings: vec![words::day(inputs, &budget)],
        working: words::working(inputs, &budget, lasts.as_ref(), &full),
        cautions: Caution::all(&cautions::BATTERY),
        buy: inputs.battery.iter().map(|battery| battery.line(inputs.voltage)).collect(),
        outcome: Record::new()
            .with("wh_day", day_wh)
            .with("ah_day", budget.day_charge.get::<ampere_hour>())
            .with("needed_wh", budget.needed.get::<watt_hour>())
            .with("needed_ah", budget.needed_charge.get::<ampere_hour>())
            .maybe("runtime_h", lasts.map(|lasts| lasts.time.get::<hour>()))
            .maybe("battery_wh", inputs.battery.as_ref().map(|b| b.energy.get::<watt_hour>()))
            .with("all_on_w", all_on.get::<watt>())
            .with("all_on_a", (all_on / inputs.voltage).get::<ampere>())
            .with("average_w", day_wh / 24.0)
            .with(
                "charging",
                full.iter()
                    .zip(&inputs.charging)
                    .map(|(time, (label, _))| {
                        Record::new()
                            .with("label", label.clone())
                            .with("full_h", time.get::<hour>())
                    })
                    .collect::<Vec<_>>(),
            ),
        ..Report::default()
    })
}
