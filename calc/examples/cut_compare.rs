//! Cut tasks with the planner's answers, one JSON document, for `cargo xtask bench` to put beside a general-purpose solver's:
//! `cargo run --profile fast -p calc --example cut_compare -- FOLDER`, with the folder of solved instances.

use std::error::Error;
use std::time::Instant;

use calc::carpentry::cut_stock::{CutTask, Piece, Stock, USUAL_EFFORT, plan};
use serde_json::{Value, json};

/// Made-up tasks: kinds of piece, and how many of each at most.
const MADE: [(u64, u64); 6] = [(4, 6), (6, 10), (8, 12), (10, 19), (15, 19), (20, 19)];
const STOCK: [(f64, f64); 4] = [(2400.0, 7.9), (3000.0, 9.6), (3600.0, 11.4), (4800.0, 15.1)];

fn main() -> Result<(), Box<dyn Error>> {
    let folder = std::env::args().nth(1).ok_or("name the folder of solved instances")?;
    let mut tasks = solved(&folder)?;
    let mut numbers = Numbers(20_261);
    for (kinds, most) in MADE {
        tasks.push(made(&mut numbers, kinds, most));
    }
    let answers: Vec<Value> = tasks.iter().map(|(name, task)| answer(name, task)).collect();
    println!("{}", Value::from(answers));
    Ok(())
}

/// The planner's answer beside the task; lengths in mm, the median of three times.
fn answer(name: &str, task: &CutTask) -> Value {
    let mut seconds = Vec::new();
    let mut planned = None;
    for _ in 0..3 {
        let start = Instant::now();
        planned = plan(task).ok();
        seconds.push(start.elapsed().as_secs_f64());
    }
    calc::sorting::sort_by(&mut seconds, f64::total_cmp);
    let pieces: Vec<Value> = task.pieces.iter().map(|p| json!([p.length_mm, p.count])).collect();
    let stock: Vec<Value> =
        task.stock.iter().map(|s| json!([s.length_mm, s.price, s.available])).collect();
    json!({
        "name": name,
        "kerf": task.kerf_mm,
        "end_trim": task.end_trim_mm,
        "pieces": pieces,
        "stock": stock,
        "cost": planned.as_ref().map(|plan| plan.cost),
        "bound": planned.as_ref().map(|plan| plan.bound),
        "proved": planned.is_some_and(|plan| plan.proved),
        "seconds": seconds.get(1),
    })
}

/// The instances of a folder, in the order of their names.
fn solved(folder: &str) -> Result<Vec<(String, CutTask)>, Box<dyn Error>> {
    let mut files: Vec<std::path::PathBuf> = std::fs::read_dir(folder)?
        .filter_map(|entry| entry.ok().map(|entry| entry.path()))
        .collect();
    calc::sorting::sort(&mut files);
    let mut tasks = Vec::new();
    for file in files {
        let value: Value = serde_json::from_str(&std::fs::read_to_string(&file)?)?;
        let unit = match value["unit"].as_str() {
            Some("mm") => 1.0,
            Some("in") => 25.4,
            Some("1/8 in") => 25.4 / 8.0,
            Some("1/16 in") => 25.4 / 16.0,
            Some("1/32 in") => 25.4 / 32.0,
            other => return Err(format!("{}: unit {other:?}", file.display()).into()),
        };
        let number = |value: &Value| value.as_f64().unwrap_or(0.0);
        let whole = |value: &Value| value.as_u64().and_then(|count| u32::try_from(count).ok());
        let rows = |name: &str| value[name].as_array().cloned().unwrap_or_default();
        let (pieces, stock) = (rows("pieces"), rows("stock"));
        let pieces = pieces.iter().enumerate().map(|(label, piece)| Piece {
            label,
            length_mm: number(&piece["length"]) * unit,
            count: whole(&piece["count"]).unwrap_or(0),
        });
        let stock = stock.iter().map(|stock| Stock {
            length_mm: number(&stock["length"]) * unit,
            price: stock["price"].as_f64(),
            on_hand: 0,
            available: whole(&stock["available"]),
        });
        let name = file.file_stem().and_then(std::ffi::OsStr::to_str).unwrap_or_default();
        tasks.push((
            name.to_owned(),
            CutTask {
                pieces: pieces.collect(),
                stock: stock.collect(),
                kerf_mm: number(&value["kerf"]) * unit,
                end_trim_mm: number(&value["end_trim"]) * unit,
                effort: USUAL_EFFORT,
            },
        ));
    }
    Ok(tasks)
}

fn made(numbers: &mut Numbers, kinds: u64, most: u64) -> (String, CutTask) {
    let mut all = 0;
    let pieces: Vec<Piece> = (0..kinds as usize)
        .map(|label| {
            let piece = Piece {
                label,
                length_mm: numbers.below(1900) as f64 + 200.0,
                count: numbers.below(most) as u32 + 1,
            };
            all += piece.count;
            piece
        })
        .collect();
    let stock = STOCK.map(|(length_mm, price)| Stock {
        length_mm,
        price: Some(price),
        on_hand: 0,
        available: None,
    });
    let task = CutTask {
        pieces,
        stock: stock.to_vec(),
        kerf_mm: 3.0,
        end_trim_mm: 0.0,
        effort: USUAL_EFFORT,
    };
    (format!("{all} pieces of {kinds} lengths"), task)
}

/// A small generator of whole numbers (Lehmer), the same on every machine.
struct Numbers(u64);

impl Numbers {
    fn below(&mut self, end: u64) -> u64 {
        self.0 = self.0 * 48_271 % 2_147_483_647;
        self.0 % end
    }
}
