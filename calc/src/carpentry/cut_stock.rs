//! Cut plans: pieces from stock lengths at the least cost, with a bound that no plan can beat.

mod dive;
mod error;
mod greedy;
mod inverse;
pub(super) mod knapsack;
pub(super) mod ladder;
pub(super) mod layout;
mod mixes;
pub(super) mod model;
pub(super) mod program;
pub(super) mod refine;
mod relax;
mod search;
pub(super) mod simplex;
pub(super) mod solve;
pub(super) mod task;

pub use error::CutError;

use crate::source::Source;
use crate::words::stock as words;

/// Patterns and their linear program.
pub static PATTERNS: Source = Source::from_memory(
    "Gilmore and Gomory, A Linear Programming Approach to the Cutting-Stock Problem, Operations Research",
    "9 (1961) and 11 (1963)",
);

/// A kerf lies between two pieces, so n pieces lose n - 1 kerfs.
pub static KERF_RULE: Source = Source::identity_of(words::SOURCE_KERF);

/// The most pieces one plan takes.
pub const MOST_PIECES: u32 = 2_000;
/// The most different stock lengths one plan takes.
pub const MOST_STOCK: usize = 50;
/// Work that is worth a quarter of a second on a present desk machine, in steps of about one multiplication.
pub const USUAL_EFFORT: u64 = 150_000_000;
/// With less effort than this a plan is only made for its cost: waste and number of patterns are left as they come.
pub const LEAST_REFINED_EFFORT: u64 = 100_000;
/// Widest saw cut. [mm]
pub const WIDEST_KERF_MM: f64 = 100.0;
/// Longest piece or stock length. [mm]
pub const LONGEST_MM: f64 = 1_000_000.0;
/// Shortest piece. [mm]
pub const SHORTEST_MM: f64 = 0.01;

/// Equal pieces that are wanted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Piece {
    /// What the piece is for: an index into the caller's own labels.
    pub label: usize,
    /// Finished length. [mm]
    pub length_mm: f64,
    /// How many; none is allowed.
    pub count: u32,
}

/// One stock length.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stock {
    /// Length as it is bought. [mm]
    pub length_mm: f64,
    /// Price of one; all stock that can be bought has one, or none has.
    pub price: Option<f64>,
    /// So many are here already and cost nothing.
    pub on_hand: u32,
    /// The most that can be bought; `None`: as many as are wanted.
    pub available: Option<u32>,
}

/// What is to be cut from what.
#[derive(Clone, Debug, PartialEq)]
pub struct CutTask {
    /// Pieces wanted.
    pub pieces: Vec<Piece>,
    /// Stock lengths to cut them from.
    pub stock: Vec<Stock>,
    /// Width of the saw cut. [mm]
    pub kerf_mm: f64,
    /// Taken off each stock length in all, before cutting. [mm]
    pub end_trim_mm: f64,
    /// Work to spend before the best plan so far is given with its bound; usually [`USUAL_EFFORT`].
    pub effort: u64,
}

/// A piece in its place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlacedPiece {
    /// The label of the piece that was asked for.
    pub label: usize,
    /// Finished length. [mm]
    pub length_mm: f64,
}

/// One way to cut a stock length.
#[derive(Clone, Debug, PartialEq)]
pub struct Pattern {
    /// Index of the stock length.
    pub stock: usize,
    /// How many lengths are cut this way.
    pub count: u32,
    /// Pieces in cutting order, longest first.
    pub pieces: Vec<PlacedPiece>,
    /// Stock length less pieces and kerfs: end trim and offcut of one length. A kerf is lost between two pieces and between the
    /// last piece and an offcut; a piece that ends flush with the stock costs none. [mm]
    pub waste_mm: f64,
    /// The part of the waste that is one usable piece: waste less end trim. [mm]
    pub offcut_mm: f64,
}

/// A cut plan.
#[derive(Clone, Debug, PartialEq)]
pub struct CutPlan {
    /// Ways of cutting, by stock length, then longest piece first.
    pub patterns: Vec<Pattern>,
    /// How many of each stock length are bought.
    pub bought: Vec<u32>,
    /// How many of each stock length that are here already are used.
    pub on_hand_used: Vec<u32>,
    /// Price of what is bought; the length bought in mm where no price is given.
    pub cost: f64,
    /// True when `cost` and `bound` are money, false when they are mm.
    pub priced: bool,
    /// Waste of all lengths used. [mm]
    pub waste_mm: f64,
    /// No plan can cost less, in the same terms as `cost`.
    pub bound: f64,
    /// True when the cost is proved to be the least; waste and number of patterns are lowered after that, without proof.
    pub proved: bool,
}

/// The plan of least cost; among equal ones, of little waste and few patterns.
///
/// Lengths are taken to the nearest nanometre: a 1/128 inch and a 0.05 mm are both within half of one. A stock length takes its
/// pieces when they are too long by no more than a millionth of it. Equal tasks give equal plans on every machine.
///
/// # Errors
/// [`CutError`] where a number is out of range, a piece is longer than every stock length, or the stock does not suffice.
pub fn plan(task: &CutTask) -> Result<CutPlan, CutError> {
    let grid = task::Grid::new(task)?;
    if grid.model.weights.is_empty() {
        return Ok(layout::lay_out(task, &grid, &Vec::new(), 0));
    }
    let mut effort = model::Effort::new(task.effort);
    let mut solved = solve::solve(&grid.model, &mut effort).map_err(|failed| match failed {
        solve::Failed::Impossible => grid.not_enough(),
        solve::Failed::NotFound => CutError::NoPlanFound,
    })?;
    if task.effort >= LEAST_REFINED_EFFORT {
        refine::refine(&grid.model, &mut solved.packing, &mut effort);
    }
    Ok(layout::lay_out(task, &grid, &solved.packing, solved.bound))
}

/// The plan of known ways of cutting, with the labels of `task`: the same lengths in the same numbers, whatever they are called.
///
/// # Errors
/// As [`plan`]'s; [`CutError::NoPlanFound`] where the pieces are not the same.
pub fn follow(task: &CutTask, known: &CutPlan) -> Result<CutPlan, CutError> {
    let grid = task::Grid::new(task)?;
    let mut here = known.on_hand_used.clone();
    let mut left = grid.model.demand.clone();
    let mut packing = model::Packing::new();
    for pattern in &known.patterns {
        let mut counts: Vec<(usize, u32)> = Vec::new();
        for piece in &pattern.pieces {
            let kind = grid.kind(piece.length_mm).ok_or(CutError::NoPlanFound)?;
            match counts.iter_mut().find(|(known, _)| *known == kind) {
                Some((_, count)) => *count += 1,
                None => counts.push((kind, 1)),
            }
        }
        crate::sorting::sort(&mut counts);
        for &(kind, count) in &counts {
            let rest = left[kind].checked_sub(count.saturating_mul(pattern.count));
            left[kind] = rest.ok_or(CutError::NoPlanFound)?;
        }
        // What is here is used first; the plan says how many.
        let on_hand = here.get(pattern.stock).copied().unwrap_or(0).min(pattern.count);
        if let Some(rest) = here.get_mut(pattern.stock) {
            *rest -= on_hand;
        }
        for (is_here, times) in [(true, on_hand), (false, pattern.count - on_hand)] {
            let bin = grid.bins.iter().position(|bin| *bin == (pattern.stock, is_here));
            if times > 0 {
                let bin = bin.ok_or(CutError::NoPlanFound)?;
                model::add(&mut packing, model::Cut { bin, counts: counts.clone() }, times);
            }
        }
    }
    if left.iter().any(|count| *count > 0) {
        return Err(CutError::NoPlanFound);
    }
    Ok(layout::lay_out(task, &grid, &packing, grid.steps(known.bound)))
}
