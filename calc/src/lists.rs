//! What a sheet adds to the project's lists: to buy, to cut, to mark.

mod aisle;
mod id;

use std::collections::BTreeMap;

pub use aisle::Aisle;
pub use id::LineId;

use crate::quantity::{Length, Mass, Style};
use crate::words::{common, project as words};

/// A line of the buy list. Write it with [`BuyLine::pieces`] or [`BuyLine::amount`], and what else is known after it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct BuyLine {
    /// What it is, whatever it is called. Lines with the same id are merged.
    pub id: LineId,
    /// What to ask for: `floor finish`.
    pub item: String,
    /// Which one: `1 gal container`.
    pub spec: String,
    /// How many units are bought, rounded up.
    pub quantity: f64,
    /// How many units are used, exact: of 2 containers 1.4. What is on hand and used is among them.
    pub needed: f64,
    /// How many units that are here already are used, and need not be bought.
    pub on_hand: f64,
    /// What is counted: `each`, `ft`, `m`.
    pub unit: &'static str,
    /// Price of all that are bought, in the currency the prices were typed in; none where a price is missing.
    pub cost: Option<f64>,
    /// Mass of all of them and of those on hand, where it is known.
    pub mass: Option<Mass>,
}

/// What is counted in pieces.
pub const EACH: &str = "each";

impl BuyLine {
    /// So many pieces, all of them used.
    pub fn pieces(
        id: LineId,
        item: impl Into<String>,
        spec: impl Into<String>,
        count: f64,
    ) -> Self {
        let (item, spec) = (item.into(), spec.into());
        Self { id, item, spec, quantity: count, needed: count, unit: EACH, ..Self::default() }
    }

    /// So much of what is measured out: bought is what is needed, rounded up by [`to_buy`].
    pub fn amount(
        id: LineId,
        item: impl Into<String>,
        spec: impl Into<String>,
        needed: f64,
        unit: &'static str,
    ) -> Self {
        let quantity = to_buy(needed, unit);
        let (item, spec) = (item.into(), spec.into());
        Self { id, item, spec, quantity, needed, unit, ..Self::default() }
    }

    /// The same with a price for all of them.
    #[must_use]
    pub fn cost(mut self, cost: Option<f64>) -> Self {
        self.cost = cost;
        self
    }

    /// The same with the mass of all of them.
    #[must_use]
    pub fn mass(mut self, mass: Option<Mass>) -> Self {
        self.mass = mass;
        self
    }
}

/// The amount to buy for a need, in the unit that it is shown in: up to the next whole piece, foot or
/// metre; what is poured or weighed up to the next tenth. Never less than is needed, and never one more
/// for a need that is whole but for the last digits.
pub fn to_buy(needed: f64, unit: &str) -> f64 {
    let steps = if matches!(unit, EACH | "ft" | "m") { 1.0 } else { 10.0 };
    let count = needed * steps;
    (count - 1e-9 * count.abs().max(1.0)).ceil().max(0.0) / steps
}

/// A quantity of a line in SI, as ticks are kept: metres for feet, litres for quarts; what is counted stays as it is.
pub fn in_si(quantity: f64, unit: &str) -> f64 {
    match unit {
        "ft" => quantity * 0.3048,
        // 57.75 in3.
        "qt" => quantity * 0.946_352_946,
        _ => quantity,
    }
}

/// A stock length and the pieces to cut from it.
#[derive(Clone, Debug, PartialEq)]
pub struct CutLine {
    /// What is cut: the id of its line on the buy list.
    pub id: LineId,
    /// What is cut: `strip 3/4 in x 1 1/2 in, 8 ft`.
    pub stock: String,
    /// How many stock lengths are cut this way.
    pub count: usize,
    /// The pieces in the order they are cut.
    pub pieces: Vec<Piece>,
    /// What is left of each stock length, kerfs taken off. [length]
    pub waste: Length,
}

/// A piece of a cut line.
#[derive(Clone, Debug, PartialEq)]
pub struct Piece {
    /// Which one it is among the sheet's pieces, whatever it is called; the same for pieces that are
    /// wanted alike: `p2`, `b7.2`, `r3`.
    pub id: String,
    /// Its name on the drawing and in the mark list.
    pub label: String,
    /// Its length. [length]
    pub length: Length,
}

/// A piece with marks along it, all measured from its left end but where it says otherwise.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct MarkStrip {
    /// Which one it is among the sheet's strips, whatever it is called; as the id of a piece.
    pub id: String,
    /// Which piece, in words: `board C`.
    pub label: String,
    /// What else is to be known: `ripped to 4 in`.
    pub note: String,
    /// Its marks count from somewhere else, which the note tells.
    pub own_datum: bool,
    /// How many pieces are marked alike.
    pub alike: usize,
    /// Its length. [length]
    pub length: Length,
    /// The marks, from left to right.
    pub marks: Vec<Mark>,
}

impl MarkStrip {
    /// How many are alike where there are more, and what else is to be known: `3 alike, ripped to 4 in`.
    pub fn more(&self, style: Style) -> String {
        let alike = match self.alike {
            0 | 1 => String::new(),
            count => style.say(words::Alike { count }),
        };
        both(alike, &self.note, style)
    }

    /// All of its words: `board C, 3 alike, ripped to 4 in`.
    pub fn title(&self, style: Style) -> String {
        both(self.label.clone(), &self.more(style), style)
    }
}

/// One text and another behind it, where there are both.
fn both(one: String, other: &str, style: Style) -> String {
    match (one.is_empty(), other.is_empty()) {
        (false, false) => style.say(common::ListMiddle { before: one, rest: other }),
        (true, false) => other.to_owned(),
        (_, true) => one,
    }
}

/// A mark on a piece.
#[derive(Clone, Debug, PartialEq)]
pub struct Mark {
    /// Which one it is among those of its strip, whatever it is called: `r4`.
    pub id: String,
    /// What is marked: `rib 4`.
    pub label: String,
    /// Distance from the piece's left end, exact; it is rounded where it is shown. [length]
    pub at: Length,
    /// What else is to be known about it: `filled`, `too close to the end`.
    pub note: String,
}

/// A line of the whole project's buy list: like lines of all sheets, merged.
#[derive(Clone, Debug, PartialEq)]
pub struct MergedBuyLine {
    /// What it is, with the sheet's id in front where it is a thing of one sheet alone.
    pub id: String,
    /// The line, with the quantities and costs of all its sheets.
    pub line: BuyLine,
    /// What each of its sheets asks for, in the order of the file; what was added by hand comes
    /// from the sheet without an id.
    pub from: Vec<Share>,
    /// The packs it is sold in, where they were given.
    pub packs: Option<Packs>,
}

/// What one sheet adds to a line.
#[derive(Clone, Debug, PartialEq)]
pub struct Share {
    /// The sheet's id.
    pub sheet: String,
    /// How many units.
    pub quantity: f64,
    /// How many units stay aboard: those bought, or so much of them as is needed, and those that were here.
    pub used: f64,
    /// Mass of these, where it is known.
    pub mass: Option<Mass>,
}

/// Packs of a line.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Packs {
    /// Units in one pack, more than 0.
    pub size: f64,
    /// How many packs are enough.
    pub count: f64,
    /// Units left over of them.
    pub left_over: f64,
}

impl MergedBuyLine {
    /// What it is, for ticks and for what is typed for it: the same after any change that keeps the thing.
    pub fn key(&self) -> &str {
        &self.id
    }

    /// The ids of the sheets it comes from.
    pub fn sheets(&self) -> impl Iterator<Item = &str> {
        self.from.iter().map(|share| share.sheet.as_str()).filter(|sheet| !sheet.is_empty())
    }

    /// How many units have to be bought at least: pieces whole, what is measured out to the last digit.
    pub fn asked(&self) -> f64 {
        match self.line.unit {
            EACH => self.line.quantity,
            _ => self.line.needed - self.line.on_hand,
        }
    }

    /// How many units are bought, whole packs where there are packs.
    pub fn bought(&self) -> f64 {
        self.packs.map_or(self.line.quantity, |packs| packs.count * packs.size)
    }
}

/// Merges lines of the same id, keeping the order in which things were first asked for.
pub fn merge_buy_lines<'a>(
    lines: impl Iterator<Item = (&'a str, &'a BuyLine)>,
) -> Vec<MergedBuyLine> {
    let mut merged: Vec<MergedBuyLine> = Vec::new();
    let mut places: BTreeMap<(String, &str), usize> = BTreeMap::new();
    for (sheet, line) in lines {
        let id = line.id.of_sheet(sheet);
        let place = *places.entry((id.clone(), line.unit)).or_insert(merged.len());
        match merged.get_mut(place) {
            Some(known) => known.add(sheet, line),
            None => merged.push(MergedBuyLine {
                id,
                line: line.clone(),
                from: vec![Share::of(sheet, line)],
                packs: None,
            }),
        }
    }
    merged
}

impl Share {
    fn of(sheet: &str, line: &BuyLine) -> Self {
        let used = match line.unit {
            EACH => line.quantity + line.on_hand,
            _ => line.needed,
        };
        Self { sheet: sheet.to_owned(), quantity: line.quantity, used, mass: line.mass }
    }
}

impl MergedBuyLine {
    fn add(&mut self, sheet: &str, more: &BuyLine) {
        let line = &mut self.line;
        line.needed += more.needed;
        line.on_hand += more.on_hand;
        // What is measured out is rounded up once; containers and stock as each sheet rounds them.
        line.quantity = match line.unit {
            EACH => line.quantity + more.quantity,
            unit => to_buy(line.needed - line.on_hand, unit),
        };
        line.cost = line.cost.zip(more.cost).map(|(a, b)| a + b);
        line.mass = line.mass.zip(more.mass).map(|(a, b)| a + b);
        match self.from.iter_mut().find(|share| share.sheet == sheet) {
            Some(share) => {
                let more = Share::of(sheet, more);
                share.quantity += more.quantity;
                share.used += more.used;
                share.mass = share.mass.zip(more.mass).map(|(a, b)| a + b);
            }
            None => self.from.push(Share::of(sheet, more)),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn line(name: &str, quantity: f64, cost: Option<f64>) -> BuyLine {
        BuyLine::pieces(LineId::shared(name), "screw", name, quantity).cost(cost)
    }

    #[test]
    fn what_is_bought_is_never_less_than_what_is_needed() {
        let cases = [
            (0.14, "qt", 0.2),
            (0.2, "qt", 0.2),
            (0.1 + 0.2, "l", 0.3),
            (3.0 * 0.3 + 0.1, "l", 1.0),
            (12.000_000_000_1, "ft", 12.0),
            (12.001, "ft", 13.0),
            (1.4, EACH, 2.0),
            (0.0, "m", 0.0),
        ];
        for (needed, unit, bought) in cases {
            assert_eq!(to_buy(needed, unit), bought, "{needed} {unit}");
        }
    }

    #[test]
    fn a_strip_says_how_many_are_alike_and_what_else_is_to_be_known() {
        let style = Style::new(crate::quantity::UnitSystem::Imperial);
        let strip = |alike, note: &str| MarkStrip {
            label: "board C".into(),
            note: note.into(),
            alike,
            ..MarkStrip::default()
        };
        assert_eq!(strip(3, "ripped to 4 in").title(style), "board C, 3 alike, ripped to 4 in");
        assert_eq!(strip(1, "").title(style), "board C");
        assert_eq!(strip(1, "ripped").more(style), "ripped");
    }

    #[test]
    fn what_is_measured_out_is_rounded_once_over_all_sheets() {
        let wire = |m: f64| BuyLine::amount(LineId::shared("wire"), "wire", "", m, "m");
        let lines = [wire(2.4), wire(2.4)];
        let merged = merge_buy_lines([("s1", &lines[0]), ("s2", &lines[1])].into_iter());
        assert_eq!((merged[0].line.needed, merged[0].line.quantity), (4.8, 5.0));
    }

    #[test]
    fn like_lines_are_merged_and_a_missing_price_leaves_no_total() {
        let lines = [line("a", 2.0, Some(3.0)), line("b", 1.0, None), line("a", 5.0, Some(4.0))];
        let ids = ["s1", "s1", "s2"];
        let merged = merge_buy_lines(ids.iter().copied().zip(&lines));
        assert_eq!(merged.len(), 2);
        assert_eq!((merged[0].line.quantity, merged[0].line.cost), (7.0, Some(7.0)));
        assert_eq!(merged[0].sheets().collect::<Vec<_>>(), ["s1", "s2"]);
        assert_eq!(merged[0].from[1].quantity, 5.0);
        assert_eq!(merged[1].line.cost, None);
    }

    #[test]
    fn lines_of_one_sheet_alone_are_not_merged_with_those_of_another() {
        let lid = BuyLine::pieces(LineId::own("lid"), "lid", "", 1.0);
        let merged = merge_buy_lines([("s1", &lid), ("s2", &lid), ("s1", &lid)].into_iter());
        let found: Vec<_> = merged.iter().map(|one| (one.key(), one.line.quantity)).collect();
        assert_eq!(found, [("s1/lid", 2.0), ("s2/lid", 1.0)]);
    }
}
