//! The stock that a cut plan is made from: asked alike by every sheet that cuts, with its faults.

use crate::text::text;
use uom::si::f64::{Mass, MassDensity};
use uom::si::length::millimeter;

use super::planned::Section;
use crate::ask::{Ask, Figure};
use crate::carpentry::cut_stock::{CutError, LONGEST_MM, SHORTEST_MM, Stock};
use crate::fault::Fault;
use crate::lists::LineId;
use crate::mass::densities;
use crate::quantity::{LENGTH, Length, Style};
use crate::reader::Reader;

/// Work for a plan while someone types, in the planner's steps: the usual plan takes a hundredth of it. A plan that it does not
/// prove says so, with its bound.
pub const EFFORT: u64 = 10_000_000;

/// What is bought.
pub static MATERIAL: Ask = Ask::words("material", "What it is cut from")
    .default("board")
    .usual("1x6 tongue-and-groove board", "20 x 140 mm tongue-and-groove board")
    .help("Its name on the buy list; lengths of the same name are added up there.");
static STOCK_LENGTH: Ask =
    Ask::measure("length", "Length", &LENGTH, ["ft", "mm"], (SHORTEST_MM / 1e3, 30.0))
        .usual("8 ft", "2400 mm")
        .help("As it is sold; measure one, metric lengths run short of the feet they stand for.")
        .figure(Figure::Along);
static PRICE: Ask = Ask::number("price", "Price of one", (0.0, 1e6)).optional();
static ON_HAND: Ask = Ask::count("on_hand", "Here already", (0, 10_000))
    .optional()
    .help("Used first, at no cost. With no price beside prices of others, no more are bought.");
static AVAILABLE: Ask = Ask::count("available", "Most that can be bought", (0, 10_000))
    .optional()
    .help("How many the store has; 0 leaves this length out. Empty: as many as are wanted.");
/// The stock lengths.
pub static STOCK: Ask = Ask::rows(
    "stock",
    "Stock lengths",
    "stock length",
    1,
    &[&STOCK_LENGTH, &PRICE, &ON_HAND, &AVAILABLE],
)
.help("With a price for each, the cheapest are bought; without, the least length.");
/// The saw.
pub static KERF: Ask = Ask::measure("kerf", "Kerf", &LENGTH, ["in", "mm"], (0.0, 0.1))
    .usual("1/8 in", "3 mm")
    .help("Width of the saw cut: saw into a scrap and measure the slot.")
    .figure(Figure::Gap);
/// What it weighs.
pub static DENSITY: Ask = Ask::notation(
    "density",
    "Wood, or its density",
    "density",
    &["white pine", "radiata pine", "Scots pine", "Douglas fir", "Canadian spruce", "480 kg/m3"],
)
.optional()
.usual("white pine", "white pine")
.help("For the weight on the buy list: a wood of the list, or a density.");
/// Bad ends.
pub static END_TRIM: Ask = Ask::measure("end_trim", "End trim", &LENGTH, ["in", "mm"], (0.0, 10.0))
    .default("0 mm")
    .usual("1 in", "20 mm")
    .help("Taken off each stock length in all, both ends together, before cutting: splits, paint, snipe.")
    .figure(Figure::FromEnd);

/// Stock, saw and material as they were typed.
#[derive(Clone, Debug, PartialEq)]
pub struct Shelf {
    /// The name on the buy list.
    pub material: String,
    /// What is known of its section.
    pub section: Section,
    /// The stock lengths.
    pub stock: Vec<Stock>,
    /// Width of the saw cut. [mm]
    pub kerf_mm: f64,
    /// Taken off each stock length in all. [mm]
    pub end_trim_mm: f64,
    density: Option<MassDensity>,
    /// Mass of a metre, where density and section are known. [kg/m]
    kg_per_m: Option<f64>,
}

impl Shelf {
    /// Reads stock, kerf, end trim and material.
    pub fn read(reader: &Reader<'_>) -> Self {
        let mut stock: Vec<Stock> = reader.rows(&STOCK, |row| Stock {
            length_mm: row.measure::<Length>(&STOCK_LENGTH).get::<millimeter>(),
            price: row.maybe_number(&PRICE),
            on_hand: row.maybe_count(&ON_HAND).unwrap_or(0),
            available: row.maybe_count(&AVAILABLE),
        });
        // Among priced lengths, one that is here and has no price is no offer.
        if stock.iter().any(|stock| stock.price.is_some()) {
            for left in &mut stock {
                if left.price.is_none() && left.on_hand > 0 && left.available.is_none() {
                    left.available = Some(0);
                }
            }
        }
        Self {
            material: reader.words(&MATERIAL),
            section: Section::default(),
            stock,
            kerf_mm: reader.measure::<Length>(&KERF).get::<millimeter>(),
            end_trim_mm: reader.measure::<Length>(&END_TRIM).get::<millimeter>(),
            density: reader.maybe_notation(&DENSITY, densities::read),
            kg_per_m: None,
        }
    }

    /// What a length of it is, whatever it is called: its name as typed, its section and its length.
    pub fn id(&self, length_mm: f64) -> LineId {
        LineId::shared(text!(
            "stock/{}/{}{}",
            LineId::name(&self.material),
            self.section.id(),
            LineId::mm(length_mm)
        ))
    }

    /// Weighs the stock by its section, where that and the density are known.
    pub fn weigh(&mut self, thickness: Option<Length>, width: Option<Length>) {
        let metre = Length::new::<uom::si::length::meter>(1.0);
        self.kg_per_m = self.density.zip(thickness.zip(width)).map(|(density, (a, b))| {
            densities::mass(density, a * b, metre).get::<uom::si::mass::kilogram>()
        });
    }

    /// Takes a section that is known from elsewhere, and weighs the stock by it where it was not weighed yet.
    pub fn take_section(&mut self, section: Section) {
        self.section = section;
        if let (None, Some(a), Some((b, _))) =
            (self.kg_per_m, section.thickness_mm, section.width_mm)
        {
            let mm = Length::new::<millimeter>;
            self.weigh(Some(mm(a)), Some(mm(b)));
        }
    }

    /// Mass of so many lengths; none where it is not known.
    pub fn mass(&self, length_mm: f64, count: f64) -> Option<Mass> {
        let kg = self.kg_per_m? * length_mm / 1e3 * count;
        Some(Mass::new::<uom::si::mass::kilogram>(kg))
    }

    /// The longest piece that it gives. [mm]
    pub fn longest_mm(&self) -> f64 {
        let there = self.stock.iter().filter(|s| s.on_hand > 0 || s.available != Some(0));
        there.map(|stock| stock.length_mm - self.end_trim_mm).fold(0.0, f64::max)
    }
}

/// The planner's refusal as a fault; `piece` gives the field of the length of a piece.
pub fn fault(error: &CutError, piece: impl Fn(usize) -> String, style: Style) -> Fault {
    let length = |mm: f64| style.length(Length::new::<millimeter>(mm));
    match *error {
        CutError::NoStock | CutError::TooMuchStock { .. } | CutError::NoPlanFound => {
            Fault::new("stock", error.to_string())
        }
        CutError::NotEnoughStock { needed_mm, stock_mm } => Fault::new(
            "stock",
            text!(
                "the pieces take {} in all and cannot be cut from the {} here and for sale; allow more lengths",
                length(needed_mm),
                length(stock_mm)
            ),
        ),
        CutError::TooManyPieces { .. } => Fault::new("pieces", error.to_string()),
        CutError::PieceLength { piece: index, length_mm } => Fault::new(
            piece(index),
            text!(
                "{} is no length to cut; give one up to {}",
                length(length_mm),
                length(LONGEST_MM)
            ),
        ),
        CutError::PieceTooLong { piece: index, length_mm, longest_mm } => {
            Fault::new(piece(index), too_long(length_mm, longest_mm, style))
        }
        CutError::StockLength { stock, .. } => {
            Fault::new(text!("stock.{}.length", &stock), error.to_string())
        }
        CutError::Price { stock, .. } | CutError::PriceMissing { stock } => {
            Fault::new(text!("stock.{}.price", &stock), error.to_string())
        }
        CutError::Kerf { .. } => Fault::new("kerf", error.to_string()),
        CutError::EndTrim { .. } => Fault::new("end_trim", error.to_string()),
    }
}

/// What is said of a piece that no stock length gives.
pub fn too_long(length_mm: f64, longest_mm: f64, style: Style) -> String {
    let length = |mm: f64| style.length(Length::new::<millimeter>(mm));
    text!(
        "a piece of {} is longer than the stock gives ({}); add a longer stock length, or join the piece from two",
        length(length_mm),
        length(longest_mm)
    )
}
