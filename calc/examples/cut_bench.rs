//! Times the cut planner on made-up tasks: `cargo run --profile fast -p calc --example cut_bench`.

use calc::carpentry::cut_stock::{CutTask, Piece, Stock, USUAL_EFFORT, plan};
use calc::carpentry::joints::{JointTask, Span, plan_joints};
use std::time::Instant;

/// A small generator of whole numbers (Lehmer), the same on every machine.
struct Numbers(u64);

impl Numbers {
    fn between(&mut self, low: u64, high: u64) -> u64 {
        self.0 = self.0 * 48_271 % 2_147_483_647;
        low + self.0 % (high - low + 1)
    }
}

fn task(lengths: &[(u64, u32)], stock: &[(f64, Option<f64>)], kerf_mm: f64) -> CutTask {
    CutTask {
        pieces: lengths
            .iter()
            .enumerate()
            .map(|(label, &(length, count))| Piece { label, length_mm: length as f64, count })
            .collect(),
        stock: stock
            .iter()
            .map(|&(length_mm, price)| Stock { length_mm, price, on_hand: 0, available: None })
            .collect(),
        kerf_mm,
        end_trim_mm: 0.0,
        effort: USUAL_EFFORT,
    }
}

fn run(family: &str, tasks: Vec<CutTask>) {
    let (mut proved, mut worst, mut total, mut gap) = (0, 0.0_f64, 0.0, 0.0_f64);
    let count = tasks.len();
    for (index, task) in tasks.into_iter().enumerate() {
        let start = Instant::now();
        let result = plan(&task);
        let seconds = start.elapsed().as_secs_f64();
        total += seconds;
        worst = worst.max(seconds);
        match result {
            Ok(plan) if plan.proved => proved += 1,
            Ok(plan) => {
                println!(
                    "  {family} {index}: cost {} bound {}, {seconds:.3} s",
                    plan.cost, plan.bound
                );
                gap = gap.max((plan.cost - plan.bound) / plan.cost);
            }
            Err(error) => println!("  {family} {index}: {error}"),
        }
    }
    println!(
        "{family}: {proved} of {count} proved, widest gap {:.3} %, mean {:.1} ms, longest {:.1} ms",
        100.0 * gap,
        1e3 * total / count as f64,
        1e3 * worst
    );
}

fn main() {
    let mut numbers = Numbers(20_260_611);
    let only: Option<String> = std::env::args().nth(1);
    let wanted = |name: &str| only.as_deref().is_none_or(|only| name.contains(only));

    if wanted("battens") {
        let stock =
            [(2400.0, Some(5.4)), (3000.0, Some(6.6)), (3600.0, Some(7.75)), (4800.0, Some(10.1))];
        for (kinds, each) in [(5, 10), (10, 10), (10, 20), (20, 10), (40, 5)] {
            let tasks = (0..10)
                .map(|_| {
                    let lengths: Vec<(u64, u32)> = (0..kinds)
                        .map(|_| {
                            (numbers.between(300, 2200), numbers.between(1, 2 * each - 1) as u32)
                        })
                        .collect();
                    task(&lengths, &stock, 3.0)
                })
                .collect();
            run(&format!("battens, {kinds} kinds x {each}, 4 priced lengths"), tasks);
        }
    }
    if wanted("joints") {
        let course = Span {
            from_mm: 0.0,
            to_mm: 5480.0,
            joints_mm: (0..13).map(|rib| 140.0 + 433.0 * f64::from(rib)).collect(),
        };
        let task = JointTask {
            courses: vec![vec![course]; 15],
            support_width_mm: 45.0,
            edge_distance_mm: 15.0,
            stagger_mm: 600.0,
            least_piece_mm: 300.0,
            joint_price: 0.0,
            stock: task(
                &[],
                &[(2400.0, Some(9.0)), (3000.0, Some(11.5)), (3600.0, Some(14.0))],
                3.0,
            )
            .stock,
            kerf_mm: 3.0,
            end_trim_mm: 0.0,
            effort: 40_000_000,
        };
        let start = Instant::now();
        let cost = plan_joints(&task).map(|plan| (plan.cut_plan.cost, plan.bound));
        println!(
            "joints of 15 courses on 13 supports: {cost:?}, {:.2} ms",
            1e3 * start.elapsed().as_secs_f64()
        );
    }
    if wanted("unpriced") {
        let stock = [(2438.4, None), (3048.0, None), (3657.6, None), (4876.8, None)];
        let tasks = (0..10)
            .map(|_| {
                let lengths: Vec<(u64, u32)> = (0..20)
                    .map(|_| (numbers.between(300, 2200), numbers.between(1, 19) as u32))
                    .collect();
                task(&lengths, &stock, 3.175)
            })
            .collect();
        run("unpriced, 20 kinds x 10, 4 lengths", tasks);
    }
    if wanted("uniform") {
        for pieces in [120, 250, 500, 1000] {
            let tasks = (0..10)
                .map(|_| {
                    let lengths: Vec<(u64, u32)> =
                        (0..pieces).map(|_| (numbers.between(20, 100), 1)).collect();
                    task(&lengths, &[(150.0, Some(1.0))], 0.0)
                })
                .collect();
            run(&format!("uniform 20..100 in 150, {pieces} pieces"), tasks);
        }
    }
    if wanted("triplets") {
        for groups in [20, 40, 83] {
            let tasks = (0..10)
                .map(|_| {
                    let mut lengths = Vec::new();
                    for _ in 0..groups {
                        let first = numbers.between(380, 490);
                        let rest = 1000 - first;
                        let second = numbers.between(251, rest / 2);
                        lengths.extend([(first, 1), (second, 1), (rest - second, 1)]);
                    }
                    task(&lengths, &[(1000.0, Some(1.0))], 0.0)
                })
                .collect();
            run(&format!("triplets, {groups} full bins"), tasks);
        }
    }
    if wanted("wide") {
        let tasks = (0..20)
            .map(|_| {
                let lengths: Vec<(u64, u32)> =
                    (0..180).map(|_| (numbers.between(1, 800), 1)).collect();
                task(&lengths, &[(1000.0, Some(1.0))], 0.0)
            })
            .collect();
        run("wide 1..800 in 1000, 180 pieces", tasks);
    }
}
