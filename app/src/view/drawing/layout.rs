//! How a drawing is laid out on the page: its scale, its margins, and room for every text.
//!
//! Lengths scale, texts and ticks do not. So the scale is found by placing everything, looking at
//! how much sticks out, and placing it again.

use calc::drawing::{Anchor, Drawing, Fill, Fit, Pen, Point, Shape};
use calc::sorting::sort_by;

use super::lettering::{Lettering, Px, rows, without};
use super::paper::{ROW, TEXT};
use super::placing::{Ground, MUST_BE_SEEN, Ruled, Ways};

/// Air around everything. [px]
const AIR: f64 = 6.0;
/// Air between a text and the point that it was moved aside from. [px]
const ASIDE: f64 = 10.0;
/// How far a dimension stands off at least where its figure is on the piece's side. [px]
const CLEAR: f64 = TEXT + 10.0;
/// Texts that are longer than these shares of the page are written in rows, where the page is too narrow for them.
const LONGEST: [f64; 5] = [1.0, 0.6, 0.45, 0.35, 0.25];
/// Lengths beyond this are slips of the pen, not parts of a vehicle. [m]
const FARTHEST: f64 = 1e9;
/// How high or wide a thin piece is drawn at least: whole drawings, strips. [px]
const LEAST: (f64, f64) = (20.0, 30.0);
/// How high a strip is drawn. [px]
const STRIP: f64 = 64.0;

/// Air between the piece and the texts that stand outside of it. [px]
const OUTSIDE: f64 = 4.5;
/// Rows that a dimension may stand off before it has to overlap a text.
const MOST_ROWS: u32 = 100;
/// Half of what a cross or the tip of a mark takes up. [px]
const SPOT: f64 = 9.5;
/// Points around a circle.
const ROUND: [Px; 9] = {
    const D: f64 = std::f64::consts::FRAC_1_SQRT_2;
    [
        (1.0, 0.0),
        (D, D),
        (0.0, 1.0),
        (-D, D),
        (-1.0, 0.0),
        (-D, -D),
        (0.0, -1.0),
        (D, -D),
        (1.0, 0.0),
    ]
};

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
    /// The lines that are seen, in metres.
    lines: Vec<Ruled>,
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
    /// Texts: moved right and down by this. [px]
    pub moved: Px,
    /// Dimensions: stand off by this. [px]
    pub shift: f64,
    /// Texts: their rows.
    pub rows: Vec<&'a str>,
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
            placed: shapes.iter().map(|&(index, shape)| Placed::new(index, shape)).collect(),
            lines: seen_lines(&shapes.iter().map(|&(_, shape)| shape).collect::<Vec<_>>()),
            low,
            sight: if drawing.fit == Fit::Strip { page } else { f64::INFINITY },
            scale: (0.0, 0.0),
            origin: (0.0, 0.0),
        };
        let mut room = Room::none();
        for longest in LONGEST {
            if !layout.break_texts(page * longest) {
                continue;
            }
            room = match drawing.fit {
                Fit::Whole => layout.fit_whole(extent, page, body),
                Fit::Strip => layout.fit_strip(extent, page, body),
            };
            if drawing.fit == Fit::Strip || room.right - room.left < page + 0.5 {
                break;
            }
        }
        let spare = ((page - (room.right - room.left)) / 2.0).max(0.0);
        layout.origin = (AIR + spare - room.left, AIR - room.top);
        layout.width = room.right - room.left + 2.0 * (AIR + spare);
        layout.height = room.bottom - room.top + 2.0 * AIR;
        Some(layout)
    }

    /// How far the text that stands farthest off its place was moved: more where it is drawn too small for its texts. [px]
    pub fn crowding(&self) -> f64 {
        let far = self.placed.iter().map(|Placed { moved, .. }| moved.0.abs().max(moved.1.abs()));
        far.fold(0.0, f64::max)
    }

    /// The boxes of all texts on the page, figures of dimensions among them.
    pub fn texts(&self) -> Vec<Lettering> {
        self.placed
            .iter()
            .filter_map(|placed| match placed.shape {
                Shape::Text { at, anchor, .. } => {
                    Some(self.lettering(*at, &placed.rows, *anchor).moved(placed.moved))
                }
                Shape::Dimension { from, to, text, .. } if !text.is_empty() => {
                    Some(self.plain_dimension(*from, *to, placed.shift).lettering(text))
                }
                _ => None,
            })
            .map(|text| text.moved(self.origin))
            .collect()
    }

    /// Breaks texts that are longer than this into rows; whether anything is written otherwise than before. [px]
    fn break_texts(&mut self, longest: f64) -> bool {
        let mut anew = self.scale == (0.0, 0.0);
        for placed in &mut self.placed {
            if let Shape::Text { text, .. } = placed.shape {
                let rows = rows(text, longest);
                anew |= rows.len() != placed.rows.len();
                placed.rows = rows;
            }
        }
        anew
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
        self.stretched = false;
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
        let mut ground = Ground { texts: Vec::new(), lines: self.lines() };
        let mut all = Room::none();
        let mut moved = vec![(0.0, 0.0); self.placed.len()];
        for (placed, moved) in self.placed.iter().zip(&mut moved) {
            let Shape::Text { at, anchor, .. } = placed.shape else { continue };
            let home = self.lettering(*at, &placed.rows, *anchor);
            let (over, under) = (home.middle.1 - home.half.1, home.middle.1 + home.half.1);
            let up = home.middle.1 < (top + bottom) / 2.0;
            let line = |start: f64, step: f64| Ways { start, step, aside: Vec::new() };
            let ways = match () {
                () if at.y < body.0.y => line((top - OUTSIDE - under).min(0.0), -ROW),
                () if at.y > body.1.y => line((bottom + OUTSIDE - over).max(0.0), ROW),
                () => Ways {
                    start: 0.0,
                    step: if up { -ROW } else { ROW },
                    aside: aside(&home, *anchor),
                },
            };
            *moved = ground.place(home, &ways);
            let there = home.moved(*moved);
            ground.texts.push(there);
            all.add(Room::of(&there));
        }
        let mut shifts = vec![0.0; self.placed.len()];
        for index in self.short_dimensions_first() {
            let (Some(placed), Some(shift)) = (self.placed.get(index), shifts.get_mut(index))
            else {
                continue;
            };
            let Shape::Dimension { from, to, off, text } = placed.shape else { continue };
            let start = self.stand_off(*from, *to, off * ROW);
            let step = if *off < 0.0 { -ROW } else { ROW };
            let room = |off: f64| self.dimension_room(*from, *to, off, text);
            let mut shifts = (0..MOST_ROWS).map(|row| start + step * f64::from(row));
            *shift = shifts
                .find(|&shift| room(shift).0.iter().all(|hold| ground.is_free(hold)))
                .unwrap_or(start);
            let (hold, whole) = room(*shift);
            ground.texts.extend(hold);
            all.add(whole);
        }
        self.placed.iter().for_each(|placed| all.add(self.body_room(placed.shape)));
        for ((placed, moved), shift) in self.placed.iter_mut().zip(moved).zip(shifts) {
            (placed.moved, placed.shift) = (moved, shift);
        }
        all
    }

    /// The lines that are seen, on the page.
    fn lines(&self) -> Vec<Ruled> {
        let plain = |(x, y): Px| self.plain(Point { x, y });
        let scaled = self.lines.iter().map(|line| {
            let (a, b) = line.ends;
            Ruled { ends: (plain(a), plain(b)), ..*line }
        });
        // What does not scale: crosses, and the tips of marks.
        let spots = self.placed.iter().filter_map(|placed| match placed.shape {
            Shape::Cross { at, .. } => Some(*at),
            Shape::Line { points, pen: Pen::Mark } => points.first().copied(),
            _ => None,
        });
        let spots = spots.flat_map(|at| {
            let (x, y) = self.plain(at);
            let corners =
                [(-SPOT, -SPOT), (SPOT, -SPOT), (SPOT, SPOT), (-SPOT, SPOT), (-SPOT, -SPOT)]
                    .map(|(right, down)| (x + right, y + down));
            ruled(&corners, MUST_BE_SEEN).collect::<Vec<_>>()
        });
        scaled.chain(spots).collect()
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

    /// The box of a text where it was put.
    fn lettering(&self, at: Point, rows: &[&str], anchor: Anchor) -> Lettering {
        let text = Lettering::new(rows, self.plain(at), (1.0, 0.0));
        match anchor {
            Anchor::Start => text.moved((text.half.0, 0.0)),
            Anchor::Middle => text,
            Anchor::End => text.moved((-text.half.0, 0.0)),
        }
    }

    /// The room of what belongs together, such as what asks for one measure, on the page: its lines and its texts.
    pub fn room_of(&self, shapes: &std::ops::Range<usize>) -> Room {
        let mut room = Room::none();
        for placed in self.placed.iter().filter(|placed| shapes.contains(&placed.index)) {
            room.add(match placed.shape {
                // Up and down alone: a figure that had to give way to its neighbor stands over what belongs to that one.
                Shape::Text { at, anchor, .. } => {
                    let home = self.lettering(*at, &placed.rows, *anchor);
                    Room::of(&home.moved((0.0, placed.moved.1)))
                }
                // Its figure alone: its line runs along all that it measures.
                Shape::Dimension { from, to, text, .. } => {
                    Room::of(&self.plain_dimension(*from, *to, placed.shift).lettering(text))
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

    /// What a dimension keeps for itself, and all that it covers.
    fn dimension_room(
        &self,
        from: Point,
        to: Point,
        off: f64,
        text: &str,
    ) -> (Vec<Lettering>, Room) {
        let line = self.plain_dimension(from, to, off);
        let figure = line.lettering(text);
        let mut whole = Room::of(&figure);
        for (x, y) in line.ends {
            whole.add(Room { left: x - 4.0, top: y - 4.0, right: x + 4.0, bottom: y + 4.0 });
        }
        // Dimensions in a row touch at their ends.
        let [a, b] = line.ends;
        let length = ((b.0 - a.0).abs() + (b.1 - a.1).abs()) / 2.0;
        let middle = ((a.0 + b.0) / 2.0, (a.1 + b.1) / 2.0);
        let slanted = line.read.0.abs() > 0.02 && line.read.1.abs() > 0.02;
        let ruled = Lettering { middle, read: line.read, half: ((length - 1.0).max(0.0), 4.0) };
        (if slanted { vec![figure] } else { vec![figure, ruled] }, whole)
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

    /// Whether two lie on each other.
    pub fn meets(&self, other: &Self) -> bool {
        self.left < other.right - 0.5
            && other.left < self.right - 0.5
            && self.top < other.bottom - 0.5
            && other.top < self.bottom - 0.5
    }

    /// The upright room around a text.
    fn of(text: &Lettering) -> Self {
        let (x, y) = (text.reach((1.0, 0.0)), text.reach((0.0, 1.0)));
        let middle = text.middle;
        Self { left: middle.0 - x, top: middle.1 - y, right: middle.0 + x, bottom: middle.1 + y }
    }
}

impl<'a> Placed<'a> {
    fn new(index: usize, shape: &'a Shape) -> Self {
        Self { index, shape, moved: (0.0, 0.0), shift: 0.0, rows: Vec::new() }
    }
}

impl DimensionLine {
    /// The box of its figure.
    fn lettering(&self, text: &str) -> Lettering {
        Lettering::new(&[text], self.figure, self.read)
    }
}

/// Ways by which a text comes to stand beside its point.
fn aside(home: &Lettering, anchor: Anchor) -> Vec<f64> {
    let (half, whole) = (home.half.0 + ASIDE, 2.0 * (home.half.0 + ASIDE));
    match anchor {
        Anchor::Start => vec![0.0, -whole],
        Anchor::Middle => vec![0.0, half, -half],
        Anchor::End => vec![0.0, whole],
    }
}

/// The lines that are seen, in metres: not those under what is drawn over them. None where nothing is written.
fn seen_lines(shapes: &[&Shape]) -> Vec<Ruled> {
    let mut lines: Vec<Ruled> = Vec::new();
    if !shapes.iter().any(|shape| matches!(shape, Shape::Text { .. })) {
        return lines;
    }
    let all = |points: &[Point]| points.iter().map(|point| (point.x, point.y)).collect::<Vec<Px>>();
    for shape in shapes {
        match shape {
            Shape::Line { points, pen } => lines.extend(ruled(&all(points), cost(*pen))),
            // Cells of a map are its ground.
            Shape::Area { fill: Fill::Light(_), .. } => {}
            Shape::Area { points, pen, fill } => {
                let mut points = all(points);
                if *fill != Fill::Empty {
                    lines = upright(&points)
                        .map_or_else(|| lines.clone(), |cover| covered(&lines, &cover));
                }
                if let ([a, b, c, d], Fill::Opening) = (points.as_slice(), fill) {
                    lines.extend(
                        [[*a, *c], [*b, *d]].iter().flat_map(|ends| ruled(ends, cost(Pen::Thin))),
                    );
                }
                points.extend(points.first().copied());
                lines.extend(ruled(&points, cost(*pen)));
            }
            Shape::Circle { centre, radius, pen, .. } => {
                let round: Vec<Px> = ROUND
                    .iter()
                    .map(|(cos, sin)| (centre.x + radius * cos, centre.y + radius * sin))
                    .collect();
                lines.extend(ruled(&round, cost(*pen)));
            }
            // These do not scale.
            Shape::Cross { .. } | Shape::Text { .. } | Shape::Dimension { .. } => {}
        }
    }
    lines
}

/// What is seen of lines beside what covers them.
fn covered(lines: &[Ruled], cover: &Lettering) -> Vec<Ruled> {
    let mut seen = Vec::with_capacity(lines.len());
    for &line in lines {
        let (a, b) = line.ends;
        match cover.holds(a, b) {
            Some(part) => {
                seen.extend(without([part], a, b).into_iter().map(|ends| Ruled { ends, ..line }));
            }
            None => seen.push(line),
        }
    }
    seen
}

/// Lines from point to point.
fn ruled(points: &[Px], cost: f64) -> impl Iterator<Item = Ruled> + '_ {
    points.windows(2).filter_map(move |ends| match ends {
        [a, b] => Some(Ruled { ends: (*a, *b), cost }),
        _ => None,
    })
}

/// An upright rectangle, as a box.
fn upright(corners: &[Px]) -> Option<Lettering> {
    let [a, b, c, d] = corners else { return None };
    let is_upright = a.1 == b.1 && b.0 == c.0 && c.1 == d.1 && d.0 == a.0;
    let middle = ((a.0 + c.0) / 2.0, (a.1 + c.1) / 2.0);
    let half = ((a.0 - c.0).abs() / 2.0, (a.1 - c.1).abs() / 2.0);
    is_upright.then_some(Lettering { middle, read: (1.0, 0.0), half })
}

/// What it costs to break a line of the piece, or of what is to be done with it, and a lighter one behind it.
const fn cost(pen: Pen) -> f64 {
    if matches!(pen, Pen::Solid | Pen::Cut | Pen::Mark) { 3.0 } else { 0.4 }
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
