//! The plan of the body: walls, ribs and roof openings, seen from above.

mod asking;

pub use asking::asking_plan;

use uom::si::length::meter;

use super::{Body, Diagonals, Opening, Station};
use crate::drawing::{Anchor, Drawing, Fill, Pen, Point};
use crate::quantity::{Length, Style};
use crate::words::project as words;

/// The walls as they are drawn: front wall to the left, left wall at the bottom, as on a map. The left wall is drawn straight, as it is
/// what y is measured from; the right wall runs through the stations, and leans as the diagonals say. [m]
struct Walls<'a> {
    body: &'a Body,
    along: f64,
    across: f64,
    widths: Vec<(f64, f64)>,
    lean: f64,
}

impl<'a> Walls<'a> {
    fn new(body: &'a Body, along: f64, width: f64) -> Self {
        let end = Length::new::<meter>(along);
        let stations = body.widths_between(Length::new::<meter>(0.0), end);
        let widths: Vec<(f64, f64)> = if stations.is_empty() {
            [0.0, along].map(|x| (x, width)).to_vec()
        } else {
            stations.iter().map(|station| (station.x_mm / 1e3, station.width_mm / 1e3)).collect()
        };
        let across = widths.iter().map(|(_, width)| *width).fold(0.0, f64::max);
        let lean = body.shear_mm().unwrap_or_default() / 1e3;
        Self { body, along, across, widths, lean }
    }

    fn at(&self, x: f64, y: f64) -> Point {
        Point::metres(x, self.across - y)
    }

    fn wide(&self, x: f64) -> f64 {
        let width = self.body.width_at(Length::new::<meter>(x));
        width.map_or(self.across, |width| width.get::<meter>())
    }

    fn outline(&self, drawing: &mut Drawing, pen: Pen) {
        let mut outline = vec![self.at(self.along, 0.0), self.at(0.0, 0.0)];
        outline.extend(self.widths.iter().map(|(x, width)| self.at(x + self.lean, *width)));
        drawing.area(pen, Fill::Empty, &outline);
    }

    /// A rib, and below the wall, not on its line, what it is called.
    fn rib(&self, drawing: &mut Drawing, x: f64, pen: Pen, name: String) {
        let wide = self.wide(x);
        let face = self.body.rib_width.filter(|_| pen == Pen::Centre);
        if let Some(face) = face.map(|face| face.get::<meter>() / 2.0) {
            let corners = [(x - face, 0.0), (x + face, 0.0), (x + face, wide), (x - face, wide)];
            drawing.area(Pen::Thin, Fill::Stock, &corners.map(|(x, y)| self.at(x, y)));
        }
        drawing.line(pen, &[self.at(x, 0.0), self.at(x, wide)]);
        drawing.text(self.at(x, -self.along * 0.01), Anchor::Middle, name);
    }

    fn opening(&self, drawing: &mut Drawing, opening: &Opening) {
        let (x, y) = (opening.x.get::<meter>(), opening.y.get::<meter>());
        let (far_x, far_y) = (x + opening.length.get::<meter>(), y + opening.width.get::<meter>());
        drawing.rectangle(Pen::Solid, Fill::Opening, self.at(x, far_y), self.at(far_x, y));
        let middle = self.at(f64::midpoint(x, far_x), f64::midpoint(y, far_y));
        drawing.text(middle, Anchor::Middle, opening.name.clone());
    }

    /// Whether a station lies within the body: at both ends the walls are lines already, with their figures beside them.
    fn is_within(&self, x: f64) -> bool {
        x > 1e-3 && x < self.along - 1e-3
    }

    fn station(&self, drawing: &mut Drawing, station: &Station, style: Style) {
        let x = station.x.get::<meter>();
        let ends = [self.at(x, 0.0), self.at(x, station.width.get::<meter>())];
        drawing.line(Pen::Hidden, &ends);
        // Above the widest place, so that no figure stands in the plan.
        let above = self.at(x, self.across + self.along * 0.01);
        drawing.text(above, Anchor::Middle, style.mark(station.width).text);
    }

    /// The ends of the diagonals: front left to rear right, front right to rear left.
    fn diagonals(&self) -> [[Point; 2]; 2] {
        let (front, rear) = (self.wide(0.0), self.wide(self.along));
        [
            [self.at(0.0, 0.0), self.at(self.along + self.lean, rear)],
            [self.at(self.lean, front), self.at(self.along, 0.0)],
        ]
    }

    fn length(&self, drawing: &mut Drawing, text: String) {
        let (front, rear) = (self.at(0.0, self.across), self.at(self.along, self.across));
        drawing.dimension(front, rear, 1.5, text);
    }

    fn front(&self, drawing: &mut Drawing, text: String) {
        drawing.dimension(self.at(0.0, 0.0), self.at(0.0, self.wide(0.0)), 1.5, text);
    }

    fn rear(&self, drawing: &mut Drawing, text: String) {
        let rear = self.at(self.along, self.wide(self.along));
        drawing.dimension(rear, self.at(self.along, 0.0), 1.5, text);
    }
}

/// The plan; none where the body's length or width is not known.
pub fn plan(body: &Body, style: Style) -> Option<Drawing> {
    let (length, width) = (body.length?, body.width?);
    let walls = Walls::new(body, length.get::<meter>(), width.get::<meter>());
    let mut drawing = Drawing::new(style.say(words::PLAN), words(body, style, length, width));
    walls.outline(&mut drawing, Pen::Solid);
    for (index, rib) in body.ribs.iter().enumerate() {
        walls.rib(&mut drawing, rib.get::<meter>(), Pen::Centre, (index + 1).to_string());
    }
    for opening in &body.openings {
        walls.opening(&mut drawing, opening);
    }
    for station in body.widths.iter().filter(|one| walls.is_within(one.x.get::<meter>())) {
        walls.station(&mut drawing, station, style);
    }
    if body.diagonals.as_ref().is_some_and(is_own) {
        let [first, second] = walls.diagonals();
        drawing.line(Pen::Thin, &second);
        drawing.line(Pen::Thin, &first);
    }
    walls.length(&mut drawing, style.length(length));
    let wide = |x: f64| style.length(Length::new::<meter>(walls.wide(x)));
    walls.front(&mut drawing, wide(0.0));
    if !body.widths.is_empty() {
        walls.rear(&mut drawing, wide(walls.along));
    }
    Some(drawing)
}

/// Whether the diagonals are those of the body's own corners.
fn is_own(diagonals: &Diagonals) -> bool {
    diagonals.length.is_none() && diagonals.width.is_none()
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
