//! From the planner's packing to patterns with labels, cutting order and waste.

use super::model::{Cut, Packing};
use super::solve::reaches;
use super::task::Grid;
use super::{CutPlan, CutTask, Pattern, PlacedPiece};
use crate::sorting::sort_by;

/// Below this an offcut is none. [mm]
const FLUSH_MM: f64 = 1e-3;

/// Gives every piece its label and every pattern its waste.
pub(in crate::carpentry) fn lay_out(
    task: &CutTask,
    grid: &Grid,
    packing: &Packing,
    bound: i64,
) -> CutPlan {
    let mut bought = vec![0; task.stock.len()];
    let mut on_hand_used = vec![0; task.stock.len()];
    for (cut, times) in packing {
        let (stock, on_hand) = grid.bins[cut.bin];
        let counts = if on_hand { &mut on_hand_used } else { &mut bought };
        counts[stock] += times;
    }
    let mut left: Vec<Vec<u32>> = grid
        .kinds
        .iter()
        .map(|pieces| pieces.iter().map(|&piece| task.pieces[piece].count).collect())
        .collect();
    // Lengths on hand and bought are cut alike; the ones cut most often choose their labels first.
    let mut cuts: Packing = Vec::new();
    for (cut, times) in packing {
        let stock = Cut { bin: grid.bins[cut.bin].0, counts: cut.counts.clone() };
        super::model::add(&mut cuts, stock, *times);
    }
    sort_by(&mut cuts, |(a, x), (b, y)| y.cmp(x).then(a.cmp(b)));
    let mut patterns: Vec<Pattern> = Vec::new();
    for (cut, times) in cuts {
        let mut rest = times;
        while rest > 0 {
            let (count, pieces) = label(task, grid, &cut, rest, &mut left);
            rest -= count;
            let waste_mm = waste(task, cut.bin, &pieces);
            let offcut_mm = (waste_mm - task.end_trim_mm).max(0.0);
            match patterns.iter_mut().find(|p| p.stock == cut.bin && p.pieces == pieces) {
                Some(known) => known.count += count,
                None => {
                    patterns.push(Pattern { stock: cut.bin, count, pieces, waste_mm, offcut_mm })
                }
            }
        }
    }
    sort_by(&mut patterns, |a, b| {
        let by_length = lengths(b).partial_cmp(lengths(a)).unwrap_or(std::cmp::Ordering::Equal);
        a.stock.cmp(&b.stock).then(by_length).then(b.count.cmp(&a.count))
    });
    let steps = grid.model.cost(packing);
    let proved = reaches(steps, bound);
    let bound = if proved { steps } else { bound };
    CutPlan {
        waste_mm: patterns.iter().map(|p| p.waste_mm * f64::from(p.count)).sum(),
        patterns,
        bought,
        on_hand_used,
        cost: grid.cost(steps),
        priced: grid.priced,
        bound: grid.cost(bound),
        proved,
    }
}

fn lengths(pattern: &Pattern) -> impl Iterator<Item = f64> {
    pattern.pieces.iter().map(|piece| piece.length_mm)
}

/// Labels for up to `times` equal cuts; fewer where no label has so many pieces left.
fn label(
    task: &CutTask,
    grid: &Grid,
    cut: &Cut,
    times: u32,
    left: &mut [Vec<u32>],
) -> (u32, Vec<PlacedPiece>) {
    let mut count = times;
    loop {
        let mut trial = left.to_vec();
        let mut pieces = Vec::new();
        let mut most = count;
        for &(kind, slots) in &cut.counts {
            for _ in 0..slots {
                // The label with least to spare that still serves all these cuts, else the one that serves most of them.
                let remaining = &trial[kind];
                let serves = |at: &usize| remaining[*at].min(count);
                let Some(chosen) = (0..remaining.len()).max_by(|a, b| {
                    serves(a).cmp(&serves(b)).then(remaining[*b].cmp(&remaining[*a])).then(b.cmp(a))
                }) else {
                    continue;
                };
                most = most.min(remaining[chosen]);
                let piece = &task.pieces[grid.kinds[kind][chosen]];
                pieces.push(PlacedPiece { label: piece.label, length_mm: piece.length_mm });
                trial[kind][chosen] = remaining[chosen].saturating_sub(count);
            }
        }
        if most == count || count <= 1 {
            left.clone_from_slice(&trial);
            return (count.max(1), pieces);
        }
        count = most.max(1);
    }
}

fn waste(task: &CutTask, stock: usize, pieces: &[PlacedPiece]) -> f64 {
    let length: f64 = pieces.iter().map(|piece| piece.length_mm).sum();
    let between = pieces.len().saturating_sub(1) as f64 * task.kerf_mm;
    let rest = task.stock[stock].length_mm - task.end_trim_mm - length - between;
    let offcut = if rest > task.kerf_mm + FLUSH_MM { rest - task.kerf_mm } else { 0.0 };
    task.end_trim_mm + offcut
}
