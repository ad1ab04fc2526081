//! The cut list over all sheets: everything that is cut from one section in one plan, where that saves anything.
//!
//! Sheets are planned together when they cut the same material in a section that may be the same, with the same saw and end trim,
//! from the same stock lengths at the same prices. What is on hand is one pile, counted in each of them: the greatest count holds.
//! The plan together is followed where it costs less, wastes less at the same cost, or where the sheets' own plans would use more
//! of the pile (or of what the store has) than there is; else their own plans stand, which then are as good.

use std::sync::Arc;

use uom::si::length::millimeter;

use super::SheetResult;
use crate::carpentry::cut_stock::Stock;
use crate::lists::{BuyLine, LineId};
use crate::quantity::{Length, Style, money};
use crate::report::Remark;
use crate::sheet::cut_plan::planned::{Planned, Section, Wanted};
use crate::sheet::cut_plan::stock::{EFFORT, Shelf};
use crate::sorting::sort_by;
use crate::text::text;

/// Costs nearer than this are the same.
const SAME_COST: f64 = 1e-6;
/// Waste nearer than this is the same. [mm]
const SAME_WASTE_MM: f64 = 0.5;

/// Everything that is cut from one section.
#[derive(Clone, Debug, PartialEq)]
pub struct CutGroup {
    /// What is cut: `3/4 x 1 1/2 in pine`.
    pub title: String,
    /// The ids of the sheets whose pieces these are.
    pub sheets: Vec<String>,
    /// How each stock length is cut.
    pub bars: Vec<CutBar>,
    /// What has to be said of the plan.
    pub remarks: Vec<Remark>,
    /// What the plan together saves against the sheets' own, in money, or in mm of stock where nothing is priced; none where the
    /// sheets' own plans are followed.
    pub saved: Option<f64>,
}

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

/// Plans of several sheets made one.
#[derive(Debug)]
pub(super) struct Joint {
    members: Vec<Arc<Planned>>,
    /// The plan together; none where there is none.
    planned: Option<Planned>,
    /// For each of its wanted pieces, the member that wants it.
    owners: Vec<usize>,
    /// What the members' own plans cost.
    apart_cost: f64,
    /// Whether the members' own plans use more than there is.
    too_much: bool,
}

impl Joint {
    fn new(members: Vec<Arc<Planned>>) -> Self {
        let (mut wanted, mut owners): (Vec<Wanted>, Vec<usize>) = (Vec::new(), Vec::new());
        for (index, member) in members.iter().enumerate() {
            wanted.extend(member.wanted().iter().cloned());
            owners.resize(wanted.len(), index);
        }
        let shelf = one_pile(&members);
        let apart_cost = members.iter().map(|member| member.plan.cost).sum();
        let too_much = shelf.as_ref().is_some_and(|shelf| uses_too_much(&members, shelf));
        let planned = shelf.and_then(|shelf| Planned::new(wanted, &shelf, EFFORT).ok());
        Self { members, planned, owners, apart_cost, too_much }
    }

    /// The plan together where it is to be followed.
    fn followed(&self) -> Option<&Planned> {
        let planned = self.planned.as_ref()?;
        let saved = self.apart_cost - planned.plan.cost;
        let waste: f64 = self.members.iter().map(|member| member.plan.waste_mm).sum();
        let slack = SAME_COST * self.apart_cost.max(1.0);
        let better =
            saved > slack || (saved > -slack && waste - planned.plan.waste_mm > SAME_WASTE_MM);
        (self.too_much || better).then_some(planned)
    }

    fn is_of(&self, members: &[Arc<Planned>]) -> bool {
        self.members.len() == members.len()
            && self.members.iter().zip(members).all(|(a, b)| Arc::ptr_eq(a, b) || a == b)
    }
}

/// Everything that is cut, by section; with what was planned together, to be taken over by the next evaluation.
pub(super) struct Cuts {
    pub groups: Vec<CutGroup>,
    pub joints: Vec<Arc<Joint>>,
    /// Lines of the buy list that stand for those of the sheets: sheets, and lines.
    pub instead: Vec<(Vec<String>, Vec<BuyLine>)>,
    /// The sheets' own lines that these stand for.
    pub left_out: Vec<(String, Vec<BuyLine>)>,
}

type Sheets = [(String, Arc<SheetResult>)];

/// Gathers what all sheets cut; `known` are plans together that were made before.
pub(super) fn gather(sheets: &Sheets, style: Style, known: &[Arc<Joint>]) -> Cuts {
    let mut cuts =
        Cuts { groups: Vec::new(), joints: Vec::new(), instead: Vec::new(), left_out: Vec::new() };
    let mut families: Vec<Family> = Vec::new();
    for (id, result) in sheets {
        let Ok(report) = result.as_ref() else { continue };
        let Some(planned) = &report.cutting else {
            cuts.groups.extend(unplanned(id, report));
            continue;
        };
        match families.iter_mut().find(|family| family.takes(planned)) {
            Some(family) => family.add(id, planned),
            None => families.push(Family::new(id, planned)),
        }
    }
    let mut planned_groups = Vec::new();
    for family in &families {
        let joint = (family.members.len() > 1).then(|| {
            let before = known.iter().find(|joint| joint.is_of(&family.members));
            before.map_or_else(|| Arc::new(Joint::new(family.members.clone())), Arc::clone)
        });
        planned_groups.push(family.group(joint.as_deref(), style));
        let Some(joint) = joint else { continue };
        if let Some(followed) = joint.followed() {
            let own = family.sheets.iter().zip(&family.members);
            cuts.left_out.extend(own.map(|(id, member)| (id.clone(), member.buy(style))));
            cuts.instead.push((family.sheets.clone(), followed.buy(style)));
        }
        cuts.joints.push(joint);
    }
    planned_groups.append(&mut cuts.groups);
    cuts.groups = planned_groups;
    cuts
}

/// Sheets that cut the same section.
struct Family {
    section: Section,
    sheets: Vec<String>,
    members: Vec<Arc<Planned>>,
}

impl Family {
    fn new(id: &str, planned: &Arc<Planned>) -> Self {
        Self {
            section: planned.shelf().section,
            sheets: vec![id.to_owned()],
            members: vec![Arc::clone(planned)],
        }
    }

    fn takes(&self, planned: &Planned) -> bool {
        let Some(first) = self.members.first() else { return false };
        let (a, b) = (first.shelf(), planned.shelf());
        a.material.trim().eq_ignore_ascii_case(b.material.trim())
            && self.section.may_be(&planned.shelf().section)
            && (a.kerf_mm - b.kerf_mm).abs() < 1e-6
            && (a.end_trim_mm - b.end_trim_mm).abs() < 1e-6
            && pooled(&a.stock, &b.stock).is_some()
    }

    fn add(&mut self, id: &str, planned: &Arc<Planned>) {
        self.section = self.section.and(&planned.shelf().section);
        self.sheets.push(id.to_owned());
        self.members.push(Arc::clone(planned));
    }

    fn group(&self, joint: Option<&Joint>, style: Style) -> CutGroup {
        let title = self.members.first().map_or("", |first| first.shelf().material.as_str());
        let mut group = CutGroup {
            title: title.to_owned(),
            sheets: self.sheets.clone(),
            bars: Vec::new(),
            remarks: Vec::new(),
            saved: None,
        };
        let own = |group: &mut CutGroup| {
            for (id, member) in self.sheets.iter().zip(&self.members) {
                group.bars.extend(member.bars(&|_| id.clone(), style));
            }
        };
        let Some(joint) = joint else {
            own(&mut group);
            return group;
        };
        match joint.followed() {
            Some(planned) => {
                let owner = |index: usize| {
                    let owner = joint.owners.get(index).copied().unwrap_or_default();
                    self.sheets.get(owner).cloned().unwrap_or_default()
                };
                group.bars = planned.bars(&owner, style);
                group.saved = Some(joint.apart_cost - planned.plan.cost);
                group.remarks = vec![saved_words(joint, planned, style)];
                group.remarks.extend(planned.remarks(style));
            }
            None => {
                own(&mut group);
                group.remarks.push(if joint.too_much {
                    Remark::warning("These sheets together take more than is here and for sale: allow more lengths.")
                } else if joint.planned.is_some() {
                    Remark::good("Planned together these sheets would take no less: each keeps its own plan.")
                } else {
                    Remark::note("Too much for one plan: each sheet keeps its own.")
                });
            }
        }
        group
    }
}

fn saved_words(joint: &Joint, planned: &Planned, style: Style) -> Remark {
    let saved = joint.apart_cost - planned.plan.cost;
    let apart = text!("{} sheets in one plan", &joint.members.len());
    if joint.too_much {
        return Remark::note(text!(
            "{}: what is here is counted once, not for each sheet. Buy {}.",
            &apart,
            planned.bought_words(style)
        ));
    }
    let amount = |value: f64| match planned.plan.priced {
        true => money(value),
        false => style.length(Length::new::<millimeter>(value)),
    };
    if saved > SAME_COST * joint.apart_cost.max(1.0) {
        return Remark::good(text!(
            "{}: {} instead of {}, {} saved. Buy {}.",
            &apart,
            amount(planned.plan.cost),
            amount(joint.apart_cost),
            amount(saved),
            planned.bought_words(style)
        ));
    }
    let waste: f64 = joint.members.iter().map(|member| member.plan.waste_mm).sum();
    let less = Length::new::<millimeter>(waste - planned.plan.waste_mm);
    Remark::good(text!("{}: no cheaper, but {} less is left over.", &apart, style.length(less)))
}

/// What a sheet cuts without stock lengths: wire from a roll.
fn unplanned(id: &str, report: &crate::report::Report) -> Vec<CutGroup> {
    let piece = |piece: &crate::lists::Piece| CutPiece {
        id: piece.id.clone(),
        label: piece.label.clone(),
        length: piece.length,
        sheet: id.to_owned(),
    };
    let lines = report.cut.iter();
    lines
        .map(|line| CutGroup {
            title: line.stock.clone(),
            sheets: vec![id.to_owned()],
            bars: vec![CutBar {
                stock_id: line.id.clone(),
                stock: line.stock.clone(),
                length: None,
                kerf: Length::default(),
                count: line.count,
                pieces: line.pieces.iter().map(piece).collect(),
                waste: line.waste,
            }],
            remarks: Vec::new(),
            saved: None,
        })
        .collect()
}

/// The stock of all members: equal lengths at equal prices, what is on hand counted once.
fn one_pile(members: &[Arc<Planned>]) -> Option<Shelf> {
    let (first, rest) = members.split_first()?;
    let mut shelf = first.shelf().clone();
    if let Some(known) = members.iter().find(|one| one.shelf().section.is_known()) {
        shelf.section = known.shelf().section;
    }
    for member in rest {
        shelf.stock = pooled(&shelf.stock, &member.shelf().stock)?;
    }
    Some(shelf)
}

/// Two lists of stock as one; none where they differ in more than what is on hand.
fn pooled(a: &[Stock], b: &[Stock]) -> Option<Vec<Stock>> {
    let sorted = |stock: &[Stock]| {
        let mut stock = stock.to_vec();
        sort_by(&mut stock, |a, b| {
            a.length_mm.total_cmp(&b.length_mm).then(a.on_hand.cmp(&b.on_hand))
        });
        stock
    };
    let (a, b) = (sorted(a), sorted(b));
    let same = |a: &Stock, b: &Stock| {
        let price = match (a.price, b.price) {
            (Some(a), Some(b)) => (a - b).abs() < 1e-9,
            (None, None) => true,
            _ => false,
        };
        price && (a.length_mm - b.length_mm).abs() < 1e-6 && a.available == b.available
    };
    (a.len() == b.len() && a.iter().zip(&b).all(|(a, b)| same(a, b))).then(|| {
        let pairs = a.iter().zip(&b);
        pairs.map(|(a, b)| Stock { on_hand: a.on_hand.max(b.on_hand), ..*a }).collect()
    })
}

/// Whether the members' own plans use more of any length than is on hand or for sale.
fn uses_too_much(members: &[Arc<Planned>], shelf: &Shelf) -> bool {
    shelf.stock.iter().any(|stock| {
        let (mut here, mut bought) = (0, 0);
        for member in members {
            for (index, own) in member.shelf().stock.iter().enumerate() {
                if (own.length_mm - stock.length_mm).abs() < 1e-6 {
                    here += member.plan.on_hand_used.get(index).copied().unwrap_or(0);
                    bought += member.plan.bought.get(index).copied().unwrap_or(0);
                }
            }
        }
        let same = || shelf.stock.iter().filter(|s| (s.length_mm - stock.length_mm).abs() < 1e-6);
        let most = same().try_fold(0u32, |sum, s| Some(sum.saturating_add(s.available?)));
        here > same().map(|s| s.on_hand).sum() || most.is_some_and(|most| bought > most)
    })
}
