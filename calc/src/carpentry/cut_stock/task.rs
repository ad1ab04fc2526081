//! From a cut task to the planner's whole numbers, with every check of what was given.

use super::error::CutError;
use super::knapsack::greatest_common_divisor;
use super::model::{Bin, Model};
use super::{CutTask, LONGEST_MM, MOST_PIECES, MOST_STOCK, SHORTEST_MM, Stock};
use crate::sorting::sort_by;

const NANOMETRES_PER_MM: f64 = 1e6;
const HIGHEST_PRICE: f64 = 1e6;
const WIDEST_KERF_MM: f64 = 100.0;
/// A piece that is too long by this part of the stock length still fits.
const LENGTH_SLACK: f64 = 1e-6;

/// The task in whole numbers and the way back.
#[derive(Debug)]
pub(in crate::carpentry) struct Grid {
    pub model: Model,
    /// Stock index of each bin, and whether the bin is on hand.
    pub bins: Vec<(usize, bool)>,
    /// Pieces of each kind: indexes into the task's pieces.
    pub kinds: Vec<Vec<usize>>,
    /// One step of the model's cost in parts, and how many parts make one unit of money or mm.
    step: (i64, f64),
    pub priced: bool,
    kerf: i64,
    needed_mm: f64,
    stock_mm: f64,
}

impl Grid {
    pub(in crate::carpentry) fn new(task: &CutTask) -> Result<Self, CutError> {
        check(task)?;
        let kerf = nanometres(task.kerf_mm);
        let trim = nanometres(task.end_trim_mm);
        let priced = task.stock.iter().any(|stock| stock.price.is_some() && can_be_bought(stock));
        let (prices, step) = prices(task, priced);

        let mut bins = Vec::new();
        let mut model_bins = Vec::new();
        let mut longest = 0.0_f64;
        let mut some = false;
        for (index, stock) in task.stock.iter().enumerate() {
            let length = nanometres(stock.length_mm);
            let slack = (length as f64 * LENGTH_SLACK) as i64;
            let capacity = length - trim + kerf + slack;
            let mut bin = |on_hand: bool, cost: i64, limit: Option<u32>| {
                bins.push((index, on_hand));
                model_bins.push(Bin { capacity, length, cost, limit });
            };
            if stock.on_hand == 0 && !can_be_bought(stock) {
                continue;
            }
            some = true;
            longest = longest.max(stock.length_mm - task.end_trim_mm);
            if capacity <= 0 {
                continue;
            }
            if stock.on_hand > 0 {
                bin(true, 0, Some(stock.on_hand));
            }
            if can_be_bought(stock) {
                bin(false, prices[index], stock.available);
            }
        }
        if !some {
            return Err(CutError::NoStock);
        }

        let widest = model_bins.iter().map(|bin| bin.capacity).max().unwrap_or(0);
        let mut order: Vec<(i64, usize)> = Vec::new();
        for (index, piece) in task.pieces.iter().enumerate().filter(|(_, piece)| piece.count > 0) {
            let weight = nanometres(piece.length_mm) + kerf;
            if weight > widest {
                return Err(CutError::PieceTooLong {
                    piece: index,
                    length_mm: piece.length_mm,
                    longest_mm: longest.max(0.0),
                });
            }
            order.push((weight, index));
        }
        sort_by(&mut order, |a, b| b.0.cmp(&a.0).then(a.1.cmp(&b.1)));
        let mut model = Model { weights: Vec::new(), demand: Vec::new(), bins: model_bins };
        let mut kinds: Vec<Vec<usize>> = Vec::new();
        for (weight, index) in order {
            let count = task.pieces[index].count;
            match (model.weights.last(), model.demand.last_mut(), kinds.last_mut()) {
                (Some(&last), Some(demand), Some(pieces)) if last == weight => {
                    *demand += count;
                    pieces.push(index);
                }
                _ => {
                    model.weights.push(weight);
                    model.demand.push(count);
                    kinds.push(vec![index]);
                }
            }
        }
        let needed_mm =
            task.pieces.iter().map(|piece| piece.length_mm * f64::from(piece.count)).sum();
        let stock_mm = task
            .stock
            .iter()
            .map(|stock| {
                let bought = f64::from(stock.available.unwrap_or(0));
                stock.length_mm * (f64::from(stock.on_hand) + bought)
            })
            .sum();
        Ok(Self { model, bins, kinds, step, priced, kerf, needed_mm, stock_mm })
    }

    /// A cost of the model in money, or in mm where nothing is priced.
    pub(in crate::carpentry) fn cost(&self, steps: i64) -> f64 {
        steps.saturating_mul(self.step.0) as f64 / self.step.1
    }

    /// A cost in steps of the model, rounded.
    pub(in crate::carpentry) fn steps(&self, cost: f64) -> i64 {
        (cost * self.step.1 / self.step.0 as f64 - 1e-6).ceil() as i64
    }

    /// The kind of piece of this length, to within two micrometres.
    pub(in crate::carpentry) fn kind(&self, length_mm: f64) -> Option<usize> {
        let weight = nanometres(length_mm) + self.kerf;
        let off = |kind: &usize| (self.model.weights[*kind] - weight).abs();
        let nearest = (0..self.model.weights.len()).min_by_key(off)?;
        (off(&nearest) <= 2_000).then_some(nearest)
    }

    pub(in crate::carpentry) fn not_enough(&self) -> CutError {
        CutError::NotEnoughStock { needed_mm: self.needed_mm, stock_mm: self.stock_mm }
    }
}

fn can_be_bought(stock: &Stock) -> bool {
    stock.available != Some(0)
}

fn nanometres(length_mm: f64) -> i64 {
    (length_mm * NANOMETRES_PER_MM).round() as i64
}

fn check(task: &CutTask) -> Result<(), CutError> {
    let pieces: u64 = task.pieces.iter().map(|piece| u64::from(piece.count)).sum();
    if pieces > u64::from(MOST_PIECES) {
        return Err(CutError::TooManyPieces { pieces });
    }
    if task.stock.len() > MOST_STOCK {
        return Err(CutError::TooMuchStock { stock: task.stock.len() });
    }
    if task.stock.is_empty() {
        return Err(CutError::NoStock);
    }
    if !(0.0..=WIDEST_KERF_MM).contains(&task.kerf_mm) {
        return Err(CutError::Kerf { kerf_mm: task.kerf_mm });
    }
    if !(0.0..=LONGEST_MM).contains(&task.end_trim_mm) {
        return Err(CutError::EndTrim { end_trim_mm: task.end_trim_mm });
    }
    for (piece, &super::Piece { length_mm, .. }) in task.pieces.iter().enumerate() {
        if !(SHORTEST_MM..=LONGEST_MM).contains(&length_mm) {
            return Err(CutError::PieceLength { piece, length_mm });
        }
    }
    let priced = task.stock.iter().any(|stock| stock.price.is_some() && can_be_bought(stock));
    for (index, stock) in task.stock.iter().enumerate() {
        if !(SHORTEST_MM..=LONGEST_MM).contains(&stock.length_mm) {
            return Err(CutError::StockLength { stock: index, length_mm: stock.length_mm });
        }
        match stock.price {
            Some(price) if !(0.0..=HIGHEST_PRICE).contains(&price) => {
                return Err(CutError::Price { stock: index, price });
            }
            None if priced && can_be_bought(stock) => {
                return Err(CutError::PriceMissing { stock: index });
            }
            _ => {}
        }
    }
    Ok(())
}

/// Price of each stock length in whole steps, and the worth of a step: the greatest that divides all prices, down to a
/// millionth. Where nothing is priced, lengths take the prices' place.
fn prices(task: &CutTask, priced: bool) -> (Vec<i64>, (i64, f64)) {
    let values: Vec<f64> = task
        .stock
        .iter()
        .map(|stock| if priced { stock.price.unwrap_or(0.0) } else { stock.length_mm })
        .collect();
    let parts = if priced {
        let whole = |parts: f64| {
            values.iter().all(|value| (value * parts - (value * parts).round()).abs() < 1e-6)
        };
        [1.0, 100.0, 10_000.0].into_iter().find(|&parts| whole(parts)).unwrap_or(NANOMETRES_PER_MM)
    } else {
        NANOMETRES_PER_MM
    };
    let mut steps: Vec<i64> = values.iter().map(|value| (value * parts).round() as i64).collect();
    let used = task.stock.iter().zip(&steps).filter(|(stock, _)| can_be_bought(stock));
    let divisor = used.fold(0, |divisor, (_, &step)| greatest_common_divisor(divisor, step)).max(1);
    for step in &mut steps {
        *step /= divisor;
    }
    (steps, (divisor, parts))
}
