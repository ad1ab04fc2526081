//! The ceiling as a plan with its lamps over a map of the light, and the lamps row by row to mark.

use uom::si::length::{meter, micrometer};

use super::{Job, Lit};
use crate::drawing::{Anchor, Drawing, Fill, Pen, Point};
use crate::lists::{LineId, Mark, MarkStrip};
use crate::quantity::Style;
use crate::sorting::sort_by;
use crate::text::text;
use crate::words::{Arg, lights as words};

/// Steps of the map.
const STEPS: f64 = 5.0;

/// Where the lamps go, and how light it gets; both seen from above, the front to the left, so that the left wall is at
/// the top.
pub(super) fn drawings(job: &Job, found: &Lit, style: Style) -> Vec<Drawing> {
    vec![plan(job, found, style), light(job, found, style)]
}

/// The ceiling's corners. [m]
fn sides(job: &Job) -> (f64, f64) {
    (job.ceiling.length.get::<meter>(), job.ceiling.width.get::<meter>())
}

fn outline(drawing: &mut Drawing, job: &Job, fill: Fill) {
    let (length, width) = sides(job);
    drawing.rectangle(Pen::Solid, fill, Point::metres(0.0, 0.0), Point::metres(length, width));
}

fn plan(job: &Job, found: &Lit, style: Style) -> Drawing {
    let (length, width) = sides(job);
    let said = words::PlanWords {
        lamps: found.lamps.len(),
        length: job.ceiling.length,
        width: job.ceiling.width,
        ribs: job.supports.len(),
        openings: job.openings.len(),
    };
    let mut drawing = Drawing::new(style.say(words::PLAN), style.say(said));
    outline(&mut drawing, job, Fill::Stock);
    for support in &job.supports {
        let half = support.width.get::<meter>() / 2.0;
        let centre = support.centre.get::<meter>();
        let (from, to) = ((centre - half).max(0.0), (centre + half).min(length));
        for x in if half > 0.0 { vec![from, to] } else { vec![centre] } {
            if (0.0..=length).contains(&x) {
                drawing.line(Pen::Hidden, &[Point::metres(x, 0.0), Point::metres(x, width)]);
            }
        }
    }
    for opening in &job.openings {
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
    let radius = job.inputs.lamp.rim.get::<meter>() / 2.0;
    for (index, lamp) in found.lamps.iter().enumerate() {
        let at = Point::at(lamp.x, lamp.y);
        if lamp.is_moved() {
            drawing.line(Pen::Thin, &[Point::at(lamp.wanted.x, lamp.wanted.y), at]);
        }
        drawing.circle(Pen::Solid, Fill::Empty, at, radius);
        drawing.cross(if lamp.clear { Pen::Mark } else { Pen::Cut }, at);
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
        style.length(job.ceiling.length),
    );
    drawing.dimension(
        Point::metres(length, 0.0),
        Point::metres(length, width),
        2.0,
        style.length(job.ceiling.width),
    );
    drawing
}

fn light(job: &Job, found: &Lit, style: Style) -> Drawing {
    let step = Arg::lux(found.lux.highest / STEPS);
    let (lowest, highest) = (Arg::lux(found.lux.lowest), Arg::lux(found.lux.highest));
    let title = words::Map { height: job.inputs.plane_height, step: step.clone() };
    let said = words::MapWords { lowest, highest, step };
    let mut drawing = Drawing::new(style.say(title), style.say(said));
    let (length, width) = sides(job);
    draw_map(&mut drawing, found, length, width);
    outline(&mut drawing, job, Fill::Empty);
    let radius = job.inputs.lamp.rim.get::<meter>() / 2.0;
    for lamp in &found.lamps {
        drawing.circle(Pen::Solid, Fill::Stock, Point::at(lamp.x, lamp.y), radius);
    }
    legend(&mut drawing, found, length, width, style);
    drawing
}

/// The steps of the map side by side below it, each between its two figures.
fn legend(drawing: &mut Drawing, found: &Lit, length: f64, width: f64, style: Style) {
    let (top, bottom, wide) = (width * 1.08, width * 1.2, length / STEPS);
    for step in 0..STEPS as u8 {
        let from = f64::from(step) * wide;
        let (near, far) = (Point::metres(from, top), Point::metres(from + wide, bottom));
        drawing.rectangle(Pen::Thin, Fill::Light(step), near, far);
    }
    for edge in 0..=STEPS as u8 {
        let share = f64::from(edge) / STEPS;
        let at = Point::metres(length * share, bottom + width * 0.02);
        let figure = style.write(&Arg::lux(found.map.highest * share));
        drawing.text(at, Anchor::Middle, figure);
    }
}

/// The map's cells, neighbours of the same step along the body drawn as one.
fn draw_map(drawing: &mut Drawing, found: &Lit, length: f64, width: f64) {
    let map = &found.map;
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
                Fill::Light(step(cells[from])),
                Point::metres(from as f64 * wide, row as f64 * high),
                Point::metres(to as f64 * wide, (row + 1) as f64 * high),
            );
            from = to;
        }
    }
}

/// Lamps on one line along the body together, measured from the front wall.
pub(super) fn marks(job: &Job, found: &Lit, style: Style) -> Vec<MarkStrip> {
    let mut strips: Vec<(i64, MarkStrip)> = Vec::new();
    for (index, lamp) in found.lamps.iter().enumerate() {
        let line = lamp.y.get::<micrometer>().round() as i64;
        let mark = Mark {
            id: match job.place_keys.get(index) {
                Some(key) => text!("l{}", key),
                None => text!("l{}", index + 1),
            },
            label: style.say(words::LampName { number: index + 1 }),
            at: lamp.x,
            note: if lamp.clear { String::new() } else { style.say(words::NOT_CLEAR) },
        };
        match strips.iter_mut().find(|(known, _)| *known == line) {
            Some((_, strip)) => strip.marks.push(mark),
            None => strips.push((
                line,
                MarkStrip {
                    id: text!("y{}", LineId::length(lamp.y)),
                    label: style.say(words::CEILING),
                    note: style.say(words::Line { y: Arg::mark(lamp.y) }),
                    own_datum: false,
                    alike: 1,
                    length: job.ceiling.length,
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
