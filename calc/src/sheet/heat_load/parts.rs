//! The parts of the body that heat goes through: those of the measured body, the windows, those typed.

use calc_derive::Either;
use uom::si::area::square_meter;
use uom::si::f64::{Area, HeatTransfer};

// The struct, and the derive of the same name.
use super::Inputs;
use crate::ask::BodyPart;
use crate::quantity::Length;
use crate::reader::Reader;
use crate::sheet::handoffs::UValue;
use crate::source::Source;
use crate::text::text;
use crate::thermal::heat_loss::{SolarGain, Surface};
use crate::words::{Arg, heat_load as words};

/// The body's surfaces.
#[derive(Inputs)]
#[words(heat_load)]
pub(super) struct Surfaces {
    #[ask(sheet_of("insulation"))]
    walls: UValue,
    #[ask(sheet_of("insulation"))]
    roof: Option<UValue>,
    #[ask(sheet_of("insulation"))]
    floor: Option<UValue>,
    #[ask(units("in", "mm"), range(0.2, 30.0), from_body(BodyPart::Length))]
    length: Length,
    #[ask(units("in", "mm"), range(0.2, 10.0), from_body(BodyPart::Width))]
    width: Length,
    #[ask(units("in", "mm"), range(0.2, 10.0), from_body(BodyPart::Height))]
    height: Length,
    #[ask(units("Btu/(h ft2 F)", "W/m2/K"), range(0.0, 20.0))]
    #[ask(default("6 W/m2/K"), usual("1 Btu/(h ft2 F)", "6 W/m2/K"))]
    openings_u: HeatTransfer,
}

/// A window.
#[derive(Inputs)]
#[words(heat_load)]
pub(super) struct Window {
    #[ask(word(window_label), usual("windshield", "windshield"), no_help)]
    label: String,
    #[ask(units("ft2", "m2"), range(0.0, 10_000.0), usual("120 ft2", "11 m2"))]
    area: Area,
    #[ask(word(window_u), units("Btu/(h ft2 F)", "W/m2/K"), range(0.0, 20.0))]
    #[ask(usual("1 Btu/(h ft2 F)", "5.6 W/m2/K"))]
    u: HeatTransfer,
    #[ask(percent, range(0.0, 100.0), default("85"), usual("85", "85"))]
    sun_percent: f64,
    #[ask(percent, range(0.0, 100.0), default("50"), usual("50", "50"))]
    lit_percent: f64,
}

/// A part that is typed.
#[derive(Inputs)]
#[words(heat_load)]
pub(super) struct OwnPart {
    #[ask(usual("rear doors", "rear doors"), no_help)]
    label: String,
    #[ask(units("ft2", "m2"), range(0.0, 10_000.0), usual("120 ft2", "11 m2"))]
    area: Area,
    #[ask(either)]
    u_or_sheet: UFrom,
}

/// Where a U value comes from.
#[derive(Either)]
#[words(heat_load)]
enum UFrom {
    #[key("u")]
    #[ask(units("Btu/(h ft2 F)", "W/m2/K"), range(0.0, 20.0))]
    #[ask(usual("0.16 Btu/(h ft2 F)", "0.9 W/m2/K"))]
    Typed(HeatTransfer),
    #[ask(sheet_of("insulation"))]
    Sheet(UValue),
}

/// Sun on glass.
pub(super) static SUN_ON_GLASS: Source = Source::practice_of(words::SOURCE_SUN);
/// U values of glass and hatches.
pub(super) static GLASS: Source = Source::practice_of(words::SOURCE_GLASS);

/// A part of the body.
pub(super) struct Part {
    /// What it is called in the outcome, in every language.
    pub label: String,
    pub name: Arg,
    /// Paths of its area and its U value.
    pub fields: [String; 2],
    pub surface: Surface,
}

/// All parts.
pub(super) fn read(inputs: &Inputs, reader: &Reader<'_>) -> Vec<Part> {
    let mut parts = Vec::new();
    if let Some(surfaces) = &inputs.surfaces {
        parts = surfaces.parts(inputs, reader);
    } else if !reader.given(Inputs::PARTS) {
        parts = reader.group(Inputs::SURFACES, Surfaces::read).parts(inputs, reader);
    }
    for (at, window) in inputs.windows.iter().enumerate() {
        let numbered = (text!("window {}", at + 1), words::WindowNumber { number: at + 1 }.into());
        let row = [Inputs::WINDOWS.key, ".", &at.to_string()].concat();
        let surface = Surface { area: window.area, u: window.u };
        parts.push(Part::of_row(&window.label, numbered, [&row, Window::U.key], surface));
    }
    for (at, part) in inputs.parts.iter().enumerate() {
        let numbered = (text!("part {}", at + 1), words::PartNumber { number: at + 1 }.into());
        let row = [Inputs::PARTS.key, ".", &at.to_string()].concat();
        let (u, key) = match part.u_or_sheet {
            UFrom::Typed(u) => (u, UFrom::U.key),
            UFrom::Sheet(UValue(u)) => (u, UFrom::SHEET.key),
        };
        let surface = Surface { area: part.area, u };
        parts.push(Part::of_row(&part.label, numbered, [&row, key], surface));
    }
    parts
}

/// The sun through the windows at noon, each with its window's name.
pub(super) fn sun(inputs: &Inputs, parts: &[Part]) -> Vec<(Arg, SolarGain)> {
    let first = parts.len().saturating_sub(inputs.windows.len() + inputs.parts.len());
    let names = parts.iter().skip(first).map(|part| part.name.clone());
    let gain = |window: &Window| SolarGain {
        area: window.area,
        let_in: window.sun_percent,
        lit: window.lit_percent,
        sun: inputs.sun_w_m2,
    };
    names.zip(inputs.windows.iter().map(gain)).collect()
}

impl Part {
    /// The part of a row; one without a name is called by its number.
    fn of_row(
        label: &str,
        numbered: (String, crate::words::Msg),
        [row, u]: [&str; 2],
        surface: Surface,
    ) -> Self {
        let (label, name) = match label {
            "" => (numbered.0, Arg::Message(numbered.1)),
            label => (label.to_owned(), label.into()),
        };
        let fields = ["area", u].map(|key| [row, ".", key].concat());
        Self { label, name, fields, surface }
    }
}

impl Surfaces {
    /// Floor, roof, walls and roof openings of a body with upright walls.
    fn parts(&self, inputs: &Inputs, reader: &Reader<'_>) -> Vec<Part> {
        let none = Area::default();
        let sum = |all: Area, area: Area| all + area;
        let glass = inputs.windows.iter().map(|window| window.area).fold(none, sum);
        let openings = &reader.body().openings;
        let openings = openings.iter().map(|one| one.length * one.width).fold(none, sum);
        let plan = self.length * self.width;
        let around = (self.length + self.width) * 2.0 * self.height;
        let slack = Area::new::<square_meter>(1e-9);
        if glass > around + slack && !reader.has_faults() {
            let around = Arg::area(around);
            let message = reader.style().say(words::WindowsTooLarge { around });
            reader.note("windows.0.area", message);
        }
        let less = |whole: Area, part: Area| if part < whole { whole - part } else { none };
        let part = |label: &str, name: crate::words::Id, area: Area, u, key: &str| Part {
            label: label.to_owned(),
            name: name.into(),
            fields: [Self::LENGTH.key, key].map(|key| ["surfaces.", key].concat()),
            surface: Surface { area, u },
        };
        let or_walls = |own: Option<UValue>| own.unwrap_or(self.walls).0;
        let (roof, floor) = (or_walls(self.roof), or_walls(self.floor));
        let mut parts = vec![
            part("floor", words::THE_FLOOR, plan, floor, Self::FLOOR.key),
            part("roof", words::THE_ROOF, less(plan, openings), roof, Self::ROOF.key),
            part("walls", words::THE_WALLS, less(around, glass), self.walls.0, Self::WALLS.key),
        ];
        if openings > none {
            let (area, key) = (openings.min(plan), Self::OPENINGS_U.key);
            parts.push(part("roof openings", words::THE_OPENINGS, area, self.openings_u, key));
        }
        parts
    }
}
