//! A cut plan as a record, as bars, and as lines of the buy and the cut list.

use std::sync::Arc;

use crate::text::text;
use uom::si::length::millimeter;

use super::known::plan_once;
use super::stock::{EFFORT, Shelf};
use crate::carpentry::cut_stock::{
    CutError, CutPlan, CutTask, KERF_RULE, PATTERNS, Pattern, Piece, follow,
};
use crate::carpentry::margin::{MARGIN_MM, tight_bars};
use crate::drawing::{Anchor, Drawing, Fill, Pen, Point};
use crate::lists::{self, BuyLine, CutLine, LineId};
use crate::outcome::Record;
use crate::project::{CutBar, CutPiece};
use crate::quantity::{Length, Style, money, percent};
use crate::report::{Answer, Remark, Step};
use crate::source::Source;

/// Σ of what is bought.
pub static COST: Source = Source::identity("cost = sum of lengths bought x price");
/// What the pieces leave.
pub static WASTE: Source =
    Source::identity("waste = stock - pieces - kerfs between pieces and before an offcut");

/// So many ways of cutting are drawn.
const MOST_DRAWN: usize = 40;
/// So many are on one drawing: with more, a phone has no room for their texts.
const ON_ONE: usize = 10;
/// Width of a letter on a phone, as a part of the longest bar.
const LETTER: f64 = 0.018;
/// So many are worked out in full.
const MOST_WORKED: usize = 8;

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
    /// Finished length. [mm]
    pub length_mm: f64,
    /// How many.
    pub count: u32,
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

    /// The plan as the outcome's numbers.
    pub fn record(&self) -> Record {
        let plan = &self.plan;
        let patterns: Vec<Record> = plan
            .patterns
            .iter()
            .map(|pattern| {
                let pieces = pattern.pieces.iter().map(|piece| {
                    Record::new()
                        .with("label", self.label(piece.label))
                        .with("length_mm", piece.length_mm)
                });
                Record::new()
                    .with("stock_mm", self.stock_mm(pattern))
                    .with("count", pattern.count)
                    .with("pieces", pieces.collect::<Vec<_>>())
                    .with("waste_mm", pattern.waste_mm)
            })
            .collect();
        Record::new()
            .with("patterns", patterns)
            .with("stock", self.stock_records())
            .with("cost", plan.cost)
            .with("waste_mm", plan.waste_mm)
            .with("bound", plan.bound)
            .with("proved", plan.proved)
    }

    /// Bought lengths and those that were here already, apart.
    fn stock_records(&self) -> Vec<Record> {
        let mut records = Vec::new();
        for (index, stock) in self.shelf.stock.iter().enumerate() {
            let here = self.plan.on_hand_used[index];
            let bought = self.plan.bought[index];
            let record =
                |count: u32| Record::new().with("length_mm", stock.length_mm).with("count", count);
            if here > 0 {
                let free = self.plan.priced.then_some(0.0);
                records.push(record(here).maybe("price", free).with("on_hand", true));
            }
            if bought > 0 {
                records.push(record(bought).maybe("price", stock.price));
            }
        }
        records
    }

    /// What to buy, what it costs, and what is left.
    pub fn answers(&self, style: Style) -> Vec<Answer> {
        let plan = &self.plan;
        let mut answers =
            vec![Answer::new("Buy", self.bought_words(style)).note(self.here_words(style))];
        if plan.priced {
            answers.push(Answer::new("Cost", money(plan.cost)).note(if plan.proved {
                "no plan costs less".to_owned()
            } else {
                text!("none can cost less than {}", money(plan.bound))
            }));
        }
        let waste = style.length(Length::new::<millimeter>(plan.waste_mm));
        answers.push(Answer::new("Left over", waste).note(self.share_words()));
        answers
    }

    /// `3 × 8 ft, 2 × 10 ft`.
    pub fn bought_words(&self, style: Style) -> String {
        self.counted(&self.plan.bought, style).unwrap_or_else(|| "nothing".to_owned())
    }

    /// So many of each length: `2 × 8 ft`.
    pub fn counted_words(&self, counts: &[u32], style: Style) -> String {
        self.counted(counts, style).unwrap_or_default()
    }

    fn here_words(&self, style: Style) -> String {
        self.counted(&self.plan.on_hand_used, style)
            .map_or(String::new(), |words| text!("and cut {} that are here", &words))
    }

    fn counted(&self, counts: &[u32], style: Style) -> Option<String> {
        let words: Vec<String> = self
            .shelf
            .stock
            .iter()
            .zip(counts)
            .filter(|(_, count)| **count > 0)
            .map(|(stock, count)| text!("{} × {}", &count, length(stock.length_mm, style)))
            .collect();
        (!words.is_empty()).then(|| words.join(", "))
    }

    /// Length of all stock that is cut. [mm]
    fn stock_in_all_mm(&self) -> f64 {
        let patterns = self.plan.patterns.iter();
        patterns.map(|pattern| self.stock_mm(pattern) * f64::from(pattern.count)).sum()
    }

    fn share_words(&self) -> String {
        let stock = self.stock_in_all_mm();
        if stock > 0.0 {
            text!("{} of the stock", percent(100.0 * self.plan.waste_mm / stock))
        } else {
            String::new()
        }
    }

    /// Whether it is the best there is.
    pub fn remarks(&self, style: Style) -> Vec<Remark> {
        let mut remarks = self.proof(style);
        remarks.extend(self.margin(style));
        remarks
    }

    /// Bars that are used to their end.
    fn margin(&self, style: Style) -> Option<Remark> {
        let shelf = &self.shelf;
        let tight = tight_bars(&self.plan, &shelf.stock, shelf.kerf_mm, shelf.end_trim_mm);
        (tight > 0).then(|| {
            Remark::warning(text!(
                "No margin on {}: less than {} is left beyond pieces and saw cuts. Measure {} before you cut; a split end or a short length wants another one.",
                if tight == 1 { "one bar".to_owned() } else { text!("{} bars", &tight) },
                style.short(Length::new::<millimeter>(MARGIN_MM)),
                if tight == 1 { "it" } else { "these" }
            ))
        })
    }

    fn proof(&self, style: Style) -> Vec<Remark> {
        let plan = &self.plan;
        if plan.proved {
            let what = if plan.priced { "cost less" } else { "take less stock" };
            return vec![Remark::good(text!("Proved: no plan can {}.", &what))];
        }
        let amount = |value: f64| match plan.priced {
            true => money(value),
            false => length(value, style),
        };
        vec![Remark::note(text!(
            "The best plan found takes {}; none can take less than {}. A better one may exist in between.",
            amount(plan.cost),
            amount(plan.bound)
        ))]
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

    /// Each way of cutting as a bar.
    pub fn drawings(&self, style: Style) -> Vec<Drawing> {
        let patterns = &self.plan.patterns;
        let drawn = patterns.get(..MOST_DRAWN).unwrap_or(patterns);
        drawn.chunks(ON_ONE).map(|some| self.drawing(some, style)).collect()
    }

    fn drawing(&self, some: &[Pattern], style: Style) -> Drawing {
        let patterns = &self.plan.patterns;
        let mut drawing = Drawing::new(
            "Ways of cutting",
            text!(
                "{} to cut: {} ways of cutting, each a bar with its pieces and what is left over.",
                self.counted_in_all(style),
                patterns.len()
            ),
        );
        let longest = patterns.iter().map(|p| self.stock_mm(p)).fold(1.0, f64::max) / 1e3;
        let (high, pitch) = (longest * 0.06, longest * 0.15);
        for (row, pattern) in some.iter().enumerate() {
            let top = row as f64 * pitch;
            let stock = self.stock_mm(pattern) / 1e3;
            let name = text!("{} × {}", &pattern.count, length(stock * 1e3, style));
            drawing.text(Point::metres(0.0, top - high * 0.75), Anchor::Start, name);
            let bar =
                |from: f64, to: f64| (Point::metres(from, top), Point::metres(to, top + high));
            let mut at = 0.0;
            for piece in &pattern.pieces {
                let end = (at + piece.length_mm / 1e3).min(stock);
                let (a, b) = bar(at, end);
                drawing.rectangle(Pen::Solid, Fill::Stock, a, b);
                let middle = Point::metres(f64::midpoint(at, end), top + high * 0.5);
                let label = self.short_label(piece.label);
                // A name wider than its piece would run into the next; the cut list has it.
                if end - at > label.chars().count() as f64 * longest * LETTER {
                    drawing.text(middle, Anchor::Middle, label);
                }
                let line = [Point::metres(end, top), Point::metres(end, top + high)];
                drawing.line(Pen::Cut, &line);
                at = (end + self.shelf.kerf_mm / 1e3).min(stock);
            }
            if pattern.waste_mm > 0.0 {
                let (a, b) = bar(stock - pattern.waste_mm / 1e3, stock);
                drawing.rectangle(Pen::Thin, Fill::Waste, a, b);
            }
        }
        drawing
    }

    fn counted_in_all(&self, style: Style) -> String {
        let used: Vec<u32> =
            self.plan.bought.iter().zip(&self.plan.on_hand_used).map(|(a, b)| a + b).collect();
        self.counted(&used, style).unwrap_or_else(|| "Nothing".to_owned())
    }

    /// How the plan comes to its numbers.
    pub fn working(&self, style: Style) -> Vec<Step> {
        let (plan, kerf_mm) = (&self.plan, self.shelf.kerf_mm);
        let sum = |terms: &[String]| match terms.get(..MOST_WORKED) {
            Some(first) if terms.len() > MOST_WORKED => text!("{} + …", first.join(" + ")),
            _ => terms.join(" + "),
        };
        let wanted = self.wanted.iter().filter(|one| one.count > 0);
        let terms: Vec<String> =
            wanted.map(|one| text!("{} · {}", &one.count, mark(one.length_mm, style))).collect();
        let pieces_mm: f64 =
            self.wanted.iter().map(|one| one.length_mm * f64::from(one.count)).sum();
        let mut steps = vec![Step::new(
            "All pieces",
            "ℓ = Σ n · l",
            sum(&terms),
            length(pieces_mm, style),
            &KERF_RULE,
        )];
        for (index, pattern) in
            plan.patterns.iter().enumerate().filter(|(at, _)| self.is_new(*at)).take(MOST_WORKED)
        {
            let terms: Vec<String> =
                pattern.pieces.iter().map(|piece| mark(piece.length_mm, style)).collect();
            let between = pattern.pieces.len().saturating_sub(1);
            let used: f64 = pattern.pieces.iter().map(|piece| piece.length_mm).sum::<f64>()
                + between as f64 * kerf_mm;
            let room = self.stock_mm(pattern) - self.shelf.end_trim_mm;
            steps.push(Step::new(
                text!("Way of cutting {}", index + 1),
                "Σ l + (n − 1) · k ≤ L − t",
                text!("{} + {} · {}", sum(&terms), &between, small(kerf_mm, style)),
                text!("{} of {}", mark(used, style), mark(room, style)),
                &KERF_RULE,
            ));
        }
        if plan.priced {
            let bought = self.shelf.stock.iter().zip(&plan.bought).filter(|(_, n)| **n > 0);
            let terms: Vec<String> = bought
                .map(|(stock, n)| text!("{} · {}", &n, money(stock.price.unwrap_or(0.0))))
                .collect();
            let terms = if terms.is_empty() { "0".to_owned() } else { sum(&terms) };
            steps.push(Step::new("Cost", "Σ n · p", terms, money(plan.cost), &COST));
        }
        steps.push(Step::new(
            "Left over",
            "Σ L − Σ l − kerfs",
            text!(
                "{} − {} − kerfs",
                length(self.stock_in_all_mm(), style),
                length(pieces_mm, style)
            ),
            length(plan.waste_mm, style),
            &WASTE,
        ));
        let bound = if plan.priced { money(plan.bound) } else { length(plan.bound, style) };
        steps.push(Step::new(
            "Bound",
            "least Σ n · p over all patterns, in whole and part",
            text!("{} patterns used", plan.patterns.len()),
            bound,
            &PATTERNS,
        ));
        steps
    }

    /// Whether no way of cutting before this one has the same lengths.
    fn is_new(&self, at: usize) -> bool {
        let lengths = |pattern: &Pattern| -> Vec<f64> {
            pattern.pieces.iter().map(|piece| piece.length_mm).collect()
        };
        let patterns = &self.plan.patterns;
        patterns.get(at).is_some_and(|this| {
            let mut before = patterns.iter().take(at);
            !before.any(|other| other.stock == this.stock && lengths(other) == lengths(this))
        })
    }

    fn id(&self, index: usize) -> String {
        self.wanted.get(index).map_or(String::new(), |one| one.id.clone())
    }

    fn label(&self, index: usize) -> String {
        self.wanted.get(index).map_or(String::new(), |one| one.label.clone())
    }

    /// The label as far as a bar has room for it.
    fn short_label(&self, index: usize) -> String {
        let label = self.label(index);
        match label.char_indices().nth(10) {
            Some((end, _)) => text!("{}…", &label[..end]),
            None => label,
        }
    }

    fn stock_mm(&self, pattern: &Pattern) -> f64 {
        self.shelf.stock.get(pattern.stock).map_or(0.0, |stock| stock.length_mm)
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

fn mark(mm: f64, style: Style) -> String {
    style.mark(Length::new::<millimeter>(mm)).text
}

fn small(mm: f64, style: Style) -> String {
    style.small(Length::new::<millimeter>(mm))
}
