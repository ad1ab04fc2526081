//! A roof-opening trim cut to ceiling depth: corner by corner, from either edge.

mod drawing;
mod words;

use crate::text::text;
use crate::words::Phrase;
use uom::si::f64::{Ratio, Volume};
use uom::si::length::millimeter;
use uom::si::ratio::percent;
use uom::si::volume::liter;

use super::{Sheet, solve};
use crate::ask::{Ask, Figure};
use crate::coating::bead::{BEAD, Bead, cartridges};
use crate::fastening::window::NO_FARTHER;
use crate::fault::Fault;
use crate::lists::{BuyLine, LineId, Mark, MarkStrip};
use crate::opening::cautions::FOR_TRIM;
use crate::opening::trim::{self, Corner, Cut, Flange};
use crate::outcome::Record;
use crate::quantity::{LENGTH, Length, Style};
use crate::reader::Reader;
use crate::report::{Caution, Report};

/// The sheet.
pub static SHEET: Sheet = Sheet {
    kind: "trim",
    title: Phrase::Written("Roof-opening trim"),
    trade: Phrase::Written("Ceiling and walls"),
    purpose: Phrase::Written("Cut a trim so that its flange meets the ceiling all round."),
    asks: &[&HEIGHT, &CORNERS, &CLEARANCE, &LEAST_GRIP, &SIDES, &LINING],
    sources: &[&trim::GEOMETRY, &trim::TWIST, &trim::RIM_FOLLOWS, &BEAD, &NO_FARTHER],
    example: r#"{ "height": "2 3/8 in",
        "corners": [
            { "name": "front left", "standoff": "5/8 in", "depth": "1 3/4 in" },
            { "name": "front right", "standoff": "11/16 in" },
            { "name": "rear right", "standoff": "13/16 in" },
            { "name": "rear left", "depth": "1 5/8 in" } ],
        "clearance": "1/16 in", "least_grip": "1 in",
        "sides": { "length": "14 in", "width": "14 in" }, "lining": "1 1/2 in" }"#,
    solve: |reader| solve(reader, read, report),
};

static HEIGHT: Ask = Ask::measure(
    "height",
    "Neck height, uncut",
    &LENGTH,
    ["in", "mm"],
    (0.005, 0.9),
)
.usual("2 3/8 in", "60 mm")
.help("From the flange's face that will touch the ceiling to the edge that will touch the roof frame.")
.figure(Figure::RimHeight);
static NAME: Ask = Ask::words("name", "Corner").usual("front left", "front left");
static STANDOFF: Ask = Ask::measure("standoff", "Standoff", &LENGTH, ["in", "mm"], (0.0, 0.9))
    .optional()
    .usual("5/8 in", "16 mm")
    .help("Push the uncut trim up until it sits on the roof frame; measure from flange to ceiling.")
    .figure(Figure::Standoff);
static DEPTH: Ask = Ask::measure("depth", "Depth", &LENGTH, ["in", "mm"], (0.0, 0.9))
    .optional()
    .usual("1 3/4 in", "44 mm")
    .help("From the roof frame down to the face of the finished ceiling. With both, one checks the other.")
    .figure(Figure::CeilingDepth);
static CORNERS: Ask = Ask::rows("corners", "Corners", "corner", 1, &[&NAME, &STANDOFF, &DEPTH])
    .help("All four, in order round the opening, each with a standoff, a depth, or both.");
static CLEARANCE: Ask = Ask::measure(
    "clearance",
    "Clearance at the roof frame",
    &LENGTH,
    ["in", "mm"],
    (0.0, 0.02),
)
.default("1/16 in")
.usual("1/16 in", "1.5 mm")
.help("How far the cut edge stays off the roof frame, so that the flange surely meets the ceiling. Left out: 1/16 in.")
.figure(Figure::Gap);
static LEAST_GRIP: Ask = Ask::measure(
    "least_grip",
    "Least height to keep",
    &LENGTH,
    ["in", "mm"],
    (0.0, 0.9),
)
.default("1/2 in")
.usual("1/2 in", "13 mm")
.help(
    "What the trim needs to be held by: its screws, clips or the vent's collar. Left out: 1/2 in.",
)
.figure(Figure::RimHeight);
static SIDE_LENGTH: Ask = Ask::measure(
    "length",
    "From the first corner to the second",
    &LENGTH,
    ["in", "mm"],
    (0.02, 4.0),
)
.usual("14 in", "356 mm")
.help("Along the trim's neck; the side opposite is as long.")
.figure(Figure::Along);
static SIDE_WIDTH: Ask = Ask::measure(
    "width",
    "From the second corner to the third",
    &LENGTH,
    ["in", "mm"],
    (0.02, 4.0),
)
.usual("14 in", "356 mm")
.help("Along the trim's neck.")
.figure(Figure::Along);
static SIDES: Ask =
    Ask::group("sides", "Sides of the trim", &[&SIDE_LENGTH, &SIDE_WIDTH]).optional();

static LINING: Ask =
    Ask::measure("lining", "Ceiling under the flange", &LENGTH, ["in", "mm"], (0.001, 0.5))
        .optional()
        .usual("1 1/2 in", "38 mm")
        .help("Thickness of board and strip, where the trim's screws go: nothing longer reaches no steel, no wire.")
        .figure(Figure::Thickness);

/// What was typed, read.
struct Inputs {
    /// The trim as the trade knows it.
    flange: Flange,
    /// Board and strip under its flange.
    lining: Option<Length>,
    /// The usual values that stand for what was left out.
    usual: Vec<String>,
    /// What each corner is known by.
    keys: Vec<String>,
}

fn read(reader: &Reader<'_>) -> Inputs {
    let mut corners = reader.rows(&CORNERS, |row| Corner {
        name: row.words(&NAME),
        standoff: row.maybe(&STANDOFF),
        depth: row.maybe(&DEPTH),
    });
    for (index, corner) in corners.iter_mut().enumerate() {
        if corner.name.is_empty() {
            corner.name = text!("corner {}", index + 1);
        }
    }
    let mut usual = Vec::new();
    for (ask, name) in
        [(&CLEARANCE, "clearance at the roof frame"), (&LEAST_GRIP, "least height to keep")]
    {
        if !reader.given(ask) {
            let value: Length = reader.measure(ask);
            usual.push(text!("{} {}", name, reader.style().short(value)));
        }
    }
    let flange = Flange {
        height: reader.measure(&HEIGHT),
        corners,
        clearance: reader.measure(&CLEARANCE),
        least_grip: reader.measure(&LEAST_GRIP),
        sides: reader
            .maybe_group(&SIDES, |group| (group.measure(&SIDE_LENGTH), group.measure(&SIDE_WIDTH))),
    };
    Inputs { flange, lining: reader.maybe(&LINING), usual, keys: reader.row_keys(&CORNERS) }
}

fn report(inputs: &Inputs, style: Style) -> Result<Report, Vec<Fault>> {
    let flange = &inputs.flange;
    let cut = trim::cut(flange).map_err(|faults| {
        let told =
            |fault: &trim::Fault| Fault::new(field(fault, flange), told(fault, flange, style));
        faults.iter().map(told).collect::<Vec<_>>()
    })?;
    Ok(Report {
        answers: words::answers(flange, &cut, style),
        remarks: words::remarks(inputs, &cut, style),
        buy: sealant(flange).map(|sealant| sealant.line(style)).into_iter().collect(),
        tables: vec![words::table(flange, &cut, style)],
        drawings: drawing::drawings(flange, &cut, style),
        templates: vec![drawing::template(flange, &cut, style)],
        marks: cut
            .corners
            .iter()
            .zip(&inputs.keys)
            .map(|(corner, key)| MarkStrip {
                id: text!("c{}", key),
                label: corner.name.clone(),
                note: "from the roof-side edge".into(),
                alike: 1,
                length: flange.height,
                marks: vec![Mark {
                    id: "cut".into(),
                    label: "cut".into(),
                    at: corner.cut,
                    note: text!("{} from the flange", words::kept(corner, flange, style)),
                }],
            })
            .collect(),
        working: words::working(flange, &cut, style),
        cautions: Caution::all(&FOR_TRIM),
        outcome: outcome(&cut),
        ..Report::default()
    })
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

fn sealant(flange: &Flange) -> Option<Sealant> {
    let (length, width) = flange.sides?;
    let bead = 2.0 * (length + width);
    let round = Bead::Round { diameter: Length::new::<millimeter>(SEALANT_BEAD_MM) };
    let volume = round.volume(bead, Ratio::new::<percent>(10.0)).ok()?;
    let cartridges = cartridges(volume, Volume::new::<liter>(CARTRIDGE_L)).ok()?;
    Some(Sealant { bead, cartridges })
}

impl Sealant {
    fn line(&self, style: Style) -> BuyLine {
        let cartridge = Volume::new::<liter>(CARTRIDGE_L);
        BuyLine::pieces(
            LineId::shared(text!("sealant/{}", LineId::volume(cartridge))),
            "sealant cartridge",
            style.container(cartridge),
            f64::from(self.cartridges),
        )
    }
}

fn outcome(cut: &Cut) -> Record {
    let mm = |length: Length| length.get::<millimeter>();
    let corners: Vec<Record> = cut
        .corners
        .iter()
        .map(|corner| {
            Record::new()
                .with("name", corner.name.as_str())
                .with("cut_mm", mm(corner.cut))
                .with("keep_mm", mm(corner.keep))
        })
        .collect();
    Record::new()
        .with("corners", corners)
        .with("uneven_mm", mm(cut.uneven))
        .maybe("twist_mm", cut.twist.map(|twist| mm(twist.of_corners)))
        .maybe("rim_follows", cut.twist.map(|twist| twist.rim_follows))
}

/// The path of the input that a fault is about.
fn field(fault: &trim::Fault, flange: &Flange) -> String {
    use trim::Fault as F;
    let reading = |corner: usize| {
        let given = flange.corners.get(corner).is_some_and(|readings| readings.standoff.is_some());
        text!("corners.{}.{}", &corner, if given { STANDOFF.key } else { DEPTH.key })
    };
    match *fault {
        F::NoCorners | F::NothingToCut => CORNERS.key.to_owned(),
        F::NoReading { corner } => text!("corners.{}.{}", &corner, &STANDOFF.key),
        F::ReadingsDisagree { corner, .. } => text!("corners.{}", &corner),
        F::TallerFlangeNeeded { corner, .. }
        | F::TooLittleLeft { corner, .. }
        | F::Range { corner: Some(corner), .. } => reading(corner),
        // The ranges of the asks lie inside those of the trade, but for a grip above the height.
        F::Range { corner: None, .. } => LEAST_GRIP.key.to_owned(),
    }
}

fn told(fault: &trim::Fault, flange: &Flange, style: Style) -> String {
    let name = |corner: usize| {
        let named = flange.corners.get(corner);
        named.map_or_else(String::new, |named| named.name.clone())
    };
    fault.told(name, |length| style.short(length))
}
