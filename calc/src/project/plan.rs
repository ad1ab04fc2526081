//! The plan of the body: walls, ribs and roof openings, seen from above.

use uom::si::length::meter;

use super::{Body, Diagonals};
use crate::drawing::{Anchor, Drawing, Fill, Pen, Point};
use crate::quantity::{Length, Style};
use crate::words::project as words;

/// The plan, front wall to the left, left wall at the bottom; none where the body's length or
/// width is not known. The left wall is drawn straight, as it is what y is measured from; the
/// right wall runs through the stations, and leans as the diagonals say.
pub fn plan(body: &Body, style: Style) -> Option<Drawing> {
    let (length, width) = (body.length?, body.width?);
    let along = length.get::<meter>();
    let start = Length::new::<meter>(0.0);
    let widths = body.widths_between(start, length);
    let widths: Vec<(f64, f64)> = if widths.is_empty() {
        [0.0, along].map(|x| (x, width.get::<meter>())).to_vec()
    } else {
        widths.iter().map(|station| (station.x_mm / 1e3, station.width_mm / 1e3)).collect()
    };
    let across = widths.iter().map(|(_, width)| *width).fold(0.0, f64::max);
    // The left wall is at the bottom, as on a map with the front to the left.
    let at = |x: f64, y: f64| Point::metres(x, across - y);
    let wide = |x: f64| body.width_at(Length::new::<meter>(x)).map_or(across, |w| w.get::<meter>());
    let mut drawing = Drawing::new(style.say(words::PLAN), words(body, style, length, width));
    let lean = body.shear_mm().unwrap_or_default() / 1e3;
    let mut outline = vec![at(along, 0.0), at(0.0, 0.0)];
    outline.extend(widths.iter().map(|(x, width)| at(x + lean, *width)));
    drawing.area(Pen::Solid, Fill::Empty, &outline);
    for (index, rib) in body.ribs.iter().enumerate() {
        let x = rib.get::<meter>();
        if let Some(face) = body.rib_width.map(|face| face.get::<meter>() / 2.0) {
            let corners =
                [(x - face, 0.0), (x + face, 0.0), (x + face, wide(x)), (x - face, wide(x))];
            drawing.area(Pen::Thin, Fill::Stock, &corners.map(|(x, y)| at(x, y)));
        }
        drawing.line(Pen::Centre, &[at(x, 0.0), at(x, wide(x))]);
        // Below the wall, not on its line.
        drawing.text(at(x, -along * 0.01), Anchor::Middle, (index + 1).to_string());
    }
    for opening in &body.openings {
        let (x, y) = (opening.x.get::<meter>(), opening.y.get::<meter>());
        let (far_x, far_y) = (x + opening.length.get::<meter>(), y + opening.width.get::<meter>());
        drawing.rectangle(Pen::Solid, Fill::Opening, at(x, far_y), at(far_x, y));
        let middle = at(f64::midpoint(x, far_x), f64::midpoint(y, far_y));
        drawing.text(middle, Anchor::Middle, opening.name.clone());
    }
    for station in &body.widths {
        let x = station.x.get::<meter>();
        let ends = [at(x, 0.0), at(x, station.width.get::<meter>())];
        // At both ends the walls are lines already, with their figures beside them.
        if x > 1e-3 && x < along - 1e-3 {
            drawing.line(Pen::Hidden, &ends);
            // Above the widest place, so that no figure stands in the plan.
            let above = at(x, across + along * 0.01);
            drawing.text(above, Anchor::Middle, style.mark(station.width).text);
        }
    }
    let own = |check: &Diagonals| check.length.is_none() && check.width.is_none();
    if body.diagonals.as_ref().is_some_and(own) {
        let (front, rear) = (wide(0.0), wide(along));
        drawing.line(Pen::Thin, &[at(lean, front), at(along, 0.0)]);
        drawing.line(Pen::Thin, &[at(0.0, 0.0), at(along + lean, rear)]);
    }
    drawing.dimension(at(0.0, across), at(along, across), 1.5, style.length(length));
    let front = wide(0.0);
    drawing.dimension(at(0.0, 0.0), at(0.0, front), 1.5, style.length(Length::new::<meter>(front)));
    if !body.widths.is_empty() {
        let rear = wide(along);
        let text = style.length(Length::new::<meter>(rear));
        drawing.dimension(at(along, rear), at(along, 0.0), 1.5, text);
    }
    Some(drawing)
}

fn words(body: &Body, style: Style, length: Length, width: Length) -> String {
    let (ribs, openings) = (body.ribs.len(), body.openings.len());
    match body.widths.len() {
        0 => style.say(words::PlanWords { length, width, ribs, openings }),
        stations => style.say(words::PlanStations { length, width, ribs, openings, stations }),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::Shape;
    use crate::quantity::UnitSystem;
    use serde_json::json;

    /// The outline runs through the stations: worked by hand, widest 2000 mm.
    #[test]
    fn the_right_wall_runs_through_the_stations() {
        let style = Style::new(UnitSystem::Metric);
        let body = json!({ "length": "4 m", "width": "1 m", "widths": [
            { "x": "1 m", "width": "2000 mm" }, { "x": "3 m", "width": "1900 mm" } ] });
        let drawing = plan(&Body::read(&body, style), style).unwrap();
        let Some(Shape::Area { points, .. }) = drawing.shapes.first() else { panic!("no outline") };
        let found: Vec<(f64, f64)> =
            points.iter().map(|p| ((p.x * 1e3).round(), (p.y * 1e3).round())).collect();
        assert_eq!(
            found,
            [
                (4000.0, 2000.0),
                (0.0, 2000.0),
                (0.0, 0.0),
                (1000.0, 0.0),
                (3000.0, 100.0),
                (4000.0, 100.0)
            ]
        );
    }
}
