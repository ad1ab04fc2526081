//! Linear programs of the cut planner: the revised simplex method with a dense inverse of the basis.

use super::inverse::invert;
use super::model::Effort;
use super::program::{Program, Row};

/// Reduced costs nearer to zero than this count as zero; costs are about one.
const TOLERANCE: f64 = 1e-9;
/// Values nearer to zero than this count as zero.
const FEASIBLE: f64 = 1e-7;
/// Dual pivots before a basis is given up.
const MOST_REPAIRS: usize = 200;
/// Pivots between two fresh inverses.
const REFACTOR_EVERY: usize = 120;
/// Costs of a stand-in, tried one after the other while a stand-in stays. A step higher than needed costs digits.
const PENALTIES: [f64; 3] = [4.0, 200.0, 10_000.0];

/// What stands in the basis for a row.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(in crate::carpentry) enum Basic {
    /// A column of the program.
    Column(usize),
    /// What a row has over or under its right-hand side.
    Slack(usize),
    /// A stand-in that has to leave.
    Artificial(usize),
}

/// How a run ended.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(in crate::carpentry) enum End {
    /// No column can lower the cost.
    Optimal,
    /// The rows contradict each other.
    Infeasible,
    /// Effort ran out, or the numbers went bad.
    Unfinished,
}

/// Makes columns for the duals; the last argument says that columns are free of cost.
pub(in crate::carpentry) type More<'a> = dyn FnMut(&[f64], &mut Program, &mut Effort, bool) + 'a;

/// A basis with its inverse, values and duals.
#[derive(Debug)]
pub(in crate::carpentry) struct Simplex {
    pub basis: Vec<Basic>,
    pub values: Vec<f64>,
    pub duals: Vec<f64>,
    inverse: Vec<f64>,
    /// Index of the penalty; past the last one, only stand-ins cost anything.
    stage: usize,
    pivots: usize,
    /// Pivots since the last one that changed a value.
    stalled: usize,
    /// Steps done since effort was last spent.
    work: usize,
}

impl Simplex {
    /// Starts from `start` where it gives a basis with no negative value, else from stand-ins.
    pub(in crate::carpentry) fn new(program: &Program, start: Vec<Basic>) -> Self {
        let size = program.rows.len();
        let mut simplex = Self::unsolved(start);
        let fits = simplex.basis.len() == size
            && simplex.refactor(program)
            && simplex.values.iter().all(|&value| value >= -FEASIBLE);
        if !fits {
            simplex.basis = program
                .rows
                .iter()
                .enumerate()
                .map(|(row, kind)| match kind {
                    Row::AtLeast(_) => Basic::Artificial(row),
                    Row::AtMost(_) => Basic::Slack(row),
                })
                .collect();
            simplex.refactor(program);
        }
        simplex
    }

    fn unsolved(basis: Vec<Basic>) -> Self {
        Self {
            basis,
            values: Vec::new(),
            duals: Vec::new(),
            inverse: Vec::new(),
            stage: 0,
            pivots: 0,
            stalled: 0,
            work: 0,
        }
    }

    /// Lowers the cost until no column of the program, and none that `more` makes for the duals, can lower it further.
    /// `more` adds columns to the program, with all columns free of cost where its last argument says so. A cost above
    /// `cutoff` counts as infeasible.
    pub(in crate::carpentry) fn run(
        &mut self,
        program: &mut Program,
        cutoff: f64,
        effort: &mut Effort,
        more: &mut More<'_>,
    ) -> End {
        let size = program.rows.len();
        loop {
            if !effort.spend(self.work + program.entries() + 2 * program.columns() + 4 * size) {
                return End::Unfinished;
            }
            self.work = 0;
            let Some((entering, reduced)) = self.cheapest(program) else {
                let before = program.columns();
                more(&self.duals, program, effort, self.only_stand_ins_cost());
                if program.columns() > before {
                    continue;
                }
                if effort.is_spent() {
                    return End::Unfinished;
                }
                let stand_in = self.has_artificial();
                if self.only_stand_ins_cost() {
                    return if stand_in { End::Infeasible } else { End::Unfinished };
                }
                if self.objective(program) > cutoff {
                    return End::Infeasible;
                }
                if !stand_in {
                    return End::Optimal;
                }
                self.stage += 1;
                if !self.refactor(program) {
                    return End::Unfinished;
                }
                continue;
            };
            if !self.pivot(program, entering, reduced) {
                return End::Unfinished;
            }
        }
    }

    /// Cost of the values, stand-ins at their penalty.
    pub(in crate::carpentry) fn objective(&self, program: &Program) -> f64 {
        self.basis.iter().zip(&self.values).map(|(&b, &v)| self.cost(program, b) * v).sum()
    }

    /// What using one of a column would add to the cost.
    pub(in crate::carpentry) fn reduced_cost(&self, program: &Program, column: usize) -> f64 {
        let entries = program.column(column).iter();
        let cost = if self.only_stand_ins_cost() { 0.0 } else { program.cost(column) };
        cost - entries.map(|&(row, value)| self.duals[row as usize] * value).sum::<f64>()
    }

    fn has_artificial(&self) -> bool {
        let basis = self.basis.iter().zip(&self.values);
        basis.into_iter().any(|(b, &v)| matches!(b, Basic::Artificial(_)) && v > FEASIBLE)
    }

    fn cost(&self, program: &Program, basic: Basic) -> f64 {
        match basic {
            Basic::Column(_) if self.only_stand_ins_cost() => 0.0,
            Basic::Column(column) => program.cost(column),
            Basic::Slack(_) => 0.0,
            Basic::Artificial(_) => PENALTIES.get(self.stage).copied().unwrap_or(1.0),
        }
    }

    fn only_stand_ins_cost(&self) -> bool {
        self.stage >= PENALTIES.len()
    }

    /// The column that lowers the cost fastest; the first that lowers it at all where pivots have stalled, so that none come round
    /// again (Bland's rule).
    fn cheapest(&self, program: &Program) -> Option<(Basic, f64)> {
        let penalty = PENALTIES.get(self.stage).copied().unwrap_or(1.0);
        let mut best = (None, -TOLERANCE * (1.0 + 0.01 * penalty));
        let first = self.is_stalled();
        for (row, kind) in program.rows.iter().enumerate() {
            let reduced = match kind {
                Row::AtLeast(_) => self.duals[row],
                Row::AtMost(_) => -self.duals[row],
            };
            if reduced < best.1 {
                best = (Some(Basic::Slack(row)), reduced);
                if first {
                    return Some((Basic::Slack(row), reduced));
                }
            }
        }
        for column in 0..program.columns() {
            let reduced = self.reduced_cost(program, column);
            if reduced < best.1 {
                best = (Some(Basic::Column(column)), reduced);
                if first {
                    break;
                }
            }
        }
        best.0.map(|basic| (basic, best.1))
    }

    fn is_stalled(&self) -> bool {
        self.stalled > 50 + 3 * self.basis.len()
    }

    /// Brings a column into the basis; false when no row bounds it or the numbers went bad.
    fn pivot(&mut self, program: &Program, entering: Basic, reduced: f64) -> bool {
        let direction = self.direction(program, entering);
        let mut leaving = None;
        let mut step = f64::INFINITY;
        let mut strength = 0.0;
        for (row, &slope) in direction.iter().enumerate() {
            if slope <= TOLERANCE {
                continue;
            }
            let ratio = self.values[row].max(0.0) / slope;
            let weight = match self.basis[row] {
                Basic::Artificial(_) => slope + 1e6,
                // Bland's rule: slacks by row, then columns by number.
                Basic::Slack(row) if self.is_stalled() => 1e6 - row as f64,
                Basic::Column(column) if self.is_stalled() => 1.0 / (1.0 + column as f64),
                _ => slope,
            };
            if ratio < step - 1e-10 || (ratio <= step + 1e-10 && weight > strength) {
                step = ratio.min(step);
                strength = weight;
                leaving = Some(row);
            }
        }
        let Some(leaving) = leaving else { return false };
        self.exchange(program, entering, leaving, reduced, &direction)
    }

    /// Puts `entering` in the place of what stands in row `leaving`.
    fn exchange(
        &mut self,
        program: &Program,
        entering: Basic,
        leaving: usize,
        reduced: f64,
        direction: &[f64],
    ) -> bool {
        let size = program.rows.len();
        let pivot = direction[leaving];
        let step = self.values[leaving] / pivot;
        let row_start = leaving * size;
        for entry in &mut self.inverse[row_start..row_start + size] {
            *entry /= pivot;
        }
        let pivot_row = self.inverse[row_start..row_start + size].to_vec();
        for (row, &slope) in direction.iter().enumerate() {
            if row == leaving || slope == 0.0 {
                continue;
            }
            self.work += size;
            let target = &mut self.inverse[row * size..(row + 1) * size];
            for (entry, &p) in target.iter_mut().zip(&pivot_row) {
                *entry -= slope * p;
            }
            self.values[row] -= slope * step;
        }
        self.values[leaving] = step;
        for (dual, &p) in self.duals.iter_mut().zip(&pivot_row) {
            *dual += reduced * p;
        }
        self.basis[leaving] = entering;
        self.stalled = if step > 1e-12 { 0 } else { self.stalled + 1 };
        self.pivots += 1;
        if self.pivots.is_multiple_of(REFACTOR_EVERY) { self.refactor(program) } else { true }
    }

    /// Starts from the basis of a program that differed in right-hand sides only, or nearly: makes its values at least zero by the dual
    /// simplex method. `None` where that basis is of no use, `Some(Err)` where no values can be.
    pub(in crate::carpentry) fn resume(
        program: &Program,
        basis: Vec<Basic>,
        effort: &mut Effort,
    ) -> Option<Result<Self, End>> {
        let mut simplex = Self::unsolved(basis);
        if simplex.basis.len() != program.rows.len() || !simplex.refactor(program) {
            return None;
        }
        for _ in 0..MOST_REPAIRS {
            let lowest = (0..simplex.values.len())
                .min_by(|&a, &b| simplex.values[a].total_cmp(&simplex.values[b]))?;
            if simplex.values[lowest] >= -FEASIBLE {
                return Some(Ok(simplex));
            }
            effort.spend(simplex.work + 2 * program.entries() + 2 * program.columns());
            simplex.work = 0;
            let Some((entering, reduced)) = simplex.repairing(program, lowest) else {
                return Some(Err(End::Infeasible));
            };
            let direction = simplex.direction(program, entering);
            if direction[lowest] >= -TOLERANCE
                || !simplex.exchange(program, entering, lowest, reduced, &direction)
            {
                return None;
            }
        }
        None
    }

    /// The column that lifts the value of a row at the least cost.
    fn repairing(&self, program: &Program, row: usize) -> Option<(Basic, f64)> {
        let size = program.rows.len();
        let weights = &self.inverse[row * size..(row + 1) * size];
        let mut best: Option<(f64, f64, Basic, f64)> = None;
        let mut offer = |slope: f64, reduced: f64, basic: Basic| {
            if slope < -1e-8 {
                let ratio = reduced.max(0.0) / -slope;
                let better = best.is_none_or(|(least, steepest, ..)| {
                    ratio < least - 1e-12 || (ratio <= least + 1e-12 && slope < steepest)
                });
                if better {
                    best = Some((ratio, slope, basic, reduced));
                }
            }
        };
        for (at, kind) in program.rows.iter().enumerate() {
            match kind {
                Row::AtLeast(_) => offer(-weights[at], self.duals[at], Basic::Slack(at)),
                Row::AtMost(_) => offer(weights[at], -self.duals[at], Basic::Slack(at)),
            }
        }
        for column in 0..program.columns() {
            let entries = program.column(column).iter();
            let slope = entries.map(|&(at, value)| weights[at as usize] * value).sum();
            if slope < -1e-8 {
                offer(slope, self.reduced_cost(program, column), Basic::Column(column));
            }
        }
        best.map(|(_, _, basic, reduced)| (basic, reduced))
    }

    fn direction(&self, program: &Program, entering: Basic) -> Vec<f64> {
        let size = program.rows.len();
        let unit;
        let entries: &[(u32, f64)] = match entering {
            Basic::Column(column) => program.column(column),
            other => {
                unit = unit_column(program, other);
                &unit
            }
        };
        (0..size)
            .map(|row| {
                let inverse = &self.inverse[row * size..(row + 1) * size];
                entries.iter().map(|&(at, value)| inverse[at as usize] * value).sum()
            })
            .collect()
    }

    /// Works inverse, values and duals out again from the basis; false when the basis is singular.
    fn refactor(&mut self, program: &Program) -> bool {
        let size = program.rows.len();
        let mut matrix = vec![0.0; size * size];
        for (at, &basic) in self.basis.iter().enumerate() {
            match basic {
                Basic::Column(column) => {
                    for &(row, value) in program.column(column) {
                        matrix[row as usize * size + at] += value;
                    }
                }
                other => {
                    for (row, value) in unit_column(program, other) {
                        matrix[row as usize * size + at] += value;
                    }
                }
            }
        }
        let Some((inverse, work)) = invert(matrix, size) else { return false };
        self.work += work;
        self.inverse = inverse;
        let rhs: Vec<f64> = program
            .rows
            .iter()
            .map(|row| match row {
                Row::AtLeast(value) | Row::AtMost(value) => *value,
            })
            .collect();
        self.values = (0..size)
            .map(|row| {
                let inverse = &self.inverse[row * size..(row + 1) * size];
                inverse.iter().zip(&rhs).map(|(a, b)| a * b).sum()
            })
            .collect();
        self.duals = vec![0.0; size];
        for (row, &basic) in self.basis.iter().enumerate() {
            let cost = self.cost(program, basic);
            if cost != 0.0 {
                let inverse = &self.inverse[row * size..(row + 1) * size];
                for (dual, &entry) in self.duals.iter_mut().zip(inverse) {
                    *dual += cost * entry;
                }
            }
        }
        true
    }
}

fn unit_column(program: &Program, basic: Basic) -> [(u32, f64); 1] {
    match basic {
        Basic::Slack(row) => match program.rows[row] {
            Row::AtLeast(_) => [(row as u32, -1.0)],
            Row::AtMost(_) => [(row as u32, 1.0)],
        },
        Basic::Artificial(row) | Basic::Column(row) => [(row as u32, 1.0)],
    }
}
