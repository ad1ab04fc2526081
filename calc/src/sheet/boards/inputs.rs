//! What the boards sheet asks, and the job that comes of it.

use calc_derive::{Choice, Inputs};
use uom::si::length::millimeter;

use super::movement::Movement;
use super::screw::Screwing;
use crate::ask::{Ask, BodyPart, Figure};
use crate::carpentry::boards::{BoardTask, Opening};
use crate::carpentry::courses;
use crate::carpentry::moisture::{self, Species};
use crate::carpentry::stations::Station;
use crate::cutting::planned::Section;
use crate::cutting::stock::Shelf;
use crate::quantity::{LENGTH, Length};
use crate::reader::Reader;
use crate::words::{Arg, Msg, Phrase, boards as words};

// The body's stations stand for the field where neither of its widths is typed: which is read hangs on that.
pub(super) static RUN: Ask = Ask::measure("run", "", &LENGTH, ["in", "mm"], (0.05, 30.0))
    .named(Phrase::Id(words::RUN))
    .told(Phrase::Id(words::RUN_HELP))
    .from_body(BodyPart::Length)
    .usual("180 in", "4200 mm")
    .figure(Figure::BodyLength);
pub(super) static FIELD: Ask = Ask::measure("field", "", &LENGTH, ["in", "mm"], (0.02, 10.0))
    .named(Phrase::Id(words::FIELD))
    .told(Phrase::Id(words::FIELD_HELP))
    .from_body(BodyPart::Width)
    .usual("72 in", "1900 mm")
    .figure(Figure::BodyWidth);
pub(super) static FIELD_REAR: Ask =
    Ask::measure("field_rear", "", &LENGTH, ["in", "mm"], (0.02, 10.0))
        .named(Phrase::Id(words::FIELD_REAR))
        .told(Phrase::Id(words::FIELD_REAR_HELP))
        .optional()
        .usual("72 in", "1900 mm")
        .figure(Figure::BodyWidth);

static WOODS: [&str; 6] =
    ["pine, ponderosa", "redcedar, western", "fir, white", "oak, red", "maple, sugar", "cherry"];

/// What was typed, but for run, field and stock.
#[derive(Inputs)]
#[words(boards)]
pub(super) struct Inputs {
    #[ask(units("in", "mm"), range(0.005, 2.5), usual("5 1/8 in", "130 mm"))]
    #[ask(figure(Figure::Across))]
    pub(super) coverage: Length,
    #[ask(units("in", "mm"), range(0.005, 3.0), usual("5 3/8 in", "137 mm"))]
    #[ask(figure(Figure::Across))]
    pub(super) full_width: Option<Length>,
    #[ask(units("in", "mm"), range(0.0, 0.02), default("0 mm"), usual("1/32 in", "1 mm"))]
    #[ask(figure(Figure::Gap))]
    joint_gap: Length,
    #[ask(units("in", "mm"), range(1e-4, 0.5), usual("3/4 in", "19 mm"))]
    #[ask(figure(Figure::Thickness))]
    pub(super) thickness: Option<Length>,
    #[ask(choice, no_help, required())]
    start: Start,
    #[ask(
        units("in", "mm"),
        range(0.0, 2.5),
        usual("2 in", "50 mm"),
        figure(Figure::Across),
        convention()
    )]
    least_rip: Option<Length>,
    #[ask(units("in", "mm"), range(0.0, 1.0), default("3 mm"), usual("1/8 in", "3 mm"))]
    #[ask(figure(Figure::Gap))]
    end_gap: Length,
    #[ask(units("in", "mm"), range(0.0, 1.0), default("6 mm"), usual("1/4 in", "6 mm"))]
    #[ask(figure(Figure::Gap))]
    side_gap: Length,
    #[ask(list(1), help_of_all, units("in", "mm"), range(0.0, 30.0), usual("16 in", "400 mm"))]
    #[ask(from_body(BodyPart::Ribs), figure(Figure::FromFront))]
    supports: Vec<Length>,
    #[ask(units("in", "mm"), range(0.001, 1.0), from_body(BodyPart::RibWidth))]
    #[ask(usual("1 1/2 in", "38 mm"), figure(Figure::Across))]
    support_width: Option<Length>,
    #[ask(
        units("in", "mm"),
        range(0.0, 0.5),
        usual("3/8 in", "10 mm"),
        figure(Figure::FromEnd),
        convention()
    )]
    edge_distance: Option<Length>,
    #[ask(
        units("in", "mm"),
        range(0.0, 10.0),
        usual("16 in", "400 mm"),
        figure(Figure::Spacing),
        convention()
    )]
    joint_stagger: Option<Length>,
    #[ask(units("in", "mm"), range(0.0, 10.0), default("12 in"), usual("12 in", "300 mm"))]
    #[ask(figure(Figure::Along))]
    least_piece: Length,
    #[ask(range(0.0, 1e6), default("0"), usual("2", "2"))]
    pub(super) joint_price: f64,
    #[ask(list(1), help_of_all, optional(), range(1, 400), usual("1", "1"))]
    pub(super) shown_ribs: Vec<u32>,
    #[ask(units("in", "mm"), range(0.0, 0.5), default("3 mm"), usual("1/8 in", "3 mm"))]
    #[ask(figure(Figure::Gap))]
    opening_clearance: Length,
    #[ask(units("in", "mm"), range(0.0, 1.0), usual("1 in", "25 mm"), figure(Figure::Across))]
    pub(super) flange: Option<Length>,
    #[ask(usual("trim-head #8 x 1 1/4 in", "trim-head 4 x 32 mm"))]
    pub(super) screw: String,
    #[ask(units("in", "mm"), range(0.003, 0.3), usual("1 1/4 in", "32 mm"), figure(Figure::Along))]
    pub(super) screw_length: Option<Length>,
    #[ask(units("in", "mm"), range(1e-4, 0.5), usual("3/4 in", "19 mm"))]
    #[ask(figure(Figure::Thickness))]
    pub(super) strip_thickness: Option<Length>,
    #[ask(units("in", "mm"), range(0.0, 0.5), default("0 mm"), usual("0 in", "0 mm"))]
    #[ask(figure(Figure::Gap))]
    pub(super) behind: Length,
    #[ask(choice)]
    screws_across: ScrewsAcross,
    #[ask(units("in", "mm"), range(0.0, 0.05), default("6 mm"), usual("1/4 in", "6 mm"))]
    pub(super) fill_diameter: Length,
    #[ask(units("in", "mm"), range(0.0, 0.05), default("3 mm"), usual("1/8 in", "3 mm"))]
    pub(super) fill_depth: Length,
    #[ask(read_by(&WOODS, moisture::wood))]
    pub(super) species: Option<&'static Species>,
    #[ask(percent, range(0.0, 30.0), default("8"), usual("8", "8"))]
    pub(super) laid_percent: f64,
    #[ask(percent, range(0.0, 30.0), default("4"), usual("4", "4"))]
    pub(super) driest_percent: f64,
    #[ask(percent, range(0.0, 30.0), default("14"), usual("14", "14"))]
    pub(super) wettest_percent: f64,
    #[ask(percent, range(0.0, 100.0), default("10"), usual("10", "10"))]
    pub(super) cull_percent: f64,
}

/// Where the first course begins.
#[derive(Choice, Clone, Copy, PartialEq)]
#[words(boards)]
enum Start {
    Balanced,
    Full,
}

/// Screws side by side on a support.
#[derive(Choice, Clone, Copy)]
#[words(boards)]
enum ScrewsAcross {
    #[key("1")]
    One = 1,
    #[key("2")]
    Two = 2,
}

/// An opening of the body by its names.
pub(super) struct Named {
    /// As it is shown.
    pub(super) shown: String,
    /// In the outcome: the same in every language.
    pub(super) name: String,
    /// What it is known by, whatever it is called.
    pub(super) key: String,
}

/// What is to be done.
pub(super) struct Job {
    pub(super) inputs: Inputs,
    pub(super) task: BoardTask,
    pub(super) field_rear_mm: Option<f64>,
    pub(super) shelf: Shelf,
    pub(super) openings: Vec<Named>,
    pub(super) openings_unknown: bool,
    pub(super) screw: Screwing,
    /// The usual values that stand for what was left out.
    pub(super) usual: Vec<Msg>,
    pub(super) movement: Option<Movement>,
}

/// A board is wider than what it covers by no more. [mm]
const WIDEST_TONGUE_MM: f64 = 30.0;
/// Work for choosing joints and stock, in the cut planner's steps.
const EFFORT: u64 = 24_000_000;

impl Job {
    pub(super) fn read(reader: &Reader<'_>) -> Self {
        let body = reader.body();
        let run_mm = reader.measure::<Length>(&RUN).get::<millimeter>();
        let (field_mm, field_rear_mm, stations) = read_field(reader, run_mm);
        let inputs = Inputs::read(reader);
        let mut shelf = Shelf::read(reader);
        let width = inputs.full_width.unwrap_or(inputs.coverage);
        shelf.weigh(inputs.thickness, Some(width));
        let mm = |length: Length| length.get::<millimeter>();
        let coverage_mm = mm(inputs.coverage);
        let widths = inputs
            .full_width
            .map_or((coverage_mm, coverage_mm + WIDEST_TONGUE_MM), |full| (mm(full), mm(full)));
        shelf.section = Section { thickness_mm: None, width_mm: Some(widths) };
        let openings = body.openings.iter().map(|opening| Opening {
            x_mm: mm(opening.x),
            y_mm: mm(opening.y),
            length_mm: mm(opening.length),
            width_mm: mm(opening.width),
        });
        let task = BoardTask {
            run_mm,
            field_mm,
            stations,
            coverage_mm,
            joint_gap_mm: mm(inputs.joint_gap),
            end_gap_mm: mm(inputs.end_gap),
            side_gap_mm: mm(inputs.side_gap),
            start: match inputs.start {
                Start::Full => courses::Start::Full,
                Start::Balanced => courses::Start::Balanced,
            },
            least_rip_mm: inputs.least_rip.map(mm),
            supports_mm: inputs.supports.iter().copied().map(mm).collect(),
            support_width_mm: inputs.support_width.map(mm),
            edge_distance_mm: inputs.edge_distance.map(mm),
            stagger_mm: inputs.joint_stagger.map(mm),
            least_piece_mm: Some(mm(inputs.least_piece)),
            joint_price: inputs.joint_price,
            openings: openings.collect(),
            opening_clearance_mm: mm(inputs.opening_clearance),
            screws_across: inputs.screws_across as u32,
            stock: shelf.stock.clone(),
            kerf_mm: shelf.kerf_mm,
            end_trim_mm: shelf.end_trim_mm,
            effort: EFFORT,
        };
        let job = Self {
            task,
            field_rear_mm,
            shelf,
            openings: openings_named(reader),
            openings_unknown: body.faults.iter().any(|fault| fault.field.starts_with("openings")),
            screw: Screwing::of(&inputs),
            usual: usual(reader, &inputs),
            movement: inputs.species.map(|species| Movement {
                species,
                laid: inputs.laid_percent,
                driest: inputs.driest_percent,
                wettest: inputs.wettest_percent,
                width,
                lap: inputs.full_width.map(|full| full - inputs.coverage),
                gap: inputs.joint_gap,
            }),
            inputs,
        };
        job.check(reader);
        job
    }

    pub(super) fn balanced(&self) -> bool {
        self.inputs.start == Start::Balanced
    }

    /// An opening as it is shown.
    pub(super) fn opening(&self, index: usize) -> &str {
        self.openings.get(index).map_or("", |opening| opening.shown.as_str())
    }

    /// What cannot be true though every input can be read.
    fn check(&self, reader: &Reader<'_>) {
        let supports = &self.task.supports_mm;
        for (index, pair) in supports.windows(2).enumerate() {
            if pair[1] <= pair[0] + 0.01 {
                reader.tell_of(Inputs::SUPPORTS, index + 1, words::SUPPORT_ORDER);
            }
        }
        let last = supports.len();
        for (index, &rib) in self.inputs.shown_ribs.iter().enumerate() {
            if rib as usize > last && last > 0 {
                reader.tell_of(Inputs::SHOWN_RIBS, index, words::NoSuchRib { rib, last });
            }
        }
        let coverage = self.inputs.coverage;
        let covered = |full: Length| (full - coverage).get::<millimeter>() >= -1e-6;
        if !self.inputs.full_width.is_none_or(covered) {
            reader.tell(Inputs::FULL_WIDTH, words::FULL_WIDTH_TOO_SMALL);
        }
    }
}

fn openings_named(reader: &Reader<'_>) -> Vec<Named> {
    let style = reader.style();
    let named = |(number, opening): (usize, &crate::body::Opening)| {
        let unnamed = || words::Opening { number };
        let key = opening.key.clone();
        match opening.name.as_str() {
            "" => Named { shown: style.say(unnamed()), name: style.english().say(unnamed()), key },
            name => Named { shown: name.to_owned(), name: name.to_owned(), key },
        }
    };
    (1..).zip(&reader.body().openings).map(named).collect()
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
            let [front_mm, rear_mm] = [front.width_mm, rear.width_mm];
            let [front, rear] =
                [front_mm, rear_mm].map(|width| Arg::mark(Length::new::<millimeter>(width)));
            reader.took(&FIELD, reader.style().say(words::FieldByStations { front, rear }));
            return (front_mm, Some(rear_mm), stations);
        }
    }
    let (field_mm, rear_mm) = (mm(reader.measure(&FIELD)), reader.maybe(&FIELD_REAR).map(mm));
    let station = |x_mm: f64, width_mm: f64| Station { x_mm, width_mm };
    let stations = rear_mm
        .map_or(Vec::new(), |rear_mm| vec![station(0.0, field_mm), station(run_mm, rear_mm)]);
    (field_mm, rear_mm, stations)
}

/// What was left out, with the value that stands for it.
fn usual(reader: &Reader<'_>, inputs: &Inputs) -> Vec<Msg> {
    let left_out = |ask: &Ask| !reader.given(ask);
    let [end_gap, side_gap, clearance, piece] =
        [inputs.end_gap, inputs.side_gap, inputs.opening_clearance, inputs.least_piece]
            .map(Arg::short);
    let cull = Arg::percent(inputs.cull_percent);
    let all: [(&Ask, Msg); 6] = [
        (Inputs::END_GAP, words::LeftOutEndGap { length: end_gap }.into()),
        (Inputs::SIDE_GAP, words::LeftOutSideGap { length: side_gap }.into()),
        (Inputs::OPENING_CLEARANCE, words::LeftOutOpeningClearance { length: clearance }.into()),
        (Inputs::LEAST_PIECE, words::LeftOutLeastPiece { length: piece }.into()),
        (Inputs::JOINT_GAP, words::LEFT_OUT_JOINT_GAP.into()),
        (Inputs::CULL_PERCENT, words::LeftOutCull { percent: cull }.into()),
    ];
    all.into_iter().filter(|(ask, _)| left_out(ask)).map(|(_, message)| message).collect()
}
