//! Load on both axles: what was weighed, and everything that is built in or carried, by moments.

mod side_view;
#[cfg(test)]
mod tests;

use calc_derive::{Either, Inputs, Outcome};
use uom::si::mass::kilogram;

use super::Sheet;
use crate::ask::Figure;
use crate::formula::{Formula, step};
use crate::handoff::Handed;
use crate::mass::axles::{
    Axle, AxleLoads, FrontAxle, Item, LIMITS, Left, MOMENTS, OnRear, RearAxle, Vehicle, loads,
};
use crate::mass::balance::CENTRE_OF_MASS;
use crate::mass::balance::Weight;
use crate::mass::cautions::AXLES;
use crate::outcome::Outcome;
use crate::quantity::{Length, Mass, Style};
use crate::reader::Reader;
use crate::report::{Answer, Caution, Remark, Report, Step, Table, TableRow};
use crate::sheet::handoffs::{FullTank, PayloadLeft};
use crate::source::Source;
use crate::words::{Arg, Msg, Phrase, axles as words, common};

/// The sheet.
pub static SHEET: Sheet = Sheet {
    kind: "axles",
    title: Phrase::Id(words::TITLE),
    trade: Phrase::Id(common::TRADE_LIVING),
    purpose: Phrase::Id(words::PURPOSE),
    asks: Inputs::ASKS,
    sources: &[&MOMENTS, &LIMITS, &CENTRE_OF_MASS, &NEAR_THE_LIMIT],
    example: r#"{ "wheelbase": "3960 mm",
        "front": { "limit": "2270 kg", "weighed": "1640 kg" },
        "rear": { "limit": "4080 kg", "weighed": "1890 kg" }, "gross_limit": "6350 kg",
        "items": [
            { "label": "two people", "mass": "160 kg", "from_front_axle": "450 mm" },
            { "label": "galley", "mass": "95 kg", "from_front_axle": "2400 mm" },
            { "label": "battery", "mass": "28 kg", "from_front_axle": "1200 mm" },
            { "label": "fresh water, full", "sheet": "water", "from_front_axle": "3100 mm" },
            { "label": "two berths", "mass": "110 kg", "from_front_axle": "4300 mm" },
            { "label": "survey gear at the rear", "mass": "210 kg", "from_front_axle": "5350 mm" } ] }"#,
    ahead: None,
    solve: |reader| super::tried(reader, Aboard::read, solve, show),
};

/// What is asked.
#[derive(Inputs)]
#[words(axles)]
struct Inputs {
    #[ask(units("in", "mm"), range(0.5, 20.0), usual("156 in", "3960 mm"), figure(Figure::Wheels))]
    wheelbase: Length,
    #[ask(group, no_help)]
    front: OnPlate,
    #[ask(group, no_help)]
    rear: OnPlate,
    #[ask(units("lb", "kg"), range(1.0, 100_000.0), usual("14000 lb", "6350 kg"))]
    gross_limit: Mass,
    #[ask(rows(1))]
    items: Vec<Thing>,
    /// Its key is [`WEIGHT_KEY`](crate::project::shopping::WEIGHT_KEY).
    #[ask(usually(false))]
    project: bool,
    #[ask(units("in", "mm"), range(-10.0, 20.0), usual("24 in", "600 mm"))]
    front_wall_from_front_axle: Option<Length>,
}

/// An axle.
#[derive(Inputs)]
#[words(axles)]
struct OnPlate {
    #[ask(units("lb", "kg"), range(1.0, 50_000.0), usual("5000 lb", "2270 kg"))]
    limit: Mass,
    #[ask(units("lb", "kg"), range(0.0, 50_000.0), usual("3600 lb", "1640 kg"))]
    weighed: Option<Mass>,
}

/// A thing aboard.
#[derive(Inputs)]
#[words(axles)]
struct Thing {
    #[ask(usual("galley", "galley"), no_help)]
    label: String,
    #[ask(either)]
    mass_or_sheet: Weighs,
    #[ask(
        units("in", "mm"),
        range(-10.0, 30.0),
        usual("95 in", "2400 mm"),
        figure(Figure::Wheels)
    )]
    from_front_axle: Length,
}

/// What a thing weighs.
#[derive(Either)]
#[words(axles)]
enum Weighs {
    #[ask(units("lb", "kg"), range(-20_000.0, 20_000.0), usual("200 lb", "90 kg"))]
    Mass(Mass),
    #[ask(sheet_of("water"))]
    Sheet(FullTank),
}

/// When to speak up before a limit is reached.
static NEAR_THE_LIMIT: Source = Source::practice_of(words::SOURCE_NEAR);
/// Share of a limit that is to stay free.
const NEAR: f64 = 0.05;

/// What was typed, read, with the buy list where it is counted.
struct Aboard {
    vehicle: Vehicle,
    /// Front and rear.
    weighed: [bool; 2],
    names: Vec<Arg>,
    items: Vec<Item>,
    /// What the buy list weighs.
    project: Option<Weight>,
}

impl Aboard {
    fn read(reader: &Reader<'_>) -> Self {
        let inputs = Inputs::read(reader);
        let axle = |of: &OnPlate| Axle { limit: of.limit, weighed: of.weighed.unwrap_or_default() };
        let mut aboard = Self {
            vehicle: Vehicle {
                wheelbase: inputs.wheelbase,
                front: axle(&inputs.front),
                rear: axle(&inputs.rear),
                gross_limit: inputs.gross_limit,
            },
            weighed: [&inputs.front, &inputs.rear].map(|axle| axle.weighed.is_some()),
            names: Vec::new(),
            items: Vec::new(),
            project: None,
        };
        for (number, thing) in (1_usize..).zip(&inputs.items) {
            let (Weighs::Mass(mass) | Weighs::Sheet(FullTank(mass))) = thing.mass_or_sheet;
            let name = match thing.label.as_str() {
                "" => Arg::Message(words::ThingNumber { number }.into()),
                label => label.into(),
            };
            aboard.add(name, Item { mass, from_front_axle: thing.from_front_axle });
        }
        if inputs.project {
            aboard.count(reader, inputs.front_wall_from_front_axle);
        }
        aboard
    }

    fn add(&mut self, name: Arg, item: Item) {
        self.names.push(name);
        self.items.push(item);
    }

    /// Counts the buy list: what has a place there, and what has none in the middle of the body.
    fn count(&mut self, reader: &Reader<'_>, front_wall: Option<Length>) {
        let weight = match reader.project_weight() {
            Ok(weight) => weight,
            Err(message) => return reader.fault_at(Inputs::PROJECT, message),
        };
        let Some(front_wall) = front_wall else {
            return reader.tell(Inputs::FRONT_WALL_FROM_FRONT_AXLE, words::NO_FRONT_WALL);
        };
        let (balance, middle) = (weight.balance, reader.body().length.map(|length| length / 2.0));
        if balance.unplaced().value > 0.0 && middle.is_none() {
            reader.tell(Inputs::PROJECT, words::NO_PLACE);
        }
        for (name, mass, place) in [
            (words::BUY_LIST, balance.placed, balance.centre()),
            (words::BUY_LIST_NO_PLACE, balance.unplaced(), middle),
        ] {
            if mass.value > 0.0 {
                let from_front_axle = front_wall + place.unwrap_or_default();
                self.add(name.into(), Item { mass, from_front_axle });
            }
        }
        self.project = Some(weight);
    }

    /// What the rear axle carries of each thing.
    fn on_rear(&self) -> impl Iterator<Item = (&Arg, OnRear)> {
        let wheelbase = self.vehicle.wheelbase;
        let each = self.items.iter().map(move |item| OnRear {
            mass: item.mass,
            place: item.from_front_axle,
            wheelbase,
        });
        self.names.iter().zip(each)
    }
}

/// Loads on the axles and what is left below their limits.
#[derive(Outcome)]
struct Found {
    front: FrontAxle,
    rear: RearAxle,
    gross: Mass,
    front_left: Left,
    rear_left: Left,
    gross_left: Left,
    within_limits: bool,
    /// Of the buy list.
    project: Option<Mass>,
    /// Of all things aboard.
    items: Mass,
    /// Their common center of mass.
    items_from_front_axle: Option<Length>,
    /// An axle would carry less than nothing.
    #[outcome(skip)]
    lifts: bool,
}

fn solve(aboard: &Aboard) -> Result<Found, (String, Msg)> {
    // The ranges of the inputs are those of the method: only what comes from other sheets and the buy list is left to
    // go wrong.
    let AxleLoads {
        front,
        rear,
        gross,
        front_left,
        rear_left,
        gross_left,
        items_centre,
        within_limits,
        lifts,
    } = loads(&aboard.vehicle, &aboard.items)
        .map_err(|error| (Inputs::ITEMS.key.to_owned(), error.into()))?;
    Ok(Found {
        front,
        rear,
        gross,
        front_left,
        rear_left,
        gross_left,
        within_limits,
        project: aboard.project.map(|weight| weight.balance.mass),
        items: front.items,
        items_from_front_axle: items_centre,
        lifts,
    })
}

fn show(aboard: &Aboard, found: &Found, style: Style) -> Report {
    Report {
        answers: answers(found, style),
        remarks: remarks(aboard, found, style),
        tables: vec![shares(aboard, style)],
        drawings: vec![side_view::draw(aboard, found, style)],
        working: working(aboard, found, style.exact()),
        cautions: Caution::all(&AXLES),
        gives: Handed::of(PayloadLeft {
            front: found.front_left.value(),
            rear: found.rear_left.value(),
            gross: found.gross_left.value(),
        }),
        outcome: found.record(),
        ..Report::default()
    }
}

fn answers(found: &Found, style: Style) -> Vec<Answer> {
    [
        (words::ON_FRONT, &found.front_left),
        (words::ON_REAR, &found.rear_left),
        (words::IN_ALL, &found.gross_left),
    ]
    .map(|(label, of)| {
        let style = style.of_load(of.load, of.limit);
        let (left, limit) = (of.value(), Arg::mass_at_most(of.limit));
        let note = if left >= Mass::default() {
            style.say(words::LeftBelow { left: Arg::mass_at_most(left), limit })
        } else {
            style.say(words::OverLimit { over: Arg::mass_at_least(-left), limit })
        };
        Answer::new(style.say(label), style.mass(of.load)).note(note)
    })
    .into()
}

fn remarks(aboard: &Aboard, found: &Found, style: Style) -> Vec<Remark> {
    let gram = Mass::new::<kilogram>(0.001);
    let mut remarks = Vec::new();
    let mut warn = |message: Msg| remarks.push(Remark::warning(style.say(message)));
    let lefts = [&found.front_left, &found.rear_left, &found.gross_left];
    for (index, of) in lefts.into_iter().enumerate() {
        let (over, share) = (Arg::mass_at_least(-of.value()), Arg::share(NEAR));
        if of.value() < -gram {
            warn(match index {
                0 => words::FrontOver { over }.into(),
                1 => words::RearOver { over }.into(),
                _ => words::GrossOver { over }.into(),
            });
        } else if of.value() < of.limit * NEAR {
            warn(match index {
                0 => words::FrontNear { share }.into(),
                1 => words::RearNear { share }.into(),
                _ => words::GrossNear { share }.into(),
            });
        }
    }
    match aboard.weighed {
        [false, false] => warn(words::NONE_WEIGHED.into()),
        [false, true] => warn(words::FRONT_NOT_WEIGHED.into()),
        [true, false] => warn(words::REAR_NOT_WEIGHED.into()),
        [true, true] if found.lifts => warn(words::LIFTS.into()),
        [true, true] => {}
    }
    let vehicle = &aboard.vehicle;
    if vehicle.gross_limit > vehicle.front.limit + vehicle.rear.limit + gram {
        remarks.push(Remark::note(style.say(words::READ_THE_PLATE)));
    }
    // Said of all that is aboard, or not at all.
    let all_weighed = aboard.project.as_ref().is_none_or(|weight| weight.without_mass == 0);
    if all_weighed && found.within_limits && remarks.is_empty() {
        remarks.push(Remark::good(style.say(words::ALL_KEPT)));
    }
    // What the weight of the buy list leaves out or guesses.
    if let Some(Weight { without_mass, without_place, .. }) = aboard.project {
        if without_mass > 0 {
            remarks.push(Remark::warning(style.say(words::WithoutMass { count: without_mass })));
        }
        if without_place > 0 {
            remarks.push(Remark::note(style.say(words::WithoutPlace { count: without_place })));
        }
    }
    if let Some(place) = found.items_from_front_axle {
        remarks.push(Remark::note(style.say(words::Centre { place })));
    }
    remarks
}

fn shares(aboard: &Aboard, style: Style) -> Table {
    let rows = aboard.on_rear().enumerate().map(|(index, (name, on_rear))| {
        let rear = on_rear.value();
        TableRow {
            cells: vec![
                [(index + 1).to_string(), style.write(name)].join(" "),
                style.mass(on_rear.mass),
                style.length(on_rear.place),
                style.mass(on_rear.mass - rear),
                style.mass(rear),
            ],
            chosen: false,
        }
    });
    Table {
        title: style.say(words::SHARES),
        heads: [
            words::SHARES_THING,
            words::SHARES_MASS,
            words::SHARES_PLACE,
            words::SHARES_FRONT,
            words::SHARES_REAR,
        ]
        .map(|head| style.say(head))
        .into(),
        rows: rows.collect(),
    }
}

fn working(aboard: &Aboard, found: &Found, style: Style) -> Vec<Step> {
    let things = aboard
        .on_rear()
        .map(|(name, on_rear)| step(words::StepThing { thing: name.clone() }, &on_rear, style));
    let mut steps: Vec<Step> = things.collect();
    steps.extend([
        step(words::STEP_REAR, &found.rear, style),
        step(words::STEP_FRONT, &found.front, style),
        step(words::STEP_FRONT_LEFT, &found.front_left, style),
        step(words::STEP_REAR_LEFT, &found.rear_left, style),
        step(words::STEP_GROSS_LEFT, &found.gross_left, style),
    ]);
    steps
}
