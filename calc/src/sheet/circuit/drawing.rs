//! The tree as a schematic: one row a splice, the longest way straight down, side branches to the
//! right. Readable on a phone: a large circuit is drawn in parts.

use super::common::volts;
use super::findings::Findings;
use crate::drawing::{Anchor, Drawing, Fill, Pen, Point};
use crate::quantity::plain;

/// Rows of one drawing.
const ROWS: usize = 12;
/// Most drawings; the tables hold the rest.
const PARTS: usize = 6;
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
        (0..parts).map(|part| self.part(&rows, part, parts)).collect()
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

    fn part(&self, rows: &[Row], part: usize, parts: usize) -> Drawing {
        let first = part * ROWS;
        let shown = rows.iter().skip(first).take(ROWS).collect::<Vec<_>>();
        let title = match parts {
            1 => "Circuit".to_owned(),
            _ => format!("Circuit, part {} of {parts}", part + 1),
        };
        let mut drawing = Drawing::new(title, self.words(&shown));
        // A part starts and ends half a row beyond its rows.
        let (top, bottom) = (first as f64 - 0.6, (first + shown.len()) as f64 - 0.4);
        let columns = rows.iter().map(|row| row.column).max().unwrap_or(0);
        let text_x = (columns + 1) as f64 * COLUMN + 0.2;
        let right = (text_x + 5.5).max(0.86 * shown.len() as f64).max(7.5);
        for (place, row) in rows.iter().enumerate() {
            if let Some((_, from)) = row.feed {
                self.draw_run(&mut drawing, row, from, place, rows, (top, bottom));
            }
        }
        if part == 0 {
            self.draw_source(&mut drawing, text_x, right);
        }
        for (place, row) in shown.iter().enumerate() {
            self.draw_node(&mut drawing, row, (first + place) as f64, text_x, right);
        }
        drawing.text(
            Point::metres(0.0, bottom + 0.1),
            Anchor::Start,
            "solid: +, dashed: −, dots: splices",
        );
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
        if y_from < top {
            let x = if row.is_straight { to_x } else { from_x + BESIDE * COLUMN };
            let name = rows.get(from).map_or("", |row| self.tree.name(row.node));
            drawing.text(Point::metres(x, top - 0.1), Anchor::Start, format!("from {}", cut(name, 14)));
        }
    }

    fn draw_source(&self, drawing: &mut Drawing, text_x: f64, right: f64) {
        let at = Point::metres;
        drawing.line(Pen::Solid, &[at(0.0, -1.2), at(0.0, 0.0)]);
        drawing.line(Pen::Hidden, &[at(PAIR, -1.2), at(PAIR, 0.0)]);
        drawing.rectangle(Pen::Solid, Fill::Stock, at(-0.3, -1.5), at(PAIR + 0.3, -1.1));
        drawing.rectangle(Pen::Solid, Fill::Stock, at(-0.08, -0.85), at(0.08, -0.45));
        let fuse = match &self.fuse {
            Ok(fuse) => format!("fuse {} A in +", plain(fuse.rating_a, 1)),
            Err(_) => "no fuse fits".to_owned(),
        };
        drawing.text(at(text_x, -1.3), Anchor::Start, "battery");
        drawing.text(at(right, -1.3), Anchor::End, volts(self.inputs.source_v));
        drawing.text(at(text_x, -0.65), Anchor::Start, fuse);
    }

    fn draw_node(&self, drawing: &mut Drawing, row: &Row, y: f64, text_x: f64, right: f64) {
        let x = row.column as f64 * COLUMN;
        let ways = self.splices.iter().find(|splice| splice.node == row.node).map(|s| s.ways);
        let radius = if ways.is_some() || row.node == 0 { 0.15 } else { 0.08 };
        let centre = Point::metres(x + PAIR / 2.0, y);
        drawing.circle(Pen::Solid, Fill::Level(4), centre, radius);
        let name = cut(self.tree.name(row.node), 18);
        let name = match ways {
            Some(ways) => format!("{name}: {ways} ways"),
            None => name,
        };
        let (upper, lower) = (y - 0.25, y + 0.25);
        drawing.text(Point::metres(text_x, upper), Anchor::Start, name);
        drawing.text(Point::metres(right, upper), Anchor::End, volts(self.node_v(row.node)));
        let loads = self.loads_at(row.node).join(", ");
        if !loads.is_empty() {
            drawing.text(Point::metres(text_x, lower), Anchor::Start, cut(&loads, 22));
        }
        if let Some((run, _)) = row.feed {
            let id = self.inputs.runs.get(run).map_or("", |run| run.id.as_str());
            let size = self.conductors.get(run).map(|c| c.to_string()).unwrap_or_default();
            let text = format!("{} {}", cut(id, 8), cut(&size, 12));
            drawing.text(Point::metres(right, lower), Anchor::End, text);
        }
    }

    /// The part in words.
    fn words(&self, shown: &[&Row]) -> String {
        let mut words = Vec::new();
        for row in shown {
            let name = self.tree.name(row.node);
            let loads = self.loads_at(row.node);
            let feeds =
                if loads.is_empty() { String::new() } else { format!(", with {}", loads.join(", ")) };
            words.push(match row.feed {
                None => format!("the source at {}{feeds}", volts(self.inputs.source_v)),
                Some((run, _)) => {
                    let (from, _) = self.tree.ends(run);
                    format!(
                        "{name} fed from {} at {}{feeds}",
                        self.tree.name(from),
                        volts(self.node_v(row.node))
                    )
                }
            });
        }
        format!("A tree of runs: {}.", words.join("; "))
    }
}

/// A text of so many letters at most.
fn cut(text: &str, most: usize) -> String {
    if text.chars().count() <= most {
        return text.to_owned();
    }
    let start: String = text.chars().take(most.saturating_sub(1)).collect();
    format!("{start}…")
}
