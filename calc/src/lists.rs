//! What a sheet adds to the project's lists: to buy, to cut, to mark.

use std::collections::BTreeMap;

use crate::quantity::{Length, Mass};
use crate::text::text;

/// A line of the buy list.
#[derive(Clone, Debug, PartialEq)]
pub struct BuyLine {
    /// What to ask for: `floor finish`.
    pub item: String,
    /// Which one: `1 gal container`. Lines with the same item, spec and unit are merged.
    pub spec: String,
    /// How many units.
    pub quantity: f64,
    /// What is counted: `each`, `ft`, `m`.
    pub unit: &'static str,
    /// Price of all of them, in the currency the prices were typed in; none where a price is missing.
    pub cost: Option<f64>,
    /// Mass of all of them, where it is known.
    pub mass: Option<Mass>,
}

/// A stock length and the pieces to cut from it.
#[derive(Clone, Debug, PartialEq)]
pub struct CutLine {
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
    /// Its name on the drawing and in the mark list.
    pub label: String,
    /// Its length. [length]
    pub length: Length,
}

/// A piece with marks along it, all measured from its left end.
#[derive(Clone, Debug, PartialEq)]
pub struct MarkStrip {
    /// Which piece, how many are alike where there are more, and what else is to be known: `board C, 3 alike, ripped to 4 in`.
    pub label: String,
    /// Its length. [length]
    pub length: Length,
    /// The marks, from left to right.
    pub marks: Vec<Mark>,
}

impl MarkStrip {
    /// Which piece, without the rest: the same in every unit system.
    pub fn name(&self) -> &str {
        self.label.split_once(", ").map_or(self.label.as_str(), |(name, _)| name)
    }

    /// How many pieces are marked alike.
    pub fn alike(&self) -> usize {
        let count = |part: &str| part.strip_suffix(" alike")?.parse().ok();
        self.label.split(", ").find_map(count).unwrap_or(1).max(1)
    }
}

/// A mark on a piece.
#[derive(Clone, Debug, PartialEq)]
pub struct Mark {
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
    /// A name for ticking the line off: the same for the same thing after any change of quantity.
    pub fn key(&self) -> String {
        key(&self.line)
    }

    /// The ids of the sheets it comes from.
    pub fn sheets(&self) -> impl Iterator<Item = &str> {
        self.from.iter().map(|share| share.sheet.as_str()).filter(|sheet| !sheet.is_empty())
    }

    /// How many units are bought, whole packs where there are packs.
    pub fn bought(&self) -> f64 {
        self.packs.map_or(self.line.quantity, |packs| packs.count * packs.size)
    }
}

pub(crate) fn key(line: &BuyLine) -> String {
    text!("{}|{}|{}", &line.item, &line.spec, &line.unit)
}

/// Merges like lines, keeping the order in which things were first asked for.
pub fn merge_buy_lines<'a>(
    lines: impl Iterator<Item = (&'a str, &'a BuyLine)>,
) -> Vec<MergedBuyLine> {
    let mut merged: Vec<MergedBuyLine> = Vec::new();
    let mut places: BTreeMap<(String, String, &str), usize> = BTreeMap::new();
    for (sheet, line) in lines {
        let alike = (folded(&line.item), folded(&line.spec), line.unit);
        let place = *places.entry(alike).or_insert(merged.len());
        match merged.get_mut(place) {
            Some(known) => known.add(sheet, line),
            None => merged.push(MergedBuyLine {
                line: line.clone(),
                from: vec![Share {
                    sheet: sheet.to_owned(),
                    quantity: line.quantity,
                    mass: line.mass,
                }],
                packs: None,
            }),
        }
    }
    merged
}

/// A name without what people write in several ways: capitals, spaces, × for x.
fn folded(name: &str) -> String {
    let mut folded = String::with_capacity(name.len());
    for word in name.split_whitespace() {
        if !folded.is_empty() {
            folded.push(' ');
        }
        for letter in word.chars() {
            folded.push(if letter == '×' { 'x' } else { letter.to_ascii_lowercase() });
        }
    }
    folded
}

impl MergedBuyLine {
    fn add(&mut self, sheet: &str, more: &BuyLine) {
        let line = &mut self.line;
        line.quantity += more.quantity;
        line.cost = line.cost.zip(more.cost).map(|(a, b)| a + b);
        line.mass = line.mass.zip(more.mass).map(|(a, b)| a + b);
        match self.from.iter_mut().find(|share| share.sheet == sheet) {
            Some(share) => {
                share.quantity += more.quantity;
                share.mass = share.mass.zip(more.mass).map(|(a, b)| a + b);
            }
            None => self.from.push(Share {
                sheet: sheet.to_owned(),
                quantity: more.quantity,
                mass: more.mass,
            }),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn line(spec: &str, quantity: f64, cost: Option<f64>) -> BuyLine {
        BuyLine {
            item: "screw".into(),
            spec: spec.into(),
            quantity,
            unit: "each",
            cost,
            mass: None,
        }
    }

    #[test]
    fn what_people_write_in_several_ways_is_one_thing() {
        let lines =
            ["#8 × 1 1/4 in", " #8  X 1 1/4 IN", "#8 x 1 1/2 in"].map(|s| line(s, 1.0, None));
        let merged = merge_buy_lines(lines.iter().map(|line| ("s1", line)));
        let quantities: Vec<f64> = merged.iter().map(|line| line.line.quantity).collect();
        assert_eq!(quantities, [2.0, 1.0]);
        assert_eq!(merged[0].line.spec, "#8 × 1 1/4 in");
    }

    #[test]
    fn a_strip_s_label_tells_its_name_and_how_many_are_alike() {
        let strip = |label: &str| MarkStrip {
            label: label.to_owned(),
            length: Length::default(),
            marks: Vec::new(),
        };
        let told = |label: &str| (strip(label).name().to_owned(), strip(label).alike());
        assert_eq!(told("board C, 3 alike, ripped to 4 in"), ("board C".to_owned(), 3));
        assert_eq!(told("strip"), ("strip".to_owned(), 1));
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
}
