//! A roof-opening trim flange cut to ceiling depth: corner by corner, from either edge.

mod drawing;
mod words;

use crate::text::text;
use uom::si::length::millimeter;

use super::{Sheet, solve};
use crate::ask::{Ask, Figure};
use crate::fault::Fault;
use crate::lists::{Mark, MarkStrip};
use crate::opening::cautions::FOR_TRIM;
use crate::opening::trim::{self, Corner, Cut, Flange};
use crate::outcome::Record;
use crate::quantity::{LENGTH, Length, Style};
use crate::reader::Reader;
use crate::report::{Caution, Report};

/// The sheet.
pub static SHEET: Sheet = Sheet {
    kind: "trim",
    title: "Roof-opening trim",
    trade: "Ceiling and walls",
    purpose: "Cut a trim flange so that its rim meets the ceiling all round.",
    asks: &[&HEIGHT, &CORNERS, &CLEARANCE, &LEAST_GRIP, &SIDES],
    sources: &[&trim::GEOMETRY, &trim::TWIST, &trim::RIM_FOLLOWS],
    example: r#"{ "height": "2 3/8 in",
        "corners": [
            { "name": "front left", "standoff": "5/8 in", "depth": "1 3/4 in" },
            { "name": "front right", "standoff": "11/16 in" },
            { "name": "rear right", "standoff": "13/16 in" },
            { "name": "rear left", "depth": "1 5/8 in" } ],
        "clearance": "1/16 in", "least_grip": "1 in",
        "sides": { "length": "14 in", "width": "14 in" } }"#,
    solve: |reader| solve(reader, read, report),
};

static HEIGHT: Ask = Ask::measure(
    "height",
    "Flange height, uncut",
    &LENGTH,
    ["in", "mm"],
    (0.005, 0.9),
)
.usual("2 3/8 in", "60 mm")
.help("From the rim's face that will touch the ceiling to the edge that will touch the roof frame.")
.figure(Figure::RimHeight);
static NAME: Ask = Ask::words("name", "Corner").usual("front left", "front left");
static STANDOFF: Ask = Ask::measure("standoff", "Standoff", &LENGTH, ["in", "mm"], (0.0, 0.9))
    .optional()
    .usual("5/8 in", "16 mm")
    .help("Push the uncut flange up until it sits on the roof frame; measure from rim to ceiling.")
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
.default("0 in")
.usual("1/16 in", "1.5 mm")
.help("How far the cut edge stays off the roof frame, so that the rim surely meets the ceiling.")
.figure(Figure::Gap);
static LEAST_GRIP: Ask =
    Ask::measure("least_grip", "Least height to keep", &LENGTH, ["in", "mm"], (0.0, 0.9))
        .default("0 in")
        .usual("1 in", "25 mm")
        .help("What the flange needs to be held by: its screws, clips or the vent's collar.")
        .figure(Figure::RimHeight);
static SIDE_LENGTH: Ask = Ask::measure(
    "length",
    "From the first corner to the second",
    &LENGTH,
    ["in", "mm"],
    (0.02, 4.0),
)
.usual("14 in", "356 mm")
.help("Along the flange's wall; the side opposite is as long.")
.figure(Figure::Along);
static SIDE_WIDTH: Ask = Ask::measure(
    "width",
    "From the second corner to the third",
    &LENGTH,
    ["in", "mm"],
    (0.02, 4.0),
)
.usual("14 in", "356 mm")
.help("Along the flange's wall.")
.figure(Figure::Along);
static SIDES: Ask =
    Ask::group("sides", "Sides of the flange", &[&SIDE_LENGTH, &SIDE_WIDTH]).optional();

/// What was typed, read: the flange as the trade knows it.
fn read(reader: &Reader<'_>) -> Flange {
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
    Flange {
        height: reader.measure(&HEIGHT),
        corners,
        clearance: reader.measure(&CLEARANCE),
        least_grip: reader.measure(&LEAST_GRIP),
        sides: reader
            .maybe_group(&SIDES, |group| (group.measure(&SIDE_LENGTH), group.measure(&SIDE_WIDTH))),
    }
}

fn report(flange: &Flange, style: Style) -> Result<Report, Vec<Fault>> {
    let cut = trim::cut(flange).map_err(|faults| {
        let told =
            |fault: &trim::Fault| Fault::new(field(fault, flange), told(fault, flange, style));
        faults.iter().map(told).collect::<Vec<_>>()
    })?;
    Ok(Report {
        answers: words::answers(flange, &cut, style),
        remarks: words::remarks(flange, &cut, style),
        tables: vec![words::table(flange, &cut, style)],
        drawings: drawing::drawings(flange, &cut, style),
        templates: vec![drawing::template(flange, &cut, style)],
        marks: cut
            .corners
            .iter()
            .enumerate()
            .map(|(index, corner)| MarkStrip {
                id: text!("c{}", index + 1),
                label: corner.name.clone(),
                note: "from the roof-side edge".into(),
                alike: 1,
                length: flange.height,
                marks: vec![Mark {
                    id: "cut".into(),
                    label: "cut".into(),
                    at: corner.cut,
                    note: text!("{} from the rim", style.mark(corner.keep).text),
                }],
            })
            .collect(),
        working: words::working(flange, &cut, style),
        cautions: Caution::all(&FOR_TRIM),
        outcome: outcome(&cut),
        ..Report::default()
    })
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
