//! The stock that a cut plan is made from: asked alike by every sheet that cuts, with its faults.

use calc_derive::Inputs;
use uom::si::f64::{Mass, MassDensity};
use uom::si::length::millimeter;

use super::planned::Section;
use crate::ask::{Ask, Figure};
use crate::carpentry::cut_stock::{CutError, SHORTEST_MM, Stock};
use crate::fault::Fault;
use crate::lists::LineId;
use crate::mass::densities;
use crate::quantity::{LENGTH, Length, Style};
use crate::reader::Reader;
use crate::text::text;
use crate::words::{Msg, Phrase, stock as words};

/// Work for a plan while someone types, in the planner's steps: the usual plan takes a hundredth of it. A plan that it does not
/// prove says so, with its bound.
pub const EFFORT: u64 = 10_000_000;

/// What is bought.
pub static MATERIAL: Ask = Ask::words("material", "")
    .default("board")
    .usual("1x6 tongue-and-groove board", "20 x 140 mm tongue-and-groove board")
    .named(Phrase::Id(words::MATERIAL))
    .told(Phrase::Id(words::MATERIAL_HELP));
/// The stock lengths.
pub static STOCK: Ask = Ask::rows("stock", "", "", 1, StockLength::ASKS)
    .row(Phrase::Id(words::STOCK_ROW))
    .named(Phrase::Id(words::STOCK))
    .told(Phrase::Id(words::STOCK_HELP));
/// The saw.
pub static KERF: Ask = Ask::measure("kerf", "", &LENGTH, ["in", "mm"], (0.0, 0.1))
    .usual("1/8 in", "3 mm")
    .convention()
    .named(Phrase::Id(words::KERF))
    .told(Phrase::Id(words::KERF_HELP))
    .figure(Figure::Gap);
/// What it weighs.
pub static DENSITY: Ask = Ask::notation(
    "density",
    "",
    "density",
    &["white pine", "radiata pine", "Scots pine", "Douglas fir", "Canadian spruce", "480 kg/m3"],
)
.optional()
.usual("white pine", "white pine")
.named(Phrase::Id(words::DENSITY))
.told(Phrase::Id(words::DENSITY_HELP));
/// Bad ends.
pub static END_TRIM: Ask = Ask::measure("end_trim", "", &LENGTH, ["in", "mm"], (0.0, 10.0))
    .default("0 mm")
    .usual("1 in", "20 mm")
    .named(Phrase::Id(words::END_TRIM))
    .told(Phrase::Id(words::END_TRIM_HELP))
    .figure(Figure::FromEnd);

/// One stock length as it was typed.
#[derive(Inputs)]
#[words(stock)]
struct StockLength {
    #[ask(
        units("ft", "mm"),
        range(SHORTEST_MM / 1e3, 30.0),
        usual("8 ft", "2400 mm"),
        figure(Figure::Along)
    )]
    length: Length,
    #[ask(range(0.0, 1e6), no_help)]
    price: Option<f64>,
    #[ask(range(0, 10_000))]
    on_hand: Option<u32>,
    #[ask(range(0, 10_000))]
    available: Option<u32>,
}

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
        let mut stock: Vec<Stock> = reader.rows(&STOCK, |row| {
            let StockLength { length, price, on_hand, available } = StockLength::read(row);
            Stock {
                length_mm: length.get::<millimeter>(),
                price,
                on_hand: on_hand.unwrap_or(0),
                available,
            }
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
            density: reader.maybe_notation(&DENSITY, |text| {
                densities::read(text).map_err(|message| reader.style().say(message))
            }),
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
    let (field, message) = refused(error, piece);
    Fault::new(field, style.say(message))
}

/// The planner's refusal as the field that it is about, and what is said of it.
pub fn refused(error: &CutError, piece: impl Fn(usize) -> String) -> (String, Msg) {
    let field = match *error {
        CutError::NoStock
        | CutError::TooMuchStock { .. }
        | CutError::NotEnoughStock { .. }
        | CutError::NoPlanFound => "stock".into(),
        CutError::TooManyPieces { .. } => "pieces".into(),
        CutError::PieceLength { piece: index, .. }
        | CutError::PieceTooLong { piece: index, .. } => piece(index),
        CutError::StockLength { stock, .. } => text!("stock.{}.length", &stock),
        CutError::Price { stock, .. } | CutError::PriceMissing { stock } => {
            text!("stock.{}.price", &stock)
        }
        CutError::Kerf { .. } => "kerf".into(),
        CutError::EndTrim { .. } => "end_trim".into(),
    };
    (field, error.said())
}
