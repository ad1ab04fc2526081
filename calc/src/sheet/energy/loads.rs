//! The loads of a day: typed, or taken from the sheet that they are on.

use std::sync::Arc;

use calc_derive::{Either, Inputs};
use uom::si::f64::{ElectricCurrent, ElectricPotential, Power, Time};
use uom::si::power::watt;
use uom::si::time::hour;

use crate::energy::budget::DayUse;
use crate::outcome::Record;
use crate::reader::Reader;
use crate::text::text;
use crate::words::{Arg, Id, Msg, energy as words};

/// What is asked of a load.
#[derive(Inputs)]
#[words(energy)]
pub(super) struct Row {
    #[ask(no_help, usual("fridge", "fridge"))]
    label: String,
    #[ask(either)]
    draw: Draw,
    #[ask(unit("h"), range(0.0, 24.0), usual("4", "4"), or_handed)]
    hours: Option<f64>,
    #[ask(percent, range(0.0, 100.0), default("100"), usual("40", "40"), or_handed)]
    duty_percent: Option<f64>,
    #[ask(usually(false))]
    mains: bool,
    #[ask(units("W", "W"), range(0.0, 100_000.0), usual("900 W", "900 W"))]
    start: Option<Power>,
}

/// The outcome of the sheet that is taken from.
type Taken = Option<Arc<Record>>;

/// What a load draws.
#[derive(Either)]
#[words(energy)]
enum Draw {
    #[ask(units("W", "W"), range(0.0, 100_000.0), usual("45 W", "45 W"))]
    Power(Power),
    #[ask(units("A", "A"), range(0.0, 10_000.0), usual("3.5 A", "3.5 A"))]
    Current(ElectricCurrent),
    #[ask(sheet_of("heat_load circuit voltage_drop lights water"), word(load_sheet))]
    Sheet(Taken),
    #[ask(sheet_of("heat_load"), word(load_heater))]
    Heater(Taken),
}

/// A load of the day.
pub(super) struct DayLoad {
    /// As it was typed, or its number.
    pub label: Arg,
    pub day: DayUse,
    pub mains: bool,
    pub start: Option<Power>,
}

impl DayLoad {
    /// Of what was typed; what another sheet does not hand over must have been.
    pub fn of(reader: &Reader<'_>, index: usize, row: &Row, voltage: ElectricPotential) -> Self {
        let handed = match &row.draw {
            Draw::Power(power) => Ok(Handed::power(*power)),
            Draw::Current(current) => Ok(Handed::power(*current * voltage)),
            Draw::Sheet(None) | Draw::Heater(None) => Ok(Handed::default()),
            Draw::Sheet(Some(outcome)) => of_sheet(outcome).map_err(|why| (Draw::SHEET, why)),
            Draw::Heater(Some(outcome)) => of_heater(outcome).map_err(|why| (Draw::HEATER, why)),
        };
        let handed = handed.unwrap_or_else(|(ask, why)| {
            reader.tell_at(&text!("{}.{}.{}", super::Inputs::LOADS.key, &index, ask.key), why);
            Handed::default()
        });
        let hours = row.hours.or(handed.hours);
        if hours.is_none() {
            reader.tell_missing(super::Inputs::LOADS, index, Row::HOURS);
        }
        let duty_percent = row.duty_percent.or(handed.duty_percent);
        Self {
            label: match row.label.as_str() {
                "" => Msg::from(words::LoadNumber { number: index + 1 }).into(),
                label => label.into(),
            },
            day: DayUse {
                power: handed.power,
                time: Time::new::<hour>(hours.unwrap_or_default()),
                duty: duty_percent.unwrap_or(100.0) / 100.0,
            },
            mains: row.mains,
            start: row.start,
        }
    }
}

/// What another sheet hands over.
#[derive(Default)]
struct Handed {
    power: Power,
    hours: Option<f64>,
    duty_percent: Option<f64>,
}

impl Handed {
    fn power(power: Power) -> Self {
        Self { power, ..Self::default() }
    }

    fn watts(watts: f64) -> Self {
        Self::power(Power::new::<watt>(watts))
    }
}

/// The load of another sheet, whichever of the kinds it is.
fn of_sheet(outcome: &Record) -> Result<Handed, Id> {
    let number = |name| outcome.number(name);
    // A circuit; lamps; a cooler.
    for name in ["load_power_w", "watts_total", "cooler_w"] {
        if let Some(watts) = number(name) {
            return Ok(Handed::watts(watts));
        }
    }
    if let (Some(amperes), Some(volts)) = (number("current_a"), number("load_voltage_v")) {
        return Ok(Handed::watts(amperes * volts));
    }
    if let Some(watts) = number("pump_w") {
        let hours = number("pump_min_day").map(|minutes| (minutes / 60.0).min(24.0));
        return Ok(Handed { hours, ..Handed::watts(watts) });
    }
    Err(if number("heat_w").is_some() { words::NO_COOLER } else { words::NO_PUMP })
}

fn of_heater(outcome: &Record) -> Result<Handed, Id> {
    let watts = outcome.number("heater_draw_w").ok_or(words::NO_HEATER)?;
    let duty_percent = outcome.number("heater_duty_percent");
    Ok(Handed { duty_percent, ..Handed::watts(watts) })
}
