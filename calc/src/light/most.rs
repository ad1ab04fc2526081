//! How many lamps can fit at all: an upper bound, so that "no arrangement exists" is said only where that is so.

use super::nearest::{Free, Rectangle, SLACK_MM};
use crate::source::Source;
use crate::words::lights as words;

/// Why no more lamps than that fit.
pub const CELLS: Source = Source::identity_of(words::SOURCE_CELLS);

/// No more lamps than this fit, where that is fewer than `lamps`; none where this many are not ruled out.
///
/// Each bay between two supports is cut into lanes and each lane into cells with a diagonal below the least distance
/// of two lamps, as few as the free places need. Lamps of two bays never come too close: a support and two reaches
/// lie between them.
pub(super) fn fewer_than(free: &Free, lamps: usize) -> Option<usize> {
    let y = shrunk(free.area.y, free.reach)?;
    let mut most = 0;
    for bay in bays(free) {
        most += bay_holds(free, bay, y, lamps - most);
        if most >= lamps {
            return None;
        }
    }
    Some(most)
}

/// Spans along x that no support reaches into.
fn bays(free: &Free) -> Vec<(f64, f64)> {
    let Some(all) = shrunk(free.area.x, free.reach) else { return Vec::new() };
    let blocked: Vec<(f64, f64)> =
        free.supports.iter().map(|&(from, to)| (from - free.reach, to + free.reach)).collect();
    let mut found = Vec::new();
    let mut from = all.0;
    while let Some(start) = next_free(from, all.1, &blocked) {
        let ends = blocked.iter().map(|b| b.0).filter(|end| *end >= start - SLACK_MM);
        let end = ends.fold(all.1, f64::min);
        found.push((start, end.max(start)));
        from = end.max(start) + 2.0 * SLACK_MM;
    }
    found
}

/// At most so many lamps in a bay, and `enough` where it may be more.
fn bay_holds(free: &Free, x: (f64, f64), y: (f64, f64), enough: usize) -> usize {
    let along: Vec<Rectangle> = free.openings.clone();
    let turned: Vec<Rectangle> =
        free.openings.iter().map(|o| Rectangle { x: o.y, y: o.x }).collect();
    let lanes = lanes_hold(free, x, y, &along, free.allowed_y.as_deref(), enough);
    let Some(lines) = &free.allowed_y else {
        return lanes.min(lanes_hold(free, y, x, &turned, None, enough));
    };
    let mut each = 0;
    for line in lines.iter().filter(|line| (y.0 - SLACK_MM..=y.1 + SLACK_MM).contains(*line)) {
        each += lane_holds(free, (*line, *line), x, &turned, None, enough);
        if each >= enough {
            break;
        }
    }
    lanes.min(each)
}

/// The least over several numbers of lanes.
fn lanes_hold(
    free: &Free,
    across: (f64, f64),
    along: (f64, f64),
    openings: &[Rectangle],
    lines: Option<&[f64]>,
    enough: usize,
) -> usize {
    let wide = across.1 - across.0;
    let fewest = (wide / (0.999 * free.apart)).floor() + 1.0;
    let mut least = enough;
    for more in 0..4 {
        let lanes = fewest + f64::from(more);
        if lanes > 1000.0 {
            break;
        }
        let mut sum = 0;
        for lane in 0..lanes as usize {
            let edge = |n: usize| across.0 + wide * n as f64 / lanes;
            let lane = (edge(lane), edge(lane + 1));
            sum += lane_holds(free, lane, along, openings, lines, least);
            if sum >= least {
                break;
            }
        }
        least = least.min(sum);
    }
    least
}

/// Cells of one lane that hold all its free places, at most `enough`.
fn lane_holds(
    free: &Free,
    across: (f64, f64),
    along: (f64, f64),
    openings: &[Rectangle],
    lines: Option<&[f64]>,
    enough: usize,
) -> usize {
    let apart = free.apart - 2.0 * SLACK_MM;
    let wide = across.1 - across.0;
    let long = (apart * apart - wide * wide).max(0.0).sqrt();
    // What an opening takes of the whole lane; where it takes only part of it, nothing is counted as taken.
    let blocked: Vec<(f64, f64)> = openings
        .iter()
        .filter_map(|o| {
            let aside = (o.x.0 - across.0).max(across.1 - o.x.1).max(0.0);
            let square = free.reach * free.reach - aside * aside;
            (square > 0.0).then(|| (o.y.0 - square.sqrt(), o.y.1 + square.sqrt()))
        })
        .collect();
    let next = |from: f64| match lines {
        None => next_free(from, along.1, &blocked),
        Some(lines) => lines
            .iter()
            .copied()
            .filter(|line| *line >= from - SLACK_MM && *line <= along.1 + SLACK_MM)
            .filter(|line| next_free(*line, *line, &blocked).is_some())
            .reduce(f64::min),
    };
    let (mut cells, mut from) = (0, along.0);
    while let Some(at) = next(from) {
        cells += 1;
        if cells >= enough {
            break;
        }
        from = at + long.max(2.0 * SLACK_MM);
    }
    cells
}

/// The first place from `from` to `to` that lies in none of the open spans.
fn next_free(from: f64, to: f64, blocked: &[(f64, f64)]) -> Option<f64> {
    let mut at = from;
    // Each span can push the place on only once.
    for _ in 0..=blocked.len() {
        if at > to + SLACK_MM {
            return None;
        }
        match blocked.iter().find(|b| at > b.0 + SLACK_MM && at < b.1 - SLACK_MM) {
            None => return Some(at),
            Some(span) => at = span.1,
        }
    }
    None
}

/// A span less the reach at both ends.
fn shrunk((from, to): (f64, f64), reach: f64) -> Option<(f64, f64)> {
    let (from, to) = (from + reach, to - reach);
    (from <= to + 2.0 * SLACK_MM).then(|| (from, to.max(from)))
}
