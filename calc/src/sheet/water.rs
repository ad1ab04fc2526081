//! Fresh water: how many days a tank lasts, and what it weighs.

#[cfg(test)]
mod tests;

use calc_derive::{Inputs, Outcome};
use uom::si::energy::watt_hour;
use uom::si::f64::{ElectricCurrent, ElectricPotential, Power, Time, Volume, VolumeRate};
use uom::si::time::minute;
use uom::si::volume::cubic_meter;

use super::Sheet;
use crate::ask::Figure;
use crate::drawing::{Anchor, Drawing, Fill, Pen, Point};
use crate::energy::water::{
    CAUTIONS, DAYS, DENSITY, DRAIN, DayUse, DrainFall, PumpMinutes, TankDays, USUAL_USE,
    WATER_KG_L, WasteDays, WaterMass,
};
use crate::formula::{Formula, step};
use crate::handoff::Handed;
use crate::outcome::Outcome;
use crate::quantity::{Length, Style, amount, plain};
use crate::reader::Reader;
use crate::report::{Answer, Caution, Remark, Report, Step, Table, TableRow};
use crate::sheet::handoffs::{Drawn, FullTank, Load};
use crate::words::{Arg, Msg, Phrase, common, energy as energy_words, water as words};

/// The sheet.
pub static SHEET: Sheet = Sheet {
    kind: "water",
    title: Phrase::Id(words::TITLE),
    trade: Phrase::Id(common::TRADE_LIVING),
    purpose: Phrase::Id(words::PURPOSE),
    asks: Inputs::ASKS,
    sources: &[&DAYS, &DENSITY, &DRAIN, &USUAL_USE],
    example: r#"{ "people": 2, "use": "6 l", "tank": "70 l", "empty_share_percent": 5,
        "grey_tank": "60 l", "pump_flow": "8 l/min", "pump_current": "4.7 A", "drain_length": "1400 mm" }"#,
    ahead: None,
    solve: |reader| super::solved(reader, Typed::read, solve, show),
};

/// What is asked.
#[derive(Inputs)]
#[words(water)]
struct Inputs {
    #[ask(range(1.0, 100.0), usual("2", "2"), no_help)]
    people: f64,
    #[ask(units("gal", "l"), range(1e-5, 1.0), usual("1.5 gal", "6 l"))]
    r#use: Volume,
    #[ask(units("gal", "l"), range(1e-4, 100.0), usual("18 gal", "70 l"))]
    tank: Volume,
    #[ask(percent, range(0.0, 99.0), default("0"), usual("5", "5"))]
    empty_share_percent: f64,
    #[ask(units("gal", "l"), range(1e-4, 100.0), usual("16 gal", "60 l"))]
    grey_tank: Option<Volume>,
    #[ask(units("gal/min", "l/min"), range(1.7e-6, 1.6e-2), usual("2 gal/min", "8 l/min"))]
    pump_flow: Option<VolumeRate>,
    #[ask(units("A", "A"), range(0.01, 1000.0), usual("4.7 A", "4.7 A"))]
    pump_current: Option<ElectricCurrent>,
    #[ask(units("V", "V"), range(1.0, 1000.0), default("12.8 V"), usual("12.8 V", "12.8 V"))]
    voltage: ElectricPotential,
    #[ask(units("in", "mm"), range(0.0, 50.0), usual("54 in", "1400 mm"), figure(Figure::OneWay))]
    drain_length: Option<Length>,
}

/// What was typed, read.
struct Typed {
    inputs: Inputs,
    /// Nobody said what cannot be drawn.
    all_drawn: bool,
}

impl Typed {
    fn read(reader: &Reader<'_>) -> Self {
        let all_drawn = !reader.given(Inputs::EMPTY_SHARE_PERCENT);
        Self { inputs: Inputs::read(reader), all_drawn }
    }
}

/// How long the water lasts, and what goes with it.
#[derive(Outcome)]
struct Found {
    /// Until the tank is drawn empty.
    days: TankDays,
    /// Of a full tank's water.
    mass: WaterMass,
    day: DayUse,
    /// What can be drawn of a full tank.
    usable: Volume,
    /// Until the waste tank is full.
    grey_days: Option<WasteDays>,
    grey_mass: Option<WaterMass>,
    pump: Option<Power>,
    pump_wh_day: Option<f64>,
    pump_min_day: Option<PumpMinutes>,
    drain_fall: Option<DrainFall>,
}

fn solve(Typed { inputs, .. }: &Typed) -> Found {
    let day = DayUse { people: inputs.people, use_each: inputs.r#use };
    let days = days(inputs, day);
    let pump = inputs.pump_current.map(|current| current * inputs.voltage);
    let run = inputs.pump_flow.map(|flow| PumpMinutes { day: day.value(), flow });
    let of_day = |(power, run): (Power, PumpMinutes)| {
        (power * Time::new::<minute>(run.value())).get::<watt_hour>()
    };
    Found {
        days,
        mass: WaterMass { tank: inputs.tank, kg_l: WATER_KG_L },
        day,
        usable: inputs.tank * (1.0 - days.dead_share),
        grey_days: inputs.grey_tank.map(|tank| WasteDays { tank, day: day.value() }),
        grey_mass: inputs.grey_tank.map(|tank| WaterMass { tank, kg_l: WATER_KG_L }),
        pump,
        pump_wh_day: pump.zip(run).map(of_day),
        pump_min_day: run,
        drain_fall: inputs.drain_length.map(|length| DrainFall { length }),
    }
}

fn days(inputs: &Inputs, day: DayUse) -> TankDays {
    let dead_share = inputs.empty_share_percent / 100.0;
    TankDays { tank: inputs.tank, dead_share, day: day.value() }
}

fn gives(found: &Found) -> Handed {
    let hours = found.pump_min_day.map(|minutes| (minutes.value() / 60.0).min(24.0));
    let pump = found.pump.map(|power| Load { hours, ..Load::of(power) });
    Handed::of(Drawn(pump.ok_or(energy_words::NO_PUMP))).with(FullTank(found.mass.value()))
}

fn show(typed: &Typed, found: &Found, style: Style) -> Report {
    Report {
        answers: answers(found, style),
        remarks: remarks(typed, found, style),
        tables: vec![by_people(&typed.inputs, style)],
        drawings: vec![level(found, style)],
        working: working(found, style.exact()),
        cautions: Caution::all(&CAUTIONS),
        gives: gives(found),
        outcome: found.record(),
        ..Report::default()
    }
}

/// Days to a tenth, as they are told.
fn told(days: f64) -> Msg {
    common::Days { days: Arg::tenths(days) }.into()
}

fn answers(found: &Found, style: Style) -> Vec<Answer> {
    // Days that are covered in full; a hair short of one counts.
    let full = (found.days.value() + 1e-9).floor() as usize;
    let grey = found.grey_mass.map(|mass| words::GreyWeight { mass: Arg::mass(mass.value()) });
    let mut answers = vec![
        Answer::new(style.say(words::LASTS), style.say(told(found.days.value())))
            .note(style.say(words::FullDays { days: full })),
        Answer::new(style.say(words::WEIGHT), style.mass(found.mass.value()))
            .note(grey.map_or_else(String::new, |grey| style.say(grey))),
    ];
    answers.extend(found.drain_fall.map(|fall| {
        Answer::new(style.say(words::INLET), style.mark(fall.value()).text)
            .note(style.say(words::INLET_NOTE))
    }));
    answers
}

fn remarks(typed: &Typed, found: &Found, style: Style) -> Vec<Remark> {
    let (days, mass) = (found.days.value(), found.mass.value());
    let needed = Arg::volume(found.usable);
    let mut remarks = Vec::new();
    if days < 1.0 {
        remarks.push(Remark::warning(style.say(words::SHORT)));
    }
    remarks.push(Remark::note(style.say(words::ToAxles { mass: Arg::mass(mass) })));
    if typed.all_drawn {
        remarks.push(Remark::note(style.say(words::ALL_DRAWN)));
    }
    match found.grey_days.map(|grey| grey.value()).zip(found.grey_mass) {
        Some((grey, _)) if grey + 1e-9 < days => {
            let small = words::GreySmall { days: told(grey), needed };
            remarks.insert(0, Remark::warning(style.say(small)));
        }
        Some((_, grey)) => {
            let mass = Arg::mass(mass + grey.value());
            remarks.push(Remark::good(style.say(words::GreyEnough { mass })));
        }
        None => remarks.push(Remark::note(style.say(words::GreyNone { needed }))),
    }
    if let Some(run) = found.pump_min_day.map(|run| run.value()) {
        let (minutes, hours) = (amount(run, 1, "min"), amount(run / 60.0, 3, "h"));
        remarks.push(Remark::note(match found.pump.map(Arg::watts) {
            Some(power) => style.say(words::PumpRunsAt { minutes, hours, power }),
            None => style.say(words::PumpRuns { minutes, hours }),
        }));
    }
    remarks
}

/// Days by the number of people, so that one sees what a guest costs.
fn by_people(inputs: &Inputs, style: Style) -> Table {
    let rows = [1.0, 2.0, 3.0, 4.0].map(|people| {
        let day = DayUse { people, use_each: inputs.r#use };
        TableRow {
            cells: vec![
                plain(people, 0),
                style.volume(day.value()),
                style.say(told(days(inputs, day).value())),
            ],
            chosen: (people - inputs.people).abs() < 1e-9,
        }
    });
    Table {
        title: style.say(words::BY_PEOPLE),
        heads: [words::BY_PEOPLE_PEOPLE, words::BY_PEOPLE_DAY, words::BY_PEOPLE_LASTS]
            .map(|head| style.say(head))
            .into(),
        rows: rows.into(),
    }
}

fn working(found: &Found, style: Style) -> Vec<Step> {
    let mut steps = vec![
        step(words::STEP_DAY, &found.day, style),
        step(words::STEP_DAYS, &found.days, style),
        step(words::STEP_MASS, &found.mass, style),
    ];
    steps.extend(found.grey_days.map(|grey| step(words::STEP_GREY, &grey, style)));
    steps.extend(found.pump_min_day.map(|run| step(words::STEP_PUMP, &run, style)));
    steps.extend(found.drain_fall.map(|fall| step(words::STEP_DRAIN, &fall, style)));
    steps
}

/// The tank as a cube of its volume, with a line at the level after each full day.
fn level(found: &Found, style: Style) -> Drawing {
    let (tank, usable, days) = (found.days.tank, found.usable, found.days.value());
    let side = libm::cbrt(tank.get::<cubic_meter>());
    let words = words::DrawingWords {
        tank: Arg::volume(tank),
        usable: Arg::volume(usable),
        days: told(days),
    };
    let mut drawing = Drawing::new(style.say(words::DRAWING), style.say(words));
    let dead = side * found.days.dead_share;
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
        let volume = Arg::volume(tank * found.days.dead_share);
        drawing.text(
            Point::metres(side * 1.04, side - dead / 2.0),
            Anchor::Start,
            style.say(words::Unusable { volume }),
        );
    }
    // Lines closer than a fiftieth of the tank would run into each other.
    let lines = Lines { side, from: 0.0, each: (side - dead) / days.max(1e-9), closest: 25.0 };
    lines.draw(&mut drawing, days, style);
    drawing.text(Point::metres(-side * 0.04, 0.0), Anchor::End, style.say(words::FULL));
    let full = [style.volume(tank), style.mass(found.mass.value())].join(" · ");
    drawing.text(Point::metres(side * 1.04, 0.0), Anchor::Start, full);
    if let Some(grey) = found.grey_days {
        waste(&mut drawing, &grey, side, style);
    }
    drawing
}

/// The waste tank below the other, to the same scale, with its level rising day by day.
fn waste(drawing: &mut Drawing, grey: &WasteDays, top_side: f64, style: Style) {
    let side = libm::cbrt(grey.tank.get::<cubic_meter>());
    let (top, bottom) = (top_side * 1.25, top_side * 1.25 + side);
    drawing.rectangle(
        Pen::Solid,
        Fill::Empty,
        Point::metres(0.0, top),
        Point::metres(side, bottom),
    );
    drawing.text(
        Point::metres(side * 1.04, top),
        Anchor::Start,
        style.say(words::WasteTank { volume: Arg::volume(grey.tank) }),
    );
    let days = (grey.tank / grey.day).value;
    let lines = Lines { side, from: bottom, each: -side / days.max(1e-9), closest: 12.0 };
    lines.draw(drawing, days, style);
}

/// A line across a tank for each day.
struct Lines {
    /// Of the tank. [m]
    side: f64,
    /// Where the level stands at first. [m]
    from: f64,
    /// How far it goes in a day. [m]
    each: f64,
    /// The most lines that a tank has room for.
    closest: f64,
}

impl Lines {
    fn draw(&self, drawing: &mut Drawing, days: f64, style: Style) {
        let every = (self.side / self.closest / self.each.abs()).ceil().max(1.0);
        let mut day = every;
        while day <= days + 1e-9 && day <= every * 60.0 {
            let y = self.from + day * self.each;
            drawing.line(Pen::Mark, &[Point::metres(0.0, y), Point::metres(self.side, y)]);
            // Said once: what follows are the days.
            let number = plain(day, 0);
            let text =
                if day > every { number } else { style.say(words::AfterDay { day: number }) };
            drawing.text(Point::metres(-self.side * 0.04, y), Anchor::End, text);
            day += every;
        }
    }
}
