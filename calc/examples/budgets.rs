//! Times what `cargo xtask bench` reports: `cargo run --profile fast -p calc --example budgets -- PROJECT`.
//! Prints one line a figure: its name, and seconds (median of many runs).

mod ceiling;

use std::hint::black_box;
use std::time::Instant;

use calc::carpentry::cut_stock::{CutTask, Piece, Stock, USUAL_EFFORT, plan};
use calc::carpentry::joints::plan_joints;
use calc::project::{Node, Place, Project, evaluate_since};
use calc::quantity::soundness::{PIECES, check_any_text};

/// Texts put together for the reader of measures.
const TEXTS: u32 = 1_000_000;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let path = std::env::args().nth(1).ok_or("name the project file")?;
    let project = Project::from_text(&std::fs::read_to_string(path)?)?;
    // The lists are made when they are looked at: they count.
    let whole = || {
        calc::forget_plans();
        let all = calc::evaluate(black_box(&project));
        black_box(all.buy_list.len() + all.cut_list.len());
    };
    println!("evaluate {:.9}", median(200, whole));

    let mut large = large_project(&project);
    println!(
        "evaluate_60 {:.9}",
        median(50, || {
            calc::forget_plans();
            drop(black_box(calc::evaluate(&large)));
        })
    );
    let mut last = calc::evaluate(&large);
    let mut coats = 1;
    let typed = median(100, || {
        coats = coats % 3 + 1;
        large.set(&Place::Sheet("s1".into()), "coats", Node::from(coats));
        last = evaluate_since(&large, Some(&last));
        black_box(last.buy_list.len());
    });
    println!("evaluate_60_typed {typed:.9}");

    let task = cut_task();
    println!("cut_plan {:.9}", median(5, || drop(black_box(plan(&task)))));
    let proved = plan(&task).is_ok_and(|plan| plan.proved);
    println!("cut_plan_proved {proved}");

    let mut ceiling = ceiling::ceiling();
    // The last plans are kept: a little more stagger each time asks for a new one.
    let layout = median(5, || {
        ceiling.stagger_mm += 0.01;
        drop(black_box(plan_joints(&ceiling)));
    });
    println!("layout_16 {layout:.9}");

    let start = Instant::now();
    let refused = read_many()?;
    println!("read_texts {:.9}", start.elapsed().as_secs_f64());
    println!("read_texts_unsound {refused}");
    Ok(())
}

/// Sixty sheets: those of a project over and over, each taking from the first of its kind.
fn large_project(project: &Project) -> Project {
    let sheets: Vec<(String, Node)> = project
        .sheets()
        .filter_map(|sheet| Some((sheet.kind()?.to_owned(), sheet.inputs().clone())))
        .collect();
    let mut large = project.clone();
    for (kind, inputs) in sheets.iter().cycle() {
        if large.sheets().count() >= 60 {
            break;
        }
        large.add_sheet(kind, "", inputs.clone());
    }
    large
}

/// The median of the times of several runs. [s]
fn median(runs: usize, mut run: impl FnMut()) -> f64 {
    let mut times: Vec<f64> = (0..runs)
        .map(|_| {
            let start = Instant::now();
            run();
            start.elapsed().as_secs_f64()
        })
        .collect();
    calc::sorting::sort_by(&mut times, f64::total_cmp);
    times.get(runs / 2).copied().unwrap_or_default()
}

/// 200 pieces of twenty lengths from four stock lengths.
fn cut_task() -> CutTask {
    let mut numbers = Numbers(20_261);
    let pieces = (0..20)
        .map(|label| Piece { label, length_mm: numbers.below(1900) as f64 + 200.0, count: 10 })
        .collect();
    let stock =
        [(2400.0, 7.9), (3000.0, 9.6), (3600.0, 11.4), (4800.0, 15.1)].map(|(length_mm, price)| {
            Stock { length_mm, price: Some(price), on_hand: 0, available: None }
        });
    CutTask { pieces, stock: stock.to_vec(), kerf_mm: 3.0, end_trim_mm: 0.0, effort: USUAL_EFFORT }
}

/// Reads texts put together from pieces of measures; says how many broke a promise of the reader.
fn read_many() -> Result<u32, String> {
    let mut numbers = Numbers(7);
    let mut unsound = 0;
    for _ in 0..TEXTS {
        let mut text = String::new();
        for _ in 0..=numbers.below(8) {
            text.push_str(PIECES.get(numbers.below(PIECES.len() as u64) as usize).unwrap_or(&""));
        }
        if let Err(promise) = check_any_text(&text) {
            eprintln!("{text:?}: {promise}");
            unsound += 1;
        }
    }
    Ok(unsound)
}

/// A small generator of whole numbers (Lehmer), the same on every machine.
struct Numbers(u64);

impl Numbers {
    fn below(&mut self, end: u64) -> u64 {
        self.0 = self.0 * 48_271 % 2_147_483_647;
        self.0 % end
    }
}
