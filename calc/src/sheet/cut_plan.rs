//! Pieces from stock lengths: what to buy and how to cut it at the least cost.

use calc_derive::Inputs;
use uom::si::length::millimeter;

use super::{Sheet, solve};
use crate::ask::Figure;
use crate::carpentry::cautions::{DUST, MEASURE_AGAIN, SAW};
use crate::carpentry::cut_stock::{CutError, KERF_RULE, MOST_PIECES, PATTERNS, SHORTEST_MM};
use crate::cutting::planned::{self, Planned, Section, Wanted};
use crate::cutting::stock::{self, DENSITY, EFFORT, END_TRIM, KERF, MATERIAL, STOCK, Shelf};
use crate::fault::Fault;
use crate::mass::densities::{MASS_OF_VOLUME, WOOD};
use crate::outcome::Outcome as _;
use crate::quantity::{Length, Style};
use crate::reader::Reader;
use crate::report::{Caution, Report, Table, TableRow};
use crate::source::Source;
use crate::text::text;
use crate::words::{Phrase, common, cut_plan as words};

/// The sheet.
pub static SHEET: Sheet = Sheet {
    kind: "cut_plan",
    title: Phrase::Id(words::TITLE),
    trade: Phrase::Id(common::TRADE_WALLS),
    purpose: Phrase::Id(words::PURPOSE),
    asks: &[Asked::PIECES, &STOCK, &KERF, &END_TRIM, &MATERIAL, Asked::SECTION, &DENSITY],
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
    ahead: None,
    solve: |reader| solve(reader, read, report),
};

/// What is asked besides stock and saw.
#[derive(Inputs)]
#[words(cut_plan)]
struct Asked {
    #[ask(rows(1))]
    pieces: Vec<PieceAsked>,
    #[ask(group)]
    section: Option<SectionAsked>,
}

/// Pieces that are alike.
#[derive(Inputs)]
#[words(cut_plan)]
struct PieceAsked {
    #[ask(usual("rail", "rail"), no_help)]
    label: String,
    #[ask(
        units("in", "mm"),
        range(SHORTEST_MM / 1e3, 30.0),
        usual("27 1/2 in", "700 mm"),
        figure(Figure::Along)
    )]
    length: Length,
    #[ask(range(1, MOST_PIECES), usual("4", "4"), no_help)]
    count: u32,
}

/// Thickness and width of all pieces.
#[derive(Inputs)]
#[words(cut_plan)]
struct SectionAsked {
    #[ask(units("in", "mm"), range(0.001, 0.3), usual("3/4 in", "19 mm"), no_help)]
    thickness: Length,
    #[ask(units("in", "mm"), range(0.001, 3.0), usual("1 1/2 in", "38 mm"), no_help)]
    width: Length,
}

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
    let asked = Asked::read(reader);
    let keys = reader.row_keys(Asked::PIECES);
    let wanted = |(number, PieceAsked { label, length, count }): (usize, PieceAsked)| Wanted {
        id: text!("p{}", keys.get(number - 1).map_or("", String::as_str)),
        name: match label.is_empty() {
            true => reader.style().english().say(words::Piece { number }),
            false => label.clone(),
        },
        label: match label.is_empty() {
            true => reader.style().say(words::Piece { number }),
            false => label,
        },
        length_mm: length.get::<millimeter>(),
        count,
    };
    let wanted: Vec<Wanted> = (1..).zip(asked.pieces).map(wanted).collect();
    let mut shelf = Shelf::read(reader);
    let section = asked.section.map(|of| (of.thickness, of.width));
    shelf.weigh(section.map(|of| of.0), section.map(|of| of.1));
    // The planner stops at the first piece that is too long; all of them are to be told.
    let longest_mm = shelf.longest_mm();
    if !reader.has_faults() && longest_mm > 0.0 {
        for (index, one) in wanted.iter().enumerate() {
            if one.length_mm > longest_mm * (1.0 + 1e-6) {
                let too_long =
                    CutError::PieceTooLong { piece: index, length_mm: one.length_mm, longest_mm };
                let message = reader.style().say(too_long.said());
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
        working: planned.working(style.exact()),
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
    let row = |name: String, planned: &Planned, chosen: bool| TableRow {
        cells: vec![
            name,
            planned.bought_words(style),
            planned.amount(planned.plan.cost, style),
            style.length(Length::new::<millimeter>(planned.plan.waste_mm)),
        ],
        chosen,
    };
    let mut rows = vec![row(style.say(words::STORES_ALL), planned, true)];
    for (only, one) in stock.iter().enumerate().filter(|(_, one)| one.available != Some(0)) {
        let mut shelf = inputs.shelf.clone();
        for (index, other) in shelf.stock.iter_mut().enumerate() {
            if index != only {
                other.available = Some(0);
            }
        }
        let length = Length::new::<millimeter>(one.length_mm);
        let name = style.say(words::StoresOnly { length });
        match Planned::new(inputs.wanted.clone(), &shelf, QUICK_EFFORT) {
            Ok(planned) => rows.push(row(name, &planned, false)),
            Err(_) => rows.push(TableRow {
                cells: vec![name, style.say(words::STORES_NOT_ENOUGH), "–".into(), "–".into()],
                chosen: false,
            }),
        }
    }
    Some(Table {
        title: style.say(words::STORES),
        heads: [
            words::STORES_LENGTHS,
            words::STORES_BUY,
            if planned.plan.priced { words::STORES_COST } else { words::STORES_STOCK },
            words::STORES_LEFT_OVER,
        ]
        .map(|head| style.say(head))
        .into(),
        rows,
    })
}
