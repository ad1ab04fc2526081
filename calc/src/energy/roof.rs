//! Equal panels on a roof, around its openings, beside a walkway: how many fit, and where.
//!
//! Panels lie in straight rows, each row with all its panels one way round. The roof is cut across
//! at the openings and at places where a panel may end; each piece has rows of its own, and the
//! best cuts and rows are found by dynamic programming. The same is done along the roof, and the
//! better of both is taken. A layout that fills the free area as far as whole panels can is proved;
//! for any other the bound is handed out beside it.

use std::fmt;

use calc_derive::Choice;

use crate::sorting::sort_by;
use crate::source::Source;
use crate::words::{Msg, solar as words};

/// How the layout is found.
pub const LAYOUT: Source = Source::identity_of(words::SOURCE_LAYOUT);
/// What is left free.
pub const CLEAR: Source = Source::practice_of(words::SOURCE_CLEAR);

/// An upright rectangle on the roof: x along the body from the front, y across it. [m]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rect {
    /// Nearest corner, along.
    pub x: f64,
    /// Nearest corner, across.
    pub y: f64,
    /// Along.
    pub length: f64,
    /// Across.
    pub width: f64,
}

/// Where the walkway runs, from front to rear.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Choice)]
#[words(solar)]
pub enum Side {
    /// Where it costs the fewest panels.
    Best,
    /// Along the left edge.
    Left,
    /// Down the middle.
    Middle,
    /// Along the right edge.
    Right,
}

/// A roof and what is to be kept free on it; lengths in m.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Roof<'a> {
    /// 0.1 to 30.
    pub length: f64,
    /// 0.1 to 10.
    pub width: f64,
    /// Openings.
    pub openings: &'a [Rect],
    /// From the roof's edges, 0 to 2.
    pub edge: f64,
    /// From the openings, 0 to 2.
    pub clearance: f64,
    /// From panel to panel, 0 to 1.
    pub gap: f64,
    /// Width of a walkway, and its side.
    pub walkway: Option<(f64, Side)>,
}

/// Panels on a roof.
#[derive(Clone, Debug, PartialEq)]
pub struct Layout {
    /// The places of panels, from the front rearwards.
    pub places: Vec<Rect>,
    /// The walkway, where there is one.
    pub walkway: Option<Rect>,
    /// No layout has more.
    pub bound: usize,
}

impl Layout {
    /// Whether no layout can have more panels.
    pub fn proved(&self) -> bool {
        self.places.len() == self.bound
    }
}

/// Why there is no layout.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RoofError {
    /// The roof is out of range.
    Roof,
    /// The panel is out of range.
    Panel,
    /// A clearance or gap is out of range.
    Clearance,
    /// The walkway is out of range.
    Walkway,
}

impl RoofError {
    /// What is wrong, as a message.
    pub fn told(self) -> Msg {
        match self {
            Self::Roof => words::ROOF_RANGE.into(),
            Self::Panel => words::PANEL_RANGE.into(),
            Self::Clearance => words::CLEAR_RANGE.into(),
            Self::Walkway => words::WALKWAY_RANGE.into(),
        }
    }
}

impl fmt::Display for RoofError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.told().fmt(f)
    }
}

impl std::error::Error for RoofError {}

/// As many equal panels as fit in rows.
///
/// # Errors
/// A figure out of range.
pub fn layout(roof: &Roof<'_>, panel: (f64, f64)) -> Result<Layout, RoofError> {
    let side = 0.1..=5.0;
    if !(0.1..=30.0).contains(&roof.length) || !(0.1..=10.0).contains(&roof.width) {
        return Err(RoofError::Roof);
    }
    if !side.contains(&panel.0) || !side.contains(&panel.1) {
        return Err(RoofError::Panel);
    }
    let clear = 0.0..=2.0;
    if !clear.contains(&roof.edge)
        || !clear.contains(&roof.clearance)
        || !(0.0..=1.0).contains(&roof.gap)
    {
        return Err(RoofError::Clearance);
    }
    let mut best: Option<Layout> = None;
    for walkway in walkways(roof)? {
        let field = Field::of(roof, walkway);
        let bound = field.bound(panel);
        let mut places = field.places(panel);
        if places.len() < bound {
            let turned = field.turned().places((panel.1, panel.0));
            if turned.len() > places.len() {
                places = turned.into_iter().map(Rect::turned).collect();
            }
        }
        sort_by(&mut places, |a, b| a.x.total_cmp(&b.x).then(a.y.total_cmp(&b.y)));
        let better = best.as_ref().is_none_or(|best| places.len() > best.places.len());
        // Whatever the walkway's place, no layout has more than the best of the bounds.
        let bound = best.as_ref().map_or(bound, |best| best.bound.max(bound));
        match &mut best {
            Some(best) if !better => best.bound = bound,
            _ => best = Some(Layout { places, walkway, bound }),
        }
    }
    best.ok_or(RoofError::Walkway)
}

/// The walkways to try.
fn walkways(roof: &Roof<'_>) -> Result<Vec<Option<Rect>>, RoofError> {
    let Some((width, side)) = roof.walkway else { return Ok(vec![None]) };
    if !(0.0..roof.width).contains(&width) {
        return Err(RoofError::Walkway);
    }
    let at = |y: f64| Some(Rect { x: 0.0, y, length: roof.length, width });
    let (middle, right) = (at((roof.width - width) / 2.0), at(roof.width - width));
    Ok(match side {
        Side::Left => vec![at(0.0)],
        Side::Middle => vec![middle],
        Side::Right => vec![right],
        Side::Best => vec![middle, at(0.0), right],
    })
}

/// Lengths that differ by less are the same.
const SLACK: f64 = 1e-7;
/// Most places where pieces may start, and rows.
const MOST_STARTS: usize = 20;

/// Where panels may lie, and what is in the way.
struct Field {
    low: (f64, f64),
    high: (f64, f64),
    gap: f64,
    /// Low and high corner.
    blocked: Vec<((f64, f64), (f64, f64))>,
}

impl Field {
    fn of(roof: &Roof<'_>, walkway: Option<Rect>) -> Self {
        let grown = |rect: &Rect, by: f64| {
            ((rect.x - by, rect.y - by), (rect.x + rect.length + by, rect.y + rect.width + by))
        };
        let mut blocked: Vec<_> =
            roof.openings.iter().map(|opening| grown(opening, roof.clearance)).collect();
        blocked.extend(walkway.iter().map(|walkway| grown(walkway, 0.0)));
        Self {
            low: (roof.edge, roof.edge),
            high: (roof.length - roof.edge, roof.width - roof.edge),
            gap: roof.gap,
            blocked,
        }
    }

    /// The same with along and across exchanged.
    fn turned(&self) -> Self {
        let turn = |(x, y): (f64, f64)| (y, x);
        Self {
            low: turn(self.low),
            high: turn(self.high),
            gap: self.gap,
            blocked: self.blocked.iter().map(|(low, high)| (turn(*low), turn(*high))).collect(),
        }
    }

    /// Free area over the area that a panel takes with its gap: what no layout exceeds.
    fn bound(&self, panel: (f64, f64)) -> usize {
        let gap = self.gap;
        // A panel with its gap may reach into what is blocked by the gap, and out of the field.
        let mut xs = vec![self.low.0, self.high.0 + gap];
        let mut ys = vec![self.low.1, self.high.1 + gap];
        for (low, high) in &self.blocked {
            xs.extend(
                [low.0 + gap, high.0]
                    .map(|x| x.clamp(self.low.0, (self.high.0 + gap).max(self.low.0))),
            );
            ys.extend(
                [low.1 + gap, high.1]
                    .map(|y| y.clamp(self.low.1, (self.high.1 + gap).max(self.low.1))),
            );
        }
        sort_by(&mut xs, f64::total_cmp);
        sort_by(&mut ys, f64::total_cmp);
        let mut free = 0.0;
        for x in xs.windows(2) {
            for y in ys.windows(2) {
                let (cx, cy) = ((x[0] + x[1]) / 2.0, (y[0] + y[1]) / 2.0);
                let inside = |(low, high): &((f64, f64), (f64, f64))| {
                    cx > low.0 + gap && cx < high.0 && cy > low.1 + gap && cy < high.1
                };
                if !self.blocked.iter().any(inside) {
                    free += (x[1] - x[0]).max(0.0) * (y[1] - y[0]).max(0.0);
                }
            }
        }
        let (a, b) = (panel.0 + gap, panel.1 + gap);
        let fits = |p: f64, q: f64| {
            p <= self.high.0 - self.low.0 + SLACK && q <= self.high.1 - self.low.1 + SLACK
        };
        if !fits(panel.0, panel.1) && !fits(panel.1, panel.0) {
            return 0;
        }
        (free / (a * b) + SLACK).floor() as usize
    }

    /// The best layout in rows along x, between cuts across.
    fn places(&self, panel: (f64, f64)) -> Vec<Rect> {
        let ends = self.blocked.iter().map(|(low, high)| (low.0 + self.gap, high.0));
        let cuts = starts(self.low.0, self.high.0, self.gap, panel, ends);
        let ends = self.blocked.iter().map(|(low, high)| (low.1 + self.gap, high.1));
        let starts = starts(self.low.1, self.high.1, self.gap, panel, ends);
        // From one cut the same rows are looked at to every cut behind it.
        let mut rows: Vec<Vec<Row>> = cuts.iter().map(|_| Vec::new()).collect();
        // What a strip can take at most, by its area and that of a panel with its gap.
        let per_length = (self.high.1 - self.low.1 + self.gap + SLACK)
            / ((panel.0 + self.gap) * (panel.1 + self.gap));
        // The best up to each cut: panels, and the cut before.
        let mut best: Vec<(usize, usize)> = vec![(0, 0); cuts.len() + 1];
        for to in 1..=cuts.len() {
            let end = cuts.get(to).map_or(self.high.0, |next| next - self.gap);
            let mut most = (best[to - 1].0, to - 1);
            for (from, cut) in cuts.iter().enumerate().take(to) {
                let fitting = ((end - cut + self.gap + SLACK) * per_length + SLACK) as usize;
                if best[from].0 + fitting <= most.0 {
                    continue;
                }
                if rows[from].is_empty() {
                    rows[from] = self.rows_from(*cut, &starts, panel);
                }
                let found = best[from].0 + rows_between(&rows[from], [*cut, end], panel, None);
                if found > most.0 {
                    most = (found, from);
                }
            }
            best[to] = most;
        }
        let mut places = Vec::new();
        let mut to = cuts.len();
        while to > 0 {
            let (panels, from) = best[to];
            if panels > best[from].0 {
                let end = cuts.get(to).map_or(self.high.0, |next| next - self.gap);
                rows_between(&rows[from], [cuts[from], end], panel, Some(&mut places));
            }
            to = from;
        }
        places
    }

    /// The rows that may start at each place, either way round, filled from a cut to the end of the field.
    fn rows_from(&self, from: f64, starts: &[f64], panel: (f64, f64)) -> Vec<Row> {
        let ways = [panel, (panel.1, panel.0)];
        let rows = starts.iter().flat_map(|&y| ways.map(|way| (y, way)));
        rows.map(|(y, way)| {
            let after = y + way.1 + self.gap;
            let next = starts.iter().position(|y| *y > after - SLACK).unwrap_or(starts.len());
            let fits = y + way.1 <= self.high.1 + SLACK;
            let panels = if fits { self.row(from, y, way) } else { Vec::new() };
            Row { y, way, next, panels }
        })
        .collect()
    }

    /// The panels of one row between what is in its way: where each of them starts.
    fn row(&self, from: f64, y: f64, way: (f64, f64)) -> Vec<f64> {
        let (mut x, mut panels) = (from, Vec::new());
        while x + way.0 <= self.high.0 + SLACK {
            let in_the_way = self.blocked.iter().find(|(low, high)| {
                low.0 < x + way.0 - SLACK
                    && high.0 > x + SLACK
                    && low.1 < y + way.1 - SLACK
                    && high.1 > y + SLACK
            });
            match in_the_way {
                Some((_, high)) => x = high.0,
                None => {
                    panels.push(x);
                    x += way.0 + self.gap;
                }
            }
        }
        panels
    }
}

/// A row of panels one way round.
struct Row {
    y: f64,
    way: (f64, f64),
    /// The place of the next start behind it.
    next: usize,
    /// Where each panel starts, from the cut on.
    panels: Vec<f64>,
}

impl Row {
    /// The panels that end before a cut.
    fn until(&self, to: f64) -> &[f64] {
        let fitting = self.panels.partition_point(|x| x + self.way.0 <= to + SLACK);
        &self.panels[..fitting]
    }
}

/// The most panels in rows between two cuts, a pair of rows for each start; with `into` their places too.
fn rows_between(
    rows: &[Row],
    [from, to]: [f64; 2],
    panel: (f64, f64),
    into: Option<&mut Vec<Rect>>,
) -> usize {
    if to - from < panel.0.min(panel.1) - SLACK {
        return 0;
    }
    // The best from each start on: panels, the row that it begins with, the start after.
    let starts = rows.len() / 2;
    let mut best: [(usize, Option<&Row>, usize); MOST_STARTS + 1] =
        [(0, None, starts); MOST_STARTS + 1];
    for (at, pair) in rows.chunks(2).enumerate().rev() {
        let mut most = (best[at + 1].0, None, at + 1);
        for row in pair {
            let panels = row.until(to).len() + best[row.next].0;
            if !row.panels.is_empty() && panels > most.0 {
                most = (panels, Some(row), row.next);
            }
        }
        best[at] = most;
    }
    if let Some(into) = into {
        let mut at = 0;
        while at < starts {
            let (_, row, next) = best[at];
            for (row, x) in
                row.into_iter().flat_map(|row| row.until(to).iter().map(move |x| (row, *x)))
            {
                into.push(Rect { x, y: row.y, length: row.way.0, width: row.way.1 });
            }
            at = next;
        }
    }
    best[0].0
}

impl Rect {
    fn turned(self) -> Self {
        Self { x: self.y, y: self.x, length: self.width, width: self.length }
    }
}

/// Where a row or a piece may start, in order: at the low end, at the ends of what is blocked, and
/// whole panels further on, either way round; at most so many, those nearest to the ends first.
fn starts(
    low: f64,
    high: f64,
    gap: f64,
    panel: (f64, f64),
    ends: impl Iterator<Item = (f64, f64)>,
) -> Vec<f64> {
    let mut all: Vec<f64> = Vec::with_capacity(MOST_STARTS);
    let mut add = |at: f64| {
        if at >= low
            && at < high
            && all.len() < MOST_STARTS
            && !all.iter().any(|other: &f64| (other - at).abs() < SLACK)
        {
            all.push(at);
        }
    };
    add(low);
    let ends: Vec<f64> = ends.flat_map(|(a, b)| [b, a]).take(MOST_STARTS).collect();
    ends.iter().for_each(|end| add(*end));
    for step in 1..MOST_STARTS {
        for base in std::iter::once(&low).chain(&ends) {
            for side in [panel.0, panel.1] {
                add(base + (side + gap) * step as f64);
            }
        }
    }
    sort_by(&mut all, f64::total_cmp);
    all
}

#[cfg(test)]
mod tests;
