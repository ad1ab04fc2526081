//! Plans that were made before: a project is worked out again at every change of its body or its units, and equal tasks have equal
//! plans, so none is searched for twice.

use std::cell::RefCell;
use std::collections::VecDeque;

use crate::carpentry::cut_stock::{CutError, CutPlan, CutTask, plan};

/// Plans are kept while they have no more pieces and ways of cutting than this in all, some ten megabytes; then the oldest go.
const MOST_KEPT: usize = 400_000;

struct Known {
    task: CutTask,
    result: Result<CutPlan, CutError>,
    size: usize,
}

thread_local! {
    static KNOWN: RefCell<VecDeque<Known>> = const { RefCell::new(VecDeque::new()) };
}

/// As `plan`, taking over what an equal task came to.
///
/// # Errors
/// As `plan`.
pub fn plan_once(task: CutTask) -> Result<CutPlan, CutError> {
    let known = KNOWN.with_borrow(|known| {
        known.iter().rev().find(|one| one.task == task).map(|one| one.result.clone())
    });
    known.unwrap_or_else(|| {
        let result = plan(&task);
        keep(task, result.clone());
        result
    })
}

/// Drops all plans, so that the time of making them can be measured.
pub fn forget_plans() {
    KNOWN.with_borrow_mut(VecDeque::clear);
}

fn keep(task: CutTask, result: Result<CutPlan, CutError>) {
    let placed = result.as_ref().map_or(0, |plan| {
        plan.patterns.iter().map(|pattern| 4 + pattern.pieces.len()).sum::<usize>()
    });
    let size = 8 + task.pieces.len() + task.stock.len() + placed;
    KNOWN.with_borrow_mut(|known| {
        known.push_back(Known { task, result, size });
        let mut all: usize = known.iter().map(|one| one.size).sum();
        while all > MOST_KEPT {
            let Some(oldest) = known.pop_front() else { break };
            all -= oldest.size;
        }
    });
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::carpentry::cut_stock::{Piece, Stock};

    fn task(length_mm: f64, pieces: usize) -> CutTask {
        let stock = Stock { length_mm: 2400.0, price: None, on_hand: 0, available: None };
        let piece = |label| Piece { label, length_mm: length_mm + label as f64, count: 1 };
        CutTask {
            pieces: (0..pieces).map(piece).collect(),
            stock: vec![stock],
            kerf_mm: 3.0,
            end_trim_mm: 0.0,
            effort: 1000,
        }
    }

    #[test]
    fn an_equal_task_is_planned_once_and_another_anew() {
        forget_plans();
        for length in [500.0, 700.0, 500.0, 3000.0, 3000.0] {
            assert_eq!(plan_once(task(length, 3)), plan(&task(length, 3)));
        }
        assert_eq!(KNOWN.with_borrow(VecDeque::len), 3);
        let other = CutTask { effort: 2000, ..task(500.0, 3) };
        assert_eq!(plan_once(other.clone()), plan(&other));
        assert_eq!(KNOWN.with_borrow(VecDeque::len), 4);
    }

    #[test]
    fn the_oldest_plans_go_when_there_are_too_many() {
        forget_plans();
        for number in 0..250 {
            keep(task(10.0 + f64::from(number), 2000), Err(CutError::NoStock));
        }
        let size: usize = KNOWN.with_borrow(|known| known.iter().map(|one| one.size).sum());
        assert!(size <= MOST_KEPT && size > MOST_KEPT / 2, "{size}");
        let last = task(10.0 + 249.0, 2000);
        assert!(KNOWN.with_borrow(|known| known.back().is_some_and(|one| one.task == last)));
    }
}
