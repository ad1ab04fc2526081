//! Strips on the ribs, one along each: how long, where the screws go, which screw, what to cut and to buy.

mod kinds;
pub(super) mod screw;
mod words;
mod working;

use crate::text::text;
use uom::si::f64::{Ratio, Volume};
use uom::si::length::{meter, millimeter};
use uom::si::ratio::percent;
use uom::si::volume::liter;

use self::kinds::{Kind, kinds};
use self::screw::{Choice, Screwing};
use super::cut_plan::planned::{Planned, Section, Wanted};
use super::cut_plan::stock::{self, DENSITY, EFFORT, END_TRIM, KERF, MATERIAL, STOCK, Shelf};
use super::{Sheet, solve};
use crate::ask::{Ask, BodyPart, Figure};
use crate::carpentry::cut_stock::{KERF_RULE, PATTERNS};
use crate::carpentry::margin::MARGIN;
use crate::carpentry::setting_out::EQUAL_SPACING;
use crate::carpentry::stations::BETWEEN;
use crate::coating::bead::{BEAD, Bead, cartridges};
use crate::fastening::acceleration::ROAD_VERTICAL;
use crate::fastening::drill_point::CAPACITY;
use crate::fastening::length::THREE_THREADS;
use crate::fastening::screw::HOLES;
use crate::fastening::sheet_steel::PULL_OUT;
use crate::fastening::steel_pilot::STEEL_PILOTS;
use crate::fastening::window::{AS_SHORT_AS_HOLDS, NO_FARTHER};
use crate::fault::Fault;
use crate::lists::{BuyLine, LineId};
use crate::mass::densities::{MASS_OF_VOLUME, WOOD};
use crate::outcome::Record;
use crate::project::Body;
use crate::quantity::{LENGTH, Length, Style, VOLUME};
use crate::reader::Reader;
use crate::report::Report;
use crate::sorting::sort_by;
use crate::source::Source;
use crate::words::Phrase;

/// The sheet.
pub static SHEET: Sheet = Sheet {
    kind: "furring",
    title: Phrase::Written("Furring strips"),
    trade: Phrase::Written("Ceiling and walls"),
    purpose: Phrase::Written(
        "Strips on the ribs, one along each: length, screw marks, screws, adhesive, and how to cut them.",
    ),
    asks: &[
        &STRIP_LENGTH,
        &END_CLEARANCE,
        &STRIPS,
        &SECTION,
        &COUNT_OR_LIMIT,
        &END_DISTANCE,
        &STOCK,
        &KERF,
        &END_TRIM,
        &MATERIAL,
        &DENSITY,
        &screw::SCREW,
        &ADHESIVE,
    ],
    sources: &[
        &STRIP_LENGTH_RULE,
        &BETWEEN,
        &EQUAL_SPACING,
        &PATTERNS,
        &KERF_RULE,
        &THREE_THREADS,
        &NO_FARTHER,
        &AS_SHORT_AS_HOLDS,
        &CAPACITY,
        &HOLES,
        &STEEL_PILOTS,
        &FRAMED,
        &MARGIN,
        &PULL_OUT,
        &ROAD_VERTICAL,
        &BEAD,
        &MASS_OF_VOLUME,
        &WOOD,
    ],
    example: r#"{ "end_clearance": "3 mm", "section": { "thickness": "3/4 in", "width": "1 1/2 in" },
        "screw_spacing_limit": "12 in", "end_distance": "1 1/2 in",
        "material": "1x2 strip", "density": "white pine",
        "stock": [
            { "length": "8 ft", "price": 3.2, "on_hand": 3 },
            { "length": "14 ft", "price": 5.4 } ],
        "kerf": "1/8 in",
        "screw": { "stack": [{ "name": "strip", "thickness": "3/4 in" }, { "name": "tape", "thickness": "1 mm" }],
            "steel": "16 ga", "behind": "1 in", "lengths": ["3/4 in", "1 in", "1 1/4 in"], "hangs": "60 kg" },
        "adhesive": { "bead": "1/4 in", "cartridge": "10.1 fl oz", "price": 7.5, "loss_percent": 10 } }"#,
    solve: |reader| solve(reader, read, report),
};

static STRIP_LENGTH: Ask =
    Ask::measure("length", "Length to span", &LENGTH, ["in", "mm"], (0.02, 15.0))
        .from_body(BodyPart::Width)
        .usual("72 in", "1900 mm")
        .help("Wall to wall along the rib, before any clearance. Left out: the body's width, at each rib where stations were measured.")
        .figure(Figure::BodyWidth);
static END_CLEARANCE: Ask =
    Ask::measure("end_clearance", "Clearance at each end", &LENGTH, ["in", "mm"], (0.0, 1.0))
        .default("3 mm")
        .usual("1/8 in", "3 mm")
        .help("Left free between the strip's end and the wall or an opening, at either end: a strip as long as the span does not go in. Left out: 3 mm.")
        .figure(Figure::Gap);
static STRIPS: Ask = Ask::count("strips", "Number of strips", (1, 500))
    .from_body(BodyPart::RibCount)
    .usual("13", "13")
    .help("One for each rib.");
static THICKNESS: Ask = Ask::measure("thickness", "Thickness", &LENGTH, ["in", "mm"], (0.001, 0.2))
    .usual("3/4 in", "19 mm")
    .help("From the rib to the lining.")
    .figure(Figure::Thickness);
static WIDTH: Ask = Ask::measure("width", "Width", &LENGTH, ["in", "mm"], (0.005, 0.5))
    .usual("1 1/2 in", "38 mm")
    .help("The face that the lining is screwed to.")
    .figure(Figure::Across);
static SECTION: Ask = Ask::group("section", "Section of a strip", &[&THICKNESS, &WIDTH]);
static SCREWS_PER_STRIP: Ask =
    Ask::count("screws_per_strip", "Screws in each strip", (2, 500)).usual("8", "8");
static SPACING_LIMIT: Ask = Ask::measure(
    "screw_spacing_limit",
    "Largest screw spacing",
    &LENGTH,
    ["in", "mm"],
    (0.005, 10.0),
)
.usual("12 in", "300 mm")
.help("The fewest screws that are nowhere farther apart.")
.figure(Figure::Spacing);
static COUNT_OR_LIMIT: Ask = Ask::either("Screws", &[&SCREWS_PER_STRIP, &SPACING_LIMIT]);
static END_DISTANCE: Ask =
    Ask::measure("end_distance", "First screw from the end", &LENGTH, ["in", "mm"], (0.0, 5.0))
        .usual("1 1/2 in", "40 mm")
        .help("From either end of the strip to its first screw; too close splits it.")
        .figure(Figure::FromEnd);
static BEAD_SIZE: Ask = Ask::measure("bead", "Bead diameter", &LENGTH, ["in", "mm"], (0.0001, 0.1))
    .usual("1/4 in", "6 mm")
    .help("As wide as the nozzle is cut.")
    .figure(Figure::Diameter);
static BEADS: Ask = Ask::count("beads", "Beads on each strip", (1, 20)).default("1");
static CARTRIDGE: Ask =
    Ask::measure("cartridge", "Cartridge", &VOLUME, ["fl oz", "ml"], (1e-5, 0.02))
        .usual("10.1 fl oz", "300 ml")
        .help("On its label.");
static CARTRIDGE_PRICE: Ask = Ask::number("price", "Price of one", (0.0, 1e6)).optional();
static LOSS: Ask = Ask::percent("loss_percent", "Loss", (0.0, 95.0))
    .default("10")
    .usual("10", "10")
    .help("What stays in nozzle and cartridge, or runs over. Left out: 10 %.");
static ADHESIVE: Ask =
    Ask::group("adhesive", "Adhesive", &[&BEAD_SIZE, &BEADS, &CARTRIDGE, &CARTRIDGE_PRICE, &LOSS])
        .optional();

/// A rib that is cut for an opening.
pub static FRAMED: Source = Source::common_practice(
    "a roof bow that is cut for an opening gets headers to the bows beside it, and its strip ends there",
);
/// Strips end short of both walls.
pub static STRIP_LENGTH_RULE: Source = Source::identity("strip = span - 2 x clearance at an end");

/// What was typed, read.
struct Inputs {
    /// What each strip spans, in the order of the ribs.
    spans: Vec<Span>,
    /// The usual values that stand for what was left out.
    usual: Vec<String>,
    clearance_mm: f64,
    thickness_mm: f64,
    width_mm: f64,
    per_strip: Option<u32>,
    limit_mm: f64,
    end_distance_mm: f64,
    shelf: Shelf,
    screwing: Option<Screwing>,
    adhesive: Option<Adhesive>,
    /// Middle of the body's ribs, where there is a strip on each.
    centre: Option<Length>,
}

/// What a strip spans: wall to wall along a rib, or from a wall to an opening, or between two.
struct Span {
    length_mm: f64,
    /// Its rib, counted from 1.
    rib: usize,
    /// Which of its rib's strips, counted from 1 at the left wall.
    part: usize,
    /// The opening that it ends at.
    opening: Option<String>,
}

struct Adhesive {
    bead: Length,
    beads: u32,
    cartridge: Volume,
    price: Option<f64>,
    loss_percent: f64,
}

/// All that is worked out.
struct Worked {
    /// Strips that are cut and marked alike, the longest first.
    kinds: Vec<Kind>,
    screws: u32,
    planned: Planned,
    screw: Option<Choice>,
    glue: Option<Glue>,
}

struct Glue {
    bead: Length,
    volume: Volume,
    cartridges: u32,
}

fn read(reader: &Reader<'_>) -> Inputs {
    let mm = |ask: &Ask| reader.measure::<Length>(ask).get::<millimeter>();
    let (thickness, width): (Length, Length) =
        reader.group(&SECTION, |section| (section.measure(&THICKNESS), section.measure(&WIDTH)));
    let by_count = reader.which(&COUNT_OR_LIMIT);
    let mut shelf = Shelf::read(reader);
    shelf.weigh(Some(thickness), Some(width));
    shelf.section = Section::new(thickness.get::<millimeter>(), width.get::<millimeter>());
    let (spans, clearance_mm) = (read_spans(reader, width), mm(&END_CLEARANCE));
    let inputs = Inputs {
        spans,
        usual: usual(reader),
        clearance_mm,
        thickness_mm: thickness.get::<millimeter>(),
        width_mm: width.get::<millimeter>(),
        per_strip: (by_count == Some(0)).then(|| reader.count(&SCREWS_PER_STRIP)),
        limit_mm: if by_count == Some(1) { mm(&SPACING_LIMIT) } else { 0.0 },
        end_distance_mm: mm(&END_DISTANCE),
        shelf,
        screwing: reader.maybe_group(&screw::SCREW, screw::read),
        adhesive: reader.maybe_group(&ADHESIVE, |group| Adhesive {
            bead: group.measure(&BEAD_SIZE),
            beads: group.count(&BEADS),
            cartridge: group.measure(&CARTRIDGE),
            price: group.maybe_number(&CARTRIDGE_PRICE),
            loss_percent: group.number(&LOSS),
        }),
        centre: rib_centre(reader),
    };
    let loose = inputs.spans.iter().find(|span| {
        span.opening.is_some() && inputs.strip_mm(span.length_mm) <= 2.0 * inputs.end_distance_mm
    });
    if let Some(Span { length_mm, rib, opening: Some(opening), .. }) = loose {
        reader.fault_at(
            &STRIPS,
            text!(
                "at rib {} the {} leaves {} for a strip, too short for a screw at either end; frame the opening there and give length and number of the strips yourself, or move the opening",
                rib,
                opening,
                reader.style().length(Length::new::<millimeter>(*length_mm))
            ),
        );
    } else if inputs.shortest_mm() < 10.0 {
        reader.fault_at(&END_CLEARANCE, "the clearance at both ends leaves no strip; give less");
    } else if inputs.shortest_mm() <= 2.0 * inputs.end_distance_mm {
        let half = Length::new::<millimeter>(inputs.shortest_mm() / 2.0);
        reader.fault_at(
            &END_DISTANCE,
            text!(
                "the first screws from both ends would meet; give less than half the strip, {}",
                reader.style().length(half)
            ),
        );
    }
    inputs
}

/// The span of each strip: the one typed, or the body's width, at each rib where it was measured at
/// stations. A number of strips that is not that of the ribs says nothing of their places: then
/// all take the narrowest.
fn read_spans(reader: &Reader<'_>, width: Length) -> Vec<Span> {
    let body = reader.body();
    let one = || reader.measure::<Length>(&STRIP_LENGTH).get::<millimeter>();
    let alike = |length_mm: f64, strips: u32| {
        (1..=strips as usize).map(|rib| Span { length_mm, rib, part: 1, opening: None }).collect()
    };
    if reader.given(&STRIP_LENGTH) || body.widths.is_empty() {
        let length_mm = one();
        let strips = reader.count(&STRIPS);
        if !reader.given(&STRIP_LENGTH) && body.ribs.len() == strips as usize {
            return along_ribs(body, &vec![length_mm; body.ribs.len()], width);
        }
        return alike(length_mm, strips);
    }
    let strips = reader.count(&STRIPS);
    if body.ribs.len() != strips as usize {
        return alike(one(), strips);
    }
    let widths = body.ribs.iter().filter_map(|rib| body.width_at(*rib));
    let spans_mm: Vec<f64> = widths.map(|width| width.get::<millimeter>()).collect();
    let words = |value: f64| reader.style().mark(Length::new::<millimeter>(value)).text;
    let low = spans_mm.iter().copied().fold(f64::INFINITY, f64::min);
    let high = spans_mm.iter().copied().fold(0.0, f64::max);
    reader.took(&STRIP_LENGTH, text!("{} to {}, the width at each rib", words(low), words(high)));
    along_ribs(body, &spans_mm, width)
}

/// A strip that reaches over an opening by less is laid aside by as much, and whole. [mm]
const UNSEEN_MM: f64 = 1.0;

/// The strips of all ribs, those cut short that an opening of the body crosses. Source: [`FRAMED`].
fn along_ribs(body: &Body, widths_mm: &[f64], strip: Length) -> Vec<Span> {
    let mm = |length: Length| length.get::<millimeter>();
    let mut spans = Vec::new();
    for (index, (at, wall_mm)) in body.ribs.iter().zip(widths_mm).enumerate() {
        let half = strip / 2.0;
        let crosses = body.openings.iter().filter(|opening| {
            mm(*at + half - opening.x) > UNSEEN_MM
                && mm(opening.x + opening.length - (*at - half)) > UNSEEN_MM
        });
        let mut cuts: Vec<(f64, f64, &str)> =
            crosses.map(|one| (mm(one.y), mm(one.y + one.width), one.name.as_str())).collect();
        sort_by(&mut cuts, |a, b| a.0.total_cmp(&b.0));
        let (mut from, mut before, mut part) = (0.0, None, 1);
        for (low, high, name) in cuts {
            let name = if name.is_empty() { "opening" } else { name };
            if low - from > 0.01 {
                let opening = Some(name.to_owned());
                spans.push(Span { length_mm: low - from, rib: index + 1, part, opening });
                part += 1;
            }
            from = f64::max(from, high);
            before = Some(name.to_owned());
        }
        if wall_mm - from > 0.01 {
            spans.push(Span { length_mm: wall_mm - from, rib: index + 1, part, opening: before });
        }
    }
    spans
}

/// What was left out, with the value that stands for it.
fn usual(reader: &Reader<'_>) -> Vec<String> {
    let mut usual = Vec::new();
    if !reader.given(&END_CLEARANCE) {
        let clearance: Length = reader.measure(&END_CLEARANCE);
        usual.push(text!("clearance at each end {}", reader.style().short(clearance)));
    }
    if reader.given(&ADHESIVE) && !reader.has("adhesive.loss_percent") {
        usual.push("loss of adhesive 10 %".to_owned());
    }
    usual
}

fn rib_centre(reader: &Reader<'_>) -> Option<Length> {
    let ribs = &reader.body().ribs;
    let all = ribs.iter().fold(Length::default(), |sum, rib| sum + *rib);
    (!ribs.is_empty()).then(|| all / ribs.len() as f64)
}

impl Inputs {
    fn strips(&self) -> u32 {
        u32::try_from(self.spans.len()).unwrap_or(u32::MAX)
    }

    fn strip_mm(&self, span_mm: f64) -> f64 {
        span_mm - 2.0 * self.clearance_mm
    }

    fn shortest_mm(&self) -> f64 {
        let spans = self.spans.iter().map(|span| span.length_mm);
        self.strip_mm(spans.reduce(f64::min).unwrap_or(0.0))
    }
}

fn report(inputs: &Inputs, style: Style) -> Result<Report, Vec<Fault>> {
    let worked = work_out(inputs, style)?;
    let longest = worked.longest();
    let lengths: Vec<f64> =
        inputs.spans.iter().map(|span| inputs.strip_mm(span.length_mm)).collect();
    let outcome = Record::new()
        .with("strip_length_mm", longest.length_mm)
        .with("strips", inputs.strips())
        .with("screw_marks_mm", longest.marks_mm.clone())
        .with("screws", worked.screws)
        .with("strip_lengths_mm", lengths)
        .with("strip_kinds", worked.kinds.iter().map(Kind::record).collect::<Vec<_>>())
        .with("cut_plan", worked.planned.record())
        .maybe("screw", worked.screw.as_ref().map(Choice::record))
        .maybe("adhesive", worked.glue.as_ref().map(Glue::record));
    let mut drawings = vec![words::template(inputs, longest, style)];
    drawings.extend(worked.planned.drawings(style));
    Ok(Report {
        answers: words::answers(inputs, &worked, style),
        remarks: words::remarks(inputs, &worked, style),
        tables: words::tables(&worked, style),
        drawings,
        marks: worked.kinds.iter().map(words::marks).collect(),
        working: working::working(inputs, &worked, style),
        cautions: words::cautions(inputs),
        buy: buy(inputs, &worked, style),
        centre: inputs.centre,
        cut: worked.planned.cut(style),
        cutting: worked.planned.cutting(),
        outcome,
        ..Report::default()
    })
}

impl Worked {
    /// The longest strips. Inputs without a strip are found fault with before.
    fn longest(&self) -> &Kind {
        static NONE: Kind = Kind::none();
        self.kinds.first().unwrap_or(&NONE)
    }

    /// Length of all strips. [mm]
    fn strips_mm(&self) -> f64 {
        self.kinds.iter().map(|kind| kind.length_mm * f64::from(kind.count)).sum()
    }
}

fn work_out(inputs: &Inputs, style: Style) -> Result<Worked, Vec<Fault>> {
    let kinds = kinds(inputs)?;
    let wanted = kinds.iter().map(|kind| Wanted {
        id: kind.id(),
        label: kind.name.clone(),
        length_mm: kind.length_mm,
        count: kind.count,
    });
    let planned = Planned::new(wanted.collect(), &inputs.shelf, EFFORT)
        .map_err(|error| vec![stock::fault(&error, |_| "stock".into(), style)])?;
    let screws = kinds.iter().fold(0u32, |sum, kind| sum.saturating_add(kind.screws()));
    let screw = match &inputs.screwing {
        Some(screwing) => Some(screwing.choose(screws, style)?),
        None => None,
    };
    let mut worked = Worked { kinds, screws, planned, screw, glue: None };
    if let Some(adhesive) = &inputs.adhesive {
        worked.glue = Some(Glue::new(adhesive, worked.strips_mm())?);
    }
    Ok(worked)
}

impl Glue {
    fn new(adhesive: &Adhesive, strips_mm: f64) -> Result<Self, Vec<Fault>> {
        let bead = Length::new::<millimeter>(strips_mm * f64::from(adhesive.beads));
        let at = |field: &'static str| {
            move |error: crate::coating::range::OutOfRange| {
                vec![Fault::new(text!("adhesive.{}", &field), error.to_string())]
            }
        };
        let loss = Ratio::new::<percent>(adhesive.loss_percent);
        let volume =
            Bead::Round { diameter: adhesive.bead }.volume(bead, loss).map_err(at("bead"))?;
        let cartridges = cartridges(volume, adhesive.cartridge).map_err(at("cartridge"))?;
        Ok(Self { bead, volume, cartridges })
    }

    fn record(&self) -> Record {
        Record::new()
            .with("bead_m", self.bead.get::<meter>())
            .with("volume_l", self.volume.get::<liter>())
            .with("cartridges", self.cartridges)
    }
}

fn buy(inputs: &Inputs, worked: &Worked, style: Style) -> Vec<BuyLine> {
    let mut lines = worked.planned.buy(style);
    if let (Some(screwing), Some(choice)) = (&inputs.screwing, &worked.screw) {
        let (gauge, length) = (choice.screw.gauge.to_string(), LineId::length(choice.length));
        let (kind, item) = match screwing.self_drilling {
            true => ("self-drilling-screw", "self-drilling screw"),
            false => ("screw", "screw"),
        };
        let id = text!("{}/{}/{}", kind, gauge, length);
        let count = f64::from(worked.screws);
        lines.push(BuyLine::pieces(LineId::shared(id), item, choice.name(style), count));
    }
    if let (Some(adhesive), Some(glue)) = (&inputs.adhesive, &worked.glue) {
        let count = f64::from(glue.cartridges);
        let id = LineId::shared(text!("adhesive/{}", LineId::volume(adhesive.cartridge)));
        let spec = style.container(adhesive.cartridge);
        lines.push(BuyLine {
            needed: (glue.volume / adhesive.cartridge).value,
            ..BuyLine::pieces(id, "adhesive cartridge", spec, count)
                .cost(adhesive.price.map(|price| price * count))
        });
    }
    lines
}
