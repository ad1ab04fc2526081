//! Load on both axles: what was weighed, and everything that is built in or carried, by moments.

#[cfg(test)]
mod tests;
mod words;

use uom::si::length::millimeter;
use uom::si::mass::kilogram;

use super::{Sheet, solve};
use crate::ask::{Ask, Figure};
use crate::fault::Fault;
use crate::mass::axles::{Axle, AxleLoads, Item, LIMITS, MOMENTS, Vehicle, loads};
use crate::mass::balance::CENTRE_OF_MASS;
use crate::mass::cautions;
use crate::outcome::Record;
use crate::project::shopping::{WEIGHT_KEY, Weight};
use crate::quantity::{LENGTH, Length, MASS, Mass, Style};
use crate::reader::Reader;
use crate::report::{Caution, Report};
use crate::source::Source;
use crate::words::Phrase;

/// The sheet.
pub static SHEET: Sheet = Sheet {
    kind: "axles",
    title: Phrase::Written("Axle loads"),
    trade: Phrase::Written("Living in it"),
    purpose: Phrase::Written(
        "See what each axle carries with everything and everyone aboard, and what is left.",
    ),
    asks: &[&WHEELBASE, &FRONT, &REAR, &GROSS_LIMIT, &ITEMS, &PROJECT, &FRONT_WALL],
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
    solve: |reader| solve(reader, read, report),
};

static WHEELBASE: Ask = Ask::measure("wheelbase", "Wheelbase", &LENGTH, ["in", "mm"], (0.5, 20.0))
    .usual("156 in", "3960 mm")
    .help("Centre of the front wheel to centre of the rear wheel, along the ground.")
    .figure(Figure::Wheels);
static LIMIT: Ask = Ask::measure("limit", "Axle limit", &MASS, ["lb", "kg"], (1.0, 50_000.0))
    .usual("5000 lb", "2270 kg")
    .help("On the vehicle's plate, at the door: gross axle weight rating.");
static WEIGHED: Ask = Ask::measure("weighed", "Weighed", &MASS, ["lb", "kg"], (0.0, 50_000.0))
    .optional()
    .usual("3600 lb", "1640 kg")
    .help("This axle alone on the scale, before the things below are aboard.");
static FRONT: Ask = Ask::group("front", "Front axle", &[&LIMIT, &WEIGHED]);
static REAR: Ask = Ask::group("rear", "Rear axle", &[&LIMIT, &WEIGHED]);
static GROSS_LIMIT: Ask =
    Ask::measure("gross_limit", "Limit of the whole", &MASS, ["lb", "kg"], (1.0, 100_000.0))
        .usual("14000 lb", "6350 kg")
        .help("On the vehicle's plate: gross vehicle weight rating.");
static LABEL: Ask = Ask::words("label", "What it is").usual("galley", "galley");
static ITEM_MASS: Ask = Ask::measure("mass", "Mass", &MASS, ["lb", "kg"], (-20_000.0, 20_000.0))
    .usual("200 lb", "90 kg")
    .help("With a minus for what is taken out.");
static WATER_SHEET: Ask = Ask::sheet_of("sheet", "Water of a fresh water sheet", "water")
    .help("Takes the mass of a full tank's water from there and follows it.");
static MASS_OR_SHEET: Ask = Ask::either("Mass", &[&ITEM_MASS, &WATER_SHEET]);
static PLACE: Ask =
    Ask::measure("from_front_axle", "Behind the front axle", &LENGTH, ["in", "mm"], (-10.0, 30.0))
        .usual("95 in", "2400 mm")
        .help("Along the floor from the front wheel's centre to its middle; with a minus if ahead.")
        .figure(Figure::Wheels);
static ITEMS: Ask =
    Ask::rows("items", "Things aboard", "thing", 1, &[&LABEL, &MASS_OR_SHEET, &PLACE])
        .help("Everything that was not aboard at the scale: fit-out, water, people, cargo.");

static PROJECT: Ask = Ask::flag(WEIGHT_KEY, "Count the weight of this project's buy list", false)
    .help(
        "It follows the list. Leave out above what the list has: boards, lamps, battery, panels.",
    );
static FRONT_WALL: Ask = Ask::measure(
    "front_wall_from_front_axle",
    "The body's front wall, behind the front axle",
    &LENGTH,
    ["in", "mm"],
    (-10.0, 20.0),
)
.optional()
.usual("24 in", "600 mm")
.help("Along the floor from the front wheel's centre to the wall that the body is measured from; with a minus if ahead.");

/// When to speak up before a limit is reached.
static NEAR_THE_LIMIT: Source =
    Source::common_practice("keep the last twentieth of an axle's limit free");
/// Share of a limit that is to stay free.
const NEAR: f64 = 0.05;

/// What was typed, read.
struct Inputs {
    vehicle: Vehicle,
    weighed: [bool; 2],
    labels: Vec<String>,
    items: Vec<Item>,
    /// What the buy list weighs, where it is counted.
    project: Option<Weight>,
}

fn read(reader: &Reader<'_>) -> Inputs {
    let axle = |reader: &Reader<'_>| {
        let weighed: Option<Mass> = reader.maybe(&WEIGHED);
        (Axle { limit: reader.measure(&LIMIT), weighed: weighed.unwrap_or_default() }, weighed)
    };
    let wheelbase = reader.measure(&WHEELBASE);
    let (front, front_weighed) = reader.group(&FRONT, axle);
    let (rear, rear_weighed) = reader.group(&REAR, axle);
    let gross_limit = reader.measure(&GROSS_LIMIT);
    let rows = reader.rows(&ITEMS, |row| {
        let mass = match row.which(&MASS_OR_SHEET) {
            Some(0) => row.measure(&ITEM_MASS),
            Some(_) => water_mass(row),
            None => Mass::default(),
        };
        (row.words(&LABEL), Item { mass, from_front_axle: row.measure(&PLACE) })
    });
    let (mut labels, mut items): (Vec<String>, Vec<Item>) = rows.into_iter().unzip();
    let project = if reader.flag(&PROJECT) { counted(reader) } else { None };
    if let Some((_, fit_out)) = &project {
        for (label, item) in ["the buy list", "the buy list, no place given"].iter().zip(fit_out) {
            if item.mass.value > 0.0 {
                labels.push((*label).to_owned());
                items.push(*item);
            }
        }
    }
    Inputs {
        vehicle: Vehicle { wheelbase, front, rear, gross_limit },
        weighed: [front_weighed.is_some(), rear_weighed.is_some()],
        labels,
        items,
        project: project.map(|(weight, _)| weight),
    }
}

/// The weight of the buy list: what has a place there, and what has none in the middle of the body.
fn counted(reader: &Reader<'_>) -> Option<(Weight, [Item; 2])> {
    let weight = match reader.project_weight() {
        Ok(weight) => weight,
        Err(message) => {
            reader.fault_at(&PROJECT, message);
            return None;
        }
    };
    let Some(front_wall) = reader.maybe::<Length>(&FRONT_WALL) else {
        reader.fault_at(
            &FRONT_WALL,
            "give where the body's front wall is, so that the buy list's weight has a place",
        );
        return None;
    };
    let balance = &weight.balance;
    let unplaced = balance.unplaced();
    let middle = reader.body().length.map(|length| length / 2.0);
    if unplaced.value > 0.0 && middle.is_none() {
        reader.fault_at(
            &PROJECT,
            "lines of the buy list have no place along the body: measure the body's length, and \
             they count at its middle, or give each its place on the buy list",
        );
    }
    let item = |mass, place: Option<Length>| Item {
        mass,
        from_front_axle: front_wall + place.unwrap_or_default(),
    };
    Some((weight, [item(balance.placed, balance.centre()), item(unplaced, middle)]))
}

/// The mass of the water on another sheet.
fn water_mass(row: &Reader<'_>) -> Mass {
    let Some(outcome) = row.sheet(&WATER_SHEET) else { return Mass::default() };
    match outcome.number("mass_kg") {
        Some(kg) => Mass::new::<kilogram>(kg),
        None => {
            row.fault_at(&WATER_SHEET, "this sheet gives no mass; choose another");
            Mass::default()
        }
    }
}

/// One of the three limits, with what is carried and what is left.
struct Limit {
    name: &'static str,
    limit: Mass,
    carried: Mass,
    left: Mass,
}

fn limits(vehicle: &Vehicle, loads: &AxleLoads) -> [Limit; 3] {
    [
        Limit {
            name: "front axle",
            limit: vehicle.front.limit,
            carried: loads.front,
            left: loads.front_left,
        },
        Limit {
            name: "rear axle",
            limit: vehicle.rear.limit,
            carried: loads.rear,
            left: loads.rear_left,
        },
        Limit {
            name: "whole",
            limit: vehicle.gross_limit,
            carried: loads.gross,
            left: loads.gross_left,
        },
    ]
}

fn report(inputs: &Inputs, style: Style) -> Result<Report, Vec<Fault>> {
    // The ranges of the inputs are those of the method: only their sum is left to go wrong.
    let loads = loads(&inputs.vehicle, &inputs.items)
        .map_err(|error| vec![Fault::new("items", error.to_string())])?;
    let limits = limits(&inputs.vehicle, &loads);
    let kg = |mass: Mass| mass.get::<kilogram>();
    Ok(Report {
        answers: limits.iter().map(|limit| words::answer(limit, style)).collect(),
        remarks: words::remarks(inputs, &loads, &limits, style),
        tables: vec![words::table(inputs, style)],
        drawings: vec![words::side_view(inputs, &loads, style)],
        working: words::working(inputs, &loads, style),
        cautions: Caution::all(&cautions::AXLES),
        outcome: Record::new()
            .with("front_kg", kg(loads.front))
            .with("rear_kg", kg(loads.rear))
            .with("gross_kg", kg(loads.gross))
            .with("front_left_kg", kg(loads.front_left))
            .with("rear_left_kg", kg(loads.rear_left))
            .with("gross_left_kg", kg(loads.gross_left))
            .with("within_limits", loads.within_limits)
            .maybe("project_kg", inputs.project.map(|weight| kg(weight.balance.mass)))
            .with("items_kg", inputs.items.iter().map(|item| kg(item.mass)).sum::<f64>())
            .maybe(
                "items_from_front_axle_mm",
                loads.items_centre.map(|centre| centre.get::<millimeter>()),
            ),
        ..Report::default()
    })
}
