//! Layouts and cuts in one linear program, with columns made as its prices call for them, and the bound that any prices give.
//!
//! Column generation: Gilmore and Gomory, "A Linear Programming Approach to the Cutting-Stock Problem" (1961). The bound is the
//! Lagrangian one (Geoffrion, "Lagrangean Relaxation for Integer Programming", 1974): with a price on each length of piece, no plan
//! costs less than the cheapest layouts at these prices, as long as no cut is worth more than its stock length. It holds for any
//! prices, so it does not rest on the linear program having been solved.
//!
//! Courses that are alike and lie side by side are taken in twos (and a three where their number is odd) that keep the stagger.

use super::cheapest::{Prices, one, two};
use super::field::{Field, Layout};
use crate::carpentry::cut_stock::knapsack::{Item, Knapsack};
use crate::carpentry::cut_stock::model::{Bin, Cut, Effort};
use crate::carpentry::cut_stock::program::{Program, Row};
use crate::carpentry::cut_stock::simplex::{Basic, End, Simplex};

/// A little more is asked for of each length, each its own, so that pivots do not stall.
const NUDGE: f64 = 1e-6;
/// How near to the best prices so far the next ones are asked.
const CENTRE: f64 = 0.6;
/// A bound this near to the program's cost is near enough, as a part of it.
const CLOSE: f64 = 1e-4;
/// Least part of its price that a column must save before it is worth having: the last digits of a bound cost most of the work.
const WORTH: f64 = 2e-5;
/// A joint costs so little more than nothing, in prices of the dearest stock length: of equal layouts those with fewer joints come up.
const JOINT_COST: f64 = 3e-6;
/// Prices of a program without a solution are raised so far to show it.
const RAISED: f64 = 1e4;
/// Steps for a bound after a run.
const BOUND_STEPS: u64 = 1_000_000;
/// What an unlimited row allows.
const NO_LIMIT: f64 = 1e7;

/// Paths, each with how often it is taken.
type Paths = Vec<(Vec<usize>, u32)>;
/// Layouts by their index, each with how often it is taken.
pub(super) type Times = Vec<(usize, u32)>;

/// Neighbouring courses of one way that get their layouts together.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Group {
    pub way: usize,
    /// One course, two, or three of which the outer ones are alike.
    pub size: u32,
    /// How many such groups.
    pub count: u32,
}

impl Group {
    /// The groups of a field. What keeps its stagger in all courses keeps it within each group.
    pub(super) fn all(field: &Field) -> Vec<Self> {
        let mut groups: Vec<Self> = Vec::new();
        let mut add = |way: usize, size: u32, count: u32| match groups
            .iter_mut()
            .find(|group| group.way == way && group.size == size)
        {
            Some(group) => group.count += count,
            None if count > 0 => groups.push(Self { way, size, count }),
            None => {}
        };
        for run in field.courses.chunk_by(|a, b| a == b) {
            let (way, courses) = (run[0], run.len() as u32);
            match (courses, courses % 2) {
                (1, _) => add(way, 1, 1),
                (_, 0) => add(way, 2, courses / 2),
                _ => {
                    add(way, 2, courses / 2 - 1);
                    add(way, 3, 1);
                }
            }
        }
        groups
    }

    /// Its cheapest layouts: cost, and each path with how often it is taken.
    pub(super) fn cheapest(&self, field: &Field, prices: Prices<'_>) -> Option<(f64, Paths)> {
        if self.size == 1 {
            let (cost, path) = one(field, self.way, prices)?;
            return Some((cost, vec![(path, 1)]));
        }
        let (cost, a, b) = two(field, self.way, f64::from(self.size - 1), prices)?;
        Some((cost, vec![(a, self.size - 1), (b, 1)]))
    }
}

/// What a column of the program stands for.
#[derive(Clone, Debug, PartialEq)]
enum Column {
    Cut,
    /// A group's index and its layouts.
    Group(usize, Times),
    /// A longer piece serves for a shorter one.
    Shorter,
}

/// The program with all that came up.
#[derive(Clone, Debug)]
pub(super) struct Master<'a> {
    field: &'a Field,
    pub bins: Vec<Bin>,
    pub groups: Vec<Group>,
    /// Pieces that are wanted whatever the layouts to come.
    pub fixed: Vec<u32>,
    /// The most joints of the layouts to come.
    pub joints: Option<u32>,
    pub layouts: Vec<Layout>,
    program: Program,
    columns: Vec<Column>,
    bin_rows: Vec<Option<usize>>,
    basis: Vec<Basic>,
    values: Vec<f64>,
    duals: Vec<f64>,
    /// The best bound of the last run.
    line: Option<Line>,
    /// Prices to start from.
    start: Option<(f64, Vec<f64>, Line)>,
    /// Duals of a run that found no solution are worth nothing but to show that.
    free: bool,
    scale: f64,
}

impl<'a> Master<'a> {
    pub(super) fn new(field: &'a Field, bins: Vec<Bin>, joints: bool) -> Self {
        let groups = Group::all(field);
        let kinds = field.weights.len();
        let mut rows = vec![Row::AtLeast(0.0); kinds + groups.len()];
        // The joints' row is always there, so that a limit can be set later.
        rows.push(Row::AtMost(NO_LIMIT));
        let mut bin_rows = vec![None; bins.len()];
        for (bin, row) in bins.iter().zip(&mut bin_rows) {
            if bin.limit.is_some() {
                *row = Some(rows.len());
                rows.push(Row::AtMost(0.0));
            }
        }
        let scale = bins.iter().map(|bin| bin.cost).max().unwrap_or(1).max(1) as f64;
        let mut master = Self {
            field,
            bins,
            groups,
            fixed: vec![0; kinds],
            joints: joints.then_some(0),
            layouts: Vec::new(),
            program: Program::new(rows),
            columns: Vec::new(),
            bin_rows,
            basis: Vec::new(),
            values: Vec::new(),
            duals: Vec::new(),
            line: None,
            start: None,
            free: false,
            scale,
        };
        master.start();
        master
    }

    /// A first basis: each length cut alone, and layouts that are short of nothing.
    fn start(&mut self) {
        let kinds = self.field.weights.len();
        let mut basis = Vec::with_capacity(self.program.rows.len());
        for kind in 0..kinds {
            let weight = self.field.weights[kind];
            let mut best: Option<(f64, Cut)> = None;
            for (bin, stock) in self.bins.iter().enumerate().filter(|(_, bin)| bin.limit.is_none())
            {
                let count = u32::try_from(stock.capacity / weight).unwrap_or(0);
                let rate = stock.cost as f64 / f64::from(count.max(1));
                if count > 0 && best.as_ref().is_none_or(|(least, _)| rate < *least) {
                    best = Some((rate, Cut { bin, counts: vec![(kind, count)] }));
                }
            }
            basis.push(match best {
                Some((_, cut)) => Basic::Column(self.add_cut(&cut)),
                None => Basic::Artificial(kind),
            });
        }
        // What costs as its length does, and a joint a little.
        let longest = self.field.weights.first().copied().unwrap_or(1).max(1) as f64;
        let by_length: Vec<f64> =
            self.field.weights.iter().map(|weight| *weight as f64 / longest).collect();
        let prices = Prices { pieces: &by_length, joint: 0.1 };
        for index in 0..self.groups.len() {
            let found = self.groups[index].cheapest(self.field, prices);
            basis.push(match found {
                Some((_, paths)) => Basic::Column(self.add_group(index, paths)),
                None => Basic::Artificial(kinds + index),
            });
        }
        for kind in 1..kinds {
            self.program.push(0.0, [(kind - 1, -1.0), (kind, 1.0)]);
            self.columns.push(Column::Shorter);
        }
        basis.extend((basis.len()..self.program.rows.len()).map(Basic::Slack));
        self.basis = basis;
    }

    fn add_cut(&mut self, cut: &Cut) -> usize {
        let (row, cost) = (self.bin_rows[cut.bin], self.bins[cut.bin].cost as f64 / self.scale);
        push_cut(&mut self.program, &mut self.columns, cut, row, cost);
        self.columns.len() - 1
    }

    fn add_group(&mut self, index: usize, paths: Paths) -> usize {
        let way = self.groups[index].way;
        push_group(
            self.field,
            &mut self.program,
            &mut self.columns,
            &mut self.layouts,
            index,
            way,
            paths,
        );
        self.columns.len() - 1
    }

    fn set_rows(&mut self) {
        let kinds = self.field.weights.len();
        for (kind, &count) in self.fixed.iter().enumerate() {
            let own = 1.0 + (kind * 37 % 101) as f64 / 101.0;
            self.program.rows[kind] = Row::AtLeast(f64::from(count) + NUDGE * own);
        }
        for (index, group) in self.groups.iter().enumerate() {
            self.program.rows[kinds + index] = Row::AtLeast(f64::from(group.count));
        }
        let joints = self.joints.map_or(NO_LIMIT, f64::from);
        self.program.rows[kinds + self.groups.len()] = Row::AtMost(joints);
        for (bin, row) in self.bins.iter().zip(&self.bin_rows) {
            if let (Some(row), Some(limit)) = (row, bin.limit) {
                self.program.rows[*row] = Row::AtMost(f64::from(limit));
            }
        }
    }

    /// Solves the program for what is fixed and limited now.
    pub(super) fn solve(&mut self, effort: &mut Effort) -> End {
        self.set_rows();
        let resumed = Simplex::resume(&self.program, self.basis.clone(), effort);
        let mut simplex = match resumed {
            Some(Ok(simplex)) => simplex,
            // New columns may give what these cannot.
            Some(Err(_)) | None => Simplex::new(&self.program, Vec::new()),
        };
        let setting = Setting {
            field: self.field,
            bins: &self.bins,
            bin_rows: &self.bin_rows,
            groups: &self.groups,
            fixed: &self.fixed,
            joints: self.joints,
            scale: self.scale,
        };
        let (columns, layouts) = (&mut self.columns, &mut self.layouts);
        let mut was_free = false;
        // The best prices so far: between them and the program's own lie the ones that are asked next (Wentges, "Weighted
        // Dantzig-Wolfe Decomposition", 1997).
        let mut centre: Option<(f64, Vec<f64>, Line)> = self.start.take();
        let mut more = |duals: &[f64], program: &mut Program, effort: &mut Effort, free: bool| {
            was_free = free;
            if free {
                let asked = setting.ask(duals, true, effort);
                setting.take(asked, duals, true, program, columns, layouts);
                return;
            }
            let between: Vec<f64> = match &centre {
                Some((_, centre, _)) => {
                    centre.iter().zip(duals).map(|(a, b)| CENTRE * a + (1.0 - CENTRE) * b).collect()
                }
                None => duals.to_vec(),
            };
            let asked = setting.ask(&between, false, effort);
            let bound = asked.line.at(setting.joints.unwrap_or(0)) / setting.scale;
            if !effort.is_spent() && centre.as_ref().is_none_or(|(known, ..)| bound > *known) {
                centre = Some((bound, between, asked.line));
            }
            let objective: f64 = program
                .rows
                .iter()
                .zip(duals)
                .map(|(row, dual)| match row {
                    Row::AtLeast(value) | Row::AtMost(value) => value * dual,
                })
                .sum();
            if centre.as_ref().is_some_and(|(known, ..)| objective <= known * (1.0 + CLOSE)) {
                return;
            }
            if !setting.take(asked, duals, false, program, columns, layouts) {
                let asked = setting.ask(duals, false, effort);
                let bound = asked.line.at(setting.joints.unwrap_or(0)) / setting.scale;
                if !effort.is_spent() && centre.as_ref().is_none_or(|(known, ..)| bound > *known) {
                    centre = Some((bound, duals.to_vec(), asked.line));
                }
                setting.take(asked, duals, false, program, columns, layouts);
            }
        };
        let end = simplex.run(&mut self.program, f64::INFINITY, effort, &mut more);
        self.free = was_free;
        self.basis = simplex.basis;
        self.values = simplex.values;
        self.duals = simplex.duals;
        self.line = centre.filter(|_| !was_free).map(|(_, _, line)| line);
        end
    }

    /// What is taken of each group: its index, layouts, and how often.
    pub(super) fn taken(&self) -> Vec<(usize, Times, f64)> {
        let mut found = Vec::new();
        for (basic, &value) in self.basis.iter().zip(&self.values) {
            if let Basic::Column(column) = basic
                && let Some(Column::Group(group, layouts)) = self.columns.get(*column)
                && value > 1e-5
            {
                found.push((*group, layouts.clone(), value));
            }
        }
        found
    }

    /// What a piece of each kind is worth, in steps of the price grid.
    pub(super) fn worth(&self) -> Vec<f64> {
        let kinds = self.field.weights.len();
        self.duals.iter().take(kinds).map(|dual| dual.max(0.0) * self.scale).collect()
    }

    /// What no layouts cost less than, in steps of the price grid: by the best prices of the last run.
    pub(super) fn bound(&self) -> Line {
        if let Some(line) = self.line {
            return line;
        }
        let setting = self.setting();
        let mut duals = self.duals.clone();
        duals.resize(self.program.rows.len(), 0.0);
        let mut effort = Effort::new(BOUND_STEPS);
        let plain = setting.ask(&duals, false, &mut effort).line;
        if !self.free {
            return plain;
        }
        duals.iter_mut().for_each(|dual| *dual *= RAISED);
        let raised = setting.ask(&duals, false, &mut effort).line;
        let at = |line: &Line| line.at(self.joints.unwrap_or(0));
        if at(&raised) > at(&plain) { raised } else { plain }
    }

    fn setting(&self) -> Setting<'_> {
        Setting {
            field: self.field,
            bins: &self.bins,
            bin_rows: &self.bin_rows,
            groups: &self.groups,
            fixed: &self.fixed,
            joints: self.joints,
            scale: self.scale,
        }
    }

    /// Starts from prices by length: the best that a stock length gives for its price.
    pub(super) fn start_by_length(&mut self, effort: &mut Effort) {
        let rates = self.bins.iter().filter(|bin| bin.capacity > 0 && bin.limit != Some(0));
        let rate =
            rates.map(|bin| bin.cost as f64 / bin.capacity as f64).filter(|rate| *rate > 0.0);
        let rate = rate.fold(f64::INFINITY, f64::min);
        if rate.is_finite() {
            let weights = self.field.weights.iter();
            let mut duals: Vec<f64> =
                weights.map(|weight| *weight as f64 * rate / self.scale).collect();
            duals.resize(self.program.rows.len(), 0.0);
            let line = self.setting().ask(&duals, false, effort).line;
            let bound = line.at(self.joints.unwrap_or(0)) / self.scale;
            self.start = Some((bound, duals, line));
        }
    }
}

/// What prices are asked about.
struct Setting<'a> {
    field: &'a Field,
    bins: &'a [Bin],
    bin_rows: &'a [Option<usize>],
    groups: &'a [Group],
    fixed: &'a [u32],
    joints: Option<u32>,
    scale: f64,
}

/// What came of it: the best of each bin and each group, and the bound that they give.
struct Asked {
    line: Line,
    cuts: Vec<Cut>,
    groups: Vec<(usize, Paths)>,
}

impl Setting<'_> {
    /// The best cuts and layouts at these duals, and what no layouts cost less than. With `free`, stock costs nothing.
    fn ask(&self, duals: &[f64], free: bool, effort: &mut Effort) -> Asked {
        let kinds = self.field.weights.len();
        let dual = |row: usize| duals.get(row).copied().unwrap_or(0.0) * self.scale;
        let mut prices: Vec<f64> = (0..kinds).map(|kind| dual(kind).max(0.0)).collect();
        let mut joint = match self.joints {
            Some(_) => (-dual(kinds + self.groups.len())).max(0.0),
            None => 0.0,
        };
        let knapsack = knapsack(self.field, self.bins, &prices);
        let mut cuts = Vec::new();
        // What no cut of each bin is worth more than.
        let mut values = Vec::with_capacity(self.bins.len());
        for (index, (bin, row)) in self.bins.iter().zip(self.bin_rows).enumerate() {
            if bin.limit == Some(0) {
                values.push(0.0);
                continue;
            }
            let cost = if free { 0.0 } else { bin.cost as f64 };
            let price = cost - row.map_or(0.0, |row| dual(row).min(0.0));
            let least = price * (1.0 + WORTH) + 1e-9 * self.scale;
            values.push(match knapsack.best(bin.capacity, least, effort) {
                Some(best) => {
                    let value =
                        if best.exact { best.value } else { knapsack.bound(0, bin.capacity) };
                    cuts.push(Cut { bin: index, counts: best.counts });
                    value
                }
                None if !effort.is_spent() => least,
                None => knapsack.bound(0, bin.capacity),
            });
        }
        let mut share = 1.0_f64;
        for (bin, value) in self.bins.iter().zip(&values) {
            if bin.limit.is_none() && *value > bin.cost as f64 && !free {
                share = share.min(bin.cost as f64 / value);
            }
        }
        prices.iter_mut().for_each(|price| *price *= share);
        joint *= share;
        let mut bound = 0.0;
        let mut groups = Vec::new();
        let open = self.groups.iter().enumerate().filter(|(_, group)| group.count > 0);
        for (index, group) in open {
            let nodes = self.field.ways[group.way].nodes.len();
            effort.spend(if group.size == 1 { nodes * nodes } else { 2 * nodes * nodes * nodes });
            match group.cheapest(self.field, Prices { pieces: &prices, joint }) {
                Some((cost, paths)) => {
                    bound += cost * f64::from(group.count);
                    groups.push((index, paths));
                }
                None => bound = f64::INFINITY,
            }
        }
        let fixed = prices.iter().zip(self.fixed);
        bound += fixed.map(|(price, count)| price * f64::from(*count)).sum::<f64>();
        for (bin, value) in self.bins.iter().zip(&values) {
            if let Some(limit) = bin.limit {
                bound -= (value * share - bin.cost as f64).max(0.0) * f64::from(limit);
            }
        }
        Asked { line: Line { start: bound, joint }, cuts, groups }
    }

    /// Adds what saves something at the program's own duals; false where nothing does.
    fn take(
        &self,
        asked: Asked,
        duals: &[f64],
        free: bool,
        program: &mut Program,
        columns: &mut Vec<Column>,
        layouts: &mut Vec<Layout>,
    ) -> bool {
        let before = program.columns();
        let kinds = self.field.weights.len();
        for cut in asked.cuts {
            let bin = &self.bins[cut.bin];
            let cost = if free { 0.0 } else { bin.cost as f64 / self.scale };
            let row = self.bin_rows[cut.bin];
            let price = cost - row.map_or(0.0, |row| duals[row].min(0.0));
            let worth: f64 =
                cut.counts.iter().map(|&(kind, count)| duals[kind] * f64::from(count)).sum();
            if worth > price * (1.0 + WORTH) + 1e-9 {
                push_cut(program, columns, &cut, row, bin.cost as f64 / self.scale);
            }
        }
        let joint =
            (-duals[kinds + self.groups.len()]).max(0.0) + if free { 0.0 } else { JOINT_COST };
        for (index, paths) in asked.groups {
            let way = self.groups[index].way;
            let mut cost = 0.0;
            for (path, times) in &paths {
                let layout = self.field.layout(way, path.clone());
                let pieces = layout.pieces.iter();
                let pieces: f64 =
                    pieces.map(|&(kind, count)| duals[kind].max(0.0) * f64::from(count)).sum();
                let joints = joint * layout.joints_mm.len() as f64;
                cost += (pieces + joints) * f64::from(*times);
            }
            if cost < duals[kinds + index] * (1.0 - WORTH) - 1e-9 {
                push_group(self.field, program, columns, layouts, index, way, paths);
            }
        }
        program.columns() > before
    }
}

/// A bound that falls with the number of joints.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Line {
    start: f64,
    joint: f64,
}

impl Line {
    /// No layouts with at most so many joints cost less.
    pub(super) fn at(&self, joints: u32) -> f64 {
        self.start - self.joint * f64::from(joints)
    }
}

fn push_cut(
    program: &mut Program,
    columns: &mut Vec<Column>,
    cut: &Cut,
    bin_row: Option<usize>,
    cost: f64,
) {
    let pieces = cut.counts.iter().map(|&(kind, count)| (kind, f64::from(count)));
    program.push(cost, pieces.chain(bin_row.map(|row| (row, 1.0))));
    columns.push(Column::Cut);
}

fn push_group(
    field: &Field,
    program: &mut Program,
    columns: &mut Vec<Column>,
    layouts: &mut Vec<Layout>,
    index: usize,
    way: usize,
    paths: Paths,
) {
    let mut taken: Vec<(usize, u32)> = Vec::new();
    let mut pieces: Vec<(usize, f64)> = Vec::new();
    let mut joints = 0.0;
    for (path, times) in paths {
        let layout = field.layout(way, path);
        for &(kind, count) in &layout.pieces {
            let count = -f64::from(count * times);
            match pieces.iter_mut().find(|(known, _)| *known == kind) {
                Some((_, sum)) => *sum += count,
                None => pieces.push((kind, count)),
            }
        }
        joints += (layout.joints_mm.len() as f64) * f64::from(times);
        let known = layouts.iter().position(|known| *known == layout);
        taken.push((known.unwrap_or(layouts.len()), times));
        if known.is_none() {
            layouts.push(layout);
        }
    }
    let kinds = field.weights.len();
    // The groups' rows follow the kinds', the joints' row follows them; both are known from the program's own shape.
    let joint_row = kinds + columns_groups(program, kinds);
    program.push(
        JOINT_COST * joints,
        pieces.into_iter().chain([(kinds + index, 1.0), (joint_row, joints)]),
    );
    columns.push(Column::Group(index, taken));
}

/// How many groups' rows there are: the joints' row is the first that is no `AtLeast`.
fn columns_groups(program: &Program, kinds: usize) -> usize {
    program.rows[kinds..].iter().take_while(|row| matches!(row, Row::AtLeast(_))).count()
}

/// All kinds of piece at their worth, as many as a stock length takes.
fn knapsack(field: &Field, bins: &[Bin], prices: &[f64]) -> Knapsack {
    let widest = bins.iter().map(|bin| bin.capacity).max().unwrap_or(0);
    let items = field.weights.iter().zip(prices).enumerate();
    let item = |(kind, (&weight, &value)): (usize, (&i64, &f64))| Item {
        kind,
        weight,
        value,
        count: u32::try_from(widest / weight).unwrap_or(0),
    };
    Knapsack::new(items.map(item).collect())
}
