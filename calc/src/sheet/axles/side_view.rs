//! The vehicle from its side, with the things aboard.

use uom::si::length::meter;

use super::{Aboard, Found};
use crate::drawing::{Anchor, Drawing, Fill, Pen, Point};
use crate::formula::Formula;
use crate::quantity::Style;
use crate::sorting::sort_by;
use crate::words::{Arg, axles as words};

/// Seen from the left side, the front to the left: wheels to the wheelbase, each thing at its place with its number in the
/// table.
pub(super) fn draw(aboard: &Aboard, found: &Found, style: Style) -> Drawing {
    let wheelbase = aboard.vehicle.wheelbase.get::<meter>();
    let places = || aboard.items.iter().map(|item| item.from_front_axle.get::<meter>());
    let front = places().fold(-wheelbase * 0.22, f64::min) - wheelbase * 0.05;
    let rear = places().fold(wheelbase * 1.22, f64::max) + wheelbase * 0.05;
    let (on_front, on_rear) = (found.front.value(), found.rear.value());
    let words = words::DrawingWords {
        front: Arg::mass(on_front),
        rear: Arg::mass(on_rear),
        wheelbase: aboard.vehicle.wheelbase,
    };
    let mut drawing = Drawing::new(style.say(words::DRAWING), style.say(words));
    let (wheel, floor) = (wheelbase * 0.1, -wheelbase * 0.16);
    let step = wheelbase * 0.12;
    let numbered = numbered(aboard, (rear - front) * 0.07);
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
    for (x, load) in [(0.0, on_front), (wheelbase, on_rear)] {
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
        style.length(aboard.vehicle.wheelbase),
    );
    drawing
}

/// Each thing's index, the level of its number and its place [m], from the front: the lowest level at which the number keeps
/// clear of the one before it.
fn numbered(aboard: &Aboard, clear: f64) -> Vec<(usize, usize, f64)> {
    let mut places: Vec<(usize, usize, f64)> = aboard
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
