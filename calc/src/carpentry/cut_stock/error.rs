//! What can be wrong with a cut task.

use std::fmt;

use super::{LONGEST_MM, MOST_PIECES, MOST_STOCK, SHORTEST_MM};

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

impl fmt::Display for CutError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NoStock => f.write_str("there is no stock to cut from; give at least one length that is on hand or for sale"),
            Self::TooManyPieces { pieces } => {
                write!(f, "{pieces} pieces are too many for one plan; split them into plans of at most {MOST_PIECES}")
            }
            Self::TooMuchStock { stock } => {
                write!(f, "{stock} stock lengths are too many for one plan; give at most {MOST_STOCK}")
            }
            Self::PieceLength { piece, length_mm } => write!(
                f,
                "piece {} is {length_mm} mm long; give a length from {SHORTEST_MM} mm to {} m",
                piece + 1,
                LONGEST_MM / 1000.0
            ),
            Self::StockLength { stock, length_mm } => write!(
                f,
                "stock length {} is {length_mm} mm; give a length above zero, up to {} m",
                stock + 1,
                LONGEST_MM / 1000.0
            ),
            Self::Price { stock, price } => write!(
                f,
                "the price of stock length {} is {price}; give a price from 0 to 1,000,000",
                stock + 1
            ),
            Self::PriceMissing { stock } => write!(
                f,
                "stock length {} has no price though others have one; price it too, or leave every price out",
                stock + 1
            ),
            Self::Kerf { kerf_mm } => {
                write!(f, "the kerf is {kerf_mm} mm; give the width of the saw cut, from 0 to 100 mm")
            }
            Self::EndTrim { end_trim_mm } => write!(
                f,
                "the end trim is {end_trim_mm} mm; give what is taken off a stock length in all, 0 or more"
            ),
            Self::PieceTooLong { piece, length_mm, longest_mm } => write!(
                f,
                "piece {} is {length_mm} mm long, but the longest that the stock gives is {longest_mm} mm; add a longer stock length or join the piece from two",
                piece + 1
            ),
            Self::NotEnoughStock { needed_mm, stock_mm } => write!(
                f,
                "the pieces take {needed_mm:.0} mm in all and cannot be cut from the {stock_mm:.0} mm of stock on hand and available; allow more lengths"
            ),
            Self::NoPlanFound => f.write_str("no plan was found within the stock available; allow one or two lengths more"),
        }
    }
}

impl std::error::Error for CutError {}
