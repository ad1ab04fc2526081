//! How a drawing is laid out on the page: its scale, its margins, and room for every text.
//!
//! Lengths scale, texts and ticks do not. So the scale is found by placing everything, looking at
//! how much sticks out, and placing it again.

use calc::drawing::{Anchor, Drawing, Fit, Point, Shape};
use calc::sorting::sort_by;

use super::paper::{ROW, TEXT, text_width};

/// Air around everything. [px]
const AIR: f64 = 6.0;
/// Air between two texts of a row. [px]
const BETWEEN: f64 = 7.0;
/// How far a dimension stands off at least where its figure is on the piece's side. [px]
const CLEAR: f64 = TEXT + 10.0;
/// Rows that a text may be moved before it has to overlap another.
const ROWS: u32 = 6;
/// Lengths beyond this are slips of the pen, not parts of a vehicle. [m]
const FARTHEST: f64 = 1e9;
/// How high or wide a thin piece is drawn at least: whole drawings, strips. [px]
const LEAST: (f64, f64) = (20.0, 30.0);
/// How high a strip is drawn. [px]
const STRIP: f64 = 64.0;

/// A drawing laid out.
pub(super) struct Layout<'a> {
    /// Size of the page. [px]
    pub width: f64,
    /// Size of the page. [px]
    pub height: f64,
    /// One way is drawn wider than to scale, so that it can be seen.
    pub stretched: bool,
    /// The shapes that can be drawn, each with how far its text is moved.
    pub placed: Vec<Placed<'a>>,
    low: Point,
    /// How much is seen at once: figures of longer dimensions stand where they are seen first.
    sight: f64,
    scale: (f64, f64),
    origin: (f64, f64),
}

/// A shape and its place.
pub(super) struct Placed<'a> {
    /// Its place among the shapes of the drawing.
    pub index: usize,
    /// What is drawn.
    pub shape: &'a Shape,
    /// Texts: moved down by this; dimensions: stand off by this. [px]
    pub shift: f64,
}

/// A dimension line worked out in px.
pub(super) struct DimensionLine {
    /// Its ends.
    pub ends: [(f64, f64); 2],
    /// Direction from one end to the other.
    pub along: (f64, f64),
    /// To the side on which it stands off.
    pub side: (f64, f64),
    /// Middle of the figure.
    pub figure: (f64, f64),
    /// Direction in which the figure is read: to the right, or upward.
    pub read: (f64, f64),
}

/// A rectangle on the page. [px]
#[derive(Clone, Copy)]
pub(super) struct Room {
    pub left: f64,
    pub top: f64,
    pub right: f64,
    pub bottom: f64,
}

impl<'a> Layout<'a> {
    /// Lays the drawing out for a page of this width; none where there is nothing to draw.
    pub fn new(drawing: &'a Drawing, width: f64) -> Option<Self> {
        let mut drawable = Drawing::default();
        let shapes: Vec<(usize, &Shape)> =
            drawing.shapes.iter().enumerate().filter(|(_, shape)| is_drawable(shape)).collect();
        drawable.shapes = shapes.iter().map(|&(_, shape)| shape.clone()).collect();
        let (low, high) = drawable.bounds()?;
        // Lines and areas alone: texts that stand outside of them are kept clear.
        drawable.shapes.retain(|shape| !matches!(shape, Shape::Text { .. }));
        let body = drawable.bounds().unwrap_or((low, high));
        let extent = (high.x - low.x, high.y - low.y);
        let page = width.max(120.0) - 2.0 * AIR;

        let mut layout = Self {
            width: 0.0,
            height: 0.0,
            stretched: false,
            placed: shapes
                .iter()
                .map(|&(index, shape)| Placed { index, shape, shift: 0.0 })
                .collect(),
            low,
            sight: if drawing.fit == Fit::Strip { page } else { f64::INFINITY },
            scale: (1.0, 1.0),
            origin: (0.0, 0.0),
        };
        let room = match drawing.fit {
            Fit::Whole => layout.fit_whole(extent, page, body),
            Fit::Strip => layout.fit_strip(extent, page, body),
        };
        let spare = ((page - (room.right - room.left)) / 2.0).max(0.0);
        layout.origin = (AIR + spare - room.left, AIR - room.top);
        layout.width = room.right - room.left + 2.0 * (AIR + spare);
        layout.height = room.bottom - room.top + 2.0 * AIR;
        Some(layout)
    }

    /// How far the text that stands farthest off its place was moved: more where it is drawn too small for its texts. [px]
    pub fn crowding(&self) -> f64 {
        let texts = self.placed.iter().filter(|placed| matches!(placed.shape, Shape::Text { .. }));
        texts.map(|placed| placed.shift.abs()).fold(0.0, f64::max)
    }

    /// A point of the drawing on the page.
    pub fn px(&self, point: Point) -> (f64, f64) {
        let (x, y) = self.plain(point);
        (x + self.origin.0, y + self.origin.1)
    }

    /// A length along x and along y. [px]
    pub fn px_size(&self, size: f64) -> (f64, f64) {
        (size * self.scale.0, size * self.scale.1)
    }

    /// A dimension line on the page, standing off by `off` px.
    pub fn dimension(&self, from: Point, to: Point, off: f64) -> DimensionLine {
        let mut line = self.plain_dimension(from, to, off);
        for at in line.ends.iter_mut().chain([&mut line.figure]) {
            *at = (at.0 + self.origin.0, at.1 + self.origin.1);
        }
        line
    }

    /// The greatest scale at which all of it is on the page.
    fn fit_whole(&mut self, extent: (f64, f64), page: f64, body: (Point, Point)) -> Room {
        let highest = (page * 1.2).min(600.0);
        let start = ratio(page, extent.0).min(ratio(highest, extent.1));
        let mut scale = if start.is_finite() { start } else { 1.0 };
        let least = scale * 0.2;
        self.scale = (scale, scale);
        let mut room = self.place(body);
        for _ in 0..8 {
            let over = (room.right - room.left - page).max(0.0);
            let over_high = (room.bottom - room.top - highest).max(0.0);
            if over < 0.5 && over_high < 0.5 {
                break;
            }
            let cut = |over: f64, extent: f64| if extent > 0.0 { over / extent } else { 0.0 };
            scale -= cut(over, extent.0).max(cut(over_high, extent.1));
            scale = scale.max(least);
            self.scale = (scale, scale);
            room = self.place(body);
        }
        self.stretch(extent, LEAST.0, room, body)
    }

    /// As high as can be read, at least as wide as the page, and not endless.
    fn fit_strip(&mut self, extent: (f64, f64), page: f64, body: (Point, Point)) -> Room {
        let across = ratio(page, extent.0);
        let wanted =
            ratio(STRIP, extent.1).min(across * 6.0).max(across.min(ratio(160.0, extent.1)));
        let scale = if wanted.is_finite() { wanted } else { 1.0 };
        self.scale = (scale, scale);
        let mut room = self.place(body);
        let over = room.right - room.left - page;
        if extent.0 * scale <= page * 1.001 && over > 0.5 {
            // It fits the page but for its texts.
            let scale = (scale - over / extent.0).max(scale * 0.5);
            self.scale = (scale, scale);
            room = self.place(body);
        }
        self.stretch(extent, LEAST.1, room, body)
    }

    /// Draws what is too thin to be seen wider than to scale.
    fn stretch(
        &mut self,
        extent: (f64, f64),
        least: f64,
        room: Room,
        body: (Point, Point),
    ) -> Room {
        let factor = |size: f64, scale: f64| {
            let px = size * scale;
            // What is thinner than this on the page is meant as a line.
            if px > 0.2 && px < least { least / px } else { 1.0 }
        };
        let (wider, higher) = (factor(extent.0, self.scale.0), factor(extent.1, self.scale.1));
        // What is small both ways is small.
        if (wider == 1.0) == (higher == 1.0) {
            return room;
        }
        self.stretched = true;
        self.scale = (self.scale.0 * wider, self.scale.1 * higher);
        self.place(body)
    }

    /// Finds a place for every text and dimension; gives the room that everything takes up.
    fn place(&mut self, body: (Point, Point)) -> Room {
        let (top, bottom) = (self.plain(body.0).1, self.plain(body.1).1);
        let mut taken: Vec<Room> = Vec::new();
        let mut all = Room::none();
        let mut shifts = vec![0.0; self.placed.len()];
        for (placed, shift) in self.placed.iter().zip(&mut shifts) {
            let Shape::Text { at, text, anchor } = placed.shape else { continue };
            let room = self.text_room(*at, text, *anchor);
            let up = (room.top + room.bottom) / 2.0 < (top + bottom) / 2.0;
            let (start, step) = match room {
                _ if at.y < body.0.y => ((top - 3.0 - room.bottom).min(0.0), -ROW),
                _ if at.y > body.1.y => ((bottom + 3.0 - room.top).max(0.0), ROW),
                _ => (0.0, if up { -ROW } else { ROW }),
            };
            let wide = Room { right: room.right + BETWEEN, ..room };
            *shift = free_shift(&taken, start, step, |shift| wide.moved(shift));
            taken.push(wide.moved(*shift));
            all.add(room.moved(*shift));
        }
        for index in self.short_dimensions_first() {
            let (Some(placed), Some(shift)) = (self.placed.get(index), shifts.get_mut(index))
            else {
                continue;
            };
            let Shape::Dimension { from, to, off, text } = placed.shape else { continue };
            let start = self.stand_off(*from, *to, off * ROW);
            let step = if *off < 0.0 { -ROW } else { ROW };
            let room = |off: f64| self.dimension_room(*from, *to, off, text);
            *shift = free_shift(&taken, start, step, |off| room(off).0);
            let (hold, whole) = room(*shift);
            taken.push(hold);
            all.add(whole);
        }
        self.placed.iter().for_each(|placed| all.add(self.body_room(placed.shape)));
        for (placed, shift) in self.placed.iter_mut().zip(shifts) {
            placed.shift = shift;
        }
        all
    }

    /// Shorter dimensions stand nearer to the piece, longer ones outside of them.
    fn short_dimensions_first(&self) -> Vec<usize> {
        let length = |placed: &Placed| match placed.shape {
            Shape::Dimension { from, to, .. } => (to.x - from.x).abs() + (to.y - from.y).abs(),
            _ => 0.0,
        };
        let mut order: Vec<(usize, f64)> = self
            .placed
            .iter()
            .map(length)
            .enumerate()
            .filter(|&(at, _)| {
                matches!(self.placed.get(at), Some(Placed { shape: Shape::Dimension { .. }, .. }))
            })
            .collect();
        sort_by(&mut order, |a, b| a.1.total_cmp(&b.1));
        order.into_iter().map(|(at, _)| at).collect()
    }

    fn plain(&self, point: Point) -> (f64, f64) {
        ((point.x - self.low.x) * self.scale.0, (point.y - self.low.y) * self.scale.1)
    }

    /// Far enough that a figure between piece and dimension line does not cover the piece.
    fn stand_off(&self, from: Point, to: Point, off: f64) -> f64 {
        let line = self.plain_dimension(from, to, off);
        // The figure stands to the left of its way.
        let inside = (line.read.1 * line.side.0 - line.read.0 * line.side.1) * off < 0.0;
        if off.abs() > ROW * 0.5 && inside { off.abs().max(CLEAR).copysign(off) } else { off }
    }

    fn plain_dimension(&self, from: Point, to: Point, off: f64) -> DimensionLine {
        let (a, b) = (self.plain(from), self.plain(to));
        let (dx, dy) = (b.0 - a.0, b.1 - a.1);
        let length = (dx * dx + dy * dy).sqrt();
        let along = if length > 1e-6 { (dx / length, dy / length) } else { (1.0, 0.0) };
        let side = (along.1, -along.0);
        let ends = [a, b].map(|at| (at.0 + side.0 * off, at.1 + side.1 * off));
        // Read to the right; what stands upright is read from the bottom up.
        let turned = along.0 < -1e-9 || (along.0.abs() <= 1e-9 && along.1 > 0.0);
        let read = if turned { (-along.0, -along.1) } else { along };
        let lift = TEXT * 0.5 + 3.0;
        let first = if turned { ends[1] } else { ends[0] };
        let half = (length / 2.0).min(self.sight / 2.0);
        let figure =
            (first.0 + read.0 * half + read.1 * lift, first.1 + read.1 * half - read.0 * lift);
        DimensionLine { ends, along, side, figure, read }
    }

    fn text_room(&self, at: Point, text: &str, anchor: Anchor) -> Room {
        let (x, y) = self.plain(at);
        let width = text_width(text);
        let left = match anchor {
            Anchor::Start => x,
            Anchor::Middle => x - width / 2.0,
            Anchor::End => x - width,
        };
        Room { left, top: y - ROW / 2.0, right: left + width, bottom: y + ROW / 2.0 }
    }

    /// The room of what belongs together, such as what asks for one measure, on the page: its lines and its texts.
    pub fn room_of(&self, shapes: &std::ops::Range<usize>) -> Room {
        let mut room = Room::none();
        for placed in self.placed.iter().filter(|placed| shapes.contains(&placed.index)) {
            room.add(match placed.shape {
                Shape::Text { at, text, anchor } => {
                    self.text_room(*at, text, *anchor).moved(placed.shift)
                }
                // Its figure alone: its line runs along all that it measures.
                Shape::Dimension { from, to, text, .. } => {
                    figure_room(&self.plain_dimension(*from, *to, placed.shift), text)
                }
                shape => self.body_room(shape),
            });
        }
        let (x, y) = self.origin;
        Room {
            left: room.left + x,
            top: room.top + y,
            right: room.right + x,
            bottom: room.bottom + y,
        }
    }

    /// The room that a dimension keeps for itself, and all that it covers.
    fn dimension_room(&self, from: Point, to: Point, off: f64, text: &str) -> (Room, Room) {
        let line = self.plain_dimension(from, to, off);
        let (cos, sin) = (line.read.0.abs(), line.read.1.abs());
        let figure = figure_room(&line, text);
        let mut whole = figure;
        for (x, y) in line.ends {
            whole.add(Room { left: x - 4.0, top: y - 4.0, right: x + 4.0, bottom: y + 4.0 });
        }
        let slanted = cos > 0.02 && sin > 0.02;
        let hold = if slanted {
            figure
        } else {
            // Dimensions in a row touch at their ends.
            Room {
                left: whole.left + 5.0 * cos,
                top: whole.top + 5.0 * sin,
                right: whole.right - 5.0 * cos,
                bottom: whole.bottom - 5.0 * sin,
            }
        };
        let mut hold = hold;
        hold.add(figure);
        (hold, whole)
    }

    fn body_room(&self, shape: &Shape) -> Room {
        let mut room = Room::none();
        let mut add = |point: (f64, f64), x: f64, y: f64| {
            room.add(Room {
                left: point.0 - x,
                top: point.1 - y,
                right: point.0 + x,
                bottom: point.1 + y,
            });
        };
        match shape {
            Shape::Line { points, .. } | Shape::Area { points, .. } => {
                points.iter().for_each(|&point| add(self.plain(point), 1.5, 1.5));
            }
            Shape::Circle { centre, radius, .. } => {
                let (x, y) = self.px_size(radius.abs());
                add(self.plain(*centre), x + 1.5, y + 1.5);
            }
            Shape::Cross { at, .. } => add(self.plain(*at), 7.0, 7.0),
            Shape::Text { .. } | Shape::Dimension { .. } => {}
        }
        room
    }
}

impl Room {
    fn none() -> Self {
        let (far, near) = (f64::INFINITY, f64::NEG_INFINITY);
        Self { left: far, top: far, right: near, bottom: near }
    }

    fn add(&mut self, other: Self) {
        self.left = self.left.min(other.left);
        self.top = self.top.min(other.top);
        self.right = self.right.max(other.right);
        self.bottom = self.bottom.max(other.bottom);
    }

    fn moved(self, down: f64) -> Self {
        Self { top: self.top + down, bottom: self.bottom + down, ..self }
    }

    pub fn meets(&self, other: &Self) -> bool {
        self.left < other.right - 0.5
            && other.left < self.right - 0.5
            && self.top < other.bottom - 0.5
            && other.top < self.bottom - 0.5
    }
}

/// The room of a dimension's figure.
fn figure_room(line: &DimensionLine, text: &str) -> Room {
    let half = text_width(text) / 2.0;
    let (cos, sin) = (line.read.0.abs(), line.read.1.abs());
    let (w, h) = (half * cos + TEXT * 0.5 * sin, half * sin + TEXT * 0.5 * cos);
    let (x, y) = line.figure;
    Room { left: x - w, top: y - h, right: x + w, bottom: y + h }
}

/// The first of the shifts `start`, `start + step`, ... whose room meets nothing; the first of all
/// where every one does.
fn free_shift(taken: &[Room], start: f64, step: f64, room: impl Fn(f64) -> Room) -> f64 {
    (0..=ROWS)
        .map(|row| start + step * f64::from(row))
        .find(|&shift| {
            let wanted = room(shift);
            !taken.iter().any(|other| other.meets(&wanted))
        })
        .unwrap_or(start)
}

fn is_drawable(shape: &Shape) -> bool {
    let fine = |point: &Point| point.x.abs() < FARTHEST && point.y.abs() < FARTHEST;
    match shape {
        Shape::Line { points, .. } | Shape::Area { points, .. } => {
            !points.is_empty() && points.iter().all(fine)
        }
        Shape::Circle { centre, radius, .. } => fine(centre) && radius.abs() < FARTHEST,
        Shape::Cross { at, .. } | Shape::Text { at, .. } => fine(at),
        Shape::Dimension { from, to, off, .. } => fine(from) && fine(to) && off.abs() < 100.0,
    }
}

/// `px` over `size`; infinite where there is no size.
fn ratio(px: f64, size: f64) -> f64 {
    if size > 1e-9 { px / size } else { f64::INFINITY }
}
