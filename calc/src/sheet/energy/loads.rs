//! The loads of a day: typed, or taken from the sheet that they are on.

use calc_derive::{Either, Inputs};
use uom::si::f64::{ElectricCurrent, ElectricPotential, Power, Time};
use uom::si::time::hour;

use crate::energy::budget::DayUse;
use crate::reader::Reader;
use crate::sheet::handoffs::{Drawn, HeaterDrawn, Load, Taken};
use crate::text::text;
use crate::words::{Arg, Msg, energy as words};

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

/// What a load draws.
#[derive(Either)]
#[words(energy)]
enum Draw {
    #[ask(units("W", "W"), range(0.0, 100_000.0), usual("45 W", "45 W"))]
    Power(Power),
    #[ask(units("A", "A"), range(0.0, 10_000.0), usual("3.5 A", "3.5 A"))]
    Current(ElectricCurrent),
    #[ask(sheet_of("heat_load circuit voltage_drop lights water"), word(load_sheet))]
    Sheet(Taken<Drawn>),
    #[ask(sheet_of("heat_load"), word(load_heater))]
    Heater(Taken<HeaterDrawn>),
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
            Draw::Power(power) => Ok(Load::of(*power)),
            Draw::Current(current) => Ok(Load::of(*current * voltage)),
            Draw::Sheet(None) | Draw::Heater(None) => Ok(Load::default()),
            Draw::Sheet(Some(Drawn(load))) => load.clone(),
            Draw::Heater(Some(HeaterDrawn(load))) => Ok(load.clone()),
        };
        let handed = handed.unwrap_or_else(|why| {
            let path = text!("{}.{}.{}", super::Inputs::LOADS.key, &index, Draw::SHEET.key);
            reader.tell_at(&path, why);
            Load::default()
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
