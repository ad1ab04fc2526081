//! What is said about fresh water: answers, remarks, table, working, and the tank.

use crate::text::text;
use uom::si::power::watt;
use uom::si::time::{hour, minute};
use uom::si::volume::cubic_meter;

use super::{Inputs, fault, usable};
use crate::drawing::{Anchor, Drawing, Fill, Pen, Point};
use crate::energy::water::{DAYS, DENSITY, DRAIN, Store, Supply, WATER_KG_L, store};
use crate::fault::Fault;
use crate::quantity::{Length, Style, Time, Volume, amount, percent, plain};
use crate::report::{Answer, Remark, Step, Table, TableRow, texts};

pub(super) fn answers(
    store: &Store,
    grey: Option<&Store>,
    drop: Option<Length>,
    style: Style,
) -> Vec<Answer> {
    let full_days = whole_days(store.days);
    let mut answers = vec![
        Answer::new("The tank lasts", amount(store.days, 1, "days")).note(match full_days {
            0.0 => "less than one day".to_owned(),
            1.0 => "one full day".to_owned(),
            days => text!("{} full days", plain(days, 0)),
        }),
        Answer::new("A full tank's water weighs", style.mass(store.mass)).note(match grey {
            Some(grey) => text!("a full waste tank's {}", style.mass(grey.mass)),
            None => String::new(),
        }),
    ];
    if let Some(drop) = drop {
        let mark = style.mark(drop);
        answers.push(
            Answer::new("Waste tank's inlet below the trap's outlet", mark.text)
                .note("at least, from the outlet of the trap, with no dip after it"),
        );
    }
    answers
}

/// Days that are covered in full; a hair short of one counts.
fn whole_days(days: f64) -> f64 {
    (days + 1e-9).floor()
}

pub(super) fn remarks(
    inputs: &Inputs,
    store: &Store,
    grey: Option<&Store>,
    run: Option<Time>,
    style: Style,
) -> Vec<Remark> {
    let mut remarks = Vec::new();
    let supply = &inputs.supply;
    if store.days < 1.0 {
        remarks.push(Remark::warning("The tank does not last a day: a larger one, or less use."));
    }
    remarks.push(Remark::note(text!(
        "The axle loads sheet takes these {} from here, at the tank's place; the tank itself comes on top.",
        style.mass(store.mass)
    )));
    if inputs.all_drawn {
        remarks.push(Remark::note(
            "Nothing is taken off for what cannot be drawn: enter it, usual are 5 %.",
        ));
    }
    match grey {
        Some(grey) if grey.days + 1e-9 < store.days => remarks.insert(0, Remark::warning(text!(
            "The waste tank is full after {}, before the fresh water is used up: it would take {}.",
            amount(grey.days, 1, "days"),
            style.volume(usable(supply))
        ))),
        Some(grey) => remarks.push(Remark::good(text!(
            "The waste tank holds what a full tank brings. Filled up anew before it is emptied, both weigh {}.",
            style.mass(store.mass + grey.mass)
        ))),
        None => remarks.push(Remark::note(text!(
            "All of it ends as waste water: a waste tank of {} holds what a full tank brings.",
            style.volume(usable(supply))
        ))),
    }
    if let Some(run) = run {
        remarks.push(Remark::note(text!(
            "The pump runs {} a day ({} h){}.",
            amount(run.get::<minute>(), 1, "min"),
            plain(run.get::<hour>(), 3),
            match inputs.pump {
                Some(pump) => text!(
                    " at {}: the energy sheet takes both from here",
                    amount(pump.get::<watt>(), 0, "W")
                ),
                None => ": give its current, and the energy sheet takes both from here".to_owned(),
            }
        )));
    }
    remarks
}

/// Days by the number of people, so that one sees what a guest costs.
pub(super) fn people_table(supply: &Supply, style: Style) -> Result<Table, Vec<Fault>> {
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
        heads: texts(&["People", "Use in a day", "The tank lasts"]),
        rows,
    })
}

pub(super) fn working(
    inputs: &Inputs,
    store: &Store,
    grey: Option<&Store>,
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
            text!("{} · {}", plain(supply.people, 2), style.volume(supply.use_each)),
            style.volume(day),
            &DAYS,
        ),
        Step::new(
            "Days",
            "t = V · (1 − s) / D",
            text!(
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
            text!("{} · {}", style.volume(supply.tank), amount(WATER_KG_L, 3, "kg/l")),
            style.mass(store.mass),
            &DENSITY,
        ),
    ];
    if let (Some(tank), Some(grey)) = (inputs.grey, grey) {
        steps.push(Step::new(
            "Waste tank full after",
            "t = V / D",
            text!("{} / {}", style.volume(tank), style.volume(day)),
            amount(grey.days, 2, "days"),
            &DAYS,
        ));
    }
    if let (Some(flow), Some(run)) = (inputs.pump_flow, run) {
        steps.push(Step::new(
            "Pump's run in a day",
            "t = D / q",
            text!(
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
            text!("{} · 1/48", style.length(length)),
            style.mark(drop).text,
            &DRAIN,
        ));
    }
    steps
}

/// The tank as a cube of its volume, with a line at the level after each full day.
pub(super) fn level(inputs: &Inputs, store: &Store, style: Style) -> Drawing {
    let supply = &inputs.supply;
    let side = libm::cbrt(supply.tank.get::<cubic_meter>());
    let mut drawing = Drawing::new(
        "Level in the tank, day by day",
        text!(
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
            text!("{} cannot be drawn", style.volume(supply.tank * supply.dead_share)),
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
            text!("after day {}", plain(day, 0)),
        );
        day += every;
    }
    drawing.text(Point::metres(-side * 0.04, 0.0), Anchor::End, "full");
    drawing.text(
        Point::metres(side * 1.04, 0.0),
        Anchor::Start,
        text!("{} · {}", style.volume(supply.tank), style.mass(store.mass)),
    );
    if let Some(grey) = inputs.grey {
        waste(&mut drawing, grey, supply.use_each * supply.people, side, style);
    }
    drawing
}

/// The waste tank below the other, to the same scale, with its level rising day by day.
fn waste(drawing: &mut Drawing, tank: Volume, day: Volume, top_side: f64, style: Style) {
    let side = libm::cbrt(tank.get::<cubic_meter>());
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
        text!("waste tank, {}", style.volume(tank)),
    );
    let days = (tank / day).value;
    let rise = side / days.max(1e-9);
    let every = (side / 12.0 / rise).ceil().max(1.0);
    let mut at = every;
    while at <= days + 1e-9 && at <= every * 60.0 {
        let y = bottom - at * rise;
        drawing.line(Pen::Mark, &[Point::metres(0.0, y), Point::metres(side, y)]);
        drawing.text(
            Point::metres(-side * 0.04, y),
            Anchor::End,
            text!("after day {}", plain(at, 0)),
        );
        at += every;
    }
}
