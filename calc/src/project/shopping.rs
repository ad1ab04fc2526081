//! What a person says of the buy list: packs, prices, masses and places of its lines, and lines of
//! their own.
//!
//! In the project file under `shopping`, all of it optional:
//! `"lines": { ID: { "pack": "100 ft", "price": 21.5, "mass": "2 kg", "place": "1200 mm" } }`, where
//! ID is a line's id, and `"own": [{ "id", "item", "spec", "quantity", "unit", "price", "mass",
//! "place", "adds_to" }]`; what `adds_to` the line with an id is counted in it. Price and mass are of
//! one pack; without packs, of one unit. A place is the middle of a thing along the body, from the
//! front wall.

use std::collections::BTreeMap;

use super::{Body, Node, Project};
use crate::ask::Ask;
use crate::fault::Fault;
use crate::lists::{BuyLine, LineId, MergedBuyLine, Packs, merge_buy_lines};
use crate::mass::balance::Weight;
use crate::quantity::{DIMENSIONS, LENGTH, Length, MASS, Mass, Measure, read_number};
use crate::reader::{Notes, Reader, Site, no_sheet, no_weight};
use crate::text::text;
use crate::words::{Msg, Phrase, project as words};

/// Where it is kept in the project file.
pub const KEY: &str = "shopping";

/// The input by which a sheet takes the weight of the whole project; such a sheet buys nothing.
pub const WEIGHT_KEY: &str = "project";

/// What is asked of a line.
pub static LINE_ASKS: &[&Ask] = &[&PACK, &PRICE, &LINE_MASS, &PLACE];
/// What is asked of lines added by hand.
pub static OWN_ASKS: &[&Ask] = &[&OWN];

static PACK: Ask = Ask::notation("pack", "", "pack", &[])
    .named(Phrase::Id(words::PACK))
    .told(Phrase::Id(words::PACK_HELP))
    .optional()
    .usual("100", "100");
static PRICE: Ask = Ask::number("price", "", (0.0, 1e6))
    .named(Phrase::Id(words::PRICE))
    .told(Phrase::Id(words::PRICE_HELP))
    .optional();
static LINE_MASS: Ask = Ask::measure("mass", "", &MASS, ["lb", "kg"], (0.0, 5000.0))
    .named(Phrase::Id(words::LINE_MASS))
    .told(Phrase::Id(words::LINE_MASS_HELP))
    .optional()
    .usual("1 lb", "0.5 kg");
static PLACE: Ask = Ask::measure("place", "", &LENGTH, ["in", "mm"], (-10.0, 30.0))
    .named(Phrase::Id(words::PLACE))
    .told(Phrase::Id(words::PLACE_HELP))
    .optional()
    .usual("48 in", "1200 mm");

static ITEM: Ask = Ask::words("item", "")
    .named(Phrase::Id(words::ITEM))
    .required()
    .usual("masking tape", "masking tape");
static SPEC: Ask = Ask::words("spec", "").named(Phrase::Id(words::SPEC)).usual("1 1/2 in", "38 mm");
static QUANTITY: Ask =
    Ask::number("quantity", "", (1e-3, 1e6)).named(Phrase::Id(words::QUANTITY)).default("1");
static UNIT: Ask = Ask::one_of(
    "unit",
    &[
        ("each", words::UNIT_EACH),
        ("ft", words::UNIT_FT),
        ("m", words::UNIT_M),
        ("qt", words::UNIT_QT),
        ("l", words::UNIT_L),
    ],
)
.named(Phrase::Id(words::UNIT));
static OWN_PRICE: Ask =
    Ask::number("price", "", (0.0, 1e6)).named(Phrase::Id(words::OWN_PRICE)).optional();
static OWN_MASS: Ask = Ask::measure("mass", "", &MASS, ["lb", "kg"], (0.0, 5000.0))
    .named(Phrase::Id(words::OWN_MASS))
    .told(Phrase::Id(words::OWN_MASS_HELP))
    .optional()
    .usual("1 lb", "0.5 kg");
static OWN: Ask =
    Ask::rows("own", "", "", 0, &[&ITEM, &SPEC, &QUANTITY, &UNIT, &OWN_PRICE, &OWN_MASS, &PLACE])
        .named(Phrase::Id(words::OWN))
        .row(Phrase::Id(words::OWN_ROW))
        .optional();

/// What is wrong with what was typed, and what the list weighs.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Shopping {
    /// Faults of own lines; the paths begin at `own`.
    pub faults: Vec<Fault>,
    /// Faults of what was typed for lines of the list, by the line's key.
    pub line_faults: BTreeMap<String, Vec<Fault>>,
    /// Keys of the lines that have own lines in them, with their place.
    pub own: BTreeMap<String, Option<Length>>,
    /// What everything weighs.
    pub weight: Weight,
}

/// The lines that were added by hand, each with its place; faults go to `shopping`.
pub(super) fn own_lines(node: &Node, site: &Site<'_>, shopping: &mut Shopping) -> Vec<BuyLine> {
    let notes = Notes::default();
    let rows = Reader::new(site, node, &notes).rows(&OWN, |row| {
        let (item, spec) = (row.words(&ITEM), row.words(&SPEC));
        let (quantity, unit) = (row.number(&QUANTITY), row.choice(&UNIT));
        let price = row.maybe_number(&OWN_PRICE);
        let kept = |key: &str| {
            let index: usize = row.path().rsplit('.').next()?.parse().ok()?;
            node.get(OWN.key)?.get(index)?.get(key)?.as_str().filter(|text| !text.is_empty())
        };
        let id = match (kept("adds_to"), kept("id")) {
            (Some(line), _) => line.to_owned(),
            (None, Some(id)) => text!("own/{}", id),
            _ => text!("own/{}/{}/{}", LineId::name(&item), LineId::name(&spec), unit),
        };
        let mass = row.maybe::<Mass>(&OWN_MASS).map(|mass| mass * quantity);
        let line = BuyLine {
            quantity,
            unit,
            ..BuyLine::pieces(LineId::shared(id), item.trim(), spec.trim(), quantity)
                .cost(price.map(|price| price * quantity))
                .mass(mass)
        };
        (row.path().to_owned(), line, row.maybe::<Length>(&PLACE))
    });
    let (faults, _) = notes.faults();
    let mut lines = Vec::new();
    for (path, line, place) in rows {
        // A row with a fault is left out as a whole: nothing is bought by a guess.
        let within = |fault: &Fault| fault.field.strip_prefix(&path).is_some_and(ends_or_dot);
        if !faults.iter().any(within) {
            let kept = shopping.own.entry(line.id.of_sheet("")).or_default();
            *kept = kept.or(place);
            lines.push(line);
        }
    }
    shopping.faults = faults;
    lines
}

/// Gives each own line that has none an id to be known by, whatever it is called.
pub(super) fn name_own_rows(project: &mut Project) {
    let own = project.document.get_mut(KEY).and_then(|all| all.get_mut("own"));
    let Some(rows) = own.and_then(Node::as_array_mut) else { return };
    for at in 0..rows.len() {
        let id = |row: &Node| row.get("id").and_then(Node::as_str).map(str::to_owned);
        if !rows[at].is_object() || id(&rows[at]).is_some_and(|id| !id.is_empty()) {
            continue;
        }
        let free = (1..).map(|number| text!("o{}", &number));
        let free =
            free.into_iter().find(|new| rows.iter().all(|row| id(row).as_ref() != Some(new)));
        if let (Some(row), Some(free)) = (rows[at].as_object_mut(), free) {
            row.insert("id".into(), Node::from(free));
        }
    }
}

/// Writes the unit beside every pack, price and mass that were typed for what is measured out: they hold in any unit system then.
pub(super) fn pin_units(project: &mut Project) {
    let Some(Node::Object(lines)) = project.extra(KEY).and_then(|all| all.get("lines")) else {
        return;
    };
    if lines.is_empty() {
        return;
    }
    let all = super::evaluate(project);
    let lines = project.document.get_mut(KEY).and_then(|all| all.get_mut("lines"));
    let Some(lines) = lines.and_then(Node::as_object_mut) else { return };
    for merged in &all.buy_list {
        if let Some(said) = lines.get_mut(&merged.id) {
            super::load::pin(said, merged.line.unit);
        }
    }
}

/// The lines of one sheet with the packs and prices that were typed for them: what they would cost on their own.
pub fn priced(project: &Project, sheet: &str, lines: &[BuyLine]) -> Vec<BuyLine> {
    let typed = project.extra(KEY).cloned().unwrap_or_default();
    let body = Body::default();
    let style = project.style();
    let site = Site { style, body: &body, sheets: &no_sheet, weight: &no_weight };
    let mut merged = merge_buy_lines(lines.iter().map(|line| (sheet, line)));
    apply(&typed, &site, &mut merged, |_| None, &mut Shopping::default());
    merged.into_iter().map(|merged| merged.line).collect()
}

fn ends_or_dot(rest: &str) -> bool {
    rest.is_empty() || rest.starts_with('.')
}

/// Puts packs, prices and masses as typed into the merged lines, and weighs all of them; `centre`
/// tells where the things of a sheet have their middle.
pub(super) fn apply(
    node: &Node,
    site: &Site<'_>,
    lines: &mut [MergedBuyLine],
    centre: impl Fn(&str) -> Option<Length>,
    shopping: &mut Shopping,
) {
    let typed = node.get("lines");
    for line in lines {
        let key = line.key().to_owned();
        let place = match typed.and_then(|lines| lines.get(&key)) {
            Some(node) => {
                let said = Said::read(node, site, line.line.unit);
                said.apply(line);
                if !said.faults.is_empty() {
                    shopping.line_faults.insert(key.clone(), said.faults);
                }
                said.place
            }
            None => None,
        };
        shopping.weigh(line, &key, place, &centre);
    }
}

impl Shopping {
    fn weigh(
        &mut self,
        line: &MergedBuyLine,
        key: &str,
        place: Option<Length>,
        centre: &impl Fn(&str) -> Option<Length>,
    ) {
        let weight = &mut self.weight;
        if line.line.mass.is_none() {
            weight.without_mass += 1;
        }
        let mut unplaced = false;
        for share in &line.from {
            let Some(mass) = share.mass.filter(|mass| mass.value > 0.0) else { continue };
            let at = place.or_else(|| match share.sheet.as_str() {
                "" => self.own.get(key).copied().flatten(),
                sheet => centre(sheet),
            });
            unplaced |= at.is_none();
            weight.balance.add(mass, at);
        }
        weight.without_place += usize::from(unplaced);
    }
}

/// What was typed for a line, without what is wrong.
struct Said {
    pack: Option<f64>,
    price: Option<f64>,
    mass: Option<Mass>,
    place: Option<Length>,
    faults: Vec<Fault>,
}

impl Said {
    fn read(node: &Node, site: &Site<'_>, unit: &str) -> Self {
        let notes = Notes::default();
        let reader = Reader::new(site, node, &notes);
        let pack = reader.maybe_notation(&PACK, |text| {
            read_pack(text, unit).map_err(|message| site.style.say(message))
        });
        let price = reader.maybe_number(&PRICE);
        let (mass, place) = (reader.maybe(&LINE_MASS), reader.maybe(&PLACE));
        let (faults, _) = notes.faults();
        // The reader hands out stand-ins where something is wrong.
        let right = |ask: &Ask| {
            !faults.iter().any(|fault| fault.field == ask.key || fault.field.is_empty())
        };
        Self {
            pack,
            price: price.filter(|_| right(&PRICE)),
            mass: mass.filter(|_| right(&LINE_MASS)),
            place: place.filter(|_| right(&PLACE)),
            faults,
        }
    }

    fn apply(&self, line: &mut MergedBuyLine) {
        let needed = line.asked();
        line.packs = self.pack.map(|size| {
            let count = (needed / size - 1e-9).ceil().max(0.0);
            let left_over = count * size - needed;
            Packs { size, count, left_over: if left_over > 1e-9 { left_over } else { 0.0 } }
        });
        // Without packs the price is of one foot, metre or quart: no store sells a part of one.
        let bundles =
            line.packs.map_or_else(|| (needed - 1e-9).ceil().max(0.0), |packs| packs.count);
        if let Some(price) = self.price {
            line.line.cost = Some(price * bundles);
        }
        if let Some(mass) = self.mass {
            // What is aboard is what is used, of that which was here too, not what stays in the pack.
            let each = mass / self.pack.unwrap_or(1.0);
            let mut all = Mass::default();
            for share in &mut line.from {
                let mass = each * share.used;
                share.mass = Some(mass);
                all += mass;
            }
            line.line.mass = Some(all);
        }
    }
}

/// The size of a pack in the unit that a line is counted in: `100`, for wire `100 ft` or `30 m`.
fn read_pack(text: &str, unit: &str) -> Result<f64, Msg> {
    let dimension = DIMENSIONS.iter().find_map(|one| Some((*one, one.unit(unit)?)));
    let size = match dimension {
        Some((dimension, unit)) => Measure::read(text, dimension, Some(unit))
            .map(|measure| unit.from_si(measure.si()))
            .map_err(|error| error.message())?,
        None => {
            let size = read_number(text).map_err(|error| error.message())?;
            if size != size.round() {
                return Err(words::PACK_WHOLE.into());
            }
            size
        }
    };
    if (1e-3..=1e6).contains(&size) { Ok(size) } else { Err(words::PACK_RANGE.into()) }
}

#[cfg(test)]
mod tests;
