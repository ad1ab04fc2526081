//! Butt joints of boards: on supports only, staggered, chosen together with the stock they are cut from.

mod chain;
mod cheapest;
mod choose;
mod dive;
mod field;
mod master;
mod mixes;
mod recent;

use self::choose::{Choices, Found, Refused, choose};
use self::field::Field;
use super::cut_stock::model::{Cut, Effort};
use super::cut_stock::solve::Failed;
use super::cut_stock::task::Grid;
use super::cut_stock::{CutError, CutPlan, CutTask, MOST_PIECES, Piece, Stock, layout, refine};
use crate::sorting::sort;
use crate::source::Source;
use crate::words::carpentry as words;

/// Joints of thin boards lie on supports.
pub static ON_SUPPORTS: Source = Source::transcribed_of(words::SOURCE_ON_SUPPORTS);
/// Stagger of narrow strips.
pub static STRIP_STAGGER: Source = Source::transcribed_of(words::SOURCE_STRIP_STAGGER);

/// Short pieces lie badly.
pub static LEAST_PIECE: Source = Source::practice_of(words::SOURCE_LEAST_PIECE);
/// The length of [`LEAST_PIECE`]. [mm]
pub const USUAL_LEAST_PIECE_MM: f64 = 304.8;

/// How joints and stock are chosen together, and what is proved of it.
pub static TOGETHER: Source = Source::from_memory_of(words::SOURCE_TOGETHER);

/// Costs that differ by a smaller part are the same.
const SAME_COST: f64 = 1e-6;
/// Slack of comparisons. [mm]
const SLACK_MM: f64 = 1e-3;
/// Steps for a little less waste at the same cost.
const REFINE_STEPS: u64 = 2_000_000;

/// A stretch of a course between walls and openings.
#[derive(Clone, Debug, PartialEq)]
pub struct Span {
    /// Its left end. [mm]
    pub from_mm: f64,
    /// Its right end. [mm]
    pub to_mm: f64,
    /// Centre lines of the supports that a joint may lie on. [mm]
    pub joints_mm: Vec<f64>,
}

/// What is to be covered, and with what.
#[derive(Clone, Debug, PartialEq)]
pub struct JointTask {
    /// The courses from one side to the other: the spans of each from left to right. Places count from one point for all.
    pub courses: Vec<Vec<Span>>,
    /// Face of a support that a screw can hit. [mm]
    pub support_width_mm: f64,
    /// From a board's end to its mark at a joint. [mm]
    pub edge_distance_mm: f64,
    /// Least distance of joints in neighbouring courses. [mm]
    pub stagger_mm: f64,
    /// No joint leaves a shorter piece. [mm]
    pub least_piece_mm: f64,
    /// What one more joint is worth, in the terms of the stock's prices; in mm where nothing is priced.
    pub joint_price: f64,
    /// Stock lengths.
    pub stock: Vec<Stock>,
    /// Width of the saw cut. [mm]
    pub kerf_mm: f64,
    /// Taken off each stock length in all. [mm]
    pub end_trim_mm: f64,
    /// Effort of the whole choice, in the cut planner's steps.
    pub effort: u64,
}

/// The least cost for a number of joints.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LayoutChoice {
    /// Number of joints in all courses.
    pub joints: u32,
    /// Price of the stock; its length in mm where nothing is priced.
    pub cost: f64,
    /// No layout with at most so many joints costs less.
    pub bound: f64,
    /// Whether the cost is the bound.
    pub proved: bool,
}

/// Joints of all courses and the stock they take.
#[derive(Clone, Debug, PartialEq)]
pub struct JointPlan {
    /// Joints of each course, by rising position. [mm]
    pub joints_mm: Vec<Vec<f64>>,
    /// The different lengths of piece; a cut plan's labels are indexes into them. [mm]
    pub lengths_mm: Vec<f64>,
    /// The cut plan of all pieces. Its proof and bound hold for these joints only.
    pub cut_plan: CutPlan,
    /// The numbers of joints worth having: more joints only where they cost less.
    pub choices: Vec<LayoutChoice>,
    /// Which of them this is.
    pub chosen: usize,
    /// No layout that keeps the rules costs less, its joints priced in.
    pub bound: f64,
    /// Whether cost and joint price of the chosen one are that bound.
    pub proved: bool,
}

/// Why joints cannot be laid out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum JointError {
    /// A length is not a number above zero, a distance below zero, or there is no course.
    Number,
    /// The marks at a joint miss the support.
    EdgeDistance {
        /// From a board's end to its mark. [mm]
        edge_distance_mm: f64,
        /// The most that is still on the support: half its width. [mm]
        most_mm: f64,
    },
    /// No stock reaches from one possible joint to another.
    Unreachable {
        /// Longest piece that the stock gives. [mm]
        longest_mm: f64,
    },
    /// Every layout would leave a piece that is too short.
    ShortPiece {
        /// The least length of a piece. [mm]
        least_mm: f64,
    },
    /// No two layouts keep the stagger.
    Stagger {
        /// The stagger asked for. [mm]
        stagger_mm: f64,
    },
    /// The pieces cannot be cut from the stock.
    Cut(CutError),
}

/// The layout whose stock and joints cost least; of equal ones the one with the fewest joints, then one of little waste.
///
/// Boards meet on the support's centre line. Stock and joints are chosen together: a joint more is made where it saves more than
/// [`JointTask::joint_price`]. How good the choice is, is said by its bound. Source: [`TOGETHER`].
///
/// # Errors
/// Where the numbers, the supports, the stagger or the stock do not allow any.
pub fn plan_joints(task: &JointTask) -> Result<JointPlan, JointError> {
    recent::or_else(task, planned)
}

fn planned(task: &JointTask) -> Result<JointPlan, JointError> {
    check(task)?;
    let grid = Grid::new(&cut_task(task, Vec::new())).map_err(JointError::Cut)?;
    let on_support = task.edge_distance_mm <= task.support_width_mm / 2.0 + SLACK_MM;
    let bins = &grid.model.bins;
    let field = if on_support {
        Field::new(task, bins)?
    } else {
        // Nothing can be joined: what needs a joint is told why it has none.
        let mut whole = task.clone();
        whole.courses.iter_mut().flatten().for_each(|span| span.joints_mm.clear());
        Field::new(&whole, bins).map_err(|_| JointError::EdgeDistance {
            edge_distance_mm: task.edge_distance_mm,
            most_mm: task.support_width_mm / 2.0,
        })?
    };
    let mut effort = Effort::new(task.effort);
    let choices = choose(&field, bins, &mut effort).map_err(|refused| match refused {
        Refused::Stagger => JointError::Stagger { stagger_mm: task.stagger_mm },
        Refused::Cut(Failed::NotFound) => JointError::Cut(CutError::NoPlanFound),
        Refused::Cut(Failed::Impossible) => JointError::Cut(not_enough(task)),
    })?;
    taken(task, &grid, &field, &choices)
}

/// The choice that costs least, joints priced in.
fn taken(
    task: &JointTask,
    grid: &Grid,
    field: &Field,
    all: &Choices,
) -> Result<JointPlan, JointError> {
    let with_joints =
        |joints: u32, cost: i64| grid.cost(cost) + task.joint_price * f64::from(joints);
    let same = |a: f64, b: f64| a <= b + SAME_COST * b.abs();
    let mut chosen = 0;
    let mut least = f64::INFINITY;
    for (at, choice) in all.choices.iter().enumerate() {
        let cost = with_joints(choice.found.joints, choice.found.cost);
        if cost < least - SAME_COST * cost.abs() {
            (chosen, least) = (at, cost);
        }
    }
    // Fewer joints than the bounds begin with there are not; more than they end with cost no less than the bound of all.
    let beyond = all.bounds.last().map_or_else(|| all.fewest, |(joints, _)| joints + 1);
    let bounds = all.bounds.iter().map(|&(joints, bound)| with_joints(joints, bound));
    let least_bound = bounds.fold(with_joints(beyond, all.bound), f64::min);
    let proved = same(least, least_bound);
    let choices: Vec<LayoutChoice> = all
        .choices
        .iter()
        .map(|choice| {
            let (cost, bound) = (grid.cost(choice.found.cost), grid.cost(choice.bound));
            let proved = same(cost, bound);
            let bound = if proved { cost } else { bound };
            LayoutChoice { joints: choice.found.joints, cost, bound, proved }
        })
        .collect();
    let found = &all.choices[chosen].found;
    let joints_mm: Vec<Vec<f64>> =
        found.courses.iter().map(|course| course.joints_mm.clone()).collect();
    let bound = all.bound.max(found.bound);
    let (lengths_mm, cut_plan) = cut_plan(task, field, &joints_mm, found, bound)?;
    Ok(JointPlan {
        joints_mm,
        lengths_mm,
        cut_plan,
        chosen,
        choices,
        bound: if proved { least } else { least_bound },
        proved,
    })
}

/// The pieces of a layout by their lengths, and the plan that cuts them.
fn cut_plan(
    task: &JointTask,
    field: &Field,
    joints_mm: &[Vec<f64>],
    found: &Found,
    bound: i64,
) -> Result<(Vec<f64>, CutPlan), JointError> {
    let same = |a: f64, b: f64| nanometres(a) == nanometres(b);
    let mut pieces: Vec<Piece> = Vec::new();
    for (spans, joints) in task.courses.iter().zip(joints_mm) {
        for span in spans {
            let mut from = span.from_mm;
            let inside = joints.iter().filter(|at| **at > span.from_mm && **at < span.to_mm);
            for &to in inside.chain([&span.to_mm]) {
                let length_mm = to - from;
                from = to;
                match pieces.iter_mut().find(|piece| same(piece.length_mm, length_mm)) {
                    Some(piece) => piece.count += 1,
                    None => pieces.push(Piece { label: pieces.len(), length_mm, count: 1 }),
                }
            }
        }
    }
    let lengths = pieces.iter().map(|piece| piece.length_mm).collect();
    let task = cut_task(task, pieces);
    let plan = Grid::new(&task).map(|grid| {
        let kind = |kind: usize| {
            let weight = field.weights.get(kind);
            grid.model.weights.iter().position(|known| Some(known) == weight)
        };
        let cuts = found.packing.iter().map(|(cut, times)| {
            let counts = cut.counts.iter().filter_map(|&(own, count)| Some((kind(own)?, count)));
            let mut counts: Vec<(usize, u32)> = counts.collect();
            sort(&mut counts);
            (Cut { bin: cut.bin, counts }, *times)
        });
        let mut packing = cuts.collect();
        refine::refine(&grid.model, &mut packing, &mut Effort::new(REFINE_STEPS));
        layout::lay_out(&task, &grid, &packing, bound)
    });
    Ok((lengths, plan.map_err(JointError::Cut)?))
}

fn cut_task(task: &JointTask, pieces: Vec<Piece>) -> CutTask {
    CutTask {
        pieces,
        stock: task.stock.clone(),
        kerf_mm: task.kerf_mm,
        end_trim_mm: task.end_trim_mm,
        effort: REFINE_STEPS,
    }
}

fn not_enough(task: &JointTask) -> CutError {
    let spans = task.courses.iter().flatten();
    let count = |stock: &Stock| f64::from(stock.on_hand) + f64::from(stock.available.unwrap_or(0));
    CutError::NotEnoughStock {
        needed_mm: spans.map(|span| span.to_mm - span.from_mm).sum(),
        stock_mm: task.stock.iter().map(|stock| stock.length_mm * count(stock)).sum(),
    }
}

fn check(task: &JointTask) -> Result<(), JointError> {
    let above = |value: f64| value.is_finite() && value > 0.0;
    let least = |value: f64| value.is_finite() && value >= 0.0;
    let spans = || task.courses.iter().flatten();
    let in_order = |course: &Vec<Span>| course.windows(2).all(|two| two[0].to_mm <= two[1].from_mm);
    let numbers = above(task.support_width_mm)
        && least(task.edge_distance_mm)
        && least(task.stagger_mm)
        && least(task.least_piece_mm)
        && least(task.joint_price)
        && !task.courses.is_empty()
        && spans().all(|span| span.from_mm.is_finite() && above(span.to_mm - span.from_mm))
        && spans().all(|span| span.joints_mm.iter().all(|at| at.is_finite()))
        && task.courses.iter().all(in_order);
    if !numbers {
        return Err(JointError::Number);
    }
    let pieces = spans().count() as u64;
    if pieces > u64::from(MOST_PIECES) {
        return Err(JointError::Cut(CutError::TooManyPieces { pieces }));
    }
    Ok(())
}

fn nanometres(length_mm: f64) -> i64 {
    (length_mm * 1e6).round() as i64
}
#[cfg(test)]
mod tests {
    use super::super::cut_stock::plan;
    use super::*;
    use crate::sorting::sort_by;
    use proptest::prelude::*;
    use proptest::strategy::ValueTree;

    /// A run of equal courses over supports.
    fn courses(run_mm: f64, supports: &[f64], count: usize) -> Vec<Vec<Span>> {
        vec![vec![Span { from_mm: 0.0, to_mm: run_mm, joints_mm: supports.to_vec() }]; count]
    }

    fn stock(lengths: &[(f64, f64)]) -> Vec<Stock> {
        let one = |&(length_mm, price): &(f64, f64)| Stock {
            length_mm,
            price: Some(price),
            on_hand: 0,
            available: None,
        };
        lengths.iter().map(one).collect()
    }

    fn task() -> JointTask {
        let supports: Vec<f64> = (0..13).map(|rib| 140.0 + 433.0 * f64::from(rib)).collect();
        JointTask {
            courses: courses(5480.0, &supports, 15),
            support_width_mm: 45.0,
            edge_distance_mm: 15.0,
            stagger_mm: 600.0,
            least_piece_mm: 0.0,
            joint_price: 0.0,
            stock: stock(&[(2400.0, 9.0), (3000.0, 11.5), (3600.0, 14.0)]),
            kerf_mm: 3.0,
            end_trim_mm: 0.0,
            effort: 20_000_000,
        }
    }

    fn same(a: f64, b: f64) -> bool {
        (a - b).abs() <= 1e-6 * (1.0 + b.abs())
    }

    /// Joints, pieces, plan and choices hold together.
    fn check(task: &JointTask, found: &JointPlan) {
        assert_eq!(found.joints_mm.len(), task.courses.len());
        let mut wanted: Vec<f64> = Vec::new();
        for (spans, joints) in task.courses.iter().zip(&found.joints_mm) {
            let mut used = 0;
            for span in spans {
                let mut from = span.from_mm;
                let inside: Vec<f64> =
                    joints.iter().copied().filter(|at| span.joints_mm.contains(at)).collect();
                used += inside.len();
                let joined = !inside.is_empty();
                for to in inside.into_iter().chain([span.to_mm]) {
                    assert!(to > from && (!joined || to - from >= task.least_piece_mm - 2e-3));
                    wanted.push(to - from);
                    from = to;
                }
            }
            assert_eq!(used, joints.len());
        }
        for pair in found.joints_mm.windows(2) {
            for a in &pair[0] {
                assert!(pair[1].iter().all(|b| (a - b).abs() >= task.stagger_mm - 1e-3));
            }
        }
        let mut cut: Vec<f64> = Vec::new();
        for pattern in &found.cut_plan.patterns {
            for piece in &pattern.pieces {
                assert_eq!(found.lengths_mm[piece.label], piece.length_mm);
                cut.extend(std::iter::repeat_n(piece.length_mm, pattern.count as usize));
            }
        }
        sort_by(&mut wanted, f64::total_cmp);
        sort_by(&mut cut, f64::total_cmp);
        assert_eq!(wanted.len(), cut.len());
        assert!(wanted.iter().zip(&cut).all(|(a, b)| (a - b).abs() < 1e-5));

        let chosen = found.choices[found.chosen];
        assert!(same(found.cut_plan.cost, chosen.cost));
        let joints: usize = found.joints_mm.iter().map(Vec::len).sum();
        assert_eq!(chosen.joints as usize, joints);
        for pair in found.choices.windows(2) {
            assert!(pair[0].joints < pair[1].joints && pair[0].cost > pair[1].cost);
        }
        let priced =
            |choice: &LayoutChoice| choice.cost + task.joint_price * f64::from(choice.joints);
        let least = priced(&chosen);
        assert!(found.choices.iter().all(|choice| priced(choice) >= least - 1e-6 * least.abs()));
        assert!(found.bound <= least + 1e-9 && found.proved == same(found.bound, least));
        for choice in &found.choices {
            assert!(
                choice.bound <= choice.cost && choice.proved == same(choice.bound, choice.cost)
            );
        }
    }

    /// Every layout of every course, every chain of them that keeps the stagger, each cut at least cost: least cost for each number
    /// of joints.
    fn by_hand(task: &JointTask) -> Vec<Option<f64>> {
        let longest = task.stock.iter().map(|stock| stock.length_mm).fold(0.0, f64::max);
        let layouts = |span: &Span| -> Vec<Vec<f64>> {
            let count = span.joints_mm.len();
            (0..1_u32 << count)
                .map(|set| {
                    let taken = (0..count).filter(|at| set >> at & 1 == 1);
                    taken.map(|at| span.joints_mm[at]).collect::<Vec<f64>>()
                })
                .filter(|joints| {
                    let ends = [span.from_mm].into_iter().chain(joints.iter().copied());
                    let ends: Vec<f64> = ends.chain([span.to_mm]).collect();
                    ends.windows(2).all(|two| {
                        let length = two[1] - two[0];
                        length <= longest && (joints.is_empty() || length >= task.least_piece_mm)
                    })
                })
                .collect()
        };
        let all: Vec<Vec<Vec<f64>>> = task.courses.iter().map(|one| layouts(&one[0])).collect();
        let mut found: Vec<Option<f64>> = vec![None; 40];
        let mut known: Vec<(Vec<i64>, f64)> = Vec::new();
        let mut waiting: Vec<Vec<&Vec<f64>>> = vec![Vec::new()];
        while let Some(chain) = waiting.pop() {
            if let Some(next) = all.get(chain.len()) {
                for layout in next {
                    let apart = chain.last().is_none_or(|last| {
                        let mut pairs = last.iter().flat_map(|a| layout.iter().map(move |b| a - b));
                        pairs.all(|distance| distance.abs() >= task.stagger_mm)
                    });
                    if apart {
                        waiting.push(chain.iter().copied().chain([layout]).collect());
                    }
                }
                continue;
            }
            let joints: usize = chain.iter().map(|layout| layout.len()).sum();
            let mut lengths: Vec<i64> = Vec::new();
            for (course, layout) in task.courses.iter().zip(&chain) {
                let mut from = course[0].from_mm;
                for to in layout.iter().copied().chain([course[0].to_mm]) {
                    lengths.push(nanometres(to - from));
                    from = to;
                }
            }
            sort(&mut lengths);
            let cost = match known.iter().find(|(other, _)| *other == lengths) {
                Some((_, cost)) => *cost,
                None => {
                    let pieces = lengths.iter().enumerate().map(|(label, length)| Piece {
                        label,
                        length_mm: *length as f64 / 1e6,
                        count: 1,
                    });
                    let planned = plan(&cut_task(task, pieces.collect()));
                    let cost = planned.map_or(f64::INFINITY, |plan| {
                        assert!(plan.proved);
                        plan.cost
                    });
                    known.push((lengths, cost));
                    cost
                }
            };
            if cost.is_finite() {
                let least = found[joints].get_or_insert(cost);
                *least = least.min(cost);
            }
        }
        found
    }

    #[test]
    fn joints_lie_on_supports_and_keep_their_stagger() {
        let task = task();
        let plan = plan_joints(&task).unwrap();
        check(&task, &plan);
        // No layout at all can cost less than the run as one heap at the best price for its length.
        let heap = 15.0 * 5480.0 * 9.0 / 2400.0;
        assert!(plan.cut_plan.cost >= heap && plan.bound >= heap - 1e-6);
    }

    /// Every layout tried by a program of its own: neither one joint in each course nor two keep 600 mm, but one and two in turn do, as
    /// at 1598 mm and at 828 and 2378 mm.
    #[test]
    fn courses_take_turns_with_one_joint_and_two() {
        let supports = [418.0, 828.0, 1228.0, 1598.0, 2008.0, 2378.0];
        let task = JointTask {
            courses: courses(2688.0, &supports, 15),
            least_piece_mm: USUAL_LEAST_PIECE_MM,
            stock: stock(&[(1830.0, 9.0)]),
            ..task()
        };
        let plan = plan_joints(&task).unwrap();
        check(&task, &plan);
        // Fifteen courses with one and two joints in turn have 22 or 23.
        assert_eq!(plan.choices[0].joints, 22);
        let farther = JointTask { stagger_mm: 800.0, ..task };
        assert_eq!(plan_joints(&farther), Err(JointError::Stagger { stagger_mm: 800.0 }));
    }

    /// Ribs every 400 mm over 4 m, boards of up to 2.6 m: joints may lie at 1600, 2000 and 2400; courses 3 and 4 may not have 2000.
    #[test]
    fn a_course_keeps_its_joints_out_of_where_it_may_have_none() {
        let supports: Vec<f64> = (1..10).map(|rib| 400.0 * f64::from(rib)).collect();
        let mut task = JointTask {
            courses: courses(4000.0, &supports, 8),
            stagger_mm: 400.0,
            stock: stock(&[(2600.0, 1.0)]),
            kerf_mm: 0.0,
            ..task()
        };
        let free = plan_joints(&task).unwrap();
        for course in &mut task.courses[3..=4] {
            course[0].joints_mm.retain(|at| *at != 2000.0);
        }
        let plan = plan_joints(&task).unwrap();
        check(&task, &plan);
        assert!(plan.proved && free.proved && plan.bound >= free.bound);
        // An opening from 1700 to 2300 mm in the same courses: two spans of one piece each.
        for course in &mut task.courses[3..=4] {
            let whole = course[0].clone();
            *course = vec![
                Span { to_mm: 1700.0, joints_mm: vec![1200.0], ..whole.clone() },
                Span { from_mm: 2300.0, joints_mm: vec![2800.0], ..whole },
            ];
        }
        check(&task, &plan_joints(&task).unwrap());
    }

    /// With a worth of a joint, joints are only made where they save more.
    #[test]
    fn a_joint_that_is_worth_more_is_made_less_often() {
        let mut joints = u32::MAX;
        for joint_price in [0.0, 0.5, 2.0, 20.0] {
            let task = JointTask { joint_price, ..task() };
            let plan = plan_joints(&task).unwrap();
            check(&task, &plan);
            let chosen = plan.choices[plan.chosen].joints;
            assert!(chosen <= joints);
            joints = chosen;
        }
        assert_eq!(joints, 15);
    }

    proptest! {
        #![proptest_config(ProptestConfig { cases: 12, failure_persistence: None, ..Default::default() })]

        #[test]
        fn any_body_gets_joints_on_supports_or_a_fault(
            spacings in proptest::collection::vec(250.0..600.0_f64, 4..16),
            longest in 1200.0..5000.0_f64,
            count in 1usize..14,
            stagger in 0.0..700.0_f64,
            least in 0.0..400.0_f64,
        ) {
            let mut at = 0.0;
            let supports: Vec<f64> =
                spacings.iter().map(|spacing| { at += spacing; at }).collect();
            let task = JointTask {
                courses: courses(at + 150.0, &supports, count),
                stagger_mm: stagger,
                least_piece_mm: least,
                stock: stock(&[(3000.0, 11.5), (longest, 14.0)]),
                effort: 4_000_000,
                ..task()
            };
            match plan_joints(&task) {
                Ok(plan) => check(&task, &plan),
                Err(JointError::Stagger { .. } | JointError::Unreachable { .. } | JointError::ShortPiece { .. }) => {}
                Err(error) => prop_assert!(false, "{error:?}"),
            }
        }

        /// All layouts, one by one, of ceilings small enough for that: no bound lies above them, nothing is called proved that
        /// one of them beats.
        #[test]
        fn nothing_that_is_proved_is_beaten_by_any_layout(task in small_ceiling()) {
            against_all(&task)?;
        }
    }

    /// A ceiling of a few courses, small enough to look at all its layouts.
    fn small_ceiling() -> impl Strategy<Value = JointTask> {
        (
            proptest::collection::vec(300.0..700.0_f64, 2..5),
            proptest::collection::vec((900.0..2600.0_f64, 3.0..12.0_f64), 1..3),
            1usize..4,
            0.0..700.0_f64,
            (0u32..3, 0.0..1.0_f64),
        )
            .prop_map(|(spacings, lengths, count, stagger, (here, joint_price))| {
                let mut at = 0.0;
                let round = |value: f64| (value * 10.0).round() / 10.0;
                let supports: Vec<f64> = spacings
                    .iter()
                    .map(|spacing| {
                        at = round(at + spacing);
                        at
                    })
                    .collect();
                let lengths: Vec<(f64, f64)> = lengths
                    .iter()
                    .map(|(length, price)| (round(*length), (price * 100.0).round() / 100.0))
                    .collect();
                let mut task = JointTask {
                    courses: courses(at + 350.0, &supports, count),
                    stagger_mm: round(stagger),
                    least_piece_mm: 304.8,
                    joint_price: if joint_price < 0.4 { 0.0 } else { joint_price },
                    stock: stock(&lengths),
                    ..task()
                };
                task.stock[0].on_hand = here;
                task
            })
    }

    /// Holds what is chosen against all layouts; gives its cost over the least, 1 where there is none.
    fn against_all(task: &JointTask) -> Result<f64, proptest::test_runner::TestCaseError> {
        let every = by_hand(task);
        let Ok(found) = plan_joints(task) else {
            prop_assert!(every.iter().all(Option::is_none));
            return Ok(1.0);
        };
        check(task, &found);
        let costs = every.iter().enumerate();
        let costs = costs.filter_map(|(joints, cost)| Some((joints as f64, (*cost)?)));
        let least = costs
            .map(|(joints, cost)| cost + joints * task.joint_price)
            .fold(f64::INFINITY, f64::min);
        let chosen = found.choices[found.chosen];
        let cost = chosen.cost + task.joint_price * f64::from(chosen.joints);
        prop_assert!(found.bound <= least + 1e-6, "{} over {least}", found.bound);
        prop_assert!(cost >= least - 1e-6, "{cost} under {least}");
        prop_assert!(!found.proved || same(cost, least), "{cost} is not {least}");
        for choice in &found.choices {
            let up_to = every[..=choice.joints as usize].iter().flatten();
            let least = up_to.copied().fold(f64::INFINITY, f64::min);
            prop_assert!(choice.bound <= least + 1e-6 && choice.cost >= least - 1e-6);
        }
        Ok(if least > 0.0 { cost / least } else { 1.0 })
    }

    /// The same forty ceilings each time: nearly all are solved, and none is far off.
    #[test]
    fn small_ceilings_are_solved() {
        let config = ProptestConfig {
            rng_seed: proptest::test_runner::RngSeed::Fixed(20_261),
            failure_persistence: None,
            ..ProptestConfig::default()
        };
        let mut runner = proptest::test_runner::TestRunner::new(config);
        let mut solved = 0;
        for _ in 0..40 {
            let task = small_ceiling().new_tree(&mut runner).unwrap().current();
            let over = against_all(&task).unwrap();
            assert!(over <= 1.05, "{over} times the least");
            solved += usize::from(over <= 1.0 + 1e-6);
        }
        assert!(solved >= 39, "{solved} of 40");
    }

    /// By hand: three courses in two boards, two courses with a joint each: 1542.9 + 494.2 + 350 mm and 1192.9 + 1048.7 mm.
    #[test]
    fn no_joint_more_is_made_than_saves() {
        let task = JointTask {
            courses: courses(1542.9, &[494.2, 1192.9], 3),
            stagger_mm: 0.0,
            least_piece_mm: 304.8,
            joint_price: 0.78,
            stock: stock(&[(2509.7, 3.0)]),
            ..task()
        };
        let found = plan_joints(&task).unwrap();
        check(&task, &found);
        let chosen = found.choices[found.chosen];
        assert_eq!((chosen.joints, chosen.cost), (2, 6.0));
    }

    #[test]
    fn a_run_within_the_stock_needs_no_joint() {
        let mut task = task();
        for course in &mut task.courses {
            course[0].to_mm = 3600.0;
        }
        // Its marks would miss the supports, so there is none.
        task.edge_distance_mm = 400.0;
        let plan = plan_joints(&task).unwrap();
        assert!(plan.joints_mm.iter().all(Vec::is_empty) && plan.proved);
        assert_eq!((plan.cut_plan.bought[2], plan.choices.len()), (15, 1));
    }

    #[test]
    fn faults_say_what_stands_in_the_way() {
        let fault = |change: &dyn Fn(&mut JointTask)| {
            let mut task = task();
            change(&mut task);
            plan_joints(&task).unwrap_err()
        };
        assert_eq!(
            fault(&|t| t.edge_distance_mm = 25.0),
            JointError::EdgeDistance { edge_distance_mm: 25.0, most_mm: 22.5 }
        );
        assert!(matches!(
            fault(&|t| t.courses = courses(5480.0, &[300.0], 15)),
            JointError::Unreachable { longest_mm } if (longest_mm - 3600.0).abs() < 0.01
        ));
        assert_eq!(fault(&|t| t.stagger_mm = 4000.0), JointError::Stagger { stagger_mm: 4000.0 });
        assert_eq!(
            fault(&|t| t.least_piece_mm = 2800.0),
            JointError::ShortPiece { least_mm: 2800.0 }
        );
        assert_eq!(fault(&|t| t.courses.clear()), JointError::Number);
        assert!(matches!(
            fault(&|t| t.courses = courses(5480.0, &[2000.0], 3000)),
            JointError::Cut(CutError::TooManyPieces { .. })
        ));
        assert!(matches!(
            fault(&|t| t.stock.iter_mut().for_each(|stock| stock.available = Some(1))),
            JointError::Cut(CutError::NotEnoughStock { .. })
        ));
    }
}
