//! What is asked of the body.

use super::{Diagonals, Opening, Station};
use crate::ask::{Ask, Figure};
use crate::quantity::{LENGTH, Length};
use crate::reader::Reader;

/// The greatest length of a body: longer than any road vehicle. [m]
const LONGEST: f64 = 30.0;

pub(super) static LENGTH_ASK: Ask =
    Ask::measure("length", "Length inside", &LENGTH, ["in", "mm"], (0.2, LONGEST))
        .optional()
        .usual("180 in", "4200 mm")
        .help("Front wall to rear wall, at the height you will work at.")
        .figure(Figure::BodyLength);
pub(super) static WIDTH: Ask =
    Ask::measure("width", "Width inside", &LENGTH, ["in", "mm"], (0.2, 10.0))
        .optional()
        .usual("72 in", "1900 mm")
        .help("Left wall to right wall, facing forward.")
        .figure(Figure::BodyWidth);
pub(super) static HEIGHT: Ask =
    Ask::measure("height", "Height inside", &LENGTH, ["in", "mm"], (0.2, 10.0))
        .optional()
        .usual("76 in", "1950 mm")
        .help("Floor to ceiling, where you will stand.")
        .figure(Figure::Height);
pub(super) static RIB_WIDTH: Ask =
    Ask::measure("rib_width", "Rib face width", &LENGTH, ["in", "mm"], (0.001, 1.0))
        .optional()
        .usual("1 1/2 in", "40 mm")
        .help("Across the face of a rib: the part that a screw can hit.")
        .figure(Figure::Across);
pub(super) static WALL_DEPTH: Ask =
    Ask::measure("wall_depth", "Depth behind a rib's face", &LENGTH, ["in", "mm"], (0.001, 1.0))
        .optional()
        .usual("1 1/2 in", "38 mm")
        .help("From the face that screws go into, outwards to the skin, a wire or a pipe, whatever comes first where you will screw: no screw may reach it.")
        .figure(Figure::Thickness);
static EVEN_COUNT: Ask = Ask::count("count", "Number of ribs", (1, 200)).usual("12", "12");
static EVEN_FIRST: Ask =
    Ask::measure("first", "First rib's centre", &LENGTH, ["in", "mm"], (0.0, LONGEST))
        .usual("8 in", "200 mm")
        .help("Front wall to the centre line of the first rib.")
        .figure(Figure::FromFront);
static EVEN_SPACING: Ask =
    Ask::measure("spacing", "Spacing, centre to centre", &LENGTH, ["in", "mm"], (0.001, 10.0))
        .usual("16 in", "400 mm")
        .help("Centre line to centre line.")
        .figure(Figure::Spacing);
static EVEN: Ask =
    Ask::group("even", "Evenly spaced", &[&EVEN_COUNT, &EVEN_FIRST, &EVEN_SPACING]).optional();
static MEASURED_ONE: Ask =
    Ask::measure("", "Rib", &LENGTH, ["in", "mm"], (0.0, LONGEST)).usual("16 in", "400 mm");
static MEASURED: Ask = Ask::list("measured", "Measured one by one", 1, &MEASURED_ONE)
    .optional()
    .help("Hook the tape on the front wall once and read every centre line from there.")
    .figure(Figure::FromFront);
static RIB_KINDS: Ask = Ask::either("Rib positions", &[&EVEN, &MEASURED]).optional();
pub(super) static RIBS: Ask = Ask::group("ribs", "Ribs (roof bows)", &[&RIB_KINDS]).optional();
static OPENING_NAME: Ask = Ask::words("name", "Name").usual("roof vent", "roof vent");
static OPENING_X: Ask =
    Ask::measure("x", "From the front wall", &LENGTH, ["in", "mm"], (0.0, LONGEST))
        .usual("60 in", "1500 mm")
        .help("Front wall to the opening's nearer edge.")
        .figure(Figure::FromFront);
static OPENING_Y: Ask = Ask::measure("y", "From the left wall", &LENGTH, ["in", "mm"], (0.0, 10.0))
    .usual("29 in", "750 mm")
    .help("Left wall to the opening's nearer edge.")
    .figure(Figure::FromLeft);
static OPENING_LENGTH: Ask =
    Ask::measure("length", "Length of the opening", &LENGTH, ["in", "mm"], (0.001, 10.0))
        .usual("14 in", "400 mm")
        .help("Along the body.")
        .figure(Figure::Along);
static OPENING_WIDTH: Ask =
    Ask::measure("width", "Width of the opening", &LENGTH, ["in", "mm"], (0.001, 10.0))
        .usual("14 in", "400 mm")
        .help("Across the body.")
        .figure(Figure::Across);
pub(super) static OPENINGS: Ask = Ask::rows(
    "openings",
    "Roof openings",
    "opening",
    0,
    &[&OPENING_NAME, &OPENING_X, &OPENING_Y, &OPENING_LENGTH, &OPENING_WIDTH],
)
.optional();

static STATION_X: Ask =
    Ask::measure("x", "From the front wall", &LENGTH, ["in", "mm"], (0.0, LONGEST))
        .usual("90 in", "2000 mm")
        .help("Tape hooked on the front wall; 0 is the front wall itself.")
        .figure(Figure::FromFront);
static STATION_WIDTH: Ask =
    Ask::measure("width", "Width there", &LENGTH, ["in", "mm"], (0.2, 10.0))
        .usual("72 in", "1900 mm")
        .help("Left wall to right wall, tape square to the left wall.")
        .figure(Figure::BodyWidth);
pub(super) static WIDTHS: Ask =
    Ask::rows("widths", "Widths at stations", "station", 0, &[&STATION_X, &STATION_WIDTH])
        .optional()
        .help("Where the body is not equally wide: at the front, at the rear, wherever it changes. In between it is taken to run straight.");
static FIRST_DIAGONAL: Ask =
    Ask::measure("first", "Front left to rear right", &LENGTH, ["in", "mm"], (0.2, 2.0 * LONGEST))
        .usual("194 in", "4610 mm")
        .help("Corner to corner, both diagonals at one height: on the floor or under the ceiling.");
static SECOND_DIAGONAL: Ask =
    Ask::measure("second", "Front right to rear left", &LENGTH, ["in", "mm"], (0.2, 2.0 * LONGEST))
        .usual("194 in", "4610 mm");
static ACROSS_LENGTH: Ask =
    Ask::measure("length", "Length of that rectangle", &LENGTH, ["in", "mm"], (0.2, LONGEST))
        .optional()
        .usual("180 in", "4200 mm")
        .help("Only where the corners are not those of the body. Left out: the length inside.");
static ACROSS_WIDTH: Ask =
    Ask::measure("width", "Width of that rectangle", &LENGTH, ["in", "mm"], (0.2, 10.0))
        .optional()
        .usual("72 in", "1900 mm")
        .help("Left out: the width inside, the mean of front and rear.");
pub(super) static DIAGONALS: Ask = Ask::group(
    "diagonals",
    "Diagonals",
    &[&FIRST_DIAGONAL, &SECOND_DIAGONAL, &ACROSS_LENGTH, &ACROSS_WIDTH],
)
.optional()
.help("Two diagonals say how far the body is out of square.");

/// What is asked of the body.
pub static ASKS: &[&Ask] =
    &[&LENGTH_ASK, &WIDTH, &WIDTHS, &HEIGHT, &DIAGONALS, &RIBS, &RIB_WIDTH, &WALL_DEPTH, &OPENINGS];

/// A station, as it was typed.
pub(super) fn read_station(row: &Reader<'_>) -> Station {
    Station { x: row.measure(&STATION_X), width: row.measure(&STATION_WIDTH) }
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
        Some(0) => reader.group(&EVEN, |even| {
            let first: Length = even.measure(&EVEN_FIRST);
            let spacing: Length = even.measure(&EVEN_SPACING);
            (0..even.count(&EVEN_COUNT)).map(|rib| first + spacing * f64::from(rib)).collect()
        }),
        Some(_) => reader.measures(&MEASURED),
        None => Vec::new(),
    }
}

/// An opening, as it was typed.
/// The openings with what each is known by.
pub(super) fn keyed(openings: Vec<Opening>, keys: Vec<String>) -> Vec<Opening> {
    openings.into_iter().zip(keys).map(|(opening, key)| Opening { key, ..opening }).collect()
}

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
