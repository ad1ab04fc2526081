//! A cut plan in words, as bars, and as working.

use uom::si::length::millimeter;

use super::{COST, Planned, WASTE};
use crate::carpentry::cut_stock::{KERF_RULE, PATTERNS, Pattern};
use crate::carpentry::margin::{MARGIN_MM, tight_bars};
use crate::drawing::{Anchor, Drawing, Fill, Pen, Point};
use crate::quantity::{Length, Style, money, percent};
use crate::report::{Answer, Remark, Step};
use crate::text::text;
use crate::words::{Arg, cut_plan as words};

/// So many ways of cutting are on one drawing: with more, a phone has no room for their texts.
const ON_ONE: usize = 10;
/// Width of a letter on a phone, as a part of the longest bar.
const LETTER: f64 = 0.018;
/// So many are worked out in full.
const MOST_WORKED: usize = 8;

impl Planned {
    /// What to buy, what it costs, and what is left.
    pub fn answers(&self, style: Style) -> Vec<Answer> {
        let plan = &self.plan;
        let mut answers = vec![
            Answer::new(style.say(words::BUY), self.bought_words(style))
                .note(self.here_words(style)),
        ];
        if plan.priced {
            let note = if plan.proved {
                style.say(words::COST_PROVED)
            } else {
                style.say(words::CostBound { bound: money(plan.bound) })
            };
            answers.push(Answer::new(style.say(words::COST), money(plan.cost)).note(note));
        }
        let waste = style.length(mm(plan.waste_mm));
        answers.push(Answer::new(style.say(words::LEFT_OVER), waste).note(self.share_words(style)));
        answers
    }

    /// `3 × 8 ft, 2 × 10 ft`.
    pub fn bought_words(&self, style: Style) -> String {
        self.counted(&self.plan.bought, style).unwrap_or_else(|| style.say(words::BUY_NOTHING))
    }

    /// So many of each length: `2 × 8 ft`.
    pub fn counted_words(&self, counts: &[u32], style: Style) -> String {
        self.counted(counts, style).unwrap_or_default()
    }

    fn here_words(&self, style: Style) -> String {
        self.counted(&self.plan.on_hand_used, style)
            .map_or(String::new(), |lengths| style.say(words::BuyHere { lengths }))
    }

    fn counted(&self, counts: &[u32], style: Style) -> Option<String> {
        let words: Vec<String> = self
            .shelf
            .stock
            .iter()
            .zip(counts)
            .filter(|(_, count)| **count > 0)
            .map(|(stock, count)| text!("{} × {}", &count, style.length(mm(stock.length_mm))))
            .collect();
        (!words.is_empty()).then(|| words.join(", "))
    }

    /// Length of all stock that is cut. [mm]
    fn stock_in_all_mm(&self) -> f64 {
        let patterns = self.plan.patterns.iter();
        patterns.map(|pattern| self.stock_mm(pattern) * f64::from(pattern.count)).sum()
    }

    fn share_words(&self, style: Style) -> String {
        let stock = self.stock_in_all_mm();
        if stock > 0.0 {
            style.say(words::LeftOverShare { percent: percent(100.0 * self.plan.waste_mm / stock) })
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
            let margin = Arg::short(mm(MARGIN_MM));
            Remark::warning(style.say(words::NoMargin { bars: tight, margin }))
        })
    }

    fn proof(&self, style: Style) -> Vec<Remark> {
        let plan = &self.plan;
        if plan.proved {
            let proved = if plan.priced { words::PROVED_COST } else { words::PROVED_STOCK };
            return vec![Remark::good(style.say(proved))];
        }
        let [found, bound] = [plan.cost, plan.bound].map(|value| self.amount(value, style));
        vec![Remark::note(style.say(words::BestFound { found, bound }))]
    }

    /// What the plan is measured by, money or stock, as it is written.
    pub(crate) fn amount(&self, value: f64, style: Style) -> String {
        if self.plan.priced { money(value) } else { style.length(mm(value)) }
    }

    /// Each way of cutting as a bar.
    pub fn drawings(&self, style: Style) -> Vec<Drawing> {
        let patterns = &self.plan.patterns;
        patterns.chunks(ON_ONE).map(|some| self.drawing(some, style)).collect()
    }

    fn drawing(&self, some: &[Pattern], style: Style) -> Drawing {
        let patterns = &self.plan.patterns;
        let said = match self.counted_in_all(style) {
            Some(lengths) => style.say(words::DrawingWords { patterns: patterns.len(), lengths }),
            None => style.say(words::DRAWING_NONE),
        };
        let mut drawing = Drawing::new(style.say(words::DRAWING), said);
        let longest = patterns.iter().map(|p| self.stock_mm(p)).fold(1.0, f64::max) / 1e3;
        let (high, pitch) = (longest * 0.06, longest * 0.15);
        for (row, pattern) in some.iter().enumerate() {
            let top = row as f64 * pitch;
            let stock = self.stock_mm(pattern) / 1e3;
            let name = text!("{} × {}", &pattern.count, style.length(mm(stock * 1e3)));
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

    fn counted_in_all(&self, style: Style) -> Option<String> {
        let used: Vec<u32> =
            self.plan.bought.iter().zip(&self.plan.on_hand_used).map(|(a, b)| a + b).collect();
        self.counted(&used, style)
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
            style.say(words::STEP_PIECES),
            "ℓ = Σ n · l",
            sum(&terms),
            style.length(mm(pieces_mm)),
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
                style.say(words::StepPattern { number: index + 1 }),
                "Σ l + (n − 1) · k ≤ L − t",
                text!("{} + {} · {}", sum(&terms), &between, style.small(mm(kerf_mm))),
                style.say(words::StepPatternResult {
                    used: Arg::mark(mm(used)),
                    room: Arg::mark(mm(room)),
                }),
                &KERF_RULE,
            ));
        }
        if plan.priced {
            let bought = self.shelf.stock.iter().zip(&plan.bought).filter(|(_, n)| **n > 0);
            let terms: Vec<String> = bought
                .map(|(stock, n)| text!("{} · {}", &n, money(stock.price.unwrap_or(0.0))))
                .collect();
            let terms = if terms.is_empty() { "0".to_owned() } else { sum(&terms) };
            let (name, cost) = (style.say(words::STEP_COST), money(plan.cost));
            steps.push(Step::new(name, "Σ n · p", terms, cost, &COST));
        }
        let (stock, pieces) = (mm(self.stock_in_all_mm()), mm(pieces_mm));
        steps.push(Step::new(
            style.say(words::STEP_LEFT_OVER),
            style.say(words::STEP_LEFT_OVER_FORMULA),
            style.say(words::StepLeftOverNumbers { stock, pieces }),
            style.length(mm(plan.waste_mm)),
            &WASTE,
        ));
        steps.push(Step::new(
            style.say(words::STEP_BOUND),
            style.say(words::STEP_BOUND_FORMULA),
            style.say(words::StepBoundNumbers { patterns: plan.patterns.len() }),
            self.amount(plan.bound, style),
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

    /// The label as far as a bar has room for it.
    fn short_label(&self, index: usize) -> String {
        let label = self.label(index);
        match label.char_indices().nth(10) {
            Some((end, _)) => text!("{}…", &label[..end]),
            None => label,
        }
    }
}

fn mm(length: f64) -> Length {
    Length::new::<millimeter>(length)
}

fn mark(length_mm: f64, style: Style) -> String {
    style.mark(mm(length_mm)).text
}
