//! Lamps in a ceiling: where they go, clear of ribs and openings, and how bright they make it.

mod answers;
mod plan;
mod template;
#[cfg(test)]
mod tests;
mod wiring;

use calc_derive::{Either, Inputs, Outcome};
use uom::si::angle::degree;
use uom::si::f64::{Angle, Length, Power};
use uom::si::length::meter;
use uom::si::power::watt;

use super::Sheet;
use crate::ask::{BodyPart, Figure};
use crate::electrical::sources::SQUARE_ROUTE;
use crate::fault::Fault;
use crate::handoff::Handed;
use crate::light::cable::stretches;
use crate::light::cautions;
use crate::light::most::CELLS;
use crate::light::photometry::{
    Beam, BeamModel, CONE, COSINE_POWER, FIVE_TIMES, LightError, LightMap, POINT_METHOD, light_map,
};
use crate::light::placement::{
    self, Ceiling, EVEN_ROWS, Fitting, Obstacles, Opening, Placed, PlacementError, Problem, Spot,
    Support, Symmetry,
};
use crate::lists::{BuyLine, LineId};
use crate::outcome::Outcome;
use crate::quantity::{Mass, Style, plain};
use crate::reader::Reader;
use crate::report::{Caution, Report};
use crate::sheet::handoffs::{Drawn, LaidBoards, Load};
use crate::text::text;
use crate::words::{Arg, Msg, Phrase, common, lights as words};

/// The sheet.
pub static SHEET: Sheet = Sheet {
    kind: "lights",
    title: Phrase::Id(words::TITLE),
    trade: Phrase::Id(common::TRADE_WIRING),
    purpose: Phrase::Id(words::PURPOSE),
    asks: Inputs::ASKS,
    sources: &[&EVEN_ROWS, &CELLS, &SQUARE_ROUTE, &POINT_METHOD, &COSINE_POWER, &CONE, &FIVE_TIMES],
    example: r#"{ "rows": 2, "columns": 6, "clearance": "25 mm", "plane_height": "900 mm", "space_above": "38 mm",
        "lamp": { "hole": "58 mm", "rim": "70 mm", "depth": "24 mm", "lumens": 220, "beam_angle": "110 deg", "watts": 3 } }"#,
    ahead: None,
    solve: |reader| super::tried(reader, Job::read, solve, show),
};

/// What was typed, read.
#[derive(Inputs)]
#[words(lights)]
struct Inputs {
    #[ask(either)]
    lamps: Lamps,
    #[ask(range(1, 100), usual("6", "6"))]
    columns: Option<u32>,
    #[ask(group, optional())]
    area: Area,
    #[ask(group, no_help)]
    lamp: Lamp,
    #[ask(units("in", "mm"), range(0.0, 1.0), usual("1 in", "25 mm"), figure(Figure::Gap))]
    clearance: Length,
    #[ask(sheet_of("boards"))]
    board: Option<LaidBoards>,
    #[ask(units("in", "mm"), range(0.0, 10.0), usual("30 in", "750 mm"), figure(Figure::Height))]
    plane_height: Length,
    #[ask(
        units("in", "mm"),
        range(0.05, 20.0),
        from_body(BodyPart::Height),
        usual("76 in", "1950 mm"),
        figure(Figure::Height)
    )]
    lamp_height: Length,
    #[ask(
        units("in", "mm"),
        range(0.0, 1.0),
        usual("1 1/2 in", "38 mm"),
        figure(Figure::CeilingDepth)
    )]
    space_above: Option<Length>,
    #[ask(group)]
    feed: Option<Feed>,
    #[ask(choice, no_help)]
    model: BeamModel,
}

/// Which lamps there are.
#[derive(Either)]
#[words(lights)]
enum Lamps {
    #[ask(range(1, 50), usual("2", "2"), no_help)]
    Rows(u32),
    #[ask(rows(1), no_help)]
    Places(Vec<Place>),
}

/// Where a lamp is to go.
#[derive(Inputs)]
#[words(lights)]
struct Place {
    #[ask(
        units("in", "mm"),
        range(0.0, 50.0),
        usual("40 in", "1000 mm"),
        figure(Figure::FromFront)
    )]
    x: Length,
    #[ask(units("in", "mm"), range(0.0, 50.0), usual("20 in", "500 mm"), figure(Figure::FromLeft))]
    y: Length,
}

/// The ceiling.
#[derive(Inputs)]
#[words(lights)]
struct Area {
    #[ask(
        units("in", "mm"),
        range(0.1, 50.0),
        from_body(BodyPart::Length),
        usual("180 in", "4200 mm"),
        figure(Figure::BodyLength),
        no_help
    )]
    length: Length,
    #[ask(
        units("in", "mm"),
        range(0.1, 50.0),
        from_body(BodyPart::Width),
        usual("72 in", "1900 mm"),
        figure(Figure::BodyWidth),
        no_help
    )]
    width: Length,
}

/// 5° and 360°. [rad]
const BEAM_RANGE: (f64, f64) = (0.087_266_462, 6.283_185_308);

/// The lamp on its package.
#[derive(Inputs)]
#[words(lights)]
struct Lamp {
    #[ask(
        units("in", "mm"),
        range(0.003, 1.0),
        usual("2 1/4 in", "58 mm"),
        figure(Figure::Diameter)
    )]
    hole: Length,
    #[ask(
        units("in", "mm"),
        range(0.005, 1.0),
        usual("2 3/4 in", "70 mm"),
        figure(Figure::Diameter)
    )]
    rim: Length,
    #[ask(units("in", "mm"), range(0.0, 0.5), usual("15/16 in", "24 mm"), figure(Figure::Depth))]
    depth: Length,
    #[ask(unit("lm"), range(1.0, 1e6), usual("220", "220"))]
    lumens: f64,
    #[ask(units("deg", "deg"), range(BEAM_RANGE.0, BEAM_RANGE.1), usual("110 deg", "110 deg"))]
    beam_angle: Angle,
    #[ask(unit("W"), range(0.0, 1000.0), usual("3", "3"))]
    watts: f64,
    #[ask(units("lb", "kg"), range(0.0, 50.0), usual("3 oz", "90 g"))]
    mass: Option<Mass>,
}

/// Where the wire comes up.
#[derive(Inputs)]
#[words(lights)]
struct Feed {
    #[ask(
        units("in", "mm"),
        range(0.0, 50.0),
        usual("12 in", "300 mm"),
        no_help,
        told(Phrase::Id(words::FEED_X_HELP))
    )]
    x: Length,
    #[ask(
        units("in", "mm"),
        range(0.0, 50.0),
        usual("0 in", "0 mm"),
        no_help,
        told(Phrase::Id(words::FEED_Y_HELP))
    )]
    y: Length,
    #[ask(units("ft", "m"), range(0.0, 100.0), default("0 m"), usual("7 ft", "2.1 m"))]
    rise: Length,
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

/// What was typed, and what the body and the boards have to do with it.
struct Job {
    inputs: Inputs,
    /// What each place is known by; none for rows.
    place_keys: Vec<String>,
    ceiling: Ceiling,
    supports: Vec<Support>,
    openings: Vec<Opening>,
    board_centers: Option<Vec<Length>>,
    /// The body has ribs, but nobody measured how wide they are.
    rib_width_missing: bool,
}

impl Job {
    fn read(reader: &Reader<'_>) -> Self {
        let inputs = Inputs::read(reader);
        let by_hand = reader.given(Lamps::PLACES);
        if reader.given(Lamps::ROWS) && !by_hand && !reader.given(Inputs::COLUMNS) {
            reader.tell(Inputs::COLUMNS, words::COLUMNS_TOO);
        }
        let _ = reader.maybe_group(Inputs::LAMP, |lamp| {
            let both = lamp.given(Lamp::HOLE) && lamp.given(Lamp::RIM);
            if both && inputs.lamp.rim < inputs.lamp.hole {
                lamp.tell(Lamp::RIM, words::RIM_COVERS);
            }
        });
        let ceiling = Ceiling { length: inputs.area.length, width: inputs.area.width };
        let board_centers =
            inputs.board.as_ref().and_then(|boards| centers_of(boards, ceiling.width, reader));
        let body = reader.body();
        // A rib or an opening that could not be read cannot be kept clear of.
        let of_fault = |fault: &Fault| {
            ["ribs", "rib_width", "openings"].into_iter().find(|part| fault.field.starts_with(part))
        };
        if let Some(part) = body.faults.iter().find_map(of_fault) {
            let ask = if by_hand { Lamps::PLACES } else { Lamps::ROWS };
            reader.tell(ask, words::BodyWrong { part });
        }
        let width = body.rib_width.unwrap_or_default();
        let openings = body.openings.iter().map(|opening| Opening {
            corner: Spot { x: opening.x, y: opening.y },
            length: opening.length,
            width: opening.width,
        });
        Self {
            place_keys: if by_hand { reader.row_keys(Lamps::PLACES) } else { Vec::new() },
            ceiling,
            supports: body.ribs.iter().map(|&centre| Support { centre, width }).collect(),
            openings: openings.collect(),
            board_centers,
            rib_width_missing: !body.ribs.is_empty() && body.rib_width.is_none(),
            inputs,
        }
    }

    /// Rows, and lamps in each; none where the places were given.
    fn grid(&self) -> Option<(u32, u32)> {
        match self.inputs.lamps {
            Lamps::Rows(rows) => Some((rows, self.inputs.columns.unwrap_or(1))),
            Lamps::Places(_) => None,
        }
    }

    /// Where the wire comes up.
    fn feed(&self) -> Spot {
        let at = |of: fn(&Feed) -> Length| self.inputs.feed.as_ref().map(of).unwrap_or_default();
        Spot { x: at(|feed| feed.x), y: at(|feed| feed.y) }
    }

    /// From the fuse to where the wire comes up.
    fn rise(&self) -> Length {
        self.inputs.feed.as_ref().map(|feed| feed.rise).unwrap_or_default()
    }
}

/// Center lines of the boards of a boards sheet.
fn centers_of(boards: &LaidBoards, width: Length, reader: &Reader<'_>) -> Option<Vec<Length>> {
    let edges = boards.course_edges.iter();
    let centers = edges.clone().zip(edges.skip(1)).map(|(near, far)| (*near + *far) / 2.0);
    let centers: Vec<Length> = centers.filter(|center| *center < width).collect();
    if centers.is_empty() {
        reader.tell(Inputs::BOARD, words::NO_BOARDS);
        return None;
    }
    Some(centers)
}

/// What was worked out.
#[derive(Outcome)]
struct Lit {
    lamps: Vec<OnCeiling>,
    lux: Lux,
    lumens_total: f64,
    watts_total: f64,
    wire: Vec<wiring::Wire>,
    #[outcome(skip)]
    beam: Beam,
    /// From the lit plane up to the lamps.
    #[outcome(skip)]
    height: Length,
    #[outcome(skip)]
    map: LightMap,
}

/// A lamp's place.
#[derive(Outcome)]
struct OnCeiling {
    x: Length,
    y: Length,
    moved: Length,
    clear: bool,
    /// It mirrors the one on the other side, where that is asked.
    symmetric: bool,
    #[outcome(skip)]
    wanted: Spot,
    #[outcome(skip)]
    problem: Option<Problem>,
}

/// Illuminance on the plane, lx.
#[derive(Outcome)]
struct Lux {
    lowest: f64,
    mean: f64,
    highest: f64,
}

impl From<Placed> for OnCeiling {
    fn from(placed: Placed) -> Self {
        let Spot { x, y } = placed.at;
        Self {
            x,
            y,
            moved: placed.moved,
            clear: placed.clear(),
            symmetric: placed.symmetric,
            wanted: placed.wanted,
            problem: placed.problem,
        }
    }
}

impl OnCeiling {
    /// More than the hair that rounding moves.
    fn is_moved(&self) -> bool {
        self.moved.get::<meter>() > 1e-6
    }
}

impl Lit {
    /// Where the lamps have their middle along the body.
    fn middle(&self) -> Option<Length> {
        let all = self.lamps.iter().fold(Length::default(), |sum, lamp| sum + lamp.x);
        (!self.lamps.is_empty()).then(|| all / self.lamps.len() as f64)
    }
}

fn misplaced(error: PlacementError, by_hand: bool) -> (String, Msg) {
    let field = match error {
        PlacementError::Count => if by_hand { "places" } else { "rows" }.to_owned(),
        PlacementError::Rim => "lamp.rim".to_owned(),
        PlacementError::Clearance => "clearance".to_owned(),
        PlacementError::Board(_) => "board".to_owned(),
        PlacementError::Spot(at) => text!("places.{}.x", &at),
        PlacementError::Ceiling | PlacementError::Support(_) | PlacementError::Opening(_) => {
            "area".to_owned()
        }
    };
    (field, error.into())
}

fn unlit(error: LightError) -> (String, Msg) {
    let field = match error {
        LightError::Lumens => "lamp.lumens",
        LightError::BeamAngle(_) => "lamp.beam_angle",
        LightError::Height => "plane_height",
        _ => "area",
    };
    (field.to_owned(), error.into())
}

fn solve(job: &Job) -> Result<Lit, (String, Msg)> {
    let Job { inputs, ceiling, .. } = job;
    let obstacles = Obstacles {
        supports: &job.supports,
        openings: &job.openings,
        board_centres: job.board_centers.as_deref(),
    };
    let fitting = Fitting { rim: inputs.lamp.rim, clearance: inputs.clearance };
    let placed = match &inputs.lamps {
        Lamps::Rows(rows) => {
            // Left and right keep in step; along the body ribs and hatches decide.
            let symmetry = Symmetry { across: true, along: false };
            let (rows, columns) = (*rows as usize, inputs.columns.unwrap_or(1) as usize);
            placement::place_grid(*ceiling, obstacles, fitting, rows, columns, symmetry)
                .map_err(|error| misplaced(error, false))?
        }
        Lamps::Places(places) => {
            let wanted: Vec<Spot> =
                places.iter().map(|place| Spot { x: place.x, y: place.y }).collect();
            placement::place(*ceiling, obstacles, fitting, &wanted)
                .map_err(|error| misplaced(error, true))?
        }
    };
    let lamp = &inputs.lamp;
    let beam = Beam::new(lamp.lumens, lamp.beam_angle, inputs.model).map_err(unlit)?;
    let height = inputs.lamp_height - inputs.plane_height;
    let spots: Vec<Spot> = placed.iter().map(|placed| placed.at).collect();
    let cell = cell(*ceiling, spots.len());
    let map = light_map(&beam, &spots, height, ceiling.length, ceiling.width, cell);
    let map = map.map_err(unlit)?;
    let rows: Vec<Vec<usize>> = match job.grid() {
        Some((_, columns)) => {
            let all: Vec<usize> = (0..spots.len()).collect();
            all.chunks(columns as usize).map(<[usize]>::to_vec).collect()
        }
        None => vec![(0..spots.len()).collect()],
    };
    let count = spots.len() as f64;
    Ok(Lit {
        lamps: placed.into_iter().map(OnCeiling::from).collect(),
        lux: Lux { lowest: map.lowest, mean: map.mean, highest: map.highest },
        lumens_total: lamp.lumens * count,
        watts_total: lamp.watts * count,
        wire: stretches(job.feed(), job.rise(), &spots, &rows)
            .into_iter()
            .map(wiring::Wire::from)
            .collect(),
        beam,
        height,
        map,
    })
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

fn show(job: &Job, found: &Lit, style: Style) -> Report {
    let lamp = &job.inputs.lamp;
    let count = found.lamps.len() as f64;
    let spec = style.say(words::ItemSpec {
        lumens: Arg::lumens(lamp.lumens),
        angle: Arg::beam(lamp.beam_angle),
        watts: Arg::lamp_watts(lamp.watts),
        hole: lamp.hole,
    });
    let line = BuyLine::pieces(lamp.id(), style.say(words::ITEM), spec, count);
    Report {
        answers: answers::answers(job, found, style),
        remarks: answers::remarks(job, found, style),
        tables: vec![
            answers::spots(found, style),
            answers::tasks(found, style),
            wiring::table(found, style),
        ],
        offers: wiring::offers(job, found, style),
        drawings: plan::drawings(job, found, style),
        templates: vec![template::hole(lamp, style)],
        marks: plan::marks(job, found, style),
        working: answers::working(job, found, style.exact()),
        cautions: Caution::all(&cautions::LIGHTS),
        buy: vec![line.mass(lamp.mass.map(|mass| mass * count))],
        centre: found.middle(),
        gives: Handed::of(Drawn(Ok(Load::of(Power::new::<watt>(found.watts_total))))),
        outcome: found.record(),
        ..Report::default()
    }
}
