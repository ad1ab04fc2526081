//! Lamps in a ceiling: where they go, clear of ribs and openings, and how bright they make it.

mod plan;
mod template;
#[cfg(test)]
mod tests;
mod wiring;
mod words;

use crate::text::text;
use crate::words::Phrase;
use uom::si::angle::degree;
use uom::si::f64::{Angle, Length};
use uom::si::length::{meter, millimeter};

use super::{Sheet, solve};
use crate::ask::{Ask, BodyPart, Figure};
use crate::electrical::sources::SQUARE_ROUTE;
use crate::fault::Fault;
use crate::light::cable::{Stretch, stretches};
use crate::light::cautions;
use crate::light::most::CELLS;
use crate::light::photometry::{
    Beam, BeamModel, CONE, COSINE_POWER, FIVE_TIMES, LightError, LightMap, POINT_METHOD, light_map,
};
use crate::light::placement::{
    self, Ceiling, EVEN_ROWS, Fitting, Obstacles, Opening, Placed, PlacementError, Spot, Support,
    Symmetry,
};
use crate::lists::{BuyLine, LineId};
use crate::outcome::{Record, Value};
use crate::quantity::{ANGLE, LENGTH, MASS, Mass, Style, amount, plain};
use crate::reader::Reader;
use crate::report::{Caution, Report};

/// The sheet.
pub static SHEET: Sheet = Sheet {
    kind: "lights",
    title: Phrase::Written("Ceiling lights"),
    trade: Phrase::Written("Wiring"),
    purpose: Phrase::Written(
        "Place lamps in the ceiling clear of ribs and openings, and see how bright they make a table or the floor.",
    ),
    asks: &[
        &LAMPS,
        &COLUMNS,
        &AREA,
        &LAMP,
        &CLEARANCE,
        &BOARD,
        &PLANE_HEIGHT,
        &LAMP_HEIGHT,
        &SPACE_ABOVE,
        &FEED,
        &MODEL,
    ],
    sources: &[&EVEN_ROWS, &CELLS, &SQUARE_ROUTE, &POINT_METHOD, &COSINE_POWER, &CONE, &FIVE_TIMES],
    example: r#"{ "rows": 2, "columns": 6, "clearance": "25 mm", "plane_height": "900 mm", "space_above": "38 mm",
        "lamp": { "hole": "58 mm", "rim": "70 mm", "depth": "24 mm", "lumens": 220, "beam_angle": "110 deg", "watts": 3 } }"#,
    solve: |reader| solve(reader, read, report),
};

static ROWS: Ask = Ask::count("rows", "Rows along the body", (1, 50)).usual("2", "2");
static PLACE_X: Ask = Ask::measure("x", "From the front wall", &LENGTH, ["in", "mm"], (0.0, 50.0))
    .usual("40 in", "1000 mm")
    .help("Front wall to the lamp's centre.")
    .figure(Figure::FromFront);
static PLACE_Y: Ask = Ask::measure("y", "From the left wall", &LENGTH, ["in", "mm"], (0.0, 50.0))
    .usual("20 in", "500 mm")
    .help("Left wall to the lamp's centre, facing forward.")
    .figure(Figure::FromLeft);
static PLACES: Ask = Ask::rows("places", "Places by hand", "lamp", 1, &[&PLACE_X, &PLACE_Y]);
static LAMPS: Ask = Ask::either("Lamps", &[&ROWS, &PLACES]);
static COLUMNS: Ask = Ask::count("columns", "Lamps in each row", (1, 100))
    .optional()
    .usual("6", "6")
    .help("With rows: how many along the body.");
static AREA_LENGTH: Ask =
    Ask::measure("length", "Length of the ceiling", &LENGTH, ["in", "mm"], (0.1, 50.0))
        .from_body(BodyPart::Length)
        .usual("180 in", "4200 mm")
        .figure(Figure::BodyLength);
static AREA_WIDTH: Ask =
    Ask::measure("width", "Width of the ceiling", &LENGTH, ["in", "mm"], (0.1, 50.0))
        .from_body(BodyPart::Width)
        .usual("72 in", "1900 mm")
        .figure(Figure::BodyWidth);
static AREA: Ask = Ask::group("area", "Ceiling", &[&AREA_LENGTH, &AREA_WIDTH])
    .optional()
    .help("Its front left corner is the body's.");
static HOLE: Ask = Ask::measure("hole", "Hole", &LENGTH, ["in", "mm"], (0.003, 1.0))
    .usual("2 1/4 in", "58 mm")
    .help("Cut-out in the lamp's leaflet: the hole saw's diameter.")
    .figure(Figure::Diameter);
static RIM: Ask = Ask::measure("rim", "Rim", &LENGTH, ["in", "mm"], (0.005, 1.0))
    .usual("2 3/4 in", "70 mm")
    .help("Diameter of the visible rim.")
    .figure(Figure::Diameter);
static DEPTH: Ask = Ask::measure("depth", "Depth", &LENGTH, ["in", "mm"], (0.0, 0.5))
    .usual("15/16 in", "24 mm")
    .help("From the underside of the rim to its back, springs and connector included.")
    .figure(Figure::Depth);
static LUMENS: Ask = Ask::number_in("lumens", "Light of each", "lm", (1.0, 1e6))
    .usual("220", "220")
    .help("On the package, in lumens.");
/// 5° and 360°. [rad]
const BEAM_RANGE: (f64, f64) = (0.087_266_462, 6.283_185_308);
static BEAM_ANGLE: Ask =
    Ask::measure("beam_angle", "Beam angle", &ANGLE, ["deg", "deg"], BEAM_RANGE)
        .usual("110 deg", "110 deg")
        .help("On the package, from edge to edge of the beam.");
static WATTS: Ask = Ask::number_in("watts", "Power of each", "W", (0.0, 1000.0))
    .usual("3", "3")
    .help("On the package.");
static LAMP_MASS: Ask = Ask::measure("mass", "Mass of each", &MASS, ["lb", "kg"], (0.0, 50.0))
    .optional()
    .usual("3 oz", "90 g")
    .help("For the weight on the buy list: on the package, or on the kitchen scale.");
static LAMP: Ask = Ask::group(
    "lamp",
    "The lamp",
    &[&HOLE, &RIM, &DEPTH, &LUMENS, &BEAM_ANGLE, &WATTS, &LAMP_MASS],
);
static CLEARANCE: Ask =
    Ask::measure("clearance", "Clearance from the rim", &LENGTH, ["in", "mm"], (0.0, 1.0))
        .usual("1 in", "25 mm")
        .help("From the rim to any rib, opening with its trim, wall or other lamp.")
        .figure(Figure::Gap);
static BOARD: Ask = Ask::sheet_of("board", "Centred on the boards of", "boards")
    .optional()
    .help("A boards sheet of this ceiling: every lamp is centred on a board.");
static PLANE_HEIGHT: Ask =
    Ask::measure("plane_height", "Height of the lit plane", &LENGTH, ["in", "mm"], (0.0, 10.0))
        .usual("30 in", "750 mm")
        .help("Floor to table or counter top; 0 for the floor.")
        .figure(Figure::Height);
static LAMP_HEIGHT: Ask =
    Ask::measure("lamp_height", "Height of the lamps", &LENGTH, ["in", "mm"], (0.05, 20.0))
        .from_body(BodyPart::Height)
        .usual("76 in", "1950 mm")
        .help("Floor to ceiling.")
        .figure(Figure::Height);
static SPACE_ABOVE: Ask =
    Ask::measure("space_above", "Space above the board's face", &LENGTH, ["in", "mm"], (0.0, 1.0))
        .optional()
        .usual("1 1/2 in", "38 mm")
        .help("From the ceiling's visible face to whatever is above it: board and gap.")
        .figure(Figure::CeilingDepth);
static FEED_X: Ask = Ask::measure("x", "From the front wall", &LENGTH, ["in", "mm"], (0.0, 50.0))
    .usual("12 in", "300 mm")
    .help("Front wall to where the wire comes up.");
static FEED_Y: Ask = Ask::measure("y", "From the left wall", &LENGTH, ["in", "mm"], (0.0, 50.0))
    .usual("0 in", "0 mm")
    .help("Left wall to where the wire comes up, facing forward.");
static FEED_RISE: Ask = Ask::measure("rise", "Up and over", &LENGTH, ["ft", "m"], (0.0, 100.0))
    .default("0 m")
    .usual("7 ft", "2.1 m")
    .help("From the fuse up to the ceiling; counted once for each row.");
static FEED: Ask = Ask::group("feed", "Where the wire comes up", &[&FEED_X, &FEED_Y, &FEED_RISE])
    .optional()
    .help("For the lengths of wire; the front left corner where nothing is given.");
static MODEL: Ask = Ask::choice(
    "model",
    "Beam",
    &[("half_power", "fading, half as bright at the edge"), ("cone", "even within the angle")],
);

/// What was typed, read.
struct Inputs {
    grid: Option<(usize, usize)>,
    places: Vec<Spot>,
    /// What each place is known by; none for rows.
    place_keys: Vec<String>,
    ceiling: Ceiling,
    lamp: Lamp,
    clearance: Length,
    plane_height: Length,
    lamp_height: Length,
    space_above: Option<Length>,
    model: BeamModel,
    feed: Spot,
    up_and_over: Length,
    supports: Vec<Support>,
    openings: Vec<Opening>,
    board_centres: Option<Vec<Length>>,
    /// The body has ribs, but nobody measured how wide they are.
    rib_width_missing: bool,
}

/// The lamp on its package.
struct Lamp {
    hole: Length,
    rim: Length,
    depth: Length,
    lumens: f64,
    beam_angle: Angle,
    watts: f64,
    mass: Option<Mass>,
}

impl Lamp {
    fn id(&self) -> LineId {
        LineId::shared(text!(
            "lamp/{}lm/{}deg/{}w/{}",
            plain(self.lumens, 0),
            plain(self.beam_angle.get::<degree>(), 1),
            plain(self.watts, 2),
            LineId::length(self.hole)
        ))
    }
}

fn read(reader: &Reader<'_>) -> Inputs {
    let which = reader.which(&LAMPS);
    let grid = (which == Some(0)).then(|| {
        let columns = reader.maybe_count(&COLUMNS);
        if columns.is_none() {
            reader.fault_at(&COLUMNS, "give the lamps in each row too, for example 6");
        }
        (reader.count(&ROWS) as usize, columns.unwrap_or(1) as usize)
    });
    let places = if which == Some(1) {
        reader.rows(&PLACES, |row| Spot { x: row.measure(&PLACE_X), y: row.measure(&PLACE_Y) })
    } else {
        Vec::new()
    };
    let ceiling = reader.group(&AREA, |group| Ceiling {
        length: group.measure(&AREA_LENGTH),
        width: group.measure(&AREA_WIDTH),
    });
    let lamp = reader.group(&LAMP, |group| {
        let lamp = Lamp {
            hole: group.measure(&HOLE),
            rim: group.measure(&RIM),
            depth: group.measure(&DEPTH),
            lumens: group.number(&LUMENS),
            beam_angle: group.measure(&BEAM_ANGLE),
            watts: group.number(&WATTS),
            mass: group.maybe(&LAMP_MASS),
        };
        if group.given(&HOLE) && group.given(&RIM) && lamp.rim < lamp.hole {
            group.fault_at(&RIM, "the rim must cover the hole: it cannot be smaller than it");
        }
        lamp
    });
    let clearance = reader.measure(&CLEARANCE);
    let board_centres = read_boards(reader, ceiling.width);
    let (feed, up_and_over) = reader
        .maybe_group(&FEED, |group| {
            let feed = Spot { x: group.measure(&FEED_X), y: group.measure(&FEED_Y) };
            (feed, group.measure(&FEED_RISE))
        })
        .unwrap_or((Spot { x: Length::default(), y: Length::default() }, Length::default()));
    let body = reader.body();
    let width = body.rib_width.unwrap_or_default();
    // A rib or an opening that could not be read cannot be kept clear of.
    let in_the_way = |fault: &Fault| {
        ["ribs", "rib_width", "openings"].iter().any(|part| fault.field.starts_with(part))
    };
    if let Some(fault) = body.faults.iter().find(|fault| in_the_way(fault)) {
        reader.fault_at(
            if grid.is_some() { &ROWS } else { &PLACES },
            text!(
                "the lamps must keep clear of ribs and openings, and the body's {} has a fault: mend it on the body page",
                &fault.field
            ),
        );
    }
    Inputs {
        grid,
        place_keys: if places.is_empty() { Vec::new() } else { reader.row_keys(&PLACES) },
        places,
        ceiling,
        lamp,
        clearance,
        board_centres,
        feed,
        up_and_over,
        plane_height: reader.measure(&PLANE_HEIGHT),
        lamp_height: reader.measure(&LAMP_HEIGHT),
        space_above: reader.maybe(&SPACE_ABOVE),
        model: match reader.choice(&MODEL) {
            "cone" => BeamModel::Cone,
            _ => BeamModel::HalfPower,
        },
        supports: body.ribs.iter().map(|&centre| Support { centre, width }).collect(),
        openings: body
            .openings
            .iter()
            .map(|opening| Opening {
                corner: Spot { x: opening.x, y: opening.y },
                length: opening.length,
                width: opening.width,
            })
            .collect(),
        rib_width_missing: !body.ribs.is_empty() && body.rib_width.is_none(),
    }
}

/// Centre lines of the boards of a boards sheet.
fn read_boards(reader: &Reader<'_>, width: Length) -> Option<Vec<Length>> {
    let outcome = reader.sheet(&BOARD)?;
    let edges = outcome.list("course_edges_mm");
    let centres: Vec<Length> = edges
        .windows(2)
        .filter_map(|pair| match pair {
            [Value::Number(near), Value::Number(far)] => {
                Some(Length::new::<millimeter>(f64::midpoint(*near, *far)))
            }
            _ => None,
        })
        .filter(|centre| *centre < width)
        .collect();
    if centres.is_empty() {
        reader.fault_at(
            &BOARD,
            "the boards of this sheet do not fill this ceiling; choose the sheet of this ceiling",
        );
        return None;
    }
    Some(centres)
}

fn placement_fault(error: PlacementError, by_hand: bool) -> Vec<Fault> {
    let field = match error {
        PlacementError::Ceiling => "area".to_owned(),
        PlacementError::Count => if by_hand { "places" } else { "rows" }.to_owned(),
        PlacementError::Rim => "lamp.rim".to_owned(),
        PlacementError::Clearance => "clearance".to_owned(),
        PlacementError::Board(_) => "board".to_owned(),
        PlacementError::Spot(at) => text!("places.{}.x", &at),
        PlacementError::Support(_) | PlacementError::Opening(_) => "area".to_owned(),
    };
    vec![Fault::new(field, error.to_string())]
}

fn light_fault(error: LightError) -> Vec<Fault> {
    let field = match error {
        LightError::Lumens => "lamp.lumens",
        LightError::BeamAngle(_) => "lamp.beam_angle",
        LightError::Height => "plane_height",
        _ => "area",
    };
    vec![Fault::new(field, error.to_string())]
}

/// What was worked out.
struct Figures {
    placed: Vec<Placed>,
    beam: Beam,
    height: Length,
    map: LightMap,
    wire: Vec<Stretch>,
}

impl Figures {
    /// Where the lamps have their middle along the body.
    fn middle(&self) -> Option<Length> {
        let all = self.placed.iter().fold(Length::default(), |sum, lamp| sum + lamp.at.x);
        (!self.placed.is_empty()).then(|| all / self.placed.len() as f64)
    }

    fn of(inputs: &Inputs) -> Result<Self, Vec<Fault>> {
        let obstacles = Obstacles {
            supports: &inputs.supports,
            openings: &inputs.openings,
            board_centres: inputs.board_centres.as_deref(),
        };
        let fitting = Fitting { rim: inputs.lamp.rim, clearance: inputs.clearance };
        let placed = match inputs.grid {
            Some((rows, columns)) => {
                // Left and right keep in step; along the body ribs and hatches decide.
                let symmetry = Symmetry { across: true, along: false };
                placement::place_grid(inputs.ceiling, obstacles, fitting, rows, columns, symmetry)
            }
            None => placement::place(inputs.ceiling, obstacles, fitting, &inputs.places),
        }
        .map_err(|error| placement_fault(error, inputs.grid.is_none()))?;
        let lamp = &inputs.lamp;
        let beam = Beam::new(lamp.lumens, lamp.beam_angle, inputs.model).map_err(light_fault)?;
        let height = inputs.lamp_height - inputs.plane_height;
        let spots: Vec<Spot> = placed.iter().map(|placed| placed.at).collect();
        let Ceiling { length, width } = inputs.ceiling;
        let cell = cell(inputs.ceiling, spots.len());
        let map = light_map(&beam, &spots, height, length, width, cell).map_err(light_fault)?;
        let rows: Vec<Vec<usize>> = match inputs.grid {
            Some((rows, columns)) => {
                (0..rows).map(|row| (row * columns..(row + 1) * columns).collect()).collect()
            }
            None => vec![(0..spots.len()).collect()],
        };
        let wire = stretches(inputs.feed, inputs.up_and_over, &spots, &rows);
        Ok(Self { placed, beam, height, map, wire })
    }
}

/// Sums of one lamp's light in one cell that a map may take: it is drawn anew at every keystroke.
const MOST_SUMS: f64 = 5000.0;

/// Cells fine enough to see each lamp, coarse enough to be quick with many: at least twelve across.
fn cell(ceiling: Ceiling, lamps: usize) -> Length {
    let (length, width) = (ceiling.length.get::<meter>(), ceiling.width.get::<meter>());
    let quick = (length * width * lamps as f64 / MOST_SUMS).sqrt();
    let coarsest = length.min(width) / 12.0;
    // A ceiling much longer than wide has its cells made larger, so that they stay few.
    let fewest = (length * width / 4000.0).sqrt();
    Length::new::<meter>(quick.min(coarsest).max(0.05).max(fewest))
}

fn degrees(angle: Angle) -> String {
    text!("{}°", plain(angle.get::<degree>(), 1))
}

fn report(inputs: &Inputs, style: Style) -> Result<Report, Vec<Fault>> {
    let figures = Figures::of(inputs)?;
    let count = figures.placed.len();
    let lamps: Vec<Record> = figures
        .placed
        .iter()
        .map(|placed| {
            Record::new()
                .with("x_mm", placed.at.x.get::<millimeter>())
                .with("y_mm", placed.at.y.get::<millimeter>())
                .with("moved_mm", placed.moved.get::<millimeter>())
                .with("clear", placed.clear())
                .with("symmetric", placed.symmetric)
        })
        .collect();
    let lamp = &inputs.lamp;
    Ok(Report {
        answers: words::answers(inputs, &figures, style),
        remarks: words::remarks(inputs, &figures, style),
        tables: words::tables(&figures, style),
        offers: wiring::offers(inputs, &figures, style),
        drawings: plan::drawings(inputs, &figures, style),
        templates: vec![template::hole(&inputs.lamp, style)],
        marks: plan::marks(inputs, &figures, style),
        working: words::working(inputs, &figures, style),
        cautions: Caution::all(&cautions::LIGHTS),
        buy: vec![
            BuyLine::pieces(
                lamp.id(),
                "ceiling lamp",
                text!(
                    "{}, {}, {}, hole {}",
                    amount(lamp.lumens, 0, "lm"),
                    degrees(lamp.beam_angle),
                    amount(lamp.watts, 1, "W"),
                    style.length(lamp.hole)
                ),
                count as f64,
            )
            .mass(lamp.mass.map(|mass| mass * count as f64)),
        ],
        centre: figures.middle(),
        outcome: Record::new()
            .with("lamps", lamps)
            .with(
                "lux",
                Record::new()
                    .with("lowest", figures.map.lowest)
                    .with("mean", figures.map.mean)
                    .with("highest", figures.map.highest),
            )
            .with("lumens_total", lamp.lumens * count as f64)
            .with("watts_total", lamp.watts * count as f64)
            .with("wire", wiring::records(&figures)),
        ..Report::default()
    })
}
