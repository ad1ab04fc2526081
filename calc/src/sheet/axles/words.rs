//! What is said about axle loads: answers, remarks, table, working, and the side view.

use crate::sorting::sort_by;
use crate::text::text;
use uom::si::length::meter;
use uom::si::mass::kilogram;

use super::{Inputs, Limit, NEAR, limits};
use crate::drawing::{Anchor, Drawing, Fill, Pen, Point};
use crate::mass::axles::{AxleLoads, Item, LIMITS, MOMENTS};
use crate::project::shopping::Weight;
use crate::quantity::{Length, Mass, Style, percent};
use crate::report::{Answer, Remark, Step, Table, TableRow, texts};

pub(super) fn answer(limit: &Limit, style: Style) -> Answer {
    let label = match limit.name {
        "whole" => "Everything together".to_owned(),
        axle => text!("On the {}", &axle),
    };
    let note = if limit.left >= Mass::default() {
        text!("{} left below {}", style.mass(limit.left), style.mass(limit.limit))
    } else {
        text!("{} over the limit of {}", style.mass(-limit.left), style.mass(limit.limit))
    };
    Answer::new(label, style.mass(limit.carried)).note(note)
}

pub(super) fn remarks(
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
            remarks.push(Remark::warning(text!(
                "The {} is {} over its limit: {}.",
                &limit.name,
                style.mass(-limit.left),
                &help
            )));
        } else if limit.left < limit.limit * NEAR {
            remarks.push(Remark::warning(text!(
                "The {} is within {} of its limit: weigh it before you add anything.",
                &limit.name,
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
        remarks.push(Remark::warning(text!(
            "The {} axle was not weighed: its load and the whole lack the vehicle's own. \
             Weigh it too.",
            &missing
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
        remarks.push(Remark::good(
            "By these figures all three limits are kept: weigh it as it is driven to be sure.",
        ));
    }
    if let Some(weight) = &inputs.project {
        project_remarks(weight, &mut remarks);
    }
    if let Some(centre) = loads.items_centre {
        remarks.push(Remark::note(text!(
            "The things aboard have their common centre {} behind the front axle.",
            style.length(centre)
        )));
    }
    remarks
}

/// What the weight of the buy list leaves out or guesses.
fn project_remarks(weight: &Weight, remarks: &mut Vec<Remark>) {
    if weight.without_mass > 0 {
        remarks.push(Remark::note(text!(
            "Lines of the buy list without a mass are not counted: {}. Give it there.",
            &weight.without_mass
        )));
    }
    if weight.without_place > 0 {
        remarks.push(Remark::note(text!(
            "Lines of the buy list without a place count at the middle of the body: {}.",
            &weight.without_place
        )));
    }
}

/// The part of an item that the rear axle carries.
fn on_rear(item: &Item, wheelbase: Length) -> Mass {
    item.mass * (item.from_front_axle / wheelbase)
}

fn label(inputs: &Inputs, index: usize) -> String {
    match inputs.labels.get(index) {
        Some(label) if !label.is_empty() => label.clone(),
        _ => text!("thing {}", index + 1),
    }
}

pub(super) fn table(inputs: &Inputs, style: Style) -> Table {
    let rows = inputs.items.iter().enumerate().map(|(index, item)| {
        let rear = on_rear(item, inputs.vehicle.wheelbase);
        TableRow {
            cells: vec![
                text!("{} {}", index + 1, label(inputs, index)),
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
        heads: texts(&["Thing", "Mass", "Behind the front axle", "On the front", "On the rear"]),
        rows: rows.collect(),
    }
}

pub(super) fn working(inputs: &Inputs, loads: &AxleLoads, style: Style) -> Vec<Step> {
    let wheelbase = style.length(inputs.vehicle.wheelbase);
    let mut steps: Vec<Step> = inputs
        .items
        .iter()
        .enumerate()
        .map(|(index, item)| {
            Step::new(
                text!("{}: on the rear axle", label(inputs, index)),
                "r = m · x / L",
                text!(
                    "{} · {} / {}",
                    style.mass(item.mass),
                    style.length(item.from_front_axle),
                    &wheelbase
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
        text!("{} + {}", style.mass(inputs.vehicle.rear.weighed), style.mass(rear)),
        style.mass(loads.rear),
        &MOMENTS,
    ));
    steps.push(Step::new(
        "Front axle",
        "F = F₀ + Σ m − Σ r",
        text!(
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
            text!("Left, {}", &limit.name),
            "limit − load",
            text!("{} − {}", style.mass(limit.limit), style.mass(limit.carried)),
            style.mass(limit.left),
            &LIMITS,
        ));
    }
    steps
}

/// Seen from the left side, the front to the left: wheels to the wheelbase, each thing at its place with its number in the
/// table.
pub(super) fn side_view(inputs: &Inputs, loads: &AxleLoads, style: Style) -> Drawing {
    let wheelbase = inputs.vehicle.wheelbase.get::<meter>();
    let places = || inputs.items.iter().map(|item| item.from_front_axle.get::<meter>());
    let front = places().fold(-wheelbase * 0.22, f64::min) - wheelbase * 0.05;
    let rear = places().fold(wheelbase * 1.22, f64::max) + wheelbase * 0.05;
    let mut drawing = Drawing::new(
        "Side view with the loads",
        text!(
            "The vehicle from its left side, front to the left: {} on the front axle, {} on the \
             rear, {} apart.",
            style.mass(loads.front),
            style.mass(loads.rear),
            style.length(inputs.vehicle.wheelbase)
        ),
    );
    let (wheel, floor) = (wheelbase * 0.1, -wheelbase * 0.16);
    let step = wheelbase * 0.12;
    let numbered = numbered(inputs, (rear - front) * 0.07);
    let levels = numbered.iter().map(|(_, level, _)| *level).max().unwrap_or(0);
    let top = floor - step * (levels as f64 * 0.7 + 2.0);
    drawing.rectangle(
        Pen::Thin,
        Fill::Empty,
        Point::metres(front, top),
        Point::metres(rear, floor),
    );
    drawing.line(Pen::Solid, &[Point::metres(front, floor), Point::metres(rear, floor)]);
    drawing.line(Pen::Thin, &[Point::metres(front, wheel), Point::metres(rear, wheel)]);
    for (x, load) in [(0.0, loads.front), (wheelbase, loads.rear)] {
        drawing.circle(Pen::Solid, Fill::Stock, Point::metres(x, 0.0), wheel);
        drawing.line(Pen::Centre, &[Point::metres(x, floor), Point::metres(x, wheel * 1.6)]);
        drawing.text(Point::metres(x, wheel * 2.4), Anchor::Middle, style.mass(load));
    }
    for (index, level, x) in numbered {
        // Numbers of neighbours stand above each other; an arrow never runs through one.
        arrow(&mut drawing, Point::metres(x, floor - step), floor, step * 0.2);
        let height = floor - step * (level as f64 * 0.7 + 1.0);
        let number = (index + 1).to_string();
        drawing.text(Point::metres(x, height - step * 0.15), Anchor::Middle, number);
    }
    drawing.dimension(
        Point::metres(wheelbase, wheel),
        Point::metres(0.0, wheel),
        3.5,
        style.length(inputs.vehicle.wheelbase),
    );
    drawing
}

/// Each thing's index, the level of its number and its place [m], from the front: the lowest level at which the number keeps
/// clear of the one before it.
fn numbered(inputs: &Inputs, clear: f64) -> Vec<(usize, usize, f64)> {
    let mut places: Vec<(usize, usize, f64)> = inputs
        .items
        .iter()
        .enumerate()
        .map(|(index, item)| (index, 0, item.from_front_axle.get::<meter>()))
        .collect();
    sort_by(&mut places, |a, b| a.2.total_cmp(&b.2));
    let mut last: Vec<f64> = Vec::new();
    for (_, level, x) in &mut places {
        let free = last.iter().position(|before| *x - before >= clear);
        *level = free.unwrap_or(last.len());
        match last.get_mut(*level) {
            Some(before) => *before = *x,
            None => last.push(*x),
        }
    }
    places
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
