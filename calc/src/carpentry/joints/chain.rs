//! All courses with their layouts: which may lie side by side, and what they cost to cut.

use super::field::{Field, Layout};
use crate::carpentry::cut_stock::model::{Bin, Effort, Model, Packing};
use crate::carpentry::cut_stock::solve::{Failed, solve};
use crate::sorting::sort_by;

/// More courses than this are not put in order.
const MOST_IN_ORDER: usize = 200;
/// Steps for putting courses in order.
const MOST_STEPS: u32 = 4_000;

/// A layout for each course.
#[derive(Clone, Debug)]
pub(super) struct Chain {
    /// Indexes into the list of layouts that it was made with.
    pub layouts: Vec<usize>,
    pub joints: u32,
    /// How many of each kind of piece.
    pub demand: Vec<u32>,
}

impl Chain {
    pub(super) fn new(field: &Field, layouts: &[Layout], taken: Vec<usize>) -> Self {
        let mut demand = vec![0; field.weights.len()];
        let mut joints = 0;
        for layout in &taken {
            joints += layouts[*layout].joints_mm.len() as u32;
            for &(kind, count) in &layouts[*layout].pieces {
                demand[kind] += count;
            }
        }
        Self { layouts: taken, joints, demand }
    }
}

/// The cheapest layouts of all courses out of `layouts`, at a cost for each; `None` where none keep the stagger.
pub(super) fn cheapest(field: &Field, layouts: &[Layout], cost: &[f64]) -> Option<Vec<usize>> {
    // For each course: layout, cost so far, place of the one before.
    let mut steps: Vec<Vec<(usize, f64, usize)>> = Vec::new();
    for way in &field.courses {
        let mut step = Vec::new();
        for (index, layout) in layouts.iter().enumerate().filter(|(_, one)| one.way == *way) {
            let before = match steps.last() {
                None => Some((0.0, 0)),
                // The cheapest come first.
                Some(before) => before
                    .iter()
                    .position(|(other, ..)| field.are_apart(&layouts[*other], layout))
                    .map(|at| (before[at].1, at)),
            };
            step.extend(before.map(|(so_far, at)| (index, so_far + cost[index], at)));
        }
        sort_by(&mut step, |a, b| a.1.total_cmp(&b.1).then(a.0.cmp(&b.0)));
        steps.push(step);
    }
    let mut at = 0;
    if steps.last()?.is_empty() {
        return None;
    }
    let mut found = Vec::with_capacity(steps.len());
    for step in steps.iter().rev() {
        let (layout, _, before) = step[at];
        found.push(layout);
        at = before;
    }
    found.reverse();
    Some(found)
}

/// Puts layouts, each with how often it is taken, in an order that keeps the stagger; `None` where none was found.
pub(super) fn in_order(
    field: &Field,
    layouts: &[Layout],
    counts: &[(usize, u32)],
) -> Option<Vec<usize>> {
    if field.courses.len() > MOST_IN_ORDER {
        return None;
    }
    let mut left: Vec<(usize, u32)> = counts.to_vec();
    let mut order = Vec::with_capacity(field.courses.len());
    let mut steps = MOST_STEPS;
    place(field, layouts, &mut left, &mut order, &mut steps).then_some(order)
}

fn place(
    field: &Field,
    layouts: &[Layout],
    left: &mut Vec<(usize, u32)>,
    order: &mut Vec<usize>,
    steps: &mut u32,
) -> bool {
    let Some(&way) = field.courses.get(order.len()) else { return true };
    // What is there most often comes first: what is left over last has to fit too.
    let mut places: Vec<usize> = (0..left.len())
        .filter(|at| left[*at].1 > 0 && layouts[left[*at].0].way == way)
        .filter(|at| {
            order.last().is_none_or(|last| field.are_apart(&layouts[*last], &layouts[left[*at].0]))
        })
        .collect();
    sort_by(&mut places, |a, b| left[*b].1.cmp(&left[*a].1).then(a.cmp(b)));
    for at in places {
        if *steps == 0 {
            return false;
        }
        *steps -= 1;
        left[at].1 -= 1;
        order.push(left[at].0);
        if place(field, layouts, left, order, steps) {
            return true;
        }
        order.pop();
        left[at].1 += 1;
    }
    false
}

/// The cheapest way to cut so many pieces, as far as `effort` goes: its cost and bound in steps, and the packing by kind.
pub(super) fn cut(
    field: &Field,
    bins: &[Bin],
    demand: &[u32],
    effort: &mut Effort,
) -> Result<(i64, i64, Packing), Failed> {
    let whole =
        Model { weights: field.weights.clone(), demand: demand.to_vec(), bins: bins.to_vec() };
    let limits: Vec<Option<u32>> = bins.iter().map(|bin| bin.limit).collect();
    let (model, kinds) = whole.residual(demand, &limits);
    if kinds.is_empty() {
        return Ok((0, 0, Packing::new()));
    }
    let mut solved = solve(&model, effort)?;
    let cost = model.cost(&solved.packing);
    for (cut, _) in &mut solved.packing {
        for (kind, _) in &mut cut.counts {
            *kind = kinds[*kind];
        }
    }
    Ok((cost, solved.bound, solved.packing))
}
