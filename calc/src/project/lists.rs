//! The lists of a project: made when one of them is first looked at, and never while only a sheet is.

use std::fmt;
use std::ops::Deref;
use std::sync::{Arc, OnceLock};

use super::cuts::{CutGroup, Joint, gather};
use super::shopping::{self, Shopping};
use super::{Body, Node, SheetResult};
use crate::lists::{BuyLine, MergedBuyLine, merge_buy_lines};
use crate::quantity::Style;
use crate::reader::{Site, no_sheet, no_weight};

/// What the lists are made from, and the lists once they are made.
pub(super) struct Gathered {
    style: Style,
    sheets: Vec<(String, Arc<SheetResult>)>,
    /// What was typed for the buy list.
    typed: Node,
    /// Plans together that were made before.
    known: Vec<Arc<Joint>>,
    made: OnceLock<Made>,
}

struct Made {
    buy: Vec<MergedBuyLine>,
    cut: Vec<CutGroup>,
    joints: Vec<Arc<Joint>>,
    shopping: Shopping,
}

impl Gathered {
    /// From the results of all sheets; what was planned together before and has not changed is not planned again.
    pub(super) fn new(
        style: Style,
        sheets: Vec<(String, Arc<SheetResult>)>,
        typed: Node,
        before: Option<&Self>,
    ) -> Arc<Self> {
        let known = before.map_or_else(Vec::new, |before| {
            before.made.get().map_or_else(|| before.known.clone(), |made| made.joints.clone())
        });
        Arc::new(Self { style, sheets, typed, known, made: OnceLock::new() })
    }

    #[cfg(test)]
    pub(super) fn first_joint(&self) -> Arc<Joint> {
        Arc::clone(&self.made().joints[0])
    }

    /// Makes the lists where they are not made yet.
    pub(super) fn make(&self) {
        self.made();
    }

    /// What was typed for the buy list, read.
    pub(super) fn shopping(&self) -> &Shopping {
        &self.made().shopping
    }

    /// What was typed for the list, put into its lines.
    fn shop(&self, lines: &[(&str, BuyLine)]) -> (Vec<MergedBuyLine>, Shopping) {
        let body = Body::default();
        let site = Site { style: self.style, body: &body, sheets: &no_sheet, weight: &no_weight };
        let mut shopping = Shopping::default();
        let own = shopping::own_lines(&self.typed, &site, &mut shopping);
        let lines = lines.iter().map(|(id, line)| (*id, line));
        let mut buy = merge_buy_lines(lines.chain(own.iter().map(|line| ("", line))));
        let centre = |sheet: &str| {
            let (_, result) = self.sheets.iter().find(|(id, _)| id == sheet)?;
            result.as_ref().as_ref().ok()?.centre
        };
        shopping::apply(&self.typed, &site, &mut buy, centre, &mut shopping);
        (buy, shopping)
    }

    fn made(&self) -> &Made {
        self.made.get_or_init(|| {
            let cuts = gather(&self.sheets, self.style, &self.known);
            let mut lines: Vec<(&str, BuyLine)> = Vec::new();
            let mut instead = cuts.instead;
            for (id, result) in &self.sheets {
                let Ok(report) = result.as_ref() else { continue };
                let mut left_out = cuts.left_out.iter().filter(|(of, _)| of == id);
                let own: &[BuyLine] = left_out.next().map_or(&[], |(_, lines)| lines);
                // The plan together stands where the first of its sheets has its own.
                if let Some(at) = instead.iter().position(|(of, _)| of.first() == Some(id)) {
                    let (of, together) = instead.remove(at);
                    for line in together {
                        for sheet in &of {
                            let Some((sheet, _)) =
                                self.sheets.iter().find(|(known, _)| known == sheet)
                            else {
                                continue;
                            };
                            // The first sheet brings the quantity, the others their names.
                            let first = sheet == id;
                            lines.push((
                                sheet,
                                if first { line.clone() } else { nothing_of(&line) },
                            ));
                        }
                    }
                }
                let rest = report.buy.iter().filter(|line| !own.contains(line));
                lines.extend(rest.map(|line| (id.as_str(), line.clone())));
            }
            let (buy, shopping) = self.shop(&lines);
            Made { buy, cut: cuts.groups, joints: cuts.joints, shopping }
        })
    }
}

/// The same thing, none of it.
fn nothing_of(line: &BuyLine) -> BuyLine {
    let zero = |_: f64| 0.0;
    BuyLine {
        quantity: 0.0,
        needed: 0.0,
        on_hand: 0.0,
        cost: line.cost.map(zero),
        mass: line.mass.map(|mass| mass * 0.0),
        ..line.clone()
    }
}

/// The buy list over all sheets: like lines merged; stock that several sheets cut is bought for the plan together.
#[derive(Clone)]
pub struct BuyList(pub(super) Arc<Gathered>);

/// The cut list over all sheets, by section.
#[derive(Clone)]
pub struct CutList(pub(super) Arc<Gathered>);

impl Deref for BuyList {
    type Target = [MergedBuyLine];

    fn deref(&self) -> &Self::Target {
        &self.0.made().buy
    }
}

impl Deref for CutList {
    type Target = [CutGroup];

    fn deref(&self) -> &Self::Target {
        &self.0.made().cut
    }
}

impl<'a> IntoIterator for &'a BuyList {
    type Item = &'a MergedBuyLine;
    type IntoIter = std::slice::Iter<'a, MergedBuyLine>;

    fn into_iter(self) -> Self::IntoIter {
        self.iter()
    }
}

impl<'a> IntoIterator for &'a CutList {
    type Item = &'a CutGroup;
    type IntoIter = std::slice::Iter<'a, CutGroup>;

    fn into_iter(self) -> Self::IntoIter {
        self.iter()
    }
}

impl fmt::Debug for BuyList {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.deref().fmt(f)
    }
}

impl fmt::Debug for CutList {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.deref().fmt(f)
    }
}
