//! Fresh water: how many days a tank lasts, and what it weighs.

use uom::si::f64::VolumeRate;
use uom::si::length::millimeter;
use uom::si::mass::kilogram;
use uom::si::time::{hour, minute};
use uom::si::volume::{cubic_meter, liter};

use super::{Sheet, solve};
use crate::ask::Ask;
use crate::drawing::{Anchor, Drawing, Fill, Pen, Point};
use crate::energy::water::{
    DAYS, DENSITY, DRAIN, DRAIN_FALL, Store, Supply, WATER_KG_L, WaterError, drain_drop, pump_time,
    store,
};
use crate::fault::Fault;
use crate::outcome::Record;
use crate::quantity::{FLOW, LENGTH, Length, Style, Time, VOLUME, Volume, amount, percent, plain};
use crate::reader::Reader;
use crate::report::{Answer, Caution, Remark, Report, Step, Table, TableRow};
use crate::source::Source;

/// The sheet.
pub static SHEET: Sheet = Sheet {
    kind: "water",
    title: "Fresh water",
    purpose: "See how many days the tank lasts, and what it adds to the axles.",
    asks: &[&PEOPLE, &USE, &TANK, &EMPTY_SHARE, &PUMP_FLOW, &DRAIN_LENGTH],
    sources: &[&DAYS, &DENSITY, &DRAIN, &USUAL_USE],
    example: r#"{ "people": 2, "use": "6 l", "tank": "70 l", "empty_share_percent": 5,
        "pump_flow": "8 l/min", "drain_length": "1400 mm" }"#,
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
static DRAIN_LENGTH: Ask =
    Ask::measure("drain_length", "Length of the drain", &LENGTH, ["in", "mm"], (0.0, 50.0))
        .optional()
        .usual("54 in", "1400 mm")
        .help("Along the pipe from the sink's outlet to the waste tank.");

/// What one person uses.
static USUAL_USE: Source =
    Source::common_practice("5 to 10 litres a person and day without a shower");
static SURGE: Source = Source::common_practice("tanks strapped down on every side");
static POTABLE: Source =
    Source::from_memory("NSF/ANSI 61; EN 12873", "materials in contact with drinking water");
static FROST: Source = Source::common_practice("water expands as it freezes and bursts what holds it");

static CAUTIONS: &[Caution] = &[
    Caution {
        text: "Strap the tank down on every side, between the axles and low: its water is as heavy \
               as a person, and pushes forward in a braking.",
        source: &SURGE,
    },
    Caution {
        text: "Use tank, hose and fittings made for drinking water, and disinfect them as their \
               makers say before the first filling and after standing.",
        source: &POTABLE,
    },
    Caution {
        text: "Drain tank, pump and pipes before frost.",
        source: &FROST,
    },
];

/// What was typed, read.
struct Inputs {
    supply: Supply,
    pump_flow: Option<VolumeRate>,
    drain_length: Option<Length>,
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
        drain_length: reader.maybe(&DRAIN_LENGTH),
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
    let drop = inputs
        .drain_length
        .map(|length| drain_drop(length, DRAIN_FALL))
        .transpose()
        .map_err(fault)?;
    Ok(Report {
        answers: answers(&store, drop, style),
        remarks: remarks(&supply, &store, run, style),
        tables: vec![people_table(&supply, style)?],
        drawings: vec![level(&supply, &store, style)],
        working: working(inputs, &store, run, drop, style),
        cautions: CAUTIONS.to_vec(),
        outcome: Record::new()
            .with("days", store.days)
            .with("mass_kg", store.mass.get::<kilogram>())
            .with("day_l", day.get::<liter>())
            .with("usable_l", usable(&supply).get::<liter>())
            .maybe("pump_min_day", run.map(|time| time.get::<minute>()))
            .maybe("drain_fall_mm", drop.map(|drop| drop.get::<millimeter>())),
        ..Report::default()
    })
}

fn usable(supply: &Supply) -> Volume {
    supply.tank * (1.0 - supply.dead_share)
}

fn answers(store: &Store, drop: Option<Length>, style: Style) -> Vec<Answer> {
    let full_days = whole_days(store.days);
    let mut answers = vec![
        Answer::new("The tank lasts", amount(store.days, 1, "days")).note(match full_days {
            0.0 => "less than one day".to_owned(),
            1.0 => "one full day".to_owned(),
            days => format!("{} full days", plain(days, 0)),
        }),
        Answer::new("A full tank's water weighs", style.mass(store.mass)),
    ];
    if let Some(drop) = drop {
        let mark = style.mark(drop);
        answers.push(
            Answer::new("Waste tank's inlet below the sink's outlet", mark.text)
                .note("at least, and no dip on the way"),
        );
    }
    answers
}

/// Days that are covered in full; a hair short of one counts.
fn whole_days(days: f64) -> f64 {
    (days + 1e-9).floor()
}

fn remarks(supply: &Supply, store: &Store, run: Option<Time>, style: Style) -> Vec<Remark> {
    let mut remarks = Vec::new();
    if store.days < 1.0 {
        remarks.push(Remark::warning("The tank does not last a day: a larger one, or less use."));
    }
    remarks.push(Remark::note(format!(
        "Enter {} at the tank's place on the axle loads sheet; the tank itself comes on top.",
        style.mass(store.mass)
    )));
    remarks.push(Remark::note(format!(
        "All of it ends as waste water: a waste tank of {} holds what a full tank brings.",
        style.volume(usable(supply))
    )));
    if let Some(run) = run {
        remarks.push(Remark::note(format!(
            "The pump runs {} a day: enter that as its hours on the energy sheet ({} h).",
            amount(run.get::<minute>(), 1, "min"),
            plain(run.get::<hour>(), 3)
        )));
    }
    remarks
}

/// Days by the number of people, so that one sees what a guest costs.
fn people_table(supply: &Supply, style: Style) -> Result<Table, Vec<Fault>> {
    let mut rows = Vec::new();
    for people in 1..=4 {
        let people = f64::from(people);
        let one = store(Supply { people, ..*supply }).map_err(fault)?;
        rows.push(TableRow {
            cells: vec![
                plain(people, 0),
                style.volume(supply.use_each * people),
                amount(one.days, 1, "days"),
            ],
            chosen: (people - supply.people).abs() < 1e-9,
        });
    }
    Ok(Table {
        title: "With more or fewer aboard".into(),
        heads: ["People", "Use in a day", "The tank lasts"].map(String::from).to_vec(),
        rows,
    })
}

fn working(
    inputs: &Inputs,
    store: &Store,
    run: Option<Time>,
    drop: Option<Length>,
    style: Style,
) -> Vec<Step> {
    let supply = &inputs.supply;
    let day = supply.use_each * supply.people;
    let mut steps = vec![
        Step::new(
            "Use in a day",
            "D = n · u",
            format!("{} · {}", plain(supply.people, 2), style.volume(supply.use_each)),
            style.volume(day),
            &DAYS,
        ),
        Step::new(
            "Days",
            "t = V · (1 − s) / D",
            format!(
                "{} · (1 − {}) / {}",
                style.volume(supply.tank),
                percent(supply.dead_share * 100.0),
                style.volume(day)
            ),
            amount(store.days, 2, "days"),
            &DAYS,
        ),
        Step::new(
            "Mass of the water",
            "m = V · ρ",
            format!("{} · {}", style.volume(supply.tank), amount(WATER_KG_L, 3, "kg/l")),
            style.mass(store.mass),
            &DENSITY,
        ),
    ];
    if let (Some(flow), Some(run)) = (inputs.pump_flow, run) {
        steps.push(Step::new(
            "Pump's run in a day",
            "t = D / q",
            format!(
                "{} / ({} a minute)",
                style.volume(day),
                style.volume(flow * Time::new::<minute>(1.0))
            ),
            amount(run.get::<minute>(), 2, "min"),
            &DAYS,
        ));
    }
    if let (Some(length), Some(drop)) = (inputs.drain_length, drop) {
        steps.push(Step::new(
            "Fall of the drain",
            "h = l · 1/48",
            format!("{} · 1/48", style.length(length)),
            style.mark(drop).text,
            &DRAIN,
        ));
    }
    steps
}

/// The tank as a cube of its volume, with a line at the level after each full day.
fn level(supply: &Supply, store: &Store, style: Style) -> Drawing {
    let side = libm::cbrt(supply.tank.get::<cubic_meter>());
    let mut drawing = Drawing::new(
        "Level in the tank, day by day",
        format!(
            "A tank of {}; {} of it lasts {}.",
            style.volume(supply.tank),
            style.volume(usable(supply)),
            amount(store.days, 1, "days")
        ),
    );
    let dead = side * supply.dead_share;
    let at = |y: f64| [Point::metres(0.0, y), Point::metres(side, y)];
    drawing.rectangle(
        Pen::Solid,
        Fill::Level(1),
        Point::metres(0.0, 0.0),
        Point::metres(side, side),
    );
    if dead > 0.0 {
        drawing.rectangle(
            Pen::Thin,
            Fill::Waste,
            Point::metres(0.0, side - dead),
            Point::metres(side, side),
        );
        drawing.text(
            Point::metres(side * 1.04, side - dead / 2.0),
            Anchor::Start,
            format!("{} cannot be drawn", style.volume(supply.tank * supply.dead_share)),
        );
    }
    let fall = (side - dead) / store.days.max(1e-9);
    // Lines closer than a fiftieth of the tank would run into each other.
    let every = (side / 25.0 / fall).ceil().max(1.0);
    let mut day = every;
    while day <= store.days + 1e-9 && day <= every * 60.0 {
        let y = day * fall;
        drawing.line(Pen::Mark, &at(y));
        drawing.text(
            Point::metres(-side * 0.04, y),
            Anchor::End,
            format!("after day {}", plain(day, 0)),
        );
        day += every;
    }
    drawing.text(Point::metres(-side * 0.04, 0.0), Anchor::End, "full");
    drawing.text(
        Point::metres(side * 1.04, 0.0),
        Anchor::Start,
        format!("{} · {}", style.volume(supply.tank), style.mass(store.mass)),
    );
    drawing
}

#[cfg(test)]
mod tests {
    use crate::testing::{faulty_fields, number, solved};
    use serde_json::json;

    // Plain arithmetic: 70 l less 5 percent, two people of 6 l; water of 998 kg/m³ at 20 °C (handbook tables).
    #[test]
    fn two_people_on_seventy_litres() {
        let result = solved(
            "water",
            json!({ "people": 2, "use": "6 l", "tank": "70 l", "empty_share_percent": 5,
                "pump_flow": "8 l/min", "drain_length": "6 ft" }),
        );
        assert!((number(&result, "days") - 66.5 / 12.0).abs() < 1e-9);
        assert!((number(&result, "mass_kg") - 69.86).abs() < 1e-9);
        assert!((number(&result, "pump_min_day") - 1.5).abs() < 1e-9);
        assert!((number(&result, "drain_fall_mm") - 38.1).abs() < 1e-9);
    }

    #[test]
    fn without_the_options_the_whole_tank_is_used() {
        let result = solved("water", json!({ "people": 4, "use": "1 gal", "tank": "20 gal" }));
        assert!((number(&result, "days") - 5.0).abs() < 1e-9);
        assert_eq!(result.unwrap().outcome.number("pump_min_day"), None);
    }

    #[test]
    fn faults_name_their_fields() {
        let result = solved(
            "water",
            json!({ "people": 0, "use": "6 kg", "tank": "0 l", "empty_share_percent": 100 }),
        );
        assert_eq!(faulty_fields(&result), ["people", "use", "tank", "empty_share_percent"]);
    }
}
