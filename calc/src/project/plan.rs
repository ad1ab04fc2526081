//! The plan of the body: walls, ribs and roof openings, seen from above.

use uom::si::length::meter;

use super::Body;
use crate::drawing::{Anchor, Drawing, Fill, Pen, Point};
use crate::quantity::Style;

/// The plan, front wall to the left, left wall at the bottom; none where the body's length or
/// width is not known.
pub fn plan(body: &Body, style: Style) -> Option<Drawing> {
    let (length, width) = (body.length?, body.width?);
    let (along, across) = (length.get::<meter>(), width.get::<meter>());
    let mut drawing = Drawing::new(
        "Plan of the body",
        format!(
            "A body {} long and {} wide with {} ribs and {} roof openings.",
            style.length(length),
            style.length(width),
            body.ribs.len(),
            body.openings.len()
        ),
    );
    drawing.rectangle(
        Pen::Solid,
        Fill::Empty,
        Point::metres(0.0, 0.0),
        Point::metres(along, across),
    );
    for (index, rib) in body.ribs.iter().enumerate() {
        let x = rib.get::<meter>();
        if let Some(face) = body.rib_width.map(|face| face.get::<meter>() / 2.0) {
            drawing.rectangle(
                Pen::Thin,
                Fill::Stock,
                Point::metres(x - face, 0.0),
                Point::metres(x + face, across),
            );
        }
        drawing.line(Pen::Centre, &[Point::metres(x, 0.0), Point::metres(x, across)]);
        drawing.text(Point::metres(x, across), Anchor::Middle, (index + 1).to_string());
    }
    for opening in &body.openings {
        let (x, y) = (opening.x.get::<meter>(), opening.y.get::<meter>());
        let (far_x, far_y) = (x + opening.length.get::<meter>(), y + opening.width.get::<meter>());
        // The left wall is at the bottom, as on a map with the front to the left.
        let (near, far) = (Point::metres(x, across - far_y), Point::metres(far_x, across - y));
        drawing.rectangle(Pen::Solid, Fill::Opening, near, far);
        let middle = Point::metres(f64::midpoint(x, far_x), across - f64::midpoint(y, far_y));
        drawing.text(middle, Anchor::Middle, opening.name.clone());
    }
    drawing.dimension(
        Point::metres(0.0, 0.0),
        Point::metres(along, 0.0),
        1.5,
        style.length(length),
    );
    drawing.dimension(
        Point::metres(0.0, across),
        Point::metres(0.0, 0.0),
        1.5,
        style.length(width),
    );
    Some(drawing)
}
