//! A day's use of electricity, the battery that carries it, and how long a given battery lasts.

mod cable;
mod charging;
mod checks;
mod loads;
mod supply;
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
use crate::electrical::charging::{GREATEST_CHARGING_V, GREATEST_NOMINAL_V};
use crate::energy::battery_fuse::BANK;
use crate::energy::battery_voltage::{
    self, BELOW_50_V, Chemistry, LEAD_CELL, LITHIUM_CELL, LITHIUM_RESTED,
};
use crate::energy::budget::{BUDGET, Budget, BudgetError, Demand, Load, budget, runtime};
use crate::energy::cautions;
use crate::energy::charging::{TAPER, TIME_TO_FULL};
use crate::energy::inverter::{self, CUT_OFF, DC_CURRENT, RATINGS, STARTS};
use crate::energy::peukert::{Discharge, EXPONENTS, PEUKERT, Rating, discharge};
use crate::fault::Fault;
use crate::lists::{BuyLine, LineId};
use crate::outcome::Record;
use crate::quantity::{
    CHARGE, CURRENT, ENERGY, MASS, Mass, Measure, Style, VOLTAGE, plain, significant,
};
use crate::reader::Reader;
use crate::report::{Caution, Report};
use crate::source::Source;
use crate::words::Phrase;
use cable::{CABLE, Cable, CableInputs, Carried, read_cable};
use charging::{CHARGING, Charged, ChargedBy, Charger};
use checks::Cables;
use loads::{DayLoad, LOADS};
use supply::{INVERTER, InverterInputs, read_inverter};

/// The sheet.
pub static SHEET: Sheet = Sheet {
    kind: "energy",
    title: Phrase::Written("Battery and a day's use"),
    trade: Phrase::Written("Living in it"),
    purpose: Phrase::Written(
        "Add up what a day draws, size the battery for the days without charging, and see how long a battery lasts.",
    ),
    asks: &[
        &NOMINAL_VOLTAGE,
        &LOADS,
        &INVERTER,
        &DAYS,
        &USABLE,
        &EFFICIENCY,
        &BATTERY,
        &CABLE,
        &CHARGING,
    ],
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
        &charging::CHARGED_SHARE,
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
.help("On the battery: 12 V for lead-acid, 12.8 V for lithium iron phosphate, which rested stands near 13.3 V. Up to a 48 V battery.");
static DAYS: Ask = Ask::number_in("days", "Days without charging", "d", (0.01, 365.0))
    .usual("2", "2")
    .help("How long you stand where nothing charges.");
static USABLE: Ask = Ask::percent("usable_percent", "Share of the battery to use", (1.0, 100.0))
    .usual("80", "80")
    .help("Lead-acid lasts by 50 %, lithium iron phosphate by 80 %; the maker says more.");
static EFFICIENCY: Ask =
    Ask::percent("efficiency_percent", "Share that reaches the loads", (1.0, 100.0))
        .usual("95", "95")
        .help("Cables and converters take the rest. What the inverter takes is counted by itself: do not take it off here.");
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
static CHEMISTRY: Ask = Ask::choice(
    "chemistry",
    "Kind of battery",
    &[
        ("auto", "not said: lead-acid with a Peukert exponent"),
        ("lithium", "lithium iron phosphate"),
        ("lead_acid", "lead-acid"),
    ],
)
.help("Lead-acid takes longer over its last fifth, and keeps less of a charge.");
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
static CHARGING_VOLTAGE: Ask = Ask::measure(
    "charging_voltage",
    "Highest charging voltage",
    &VOLTAGE,
    ["V", "V"],
    (1.0, 1000.0),
)
.optional()
.usual("14.6 V", "14.6 V")
.help("In its maker\u{2019}s sheet: fuses and holders must stand it. Left blank: 3.65 V for each lithium cell, 2.67 V for each lead-acid one, which is equalising.");
static BATTERY_PRICE: Ask = Ask::number("price", "Price", (0.0, 1e6)).optional();
static BATTERY_MASS: Ask = Ask::measure("mass", "Mass", &MASS, ["lb", "kg"], (0.0, 5000.0))
    .optional()
    .usual("48 lb", "22 kg")
    .help("For the weight on the buy list; on the battery, or in its maker's sheet.");
static BATTERY: Ask = Ask::group(
    "battery",
    "The battery you have in mind",
    &[
        &CAPACITY,
        &CHEMISTRY,
        &HOURS_RATING,
        &PEUKERT_EXPONENT,
        &CHARGE_LIMIT,
        &CHARGING_VOLTAGE,
        &BATTERY_PRICE,
        &BATTERY_MASS,
    ],
)
.optional();
/// P = U I.
static OHM: Source = Source::identity("power is voltage times current");
/// What was typed, read.
struct Inputs {
    voltage: ElectricPotential,
    loads: Vec<DayLoad>,
    inverter: Option<InverterInputs>,
    demand: Demand,
    battery: Option<Battery>,
    cable: Option<CableInputs>,
    charging: Vec<Charger>,
}

/// The battery that one has in mind.
struct Battery {
    energy: Energy,
    hours: f64,
    exponent: Option<f64>,
    lead_acid: bool,
    lithium: bool,
    charge_limit: Option<ElectricCurrent>,
    /// The highest, where its maker gives one. [V]
    charging_v: Option<f64>,
    /// As it was typed.
    capacity: String,
    price: Option<f64>,
    mass: Option<Mass>,
}

fn read(reader: &Reader<'_>) -> Inputs {
    let voltage: ElectricPotential = reader.measure(&NOMINAL_VOLTAGE);
    if voltage.get::<volt>() > GREATEST_NOMINAL_V + 1e-6 {
        reader.fault_at(
            &NOMINAL_VOLTAGE,
            "from 50 V on other rules hold, save for a 48 V battery of up to 51.2 V: leave it to a licensed electrician",
        );
    }
    let loads = reader.rows(&LOADS, |row| loads::read(row, voltage));
    let inverter = reader.maybe_group(&INVERTER, |group| read_inverter(group, voltage));
    let demand = Demand {
        voltage,
        days: reader.number(&DAYS),
        usable: reader.number(&USABLE) / 100.0,
        efficiency: reader.number(&EFFICIENCY) / 100.0,
    };
    let battery = reader.maybe_group(&BATTERY, |group| read_battery(group, voltage));
    Inputs {
        voltage,
        loads,
        inverter,
        demand,
        cable: reader.maybe_group(&CABLE, read_cable),
        charging: charging::read(reader, voltage, battery.as_ref()),
        battery,
    }
}

fn read_battery(group: &Reader<'_>, voltage: ElectricPotential) -> Battery {
    let exponent = group.maybe_number(&PEUKERT_EXPONENT);
    let chemistry = group.choice(&CHEMISTRY);
    if chemistry == "lithium" && exponent.is_some() {
        group.fault_at(
            &PEUKERT_EXPONENT,
            "Peukert's law is for lead-acid: leave the exponent out for lithium, or choose lead-acid",
        );
    }
    let charging_v = group.maybe_si(&CHARGING_VOLTAGE);
    if charging_v.is_some_and(|highest| highest < voltage.get::<volt>()) {
        group.fault_at(
            &CHARGING_VOLTAGE,
            "a battery is charged above its nominal voltage: 14.6 V for lithium of 12.8 V",
        );
    }
    if charging_v.is_some_and(|highest| highest > GREATEST_CHARGING_V) {
        group.fault_at(
            &CHARGING_VOLTAGE,
            "beyond a 48 V battery\u{2019}s charging voltage other rules hold: leave it to a licensed electrician",
        );
    }
    Battery {
        energy: group
            .notation(&CAPACITY, Energy::new::<watt_hour>(1.0), |text| capacity(text, voltage)),
        hours: group.maybe_number(&HOURS_RATING).unwrap_or(20.0),
        exponent,
        lead_acid: chemistry == "lead_acid" || chemistry == "auto" && exponent.is_some(),
        lithium: chemistry == "lithium",
        charge_limit: group.maybe(&CHARGE_LIMIT),
        charging_v,
        capacity: group.words(&CAPACITY),
        price: group.maybe_number(&BATTERY_PRICE),
        mass: group.maybe(&BATTERY_MASS),
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

/// The highest voltage that stands on fuses and holders: as the maker gives it, or by the battery's cells.
fn charging_v(inputs: &Inputs) -> f64 {
    let battery = inputs.battery.as_ref();
    let chemistry = match battery {
        Some(battery) if battery.lithium => Chemistry::Lithium,
        Some(battery) if battery.lead_acid => Chemistry::LeadAcid,
        _ => Chemistry::Unknown,
    };
    battery
        .and_then(|battery| battery.charging_v)
        .unwrap_or_else(|| battery_voltage::highest_v(inputs.voltage.get::<volt>(), chemistry).0)
}

impl Battery {
    fn line(&self, voltage: ElectricPotential) -> BuyLine {
        let volts = plain(voltage.get::<volt>(), 2);
        let id = text!("battery/{}wh/{}v", plain(self.energy.get::<watt_hour>(), 0), &volts);
        let spec = text!("{}, {} V", &self.capacity, &volts);
        BuyLine::pieces(LineId::shared(id), "battery", spec, 1.0).cost(self.price).mass(self.mass)
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

/// All that is worked out of a day.
struct Figures {
    budget: Budget,
    /// The loads' names, and the inverter's as the last where it takes any.
    labels: Vec<String>,
    /// The loads as they count, in the same order.
    loads: Vec<Load>,
    inverter: Option<inverter::Ask>,
    lasts: Option<Lasts>,
    charged: Vec<Charged>,
    /// From the battery with all loads on.
    all_on: Power,
    cable: Option<Result<Cable, String>>,
    charger_cables: Cables,
}

impl Figures {
    fn of(inputs: &Inputs) -> Result<Self, Vec<Fault>> {
        let mut loads: Vec<Load> = inputs.loads.iter().map(|load| load.load).collect();
        let mut labels: Vec<String> = inputs
            .loads
            .iter()
            .enumerate()
            .map(|(at, load)| match load.label.as_str() {
                "" => text!("load {}", at + 1),
                label => label.to_owned(),
            })
            .collect();
        // The loads themselves first, so that a fault names the load that is wrong.
        let mut budget = budget(&loads, inputs.demand).map_err(fault)?;
        let mut all_on = loads.iter().fold(Power::default(), |sum, load| sum + load.power);
        let mut asked = None;
        let mut lowest = inverter::cut_off(inputs.voltage);
        // Of constant power through the battery cable, with the inverter at its rating.
        let mut through = inputs
            .loads
            .iter()
            .filter(|load| !load.mains)
            .fold(Power::default(), |sum, load| sum + load.load.power);
        if let Some(inverter) = &inputs.inverter {
            let found = supply::ask_of(inverter.unit, &inputs.loads, inputs.voltage)?;
            let day = Time::new::<hour>(24.0);
            loads.push(Load { power: found.lost / day, time: day, duty: 1.0 });
            labels.push("inverter\u{2019}s own".to_owned());
            budget = self::budget(&loads, inputs.demand).map_err(fault)?;
            all_on += found.continuous * (1.0 / inverter.unit.efficiency - 1.0);
            lowest = inverter.unit.lowest;
            through += inverter.draws(&found);
            asked = Some(found);
        }
        let (lasts, charged) = match &inputs.battery {
            Some(battery) => (
                lasts(inputs, battery, budget.day)?,
                charging::charged(inputs, battery, budget.day)?,
            ),
            None => (None, Vec::new()),
        };
        let lowest_v = lowest.get::<volt>();
        let cable = inputs.cable.as_ref().map(|cable| {
            if asked.is_none() && inputs.loads.iter().any(|load| load.mains) {
                return Err("some loads run on mains voltage, so that it carries what the inverter draws: fill in the inverter".to_owned());
            }
            self::cable::cable(cable, &carried(inputs, through, lowest_v))
        });
        let charger_cables = Cables::of_all(inputs, lowest_v);
        Ok(Self {
            budget,
            labels,
            loads,
            inverter: asked,
            lasts,
            charged,
            all_on,
            cable,
            charger_cables,
        })
    }
}

/// What the battery cable carries: all loads with the inverter at its rating, or the strongest charger.
fn carried(inputs: &Inputs, loads: Power, lowest_v: f64) -> Carried {
    let mut power_w = loads.get::<watt>();
    let mut current_a: f64 = 0.0;
    for charger in &inputs.charging {
        match (&charger.by, charger.by_current) {
            (ChargedBy::Power(power), false) => power_w = power_w.max(power.get::<watt>()),
            _ => current_a = current_a.max(charger.current_a.unwrap_or(0.0)),
        }
    }
    Carried {
        power_w,
        current_a,
        least_fuse_a: inputs.inverter.as_ref().and_then(|i| i.maker_fuse_a).unwrap_or(0.0),
        lowest_v,
        charging_v: charging_v(inputs),
    }
}

fn report(inputs: &Inputs, style: Style) -> Result<Report, Vec<Fault>> {
    let figures = Figures::of(inputs)?;
    let Figures { budget, all_on, .. } = &figures;
    let day_wh = budget.day.get::<watt_hour>();
    let cable = figures.cable.as_ref().and_then(|cable| cable.as_ref().ok());
    let battery_wh = inputs.battery.as_ref().map(|battery| battery.energy.get::<watt_hour>());
    Ok(Report {
        answers: words::answers(inputs, &figures),
        remarks: words::remarks(inputs, &figures),
        tables: words::tables(inputs, &figures, style),
        drawings: vec![words::day(inputs, &figures)],
        working: words::working(inputs, &figures),
        cautions: Caution::all(&cautions::BATTERY),
        buy: inputs
            .battery
            .iter()
            .map(|battery| battery.line(inputs.voltage))
            .chain(cable.map_or_else(Vec::new, |cable| cable.buy(1, style)))
            .chain(
                cable
                    .zip(inputs.inverter.as_ref())
                    .and_then(|(cable, inverter)| cable.buy_inverter_fuse(inverter)),
            )
            .chain(figures.charger_cables.buy(style))
            .collect(),
        outcome: Record::new()
            .with("wh_day", day_wh)
            .with("ah_day", budget.day_charge.get::<ampere_hour>())
            .with("needed_wh", budget.needed.get::<watt_hour>())
            .with("needed_ah", budget.needed_charge.get::<ampere_hour>())
            .maybe("runtime_h", figures.lasts.as_ref().map(|lasts| lasts.time.get::<hour>()))
            .maybe("battery_wh", battery_wh)
            .maybe("usable_wh", battery_wh.map(|wh| wh * inputs.demand.usable))
            .with("efficiency_percent", inputs.demand.efficiency * 100.0)
            .maybe("kept_percent", inputs.battery.as_ref().map(|battery| 100.0 * battery.kept()))
            .with("all_on_w", all_on.get::<watt>())
            .with("all_on_a", (*all_on / inputs.voltage).get::<ampere>())
            .with("average_w", day_wh / 24.0)
            .maybe("inverter", figures.inverter.as_ref().map(supply::inverter_record))
            .maybe("cable", cable.map(Cable::record))
            .with("nominal_v", inputs.voltage.get::<volt>())
            .with("charging_v", charging_v(inputs))
            .with("charging", charging::records(inputs, &figures.charged, &figures.charger_cables)),
        ..Report::default()
    })
}
