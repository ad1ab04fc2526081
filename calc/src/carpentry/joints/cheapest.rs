//! The cheapest layout of one course, and of two neighbouring ones that keep the stagger, at given prices of pieces and joints.

use super::field::{Field, Way};

/// What pieces and joints cost.
#[derive(Clone, Copy, Debug)]
pub(super) struct Prices<'a> {
    /// Of each kind of piece.
    pub pieces: &'a [f64],
    /// Of a joint.
    pub joint: f64,
}

impl Prices<'_> {
    fn of(&self, way: &Way, arc: &super::field::Arc) -> f64 {
        let joint = if way.nodes[arc.to].joint { self.joint } else { 0.0 };
        joint + arc.kind.and_then(|kind| self.pieces.get(kind)).copied().unwrap_or(0.0)
    }
}

/// The cheapest layout of a course: its cost and path.
pub(super) fn one(field: &Field, way: usize, prices: Prices<'_>) -> Option<(f64, Vec<usize>)> {
    let way = &field.ways[way];
    let last = match way.nodes.len() {
        0 => return Some((0.0, Vec::new())),
        count => count - 1,
    };
    let mut best = vec![(f64::INFINITY, 0); last + 1];
    best[0].0 = 0.0;
    for at in 0..last {
        let so_far = best[at].0;
        if so_far.is_infinite() {
            continue;
        }
        for arc in &way.arcs[at] {
            let cost = so_far + prices.of(way, arc);
            if cost < best[arc.to].0 {
                best[arc.to] = (cost, at);
            }
        }
    }
    let mut path = vec![last];
    let mut at = last;
    while at > 0 {
        at = best[at].1;
        path.push(at);
    }
    path.reverse();
    best[last].0.is_finite().then_some((best[last].0, path))
}

/// The cheapest two layouts of neighbouring courses of one way, the first one counted `times`: their cost and paths.
///
/// Pieces are added from left to right, always to the course that lags behind; so each new joint has to keep the stagger to the last
/// node of the other course only.
pub(super) fn two(
    field: &Field,
    way: usize,
    times: f64,
    prices: Prices<'_>,
) -> Option<(f64, Vec<usize>, Vec<usize>)> {
    let way = &field.ways[way];
    let size = way.nodes.len();
    let Some(last) = size.checked_sub(1) else { return Some((0.0, Vec::new(), Vec::new())) };
    let mut best = vec![(f64::INFINITY, usize::MAX); size * size];
    best[0].0 = 0.0;
    for sum in 0..2 * last {
        for a in sum.saturating_sub(last)..=sum.min(last) {
            let b = sum - a;
            let so_far = best[a * size + b].0;
            if so_far.is_infinite() {
                continue;
            }
            let first = a != last && (b == last || way.nodes[a].at <= way.nodes[b].at);
            let (from, other, weight) = if first { (a, b, times) } else { (b, a, 1.0) };
            let stays = way.nodes[other];
            for arc in &way.arcs[from] {
                let node = way.nodes[arc.to];
                if node.joint && stays.joint && !field.is_apart(node.at - stays.at) {
                    continue;
                }
                let cost = so_far + weight * prices.of(way, arc);
                let to = if first { arc.to * size + b } else { a * size + arc.to };
                if cost < best[to].0 {
                    best[to] = (cost, a * size + b);
                }
            }
        }
    }
    let end = last * size + last;
    let (cost, mut at) = best[end];
    if cost.is_infinite() {
        return None;
    }
    let (mut first, mut second) = (vec![last], vec![last]);
    while at != usize::MAX {
        let (a, b) = (at / size, at % size);
        if first.last() != Some(&a) {
            first.push(a);
        }
        if second.last() != Some(&b) {
            second.push(b);
        }
        at = best[at].1;
    }
    first.reverse();
    second.reverse();
    Some((cost, first, second))
}
