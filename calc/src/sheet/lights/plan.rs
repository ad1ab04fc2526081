//! The ceiling as a plan with its lamps over a map of the light, and the lamps row by row to mark.

use crate::sorting::sort_by;
use crate::text::text;
use uom::si::length::{meter, micrometer};

use super::words::is_moved;
use super::{Figures, Inputs};
use crate::drawing::{Anchor, Drawing, Fill, Pen, Point};
use crate::lists::{LineId, Mark, MarkStrip};
use crate::quantity::{Style, amount};

/// Steps of the map.
const STEPS: f64 = 5.0;

/// Where the lamps go, and how light it gets; both seen from above, the front to the left, so that the left wall is at
/// the top.
pub(super) fn drawings(inputs: &Inputs, figures: &Figures, style: Style) -> Vec<Drawing> {
    vec![plan(inputs, figures, style), light(inputs, figures, style)]
}

/// The ceiling's corners. [m]
fn sides(inputs: &Inputs) -> (f64, f64) {
    (inputs.ceiling.length.get::<meter>(), inputs.ceiling.width.get::<meter>())
}

fn outline(drawing: &mut Drawing, inputs: &Inputs, fill: Fill) {
    let (length, width) = sides(inputs);
    drawing.rectangle(Pen::Solid, fill, Point::metres(0.0, 0.0), Point::metres(length, width));
}

fn plan(inputs: &Inputs, figures: &Figures, style: Style) -> Drawing {
    let (length, width) = sides(inputs);
    let mut drawing = Drawing::new(
        "Lamps from above, the front to the left",
        text!(
            "{} lamps in a ceiling of {} by {}, clear of {} ribs and {} openings.",
            figures.placed.len(),
            style.length(inputs.ceiling.length),
            style.length(inputs.ceiling.width),
            inputs.supports.len(),
            inputs.openings.len()
        ),
    );
    outline(&mut drawing, inputs, Fill::Stock);
    for support in &inputs.supports {
        let half = support.width.get::<meter>() / 2.0;
        let centre = support.centre.get::<meter>();
        let (from, to) = ((centre - half).max(0.0), (centre + half).min(length));
        for x in if half > 0.0 { vec![from, to] } else { vec![centre] } {
            if (0.0..=length).contains(&x) {
                drawing.line(Pen::Hidden, &[Point::metres(x, 0.0), Point::metres(x, width)]);
            }
        }
    }
    for opening in &inputs.openings {
        let corner = Point::at(opening.corner.x, opening.corner.y);
        drawing.rectangle(
            Pen::Solid,
            Fill::Opening,
            corner,
            Point {
                x: corner.x + opening.length.get::<meter>(),
                y: corner.y + opening.width.get::<meter>(),
            },
        );
    }
    let radius = inputs.lamp.rim.get::<meter>() / 2.0;
    for (index, placed) in figures.placed.iter().enumerate() {
        let at = Point::at(placed.at.x, placed.at.y);
        if is_moved(placed) {
            drawing.line(Pen::Thin, &[Point::at(placed.wanted.x, placed.wanted.y), at]);
        }
        drawing.circle(Pen::Solid, Fill::Empty, at, radius);
        drawing.cross(if placed.clear() { Pen::Mark } else { Pen::Cut }, at);
        drawing.text(
            Point::metres(at.x, at.y - radius - width * 0.06),
            Anchor::Middle,
            (index + 1).to_string(),
        );
    }
    drawing.dimension(
        Point::metres(length, width),
        Point::metres(0.0, width),
        2.0,
        style.length(inputs.ceiling.length),
    );
    drawing.dimension(
        Point::metres(length, 0.0),
        Point::metres(length, width),
        2.0,
        style.length(inputs.ceiling.width),
    );
    drawing
}

fn light(inputs: &Inputs, figures: &Figures, style: Style) -> Drawing {
    let map = &figures.map;
    let lux = |value: f64| amount(value, 0, "lx");
    let mut drawing = Drawing::new(
        text!(
            "Light at {} above the floor, each step {}",
            style.length(inputs.plane_height),
            lux(map.highest / STEPS)
        ),
        text!(
            "A map of the light below the lamps, from {} to {} in five steps of {}.",
            lux(map.lowest),
            lux(map.highest),
            lux(map.highest / STEPS)
        ),
    );
    let (length, width) = sides(inputs);
    draw_map(&mut drawing, figures, length, width);
    outline(&mut drawing, inputs, Fill::Empty);
    let radius = inputs.lamp.rim.get::<meter>() / 2.0;
    for placed in &figures.placed {
        drawing.circle(Pen::Solid, Fill::Empty, Point::at(placed.at.x, placed.at.y), radius);
    }
    drawing
}

/// The map's cells, neighbours of the same step along the body drawn as one.
fn draw_map(drawing: &mut Drawing, figures: &Figures, length: f64, width: f64) {
    let map = &figures.map;
    if map.highest <= 0.0 {
        return;
    }
    let step = |lux: f64| (lux / map.highest * STEPS).floor().clamp(0.0, STEPS - 1.0) as u8;
    let (wide, high) = (length / map.columns as f64, width / map.rows as f64);
    for (row, cells) in map.lux.chunks(map.columns).enumerate() {
        let mut from = 0;
        for to in 1..=cells.len() {
            if to < cells.len() && step(cells[to]) == step(cells[from]) {
                continue;
            }
            drawing.rectangle(
                Pen::Thin,
                Fill::Level(step(cells[from])),
                Point::metres(from as f64 * wide, row as f64 * high),
                Point::metres(to as f64 * wide, (row + 1) as f64 * high),
            );
            from = to;
        }
    }
}

/// Lamps on one line along the body together, measured from the front wall.
pub(super) fn marks(inputs: &Inputs, figures: &Figures, style: Style) -> Vec<MarkStrip> {
    let mut strips: Vec<(i64, MarkStrip)> = Vec::new();
    for (index, placed) in figures.placed.iter().enumerate() {
        let line = placed.at.y.get::<micrometer>().round() as i64;
        let mark = Mark {
            id: match inputs.place_keys.get(index) {
                Some(key) => text!("l{}", key),
                None => text!("l{}", index + 1),
            },
            label: text!("lamp {}", index + 1),
            at: placed.at.x,
            note: if placed.clear() { String::new() } else { "not clear".into() },
        };
        match strips.iter_mut().find(|(known, _)| *known == line) {
            Some((_, strip)) => strip.marks.push(mark),
            None => strips.push((
                line,
                MarkStrip {
                    id: text!("y{}", LineId::length(placed.at.y)),
                    label: "ceiling".into(),
                    note: text!("line {} from the left wall", style.mark(placed.at.y).text),
                    alike: 1,
                    length: inputs.ceiling.length,
                    marks: vec![mark],
                },
            )),
        }
    }
    strips
        .into_iter()
        .map(|(_, mut strip)| {
            sort_by(&mut strip.marks, |a, b| a.at.value.total_cmp(&b.at.value));
            strip
        })
        .collect()
}
