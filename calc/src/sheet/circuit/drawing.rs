//! The tree as a schematic: one row a splice, the longest way straight down, side branches to the
//! right. Readable on a phone: a large circuit is drawn in parts.

use super::common::volts;
use super::findings::Findings;
use crate::drawing::{Anchor, Drawing, Fill, Pen, Point};
use crate::electrical::conductor::Conductor;
use crate::quantity::plain;
use crate::text::text;

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
    pub(super) fn drawings(&self) -> Vec<Drawing> {
        let rows = self.rows();
        let parts = rows.len().div_ceil(ROWS).clamp(1, PARTS);
        // Parts of about one size: none with a row left over alone.
        let size = rows.len().div_ceil(parts).min(ROWS);
        (0..parts).map(|part| self.part(&rows, size, part, parts)).collect()
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

    fn part(&self, rows: &[Row], size: usize, part: usize, parts: usize) -> Drawing {
        let first = part * size;
        let shown = rows.iter().skip(first).take(size).collect::<Vec<_>>();
        let title = match parts {
            1 => "Circuit".to_owned(),
            _ => text!("Circuit, part {} of {}", part + 1, &parts),
        };
        let mut drawing = Drawing::new(title, self.words(&shown));
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
            self.draw_node(&mut drawing, row, y, text_x, rows, first);
            if place + 1 < shown.len() {
                let ends = [Point::metres(text_x, y + 0.5), Point::metres(right, y + 0.5)];
                drawing.line(Pen::Thin, &ends);
            }
        }
        drawing.line(Pen::Thin, &[Point::metres(text_x, bottom), Point::metres(right, bottom)]);
        let legend = "solid +, dashed −, dots: splices";
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
        y: f64,
        text_x: f64,
        rows: &[Row],
        first: usize,
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
        upper.extend(ways.map(|ways| text!("{} ways", &ways)));
        upper.extend(row.feed.filter(|feed| is_block(*feed)).map(|_| "fuse block".to_owned()));
        upper.push(volts(self.node_v(row.node)));
        let mut lower = Vec::new();
        match row.feed {
            None => lower.extend(
                self.fuses.main.iter().map(|fuse| text!("fuse {} A in +", plain(fuse.rating_a, 1))),
            ),
            Some((run, from)) => {
                // Where the feed comes from is not seen in this part.
                if let Some(feeder) = rows.get(from).filter(|_| from < first) {
                    lower.push(text!("from {}", cut(self.tree.name(feeder.node), 14)));
                }
                let own =
                    self.fuses.before(run).filter(|_| self.fuses.fused.get(run) == Some(&true));
                lower.extend(own.map(|fuse| text!("fuse {} A", plain(fuse.rating_a, 1))));
                lower.extend(self.loads_at(row.node));
                lower.extend(self.wired.conductors.get(run).map(Conductor::to_string));
            }
        }
        let at = |dy: f64| Point::metres(text_x, y + dy);
        drawing.text(at(-0.22), Anchor::Start, upper.join(" · "));
        drawing.text(at(0.22), Anchor::Start, cut(&lower.join(" · "), 28));
    }

    /// The part in words.
    fn words(&self, shown: &[&Row]) -> String {
        let mut words = Vec::new();
        for row in shown {
            let name = self.tree.name(row.node);
            let loads = self.loads_at(row.node);
            let feeds =
                if loads.is_empty() { String::new() } else { text!(", with {}", loads.join(", ")) };
            words.push(match row.feed {
                None => text!("the source at {}{}", volts(self.inputs.supply.source_v), &feeds),
                Some((run, _)) => {
                    let (from, _) = self.tree.ends(run);
                    let own = match self.fuses.branches.iter().find(|(place, _)| *place == run) {
                        Some((_, fuse)) => {
                            text!(" through a fuse of {} A", plain(fuse.rating_a, 1))
                        }
                        None => String::new(),
                    };
                    text!(
                        "{} fed from {}{} at {}{}",
                        &name,
                        self.tree.name(from),
                        &own,
                        volts(self.node_v(row.node)),
                        &feeds
                    )
                }
            });
        }
        text!("A tree of runs: {}.", words.join("; "))
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
