//! Pieces with names, cut from stock with a name: the plan as answers, bars, and lines of the lists. Sheets that cut anything use it; the
//! solver behind it is [`carpentry::cut_stock`](crate::carpentry::cut_stock).

mod known;
pub(crate) mod planned;
pub(crate) mod stock;

use uom::si::length::millimeter;

pub use self::known::forget_plans;
use crate::lists::LineId;
use crate::quantity::Length;
use crate::text::text;

/// A way to cut a stock length.
#[derive(Clone, Debug, PartialEq)]
pub struct CutBar {
    /// What is cut: the id of its line on the buy list.
    pub stock_id: LineId,
    /// What is cut, with its length: `3/4 x 1 1/2 in pine, 8 ft`.
    pub stock: String,
    /// The stock length; none where it is cut from a roll. [length]
    pub length: Option<Length>,
    /// Width of the saw cut. [length]
    pub kerf: Length,
    /// How many are cut this way.
    pub count: usize,
    /// The pieces in cutting order.
    pub pieces: Vec<CutPiece>,
    /// What is left of each. [length]
    pub waste: Length,
}

/// A piece of a bar.
#[derive(Clone, Debug, PartialEq)]
pub struct CutPiece {
    /// Which one it is among its sheet's pieces; the same for pieces that are wanted alike.
    pub id: String,
    /// Its name.
    pub label: String,
    /// Its length. [length]
    pub length: Length,
    /// The id of its sheet.
    pub sheet: String,
}

impl CutBar {
    /// A name for ticking off: the same for the same pieces from the same stock, whatever they are called and whatever else the
    /// plan holds. The stock is separated by `|`, pieces by `+`, a piece's sheet by `.`, its length in mm by `@`.
    pub fn key(&self) -> String {
        let mm = |length: Length| crate::quantity::plain(length.get::<millimeter>(), 1);
        let mut key = self.stock_id.text().to_owned();
        for (at, piece) in self.pieces.iter().enumerate() {
            key.push_str(if at == 0 { "|" } else { "+" });
            key.push_str(&text!("{}.{}@{}", &piece.sheet, &piece.id, mm(piece.length)));
        }
        key
    }
}
