//! Cut plans against solved instances and against looking at every plan.
#![allow(clippy::unwrap_used)]

use calc::carpentry::cut_stock::{CutError, CutPlan, CutTask, Piece, Stock, USUAL_EFFORT, plan};
use proptest::prelude::*;
use serde_json::Value;

/// A task from a solved instance, lengths in its own unit as mm.
fn instance(text: &str) -> (CutTask, f64, f64) {
    let value: Value = serde_json::from_str(text).unwrap();
    let number = |value: &Value| value.as_f64().unwrap();
    let pieces = value["pieces"].as_array().unwrap().iter().enumerate();
    let stock = value["stock"].as_array().unwrap().iter();
    let task = CutTask {
        pieces: pieces
            .map(|(label, piece)| Piece {
                label,
                length_mm: number(&piece["length"]),
                count: piece["count"].as_u64().unwrap() as u32,
            })
            .collect(),
        stock: stock
            .map(|stock| Stock {
                length_mm: number(&stock["length"]),
                price: stock["price"].as_f64(),
                on_hand: 0,
                available: stock["available"].as_u64().map(|count| count as u32),
            })
            .collect(),
        kerf_mm: number(&value["kerf"]),
        end_trim_mm: number(&value["end_trim"]),
        effort: USUAL_EFFORT,
    };
    (task, number(&value["least_cost"]), number(&value["linear_bound"]))
}

/// Checks a plan piece by piece against its task.
fn check(task: &CutTask, plan: &CutPlan) {
    let mut left: Vec<i64> = task.pieces.iter().map(|piece| i64::from(piece.count)).collect();
    let mut used = vec![0; task.stock.len()];
    let mut waste = 0.0;
    for pattern in &plan.patterns {
        let stock = task.stock[pattern.stock];
        used[pattern.stock] += pattern.count;
        assert!(pattern.count > 0 && !pattern.pieces.is_empty());
        let mut total = 0.0;
        for piece in &pattern.pieces {
            let asked = task.pieces.iter().position(|p| p.label == piece.label).unwrap();
            assert_eq!(task.pieces[asked].length_mm, piece.length_mm);
            left[asked] -= i64::from(pattern.count);
            total += piece.length_mm;
        }
        assert!(pattern.pieces.windows(2).all(|pair| pair[0].length_mm >= pair[1].length_mm));
        let between = (pattern.pieces.len() - 1) as f64 * task.kerf_mm;
        let rest = stock.length_mm - task.end_trim_mm - total - between;
        assert!(rest >= -1.01e-6 * stock.length_mm, "too long by {rest}");
        let offcut = (rest - task.kerf_mm).max(0.0);
        assert!((pattern.offcut_mm - offcut).abs() < 2e-3);
        assert!((pattern.waste_mm - offcut - task.end_trim_mm).abs() < 2e-3);
        waste += pattern.waste_mm * f64::from(pattern.count);
    }
    assert!(left.iter().all(|&left| left == 0), "pieces left over or cut twice: {left:?}");
    assert!((plan.waste_mm - waste).abs() < 1e-6 * (1.0 + waste));
    let mut cost = 0.0;
    for (index, stock) in task.stock.iter().enumerate() {
        assert_eq!(plan.bought[index] + plan.on_hand_used[index], used[index]);
        assert!(plan.on_hand_used[index] <= stock.on_hand);
        assert!(stock.available.is_none_or(|most| plan.bought[index] <= most));
        let price = if plan.priced { stock.price.unwrap_or(0.0) } else { stock.length_mm };
        cost += price * f64::from(plan.bought[index]);
    }
    assert!((plan.cost - cost).abs() < 1e-6 * (1.0 + cost), "{} is not {cost}", plan.cost);
    assert!(plan.bound <= plan.cost + 1e-9);
    assert_eq!(plan.proved, plan.bound >= plan.cost - 1e-9);
}

macro_rules! solved {
    ($($name:ident)+) => { $(
        #[test]
        fn $name() {
            let text = include_str!(concat!("../../shared/cutstock/", stringify!($name), ".json"));
            let (task, least_cost, linear_bound) = instance(text);
            let plan = plan(&task).unwrap();
            check(&task, &plan);
            assert_eq!(plan.cost, least_cost);
            assert!(plan.proved);
            assert!(plan.bound >= linear_bound - 1e-3);
        }
    )+ };
}

solved! { m01_battens m04_gap_instance us01_kerf_matters us02_zero_kerf us03_furring_2x4 us05_trim_and_kerf }

fn pieces(lengths: &[(f64, u32)]) -> Vec<Piece> {
    let pieces = lengths.iter().enumerate();
    pieces.map(|(label, &(length_mm, count))| Piece { label, length_mm, count }).collect()
}

fn stock(length_mm: f64, price: Option<f64>) -> Stock {
    Stock { length_mm, price, on_hand: 0, available: None }
}

fn task(lengths: &[(f64, u32)], stock: Vec<Stock>, kerf_mm: f64) -> CutTask {
    CutTask { pieces: pieces(lengths), stock, kerf_mm, end_trim_mm: 0.0, effort: USUAL_EFFORT }
}

#[test]
fn a_kerf_keeps_two_four_foot_pieces_out_of_an_eight_foot_board() {
    let boards = vec![stock(96.0 * 25.4, Some(7.0))];
    let mut task = task(&[(48.0 * 25.4, 2)], boards, 0.125 * 25.4);
    assert_eq!(plan(&task).unwrap().bought, [2]);
    task.kerf_mm = 0.0;
    let flush = plan(&task).unwrap();
    check(&task, &flush);
    assert_eq!((flush.bought[0], flush.waste_mm), (1, 0.0));
}

#[test]
fn a_piece_flush_with_the_end_costs_no_kerf() {
    let boards = vec![stock(2403.0, Some(7.0))];
    let task = task(&[(1200.0, 2)], boards, 3.0);
    let plan = plan(&task).unwrap();
    check(&task, &plan);
    assert_eq!((plan.bought[0], plan.waste_mm), (1, 0.0));
}

#[test]
fn what_is_on_hand_is_used_before_anything_is_bought() {
    let mut boards = vec![stock(2400.0, Some(5.4)), stock(3600.0, Some(7.75))];
    boards[1].on_hand = 2;
    let task = task(&[(1150.0, 7)], boards, 3.0);
    let plan = plan(&task).unwrap();
    check(&task, &plan);
    // Three pieces from each length on hand, the seventh from the cheapest bought one.
    assert_eq!((plan.on_hand_used[1], plan.bought[0], plan.bought[1]), (2, 1, 0));
    assert_eq!((plan.cost, plan.proved), (5.4, true));
}

#[test]
fn without_prices_the_cost_is_the_length_bought() {
    let boards = vec![stock(2400.0, None), stock(3000.0, None)];
    let task = task(&[(1450.0, 2), (900.0, 2)], boards, 3.0);
    let plan = plan(&task).unwrap();
    check(&task, &plan);
    assert_eq!((plan.cost, plan.priced, plan.proved), (4800.0, false, true));
}

#[test]
fn equal_lengths_keep_their_labels() {
    let boards = vec![stock(2400.0, Some(5.0))];
    let task = task(&[(790.0, 4), (790.0, 5)], boards, 3.0);
    let plan = plan(&task).unwrap();
    check(&task, &plan);
    assert_eq!(plan.bought, [3]);
}

#[test]
fn wrong_tasks_say_what_is_wrong() {
    let board = stock(2400.0, Some(5.0));
    let good = task(&[(790.0, 4)], vec![board], 3.0);
    assert!(plan(&good).is_ok());
    let fault = |change: &dyn Fn(&mut CutTask)| {
        let mut task = good.clone();
        change(&mut task);
        plan(&task).unwrap_err()
    };
    assert_eq!(fault(&|t| t.stock.clear()), CutError::NoStock);
    assert_eq!(
        fault(&|t| t.pieces[0].length_mm = 2400.1),
        CutError::PieceTooLong { piece: 0, length_mm: 2400.1, longest_mm: 2400.0 }
    );
    assert_eq!(fault(&|t| t.pieces[0].count = 2001), CutError::TooManyPieces { pieces: 2001 });
    assert!(matches!(fault(&|t| t.kerf_mm = -1.0), CutError::Kerf { .. }));
    assert!(matches!(fault(&|t| t.end_trim_mm = f64::NAN), CutError::EndTrim { .. }));
    assert!(matches!(fault(&|t| t.pieces[0].length_mm = 0.0), CutError::PieceLength { .. }));
    assert!(matches!(
        fault(&|t| t.stock[0].length_mm = f64::INFINITY),
        CutError::StockLength { .. }
    ));
    assert!(matches!(fault(&|t| t.stock[0].price = Some(-2.0)), CutError::Price { .. }));
    assert_eq!(fault(&|t| t.stock.push(stock(3000.0, None))), CutError::PriceMissing { stock: 1 });
    let short = fault(&|t| t.stock[0].available = Some(1));
    assert_eq!(short, CutError::NotEnoughStock { needed_mm: 3160.0, stock_mm: 2400.0 });
    assert_eq!(
        short.to_string(),
        "the pieces take 3160 mm in all and cannot be cut from the 2400 mm on hand and for sale; allow more lengths"
    );
}

#[test]
fn of_equal_costs_the_shorter_stock_is_taken() {
    let boards = vec![stock(2400.0, Some(5.0)), stock(3000.0, Some(5.0))];
    let task = task(&[(1000.0, 4)], boards, 3.0);
    let plan = plan(&task).unwrap();
    check(&task, &plan);
    assert_eq!((plan.bought.as_slice(), plan.cost), ([2, 0].as_slice(), 10.0));
}

#[test]
fn equal_boards_are_cut_alike() {
    let boards = vec![stock(2400.0, Some(5.0))];
    let task = task(&[(1150.0, 4), (550.0, 4), (500.0, 4)], boards, 3.0);
    let plan = plan(&task).unwrap();
    check(&task, &plan);
    assert!(plan.patterns.len() <= 2, "{:?}", plan.patterns);
}

/// No common divisor of lengths or prices to round a bound up to.
#[test]
fn odd_lengths_and_prices_are_proved_too() {
    for price in [None, Some(3.333_333)] {
        let boards = vec![
            stock(2_400.000_001, price),
            stock(3_000.000_013, price.map(|price| price * 1.234_567)),
        ];
        let lengths = [(1199.3, 5), (871.117, 6), (455.55, 9), (1433.01, 3)];
        let task = task(&lengths, boards, 2.9);
        let plan = plan(&task).unwrap();
        check(&task, &plan);
        assert!(plan.proved, "{} but no less than {}", plan.cost, plan.bound);
    }
}

/// Three kinds of many short pieces: deep plans, few of them different.
#[test]
fn as_many_pieces_as_are_allowed_get_a_plan() {
    let boards = vec![stock(2400.0, Some(5.4)), stock(3600.0, Some(7.75))];
    let mut task = task(&[(410.0, 700), (333.0, 650), (275.0, 650)], boards, 3.0);
    task.effort = 3_000_000;
    let plan = plan(&task).unwrap();
    check(&task, &plan);
    assert!((plan.cost - plan.bound) / plan.cost < 0.01);
}

#[test]
fn stock_shorter_than_its_end_trim_is_left_alone() {
    let boards = vec![stock(5.0, Some(0.1)), stock(2400.0, Some(5.4))];
    let mut task = task(&[(700.0, 4), (20.0, 3)], boards, 3.0);
    task.end_trim_mm = 60.0;
    let found = plan(&task).unwrap();
    check(&task, &found);
    assert_eq!(found.bought, [0, 2]);
    task.stock.pop();
    let longest_mm = 0.0;
    assert_eq!(plan(&task), Err(CutError::PieceTooLong { piece: 0, length_mm: 700.0, longest_mm }));
}

#[test]
fn no_pieces_need_no_stock() {
    let task = task(&[(790.0, 0)], vec![stock(2400.0, Some(5.0))], 3.0);
    let plan = plan(&task).unwrap();
    assert_eq!((plan.patterns.len(), plan.cost, plan.proved), (0, 0.0, true));
}

/// The least cost by looking at every way to share the pieces out; `None` where there is none.
fn by_looking_at_all(
    task: &CutTask,
    pieces: &[f64],
    hand: &mut [u32],
    bought: &mut [u32],
) -> Option<f64> {
    let Some((&first, rest)) = pieces.split_first() else { return Some(0.0) };
    let priced = task.stock.iter().any(|stock| stock.price.is_some());
    let mut best: Option<f64> = None;
    for with in 0..1u32 << rest.len() {
        let chosen = |at: usize| with & (1 << at) != 0;
        let together: f64 = first
            + rest
                .iter()
                .enumerate()
                .filter(|(at, _)| chosen(*at))
                .map(|(_, l)| l + task.kerf_mm)
                .sum::<f64>();
        let others: Vec<f64> =
            rest.iter().enumerate().filter(|(at, _)| !chosen(*at)).map(|(_, &l)| l).collect();
        for (index, stock) in task.stock.iter().enumerate() {
            if together > stock.length_mm - task.end_trim_mm + 1e-6 {
                continue;
            }
            let price = if priced { stock.price.unwrap_or(0.0) } else { stock.length_mm };
            if hand[index] < stock.on_hand {
                hand[index] += 1;
                let cost = by_looking_at_all(task, &others, hand, bought);
                hand[index] -= 1;
                best = [best, cost].into_iter().flatten().reduce(f64::min);
            } else if stock.available.is_none_or(|most| bought[index] < most) {
                bought[index] += 1;
                let cost = by_looking_at_all(task, &others, hand, bought).map(|cost| cost + price);
                bought[index] -= 1;
                best = [best, cost].into_iter().flatten().reduce(f64::min);
            }
        }
    }
    best
}

fn small_task() -> impl Strategy<Value = CutTask> {
    let piece = (10u32..70, 1u32..4);
    let stock = (50u32..130, 1u32..60, 0u32..3, prop::option::of(0u32..4));
    (
        prop::collection::vec(piece, 1..5),
        prop::collection::vec(stock, 1..4),
        0u32..4,
        0u32..6,
        any::<bool>(),
    )
        .prop_map(|(pieces, stock, kerf, trim, priced)| {
            let lengths: Vec<(f64, u32)> =
                pieces.iter().map(|&(length, count)| (f64::from(length), count)).collect();
            let stock = stock
                .iter()
                .map(|&(length, price, on_hand, available)| Stock {
                    length_mm: f64::from(length),
                    price: priced.then_some(f64::from(price) / 4.0),
                    on_hand: on_hand.saturating_sub(1),
                    available,
                })
                .collect();
            let mut task = task(&lengths, stock, f64::from(kerf));
            task.end_trim_mm = f64::from(trim);
            task
        })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 300, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn small_tasks_cost_what_looking_at_every_plan_finds(mut small in small_task()) {
        let mut pieces: Vec<f64> = small.pieces.iter()
            .flat_map(|piece| std::iter::repeat_n(piece.length_mm, piece.count as usize)).collect();
        pieces.truncate(7);
        small.pieces = pieces.iter().enumerate()
            .map(|(label, &length_mm)| Piece { label, length_mm, count: 1 }).collect();
        let kinds = small.stock.len();
        let expected = by_looking_at_all(&small, &pieces, &mut vec![0; kinds], &mut vec![0; kinds]);
        match (plan(&small), expected) {
            (Ok(plan), Some(cost)) => {
                check(&small, &plan);
                prop_assert!(plan.proved);
                prop_assert!((plan.cost - cost).abs() < 1e-9, "{} instead of {cost}", plan.cost);
            }
            (Err(error), None) => prop_assert!(matches!(
                error,
                CutError::NotEnoughStock { .. } | CutError::PieceTooLong { .. } | CutError::NoStock
            ), "{error}"),
            (got, expected) => prop_assert!(false, "{got:?} instead of {expected:?}"),
        }
    }

    #[test]
    fn any_numbers_give_a_plan_or_a_fault(
        lengths in prop::collection::vec((any::<f64>(), 0u32..3), 0..4),
        boards in prop::collection::vec((any::<f64>(), prop::option::of(any::<f64>()), 0u32..3), 0..3),
        kerf in any::<f64>(), trim in any::<f64>(),
    ) {
        let boards = boards.into_iter()
            .map(|(length_mm, price, on_hand)| Stock { length_mm, price, on_hand, available: None })
            .collect();
        let mut any = task(&lengths, boards, kerf);
        any.end_trim_mm = trim;
        if let Ok(plan) = plan(&any) {
            prop_assert!(plan.cost.is_finite() && plan.waste_mm.is_finite() && plan.bound.is_finite());
        }
    }
}

/// Every cut of one stock length, also those that leave room.
fn every_cut(task: &CutTask, room: f64, from: usize, cut: &mut Vec<u32>, cuts: &mut Vec<Vec<u32>>) {
    if from == task.pieces.len() {
        if cut.iter().any(|&count| count > 0) {
            cuts.push(cut.clone());
        }
        return;
    }
    let piece = task.pieces[from];
    for count in 0..=piece.count {
        let left = room - f64::from(count) * (piece.length_mm + task.kerf_mm);
        if left < -1e-6 {
            break;
        }
        cut.push(count);
        every_cut(task, left, from + 1, cut, cuts);
        cut.pop();
    }
}

/// Least cost by an integer program over every cut, solved by a general-purpose library.
fn by_integer_program(task: &CutTask) -> Option<f64> {
    use microlp::{ComparisonOp, OptimizationDirection, Problem};
    let mut problem = Problem::new(OptimizationDirection::Minimize);
    let mut made = vec![Vec::new(); task.pieces.len()];
    for stock in &task.stock {
        let mut cuts = Vec::new();
        let room = stock.length_mm - task.end_trim_mm + task.kerf_mm;
        every_cut(task, room, 0, &mut Vec::new(), &mut cuts);
        let bought = stock.available.map_or(1000, |most| most as i32);
        for (price, most) in [(0.0, stock.on_hand as i32), (stock.price.unwrap(), bought)] {
            let mut used = Vec::new();
            for cut in &cuts {
                let variable = problem.add_integer_var(price, (0, most));
                used.push((variable, 1.0));
                for (kind, &count) in cut.iter().enumerate().filter(|(_, count)| **count > 0) {
                    made[kind].push((variable, f64::from(count)));
                }
            }
            problem.add_constraint(used, ComparisonOp::Le, f64::from(most));
        }
    }
    for (piece, made) in task.pieces.iter().zip(made) {
        problem.add_constraint(made, ComparisonOp::Ge, f64::from(piece.count));
    }
    let solution = problem.solve().ok()?.into_solution().ok()?;
    Some(solution.objective())
}

/// microlp 0.7 as reference: tasks of a store's size, with what is on hand and what the store still has.
#[test]
fn tasks_of_usual_size_agree_with_an_integer_program() {
    let mut state = 20_260_611_u64;
    let mut between = |low: u64, high: u64| {
        state = state * 48_271 % 2_147_483_647;
        low + state % (high - low + 1)
    };
    for _ in 0..16 {
        let lengths: Vec<(f64, u32)> =
            (0..between(3, 4)).map(|_| (between(500, 2200) as f64, between(1, 8) as u32)).collect();
        let boards = [2400.0, 3000.0, 3600.0]
            .map(|length_mm: f64| Stock {
                length_mm,
                price: Some((length_mm / 4.0 + between(0, 60) as f64).round() / 100.0),
                on_hand: between(0, 4).saturating_sub(2) as u32,
                available: (between(0, 2) == 0).then_some(between(2, 6) as u32),
            })
            .to_vec();
        let mut task = task(&lengths, boards, between(0, 4) as f64);
        task.end_trim_mm = between(0, 1) as f64 * 10.0;
        match (plan(&task), by_integer_program(&task)) {
            (Ok(plan), Some(cost)) => {
                check(&task, &plan);
                assert!(plan.proved);
                assert!((plan.cost - cost).abs() < 1e-6, "{} instead of {cost}", plan.cost);
            }
            (Err(CutError::NotEnoughStock { .. }), None) => {}
            (got, expected) => panic!("{got:?} instead of {expected:?}"),
        }
    }
}
