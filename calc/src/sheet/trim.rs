//! A roof-opening trim cut to ceiling depth: corner by corner, from either edge.

mod drawing;

use calc_derive::Inputs;
use uom::si::f64::{Ratio, Volume};
use uom::si::length::millimeter;
use uom::si::ratio::percent;
use uom::si::volume::liter;

use super::{Sheet, solve};
use crate::ask::Figure;
use crate::coating::bead::{BEAD, Bead, cartridges};
use crate::fastening::window::NO_FARTHER;
use crate::fault::Fault;
use crate::formula::step;
use crate::lists::{BuyLine, LineId, Mark, MarkStrip};
use crate::opening::cautions::FOR_TRIM;
use crate::opening::trim::{
    self, Corner, CornerCut, Cut, CutOff, CutRest, Flange, Keep, KeepRest, RocksBy,
};
use crate::outcome::{Outcome, Record};
use crate::quantity::{Length, Marked, Style};
use crate::reader::Reader;
use crate::report::{Answer, Caution, Remark, Report, Step, Table, TableRow};
use crate::text::text;
use crate::words::{Arg, Msg, Phrase, common, trim as words};

/// The sheet.
pub static SHEET: Sheet = Sheet {
    kind: "trim",
    title: Phrase::Id(words::TITLE),
    trade: Phrase::Id(common::TRADE_WALLS),
    purpose: Phrase::Id(words::PURPOSE),
    asks: Inputs::ASKS,
    sources: &[&trim::GEOMETRY, &trim::TWIST, &trim::RIM_FOLLOWS, &BEAD, &NO_FARTHER],
    example: r#"{ "height": "2 3/8 in",
        "corners": [
            { "name": "front left", "standoff": "5/8 in", "depth": "1 3/4 in" },
            { "name": "front right", "standoff": "11/16 in" },
            { "name": "rear right", "standoff": "13/16 in" },
            { "name": "rear left", "depth": "1 5/8 in" } ],
        "clearance": "1/16 in", "least_grip": "1 in",
        "sides": { "length": "14 in", "width": "14 in" }, "lining": "1 1/2 in" }"#,
    ahead: None,
    solve: |reader| solve(reader, Job::read, report),
};

/// What was typed, read.
#[derive(Inputs)]
#[words(trim)]
struct Inputs {
    #[ask(
        units("in", "mm"),
        range(0.005, 0.9),
        usual("2 3/8 in", "60 mm"),
        figure(Figure::RimHeight)
    )]
    height: Length,
    #[ask(rows(1))]
    corners: Vec<Readings>,
    #[ask(units("in", "mm"), range(0.0, 0.02), default("1/16 in"), usual("1/16 in", "1.5 mm"))]
    #[ask(figure(Figure::Gap))]
    clearance: Length,
    #[ask(units("in", "mm"), range(0.0, 0.9), default("1/2 in"), usual("1/2 in", "13 mm"))]
    #[ask(figure(Figure::RimHeight))]
    least_grip: Length,
    #[ask(group, no_help)]
    sides: Option<Sides>,
    #[ask(
        units("in", "mm"),
        range(0.001, 0.5),
        usual("1 1/2 in", "38 mm"),
        figure(Figure::Thickness)
    )]
    lining: Option<Length>,
}

/// What was read at one corner.
#[derive(Inputs)]
#[words(trim)]
struct Readings {
    #[ask(usual("front left", "front left"), no_help)]
    name: String,
    #[ask(units("in", "mm"), range(0.0, 0.9), usual("5/8 in", "16 mm"), figure(Figure::Standoff))]
    standoff: Option<Length>,
    #[ask(
        units("in", "mm"),
        range(0.0, 0.9),
        usual("1 3/4 in", "44 mm"),
        figure(Figure::CeilingDepth)
    )]
    depth: Option<Length>,
}

/// The sides of the neck, in turn.
#[derive(Inputs)]
#[words(trim)]
struct Sides {
    #[ask(units("in", "mm"), range(0.02, 4.0), usual("14 in", "356 mm"), figure(Figure::Along))]
    length: Length,
    #[ask(units("in", "mm"), range(0.02, 4.0), usual("14 in", "356 mm"), figure(Figure::Along))]
    width: Length,
}

/// What is to be done.
struct Job {
    /// The trim as the trade knows it.
    flange: Flange,
    /// Board and strip under its flange.
    lining: Option<Length>,
    /// The usual values that stand for what was left out.
    usual: Vec<Msg>,
    /// What each corner is known by.
    keys: Vec<String>,
}

impl Job {
    fn read(reader: &Reader<'_>) -> Self {
        let Inputs { height, corners, clearance, least_grip, sides, lining } = Inputs::read(reader);
        let named = |(number, Readings { name, standoff, depth }): (usize, Readings)| {
            let name = match name.is_empty() {
                true => reader.style().say(words::Corner { number }),
                false => name,
            };
            Corner { name, standoff, depth }
        };
        let mut usual: Vec<Msg> = Vec::new();
        if !reader.given(Inputs::CLEARANCE) {
            usual.push(words::LeftOutClearance { length: Arg::short(clearance) }.into());
        }
        if !reader.given(Inputs::LEAST_GRIP) {
            usual.push(words::LeftOutLeastGrip { length: Arg::short(least_grip) }.into());
        }
        let flange = Flange {
            height,
            corners: (1..).zip(corners).map(named).collect(),
            clearance,
            least_grip,
            sides: sides.map(|sides| (sides.length, sides.width)),
        };
        Self { flange, lining, usual, keys: reader.row_keys(Inputs::CORNERS) }
    }
}

fn report(job: &Job, style: Style) -> Result<Report, Vec<Fault>> {
    let flange = &job.flange;
    let cut = trim::cut(flange).map_err(|faults| {
        let told = |fault: &trim::Fault| {
            let corner = |at: usize| flange.corners.get(at).map_or("", |corner| &corner.name);
            Fault::new(field(fault, flange), style.say(fault.said(|at| corner(at).into())))
        };
        faults.iter().map(told).collect::<Vec<_>>()
    })?;
    Ok(show(job, &cut, style))
}

/// The path of the input that a fault is about.
fn field(fault: &trim::Fault, flange: &Flange) -> String {
    use trim::Fault as F;
    let reading = |corner: usize| {
        let given = flange.corners.get(corner).is_some_and(|readings| readings.standoff.is_some());
        let ask = if given { Readings::STANDOFF } else { Readings::DEPTH };
        text!("corners.{}.{}", &corner, ask.key)
    };
    match *fault {
        F::NoCorners | F::NothingToCut => Inputs::CORNERS.key.to_owned(),
        F::NoReading { corner } => text!("corners.{}.{}", &corner, Readings::STANDOFF.key),
        F::ReadingsDisagree { corner, .. } => text!("corners.{}", &corner),
        F::TallerFlangeNeeded { corner, .. }
        | F::TooLittleLeft { corner, .. }
        | F::Range { corner: Some(corner), .. } => reading(corner),
        // The ranges of the asks lie inside those of the trade, but for a grip above the height.
        F::Range { corner: None, .. } => Inputs::LEAST_GRIP.key.to_owned(),
    }
}

/// A bead of sealant round the opening, and the cartridges that it takes. Source: [`BEAD`].
struct Sealant {
    bead: Length,
    cartridges: u32,
}

/// Bead of [`Sealant`], common practice: 1/4 in. [mm]
const SEALANT_BEAD_MM: f64 = 6.35;
/// A cartridge of 10.1 fl oz. [l]
const CARTRIDGE_L: f64 = 0.3;

impl Sealant {
    /// None where the sides are not known.
    fn of(flange: &Flange) -> Option<Self> {
        let (length, width) = flange.sides?;
        let bead = 2.0 * (length + width);
        let round = Bead::Round { diameter: Length::new::<millimeter>(SEALANT_BEAD_MM) };
        let volume = round.volume(bead, Ratio::new::<percent>(10.0)).ok()?;
        let cartridges = cartridges(volume, Volume::new::<liter>(CARTRIDGE_L)).ok()?;
        Some(Self { bead, cartridges })
    }

    fn line(&self, style: Style) -> BuyLine {
        let cartridge = Volume::new::<liter>(CARTRIDGE_L);
        BuyLine::pieces(
            LineId::shared(text!("sealant/{}", LineId::volume(cartridge))),
            style.say(words::SEALANT),
            style.container(cartridge),
            f64::from(self.cartridges),
        )
    }
}

fn outcome(cut: &Cut) -> Record {
    cut.record()
        .maybe("twist_mm", cut.twist.map(|twist| twist.of_corners.get::<millimeter>()))
        .maybe("rim_follows", cut.twist.map(|twist| twist.rim_follows))
}

fn show(job: &Job, cut: &Cut, style: Style) -> Report {
    let flange = &job.flange;
    let sealant = Sealant::of(flange);
    Report {
        answers: answers(flange, cut, style),
        remarks: remarks(job, cut, sealant.as_ref(), style),
        buy: sealant.iter().map(|sealant| sealant.line(style)).collect(),
        tables: vec![table(flange, cut, style)],
        drawings: drawing::drawings(flange, cut, style),
        templates: vec![drawing::template(flange, cut, style)],
        marks: marks(job, cut, style),
        working: working(flange, cut, style.exact()),
        cautions: Caution::all(&FOR_TRIM),
        outcome: outcome(cut),
        ..Report::default()
    }
}

/// A reading that is off by less than this, or a flange that rocks by less, is not worth a word.
const UNSEEN_MM: f64 = 0.4;

/// What stays at a corner, as it is marked: the height less the cut, both as shown, so that the two marks meet on the tape.
fn kept(corner: &CornerCut, flange: &Flange, style: Style) -> Arg {
    Arg::mark(style.mark(flange.height).rounded - style.mark(corner.cut).rounded)
}

/// The corners' names, as they were typed.
fn names(cut: &Cut) -> Arg {
    Arg::each(cut.corners.iter().map(|corner| corner.name.as_str()))
}

fn answers(flange: &Flange, cut: &Cut, style: Style) -> Vec<Answer> {
    let at_all = |of: &dyn Fn(&CornerCut) -> Arg| {
        let texts: Vec<String> =
            cut.corners.iter().map(|corner| style.write(&of(corner))).collect();
        texts.join(" · ")
    };
    let height = Arg::mark(flange.height);
    vec![
        Answer::new(style.say(words::CUT_OFF), at_all(&|corner| Arg::mark(corner.cut)))
            .note(style.write(&names(cut))),
        Answer::new(style.say(words::KEEP), at_all(&|corner| kept(corner, flange, style)))
            .note(style.say(words::KeepNote { corners: names(cut), height })),
        Answer::new(style.say(words::UNEVEN), style.short(cut.uneven))
            .note(style.say(words::UNEVEN_NOTE)),
    ]
}

fn remarks(job: &Job, cut: &Cut, sealant: Option<&Sealant>, style: Style) -> Vec<Remark> {
    let flange = &job.flange;
    let note = |message: Msg| Remark::note(style.say(message));
    let mut remarks = Vec::new();
    if let Some(twist) = cut.twist {
        let by = Arg::short(twist.rocks_by);
        if !twist.rim_follows {
            remarks.push(Remark::warning(style.say(words::Twisted { by })));
        } else if twist.rocks_by.get::<millimeter>() > UNSEEN_MM {
            remarks.push(note(words::Rocks { by }.into()));
        }
    }
    remarks.push(note(words::MARK_BOTH.into()));
    remarks.push(note(words::NOT_THE_TRACED_LINE.into()));
    for corner in &flange.corners {
        if let Some(off) = difference(corner, flange.height)
            && off.get::<millimeter>() > UNSEEN_MM
        {
            let (corner, by) = (corner.name.as_str(), Arg::small(off));
            remarks.push(note(words::ReadingsDiffer { corner, by }.into()));
        }
    }
    remarks.push(note(words::CROWNED.into()));
    remarks.push(note(match job.lining {
        Some(lining) => words::Screws { most: Arg::at_most(lining) }.into(),
        None => words::SCREWS_UNKNOWN.into(),
    }));
    if let Some(sealant) = sealant {
        let (run, bead) = (Arg::run(sealant.bead), Length::new::<millimeter>(SEALANT_BEAD_MM));
        remarks.push(note(words::Seal { run, bead: Arg::short(bead) }.into()));
    }
    if !job.usual.is_empty() {
        remarks.push(note(words::LeftOut { values: Arg::each(job.usual.iter().cloned()) }.into()));
    }
    if flange.corners.len() != 4 {
        remarks.push(note(words::FOUR_CORNERS.into()));
    } else if flange.sides.is_none() {
        remarks.push(note(words::EQUAL_SIDES.into()));
    }
    remarks
}

/// By how much the two readings of a corner differ, where there are two.
fn difference(corner: &Corner, height: Length) -> Option<Length> {
    let (standoff, depth) = corner.standoff.zip(corner.depth)?;
    Some((height - depth - standoff).abs())
}

/// Every corner with both heights and what rounding left over.
fn table(flange: &Flange, cut: &Cut, style: Style) -> Table {
    let row = |(corner, readings): (&CornerCut, &Corner)| {
        let reading = |length: Option<Length>| length.map_or_else(String::new, |l| style.short(l));
        TableRow {
            cells: vec![
                corner.name.clone(),
                reading(readings.standoff),
                reading(readings.depth),
                beside(style.mark(corner.cut), style),
                style.write(&kept(corner, flange, style)),
            ],
            chosen: false,
        }
    };
    Table {
        title: style.say(words::TABLE),
        heads: [
            words::TABLE_CORNER,
            words::TABLE_STANDOFF,
            words::TABLE_DEPTH,
            words::TABLE_CUT_OFF,
            words::TABLE_KEEP,
        ]
        .map(|head| style.say(head))
        .into(),
        rows: cut.corners.iter().zip(&flange.corners).map(row).collect(),
    }
}

fn beside(marked: Marked, style: Style) -> String {
    let over = style.left_over(&marked);
    if over.is_empty() {
        marked.text
    } else {
        style.say(words::LeftOver { mark: marked.text, over })
    }
}

/// The cut of every corner on a strip of the neck's height.
fn marks(job: &Job, cut: &Cut, style: Style) -> Vec<MarkStrip> {
    let flange = &job.flange;
    let strip = |(key, corner): (&String, &CornerCut)| MarkStrip {
        id: text!("c{}", key),
        label: corner.name.clone(),
        note: style.say(words::FROM_EDGE),
        own_datum: true,
        alike: 1,
        length: flange.height,
        marks: vec![Mark {
            id: "cut".into(),
            label: style.say(words::CUT),
            at: corner.cut,
            note: style.say(words::CutNote { keep: kept(corner, flange, style) }),
        }],
    };
    job.keys.iter().zip(&cut.corners).map(strip).collect()
}

fn working(flange: &Flange, cut: &Cut, style: Style) -> Vec<Step> {
    let (height, clearance) = (flange.height, flange.clearance);
    let mut steps = Vec::new();
    for (corner, readings) in cut.corners.iter().zip(&flange.corners) {
        let name = corner.name.as_str();
        let (off, keep) = (words::StepCutOff { corner: name }, words::StepKeep { corner: name });
        match (readings.standoff, readings.depth) {
            (None, Some(depth)) => {
                steps.push(step(keep, &Keep { depth, clearance }, style));
                steps.push(step(off, &CutRest { height, keep: corner.keep }, style));
            }
            (standoff, _) => {
                let standoff = standoff.unwrap_or_default();
                steps.push(step(off, &CutOff { standoff, clearance }, style));
                steps.push(step(keep, &KeepRest { height, cut: corner.cut }, style));
            }
        }
    }
    if let [first, second, third, fourth] = cut.corners.as_slice() {
        let [first, second, third, fourth] = [first, second, third, fourth].map(|at| at.cut);
        steps.push(step(words::STEP_ROCKS, &RocksBy { first, second, third, fourth }, style));
    }
    steps
}
