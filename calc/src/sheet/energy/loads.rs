//! The loads of a day: typed, or taken from the sheet that they are on.

use std::sync::Arc;

use uom::si::f64::{ElectricCurrent, ElectricPotential, Power, Time};
use uom::si::power::watt;
use uom::si::time::hour;

use crate::ask::Ask;
use crate::energy::budget::Load;
use crate::outcome::Record;
use crate::quantity::{CURRENT, POWER};
use crate::reader::Reader;

pub(super) static LABEL: Ask = Ask::words("label", "What it is").usual("fridge", "fridge");
static POWER_ASK: Ask = Ask::measure("power", "Power", &POWER, ["W", "W"], (0.0, 100_000.0))
    .usual("45 W", "45 W")
    .help("On its label, while it runs.");
static CURRENT_ASK: Ask = Ask::measure("current", "Current", &CURRENT, ["A", "A"], (0.0, 10_000.0))
    .usual("3.5 A", "3.5 A")
    .help("On its label, at the battery's voltage.");
static SHEET: Ask =
    Ask::sheet_of("sheet", "From its sheet", "heat_load circuit voltage_drop lights water").help(
        "All loads of a circuit, the load of a run, the lamps, the cooler, or the water pump with its hours.",
    );
static HEATER: Ask = Ask::sheet_of("heater", "Heater of a sheet", "heat_load")
    .help("What the heater itself draws, and how much of the coldest night it runs.");
static DRAW: Ask = Ask::either("Power or current", &[&POWER_ASK, &CURRENT_ASK, &SHEET, &HEATER]);
static HOURS: Ask = Ask::number_in("hours", "Hours a day", "h", (0.0, 24.0))
    .usual("4", "4")
    .help("Switched on, in a day of the kind you plan for.");
static DUTY: Ask = Ask::percent("duty_percent", "Share of that time it runs", (0.0, 100.0))
    .default("100")
    .usual("40", "40")
    .help("A fridge runs a third to a half of the time; a lamp all of it.");
static MAINS: Ask = Ask::flag("mains", "Runs on mains voltage", false)
    .help("Behind the inverter below, which takes more out of the battery than the load uses.");
static START: Ask =
    Ask::measure("start", "Power as it starts", &POWER, ["W", "W"], (0.0, 100_000.0))
        .optional()
        .usual("900 W", "900 W")
        .help("Compressors, pumps and motors take three to six times their power for a moment.");
pub(super) static LOADS: Ask = Ask::rows(
    "loads",
    "Loads of a day",
    "load",
    1,
    &[&LABEL, &DRAW, &HOURS, &DUTY, &MAINS, &START],
);

/// A load of the day.
pub(super) struct DayLoad {
    pub label: String,
    pub load: Load,
    pub mains: bool,
    pub start: Option<Power>,
}

pub(super) fn read(row: &Reader<'_>, voltage: ElectricPotential) -> DayLoad {
    let mut handed = Handed::default();
    let power = match row.which(&DRAW) {
        Some(1) => row.measure::<ElectricCurrent>(&CURRENT_ASK) * voltage,
        Some(0) => row.measure(&POWER_ASK),
        Some(from) => {
            let ask = if from == 2 { &SHEET } else { &HEATER };
            if let Some(outcome) = row.sheet(ask) {
                let found = if from == 2 { of_sheet(&outcome) } else { of_heater(&outcome) };
                match found {
                    Ok(found) => handed = found,
                    Err(message) => row.fault_at(ask, message),
                }
            }
            Power::new::<watt>(handed.watts)
        }
        None => Power::default(),
    };
    let hours = match handed.hours {
        Some(hours) if !row.given(&HOURS) => hours,
        _ => row.number(&HOURS),
    };
    let duty = match handed.duty_percent {
        Some(duty) if !row.given(&DUTY) => duty,
        _ => row.number(&DUTY),
    };
    DayLoad {
        label: row.words(&LABEL),
        load: Load { power, time: Time::new::<hour>(hours), duty: duty / 100.0 },
        mains: row.flag(&MAINS),
        start: row.maybe(&START),
    }
}

/// What another sheet hands over.
#[derive(Default)]
struct Handed {
    watts: f64,
    hours: Option<f64>,
    duty_percent: Option<f64>,
}

/// The load of another sheet, whichever of the kinds it is.
fn of_sheet(outcome: &Arc<Record>) -> Result<Handed, &'static str> {
    let number = |name| outcome.number(name);
    // A circuit; lamps; a cooler.
    for name in ["load_power_w", "watts_total", "cooler_w"] {
        if let Some(watts) = number(name) {
            return Ok(Handed { watts, ..Handed::default() });
        }
    }
    if let (Some(amperes), Some(volts)) = (number("current_a"), number("load_voltage_v")) {
        return Ok(Handed { watts: amperes * volts, ..Handed::default() });
    }
    if let Some(watts) = number("pump_w") {
        let hours = number("pump_min_day").map(|minutes| (minutes / 60.0).min(24.0));
        return Ok(Handed { watts, hours, ..Handed::default() });
    }
    Err(if number("heat_w").is_some() {
        "this sheet sizes no cooler: fill in its noon and its coefficient of performance"
    } else {
        "this sheet gives no pump: fill in its flow and its current"
    })
}

fn of_heater(outcome: &Arc<Record>) -> Result<Handed, &'static str> {
    match outcome.number("heater_draw_w") {
        Some(watts) => {
            Ok(Handed { watts, hours: None, duty_percent: outcome.number("heater_duty_percent") })
        }
        None => Err("this sheet names no heater: fill in the heater there"),
    }
}
