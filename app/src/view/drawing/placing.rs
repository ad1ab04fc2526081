//! A place for every text: the first of many that lies on nothing, or else on as little as can be.

use super::lettering::{Lettering, Px};
use super::paper::ROW;

/// Air between two texts of a row. [px]
const BETWEEN: f64 = 3.5;
/// Rows that are tried first; rows that are tried before a text lies on what must be seen; rows at which there is room for any text.
const NEAR: i32 = 6;
const FAR: i32 = 30;
const LAST: i32 = 400;
/// What it costs to write on what must be seen: marks and their tips.
pub(super) const MUST_BE_SEEN: f64 = 40.0;

/// A line that a text should not lie on.
#[derive(Clone, Copy)]
pub(super) struct Ruled {
    /// Its ends.
    pub ends: (Px, Px),
    /// What it costs to write on it, in rows that a text would be moved instead.
    pub cost: f64,
}

/// What stands on the page already.
#[derive(Default)]
pub(super) struct Ground {
    /// What is written.
    pub texts: Vec<Lettering>,
    /// What is drawn.
    pub lines: Vec<Ruled>,
}

/// Where a text may go.
pub(super) struct Ways {
    /// Down by so much before anything is tried.
    pub start: f64,
    /// Row by row in this direction; from there on it is outside of the piece where it is to stay outside.
    pub step: f64,
    /// Up and down, beside its point too, as ways to the right; empty where it has to stay in line.
    pub aside: Vec<f64>,
}

impl Ground {
    /// Whether nothing that is written lies there.
    pub fn is_free(&self, text: &Lettering) -> bool {
        !self.texts.iter().any(|other| other.meets(text))
    }

    /// By how much a text is moved to the best of its places.
    pub fn place(&self, home: Lettering, ways: &Ways) -> Px {
        // Farther off only where it would lie on what must be seen, or on another text.
        let near = self.best(home, ways, NEAR);
        let best = match near {
            Some((cost, _)) if cost < MUST_BE_SEEN => near,
            _ => self.best(home, ways, FAR),
        };
        let last = || {
            let by = |row: i32| (0.0, ways.start + ways.step * f64::from(row));
            (FAR..LAST).map(by).find(|by| self.is_free(&home.moved(*by)))
        };
        best.map(|(_, by)| by).or_else(last).unwrap_or((0.0, ways.start))
    }

    /// The best place within so many rows, with what it costs; none where another text lies everywhere.
    fn best(&self, home: Lettering, ways: &Ways, rows: i32) -> Option<(f64, Px)> {
        let lines = self.within(&home, ways, rows);
        // What it costs, as far as it is worth knowing.
        let broken = |text: &Lettering, most: f64| {
            let mut cost = 0.0;
            for line in &lines {
                if cost >= most {
                    break;
                }
                if text.covers(line.ends.0, line.ends.1).is_some() {
                    cost += line.cost;
                }
            }
            cost
        };
        let mut best: Option<(f64, Px)> = None;
        let mut look = |by: Px, moved: f64| {
            let least = best.map_or(f64::INFINITY, |(least, _)| least);
            if least <= moved {
                return;
            }
            let there = home.moved(by);
            if !self.is_free(&there.wider((BETWEEN, 0.0))) {
                return;
            }
            let cost = moved + broken(&there, least - moved);
            if cost < least {
                best = Some((cost, by));
            }
        };
        for row in 0..=rows {
            look((0.0, ways.start + ways.step * f64::from(row)), f64::from(row));
        }
        for &aside in &ways.aside {
            let far = aside.abs() / ROW * 0.5;
            for half in 0..=2 * rows {
                let row = f64::from(half) * 0.5;
                look((aside, ways.start + ROW * row), row + far);
                look((aside, ways.start - ROW * row), row + far);
            }
        }
        best
    }

    /// The lines within reach of all the places that are so many rows off at most.
    fn within(&self, home: &Lettering, ways: &Ways, rows: i32) -> Vec<&Ruled> {
        let aside = ways.aside.iter().fold(0.0_f64, |far, by| far.max(by.abs()));
        let far = home.wider((aside, ways.start.abs() + f64::from(rows) * ROW));
        // Most lines are far off: found out by the cheapest sums.
        let is_off = |a: f64, b: f64, middle: f64, half: f64| {
            a.min(b) > middle + half || a.max(b) < middle - half
        };
        let is_near = |&Ruled { ends: (a, b), .. }: &&Ruled| {
            !is_off(a.0, b.0, far.middle.0, far.half.0)
                && !is_off(a.1, b.1, far.middle.1, far.half.1)
        };
        self.lines.iter().filter(is_near).collect()
    }
}
