//! Pieces from stock lengths: what to buy and how to cut it at the least cost.

mod known;
pub(crate) mod planned;
pub(crate) mod stock;

use crate::text::text;
use uom::si::length::millimeter;

pub use self::known::forget_plans;
use self::planned::{Planned, Section, Wanted};
use self::stock::{DENSITY, EFFORT, END_TRIM, KERF, MATERIAL, STOCK, Shelf};
use super::{Sheet, solve};
use crate::ask::{Ask, Figure};
use crate::carpentry::cautions::{DUST, MEASURE_AGAIN, SAW};
use crate::carpentry::cut_stock::{KERF_RULE, MOST_PIECES, PATTERNS, SHORTEST_MM};
use crate::fault::Fault;
use crate::mass::densities::{MASS_OF_VOLUME, WOOD};
use crate::quantity::{LENGTH, Length, Style, money};
use crate::reader::Reader;
use crate::report::{Caution, Report, Table, TableRow, texts};
use crate::source::Source;
use crate::words::Phrase;

/// The sheet.
pub static SHEET: Sheet = Sheet {
    kind: "cut_plan",
    title: Phrase::Written("Cut plan"),
    trade: Phrase::Written("Ceiling and walls"),
    purpose: Phrase::Written(
        "What to buy for a list of pieces, and how to cut it at the least cost.",
    ),
    asks: &[&PIECES, &STOCK, &KERF, &END_TRIM, &MATERIAL, &SECTION, &DENSITY],
    sources: &[&PATTERNS, &KERF_RULE, &planned::COST, &planned::WASTE, &MASS_OF_VOLUME, &WOOD],
    example: r#"{ "material": "3/4 x 1 1/2 in pine",
        "pieces": [
            { "label": "bunk rail", "length": "1980 mm", "count": 2 },
            { "label": "bunk slat", "length": "27 1/2 in", "count": 11 },
            { "label": "shelf front", "length": "45 3/8 in", "count": 4 },
            { "label": "upright", "length": "33 in", "count": 6 } ],
        "stock": [
            { "length": "8 ft", "price": 6.4, "on_hand": 2 },
            { "length": "10 ft", "price": 8.9 },
            { "length": "12 ft", "price": 10.2, "available": 4 } ],
        "kerf": "1/8 in", "end_trim": "1/2 in",
        "section": { "thickness": "3/4 in", "width": "1 1/2 in" }, "density": "white pine" }"#,
    solve: |reader| solve(reader, read, report),
};

static LABEL: Ask = Ask::words("label", "Name").usual("rail", "rail");
static PIECE_LENGTH: Ask =
    Ask::measure("length", "Length", &LENGTH, ["in", "mm"], (SHORTEST_MM / 1e3, 30.0))
        .usual("27 1/2 in", "700 mm")
        .help("Finished, as it will be put up.")
        .figure(Figure::Along);
static COUNT: Ask = Ask::count("count", "How many", (1, MOST_PIECES)).usual("4", "4");
static PIECES: Ask = Ask::rows("pieces", "Pieces", "piece", 1, &[&LABEL, &PIECE_LENGTH, &COUNT])
    .help("All that are cut from the same section.");

static THICKNESS: Ask = Ask::measure("thickness", "Thickness", &LENGTH, ["in", "mm"], (0.001, 0.3))
    .usual("3/4 in", "19 mm");
static WIDTH: Ask =
    Ask::measure("width", "Width", &LENGTH, ["in", "mm"], (0.001, 3.0)).usual("1 1/2 in", "38 mm");
static SECTION: Ask = Ask::group("section", "Section", &[&THICKNESS, &WIDTH]).optional().help(
    "Sheets that cut the same material in the same section are planned together on the cut list.",
);

static CAUTIONS: &[(Phrase, Source)] = &[SAW, DUST, MEASURE_AGAIN];

/// Work for one line of the table of stores: a first plan and its bound.
const QUICK_EFFORT: u64 = 20_000;
/// So many lengths are looked at one by one.
const MOST_COMPARED: usize = 8;

/// What was typed, read.
struct Inputs {
    wanted: Vec<Wanted>,
    shelf: Shelf,
}

fn read(reader: &Reader<'_>) -> Inputs {
    let mut wanted: Vec<Wanted> = reader.rows(&PIECES, |row| Wanted {
        id: String::new(),
        label: row.words(&LABEL),
        length_mm: row.measure::<Length>(&PIECE_LENGTH).get::<millimeter>(),
        count: row.count(&COUNT),
    });
    for ((index, one), key) in wanted.iter_mut().enumerate().zip(reader.row_keys(&PIECES)) {
        one.id = text!("p{}", &key);
        if one.label.is_empty() {
            one.label = text!("piece {}", index + 1);
        }
    }
    let mut shelf = Shelf::read(reader);
    let section: Option<(Length, Length)> =
        reader.maybe_group(&SECTION, |group| (group.measure(&THICKNESS), group.measure(&WIDTH)));
    shelf.weigh(section.map(|of| of.0), section.map(|of| of.1));
    // The planner stops at the first piece that is too long; all of them are to be told.
    let longest_mm = shelf.longest_mm();
    if !reader.has_faults() && longest_mm > 0.0 {
        for (index, one) in wanted.iter().enumerate() {
            if one.length_mm > longest_mm * (1.0 + 1e-6) {
                let message = stock::too_long(one.length_mm, longest_mm, reader.style());
                reader.note(&text!("pieces.{}.length", &index), message);
            }
        }
    }
    if let Some((thickness, width)) = section {
        shelf.section = Section::new(thickness.get::<millimeter>(), width.get::<millimeter>());
    }
    Inputs { wanted, shelf }
}

fn report(inputs: &Inputs, style: Style) -> Result<Report, Vec<Fault>> {
    let planned = Planned::new(inputs.wanted.clone(), &inputs.shelf, EFFORT).map_err(|error| {
        vec![stock::fault(&error, |piece| text!("pieces.{}.length", &piece), style)]
    })?;
    Ok(Report {
        answers: planned.answers(style),
        remarks: planned.remarks(style),
        tables: stores(inputs, &planned, style).into_iter().collect(),
        drawings: planned.drawings(style),
        working: planned.working(style),
        cautions: Caution::all(CAUTIONS),
        buy: planned.buy(style),
        cut: planned.cut(style),
        cutting: planned.cutting(),
        outcome: planned.record(),
        ..Report::default()
    })
}

/// What the pieces would take if the store had one of the lengths only.
fn stores(inputs: &Inputs, planned: &Planned, style: Style) -> Option<Table> {
    let stock = &inputs.shelf.stock;
    let sold = stock.iter().filter(|stock| stock.available != Some(0)).count();
    if !(2..=MOST_COMPARED).contains(&sold) {
        return None;
    }
    let length = |mm: f64| style.length(Length::new::<millimeter>(mm));
    let row = |name: String, planned: &Planned, chosen: bool| TableRow {
        cells: vec![
            name,
            planned.bought_words(style),
            if planned.plan.priced { money(planned.plan.cost) } else { length(planned.plan.cost) },
            length(planned.plan.waste_mm),
        ],
        chosen,
    };
    let mut rows = vec![row("all of them".into(), planned, true)];
    for (only, one) in stock.iter().enumerate().filter(|(_, one)| one.available != Some(0)) {
        let mut shelf = inputs.shelf.clone();
        for (index, other) in shelf.stock.iter_mut().enumerate() {
            if index != only {
                other.available = Some(0);
            }
        }
        let name = text!("{} only", length(one.length_mm));
        match Planned::new(inputs.wanted.clone(), &shelf, QUICK_EFFORT) {
            Ok(planned) => rows.push(row(name, &planned, false)),
            Err(_) => rows.push(TableRow {
                cells: vec![name, "not enough".into(), "–".into(), "–".into()],
                chosen: false,
            }),
        }
    }
    Some(Table {
        title: "If the store has".into(),
        heads: texts(&[
            "Lengths",
            "Buy",
            if planned.plan.priced { "Cost" } else { "Stock" },
            "Left over",
        ]),
        rows,
    })
}
