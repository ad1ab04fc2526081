//! A laid-out drawing as SVG.

use calc::drawing::{Anchor, Drawing, Fill, Pen, Point, Shape};
use calc::words::app_page;

use super::layout::{DimensionLine, Layout, Placed};
use super::lettering::{Lettering, Px, beside, rows};
use super::paper::{Paper, ROW, push_whole};
use crate::words::text;

/// Half a dimension's tick along each axis, before it is turned. [px]
const TICK: f64 = 4.0;

/// A drawing that asks: its picture, and over it what can be tapped, of the same size.
pub fn asking_svg(drawing: &Drawing, width_px: f64, number: u64) -> (String, String) {
    let over = Layout::new(drawing, width_px).map_or_else(String::new, |layout| {
        // As high as the picture.
        super::targets::over(drawing, &layout, height_of(&layout))
    });
    (svg(drawing, width_px, number), over)
}

/// What is said below a drawing that is not to scale, in rows; none where it is.
fn note_of(layout: &Layout<'_>) -> Vec<&'static str> {
    if layout.stretched {
        rows(text(app_page::NOT_TO_SCALE), layout.width - 16.0)
    } else {
        Vec::new()
    }
}

fn height_of(layout: &Layout<'_>) -> f64 {
    layout.height + note_of(layout).len() as f64 * ROW
}

/// One inline SVG for a page of this width in px; empty where there is nothing to draw.
///
/// `number` is any that no other drawing on the page has: it keeps the names of hatchings apart.
pub fn svg(drawing: &Drawing, width_px: f64, number: u64) -> String {
    let Some(layout) = Layout::new(drawing, width_px) else { return String::new() };
    let note = note_of(&layout);
    let mut sheet = Sheet {
        paper: Paper::new(layout.width, height_of(&layout)),
        layout: &layout,
        texts: layout.texts(),
        waste: hatch_name("w", number),
        opening: hatch_name("o", number),
    };
    sheet.hatchings();
    layout.placed.iter().for_each(|placed| sheet.body(placed.shape));
    // Texts come last: nothing hides them. Before them their leaders, which they may cover.
    for placed in &layout.placed {
        match placed.shape {
            Shape::Text { at, .. } => sheet.leader(*at, placed),
            Shape::Dimension { from, to, .. } => {
                let line = layout.dimension(*from, *to, placed.shift);
                sheet.dimension([*from, *to], &line);
            }
            _ => {}
        }
    }
    for placed in &layout.placed {
        match placed.shape {
            Shape::Text { at, anchor, .. } => {
                let (x, y) = layout.px(*at);
                let class = match anchor {
                    Anchor::Start => "text text-start",
                    Anchor::Middle => "text",
                    Anchor::End => "text text-end",
                };
                let first = y + placed.moved.1 - (placed.rows.len() as f64 - 1.0) * ROW / 2.0;
                for (row, text) in placed.rows.iter().enumerate() {
                    let at = (x + placed.moved.0, first + row as f64 * ROW);
                    sheet.paper.text(class, at, (1.0, 0.0), text);
                }
            }
            Shape::Dimension { from, to, text, .. } => {
                let line = layout.dimension(*from, *to, placed.shift);
                sheet.paper.text("text", line.figure, line.read, text);
            }
            _ => {}
        }
    }
    for (row, text) in note.into_iter().enumerate() {
        let at = (8.0, layout.height + (row as f64 + 0.5) * ROW - 4.0);
        sheet.paper.text("text-note", at, (1.0, 0.0), text);
    }
    sheet.paper.finish()
}

struct Sheet<'a> {
    paper: Paper,
    layout: &'a Layout<'a>,
    texts: Vec<Lettering>,
    waste: String,
    opening: String,
}

impl Sheet<'_> {
    /// The hatchings that are used.
    fn hatchings(&mut self) {
        let uses = |wanted: Fill| {
            self.layout.placed.iter().any(|placed| match placed.shape {
                Shape::Area { fill, .. } | Shape::Circle { fill, .. } => *fill == wanted,
                _ => false,
            })
        };
        let (waste, opening) = (uses(Fill::Waste), uses(Fill::Opening));
        if waste {
            self.hatching(&self.waste.clone(), "M0 0V7", "ground-waste");
        }
        if opening {
            self.hatching(&self.opening.clone(), "M0 0V7M0 0H7", "ground-opening");
        }
    }

    fn hatching(&mut self, name: &str, lines: &str, ground: &str) {
        let paper = &mut self.paper;
        paper.push("<pattern");
        paper.attribute("id", name);
        paper.push(" width=\"7\" height=\"7\" patternUnits=\"userSpaceOnUse\"");
        paper.push(" patternTransform=\"rotate(45)\">");
        paper.open("path", ground);
        paper.push(" d=\"M0 0H7V7H0Z\"/>");
        paper.open("path", "hatch-line");
        paper.attribute("d", lines);
        paper.push("/></pattern>");
    }

    /// Draws everything but texts and dimensions.
    fn body(&mut self, shape: &Shape) {
        match shape {
            Shape::Line { points, pen } => {
                let points: Vec<_> = points.iter().map(|&point| self.layout.px(point)).collect();
                self.ruled(pen_class(*pen), &points);
                if let ([start, end], Pen::Mark) = (points.as_slice(), pen) {
                    self.crows_foot(*start, *end);
                }
            }
            Shape::Area { points, pen, fill } => {
                let points: Vec<_> = points.iter().map(|&point| self.layout.px(point)).collect();
                let around: Vec<Px> = points.iter().chain(points.first()).copied().collect();
                let broken = self.is_broken(&around);
                let class = if broken { "" } else { pen_class(*pen) };
                self.open_filled("path", class, *fill, points.len() != 4);
                self.paper.outline(&points, true);
                self.paper.push("/>");
                if broken {
                    self.ruled(pen_class(*pen), &around);
                }
                if let ([a, b, c, d], Fill::Opening) = (points.as_slice(), fill) {
                    self.ruled("pen-thin", &[*a, *c]);
                    self.ruled("pen-thin", &[*b, *d]);
                }
            }
            Shape::Circle { centre, radius, pen, fill } => {
                let (x, y) = self.layout.px(*centre);
                let (rx, ry) = self.layout.px_size(radius.abs());
                self.open_filled("ellipse", pen_class(*pen), *fill, false);
                for (name, value) in [("cx", x), ("cy", y), ("rx", rx), ("ry", ry)] {
                    self.paper.number(name, value);
                }
                self.paper.push("/>");
                if *fill == Fill::Opening {
                    let (dx, dy) = (rx * DIAGONAL, ry * DIAGONAL);
                    self.paper.path("pen-thin", &[(x - dx, y - dy), (x + dx, y + dy)], false);
                    self.paper.path("pen-thin", &[(x - dx, y + dy), (x + dx, y - dy)], false);
                }
            }
            Shape::Cross { at, pen } => {
                let (x, y) = self.layout.px(*at);
                let class = match pen {
                    // A cross of dashes would be two dots.
                    Pen::Cut => "cross cross-cut",
                    Pen::Mark => "cross pen-mark",
                    _ => "cross pen-solid",
                };
                // Marks are crossed aslant, so that they show on upright lines.
                let (a, b) =
                    if matches!(pen, Pen::Mark | Pen::Cut) { (5.0, 5.0) } else { (6.0, 0.0) };
                self.paper.path(class, &[(x - a, y - b), (x + a, y + b)], false);
                self.paper.path(class, &[(x - b, y + a), (x + b, y - a)], false);
            }
            Shape::Text { .. } | Shape::Dimension { .. } => {}
        }
    }

    /// Whether a text lies on a line through these points.
    fn is_broken(&self, points: &[Px]) -> bool {
        let covers = |ends: &[Px]| match ends {
            [a, b] => self.texts.iter().any(|text| text.covers(*a, *b).is_some()),
            _ => false,
        };
        points.windows(2).any(covers)
    }

    /// Draws a line through points, broken where a text lies on it.
    fn ruled(&mut self, class: &str, points: &[Px]) {
        if !self.is_broken(points) {
            self.paper.path(class, points, false);
            return;
        }
        for ends in points.windows(2) {
            let [a, b] = ends else { continue };
            for (a, b) in beside(&self.texts, *a, *b) {
                self.paper.path(class, &[a, b], false);
            }
        }
    }

    /// Opens a closed shape with its outline and filling.
    fn open_filled(&mut self, name: &str, pen: &str, fill: Fill, hatched: bool) {
        let (pattern, class) = match fill {
            Fill::Empty => (None, ""),
            Fill::Stock => (None, " fill-stock"),
            Fill::Waste => (Some(&self.waste), ""),
            Fill::Opening if hatched => (Some(&self.opening), ""),
            Fill::Opening => (None, " fill-air"),
            Fill::Level(0) => (None, " fill-level0"),
            Fill::Level(1) => (None, " fill-level1"),
            Fill::Level(2) => (None, " fill-level2"),
            Fill::Level(3) => (None, " fill-level3"),
            Fill::Level(_) => (None, " fill-level4"),
            Fill::Light(0) => (None, " fill-light0"),
            Fill::Light(1) => (None, " fill-light1"),
            Fill::Light(2) => (None, " fill-light2"),
            Fill::Light(3) => (None, " fill-light3"),
            Fill::Light(_) => (None, " fill-light4"),
        };
        self.paper.open(name, [pen, class].concat().trim_start());
        if let Some(pattern) = pattern {
            self.paper.attribute("fill", &["url(#", pattern, ")"].concat());
        }
    }

    /// The carpenter's mark: its tip is on the spot, at the start of the line.
    fn crows_foot(&mut self, tip: (f64, f64), end: (f64, f64)) {
        let (dx, dy) = (end.0 - tip.0, end.1 - tip.1);
        let length = (dx * dx + dy * dy).sqrt();
        if length < 16.0 {
            return;
        }
        let (x, y) = (dx / length * 9.0, dy / length * 9.0);
        let (across, down) = (-y * 0.5, x * 0.5);
        let (base_x, base_y) = (tip.0 + x, tip.1 + y);
        let arms = [(base_x + across, base_y + down), tip, (base_x - across, base_y - down)];
        self.paper.path("pen-mark", &arms, false);
    }

    /// Leads from a text that was moved to the spot that it speaks of.
    fn leader(&mut self, at: Point, placed: &Placed) {
        let (x, y) = self.layout.px(at);
        let (right, down) = placed.moved;
        if right.abs().max(down.abs()) < ROW * 0.9 {
            return;
        }
        // Straight up or down where the text is still in line with its spot.
        let back = if down < 0.0 { ROW } else { -ROW } * 0.5;
        let rows = placed.rows.len() as f64 - 1.0;
        let (from, to) = if right == 0.0 {
            ((x, y - back * 0.5), (x, y + down + back * (1.0 + rows)))
        } else {
            ((x, y), (x + right, y + down))
        };
        self.ruled("leader-line", &[from, to]);
    }

    fn dimension(&mut self, points: [Point; 2], line: &DimensionLine) {
        let (side, along) = (line.side, line.along);
        for (point, end) in points.into_iter().zip(line.ends) {
            let start = self.layout.px(point);
            let off = (end.0 - start.0) * side.0 + (end.1 - start.1) * side.1;
            if off.abs() > 6.0 {
                // A gap at the piece, a little past the dimension line.
                let (gap, past) = if off < 0.0 { (-3.0, -TICK) } else { (3.0, TICK) };
                let from = (start.0 + side.0 * gap, start.1 + side.1 * gap);
                let to = (end.0 + side.0 * past, end.1 + side.1 * past);
                self.ruled("extension-line", &[from, to]);
            }
            // Aslant to the right as it is read.
            let (x, y) = (line.read.0 + line.read.1, line.read.1 - line.read.0);
            let tick = [(end.0 - x * TICK, end.1 - y * TICK), (end.0 + x * TICK, end.1 + y * TICK)];
            self.paper.path("dimension-tick", &tick, false);
        }
        let [a, b] = line.ends;
        let past = (along.0 * TICK, along.1 * TICK);
        let ends = [(a.0 - past.0, a.1 - past.1), (b.0 + past.0, b.1 + past.1)];
        self.ruled("dimension-line", &ends);
    }
}

/// Half the square root of two.
const DIAGONAL: f64 = std::f64::consts::FRAC_1_SQRT_2;

/// The class of what a pen draws.
pub fn pen_class(pen: Pen) -> &'static str {
    match pen {
        Pen::Solid => "pen-solid",
        Pen::Thin => "pen-thin",
        Pen::Hidden => "pen-hidden",
        Pen::Cut => "pen-cut",
        Pen::Mark => "pen-mark",
        Pen::Centre => "pen-centre",
    }
}

fn hatch_name(kind: &str, number: u64) -> String {
    let mut name = String::from("hatch-");
    name.push_str(kind);
    push_whole(&mut name, number);
    name
}
