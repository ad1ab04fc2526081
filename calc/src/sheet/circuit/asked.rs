//! What the circuit sheet asks besides what all wiring sheets ask.

use calc_derive::{Choice, Inputs};
use uom::si::f64::{ElectricCurrent, Length, Power};

use super::common;
use crate::ask::Figure;
use crate::electrical::colours::Colour;
use crate::electrical::conductor::Conductor;
use crate::electrical::drop::Load;
use crate::electrical::wanted::{SUGGESTIONS, Wanted};
use crate::quantity::{CURRENT, Dimension, Measure, POWER, RESISTANCE};
use crate::words::Msg;

#[derive(Inputs)]
#[words(circuit)]
pub(super) struct Asked {
    #[ask(
        percent,
        range(0.01, 99.0),
        usual("3", "3"),
        convention(),
        word(wiring::drop_limit_percent)
    )]
    pub drop_limit_percent: f64,
    #[ask(rows(1))]
    pub runs: Vec<RunRow>,
    #[ask(rows(1), optional())]
    pub loads: Vec<LoadRow>,
    #[ask(rows(0), optional())]
    pub rows: Vec<LightsRow>,
    #[ask(usually(true), word(wiring::continuous))]
    pub continuous: bool,
    #[ask(units("in", "mm"), range(0.0, 10.0), usual("6 in", "150 mm"), figure(Figure::FromEnd))]
    pub slack: Option<Length>,
    #[ask(list(1), read_by(&SUGGESTIONS, size), optional())]
    pub conductor_choices: Vec<Conductor>,
    #[ask(read_by(&COLOURS, colour), default("red"))]
    pub positive_wire: Colour,
    #[ask(read_by(&COLOURS, colour), default("black"))]
    pub negative_wire: Colour,
}

#[derive(Inputs)]
#[words(circuit)]
pub(super) struct RunRow {
    #[ask(required(), usual("r1", "r1"))]
    pub id: String,
    #[ask(required(), usual("source", "source"))]
    pub from: String,
    #[ask(required(), usual("lamp 1", "lamp 1"))]
    pub to: String,
    // Either this or the route; which one is missing is told after reading.
    #[ask(
        units("ft", "m"),
        range(0.0, 10_000.0),
        or_handed,
        usual("6 ft", "1.8 m"),
        figure(Figure::OneWay)
    )]
    pub length: Option<Length>,
    #[ask(group)]
    pub route: Option<RouteGroup>,
    #[ask(read_by(&SUGGESTIONS, common::wanted), usual("auto", "auto"), convention())]
    pub conductor: Wanted,
    #[ask(usually(false))]
    pub fuse_block: bool,
    #[ask(units("A", "A"), range(0.01, 10_000.0), usual("8 A", "8 A"))]
    pub device_rating: Option<ElectricCurrent>,
    #[ask(units("W", "W"), range(0.01, 100_000.0), usual("96 W", "96 W"))]
    pub device_watts: Option<Power>,
    #[ask(usually(false))]
    pub protects_itself: bool,
    #[ask(usually(false), word(wiring::far_source))]
    pub far_source: bool,
}

/// Where a run lies.
#[derive(Inputs)]
#[words(circuit)]
pub(super) struct RouteGroup {
    #[ask(group, no_help, word(route_from))]
    pub from: Place,
    #[ask(group, no_help, word(route_to))]
    pub to: Place,
    #[ask(units("ft", "m"), range(0.0, 1000.0), default("0 m"), usual("6 ft", "1.8 m"))]
    pub rise: Length,
}

#[derive(Inputs)]
#[words(circuit)]
pub(super) struct Place {
    #[ask(units("in", "mm"), range(0.0, 100.0), usual("12 in", "300 mm"), no_help)]
    pub x: Length,
    #[ask(units("in", "mm"), range(0.0, 100.0), usual("0 in", "0 mm"), no_help)]
    pub y: Length,
}

impl Place {
    /// Along and across the body. [m]
    pub fn metres(&self) -> (f64, f64) {
        (self.x.value, self.y.value)
    }
}

#[derive(Inputs)]
#[words(circuit)]
pub(super) struct LoadRow {
    #[ask(required(), usual("lamp 1", "lamp 1"))]
    pub at: String,
    #[ask(usual("lamp 1", "lamp 1"), no_help)]
    pub label: String,
    #[ask(choice, required(), no_help)]
    pub model: Model,
    #[ask(read_by(&DRAWN, Drawn::read), usual("3 W", "3 W"))]
    pub value: Drawn,
    #[ask(range(1, 1000), default("1"))]
    pub count: u32,
    #[ask(read_by(&COLOURS, colour), usual("red", "red"))]
    pub positive_lead: Option<Colour>,
    #[ask(read_by(&COLOURS, colour), usual("black", "black"))]
    pub negative_lead: Option<Colour>,
}

/// A row of lights: each is fed from the one before.
#[derive(Inputs)]
#[words(circuit)]
pub(super) struct LightsRow {
    #[ask(required(), usual("left", "left"), word(row_label))]
    pub label: String,
    #[ask(required(), usual("source", "source"))]
    pub from: String,
    #[ask(range(1, 100), usual("4", "4"), word(row_count))]
    pub count: u32,
    #[ask(units("ft", "m"), range(0.0, 10_000.0), usual("7 ft", "2.1 m"), figure(Figure::OneWay))]
    pub first: Length,
    #[ask(
        units("in", "mm"),
        range(0.0, 1000.0),
        usual("50 in", "1270 mm"),
        figure(Figure::Spacing)
    )]
    pub spacing: Length,
    #[ask(choice, required(), no_help)]
    pub model: Model,
    #[ask(read_by(&DRAWN, Drawn::read), usual("3 W", "3 W"))]
    pub value: Drawn,
    #[ask(read_by(&SUGGESTIONS, common::wanted), default("auto"), word(row_conductor))]
    pub conductor: Wanted,
    #[ask(units("A", "A"), range(0.01, 10_000.0), usual("8 A", "8 A"))]
    pub device_rating: Option<ElectricCurrent>,
    #[ask(units("W", "W"), range(0.01, 100_000.0), usual("96 W", "96 W"))]
    pub device_watts: Option<Power>,
    #[ask(usually(false))]
    pub protects_itself: bool,
    #[ask(read_by(&COLOURS, colour), usual("red", "red"))]
    pub positive_lead: Option<Colour>,
    #[ask(read_by(&COLOURS, colour), usual("black", "black"))]
    pub negative_lead: Option<Colour>,
}

/// How a load draws.
#[derive(Clone, Copy, PartialEq, Eq, Choice)]
#[words(circuit)]
pub(super) enum Model {
    Power,
    Current,
    Resistance,
}

/// What a load draws, as it was typed: in which unit it is to be read hangs on its model.
#[derive(Default)]
pub(super) struct Drawn(String);

impl Drawn {
    fn read(text: &str) -> Result<Self, Msg> {
        Ok(Self(text.to_owned()))
    }

    /// In the unit of how it draws; draws nothing where nothing was typed, which was told.
    pub fn load(&self, model: Model) -> Result<Load, Msg> {
        type Make = fn(f64) -> Load;
        let (dimension, make): (&'static Dimension, Make) = match model {
            Model::Power => (&POWER, Load::Power),
            Model::Current => (&CURRENT, Load::Current),
            Model::Resistance => (&RESISTANCE, Load::Resistance),
        };
        if self.0.is_empty() {
            return Ok(Load::Current(0.0));
        }
        let measure = Measure::read(&self.0, dimension, None).map_err(|error| error.message())?;
        make(measure.si()).checked().map_err(Msg::from)
    }
}

fn size(text: &str) -> Result<Conductor, Msg> {
    text.parse().map_err(|error| Msg::from(&error))
}

fn colour(text: &str) -> Result<Colour, Msg> {
    text.parse().map_err(|error| Msg::from(&error))
}

/// Loads to choose from; others may be typed.
static DRAWN: [&str; 3] = ["3 W", "0.25 A", "48 ohm"];
/// Colours to choose from; others may be typed.
static COLOURS: [&str; 14] = [
    "red",
    "black",
    "yellow",
    "white",
    "blue",
    "brown",
    "gray",
    "orange",
    "violet",
    "pink",
    "green",
    "black/white",
    "black/yellow",
    "red/black",
];
