//! What the boards sheet asks, and how it is read.

use crate::text::text;
use uom::si::length::millimeter;

use super::movement::Movement;
use super::screw::{BEHIND, SCREW, SCREW_LENGTH, STRIP_THICKNESS, Screwing};
use crate::ask::{Ask, BodyPart, Figure};
use crate::carpentry::boards::{BoardTask, Opening};
use crate::carpentry::courses::Start;
use crate::carpentry::moisture::{SPECIES, Species};
use crate::carpentry::stations::Station;
use crate::coating::gap::Hole;
use crate::quantity::{LENGTH, Length};
use crate::reader::Reader;
use crate::sheet::cut_plan::planned::Section;
use crate::sheet::cut_plan::stock::{DENSITY, END_TRIM, KERF, MATERIAL, STOCK, Shelf};

/// What the sheet asks, in the order of the page.
pub(super) static ASKS: &[&Ask] = &[
    &RUN,
    &FIELD,
    &FIELD_REAR,
    &COVERAGE,
    &FULL_WIDTH,
    &JOINT_GAP,
    &THICKNESS,
    &START,
    &LEAST_RIP,
    &END_GAP,
    &SIDE_GAP,
    &STOCK,
    &KERF,
    &END_TRIM,
    &MATERIAL,
    &DENSITY,
    &SUPPORTS,
    &SUPPORT_WIDTH,
    &EDGE_DISTANCE,
    &JOINT_STAGGER,
    &LEAST_PIECE,
    &JOINT_PRICE,
    &SHOWN_RIBS,
    &OPENING_CLEARANCE,
    &FLANGE,
    &SCREW,
    &SCREW_LENGTH,
    &STRIP_THICKNESS,
    &BEHIND,
    &SCREWS_ACROSS,
    &FILL_DIAMETER,
    &FILL_DEPTH,
    &SPECIES_NAME,
    &LAID,
    &DRIEST,
    &WETTEST,
    &CULL,
];

static RUN: Ask = Ask::measure("run", "Run, along the boards", &LENGTH, ["in", "mm"], (0.05, 30.0))
    .from_body(BodyPart::Length)
    .usual("180 in", "4200 mm")
    .help("Front wall to rear wall.")
    .figure(Figure::BodyLength);
static FIELD: Ask =
    Ask::measure("field", "Field, across the boards", &LENGTH, ["in", "mm"], (0.02, 10.0))
        .from_body(BodyPart::Width)
        .usual("72 in", "1900 mm")
        .help("Left wall to right wall, at the front. Left out: the body's width, front and rear by its stations.")
        .figure(Figure::BodyWidth);
static FIELD_REAR: Ask =
    Ask::measure("field_rear", "Field at the rear", &LENGTH, ["in", "mm"], (0.02, 10.0))
        .optional()
        .usual("72 in", "1900 mm")
        .help("The same at the rear wall, where the body is not parallel.")
        .figure(Figure::BodyWidth);
static COVERAGE: Ask =
    Ask::measure("coverage", "Width one course covers", &LENGTH, ["in", "mm"], (0.005, 2.5))
        .usual("5 1/8 in", "130 mm")
        .help("Join two boards and measure from face edge to face edge.")
        .figure(Figure::Across);
static FULL_WIDTH: Ask =
    Ask::measure("full_width", "Width over all", &LENGTH, ["in", "mm"], (0.005, 3.0))
        .optional()
        .usual("5 3/8 in", "137 mm")
        .help("With tongue or lap.")
        .figure(Figure::Across);
static THICKNESS: Ask = Ask::measure("thickness", "Thickness", &LENGTH, ["in", "mm"], (1e-4, 0.5))
    .optional()
    .usual("3/4 in", "19 mm")
    .help("For the length of the screws, and for the weight on the buy list.")
    .figure(Figure::Thickness);
static JOINT_GAP: Ask =
    Ask::measure("joint_gap", "Gap between boards", &LENGTH, ["in", "mm"], (0.0, 0.02))
        .default("0 mm")
        .usual("1/32 in", "1 mm")
        .help("Left free between the faces of two boards, so that they can swell: a spacer's thickness. Left out: none, boards pushed tight.")
        .figure(Figure::Gap);
static START: Ask = Ask::choice(
    "start",
    "First course",
    &[("balanced", "First and last course equally wide"), ("full", "First course full")],
)
.required();
static LEAST_RIP: Ask = Ask::measure("least_rip", "Least rip", &LENGTH, ["in", "mm"], (0.0, 2.5))
    .optional()
    .usual("2 in", "50 mm")
    .help("No course is ripped narrower. Left out: half a course, where that can be had.")
    .figure(Figure::Across);
static END_GAP: Ask =
    Ask::measure("end_gap", "Gap at each end of the run", &LENGTH, ["in", "mm"], (0.0, 1.0))
        .default("3 mm")
        .usual("1/8 in", "3 mm")
        .help("Between the boards' ends and the wall, front and rear each. Left out: 3 mm.")
        .figure(Figure::Gap);
static SIDE_GAP: Ask =
    Ask::measure("side_gap", "Gap at each side", &LENGTH, ["in", "mm"], (0.0, 1.0))
        .default("6 mm")
        .usual("1/4 in", "6 mm")
        .help("Between the outer boards and the wall, left and right each; the first course begins there on the left. Left out: 6 mm.")
    .figure(Figure::Gap);
static SUPPORT: Ask =
    Ask::measure("", "Support", &LENGTH, ["in", "mm"], (0.0, 30.0)).usual("16 in", "400 mm");
static SUPPORTS: Ask = Ask::list("supports", "Centre lines of the supports", 1, &SUPPORT)
    .from_body(BodyPart::Ribs)
    .help("From the front wall, tape hooked once; the ribs, or what is fixed to them.")
    .figure(Figure::FromFront);
static SUPPORT_WIDTH: Ask =
    Ask::measure("support_width", "Width of a support", &LENGTH, ["in", "mm"], (0.001, 1.0))
        .from_body(BodyPart::RibWidth)
        .usual("1 1/2 in", "38 mm")
        .help("What a screw can hit: the furring strip's face, or the rib's.")
        .figure(Figure::Across);
static EDGE_DISTANCE: Ask = Ask::measure(
    "edge_distance",
    "Least from an end to a mark",
    &LENGTH,
    ["in", "mm"],
    (0.0, 0.5),
)
.optional()
.usual("3/8 in", "10 mm")
.help(
    "From a board's end to a screw: at a joint, at a wall, at the cut for an opening. At a joint at most half the support. Left out: a quarter of the support.",
)
.figure(Figure::FromEnd);
static JOINT_STAGGER: Ask =
    Ask::measure("joint_stagger", "Least stagger of joints", &LENGTH, ["in", "mm"], (0.0, 10.0))
        .optional()
        .usual("16 in", "400 mm")
        .help("Between joints of neighbouring courses. Left out: 6 in, where the ribs allow it.")
        .figure(Figure::Spacing);
static JOINT_PRICE: Ask = Ask::number("joint_price", "Worth of one joint less", (0.0, 1e6))
    .default("0")
    .usual("2", "2")
    .help("A joint is work, and it shows: a joint more is made only where it saves more than this. In the prices' money; where nothing is priced, mm of stock.");
static LEAST_PIECE: Ask =
    Ask::measure("least_piece", "Least piece", &LENGTH, ["in", "mm"], (0.0, 10.0))
        .default("12 in")
        .usual("12 in", "300 mm")
        .help("No board beside a joint or an opening is shorter; one that an opening cuts off is held on two supports in any case.")
        .figure(Figure::Along);
static RIB_NUMBER: Ask = Ask::count("", "Rib number", (1, 400)).usual("1", "1");
static SHOWN_RIBS: Ask = Ask::list("shown_ribs", "Ribs whose screws are shown", 1, &RIB_NUMBER)
    .optional()
    .help("Counted from the front; screws on all other ribs are sunk and filled.");
static OPENING_CLEARANCE: Ask = Ask::measure(
    "opening_clearance",
    "Clearance around openings",
    &LENGTH,
    ["in", "mm"],
    (0.0, 0.5),
)
.default("3 mm")
.usual("1/8 in", "3 mm")
.help("Cut away beyond the opening's edge, on all four sides. Left out: 3 mm.")
.figure(Figure::Gap);
static FLANGE: Ask =
    Ask::measure("flange", "Trim flange around openings", &LENGTH, ["in", "mm"], (0.0, 1.0))
        .optional()
        .usual("1 in", "25 mm")
        .help("How far the trim reaches beyond the opening's edge: it must cover the cut.")
        .figure(Figure::Across);
static SCREWS_ACROSS: Ask = Ask::choice(
    "screws_across",
    "Screws across a board",
    &[("1", "One, in the middle"), ("2", "Two, side by side")],
)
.help("On every support.");
static FILL_DIAMETER: Ask =
    Ask::measure("fill_diameter", "Hole above a sunk screw", &LENGTH, ["in", "mm"], (0.0, 0.05))
        .default("6 mm")
        .usual("1/4 in", "6 mm")
        .help("Across the hole that is filled: the screw's head.");
static FILL_DEPTH: Ask =
    Ask::measure("fill_depth", "How deep screws are sunk", &LENGTH, ["in", "mm"], (0.0, 0.05))
        .default("3 mm")
        .usual("1/8 in", "3 mm")
        .help("From the board's face to the head.");
static SPECIES_NAME: Ask = Ask::notation(
    "species",
    "Wood",
    "species",
    &["pine, ponderosa", "redcedar, western", "fir, white", "oak, red", "maple, sugar", "cherry"],
)
.optional()
.help("For how much the boards will swell.");
static LAID: Ask = Ask::percent("laid_percent", "Moisture when laid", (0.0, 30.0))
    .default("8")
    .usual("8", "8")
    .help("By a moisture meter, in the middle of a board.");
static WETTEST: Ask = Ask::percent("wettest_percent", "Moisture at its wettest", (0.0, 30.0))
    .default("14")
    .usual("14", "14")
    .help("What it will take up in a damp season: indoors 12 %, in a damp vehicle 14 % or more.");
static DRIEST: Ask = Ask::percent("driest_percent", "Moisture at its driest", (0.0, 30.0))
    .default("4")
    .usual("4", "4")
    .help("What it dries to: heated indoors 6 %, in a closed body parked in the sun 3 to 4 %.");
static CULL: Ask = Ask::percent("cull_percent", "Spare boards", (0.0, 100.0))
    .default("10")
    .usual("10", "10")
    .help("Boards left out for splits, knots or a broken tongue, as a share of those that are bought: for pine 10 %. Left out: 10 %. They are no part of the cut plan.");

/// What was typed, read.
pub(super) struct Inputs {
    pub(super) task: BoardTask,
    pub(super) field_rear_mm: Option<f64>,
    pub(super) full_width_mm: Option<f64>,
    /// Numbers from 1.
    pub(super) shown_ribs: Vec<usize>,
    pub(super) shelf: Shelf,
    pub(super) openings: Vec<String>,
    /// What each opening is known by, whatever it is called.
    pub(super) opening_keys: Vec<String>,
    pub(super) openings_unknown: bool,
    pub(super) flange_mm: Option<f64>,
    pub(super) screw: Screwing,
    /// The usual values that stand for what was left out.
    pub(super) usual: Vec<String>,
    pub(super) cull_percent: f64,
    /// What is left above a sunk screw.
    pub(super) fill: Hole,
    pub(super) movement: Option<Movement>,
}

/// A board is wider than what it covers by no more. [mm]
const WIDEST_TONGUE_MM: f64 = 30.0;

impl Inputs {
    pub(super) fn balanced(&self) -> bool {
        self.task.start == Start::Balanced
    }

    pub(super) fn opening_name(&self, index: usize) -> String {
        self.openings.get(index).cloned().unwrap_or_default()
    }
}

pub(super) fn read(reader: &Reader<'_>) -> Inputs {
    let length = |ask: &Ask| reader.measure::<Length>(ask).get::<millimeter>();
    let maybe = |ask: &Ask| reader.maybe::<Length>(ask).map(|found| found.get::<millimeter>());
    let body = reader.body();
    let openings = body.openings.iter().map(|opening| Opening {
        x_mm: opening.x.get::<millimeter>(),
        y_mm: opening.y.get::<millimeter>(),
        length_mm: opening.length.get::<millimeter>(),
        width_mm: opening.width.get::<millimeter>(),
    });
    let run_mm = length(&RUN);
    let (field_mm, field_rear_mm, stations) = read_field(reader, run_mm);
    let (coverage_mm, full_width_mm) = (length(&COVERAGE), maybe(&FULL_WIDTH));
    let start = reader.choice(&START);
    let (least_rip_mm, end_gap_mm) = (maybe(&LEAST_RIP), length(&END_GAP));
    let (side_gap_mm, mut shelf) = (length(&SIDE_GAP), Shelf::read(reader));
    let width = full_width_mm.unwrap_or(coverage_mm);
    let board: Option<Length> = reader.maybe(&THICKNESS);
    let joint_gap_mm = length(&JOINT_GAP);
    let sunk: Length = reader.measure(&FILL_DEPTH);
    shelf.weigh(board, Some(Length::new::<millimeter>(width)));
    let widths = full_width_mm.map_or((coverage_mm, coverage_mm + WIDEST_TONGUE_MM), |w| (w, w));
    shelf.section = Section { thickness_mm: None, width_mm: Some(widths) };
    let supports_mm: Vec<f64> =
        reader.positions(&SUPPORTS).iter().map(|at| at.get::<millimeter>()).collect();
    let inputs = Inputs {
        task: BoardTask {
            run_mm,
            field_mm,
            stations,
            coverage_mm,
            joint_gap_mm,
            end_gap_mm,
            side_gap_mm,
            start: if start == "full" { Start::Full } else { Start::Balanced },
            least_rip_mm,
            supports_mm,
            support_width_mm: maybe(&SUPPORT_WIDTH),
            edge_distance_mm: maybe(&EDGE_DISTANCE),
            stagger_mm: maybe(&JOINT_STAGGER),
            least_piece_mm: Some(length(&LEAST_PIECE)),
            joint_price: reader.number(&JOINT_PRICE),
            openings: openings.collect(),
            opening_clearance_mm: length(&OPENING_CLEARANCE),
            screws_across: if reader.choice(&SCREWS_ACROSS) == "2" { 2 } else { 1 },
            stock: shelf.stock.clone(),
            kerf_mm: shelf.kerf_mm,
            end_trim_mm: shelf.end_trim_mm,
            effort: 0,
        },
        field_rear_mm,
        full_width_mm,
        shown_ribs: reader.numbers(&SHOWN_RIBS).iter().map(|number| *number as usize).collect(),
        shelf,
        openings: body
            .openings
            .iter()
            .enumerate()
            .map(|(index, opening)| match opening.name.as_str() {
                "" => text!("opening {}", index + 1),
                name => name.to_owned(),
            })
            .collect(),
        opening_keys: body.openings.iter().map(|opening| opening.key.clone()).collect(),
        openings_unknown: body.faults.iter().any(|fault| fault.field.starts_with("openings")),
        flange_mm: maybe(&FLANGE),
        screw: Screwing::read(reader, board, sunk),
        usual: usual(reader),
        cull_percent: reader.number(&CULL),
        fill: Hole::Plain { diameter: reader.measure(&FILL_DIAMETER), depth: sunk },
        movement: reader.maybe_notation(&SPECIES_NAME, read_species).map(|species| Movement {
            species,
            laid: reader.number(&LAID),
            driest: reader.number(&DRIEST),
            wettest: reader.number(&WETTEST),
            width_mm: full_width_mm.unwrap_or(coverage_mm),
            lap_mm: full_width_mm.map(|full| full - coverage_mm),
            gap_mm: joint_gap_mm,
        }),
    };
    check(reader, &inputs);
    inputs
}

/// The field at the front, at the rear where it is another, and its widths in between: what was typed, else the body's width, by
/// its stations where there are some.
fn read_field(reader: &Reader<'_>, run_mm: f64) -> (f64, Option<f64>, Vec<Station>) {
    let mm = |length: Length| length.get::<millimeter>();
    let body = reader.body();
    if !reader.given(&FIELD) && !reader.given(&FIELD_REAR) {
        let start = Length::new::<millimeter>(0.0);
        let stations = body.widths_between(start, Length::new::<millimeter>(run_mm));
        if let (Some(front), Some(rear)) = (stations.first(), stations.last()) {
            let words = |width: f64| reader.style().mark(Length::new::<millimeter>(width)).text;
            reader.took(
                &FIELD,
                text!(
                    "{} at the front, {} at the rear, by stations",
                    words(front.width_mm),
                    words(rear.width_mm)
                ),
            );
            return (front.width_mm, Some(rear.width_mm), stations);
        }
    }
    let (field_mm, rear_mm) = (mm(reader.measure(&FIELD)), reader.maybe(&FIELD_REAR).map(mm));
    let station = |x_mm: f64, width_mm: f64| Station { x_mm, width_mm };
    let stations = rear_mm
        .map_or(Vec::new(), |rear_mm| vec![station(0.0, field_mm), station(run_mm, rear_mm)]);
    (field_mm, rear_mm, stations)
}

/// What was left out, with the value that stands for it.
fn usual(reader: &Reader<'_>) -> Vec<String> {
    let mut usual = Vec::new();
    for (ask, name) in [
        (&END_GAP, "gap at each end"),
        (&SIDE_GAP, "gap at each side"),
        (&OPENING_CLEARANCE, "clearance around openings"),
        (&LEAST_PIECE, "least piece"),
    ] {
        if !reader.given(ask) {
            let value: Length = reader.measure(ask);
            usual.push(text!("{} {}", name, reader.style().short(value)));
        }
    }
    if !reader.given(&JOINT_GAP) {
        usual.push("no gap between boards".to_owned());
    }
    if !reader.given(&CULL) {
        usual.push("spare boards 10 %".to_owned());
    }
    usual
}

/// What cannot be true though every input can be read.
fn check(reader: &Reader<'_>, inputs: &Inputs) {
    let supports = &inputs.task.supports_mm;
    for (index, pair) in supports.windows(2).enumerate() {
        if pair[1] <= pair[0] + 0.01 {
            reader.note(
                &text!("supports.{}", index + 1),
                "this support is not behind the one before it; enter the centre lines in order, all measured from the front wall",
            );
        }
    }
    for (index, number) in inputs.shown_ribs.iter().enumerate() {
        if *number > supports.len() && !supports.is_empty() {
            reader.note(
                &text!("shown_ribs.{}", &index),
                text!("there is no rib {}; the last one is {}", &number, supports.len()),
            );
        }
    }
    if inputs.full_width_mm.is_some_and(|full| full < inputs.task.coverage_mm - 1e-6) {
        reader.fault_at(
            &FULL_WIDTH,
            "the width over all must be at least what a course covers; check both",
        );
    }
}

fn read_species(text: &str) -> Result<&'static Species, String> {
    let wanted = text.trim();
    SPECIES.iter().find(|species| species.name.eq_ignore_ascii_case(wanted)).ok_or_else(|| {
        let names: Vec<&str> = SPECIES.iter().map(|species| species.name).collect();
        text!("this wood is not in the table; choose one of: {}", names.join("; "))
    })
}
