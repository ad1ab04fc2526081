//! The measured body: asked for once, and taken by every sheet that needs its measures.

mod asks;
mod findings;
mod so_far;

use uom::si::length::{meter, millimeter};

pub use self::asks::ASKS;
use self::asks::{
    DIAGONALS, HEIGHT, LENGTH_ASK, OPENINGS, RIB_WIDTH, RIBS, WALL_DEPTH, WIDTH, WIDTHS, keyed,
    numbered, read_diagonals, read_opening, read_ribs, read_station,
};
pub use self::so_far::SoFar;
use crate::ask::BodyPart;
use crate::carpentry::stations;
use crate::fault::Fault;
use crate::node::Node;
use crate::quantity::{Length, Style, UnitSystem};
use crate::reader::{Notes, Reader, Site, no_sheet, no_weight};
use crate::sorting::sort_by;
use crate::words::body as words;

/// What is measured first, in this order: with it, most sheets have what they take from the body.
pub const FIRST: [&str; 4] = ["length", "width", "ribs", "rib_width"];

/// The body of the rig, inside, as far as it was measured.
///
/// x runs along the length from the front wall, y across from the left wall (seen facing
/// forward), z up from the floor.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Body {
    /// Front wall to rear.
    pub length: Option<Length>,
    /// Left wall to right, for whoever asks for one width: where stations were measured, the
    /// narrowest of them, which fits everywhere; else the width that was typed.
    pub width: Option<Length>,
    /// Widths measured along x, from the front rearwards; none where the body is equally wide.
    pub widths: Vec<Station>,
    /// Two diagonals, where they were measured.
    pub diagonals: Option<Diagonals>,
    /// Floor to ceiling.
    pub height: Option<Length>,
    /// Centre lines of the ribs along x, from the front wall, in order.
    pub ribs: Vec<Length>,
    /// The face of a rib that a screw can hit.
    pub rib_width: Option<Length>,
    /// From a rib's face outwards to what no screw may reach: the skin, or what lies before it.
    pub wall_depth: Option<Length>,
    /// Openings in the roof.
    pub openings: Vec<Opening>,
    /// What is wrong with the typed measures.
    pub faults: Vec<Fault>,
    /// What can be drawn of it already.
    pub so_far: SoFar,
}

/// A width measured at one place along the body.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Station {
    /// From the front wall.
    pub x: Length,
    /// Left wall to right, there.
    pub width: Length,
    /// Its place among those that were typed.
    pub row: usize,
}

/// Two diagonals measured at one height, from corner to corner.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Diagonals {
    /// Front left to rear right.
    pub first: Length,
    /// Front right to rear left.
    pub second: Length,
    /// Length of the rectangle, where it is not the body's.
    pub length: Option<Length>,
    /// Width of the rectangle, where it is not the body's.
    pub width: Option<Length>,
}

/// An opening in the roof, between its own edges.
#[derive(Clone, Debug, PartialEq)]
pub struct Opening {
    /// What it is: `roof vent`.
    pub name: String,
    /// What it is known by, whatever it is called.
    pub key: String,
    /// Its nearest edge to the front wall.
    pub x: Length,
    /// Its nearest edge to the left wall.
    pub y: Length,
    /// Along the body.
    pub length: Length,
    /// Across the body.
    pub width: Length,
}

impl Body {
    /// Reads the body of a project file. What is wrong with it is kept in `faults`; the measures
    /// that are right can be used all the same.
    pub fn read(node: &Node, style: Style) -> Self {
        let nothing = Self::default();
        let site = Site { style, body: &nothing, sheets: &no_sheet, weight: &no_weight };
        let notes = Notes::default();
        let reader = Reader::new(&site, node, &notes);
        let mut body = Self {
            length: reader.maybe(&LENGTH_ASK),
            width: reader.maybe(&WIDTH),
            widths: numbered(reader.rows(&WIDTHS, read_station)),
            diagonals: reader.maybe_group(&DIAGONALS, read_diagonals),
            height: reader.maybe(&HEIGHT),
            ribs: reader.maybe_group(&RIBS, read_ribs).unwrap_or_default(),
            rib_width: reader.maybe(&RIB_WIDTH),
            wall_depth: reader.maybe(&WALL_DEPTH),
            openings: keyed(reader.rows(&OPENINGS, read_opening), reader.row_keys(&OPENINGS)),
            faults: Vec::new(),
            so_far: SoFar::default(),
        };
        body.check(&reader);
        let evenly = reader.has("ribs.even");
        (body.faults, _) = notes.faults();
        body.so_far = SoFar::of(&body, evenly);
        body.forget_the_wrong();
        body.width = body.narrowest().or(body.width);
        body
    }

    /// The widths of the body from one place to another along x, both included: straight between
    /// the stations; none where no stations were measured.
    pub fn widths_between(&self, from: Length, to: Length) -> Vec<stations::Station> {
        stations::between(&self.stations(), from.get::<millimeter>(), to.get::<millimeter>())
    }

    /// The width at a place along x: straight between the stations, else the one width.
    pub fn width_at(&self, x: Length) -> Option<Length> {
        let there = stations::width_at_mm(&self.stations(), x.get::<millimeter>());
        there.map(Length::new::<millimeter>).or(self.width)
    }

    fn stations(&self) -> Vec<stations::Station> {
        let mut stations = Vec::with_capacity(self.widths.len());
        for station in &self.widths {
            stations.push(stations::Station {
                x_mm: station.x.get::<millimeter>(),
                width_mm: station.width.get::<millimeter>(),
            });
        }
        stations
    }

    fn narrowest(&self) -> Option<Length> {
        stations::range_mm(&self.stations()).map(|(low, _)| Length::new::<millimeter>(low))
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
        let words = match self.widths.len() {
            2.. if part == BodyPart::Width => {
                style.say(words::Narrowest { width: words, count: self.widths.len() })
            }
            _ => words,
        };
        Some((length.get::<meter>(), words))
    }

    /// Notes what cannot be true of a body though every measure can be read.
    fn check(&mut self, reader: &Reader<'_>) {
        let slack = Length::new::<millimeter>(0.01);
        self.check_stations(reader, slack);
        if let Some((index, _)) =
            self.ribs.windows(2).enumerate().find(|(_, pair)| pair[1] <= pair[0] + slack)
        {
            reader.tell_at(&format!("ribs.measured.{}", index + 1), words::RIB_OUT_OF_ORDER);
        }
        let Some(length) = self.length else { return };
        if let Some(last) = self.ribs.last().filter(|last| **last > length + slack) {
            let field =
                if reader.has("ribs.even") { "ribs.even".to_owned() } else { last_rib(&self.ribs) };
            reader.tell_at(&field, words::RibOutside { rib: *last, length });
        }
        for (index, opening) in self.openings.iter().enumerate() {
            if opening.x + opening.length > length + slack {
                reader.tell_at(&format!("openings.{index}.length"), words::OPENING_TOO_LONG);
            }
            let ends = [opening.x, opening.x + opening.length];
            let narrow = ends.into_iter().filter_map(|x| self.width_at(x)).reduce(Length::min);
            if narrow.is_some_and(|width| opening.y + opening.width > width + slack) {
                reader.tell_at(&format!("openings.{index}.width"), words::OPENING_TOO_WIDE);
            }
        }
    }

    /// Stations in order of x, each in its own place within the body; diagonals that fit its sides.
    fn check_stations(&mut self, reader: &Reader<'_>, slack: Length) {
        for (index, station) in self.widths.iter().enumerate() {
            let field = format!("widths.{index}.x");
            if self.length.is_some_and(|length| station.x > length + slack) {
                reader.tell_at(&field, words::STATION_OUTSIDE);
            }
            let before = self.widths.iter().take(index);
            if before.into_iter().any(|other| (other.x - station.x).abs() <= slack) {
                reader.tell_at(&field, words::STATION_TWICE);
            }
        }
        sort_by(&mut self.widths, |a, b| a.x.value.total_cmp(&b.x.value));
        if let Some(message) = self.diagonals.and_then(|diagonals| self.no_figure(&diagonals)) {
            reader.tell_at("diagonals.second", message);
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
        let (widths, diagonals) = (wrong("widths"), wrong("diagonals"));
        let wall_depth = wrong("wall_depth");
        let (ribs, rib_width, openings) = (wrong("ribs"), wrong("rib_width"), wrong("openings"));
        self.length = self.length.filter(|_| !length);
        self.width = self.width.filter(|_| !width);
        self.height = self.height.filter(|_| !height);
        self.rib_width = self.rib_width.filter(|_| !rib_width);
        self.wall_depth = self.wall_depth.filter(|_| !wall_depth);
        self.diagonals = self.diagonals.filter(|_| !diagonals);
        if widths {
            self.widths.clear();
        }
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
    fn stations_give_a_width_everywhere_and_the_narrowest_to_who_asks_for_one() {
        let body = read(json!({ "length": "4 m", "width": "1900 mm", "widths": [
            { "x": "4 m", "width": "1880 mm" }, { "x": "0 mm", "width": "1900 mm" },
            { "x": "2 m", "width": "1910 mm" } ] }));
        assert_eq!(body.faults, []);
        let at = |x: f64| {
            body.width_at(Length::new::<millimeter>(x)).unwrap().get::<millimeter>().round()
        };
        assert_eq!([at(0.0), at(1000.0), at(3000.0), at(4000.0)], [1900.0, 1905.0, 1895.0, 1880.0]);
        let (width, words) = body.part(BodyPart::Width, Style::new(UnitSystem::Metric)).unwrap();
        assert!((width - 1.88).abs() < 1e-9);
        assert_eq!(words, "1880 mm, the narrowest of 3 stations");
    }

    #[test]
    fn a_wrong_station_is_named_and_the_one_width_serves() {
        let body = read(json!({ "length": "4 m", "width": "1900 mm", "widths": [
            { "x": "0 mm", "width": "1900 mm" }, { "x": "0 mm", "width": "1910 mm" },
            { "x": "5 m", "width": "1910 mm" }, { "x": "1 m" } ] }));
        let fields: Vec<&str> = body.faults.iter().map(|fault| fault.field.as_str()).collect();
        assert_eq!(fields, ["widths.3.width", "widths.1.x", "widths.2.x"]);
        assert_eq!(body.width.map(|width| width.get::<millimeter>().round()), Some(1900.0));
    }

    #[test]
    fn an_opening_past_a_wall_is_a_fault() {
        let body = read(json!({ "length": "2 m", "openings": [
            { "name": "hatch", "x": "1.8 m", "y": "0 m", "length": "400 mm", "width": "400 mm" } ] }));
        assert_eq!(body.faults[0].field, "openings.0.length");
    }
}
