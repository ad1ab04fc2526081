//! Fresh water: how many days a tank lasts, and what it weighs.

#[cfg(test)]
mod tests;
mod words;

use uom::si::energy::watt_hour;
use uom::si::f64::{ElectricCurrent, ElectricPotential, Power, VolumeRate};
use uom::si::length::millimeter;
use uom::si::mass::kilogram;
use uom::si::power::watt;
use uom::si::time::minute;
use uom::si::volume::liter;

use super::{Sheet, solve};
use crate::ask::{Ask, Figure};
use crate::energy::water::{
    DAYS, DENSITY, DRAIN, DRAIN_FALL, Store, Supply, WaterError, drain_drop, pump_time, store,
};
use crate::fault::Fault;
use crate::outcome::Record;
use crate::quantity::{CURRENT, FLOW, LENGTH, Length, Style, VOLTAGE, VOLUME, Volume};
use crate::reader::Reader;
use crate::report::{Caution, Report};
use crate::source::Source;
use crate::words::Phrase;

/// The sheet.
pub static SHEET: Sheet = Sheet {
    kind: "water",
    title: Phrase::Written("Fresh water"),
    trade: Phrase::Written("Living in it"),
    purpose: Phrase::Written("See how many days the tank lasts, and what it adds to the axles."),
    asks: &[
        &PEOPLE,
        &USE,
        &TANK,
        &EMPTY_SHARE,
        &GREY_TANK,
        &PUMP_FLOW,
        &PUMP_CURRENT,
        &VOLTS,
        &DRAIN_LENGTH,
    ],
    sources: &[&DAYS, &DENSITY, &DRAIN, &USUAL_USE],
    example: r#"{ "people": 2, "use": "6 l", "tank": "70 l", "empty_share_percent": 5,
        "grey_tank": "60 l", "pump_flow": "8 l/min", "pump_current": "4.7 A", "drain_length": "1400 mm" }"#,
    solve: |reader| solve(reader, read, report),
};

static PEOPLE: Ask = Ask::number("people", "People aboard", (1.0, 100.0)).usual("2", "2");
static USE: Ask = Ask::measure("use", "Use of each in a day", &VOLUME, ["gal", "l"], (1e-5, 1.0))
    .usual("1.5 gal", "6 l")
    .help("Drinking, cooking, washing up and hands; a shower is 5 gal (20 l) more.");
static TANK: Ask = Ask::measure("tank", "Tank", &VOLUME, ["gal", "l"], (1e-4, 100.0))
    .usual("18 gal", "70 l")
    .help("On the tank's label, or length x width x height inside.");
static EMPTY_SHARE: Ask =
    Ask::percent("empty_share_percent", "Share that cannot be drawn", (0.0, 99.0))
        .default("0")
        .usual("5", "5")
        .help("Below the pick-up pipe; more where the rig stands sloped.");
static PUMP_FLOW: Ask =
    Ask::measure("pump_flow", "Pump's flow", &FLOW, ["gal/min", "l/min"], (1.7e-6, 1.6e-2))
        .optional()
        .usual("2 gal/min", "8 l/min")
        .help("On the pump's label.");
static PUMP_CURRENT: Ask =
    Ask::measure("pump_current", "Pump's current", &CURRENT, ["A", "A"], (0.01, 1000.0))
        .optional()
        .usual("4.7 A", "4.7 A")
        .help("On the pump's label; the energy sheet takes its power and its run from here.");
static VOLTS: Ask =
    Ask::measure("voltage", "Battery's nominal voltage", &VOLTAGE, ["V", "V"], (1.0, 1000.0))
        .default("12.8 V")
        .usual("12.8 V", "12.8 V")
        .help("Nominal: 12 V for lead-acid, 12.8 V for lithium iron phosphate.");
static GREY_TANK: Ask =
    Ask::measure("grey_tank", "Waste tank", &VOLUME, ["gal", "l"], (1e-4, 100.0))
        .optional()
        .usual("16 gal", "60 l")
        .help("For what runs off the sink and the shower.");
static DRAIN_LENGTH: Ask =
    Ask::measure("drain_length", "Length of the drain", &LENGTH, ["in", "mm"], (0.0, 50.0))
        .optional()
        .usual("54 in", "1400 mm")
        .help("Along the pipe from the sink's outlet to the waste tank.")
        .figure(Figure::OneWay);

/// What one person uses.
static USUAL_USE: Source =
    Source::common_practice("5 to 10 litres a person and day without a shower");
static SURGE: Source = Source::common_practice("tanks strapped down on every side");
static POTABLE: Source =
    Source::from_memory("NSF/ANSI 61; EN 12873", "materials in contact with drinking water");
static FROST: Source =
    Source::common_practice("water expands as it freezes and bursts what holds it");

static TRAP: Source = Source::from_memory(
    "International Plumbing Code",
    "1002.1 traps; 704.1 slope; the same in plumbing for recreational vehicles",
);
static VENT: Source = Source::common_practice("tanks vented to the open, a strainer before a pump");
static PUMP_FUSE: Source =
    Source::common_practice("a pump on a fuse of its own, of the rating that its maker prints");

static CAUTIONS: &[Caution] = &[
    Caution {
        text: Phrase::Written(
            "Strap the tank down on every side, between the axles and low, to the body and not to the lining: its \
               water is as heavy as a person, and pushes forward in a braking and far harder in a crash. Straps and \
               anchors as the tank\u{2019}s or the vehicle\u{2019}s maker says.",
        ),
        source: &SURGE,
    },
    Caution {
        text: Phrase::Written(
            "A drain has a trap or a waterless valve right below the sink, and after it falls all the way, with no \
               further dip: without it the waste tank\u{2019}s gases come up into the room.",
        ),
        source: &TRAP,
    },
    Caution {
        text: Phrase::Written(
            "Vent both tanks to the open air, the waste tank above its inlet: a tank that cannot breathe bulges, \
               collapses, or blows through the trap. A strainer goes before the pump.",
        ),
        source: &VENT,
    },
    Caution {
        text: Phrase::Written(
            "Fuse the pump by itself, at the rating that its maker prints, and give it a switch: one that runs dry \
               or stalls burns.",
        ),
        source: &PUMP_FUSE,
    },
    Caution {
        text: Phrase::Written(
            "Use tank, hose and fittings made for drinking water, and disinfect them as their \
               makers say before the first filling and after standing.",
        ),
        source: &POTABLE,
    },
    Caution {
        text: Phrase::Written("Drain tank, pump, trap and pipes before frost."),
        source: &FROST,
    },
];

/// What was typed, read.
struct Inputs {
    supply: Supply,
    pump_flow: Option<VolumeRate>,
    pump: Option<Power>,
    grey: Option<Volume>,
    drain_length: Option<Length>,
    /// Nobody said what cannot be drawn.
    all_drawn: bool,
}

fn read(reader: &Reader<'_>) -> Inputs {
    Inputs {
        supply: Supply {
            people: reader.number(&PEOPLE),
            use_each: reader.measure(&USE),
            tank: reader.measure(&TANK),
            dead_share: reader.number(&EMPTY_SHARE) / 100.0,
        },
        pump_flow: reader.maybe(&PUMP_FLOW),
        pump: reader
            .maybe::<ElectricCurrent>(&PUMP_CURRENT)
            .map(|current| current * reader.measure::<ElectricPotential>(&VOLTS)),
        grey: reader.maybe(&GREY_TANK),
        drain_length: reader.maybe(&DRAIN_LENGTH),
        all_drawn: !reader.given(&EMPTY_SHARE),
    }
}

fn fault(error: WaterError) -> Vec<Fault> {
    let field = match error {
        WaterError::People => "people",
        WaterError::Use => "use",
        WaterError::Tank => "tank",
        WaterError::DeadShare => "empty_share_percent",
        WaterError::Flow => "pump_flow",
        WaterError::Drain => "drain_length",
    };
    vec![Fault::new(field, error.to_string())]
}

fn report(inputs: &Inputs, style: Style) -> Result<Report, Vec<Fault>> {
    let supply = inputs.supply;
    let store = store(supply).map_err(fault)?;
    let day = supply.use_each * supply.people;
    let run = inputs.pump_flow.map(|flow| pump_time(day, flow)).transpose().map_err(fault)?;
    let grey = inputs
        .grey
        .map(|tank| store_grey(Supply { tank, dead_share: 0.0, ..supply }))
        .transpose()?;
    let drop = inputs
        .drain_length
        .map(|length| drain_drop(length, DRAIN_FALL))
        .transpose()
        .map_err(fault)?;
    Ok(Report {
        answers: words::answers(&store, grey.as_ref(), drop, style),
        remarks: words::remarks(inputs, &store, grey.as_ref(), run, style),
        tables: vec![words::people_table(&supply, style)?],
        drawings: vec![words::level(inputs, &store, style)],
        working: words::working(inputs, &store, grey.as_ref(), run, drop, style),
        cautions: CAUTIONS.to_vec(),
        outcome: Record::new()
            .with("days", store.days)
            .with("mass_kg", store.mass.get::<kilogram>())
            .with("day_l", day.get::<liter>())
            .with("usable_l", usable(&supply).get::<liter>())
            .maybe("grey_days", grey.map(|grey| grey.days))
            .maybe("grey_mass_kg", grey.map(|grey| grey.mass.get::<kilogram>()))
            .maybe("pump_w", inputs.pump.map(|pump| pump.get::<watt>()))
            .maybe("pump_wh_day", inputs.pump.zip(run).map(|(p, t)| (p * t).get::<watt_hour>()))
            .maybe("pump_min_day", run.map(|time| time.get::<minute>()))
            .maybe("drain_fall_mm", drop.map(|drop| drop.get::<millimeter>())),
        ..Report::default()
    })
}

/// Days until the waste tank is full, and what it weighs then.
fn store_grey(supply: Supply) -> Result<Store, Vec<Fault>> {
    store(supply).map_err(|error| match error {
        WaterError::Tank => vec![Fault::new("grey_tank", error.to_string())],
        _ => fault(error),
    })
}

fn usable(supply: &Supply) -> Volume {
    supply.tank * (1.0 - supply.dead_share)
}
