//! The tree as a schematic: one row a splice, the longest way straight down, side branches to the
//! right. Readable on a phone: a large circuit is drawn in parts.

use super::common::{rating, volts};
use super::findings::Findings;
use crate::drawing::{Anchor, Drawing, Fill, Pen, Point};
use crate::quantity::Style;
use crate::text::text;
use crate::words::{Arg, Msg, circuit as words};

/// Most rows of one drawing.
const ROWS: usize = 8;
/// Most drawings; the tables hold the rest.
const PARTS: usize = 8;
/// Distance of two columns; that of two rows is 1.
const COLUMN: f64 = 0.9;
/// Where side branches go down beside their column.
const BESIDE: f64 = 0.5;
/// Negative beside positive.
const PAIR: f64 = 0.14;

/// A node's place.
struct Row {
    node: usize,
    column: usize,
    /// The run that feeds it and the row it comes from; none for the source.
    feed: Option<(usize, usize)>,
    /// Straight below the row that it comes from, not on a side branch.
    is_straight: bool,
}

impl Findings<'_> {
    pub(super) fn drawings(&self, style: Style) -> Vec<Drawing> {
        let rows = self.rows();
        let parts = rows.len().div_ceil(ROWS).clamp(1, PARTS);
        // Parts of about one size: none with a row left over alone.
        let size = rows.len().div_ceil(parts).min(ROWS);
        (0..parts).map(|part| self.part(&rows, size, part, parts, style)).collect()
    }

    /// All nodes from top to bottom: after each node its side branches, then its longest way on.
    fn rows(&self) -> Vec<Row> {
        let nodes = self.tree.nodes();
        let mut onward = vec![Vec::new(); nodes];
        let mut size = vec![1_usize; nodes];
        for &run in self.tree.outward() {
            onward[self.tree.ends(run).0].push(run);
        }
        for &run in self.tree.outward().iter().rev() {
            let (from, to) = self.tree.ends(run);
            size[from] += size[to];
        }
        let mut rows: Vec<Row> = Vec::with_capacity(nodes);
        let mut waiting = vec![Row { node: 0, column: 0, feed: None, is_straight: true }];
        while let Some(row) = waiting.pop() {
            let (place, column, node) = (rows.len(), row.column, row.node);
            rows.push(row);
            let below = &onward[node];
            let size_of = |run: &usize| size[self.tree.ends(*run).1];
            // The first of the largest.
            let straight = below.iter().rev().copied().max_by_key(size_of);
            let next = |run: usize, is_straight: bool| Row {
                node: self.tree.ends(run).1,
                column: if is_straight { column } else { column + 1 },
                feed: Some((run, place)),
                is_straight,
            };
            waiting.extend(straight.map(|run| next(run, true)));
            let side = below.iter().rev().filter(|run| Some(**run) != straight);
            waiting.extend(side.map(|run| next(*run, false)));
        }
        rows
    }

    fn part(&self, rows: &[Row], size: usize, part: usize, parts: usize, style: Style) -> Drawing {
        let first = part * size;
        let shown = rows.iter().skip(first).take(size).collect::<Vec<_>>();
        let title: Msg = match parts {
            1 => words::DRAWING.into(),
            _ => words::DrawingPart { part: part + 1, parts }.into(),
        };
        let mut drawing = Drawing::new(style.say(title), self.words(&shown, style));
        // A part starts and ends half a row beyond its rows.
        let (top, bottom) = (first as f64 - 0.6, (first + shown.len()) as f64 - 0.4);
        let columns = rows.iter().map(|row| row.column).max().unwrap_or(0);
        let text_x = (columns + 1) as f64 * COLUMN + 0.1;
        // About as wide as high, so that two lines of text fit into a row on a phone.
        let right = (text_x + 5.0).max(0.84 * (bottom - top + 1.0)).max(7.5);
        for (place, row) in rows.iter().enumerate() {
            if let Some((_, from)) = row.feed {
                self.draw_run(&mut drawing, row, from, place, rows, (top, bottom));
            }
        }
        if part == 0 {
            draw_source(&mut drawing);
        }
        for (place, row) in shown.iter().enumerate() {
            let y = (first + place) as f64;
            self.draw_node(&mut drawing, row, (text_x, y), rows, first, style);
            if place + 1 < shown.len() {
                let ends = [Point::metres(text_x, y + 0.5), Point::metres(right, y + 0.5)];
                drawing.line(Pen::Thin, &ends);
            }
        }
        drawing.line(Pen::Thin, &[Point::metres(text_x, bottom), Point::metres(right, bottom)]);
        let legend = style.say(words::DRAWING_LEGEND);
        drawing.text(Point::metres(text_x, bottom + 0.3), Anchor::Start, legend);
        drawing
    }

    /// Both conductors of a run, as far as they lie in the part.
    fn draw_run(
        &self,
        drawing: &mut Drawing,
        row: &Row,
        from: usize,
        place: usize,
        rows: &[Row],
        (top, bottom): (f64, f64),
    ) {
        let (y_from, y_to) = (from as f64, place as f64);
        if y_to < top || y_from > bottom {
            return;
        }
        let from_x = rows.get(from).map_or(0.0, |row| row.column as f64 * COLUMN);
        let to_x = row.column as f64 * COLUMN;
        for (pen, shift) in [(Pen::Solid, 0.0), (Pen::Hidden, PAIR)] {
            let at = |x: f64, y: f64| Point::metres(x + shift, y);
            if row.is_straight {
                let ends = [at(from_x, y_from.max(top)), at(to_x, y_to.min(bottom))];
                drawing.line(pen, &ends);
                continue;
            }
            let down_x = from_x + BESIDE * COLUMN;
            let mut points = Vec::with_capacity(4);
            if y_from >= top {
                points.push(at(from_x, y_from + shift));
            }
            points.push(at(down_x, (y_from + shift).max(top)));
            points.push(at(down_x, (y_to + shift).min(bottom)));
            if y_to <= bottom {
                points.push(at(to_x, y_to + shift));
            }
            drawing.line(pen, &points);
        }
    }

    fn draw_node(
        &self,
        drawing: &mut Drawing,
        row: &Row,
        (text_x, y): (f64, f64),
        rows: &[Row],
        first: usize,
        style: Style,
    ) {
        let x = row.column as f64 * COLUMN;
        let ways = self.splices.iter().find(|splice| splice.node == row.node).map(|s| s.ways);
        let radius = if ways.is_some() || row.node == 0 { 0.15 } else { 0.08 };
        let is_block =
            |(run, _): (usize, usize)| self.inputs.runs.get(run).is_some_and(|run| run.fuse_block);
        let middle = x + PAIR / 2.0;
        if row.feed.is_some_and(is_block) {
            let corners =
                (Point::metres(middle - 0.2, y - 0.2), Point::metres(middle + 0.2, y + 0.2));
            drawing.rectangle(Pen::Solid, Fill::Stock, corners.0, corners.1);
        } else {
            drawing.circle(Pen::Solid, Fill::Stock, Point::metres(middle, y), radius);
        }
        let mut upper = vec![cut(self.tree.name(row.node), 14)];
        upper.extend(ways.map(|ways| style.say(words::DrawingWays { ways })));
        upper.extend(
            row.feed.filter(|feed| is_block(*feed)).map(|_| style.say(words::DRAWING_BLOCK)),
        );
        upper.push(style.figure(volts(self.node_v(row.node))));
        let mut lower = Vec::new();
        match row.feed {
            None => {
                lower.extend(self.fuses.main.iter().map(|fuse| {
                    style.say(words::DrawingMainFuse { rating: rating(fuse.rating_a) })
                }))
            }
            Some((run, from)) => {
                // Where the feed comes from is not seen in this part.
                if let Some(feeder) = rows.get(from).filter(|_| from < first) {
                    let node = cut(self.tree.name(feeder.node), 14);
                    lower.push(style.say(words::DrawingFrom { node }));
                }
                lower.extend(
                    self.wired.conductors.get(run).map(|size| style.figure(size.to_string())),
                );
                let own =
                    self.fuses.before(run).filter(|_| self.fuses.fused.get(run) == Some(&true));
                lower.extend(
                    own.map(|fuse| style.say(words::DrawingFuse { rating: rating(fuse.rating_a) })),
                );
                // Last, since they are what may be cut short: wire and fuse never are.
                lower.extend(self.loads_at(row.node).iter().map(|load| style.write(load)));
            }
        }
        let at = |dy: f64| Point::metres(text_x, y + dy);
        drawing.text(at(-0.22), Anchor::Start, upper.join(" · "));
        drawing.text(at(0.22), Anchor::Start, cut(&lower.join(" · "), 28));
    }

    /// The part in words.
    fn words(&self, shown: &[&Row], style: Style) -> String {
        let nodes: Vec<String> =
            shown.iter().map(|row| style.say(self.row_in_words(row, style))).collect();
        style.say(words::DrawingWords { nodes: nodes.join("; ") })
    }

    fn row_in_words(&self, row: &Row, style: Style) -> Msg {
        let node = self.tree.name(row.node);
        let loads = self.loads_at(row.node);
        let loads: Option<Arg> = (!loads.is_empty()).then(|| self.in_a_row(loads, style).into());
        let Some((run, _)) = row.feed else {
            let volts = volts(self.inputs.supply.source_v);
            return match loads {
                Some(loads) => words::DrawingSourceWith { volts, loads }.into(),
                None => words::DrawingSource { volts }.into(),
            };
        };
        let from = self.tree.name(self.tree.ends(run).0);
        let own = self.fuses.branches.iter().find(|(place, _)| *place == run);
        let rating = own.map(|(_, fuse)| rating(fuse.rating_a));
        let volts = volts(self.node_v(row.node));
        match (rating, loads) {
            (None, None) => words::DrawingNode { node, from, volts }.into(),
            (None, Some(loads)) => words::DrawingNodeWith { node, from, volts, loads }.into(),
            (Some(rating), None) => words::DrawingFused { node, from, rating, volts }.into(),
            (Some(rating), Some(loads)) => {
                words::DrawingFusedWith { node, from, rating, volts, loads }.into()
            }
        }
    }
}

/// The battery above the first row, with the fuse in its positive.
fn draw_source(drawing: &mut Drawing) {
    let at = Point::metres;
    drawing.line(Pen::Solid, &[at(0.0, -1.0), at(0.0, 0.0)]);
    drawing.line(Pen::Hidden, &[at(PAIR, -1.0), at(PAIR, 0.0)]);
    drawing.rectangle(Pen::Solid, Fill::Stock, at(-0.3, -1.4), at(PAIR + 0.3, -1.0));
    drawing.rectangle(Pen::Solid, Fill::Stock, at(-0.09, -0.6), at(0.09, -0.25));
    drawing.text(at(-0.2, -0.75), Anchor::End, "+");
    drawing.text(at(PAIR + 0.2, -0.75), Anchor::Start, "−");
}

/// A text of so many letters at most.
fn cut(text: &str, most: usize) -> String {
    if text.chars().count() <= most {
        return text.to_owned();
    }
    let start: String = text.chars().take(most.saturating_sub(1)).collect();
    text!("{}…", &start)
}
