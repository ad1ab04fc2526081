//! What charges the battery: shore power, the alternator, panels month by month.

use uom::si::electric_potential::volt;
use uom::si::energy::watt_hour;
use uom::si::f64::{ElectricCurrent, ElectricPotential, Energy, Power, Time};
use uom::si::power::watt;
use uom::si::time::hour;

use super::cable::Cable;
use super::checks::Cables;
use super::loads::LABEL;
use super::words::spell;
use super::{Battery, Inputs};
use crate::ask::Ask;
use crate::energy::charging::{
    Charging, TAPER, TIME_TO_FULL, time_to_full, time_to_full_lead_acid,
};
use crate::fault::Fault;
use crate::outcome::Record;
use crate::quantity::{CURRENT, LENGTH, POWER, amount, percent};
use crate::reader::Reader;
use crate::report::{Step, Table, TableRow, texts};
use crate::sheet::solar::MONTHS;
use crate::source::Source;
use crate::text::text;

static CHARGE_POWER: Ask =
    Ask::measure("power", "Power at the battery", &POWER, ["W", "W"], (0.1, 100_000.0))
        .usual("380 W", "380 W")
        .help("Charging current on its label times the battery's voltage.");
static CHARGE_CURRENT: Ask =
    Ask::measure("current", "Charging current", &CURRENT, ["A", "A"], (0.01, 10_000.0))
        .usual("30 A", "30 A")
        .help("On the charger's label: shore charger, or the one between alternator and battery.");
static PANELS: Ask = Ask::sheet_of("solar", "Panels of a sheet", "solar")
    .help("Takes the yield of each month from there.");
static CHARGED_BY: Ask = Ask::either("Charges with", &[&CHARGE_POWER, &CHARGE_CURRENT, &PANELS]);
static CHARGE_HOURS: Ask = Ask::number_in("hours", "Hours a day", "h", (0.0, 24.0))
    .optional()
    .usual("2", "2")
    .help("Driving, or plugged in; leave blank for panels.");
static KIND: Ask = Ask::choice(
    "kind",
    "Kind of charger",
    &[
        ("auto", "not said"),
        ("shore", "shore charger"),
        ("dc_dc", "alternator through a DC-DC charger"),
        ("alternator", "straight from the alternator, through a relay"),
        ("controller", "solar controller"),
    ],
)
.help("What limits the current: lithium is never charged straight from an alternator.");
static WAY: Ask =
    Ask::measure("length", "Charger to battery, one way", &LENGTH, ["ft", "m"], (0.01, 100.0))
        .optional()
        .usual("8 ft", "2.5 m")
        .help("For its cable and the fuses at both of its ends; leave blank for panels.");
pub(super) static CHARGING: Ask = Ask::rows(
    "charging",
    "What charges it",
    "charger",
    0,
    &[&LABEL, &CHARGED_BY, &CHARGE_HOURS, &KIND, &WAY],
)
.optional();

/// What stays in a battery of what is charged.
pub(super) static CHARGED_SHARE: Source =
    Source::common_practice("of a charge 85 % stays in a lead-acid battery, 95 % in lithium");

/// One charger.
pub(super) struct Charger {
    pub label: String,
    pub by: ChargedBy,
    pub time: Option<Time>,
    pub kind: &'static str,
    /// Charger to battery, one way. [m]
    pub way_m: Option<f64>,
    /// Its current: as typed, or its power at the nominal voltage; none where it is not known. [A]
    pub current_a: Option<f64>,
    /// Its current is what was typed, whatever the voltage.
    pub by_current: bool,
}

/// How a charger brings what it brings.
pub(super) enum ChargedBy {
    /// The same power all the time.
    Power(Power),
    /// Panels: the yield of a mean day, January first. [Wh]
    Months(Vec<f64>),
}

impl Charger {
    /// The constant power, where it is one.
    pub fn power(&self) -> Option<Power> {
        match self.by {
            ChargedBy::Power(power) => Some(power),
            ChargedBy::Months(_) => None,
        }
    }
}

pub(super) fn read(
    reader: &Reader<'_>,
    voltage: ElectricPotential,
    battery: Option<&Battery>,
) -> Vec<Charger> {
    let lithium = battery.is_some_and(|battery| battery.lithium);
    reader.rows(&CHARGING, |row| {
        let mut panels_w = None;
        let by = match row.which(&CHARGED_BY) {
            Some(1) => ChargedBy::Power(row.measure::<ElectricCurrent>(&CHARGE_CURRENT) * voltage),
            Some(2) => {
                // Panels may take the day's use from this very sheet: their yield does not hang on it.
                let outcome = row.sheet_if_ready(&PANELS);
                let yields = outcome.map(|outcome| {
                    panels_w = outcome.number("rated_w");
                    let months = outcome.list("months").iter();
                    months.filter_map(|month| month.number("wh_day")).collect()
                });
                ChargedBy::Months(yields.unwrap_or_default())
            }
            _ => ChargedBy::Power(row.measure(&CHARGE_POWER)),
        };
        let time = row.maybe_number(&CHARGE_HOURS).map(Time::new::<hour>);
        let kind = row.choice(&KIND);
        if kind == "alternator" && lithium {
            row.fault_at(
                &KIND,
                "lithium is never charged straight from an alternator, which it overloads: put a DC-DC charger between them and choose that here",
            );
        }
        let power_w = match &by {
            ChargedBy::Power(power) => Some(power.get::<watt>()),
            ChargedBy::Months(_) => panels_w,
        };
        Charger {
            label: row.words(&LABEL),
            by,
            time,
            kind,
            way_m: row.maybe_si(&WAY),
            by_current: row.which(&CHARGED_BY) == Some(1),
            current_a: power_w.map(|watts| watts / voltage.get::<volt>()),
        }
    })
}

/// What a charger comes to with a battery.
pub(super) struct Charged {
    /// From the lowest charge to full; none for panels.
    pub full: Option<Time>,
    /// Kept in a day of its hours, before the battery is full.
    pub day: Option<Energy>,
    /// Month by month: left over after the day's use, and days to full where anything is left.
    pub months: Vec<(Energy, Energy, Option<f64>)>,
}

impl Battery {
    /// What stays of a charge.
    pub fn kept(&self) -> f64 {
        // The careful one where nobody says what it is.
        if self.lithium { 0.95 } else { 0.85 }
    }
}

/// Every charger with the battery; `use_wh` is what a day takes out of the battery.
pub(super) fn charged(
    inputs: &Inputs,
    battery: &Battery,
    day: Energy,
) -> Result<Vec<Charged>, Vec<Fault>> {
    let missing = battery.energy * inputs.demand.usable;
    let drawn = day / inputs.demand.efficiency;
    inputs
        .charging
        .iter()
        .enumerate()
        .map(|(index, charger)| match &charger.by {
            ChargedBy::Power(power) => {
                let charging = charging(inputs, battery, *power);
                let full = if battery.lead_acid {
                    time_to_full_lead_acid(missing, battery.energy, charging)
                } else {
                    time_to_full(missing, charging)
                };
                let full = full.map_err(|error| {
                    vec![Fault::new(text!("charging.{}.power", &index), error.to_string())]
                })?;
                let kept = least(charging.power, charging.battery_limit) * charging.efficiency;
                Ok(Charged {
                    full: Some(full),
                    day: charger.time.map(|time| kept * time),
                    months: Vec::new(),
                })
            }
            ChargedBy::Months(yields) => Ok(Charged {
                full: None,
                day: None,
                months: yields
                    .iter()
                    .map(|wh| {
                        let brought = Energy::new::<watt_hour>(*wh);
                        let left = brought * battery.kept() - drawn;
                        let days = missing.value / left.value;
                        let days = (left > Energy::default() && days < 36_500.0).then_some(days);
                        (brought, left, days)
                    })
                    .collect(),
            }),
        })
        .collect()
}

fn charging(inputs: &Inputs, battery: &Battery, power: Power) -> Charging {
    Charging {
        power,
        battery_limit: battery.charge_limit.map_or(power, |limit| limit * inputs.voltage),
        efficiency: battery.kept(),
    }
}

fn least(a: Power, b: Power) -> Power {
    if b < a { b } else { a }
}

fn wh(energy: Energy) -> String {
    amount(energy.get::<watt_hour>(), 0, "Wh")
}

pub(super) fn name(charger: &Charger, index: usize) -> String {
    if charger.label.is_empty() { text!("charger {}", index + 1) } else { charger.label.clone() }
}

pub(super) fn tables(inputs: &Inputs, charged: &[Charged]) -> Vec<Table> {
    let mut tables = Vec::new();
    let by_power = inputs.charging.iter().zip(charged).enumerate();
    let rows: Vec<TableRow> = by_power
        .clone()
        .filter_map(|(index, (charger, charged))| {
            let (power, full) = (charger.power()?, charged.full?);
            let power = amount(power.get::<watt>(), 0, "W");
            let day = charged.day.map_or_else(String::new, wh);
            Some(TableRow {
                cells: vec![name(charger, index), power, spell(full), day],
                chosen: false,
            })
        })
        .collect();
    if !rows.is_empty() {
        tables.push(Table {
            title: "From the lowest charge to full, at least".into(),
            heads: texts(&["Charged by", "Power", "Time to full", "Kept in a day"]),
            rows,
        });
    }
    for (index, (charger, charged)) in by_power.filter(|(_, (_, c))| !c.months.is_empty()) {
        let rows =
            charged.months.iter().zip(MONTHS).map(|((brought, left, days), month)| TableRow {
                cells: vec![
                    month.to_owned(),
                    wh(*brought),
                    wh(*left),
                    match days {
                        Some(days) => amount(*days, 1, "days"),
                        None => "never".to_owned(),
                    },
                ],
                chosen: false,
            });
        tables.push(Table {
            title: text!("{}: what a mean day leaves after its use", name(charger, index)),
            heads: texts(&["Month", "Panels bring", "Left over", "Lowest charge to full"]),
            rows: rows.collect(),
        });
    }
    tables
}

pub(super) fn steps(
    inputs: &Inputs,
    battery: &Battery,
    charged: &[Charged],
    steps: &mut Vec<Step>,
) {
    for (index, (charger, charged)) in inputs.charging.iter().zip(charged).enumerate() {
        let (Some(power), Some(full)) = (charger.power(), charged.full) else { continue };
        let charging = charging(inputs, battery, power);
        let lesser = amount(least(power, charging.battery_limit).get::<watt>(), 0, "W");
        steps.push(Step::new(
            text!("To full: {}", name(charger, index)),
            if battery.lead_acid {
                "t = C·u₁ / (P·η) + C·u₂ / (P·η − P₁) · ln(P·η / P₁)"
            } else {
                "t = C · u / (P · η)"
            },
            text!(
                "{} · {} / ({} · {})",
                wh(battery.energy),
                percent(inputs.demand.usable * 100.0),
                &lesser,
                percent(battery.kept() * 100.0)
            ),
            spell(full),
            if battery.lead_acid { &TAPER } else { &TIME_TO_FULL },
        ));
    }
}

pub(super) fn records(inputs: &Inputs, charged: &[Charged], cables: &Cables) -> Vec<Record> {
    let months = |charged: &Charged| -> Vec<Record> {
        let months = charged.months.iter();
        months
            .map(|(brought, left, days)| {
                Record::new()
                    .with("wh_day", brought.get::<watt_hour>())
                    .with("left_wh_day", left.get::<watt_hour>())
                    .maybe("full_days", *days)
            })
            .collect()
    };
    inputs
        .charging
        .iter()
        .enumerate()
        .map(|(index, charger)| {
            let record = Record::new()
                .maybe("current_a", charger.current_a)
                .maybe("cable", cables.of(index).map(Cable::record));
            // Without a battery nothing is said of what it fills.
            let Some(charged) = charged.get(index) else { return record };
            let record = record
                .with("label", charger.label.clone())
                .maybe("power_w", charger.power().map(|power| power.get::<watt>()))
                .maybe("full_h", charged.full.map(|time| time.get::<hour>()))
                .maybe("kept_wh_day", charged.day.map(|day| day.get::<watt_hour>()));
            if charged.months.is_empty() { record } else { record.with("months", months(charged)) }
        })
        .collect()
}
