//! The fractional cut plan: column generation over proper patterns, with its duals and a lower bound of the cost.
//!
//! Gilmore and Gomory, "A Linear Programming Approach to the Cutting-Stock Problem" (1961, part II 1963); the bound of an
//! unfinished run is Farley's, "A Note on Bounding a Class of Linear Programming Problems" (1990).

use super::knapsack::{Best, Item, Knapsack};
use super::model::{Cut, Effort, Model, take};
use super::program::{Program, Row};
use super::simplex::{Basic, End, Simplex};

/// The fractional plan and what it proves. Costs and duals in steps of the price grid.
#[derive(Debug)]
pub(super) struct Relaxation {
    pub end: End,
    /// No plan can cost less.
    pub bound: f64,
    /// Worth of one piece of each kind.
    pub duals: Vec<f64>,
    /// Worth of one more of a limited bin, zero or less.
    pub bin_duals: Vec<f64>,
    /// Cuts with how often the fractional plan makes them.
    pub used: Vec<(Cut, f64)>,
    /// Every cut that came up.
    pub cuts: Vec<Cut>,
}

/// A column that saves anything and is found within so many steps is taken, the best or not.
const QUICK_STEPS: u64 = 15_000;
/// Steps for the worth of the best cut when a run has ended early.
const TABLE_STEPS: u64 = 2_000_000;
/// Cuts of one bin that are made for the same duals.
const MOST_AT_ONCE: usize = 12;
/// Least a column must save before it is worth having, relative to the dearest bin.
const WORTH: f64 = 1e-9;

/// Solves the fractional plan, starting from cuts that are known already. The bound and the duals are made safe where they are to
/// prove something: where the plan is only the start of a dive, that would be wasted.
pub(super) fn relax(model: &Model, known: &[Cut], proves: bool, effort: &mut Effort) -> Relaxation {
    let scale = scale(model);
    let kinds = model.weights.len();
    let mut rows: Vec<Row> =
        model.demand.iter().map(|&count| Row::AtLeast(f64::from(count))).collect();
    let mut bin_row = vec![None; model.bins.len()];
    for (bin, row) in model.bins.iter().zip(&mut bin_row) {
        if let Some(limit) = bin.limit {
            *row = Some(rows.len());
            rows.push(Row::AtMost(f64::from(limit)));
        }
    }
    let mut program = Program::new(rows);
    let mut cuts: Vec<Cut> = Vec::new();
    let mut start = Vec::with_capacity(program.rows.len());
    for kind in 0..kinds {
        start.push(match single_kind(model, kind) {
            Some(cut) => {
                push(&mut program, &cut, model, &bin_row, scale);
                cuts.push(cut);
                Basic::Column(cuts.len() - 1)
            }
            None => Basic::Artificial(kind),
        });
    }
    start.extend((kinds..program.rows.len()).map(Basic::Slack));
    for cut in known {
        push(&mut program, cut, model, &bin_row, scale);
        cuts.push(cut.clone());
    }
    let mut simplex = Simplex::new(&program, start);
    let mut exact = true;
    let end =
        simplex.run(&mut program, f64::INFINITY, effort, &mut |duals, program, effort, free| {
            let full = knapsack(model, &model.demand, duals);
            exact = true;
            for (index, bin) in model.bins.iter().enumerate() {
                if bin.limit == Some(0) {
                    continue;
                }
                let cost = if free { 0.0 } else { bin.cost as f64 / scale };
                let price = cost - bin_row[index].map_or(0.0, |row| duals[row].min(0.0));
                let Some(best) = cheapest(&full, bin.capacity, price + WORTH, effort) else {
                    exact &= !effort.is_spent();
                    continue;
                };
                exact &= best.exact;
                let mut cut = Cut { bin: index, counts: best.counts };
                // More cuts from the pieces that the first ones leave: together they move the duals at once.
                let mut rest = model.demand.clone();
                for round in 0..MOST_AT_ONCE {
                    take(&mut rest, &cut);
                    push(program, &cut, model, &bin_row, scale);
                    cuts.push(cut);
                    let mut quick = effort.steps(QUICK_STEPS);
                    let next =
                        knapsack(model, &rest, duals).best(bin.capacity, price + WORTH, &mut quick);
                    effort.give_back(quick);
                    let Some(next) = next.filter(|_| round + 1 < MOST_AT_ONCE) else { break };
                    cut = Cut { bin: index, counts: next.counts };
                }
            }
        });
    let duals: Vec<f64> = simplex.duals[..kinds].iter().map(|dual| dual.max(0.0)).collect();
    let bin_duals: Vec<f64> =
        bin_row.iter().map(|row| row.map_or(0.0, |row| simplex.duals[row].min(0.0))).collect();
    // Duals that are a little too high are scaled down until no cut is worth more than its bin.
    let mut share = 1.0_f64;
    if proves && (end == End::Unfinished || end == End::Optimal && !exact) {
        let knapsack = knapsack(model, &model.demand, &duals);
        for (bin, dual) in model.bins.iter().zip(&bin_duals) {
            // The worth of the best cut where a table tells it, else of a cut with parts of pieces in it.
            let mut steps = Effort::new(TABLE_STEPS);
            let best = knapsack.best_on_grid(bin.capacity, 0.0, &mut steps).flatten();
            let most = best.map_or_else(|| knapsack.bound(0, bin.capacity), |best| best.value);
            let price = bin.cost as f64 / scale - dual;
            if most > price && bin.limit != Some(0) {
                share = share.min(price / most);
            }
        }
    }
    let pieces: f64 =
        duals.iter().zip(&model.demand).map(|(dual, &count)| dual * f64::from(count)).sum();
    let limits: f64 = bin_duals
        .iter()
        .zip(&model.bins)
        .map(|(dual, bin)| dual * f64::from(bin.limit.unwrap_or(0)))
        .sum();
    let used = simplex
        .basis
        .iter()
        .zip(&simplex.values)
        .filter_map(|(basic, &value)| match basic {
            Basic::Column(column) if value > 1e-9 => Some((cuts[*column].clone(), value)),
            _ => None,
        })
        .collect();
    Relaxation {
        end,
        bound: ((share * pieces + limits) * scale).max(0.0),
        duals: duals.iter().map(|dual| dual * scale * share).collect(),
        bin_duals: bin_duals.iter().map(|dual| dual * scale).collect(),
        used,
        cuts,
    }
}

/// A cut worth more than `least`: a good one where that is quick, else the best.
fn cheapest(knapsack: &Knapsack, room: i64, least: f64, effort: &mut Effort) -> Option<Best> {
    let mut quick = effort.steps(QUICK_STEPS);
    let found = knapsack.best(room, least, &mut quick);
    let ended = quick.is_spent();
    effort.give_back(quick);
    if found.is_some() || !ended {
        return found;
    }
    knapsack.best_on_grid(room, least, effort).unwrap_or_else(|| knapsack.best(room, least, effort))
}

/// Cost that stands for one in the linear programs.
pub(super) fn scale(model: &Model) -> f64 {
    model.bins.iter().map(|bin| bin.cost).max().unwrap_or(1).max(1) as f64
}

/// A knapsack over all kinds of piece that are wanted, at the given worth.
pub(super) fn knapsack(model: &Model, demand: &[u32], duals: &[f64]) -> Knapsack {
    let items = model.weights.iter().zip(demand).zip(duals).enumerate();
    Knapsack::new(
        items
            .map(|(kind, ((&weight, &count), &value))| Item {
                kind,
                weight,
                value: value.max(0.0),
                count,
            })
            .collect(),
    )
}

/// As many of one kind as an unlimited bin takes, in the bin that is cheapest for it.
fn single_kind(model: &Model, kind: usize) -> Option<Cut> {
    let weight = model.weights[kind];
    let mut best: Option<(f64, Cut)> = None;
    for (bin, stock) in model.bins.iter().enumerate().filter(|(_, stock)| stock.limit.is_none()) {
        let count =
            u32::try_from(stock.capacity / weight).unwrap_or(u32::MAX).min(model.demand[kind]);
        if count == 0 {
            continue;
        }
        let rate = stock.cost as f64 / f64::from(count);
        if best.as_ref().is_none_or(|(least, _)| rate < *least) {
            best = Some((rate, Cut { bin, counts: vec![(kind, count)] }));
        }
    }
    best.map(|(_, cut)| cut)
}

fn push(program: &mut Program, cut: &Cut, model: &Model, bin_row: &[Option<usize>], scale: f64) {
    let pieces = cut.counts.iter().map(|&(kind, count)| (kind, f64::from(count)));
    let bin = bin_row[cut.bin].map(|row| (row, 1.0));
    program.push(model.bins[cut.bin].cost as f64 / scale, pieces.chain(bin));
}
