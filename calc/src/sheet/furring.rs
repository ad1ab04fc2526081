//! Strips on the ribs, one along each: how long, where the screws go, which screw, what to cut and to buy.

mod kinds;
mod screw;
mod shown;
mod spans;

use calc_derive::{Either, Inputs, Outcome};
use uom::si::f64::{Ratio, Volume};
use uom::si::length::{meter, millimeter};
use uom::si::ratio::percent;

use self::kinds::{Kind, kinds};
use self::screw::{Choice, Screw};
use self::spans::{SPANNED, STRIPS, Span};
use super::{Sheet, solve};
use crate::ask::Figure;
use crate::carpentry::cut_stock::{KERF_RULE, PATTERNS};
use crate::carpentry::margin::MARGIN;
use crate::carpentry::setting_out::{EQUAL_SPACING, FRAMED, STRIP_LENGTH};
use crate::carpentry::stations::BETWEEN;
use crate::coating::bead::{BEAD, Bead, RoundBead, cartridges};
use crate::cutting::planned::{Planned, Section, Wanted};
use crate::cutting::stock::{self, DENSITY, EFFORT, END_TRIM, KERF, MATERIAL, STOCK, Shelf};
use crate::fastening::acceleration::ROAD_VERTICAL;
use crate::fastening::drill_point::CAPACITY;
use crate::fastening::length::THREE_THREADS;
use crate::fastening::screw::HOLES;
use crate::fastening::sheet_steel::PULL_OUT;
use crate::fastening::steel_pilot::STEEL_PILOTS;
use crate::fastening::window::{AS_SHORT_AS_HOLDS, NO_FARTHER};
use crate::fault::Fault;
use crate::formula::Formula as _;
use crate::lists::{BuyLine, LineId};
use crate::mass::densities::{MASS_OF_VOLUME, WOOD};
use crate::outcome::Outcome as _;
use crate::quantity::{Length, Style};
use crate::reader::Reader;
use crate::report::Report;
use crate::text::text;
use crate::words::{Arg, Msg, Phrase, common, furring as words};

/// The sheet.
pub static SHEET: Sheet = Sheet {
    kind: "furring",
    title: Phrase::Id(words::TITLE),
    trade: Phrase::Id(common::TRADE_WALLS),
    purpose: Phrase::Id(words::PURPOSE),
    asks: &[
        &SPANNED,
        Inputs::END_CLEARANCE,
        &STRIPS,
        Inputs::SECTION,
        Inputs::FASTENED,
        Inputs::END_DISTANCE,
        &STOCK,
        &KERF,
        &END_TRIM,
        &MATERIAL,
        &DENSITY,
        Inputs::SCREW,
        Inputs::ADHESIVE,
    ],
    sources: &[
        &STRIP_LENGTH,
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
    ahead: None,
    solve: |reader| solve(reader, Job::read, report),
};

/// What was typed, but for the spans and the stock.
#[derive(Inputs)]
#[words(furring)]
struct Inputs {
    #[ask(units("in", "mm"), range(0.0, 1.0), default("3 mm"), usual("1/8 in", "3 mm"))]
    #[ask(figure(Figure::Gap))]
    end_clearance: Length,
    #[ask(group, no_help)]
    section: StripSection,
    #[ask(either)]
    fastened: Fastened,
    #[ask(
        units("in", "mm"),
        range(0.0, 5.0),
        usual("1 1/2 in", "40 mm"),
        figure(Figure::FromEnd),
        convention()
    )]
    end_distance: Length,
    #[ask(group, no_help)]
    screw: Option<Screw>,
    #[ask(group, no_help)]
    adhesive: Option<Adhesive>,
}

/// Of a strip.
#[derive(Inputs)]
#[words(furring)]
struct StripSection {
    #[ask(
        units("in", "mm"),
        range(0.001, 0.2),
        usual("3/4 in", "19 mm"),
        figure(Figure::Thickness)
    )]
    thickness: Length,
    #[ask(
        units("in", "mm"),
        range(0.005, 0.5),
        usual("1 1/2 in", "38 mm"),
        figure(Figure::Across)
    )]
    width: Length,
}

/// How many screws a strip gets.
#[derive(Either)]
#[words(furring)]
enum Fastened {
    #[ask(range(2, 500), usual("8", "8"), no_help)]
    ScrewsPerStrip(u32),
    #[ask(
        units("in", "mm"),
        range(0.005, 10.0),
        usual("12 in", "300 mm"),
        figure(Figure::Spacing),
        convention()
    )]
    ScrewSpacingLimit(Length),
}

/// Between rib and strip.
#[derive(Inputs)]
#[words(furring)]
struct Adhesive {
    #[ask(units("in", "mm"), range(0.0001, 0.1), usual("1/4 in", "6 mm"))]
    #[ask(figure(Figure::Diameter))]
    bead: Length,
    #[ask(range(1, 20), default("1"), no_help)]
    beads: u32,
    #[ask(units("fl oz", "ml"), range(1e-5, 0.02), usual("10.1 fl oz", "300 ml"))]
    cartridge: Volume,
    #[ask(range(0.0, 1e6), no_help)]
    price: Option<f64>,
    #[ask(percent, range(0.0, 95.0), default("10"), usual("10", "10"))]
    loss_percent: f64,
}

/// What is to be done.
struct Job {
    inputs: Inputs,
    /// What each strip spans, in the order of the ribs.
    spans: Vec<Span>,
    /// The usual values that stand for what was left out.
    usual: Vec<Msg>,
    shelf: Shelf,
    /// Middle of the body's ribs, where there is a strip on each.
    centre: Option<Length>,
}

impl Job {
    fn read(reader: &Reader<'_>) -> Self {
        let mut inputs = Inputs::read(reader);
        if let Some(screw) = &mut inputs.screw {
            screw.take_from_body(reader);
        }
        let StripSection { thickness, width } = inputs.section;
        let mut shelf = Shelf::read(reader);
        shelf.weigh(Some(thickness), Some(width));
        shelf.section = Section::new(thickness.get::<millimeter>(), width.get::<millimeter>());
        let mut usual: Vec<Msg> = Vec::new();
        if !reader.given(Inputs::END_CLEARANCE) {
            let length = Arg::short(inputs.end_clearance);
            usual.push(words::LeftOutClearance { length }.into());
        }
        if let Some(adhesive) = &inputs.adhesive
            && !reader.has("adhesive.loss_percent")
        {
            let loss = words::LeftOutLoss { percent: Arg::percent(adhesive.loss_percent) };
            usual.push(loss.into());
        }
        let spans = spans::read(reader, width);
        let ribs = &reader.body().ribs;
        let all = ribs.iter().fold(Length::default(), |sum, rib| sum + *rib);
        let centre = (!ribs.is_empty()).then(|| all / ribs.len() as f64);
        let job = Self { inputs, spans, usual, shelf, centre };
        job.check(reader);
        job
    }

    /// Tells where the strips do not work out.
    fn check(&self, reader: &Reader<'_>) {
        let lengths = self.spans.iter().map(|span| self.strip_mm(span));
        let shortest = lengths.reduce(f64::min).unwrap_or(-2.0 * self.clearance_mm());
        let ends = 2.0 * self.end_mm();
        let short = |span: &&Span| span.opening.is_some() && self.strip_mm(span) <= ends;
        if let Some(Span { length_mm, rib, opening: Some(opening), .. }) =
            self.spans.iter().find(short)
        {
            let (opening, length) = (opening.clone(), mm(*length_mm));
            reader.tell(&STRIPS, words::StripTooShort { rib: *rib, opening, length });
        } else if shortest < 10.0 {
            reader.tell(Inputs::END_CLEARANCE, words::NO_STRIP_LEFT);
        } else if shortest <= ends {
            reader.tell(Inputs::END_DISTANCE, words::EndsMeet { half: mm(shortest / 2.0) });
        }
    }

    fn clearance_mm(&self) -> f64 {
        self.inputs.end_clearance.get::<millimeter>()
    }

    fn end_mm(&self) -> f64 {
        self.inputs.end_distance.get::<millimeter>()
    }

    /// The strip of a span. Source: [`STRIP_LENGTH`]. [mm]
    fn strip_mm(&self, span: &Span) -> f64 {
        span.length_mm - 2.0 * self.clearance_mm()
    }
}

fn mm(length: f64) -> Length {
    Length::new::<millimeter>(length)
}

/// All that is worked out.
#[derive(Outcome)]
struct Found {
    /// Of the longest.
    strip_length_mm: f64,
    strips: usize,
    screw_marks_mm: Vec<f64>,
    screws: u32,
    strip_lengths_mm: Vec<f64>,
    /// Strips that are cut and marked alike, the longest first.
    strip_kinds: Vec<Kind>,
    cut_plan: Planned,
    screw: Option<Choice>,
    adhesive: Option<Glue>,
}

/// Adhesive on all strips.
#[derive(Outcome)]
struct Glue {
    bead_m: f64,
    volume: RoundBead,
    cartridges: u32,
}

impl Glue {
    fn of(adhesive: &Adhesive, strips_mm: f64) -> Result<Self, (&'static str, Msg)> {
        let length = mm(strips_mm * f64::from(adhesive.beads));
        let refused = |_| ("adhesive.bead", Msg::from(words::TOO_MUCH_ADHESIVE));
        let (diameter, waste_percent) = (adhesive.bead, adhesive.loss_percent);
        let waste = Ratio::new::<percent>(waste_percent);
        Bead::Round { diameter }.volume(length, waste).map_err(refused)?;
        let volume = RoundBead { diameter, length, waste_percent };
        let cartridges = cartridges(volume.value(), adhesive.cartridge).map_err(refused)?;
        Ok(Self { bead_m: length.get::<meter>(), volume, cartridges })
    }
}

impl Found {
    /// The longest strips. Inputs without a strip are found fault with before.
    fn longest(&self) -> &Kind {
        static NONE: Kind = Kind::none();
        self.strip_kinds.first().unwrap_or(&NONE)
    }
}

fn report(job: &Job, style: Style) -> Result<Report, Vec<Fault>> {
    let told = |(field, message): (&str, Msg)| vec![Fault::new(field, style.say(message))];
    let strip_kinds = kinds(job).map_err(told)?;
    let wanted = strip_kinds.iter().map(|kind| Wanted {
        id: kind.id(),
        label: style.say(kind.name()),
        name: kind.label.clone(),
        length_mm: kind.length_mm,
        count: kind.count,
    });
    let cut_plan = Planned::new(wanted.collect(), &job.shelf, EFFORT)
        .map_err(|error| vec![stock::fault(&error, |_| "stock".into(), style)])?;
    let screws = strip_kinds.iter().fold(0u32, |sum, kind| sum.saturating_add(kind.screws()));
    let strips_mm = strip_kinds.iter().map(|kind| kind.length_mm * f64::from(kind.count)).sum();
    let screw = job.inputs.screw.as_ref().map(|screw| screw.choose(screws)).transpose();
    let glue = job.inputs.adhesive.as_ref().map(|adhesive| Glue::of(adhesive, strips_mm));
    let found = Found {
        strip_length_mm: strip_kinds.first().map_or(0.0, |kind| kind.length_mm),
        strips: job.spans.len(),
        screw_marks_mm: strip_kinds
            .first()
            .map_or_else(Vec::new, |kind| kind.screw_marks_mm.clone()),
        screws,
        strip_lengths_mm: job.spans.iter().map(|span| job.strip_mm(span)).collect(),
        strip_kinds,
        cut_plan,
        screw: screw.map_err(told)?,
        adhesive: glue.transpose().map_err(told)?,
    };
    let mut drawings = vec![shown::strip(job, found.longest(), style)];
    drawings.extend(found.cut_plan.drawings(style));
    Ok(Report {
        answers: shown::answers(job, &found, style),
        remarks: shown::remarks(job, &found, style),
        tables: shown::tables(&found, style),
        drawings,
        marks: found.strip_kinds.iter().map(|kind| shown::marks(kind, style)).collect(),
        working: shown::working(job, &found, style.exact()),
        cautions: shown::cautions(job),
        buy: buy(job, &found, style),
        centre: job.centre,
        cut: found.cut_plan.cut(style),
        cutting: found.cut_plan.cutting(),
        outcome: found.record(),
        ..Report::default()
    })
}

fn buy(job: &Job, found: &Found, style: Style) -> Vec<BuyLine> {
    let mut lines = found.cut_plan.buy(style);
    if let (Some(screw), Some(choice)) = (&job.inputs.screw, &found.screw) {
        let (kind, item) = match screw.self_drilling {
            true => ("self-drilling-screw", words::SELF_DRILLING_ITEM),
            false => ("screw", words::SCREW_ITEM),
        };
        let id = text!("{}/{}/{}", kind, &choice.gauge, LineId::length(choice.length));
        let (item, count) = (style.say(item), f64::from(found.screws));
        lines.push(BuyLine::pieces(LineId::shared(id), item, style.say(choice.size()), count));
    }
    if let (Some(adhesive), Some(glue)) = (&job.inputs.adhesive, &found.adhesive) {
        let count = f64::from(glue.cartridges);
        let id = LineId::shared(text!("adhesive/{}", LineId::volume(adhesive.cartridge)));
        let spec = style.container(adhesive.cartridge);
        lines.push(BuyLine {
            needed: (glue.volume.value() / adhesive.cartridge).value,
            ..BuyLine::pieces(id, style.say(words::ADHESIVE_ITEM), spec, count)
                .cost(adhesive.price.map(|price| price * count))
        });
    }
    lines
}
