//! A cut plan as a record, as bars, and as lines of the buy and the cut list.

mod shown;

use std::sync::Arc;

use calc_derive::Outcome;
use uom::si::length::millimeter;

use super::known::plan_once;
use super::stock::{EFFORT, Shelf};
use super::{CutBar, CutPiece};
use crate::carpentry::cut_stock::{
    CutError, CutPlan, CutTask, Pattern, Piece, PlacedPiece, follow,
};
use crate::lists::{self, BuyLine, CutLine, LineId};
use crate::outcome::{Outcome, Record};
use crate::quantity::{Length, Style};
use crate::source::Source;
use crate::text::text;
use crate::words::cut_plan as words;

/// Σ of what is bought.
pub static COST: Source = Source::identity_of(words::SOURCE_COST);
/// What the pieces leave.
pub static WASTE: Source = Source::identity_of(words::SOURCE_WASTE);

/// What is known of the section of a piece: pieces of one section can be cut from one stock length.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Section {
    /// From the support to the face. [mm]
    pub thickness_mm: Option<f64>,
    /// Least and greatest width that it may have. [mm]
    pub width_mm: Option<(f64, f64)>,
}

/// Sections that differ by less are the same. [mm]
const SAME_SECTION_MM: f64 = 0.5;

impl Section {
    /// A section of this thickness and width. [mm]
    pub fn new(thickness_mm: f64, width_mm: f64) -> Self {
        Self { thickness_mm: Some(thickness_mm), width_mm: Some((width_mm, width_mm)) }
    }

    /// Whether nothing known of both speaks against their being the same.
    pub fn may_be(&self, other: &Self) -> bool {
        let thickness = self.thickness_mm.zip(other.thickness_mm);
        let width = self.width_mm.zip(other.width_mm);
        thickness.is_none_or(|(a, b)| (a - b).abs() < SAME_SECTION_MM)
            && width.is_none_or(|(a, b)| a.0 < b.1 + SAME_SECTION_MM && b.0 < a.1 + SAME_SECTION_MM)
    }

    /// Whether both of its measures are known, and no range.
    pub fn is_known(&self) -> bool {
        self.thickness_mm.is_some() && self.width_mm.is_some_and(|(least, most)| least == most)
    }

    /// The section as part of an id, with what separates it from the next: `19x38mm/`; empty where it is not known.
    pub fn id(&self) -> String {
        match (self.thickness_mm, self.width_mm) {
            (Some(thickness), Some((least, most))) if least == most => {
                text!("{}x{}/", LineId::tenths(thickness), LineId::mm(least))
            }
            _ => String::new(),
        }
    }

    /// What is known of two sections that may be the same.
    #[must_use]
    pub fn and(&self, other: &Self) -> Self {
        let width_mm = match (self.width_mm, other.width_mm) {
            (Some(a), Some(b)) => Some((a.0.max(b.0), a.1.min(b.1))),
            (a, b) => a.or(b),
        };
        Self { thickness_mm: self.thickness_mm.or(other.thickness_mm), width_mm }
    }
}

/// Equal pieces that are wanted.
#[derive(Clone, Debug, PartialEq)]
pub struct Wanted {
    /// Which they are among the pieces of their sheet, whatever they are called: `p2`.
    pub id: String,
    /// Their name.
    pub label: String,
    /// Their name in the outcome: the same in every language.
    pub name: String,
    /// Finished length. [mm]
    pub length_mm: f64,
    /// How many.
    pub count: u32,
}

/// A plan as other sheets and scripts read it.
#[derive(Outcome)]
struct OutcomePlan {
    patterns: Vec<OutcomePattern>,
    stock: Vec<OutcomeStock>,
    /// Price of what is bought, or its length where no price is given. [mm]
    cost: f64,
    waste_mm: f64,
    /// In the same terms as the cost.
    bound: f64,
    proved: bool,
}

/// One way of cutting.
#[derive(Outcome)]
struct OutcomePattern {
    stock_mm: f64,
    count: u32,
    pieces: Vec<OutcomePiece>,
    waste_mm: f64,
}

/// A piece in its place.
#[derive(Outcome)]
struct OutcomePiece {
    label: String,
    length_mm: f64,
}

/// So many of a stock length.
#[derive(Outcome)]
struct OutcomeStock {
    length_mm: f64,
    count: u32,
    /// Of one.
    price: Option<f64>,
    /// Where they are here already.
    on_hand: Option<bool>,
}

/// A cut plan with the names of its pieces and the stock it was made from.
#[derive(Clone, Debug, PartialEq)]
pub struct Planned {
    /// The plan.
    pub plan: CutPlan,
    wanted: Vec<Wanted>,
    shelf: Shelf,
}

impl Planned {
    /// Plans the pieces.
    ///
    /// # Errors
    /// As the planner's.
    pub fn new(wanted: Vec<Wanted>, shelf: &Shelf, effort: u64) -> Result<Self, CutError> {
        let plan = plan_once(cut_task(&wanted, shelf, effort))?;
        Ok(Self { plan, wanted, shelf: shelf.clone() })
    }

    /// The pieces cut as a plan that is known already cuts them.
    ///
    /// # Errors
    /// As the planner's.
    pub fn follow(wanted: Vec<Wanted>, shelf: &Shelf, known: &CutPlan) -> Result<Self, CutError> {
        let plan = follow(&cut_task(&wanted, shelf, 0), known)?;
        Ok(Self { plan, wanted, shelf: shelf.clone() })
    }

    /// The plan as it is handed to the cut list of the project.
    pub fn cutting(&self) -> Option<Arc<Self>> {
        Some(Arc::new(self.clone()))
    }

    /// The same plan of this section.
    pub fn of_section(&self, section: Section) -> Self {
        let mut same = self.clone();
        same.shelf.take_section(section);
        same
    }

    /// The plan with no more on hand than this of each length: the same plan where it uses no more, else a new one; none where
    /// the pieces cannot be cut from that and from what is for sale.
    pub fn limited(&self, on_hand: &[u32]) -> Option<Self> {
        let mut shelf = self.shelf.clone();
        for (stock, on_hand) in shelf.stock.iter_mut().zip(on_hand) {
            stock.on_hand = *on_hand;
        }
        let fits = self.plan.on_hand_used.iter().zip(on_hand).all(|(used, there)| used <= there);
        if fits {
            return Some(Self { shelf, ..self.clone() });
        }
        Self::new(self.wanted.clone(), &shelf, EFFORT).ok()
    }

    /// The pieces that were asked for.
    pub fn wanted(&self) -> &[Wanted] {
        &self.wanted
    }

    /// The stock they are cut from.
    pub fn shelf(&self) -> &Shelf {
        &self.shelf
    }

    /// Bought lengths and those that were here already, apart.
    fn stock_used(&self) -> Vec<OutcomeStock> {
        let mut used = Vec::new();
        for (index, stock) in self.shelf.stock.iter().enumerate() {
            let (length_mm, here, bought) =
                (stock.length_mm, self.plan.on_hand_used[index], self.plan.bought[index]);
            if here > 0 {
                let free = self.plan.priced.then_some(0.0);
                used.push(OutcomeStock {
                    length_mm,
                    count: here,
                    price: free,
                    on_hand: Some(true),
                });
            }
            if bought > 0 {
                let price = stock.price;
                used.push(OutcomeStock { length_mm, count: bought, price, on_hand: None });
            }
        }
        used
    }

    /// Lines for the buy list.
    pub fn buy(&self, style: Style) -> Vec<BuyLine> {
        self.buy_short_of(&[], style)
    }

    /// The same where `short` of each length on hand are used elsewhere, and are bought instead: at its price, if it has one.
    pub fn buy_short_of(&self, short: &[u32], style: Style) -> Vec<BuyLine> {
        let counts = self.plan.bought.iter().zip(&self.plan.on_hand_used).enumerate();
        let stock = self.shelf.stock.iter().zip(counts);
        stock
            .filter(|(_, (_, (bought, here)))| **bought + **here > 0)
            .map(|(stock, (at, (bought, here)))| {
                let short = short.get(at).copied().unwrap_or(0).min(*here);
                let (bought, here) = (f64::from(bought + short), f64::from(here - short));
                let id = self.shelf.id(stock.length_mm);
                let spec = length(stock.length_mm, style);
                let free = (bought == 0.0).then_some(0.0);
                BuyLine {
                    needed: bought + here,
                    on_hand: here,
                    ..BuyLine::pieces(id, self.shelf.material.as_str(), spec, bought)
                        .cost(stock.price.map(|price| price * bought).or(free))
                        .mass(self.shelf.mass(stock.length_mm, bought + here))
                }
            })
            .collect()
    }

    /// Lines for the cut list.
    pub fn cut(&self, style: Style) -> Vec<CutLine> {
        let patterns = self.plan.patterns.iter();
        patterns
            .map(|pattern| CutLine {
                id: self.shelf.id(self.stock_mm(pattern)),
                stock: text!("{}, {}", &self.shelf.material, length(self.stock_mm(pattern), style)),
                count: pattern.count as usize,
                pieces: pattern
                    .pieces
                    .iter()
                    .map(|piece| lists::Piece {
                        id: self.id(piece.label),
                        label: self.label(piece.label),
                        length: Length::new::<millimeter>(piece.length_mm),
                    })
                    .collect(),
                waste: Length::new::<millimeter>(pattern.waste_mm),
            })
            .collect()
    }

    /// The ways of cutting for the project's cut list; `sheet` names the sheet of a wanted piece.
    pub fn bars(&self, sheet: &dyn Fn(usize) -> String, style: Style) -> Vec<CutBar> {
        let patterns = self.plan.patterns.iter();
        let mm = Length::new::<millimeter>;
        patterns
            .map(|pattern| CutBar {
                stock_id: self.shelf.id(self.stock_mm(pattern)),
                stock: text!("{}, {}", &self.shelf.material, length(self.stock_mm(pattern), style)),
                length: Some(mm(self.stock_mm(pattern))),
                kerf: mm(self.shelf.kerf_mm),
                count: pattern.count as usize,
                pieces: pattern
                    .pieces
                    .iter()
                    .map(|piece| CutPiece {
                        id: self.id(piece.label),
                        label: self.label(piece.label),
                        length: mm(piece.length_mm),
                        sheet: sheet(piece.label),
                    })
                    .collect(),
                waste: mm(pattern.waste_mm),
            })
            .collect()
    }

    fn id(&self, index: usize) -> String {
        self.wanted.get(index).map_or(String::new(), |one| one.id.clone())
    }

    fn label(&self, index: usize) -> String {
        self.wanted.get(index).map_or(String::new(), |one| one.label.clone())
    }

    fn stock_mm(&self, pattern: &Pattern) -> f64 {
        self.shelf.stock.get(pattern.stock).map_or(0.0, |stock| stock.length_mm)
    }
}

impl Outcome for Planned {
    /// The plan as the outcome's numbers.
    fn record(&self) -> Record {
        let plan = &self.plan;
        let piece = |piece: &PlacedPiece| OutcomePiece {
            label: self.wanted.get(piece.label).map_or(String::new(), |one| one.name.clone()),
            length_mm: piece.length_mm,
        };
        let pattern = |pattern: &Pattern| OutcomePattern {
            stock_mm: self.stock_mm(pattern),
            count: pattern.count,
            pieces: pattern.pieces.iter().map(piece).collect(),
            waste_mm: pattern.waste_mm,
        };
        OutcomePlan {
            patterns: plan.patterns.iter().map(pattern).collect(),
            stock: self.stock_used(),
            cost: plan.cost,
            waste_mm: plan.waste_mm,
            bound: plan.bound,
            proved: plan.proved,
        }
        .record()
    }
}

fn cut_task(wanted: &[Wanted], shelf: &Shelf, effort: u64) -> CutTask {
    let pieces = wanted.iter().enumerate();
    CutTask {
        pieces: pieces
            .map(|(label, one)| Piece { label, length_mm: one.length_mm, count: one.count })
            .collect(),
        stock: shelf.stock.clone(),
        kerf_mm: shelf.kerf_mm,
        end_trim_mm: shelf.end_trim_mm,
        effort,
    }
}

fn length(mm: f64, style: Style) -> String {
    style.length(Length::new::<millimeter>(mm))
}
