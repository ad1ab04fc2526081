//! What can be wrong with a cut task, and how it is said.

use std::fmt;

use uom::si::length::millimeter;

use super::{LONGEST_MM, MOST_PIECES, MOST_STOCK, WIDEST_KERF_MM};
use crate::quantity::{Length, Style, UnitSystem, money};
use crate::words::{Arg, Msg, stock as words};

/// Why there is no cut plan.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum CutError {
    /// There is no stock length to cut from.
    NoStock,
    /// More pieces than a plan takes.
    TooManyPieces {
        /// Pieces asked for.
        pieces: u64,
    },
    /// More stock lengths than a plan takes.
    TooMuchStock {
        /// Stock lengths given.
        stock: usize,
    },
    /// A piece's length is no length to cut.
    PieceLength {
        /// Index of the piece.
        piece: usize,
        /// Its length. [mm]
        length_mm: f64,
    },
    /// A stock length is no length to cut from.
    StockLength {
        /// Index of the stock length.
        stock: usize,
        /// Its length. [mm]
        length_mm: f64,
    },
    /// A price below zero, too high, or not a number.
    Price {
        /// Index of the stock length.
        stock: usize,
        /// Its price.
        price: f64,
    },
    /// This stock length has no price though another has one.
    PriceMissing {
        /// Index of the stock length.
        stock: usize,
    },
    /// The kerf is below zero or wider than 100 mm.
    Kerf {
        /// The kerf. [mm]
        kerf_mm: f64,
    },
    /// The end trim is below zero or not a number.
    EndTrim {
        /// The end trim. [mm]
        end_trim_mm: f64,
    },
    /// A piece is longer than what any stock length leaves after its end trim.
    PieceTooLong {
        /// Index of the piece.
        piece: usize,
        /// Its length. [mm]
        length_mm: f64,
        /// The longest that can be cut. [mm]
        longest_mm: f64,
    },
    /// The stock on hand and available does not hold the pieces, however they are cut.
    NotEnoughStock {
        /// Length of all pieces. [mm]
        needed_mm: f64,
        /// Length of all stock on hand and available. [mm]
        stock_mm: f64,
    },
    /// The stock may suffice, but no plan was found within the effort.
    NoPlanFound,
}

impl CutError {
    /// Why there is none, as a message; which piece or stock length is meant is for its input to say.
    pub fn said(&self) -> Msg {
        match *self {
            Self::NoStock => words::NO_STOCK.into(),
            Self::TooManyPieces { pieces } => {
                words::TooManyPieces { pieces: Arg::Count(pieces), most: MOST_PIECES }.into()
            }
            Self::TooMuchStock { stock } => {
                words::TooMuchStock { lengths: stock, most: MOST_STOCK }.into()
            }
            Self::PieceLength { length_mm, .. } => {
                words::PieceLength { length: mm(length_mm), most: mm(LONGEST_MM) }.into()
            }
            Self::StockLength { length_mm, .. } => {
                words::StockLength { length: mm(length_mm), most: mm(LONGEST_MM) }.into()
            }
            Self::Price { price, .. } => words::PriceOutOfRange { price: money(price) }.into(),
            Self::PriceMissing { .. } => words::PRICE_MISSING.into(),
            Self::Kerf { kerf_mm } => {
                words::KerfOutOfRange { kerf: mm(kerf_mm), most: mm(WIDEST_KERF_MM) }.into()
            }
            Self::EndTrim { end_trim_mm } => {
                words::EndTrimOutOfRange { trim: mm(end_trim_mm) }.into()
            }
            Self::PieceTooLong { length_mm, longest_mm, .. } => {
                words::PieceTooLong { length: mm(length_mm), longest: mm(longest_mm) }.into()
            }
            Self::NotEnoughStock { needed_mm, stock_mm } => {
                words::NotEnoughStock { needed: mm(needed_mm), stock: mm(stock_mm) }.into()
            }
            Self::NoPlanFound => words::NO_PLAN_FOUND.into(),
        }
    }
}

fn mm(length: f64) -> Length {
    Length::new::<millimeter>(length)
}

/// In English and millimeters: for tests and scripts.
impl fmt::Display for CutError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&Style::new(UnitSystem::Metric).say(self.said()))
    }
}

impl std::error::Error for CutError {}
