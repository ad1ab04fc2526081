//! What can be marked with a tape: rounding to its lines, and what the rounding left over.

use uom::si::f64::Length;
use uom::si::length::{inch, meter, millimeter};

use super::decimal::plain;

/// Which units results are shown in; what was typed keeps its own.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub enum UnitSystem {
    /// Inches, feet, US customary volumes, pounds, degrees Fahrenheit.
    Imperial,
    /// Millimetres, metres, litres, kilograms, degrees Celsius.
    #[default]
    Metric,
}

/// The finest line that is read on the tape.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Rounding {
    /// 1/8 in.
    Eighth,
    /// 1/16 in.
    Sixteenth,
    /// 1/32 in.
    ThirtySecond,
    /// 1 mm.
    Millimetre,
    /// 0.5 mm.
    HalfMillimetre,
}

/// A length as it is marked on the tape.
#[derive(Clone, Debug, PartialEq)]
pub struct Marked {
    /// The mark: `90 1/2 in` or `2299 mm`.
    pub text: String,
    /// The length that the mark stands for.
    pub rounded: Length,
    /// Exact length minus the rounded one: positive where the exact spot lies beyond the mark.
    pub left_over: Length,
    rounding: Rounding,
}

impl Marked {
    /// How much is left over, and whether the length is longer than its mark: to a quarter of a line in inches or
    /// 0.1 mm (0.05 mm on the finer tape); none where that is nothing.
    pub fn left_over(&self) -> Option<(String, bool)> {
        let size = left_over_size(self.left_over, self.rounding)?;
        Some((size, self.left_over.value > 0.0))
    }
}

impl UnitSystem {
    /// As the project file names it.
    pub fn name(self) -> &'static str {
        match self {
            Self::Imperial => "imperial",
            Self::Metric => "metric",
        }
    }

    /// The system with this name.
    pub fn from_name(name: &str) -> Option<Self> {
        [Self::Imperial, Self::Metric].into_iter().find(|system| system.name() == name)
    }
}

impl Rounding {
    /// Every choice, coarse to fine.
    pub const ALL: [Self; 5] =
        [Self::Eighth, Self::Sixteenth, Self::ThirtySecond, Self::Millimetre, Self::HalfMillimetre];

    /// The usual choice: 1/16 in or 1 mm.
    pub fn for_system(system: UnitSystem) -> Self {
        match system {
            UnitSystem::Imperial => Self::Sixteenth,
            UnitSystem::Metric => Self::Millimetre,
        }
    }

    /// The system whose tape has these lines.
    pub const fn system(self) -> UnitSystem {
        match self {
            Self::Eighth | Self::Sixteenth | Self::ThirtySecond => UnitSystem::Imperial,
            Self::Millimetre | Self::HalfMillimetre => UnitSystem::Metric,
        }
    }

    /// The distance between two lines.
    pub fn step(self) -> Length {
        match self.system() {
            UnitSystem::Imperial => Length::new::<inch>(1.0 / f64::from(self.parts())),
            UnitSystem::Metric => Length::new::<millimeter>(1.0 / f64::from(self.parts())),
        }
    }

    /// How it is called: `1/16 in`, `0.5 mm`.
    pub fn name(self) -> &'static str {
        match self {
            Self::Eighth => "1/8 in",
            Self::Sixteenth => "1/16 in",
            Self::ThirtySecond => "1/32 in",
            Self::Millimetre => "1 mm",
            Self::HalfMillimetre => "0.5 mm",
        }
    }

    /// The choice with this name.
    pub fn from_name(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|rounding| rounding.name() == name)
    }

    /// Lines in an inch or a millimetre.
    pub(super) fn parts(self) -> u32 {
        match self {
            Self::Eighth => 8,
            Self::Sixteenth => 16,
            Self::ThirtySecond => 32,
            Self::Millimetre => 1,
            Self::HalfMillimetre => 2,
        }
    }
}

/// The mark for a length on a tape with these lines.
pub(super) fn mark(length: Length, rounding: Rounding) -> Marked {
    let parts = f64::from(rounding.parts());
    let Some(lines) = to_lines(length, rounding) else {
        let nothing = Length::new::<meter>(0.0);
        return Marked { text: "?".to_owned(), rounded: nothing, left_over: nothing, rounding };
    };
    let (text, rounded) = match rounding.system() {
        UnitSystem::Imperial => (inches(lines, parts) + " in", Length::new::<inch>(lines / parts)),
        UnitSystem::Metric => {
            let rounded = Length::new::<meter>(lines / (parts * 1e3));
            (plain(lines / parts, 1) + " mm", rounded)
        }
    };
    let left_over = length - rounded;
    Marked { text, rounded, left_over, rounding }
}

/// The nearest line, counted from the start of the tape; halves go away from zero. Lengths within
/// a billionth of a line of the half are taken as the half. `None` where there is no such line.
pub(super) fn to_lines(length: Length, rounding: Rounding) -> Option<f64> {
    let lines = match rounding.system() {
        UnitSystem::Imperial => length.value / 0.0254,
        UnitSystem::Metric => length.value * 1e3,
    } * f64::from(rounding.parts());
    let nearest = (lines.abs() + 1e-9).round();
    let nearest = if nearest == 0.0 { 0.0 } else { nearest.copysign(lines) };
    nearest.is_finite().then_some(nearest)
}

/// `lines` parts of an inch as a whole number and a reduced fraction: `90 1/2`, `3/8`, `-5`.
pub(super) fn inches(lines: f64, parts: f64) -> String {
    let whole = (lines.abs() / parts).floor();
    let mut top = (lines.abs() - whole * parts) as u32;
    let mut bottom = parts as u32;
    while top != 0 && top.is_multiple_of(2) && bottom.is_multiple_of(2) {
        top /= 2;
        bottom /= 2;
    }
    let mut text = if lines < 0.0 { "-".to_owned() } else { String::new() };
    if whole != 0.0 || top == 0 {
        text.push_str(&plain(whole, 0));
    }
    if top != 0 {
        if whole != 0.0 {
            text.push(' ');
        }
        for part in [&plain(f64::from(top), 0), "/", &plain(f64::from(bottom), 0)] {
            text.push_str(part);
        }
    }
    text
}

fn left_over_size(left_over: Length, rounding: Rounding) -> Option<String> {
    match rounding.system() {
        UnitSystem::Imperial => {
            let parts = f64::from(rounding.parts() * 4);
            let lines = (left_over.value.abs() / 0.0254 * parts).round();
            (lines != 0.0).then(|| inches(lines, parts) + " in")
        }
        UnitSystem::Metric => {
            let digits = if rounding == Rounding::Millimetre { 1 } else { 2 };
            let text = plain(left_over.value.abs() * 1e3, digits);
            (text != "0").then(|| text + " mm")
        }
    }
}
