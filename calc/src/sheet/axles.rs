//! Load on both axles: what was weighed, and everything that is built in or carried, by moments.

use uom::si::length::{meter, millimeter};
use uom::si::mass::kilogram;

use super::{Sheet, solve};
use crate::ask::Ask;
use crate::drawing::{Anchor, Drawing, Fill, Pen, Point};
use crate::fault::Fault;
use crate::mass::axles::{Axle, AxleLoads, Item, LIMITS, MOMENTS, Vehicle, loads};
use crate::mass::cautions;
use crate::outcome::Record;
use crate::quantity::{LENGTH, Length, MASS, Mass, Style, percent};
use crate::reader::Reader;
use crate::report::{Answer, Caution, Remark, Report, Step, Table, TableRow};
use crate::source::Source;

/// The sheet.
pub static SHEET: Sheet = Sheet {
    kind: "axles",
    title: "Axle loads",
    purpose: "See what each axle carries with everything and everyone aboard, and what is left.",
    asks: &[&WHEELBASE, &FRONT, &REAR, &GROSS_LIMIT, &ITEMS],
    sources: &[&MOMENTS, &LIMITS, &NEAR_THE_LIMIT],
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

static WHEELBASE: Ask =
    Ask::measure("wheelbase", "Wheelbase", &LENGTH, ["in", "mm"], (0.5, 20.0))
        .usual("156 in", "3960 mm")
        .help("Centre of the front wheel to centre of the rear wheel, along the ground.");
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
static ITEM_MASS: Ask =
    Ask::measure("mass", "Mass", &MASS, ["lb", "kg"], (-20_000.0, 20_000.0))
        .usual("200 lb", "90 kg")
        .help("With a minus for what is taken out.");
static WATER_SHEET: Ask = Ask::sheet_of("sheet", "Water of a fresh water sheet", "water")
    .help("Takes the mass of a full tank's water from there and follows it.");
static MASS_OR_SHEET: Ask = Ask::either("Mass", &[&ITEM_MASS, &WATER_SHEET]);
static PLACE: Ask =
    Ask::measure("from_front_axle", "Behind the front axle", &LENGTH, ["in", "mm"], (-10.0, 30.0))
        .usual("95 in", "2400 mm")
        .help("Along the floor from the front wheel's centre to its middle; with a minus if ahead.");
static ITEMS: Ask = Ask::rows("items", "Things aboard", "thing", 1, &[&LABEL, &MASS_OR_SHEET, &PLACE])
    .help("Everything that was not aboard at the scale: fit-out, water, people, cargo.");

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
    let (labels, items) = rows.into_iter().unzip();
    Inputs {
        vehicle: Vehicle { wheelbase, front, rear, gross_limit },
        weighed: [front_weighed.is_some(), rear_weighed.is_some()],
        labels,
        items,
    }
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
        answers: limits.iter().map(|limit| answer(limit, style)).collect(),
        remarks: remarks(inputs, &loads, &limits, style),
        tables: vec![table(inputs, style)],
        drawings: vec![side_view(inputs, &loads, style)],
        working: working(inputs, &loads, style),
        cautions: Caution::all(&cautions::AXLES),
        outcome: Record::new()
            .with("front_kg", kg(loads.front))
            .with("rear_kg", kg(loads.rear))
            .with("gross_kg", kg(loads.gross))
            .with("front_left_kg", kg(loads.front_left))
            .with("rear_left_kg", kg(loads.rear_left))
            .with("gross_left_kg", kg(loads.gross_left))
            .with("within_limits", loads.within_limits)
            .with("items_kg", inputs.items.iter().map(|item| kg(item.mass)).sum::<f64>())
            .maybe(
                "items_from_front_axle_mm",
                loads.items_centre.map(|centre| centre.get::<millimeter>()),
            ),
        ..Report::default()
    })
}

fn answer(limit: &Limit, style: Style) -> Answer {
    let label = match limit.name {
        "whole" => "Everything together".to_owned(),
        axle => format!("On the {axle}"),
    };
    let note = if limit.left >= Mass::default() {
        format!("{} left below {}", style.mass(limit.left), style.mass(limit.limit))
    } else {
        format!("{} over the limit of {}", style.mass(-limit.left), style.mass(limit.limit))
    };
    Answer::new(label, style.mass(limit.carried)).note(note)
}

fn remarks(
    inputs: &Inputs,
    loads: &AxleLoads,
    limits: &[Limit; 3],
    style: Style,
) -> Vec<Remark> {
    let mut remarks = Vec::new();
    let gram = Mass::new::<kilogram>(0.001);
    for limit in limits {
        if limit.left < -gram {
            let help = match limit.name {
                "front axle" => "move load rearwards, or leave some behind",
                "rear axle" => "move load forward of the rear axle, or leave some behind",
                _ => "leave some behind",
            };
            remarks.push(Remark::warning(format!(
                "The {} is {} over its limit: {help}.",
                limit.name,
                style.mass(-limit.left)
            )));
        } else if limit.left < limit.limit * NEAR {
            remarks.push(Remark::warning(format!(
                "The {} is within {} of its limit: weigh it before you add anything.",
                limit.name,
                percent(NEAR * 100.0)
            )));
        }
    }
    let [front, rear] = inputs.weighed;
    if !front && !rear {
        remarks.push(Remark::warning(
            "Neither axle was weighed: these loads are the things below alone, without the vehicle. \
             Weigh both axles and enter them.",
        ));
    } else if front != rear {
        let missing = if front { "rear" } else { "front" };
        remarks.push(Remark::warning(format!(
            "The {missing} axle was not weighed: its load and the whole lack the vehicle's own. \
             Weigh it too.",
        )));
    } else if loads.lifts {
        remarks.push(Remark::warning(
            "An axle would carry less than nothing and lift: check masses and places.",
        ));
    }
    if inputs.vehicle.gross_limit > inputs.vehicle.front.limit + inputs.vehicle.rear.limit + gram {
        remarks.push(Remark::note(
            "The limit of the whole is above both axle limits together; read the plate again.",
        ));
    }
    if loads.within_limits && remarks.is_empty() {
        remarks.push(Remark::good("All three limits are kept."));
    }
    if let Some(centre) = loads.items_centre {
        remarks.push(Remark::note(format!(
            "The things aboard have their common centre {} behind the front axle.",
            style.length(centre)
        )));
    }
    remarks
}

/// The part of an item that the rear axle carries.
fn on_rear(item: &Item, wheelbase: Length) -> Mass {
    item.mass * (item.from_front_axle / wheelbase)
}

fn label(inputs: &Inputs, index: usize) -> String {
    match inputs.labels.get(index) {
        Some(label) if !label.is_empty() => label.clone(),
        _ => format!("thing {}", index + 1),
    }
}

fn table(inputs: &Inputs, style: Style) -> Table {
    let rows = inputs.items.iter().enumerate().map(|(index, item)| {
        let rear = on_rear(item, inputs.vehicle.wheelbase);
        TableRow {
            cells: vec![
                label(inputs, index),
                style.mass(item.mass),
                style.length(item.from_front_axle),
                style.mass(item.mass - rear),
                style.mass(rear),
            ],
            chosen: false,
        }
    });
    Table {
        title: "Where each thing weighs".into(),
        heads: ["Thing", "Mass", "Behind the front axle", "On the front", "On the rear"]
            .map(String::from)
            .to_vec(),
        rows: rows.collect(),
    }
}

fn working(inputs: &Inputs, loads: &AxleLoads, style: Style) -> Vec<Step> {
    let wheelbase = style.length(inputs.vehicle.wheelbase);
    let mut steps: Vec<Step> = inputs
        .items
        .iter()
        .enumerate()
        .map(|(index, item)| {
            Step::new(
                format!("{}: on the rear axle", label(inputs, index)),
                "r = m · x / L",
                format!(
                    "{} · {} / {wheelbase}",
                    style.mass(item.mass),
                    style.length(item.from_front_axle)
                ),
                style.mass(on_rear(item, inputs.vehicle.wheelbase)),
                &MOMENTS,
            )
        })
        .collect();
    let rear: Mass = inputs
        .items
        .iter()
        .fold(Mass::default(), |sum, item| sum + on_rear(item, inputs.vehicle.wheelbase));
    let all = inputs.items.iter().fold(Mass::default(), |sum, item| sum + item.mass);
    steps.push(Step::new(
        "Rear axle",
        "R = R₀ + Σ r",
        format!("{} + {}", style.mass(inputs.vehicle.rear.weighed), style.mass(rear)),
        style.mass(loads.rear),
        &MOMENTS,
    ));
    steps.push(Step::new(
        "Front axle",
        "F = F₀ + Σ m − Σ r",
        format!(
            "{} + {} − {}",
            style.mass(inputs.vehicle.front.weighed),
            style.mass(all),
            style.mass(rear)
        ),
        style.mass(loads.front),
        &MOMENTS,
    ));
    for limit in limits(&inputs.vehicle, loads) {
        steps.push(Step::new(
            format!("Left, {}", limit.name),
            "limit − load",
            format!("{} − {}", style.mass(limit.limit), style.mass(limit.carried)),
            style.mass(limit.left),
            &LIMITS,
        ));
    }
    steps
}

/// Seen from the left side, the front to the left: wheels to the wheelbase, each thing at its place.
fn side_view(inputs: &Inputs, loads: &AxleLoads, style: Style) -> Drawing {
    let wheelbase = inputs.vehicle.wheelbase.get::<meter>();
    let places = || inputs.items.iter().map(|item| item.from_front_axle.get::<meter>());
    let front = places().fold(-wheelbase * 0.22, f64::min) - wheelbase * 0.05;
    let rear = places().fold(wheelbase * 1.22, f64::max) + wheelbase * 0.05;
    let mut drawing = Drawing::new(
        "Side view with the loads",
        format!(
            "The vehicle from its left side, front to the left: {} on the front axle, {} on the \
             rear, {} apart.",
            style.mass(loads.front),
            style.mass(loads.rear),
            style.length(inputs.vehicle.wheelbase)
        ),
    );
    let (wheel, floor) = (wheelbase * 0.1, -wheelbase * 0.16);
    let step = wheelbase * 0.12;
    let levels = 4;
    let top = floor - step * (levels as f64 + 1.0);
    drawing.rectangle(Pen::Thin, Fill::Empty, Point::metres(front, top), Point::metres(rear, floor));
    drawing.line(Pen::Solid, &[Point::metres(front, floor), Point::metres(rear, floor)]);
    drawing.line(Pen::Thin, &[Point::metres(front, wheel), Point::metres(rear, wheel)]);
    for (x, load) in [(0.0, loads.front), (wheelbase, loads.rear)] {
        drawing.circle(Pen::Solid, Fill::Stock, Point::metres(x, 0.0), wheel);
        drawing.line(Pen::Centre, &[Point::metres(x, floor), Point::metres(x, wheel * 1.6)]);
        drawing.text(Point::metres(x, wheel * 2.4), Anchor::Middle, style.mass(load));
    }
    let mut from_front: Vec<(usize, &Item)> = inputs.items.iter().enumerate().collect();
    from_front
        .sort_by(|a, b| a.1.from_front_axle.value.total_cmp(&b.1.from_front_axle.value));
    for (rank, (index, item)) in from_front.into_iter().enumerate() {
        let x = item.from_front_axle.get::<meter>();
        // Neighbours stand at different heights, so that their texts keep apart.
        let height = floor - step * ((rank % levels) as f64 + 1.0);
        arrow(&mut drawing, Point::metres(x, height), floor, step * 0.2);
        drawing.text(
            Point::metres(x, height - step * 0.15),
            Anchor::Middle,
            format!("{} {}", label(inputs, index), style.mass(item.mass)),
        );
    }
    drawing.dimension(
        Point::metres(wheelbase, wheel),
        Point::metres(0.0, wheel),
        3.5,
        style.length(inputs.vehicle.wheelbase),
    );
    drawing
}

/// An arrow straight down to the floor.
fn arrow(drawing: &mut Drawing, from: Point, floor: f64, head: f64) {
    let tip = Point::metres(from.x, floor);
    drawing.line(Pen::Mark, &[from, tip]);
    drawing.line(
        Pen::Mark,
        &[
            Point::metres(from.x - head / 2.0, floor - head),
            tip,
            Point::metres(from.x + head / 2.0, floor - head),
        ],
    );
}

#[cfg(test)]
mod tests {
    use crate::testing::{faulty_fields, number, solved};
    use serde_json::json;

    const POUND: f64 = 0.453_592_37;

    fn one_load(mass: &str, place: &str, wheelbase: &str) -> crate::project::SheetResult {
        solved(
            "axles",
            json!({ "wheelbase": wheelbase, "front": { "limit": "14000 lb" },
                "rear": { "limit": "30000 lb" }, "gross_limit": "44000 lb",
                "items": [{ "label": "load", "mass": mass, "from_front_axle": place }] }),
        )
    }

    // A truck maker's body builder manual, appendix B, as transcribed: mass lb, place in, wheelbase in, rear, front.
    // The manual's own 38.86 for the first front load is a slip: 100 - 62.15 leaves 37.85. The last row is arithmetic.
    #[test]
    fn body_builder_manual_examples() {
        for (mass, place, wheelbase, rear, front, within) in [
            (100.0, 133.0, 214.0, 62.15, 37.85, 0.01),
            (14_500.0, 156.0, 214.0, 10_570.0, 3929.9, 0.2),
            (6000.0, 190.0, 220.0, 5181.8, 818.2, 0.05),
            (400.0, 250.0, 214.0, 467.3, -67.3, 0.05),
        ] {
            let result = one_load(
                &format!("{mass} lb"),
                &format!("{place} in"),
                &format!("{wheelbase} in"),
            );
            let pounds = |path| number(&result, path) / POUND;
            assert!((pounds("rear_kg") - rear).abs() < within, "{mass}: {}", pounds("rear_kg"));
            assert!((pounds("front_kg") - front).abs() < within, "{mass}: {}", pounds("front_kg"));
            assert!((pounds("gross_kg") - mass).abs() < 1e-9);
        }
    }

    #[test]
    fn what_was_weighed_is_the_base_and_an_overload_is_told() {
        let result = solved(
            "axles",
            json!({ "wheelbase": "3 m", "front": { "limit": "1500 kg", "weighed": "1000 kg" },
                "rear": { "limit": "1500 kg", "weighed": "1100 kg" }, "gross_limit": "2700 kg",
                "items": [{ "mass": "600 kg", "from_front_axle": "2.5 m" }] }),
        );
        assert!((number(&result, "front_kg") - 1100.0).abs() < 1e-9);
        assert!((number(&result, "rear_left_kg") + 100.0).abs() < 1e-9);
        assert!((number(&result, "gross_left_kg")).abs() < 1e-9);
        let report = result.unwrap();
        assert_eq!(report.outcome.get("within_limits"), Some(&false.into()));
        assert!(report.remarks[0].text.contains("rear axle is 100 kg over"), "{:?}", report.remarks);
    }

    // 70 l of water at 998 kg/m³ are 69.86 kg.
    #[test]
    fn water_comes_from_its_sheet() {
        let result = solved(
            "axles",
            json!({ "wheelbase": "4 m", "front": { "limit": "2 t" }, "rear": { "limit": "3 t" }, "gross_limit": "5 t",
                "items": [{ "sheet": "water", "from_front_axle": "1 m" }] }),
        );
        assert!((number(&result, "rear_kg") - 69.86 / 4.0).abs() < 1e-9);
    }

    #[test]
    fn faults_name_their_fields() {
        let result = solved(
            "axles",
            json!({ "wheelbase": "3960", "front": { "weighed": "1 t" }, "rear": { "limit": "4 t" },
                "gross_limit": "6 t", "items": [] }),
        );
        assert_eq!(faulty_fields(&result), ["wheelbase", "front.limit", "items"]);
        let items = solved(
            "axles",
            json!({ "wheelbase": "4 m", "front": { "limit": "2 t" }, "rear": { "limit": "3 t" }, "gross_limit": "5 t",
                "items": [{ "from_front_axle": "1 m" }, { "mass": "90", "from_front_axle": "1 m" },
                    { "sheet": "solar" }] }),
        );
        assert_eq!(
            faulty_fields(&items),
            ["items.0.mass", "items.1.mass", "items.2.sheet", "items.2.from_front_axle"]
        );
    }
}
