//! The plan that is measured on: each figure, rib and opening of it asks for itself, and what is not measured yet has a place to be tapped.

use uom::si::length::meter;

use super::{Walls, is_own};
use crate::body::Body;
use crate::drawing::{Anchor, Drawing, Fill, Pen, Point};
use crate::quantity::{Length, Style};
use crate::words::{Msg, body as asked, project as words};

/// A body that nothing is known of is sketched so long and so wide, of the proportions of a van. [m]
const SKETCH: (f64, f64) = (4.57, 1.83);
/// Where its first rib is sketched, from the front wall. [m]
const FIRST_RIB: f64 = 0.4;
/// How large an opening is sketched, as a share of the width.
const OPENING: f64 = 0.24;
/// Where along the diagonals their figures stand: near the rear, clear of each other.
const ALONG_DIAGONAL: f64 = 0.8;

/// The plan with all that can be asked for; what is not measured is sketched with short dashes and a question mark.
pub fn asking_plan(body: &Body, style: Style) -> Drawing {
    let so_far = &body.so_far;
    let metres = |length: Length| length.get::<meter>();
    let last = so_far.ribs.iter().map(|(_, rib)| metres(*rib)).fold(0.0, f64::max);
    let along = body.length.map_or(SKETCH.0.max(last * 1.1 + FIRST_RIB), metres);
    let walls = Walls::new(body, along, body.width.map_or(SKETCH.1, metres));
    let to_scale = body.length.is_some() && body.width.is_some();
    let title = style.say(if to_scale { words::PLAN_ASKS } else { words::PLAN_EARLY });
    let told = match (body.length, body.width) {
        (Some(length), Some(width)) => super::words(body, style, length, width),
        _ => title.clone(),
    };
    let mut sketch = Sketch { drawing: Drawing::new(title, told), walls, style };
    sketch.walls.outline(&mut sketch.drawing, if to_scale { Pen::Solid } else { Pen::Hidden });
    sketch.ribs();
    sketch.openings();
    sketch.widths();
    sketch.diagonals();
    let length = body.length.map(|length| style.length(length));
    let place = Place { asks: "length".to_owned(), what: style.say(asked::LENGTH), value: length };
    sketch.figure(place, Walls::length);
    let corner = sketch.walls.at(0.0, sketch.walls.across + along * 0.01);
    sketch.drawing.text(corner, Anchor::Start, style.say(words::PLAN_FRONT));
    sketch.drawing
}

/// What is asked for, and the measure where it was entered.
struct Place {
    asks: String,
    what: String,
    value: Option<String>,
}

struct Sketch<'a> {
    drawing: Drawing,
    walls: Walls<'a>,
    style: Style,
}

impl<'a> Sketch<'a> {
    /// Draws what asks for a measure.
    fn asking(&mut self, place: Place, draw: impl FnOnce(&Walls<'a>, &mut Drawing)) {
        let Place { asks, what, value } = place;
        let given = value.is_some();
        let name: Msg = match value {
            Some(value) => words::Entered { what, value }.into(),
            None => words::ToEnter { what }.into(),
        };
        let name = self.style.say(name);
        let walls = &self.walls;
        self.drawing.asking(asks, name, given, |drawing| draw(walls, drawing));
    }

    /// A figure that asks for itself.
    fn figure(&mut self, place: Place, draw: impl FnOnce(&Walls<'a>, &mut Drawing, String)) {
        let text = place.value.clone().unwrap_or_else(|| "?".to_owned());
        self.asking(place, |walls, drawing| draw(walls, drawing, text));
    }

    fn ribs(&mut self) {
        let so_far = &self.walls.body.so_far;
        let mut at: Vec<f64> = Vec::with_capacity(so_far.ribs.len());
        for (row, rib) in &so_far.ribs {
            let asks = match (so_far.evenly, row) {
                (false, row) => format!("ribs.measured.{row}"),
                (true, 0) => "ribs.even.first".to_owned(),
                (true, _) => "ribs.even.spacing".to_owned(),
            };
            let what = self.style.say(words::PlanRib { number: row + 1 });
            let (x, number) = (rib.get::<meter>(), (row + 1).to_string());
            let place = Place { asks, what, value: Some(self.style.mark(*rib).text) };
            self.asking(place, |walls, drawing| walls.rib(drawing, x, Pen::Centre, number));
            at.push(x);
        }
        let next = match at.as_slice() {
            [] => FIRST_RIB,
            [only] => only + only.max(FIRST_RIB / 2.0),
            [.., before, last] => last + (last - before).max(0.0),
        };
        if so_far.evenly || next >= self.walls.along {
            return;
        }
        let (row, next) = (so_far.next_rib, next.max(0.0));
        let place = Place {
            asks: format!("ribs.measured.{row}"),
            what: self.style.say(words::PlanRib { number: row + 1 }),
            value: None,
        };
        self.asking(place, |walls, drawing| {
            walls.rib(drawing, next, Pen::Hidden, format!("{}?", row + 1));
        });
    }

    fn openings(&mut self) {
        let so_far = &self.walls.body.so_far;
        for (row, opening) in &so_far.openings {
            let place = Place {
                asks: format!("openings.{row}.x"),
                what: opening.name.clone(),
                value: Some(self.style.mark(opening.x).text),
            };
            self.asking(place, |walls, drawing| walls.opening(drawing, opening));
        }
        if !so_far.openings.is_empty() {
            return;
        }
        let row = so_far.next_opening;
        let place = Place {
            asks: format!("openings.{row}"),
            what: self.style.say(words::PLAN_OPENING),
            value: None,
        };
        let text = self.style.say(words::PLAN_OPENING_BLANK);
        self.asking(place, |walls, drawing| {
            let (x, y) = (walls.along * 0.4, walls.across / 2.0);
            let half = walls.across * OPENING / 2.0;
            let (a, b) = (walls.at(x - half, y + half), walls.at(x + half, y - half));
            drawing.rectangle(Pen::Hidden, Fill::Empty, a, b);
            drawing.text(walls.at(x, y), Anchor::Middle, text);
        });
    }

    /// The width, or the widths at the stations.
    fn widths(&mut self) {
        let (body, style) = (self.walls.body, self.style);
        if body.widths.is_empty() {
            let value = body.width.map(|width| style.length(width));
            let place = Place { asks: "width".to_owned(), what: style.say(asked::WIDTH), value };
            self.figure(place, Walls::front);
        }
        for station in &body.widths {
            let x = station.x.get::<meter>();
            let place = Place {
                asks: format!("widths.{}.width", station.row),
                what: style.say(words::PlanStation { place: style.mark(station.x).text }),
                value: Some(style.length(station.width)),
            };
            if self.walls.is_within(x) {
                self.asking(place, |walls, drawing| walls.station(drawing, station, style));
            } else {
                self.figure(place, if x > 1e-3 { Walls::rear } else { Walls::front });
            }
        }
    }

    /// The body's own diagonals; those of a smaller rectangle stand nowhere in the plan.
    fn diagonals(&mut self) {
        let (found, style) = (self.walls.body.diagonals, self.style);
        if found.as_ref().is_some_and(|found| !is_own(found)) {
            return;
        }
        let pen = if found.is_some() { Pen::Thin } else { Pen::Hidden };
        let values = [found.map(|found| found.first), found.map(|found| found.second)];
        let names = [("first", asked::FIRST_DIAGONAL), ("second", asked::SECOND_DIAGONAL)];
        let lines = self.walls.diagonals();
        for line in &lines {
            self.drawing.line(pen, line);
        }
        for (((key, name), value), [from, to]) in names.into_iter().zip(values).zip(lines) {
            let part = |from: f64, to: f64| from + (to - from) * ALONG_DIAGONAL;
            let at = Point::metres(part(from.x, to.x), part(from.y, to.y));
            let place = Place {
                asks: format!("diagonals.{key}"),
                what: style.say(name),
                value: value.map(|value| style.length(value)),
            };
            self.figure(place, |_, drawing, text| drawing.text(at, Anchor::Middle, text));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::{Shape, Target};
    use crate::node::Node;
    use crate::quantity::UnitSystem;
    use serde_json::json;

    fn drawn(node: &Node) -> Drawing {
        let style = Style::new(UnitSystem::Metric);
        asking_plan(&Body::read(node, style), style)
    }

    fn asked_for(drawing: &Drawing) -> Vec<(&str, bool)> {
        drawing.targets.iter().map(|target| (target.asks.as_str(), target.given)).collect()
    }

    fn texts<'a>(drawing: &'a Drawing, target: &Target) -> Vec<&'a str> {
        let shapes = drawing.shapes.get(target.shapes.clone()).unwrap();
        let text = |shape: &'a Shape| match shape {
            Shape::Text { text, .. } | Shape::Dimension { text, .. } => Some(text.as_str()),
            _ => None,
        };
        shapes.iter().filter_map(text).collect()
    }

    #[test]
    fn nothing_measured_leaves_something_to_tap_for_all() {
        let drawing = drawn(&json!({}));
        let places = [
            ("ribs.measured.0", false),
            ("openings.0", false),
            ("width", false),
            ("diagonals.first", false),
            ("diagonals.second", false),
            ("length", false),
        ];
        assert_eq!(asked_for(&drawing), places);
        assert!(drawing.targets.iter().all(|target| !texts(&drawing, target).is_empty()));
        assert!(drawing.title.contains("not to scale"), "{}", drawing.title);
    }

    #[test]
    fn what_is_measured_asks_for_itself_where_it_stands() {
        let drawing = drawn(&json!({ "length": "4 m", "width": "2 m",
            "ribs": { "measured": ["400 mm", "900 mm", "800 mm"] },
            "diagonals": { "first": "4472 mm", "second": "4472 mm" },
            "openings": [{ "name": "vent", "x": "2 m", "y": "700 mm", "length": "400 mm", "width": "400 mm" }] }));
        let places = [
            ("ribs.measured.0", true),
            ("ribs.measured.1", true),
            // Out of order: it is what is to be mended next.
            ("ribs.measured.2", false),
            ("openings.0.x", true),
            ("width", true),
            ("diagonals.first", true),
            ("diagonals.second", true),
            ("length", true),
        ];
        assert_eq!(asked_for(&drawing), places);
        let name = |at: usize| drawing.targets[at].name.as_str();
        assert_eq!([name(1), name(2)], ["Rib 2: 900 mm", "Rib 3, to enter"]);
        assert_eq!(texts(&drawing, &drawing.targets[7]), ["4000 mm"]);
    }

    #[test]
    fn stations_and_even_ribs_ask_for_what_was_typed() {
        let drawing =
            drawn(&json!({ "length": "4 m", "widths": [{ "x": "2 m", "width": "1900 mm" },
            { "x": "0 mm", "width": "2 m" }],
            "ribs": { "even": { "count": 2, "first": "400 mm", "spacing": "500 mm" } } }));
        let asked: Vec<&str> = drawing.targets.iter().map(|one| one.asks.as_str()).collect();
        let places = ["ribs.even.first", "ribs.even.spacing", "openings.0", "widths.1.width"];
        assert_eq!(asked.get(..4).unwrap(), places);
        assert_eq!(asked.get(4), Some(&"widths.0.width"));
    }
}
