//! The measured body: asked for once, and taken by every sheet that needs its measures.

use uom::si::length::{meter, millimeter};

use super::Node;
use crate::ask::{Ask, BodyPart, Figure};
use crate::fault::Fault;
use crate::quantity::{LENGTH, Length, Style, UnitSystem};
use crate::reader::{Notes, Reader, Site};

/// The body of the rig, inside, as far as it was measured.
///
/// x runs along the length from the front wall, y across from the left wall (seen facing
/// forward), z up from the floor.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Body {
    /// Front wall to rear.
    pub length: Option<Length>,
    /// Left wall to right.
    pub width: Option<Length>,
    /// Floor to ceiling.
    pub height: Option<Length>,
    /// Centre lines of the ribs along x, from the front wall, in order.
    pub ribs: Vec<Length>,
    /// The face of a rib that a screw can hit.
    pub rib_width: Option<Length>,
    /// Openings in the roof.
    pub openings: Vec<Opening>,
    /// What is wrong with the typed measures.
    pub faults: Vec<Fault>,
}

/// An opening in the roof, between its own edges.
#[derive(Clone, Debug, PartialEq)]
pub struct Opening {
    /// What it is: `roof vent`.
    pub name: String,
    /// Its nearest edge to the front wall.
    pub x: Length,
    /// Its nearest edge to the left wall.
    pub y: Length,
    /// Along the body.
    pub length: Length,
    /// Across the body.
    pub width: Length,
}

/// The greatest length of a body: longer than any road vehicle. [m]
const LONGEST: f64 = 30.0;

static LENGTH_ASK: Ask =
    Ask::measure("length", "Length inside", &LENGTH, ["in", "mm"], (0.2, LONGEST))
        .optional()
        .usual("180 in", "4200 mm")
        .help("Front wall to rear wall, at the height you will work at.")
        .figure(Figure::BodyLength);
static WIDTH: Ask = Ask::measure("width", "Width inside", &LENGTH, ["in", "mm"], (0.2, 10.0))
    .optional()
    .usual("72 in", "1900 mm")
    .help("Left wall to right wall, facing forward.")
    .figure(Figure::BodyWidth);
static HEIGHT: Ask = Ask::measure("height", "Height inside", &LENGTH, ["in", "mm"], (0.2, 10.0))
    .optional()
    .usual("76 in", "1950 mm")
    .help("Floor to ceiling, where you will stand.")
    .figure(Figure::Height);
static RIB_WIDTH: Ask =
    Ask::measure("rib_width", "Rib face width", &LENGTH, ["in", "mm"], (0.001, 1.0))
        .optional()
        .usual("1 1/2 in", "40 mm")
        .help("Across the face of a rib: the part that a screw can hit.")
        .figure(Figure::Across);
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
static RIBS: Ask = Ask::group("ribs", "Ribs (roof bows)", &[&RIB_KINDS]).optional();
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
static OPENINGS: Ask = Ask::rows(
    "openings",
    "Roof openings",
    "opening",
    0,
    &[&OPENING_NAME, &OPENING_X, &OPENING_Y, &OPENING_LENGTH, &OPENING_WIDTH],
)
.optional();

/// What is asked of the body.
pub static ASKS: &[&Ask] = &[&LENGTH_ASK, &WIDTH, &HEIGHT, &RIBS, &RIB_WIDTH, &OPENINGS];

impl Body {
    /// Reads the body of a project file. What is wrong with it is kept in `faults`; the measures
    /// that are right can be used all the same.
    pub fn read(node: &Node, style: Style) -> Self {
        let nothing = Self::default();
        let no_sheets = |_: &str, _: &str| Err(String::new());
        let no_weight = || Err(String::new());
        let site = Site { style, body: &nothing, sheets: &no_sheets, weight: &no_weight };
        let notes = Notes::default();
        let reader = Reader::new(&site, node, &notes);
        let mut body = Self {
            length: reader.maybe(&LENGTH_ASK),
            width: reader.maybe(&WIDTH),
            height: reader.maybe(&HEIGHT),
            ribs: reader.maybe_group(&RIBS, read_ribs).unwrap_or_default(),
            rib_width: reader.maybe(&RIB_WIDTH),
            openings: reader.rows(&OPENINGS, |row| Opening {
                name: row.words(&OPENING_NAME),
                x: row.measure(&OPENING_X),
                y: row.measure(&OPENING_Y),
                length: row.measure(&OPENING_LENGTH),
                width: row.measure(&OPENING_WIDTH),
            }),
            faults: Vec::new(),
        };
        body.check(&reader);
        (body.faults, _) = notes.faults();
        body.forget_the_wrong();
        body
    }

    /// A measure that a sheet may take: its SI value, and how it is written.
    pub fn part(&self, part: BodyPart, style: Style) -> Option<(f64, String)> {
        let length = match part {
            BodyPart::Length => self.length?,
            BodyPart::Width => self.width?,
            BodyPart::Height => self.height?,
            BodyPart::RibWidth => self.rib_width?,
            // A run of positions is no single figure: `Reader::positions` hands it out.
            BodyPart::Ribs => return None,
            BodyPart::RibSpacing => {
                let (first, last) = (self.ribs.first()?, self.ribs.last()?);
                (self.ribs.len() > 1).then(|| (*last - *first) / (self.ribs.len() - 1) as f64)?
            }
            BodyPart::RibCount if self.ribs.is_empty() => return None,
            BodyPart::RibCount => {
                return Some((self.ribs.len() as f64, self.ribs.len().to_string()));
            }
        };
        let words = match style.system {
            UnitSystem::Imperial => style.mark(length).text,
            UnitSystem::Metric => style.length(length),
        };
        Some((length.get::<meter>(), words))
    }

    /// Notes what cannot be true of a body though every measure can be read.
    fn check(&self, reader: &Reader<'_>) {
        let slack = Length::new::<millimeter>(0.01);
        if let Some((index, _)) =
            self.ribs.windows(2).enumerate().find(|(_, pair)| pair[1] <= pair[0] + slack)
        {
            reader.note(
                &format!("ribs.measured.{}", index + 1),
                "this rib is not behind the one before it; measure every centre line from the \
                 front wall and enter them in order",
            );
        }
        let Some(length) = self.length else { return };
        if let Some(last) = self.ribs.last().filter(|last| **last > length + slack) {
            let field =
                if reader.has("ribs.even") { "ribs.even".to_owned() } else { last_rib(&self.ribs) };
            let style = reader.style();
            reader.note(
                &field,
                format!(
                    "the last rib would lie at {}, behind the rear wall at {}",
                    style.length(*last),
                    style.length(length)
                ),
            );
        }
        for (index, opening) in self.openings.iter().enumerate() {
            if opening.x + opening.length > length + slack {
                reader.note(
                    &format!("openings.{index}.length"),
                    "the opening would reach past the rear wall; check its place and its length",
                );
            }
            if self.width.is_some_and(|width| opening.y + opening.width > width + slack) {
                reader.note(
                    &format!("openings.{index}.width"),
                    "the opening would reach past the right wall; check its place and its width",
                );
            }
        }
    }

    /// Takes out what has a fault, so that no sheet works with a stand-in.
    fn forget_the_wrong(&mut self) {
        let wrong = |key: &str| {
            self.faults
                .iter()
                .any(|fault| fault.field.split('.').next() == Some(key) || fault.field.is_empty())
        };
        let (length, width, height) = (wrong("length"), wrong("width"), wrong("height"));
        let (ribs, rib_width, openings) = (wrong("ribs"), wrong("rib_width"), wrong("openings"));
        self.length = self.length.filter(|_| !length);
        self.width = self.width.filter(|_| !width);
        self.height = self.height.filter(|_| !height);
        self.rib_width = self.rib_width.filter(|_| !rib_width);
        if ribs {
            self.ribs.clear();
        }
        if openings {
            self.openings.clear();
        }
    }
}

fn last_rib(ribs: &[Length]) -> String {
    format!("ribs.measured.{}", ribs.len().saturating_sub(1))
}

fn read_ribs(reader: &Reader<'_>) -> Vec<Length> {
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

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    fn read(node: Node) -> Body {
        Body::read(&node, Style::new(UnitSystem::Metric))
    }

    #[test]
    fn even_ribs_stand_at_first_plus_spacing() {
        let body = read(json!({ "length": "4 m",
            "ribs": { "even": { "count": 3, "first": "8 in", "spacing": "16 in" } } }));
        let at: Vec<f64> = body.ribs.iter().map(|rib| rib.get::<millimeter>().round()).collect();
        assert_eq!(at, [203.0, 610.0, 1016.0]);
        assert_eq!(body.faults, []);
    }

    #[test]
    fn a_wrong_measure_is_named_and_the_right_ones_stay() {
        let body = read(json!({ "length": "4 m", "width": "a foot", "height": 1950,
            "ribs": { "measured": ["400 mm", "300 mm"] } }));
        let fields: Vec<&str> = body.faults.iter().map(|fault| fault.field.as_str()).collect();
        assert_eq!(fields, ["width", "height", "ribs.measured.1"]);
        assert!(body.length.is_some() && body.width.is_none() && body.height.is_none());
        assert!(body.ribs.is_empty());
    }

    #[test]
    fn an_opening_past_a_wall_is_a_fault() {
        let body = read(json!({ "length": "2 m", "openings": [
            { "name": "hatch", "x": "1.8 m", "y": "0 m", "length": "400 mm", "width": "400 mm" } ] }));
        assert_eq!(body.faults[0].field, "openings.0.length");
    }
}
