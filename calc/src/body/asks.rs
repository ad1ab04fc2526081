//! What is asked of the body.

use super::{Diagonals, Opening, Station};
use crate::ask::{Ask, Figure};
use crate::quantity::{LENGTH, Length};
use crate::reader::Reader;
use crate::words::{Phrase, body as words};

/// The greatest length of a body: longer than any road vehicle. [m]
const LONGEST: f64 = 30.0;

pub(super) static LENGTH_ASK: Ask =
    Ask::measure("length", "", &LENGTH, ["in", "mm"], (0.2, LONGEST))
        .named(Phrase::Id(words::LENGTH))
        .optional()
        .usual("180 in", "4200 mm")
        .told(Phrase::Id(words::LENGTH_HELP))
        .figure(Figure::BodyLength);
pub(super) static WIDTH: Ask = Ask::measure("width", "", &LENGTH, ["in", "mm"], (0.2, 10.0))
    .named(Phrase::Id(words::WIDTH))
    .optional()
    .usual("72 in", "1900 mm")
    .told(Phrase::Id(words::WIDTH_HELP))
    .figure(Figure::BodyWidth);
pub(super) static HEIGHT: Ask = Ask::measure("height", "", &LENGTH, ["in", "mm"], (0.2, 10.0))
    .named(Phrase::Id(words::HEIGHT))
    .optional()
    .usual("76 in", "1950 mm")
    .told(Phrase::Id(words::HEIGHT_HELP))
    .figure(Figure::Height);
pub(super) static RIB_WIDTH: Ask =
    Ask::measure("rib_width", "", &LENGTH, ["in", "mm"], (0.001, 1.0))
        .named(Phrase::Id(words::RIB_WIDTH))
        .optional()
        .usual("1 1/2 in", "40 mm")
        .told(Phrase::Id(words::RIB_WIDTH_HELP))
        .figure(Figure::Across);
pub(super) static WALL_DEPTH: Ask =
    Ask::measure("wall_depth", "", &LENGTH, ["in", "mm"], (0.001, 1.0))
        .named(Phrase::Id(words::WALL_DEPTH))
        .optional()
        .usual("1 1/2 in", "38 mm")
        .told(Phrase::Id(words::WALL_DEPTH_HELP))
        .figure(Figure::Thickness);
static EVEN_COUNT: Ask =
    Ask::count("count", "", (1, 200)).named(Phrase::Id(words::EVEN_COUNT)).usual("12", "12");
static EVEN_FIRST: Ask = Ask::measure("first", "", &LENGTH, ["in", "mm"], (0.0, LONGEST))
    .named(Phrase::Id(words::EVEN_FIRST))
    .usual("8 in", "200 mm")
    .told(Phrase::Id(words::EVEN_FIRST_HELP))
    .figure(Figure::FromFront);
static EVEN_SPACING: Ask = Ask::measure("spacing", "", &LENGTH, ["in", "mm"], (0.001, 10.0))
    .named(Phrase::Id(words::EVEN_SPACING))
    .usual("16 in", "400 mm")
    .told(Phrase::Id(words::EVEN_SPACING_HELP))
    .figure(Figure::Spacing);
static EVEN: Ask = Ask::group("even", "", &[&EVEN_COUNT, &EVEN_FIRST, &EVEN_SPACING])
    .named(Phrase::Id(words::EVEN))
    .optional();
static MEASURED_ONE: Ask = Ask::measure("", "", &LENGTH, ["in", "mm"], (0.0, LONGEST))
    .named(Phrase::Id(words::MEASURED_EACH))
    .usual("16 in", "400 mm");
static MEASURED: Ask = Ask::list("measured", "", 1, &MEASURED_ONE)
    .named(Phrase::Id(words::MEASURED))
    .optional()
    .told(Phrase::Id(words::MEASURED_HELP))
    .figure(Figure::FromFront);
// One tape reading after another is what the person has; an even spacing is the exception.
static RIB_KINDS: Ask =
    Ask::either("", &[&MEASURED, &EVEN]).named(Phrase::Id(words::RIB_KINDS)).optional();
pub(super) static RIBS: Ask =
    Ask::group("ribs", "", &[&RIB_KINDS]).named(Phrase::Id(words::RIBS)).optional();
static OPENING_NAME: Ask =
    Ask::words("name", "").named(Phrase::Id(words::OPENING_NAME)).usual("roof vent", "roof vent");
static OPENING_X: Ask = Ask::measure("x", "", &LENGTH, ["in", "mm"], (0.0, LONGEST))
    .named(Phrase::Id(words::OPENING_X))
    .usual("60 in", "1500 mm")
    .told(Phrase::Id(words::OPENING_X_HELP))
    .figure(Figure::FromFront);
static OPENING_Y: Ask = Ask::measure("y", "", &LENGTH, ["in", "mm"], (0.0, 10.0))
    .named(Phrase::Id(words::OPENING_Y))
    .usual("29 in", "750 mm")
    .told(Phrase::Id(words::OPENING_Y_HELP))
    .figure(Figure::FromLeft);
static OPENING_LENGTH: Ask = Ask::measure("length", "", &LENGTH, ["in", "mm"], (0.001, 10.0))
    .named(Phrase::Id(words::OPENING_LENGTH))
    .usual("14 in", "400 mm")
    .told(Phrase::Id(words::OPENING_LENGTH_HELP))
    .figure(Figure::Along);
static OPENING_WIDTH: Ask = Ask::measure("width", "", &LENGTH, ["in", "mm"], (0.001, 10.0))
    .named(Phrase::Id(words::OPENING_WIDTH))
    .usual("14 in", "400 mm")
    .told(Phrase::Id(words::OPENING_WIDTH_HELP))
    .figure(Figure::Across);
pub(super) static OPENINGS: Ask = Ask::rows(
    "openings",
    "",
    "",
    0,
    &[&OPENING_NAME, &OPENING_X, &OPENING_Y, &OPENING_LENGTH, &OPENING_WIDTH],
)
.named(Phrase::Id(words::OPENINGS))
.row(Phrase::Id(words::OPENINGS_ROW))
.optional();

static STATION_X: Ask = Ask::measure("x", "", &LENGTH, ["in", "mm"], (0.0, LONGEST))
    .named(Phrase::Id(words::STATION_X))
    .usual("90 in", "2000 mm")
    .told(Phrase::Id(words::STATION_X_HELP))
    .figure(Figure::FromFront);
static STATION_WIDTH: Ask = Ask::measure("width", "", &LENGTH, ["in", "mm"], (0.2, 10.0))
    .named(Phrase::Id(words::STATION_WIDTH))
    .usual("72 in", "1900 mm")
    .told(Phrase::Id(words::STATION_WIDTH_HELP))
    .figure(Figure::BodyWidth);
pub(super) static WIDTHS: Ask = Ask::rows("widths", "", "", 0, &[&STATION_X, &STATION_WIDTH])
    .named(Phrase::Id(words::WIDTHS))
    .row(Phrase::Id(words::WIDTHS_ROW))
    .optional()
    .told(Phrase::Id(words::WIDTHS_HELP));
static FIRST_DIAGONAL: Ask = Ask::measure("first", "", &LENGTH, ["in", "mm"], (0.2, 2.0 * LONGEST))
    .named(Phrase::Id(words::FIRST_DIAGONAL))
    .usual("194 in", "4610 mm")
    .told(Phrase::Id(words::FIRST_DIAGONAL_HELP));
static SECOND_DIAGONAL: Ask =
    Ask::measure("second", "", &LENGTH, ["in", "mm"], (0.2, 2.0 * LONGEST))
        .named(Phrase::Id(words::SECOND_DIAGONAL))
        .usual("194 in", "4610 mm");
static ACROSS_LENGTH: Ask = Ask::measure("length", "", &LENGTH, ["in", "mm"], (0.2, LONGEST))
    .named(Phrase::Id(words::ACROSS_LENGTH))
    .optional()
    .usual("180 in", "4200 mm")
    .told(Phrase::Id(words::ACROSS_LENGTH_HELP));
static ACROSS_WIDTH: Ask = Ask::measure("width", "", &LENGTH, ["in", "mm"], (0.2, 10.0))
    .named(Phrase::Id(words::ACROSS_WIDTH))
    .optional()
    .usual("72 in", "1900 mm")
    .told(Phrase::Id(words::ACROSS_WIDTH_HELP));
pub(super) static DIAGONALS: Ask = Ask::group(
    "diagonals",
    "",
    &[&FIRST_DIAGONAL, &SECOND_DIAGONAL, &ACROSS_LENGTH, &ACROSS_WIDTH],
)
.named(Phrase::Id(words::DIAGONALS))
.optional()
.told(Phrase::Id(words::DIAGONALS_HELP));

/// What is asked of the body.
pub static ASKS: &[&Ask] =
    &[&LENGTH_ASK, &WIDTH, &WIDTHS, &HEIGHT, &DIAGONALS, &RIBS, &RIB_WIDTH, &WALL_DEPTH, &OPENINGS];

/// A station, as it was typed.
pub(super) fn read_station(row: &Reader<'_>) -> Station {
    Station { x: row.measure(&STATION_X), width: row.measure(&STATION_WIDTH), row: 0 }
}

/// The stations with their places among those that were typed.
pub(super) fn numbered(mut stations: Vec<Station>) -> Vec<Station> {
    stations.iter_mut().enumerate().for_each(|(row, station)| station.row = row);
    stations
}

/// The diagonals, as they were typed.
pub(super) fn read_diagonals(group: &Reader<'_>) -> Diagonals {
    Diagonals {
        first: group.measure(&FIRST_DIAGONAL),
        second: group.measure(&SECOND_DIAGONAL),
        length: group.maybe(&ACROSS_LENGTH),
        width: group.maybe(&ACROSS_WIDTH),
    }
}

/// The centre lines of the ribs, as they were typed.
pub(super) fn read_ribs(reader: &Reader<'_>) -> Vec<Length> {
    match reader.which(&RIB_KINDS) {
        Some(0) => reader.measures(&MEASURED),
        Some(_) => reader.group(&EVEN, |even| {
            let first: Length = even.measure(&EVEN_FIRST);
            let spacing: Length = even.measure(&EVEN_SPACING);
            (0..even.count(&EVEN_COUNT)).map(|rib| first + spacing * f64::from(rib)).collect()
        }),
        None => Vec::new(),
    }
}

/// The openings with what each is known by.
pub(super) fn keyed(openings: Vec<Opening>, keys: Vec<String>) -> Vec<Opening> {
    openings.into_iter().zip(keys).map(|(opening, key)| Opening { key, ..opening }).collect()
}

/// An opening, as it was typed.
pub(super) fn read_opening(row: &Reader<'_>) -> Opening {
    Opening {
        key: String::new(),
        name: row.words(&OPENING_NAME),
        x: row.measure(&OPENING_X),
        y: row.measure(&OPENING_Y),
        length: row.measure(&OPENING_LENGTH),
        width: row.measure(&OPENING_WIDTH),
    }
}
