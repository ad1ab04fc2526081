//! Drawings to scale: shapes in real lengths, drawn by whoever shows them.

use crate::quantity::Length;
use uom::si::length::meter;

/// A point of a drawing. x runs to the right, y down, both in metres of the real thing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Point {
    /// To the right. [m]
    pub x: f64,
    /// Down. [m]
    pub y: f64,
}

impl Point {
    /// A point from real lengths.
    pub fn at(x: Length, y: Length) -> Self {
        Self { x: x.get::<meter>(), y: y.get::<meter>() }
    }

    /// A point from metres.
    pub const fn metres(x: f64, y: f64) -> Self {
        Self { x, y }
    }
}

/// How a line is drawn: drafting line types, never told apart by colour alone.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Pen {
    /// Structure that is seen: a solid line.
    Solid,
    /// A light solid line: grain, courses, things in the background.
    Thin,
    /// Structure that is hidden: short dashes.
    Hidden,
    /// Cut here: long dashes in the cutting accent.
    Cut,
    /// Mark here: a cross or stroke in the marking accent.
    Mark,
    /// A centre line: a chain of long and short dashes.
    Centre,
}

/// What fills a closed shape.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fill {
    /// Nothing.
    Empty,
    /// The material that stays.
    Stock,
    /// What is cut away or left over.
    Waste,
    /// Air, an opening.
    Opening,
    /// One of five steps from low (0) to high (4), for bars and layers.
    Level(u8),
    /// One of five steps from dark (0) to bright (4), for maps of light: the brighter, the lighter, by day and by night.
    Light(u8),
}

/// Where a text stands against its point.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Anchor {
    /// The text starts there.
    Start,
    /// The text is centred there.
    Middle,
    /// The text ends there.
    End,
}

/// A shape in real lengths.
#[derive(Clone, Debug, PartialEq)]
pub enum Shape {
    /// A line through points.
    Line {
        /// The points in order.
        points: Vec<Point>,
        /// How it is drawn.
        pen: Pen,
    },
    /// A closed outline.
    Area {
        /// The corners in order.
        points: Vec<Point>,
        /// How the outline is drawn.
        pen: Pen,
        /// What fills it.
        fill: Fill,
    },
    /// A circle.
    Circle {
        /// Its centre.
        centre: Point,
        /// Its radius. [m]
        radius: f64,
        /// How the outline is drawn.
        pen: Pen,
        /// What fills it.
        fill: Fill,
    },
    /// A cross at a point, as one marks a hole; its size does not scale.
    Cross {
        /// The marked point.
        at: Point,
        /// How it is drawn.
        pen: Pen,
    },
    /// A text; its size does not scale.
    Text {
        /// Where it stands.
        at: Point,
        /// What it says.
        text: String,
        /// How it stands against its point.
        anchor: Anchor,
    },
    /// A dimension line with ticks at both ends and its figure beside it.
    Dimension {
        /// One end.
        from: Point,
        /// The other end.
        to: Point,
        /// How far the dimension line stands off, to the left of the way from `from` to `to`,
        /// in text heights (it does not scale).
        off: f64,
        /// The figure.
        text: String,
    },
}

/// How a drawing is fitted to the page.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Fit {
    /// All of it is seen at once.
    #[default]
    Whole,
    /// A long piece: drawn as high as can be read, and scrolled along.
    Strip,
}

/// A drawing to scale.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Drawing {
    /// Its title.
    pub title: String,
    /// What it shows, in words, for those who do not see it.
    pub words: String,
    /// How it is fitted to the page.
    pub fit: Fit,
    /// The shapes, the later over the earlier.
    pub shapes: Vec<Shape>,
    /// Its parts that ask for what they show.
    pub targets: Vec<Target>,
}

/// A part of a drawing that asks, where it is tapped, for the measure that it shows.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Target {
    /// The path of the input.
    pub asks: String,
    /// What it is, and the measure where there is one, in words.
    pub name: String,
    /// Whether the measure was entered; else its place is only sketched.
    pub given: bool,
    /// Its shapes, by their places among all shapes.
    pub shapes: std::ops::Range<usize>,
}

impl Drawing {
    /// An empty drawing.
    pub fn new(title: impl Into<String>, words: impl Into<String>) -> Self {
        Self { title: title.into(), words: words.into(), ..Self::default() }
    }

    /// The same as a long strip.
    #[must_use]
    pub fn strip(mut self) -> Self {
        self.fit = Fit::Strip;
        self
    }

    /// Draws a line through points.
    pub fn line(&mut self, pen: Pen, points: &[Point]) {
        self.shapes.push(Shape::Line { points: points.to_vec(), pen });
    }

    /// Draws a closed outline.
    pub fn area(&mut self, pen: Pen, fill: Fill, points: &[Point]) {
        self.shapes.push(Shape::Area { points: points.to_vec(), pen, fill });
    }

    /// Draws an upright rectangle between two opposite corners.
    pub fn rectangle(&mut self, pen: Pen, fill: Fill, a: Point, b: Point) {
        self.area(pen, fill, &[a, Point { x: b.x, y: a.y }, b, Point { x: a.x, y: b.y }]);
    }

    /// Draws a circle; the radius in metres.
    pub fn circle(&mut self, pen: Pen, fill: Fill, centre: Point, radius: f64) {
        self.shapes.push(Shape::Circle { centre, radius, pen, fill });
    }

    /// Marks a point with a cross.
    pub fn cross(&mut self, pen: Pen, at: Point) {
        self.shapes.push(Shape::Cross { at, pen });
    }

    /// Writes a text.
    pub fn text(&mut self, at: Point, anchor: Anchor, text: impl Into<String>) {
        self.shapes.push(Shape::Text { at, text: text.into(), anchor });
    }

    /// Draws a dimension line, `off` text heights to the left of the way from `from` to `to`.
    pub fn dimension(&mut self, from: Point, to: Point, off: f64, text: impl Into<String>) {
        self.shapes.push(Shape::Dimension { from, to, off, text: text.into() });
    }

    /// What `draw` draws asks for the input at a path.
    pub fn asking(
        &mut self,
        asks: impl Into<String>,
        name: String,
        given: bool,
        draw: impl FnOnce(&mut Self),
    ) {
        let first = self.shapes.len();
        draw(self);
        let shapes = first..self.shapes.len();
        self.targets.push(Target { asks: asks.into(), name, given, shapes });
    }

    /// The corners of the smallest upright rectangle around all shapes, in metres: least, greatest.
    /// None where nothing is drawn, or where a coordinate is not finite.
    pub fn bounds(&self) -> Option<(Point, Point)> {
        let mut points = self.shapes.iter().flat_map(Shape::extremes);
        let first = points.next()?;
        let (low, high) = points.fold((first, first), |(low, high), p| {
            (
                Point { x: low.x.min(p.x), y: low.y.min(p.y) },
                Point { x: high.x.max(p.x), y: high.y.max(p.y) },
            )
        });
        let all_finite = [low.x, low.y, high.x, high.y].iter().all(|value| value.is_finite());
        all_finite.then_some((low, high))
    }
}

impl Shape {
    /// Points that the shape's extent hangs on.
    fn extremes(&self) -> Vec<Point> {
        match self {
            Self::Line { points, .. } | Self::Area { points, .. } => points.clone(),
            Self::Circle { centre, radius, .. } => vec![
                Point { x: centre.x - radius, y: centre.y - radius },
                Point { x: centre.x + radius, y: centre.y + radius },
            ],
            Self::Cross { at, .. } | Self::Text { at, .. } => vec![*at],
            Self::Dimension { from, to, .. } => vec![*from, *to],
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn bounds_hold_all_shapes() {
        let mut drawing = Drawing::new("a", "b");
        assert_eq!(drawing.bounds(), None);
        drawing.rectangle(
            Pen::Solid,
            Fill::Stock,
            Point::metres(0.0, 0.0),
            Point::metres(2.0, 1.0),
        );
        drawing.circle(Pen::Cut, Fill::Empty, Point::metres(2.0, 1.0), 0.5);
        let (low, high) = drawing.bounds().unwrap();
        assert_eq!((low.x, low.y, high.x, high.y), (0.0, 0.0, 2.5, 1.5));
    }
}
