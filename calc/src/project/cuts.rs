//! The cut list over all sheets: everything that is cut from one section in one plan, where that saves anything.
//!
//! Sheets are planned together when they cut the same material in a section that may be the same, with the same saw and end trim,
//! from the same stock lengths at the same prices. What is on hand is one pile over all sheets that cut the material in this section,
//! whatever their saws and stock: the greatest count holds, and it is handed out once, in the order of the file. The plan together is
//! followed where it costs less, wastes less at the same cost, or where the sheets' own plans would use more of the pile (or of what
//! the store has) than there is; else their own plans stand, which then are as good.

use std::sync::Arc;

use uom::si::length::millimeter;

use super::SheetResult;
use super::limits::MOST_TOGETHER;
use crate::carpentry::cut_stock::Stock;
use crate::cutting::planned::{Planned, Section, Wanted};
use crate::cutting::stock::{EFFORT, Shelf};
use crate::cutting::{CutBar, CutPiece};
use crate::lists::{BuyLine, LineId};
use crate::quantity::{Length, Style, money};
use crate::report::Remark;
use crate::sorting::sort_by;
use crate::words::project as words;

/// Costs nearer than this are the same.
const SAME_COST: f64 = 1e-6;
/// Lengths nearer than this are the same. [mm]
const SAME_LENGTH_MM: f64 = 1e-6;
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
    /// Whether the members' own plans use more than there is, here or in the store.
    too_much: bool,
    /// Whether they buy more than the store has.
    sold_out: bool,
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
        let (too_much, sold_out) =
            shelf.as_ref().map_or((false, false), |shelf| uses_too_much(&members, shelf));
        // What would be planned for long is left to the sheets' own plans, which is said.
        let shelf = shelf.filter(|_| wanted.len() <= MOST_TOGETHER);
        let planned = shelf.and_then(|shelf| Planned::new(wanted, &shelf, EFFORT).ok());
        Self { members, planned, owners, apart_cost, too_much, sold_out }
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

    /// What is said where the sheets keep their own plans.
    fn words(&self, style: Style) -> Remark {
        if self.sold_out {
            Remark::warning(style.say(words::SOLD_OUT))
        } else if self.planned.is_some() {
            Remark::good(style.say(words::NO_LESS))
        } else {
            Remark::note(style.say(words::TOO_MUCH_TOGETHER))
        }
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
        let known = with_section(planned, sheets);
        match families.iter_mut().find(|family| family.takes(&known)) {
            Some(family) => family.add(id, planned, &known),
            None => families.push(Family::new(id, planned, &known)),
        }
    }
    let mut pile = Pile::of(families.iter().flat_map(|family| &family.members));
    let mut planned_groups = Vec::new();
    for family in &families {
        planned_groups.push(family.plan(&mut pile, &mut cuts, style, known));
    }
    planned_groups.append(&mut cuts.groups);
    cuts.groups = planned_groups;
    cuts
}

/// Sheets that cut the same section.
struct Family {
    section: Section,
    sheets: Vec<String>,
    /// The sheets' plans as they handed them over.
    own: Vec<Arc<Planned>>,
    /// The same, each with what is known of its section.
    members: Vec<Arc<Planned>>,
}

/// A plan of a sheet that does not say the section takes that of the first sheet that cuts the same material and says it. So what it
/// buys is the same line whether or not the two are planned together.
fn with_section(planned: &Arc<Planned>, sheets: &Sheets) -> Arc<Planned> {
    let shelf = planned.shelf();
    if shelf.section.is_known() {
        return Arc::clone(planned);
    }
    let reports = sheets.iter().filter_map(|(_, result)| result.as_ref().as_ref().ok());
    let mut others = reports.filter_map(|report| report.cutting.as_ref());
    let known = others.find(|other| {
        other.shelf().section.is_known()
            && LineId::name(&other.shelf().material) == LineId::name(&shelf.material)
            && other.shelf().section.may_be(&shelf.section)
    });
    match known {
        Some(other) => Arc::new(planned.of_section(other.shelf().section)),
        None => Arc::clone(planned),
    }
}

impl Family {
    fn new(id: &str, own: &Arc<Planned>, planned: &Arc<Planned>) -> Self {
        Self {
            section: planned.shelf().section,
            sheets: vec![id.to_owned()],
            own: vec![Arc::clone(own)],
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

    fn add(&mut self, id: &str, own: &Arc<Planned>, planned: &Arc<Planned>) {
        self.own.push(Arc::clone(own));
        self.section = self.section.and(&planned.shelf().section);
        self.sheets.push(id.to_owned());
        self.members.push(Arc::clone(planned));
    }

    /// Plans the sheets with what is left of the pile, together where that is better, and takes from the pile what they use.
    fn plan(
        &self,
        pile: &mut Pile,
        cuts: &mut Cuts,
        style: Style,
        known: &[Arc<Joint>],
    ) -> CutGroup {
        let title = self.members.first().map_or("", |first| first.shelf().material.as_str());
        let mut group = CutGroup {
            title: title.to_owned(),
            sheets: self.sheets.clone(),
            bars: Vec::new(),
            remarks: Vec::new(),
            saved: None,
        };
        let limited: Option<Vec<Arc<Planned>>> =
            self.members.iter().map(|member| pile.limited(member)).collect();
        // Sheets of which one finds too little left are each on their own.
        let joint = limited.filter(|members| members.len() > 1).map(|members| {
            let before = known.iter().find(|joint| joint.is_of(&members));
            before.map_or_else(|| Arc::new(Joint::new(members)), Arc::clone)
        });
        if let Some(joint) = &joint {
            cuts.joints.push(Arc::clone(joint));
            if let Some(planned) = joint.followed() {
                let owner = |index: usize| {
                    let owner = joint.owners.get(index).copied().unwrap_or_default();
                    self.sheets.get(owner).cloned().unwrap_or_default()
                };
                group.bars = planned.bars(&owner, style);
                group.saved = Some(joint.apart_cost - planned.plan.cost);
                group.remarks = vec![saved_words(joint, planned, style)];
                group.remarks.extend(planned.remarks(style));
                pile.take(planned, &[]);
                let own = self.sheets.iter().zip(&self.own);
                cuts.left_out.extend(own.map(|(id, member)| (id.clone(), member.buy(style))));
                cuts.instead.push((self.sheets.clone(), planned.buy(style)));
                return group;
            }
        }
        for ((id, member), own) in self.sheets.iter().zip(&self.members).zip(&self.own) {
            let found = pile.limited(member);
            let short = match found {
                Some(_) => Vec::new(),
                None => pile.short_of(member),
            };
            let planned = found.as_ref().unwrap_or(member);
            pile.take(planned, &short);
            group.bars.extend(planned.bars(&|_| id.clone(), style));
            let other = planned.plan != member.plan || !short.is_empty();
            if other || !Arc::ptr_eq(own, member) {
                cuts.left_out.push((id.clone(), own.buy(style)));
                cuts.instead.push((vec![id.clone()], planned.buy_short_of(&short, style)));
            }
            if other {
                group.remarks.push(left_words(&short, style, planned));
            }
        }
        group.remarks.extend(joint.map(|joint| joint.words(style)));
        group
    }
}

/// What is said of a sheet that does not get all that it counts as here.
fn left_words(short: &[u32], style: Style, planned: &Planned) -> Remark {
    if short.is_empty() {
        return Remark::note(style.say(words::CUT_ONCE));
    }
    let more = planned.counted_words(short, style);
    Remark::warning(style.say(words::CutAlready { more }))
}

/// What is on hand of every length, as one pile for all sheets, whatever their saws and whatever else they choose from. Each sheet
/// counts the same pile: the greatest count holds. It is handed out in the order of the file.
struct Pile(Vec<Heap>);

struct Heap {
    material: String,
    section: Section,
    length_mm: f64,
    left: u32,
}

impl Heap {
    fn is_of(&self, shelf: &Shelf, length_mm: f64) -> bool {
        (self.length_mm - length_mm).abs() < SAME_LENGTH_MM
            && self.material == LineId::name(&shelf.material)
            && self.section.may_be(&shelf.section)
    }
}

impl Pile {
    fn of<'a>(plans: impl Iterator<Item = &'a Arc<Planned>>) -> Self {
        let mut heaps: Vec<Heap> = Vec::new();
        for planned in plans {
            let shelf = planned.shelf();
            for stock in shelf.stock.iter().filter(|stock| stock.on_hand > 0) {
                let alike = shelf
                    .stock
                    .iter()
                    .filter(|one| (one.length_mm - stock.length_mm).abs() < SAME_LENGTH_MM);
                let here = alike.fold(0, |sum: u32, one| sum.saturating_add(one.on_hand));
                match heaps.iter_mut().find(|heap| heap.is_of(shelf, stock.length_mm)) {
                    Some(heap) => {
                        heap.left = heap.left.max(here);
                        heap.section = heap.section.and(&shelf.section);
                    }
                    None => heaps.push(Heap {
                        material: LineId::name(&shelf.material),
                        section: shelf.section,
                        length_mm: stock.length_mm,
                        left: here,
                    }),
                }
            }
        }
        Self(heaps)
    }

    /// So much of each of a plan's lengths as is left, and no more than `wanted` of it.
    fn left_of(&self, planned: &Planned, wanted: &[u32]) -> Vec<u32> {
        let shelf = planned.shelf();
        let mut given = vec![0; self.0.len()];
        let mut allowed = Vec::with_capacity(shelf.stock.len());
        for (stock, wanted) in shelf.stock.iter().zip(wanted) {
            let heap = self.0.iter().position(|heap| heap.is_of(shelf, stock.length_mm));
            let left = heap.map_or(0, |at| self.0[at].left.saturating_sub(given[at]));
            let gets = left.min(*wanted);
            if let Some(at) = heap {
                given[at] += gets;
            }
            allowed.push(gets);
        }
        allowed
    }

    /// A plan with no more on hand than is left; none where it cannot be made.
    fn limited(&self, planned: &Arc<Planned>) -> Option<Arc<Planned>> {
        let on_hand: Vec<u32> = planned.shelf().stock.iter().map(|stock| stock.on_hand).collect();
        let left = self.left_of(planned, &on_hand);
        if left == on_hand {
            return Some(Arc::clone(planned));
        }
        planned.limited(&left).map(Arc::new)
    }

    /// How many of each length a plan uses that are not left any more.
    fn short_of(&self, planned: &Planned) -> Vec<u32> {
        let used = &planned.plan.on_hand_used;
        let left = self.left_of(planned, used);
        used.iter().zip(left).map(|(used, left)| used.saturating_sub(left)).collect()
    }

    /// Takes what a plan uses, apart from what it is short of.
    fn take(&mut self, planned: &Planned, short: &[u32]) {
        let shelf = planned.shelf();
        for (at, (stock, used)) in shelf.stock.iter().zip(&planned.plan.on_hand_used).enumerate() {
            let used = used.saturating_sub(short.get(at).copied().unwrap_or(0));
            if let Some(heap) = self.0.iter_mut().find(|heap| heap.is_of(shelf, stock.length_mm)) {
                heap.left = heap.left.saturating_sub(used);
            }
        }
    }
}

fn saved_words(joint: &Joint, planned: &Planned, style: Style) -> Remark {
    let saved = joint.apart_cost - planned.plan.cost;
    let (count, bought) = (joint.members.len(), planned.bought_words(style));
    if joint.too_much {
        return Remark::note(style.say(words::TogetherCounted { count, bought }));
    }
    let amount = |value: f64| match planned.plan.priced {
        true => money(value),
        false => style.length(Length::new::<millimeter>(value)),
    };
    if saved > SAME_COST * joint.apart_cost.max(1.0) {
        let [cost, apart, saved] = [planned.plan.cost, joint.apart_cost, saved].map(amount);
        return Remark::good(style.say(words::TogetherSaved { count, cost, apart, saved, bought }));
    }
    let waste: f64 = joint.members.iter().map(|member| member.plan.waste_mm).sum();
    let less = Length::new::<millimeter>(waste - planned.plan.waste_mm);
    Remark::good(style.say(words::TogetherLess { count, less }))
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

/// Whether the members' own plans use more of any length than is on hand or for sale, and whether they buy more than is for sale.
fn uses_too_much(members: &[Arc<Planned>], shelf: &Shelf) -> (bool, bool) {
    let (mut too_much, mut sold_out) = (false, false);
    for stock in &shelf.stock {
        let (mut here, mut bought) = (0, 0);
        for member in members {
            for (index, own) in member.shelf().stock.iter().enumerate() {
                if (own.length_mm - stock.length_mm).abs() < SAME_LENGTH_MM {
                    here += member.plan.on_hand_used.get(index).copied().unwrap_or(0);
                    bought += member.plan.bought.get(index).copied().unwrap_or(0);
                }
            }
        }
        let alike = |s: &&Stock| (s.length_mm - stock.length_mm).abs() < SAME_LENGTH_MM;
        let same = || shelf.stock.iter().filter(alike);
        let most = same().try_fold(0u32, |sum, s| Some(sum.saturating_add(s.available?)));
        sold_out |= most.is_some_and(|most| bought > most);
        too_much |= here > same().map(|s| s.on_hand).sum();
    }
    (too_much || sold_out, sold_out)
}
