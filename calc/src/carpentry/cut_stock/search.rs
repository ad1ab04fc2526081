//! Exact search of the cut planner: branch and bound over every cut that a plan within a given cost can contain.
//!
//! A cut whose reduced cost is above the room between bound and given cost stands in no such plan (reduced-cost fixing;
//! Nemhauser and Wolsey, "Integer and Combinatorial Optimization", II.5). So the search is complete for that cost.

use super::dive::widen;
use super::greedy;
use super::ladder::Ladder;
use super::model::{Cut, Effort, Model, Packing, add, take, use_one};
use super::program::{Program, Row};
use super::relax::{Relaxation, knapsack, scale};
use super::simplex::{Basic, End, Simplex};

const WHOLE: f64 = 1e-6;
/// Cost of a cut that must not be used, in prices of the dearest bin.
const DRIVEN_OUT: f64 = 1e3;

/// Every full cut with a reduced cost of at most `room`; `None` when there are more than `most`.
pub(super) fn pool(
    model: &Model,
    root: &Relaxation,
    room: f64,
    most: usize,
    effort: &mut Effort,
) -> Option<Vec<Cut>> {
    let knapsack = knapsack(model, &model.demand, &root.duals);
    let mut pool = Vec::new();
    for (index, bin) in model.bins.iter().enumerate() {
        if bin.limit == Some(0) {
            continue;
        }
        let price = bin.cost as f64 - root.bin_duals[index];
        let least = price - room - 1e-7 * (1.0 + price.abs());
        let mut cuts = Vec::new();
        if !knapsack.each_above(bin.capacity, least, most - pool.len(), effort, &mut cuts) {
            return None;
        }
        pool.extend(cuts.into_iter().map(|counts| Cut { bin: index, counts }));
    }
    Some(pool)
}

/// The cheapest plan of at most `ceiling` made of `pool`, ended early by one of `goal`; at most `slips` times on the way to a plan, the
/// choice is not the first one (limited discrepancy search); `complete` says whether all of them were looked at.
pub(super) fn search(
    model: &Model,
    pool: &[Cut],
    ladder: &Ladder,
    ceiling: i64,
    goal: i64,
    slips: u32,
    effort: &mut Effort,
) -> (Option<Packing>, bool) {
    let mut search = Search {
        model,
        pool,
        ladder,
        ceiling,
        goal,
        scale: scale(model),
        effort,
        best: None,
        complete: true,
    };
    let limits = model.bins.iter().map(|bin| bin.limit).collect();
    let node = Node {
        demand: model.demand.clone(),
        limits,
        floors: vec![0; model.bins.len()],
        active: (0..pool.len()).collect(),
        spent: 0,
        packing: Packing::new(),
        slips,
        basis: Vec::new(),
    };
    search.run(node);
    (search.best, search.complete)
}

struct Search<'a> {
    model: &'a Model,
    pool: &'a [Cut],
    ladder: &'a Ladder,
    ceiling: i64,
    goal: i64,
    scale: f64,
    effort: &'a mut Effort,
    best: Option<Packing>,
    complete: bool,
}

#[derive(Clone)]
struct Node {
    demand: Vec<u32>,
    limits: Vec<Option<u32>>,
    /// Least number of each bin still to be used.
    floors: Vec<u32>,
    active: Vec<usize>,
    spent: i64,
    packing: Packing,
    slips: u32,
    /// Basis of the fractional plan before, columns by their index in the pool.
    basis: Vec<Basic>,
}

/// A node's fractional plan.
struct Fraction {
    cost: f64,
    /// Index in the pool, times.
    used: Vec<(usize, f64)>,
    reduced: Vec<f64>,
    basis: Vec<Basic>,
}

impl Search<'_> {
    /// True when the goal is met and nothing better can come.
    fn done(&self) -> bool {
        self.ceiling < self.goal || self.effort.is_spent()
    }

    fn record(&mut self, packing: Packing, cost: i64) {
        if cost <= self.ceiling {
            self.ceiling = cost - 1;
            self.best = Some(packing);
        }
    }

    /// Depth first, without recursion: what is put off waits on a stack of its own.
    fn run(&mut self, root: Node) {
        let mut waiting = vec![root];
        while let Some(node) = waiting.pop() {
            if self.done() {
                self.complete &= self.ceiling < self.goal;
                return;
            }
            if let Some((first, other)) = self.branch(node) {
                waiting.extend(other);
                waiting.push(first);
            }
        }
    }

    /// The more and the less promising half of a node; `None` where it holds nothing better.
    fn branch(&mut self, mut node: Node) -> Option<(Node, Option<Node>)> {
        if node.demand.iter().all(|&count| count == 0) {
            self.record(node.packing, node.spent);
            return None;
        }
        let fraction = match self.fraction(&node) {
            Ok(fraction) => fraction,
            Err(End::Infeasible) => return None,
            Err(_) => {
                self.complete = false;
                return None;
            }
        };
        let least = node.spent + self.ladder.next(fraction.cost);
        if least > self.ceiling {
            return None;
        }
        self.round(&node, &fraction);
        if least > self.ceiling {
            return None;
        }
        let room = (self.ceiling - node.spent) as f64 - fraction.cost;
        let slack = 1e-6 * (1.0 + fraction.cost);
        let mut reduced = fraction.reduced.iter();
        node.active.retain(|_| reduced.next().is_some_and(|&r| r <= room + slack));
        node.basis.clone_from(&fraction.basis);
        let mut first = node.clone();
        if let Some((bin, total)) = self.split_bin(&fraction) {
            first.floors[bin] = first.floors[bin].max(total + 1);
            node.limits[bin] = Some(total.min(node.limits[bin].unwrap_or(total)));
        } else {
            let most = fraction.used.iter().max_by(|(a, x), (b, y)| x.total_cmp(y).then(b.cmp(a)));
            let &(chosen, _) = most?;
            let cut = take(&mut first.demand, &self.pool[chosen]);
            use_one(&mut first.limits, cut.bin);
            first.floors[cut.bin] = first.floors[cut.bin].saturating_sub(1);
            first.spent += self.model.bins[cut.bin].cost;
            add(&mut first.packing, cut, 1);
            node.active.retain(|&index| index != chosen);
        }
        if node.slips == 0 {
            self.complete = false;
            return Some((first, None));
        }
        node.slips -= 1;
        Some((first, Some(node)))
    }

    /// The bin whose fractional total is farthest from whole, with the total rounded down.
    fn split_bin(&self, fraction: &Fraction) -> Option<(usize, u32)> {
        if self.model.bins.len() < 2 {
            return None;
        }
        let mut totals = vec![0.0; self.model.bins.len()];
        for &(index, times) in &fraction.used {
            totals[self.pool[index].bin] += times;
        }
        let mut best: Option<(f64, usize, u32)> = None;
        for (bin, total) in totals.into_iter().enumerate() {
            let part = total - total.floor();
            let away = part.min(1.0 - part);
            if away > WHOLE * 10.0 && best.is_none_or(|(most, ..)| away > most) {
                best = Some((away, bin, total.floor() as u32));
            }
        }
        best.map(|(_, bin, total)| (bin, total))
    }

    /// Whole parts of the fractional plan, the rest longest first.
    fn round(&mut self, node: &Node, fraction: &Fraction) {
        let mut demand = node.demand.clone();
        let mut limits = node.limits.clone();
        let mut packing = node.packing.clone();
        for &(index, times) in &fraction.used {
            for _ in 0..(times + WHOLE).floor() as u32 {
                if limits[self.pool[index].bin] == Some(0) {
                    break;
                }
                let cut = take(&mut demand, &self.pool[index]);
                if cut.counts.is_empty() {
                    break;
                }
                use_one(&mut limits, cut.bin);
                add(&mut packing, cut, 1);
            }
        }
        let (rest, kinds) = self.model.residual(&demand, &limits);
        let Some(filled) = greedy::fill(&rest) else { return };
        for (cut, times) in filled {
            add(&mut packing, widen(&cut, &kinds), times);
        }
        let cost = self.model.cost(&packing);
        self.record(packing, cost);
    }

    /// The node's fractional plan, worked on from that of the node before where there is one.
    fn fraction(&mut self, node: &Node) -> Result<Fraction, End> {
        let kinds = node.demand.len();
        let pieces: u32 = self.model.demand.iter().sum();
        let mut rows: Vec<Row> =
            node.demand.iter().map(|&count| Row::AtLeast(f64::from(count))).collect();
        for (&limit, &floor) in node.limits.iter().zip(&node.floors) {
            let limit = limit.unwrap_or(pieces);
            if limit < floor {
                return Err(End::Infeasible);
            }
            rows.push(Row::AtMost(f64::from(limit)));
            rows.push(Row::AtLeast(f64::from(floor)));
        }
        let mut program = Program::new(rows);
        let push = |program: &mut Program, index: usize, cost: f64| {
            let cut = &self.pool[index];
            let pieces = cut.counts.iter().filter_map(|&(kind, count)| {
                let wanted = count.min(node.demand[kind]);
                (wanted > 0).then_some((kind, f64::from(wanted)))
            });
            let bin = kinds + 2 * cut.bin;
            program.push(cost, pieces.chain([(bin, 1.0), (bin + 1, 1.0)]));
        };
        for &index in &node.active {
            push(
                &mut program,
                index,
                self.model.bins[self.pool[index].bin].cost as f64 / self.scale,
            );
        }
        self.effort.spend(8 * program.columns());
        // A cut that was left out since then stays in the basis at a price that drives it out.
        let mut columns = node.active.clone();
        let mut basis = Vec::with_capacity(node.basis.len());
        for &basic in &node.basis {
            basis.push(match basic {
                Basic::Column(index) => match node.active.binary_search(&index) {
                    Ok(at) => Basic::Column(at),
                    Err(_) => {
                        push(&mut program, index, DRIVEN_OUT);
                        columns.push(index);
                        Basic::Column(columns.len() - 1)
                    }
                },
                other => other,
            });
        }
        let mut simplex = match Simplex::resume(&program, basis, self.effort) {
            Some(Ok(simplex)) => simplex,
            Some(Err(end)) => return Err(end),
            None => Simplex::new(&program, Vec::new()),
        };
        // A fraction of a cost step is kept so that rounding never cuts a plan off.
        let cutoff = ((self.ceiling - node.spent) as f64 + 0.5) / self.scale;
        let end = simplex.run(&mut program, cutoff, self.effort, &mut |_, _, _, _| {});
        if end != End::Optimal {
            return Err(end);
        }
        let mut used = Vec::new();
        let mut basis = Vec::with_capacity(simplex.basis.len());
        for (&basic, &value) in simplex.basis.iter().zip(&simplex.values) {
            basis.push(match basic {
                Basic::Column(at) => {
                    if value > WHOLE {
                        used.push((columns[at], value));
                    }
                    Basic::Column(columns[at])
                }
                other => other,
            });
        }
        Ok(Fraction {
            cost: simplex.objective(&program) * self.scale,
            used,
            reduced: (0..node.active.len())
                .map(|column| simplex.reduced_cost(&program, column) * self.scale)
                .collect(),
            basis,
        })
    }
}
